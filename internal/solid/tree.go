package solid

import "math"

// An op says how a node combines its kids.
type op int

const (
	single op = iota // a leaf
	union
	intersection
	difference // the first kid less the others
)

// A node is a place in the tree.
type node struct {
	op   op
	kids []node
	leaf int
}

func (n *node) evaluate(at func(leaf int) float64) float64 {
	switch n.op {
	case single:
		return at(n.leaf)
	case union:
		d := math.Inf(1)
		for i := range n.kids {
			d = min(d, n.kids[i].evaluate(at))
		}
		return d
	}
	d := n.kids[0].evaluate(at)
	for i := range n.kids[1:] {
		e := n.kids[i+1].evaluate(at)
		if n.op == difference {
			e = -e
		}
		d = max(d, e)
	}
	return d
}

// decide returns the leaf whose distance the tree takes, and -1 when the tree
// takes it the other way out. The first of equals decides.
func (n *node) decide(at func(leaf int) float64) (leaf int, sign float64) {
	if n.op == single {
		return n.leaf, 1
	}
	best := math.Inf(1)
	for i := range n.kids {
		k, s := n.kids[i].decide(at)
		d := s * at(k)
		if n.op == difference && i > 0 {
			s, d = -s, -d
		}
		if n.op != union {
			d = -d
		}
		if d < best {
			best, leaf, sign = d, k, s
		}
	}
	return leaf, sign
}

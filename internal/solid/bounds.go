package solid

import (
	"math"

	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// beyond is farther than any timber goes, in millimetres: a box that reaches
// it has no end.
const beyond = 1e6

// A slab is a half space n.p <= d known to hold a piece.
type slab struct {
	n v3.Vec
	d float64
}

// boundsOf returns a finite box round the tree.
func boundsOf(n node, leaves []*Leaf) (sdf.Box3, error) {
	box := n.bounds(leaves)
	for i, axis := range []string{"x", "y", "z"} {
		lo, hi := component(box.Min, i), component(box.Max, i)
		if lo > hi {
			return box, &NothingError{}
		}
		if lo < -beyond || hi > beyond {
			return box, &EndlessError{Along: axis}
		}
	}
	return box, nil
}

func component(v v3.Vec, i int) float64 { return [3]float64{v.X, v.Y, v.Z}[i] }

// bounds returns a box round the node, with infinite sides where it has none.
func (n *node) bounds(leaves []*Leaf) sdf.Box3 {
	switch n.op {
	case single:
		return leaves[n.leaf].bounds()
	case union:
		box := n.kids[0].bounds(leaves)
		for i := range n.kids[1:] {
			box = box.Extend(n.kids[i+1].bounds(leaves))
		}
		return box
	}
	box := n.kids[0].bounds(leaves)
	if n.op == intersection {
		for i := range n.kids[1:] {
			k := n.kids[i+1].bounds(leaves)
			box = sdf.Box3{Min: box.Min.Max(k.Min), Max: box.Max.Min(k.Max)}
		}
	}
	if bounded(box) {
		return box
	}
	return corners(n.slabs(leaves))
}

func bounded(b sdf.Box3) bool {
	return finite(b.Min.X, b.Min.Y, b.Min.Z, b.Max.X, b.Max.Y, b.Max.Z)
}

// slabs lists planes that the node is known to lie within.
func (n *node) slabs(leaves []*Leaf) []slab {
	switch n.op {
	case single:
		return leaves[n.leaf].slabs()
	case union:
		return boxSlabs(n.bounds(leaves))
	case intersection:
		var all []slab
		for i := range n.kids {
			all = append(all, n.kids[i].slabs(leaves)...)
		}
		return all
	}
	all := n.kids[0].slabs(leaves)
	for _, k := range n.kids[1:] {
		if k.op != single {
			continue
		}
		if l := leaves[k.leaf]; l.isHalf() { // what a plane cuts away leaves its other side
			all = append(all, slab{l.w.Neg(), -l.w.Dot(l.origin)})
		}
	}
	return all
}

func boxSlabs(b sdf.Box3) []slab {
	var all []slab
	for i, n := range []v3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		if hi := component(b.Max, i); !math.IsInf(hi, 1) {
			all = append(all, slab{n, hi})
		}
		if lo := component(b.Min, i); !math.IsInf(lo, -1) {
			all = append(all, slab{n.Neg(), -lo})
		}
	}
	return all
}

// corners returns the box round the common part of half spaces, found from the
// places where three of their planes meet.
func corners(s []slab) sdf.Box3 {
	s = append(s, boxSlabs(sdf.NewBox3(v3.Vec{}, v3.Vec{X: 1, Y: 1, Z: 1}.MulScalar(20*beyond)))...)
	inf := math.Inf(1)
	box := sdf.Box3{Min: v3.Vec{X: inf, Y: inf, Z: inf}, Max: v3.Vec{X: -inf, Y: -inf, Z: -inf}}
	for i := range s {
		for j := range s[:i] {
			for k := range s[:j] {
				if p, ok := meet(s[i], s[j], s[k]); ok && within(p, s) {
					box = box.Include(p)
				}
			}
		}
	}
	return box
}

// meet returns the place where three planes cross.
func meet(a, b, c slab) (v3.Vec, bool) {
	bc := b.n.Cross(c.n)
	det := a.n.Dot(bc)
	if math.Abs(det) < 1e-9 {
		return v3.Vec{}, false
	}
	p := bc.MulScalar(a.d).Add(c.n.Cross(a.n).MulScalar(b.d)).Add(a.n.Cross(b.n).MulScalar(c.d))
	return p.DivScalar(det), true
}

func within(p v3.Vec, s []slab) bool {
	for i := range s {
		if s[i].n.Dot(p) > s[i].d+1e-9*(1+math.Abs(s[i].d)) {
			return false
		}
	}
	return true
}

func (l *Leaf) isHalf() bool {
	_, ok := l.Shape.(form.Half)
	return ok
}

// bounds returns the tightest box round a leaf.
func (l *Leaf) bounds() sdf.Box3 {
	b := form.Bounds(l.Shape)
	return sdf.Box3{Min: position(b.Min), Max: position(b.Max)}
}

// slabs lists planes round a leaf: its own plane, a box in a prism's frame, or
// a turned piece's box.
func (l *Leaf) slabs() []slab {
	switch shape := l.Shape.(type) {
	case form.Half:
		return []slab{{l.w, l.w.Dot(l.origin)}}
	case form.Prism:
		lo, hi := shape.Profile.Bounds()
		var all []slab
		for _, s := range []slab{
			{l.u, float64(hi.X)},
			{l.u.Neg(), -float64(lo.X)},
			{l.v, float64(hi.Y)},
			{l.v.Neg(), -float64(lo.Y)},
			{l.w, l.to},
			{l.w.Neg(), -l.from},
		} {
			if !math.IsInf(s.d, 1) {
				all = append(all, slab{s.n, s.d + s.n.Dot(l.origin)})
			}
		}
		return all
	}
	return boxSlabs(l.bounds())
}

package adjust

import (
	"math"
	"slices"
)

// A pattern is the order in which unknowns are eliminated and the shape of the
// factor in that order. Positions are in the order; parents rise.
type pattern struct {
	unknown []int // at each position
	at      []int // position of each unknown
	parent  []int // next position that a position's elimination touches, or -1
	first   []int // column k of the factor has room for entries first[k] to first[k+1]
}

// newPattern orders the unknowns of d by minimum degree.
func newPattern(d *design) *pattern {
	p := &pattern{unknown: minimumDegree(d.neighbours())}
	p.place()
	p.tree(d)
	post := postorder(p.parent)
	ordered := make([]int, len(post))
	for k, old := range post {
		ordered[k] = p.unknown[old]
	}
	p.unknown = ordered
	p.place()
	p.tree(d)
	p.count(d)
	return p
}

// neighbours lists, for every unknown, the others it shares a row with, rising.
func (d *design) neighbours() [][]int {
	adj := make([][]int, d.n)
	seen := make([]int, d.n)
	for j := range d.n {
		seen[j] = j + 1
		for _, i := range d.rowsOf[d.rowsFirst[j]:d.rowsFirst[j+1]] {
			for _, u := range d.col[d.first[i]:d.first[i+1]] {
				if seen[u] != j+1 {
					seen[u] = j + 1
					adj[j] = append(adj[j], u)
				}
			}
		}
		slices.Sort(adj[j])
	}
	return adj
}

// minimumDegree eliminates an unknown of fewest neighbours first, and those least
// lately touched first among equals, which keeps the tree of eliminations low.
// Unknowns that nearly everything touches (a common error) go last, unasked.
func minimumDegree(adj [][]int) []int {
	n := len(adj)
	order := make([]int, 0, n)
	hub := setHubsApart(adj)
	q := newQueues(n)
	for v := range n {
		if !hub[v] {
			q.push(v, len(adj[v]))
		}
	}
	for {
		v := q.pop()
		if v < 0 {
			break
		}
		order = append(order, v)
		clique := adj[v]
		adj[v] = nil
		for _, u := range clique {
			q.remove(u)
			adj[u] = join(adj[u], clique, v, u)
			q.push(u, len(adj[u]))
		}
	}
	for v := range n {
		if hub[v] {
			order = append(order, v)
		}
	}
	return order
}

func setHubsApart(adj [][]int) []bool {
	most := 16 + 10*int(math.Sqrt(float64(len(adj))))
	hub := make([]bool, len(adj))
	found := false
	for v := range adj {
		hub[v] = len(adj[v]) > most
		found = found || hub[v]
	}
	if !found {
		return hub
	}
	for v := range adj {
		if hub[v] {
			adj[v] = nil
			continue
		}
		adj[v] = slices.DeleteFunc(adj[v], func(u int) bool { return hub[u] })
	}
	return hub
}

// join is the union of a and b without v and u, rising.
func join(a, b []int, v, u int) []int {
	if contains(a, b, u) {
		k, _ := slices.BinarySearch(a, v)
		return slices.Delete(a, k, k+1)
	}
	out := make([]int, 0, len(a)+len(b))
	for len(a) > 0 || len(b) > 0 {
		var w int
		switch {
		case len(b) == 0 || len(a) > 0 && a[0] < b[0]:
			w, a = a[0], a[1:]
		case len(a) == 0 || b[0] < a[0]:
			w, b = b[0], b[1:]
		default:
			w, a, b = a[0], a[1:], b[1:]
		}
		if w != v && w != u {
			out = append(out, w)
		}
	}
	return out
}

// contains says whether every entry of b but u is in a.
func contains(a, b []int, u int) bool {
	if len(b)-1 > len(a) {
		return false
	}
	k := 0
	for _, w := range b {
		if w == u {
			continue
		}
		for k < len(a) && a[k] < w {
			k++
		}
		if k == len(a) || a[k] != w {
			return false
		}
	}
	return true
}

// queues holds unknowns by degree, first in first out within a degree.
type queues struct {
	head, tail []int // by degree
	next, prev []int
	degree     []int
	least      int
}

func newQueues(n int) *queues {
	q := &queues{
		head: slices.Repeat([]int{-1}, n+1), tail: slices.Repeat([]int{-1}, n+1),
		next: make([]int, n), prev: make([]int, n), degree: make([]int, n),
	}
	return q
}

func (q *queues) push(v, degree int) {
	q.degree[v] = degree
	q.least = min(q.least, degree)
	q.next[v], q.prev[v] = -1, q.tail[degree]
	if t := q.tail[degree]; t >= 0 {
		q.next[t] = v
	} else {
		q.head[degree] = v
	}
	q.tail[degree] = v
}

func (q *queues) remove(v int) {
	d := q.degree[v]
	if p := q.prev[v]; p >= 0 {
		q.next[p] = q.next[v]
	} else {
		q.head[d] = q.next[v]
	}
	if n := q.next[v]; n >= 0 {
		q.prev[n] = q.prev[v]
	} else {
		q.tail[d] = q.prev[v]
	}
}

func (q *queues) pop() int {
	for ; q.least < len(q.head); q.least++ {
		if v := q.head[q.least]; v >= 0 {
			q.remove(v)
			return v
		}
	}
	return -1
}

func (p *pattern) place() {
	p.at = make([]int, len(p.unknown))
	for k, v := range p.unknown {
		p.at[v] = k
	}
}

// earlier calls do with the position of each unknown that shares a row with the one
// at k and comes before it; positions may repeat.
func (p *pattern) earlier(d *design, k int, do func(i int)) {
	v := p.unknown[k]
	for _, row := range d.rowsOf[d.rowsFirst[v]:d.rowsFirst[v+1]] {
		for _, u := range d.col[d.first[row]:d.first[row+1]] {
			if i := p.at[u]; i < k {
				do(i)
			}
		}
	}
}

// tree finds the parents (Liu's elimination tree, with short cuts).
func (p *pattern) tree(d *design) {
	n := len(p.unknown)
	p.parent = slices.Repeat([]int{-1}, n)
	short := slices.Repeat([]int{-1}, n)
	for k := range n {
		p.earlier(d, k, func(i int) {
			for i >= 0 && i < k {
				up := short[i]
				short[i] = k
				if up < 0 {
					p.parent[i] = k
				}
				i = up
			}
		})
	}
}

// count makes room for the factor's columns.
func (p *pattern) count(d *design) {
	n := len(p.unknown)
	p.first = make([]int, n+1)
	mark := slices.Repeat([]int{-1}, n)
	for k := range n {
		mark[k] = k
		p.earlier(d, k, func(i int) {
			for ; mark[i] != k; i = p.parent[i] {
				mark[i] = k
				p.first[i+1]++
			}
		})
	}
	for k := range n {
		p.first[k+1] += p.first[k]
	}
}

// postorder lists the nodes of a forest so that every subtree is contiguous.
func postorder(parent []int) []int {
	n := len(parent)
	child, sibling := slices.Repeat([]int{-1}, n), slices.Repeat([]int{-1}, n)
	for k := n - 1; k >= 0; k-- {
		if p := parent[k]; p >= 0 {
			sibling[k], child[p] = child[p], k
		}
	}
	order := make([]int, 0, n)
	var stack []int
	for root := range n {
		if parent[root] >= 0 {
			continue
		}
		for stack = append(stack, root); len(stack) > 0; {
			k := stack[len(stack)-1]
			if c := child[k]; c >= 0 {
				child[k] = sibling[c]
				stack = append(stack, c)
				continue
			}
			stack = stack[:len(stack)-1]
			order = append(order, k)
		}
	}
	return order
}

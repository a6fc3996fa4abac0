package gauge

import (
	"math"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/mesh"
)

// A nest of boxes over triangles, to find the nearest and those that cross.
type nest struct {
	m     *mesh.Mesh
	at    []v3.Vec
	order []int
	boxes []nestBox
}

type nestBox struct {
	lo, hi      v3.Vec
	first, last int // of order
	kids        [2]int
}

func newNest(m *mesh.Mesh) *nest {
	n := &nest{m: m, order: make([]int, len(m.Triangles))}
	for _, v := range m.Vertices {
		n.at = append(n.at, v3.Vec{X: float64(v.X), Y: float64(v.Y), Z: float64(v.Z)})
	}
	for i := range n.order {
		n.order[i] = i
	}
	n.build(0, len(n.order))
	return n
}

func (n *nest) corners(t int) (a, b, c v3.Vec) {
	k := n.m.Triangles[t]
	return n.at[k[0]], n.at[k[1]], n.at[k[2]]
}

func (n *nest) build(first, last int) int {
	box := nestBox{first: first, last: last, kids: [2]int{-1, -1}}
	box.lo, box.hi = v3.Vec{X: 1e300, Y: 1e300, Z: 1e300}, v3.Vec{X: -1e300, Y: -1e300, Z: -1e300}
	for _, t := range n.order[first:last] {
		a, b, c := n.corners(t)
		box.lo, box.hi = box.lo.Min(a).Min(b).Min(c), box.hi.Max(a).Max(b).Max(c)
	}
	i := len(n.boxes)
	n.boxes = append(n.boxes, box)
	if last-first <= 4 {
		return i
	}
	size := box.hi.Sub(box.lo)
	key := func(t int) float64 {
		a, b, c := n.corners(t)
		s := a.Add(b).Add(c)
		switch {
		case size.X >= size.Y && size.X >= size.Z:
			return s.X
		case size.Y >= size.Z:
			return s.Y
		}
		return s.Z
	}
	slices.SortFunc(n.order[first:last], func(a, b int) int {
		switch x, y := key(a), key(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	mid := (first + last) / 2
	left := n.build(first, mid)
	right := n.build(mid, last)
	n.boxes[i].kids = [2]int{left, right}
	return i
}

func (b *nestBox) distance(p v3.Vec) float64 { return p.Sub(p.Max(b.lo).Min(b.hi)).Length() }

// nearest is how far p is from the skin.
func (n *nest) nearest(p v3.Vec) float64 {
	best := math.Inf(1)
	var look func(i int)
	look = func(i int) {
		b := &n.boxes[i]
		if b.distance(p) >= best {
			return
		}
		if b.kids[0] < 0 {
			for _, t := range n.order[b.first:b.last] {
				best = min(best, toTriangle(n.corners3(t), p))
			}
			return
		}
		l, r := b.kids[0], b.kids[1]
		if n.boxes[r].distance(p) < n.boxes[l].distance(p) {
			l, r = r, l
		}
		look(l)
		look(r)
	}
	look(0)
	return best
}

func (n *nest) corners3(t int) [3]v3.Vec {
	a, b, c := n.corners(t)
	return [3]v3.Vec{a, b, c}
}

func toSegment(a, b, p v3.Vec) float64 {
	d := b.Sub(a)
	t := max(0, min(1, p.Sub(a).Dot(d)/d.Dot(d)))
	return p.Sub(a.Add(d.MulScalar(t))).Length()
}

func toTriangle(t [3]v3.Vec, p v3.Vec) float64 {
	n := t[1].Sub(t[0]).Cross(t[2].Sub(t[0]))
	inside := true
	for i := range t {
		if t[(i+1)%3].Sub(t[i]).Cross(p.Sub(t[i])).Dot(n) < 0 {
			inside = false
		}
	}
	if inside {
		return math.Abs(p.Sub(t[0]).Dot(n)) / n.Length()
	}
	return min(toSegment(t[0], t[1], p), toSegment(t[1], t[2], p), toSegment(t[2], t[0], p))
}

// crossings counts the pairs of triangles that cut through one another by
// more than rounding does.
func (n *nest) crossings() (count int, at v3.Vec) {
	var pair func(i, j int)
	pair = func(i, j int) {
		a, b := &n.boxes[i], &n.boxes[j]
		if a.lo.X > b.hi.X || b.lo.X > a.hi.X || a.lo.Y > b.hi.Y || b.lo.Y > a.hi.Y || a.lo.Z > b.hi.Z || b.lo.Z > a.hi.Z {
			return
		}
		switch {
		case a.kids[0] < 0 && b.kids[0] < 0:
			for _, s := range n.order[a.first:a.last] {
				for _, t := range n.order[b.first:b.last] {
					if (i != j || s < t) && n.cut(s, t) {
						count++
						at, _, _ = n.corners(s)
					}
				}
			}
		case i == j:
			pair(a.kids[0], a.kids[0])
			pair(a.kids[0], a.kids[1])
			pair(a.kids[1], a.kids[1])
		case b.kids[0] < 0 || a.kids[0] >= 0 && a.last-a.first > b.last-b.first:
			pair(a.kids[0], j)
			pair(a.kids[1], j)
		default:
			pair(i, b.kids[0])
			pair(i, b.kids[1])
		}
	}
	pair(0, 0)
	return count, at
}

// cut says whether an edge of one triangle, not ending in a corner of the
// other, goes through the other's inside.
func (n *nest) cut(s, t int) bool {
	return n.pierces(s, t) || n.pierces(t, s)
}

func (n *nest) pierces(s, t int) bool {
	ks, kt := n.m.Triangles[s], n.m.Triangles[t]
	a, b, c := n.corners(t)
	normal := b.Sub(a).Cross(c.Sub(a)).Normalize()
	const slack = 2e-4 // twice what rounding to float32 moves a corner, on parts of a metre
	for i := range ks {
		p, q := ks[i], ks[(i+1)%3]
		if slices.Contains(kt[:], p) || slices.Contains(kt[:], q) {
			continue
		}
		dp, dq := n.at[p].Sub(a).Dot(normal), n.at[q].Sub(a).Dot(normal)
		if dp*dq >= 0 || min(math.Abs(dp), math.Abs(dq)) < slack {
			continue
		}
		x := n.at[p].Add(n.at[q].Sub(n.at[p]).MulScalar(dp / (dp - dq)))
		in := true
		for _, e := range [][2]v3.Vec{{a, b}, {b, c}, {c, a}} {
			way := e[1].Sub(e[0])
			if way.Cross(x.Sub(e[0])).Dot(normal)/way.Length() < slack {
				in = false
			}
		}
		if in {
			return true
		}
	}
	return false
}

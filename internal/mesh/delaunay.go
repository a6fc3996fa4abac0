package mesh

import (
	"errors"
	"math"
	"math/bits"
)

// A spot is a place on the drawing plane of a patch, in whole steps of the
// grid, so that which side of a line it lies on is decided without error.
type spot struct{ x, y int64 }

// turnOf is +1 when a, b, c run anticlockwise, -1 clockwise, 0 in a line. It is exact.
func turnOf(a, b, c spot) int {
	ux, uy, vx, vy := b.x-a.x, b.y-a.y, c.x-a.x, c.y-a.y
	p, q := float64(ux)*float64(vy), float64(uy)*float64(vx)
	if d := p - q; math.Abs(d) > (math.Abs(p)+math.Abs(q))*0x1p-50 {
		return cmpFloat(d, 0)
	}
	return compare(ux, vy, uy, vx)
}

// compare is the sign of a b - c d.
func compare(a, b, c, d int64) int {
	sp, hp, lp := product(a, b)
	sq, hq, lq := product(c, d)
	switch {
	case sp != sq:
		return cmpFloat(float64(sp), float64(sq))
	case hp != hq && (hp > hq) == (sp > 0), hp == hq && lp != lq && (lp > lq) == (sp > 0):
		return 1
	case hp == hq && lp == lq:
		return 0
	}
	return -1
}

func product(a, b int64) (sign int, hi, lo uint64) {
	if a == 0 || b == 0 {
		return 0, 0, 0
	}
	sign = 1
	if (a < 0) != (b < 0) {
		sign = -1
	}
	hi, lo = bits.Mul64(uint64(max(a, -a)), uint64(max(b, -b)))
	return sign, hi, lo
}

// A tri is a triangle of a net: its corners, anticlockwise; its neighbours, each
// across from the corner of the same index; and which of those borders may not move.
type tri struct {
	v     [3]int
	n     [3]int
	fixed [3]bool
}

// A net is a constrained Delaunay triangulation under construction. Its last
// three spots are far corners that hold all the others.
type net struct {
	at   []spot
	tris []tri
	of   []int // a triangle at each spot
	last int
	work [][2]int // borders to look at again, by their ends
}

// errTangled tells that a patch's border crosses or touches itself once its
// corners are rounded.
var errTangled = errors.New("its border crosses itself")

func newNet(at []spot) *net {
	lo, hi := at[0], at[0]
	for _, p := range at {
		lo, hi = spot{min(lo.x, p.x), min(lo.y, p.y)}, spot{max(hi.x, p.x), max(hi.y, p.y)}
	}
	s := max(hi.x-lo.x, hi.y-lo.y) + 1
	c := spot{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
	n := len(at)
	t := &net{at: append(at[:n:n], spot{c.x - 20*s, c.y - 10*s}, spot{c.x + 20*s, c.y - 10*s}, spot{c.x, c.y + 20*s})}
	t.of = make([]int, n+3)
	t.tris = append(make([]tri, 0, 2*n+8), tri{v: [3]int{n, n + 1, n + 2}, n: [3]int{-1, -1, -1}})
	return t
}

func (t *net) turn(a, b, c int) int { return turnOf(t.at[a], t.at[b], t.at[c]) }

// index is which corner of a triangle a spot is.
func (q *tri) index(v int) int {
	for i, w := range q.v {
		if w == v {
			return i
		}
	}
	return -1
}

// across is which neighbour another triangle is.
func (q *tri) across(n int) int {
	for i, w := range q.n {
		if w == n {
			return i
		}
	}
	return -1
}

// insert adds spot p.
func (t *net) insert(p int) error {
	switch at, zero := t.locate(p); len(zero) {
	case 0:
		t.split(at, p)
	case 1:
		t.splitBorder(at, zero[0], p)
	default:
		return errTangled // two corners fell together
	}
	t.settle()
	return nil
}

// locate walks to the triangle that holds p; zero lists the borders p is on.
func (t *net) locate(p int) (at int, zero []int) {
	at = t.last
	for range 4 * len(t.tris) {
		zero = zero[:0]
		out := -1
		for i := range 3 {
			q := &t.tris[at]
			switch t.turn(q.v[(i+1)%3], q.v[(i+2)%3], p) {
			case -1:
				out = i
			case 0:
				zero = append(zero, i)
			}
		}
		if out < 0 {
			t.last = at
			return at, zero
		}
		at = t.tris[at].n[out]
	}
	return 0, []int{0, 1} // going in circles: not on a sound net
}

// put writes a triangle, and tells its spots and neighbours.
func (t *net) put(i int, v, n [3]int, fixed [3]bool) {
	t.tris[i] = tri{v, n, fixed}
	for _, k := range v {
		t.of[k] = i
	}
}

// relink tells a triangle that its neighbour across a border has a new number.
func (t *net) relink(i, before, after int) {
	if i >= 0 {
		t.tris[i].n[t.tris[i].across(before)] = after
	}
}

func (t *net) grow(n int) int {
	first := len(t.tris)
	t.tris = append(t.tris, make([]tri, n)...)
	return first
}

// split puts p inside triangle i.
func (t *net) split(i, p int) {
	q := t.tris[i]
	j := t.grow(2)
	k := j + 1
	a, b, c := q.v[0], q.v[1], q.v[2]
	t.put(i, [3]int{p, a, b}, [3]int{q.n[2], j, k}, [3]bool{q.fixed[2]})
	t.put(j, [3]int{p, b, c}, [3]int{q.n[0], k, i}, [3]bool{q.fixed[0]})
	t.put(k, [3]int{p, c, a}, [3]int{q.n[1], i, j}, [3]bool{q.fixed[1]})
	t.relink(q.n[0], i, j)
	t.relink(q.n[1], i, k)
	t.work = append(t.work, [2]int{a, b}, [2]int{b, c}, [2]int{c, a})
}

// splitBorder puts p on the border across from corner e of triangle i.
func (t *net) splitBorder(i, e, p int) {
	q := t.tris[i]
	j := q.n[e]
	r := t.tris[j]
	f := r.across(i)
	a, b, c, d := q.v[e], q.v[(e+1)%3], q.v[(e+2)%3], r.v[f]
	fx := q.fixed[e]
	k := t.grow(2)
	l := k + 1
	qc, qb := q.n[(e+2)%3], q.n[(e+1)%3] // across from c (border a-b) and from b (border c-a)
	rb, rc := r.n[(f+1)%3], r.n[(f+2)%3] // r is d, c, b: across from c (border b-d) and from b (border d-c)
	t.put(i, [3]int{a, b, p}, [3]int{j, k, qc}, [3]bool{fx, false, q.fixed[(e+2)%3]})
	t.put(k, [3]int{a, p, c}, [3]int{l, qb, i}, [3]bool{fx, q.fixed[(e+1)%3], false})
	t.put(j, [3]int{d, p, b}, [3]int{i, rb, l}, [3]bool{fx, r.fixed[(f+1)%3], false})
	t.put(l, [3]int{d, c, p}, [3]int{k, j, rc}, [3]bool{fx, false, r.fixed[(f+2)%3]})
	t.relink(qb, i, k)
	t.relink(rc, j, l)
	t.work = append(t.work, [2]int{a, b}, [2]int{c, a}, [2]int{b, d}, [2]int{d, c})
}

// settle turns borders till every one not fixed is Delaunay.
func (t *net) settle() {
	for guard := 100 * len(t.tris); len(t.work) > 0; guard-- {
		e := t.work[len(t.work)-1]
		t.work = t.work[:len(t.work)-1]
		i, k := t.find(e[0], e[1])
		if i < 0 || t.tris[i].fixed[k] || t.tris[i].n[k] < 0 || guard < 0 {
			continue
		}
		q := t.tris[i]
		j := q.n[k]
		r := t.tris[j]
		d := r.v[r.across(i)]
		a, b, c := q.v[k], q.v[(k+1)%3], q.v[(k+2)%3]
		if t.encircles(a, b, c, d) && t.convex(a, b, d, c) {
			t.flip(i, k)
			t.work = append(t.work, [2]int{a, b}, [2]int{c, a}, [2]int{b, d}, [2]int{d, c})
		}
	}
}

// find returns the triangle that has the border from a to b and the corner
// across from it.
func (t *net) find(a, b int) (i, corner int) {
	first := t.of[a]
	i = first
	for {
		q := &t.tris[i]
		k := q.index(a)
		if q.v[(k+1)%3] == b {
			return i, (k + 2) % 3
		}
		i = q.n[(k+1)%3] // over the border that ends in a
		if i == first || i < 0 {
			break
		}
	}
	if i >= 0 {
		return -1, 0
	}
	for i = first; i >= 0; { // a far corner has no whole ring: look the other way too
		q := &t.tris[i]
		k := q.index(a)
		if q.v[(k+1)%3] == b {
			return i, (k + 2) % 3
		}
		i = q.n[(k+2)%3]
	}
	return -1, 0
}

// encircles says whether d is well inside the circle through a, b and c. It
// only decides which of two sound triangulations is nicer, so floats will do.
func (t *net) encircles(a, b, c, d int) bool {
	o := t.at[d]
	rel := func(i int) (x, y, s float64) {
		x, y = float64(t.at[i].x-o.x), float64(t.at[i].y-o.y)
		return x, y, x*x + y*y
	}
	ax, ay, as := rel(a)
	bx, by, bs := rel(b)
	cx, cy, cs := rel(c)
	det := as*(bx*cy-by*cx) - bs*(ax*cy-ay*cx) + cs*(ax*by-ay*bx)
	size := as*(math.Abs(bx*cy)+math.Abs(by*cx)) + bs*(math.Abs(ax*cy)+math.Abs(ay*cx)) + cs*(math.Abs(ax*by)+math.Abs(ay*bx))
	return det > 1e-10*size
}

// convex says whether a, b, c, d is a quadrangle that turns left at b and d,
// so that its diagonal from b to d may become the one from a to c.
func (t *net) convex(a, b, c, d int) bool { return t.turn(a, b, c) > 0 && t.turn(c, d, a) > 0 }

// flip turns the border across from corner k of triangle i.
func (t *net) flip(i, k int) {
	q := t.tris[i]
	j := q.n[k]
	r := t.tris[j]
	f := r.across(i)
	a, b, c, d := q.v[k], q.v[(k+1)%3], q.v[(k+2)%3], r.v[f]
	qb, qc := (k+1)%3, (k+2)%3
	rc, rb := (f+1)%3, (f+2)%3 // r runs d, c, b
	t.put(i, [3]int{a, b, d}, [3]int{r.n[rc], j, q.n[qc]}, [3]bool{r.fixed[rc], false, q.fixed[qc]})
	t.put(j, [3]int{a, d, c}, [3]int{r.n[rb], q.n[qb], i}, [3]bool{r.fixed[rb], q.fixed[qb], false})
	t.relink(r.n[rc], j, i)
	t.relink(q.n[qb], i, j)
}

package mesh

import (
	"math"

	"github.com/deadsy/sdfx/sdf"

	"lostwood/internal/solid"
)

// A plane holds one flat facet or several.
type plane struct {
	n      point   // of length one
	d      float64 // n.p on the plane
	facets []int
	lines  []int // of the drawing on it
}

func (q *plane) off(p point) float64 { return q.n.Dot(p) - q.d }

// A facet is a flat face of a body.
type facet struct {
	body    int
	surface int
	plane   int
	up      bool // it faces the way its plane's normal points
	loop    []knot
	hollow  bool // its outline turns inwards somewhere
	box     sdf.Box3
}

// A line is an edge of a facet or where two facets cross. It is part of the
// drawing on each of its planes.
type line struct {
	a, b   knot
	marks  []knot // places on it that divide it
	planes []int
}

// A carving is the bodies' facets with the lines they draw on one another.
type carving struct {
	snap   float64 // how near two places must be to be one, in millimetres
	on     float64 // how near a place must be to a plane or a line to be on it
	solid  *solid.Solid
	knots  *knots
	bodies []*body
	planes []plane
	facets []facet
	lines  []line
	lineOf map[[2]knot]int
	shelf  map[int][]int // planes by the slant of their normal, to find equals
}

func newCarving(s *solid.Solid, st style) *carving {
	c := &carving{snap: st.snap, on: 2 * st.snap, solid: s, knots: newKnots(st.snap), lineOf: map[[2]knot]int{}, shelf: map[int][]int{}}
	bent := joints(s.Leaves())
	for i, l := range s.Leaves() {
		b := newBody(l, st, bent, s.BoundingBox())
		c.bodies = append(c.bodies, b)
		first := len(c.facets)
		b.faces(func(face int, loop []point) { c.facet(i, l.Faces[face].Surface, loop) })
		for f := range c.facets[first:] {
			b.box = widen(b.box, c.facets[first+f].box, f == 0)
		}
	}
	return c
}

func widen(a, b sdf.Box3, first bool) sdf.Box3 {
	if first {
		return b
	}
	return a.Extend(b)
}

// facet adds a flat face; one that shrinks to nothing is left out, as where a
// turned piece meets its axis.
func (c *carving) facet(body, surface int, corners []point) {
	f := facet{body: body, surface: surface}
	for _, p := range corners {
		k := c.knots.of(p)
		if n := len(f.loop); n == 0 || f.loop[n-1] != k {
			f.loop = append(f.loop, k)
		}
	}
	for len(f.loop) > 1 && f.loop[0] == f.loop[len(f.loop)-1] {
		f.loop = f.loop[:len(f.loop)-1]
	}
	if len(f.loop) < 3 {
		return
	}
	f.box = sdf.Box3{Min: c.knots.at[f.loop[0]], Max: c.knots.at[f.loop[0]]}
	for _, k := range f.loop {
		f.box = f.box.Include(c.knots.at[k])
	}
	c.lay(&f)
	i := len(c.facets)
	c.facets = append(c.facets, f)
	c.planes[f.plane].facets = append(c.planes[f.plane].facets, i)
	for k, a := range f.loop {
		c.line(a, f.loop[(k+1)%len(f.loop)], f.plane)
	}
}

// lay finds the facet's plane, or adds it.
func (c *carving) lay(f *facet) {
	n := c.newell(f.loop)
	q := plane{n: n, d: n.Dot(c.knots.at[f.loop[0]])}
	slot := int(math.Abs(n.X) * 64)
	f.plane = -1
	for s := slot - 1; s <= slot+1 && f.plane < 0; s++ {
		for _, i := range c.shelf[s] {
			if c.within(f, i, n) {
				f.plane = i
				break
			}
		}
	}
	if f.plane < 0 {
		f.plane = len(c.planes)
		c.planes = append(c.planes, q)
		c.shelf[slot] = append(c.shelf[slot], f.plane)
	}
	f.up = c.planes[f.plane].n.Dot(n) > 0
	f.hollow = c.turnsIn(f, n)
}

// newell is the direction square to a loop.
func (c *carving) newell(loop []knot) point {
	o := c.knots.at[loop[0]]
	n := point{}
	for i := 1; i+1 < len(loop); i++ {
		n = n.Add(c.knots.at[loop[i]].Sub(o).Cross(c.knots.at[loop[i+1]].Sub(o)))
	}
	return n.Normalize()
}

// within says whether all of a facet lies in a plane.
func (c *carving) within(f *facet, i int, n point) bool {
	q := &c.planes[i]
	if math.Abs(q.n.Dot(n)) < 0.99 {
		return false
	}
	for _, k := range f.loop {
		if math.Abs(q.off(c.knots.at[k])) > c.on {
			return false
		}
	}
	return true
}

func (c *carving) turnsIn(f *facet, n point) bool {
	for i := range f.loop {
		a, b, d := c.at(f, i), c.at(f, i+1), c.at(f, i+2)
		if b.Sub(a).Cross(d.Sub(b)).Dot(n) < 0 {
			return true
		}
	}
	return false
}

// at is a facet's i-th corner, counted round and round.
func (c *carving) at(f *facet, i int) point { return c.knots.at[f.loop[i%len(f.loop)]] }

// line adds a line to a plane's drawing.
func (c *carving) line(a, b knot, onPlane int) int {
	key := [2]knot{min(a, b), max(a, b)}
	i, known := c.lineOf[key]
	if !known {
		i = len(c.lines)
		c.lineOf[key] = i
		c.lines = append(c.lines, line{a: key[0], b: key[1]})
	}
	l := &c.lines[i]
	for _, p := range l.planes {
		if p == onPlane {
			return i
		}
	}
	l.planes = append(l.planes, onPlane)
	c.planes[onPlane].lines = append(c.planes[onPlane].lines, i)
	return i
}

// mark divides a line at a knot and says whether that is news.
func (c *carving) mark(i int, k knot) bool {
	l := &c.lines[i]
	if k == l.a || k == l.b {
		return false
	}
	for _, m := range l.marks {
		if m == k {
			return false
		}
	}
	l.marks = append(l.marks, k)
	return true
}

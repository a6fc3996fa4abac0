package sight

import (
	"cmp"
	"math"
	"slices"

	"lostwood/parts/form"
)

// A Scene is bodies looked at in one view.
type Scene struct {
	view   View
	bodies []*Body
	spots  [][]spot // of each body's corners
	front  [][]bool // which facets face the eye
	facets []facet  // those that do, of all bodies
	tree   *tree
}

// A facet is a triangle that faces the eye.
type facet struct {
	body, index int
	corner      [3]spot
	// Its depth is z at the first corner and grows by gx and gy.
	gx, gy, slope float64
}

// level is the least a facet must face the eye, as a cosine: one that is seen on
// its edge covers nothing.
const level = 1e-7

// Look prepares a view of bodies.
func Look(v View, bodies []*Body) *Scene {
	s := &Scene{view: v, bodies: bodies}
	eye := v3of(form.Vec{}.Plus(v.towards(), 1))
	for i, b := range bodies {
		spots := make([]spot, len(b.corners))
		for k, c := range b.corners {
			spots[k] = v.spot(c)
		}
		front := make([]bool, len(b.facets))
		for k, f := range b.facets {
			front[k] = b.normal(k).Dot(eye) > level
			if front[k] {
				s.facets = append(s.facets, newFacet(i, k, spots[f[0]], spots[f[1]], spots[f[2]]))
			}
		}
		s.spots, s.front = append(s.spots, spots), append(s.front, front)
	}
	boxes := make([]box, len(s.facets))
	for i, f := range s.facets {
		boxes[i] = around(f.corner[:]...)
	}
	s.tree = newTree(boxes)
	return s
}

func newFacet(body, index int, a, b, c spot) facet {
	ux, uy, uz := b.x-a.x, b.y-a.y, b.z-a.z
	vx, vy, vz := c.x-a.x, c.y-a.y, c.z-a.z
	det := ux*vy - uy*vx
	f := facet{body: body, index: index, corner: [3]spot{a, b, c}}
	f.gx, f.gy = (uz*vy-vz*uy)/det, (vz*ux-uz*vx)/det
	f.slope = math.Hypot(f.gx, f.gy)
	return f
}

func (f *facet) depth(x, y float64) float64 {
	a := f.corner[0]
	return a.z + f.gx*(x-a.x) + f.gy*(y-a.y)
}

// Places nearer than these, in millimetres, are one: skins are made of corners
// that keep to about a hundred-thousandth.
const (
	beside = 2e-5 // on the view
	ahead  = 1e-4 // in depth
)

// A span is a stretch of a line, as shares of it.
type span struct{ from, to float64 }

// covers is the stretch of the line from p to q that a facet hides. What lies
// on the facet's rim counts as under it: there the rim itself is drawn.
func (f *facet) covers(p, q spot) (span, bool) {
	s := span{0, 1}
	for k := range 3 {
		a, b := f.corner[k], f.corner[(k+1)%3]
		ex, ey := b.x-a.x, b.y-a.y
		long := math.Hypot(ex, ey)
		side := func(o spot) float64 { return (ex*(o.y-a.y)-ey*(o.x-a.x))/long + beside }
		if !s.keep(side(p), side(q)) {
			return s, false
		}
	}
	over := ahead + f.slope*4*beside
	if !s.keep(f.depth(p.x, p.y)-p.z-over, f.depth(q.x, q.y)-q.z-over) {
		return s, false
	}
	return s, s.to > s.from
}

// keep narrows the span to where a figure that goes evenly from a to b is not negative.
func (s *span) keep(a, b float64) bool {
	switch {
	case a < 0 && b < 0:
		return false
	case a < 0:
		s.from = math.Max(s.from, a/(a-b))
	case b < 0:
		s.to = math.Min(s.to, a/(a-b))
	}
	return s.from <= s.to
}

// hidden are the stretches of the line from p to q that lie behind something, in
// order, apart from each other. Facets of its own body that meet there are left out.
func (s *Scene) hidden(p, q spot, body int, own ...int) []span {
	var all []span
	s.tree.find(around(p, q).grown(beside), math.Min(p.z, q.z), func(i int) {
		f := &s.facets[i]
		if f.body == body && slices.Contains(own, f.index) {
			return
		}
		if sp, ok := f.covers(p, q); ok {
			all = append(all, sp)
		}
	})
	return joined(all, beside/math.Max(math.Hypot(q.x-p.x, q.y-p.y), beside))
}

// joined puts stretches in order and makes one of those that meet.
func joined(all []span, gap float64) []span {
	slices.SortFunc(all, func(a, b span) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out []span
	for _, s := range all {
		if n := len(out) - 1; n >= 0 && s.from <= out[n].to+gap {
			out[n].to = math.Max(out[n].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// rest are the stretches of a whole line that are not among some, given in order.
func rest(taken []span) []span {
	var out []span
	at := 0.0
	for _, s := range taken {
		if s.from > at {
			out = append(out, span{at, s.from})
		}
		at = math.Max(at, s.to)
	}
	if at < 1 {
		out = append(out, span{at, 1})
	}
	return out
}

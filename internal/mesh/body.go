package mesh

import (
	"math"

	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A point is a place in space, in millimetres.
type point = v3.Vec

// A body is a leaf made flat: a polyhedron with its corners on the leaf's true
// surface.
type body struct {
	leaf    *solid.Leaf
	polygon []stop
	from    float64 // a prism's ends, within the room there is
	to      float64
	start   float64 // a turned piece's first angle
	turn    float64 // and the angle of each of its sectors
	sectors int
	rings   *rings // an oval's
	box     sdf.Box3
}

// overhang is how far an endless piece is drawn past the solid's box.
const overhang = 7.3

// newBody flattens a leaf; room is the box that holds the solid.
func newBody(l *solid.Leaf, s style, bent map[joint]bool, room sdf.Box3) *body {
	b := &body{leaf: l, box: room}
	switch shape := l.Shape.(type) {
	case form.Prism:
		b.polygon = s.flatten(l, bent)
		from, to := l.Ends()
		lo, hi := along(l, room)
		b.from, b.to = max(float64(from), lo-overhang), min(float64(to), hi+overhang)
	case form.Revolved:
		b.polygon = s.flatten(l, bent)
		b.divide(s)
	case form.Oval:
		b.rings = newRings(l, shape, s)
	}
	return b
}

// along is how far a box reaches along a prism.
func along(l *solid.Leaf, room sdf.Box3) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range corners(room) {
		_, _, z := l.Local(p)
		lo, hi = min(lo, z), max(hi, z)
	}
	return lo, hi
}

func corners(b sdf.Box3) []point {
	var all []point
	for i := range 8 {
		p := b.Min
		if i&1 != 0 {
			p.X = b.Max.X
		}
		if i&2 != 0 {
			p.Y = b.Max.Y
		}
		if i&4 != 0 {
			p.Z = b.Max.Z
		}
		all = append(all, p)
	}
	return all
}

// divide parts a turned piece into sectors.
func (b *body) divide(s style) {
	share, far := s.tolerance, 0.0
	for _, e := range b.leaf.Edges() {
		if e.Radius() > 0 {
			share = s.tolerance / 2
		}
	}
	for _, c := range b.polygon {
		far = max(far, c.x)
	}
	if !b.leaf.Full() {
		b.sectors = steps(far, float64(b.leaf.Sweep()), share)
		b.turn = float64(b.leaf.Sweep()) / float64(b.sectors)
		return
	}
	b.sectors = round(far, share)
	b.turn = 2 * math.Pi / float64(b.sectors)
	b.start = bearing(b.leaf) + s.turn*b.turn
}

// holds says whether p, not on the body's surface, is inside it.
func (b *body) holds(p point) bool {
	switch b.leaf.Shape.(type) {
	case form.Half:
		_, _, w := b.leaf.Axes()
		return p.Sub(b.leaf.Swept(0, 0, 0)).Dot(w) < 0
	case form.Prism:
		x, y, z := b.leaf.Local(p)
		return z > b.from && z < b.to && encloses(b.polygon, x, y)
	case form.Oval:
		x, y, z := b.leaf.Local(p)
		o := &b.rings.oval
		return z > float64(o.From) && z < float64(o.To) && encloses(b.rings.section(b.leaf, z), x, y)
	}
	r, y, angle := b.leaf.Round(p)
	angle = math.Mod(angle-b.start+4*math.Pi, 2*math.Pi)
	sector := math.Floor(angle / b.turn)
	if sector >= float64(b.sectors) {
		return false
	}
	// in a sector the facets are straight across: bring p to the sector's edge
	off := angle - (sector+0.5)*b.turn
	return encloses(b.polygon, r*math.Cos(off)/math.Cos(b.turn/2), y)
}

// encloses counts the polygon's edges on one side of a place.
func encloses(polygon []stop, x, y float64) bool {
	in := false
	a := polygon[len(polygon)-1]
	for _, b := range polygon {
		if (a.y > y) != (b.y > y) && x < a.x+(b.x-a.x)*(y-a.y)/(b.y-a.y) {
			in = !in
		}
		a = b
	}
	return in
}

// faces calls emit with each flat facet: the leaf's face it lies on and its
// corners, anticlockwise seen from outside.
func (b *body) faces(emit func(face int, loop []point)) {
	switch b.leaf.Shape.(type) {
	case form.Half:
		b.sheet(emit)
	case form.Prism:
		b.sweepFaces(emit)
	case form.Oval:
		b.rings.faces(b.leaf, emit)
	default:
		b.turnFaces(emit)
	}
}

// sheet is enough of a half space's plane.
func (b *body) sheet(emit func(int, []point)) {
	_, _, w := b.leaf.Axes()
	centre := b.box.Center()
	at := centre.Sub(w.MulScalar(centre.Sub(b.leaf.Swept(0, 0, 0)).Dot(w)))
	u := w.Cross(v3.Vec{X: 1})
	if math.Abs(w.X) > 0.6 {
		u = w.Cross(v3.Vec{Y: 1})
	}
	far := b.box.Size().Length() + overhang
	u = u.Normalize().MulScalar(far)
	v := w.Cross(u)
	emit(0, []point{at.Sub(u).Sub(v), at.Add(u).Sub(v), at.Add(u).Add(v), at.Sub(u).Add(v)})
}

func (b *body) sweepFaces(emit func(int, []point)) {
	n := len(b.polygon)
	foot, head := make([]point, n), make([]point, n)
	for i, c := range b.polygon {
		foot[n-1-i] = b.leaf.Swept(c.x, c.y, b.from)
		head[i] = b.leaf.Swept(c.x, c.y, b.to)
	}
	for i, c := range b.polygon {
		k := (i + 1) % n
		emit(c.face, []point{foot[n-1-i], foot[n-1-k], head[k], head[i]})
	}
	sides := len(b.leaf.Edges())
	if b.leaf.Faces[sides].Surface != solid.NoSurface {
		emit(sides, foot)
	}
	if b.leaf.Faces[sides+1].Surface != solid.NoSurface {
		emit(sides+1, head)
	}
}

func (b *body) turnFaces(emit func(int, []point)) {
	n := len(b.polygon)
	ring := func(k int) []point {
		angle := b.start + b.turn*float64(k)
		if k == b.sectors && !b.leaf.Full() {
			angle = float64(b.leaf.Sweep())
		}
		if k == b.sectors && b.leaf.Full() {
			angle = b.start
		}
		out := make([]point, n)
		for i, c := range b.polygon {
			out[i] = b.leaf.Turned(c.x, c.y, angle)
		}
		return out
	}
	first := ring(0)
	last := first
	for k := range b.sectors {
		next := ring(k + 1)
		for i, c := range b.polygon {
			j := (i + 1) % n
			emit(c.face, []point{last[i], next[i], next[j], last[j]})
		}
		last = next
	}
	if !b.leaf.Full() {
		sides := len(b.leaf.Edges())
		emit(sides, first)
		reversed := make([]point, n)
		for i := range last {
			reversed[n-1-i] = last[i]
		}
		emit(sides+1, reversed)
	}
}

package solid

import (
	"math"

	"lostwood/parts/form"
)

// A pt is a place in a profile's plane, in millimetres.
type pt struct{ x, y float64 }

func (a pt) sub(b pt) pt        { return pt{a.x - b.x, a.y - b.y} }
func (a pt) add(b pt) pt        { return pt{a.x + b.x, a.y + b.y} }
func (a pt) mul(k float64) pt   { return pt{a.x * k, a.y * k} }
func (a pt) dot(b pt) float64   { return a.x*b.x + a.y*b.y }
func (a pt) cross(b pt) float64 { return a.x*b.y - a.y*b.x }
func (a pt) length() float64    { return math.Hypot(a.x, a.y) }
func (a pt) left() pt           { return pt{-a.y, a.x} }
func polar(r, angle float64) pt { return pt{r * math.Cos(angle), r * math.Sin(angle)} }
func place(p form.Point) pt     { return pt{float64(p.X), float64(p.Y)} }
func angleOf(a pt) float64      { return math.Atan2(a.y, a.x) }
func turn(from, to, way float64) float64 { // from one angle to another, going the given way, 0 to 2 pi
	d := math.Mod(way*(to-from), 2*math.Pi)
	if d < 0 {
		d += 2 * math.Pi
	}
	return d
}

// touch is how near two places may come, in millimetres, before they are one.
const touch = 1e-9

// An Edge is one line or arc of a profile, in the profile's own coordinates.
type Edge struct {
	a, b   pt
	centre pt
	radius float64 // 0 when straight
	sweep  float64 // included angle, positive anticlockwise; 0 when straight
}

func newEdge(a, b pt, bulge float64) Edge {
	e := Edge{a: a, b: b}
	if bulge == 0 {
		return e
	}
	c := b.sub(a)
	e.sweep = 4 * math.Atan(bulge)
	e.radius = c.length() * (1 + bulge*bulge) / (4 * math.Abs(bulge))
	e.centre = a.add(b).mul(0.5).add(c.left().mul((1 - bulge*bulge) / (4 * bulge)))
	return e
}

func (e *Edge) straight() bool { return e.radius == 0 }

// belly says whether p lies on the arc's side of its chord.
func (e *Edge) belly(p pt) bool { return side(e.a, e.b, p)*e.sweep < 0 }

// side is +1 where p is left of the line from a to b and -1 where it is
// right. A place on the line counts as moved a hair to the right of the page,
// and a hair of that hair up, so that every test agrees about it.
func side(a, b, p pt) float64 {
	c := b.sub(a).cross(p.sub(a))
	switch {
	case c > 0:
		return 1
	case c < 0:
		return -1
	case b.y > a.y:
		return -1
	case b.y < a.y:
		return 1
	case b.x > a.x:
		return 1
	}
	return -1
}

// nearest returns the edge's place nearest to p.
func (e *Edge) nearest(p pt) pt {
	if e.straight() {
		c := e.b.sub(e.a)
		t := p.sub(e.a).dot(c) / c.dot(c)
		switch {
		case t <= 0:
			return e.a
		case t >= 1:
			return e.b
		}
		return e.a.add(c.mul(t))
	}
	out := p.sub(e.centre)
	r := out.length()
	if r > 0 {
		q := e.centre.add(out.mul(e.radius / r))
		if e.belly(q) {
			return q
		}
	} else {
		return e.a // every place on the arc is as near
	}
	if p.sub(e.a).length() <= p.sub(e.b).length() {
		return e.a
	}
	return e.b
}

// normal returns the direction out of the profile's inside at q on the edge.
func (e *Edge) normal(q pt) pt {
	if e.straight() {
		c := e.b.sub(e.a)
		return pt{c.y, -c.x}.mul(1 / c.length())
	}
	n := q.sub(e.centre).mul(1 / e.radius)
	if e.sweep < 0 {
		n = n.mul(-1)
	}
	return n
}

// An outline is a compiled profile.
type outline []Edge

func newOutline(p form.Profile) outline {
	o := make(outline, len(p))
	for i, v := range p {
		o[i] = newEdge(place(v.Point), place(p[(i+1)%len(p)].Point), v.Bulge)
	}
	return o
}

// near returns the signed distance at p, negative inside, the nearest place on
// the outline's edges but for those left out, and the edge it is on.
func (o outline) near(p pt, without func(edge int) bool) (d float64, q pt, edge int) {
	best := math.Inf(1)
	for i := range o {
		if without(i) {
			continue
		}
		c := o[i].nearest(p)
		v := p.sub(c)
		if l := v.dot(v); l < best {
			best, q, edge = l, c, i
		}
	}
	d = math.Sqrt(best)
	if o.inside(p) {
		d = -d
	}
	return d, q, edge
}

// allEdges leaves none out.
func allEdges(int) bool { return false }

// inside counts the chords to the right of p and the segments between chords
// and arcs that hold it.
func (o outline) inside(p pt) bool {
	in := false
	for i := range o {
		e := &o[i]
		if (e.a.y > p.y) != (e.b.y > p.y) && (side(e.a, e.b, p) > 0) == (e.b.y > e.a.y) {
			in = !in
		}
		if !e.straight() && e.belly(p) && p.sub(e.centre).length() < e.radius {
			in = !in
		}
	}
	return in
}

package solid

import (
	"math"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// Edges lists the leaf's profile; a half space has none. Edge i sweeps face i.
func (l *Leaf) Edges() []Edge { return slices.Clone(l.outline) }

// Radius is an arc's radius, and 0 for a straight edge.
func (e Edge) Radius() form.Length { return form.Length(e.radius) }

// Sweep is an arc's included angle, positive anticlockwise.
func (e Edge) Sweep() form.Angle { return form.Angle(e.sweep) }

// Centre is an arc's centre.
func (e Edge) Centre() form.Point {
	return form.Point{X: form.Length(e.centre.x), Y: form.Length(e.centre.y)}
}

// At is the place a part of the way along the edge, from 0 to 1. Its ends are
// the profile's corners to the last digit.
func (e Edge) At(part float64) (x, y float64) {
	switch {
	case part <= 0:
		return e.a.x, e.a.y
	case part >= 1:
		return e.b.x, e.b.y
	case e.straight():
		p := e.a.add(e.b.sub(e.a).mul(part))
		return p.x, p.y
	}
	p := e.centre.add(polar(e.radius, angleOf(e.a.sub(e.centre))+e.sweep*part))
	return p.x, p.y
}

// Ends are where a prism begins and ends along its frame's W.
func (l *Leaf) Ends() (from, to form.Length) { return form.Length(l.from), form.Length(l.to) }

// Sweep is the angle of a turned piece.
func (l *Leaf) Sweep() form.Angle { return form.Angle(l.sweep) }

// Axes are the leaf's directions in space, each of length one: the profile's x
// and y, and the way out of its plane. A half space has only the last, out of
// the wood.
func (l *Leaf) Axes() (u, v, w v3.Vec) { return l.u, l.v, l.w }

// Swept is the place of the profile's (x, y) at z along a prism.
func (l *Leaf) Swept(x, y, z float64) v3.Vec { return l.world(pt{x, y}, z) }

// Turned is the place of the profile's (x, y) at an angle round a turned piece.
func (l *Leaf) Turned(x, y, angle float64) v3.Vec { return l.onTurn(pt{x, y}, angle) }

// Local is Swept backwards.
func (l *Leaf) Local(p v3.Vec) (x, y, z float64) {
	q, z := l.local(p)
	return q.x, q.y, z
}

// Round is Turned backwards; the angle is from 0 to 2 pi.
func (l *Leaf) Round(p v3.Vec) (x, y, angle float64) {
	q, z := l.local(p)
	return q.length(), z, turn(0, math.Atan2(q.y, q.x), 1)
}

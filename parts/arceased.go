package parts

import (
	"math"

	"lostwood/parts/form"
)

// rim gives an edge's radius and the way out of the wood from it, along the radius.
func (a Arc) rim(e Arris) (radius Length, out Length) {
	if e.Flat == Under {
		return a.belly(), -1
	}
	return a.Radius, 1
}

// easedCuts is a ring turned about the wheel's centre right round, so that it
// goes past both joints.
func (a Arc) easedCuts(e EasedEdge) []form.Volume {
	radius, out := a.rim(e.Edge)
	p := spandrel(e.Radius, min(overrun, a.belly()/2))
	if out < 0 {
		p = p.Transposed().Mirrored(0).Transposed()
	}
	y := a.Wide
	if e.Edge.Side == FirstSide {
		p, y = p.Mirrored(0), 0
	}
	c := a.centre()
	return []form.Volume{form.Revolved{
		Frame:   form.Frame{Origin: form.Vec{X: c.X, Y: y, Z: c.Y}, U: form.Dir{Z: 1}, V: form.Dir{X: 1}},
		Profile: p.Translated(radius, 0),
		Sweep:   2 * math.Pi,
	}}
}

func (a Arc) easedLines(e EasedEdge, f Face) []form.Path {
	radius, out := a.rim(e.Edge)
	y := e.Radius
	if e.Edge.Side == SecondSide {
		y = a.Wide - y
	}
	frame := f.Frame(a)
	on := func(y Length, p form.Point) form.Point { return frame.On(form.Vec{X: p.X, Y: y, Z: p.Y}) }
	switch {
	case f == e.Edge.Side:
		return []form.Path{a.ringLine(frame, y, radius-out*e.Radius)}
	case f == e.Edge.Flat:
		h := a.half(radius)
		return []form.Path{{{Point: on(y, a.at(radius, -h))}, {Point: on(y, a.at(radius, h))}}}
	case f.isEnd():
		way := 1.0
		if f == FirstEnd {
			way = -1
		}
		inY := e.Edge.inY()
		return []form.Path{form.Through(8, func(t float64) form.Point {
			sin, cos := math.Sincos(t * math.Pi / 2)
			r := radius - out*e.Radius*Length(1-sin)
			return on(y-inY*e.Radius*Length(cos), a.at(r, way*a.half(r)))
		})}
	}
	return nil
}

// ringLine is a line round the wheel at a radius, from joint to joint, on a side.
func (a Arc) ringLine(frame form.Frame, y, radius Length) form.Path {
	h := a.half(radius)
	on := func(angle float64) form.Point {
		p := a.at(radius, angle)
		return frame.On(form.Vec{X: p.X, Y: y, Z: p.Y})
	}
	bulge := -math.Tan(h / 2)
	if frame.V.Z < 0 {
		bulge = -bulge
	}
	return form.Path{{Point: on(-h), Bulge: bulge}, {Point: on(h)}}
}

func (a Arc) easedRoom(Arris) Length { return min(a.Wide, a.Depth) - .5 }

func (a Arc) easedLong(e EasedEdge) Length {
	radius, out := a.rim(e.Edge)
	radius -= out * e.Radius * Length(spandrelCentroid)
	return 2 * radius * Length(a.half(radius))
}

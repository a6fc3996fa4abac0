package parts

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// rim gives an edge's radius and the way out of the wood from it, along the radius.
func (a Arc) rim(e Arris) (radius Length, out Length) {
	y := Length(0)
	if e.Side == SecondSide {
		y = a.Wide
	}
	if e.Flat == Under {
		return a.bellyAt(y), -1
	}
	return a.backAt(y), 1
}

// A rounding is an edge's, in the plane of radius and place across: the corner,
// where it begins on the side and where on the back or belly.
type rounding struct{ onSide, corner, onFlat form.Point }

func (a Arc) rounding(e EasedEdge) rounding {
	radius, out := a.rim(e.Edge)
	y, inY := Length(0), e.Edge.inY()
	if e.Edge.Side == SecondSide {
		y = a.Wide
	}
	corner := form.Point{X: radius, Y: y}
	side := form.Point{X: radius - out, Y: y}
	fall := a.under(y+inY) - a.under(y)
	flat := form.Point{X: radius - fall, Y: y + inY}
	p := form.Rounded(side, corner, flat, e.Radius)
	return rounding{p[0].Point, corner, p[1].Point}
}

// easedCuts is a ring turned about the wheel's centre right round, so that it
// goes past both joints.
func (a Arc) easedCuts(e EasedEdge) []form.Volume {
	r := a.rounding(e)
	_, out := a.rim(e.Edge)
	pastR, pastY := out*min(overrun, a.belly()/2), -e.Edge.inY()*overrun
	far := form.Point{X: r.corner.X + pastR, Y: r.corner.Y + pastY}
	p := form.Profile{
		{Point: r.onSide},
		{Point: form.Point{X: r.onSide.X, Y: far.Y}},
		{Point: far},
		{Point: form.Point{X: far.X, Y: r.onFlat.Y}},
		{Point: r.onFlat, Bulge: r.bulge()},
	}
	if p.Area() < 0 {
		p = p.Reversed()
	}
	return []form.Volume{form.Revolved{Frame: a.turning(), Profile: p, Sweep: 2 * math.Pi}}
}

// bulge is the rounding's, on the way from the flat to the side.
func (r rounding) bulge() float64 {
	ux, uy := float64(r.corner.X-r.onFlat.X), float64(r.corner.Y-r.onFlat.Y)
	vx, vy := float64(r.onSide.X-r.corner.X), float64(r.onSide.Y-r.corner.Y)
	return math.Tan(math.Atan2(ux*vy-uy*vx, ux*vx+uy*vy) / 4)
}

func (a Arc) easedLines(e EasedEdge, f Face) []form.Path {
	r := a.rounding(e)
	frame := f.Frame(a)
	on := func(y Length, p form.Point) form.Point { return frame.On(form.Vec{X: p.X, Y: y, Z: p.Y}) }
	switch {
	case f == e.Edge.Side:
		return []form.Path{a.ringLine(frame, r.onSide.Y, r.onSide.X)}
	case f == e.Edge.Flat:
		h := a.half(r.onFlat.X)
		return []form.Path{{
			{Point: on(r.onFlat.Y, a.at(r.onFlat.X, -h))}, {Point: on(r.onFlat.Y, a.at(r.onFlat.X, h))},
		}}
	case f.isEnd():
		way := 1.0
		if f == FirstEnd {
			way = -1
		}
		return []form.Path{form.Through(8, func(t float64) form.Point {
			p := r.arcAt(t)
			return on(p.Y, a.at(p.X, way*a.half(p.X)))
		})}
	}
	return nil
}

// arcAt is a place on the rounding: 0 on the side, 1 on the flat.
func (r rounding) arcAt(t float64) form.Point {
	b := (form.Path{{Point: r.onFlat, Bulge: r.bulge()}, {Point: r.onSide}}).Bend(0)
	angle := float64(b.From) + float64(b.Turn)*t
	if r.bulge() > 0 { // it runs from the flat to the side
		angle = float64(b.From) + float64(b.Turn)*(1-t)
	}
	sin, cos := math.Sincos(angle)
	return form.Point{X: b.Centre.X + b.Radius*Length(cos), Y: b.Centre.Y + b.Radius*Length(sin)}
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

func (a Arc) easedRoom(Arris) Length { return min(a.Wide, a.Depth-a.fall()) - .5 }

// easedWood is what a rounding takes off: its section turned round the wheel's
// centre as far as the piece goes.
func (a Arc) easedWood(e EasedEdge) quantity.Volume {
	r := a.rounding(e)
	p := form.Profile{{Point: r.onSide}, {Point: r.corner}, {Point: r.onFlat, Bulge: r.bulge()}}
	if p.Area() < 0 {
		p = p.Reversed()
	}
	radius := p.Centroid().X
	return quantity.Volume(float64(p.Area()) * float64(2*radius) * a.half(radius))
}

package parts

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A RadialHole is bored through a felloe towards the wheel's centre: for a
// spoke's tongue or a tyre bolt.
type RadialHole struct {
	ID       string
	What     string // "tongue hole"
	Face     Face   // Upper: entered at the back; Under: at the belly
	Angle    Angle  // from the felloe's middle, towards its second end
	Across   Length // of its middle, from the first side
	Diameter Length
}

// Ref is as in Feature.
func (r RadialHole) Ref() string { return r.ID }

// frame has its origin at the wheel's centre and W out along the hole, U
// along the rim and V across it.
func (r RadialHole) frame(a Arc) form.Frame {
	c := a.centre()
	sin, cos := math.Sincos(float64(r.Angle))
	return form.Frame{
		Origin: form.Vec{X: c.X, Y: r.Across, Z: c.Y},
		U:      form.Dir{X: cos, Z: -sin},
		V:      form.Dir{Y: 1},
	}
}

// Cuts is as in Feature.
func (r RadialHole) Cuts(b Body) []form.Volume {
	a, ok := b.(Arc)
	if !ok {
		return nil
	}
	return []form.Volume{form.Prism{
		Frame: r.frame(a), Profile: disc(form.Point{}, r.Diameter), From: a.belly() / 2, To: endless(),
	}}
}

// mouth is where the hole's edge meets the rim at a radius, seen square on to
// a face: at runs from 0 to 1 once round.
func (r RadialHole) mouth(a Arc, f form.Frame, radius Length) form.Profile {
	hole := r.frame(a)
	round := form.Through(16, func(t float64) form.Point {
		sin, cos := math.Sincos(2 * math.Pi * t)
		u, v := r.Diameter/2*Length(cos), r.Diameter/2*Length(sin)
		out := Length(math.Sqrt(float64(radius*radius - u*u)))
		return f.On(hole.At(u, v, out))
	})
	p := form.Profile(round[:len(round)-1])
	if p.Area() < 0 {
		return p.Reversed()
	}
	return p
}

// Marks is as in Feature: what is seen of its mouth on the back and the belly,
// and its middle line and sides on the felloe's sides.
func (r RadialHole) Marks(b Body, f Face) []Mark {
	a, ok := b.(Arc)
	if !ok || f.isEnd() || !f.known() {
		return nil
	}
	frame := f.Frame(a)
	if f == Upper || f == Under {
		radius, _ := a.rim(Arris{Flat: f})
		stroke := Hidden
		if f == r.Face {
			stroke = Seen
		}
		m := closed(r.ID, Boring, stroke, r.mouth(a, frame, radius), r.What)
		centre := frame.On(r.frame(a).At(0, 0, radius))
		m.Centre, m.Diameter = &centre, r.Diameter
		return []Mark{m}
	}
	var out []Mark
	for _, u := range []Length{-r.Diameter / 2, 0, r.Diameter / 2} {
		m := Mark{Ref: r.ID, Work: Boring, Stroke: Hidden, Label: r.What, Path: r.sideLine(a, frame, u)}
		if u == 0 {
			m.Stroke = Middle
		}
		out = append(out, m)
	}
	return out
}

// sideLine runs along the hole from belly to back, a step u along the rim from its middle.
func (r RadialHole) sideLine(a Arc, f form.Frame, u Length) form.Path {
	to := func(radius Length) form.Vertex {
		out := Length(math.Sqrt(float64(radius*radius - u*u)))
		return form.Vertex{Point: f.On(r.frame(a).At(u, 0, out))}
	}
	return form.Path{to(a.belly()), to(a.Radius)}
}

// Operations is as in Feature.
func (r RadialHole) Operations(b Body) []Operation {
	op := Operation{
		Ref: r.ID, Work: Boring, What: r.What, Face: r.Face,
		Sizes: measured(Measure{"diameter", r.Diameter}), Note: "bore towards the wheel's centre",
	}
	if a, ok := b.(Arc); ok {
		radius, _ := a.rim(Arris{Flat: r.Face})
		op.At = r.Face.Frame(a).On(r.frame(a).At(0, 0, radius))
	}
	return []Operation{op}
}

// Check is as in Feature.
func (r RadialHole) Check(b Body) error {
	a, ok := b.(Arc)
	if !ok || (r.Face != Upper && r.Face != Under) {
		return errors.New(r.ID + ": a hole towards the wheel's centre is bored in a felloe, from its back or its belly")
	}
	const why = "it must not break out of the felloe"
	l := limits{}
	l.need(r.ID+" across", r.Across, 0, a.Wide, "it must lie on the wood")
	l.need(r.ID+" diameter", r.Diameter, 1, min(2*min(r.Across, a.Wide-r.Across), a.belly())-1, why)
	if !l.sound() {
		return l.all()
	}
	most := a.half(a.belly()) - math.Asin(float64(r.Diameter/2/a.belly()))
	if !(math.Abs(float64(r.Angle)) <= most) {
		l.add(&LimitError{
			Dimension: r.ID + " angle", Got: Length(r.Angle.Degrees()), Min: Length(-most * 180 / math.Pi),
			Max: Length(most * 180 / math.Pi), Why: why, In: InDegrees,
		})
	}
	return l.all()
}

// Mirrored is as in Feature.
func (r RadialHole) Mirrored(b Body) Feature {
	_, wide, _ := b.Box()
	r.Across = wide - r.Across
	return r
}

// removed sums the hole's upright slices from the belly to the back.
func (r RadialHole) removed(b Body) quantity.Volume {
	a, ok := b.(Arc)
	if !ok {
		return 0
	}
	const points = 24
	rad := float64(r.Diameter / 2)
	reach := func(radius Length, u float64) float64 { return math.Sqrt(float64(radius*radius) - u*u) }
	return quantity.Volume(quad.Fixed(func(t float64) float64 {
		sin, cos := math.Sincos(t)
		u := rad * sin
		return 2 * rad * rad * cos * cos * (reach(a.Radius, u) - reach(a.belly(), u))
	}, -math.Pi/2, math.Pi/2, points, quad.Legendre{}, 0))
}

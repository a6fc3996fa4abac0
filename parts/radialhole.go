package parts

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A RadialHole is bored, or cut square, through a felloe towards the wheel's
// centre: for a spoke's tongue or a tyre bolt. In a dished wheel it leans.
type RadialHole struct {
	ID       string
	What     string // "tongue hole"
	Face     Face   // Upper: entered at the back; Under: at the belly
	Angle    Angle  // from the felloe's middle, towards its second end
	Across   Length // of its middle at the face it is entered on, from the first side
	Diameter Length // or, of a square hole, its side
	Section  HoleSection
	Lean     Angle // out of square to the wheel's axis: where positive, towards the second side as it goes out
}

// A HoleSection is a hole's section.
type HoleSection int

// The sections of holes.
const (
	RoundHole HoleSection = iota
	SquareHole
)

// Ref is as in Feature.
func (r RadialHole) Ref() string { return r.ID }

// frame has its origin where the hole's middle line meets the face it is
// entered on, W out along the hole, U along the rim and V across it.
func (r RadialHole) frame(a Arc) form.Frame {
	radius := a.bellyAt(r.Across)
	if r.Face == Upper {
		radius = a.backAt(r.Across)
	}
	c := a.Centre()
	sin, cos := math.Sincos(float64(r.Angle))
	lean, upright := math.Sincos(float64(r.Lean))
	return form.Frame{
		Origin: form.Vec{X: c.X + radius*Length(sin), Y: r.Across, Z: c.Y + radius*Length(cos)},
		U:      form.Dir{X: cos, Z: -sin},
		V:      form.Dir{X: -lean * sin, Y: upright, Z: -lean * cos},
	}
}

// section is the hole's, in its frame.
func (r RadialHole) section() form.Profile {
	if r.Section == SquareHole {
		return block(form.Point{}, r.Diameter, r.Diameter)
	}
	return disc(form.Point{}, r.Diameter)
}

// Cuts is as in Feature.
func (r RadialHole) Cuts(b Body) []form.Volume {
	a, ok := b.(Arc)
	if !ok {
		return nil
	}
	from := -a.belly() / 2
	if r.Face == Upper {
		from -= a.Depth
	}
	return []form.Volume{form.Prism{Frame: r.frame(a), Profile: r.section(), From: from, To: endless()}}
}

// reach is how far along the hole, from its frame's origin, a line beside its
// middle meets the back or the belly.
func (r RadialHole) reach(a Arc, f Face, u, v Length) Length {
	surface, start := a.bellyAt, a.bellyAt(r.Across)
	if f == Upper {
		surface = a.backAt
	}
	if r.Face == Upper {
		start = a.backAt(r.Across)
	}
	lean, upright := math.Sincos(float64(r.Lean))
	w := Length(0)
	// Each round is nearer by the bevel's slope times the lean's.
	for range 40 {
		radius := surface(r.Across + w*Length(lean) + v*Length(upright))
		out := Length(math.Sqrt(float64(radius*radius - u*u)))
		next := (out - start + v*Length(lean)) / Length(upright)
		if math.Abs(float64(next-w)) < 1e-12 {
			return next
		}
		w = next
	}
	return w
}

// mouth is where the hole's edge meets the back or the belly, seen square on to a face.
func (r RadialHole) mouth(a Arc, f form.Frame, surface Face) form.Profile {
	hole := r.frame(a)
	on := func(u, v Length) form.Point { return f.On(hole.At(u, v, r.reach(a, surface, u, v))) }
	var p form.Profile
	if r.Section == SquareHole {
		s := r.section()
		for i, v := range s {
			n := s[(i+1)%len(s)]
			const chords = 8 // hardly curved: within a few thousandths of a millimetre
			for k := range chords {
				t := Length(k) / chords
				p = append(p, form.Vertex{Point: on(v.X+(n.X-v.X)*t, v.Y+(n.Y-v.Y)*t)})
			}
		}
	} else {
		round := form.Through(16, func(t float64) form.Point {
			sin, cos := math.Sincos(2 * math.Pi * t)
			return on(r.Diameter/2*Length(cos), r.Diameter/2*Length(sin))
		})
		p = form.Profile(round[:len(round)-1])
	}
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
		stroke := Hidden
		if f == r.Face {
			stroke = Seen
		}
		m := closed(r.ID, Boring, stroke, r.mouth(a, frame, f), r.What)
		centre := frame.On(r.frame(a).At(0, 0, r.reach(a, f, 0, 0)))
		m.Centre = &centre
		if r.Section == RoundHole {
			m.Diameter = r.Diameter
		} else {
			m.Work = Mortising
		}
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
	to := func(surface Face) form.Vertex {
		return form.Vertex{Point: f.On(r.frame(a).At(u, 0, r.reach(a, surface, u, 0)))}
	}
	return form.Path{to(Under), to(Upper)}
}

// Operations is as in Feature.
func (r RadialHole) Operations(b Body) []Operation {
	op := Operation{
		Ref: r.ID, Work: Boring, What: r.What, Face: r.Face,
		Sizes: measured(Measure{"diameter", r.Diameter}), Note: "bore towards the wheel's centre",
	}
	if r.Section == SquareHole {
		op.Work, op.Sizes, op.Note = Mortising, measured(Measure{"square", r.Diameter}), "cut towards the wheel's centre"
	}
	if r.Lean != 0 {
		op.Note += ", " + leaning(r.Lean)
	}
	if a, ok := b.(Arc); ok {
		op.At = r.Face.Frame(a).On(r.frame(a).Origin)
	}
	return []Operation{op}
}

// Mirrored is as in Feature.
func (r RadialHole) Mirrored(b Body) Feature {
	_, wide, _ := b.Box()
	r.Across = wide - r.Across
	if r.Lean != 0 {
		r.Lean = -r.Lean
	}
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
	long := func(u float64) float64 {
		return float64(r.reach(a, Upper, Length(u), 0) - r.reach(a, Under, Length(u), 0))
	}
	if r.Section == SquareHole {
		return quantity.Volume(2 * rad * quad.Fixed(long, -rad, rad, points, quad.Legendre{}, 0))
	}
	return quantity.Volume(quad.Fixed(func(t float64) float64 {
		sin, cos := math.Sincos(t)
		return 2 * rad * rad * cos * cos * long(rad*sin)
	}, -math.Pi/2, math.Pi/2, points, quad.Legendre{}, 0))
}

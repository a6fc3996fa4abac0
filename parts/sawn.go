package parts

import (
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Sawn is a body sawn to two outlines square to each other: what is inside
// both, as a joiner saws first the one and then the other. Its box starts at
// the origin, and both outlines run over the same x.
//
// Where either outline is an upright rectangle the volume is a single prism.
type Sawn struct {
	Plan form.Profile // seen from above: x along, y across
	Side form.Profile // seen from the first side: x along, z up
}

// Square is a plain squared timber.
func Square(long, wide, deep Length) Sawn {
	return Sawn{
		Plan: form.Rectangle(form.Point{}, form.Point{X: long, Y: wide}),
		Side: form.Rectangle(form.Point{}, form.Point{X: long, Y: deep}),
	}
}

// overrun is how far a cut goes past the wood, so that no skin is left where
// the two would share a face.
const overrun Length = 10

// Box is as in Body.
func (s Sawn) Box() (long, wide, deep Length) {
	_, p := s.Plan.Bounds()
	_, q := s.Side.Bounds()
	return p.X, p.Y, q.Y
}

// Volume is as in Body.
func (s Sawn) Volume() form.Volume {
	_, wide, deep := s.Box()
	plan := form.Prism{Frame: planFrame(), Profile: s.Plan, To: deep}
	if s.Side.IsRectangle() {
		return plan
	}
	side := form.Prism{Frame: FirstSide.Frame(s), Profile: s.Side, From: -wide}
	if s.Plan.IsRectangle() {
		return side
	}
	// The two would share their ends: the side's run past the plan's.
	plan.From, plan.To = -overrun, deep+overrun
	side.From, side.To = -wide-overrun, overrun
	side.Profile = pastEnds(s.Side)
	return form.Intersection{plan, side}
}

// planFrame is the frame of the part itself, for a plan swept upwards.
func planFrame() form.Frame { return form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}} }

// pastEnds carries an outline on past its upright ends.
func pastEnds(p form.Profile) form.Profile {
	lo, hi := p.Bounds()
	var out form.Profile
	for i, v := range p {
		out = append(out, v)
		n := p[(i+1)%len(p)]
		if v.Bulge != 0 || v.X != n.X || (v.X != lo.X && v.X != hi.X) {
			continue
		}
		step := overrun
		if v.X == lo.X {
			step = -step
		}
		out = append(out,
			form.Vertex{Point: form.Point{X: v.X + step, Y: v.Y}},
			form.Vertex{Point: form.Point{X: v.X + step, Y: n.Y}})
	}
	return out
}

// Outline is as in Body. An end's outline takes in everything seen from
// there. It is exact for straight edges; where an arc in one outline and a
// slope in the other make a curve that is no arc, short chords stand for it,
// less than a thousandth of a millimetre inside.
func (s Sawn) Outline(f Face) form.Profile {
	_, wide, deep := s.Box()
	switch f {
	case Upper:
		return s.Plan
	case Under:
		return s.Plan.Mirrored(wide)
	case FirstSide:
		return s.Side
	case SecondSide:
		return s.Side.Mirrored(deep)
	case FirstEnd:
		return s.endOutline().Transposed().Mirrored(wide).Transposed()
	}
	return s.endOutline()
}

// Net is as in Body: the exact integral of the section along x.
func (s Sawn) Net() quantity.Volume {
	_, wide, deep := s.Box()
	if s.Plan.IsRectangle() {
		return quantity.Volume(float64(s.Side.Area()) * float64(wide))
	}
	if s.Side.IsRectangle() {
		return quantity.Volume(float64(s.Plan.Area()) * float64(deep))
	}
	return quantity.Volume(integral(s.stations(), func(x float64) float64 {
		return total(s.Plan.Chords(Length(x))) * total(s.Side.Chords(Length(x)))
	}))
}

func total(chords []form.Stretch) float64 {
	var t float64
	for _, c := range chords {
		t += float64(c.Long())
	}
	return t
}

// Mirrored is as in Body.
func (s Sawn) Mirrored() Body {
	_, wide, _ := s.Box()
	return Sawn{Plan: s.Plan.Mirrored(wide), Side: s.Side}
}

// Blank is as in Body: straight stock as large as the box.
func (s Sawn) Blank() Blank {
	long, wide, deep := s.Box()
	return Blank{Long: long, Wide: wide, Deep: deep, Making: Squared}
}

// shapeOf gives the two outlines of any body.
func shapeOf(b Body) Sawn {
	if s, ok := b.(Sawn); ok {
		return s
	}
	return Sawn{Plan: b.Outline(Upper), Side: b.Outline(FirstSide)}
}

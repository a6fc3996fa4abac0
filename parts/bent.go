package parts

import (
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Bent is a rail of one section all along, bent over its flat: its middle line
// lies level, of straight lines and arcs that run smoothly into each other.
//
// The box starts at the origin, so the middle line keeps half the thickness
// away from its sides. The first end is where the line starts. Its outline seen
// from above is exact: the middle line's offsets and the two ends.
type Bent struct {
	Middle form.Path // seen from above: x along, y across
	Thick  Length    // across the middle line, level
	Deep   Length    // up
}

func (b Bent) plan() form.Profile { return b.Middle.Band(b.Thick / 2) }

// Box is as in Body.
func (b Bent) Box() (long, wide, deep Length) {
	_, hi := b.plan().Bounds()
	return hi.X, hi.Y, b.Deep
}

// Volume is as in Body: one prism, so that no two pieces have to meet.
func (b Bent) Volume() form.Volume {
	return form.Prism{Frame: planFrame(), Profile: b.plan(), To: b.Deep}
}

// Outline is as in Body.
func (b Bent) Outline(f Face) form.Profile {
	long, wide, deep := b.Box()
	switch f {
	case Upper:
		return b.plan()
	case Under:
		return b.plan().Mirrored(wide)
	case FirstSide, SecondSide:
		return form.Rectangle(form.Point{}, form.Point{X: long, Y: deep})
	}
	return form.Rectangle(form.Point{}, form.Point{X: wide, Y: deep})
}

// Net is as in Body.
func (b Bent) Net() quantity.Volume {
	return quantity.Volume(float64(b.plan().Area()) * float64(b.Deep))
}

// Mirrored is as in Body.
func (b Bent) Mirrored() Body {
	_, wide, _ := b.Box()
	m := make(form.Path, len(b.Middle))
	for i, v := range b.Middle {
		m[i] = form.Vertex{Point: form.Point{X: v.X, Y: wide - v.Y}, Bulge: -v.Bulge}
	}
	b.Middle = m
	return b
}

// Blank is as in Body: straight stock as long as the middle line, which is
// taken to keep its length in bending (common practice, no source).
func (b Bent) Blank() Blank {
	return Blank{Long: b.Middle.Long(), Wide: b.Thick, Deep: b.Deep, Making: Steamed}
}

// end is the plane of one end of the rail.
func (b Bent) end(f Face) (form.Frame, form.Profile) {
	at, out := b.Middle.End()
	if f == FirstEnd {
		at, out = b.Middle.Start()
		out = out.Opposite()
	}
	u := form.Dir{X: -out.Y, Y: out.X}
	origin := form.Vec{X: at.X, Y: at.Y}.Plus(u, -b.Thick/2)
	return form.Frame{Origin: origin, U: u, V: form.Dir{Z: 1}},
		form.Rectangle(form.Point{}, form.Point{X: b.Thick, Y: b.Deep})
}

package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Tongue is a spoke's tenon in the felloe, round or square, at its second end.
type Tongue struct {
	ID       string
	Long     Length // from its shoulder, in the middle, to the end
	Thick    Length // diameter or side
	Section  HoleSection
	Shoulder Angle // out of square; see Foot
}

// Ref is as in Feature.
func (t Tongue) Ref() string { return t.ID }

func (t Tongue) section(b Body) form.Profile {
	_, wide, deep := b.Box()
	at := form.Point{X: wide / 2, Y: deep / 2}
	if t.Section == SquareHole {
		return block(at, t.Thick, t.Thick)
	}
	return disc(at, t.Thick)
}

func (t Tongue) station(b Body) Length {
	long, _, _ := b.Box()
	return long - t.Long
}

// Cuts is as in Feature.
func (t Tongue) Cuts(b Body) []form.Volume {
	beyond := slanted(b, t.station(b), t.Shoulder)
	beyond.Normal = beyond.Normal.Opposite()
	stands := form.Prism{Frame: SecondEnd.Frame(b), Profile: t.section(b), From: -endless(), To: endless()}
	return []form.Volume{form.Difference{From: beyond, Cut: []form.Volume{stands}}}
}

// Marks is as in Feature.
func (t Tongue) Marks(b Body, f Face) []Mark {
	long, wide, deep := b.Box()
	x := t.station(b)
	half := t.Thick / 2
	switch f {
	case SecondEnd:
		m := closed(t.ID, Tenoning, Seen, t.section(b), "tongue")
		m.Centre = &form.Point{X: wide / 2, Y: deep / 2}
		if t.Section == RoundHole {
			m.Diameter = t.Thick
		}
		return []Mark{m}
	case Upper, Under:
		z := deep
		if f == Under {
			z = 0
		}
		at := slantedAt(b, x, t.Shoulder, z)
		return []Mark{
			shoulder(t.ID, form.Point{X: at}, form.Point{X: at, Y: wide}),
			closed(t.ID, Tenoning, Seen, form.Rectangle(form.Point{X: x, Y: wide/2 - half}, form.Point{X: long, Y: wide/2 + half}), "tongue"),
		}
	case FirstSide, SecondSide:
		frame := f.Frame(b)
		at := func(z Length) form.Point { return frame.On(form.Vec{X: slantedAt(b, x, t.Shoulder, z), Z: z}) }
		low, high := at(deep/2-half), at(deep/2+half)
		tongue := form.Polygon(low, form.Point{X: long, Y: low.Y}, form.Point{X: long, Y: high.Y}, high)
		if tongue.Area() < 0 {
			tongue = tongue.Reversed()
		}
		return []Mark{shoulder(t.ID, at(0), at(deep)), closed(t.ID, Tenoning, Seen, tongue, "tongue")}
	}
	return nil
}

// Operations is as in Feature.
func (t Tongue) Operations(b Body) []Operation {
	_, wide, deep := b.Box()
	size := Measure{"diameter", t.Thick}
	if t.Section == SquareHole {
		size.Name = "square"
	}
	return []Operation{{
		Ref: t.ID, Work: Tenoning, What: "tongue", Face: SecondEnd, At: form.Point{X: wide / 2, Y: deep / 2},
		Sizes: measured(size, Measure{"long", t.Long}), Note: shoulderNote(t.Shoulder),
	}}
}

// Check is as in Feature.
func (t Tongue) Check(b Body) error {
	if _, square := b.(Sawn); !square {
		return errors.New(t.ID + ": a tongue stands on squared wood")
	}
	long, wide, deep := b.Box()
	l := limits{}
	l.need(t.ID+" long", t.Long, 1, long/2, "")
	l.need(t.ID+" thick", t.Thick, 1, min(wide, deep)-2*stands, "its shoulder stands out")
	return l.all()
}

// Mirrored is as in Feature: it is alike both ways.
func (t Tongue) Mirrored(Body) Feature { return t }

func (t Tongue) removed(b Body) quantity.Volume {
	_, wide, deep := b.Box()
	return t.Long.Times(deep).Deep(wide) - quantity.Volume(area(t.section(b))*float64(t.Long))
}

package parts

import (
	"errors"
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Foot is a spoke's tenon at its first end: parallel round the nave, tapered
// a little front to back, its shoulder cut to the dish of the wheel.
type Foot struct {
	ID       string
	Long     Length // from its inner end to the shoulder, in the middle
	Wide     Length // up, at the shoulder
	Thick    Length // across
	Point    Length // up, at its inner end; 0 is as wide as at the shoulder
	Shoulder Angle  // out of square: where positive, the upper edge lies further from the end
}

// Ref is as in Feature.
func (t Foot) Ref() string { return t.ID }

// slanted is a plane square to the part's sides through its middle at a
// station, out of square to its length: what lies towards the first end is
// inside.
func slanted(b Body, station Length, slant Angle) form.Half {
	_, _, deep := b.Box()
	sin, cos := math.Sincos(float64(slant))
	return form.Half{At: form.Vec{X: station, Z: deep / 2}, Normal: form.Dir{X: cos, Z: -sin}}
}

// slantedAt is where such a plane passes a height.
func slantedAt(b Body, station Length, slant Angle, z Length) Length {
	_, _, deep := b.Box()
	return station + (z-deep/2)*Length(math.Tan(float64(slant)))
}

func (t Foot) point() Length {
	if t.Point == 0 {
		return t.Wide
	}
	return t.Point
}

// side is the foot seen from the first side, from one station to another.
func (t Foot) side(b Body, from, to Length) form.Profile {
	_, _, deep := b.Box()
	half := func(x Length) Length { return (t.point() + (t.Wide-t.point())*x/t.Long) / 2 }
	return form.Polygon(
		form.Point{X: from, Y: deep/2 - half(from)}, form.Point{X: to, Y: deep/2 - half(to)},
		form.Point{X: to, Y: deep/2 + half(to)}, form.Point{X: from, Y: deep/2 + half(from)})
}

// Cuts is as in Feature.
func (t Foot) Cuts(b Body) []form.Volume {
	_, wide, deep := b.Box()
	past := t.Long + deep*Length(math.Abs(math.Tan(float64(t.Shoulder)))) + 1
	stands := form.Prism{
		Frame: FirstSide.Frame(b), Profile: t.side(b, -overrun, past), From: -(wide + t.Thick) / 2, To: -(wide - t.Thick) / 2,
	}
	return []form.Volume{form.Difference{From: slanted(b, t.Long, t.Shoulder), Cut: []form.Volume{stands}}}
}

// Marks is as in Feature: the shoulder and the foot on the long faces, its
// outline on the end.
func (t Foot) Marks(b Body, f Face) []Mark {
	_, wide, deep := b.Box()
	frame := f.Frame(b)
	switch f {
	case FirstEnd:
		return []Mark{closed(t.ID, Tenoning, Seen, block(form.Point{X: wide / 2, Y: deep / 2}, t.Thick, t.point()), "foot")}
	case Upper, Under:
		z := deep
		if f == Under {
			z = 0
		}
		x := slantedAt(b, t.Long, t.Shoulder, z)
		edge := slantedAt(b, t.Long, t.Shoulder, deep/2+(z-deep/2)*t.Wide/deep)
		foot := form.Rectangle(form.Point{Y: (wide - t.Thick) / 2}, form.Point{X: edge, Y: (wide + t.Thick) / 2})
		return []Mark{
			shoulder(t.ID, form.Point{X: x}, form.Point{X: x, Y: wide}),
			closed(t.ID, Tenoning, Seen, foot, "foot"),
		}
	case FirstSide, SecondSide:
		at := func(z Length) form.Point { return frame.On(form.Vec{X: slantedAt(b, t.Long, t.Shoulder, z), Z: z}) }
		s := t.outline(b)
		var foot form.Profile
		for _, v := range s {
			foot = append(foot, form.Vertex{Point: frame.On(form.Vec{X: v.X, Z: v.Y})})
		}
		if foot.Area() < 0 {
			foot = foot.Reversed()
		}
		return []Mark{shoulder(t.ID, at(0), at(deep)), closed(t.ID, Tenoning, Seen, foot, "foot")}
	}
	return nil
}

// outline is the foot seen from the first side, up to its shoulder.
func (t Foot) outline(b Body) form.Profile {
	_, _, deep := b.Box()
	slope := (t.Wide - t.point()) / 2 / t.Long
	tan := Length(math.Tan(float64(t.Shoulder)))
	// The sides rise by slope and the shoulder's plane moves by tan.
	corner := func(way Length) form.Point {
		z := way * t.Wide / 2
		x := t.Long + z*tan/(1-way*slope*tan)
		return form.Point{X: x, Y: deep/2 + way*(t.point()/2+slope*x)}
	}
	return form.Polygon(form.Point{Y: deep/2 - t.point()/2}, corner(-1), corner(1), form.Point{Y: deep/2 + t.point()/2})
}

func shoulder(ref string, from, to form.Point) Mark {
	return Mark{Ref: ref, Work: Tenoning, Stroke: Seen, Label: "shoulder", Path: form.Path(form.Polygon(from, to))}
}

// shoulderNote tells how a spoke's shoulder is cut.
func shoulderNote(slant Angle) string {
	switch {
	case math.Abs(float64(slant)) < 1e-6:
		return "shoulder square"
	case slant > 0:
		return fmt.Sprintf("shoulder %.2f degrees out of square, its front edge nearer the tongue's end", slant.Degrees())
	}
	return fmt.Sprintf("shoulder %.2f degrees out of square, its front edge nearer the foot's end", -slant.Degrees())
}

// Operations is as in Feature.
func (t Foot) Operations(b Body) []Operation {
	_, wide, deep := b.Box()
	sizes := measured(Measure{"long", t.Long}, Measure{"wide", t.Wide}, Measure{"thick", t.Thick})
	if t.point() != t.Wide {
		sizes = append(sizes, Measure{"wide at its end", t.Point})
	}
	return []Operation{{
		Ref: t.ID, Work: Tenoning, What: "foot", Face: FirstEnd, At: form.Point{X: wide / 2, Y: deep / 2},
		Sizes: sizes, Note: shoulderNote(t.Shoulder),
	}}
}

// Check is as in Feature.
func (t Foot) Check(b Body) error {
	if _, square := b.(Sawn); !square {
		return errors.New(t.ID + ": a foot stands on squared wood")
	}
	long, wide, deep := b.Box()
	l := limits{}
	l.need(t.ID+" long", t.Long, 1, long/2, "")
	l.need(t.ID+" wide", t.Wide, 1, deep-2*stands, "its shoulder stands out")
	l.need(t.ID+" thick", t.Thick, 1, wide-2*stands, "its shoulder stands out")
	l.need(t.ID+" point", t.point(), 1, t.Wide, "it tapers to its end")
	return l.all()
}

// Mirrored is as in Feature: it is alike both ways.
func (t Foot) Mirrored(Body) Feature { return t }

func (t Foot) removed(b Body) quantity.Volume {
	_, wide, deep := b.Box()
	return t.Long.Times(deep).Deep(wide) - quantity.Volume(area(t.outline(b))*float64(t.Thick))
}

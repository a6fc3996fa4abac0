package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Housing is a cut across a long face, from side to side, that another timber
// lies in. Its floor is level with the face of the box.
type Housing struct {
	ID      string
	What    string // "housing for the reach"
	Face    Face   // one of the four long ones
	Station Length // of its middle, along x
	Width   Length // along x
	Depth   Length // from the wood's surface at its middle
}

// Ref is as in Feature.
func (h Housing) Ref() string { return h.ID }

func (h Housing) middle(b Body) form.Point {
	c := b.Outline(h.Face).Span(h.Station)
	return form.Point{X: h.Station, Y: (c.From + c.To) / 2}
}

// floor is how far below the face of the box the housing goes.
func (h Housing) floor(b Body) Length { return sunk(b, h.Face, h.middle(b)) + h.Depth }

// Cuts is as in Feature.
func (h Housing) Cuts(b Body) []form.Volume {
	f := h.Face.Frame(b)
	// Swept across the part, so that it comes out at both sides.
	across := form.Frame{Origin: f.Origin, U: f.U, V: f.W()}
	section := form.Rectangle(
		form.Point{X: h.Station - h.Width/2, Y: -h.floor(b)}, form.Point{X: h.Station + h.Width/2, Y: overrun})
	return []form.Volume{form.Prism{Frame: across, Profile: section, From: -endless(), To: endless()}}
}

// Marks is as in Feature: its outline on the face, and on both sides.
func (h Housing) Marks(b Body, f Face) []Mark {
	if f.isEnd() || f == h.Face.Opposite() || !f.known() {
		return nil
	}
	outline := b.Outline(f)
	left, right := outline.Span(h.Station-h.Width/2), outline.Span(h.Station+h.Width/2)
	if f != h.Face {
		// On a side it reaches from the face's edge to its floor.
		floor := f.Frame(b).On(h.Face.Frame(b).At(h.Station, 0, -h.floor(b))).Y
		if f.Frame(b).V.Along(vec(h.Face.Frame(b).W())) > 0 {
			left.From, right.From = floor, floor
		} else {
			left.To, right.To = floor, floor
		}
	}
	x0, x1 := h.Station-h.Width/2, h.Station+h.Width/2
	m := closed(h.ID, LettingIn, Seen, form.Polygon(
		form.Point{X: x0, Y: left.From}, form.Point{X: x1, Y: right.From},
		form.Point{X: x1, Y: right.To}, form.Point{X: x0, Y: left.To}), h.What)
	if f == h.Face {
		m.Depth = h.Depth
	}
	return []Mark{m}
}

func vec(d form.Dir) form.Vec { return form.Vec{X: Length(d.X), Y: Length(d.Y), Z: Length(d.Z)} }

// Operations is as in Feature.
func (h Housing) Operations(b Body) []Operation {
	return []Operation{{
		Ref: h.ID, Work: LettingIn, What: h.What, Face: h.Face, At: h.middle(b),
		Sizes: measured(Measure{"wide", h.Width}, Measure{"deep", h.Depth}), Note: "from side to side",
	}}
}

// Check is as in Feature.
func (h Housing) Check(b Body) error {
	if !h.Face.known() || h.Face.isEnd() {
		return errors.New(h.ID + ": a housing is cut across one of the four long faces")
	}
	if _, curved := b.(ended); curved {
		return errors.New(h.ID + ": a housing is cut across a straight timber only")
	}
	long, _, _ := b.Box()
	l := limits{}
	l.need(h.ID+" wide", h.Width, 1, long, "")
	if l.sound() {
		l.need(h.ID+" along", h.Station, h.Width/2, long-h.Width/2, "it must lie on the wood")
	}
	if !l.sound() {
		return l.all()
	}
	thick := thickness(b, h.Face, h.middle(b))
	for _, x := range []Length{h.Station - h.Width/2, h.Station + h.Width/2} {
		p := form.Point{X: x, Y: h.middle(b).Y}
		thick = min(thick, thickness(b, h.Face, p)+sunk(b, h.Face, p)-sunk(b, h.Face, h.middle(b)))
	}
	l.need(h.ID+" deep", h.Depth, .5, thick-1, "it must leave wood below it")
	return l.all()
}

// Mirrored is as in Feature.
func (h Housing) Mirrored(Body) Feature {
	h.Face = h.Face.mirrored()
	return h
}

func (h Housing) removed(b Body) quantity.Volume {
	wood := total(b.Outline(h.Face).Chords(h.Station))
	return quantity.Volume(wood * float64(h.Width) * float64(h.Depth))
}

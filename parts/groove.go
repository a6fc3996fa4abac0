package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Groove runs along a long face from end to end.
type Groove struct {
	ID     string
	What   string // "groove for the axle iron"
	Face   Face   // one of the four long ones
	Middle Length // of its width, up the face's y
	Wide   Length
	Depth  Length // below the face of the box
}

// Ref is as in Feature.
func (g Groove) Ref() string { return g.ID }

// Cuts is as in Feature.
func (g Groove) Cuts(b Body) []form.Volume {
	long, _, _ := b.Box()
	at := form.Point{X: long / 2, Y: g.Middle}
	return []form.Volume{sink(g.Face.Frame(b), block(at, long+2*overrun, g.Wide), g.Depth)}
}

// Marks is as in Feature: its two lines along the face, and its outline on the ends.
func (g Groove) Marks(b Body, f Face) []Mark {
	long, _, _ := b.Box()
	at := form.Point{X: long / 2, Y: g.Middle}
	if f == g.Face {
		m := closed(g.ID, LettingIn, Seen, block(at, long, g.Wide), g.What)
		m.Depth = g.Depth
		return []Mark{m}
	}
	if !f.isEnd() {
		return nil
	}
	return []Mark{closed(g.ID, LettingIn, Seen, g.seenFrom(b, f), g.What)}
}

// seenFrom is the groove's section on an end.
func (g Groove) seenFrom(b Body, end Face) form.Profile {
	from, to := g.Face.Frame(b), end.Frame(b)
	a := to.On(from.At(0, g.Middle-g.Wide/2, 0))
	c := to.On(from.At(0, g.Middle+g.Wide/2, -g.Depth))
	return form.Rectangle(
		form.Point{X: min(a.X, c.X), Y: min(a.Y, c.Y)}, form.Point{X: max(a.X, c.X), Y: max(a.Y, c.Y)})
}

// Operations is as in Feature.
func (g Groove) Operations(b Body) []Operation {
	long, _, _ := b.Box()
	return []Operation{{
		Ref: g.ID, Work: LettingIn, What: g.What, Face: g.Face, At: form.Point{X: long / 2, Y: g.Middle},
		Sizes: measured(Measure{"wide", g.Wide}, Measure{"deep", g.Depth}), Note: "from end to end",
	}}
}

// Check is as in Feature.
func (g Groove) Check(b Body) error {
	if !g.Face.known() || g.Face.isEnd() {
		return errors.New(g.ID + ": a groove runs along one of the four long faces")
	}
	long, _, _ := b.Box()
	outline := b.Outline(g.Face)
	at := form.Point{X: long / 2, Y: g.Middle}
	if err := placed(g.ID, outline, at, g.Wide); err != nil {
		return err
	}
	l := limits{}
	l.need(g.ID+" wide", g.Wide, 1, acrossBy(outline, at)-1, "wood must be left on both sides")
	l.need(g.ID+" deep", g.Depth, .5, thickness(b, g.Face, at)-1, "it must leave wood below it")
	if l.sound() && !shapeOf(b).isSquare() {
		l.need(g.ID+" wide", g.Wide, 0, 0, "a groove runs along a squared timber only")
	}
	return l.all()
}

// isSquare says whether the body is a plain squared timber.
func (s Sawn) isSquare() bool { return s.Plan.IsRectangle() && s.Side.IsRectangle() }

// Mirrored is as in Feature.
func (g Groove) Mirrored(b Body) Feature {
	g.Middle = g.Face.mirroredAt(b, form.Point{Y: g.Middle}).Y
	g.Face = g.Face.mirrored()
	return g
}

func (g Groove) removed(b Body) quantity.Volume {
	long, _, _ := b.Box()
	return quantity.Volume(float64(g.Wide) * float64(g.Depth) * float64(long))
}

package parts

import (
	"errors"
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A RoundTenon is turned or pared round on the wood's own end, however that
// lies, its shoulder square to it and its middle in the middle of the end.
type RoundTenon struct {
	ID       string
	What     string // "round end"
	End      Face   // FirstEnd or SecondEnd
	Diameter Length
	Long     Length // from shoulder to end
}

// Ref is as in Feature.
func (r RoundTenon) Ref() string { return r.ID }

// place gives the end's plane, the wood's section there and its middle.
func (r RoundTenon) place(b Body) (form.Frame, form.Profile, form.Point) {
	f, section := endOf(b, r.End)
	lo, hi := section.Bounds()
	return f, section, form.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
}

// Cuts is as in Feature.
func (r RoundTenon) Cuts(b Body) []form.Volume {
	f, section, at := r.place(b)
	lo, hi := section.Bounds()
	wood := form.Rectangle(
		form.Point{X: lo.X - overrun, Y: lo.Y - overrun}, form.Point{X: hi.X + overrun, Y: hi.Y + overrun})
	return []form.Volume{form.Difference{
		From: form.Prism{Frame: f, Profile: wood, From: -r.Long, To: overrun},
		Cut:  []form.Volume{form.Prism{Frame: f, Profile: disc(at, r.Diameter), From: -endless(), To: endless()}},
	}}
}

// Marks is as in Feature: its circle on the face that looks at it, its shoulder
// line and sides on the faces beside it.
func (r RoundTenon) Marks(b Body, f Face) []Mark {
	if !f.known() || !r.End.isEnd() || (f.isEnd() && f != r.End) {
		return nil
	}
	end, section, at := r.place(b)
	frame := f.Frame(b)
	facing := float64(frame.W().Along(vec(end.W())))
	switch {
	case facing > 1-1e-9:
		m := closed(r.ID, Tenoning, Seen, disc(frame.On(end.At(at.X, at.Y, 0)), r.Diameter), r.What)
		centre := frame.On(end.At(at.X, at.Y, 0))
		m.Centre, m.Diameter = &centre, r.Diameter
		return []Mark{m}
	case math.Abs(facing) < 1e-9:
		return r.beside(end, section, at, frame)
	}
	return nil
}

// beside is the tenon seen from a side that it runs along.
func (r RoundTenon) beside(end form.Frame, section form.Profile, at form.Point, f form.Frame) []Mark {
	lo, hi := section.Bounds()
	wood := [2]form.Point{{X: lo.X, Y: at.Y}, {X: hi.X, Y: at.Y}}
	step := form.Point{X: r.Diameter / 2}
	if math.Abs(float64(f.W().Along(vec(end.U)))) > .5 {
		wood = [2]form.Point{{X: at.X, Y: lo.Y}, {X: at.X, Y: hi.Y}}
		step = form.Point{Y: r.Diameter / 2}
	}
	corner := func(side, deep Length) form.Point {
		return f.On(end.At(at.X+side*step.X, at.Y+side*step.Y, -deep))
	}
	shoulder := Mark{Ref: r.ID, Work: Tenoning, Stroke: Seen, Label: "shoulder", Path: form.Path(form.Polygon(
		f.On(end.At(wood[0].X, wood[0].Y, -r.Long)), f.On(end.At(wood[1].X, wood[1].Y, -r.Long))))}
	stands := form.Polygon(corner(-1, r.Long), corner(1, r.Long), corner(1, 0), corner(-1, 0))
	if stands.Area() < 0 {
		stands = stands.Reversed()
	}
	return []Mark{shoulder, closed(r.ID, Tenoning, Seen, stands, r.What)}
}

// Operations is as in Feature.
func (r RoundTenon) Operations(b Body) []Operation {
	end, _, at := r.place(b)
	return []Operation{{
		Ref: r.ID, Work: Tenoning, What: r.What, Face: r.End, At: r.End.Frame(b).On(end.At(at.X, at.Y, 0)),
		Sizes: measured(Measure{"diameter", r.Diameter}, Measure{"long", r.Long}), Note: "shoulder square",
	}}
}

// Check is as in Feature.
func (r RoundTenon) Check(b Body) error {
	if !r.End.isEnd() {
		return errors.New(r.ID + ": a round end stands at the first or the second end")
	}
	if _, felloe := b.(Arc); felloe {
		return errors.New(r.ID + ": a felloe has no round ends")
	}
	_, section, at := r.place(b)
	room := Length(0)
	if len(section) > 0 {
		room = 2 * section.Distance(at)
	}
	long, _, _ := b.Box()
	most := long/2 - 1
	if bent, ok := b.(Bent); ok {
		most = bent.straightEnd(r.End) - 1
	}
	l := limits{}
	l.need(r.ID+" diameter", r.Diameter, 1, room, "it cannot be thicker than the wood")
	l.need(r.ID+" long", r.Long, 1, most, "the wood must be straight there")
	return l.all()
}

// straightEnd is how long the rail is straight at an end.
func (b Bent) straightEnd(f Face) Length {
	p := b.Middle
	if len(p) < 2 {
		return 0
	}
	piece := p[len(p)-2:]
	if f == FirstEnd {
		piece = p[:2]
	}
	if piece[0].Bulge != 0 {
		return 0
	}
	return piece.Long()
}

// Mirrored is as in Feature.
func (r RoundTenon) Mirrored(Body) Feature { return r }

func (r RoundTenon) removed(b Body) quantity.Volume {
	_, section, at := r.place(b)
	return quantity.Volume((area(section) - area(disc(at, r.Diameter))) * float64(r.Long))
}

package parts

import (
	"errors"
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// An EndHole is bored square into the wood's own end, however that lies: a
// dowel hole in a felloe's joint, a hole in the end of a bent rail.
type EndHole struct {
	ID       string
	What     string // "dowel hole"
	End      Face   // FirstEnd or SecondEnd
	Off, Up  Length // of its middle from the middle of the end: to the right as one looks at the end, and up
	Diameter Length
	Depth    Length
}

// Ref is as in Feature.
func (e EndHole) Ref() string { return e.ID }

// at is its middle in the end's own frame.
func (e EndHole) at(section form.Profile) form.Point {
	lo, hi := section.Bounds()
	return form.Point{X: (lo.X+hi.X)/2 + e.Off, Y: (lo.Y+hi.Y)/2 + e.Up}
}

// Cuts is as in Feature.
func (e EndHole) Cuts(b Body) []form.Volume {
	f, section := endOf(b, e.End)
	return []form.Volume{form.Prism{Frame: f, Profile: disc(e.at(section), e.Diameter), From: -e.Depth, To: overrun}}
}

// Marks is as in Feature: its mouth on a face that looks at the end, and its
// sides and middle line on a face beside it.
func (e EndHole) Marks(b Body, f Face) []Mark {
	if !f.known() || !e.End.isEnd() {
		return nil
	}
	end, section := endOf(b, e.End)
	at, frame := e.at(section), f.Frame(b)
	facing := float64(frame.W().Along(vec(end.W())))
	switch {
	case facing > .5 && (!f.isEnd() || f == e.End):
		m := closed(e.ID, Boring, Seen, seenRound(end, at, e.Diameter, frame), e.What)
		centre := frame.On(end.At(at.X, at.Y, 0))
		m.Centre, m.Diameter, m.Depth = &centre, e.Diameter, e.Depth
		return []Mark{m}
	case math.Abs(facing) < 1e-9 && (!f.isEnd() || f == e.End):
		return e.beside(end, at, frame)
	}
	return nil
}

// seenRound is a circle on the end's plane as it is seen square on to a face.
func seenRound(end form.Frame, at form.Point, diameter Length, f form.Frame) form.Profile {
	if c := float64(f.W().Along(vec(end.W()))); c > 1-1e-12 {
		return disc(f.On(end.At(at.X, at.Y, 0)), diameter)
	}
	round := form.Through(16, func(t float64) form.Point {
		sin, cos := math.Sincos(2 * math.Pi * t)
		return f.On(end.At(at.X+diameter/2*Length(cos), at.Y+diameter/2*Length(sin), 0))
	})
	return form.Profile(round[:len(round)-1])
}

// beside is the hole seen from a side that its axis runs along.
func (e EndHole) beside(end form.Frame, at form.Point, f form.Frame) []Mark {
	across := form.Point{X: 1}
	if math.Abs(float64(f.W().Along(vec(end.U)))) > .5 {
		across = form.Point{Y: 1}
	}
	corner := func(step, deep Length) form.Point {
		return f.On(end.At(at.X+across.X*step, at.Y+across.Y*step, -deep))
	}
	r := e.Diameter / 2
	line := func(s Stroke, ps ...form.Point) Mark {
		return Mark{Ref: e.ID, Work: Boring, Stroke: s, Label: e.What, Path: form.Path(form.Polygon(ps...))}
	}
	return []Mark{
		line(Hidden, corner(-r, 0), corner(-r, e.Depth), corner(r, e.Depth), corner(r, 0)),
		line(Middle, corner(0, 0), corner(0, e.Depth)),
	}
}

// Operations is as in Feature.
func (e EndHole) Operations(b Body) []Operation {
	end, section := endOf(b, e.End)
	at := e.at(section)
	return []Operation{{
		Ref: e.ID, Work: Boring, What: e.What, Face: e.End, At: e.End.Frame(b).On(end.At(at.X, at.Y, 0)),
		Sizes: measured(Measure{"diameter", e.Diameter}, Measure{"deep", e.Depth}), Note: "bore square to the end",
	}}
}

// Check is as in Feature.
func (e EndHole) Check(b Body) error {
	if !e.End.isEnd() {
		return errors.New(e.ID + ": an end hole is bored in the first or the second end")
	}
	_, section := endOf(b, e.End)
	at := e.at(section)
	if err := placed(e.ID, section, at, e.Diameter); err != nil {
		return err
	}
	long, _, _ := b.Box()
	l := limits{}
	l.need(e.ID+" diameter", e.Diameter, 1, 2*section.Distance(at)-1, "it must not break out of a side")
	l.need(e.ID+" depth", e.Depth, 1, long/2-1, "it must stop inside the wood")
	if a, curved := b.(Arc); curved && l.sound() {
		l.need(e.ID+" depth", e.Depth, 1, a.straightIn(at.Y, e.Diameter/2), "it would come out at the back")
	}
	return l.all()
}

// straightIn is how far a hole square to a joint can go, a distance up it from
// the belly, before it comes out at the back or meets one from the other end.
func (a Arc) straightIn(up, radius Length) Length {
	// It leaves the wheel's circles as a tangent does: the belly draws away and
	// the back comes nearer.
	upper := a.belly() + up + radius
	reach := Length(math.Sqrt(float64(a.Radius*a.Radius - upper*upper)))
	return min(reach, a.Chord()/2) - 1
}

// Mirrored is as in Feature.
func (e EndHole) Mirrored(Body) Feature {
	e.Off = -e.Off
	return e
}

func (e EndHole) removed(Body) quantity.Volume {
	return quantity.Volume(area(disc(form.Point{}, e.Diameter)) * float64(e.Depth))
}

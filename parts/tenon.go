package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Tenon is left standing at an end, its shoulders cut square to the part.
// Where it is as wide or as thick as the wood it has no shoulder on those sides.
type Tenon struct {
	ID    string
	What  string
	End   Face       // FirstEnd or SecondEnd
	At    form.Point // its middle, in that end's frame
	Long  Length     // from shoulder to end
	Wide  Length     // across
	Thick Length     // up
}

// Ref is as in Feature.
func (t Tenon) Ref() string { return t.ID }

// stands is the tenon's section in the end's frame; a side that is flush with
// the wood's goes past it, so that no skin is left there.
func (t Tenon) stands(b Body) form.Profile {
	_, wood := endOf(b, t.End)
	lo, hi := wood.Bounds()
	s := block(t.At, t.Wide, t.Thick)
	from, to := s.Bounds()
	const flush Length = 1e-6
	if from.X < lo.X+flush {
		from.X -= overrun
	}
	if from.Y < lo.Y+flush {
		from.Y -= overrun
	}
	if to.X > hi.X-flush {
		to.X += overrun
	}
	if to.Y > hi.Y-flush {
		to.Y += overrun
	}
	return form.Rectangle(from, to)
}

// Cuts is as in Feature.
func (t Tenon) Cuts(b Body) []form.Volume {
	f := t.End.Frame(b)
	shoulder := form.Half{At: f.At(0, 0, -t.Long), Normal: f.W().Opposite()}
	stands := form.Prism{Frame: f, Profile: t.stands(b), From: -endless(), To: endless()}
	return []form.Volume{form.Difference{From: shoulder, Cut: []form.Volume{stands}}}
}

// Marks is as in Feature: the shoulder line and the tenon's edges on the long
// faces, its outline on the end.
func (t Tenon) Marks(b Body, f Face) []Mark {
	if f == t.End {
		return []Mark{closed(t.ID, Tenoning, Seen, block(t.At, t.Wide, t.Thick), t.What)}
	}
	if f.isEnd() || !f.known() {
		return nil
	}
	end, face := t.End.Frame(b), f.Frame(b)
	lo, hi := block(t.At, t.Wide, t.Thick).Bounds()
	corners := []form.Point{
		face.On(end.At(lo.X, lo.Y, 0)), face.On(end.At(hi.X, hi.Y, -t.Long)),
	}
	stands := form.Rectangle(
		form.Point{X: min(corners[0].X, corners[1].X), Y: min(corners[0].Y, corners[1].Y)},
		form.Point{X: max(corners[0].X, corners[1].X), Y: max(corners[0].Y, corners[1].Y)})
	shoulder := corners[1].X
	wood := b.Outline(f).Span(shoulder)
	line := Mark{Ref: t.ID, Work: Tenoning, Stroke: Seen, Label: "shoulder", Path: []form.Vertex{
		{Point: form.Point{X: shoulder, Y: wood.From}}, {Point: form.Point{X: shoulder, Y: wood.To}},
	}}
	return []Mark{line, closed(t.ID, Tenoning, Seen, stands, t.What)}
}

// Operations is as in Feature.
func (t Tenon) Operations(Body) []Operation {
	return []Operation{{
		Ref: t.ID, Work: Tenoning, What: t.What, Face: t.End, At: t.At,
		Sizes: measured(Measure{"long", t.Long}, Measure{"wide", t.Wide}, Measure{"thick", t.Thick}),
		Note:  "shoulders square",
	}}
}

// Check is as in Feature.
func (t Tenon) Check(b Body) error {
	if !t.End.isEnd() {
		return errors.New(t.ID + ": a tenon stands at the first or the second end")
	}
	if _, other := b.(ended); other {
		return errors.New(t.ID + ": a square tenon stands at the end of a straight timber only")
	}
	_, wood := endOf(b, t.End)
	lo, hi := wood.Bounds()
	l := limits{}
	l.need(t.ID+" along", t.At.X, lo.X, hi.X, "it must lie on the wood")
	l.need(t.ID+" across", t.At.Y, lo.Y, hi.Y, "it must lie on the wood")
	if !l.sound() {
		return l.all()
	}
	long, _, _ := b.Box()
	l.need(t.ID+" long", t.Long, 1, long/2, "")
	l.need(t.ID+" wide", t.Wide, 1, 2*min(t.At.X-lo.X, hi.X-t.At.X), "it cannot be wider than the wood")
	l.need(t.ID+" thick", t.Thick, 1, 2*min(t.At.Y-lo.Y, hi.Y-t.At.Y), "it cannot be thicker than the wood")
	return l.all()
}

// Mirrored is as in Feature.
func (t Tenon) Mirrored(b Body) Feature {
	t.At = t.End.mirroredAt(b, t.At)
	return t
}

func (t Tenon) removed(b Body) quantity.Volume {
	_, wood := endOf(b, t.End)
	return quantity.Volume((area(wood) - area(block(t.At, t.Wide, t.Thick))) * float64(t.Long))
}

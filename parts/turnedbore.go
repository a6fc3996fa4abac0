package parts

import (
	"errors"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// TurnedBore is a bore along a turned body's middle line from end to end, straight
// from station to station; two stations at one place make a step.
type TurnedBore struct {
	ID       string
	Stations []Station
}

// Ref is as in Feature.
func (t TurnedBore) Ref() string { return t.ID }

// steps are its stations with those left out that say nothing, carried past
// both ends by a way.
func (t TurnedBore) steps(past Length) []Station {
	ss := slices.CompactFunc(slices.Clone(t.Stations), func(a, b Station) bool { return a == b })
	if n := len(ss); n > 1 {
		ss[0].Along -= past
		ss[n-1].Along += past
	}
	// Straight on: a station in the middle of a run.
	out := ss[:0:0]
	for i, s := range ss {
		if i > 0 && i < len(ss)-1 && ss[i-1].Diameter == s.Diameter && s.Diameter == ss[i+1].Diameter {
			continue
		}
		out = append(out, s)
	}
	return out
}

// Cuts is as in Feature.
func (t TurnedBore) Cuts(b Body) []form.Volume {
	body, ok := b.(Turned)
	if !ok {
		return nil
	}
	return []form.Volume{form.Revolved{
		Frame: body.axis(), Profile: Turned{t.steps(overrun)}.meridianFrom(-overrun), Sweep: 2 * math.Pi,
	}}
}

// meridianFrom is a meridian whose first station is not at 0.
func (t Turned) meridianFrom(first Length) form.Profile {
	p := t.meridian()
	p[0].Y = first
	return p
}

// Marks is as in Feature: its mouths on the ends, and its sides, unseen, on the long faces.
func (t TurnedBore) Marks(b Body, f Face) []Mark {
	body, ok := b.(Turned)
	if !ok || len(t.Stations) < 2 || !f.known() {
		return nil
	}
	r := body.Stout() / 2
	if f.isEnd() {
		s := t.Stations[0]
		if f == SecondEnd {
			s = t.Stations[len(t.Stations)-1]
		}
		m := closed(t.ID, Boring, Seen, disc(form.Point{X: r, Y: r}, s.Diameter), "bore")
		m.Centre, m.Diameter = &form.Point{X: r, Y: r}, s.Diameter
		return []Mark{m}
	}
	var out []Mark
	for _, side := range []Length{-1, 1} {
		m := Mark{Ref: t.ID, Work: Boring, Stroke: Hidden, Label: "bore"}
		for _, s := range t.steps(0) {
			m.Path = append(m.Path, form.Vertex{Point: form.Point{X: s.Along, Y: r + side*s.Diameter/2}})
		}
		out = append(out, m)
	}
	return append(out, Mark{
		Ref: t.ID, Work: Boring, Stroke: Middle, Label: "bore",
		Path: form.Path(form.Polygon(form.Point{Y: r}, form.Point{X: body.long(), Y: r})),
	})
}

// Operations is as in Feature: one for each stretch of the bore.
func (t TurnedBore) Operations(b Body) []Operation {
	body, ok := b.(Turned)
	if !ok {
		return nil
	}
	r := body.Stout() / 2
	var out []Operation
	ss := t.steps(0)
	for i := 1; i < len(ss); i++ {
		from, to := ss[i-1], ss[i]
		if from.Along == to.Along {
			continue
		}
		op := Operation{
			Ref: t.ID, Work: Boring, What: "bore for the box", Face: FirstEnd, At: form.Point{X: r, Y: r},
			Sizes: measured(Measure{"from the back end", from.Along}, Measure{"long", to.Along - from.Along}, Measure{"diameter", from.Diameter}),
		}
		if from.Diameter != to.Diameter {
			op.Sizes[len(op.Sizes)-1].Name = "diameter at its back"
			op.Sizes = append(op.Sizes, Measure{"diameter at its front", to.Diameter})
			op.Note = "tapered; ream to the box itself"
		}
		out = append(out, op)
	}
	return out
}

// Check is as in Feature.
func (t TurnedBore) Check(b Body) error {
	body, ok := b.(Turned)
	if !ok || len(t.Stations) < 2 {
		return errors.New(t.ID + ": it is bored in a turned piece, from end to end")
	}
	l := limits{}
	for _, s := range t.Stations {
		const step = 1e-6 // either side of a step
		room := 2 * min(body.RadiusAt(max(0, s.Along-step)), body.RadiusAt(s.Along+step))
		l.need(t.ID+" diameter", s.Diameter, 1, room-2, "wood must stand round it")
	}
	return l.all()
}

// Mirrored is as in Feature.
func (t TurnedBore) Mirrored(Body) Feature { return t }

func (t TurnedBore) removed(Body) quantity.Volume {
	return Turned{t.steps(0)}.Net()
}

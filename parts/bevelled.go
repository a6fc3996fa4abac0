package parts

import (
	"errors"
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Bevelled rim is told and drawn by it: the back and the belly of a felloe
// stand out of square to its sides, as its body's Bevel has it. It takes no
// wood of its own.
type Bevelled struct{ ID string }

// Ref is as in Feature.
func (v Bevelled) Ref() string { return v.ID }

// Cuts is as in Feature: none, the body is sawn so.
func (v Bevelled) Cuts(Body) []form.Volume { return nil }

// Marks is as in Feature: on each side the edges that are its own, where the
// outline is the other side's.
func (v Bevelled) Marks(b Body, f Face) []Mark {
	a, ok := b.(Arc)
	if !ok || a.Bevel == 0 || (f != FirstSide && f != SecondSide) {
		return nil
	}
	y, radius, label := Length(0), a.backAt(0), "edge of the back"
	if f == SecondSide {
		y, radius = a.Wide, a.backAt(a.Wide)
	}
	if radius > a.Radius-1e-9 { // the outline is this side's back, and the other's belly
		radius, label = a.bellyAt(y), "edge of the belly"
	}
	return []Mark{{
		Ref: v.ID, Work: Chamfering, Stroke: Seen, Label: label, Path: a.ringLine(f.Frame(a), y, radius),
	}}
}

// Operations is as in Feature.
func (v Bevelled) Operations(b Body) []Operation {
	a, ok := b.(Arc)
	if !ok || a.Bevel == 0 {
		return nil
	}
	larger := "inner"
	if a.Bevel < 0 {
		larger = "outer"
	}
	return []Operation{{
		Ref: v.ID, Work: Chamfering, What: "saw back and belly to the bevel of the dish", Face: Upper,
		At:    Upper.Frame(a).On(form.Vec{X: a.Chord() / 2, Y: a.Wide / 2}),
		Sizes: measured(Measure{"fall across the rim", a.fall()}),
		Note:  "larger at the " + larger + " side",
	}}
}

// Check is as in Feature.
func (v Bevelled) Check(b Body) error {
	a, ok := b.(Arc)
	if !ok {
		return errors.New(v.ID + ": only a felloe is bevelled for the dish")
	}
	l := limits{}
	if most := 25 * quantity.Degree; !(math.Abs(float64(a.Bevel)) <= float64(most)) {
		l.add(&LimitError{
			Dimension: v.ID, Got: Length(a.Bevel.Degrees()), Min: -25, Max: 25,
			Why: "a wheel dished so far has no strength", In: InDegrees,
		})
	}
	return l.all()
}

// Mirrored is as in Feature.
func (v Bevelled) Mirrored(Body) Feature { return v }

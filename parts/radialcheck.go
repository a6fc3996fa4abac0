package parts

import (
	"errors"
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// leaning tells a lean as a joiner sets a bevel.
func leaning(lean Angle) string {
	side := "outer"
	if lean < 0 {
		side = "inner"
	}
	return fmt.Sprintf("%.2f degrees out of square, to the %s side as it goes out", math.Abs(lean.Degrees()), side)
}

// Check is as in Feature.
func (r RadialHole) Check(b Body) error {
	a, ok := b.(Arc)
	if !ok || (r.Face != Upper && r.Face != Under) {
		return errors.New(r.ID + ": a hole towards the wheel's centre is bored in a felloe, from its back or its belly")
	}
	const why = "it must not break out of the felloe"
	l := limits{}
	l.need(r.ID+" across", r.Across, 0, a.Wide, "it must lie on the wood")
	l.degrees(r.ID+" lean", r.Lean, 30*quantity.Degree, "no spoke leans so far")
	if !l.sound() {
		return l.all()
	}
	l.need(r.ID+" diameter", r.Diameter, 1, min(r.room(a), a.belly())-1, why)
	if !l.sound() {
		return l.all()
	}
	reach := r.Diameter / 2 // along the rim
	most := a.half(a.belly()) - math.Asin(float64(reach/a.belly()))
	l.degrees(r.ID+" angle", r.Angle, Angle(most), why)
	return l.all()
}

// room is how wide the hole may be before it comes out of a side, on the way
// from the belly to the back.
func (r RadialHole) room(a Arc) Length {
	least := Length(math.Inf(1))
	sin, cos := math.Sincos(float64(r.Lean))
	for _, f := range []Face{Upper, Under} {
		y := r.Across + r.reach(a, f, 0, 0)*Length(sin)
		least = min(least, 2*min(y, a.Wide-y)*Length(cos))
	}
	return least
}

// degrees reports an angle more than so far from 0 either way.
func (l *limits) degrees(dimension string, got, most Angle, why string) {
	if !(math.Abs(float64(got)) <= float64(most)) {
		l.add(&LimitError{
			Dimension: dimension, Got: Length(got.Degrees()), Min: Length(-most.Degrees()), Max: Length(most.Degrees()),
			Why: why, In: InDegrees,
		})
	}
}

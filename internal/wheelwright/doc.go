// Package wheelwright tells and draws a wheel for whoever makes it: every
// figure, the gauges and templates at full size, the order of work, and what to
// look at before the tyre is heated.
//
// All is taken from package wheel. Drawings are in millimetres, at full size.
package wheelwright

import (
	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
)

// Length is a distance in millimetres.
type Length = quantity.Length

// A Subject is the wheel that is told of.
type Subject struct {
	Vehicle string // "Orchard wagon"
	Issue   string
	Name    string // "near fore wheel"
	Wheel   *wheel.Wheel
	Unit    quantity.Unit
}

// both is a length in inches and in millimetres, the survey's own unit first.
func (s Subject) both(l Length) string {
	mm := quantity.Format(l, quantity.Millimetres)
	in := quantity.Fraction(l, 32) + " in"
	if mm == quantity.NotKnown {
		return mm
	}
	if s.Unit == quantity.Inches || s.Unit == quantity.Feet {
		return in + " (" + mm + ")"
	}
	return mm + " (" + in + ")"
}

package timber

import (
	"math"

	"lostwood/internal/quantity"
)

// SmallChange returns the change of a size by the Wood Handbook's eq. 13-2:
// size x coefficient x points of moisture, the coefficient in percent of the
// size per percent of moisture. It is meant for 6 to 14 %.
func SmallChange(size quantity.Length, percentPerPoint float64, from, to quantity.Moisture) quantity.Length {
	return size * quantity.Length(percentPerPoint/100*float64(to-from))
}

// Service returns the change of a size in service by the coefficient published
// for s: Wood Handbook table 13-5 from 6 to 14 % moisture, or the Australian
// unit shrinkage from 5 to 12 %. Where the coefficient is of a commercial group it need
// not agree with [Species.Resize], which goes by the species: use one or the other.
func (s Species) Service(size quantity.Length, from, to quantity.Moisture, d Direction) (quantity.Length, Basis, error) {
	f := s.Move.Tangential
	switch {
	case d < Radial || d > Lengthwise:
		return 0, Basis{}, badDirection(d)
	case d == Radial:
		f = s.Move.Radial
	case d == Worst && s.Move.Radial.Known() && s.Move.Radial.Value > f.Value:
		f = s.Move.Radial
	case d == Lengthwise:
		f = Figure{}
	}
	if !f.Known() || s.Move.Kind == NoCoefficient {
		return 0, Basis{}, &NoFigureError{s.label(), d.String() + " movement", "work from its shrinkage"}
	}
	lo, hi := 6.0, 14.0
	if s.Move.Kind == UnitShrinkage {
		lo, hi = 5, 12
	}
	for _, m := range [...]quantity.Moisture{from, to} {
		if err := within("moisture, percent, for the published movement", float64(m), lo, hi); err != nil {
			return 0, Basis{}, err
		}
	}
	if err := within("size, mm", size.Millimetres(), 0, math.MaxFloat64/2); err != nil {
		return 0, Basis{}, err
	}
	return SmallChange(size, f.Value, from, to), f.Basis(), nil
}

// SoftwoodLumber returns the shrinkage from green, in percent of width and of
// thickness, of North American softwood lumber at a moisture from 8 to 19 %
// (D. W. Green, FPL-RP-489, 1989).
func SoftwoodLumber(m quantity.Moisture) (width, thickness float64, err error) {
	if err := within("moisture, percent, of softwood lumber", float64(m), 8, 19); err != nil {
		return 0, 0, err
	}
	return 6.031 - 0.215*float64(m), 5.062 - 0.181*float64(m), nil
}

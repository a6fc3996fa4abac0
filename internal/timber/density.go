package timber

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// swelling is how much of its basic specific gravity wood shrinks in volume,
// green to ovendry: Wood Handbook 2021, 4-11.
const swelling = 0.265

// MostMoisture returns the most water that wood of that basic specific gravity
// can hold (Wood Handbook 2021, 4-3).
func MostMoisture(basic float64) (quantity.Moisture, error) {
	if err := within("basic specific gravity", basic, 0.05, 1.5); err != nil {
		return 0, err
	}
	return quantity.Moisture(100 * (1.54 - basic) / (1.54 * basic)), nil
}

// SinkingMoisture returns the moisture at which wood of that basic specific
// gravity sinks in water (Wood Handbook 2021, 4-3).
func SinkingMoisture(basic float64) (quantity.Moisture, error) {
	if err := within("basic specific gravity", basic, 0.05, 1); err != nil {
		return 0, err
	}
	return quantity.Moisture(100 * (1 - basic) / basic), nil
}

// swollen returns the factor in the formula for specific gravity at m.
func (s Species) swollen(m float64) float64 {
	return swelling * math.Max(0, 1-m/s.saturation())
}

// basic returns the basic specific gravity, worked back from the specific
// gravity or the density at 12 % where it was not found.
func (s Species) basic() (Figure, error) {
	w := s.Weight
	at12 := w.At12
	switch {
	case w.Basic.Known():
		return w.Basic, nil
	case at12.Known():
	case w.Density12.Known():
		at12 = w.Density12
		at12.Value /= 1000 * 1.12
	default:
		return Figure{}, &NoFigureError{s.label(), "density or specific gravity", "give the wood's density at 12 % moisture"}
	}
	v := at12.Value / (1 + s.swollen(12)*at12.Value)
	return Figure{v, at12.Source, min(at12.Standing, Derived)}, nil
}

// SpecificGravity returns the ovendry mass over the mass of as much water as
// the wood fills at that moisture (Wood Handbook 2021, 4-11).
func (s Species) SpecificGravity(at quantity.Moisture) (float64, Basis, error) {
	if err := checkMoisture(at); err != nil {
		return 0, Basis{}, err
	}
	g, err := s.basic()
	if err != nil {
		return 0, Basis{}, err
	}
	most, err := MostMoisture(g.Value)
	if err != nil {
		return 0, Basis{}, fmt.Errorf("%s: %w", s.label(), err)
	}
	if at > most {
		return 0, Basis{}, &RangeError{
			What: s.label() + ": moisture, percent", Got: float64(at), Max: float64(most),
			Want: fmt.Sprintf("full of water it holds %.0f", float64(most)),
		}
	}
	return g.Value / (1 - g.Value*s.swollen(float64(at))), g.Basis(), nil
}

// Density returns the density of s at a moisture, and where it comes from:
// by its basic specific gravity, or else worked back from its density at 12 %.
// A wood with neither gives a *[NoFigureError].
func (s Species) Density(at quantity.Moisture) (quantity.Density, Basis, error) {
	g, basis, err := s.SpecificGravity(at)
	if err != nil {
		return 0, Basis{}, err
	}
	return quantity.Density(1000 * g * (1 + float64(at)/100)), basis, nil
}

package timber

import (
	"math"

	"lostwood/internal/quantity"
)

// Megapascals is a stress, or a stiffness: newtons per square millimetre.
type Megapascals float64

// Newtons is a force.
type Newtons float64

// PoundsPerSquareInch returns p in pounds per square inch.
func (p Megapascals) PoundsPerSquareInch() float64 { return float64(p) * 1e6 / 6894.757293168 }

// meeting is the moisture at which the strength of drying wood begins to rise,
// for woods that have none of their own: Wood Handbook 2021 table 5-13.
const meeting = 25

// AtMoisture returns a property at moisture m from its green value and its
// value at 12 %, by Wood Handbook 2021 eq. 5-3; from the meeting moisture
// upward it is the green value. It does not hold for work to maximum load,
// impact, or tension across the grain.
func AtMoisture(green, at12 float64, meeting, m quantity.Moisture) (float64, error) {
	if err := checkMoisture(m); err != nil {
		return 0, err
	}
	if err := within("moisture at which strength rises, percent", float64(meeting), 15, 40); err != nil {
		return 0, err
	}
	for _, p := range [...]float64{green, at12} {
		if err := positive("strength", p); err != nil {
			return 0, err
		}
	}
	if m >= meeting {
		return green, nil
	}
	return at12 * math.Pow(at12/green, float64((12-m)/(meeting-12))), nil
}

// Rupture returns the modulus of rupture in bending at a moisture: an average
// of small clear pieces, for comparison only. Where the wood has none the
// minimum of its strength groups is returned, and the basis says so. With
// neither the error is a *[NoFigureError].
func (s Species) Rupture(at quantity.Moisture) (Megapascals, Basis, error) {
	green, dry := s.Groups.figures(func(m minimum) float64 { return m.rupture })
	v, basis, err := s.strength("bending strength", at, s.Green.Rupture, s.Dry.Rupture, green, dry)
	return Megapascals(v), basis, err
}

// Stiffness is like Rupture for the modulus of elasticity.
func (s Species) Stiffness(at quantity.Moisture) (Megapascals, Basis, error) {
	green, dry := s.Groups.figures(func(m minimum) float64 { return m.stiffness })
	v, basis, err := s.strength("stiffness", at, thousandfold(s.Green.Stiffness), thousandfold(s.Dry.Stiffness), green, dry)
	return Megapascals(v), basis, err
}

// Hardness is like Rupture for the side hardness (Janka), for which groups
// have no minimum.
func (s Species) Hardness(at quantity.Moisture) (Newtons, Basis, error) {
	v, basis, err := s.strength("hardness", at, s.Green.Hardness, s.Dry.Hardness, Figure{}, Figure{})
	return Newtons(v), basis, err
}

func thousandfold(f Figure) Figure {
	f.Value *= 1000
	return f
}

// strength goes by the wood's own pair of figures, then by the one of them that
// stands for that moisture, then by the pair of its groups. A pair is never
// made of both: an average and a minimum do not belong on one curve.
func (s Species) strength(what string, at quantity.Moisture, green, dry, groupGreen, groupDry Figure) (float64, Basis, error) {
	if err := checkMoisture(at); err != nil {
		return 0, Basis{}, err
	}
	meet := quantity.Moisture(meeting)
	if s.Meeting.Known() {
		meet = quantity.Moisture(s.Meeting.Value)
	}
	for _, pair := range [...][2]Figure{{green, dry}, {groupGreen, groupDry}} {
		wet, dry := pair[0], pair[1]
		switch {
		case wet.Known() && dry.Known():
			v, err := AtMoisture(wet.Value, dry.Value, meet, at)
			return v, weakest(wet, dry), err
		case dry.Known() && at == 12:
			return dry.Value, dry.Basis(), nil
		case wet.Known() && at >= meet:
			return wet.Value, wet.Basis(), nil
		}
	}
	return 0, Basis{}, &NoFigureError{
		s.label(), what + ", both green and at 12 %,",
		"give both with the wood, or ask at the moisture it has one for",
	}
}

package timber

import (
	"math"

	"lostwood/internal/quantity"
)

// A Loading is how a straight beam is held and loaded.
type Loading int

// The loadings of Wood Handbook table 9-1. The place is where the deflection is taken.
const (
	UniformOnTwoEnds     Loading = iota // ends free to turn; at the middle
	UniformBetweenClamps                // at the middle
	CentreOnTwoEnds                     // at the middle
	CentreBetweenClamps                 // at the middle
	QuarterPointsMiddle                 // half the load at each quarter point, on two ends; at the middle
	QuarterPointsLoad                   // the same; at a load (from memory)
	UniformCantilever                   // at the free end
	EndLoadCantilever                   // at the free end
)

// factors are kb and ks of each loading.
var factors = [...][2]float64{
	UniformOnTwoEnds:     {5. / 384, 1. / 8},
	UniformBetweenClamps: {1. / 384, 1. / 8},
	CentreOnTwoEnds:      {1. / 48, 1. / 4},
	CentreBetweenClamps:  {1. / 192, 1. / 4},
	QuarterPointsMiddle:  {11. / 768, 1. / 8},
	QuarterPointsLoad:    {1. / 96, 1. / 8},
	UniformCantilever:    {1. / 8, 1. / 2},
	EndLoadCantilever:    {1. / 3, 1},
}

// A Beam is a straight bar of solid rectangular section under a total load.
type Beam struct {
	Width, Depth, Span quantity.Length
	Load               Newtons
	Loading            Loading
	Stiffness          Megapascals // modulus of elasticity; shear is taken as a sixteenth
}

// Deflection returns how far b sags by bending and, beside it, by shear: Wood
// Handbook 2021 eq. 9-2. It is for comparing one wood or section with another,
// under a load of short duration.
func (b Beam) Deflection() (bending, shear quantity.Length, err error) {
	for _, d := range [...]struct {
		what  string
		value float64
	}{
		{"beam width, mm", b.Width.Millimetres()},
		{"beam depth, mm", b.Depth.Millimetres()},
		{"beam span, mm", b.Span.Millimetres()},
		{"stiffness, MPa", float64(b.Stiffness)},
	} {
		if err := positive(d.what, d.value); err != nil {
			return 0, 0, err
		}
	}
	if err := within("load, N", float64(b.Load), 0, math.MaxFloat64/2); err != nil {
		return 0, 0, err
	}
	if err := within("loading", float64(b.Loading), float64(UniformOnTwoEnds), float64(EndLoadCantilever)); err != nil {
		return 0, 0, err
	}
	k := factors[b.Loading]
	width, depth, span := float64(b.Width), float64(b.Depth), float64(b.Span)
	load, e := float64(b.Load), float64(b.Stiffness)
	inertia := width * depth * depth * depth / 12
	shearArea := 5 * width * depth / 6
	return quantity.Length(k[0] * load * span * span * span / (e * inertia)),
		quantity.Length(k[1] * load * span / (e / 16 * shearArea)), nil
}

// A Bent is what counts of a beam when strengths of beams of different size are
// compared. Apart is the distance between two loads set evenly about the
// middle, and zero for one load there.
type Bent struct{ Depth, Span, Apart quantity.Length }

// sizePower is the power m of the size effect, from the handbook's example.
const sizePower = 18

// SizeEffect returns the bending strength of one beam from that of another of
// the same wood: Wood Handbook 2021 eq. 9-18.
func SizeEffect(known Megapascals, of, wanted Bent) (Megapascals, error) {
	if err := positive("bending strength, MPa", float64(known)); err != nil {
		return 0, err
	}
	stressed := [2]float64{}
	for i, b := range [...]Bent{of, wanted} {
		for _, l := range [...]quantity.Length{b.Depth, b.Span} {
			if err := positive("beam depth or span, mm", l.Millimetres()); err != nil {
				return 0, err
			}
		}
		if err := within("distance between loads, mm", b.Apart.Millimetres(), 0, b.Span.Millimetres()); err != nil {
			return 0, err
		}
		stressed[i] = float64(b.Depth.Times(b.Span)) * (1 + sizePower*float64(b.Apart/b.Span))
	}
	return known * Megapascals(math.Pow(stressed[0]/stressed[1], 1./sizePower)), nil
}

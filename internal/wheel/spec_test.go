package wheel_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
	"lostwood/parts"
)

const in = quantity.Inch

// armyFore is the fore wheel of the US Army six-mule wagon, specification of
// 1858-61: height 3 ft 10, hub 10 by 14 1/2, felloes 2 1/2 by 2 3/4, tyre 2 1/2
// by 5/8, box 12 long bored 2 1/2 to 1 7/8, bands. The number of spokes, their
// sizes and the dish are not in the copies seen: those here are plausible, from
// the trade rules (common practice, no source).
func armyFore() wheel.Spec {
	return wheel.Spec{
		Use: wheel.Wagon, Height: 46 * in,
		Tyre: wheel.Tyre{Wide: 2.5 * in, Thick: .625 * in, Bolt: .375 * in},
		Rim:  wheel.Rim{Felloes: 6, Deep: 2.75 * in, Gap: in / 48, Dowel: .5 * in, DowelDeep: 1 * in, Eased: .25 * in},
		Spokes: wheel.Spokes{
			Number: 12, FootWide: 2 * in, FootThick: 1 * in, FootLong: 2.25 * in, Square: 3 * in,
			Wide: 2.125 * in, Thick: 1.75 * in, TipWide: 1.5 * in, TipThick: 1.5 * in,
			Tongue: wheel.Tongue{Thick: .958 * in, Short: in / 16},
		},
		Nave: wheel.Nave{
			Long: 14.5 * in, Diameter: 10 * in, Front: 6.5 * in, Back: 7.5 * in, Forward: 8 * in, SeatLong: 2.5 * in,
			Bands: []wheel.Band{
				{Name: "sand band", From: 0, Wide: 2.75 * in, Thick: 3},
				{Name: "back driving band", From: 4 * in, Wide: 1 * in, Thick: 3. / 16 * in},
				{Name: "front driving band", From: 8.5 * in, Wide: 1.25 * in, Thick: .25 * in},
				{Name: "linchpin band", From: 11.75 * in, Wide: 2.75 * in, Thick: 3},
			},
		},
		Box:   wheel.Box{Long: 12 * in, Large: 2.5 * in, Small: 1.875 * in, Wall: .25 * in, FrontRecess: 3 * in},
		Dish:  wheel.Dish{Built: .5 * in, Tyred: .75 * in},
		Arm:   wheel.Arm{Long: 13 * in, AtCollar: 2.4375 * in, AtPoint: 1.75 * in, Gather: .125 * in},
		Track: wheel.Track{Wide: 60 * in},
	}
}

func TestArmyWheelIsSound(t *testing.T) {
	require.NoError(t, armyFore().Validate())
}

func TestFiguresHaveNamesOfTheirOwn(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range armyFore().Figures() {
		require.False(t, seen[f.Name], f.Name)
		seen[f.Name] = true
		require.NotEmpty(t, f.Means)
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	s := armyFore()
	s.Height, s.Spokes.Number, s.Arm.AtCollar = 4.6*in, 11, 3*in
	err := s.Validate()
	require.ErrorContains(t, err, "height is 116.8 mm (4.6 in)")
	require.ErrorContains(t, err, "11 spokes do not go two to each of 6 felloes")
	require.ErrorContains(t, err, "arm-collar is 76.2 mm (3 in); it can be 8.0 mm (0.315 in) to 63.5 mm (2.5 in)")
	var limit *parts.LimitError
	require.ErrorAs(t, err, &limit)
}

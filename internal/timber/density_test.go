package timber_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// T9: Wood Handbook 2021, 4-3, prints the formula with a cell wall of 1.54, and
// beside it 267 % for a basic specific gravity of 0.30 and 44 % for 0.90. The
// formula gives 268.4 and 46.2: the printed examples fit a cell wall of 1.50.
// The formula is followed, so that no moisture is refused that wood can hold.
func TestMostMoisture(t *testing.T) {
	for basic, c := range map[float64]struct{ printed, formula float64 }{0.30: {267, 268.4}, 0.90: {44, 46.2}} {
		got, err := timber.MostMoisture(basic)
		require.NoError(t, err)
		assert.InDelta(t, c.formula, float64(got), 0.05)
		atOneAndAHalf := float64(got) + 100/1.54 - 100/1.50
		assert.InDelta(t, c.printed, atOneAndAHalf, 0.5)
	}
	sinks, err := timber.SinkingMoisture(0.5)
	require.NoError(t, err)
	assert.InDelta(t, 100, float64(sinks), 1e-9) // by the definition: 2 x 0.5 is 1
	for _, bad := range []float64{0, -1, 2, math.NaN()} {
		_, err := timber.MostMoisture(bad)
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
		_, err = timber.SinkingMoisture(bad)
		require.ErrorAs(t, err, &fault)
	}
}

// Wood Handbook 2021, 4-12: white ash, basic specific gravity 0.55, has 0.605
// and 678 kg/m3 at 12 %; half a percent allows for the handbook's rounding.
func TestWhiteAshWeighs(t *testing.T) {
	s := find(t, "white ash")
	g, _, err := s.SpecificGravity(12)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.605, g, 0.005)
	d, basis, err := s.Density(12)
	require.NoError(t, err)
	assert.InEpsilon(t, 678, float64(d), 0.005)
	assert.Equal(t, timber.Seen, basis.Standing)
	// Soaked: 1000 x 0.55 x 1.46 at the handbook's 46 % of green heartwood.
	green, _, err := s.Density(quantity.Moisture(s.Weight.GreenHeart.Value))
	require.NoError(t, err)
	assert.InDelta(t, 803, float64(green), 0.1)
}

// Wood Handbook 2021 table 4-1: moisture of green heartwood and sapwood.
func TestGreenMoisture(t *testing.T) {
	for name, want := range map[string][2]float64{
		"white ash": {46, 44}, "white oak": {64, 78}, "northern red oak": {80, 69}, "sugar maple": {65, 72}, "yellow-poplar": {83, 106},
	} {
		w := find(t, name).Weight
		assert.Equal(t, want, [2]float64{w.GreenHeart.Value, w.GreenSapwood.Value}, name)
	}
}

// Published densities at 12 % against published basic specific gravities of the
// same wood: Forest Products Commission WA and Queensland pages.
func TestDensityFromBasicAgreesWithPublished(t *testing.T) {
	for name, want := range map[string]float64{"jarrah": 835, "spotted gum": 1010, "marri": 850, "karri": 900} {
		d, _, err := find(t, name).Density(12)
		require.NoError(t, err)
		assert.InEpsilon(t, want, float64(d), 0.05, name)
	}
}

// With no specific gravity the density at 12 % carries: it comes back at 12 %.
func TestDensityFallsBack(t *testing.T) {
	for name, want := range map[string]float64{"blackbutt": 930, "European oak": 690, "brush box": 880} {
		d, basis, err := find(t, name).Density(12)
		require.NoError(t, err)
		assert.InDelta(t, want, float64(d), 1e-9, name)
		assert.LessOrEqual(t, basis.Standing, timber.Derived)
	}
}

func TestDensityRefuses(t *testing.T) {
	_, _, err := find(t, "sweetgum").Density(12)
	var none *timber.NoFigureError
	require.ErrorAs(t, err, &none)
	assert.Equal(t, "sweetgum", none.Wood)
	_, _, err = find(t, "sweetgum").Mass(1, 12)
	require.ErrorAs(t, err, &none)
	var fault *timber.RangeError
	_, _, err = find(t, "white ash").Density(400) // it holds 117 %
	require.ErrorAs(t, err, &fault)
	_, _, err = find(t, "white ash").Density(quantity.Moisture(math.NaN()))
	require.ErrorAs(t, err, &fault)
	_, _, err = timber.Species{Common: "lead", Weight: timber.Weight{Basic: timber.Given(11, "")}}.Density(12)
	require.ErrorAs(t, err, &fault)
}

// A board foot of white ash at 12 %: 0.00235974 m3 of 675 kg/m3.
func TestMass(t *testing.T) {
	m, _, err := find(t, "white ash").Mass(quantity.BoardFoot, 12)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.00235974*678, float64(m), 0.005)
}

func TestWetterIsHeavier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(published(t).Woods()).Draw(t, "wood")
		a := quantity.Moisture(rapid.Float64Range(0, 40).Draw(t, "drier"))
		b := quantity.Moisture(rapid.Float64Range(float64(a), 40).Draw(t, "wetter"))
		dry, _, err := s.Density(a)
		if err != nil {
			t.Skip("no density known, or it holds no more")
		}
		wet, _, err := s.Density(b)
		if err != nil {
			t.Skip("it holds no more")
		}
		require.LessOrEqual(t, float64(dry), float64(wet)+1e-9)
	})
}

package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Wood Handbook table 5-3a, compression across the grain and shear along it,
// green and at 12 %, MPa: from memory, like the table itself.
func TestAcrossTheGrain(t *testing.T) {
	for name, want := range map[string][4]float64{
		"white ash":     {4.6, 8.0, 9.3, 13.2},
		"white oak":     {4.6, 7.4, 8.6, 13.8},
		"yellow-poplar": {1.9, 3.4, 5.4, 8.2},
		"sugar maple":   {4.4, 10.1, 10.1, 16.1},
		"black locust":  {8.0, 12.6, 12.1, 17.1},
	} {
		s := find(t, name)
		for i, at := range []quantity.Moisture{60, 12} {
			bearing, basis, err := s.Bearing(at)
			require.NoError(t, err)
			assert.InDelta(t, want[i], float64(bearing), 1e-9, name)
			assert.Equal(t, timber.FromMemory, basis.Standing)
			shear, _, err := s.Shear(at)
			require.NoError(t, err)
			assert.InDelta(t, want[2+i], float64(shear), 1e-9, name)
		}
	}
	var none *timber.NoFigureError
	_, _, err := find(t, "jarrah").Bearing(12)
	require.ErrorAs(t, err, &none)
	_, _, err = find(t, "jarrah").Shear(12)
	require.ErrorAs(t, err, &none)
}

// By the printed figures: a spread of 16 % leaves 1 - 1.645 x .16 to 19 in 20,
// ten years of load about 60 % (Wood Handbook 2021, figure 5-23).
func TestLessenings(t *testing.T) {
	bending := timber.OfBending()
	require.Len(t, bending, 3)
	assert.InDelta(t, .7368, bending[0].Leaves, 1e-9)
	assert.InDelta(t, .6, bending[1].Leaves, 1e-9)
	assert.InDelta(t, .7368*.6*.89, timber.Left(bending), 1e-9)
	assert.InDelta(t, (1-1.645*.14)*.6*.5, timber.Left(timber.OfShear()), 1e-9)
	assert.InDelta(t, 1-1.645*.28, timber.Left(timber.OfBearing()), 1e-9)
	assert.InDelta(t, 1, timber.Left(nil), 0)
	for _, l := range append(bending, append(timber.OfShear(), timber.OfBearing()...)...) {
		assert.NotEmpty(t, l.What)
		assert.Regexp(t, `Handbook|ASTM`, l.Why)
	}
}

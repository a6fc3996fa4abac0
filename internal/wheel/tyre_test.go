package wheel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/wheel"
)

// A 44 in rim, a tyre 1/2 in thick, a straight wagon wheel: nip 1/2 (Holmstrom,
// Modern Blacksmithing, ch. IV), weld 5/8 (Hasluck, Tyring cart wheels). The
// girth is 138.23 in. The sums of the rules were worked by hand: 138.23 - 0.50 +
// 1.57 + 0.63 = 139.93 for the middle line, 139.86 for Holmstrom's three
// thicknesses, and Hasluck's inch over makes 139.23.
func TestBarsOfAWagonTyre(t *testing.T) {
	girth := wheel.Length(math.Pi) * 44 * in
	require.InDelta(t, 138.23, girth.Inches(), .005)
	bars := wheel.Bars(girth, .5*in, wheel.Nips(wheel.Wagon, wheel.Sound)[0].Most, wheel.Weld)
	want := map[string]float64{
		"the bar's middle line keeps its length": 139.93,
		"three thicknesses":                      139.86,
		"three and a half thicknesses":           140.11,
		"an inch over the girth":                 139.23,
		"two inches over the girth, the most":    140.23,
	}
	found := 0
	for _, b := range bars {
		if w, ok := want[b.Rule]; ok {
			require.InDelta(t, w, b.Cut.Inches(), .006, b.Rule)
			found++
		}
		require.NotEmpty(t, b.Source)
	}
	require.Equal(t, len(want), found)
	require.Equal(t, "the bar's middle line keeps its length", wheel.BarRules()[0])
}

// Nips by use: the figures as printed by Holmstrom (both books), Richardson and
// Hasluck, in inches.
func TestNipsOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		use         wheel.Use
		condition   wheel.Condition
		least, most float64
	}{
		{wheel.Wagon, wheel.Sound, .5, .5},
		{wheel.HeavyWagon, wheel.Sound, .5, .625},
		{wheel.Wagon, wheel.Poor, 0, .25},
		{wheel.Wagon, wheel.MuchDished, 0, .25},
		{wheel.Carriage, wheel.Sound, 0, .125},
		{wheel.Carriage, wheel.MuchDished, 0, 0},
		{wheel.LightCart, wheel.Sound, .375, .375},
		{wheel.HeavyCart, wheel.Sound, 1.25, 1.25},
	} {
		n := wheel.Nips(c.use, c.condition)[0]
		require.InDelta(t, c.least, n.Least.Inches(), 1e-12, "%v %v", c.use, c.condition)
		require.InDelta(t, c.most, n.Most.Inches(), 1e-12, "%v %v", c.use, c.condition)
	}
	// Where they differ both stand: Richardson's general 1/4 beside Holmstrom's 1/2.
	require.InDelta(t, .25, wheel.Nips(wheel.Wagon, wheel.Sound)[2].Most.Inches(), 1e-12)
}

// Of 150 in round, about .17 in before iron yields; nip beyond that has to be
// closed by joints and shoulders (reckoned from 220 MPa and 200 GPa, from memory).
func TestStretchBeforeYield(t *testing.T) {
	require.InDelta(t, .17, wheel.Stretch(150*in).Inches(), .006)
}

// A present-day gun-wheel job (artillerysociety.co.uk) reckoned more than 300 C
// for about 4 mm of clearance. At 4000 mm round 300 C give 14.4 mm on the girth,
// 4.6 mm across (worked by hand).
func TestHeatForClearance(t *testing.T) {
	require.InDelta(t, 300, wheel.HeatFor(4000, 0, 14.4/math.Pi).Rise, 1e-9)
	require.Less(t, wheel.HeatFor(4000, 0, 4).Rise, 300.)
	require.InDelta(t, 4.6, 14.4/math.Pi, .05)
}

// Richardson, Points for wheelwrights: a third of the tyre's width and 1/8 in:
// 1 1/2 in gives 5/8.
func TestTongueByTyre(t *testing.T) {
	require.InDelta(t, .625, wheel.TongueByTyre(1.5*in).Inches(), 1e-12)
}

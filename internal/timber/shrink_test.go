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

func published(t require.TestingT) timber.Catalogue {
	c, err := timber.Published()
	require.NoError(t, err)
	return c
}

func find(t require.TestingT, name string) timber.Species {
	s, err := published(t).Find(name)
	require.NoError(t, err)
	return s
}

func resize(t require.TestingT, s timber.Species, size quantity.Length, from, to quantity.Moisture, d timber.Direction) quantity.Length {
	got, err := s.Resize(size, from, to, d)
	require.NoError(t, err)
	return got
}

// T10 to T12: Wood Handbook 2010 table 13-5 is of the size at 10 %, with
// shrinkage beginning at 30 %. So a change of one point from 10 % by the linear
// rule is the printed coefficient, to its last figure. Printed coefficients: seen.
// Sycamore's tangential one misses by a hair: 8.4 % gives 0.002966, printed 0.00296,
// which is within what 8.4 was rounded by.
func TestLinearRuleGivesTheHandbooksCoefficients(t *testing.T) {
	const half = 0.0000051
	for name, want := range map[string][2]float64{
		"white ash":         {0.00169, 0.00274}, // T10
		"rock elm":          {0.00165, 0.00285}, // T11
		"basswood":          {0.00230, 0.00330}, // T12
		"American elm":      {0.00144, 0.00338},
		"pecan":             {0.00169, 0.00315},
		"black locust":      {0.00158, 0.00252},
		"American sycamore": {0.00172, 0.00296},
	} {
		s := find(t, name)
		within := [2]float64{half, half}
		if name == "American sycamore" {
			within[1] = 0.0000062
		}
		for i, d := range [...]timber.Direction{timber.Radial, timber.Tangential} {
			got := float64(resize(t, s, 1000, 10, 11, d)-1000) / 1000
			assert.InDelta(t, want[i], got, within[i], "%s, %v", name, d)
		}
		assert.Equal(t, timber.HandbookOwn, s.Move.Kind, name)
		assert.InDelta(t, 100*want[0], s.Move.Radial.Value, 1e-9, name)
		assert.InDelta(t, 100*want[1], s.Move.Tangential.Value, 1e-9, name)
	}
}

// Wood Handbook 2010 table 13-5, rows of commercial groups: hickory, true;
// red oak and white oak, commercial. They do not agree with any one species.
func TestGroupCoefficientsAreMarked(t *testing.T) {
	for name, want := range map[string][2]float64{
		"shagbark hickory":   {0.259, 0.411},
		"northern red oak":   {0.158, 0.369},
		"American white oak": {0.180, 0.365},
	} {
		s := find(t, name)
		assert.Equal(t, timber.HandbookGroup, s.Move.Kind)
		assert.InDelta(t, want[0], s.Move.Radial.Value, 1e-9)
		assert.InDelta(t, want[1], s.Move.Tangential.Value, 1e-9)
	}
}

// T14: Wood Handbook 2010 p. 13-17, from memory, arithmetic checked:
// flat-grained white fir 232 mm wide, 0.00245, 8 to 11 %: 1.705 mm, 0.067 in.
func TestWhiteFirBoard(t *testing.T) {
	assert.InDelta(t, 1.705, float64(timber.SmallChange(232, 0.245, 8, 11)), 0.0005)
	fir := timber.Species{Common: "white fir", Move: timber.Movement{
		Kind: timber.HandbookOwn, Tangential: timber.Given(0.245, "Wood Handbook 2010 table 13-5"),
	}}
	change, basis, err := fir.Service(232, 8, 11, timber.Tangential)
	require.NoError(t, err)
	assert.InDelta(t, 1.705, float64(change), 0.0005)
	assert.Equal(t, timber.Own, basis.Standing)
	// By the linear rule the same coefficient gives the printed 0.067 in too.
	assert.InDelta(t, 0.067, (resize(t, fir, 232, 8, 11, timber.Tangential) - 232).Inches(), 0.0006)
}

// Red oak 11 1/4 in wide, 0.00369, four points: 0.166 in (inputs seen, worked out by hand).
func TestRedOakBoard(t *testing.T) {
	change, _, err := find(t, "red oak").Service(11.25*quantity.Inch, 8, 12, timber.Tangential)
	require.NoError(t, err)
	assert.InDelta(t, 0.166, change.Inches(), 0.0005)
}

// Wood Handbook eq. 13-3 (from memory) for larger changes is the linear rule:
// D_I (M_F - M_I) / (30*100/S - 30 + M_I).
func TestResizeAgainstHandbookEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(0, 30).Draw(t, "from")
		to := rapid.Float64Range(0, 30).Draw(t, "to")
		s := 7.8 // white ash, tangential, table 4-3
		want := 100 + 100*(to-from)/(3000/s-30+from)
		got := resize(t, find(t, "white ash"), 100, quantity.Moisture(from), quantity.Moisture(to), timber.Tangential)
		require.InDelta(t, want, float64(got), 1e-9)
	})
}

// White oak 5 in wide, flat-sawn, green to 12 %: 5 x 10.5 % x 18/30 = 0.315 in
// (Wood Handbook table 4-3 and eq. 4-9, worked out by hand).
func TestWhiteOakBolsterDries(t *testing.T) {
	got := resize(t, find(t, "white oak"), 5*quantity.Inch, 60, 12, timber.Tangential)
	assert.InDelta(t, 0.315, 5-got.Inches(), 1e-9)
}

// T13: D. W. Green, FPL-RP-489, abstract: at 15 % the factors of PS 20-70 are
// 2.80 and 2.35.
func TestSoftwoodLumber(t *testing.T) {
	w, th, err := timber.SoftwoodLumber(15)
	require.NoError(t, err)
	assert.InDelta(t, 2.80, w, 0.01)
	assert.InDelta(t, 2.35, th, 0.01)
	for _, m := range []quantity.Moisture{7.9, 19.1, quantity.Moisture(math.NaN())} {
		_, _, err := timber.SoftwoodLumber(m)
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
}

// Queensland Government species page, blackbutt: 7.3 % tangential and 4.3 %
// radial from green to 12 %, unit shrinkage 0.37 and 0.26.
func TestAustralianConvention(t *testing.T) {
	s := find(t, "blackbutt")
	for d, want := range map[timber.Direction][2]float64{timber.Tangential: {7.3, 0.37}, timber.Radial: {4.3, 0.26}} {
		dry := resize(t, s, 100, 40, 12, d)
		assert.InDelta(t, 100-want[0], float64(dry), 1e-9, "green to 12 %%, %v", d)
		moved := resize(t, s, 100, 12, 11, d)
		assert.InDelta(t, want[1], 100-float64(moved), 1e-9, "unit shrinkage, %v", d)
		moved = resize(t, s, 100, 12, 5, d)
		assert.InDelta(t, 7*want[1], 100-float64(moved), 1e-9, "seven points, %v", d)
	}
	// 7.3 over 18 points would be 0.41 a point: not the published 0.37.
	assert.Greater(t, 7.3/18-0.37, 0.03)
	basis, err := s.ShrinkBasis(timber.Tangential)
	require.NoError(t, err)
	assert.Equal(t, timber.Seen, basis.Standing)

	// Marri has no unit shrinkage: one straight line, 6.5 % over 18 points of green size.
	marri := find(t, "WA red gum")
	assert.InDelta(t, 93.5, float64(resize(t, marri, 100, 30, 12, timber.Tangential)), 1e-9)
	assert.InDelta(t, 100-6.5/2, float64(resize(t, marri, 100, 30, 21, timber.Tangential)), 1e-9)
}

// Along the grain: 0.1 to 0.2 % green to ovendry (Wood Handbook 2010 p. 4-5, from memory).
func TestLengthwise(t *testing.T) {
	got := resize(t, find(t, "white ash"), 3000, 30, 0, timber.Lengthwise)
	assert.InDelta(t, 6, 3000-float64(got), 1e-9)
	basis, err := find(t, "white ash").ShrinkBasis(timber.Lengthwise)
	require.NoError(t, err)
	assert.Equal(t, timber.FromMemory, basis.Standing)
	// Shrinkage along the grain is known of every wood, listed or not.
	_, err = find(t, "red mahogany").Resize(100, 20, 10, timber.Lengthwise)
	require.NoError(t, err)
}

func TestResizeAcross(t *testing.T) {
	s := find(t, "white ash")
	at := func(degrees quantity.Angle) quantity.Length {
		got, err := s.ResizeAcross(100, 30, 0, degrees*quantity.Degree)
		require.NoError(t, err)
		return got
	}
	assert.InDelta(t, 100-4.9, float64(at(0)), 1e-9)
	assert.InDelta(t, 100-7.8, float64(at(90)), 1e-9)
	assert.InDelta(t, 100-(4.9+7.8)/2, float64(at(45)), 1e-9)
	_, err := s.ResizeAcross(100, 30, 0, quantity.Angle(math.NaN()))
	var fault *timber.RangeError
	require.ErrorAs(t, err, &fault)
	_, err = find(t, "wych elm").ResizeAcross(100, 30, 0, 0)
	var none *timber.NoFigureError
	require.ErrorAs(t, err, &none)
}

func TestWorstTakesTheLargerMovement(t *testing.T) {
	s := find(t, "white oak")
	assert.Equal(t, resize(t, s, 100, 30, 8, timber.Tangential), resize(t, s, 100, 30, 8, timber.Worst))
	assert.Equal(t, resize(t, s, 100, 8, 30, timber.Tangential), resize(t, s, 100, 8, 30, timber.Worst))
	s.Shrink.Radial.Value = 20 // a wood that moves more across its rings
	assert.Equal(t, resize(t, s, 100, 30, 8, timber.Radial), resize(t, s, 100, 30, 8, timber.Worst))
}

func TestResizeRefuses(t *testing.T) {
	ash := find(t, "white ash")
	for _, c := range []struct {
		size     quantity.Length
		from, to quantity.Moisture
		d        timber.Direction
	}{
		{100, -1, 12, timber.Radial},
		{100, 12, quantity.Moisture(math.NaN()), timber.Radial},
		{100, 12, 700, timber.Worst},
		{-1, 12, 8, timber.Radial},
		{quantity.Length(math.Inf(1)), 12, 8, timber.Lengthwise},
		{100, 12, 8, timber.Direction(9)},
	} {
		_, err := ash.Resize(c.size, c.from, c.to, c.d)
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault, "%+v", c)
	}
	for _, d := range []timber.Direction{timber.Radial, timber.Tangential, timber.Worst} {
		_, err := find(t, "Osage-orange").Resize(100, 12, 8, d)
		var none *timber.NoFigureError
		require.ErrorAs(t, err, &none)
		assert.Equal(t, "Osage-orange", none.Wood)
		assert.NotEmpty(t, none.Want)
	}
	absurd := timber.Species{Common: "smoke", Shrink: timber.Shrinkage{Tangential: timber.Given(120, "")}}
	_, err := absurd.Resize(100, 12, 8, timber.Tangential)
	var none *timber.NoFigureError
	require.ErrorAs(t, err, &none)
}

func TestUnitShrinkageAloneSpeaksOfSeasonedWoodOnly(t *testing.T) {
	s := timber.Species{Common: "grey box", Move: timber.Movement{Kind: timber.UnitShrinkage, Tangential: timber.Given(0.4, "own trial")}}
	assert.InDelta(t, 101.6, float64(resize(t, s, 100, 12, 16, timber.Tangential)), 1e-9)
	_, err := s.Resize(100, 25, 12, timber.Tangential)
	var none *timber.NoFigureError
	require.ErrorAs(t, err, &none)
}

func TestServiceRefuses(t *testing.T) {
	var fault *timber.RangeError
	_, _, err := find(t, "white ash").Service(100, 5, 12, timber.Tangential)
	require.ErrorAs(t, err, &fault)
	_, _, err = find(t, "white ash").Service(-1, 8, 12, timber.Tangential)
	require.ErrorAs(t, err, &fault)
	_, _, err = find(t, "white ash").Service(1, 8, 12, timber.Direction(-1))
	require.ErrorAs(t, err, &fault)
	change, _, err := find(t, "blackbutt").Service(100, 5, 12, timber.Worst)
	require.NoError(t, err)
	assert.InDelta(t, 7*0.37, float64(change), 1e-9)
	var none *timber.NoFigureError
	_, _, err = find(t, "marri").Service(100, 8, 12, timber.Radial)
	require.ErrorAs(t, err, &none)
	_, _, err = find(t, "white ash").Service(100, 8, 12, timber.Lengthwise)
	require.ErrorAs(t, err, &none)
}

// anyWood draws a wood and a direction that its shrinkage is known in.
func anyWood(t *rapid.T) (timber.Species, timber.Direction) {
	s := rapid.SampledFrom(published(t).Woods()).Draw(t, "wood")
	d := rapid.SampledFrom([]timber.Direction{timber.Radial, timber.Tangential, timber.Worst, timber.Lengthwise}).Draw(t, "direction")
	if _, err := s.ShrinkBasis(d); err != nil {
		t.Skip("no shrinkage known")
	}
	return s, d
}

func drawMoisture(t *rapid.T, label string) quantity.Moisture {
	return quantity.Moisture(rapid.Float64Range(0, 120).Draw(t, label))
}

func TestResizeComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, d := anyWood(t)
		size := quantity.Length(rapid.Float64Range(0, 6000).Draw(t, "size"))
		from, to := drawMoisture(t, "from"), drawMoisture(t, "to")
		back := resize(t, s, resize(t, s, size, from, to, d), to, from, d)
		require.InDelta(t, float64(size), float64(back), 1e-9)
	})
}

// More moisture never makes wood smaller; and the drier the wood is wanted at
// the same finished size, the larger its green size.
func TestMoistureNeverShrinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, d := anyWood(t)
		a, b := drawMoisture(t, "one"), drawMoisture(t, "other")
		dry, wet := min(a, b), max(a, b)
		require.LessOrEqual(t, float64(resize(t, s, 100, 12, dry, d)), float64(resize(t, s, 100, 12, wet, d))+1e-9)
		require.GreaterOrEqual(t, float64(resize(t, s, 100, dry, 60, d)), float64(resize(t, s, 100, wet, 60, d))-1e-9)
		require.GreaterOrEqual(t, float64(resize(t, s, 100, dry, 60, d)), 100-1e-9)
	})
}

func TestNothingMovesAboveSaturation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, d := anyWood(t)
		a := quantity.Moisture(rapid.Float64Range(30, 200).Draw(t, "one"))
		b := quantity.Moisture(rapid.Float64Range(30, 200).Draw(t, "other"))
		require.Equal(t, quantity.Length(123), resize(t, s, 123, a, b, d))
	})
}

// D. W. Green, FPL-RP-489, takes 28 % as green; a European source gives black
// locust 22 %. A wood's own saturation is used where it is stated.
func TestOwnSaturation(t *testing.T) {
	s := find(t, "black locust")
	s.Shrink.Saturation = timber.Given(22, "European source")
	assert.Equal(t, quantity.Length(100), resize(t, s, 100, 40, 22, timber.Radial))
	assert.InDelta(t, 100-4.6/2, float64(resize(t, s, 100, 22, 11, timber.Radial)), 1e-9)
}

package timber_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

const (
	in = quantity.Inch
	ft = quantity.Foot
)

func nominal(t *testing.T, name string) timber.Nominal {
	t.Helper()
	n, err := timber.FindNominal(name)
	require.NoError(t, err)
	return n
}

// T15: American Hardwood Export Council, on the rules of the National Hardwood
// Lumber Association: 6 1/2 in x 8 ft is 4 1/3, surface measure 4; 8 in x 12 ft 8;
// 10 in x 13 ft 10 10/12, surface measure 11.
func TestSurfaceMeasure(t *testing.T) {
	four := nominal(t, "4/4")
	got, err := timber.SurfaceMeasure.Measure([]timber.Board{
		{6.5 * in, 8 * ft, four}, {8 * in, 12 * ft, four}, {10 * in, 13 * ft, four}, {10 * in, 13.9 * ft, four},
	})
	require.NoError(t, err)
	assert.Equal(t, []float64{4, 8, 11, 11}, got.Surface)
	assert.InDelta(t, 34, got.BoardFeet, 0)
}

// Export tally, the same source: 5 1/4 in x 8 1/2 ft tallies 5 in x 8 ft, 3 1/3.
func TestExportTally(t *testing.T) {
	got, err := timber.ExportTally.Measure([]timber.Board{{5.25 * in, 8.5 * ft, nominal(t, "4/4")}})
	require.NoError(t, err)
	assert.Equal(t, []float64{3}, got.Surface)
	// Exact halves up and down by turns: 5 1/2 in is 6, then 5: 6 x 12 ft and 5 x 12 ft.
	b := timber.Board{5.5 * in, 12 * ft, nominal(t, "4/4")}
	got, err = timber.ExportTally.Measure([]timber.Board{b, b, b})
	require.NoError(t, err)
	assert.Equal(t, []float64{6, 5, 6}, got.Surface)
}

// A surface measure of exactly a half goes up and down by turns (common
// practice, from memory): 6 in x 9 ft is 4 1/2.
func TestHalvesByTurns(t *testing.T) {
	b := timber.Board{6 * in, 9 * ft, nominal(t, "8/4")}
	got, err := timber.SurfaceMeasure.Measure([]timber.Board{b, b, b, b})
	require.NoError(t, err)
	assert.Equal(t, []float64{5, 4, 5, 4}, got.Surface)
	assert.InDelta(t, 36, got.BoardFeet, 0) // 18 square feet, two inches thick
}

// T16: plain volume, as yards print it: 1 x 9 x 96 in is 6 board feet; 1 1/2
// thick 9. Board foot: 144 cubic inches.
func TestPlainVolume(t *testing.T) {
	for name, want := range map[string]float64{"4/4": 6, "6/4": 9, "3/4": 4.5} {
		got, err := timber.PlainVolume.Measure([]timber.Board{{9 * in, 96 * in, nominal(t, name)}})
		require.NoError(t, err)
		assert.InDelta(t, want, got.BoardFeet, 1e-9)
		assert.InDelta(t, want, (9 * in).Times(96*in).Deep(nominal(t, name).Rough).BoardFeet(), 1e-9)
	}
	// Wood Handbook: 423.776 board feet to the cubic metre.
	assert.InDelta(t, 423.776, quantity.Volume(1e9).BoardFeet(), 0.0005)
	assert.InDelta(t, 1./12, float64(timber.SuperFoot/quantity.Volume(ft*ft*ft)), 1e-12)
}

// Under an inch counts as an inch, and each thickness of a bundle is rounded apart.
func TestBundleOfSeveralThicknesses(t *testing.T) {
	got, err := timber.SurfaceMeasure.Measure([]timber.Board{
		{9 * in, 8 * ft, nominal(t, "3/4")}, {9 * in, 8 * ft, nominal(t, "5/4")}, {9 * in, 8 * ft, nominal(t, "4/4")},
	})
	require.NoError(t, err)
	assert.InDelta(t, 6+8+6, got.BoardFeet, 0) // 6 x 1 1/4 is 7 1/2, up; the thin one counts with 4/4
}

func TestNextInchNextFoot(t *testing.T) {
	got, err := timber.NextInchNextFoot.Measure([]timber.Board{{6.1 * in, 7.2 * ft, nominal(t, "4/4")}, {6 * in, 8 * ft, nominal(t, "4/4")}})
	require.NoError(t, err)
	assert.InDelta(t, 7.*8/12, got.Surface[0], 1e-12)
	assert.InDelta(t, 4, got.Surface[1], 1e-12)
}

func TestMeasureRefuses(t *testing.T) {
	four := nominal(t, "4/4")
	for _, b := range []timber.Board{{0, 1, four}, {1, -1, four}, {1, 1, timber.Nominal{}}, {quantity.Length(math.NaN()), 1, four}} {
		_, err := timber.SurfaceMeasure.Measure([]timber.Board{b})
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
	_, err := timber.Rule(7).Measure(nil)
	require.Error(t, err)
	none, err := timber.SurfaceMeasure.Measure(nil)
	require.NoError(t, err)
	assert.Zero(t, none.BoardFeet)
}

// T17: Hoppus foot, published: 1.273 cubic feet, 0.03605 m3, 27.736 to the cubic metre.
func TestHoppus(t *testing.T) {
	assert.InDelta(t, 27.736, 1/timber.HoppusFoot.CubicMetres(), 0.0006)
	assert.InDelta(t, 0.03605, timber.HoppusFoot.CubicMetres(), 0.000006)
	assert.InDelta(t, 1.273, timber.HoppusFoot.CubicFeet(), 0.0005)
	// A round log measures its volume in Hoppus feet: girth pi x diameter.
	d, l := 18*in, 10*ft
	got, err := timber.HoppusFeet(quantity.Length(math.Pi)*d, l)
	require.NoError(t, err)
	round := quantity.Area(math.Pi / 4 * float64(d*d)).Deep(l)
	assert.InDelta(t, float64(round/timber.HoppusFoot), got, 1e-9)
	// Quarter girth 12 in, 10 ft long: 144 x 10 / 144.
	got, err = timber.HoppusFeet(48*in, 10*ft)
	require.NoError(t, err)
	assert.InDelta(t, 10, got, 1e-12)
	for _, bad := range [][2]quantity.Length{{0, 1}, {1, 0}} {
		_, err := timber.HoppusFeet(bad[0], bad[1])
		require.Error(t, err)
	}
}

// Dealers' lists (seen) and Wood Handbook ch. 6: rough to surfaced two sides, in;
// 3/4, 7/4, 10/4, 12/4 and 16/4 from memory.
func TestNominalThicknesses(t *testing.T) {
	for name, want := range map[string][2]string{
		"4/4": {"1", "13/16"}, "5/4": {"1 1/4", "1 1/16"}, "6/4": {"1 1/2", "1 5/16"}, "8/4": {"2", "1 3/4"},
		"3/4": {"3/4", "9/16"}, "7/4": {"1 3/4", "1 1/2"}, "10/4": {"2 1/2", "2 1/4"}, "12/4": {"3", "2 3/4"}, "16/4": {"4", "3 3/4"},
	} {
		n := nominal(t, name)
		assert.Equal(t, want, [2]string{quantity.Fraction(n.Rough, 32), quantity.Fraction(n.Planed, 32)}, name)
	}
	assert.Equal(t, quantity.Length(38), nominal(t, "38mm").Rough)
	for _, system := range []timber.System{timber.Quarters, timber.Metric} {
		stock := timber.Stock(system)
		for i, n := range stock {
			assert.Less(t, n.Planed, n.Rough)
			if i > 0 {
				assert.Less(t, stock[i-1].Rough, n.Rough)
			}
		}
	}
	_, err := timber.FindNominal("9/4")
	var fault *timber.UnknownError
	require.ErrorAs(t, err, &fault)
}

func TestStockFor(t *testing.T) {
	for finished, want := range map[quantity.Length]string{0.8125 * in: "4/4", 0.82 * in: "5/4", 1.75 * in: "8/4", 3.75 * in: "16/4", 0: "3/4"} {
		n, err := timber.StockFor(finished, timber.Quarters)
		require.NoError(t, err)
		assert.Equal(t, want, n.Name)
	}
	n, err := timber.StockFor(40, timber.Metric)
	require.NoError(t, err)
	assert.Equal(t, "50 mm", n.Name)
	for _, bad := range []quantity.Length{3.8 * in, -1, quantity.Length(math.NaN())} {
		_, err := timber.StockFor(bad, timber.Quarters)
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
}

package bolt_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

// ASME B18.5 and B18.2.1, as Portland Bolt answers: 2D + 1/4 to 6 in, 2D + 1/2
// above. The three worked rows of trade lengths.
func TestThreadLength(t *testing.T) {
	for _, c := range []struct{ d, length, want string }{
		{"1/4", "2 1/2", "3/4"},
		{"3/8", "4", "1"},
		{"1/2", "8", "1 1/2"},
		{"1/2", "6", "1 1/4"}, // six itself is not over six
		{"1/2", "6 1/2", "1 1/2"},
		{"1/2", "1", "1"}, // shorter than its rule: threaded to the head
	} {
		got, s := bolt.ThreadLength(inches(t, c.d), inches(t, c.length))
		assert.Equal(t, bolt.Published, s)
		near(t, inches(t, c.want), got)
	}
	_, s := bolt.ThreadLength(11*inch/32, 4*inch)
	assert.Equal(t, bolt.Pattern, s)
	for _, bad := range []quantity.Length{0, -1, quantity.Length(math.NaN()), quantity.Length(math.Inf(1))} {
		got, s := bolt.ThreadLength(inch/2, bad)
		assert.Equal(t, bolt.Unlisted, s)
		assert.Zero(t, got)
		got, s = bolt.ThreadLength(bad, 4*inch)
		assert.Equal(t, bolt.Unlisted, s)
		assert.Zero(t, got)
	}
}

// National Design Specification for Wood Construction: holes 1/32 to 1/16 in
// over the bolt (12.1.3.2; the clause from memory).
func TestHole(t *testing.T) {
	for _, d := range sizes {
		over := bolt.Hole(d) - d
		assert.GreaterOrEqual(t, float64(over), float64(inch/32)-exact)
		assert.LessOrEqual(t, float64(over), float64(inch/16)+exact)
		near(t, bolt.LeastPlay, over)
	}
	near(t, inch/16, bolt.MostPlay)
}

// A grip of 3 in on a 5/16 bolt takes washer, nut and a thread besides: worked by
// hand from ASME B18.21.1 (.104 greatest), ASME B18.2.2 (17/64) and 18 threads.
func TestNeedAndStock(t *testing.T) {
	d := 5 * inch / 16
	w, _ := bolt.Washer(d, bolt.Wide)
	n, _ := bolt.Nut(d, bolt.SquareNut)
	one, _ := bolt.OneThread(d, bolt.American)
	need := bolt.Need(3*inch, w.Limits.Max, n.Thickness, one)
	assert.InDelta(t, 3.425181, need.Inches(), 1e-6)
	got, err := bolt.StockLength(need)
	require.NoError(t, err)
	near(t, 3.5*inch, got)
	near(t, (3.5-3-.104)*inch, bolt.ThreadNeeded(got, 3*inch, w.Limits.Max))
}

// Common practice, no source: quarters to 6 in, halves above.
func TestStockLength(t *testing.T) {
	for need, want := range map[string]string{
		"1/8": "1/4", "2": "2", "2 1/32": "2 1/4", "5 7/8": "6", "6": "6", "6 1/32": "6 1/2",
		"6 1/4": "6 1/2", "6 1/2": "6 1/2", "11 17/32": "12",
	} {
		got, err := bolt.StockLength(inches(t, need))
		require.NoError(t, err)
		near(t, inches(t, want), got)
	}
	for _, bad := range []quantity.Length{0, -inch, 1e300, quantity.Length(math.NaN()), quantity.Length(math.Inf(1))} {
		_, err := bolt.StockLength(bad)
		var e *bolt.SizeError
		require.ErrorAs(t, err, &e)
	}
}

// Stock is never shorter than the need, never a whole step longer, and is stock
// itself.
func TestStockLengthRoundsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := quantity.Length(rapid.Float64Range(1, 2900).Draw(t, "mm"))
		got, err := bolt.StockLength(need)
		require.NoError(t, err)
		require.GreaterOrEqual(t, float64(got), float64(need)-0.001)
		step := inch / 4
		if got > 6*inch+0.001 {
			step = inch / 2
		}
		require.Less(t, float64(got-need), float64(step)+1e-9)
		again, err := bolt.StockLength(got)
		require.NoError(t, err)
		require.InDelta(t, float64(got), float64(again), 1e-9)
		_, frac := math.Modf(float64(got/step) + 1e-9)
		require.Less(t, frac, 1e-6)
	})
}

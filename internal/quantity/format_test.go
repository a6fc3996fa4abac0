package quantity_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
)

func itoa(n int) string { return strconv.Itoa(n) }

func TestFraction(t *testing.T) {
	inf := quantity.Length(math.Inf(1))
	for _, c := range []struct {
		l    quantity.Length
		den  int
		want string
	}{
		{2.625 * quantity.Inch, 32, "2 5/8"},
		{0.875 * quantity.Inch, 32, "7/8"},
		{3 * quantity.Inch, 32, "3"},
		{2.99 * quantity.Inch, 32, "3"},
		{-2.625 * quantity.Inch, 8, "-2 5/8"},
		{quantity.Inch / 64, 32, "1/32"}, // halves go away from zero
		{-quantity.Inch / 64, 32, "-1/32"},
		{3 * quantity.Inch / 64, 32, "1/16"},
		{0.01, 32, "0"},
		{-0.01, 32, "0"},
		{quantity.Inch / 3, 3, "1/3"},
		{quantity.Inch / 10, 10, "1/10"},
		{2.625 * quantity.Inch, 0, "2.6250"},
		{-0.0001, -1, "0.0000"},
		{inf, 32, quantity.NotKnown},
		{quantity.Length(math.NaN()), 32, quantity.NotKnown},
	} {
		assert.Equal(t, c.want, quantity.Fraction(c.l, c.den))
	}
	// The greatest float64 is 1.797e308: 7.08e306 inches, of 307 figures.
	assert.Len(t, quantity.Fraction(math.MaxFloat64, 32), 307)
}

func TestFeetInches(t *testing.T) {
	for _, c := range []struct {
		l    quantity.Length
		den  int
		want string
	}{
		{42.5 * quantity.Inch, 32, "3 ft 6 1/2 in"},
		{48 * quantity.Inch, 32, "4 ft"},
		{47.999 * quantity.Inch, 32, "4 ft"},
		{0.875 * quantity.Inch, 32, "7/8 in"},
		{-42.5 * quantity.Inch, 32, "-3 ft 6 1/2 in"},
		{-0.001, 32, "0 in"},
		{18 * quantity.Inch, 0, "1.5000 ft"},
		{quantity.Length(math.Inf(-1)), 32, quantity.NotKnown},
	} {
		assert.Equal(t, c.want, quantity.FeetInches(c.l, c.den))
	}
}

func TestFormat(t *testing.T) {
	l := 66.675 * quantity.Millimetre
	assert.Equal(t, "2 5/8 in", quantity.Format(l, quantity.Inches))
	assert.Equal(t, "2 5/8 in", quantity.Format(l, quantity.Feet))
	assert.Equal(t, "66.7 mm", quantity.Format(l, quantity.Millimetres))
	assert.Equal(t, "6.67 cm", quantity.Format(l, quantity.Centimetres))
	assert.Equal(t, "0.0667 m", quantity.Format(l, quantity.Metres))
	assert.Equal(t, "0.0 mm", quantity.Format(-0.04, quantity.Millimetres))
	assert.Equal(t, quantity.NotKnown, quantity.Format(quantity.Length(math.NaN()), quantity.Millimetres))
}

var units = []quantity.Unit{quantity.Inches, quantity.Feet, quantity.Millimetres, quantity.Centimetres, quantity.Metres}

// What is written is read back to within half of the last figure, and what is
// read back is written the same.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := quantity.Length(rapid.Float64Range(-20000, 20000).Draw(t, "mm"))
		u := rapid.SampledFrom(units).Draw(t, "unit")
		bare := rapid.SampledFrom(units).Draw(t, "bare")
		text := quantity.Format(l, u)
		back, err := quantity.ParseLength(text, bare)
		require.NoError(t, err, text)
		half := 0.05
		if u == quantity.Inches || u == quantity.Feet {
			half = 25.4 / 64
		}
		require.InDelta(t, float64(l), float64(back), half+1e-6)
		require.Equal(t, text, quantity.Format(back, u))
		require.False(t, strings.HasPrefix(text, "-0 ") || text == "-0.0 mm")
	})
}

func TestFractionIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := quantity.Length(rapid.Float64Range(-5000, 5000).Draw(t, "mm"))
		den := rapid.SampledFrom([]int{2, 4, 8, 16, 32, 64}).Draw(t, "denominator")
		back, err := quantity.ParseLength(quantity.Fraction(l, den), quantity.Inches)
		require.NoError(t, err)
		require.InDelta(t, float64(l), float64(back), 25.4/float64(2*den)+1e-6)
	})
}

func TestSizeWords(t *testing.T) {
	size := func(value, doubt quantity.Length) quantity.Size {
		return quantity.Size{Value: value, Doubt: doubt, Known: quantity.FromIron}
	}
	inf := quantity.Length(math.Inf(1))
	v := 2.625 * quantity.Inch
	for _, c := range []struct {
		s    quantity.Size
		u    quantity.Unit
		want string
	}{
		{size(v, quantity.Inch/16), quantity.Inches, "2 5/8 in, give or take 1/16"},
		{size(v, quantity.Inch/20), quantity.Inches, "2 5/8 in, give or take 1/16"},
		{size(v, 0.001), quantity.Inches, "2 5/8 in, give or take 1/64"},
		{size(v, 0.9*quantity.Inch), quantity.Inches, "2 5/8 in, give or take 1"},
		{size(v, 1.2*quantity.Inch), quantity.Inches, "2 5/8 in, give or take 1 1/2"},
		{size(v, 7.5*quantity.Inch), quantity.Inches, "2 5/8 in, give or take 8"},
		{size(v, 25*quantity.Inch), quantity.Inches, "2 5/8 in, give or take 36"},
		{size(42.5*quantity.Inch, quantity.Inch/16), quantity.Feet, "3 ft 6 1/2 in, give or take 1/16 in"},
		{size(v, 0.001), quantity.Millimetres, "66.7 mm, give or take 0.1"},
		{size(v, 0.61), quantity.Millimetres, "66.7 mm, give or take 0.7"},
		{size(v, 1), quantity.Millimetres, "66.7 mm, give or take 1"},
		{size(v, 1.2), quantity.Millimetres, "66.7 mm, give or take 1.5"},
		{size(v, 1.6), quantity.Millimetres, "66.7 mm, give or take 2"},
		{size(v, 34), quantity.Millimetres, "66.7 mm, give or take 40"},
		{size(v, 0.61), quantity.Centimetres, "6.67 cm, give or take 0.7 mm"},
		{size(v, 0.61), quantity.Metres, "0.0667 m, give or take 0.7 mm"},
		{size(v, 0), quantity.Inches, "2 5/8 in"},
		{size(v, inf), quantity.Inches, quantity.NotKnown},
		{size(v, -1), quantity.Inches, quantity.NotKnown},
		{size(inf, 1), quantity.Inches, quantity.NotKnown},
		{quantity.Size{Value: v, Doubt: 1, Known: quantity.Unknown}, quantity.Inches, quantity.NotKnown},
	} {
		assert.Equal(t, c.want, c.s.Words(c.u))
	}
}

// What people read is never surer than what was worked out, nor idly vaguer.
func TestSizeWordsNeverUnderstateDoubt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		doubt := quantity.Length(math.Exp(rapid.Float64Range(-12, 9).Draw(t, "log doubt")))
		u := rapid.SampledFrom(units).Draw(t, "unit")
		s := quantity.Size{Value: 100, Doubt: doubt, Known: quantity.Measured}
		r, err := quantity.ParseReading(s.Words(u), u)
		require.NoError(t, err, s.Words(u))
		require.Equal(t, quantity.DoubtStated, r.Stated)
		require.GreaterOrEqual(t, float64(r.Doubt), float64(doubt)*(1-1e-9))
		require.LessOrEqual(t, float64(r.Doubt), math.Max(0.4, 2*float64(doubt)))
	})
}

func TestKnownWords(t *testing.T) {
	assert.Equal(t, "measured", quantity.Measured.String())
	assert.Equal(t, "guess", quantity.Guess.String())
	assert.Equal(t, "not known", quantity.Known(99).String())
}

package quantity_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
)

// The inch is 25.4 mm exactly: international yard and pound agreement of
// 1959, NIST Special Publication 811, appendix B.
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		bare quantity.Unit
		want quantity.Length
	}{
		{"1 3/4", quantity.Inches, 44.45},
		{"1-3/4 in", quantity.Millimetres, 44.45},
		{"1–3/4", quantity.Inches, 44.45},
		{"1 ¾", quantity.Inches, 44.45},
		{"1-¾\"", quantity.Millimetres, 44.45},
		{"3 ft 6 1/2", quantity.Inches, 1079.5},
		{"3 ft. 6 1/2 in.", quantity.Inches, 1079.5},
		{`3' 6 1/2"`, quantity.Millimetres, 1079.5},
		{`3'-6 1/2"`, quantity.Inches, 1079.5},
		{"3′6½″", quantity.Inches, 1079.5},
		{"3’ 6½”", quantity.Inches, 1079.5},
		{"3' 6½''", quantity.Inches, 1079.5},
		{"3 feet 6 1/2 inches", quantity.Inches, 1079.5},
		{"3 ft ½", quantity.Inches, 927.1},
		{"3 1/2 ft", quantity.Inches, 1066.8},
		{"3.5 ft", quantity.Inches, 1066.8},
		{"4 ft", quantity.Inches, 1219.2},
		{"4", quantity.Feet, 1219.2},
		{"44.5 mm", quantity.Inches, 44.5},
		{"44.5mm", quantity.Inches, 44.5},
		{"44 1/2 mm", quantity.Inches, 44.5},
		{"44.5", quantity.Millimetres, 44.5},
		{"4.45 cm", quantity.Inches, 44.5},
		{"1.2345 m", quantity.Inches, 1234.5},
		{"2", quantity.Metres, 2000},
		{"2½", quantity.Inches, 63.5},
		{"21/32", quantity.Inches, 16.66875},
		{"7/8", quantity.Inches, 22.225},
		{"7⁄8", quantity.Inches, 22.225},
		{"⅟8", quantity.Inches, 3.175},
		{"12.5", quantity.Inches, 317.5},
		{".5", quantity.Inches, 12.7},
		{"-5/16", quantity.Inches, -7.9375},
		{"−5/16", quantity.Inches, -7.9375},
		{"+5/16", quantity.Inches, 7.9375},
		{"-3 ft 6", quantity.Inches, -1066.8},
		{"  1 3/4  IN ", quantity.Millimetres, 44.45},
		{"1\u00a03/4", quantity.Inches, 44.45},
		{"0", quantity.Inches, 0},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := quantity.ParseLength(c.text, c.bare)
			require.NoError(t, err)
			assert.InDelta(t, float64(c.want), float64(got), 1e-12)
		})
	}
}

// Unicode 15, Number Forms and Latin-1: each fraction and its numeric value.
func TestEveryVulgarFraction(t *testing.T) {
	for c, want := range map[rune]float64{
		'¼': 1. / 4, '½': 1. / 2, '¾': 3. / 4, '⅐': 1. / 7, '⅑': 1. / 9, '⅒': 1. / 10, '⅓': 1. / 3, '⅔': 2. / 3,
		'⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5, '⅙': 1. / 6, '⅚': 5. / 6, '⅛': 1. / 8, '⅜': 3. / 8,
		'⅝': 5. / 8, '⅞': 7. / 8, '↉': 0,
	} {
		for _, whole := range []string{"", "2", "2 ", "2-"} {
			got, err := quantity.ParseLength(whole+string(c), quantity.Inches)
			require.NoError(t, err)
			if whole != "" {
				assert.InDelta(t, 2+want, got.Inches(), 1e-12, "%s%c", whole, c)
			} else {
				assert.InDelta(t, want, got.Inches(), 1e-12, "%c", c)
			}
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	for _, c := range []struct {
		name, text string
		bare       quantity.Unit
		column     int
		wants      string // part of what would do
	}{
		{"comma", "1,5", quantity.Inches, 2, "with a point"},
		{"thousands", "1,200 mm", quantity.Inches, 2, "with a point"},
		{"nothing", "", quantity.Inches, 1, "1 3/4"},
		{"only space", "   ", quantity.Inches, 1, "1 3/4"},
		{"only sign", "-", quantity.Inches, 2, "1 3/4"},
		{"only unit", "mm", quantity.Inches, 1, "1 3/4"},
		{"word", "about 3", quantity.Inches, 1, "1 3/4"},
		{"lost space", "13/4", quantity.Inches, 1, "3 1/4, or 1 3/4 if a space was lost"},
		{"lost space after feet", "3 ft 61/2", quantity.Inches, 6, "30 1/2, or 6 1/2 if a space was lost"},
		{"two lost spaces", "115/16", quantity.Inches, 1, "1 15/16 if a space was lost, or 11 5/16"},
		{"whole over one", "8/4", quantity.Inches, 1, "write 2"},
		{"over nothing", "1 3/0", quantity.Inches, 3, "7/8"},
		{"nothing under", "1 3/", quantity.Inches, 5, "7/8"},
		{"nothing above", "/8", quantity.Inches, 1, "1 3/4"},
		{"bare point", "12.", quantity.Inches, 3, "12.5"},
		{"two numbers", "3 6", quantity.Inches, 3, "3 ft 6"},
		{"unknown unit", "3 cubits", quantity.Inches, 3, "in, ft, mm"},
		{"exponent", "1e3", quantity.Inches, 2, "in, ft, mm"},
		{"twelve inches", "3 ft 12", quantity.Inches, 6, "all in inches"},
		{"mm after feet", "3 ft 20 mm", quantity.Inches, 6, "3 ft 6 1/2 in"},
		{"part of a foot", "3 1/2 ft 2", quantity.Inches, 10, "whole feet"},
		{"fraction after inches", `6" 1/2`, quantity.Inches, 4, "6 1/2 in"},
		{"subtraction", "1 - 3/4", quantity.Inches, 3, "1 3/4"},
		{"bare fraction in millimetres", "1 3/4", quantity.Millimetres, 1, "1 3/4 in"},
		{"other figures", "٣", quantity.Inches, 1, "0 to 9"},
		{"decimal and fraction", "1.5 3/4", quantity.Inches, 5, "3 5/8"},
		{"infinity", "Inf", quantity.Inches, 1, "1 3/4"},
		{"too long", strings.Repeat("9", 5000), quantity.Inches, 97, "1 3/4"},
		{"not UTF-8", "1\xff", quantity.Inches, 1, "1 3/4"},
		{"no unit set", "1", quantity.Unit(99), 1, "in, ft, mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := quantity.ParseLength(c.text, c.bare)
			var fault *quantity.LengthError
			require.ErrorAs(t, err, &fault)
			assert.Equal(t, c.text, fault.Text)
			assert.Equal(t, c.column, fault.Column(), err)
			assert.Contains(t, fault.Want, c.wants)
			assert.Less(t, len(err.Error()), 400)
		})
	}
}

func TestLengthErrorSpeaksPlainly(t *testing.T) {
	_, err := quantity.ParseLength("1,5", quantity.Inches)
	assert.EqualError(t, err,
		"“1,5”: an unexpected “,” at character 2; write decimals with a point and thousands with no mark: 1.5, 1200")
}

func TestQuote(t *testing.T) {
	assert.Equal(t, `“3' 6"”`, quantity.Quote(`3' 6"`))
	assert.Equal(t, `“a\nb\x00”`, quantity.Quote("a\nb\x00"))
	assert.Equal(t, "“"+strings.Repeat("x", 40)+"…”", quantity.Quote(strings.Repeat("x", 1000)))
}

func TestParseUnit(t *testing.T) {
	for text, want := range map[string]quantity.Unit{
		"in": quantity.Inches, "Inches": quantity.Inches, `"`: quantity.Inches, "in.": quantity.Inches,
		"ft": quantity.Feet, "foot": quantity.Feet, "′": quantity.Feet, " mm ": quantity.Millimetres,
		"CM": quantity.Centimetres, "metre": quantity.Metres, "m": quantity.Metres,
	} {
		got, err := quantity.ParseUnit(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
		again, err := quantity.ParseUnit(got.String())
		require.NoError(t, err)
		assert.Equal(t, got, again)
		one, err := quantity.ParseLength("1", got)
		require.NoError(t, err)
		assert.InDelta(t, float64(got.One()), float64(one), 1e-12)
	}
	_, err := quantity.ParseUnit("rod")
	var fault *quantity.UnitError
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "rod", fault.Text)
	assert.Contains(t, quantity.Unit(-1).String(), "-1")
	assert.Zero(t, quantity.Unit(-1).One())
}

func TestWholeNumberAndFractionIsTheirSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.IntRange(0, 999).Draw(t, "whole")
		den := rapid.IntRange(2, 64).Draw(t, "denominator")
		num := rapid.IntRange(0, den-1).Draw(t, "numerator")
		join := rapid.SampledFrom([]string{" ", "-", "  "}).Draw(t, "join")
		text := itoa(whole) + join + itoa(num) + "/" + itoa(den)
		got, err := quantity.ParseLength(text, quantity.Inches)
		require.NoError(t, err, text)
		want := (float64(whole) + float64(num)/float64(den)) * 25.4
		require.InDelta(t, want, float64(got), 1e-9)
	})
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"1 3/4", "3' 6½\"", "44.5 mm", "1,5", "-0", "⅟8", "3 ft -6", "13/4", "", "0/0", "9e9", "1.2.3"} {
		f.Add(s, 0)
		f.Add(s, 2)
	}
	f.Fuzz(func(t *testing.T, s string, unit int) {
		u := quantity.Unit(unit)
		got, err := quantity.ParseLength(s, u)
		if err != nil {
			var fault *quantity.LengthError
			require.ErrorAs(t, err, &fault)
			require.GreaterOrEqual(t, fault.Column(), 1)
			require.NotEmpty(t, fault.Want)
			require.Less(t, len(err.Error()), 600)
			return
		}
		require.False(t, math.IsNaN(float64(got)))
		require.False(t, math.IsInf(float64(got), 0))
		text := quantity.Format(got, u)
		if len(text) > 96 {
			return // a text of that many figures is refused
		}
		again, err := quantity.ParseLength(text, u)
		require.NoError(t, err)
		require.InDelta(t, float64(got), float64(again), 0.4+1e-9*math.Abs(float64(got)))
	})
}

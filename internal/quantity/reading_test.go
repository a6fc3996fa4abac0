package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
)

func TestParseReading(t *testing.T) {
	const in = quantity.Inch
	for _, c := range []struct {
		text         string
		bare         quantity.Unit
		value, doubt quantity.Length
	}{
		{"1 3/4", quantity.Inches, 1.75 * in, 0},
		{"1 3/4 ± 1/32", quantity.Inches, 1.75 * in, in / 32},
		{"1 3/4±1/32", quantity.Inches, 1.75 * in, in / 32},
		{"1 3/4 +- 1/32", quantity.Inches, 1.75 * in, in / 32},
		{"1 3/4 +/- 1/32", quantity.Inches, 1.75 * in, in / 32},
		{"1 3/4 in, give or take 1/32", quantity.Millimetres, 1.75 * in, in / 32},
		{"18 ± 2", quantity.Inches, 18 * in, 2 * in},
		{"-1 1/2 ± 1/16", quantity.Inches, -1.5 * in, in / 16},
		{"3 ft 6 ± 1/8", quantity.Millimetres, 42 * in, in / 8},
		{"44.5 mm ± 0.5", quantity.Inches, 44.5, 0.5},
		{"44.5 mm ± 1/32 in", quantity.Inches, 44.5, in / 32},
		{"12 ft ± 1/2 in", quantity.Inches, 144 * in, in / 2},
		{"4.4 cm ± 0.1", quantity.Inches, 44, 1},
		{"1 3/4 ± 1/32 in", quantity.Inches, 1.75 * in, in / 32},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := quantity.ParseReading(c.text, c.bare)
			require.NoError(t, err)
			assert.InDelta(t, float64(c.value), float64(got.Value), 1e-9)
			assert.InDelta(t, float64(c.doubt), float64(got.Doubt), 1e-9)
			assert.Equal(t, c.doubt != 0, got.Stated == quantity.DoubtStated)
		})
	}
}

func TestParseReadingRefuses(t *testing.T) {
	for _, c := range []struct {
		text   string
		bare   quantity.Unit
		column int
		wants  string
	}{
		{"± 1/32", quantity.Inches, 1, "1 3/4"},
		{"1 3/4 ±", quantity.Inches, 8, "1 3/4"},
		{"1 3/4 ± 0", quantity.Inches, 9, "leave it out"},
		{"1 3/4 ± -1/32", quantity.Inches, 9, "leave it out"},
		{"1 3/4 ± 1/32 ± 1/32", quantity.Inches, 14, "1 3/4"},
		{"12 ft ± 1/2", quantity.Inches, 9, "its unit"},
		{"1.2 m ± 2", quantity.Inches, 9, "its unit"},
		{"44.5 ± 0.5 mm", quantity.Inches, 8, "unit of both"},
		{"1,5 ± 1/32", quantity.Inches, 2, "point"},
		{"½ ± 1,5", quantity.Inches, 6, "point"},
	} {
		t.Run(c.text, func(t *testing.T) {
			_, err := quantity.ParseReading(c.text, c.bare)
			var fault *quantity.LengthError
			require.ErrorAs(t, err, &fault)
			assert.Equal(t, c.text, fault.Text)
			assert.Equal(t, c.column, fault.Column(), err)
			assert.Contains(t, fault.Want, c.wants)
		})
	}
}

func FuzzParseReading(f *testing.F) {
	for _, s := range []string{"1 3/4 ± 1/32", "+-", "±±", "1 +/- 1 mm", "2½ give or take ⅛", "3' ± 1"} {
		f.Add(s, 0)
	}
	f.Fuzz(func(t *testing.T, s string, unit int) {
		got, err := quantity.ParseReading(s, quantity.Unit(unit))
		if err != nil {
			var fault *quantity.LengthError
			require.ErrorAs(t, err, &fault)
			return
		}
		require.Equal(t, got.Stated == quantity.DoubtStated, got.Doubt > 0)
	})
}

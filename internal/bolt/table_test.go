package bolt_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

const (
	inch  = quantity.Inch
	exact = 1e-9 // mm, what float64 loses in a sum of a few inches
)

// inches reads a length as a table prints it.
func inches(t require.TestingT, text string) quantity.Length {
	if strings.HasPrefix(text, ".") {
		text = "0" + text
	}
	l, err := quantity.ParseLength(text, quantity.Inches)
	require.NoError(t, err, text)
	return l
}

// rows reads a printed table: cells between bars, two figures between a slash
// and spaces where a cell has a pair.
func rows(t *testing.T, table string) [][]quantity.Length {
	var all [][]quantity.Length
	for line := range strings.Lines(strings.TrimSpace(table)) {
		var row []quantity.Length
		for cell := range strings.SplitSeq(line, "|") {
			for figure := range strings.SplitSeq(cell, " to ") {
				row = append(row, inches(t, strings.TrimSpace(figure)))
			}
		}
		all = append(all, row)
	}
	return all
}

func near(t require.TestingT, want, got quantity.Length) {
	assert.InDelta(t, float64(want), float64(got), exact)
}

// sizes are those of every table, and more than the washers have.
var sizes = []quantity.Length{
	inch / 4, 5 * inch / 16, 3 * inch / 8, 7 * inch / 16, inch / 2, 5 * inch / 8, 3 * inch / 4,
}

// ASME B18.21.1-2009, type A plain washers (Machinery's Handbook, 31st edition,
// pp. 1694-1695): inside, outside, thickness, greatest to least; N and then W.
const washer = `
1/4  | .281 | .625  | .065 | .080 to .051 | .312 | .734  | .065 | .080 to .051
5/16 | .344 | .688  | .065 | .080 to .051 | .375 | .875  | .083 | .104 to .064
3/8  | .406 | .812  | .065 | .080 to .051 | .438 | 1.000 | .083 | .104 to .064
7/16 | .469 | .922  | .065 | .080 to .051 | .500 | 1.250 | .083 | .104 to .064
1/2  | .531 | 1.062 | .095 | .121 to .074 | .562 | 1.375 | .109 | .132 to .086
5/8  | .656 | 1.312 | .095 | .121 to .074 | .688 | 1.750 | .134 | .160 to .108
3/4  | .812 | 1.469 | .134 | .160 to .108 | .812 | 2.000 | .148 | .177 to .122`

func TestWashers(t *testing.T) {
	for _, row := range rows(t, washer) {
		for at, series := range map[int]bolt.WasherSeries{1: bolt.Narrow, 6: bolt.Wide} {
			got, s := bolt.Washer(row[0], series)
			assert.Equal(t, bolt.Published, s)
			want := row[at : at+5]
			for i, l := range []quantity.Length{got.Inside, got.Outside, got.Thickness, got.Limits.Max, got.Limits.Min} {
				near(t, want[i], l)
			}
			assert.Greater(t, float64(got.Inside), float64(row[0]))
		}
	}
	// JCGM 100:2008, 4.3.7: .046 in between the limits of the wide 1/2 in washer
	// is .0133 in of standard uncertainty.
	w, _ := bolt.Washer(inch/2, bolt.Wide)
	assert.InDelta(t, 0.0133, w.Limits.Doubt().Inches(), 0.00005)
}

// American: TR Fastenings, unified coarse. Whitworth: J. Whitworth, Miscellaneous
// Papers on Mechanical Subjects, p. 39.
func TestThreadsPerInch(t *testing.T) {
	american := []int{20, 18, 16, 14, 13, 11, 10, 9, 8}
	whitworth := []int{20, 18, 16, 14, 12, 11, 10, 9, 8}
	for i, d := range append(append([]quantity.Length{}, sizes...), 7*inch/8, inch) {
		for system, want := range map[bolt.ThreadSystem]int{bolt.American: american[i], bolt.Whitworth: whitworth[i]} {
			got, s := bolt.ThreadsPerInch(d, system)
			assert.Equal(t, bolt.Published, s)
			assert.Equal(t, want, got)
		}
	}
	for d, want := range map[quantity.Length]int{9 * inch / 16: 12, 9 * inch / 8: 7, 5 * inch / 4: 7, 3 * inch / 2: 6} {
		got, s := bolt.ThreadsPerInch(d, bolt.American)
		assert.Equal(t, bolt.Published, s)
		assert.Equal(t, want, got)
	}
	// 3/8-16: a sixteenth of an inch.
	one, s := bolt.OneThread(3*inch/8, bolt.American)
	assert.Equal(t, bolt.Published, s)
	near(t, inch/16, one)
}

// Nothing is filled in between two rows.
func TestNoRowIsInvented(t *testing.T) {
	for _, d := range []quantity.Length{11 * inch / 32, 0, -1, 1e300, quantity.Length(math.Inf(1)), quantity.Length(math.NaN())} {
		for standard := bolt.SquareNut; standard <= bolt.ReducedNut+1; standard++ {
			n, s := bolt.Nut(d, standard)
			if s == bolt.Pattern {
				assert.Contains(t, []bolt.NutStandard{bolt.RoughNut, bolt.FinishedNut}, standard)
				continue
			}
			assert.Equal(t, bolt.Unlisted, s)
			assert.Zero(t, n)
		}
		w, s := bolt.Washer(d, bolt.Wide)
		assert.Equal(t, bolt.Unlisted, s)
		assert.Zero(t, w)
		one, s := bolt.OneThread(d, bolt.American)
		assert.Equal(t, bolt.Unlisted, s)
		assert.Zero(t, one)
		c, s := bolt.Carriage(d)
		assert.Equal(t, bolt.Unlisted, s)
		assert.Zero(t, c)
	}
	_, _, s := bolt.Neck(11 * inch / 32)
	assert.Equal(t, bolt.Pattern, s)
	_, _, s = bolt.Neck(quantity.Length(math.NaN()))
	assert.Equal(t, bolt.Unlisted, s)
	_, _, s = bolt.Head(4 * inch)
	assert.Equal(t, bolt.Unlisted, s)
	_, s = bolt.Washer(inch/2, bolt.Wide+1)
	assert.Equal(t, bolt.Unlisted, s)
	_, s = bolt.ThreadsPerInch(inch/2, bolt.Whitworth+1)
	assert.Equal(t, bolt.Unlisted, s)
}

// A king bolt of 1 1/4 in has no row in ASME B18.5; the patterns carry on.
func TestPatternCarriedOn(t *testing.T) {
	width, depth, s := bolt.Neck(5 * inch / 4)
	assert.Equal(t, bolt.Pattern, s)
	near(t, 1.25*inch, width)
	near(t, 0.625*inch, depth)
	across, high, s := bolt.Head(5 * inch / 4)
	assert.Equal(t, bolt.Pattern, s)
	near(t, 2.59375*inch, across.Max)
	near(t, 0.625*inch, high.Min)
	n, s := bolt.Nut(11*inch/16, bolt.RoughNut)
	assert.Equal(t, bolt.Pattern, s)
	near(t, (1+5./32)*inch, n.Across) // 1 1/2 x 11/16 + 1/8
}

func TestSourceWords(t *testing.T) {
	seen := map[string]bool{}
	for s := bolt.Unlisted; s <= bolt.Pattern; s++ {
		assert.False(t, seen[s.String()])
		seen[s.String()] = true
	}
	assert.Equal(t, "not in the tables", bolt.Source(99).String())
}

// A head covers its neck and its hole, a neck turns in no hole, a nut is wider
// than its bolt: whatever the diameter and wherever the figure comes from.
func TestShapesHoldTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := quantity.Length(rapid.Float64Range(3.2, 76).Draw(t, "d"))
		width, depth, s := bolt.Neck(d)
		across, high, hs := bolt.Head(d)
		require.Equal(t, s, hs)
		require.NotEqual(t, bolt.Unlisted, s)
		require.Greater(t, float64(across.Min), float64(width)*math.Sqrt2)
		require.Greater(t, float64(across.Min), float64(bolt.Hole(d)))
		require.Greater(t, float64(depth), 0.0)
		require.True(t, across.Max >= across.Min && high.Max >= high.Min && high.Min > 0)
		rough, s := bolt.Nut(d, bolt.RoughNut)
		require.NotEqual(t, bolt.Unlisted, s)
		finished, _ := bolt.Nut(d, bolt.FinishedNut)
		require.Greater(t, float64(rough.Across), float64(d))
		require.InDelta(t, 1.0/16, (rough.Thickness - finished.Thickness).Inches(), 1e-9)
	})
}

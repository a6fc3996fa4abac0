package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Wood Handbook table 4-3 (seen), white oak 10.5 % tangential and 5.6 % radial,
// green to ovendry, and eq. 4-9, worked out by hand: green to 12 % a hundred
// loses 6.30 flat across and 3.36 quartered. At 30 degrees between rings and face,
// by the common approximation R cos2 + T sin2 from the radial direction:
// across the face R/4 + 3T/4 = 9.275 %, x 0.6 = 5.565.
func TestRingsDecideWhatAnExtentLoses(t *testing.T) {
	oak := find(t, "white oak")
	lost := func(text string, e timber.Extent) float64 {
		r, err := timber.ParseRings(text)
		require.NoError(t, err)
		got, err := oak.ResizeAs(100, 60, 12, r, e)
		require.NoError(t, err)
		return 100 - float64(got)
	}
	assert.InDelta(t, 6.30, lost("flat", timber.Broad), 1e-9)
	assert.InDelta(t, 3.36, lost("flat", timber.Thin), 1e-9)
	assert.InDelta(t, 3.36, lost("quarter", timber.Broad), 1e-9)
	assert.InDelta(t, 6.30, lost("quarter", timber.Thin), 1e-9)
	assert.InDelta(t, 6.30, lost("unknown", timber.Broad), 1e-9)
	assert.InDelta(t, 6.30, lost("unknown", timber.Thin), 1e-9)
	assert.InDelta(t, 5.565, lost("30", timber.Broad), 1e-9)
	assert.InDelta(t, 0.6*(0.75*5.6+0.25*10.5), lost("30", timber.Thin), 1e-9)
	assert.Equal(t, lost("0", timber.Broad), lost("flat", timber.Broad))
	assert.Equal(t, lost("90", timber.Broad), lost("quarter", timber.Broad))
}

// Whatever the rings, a piece moves no more than where they are not known, and
// comes back to the size it had.
func TestUnknownRingsAreTheWorst(t *testing.T) {
	ash := find(t, "white ash")
	rapid.Check(t, func(t *rapid.T) {
		from := quantity.Moisture(rapid.Float64Range(0, 40).Draw(t, "from"))
		to := quantity.Moisture(rapid.Float64Range(0, 40).Draw(t, "to"))
		angle := rapid.Float64Range(0.1, 89.9).Draw(t, "degrees")
		r := timber.Rings{Lie: timber.Slanting, Angle: quantity.Angle(angle) * quantity.Degree}
		for _, e := range []timber.Extent{timber.Broad, timber.Thin} {
			got, err := ash.ResizeAs(100, from, to, r, e)
			require.NoError(t, err)
			worst, err := ash.ResizeAs(100, from, to, timber.Rings{}, e)
			require.NoError(t, err)
			if to < from {
				require.GreaterOrEqual(t, float64(got), float64(worst)-1e-9)
			} else {
				require.LessOrEqual(t, float64(got), float64(worst)+1e-9)
			}
			back, err := ash.ResizeAs(got, to, from, r, e)
			require.NoError(t, err)
			require.InDelta(t, 100, float64(back), 1e-9)
		}
	})
}

// Wood Handbook table 13-5 (seen): white ash 0.00274 of its size at 10 % for a
// point. From 9 to 11 % it travels two points.
func TestTravel(t *testing.T) {
	ash := find(t, "white ash")
	got, err := ash.Travel(1000, 10, timber.Rings{}, timber.Broad, 11, 9, 10)
	require.NoError(t, err)
	assert.InDelta(t, 2*2.74, float64(got), 0.0102)
	still, err := ash.Travel(1000, 10, timber.Rings{}, timber.Broad, 12, 12)
	require.NoError(t, err)
	assert.Zero(t, still)
	_, err = find(t, "hickory ash").Travel(1000, 10, timber.Rings{}, timber.Broad, 11)
	var missing *timber.NoFigureError
	require.ErrorAs(t, err, &missing)
	_, err = ash.ResizeAs(100, 12, 10, timber.Rings{}, timber.Extent(7))
	var fault *timber.RangeError
	require.ErrorAs(t, err, &fault)
}

func FuzzParseRings(f *testing.F) {
	for _, s := range []string{"flat", "quarter", "30", "unknown", "", "NaN", "-1", "1e999", "91"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := timber.ParseRings(text)
		if err != nil {
			var fault *timber.RingsError
			require.ErrorAs(t, err, &fault)
			return
		}
		if r.Lie == timber.Slanting {
			require.Greater(t, r.Angle.Degrees(), 0.0)
			require.Less(t, r.Angle.Degrees(), 90.0001)
		}
		require.NotEmpty(t, r.String())
	})
}

func TestWordsOfRings(t *testing.T) {
	for text, want := range map[string]string{"flat": "flat-sawn", "quarter": "quarter-sawn", "unknown": "rings not known", "30": "rings at 30 degrees to the broad face"} {
		r, err := timber.ParseRings(text)
		require.NoError(t, err)
		assert.Equal(t, want, r.String())
	}
	_, err := timber.ParseRings("bastard")
	assert.EqualError(t, err, "“bastard” does not say how the rings lie; write flat, quarter, unknown, or the degrees between the rings and the broad face, such as 30")
}

// Every wood has a look to hold a splinter against, and none is more than from memory.
func TestLooksAreFromMemory(t *testing.T) {
	published, err := timber.Published()
	require.NoError(t, err)
	for _, w := range published.Woods() {
		words, basis, err := w.Look()
		require.NoError(t, err, w.Common)
		assert.NotEmpty(t, words)
		assert.Equal(t, timber.FromMemory, basis.Standing)
	}
	_, _, err = timber.Species{Common: "river wattle", Botanical: "Acacia retinodes"}.Look()
	var missing *timber.NoFigureError
	require.ErrorAs(t, err, &missing)
}

package pattern

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
)

// ISO 216, trimmed sizes of the A series, from memory.
func TestPaperSizes(t *testing.T) {
	for name, want := range map[string][2]Length{
		"A0": {841, 1189}, "A1": {594, 841}, "A2": {420, 594}, "A3": {297, 420}, "A4": {210, 297},
	} {
		p, err := FindPaper(name)
		require.NoError(t, err)
		require.Equal(t, want, [2]Length{p.Width, p.Height})
	}
}

// US Letter 8.5 x 11 in, and twice that (ANSI/ASME Y14.1 sizes A and B, from memory).
func TestInchPaperSizes(t *testing.T) {
	letter, err := FindPaper(" letter ")
	require.NoError(t, err)
	require.InDelta(t, 215.9, float64(letter.Width), 1e-9)
	require.InDelta(t, 279.4, float64(letter.Height), 1e-9)
	tabloid, err := FindPaper("TABLOID")
	require.NoError(t, err)
	require.Equal(t, letter.Height, tabloid.Width)
	require.Equal(t, 2*letter.Width, tabloid.Height)
}

func TestFindPaper(t *testing.T) {
	roll, err := FindPaper("roll 24 in")
	require.NoError(t, err)
	require.Equal(t, Roll, roll.Feed)
	require.InDelta(t, 24, (roll.Width / quantity.Inch).Millimetres(), 1e-9)
	roll, err = FindPaper("Roll 610")
	require.NoError(t, err)
	require.InDelta(t, 610, float64(roll.Width), 1e-9)
	for _, bad := range []string{"", "A5", "roll", "roll wide"} {
		_, err := FindPaper(bad)
		require.ErrorContains(t, err, "paper", bad)
	}
}

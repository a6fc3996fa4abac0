package cutlist_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Wood Handbook 2010 table 13-5 (seen), tangential, in parts of the size at
// 10 % for a point of moisture. A part kept at 10 % and bought at 11 %, with
// nothing left on for making, is sawn larger by just that: the grain is not
// known, and tangential is the larger way.
func TestMoistureAllowanceIsTheHandbooks(t *testing.T) {
	for wood, change := range map[string]float64{
		"white ash":    0.00274,
		"rock elm":     0.00285,
		"basswood":     0.00330,
		"American elm": 0.00338,
		"pecan":        0.00315,
		"black locust": 0.00252,
	} {
		n := made(t, wagon(11, 10, block("slat", wood, 1, 1*ft, 6*in, 1*in)), none()).Lines[0]
		assert.InDelta(t, change, float64(n.Sawn.Thick/n.Finished.Thick)-1, 0.0000051, wood)
		assert.InDelta(t, change, float64(n.Sawn.Wide/n.Finished.Wide)-1, 0.0000051, wood)
		assert.Less(t, float64(n.Sawn.Long/n.Finished.Long)-1, 0.0001, "%s moves little along the grain", wood)
	}
}

// Wood Handbook 2010, worked example, p. 13-17 (from memory): flat-grained white
// fir 232 mm wide (9.15 in) at 8 %, coefficient 0.00245, grows by 1.705 mm by 11 %.
// The handbook takes the coefficient of the size at hand, the list of the
// size at 10 %: they part by less than 0.01 mm.
func TestWhiteFirOfTheHandbooksExample(t *testing.T) {
	fir := timber.Species{Common: "white fir", Botanical: "Abies concolor", Move: timber.Movement{
		Kind: timber.HandbookOwn, Tangential: timber.Given(0.245, "Wood Handbook table 13-5, from memory"),
	}}
	own, err := woods(t).With(fir)
	require.NoError(t, err)
	l, err := cutlist.Make(wagon(11, 8, block("board", "white fir", 1, 3*ft, 232*mm, 20*mm)), own, none())
	require.NoError(t, err)
	assert.InDelta(t, 1.705, float64(l.Lines[0].Sawn.Wide-232), 0.01)
}

// Australian figures (Forest Products Commission of Western Australia, seen):
// brush box shrinks 9.7 % tangentially, green to 12 %. Kept at 12 % and
// bought green it is sawn 1 / (1 - 0.097) times as large.
func TestGreenToTwelvePercent(t *testing.T) {
	n := made(t, wagon(40, 12, block("bolster", "brush box", 1, 4*ft, 4*in, 3*in)), none()).Lines[0]
	assert.InDelta(t, 1/(1-0.097), float64(n.Sawn.Thick/n.Finished.Thick), 1e-9)
}

// The American Hardwood Export Council's page on measure (seen). Plain volume:
// 1 x 9 x 96 in are 6 board feet, at 1 1/2 in they are 9. Surface measure:
// 6 1/2 in x 8 ft count 4, 8 in x 12 ft count 8, 10 in x 13 ft count 11.
func TestBoardFeetOfPublishedBoards(t *testing.T) {
	// What 4/4 and 6/4 dress to, so that those are the stock.
	const four, six = 13 * in / 16, 21 * in / 16
	for _, b := range []struct {
		thick, wide, long quantity.Length
		plain, charged    float64
	}{
		{four, 9 * in, 96 * in, 6, 6},
		{six, 9 * in, 96 * in, 9, 9},
		{four, 6.5 * in, 8 * ft, 4. + 1./3, 4},
		{four, 8 * in, 12 * ft, 8, 8},
		{four, 10 * in, 13 * ft, 10. + 10./12, 11},
	} {
		l := made(t, wagon(12, 12, block("board", "white ash", 1, b.long, b.wide, b.thick)), none())
		assert.InDelta(t, b.plain, l.Groups[0].Net.BoardFeet(), 1e-9)
		assert.Equal(t, b.charged, l.Groups[0].Charged)
	}
}

// A board foot is 144 cubic inches, 0.00235974 m3, by definition of the inch.
func TestBoardFootIs144CubicInches(t *testing.T) {
	l := made(t, wagon(12, 12, block("board", "white ash", 7, 50*in, 5*in, 13*in/16)), none())
	cells := row(t, l.Totals(), 0)
	assert.InDelta(t, 7*50*5*1./144, cells["board_feet"], 0.00005)
	assert.InDelta(t, 7*50*5*1./144*0.002359737216, cells["cubic_metres"], 0.00000005)
}

package cutlist_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/parts"
)

// One part by hand: a fore bolster of white oak, 48 x 4 x 3 1/2 in, kept at
// 12 % and bought at 20 %.
//
// Wood Handbook table 4-3, white oak: 10.5 % tangential, 5.6 % radial, green to
// ovendry; eq. 4-9: shrinkage from 30 % moisture in proportion. Lengthwise 0.2 %
// (from memory of p. 4-5).
func TestOneBolsterByHand(t *testing.T) {
	l := made(t, wagon(20, 12, block("fore bolster", "white oak", 2, 48*in, 4*in, 3.5*in)), cutlist.Usual())
	n := l.Lines[0]

	// Size at 12 %, of the green size: 1 - 0.105 x 18/30 = 0.937
	//      at 20 %:                    1 - 0.105 x 10/30 = 0.965
	// Across the grain it is bought 0.965 / 0.937 = 1.029883 times as large.
	const across = 0.965 / 0.937
	// Along: (1 - 0.002 x 10/30) / (1 - 0.002 x 18/30) = 0.9993333 / 0.9988
	const along = 0.99933333333 / 0.9988

	// Length: 1219.2 + 2 x 38 trimming = 1295.2; x 1.000534 = 1295.892
	assert.InDelta(t, 1295.2*along, n.Sawn.Long.Millimetres(), 1e-6)
	assert.InDelta(t, 1295.892, n.Sawn.Long.Millimetres(), 0.001)
	// Width: 101.6 + 2 x 6 jointing = 113.6; x 1.029883 = 116.995
	assert.InDelta(t, 113.6*across, n.Sawn.Wide.Millimetres(), 1e-9)
	assert.InDelta(t, 116.995, n.Sawn.Wide.Millimetres(), 0.001)
	// Thickness: 88.9 + 2 x 3 planing = 94.9; x 1.029883 = 97.736
	assert.InDelta(t, 94.9*across, n.Sawn.Thick.Millimetres(), 1e-9)
	assert.InDelta(t, 97.736, n.Sawn.Thick.Millimetres(), 0.001)

	// Stock: dressed it must hold 88.9 x 1.029883 = 91.557 mm, 3.605 in. 12/4
	// dresses to 2 3/4 in; 16/4 to 3 3/4 in, and is 101.6 mm sawn, not under 97.736.
	assert.Equal(t, "16/4", n.Stock.Name)
	assert.Equal(t, cutlist.InStock, n.Stock.Kept)

	// Board feet of one: 4 in x 116.995/25.4 in x 1295.892/25.4 in / 144
	//                  = 4 x 4.60609 x 51.01936 / 144 = 6.5278
	assert.InDelta(t, 6.5278, n.Bought.BoardFeet(), 0.0001)

	// Mass of one, finished, no work on it: 48 x 4 x 3.5 = 672 in3 = 0.01101211 m3.
	// Wood Handbook 4-11, basic specific gravity 0.60: at 12 %
	// 0.60 / (1 - 0.265 x 0.60 x (1 - 12/30)) = 0.60 / 0.9046 = 0.663277;
	// density 1000 x 0.663277 x 1.12 = 742.870 kg/m3; mass 8.1806 kg.
	require.True(t, n.Mass.Known)
	assert.InDelta(t, 8.1806, float64(n.Mass.Mass), 0.0001)

	// The yard: 2 pieces, 13.0556 bd ft; a quarter over for waste, 16.3195.
	require.Len(t, l.Groups, 1)
	g := l.Groups[0]
	assert.Equal(t, 2, g.Pieces)
	assert.InDelta(t, 13.0556, g.Net.BoardFeet(), 0.0002)
	assert.InDelta(t, 16.3195, g.Order.BoardFeet(), 0.0003)
	// By the hardwood trade's rule: 16.3195 / 4 = 4.08 square feet, counted 4; x 4 in = 16.
	assert.Equal(t, 16.0, g.Charged)
	// As bought, at 20 %: 0.60 / (1 - 0.265 x 0.60 x (1 - 20/30)) = 0.60 / 0.947 = 0.633580,
	// 760.296 kg/m3; 16.3195 bd ft are 0.0385098 m3: 29.279 kg.
	assert.InDelta(t, 29.279, float64(g.Mass.Mass), 0.002)
}

// The same length is trimmed by more where it is to be bent, and wider work
// is jointed up: each board of it has two edges to joint.
func TestBendsAndJointedWork(t *testing.T) {
	a := cutlist.Usual()
	l := made(t, wagon(12, 12,
		built(t, 1, "seat rail", "seat rail", "white ash", 1, railSizes(), nil),
		block("tailboard", "yellow-poplar", 1, 39*in, 14*in, 3*in/4),
		block("seat board", "yellow-poplar", 1, 39*in, 24*in, 3*in/4),
		block("wheel rim", "white ash", 1, 39*in, 9*in, 3*in/4)), a)

	rail := l.Lines[0]
	assert.Equal(t, parts.Steamed, rail.Making)
	assert.InDelta(t, float64(rail.Blank.Long+2*a.BendTrimming), float64(rail.Sawn.Long), 1e-9)
	assert.Greater(t, rail.Blank.Long, rail.Finished.Long, "the length along the bend")
	assert.Equal(t, a.BendWaste, rail.Waste)

	// 355.6 + 2 x 6 is over 300: two boards, 355.6 + 4 x 6 = 379.6, 189.8 each.
	assert.Equal(t, 2, l.Lines[1].Boards)
	assert.InDelta(t, 379.6, float64(l.Lines[1].Sawn.Wide), 1e-9)
	// 609.6 + 6 x 6 = 645.6 in three, 215.2 each.
	assert.Equal(t, 3, l.Lines[2].Boards)
	assert.InDelta(t, 645.6, float64(l.Lines[2].Sawn.Wide), 1e-9)
	// 228.6 + 12 = 240.6 in one.
	assert.Equal(t, 1, l.Lines[3].Boards)

	curved := block("brake block", "white ash", 1, 39*in, 14*in, 3*in/4)
	curved.Stick.Body = bow{parts.Square(39*in, 14*in, 3*in/4)}
	n := made(t, wagon(12, 12, curved), a).Lines[0]
	assert.Equal(t, 1, n.Boards, "a curve is not jointed up unasked")
	assert.Equal(t, a.CurveWaste, n.Waste)
}

// A bow is a body sawn to a curve.
type bow struct{ parts.Sawn }

func (b bow) Blank() parts.Blank {
	s := b.Sawn.Blank()
	s.Making = parts.Curved
	return s
}

// Thickness is the lesser extent across the grain, whichever way it is fitted.
func TestThicknessIsTheLesserExtent(t *testing.T) {
	l := made(t, wagon(12, 12,
		block("riser", "white ash", 1, 16*in, 7*in/8, 11*in), block("seat board", "white ash", 1, 16*in, 11*in, 7*in/8)), cutlist.Usual())
	assert.Equal(t, cutlist.Size{Long: 16 * in, Wide: 11 * in, Thick: 7 * in / 8}, l.Lines[0].Finished)
	assert.Equal(t, l.Lines[1].Finished, l.Lines[0].Finished)
	assert.Equal(t, l.Lines[1].Sawn, l.Lines[0].Sawn)
}

// Dealers' dressed thicknesses: 4/4 to 13/16 in, 5/4 to 1 1/16, 6/4 to 1 5/16,
// 8/4 to 1 3/4 (seen in dealers' lists). With no more planed off than a dealer
// takes, each is the least stock for that size, and not for a 64th more.
func TestLeastStockThatDressesToTheSize(t *testing.T) {
	a := cutlist.Usual()
	a.Planing = 1.5 * mm // prepared stock
	buy := func(size quantity.Length) string {
		return made(t, wagon(12, 12, block("slat", "white ash", 1, 3*ft, 6*in, size)), a).Lines[0].Stock.Name
	}
	for _, s := range []struct {
		dressed     quantity.Length
		name, above string
	}{
		{13 * in / 16, "4/4", "5/4"},
		{17 * in / 16, "5/4", "6/4"},
		{21 * in / 16, "6/4", "7/4"},
		{7 * in / 4, "8/4", "10/4"},
	} {
		assert.Equal(t, s.name, buy(s.dressed))
		assert.Equal(t, s.above, buy(s.dressed+in/64))
	}
	assert.Equal(t, "5/4", made(t, wagon(12, 12, block("slat", "white ash", 1, 3*ft, 6*in, 13*in/16)), cutlist.Usual()).Lines[0].Stock.Name,
		"3 mm off each face of 13/16 in need more than an inch")

	thick := made(t, wagon(12, 12, block("hub", "rock elm", 1, 12*in, 10*in, 9*in)), a).Lines[0]
	assert.Equal(t, cutlist.ToOrder, thick.Stock.Kept)
	assert.Equal(t, "9 1/4 in", thick.Stock.Name)
	assert.GreaterOrEqual(t, thick.Stock.Rough, thick.Sawn.Thick)
	metric := wagon(12, 12, block("hub", "rock elm", 1, 12*in, 10*in, 228*mm), block("slat", "rock elm", 1, 3*ft, 6*in, 19*mm))
	metric.Unit = quantity.Millimetres
	got := made(t, metric, cutlist.Usual())
	assert.Equal(t, "235 mm", got.Lines[0].Stock.Name)
	assert.Equal(t, "25 mm", got.Lines[1].Stock.Name)
}

// Wood bought drier than it is kept swells: nothing is taken off for it.
func TestDryWoodIsNotSawnUnderSize(t *testing.T) {
	n := made(t, wagon(8, 14, block("sill", "white oak", 1, 9*ft, 4*in, 2*in)), none()).Lines[0]
	assert.Equal(t, n.Finished, n.Sawn)
}

// Above saturation wood does not move: green is green.
func TestGreenSawn(t *testing.T) {
	at := func(m quantity.Moisture) cutlist.Size {
		return made(t, wagon(m, 12, block("sill", "white ash", 1, 9*ft, 4*in, 2*in)), cutlist.Usual()).Lines[0].Sawn
	}
	assert.Equal(t, at(30), at(45))
	assert.Greater(t, at(30).Thick, at(29).Thick)
	// Wood Handbook eq. 4-9, white ash 7.8 % tangential: green over 12 % is 1 / (1 - 0.078 x 0.6).
	assert.InDelta(t, (50.8+6)/(1-0.078*0.6), float64(at(45).Thick), 1e-9)
}

// Wood of no known density has no mass, and the rest of its list.
func TestNoDensityNoMass(t *testing.T) {
	l := made(t, wagon(20, 12, block("spoke", "mugga ironbark", 14, 20*in, 2*in, 1.5*in)), cutlist.Usual())
	assert.False(t, l.Lines[0].Mass.Known)
	assert.False(t, l.Groups[0].Mass.Known)
	assert.Positive(t, l.Groups[0].Order)
	assert.Equal(t, timber.GreenTo12, l.Lines[0].Wood.Shrink.To)
}

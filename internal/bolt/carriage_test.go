package bolt_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

// ASME B18.5, round head square neck bolts, as US Fastener, CFI (to 3/4) and
// Marine Construction Bolts (from 1/2) print them; greatest to least of
// body, head diameter, head height, neck width, neck depth.
const squareNeck = `
1/4  | .260 to .237 | .594 to .563   | .145 to .125 | .260 to .245 | .156 to .125
5/16 | .324 to .298 | .719 to .688   | .176 to .156 | .324 to .307 | .187 to .156
3/8  | .388 to .360 | .844 to .782   | .208 to .188 | .388 to .368 | .219 to .188
7/16 | .452 to .421 | .969 to .907   | .239 to .219 | .452 to .431 | .250 to .219
1/2  | .515 to .483 | 1.094 to 1.032 | .270 to .250 | .515 to .492 | .281 to .250
5/8  | .642 to .605 | 1.344 to 1.219 | .344 to .313 | .642 to .616 | .344 to .313
3/4  | .768 to .729 | 1.594 to 1.469 | .406 to .375 | .768 to .741 | .406 to .375
7/8  | .895 to .852 | 1.844 to 1.719 | .469 to .438 | .895 to .865 | .469 to .438
1    | 1.022 to .976 | 2.094 to 1.969 | .531 to .500 | 1.022 to .990 | .531 to .500`

func TestCarriageIsB185(t *testing.T) {
	for _, row := range rows(t, squareNeck) {
		d := row[0]
		got, s := bolt.Carriage(d)
		assert.Equal(t, bolt.Published, s)
		near(t, d, got.Diameter)
		for i, l := range []bolt.Limits{got.Body, got.HeadDiameter, got.HeadHeight, got.NeckWidth, got.NeckDepth} {
			near(t, row[1+2*i], l.Max)
			near(t, row[2+2*i], l.Min)
		}
		across, high, s := bolt.Head(d)
		assert.Equal(t, bolt.Published, s)
		assert.Equal(t, got.HeadDiameter, across)
		assert.Equal(t, got.HeadHeight, high)
	}
}

// What the rows have in common, to the thousandth of an inch they are printed
// to: it is what the patterns carry on.
func TestCarriagePattern(t *testing.T) {
	const printed = 0.00051 * 25.4
	for _, row := range rows(t, squareNeck) {
		d := row[0]
		c, _ := bolt.Carriage(d)
		width, depth, s := bolt.Neck(d)
		assert.Equal(t, bolt.Published, s)
		assert.InDelta(t, float64(c.HeadHeight.Min), float64(d/2), printed)
		assert.InDelta(t, float64(c.NeckDepth.Min), float64(depth), printed)
		assert.InDelta(t, float64(c.HeadDiameter.Max), float64(2*d+3*inch/32), printed)
		near(t, d, width)
		assert.True(t, c.NeckWidth.Min <= width && width <= c.NeckWidth.Max)
		assert.GreaterOrEqual(t, float64(c.HeadDiameter.Min), float64(2*d-inch/32)-printed)
		assert.LessOrEqual(t, float64(c.HeadHeight.Max), float64(d/2+inch/32)+printed)
	}
}

// A shank anywhere within its body limits is known for its size.
func TestShankOfASize(t *testing.T) {
	for _, row := range rows(t, squareNeck) {
		for _, d := range []quantity.Length{row[1] - 0.01, row[2] + 0.01} {
			c, s := bolt.Carriage(d)
			assert.Equal(t, bolt.Nearest, s)
			near(t, row[0], c.Diameter)
			width, _, s := bolt.Neck(d)
			assert.Equal(t, bolt.Nearest, s)
			near(t, row[0], width)
		}
	}
	// The millimetre sizes that are no inch size are not taken for one.
	for _, mm := range []quantity.Length{7, 10, 12, 14, 20} {
		_, s := bolt.Carriage(mm)
		assert.Equal(t, bolt.Unlisted, s, mm)
	}
}

// A counterbore takes every head that the tables have: the greatest dome of ASME
// B18.5 and the corners of Sellers's rough square head, as printed above.
func TestHeadRoom(t *testing.T) {
	for _, row := range rows(t, squareNeck) {
		assert.Greater(t, float64(bolt.HeadRoom(row[0])), float64(row[3]))
	}
	for _, row := range rows(t, roughNut) {
		corners := row[1] * math.Sqrt2
		assert.GreaterOrEqual(t, float64(bolt.HeadRoom(row[0])), float64(corners+inch/16)-exact)
		assert.Less(t, float64(bolt.HeadRoom(row[0])), float64(corners+inch/8))
	}
}

func TestSeatIsTheNeck(t *testing.T) {
	for _, d := range sizes {
		width, depth, _ := bolt.Neck(d)
		wide, deep := bolt.Seat(d)
		near(t, width, wide)
		near(t, depth, deep)
		near(t, d/2, deep)
	}
}

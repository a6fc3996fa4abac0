package bolt_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

// ASME B18.2.2 square nuts, Packer Fastener: across flats, thickness.
const squareNut = `
1/4  | 7/16  | 7/32
5/16 | 9/16  | 17/64
3/8  | 5/8   | 21/64
7/16 | 3/4   | 3/8
1/2  | 13/16 | 7/16
5/8  | 1     | 35/64
3/4  | 1 1/8 | 21/32
7/8  | 1 5/16 | 49/64
1    | 1 1/2 | 7/8
1 1/8 | 1 11/16 | 1
1 1/4 | 1 7/8 | 1 3/32
1 1/2 | 2 1/4 | 1 5/16`

// The rule of the Franklin Institute (1864) in J. Rose, Mechanical Drawing
// Self-Taught, figs 155 and 156, worked out by hand.
const roughNut = `
1/4  | 1/2    | 1/4
5/16 | 19/32  | 5/16
3/8  | 11/16  | 3/8
7/16 | 25/32  | 7/16
1/2  | 7/8    | 1/2
5/8  | 1 1/16 | 5/8
3/4  | 1 1/4  | 3/4`

const finishedNut = `
1/4  | 7/16   | 3/16
5/16 | 17/32  | 1/4
3/8  | 5/8    | 5/16
7/16 | 23/32  | 3/8
1/2  | 13/16  | 7/16
5/8  | 1      | 9/16
3/4  | 1 3/16 | 11/16`

// Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, sizes of Whitworth nuts: as
// thick as the bolt.
const whitworthNut = `
1/2  | .9191  | 1/2
9/16 | 1.011  | 9/16
5/8  | 1.101  | 5/8
3/4  | 1.3012 | 3/4
7/8  | 1.4788 | 7/8
1    | 1.6701 | 1
1 1/8 | 1.8605 | 1 1/8
1 1/4 | 2.0483 | 1 1/4
1 1/2 | 2.4131 | 1 1/2`

// BS 1083 table 2 (boltport), greatest across flats and ordinary thickness.
const reducedNut = `
1/4  | .445  | .200
5/16 | .525  | .250
3/8  | .600  | .312
7/16 | .710  | .375
1/2  | .820  | .437
9/16 | .920  | .500
5/8  | 1.010 | .562
3/4  | 1.200 | .687
7/8  | 1.300 | .750
1    | 1.480 | .875
1 1/8 | 1.670 | 1.000
1 1/4 | 1.860 | 1.125
1 1/2 | 2.220 | 1.375`

func TestNuts(t *testing.T) {
	for standard, table := range map[bolt.NutStandard]string{
		bolt.SquareNut: squareNut, bolt.RoughNut: roughNut, bolt.FinishedNut: finishedNut,
		bolt.WhitworthNut: whitworthNut, bolt.ReducedNut: reducedNut,
	} {
		for _, row := range rows(t, table) {
			got, s := bolt.Nut(row[0], standard)
			assert.Equal(t, bolt.Published, s)
			near(t, row[1], got.Across)
			near(t, row[2], got.Thickness)
		}
	}
}

// The modern square nut is 7/8 D thick, but at 5/16 and 7/16, where it is 1/128
// under, and at 1 1/8, where it is 1/64 over.
func TestSquareNutPattern(t *testing.T) {
	off := map[string]quantity.Length{"5/16": -inch / 128, "7/16": -inch / 128, "1 1/8": inch / 64}
	for _, row := range rows(t, squareNut) {
		n, _ := bolt.Nut(row[0], bolt.SquareNut)
		near(t, 7*row[0]/8+off[quantity.Fraction(row[0], 16)], n.Thickness)
	}
}

// BS 1083 put on a bolt the hexagon of the next smaller one, which is how the
// old sizes under 1/2 in were worked out. Where Hasluck prints the old size and
// BS 1083 the reduced one, the two agree to .003 in.
func TestReducedHexagonIsOneSizeDown(t *testing.T) {
	up := [][2]quantity.Length{
		{inch / 4, 5 * inch / 16},
		{5 * inch / 16, 3 * inch / 8},
		{3 * inch / 8, 7 * inch / 16},
		{7 * inch / 16, inch / 2},
		{inch / 2, 9 * inch / 16},
		{9 * inch / 16, 5 * inch / 8},
		{3 * inch / 4, 7 * inch / 8},
		{7 * inch / 8, inch},
		{inch, 9 * inch / 8},
		{9 * inch / 8, 5 * inch / 4},
	}
	for _, pair := range up {
		old, _ := bolt.Nut(pair[0], bolt.WhitworthNut)
		reduced, _ := bolt.Nut(pair[1], bolt.ReducedNut)
		assert.InDelta(t, float64(old.Across), float64(reduced.Across), 0.003*25.4)
	}
}

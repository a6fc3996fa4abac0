package bolt

// A NutStandard is a pattern of nut that the trade has bought.
type NutStandard int

// The nuts.
const (
	SquareNut    NutStandard = iota // modern American square, ASME B18.2.2
	RoughNut                        // Sellers, Franklin Institute 1864, as forged
	FinishedNut                     // Sellers, machined: not often on a wagon
	WhitworthNut                    // old Whitworth hexagon, full size
	ReducedNut                      // British hexagon one size smaller, BS 1083
)

// A NutSize is the size of a nut.
type NutSize struct{ Across, Thickness Length } // across the flats

// squareNuts are inches: diameter, across flats, thickness.
// ASME B18.2.2 square nuts, in the table of Packer Fastener.
var squareNuts = [...][3]Length{
	{1. / 4, 7. / 16, 7. / 32},
	{5. / 16, 9. / 16, 17. / 64},
	{3. / 8, 5. / 8, 21. / 64},
	{7. / 16, 3. / 4, 3. / 8},
	{1. / 2, 13. / 16, 7. / 16},
	{5. / 8, 1, 35. / 64},
	{3. / 4, 1 + 1./8, 21. / 32},
	{7. / 8, 1 + 5./16, 49. / 64},
	{1, 1 + 1./2, 7. / 8},
	{1 + 1./8, 1 + 11./16, 1},
	{1 + 1./4, 1 + 7./8, 1 + 3./32},
	{1 + 1./2, 2 + 1./4, 1 + 5./16},
}

// whitworthNuts are inches: diameter, across flats; as thick as the bolt.
//
// From 1/2 up: P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, sizes of
// Whitworth nuts and bolt-heads. Under 1/2: worked out from BS 1083, which put
// on each bolt the hexagon of the next smaller one.
var whitworthNuts = [...][2]Length{
	{1. / 4, .525},
	{5. / 16, .600},
	{3. / 8, .710},
	{7. / 16, .820},
	{1. / 2, .9191},
	{9. / 16, 1.011},
	{5. / 8, 1.101},
	{3. / 4, 1.3012},
	{7. / 8, 1.4788},
	{1, 1.6701},
	{1 + 1./8, 1.8605},
	{1 + 1./4, 2.0483},
	{1 + 1./2, 2.4131},
}

// reducedNuts are inches: diameter, greatest across flats, greatest thickness.
// BS 1083 ordinary nuts, in the copy of boltport (table 2) and Machinery's
// Handbook, 31st edition, Part B.
var reducedNuts = [...][3]Length{
	{1. / 4, .445, .200},
	{5. / 16, .525, .250},
	{3. / 8, .600, .312},
	{7. / 16, .710, .375},
	{1. / 2, .820, .437},
	{9. / 16, .920, .500},
	{5. / 8, 1.010, .562},
	{3. / 4, 1.200, .687},
	{7. / 8, 1.300, .750},
	{1, 1.480, .875},
	{1 + 1./8, 1.670, 1.000},
	{1 + 1./4, 1.860, 1.125},
	{1 + 1./2, 2.220, 1.375},
}

// Nut returns the nut of a bolt of diameter d by that standard. Only the
// Sellers nuts are given by formula, and so by [Pattern] for any diameter.
func Nut(d Length, standard NutStandard) (NutSize, Source) {
	switch standard {
	case SquareNut:
		i, s := find(d, len(squareNuts), func(i int) Length { return squareNuts[i][0] * inch })
		return inTable(squareNuts[i][1], squareNuts[i][2], s)
	case WhitworthNut:
		i, s := find(d, len(whitworthNuts), func(i int) Length { return whitworthNuts[i][0] * inch })
		return inTable(whitworthNuts[i][1], whitworthNuts[i][0], s)
	case ReducedNut:
		i, s := find(d, len(reducedNuts), func(i int) Length { return reducedNuts[i][0] * inch })
		return inTable(reducedNuts[i][1], reducedNuts[i][2], s)
	case RoughNut:
		return sellers(d, inch/8, 0)
	case FinishedNut:
		return sellers(d, inch/16, inch/16)
	}
	return NutSize{}, Unlisted
}

func inTable(across, thickness Length, s Source) (NutSize, Source) {
	if s == Unlisted {
		return NutSize{}, s
	}
	return NutSize{Across: across * inch, Thickness: thickness * inch}, s
}

// sellers is the rule of the Franklin Institute, 1864: 1 1/2 D and some across
// the flats, D less some thick. J. Rose, Mechanical Drawing Self-Taught, figs 155
// and 156.
func sellers(d, over, under Length) (NutSize, Source) {
	size, s := sized(d)
	switch {
	case s != Unlisted:
		d = size
	case usual(d):
		s = Pattern
	default:
		return NutSize{}, Unlisted
	}
	return NutSize{Across: 1.5*d + over, Thickness: d - under}, s
}

// Nuts are the least and the greatest thickness that the nut of a wagon bolt of
// diameter d is likely to have had, where it is not known which pattern it was.
func Nuts(d Length) Limits {
	l, _ := nutBetween(d)
	return l
}

// nutBetween returns the thinnest and the thickest nut that a wagon bolt of
// diameter d is likely to have had: the modern square one, about 7/8 D, and the
// old rough one or Whitworth's, D. A diameter in no table is given the same
// middle, 15/16 D, and twice the width. (The finished nut is left out: it is for
// machinery; common practice, no source.)
func nutBetween(d Length) (Limits, Source) {
	modern, s := Nut(d, SquareNut)
	if s == Unlisted {
		return Limits{Max: 17 * d / 16, Min: 13 * d / 16}, Pattern
	}
	rough, _ := Nut(d, RoughNut)
	return Limits{Max: rough.Thickness, Min: modern.Thickness}, s
}

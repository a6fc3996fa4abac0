package bolt

import "math"

// A CarriageBolt is a round-head square-neck bolt: its head is a dome, and under
// it a square neck is drawn into the wood and keeps the bolt from turning.
type CarriageBolt struct {
	Diameter     Length // nominal
	Body         Limits // diameter of the shank
	HeadDiameter Limits
	HeadHeight   Limits
	NeckWidth    Limits // across the flats of the square
	NeckDepth    Limits // from the bearing face of the head
}

// squareNecks are inches: diameter; body, head diameter, head height, neck width
// and neck depth, each greatest then least.
//
// ASME B18.5, round head square neck bolts, in the copies of US Fastener, of CFI to
// 3/4 and of Marine Construction Bolts from 1/2, which agree. (Another copy prints .459 for the head
// height of 7/8; the pattern of the table, D/2 + 1/32, has .469.)
var squareNecks = [...][11]Length{
	{1. / 4, .260, .237, .594, .563, .145, .125, .260, .245, .156, .125},
	{5. / 16, .324, .298, .719, .688, .176, .156, .324, .307, .187, .156},
	{3. / 8, .388, .360, .844, .782, .208, .188, .388, .368, .219, .188},
	{7. / 16, .452, .421, .969, .907, .239, .219, .452, .431, .250, .219},
	{1. / 2, .515, .483, 1.094, 1.032, .270, .250, .515, .492, .281, .250},
	{5. / 8, .642, .605, 1.344, 1.219, .344, .313, .642, .616, .344, .313},
	{3. / 4, .768, .729, 1.594, 1.469, .406, .375, .768, .741, .406, .375},
	{7. / 8, .895, .852, 1.844, 1.719, .469, .438, .895, .865, .469, .438},
	{1, 1.022, .976, 2.094, 1.969, .531, .500, 1.022, .990, .531, .500},
}

// Carriage returns the row of ASME B18.5 for a bolt of diameter d. There
// is no pattern of body limits, so that another diameter is [Unlisted].
func Carriage(d Length) (CarriageBolt, Source) {
	i, s := find(d, len(squareNecks), func(i int) Length { return squareNecks[i][0] * inch })
	if s == Unlisted {
		return CarriageBolt{}, s
	}
	row := squareNecks[i]
	limits := func(at int) Limits { return Limits{Max: row[at] * inch, Min: row[at+1] * inch} }
	return CarriageBolt{
		Diameter: row[0] * inch, Body: limits(1), HeadDiameter: limits(3), HeadHeight: limits(5),
		NeckWidth: limits(7), NeckDepth: limits(9),
	}, s
}

// Neck returns the nominal square of a carriage bolt's neck: as wide as the
// bolt, and half as deep, which is the least depth of ASME B18.5: cut so, the
// neck is still drawn into fresh wood. A diameter that is not listed is given
// the same by [Pattern].
func Neck(d Length) (width, depth Length, s Source) {
	c, s := Carriage(d)
	switch {
	case s != Unlisted:
		d = c.Diameter
	case usual(d):
		s = Pattern
	default:
		return 0, 0, Unlisted
	}
	width, depth = Seat(d)
	return width, depth, s
}

// Seat returns the square to cut for a carriage bolt's neck. It is the rule that
// every row of ASME B18.5 follows and so no guess between two; [Neck] gives it
// for the size that d was made as, with its [Source].
func Seat(d Length) (width, depth Length) { return d, d / 2 }

// HeadRoom returns the diameter of a counterbore that takes a bolt's head, with
// [MostPlay] to spare: the greatest dome, 2D + 3/32 in (ASME B18.5), or the
// corners of the old rough square head, 1 1/2 D + 1/8 in across the flats
// (Sellers, see [RoughNut]), whichever is the larger. A spanner wants more.
func HeadRoom(d Length) Length {
	dome := 2*d + 3*inch/32
	corners := math.Sqrt2 * (1.5*d + inch/8)
	return max(dome, corners) + MostPlay
}

// Head returns the limits of a carriage bolt's head, across and high. By
// [Pattern] they are the widest that any row of ASME B18.5 shows: 2D - 1/32 to
// 2D + 3/32, and D/2 to D/2 + 1/32.
func Head(d Length) (diameter, height Limits, s Source) {
	c, s := Carriage(d)
	switch {
	case s != Unlisted:
		return c.HeadDiameter, c.HeadHeight, s
	case usual(d):
		return Limits{Max: 2*d + 3*inch/32, Min: 2*d - inch/32}, Limits{Max: d/2 + inch/32, Min: d / 2}, Pattern
	}
	return Limits{}, Limits{}, Unlisted
}

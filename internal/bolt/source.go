package bolt

import "math"

// A Source says what stands behind a figure.
type Source int

// The sources, strongest first but for the first, which is none.
const (
	Unlisted  Source = iota // no table lists the diameter: the figures are zero
	Published               // a row, or a formula, of the table named
	Nearest                 // the row of the size that this shank was made as
	Pattern                 // what the rows of the table have in common, carried on
)

// String returns the words for s.
func (s Source) String() string {
	switch s {
	case Published:
		return "published table"
	case Nearest:
		return "published table, nearest size"
	case Pattern:
		return "pattern of the published table"
	}
	return "not in the tables"
}

const (
	// same is how near a diameter must come to be the very size of a row; it
	// covers a size written in millimetres.
	same = 0.001
	// besideSize is how far a shank may be from a size with no published body
	// limits: about the limits that ASME B18.5 gives a 1/2 in bolt.
	besideSize = inch / 64
	// thinnest and thickest bound the patterns: beyond them they are not bolts
	// of a vehicle.
	thinnest = inch / 8
	thickest = 3 * inch
)

// match says whether d is the size, or a shank made as that size.
func match(d, size Length) Source {
	body := Limits{Max: size + besideSize, Min: size - besideSize}
	for _, row := range squareNecks {
		if row[0]*inch == size {
			body = Limits{Max: row[1] * inch, Min: row[2] * inch}
		}
	}
	switch {
	case math.Abs(float64(d-size)) <= same:
		return Published
	case d >= body.Min && d <= body.Max:
		return Nearest
	}
	return Unlisted
}

// find returns the place of d's row among sizes, which at gives in order.
func find(d Length, rows int, at func(int) Length) (int, Source) {
	for i := range rows {
		if s := match(d, at(i)); s != Unlisted {
			return i, s
		}
	}
	return 0, Unlisted
}

// usual reports whether a pattern may be carried to d.
func usual(d Length) bool { return d >= thinnest && d <= thickest }

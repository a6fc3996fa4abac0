package timber

import "lostwood/internal/quantity"

// A Clearance is a distance of a bolt's centre from an end, an edge or another
// bolt. At Full and over, the wood holds all it can; under Least it is not
// permitted in new structures. Old iron may sit closer: that is reported, and
// the hole stays where the iron has it.
type Clearance struct{ Full, Least quantity.Length }

// Share returns the part of its full strength that a bolt has at a distance,
// and 0 under the least.
func (c Clearance) Share(actual quantity.Length) float64 {
	switch {
	case actual >= c.Full:
		return 1
	case actual >= c.Least:
		return float64(actual / c.Full)
	}
	return 0
}

// A WoodKind decides how far from an end a pulled bolt must sit.
type WoodKind int

// The kinds of wood.
const (
	Hardwood WoodKind = iota
	Softwood
)

// A Pull is the way a bolt presses on the wood.
type Pull int

// The ways of pressing.
const (
	TowardEnd   Pull = iota // along the grain, toward the end it is near
	AwayFromEnd             // along the grain, away from it
	Across                  // across the grain
)

// BoltEnd returns the clearance of a bolt of a diameter from the end of a
// timber: National Design Specification (American Wood Council, 2018) table 12.5.1A.
func BoltEnd(diameter quantity.Length, wood WoodKind, pull Pull) (Clearance, error) {
	n := quantity.Length(4)
	switch {
	case pull == TowardEnd && wood == Softwood:
		n = 7
	case pull == TowardEnd:
		n = 5
	}
	return clearance(diameter, n, n/2)
}

// BoltRow returns the clearance between bolts in a row along the grain: table 12.5.1B.
func BoltRow(diameter quantity.Length) (Clearance, error) { return clearance(diameter, 4, 3) }

// An Edge is a long side of a timber.
type Edge int

// The edges.
const (
	LoadedEdge   Edge = iota // the bolt presses toward it
	UnloadedEdge             // the bolt presses away from it, or along the grain
)

// BoltEdge returns the clearance of a bolt from an edge, in wood that thick
// along the bolt: table 12.5.1C. For a load along the grain in wood thicker
// than six diameters, half the distance between rows counts where it is more.
func BoltEdge(diameter, thick, betweenRows quantity.Length, pull Pull, edge Edge) (Clearance, error) {
	if err := positive("thickness of the wood along the bolt, mm", thick.Millimetres()); err != nil {
		return Clearance{}, err
	}
	if pull == Across && edge == LoadedEdge {
		return clearance(diameter, 4, 4)
	}
	c, err := clearance(diameter, 1.5, 1.5)
	if err == nil && pull != Across && thick > 6*diameter && betweenRows/2 > c.Full {
		c = Clearance{betweenRows / 2, betweenRows / 2}
	}
	return c, err
}

// BoltRows returns the clearance between rows: table 12.5.1D.
func BoltRows(diameter, thick quantity.Length, pull Pull) (Clearance, error) {
	if err := positive("thickness of the wood along the bolt, mm", thick.Millimetres()); err != nil {
		return Clearance{}, err
	}
	if pull != Across {
		return clearance(diameter, 1.5, 1.5)
	}
	slender := thick / diameter
	n := (5*slender + 10) / 8
	switch {
	case slender <= 2:
		n = 2.5
	case slender >= 6:
		n = 5
	}
	return clearance(diameter, n, n)
}

func clearance(diameter, full, least quantity.Length) (Clearance, error) {
	if err := positive("bolt diameter, mm", diameter.Millimetres()); err != nil {
		return Clearance{}, err
	}
	return Clearance{full * diameter, least * diameter}, nil
}

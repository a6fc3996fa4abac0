package timber

import (
	"fmt"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// Rings say how the growth rings lie in the end of a squared piece, seen
// against its broad face.
type Rings struct {
	Lie   Lie
	Angle quantity.Angle // of Slanting: between the rings and the broad face, above 0 and under a quarter turn
}

// A Lie is how rings lie.
type Lie int

// How rings lie.
const (
	RingsNotKnown Lie = iota // whichever way moves more is reckoned
	FlatSawn                 // along the broad face
	QuarterSawn              // square to it
	Slanting                 // at an angle between
)

// String is how a yard is asked for it.
func (r Rings) String() string {
	switch r.Lie {
	case FlatSawn:
		return "flat-sawn"
	case QuarterSawn:
		return "quarter-sawn"
	case Slanting:
		return fmt.Sprintf("rings at %.3g degrees to the broad face", r.Angle.Degrees())
	}
	return "rings not known"
}

// A RingsError is a word that says nothing of rings.
type RingsError struct{ Word string }

func (e *RingsError) Error() string {
	return quantity.Quote(e.Word) + " does not say how the rings lie; write flat, quarter, unknown, or the degrees between the rings and the broad face, such as 30"
}

// ParseRings reads flat, quarter, unknown, or degrees from 0 (flat) to 90 (quarter).
func ParseRings(text string) (Rings, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "unknown", "not known":
		return Rings{}, nil
	case "flat", "flat-sawn", "tangential":
		return Rings{Lie: FlatSawn}, nil
	case "quarter", "quarter-sawn", "radial":
		return Rings{Lie: QuarterSawn}, nil
	}
	degrees, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	switch {
	case err != nil || !(degrees >= 0 && degrees <= 90):
		return Rings{}, &RingsError{text}
	case degrees == 0:
		return Rings{Lie: FlatSawn}, nil
	case degrees == 90:
		return Rings{Lie: QuarterSawn}, nil
	}
	return Rings{Slanting, quantity.Angle(degrees) * quantity.Degree}, nil
}

// An Extent is one of the two sizes of a piece across the grain.
type Extent int

// The extents across the grain.
const (
	Broad Extent = iota // the greater
	Thin                // the lesser
)

// ResizeAs is [Species.Resize] for one extent of a piece whose rings lie so.
func (s Species) ResizeAs(size quantity.Length, from, to quantity.Moisture, r Rings, e Extent) (quantity.Length, error) {
	switch {
	case e != Broad && e != Thin:
		return 0, &RangeError{What: "extent of a piece", Got: float64(e), Min: float64(Broad), Max: float64(Thin)}
	case r.Lie == RingsNotKnown:
		return s.Resize(size, from, to, Worst)
	case r.Lie == Slanting && e == Broad: // the angle from the radial direction
		return s.ResizeAcross(size, from, to, 90*quantity.Degree-r.Angle)
	case r.Lie == Slanting:
		return s.ResizeAcross(size, from, to, r.Angle)
	case (r.Lie == FlatSawn) == (e == Broad):
		return s.Resize(size, from, to, Tangential)
	}
	return s.Resize(size, from, to, Radial)
}

// Travel returns how far one extent of a piece goes between the smallest and
// the largest it is at any of the moistures.
func (s Species) Travel(size quantity.Length, sizedAt quantity.Moisture, r Rings, e Extent, moistures ...quantity.Moisture) (quantity.Length, error) {
	var least, most quantity.Length
	for i, m := range moistures {
		at, err := s.ResizeAs(size, sizedAt, m, r, e)
		if err != nil {
			return 0, err
		}
		if i == 0 {
			least, most = at, at
		}
		least, most = min(least, at), max(most, at)
	}
	return most - least, nil
}

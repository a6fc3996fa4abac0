// Package bolt knows the bolts, nuts and washers of the published tables, and
// what a surviving bolt says of the wood it held.
//
// Two directions: from an old bolt to the thickness it gripped ([Grip], with
// [Check] for readings that cannot be), and from a thickness to the bolt to buy
// and the hole to bore for it ([Need], [StockLength], [ThreadNeeded], [Hole]).
//
// Every length is a [quantity.Length], in millimetres. The tables are in inches,
// as published. A diameter that no table lists is never filled in between two
// rows: each answer says by its [Source] whether it is a row, the row of the
// nearest size, a pattern that the rows follow, or nothing.
//
// Nothing here knows of timbers, or of how strong a bolt must be: what is loaded
// is for local codes and those licensed to judge it.
package bolt

import (
	"math"

	"lostwood/internal/quantity"
)

// Length is a distance in millimetres.
type Length = quantity.Length

const inch = quantity.Inch

// Limits are the greatest and the least of a size as made.
type Limits struct{ Max, Min Length }

// Middle is halfway between the two.
func (l Limits) Middle() Length { return (l.Max + l.Min) / 2 }

// Doubt is the standard uncertainty of a size that may lie anywhere between
// the two: the width over 2 sqrt 3 (JCGM 100:2008, 4.3.7).
func (l Limits) Doubt() Length { return (l.Max - l.Min) / Length(2*math.Sqrt(3)) }

package bolt

import "math"

// Play between a bolt and its hole, over the diameter (National Design
// Specification for Wood Construction, 12.1.3.2; the clause from memory). A
// tighter hole splits the wood as the bolt is driven.
const (
	LeastPlay = inch / 32
	MostPlay  = inch / 16
)

// Hole returns the hole to bore for a bolt whose shank measures d where it is
// clean: an old shank is swelled by rust. It gives [LeastPlay]; a hole of up to
// d + [MostPlay] is still good.
func Hole(d Length) Length { return d + LeastPlay }

// Need returns the least length of bolt, under the head, for what it is to hold:
// the grip, all washers and the nut, as they will be supplied, and one full
// thread past the nut ([OneThread]).
func Need(grip, washer, nut, thread Length) Length { return grip + washer + nut + thread }

// ThreadNeeded returns the least thread of a bolt of that length that lets its
// nut be run down: whatever lies past the grip and the washers.
func ThreadNeeded(length, grip, washer Length) Length { return length - grip - washer }

// StockLength rounds need up to a length that bolts are sold in: quarters of an
// inch to 6 in, halves above (common practice, no source). It never rounds down,
// but for a thousandth of a millimetre. A need that is no length of bolt is
// refused with a *[SizeError].
func StockLength(need Length) (Length, error) {
	if err := size("bolt needed", need, shortest, longest); err != nil {
		return 0, err
	}
	step := inch / 4
	if need > 6*inch+same {
		step = inch / 2
	}
	return roundUp(need, step), nil
}

func roundUp(l, step Length) Length { return Length(math.Ceil(float64((l-same)/step))) * step }

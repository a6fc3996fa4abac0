package survey

import (
	"lostwood/internal/quantity"
)

const smithMeans = "What is taken to be alike on all bolts, as one smith's work. It speaks where a bolt's own line under [bolt] is silent; " +
	"and as it is alike on all of them, if it is wrong it is wrong on all, and that is reckoned with."

// A NutKind is a pattern of nut.
type NutKind string

// The patterns of nut; empty where it is not known which.
const (
	ModernNut    NutKind = "modern"    // square, ASME B18.2.2
	OldNut       NutKind = "old"       // rough, of the Franklin Institute, 1864
	FinishedNut  NutKind = "finished"  // the same, machined
	WhitworthNut NutKind = "whitworth" // full size
	ReducedNut   NutKind = "reduced"   // British, one size smaller, BS 1083
)

func nutKinds() []NutKind { return []NutKind{ModernNut, OldNut, FinishedNut, WhitworthNut, ReducedNut} }

// A WasherKind is a breadth of plain washer, whose thickness is in a table.
type WasherKind string

// The washers; empty where none is spoken of.
const (
	NarrowWasher WasherKind = "narrow"
	WideWasher   WasherKind = "wide"
	NoWasher     WasherKind = "none"
)

func washerKinds() []WasherKind { return []WasherKind{NarrowWasher, WideWasher, NoWasher} }

// A Smith is what is alike on all bolts.
type Smith struct {
	At     Position
	Nut    NutKind
	Washer WasherKind
	Proud  *Reading // thread past the nut; its doubt is of the habit, not of one bolt
}

func smithKeys() []key[Smith] {
	return []key[Smith]{
		{
			name: "nut", also: "nuts", example: `"old"`,
			means: "the pattern of nuts that were not measured: " + listed(plain(nutKinds()), "or") + "; between modern and old, but all alike, where not given",
			take:  intoWord(nutKinds(), func(s *Smith) *NutKind { return &s.Nut }),
		},
		{
			name: "washer", also: "washers", example: `"wide"`, means: "the washer under every nut, by the table: " + listed(plain(washerKinds()), "or"),
			take: intoWord(washerKinds(), func(s *Smith) *WasherKind { return &s.Washer }),
		},
		{
			name: "proud", also: "past", example: `"1/8 ± 1/16"`, means: "how much thread he left past the nut, and how sure that is",
			take: func(r *reader, v *node, s *Smith) {
				if rd, ok := r.reading(v, quantity.Inch/16, zeroToo); ok {
					s.Proud = &rd
				}
			},
		},
	}
}

func (r *reader) smith(n *node) {
	r.s.Smith.At = r.at(n)
	readGroup(r, n, "[smith]", smithKeys(), &r.s.Smith)
}

package timber

import "fmt"

// A Standing says how far a figure can be trusted, weakest first.
type Standing int

// How a figure stands.
const (
	Missing    Standing = iota // not found anywhere
	FromMemory                 // recalled, the source not seen
	Derived                    // worked out from other figures
	Seen                       // seen in the source named, or in a copy of it
	Own                        // given by the restorer
)

var standingWords = [...]string{"not found", "from memory", "worked out", "published", "given"}

// String returns the words for s.
func (s Standing) String() string {
	if s < Missing || s > Own {
		return fmt.Sprintf("Standing(%d)", int(s))
	}
	return standingWords[s]
}

// A Basis says where a figure comes from and how it stands.
type Basis struct {
	Source   string
	Standing Standing
}

// String returns the source and its standing, such as
// “Wood Handbook table 5-3, from memory”.
func (b Basis) String() string {
	switch {
	case b.Source == "" || b.Standing == Missing:
		return b.Standing.String()
	case b.Standing == Seen:
		return b.Source
	}
	return b.Source + ", " + b.Standing.String()
}

// A Figure is one published number, in the unit of the field that holds it.
// The zero Figure is missing, which is not the same as a figure of zero.
type Figure struct {
	Value    float64
	Source   string
	Standing Standing
}

// Given returns a figure that the restorer states, with where it is from.
func Given(value float64, source string) Figure { return Figure{value, source, Own} }

// Known reports whether f was found.
func (f Figure) Known() bool { return f.Standing != Missing }

// Basis returns where f comes from.
func (f Figure) Basis() Basis { return Basis{f.Source, f.Standing} }

// weakest returns the basis of what is worked out from all of them: the first
// of those that stand least well. Figures that were not found do not count.
func weakest(figures ...Figure) Basis {
	var b Basis
	for _, f := range figures {
		if f.Known() && (b.Standing == Missing || f.Standing < b.Standing) {
			b = f.Basis()
		}
	}
	return b
}

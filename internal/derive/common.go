package derive

import "lostwood/internal/quantity"

// A common is an error that several observations share: what it is, for words.
type common struct {
	kind  commonKind
	says  string // what is taken for granted where it is nothing: "the nuts are of one pattern"
	known quantity.Known
	line  int
}

// A commonKind says what shares an error.
type commonKind int

// What shares an error.
const (
	ofFamily     commonKind = iota // one statement about many of a family
	ofInstrument                   // all that one instrument read
	ofSmith                        // all bolts of one smith: his nuts, the thread he left past them
	ofSeason                       // all grips: how damp the wood was when the nuts were last run down
)

// common enters an error that observations may share, and returns its number.
func (n *network) common(c common, doubt float64) int {
	n.commons = append(n.commons, c)
	n.problem.Common = append(n.problem.Common, doubt)
	return len(n.commons) - 1
}

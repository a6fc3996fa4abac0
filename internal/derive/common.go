package derive

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
)

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
	ofBend                         // all of an iron that was bent
	ofSeason                       // all grips: how damp the wood was when the nuts were last run down
)

// common enters an error that observations may share, and returns its number.
func (n *network) common(c common, doubt float64) int {
	n.commons = append(n.commons, c)
	n.problem.Common = append(n.problem.Common, doubt)
	return len(n.commons) - 1
}

// granted says what is taken for granted of an error that several share.
func (c common) granted() string {
	if c.kind == ofInstrument {
		return c.says
	}
	return "taking it that " + c.says
}

// loosen lets go of what was taken to be alike on many and does not hold: its error
// may then be as large as the readings say.
func (n *network) loosen(f *fit, c int) error {
	s := suspect{observation: none, of: &n.commons[c], off: f.CommonErrors[c]}
	n.problem.Common = slices.Clone(n.problem.Common)
	n.problem.Common[c] = 2 * math.Abs(f.CommonErrors[c]) / f.CommonRedundancy[c]
	sol, err := adjust.Solve(n.problem)
	if err != nil {
		return err
	}
	f.Solution = sol
	f.suspects = append(f.suspects, s)
	return nil
}

// untrue says that something taken to be alike on many is not as it was taken to be.
func (c common) untrue() string {
	if c.kind == ofInstrument {
		return fmt.Sprintf("The readings are against %s: it is more than was said. It was left open; try that instrument on a known length.", c.says)
	}
	return fmt.Sprintf("It does not hold that %s, or not as nearly as was said: the readings are against it. It was left open; look which is so.", c.says)
}

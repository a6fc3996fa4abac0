package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
)

// lasting are the errors that one instrument has in everything it read: by its class,
// in its zero, in its length; none where it has no such.
type lasting struct{ class, zero, long int }

// by adds to the observation just entered what its instrument is off by everywhere.
// A tape's tolerance is a bound: its standard uncertainty is that over the root of
// three (JCGM 100:2008, 4.3.7).
func (n *network) by(r survey.Reading) {
	i := r.By
	if i == nil {
		return
	}
	e, ok := n.lasting[i]
	if !ok {
		e = lasting{none, none, none}
		enter := func(has bool, what string) int {
			if !has {
				return none
			}
			says := fmt.Sprintf("what the instrument called %s is off by %s", i.ID, what)
			return n.common(common{kind: ofInstrument, says: says, known: quantity.FromIron, line: i.At.Line}, 1)
		}
		e.class = enter(i.Class > 0, "in its marks, within its class")
		e.zero = enter(i.Zero > 0, "in its zero")
		e.long = enter(i.Off > 0 && i.Long > 0, "in its length")
		n.lasting[i] = e
	}
	n.shares(e.class, i.Tolerance(r.Value)/quantity.Length(math.Sqrt(3)))
	n.shares(e.zero, i.Zero)
	if e.long != none {
		n.shares(e.long, i.Off*r.Value/i.Long)
	}
}

// shares gives the observation just entered its share in a common error.
func (n *network) shares(c int, slope quantity.Length) {
	if c == none || slope == 0 {
		return
	}
	o := &n.problem.Observations[len(n.problem.Observations)-1]
	o.Sources = append(o.Sources, adjust.Source{Common: c, Slope: slope.Millimetres()})
}

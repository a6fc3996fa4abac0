package derive

import (
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// family finds the id of the iron or part that a word names: itself, one of its
// sides (near-reach) or one of its row (cross-bar-2).
func (n *network) family(word string) string {
	if t, ok := n.index.Find(word); ok {
		return t.ID()
	}
	return word
}

// fixed is the doubt of what fixes the frame: nothing, but for the arithmetic.
const fixed = quantity.Millimetre / 1000

// state enters a statement, for every member of the families it names.
func (n *network) state(st *survey.Statement, s sort) {
	rows, sides := 1, survey.Single
	for _, t := range st.Terms {
		thing, _ := n.index.Find(t.Thing)
		if thing.Row == 0 {
			rows = max(rows, rowsOf(n.families[thing.ID()]))
		}
		if thing.Side == vehicle.Alike && n.families[thing.ID()][0].hand != vehicle.Alike {
			sides = survey.Pair
		}
	}
	doubt, shared := st.Doubt, []adjust.Source(nil)
	if s == frame {
		doubt = fixed
	} else if times := rows * len(hands(sides)); times > 1 && !n.speaksOfIron(st) {
		doubt, shared = n.share(doubt, st)
	}
	for row := range rows {
		for _, hand := range hands(sides) {
			n.stateOne(st, s, row, hand, doubt, shared)
		}
	}
}

// speaksOfIron reports whether a statement sets wood beside iron: of a pair each
// then has its own iron to say so.
func (n *network) speaksOfIron(st *survey.Statement) bool {
	for _, t := range st.Terms {
		if thing, _ := n.index.Find(t.Thing); thing.Iron != nil {
			return true
		}
	}
	return false
}

// share makes one statement about many of a family count once: what it may be
// off by is off for all of them alike, but for what one of a row differs by.
func (n *network) share(doubt quantity.Length, st *survey.Statement) (own quantity.Length, shared []adjust.Source) {
	own = min(n.survey.Doubts.Row.Doubt, doubt/2)
	c := n.common(common{kind: ofFamily, says: st.Text, known: st.Known, line: st.At.Line}, math.Sqrt(float64(doubt*doubt-own*own)))
	return own, []adjust.Source{{Common: c, Slope: 1}}
}

func (n *network) stateOne(st *survey.Statement, s sort, row int, hand vehicle.Hand, doubt quantity.Length, shared []adjust.Source) {
	var members []*member
	for _, t := range st.Terms {
		members = append(members, n.member(t.Thing, row, hand))
	}
	model := func(x []float64) adjust.Term {
		sum := adjust.Constant(0)
		for i, t := range st.Terms {
			sum = sum.Plus(members[i].feature(x, t, hand).Scaled(t.Factor))
		}
		return sum
	}
	known := st.Known
	if s == frame {
		known = quantity.Measured
	}
	t := note{sort: s, subject: members[0].id, what: st.Text, line: st.At.Line, known: known, member: members[0]}
	for _, m := range members {
		if m.base != members[0].base {
			t.speaks = append(t.speaks, m)
		}
	}
	n.observe(t, -st.Constant, doubt, model)
	n.problem.Observations[len(n.problem.Observations)-1].Sources = shared
}

// feature is what a term of a statement stands for: a dimension, or a place on
// the vehicle's axes. A single thing in a statement of a pair is told outwards on
// the side that the statement is for.
func (m *member) feature(x []float64, t survey.Term, hand vehicle.Hand) adjust.Term {
	if t.Hole > 0 {
		return m.hole(x, t.Hole-1, int(t.Feature[0]-'x'))
	}
	if u := m.size(t.Feature); u != none {
		return adjust.At(x, u)
	}
	if m.hand != vehicle.Alike {
		hand = m.hand
	}
	outer := hand != vehicle.Off
	switch t.Feature {
	case "fore":
		return m.high(x, 0)
	case "hind":
		return m.low(x, 0)
	case "near":
		return m.high(x, 1)
	case "off":
		return m.low(x, 1)
	case "outer":
		return m.side(x, outer, hand)
	case "inner":
		return m.side(x, !outer, hand)
	case "top":
		return m.high(x, 2)
	case "under":
		return m.low(x, 2)
	case "mid-x":
		return m.middle(x, 0)
	case "mid-y":
		if hand == vehicle.Off {
			return m.middle(x, 1).Scaled(-1)
		}
		return m.middle(x, 1)
	}
	return m.middle(x, 2)
}

// side is the near side of a member, or its off side. For one of a pair it is
// told outwards, so that one statement serves both.
func (m *member) side(x []float64, near bool, hand vehicle.Hand) adjust.Term {
	t := m.low(x, 1)
	if near {
		t = m.high(x, 1)
	}
	if hand == vehicle.Off {
		return t.Scaled(-1)
	}
	return t
}

// fixFrame enters what fixes the vehicle's frame: what the survey says, else
// that the first placed thing stands at zero.
func (n *network) fixFrame() {
	for i := range n.survey.Datum {
		n.state(&n.survey.Datum[i], frame)
	}
	if len(n.survey.Datum) > 0 {
		return
	}
	for _, m := range n.members {
		if !m.placed() {
			continue
		}
		for _, a := range []int{0, 2} {
			n.observe(note{sort: frame, subject: m.id, what: "stands at zero", known: quantity.Measured, member: m}, 0,
				fixed, func(x []float64) adjust.Term { return m.low(x, a) })
		}
		return
	}
}

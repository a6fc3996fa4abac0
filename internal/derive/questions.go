package derive

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// mostUnchecked is how many readings that nothing checks are told; the rest is counted.
const mostUnchecked = 10

// elsewhereListed is how many readings that are to be had elsewhere are told.
const elsewhereListed = 5

// Questions are what the survey leaves to be asked: what contradicts, what nothing
// checks, what is not known, and what to measure next.
func (st *Study) Questions() *vehicle.Questions {
	q := &vehicle.Questions{}
	for _, f := range st.Vehicle.Findings {
		switch f.Concern {
		case vehicle.Contradiction, vehicle.Unlike:
			q.Contradicts = append(q.Contradicts, f)
		case vehicle.Open, vehicle.Unmakeable:
			q.Open = append(q.Open, f)
		}
	}
	q.Open = append(q.Open, st.guessed()...)
	q.Ill = st.sitsIll()
	q.Unchecked = st.nothingChecks()
	if len(q.Unchecked) > mostUnchecked {
		q.More = len(q.Unchecked) - mostUnchecked
		q.Unchecked = q.Unchecked[:mostUnchecked]
	}
	before := st.doubts(st.matter)
	rs := st.untaken()
	for _, g := range []struct {
		where vehicle.Where
		most  int
	}{{vehicle.OnIrons, listed}, {vehicle.Elsewhere, elsewhereListed}} {
		there := slices.DeleteFunc(slices.Clone(rs), func(r reading) bool { return r.where != g.where })
		for _, o := range st.next(there, st.matter, before, g.most) {
			q.Next = append(q.Next, st.told(o, st.matter, before))
		}
	}
	return q
}

// guessed tells of the wanted sizes that are settled by a guess alone, those of a
// family once.
func (st *Study) guessed() []vehicle.Finding {
	var out []vehicle.Finding
	seen := map[string]bool{}
	for _, m := range st.network.members {
		if m.part == nil || m.part.Status == vehicle.LeftOpen {
			continue
		}
		for _, d := range m.sizes {
			t := st.sizeTarget(m, d)
			if !required(m.part, d.name) || seen[m.base+"."+d.name] || st.fit.known(t.term) != quantity.Guess {
				continue
			}
			seen[m.base+"."+d.name] = true
			out = append(out, vehicle.Finding{Concern: vehicle.Open, Subject: m.id, Line: st.network.line(m), Says: fmt.Sprintf(
				"Nothing but a guess says %s: %s.", t.asks, st.fit.size(t.term).Words(st.Vehicle.Unit))})
		}
	}
	return out
}

// A loner is a reading that nothing checks.
type loner struct {
	observation int
	reaches     float64 // weighted sum of how far what hangs on it moves with it
	told        int     // the target that moves most
	slope       float64 // by how much, for each unit it is wrong by
	others      int     // further ones that move by a quarter or more
}

// nothingChecks tells of the readings and statements from wood or iron that next to
// nothing checks, those on which most hangs first.
func (st *Study) nothingChecks() []vehicle.Finding {
	var all []loner
	for i, t := range st.network.notes {
		if t.sort.assumed() || t.known > quantity.FromIron || st.setAside(i) || st.checks(i) >= loose {
			continue
		}
		if l := st.loner(i); l.reaches > 0 {
			all = append(all, l)
		}
	}
	slices.SortStableFunc(all, func(a, b loner) int { return cmp.Compare(b.reaches, a.reaches) })
	var out []vehicle.Finding
	for _, l := range all {
		t := st.network.notes[l.observation]
		name, do := st.network.label(t), " Read it a second time."
		if t.sort == stated {
			do = " Look again whether it is so."
			if st.commonOf(l.observation) == none {
				name += t.of()
			}
		}
		says := fmt.Sprintf("%s: a slip here goes %s into %s", capital(name), timesWords(l.slope), st.matter[l.told].asks)
		if l.others > 0 {
			says += fmt.Sprintf(", and into %d other size%s or place%s", l.others, plural(l.others), plural(l.others))
		}
		out = append(out, vehicle.Finding{Concern: vehicle.Advice, Subject: t.subject, Line: t.line, Says: says + "." + do})
	}
	return out
}

// checks is how well an observation is checked: of a statement about a family, as one.
func (st *Study) checks(i int) float64 {
	if c := st.commonOf(i); c != none {
		return st.fit.CommonRedundancy[c]
	}
	return st.fit.Redundancy[i]
}

// loner finds what hangs on a reading.
func (st *Study) loner(i int) loner {
	moved := make([]float64, len(st.fit.X))
	for _, p := range st.fit.Influence(i) {
		moved[p.Unknown] = p.Slope
	}
	l := loner{observation: i}
	for k, t := range st.matter {
		by := math.Abs(dot(t.term, moved))
		if by < 1e-6 {
			continue
		}
		l.reaches += t.weight * by
		if by >= 0.25 {
			l.others++
		}
		if by > math.Abs(l.slope)+1e-9 {
			l.told, l.slope = k, by
		}
	}
	if math.Abs(l.slope) >= 0.25 {
		l.others--
	}
	return l
}

package derive

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/vehicle"
)

// alikeAbove is how closely two observations' tests go together before the one
// cannot be told from the other.
const alikeAbove = 0.95

// most is how many blunders are looked for before the survey is taken to be
// too full of them to say which.
const most = 12

// mostIrons is how many irons are tried at once: a wrong one fits worst, or its
// twin does, or what it is bolted to.
const mostIrons = 6

// An explanation is a change to a whole iron's readings that brings the rest together.
type explanation struct {
	key    string          // what it is about: accounts of one thing do not compete
	member *member         // of an iron; nil of bolts
	values map[int]float64 // by observation
	says   string
	least  float64 // what it must mend to be believed, of squares; 0 for what the worst reading would
}

// A suspect is a single observation set aside, with those it cannot be told from.
type suspect struct {
	observation int
	others      []int
	off         float64            // by how many millimetres it is off
	was         adjust.Observation // as it stood, of a single one left out
	kept        kept
	of          *common // what is alike on many, where that is what does not hold; observation is then none
}

// A kept says what was done with a suspect.
type kept int

// What can be done: one left out, or, where two statements of equal standing
// contradict, both kept with a doubt that holds them.
const (
	leftOut kept = iota
	bothKept
)

// explain looks for blunders, whole irons before single readings: several wrong
// holes mask each other, and throwing them out one by one throws out good ones.
func (n *network) explain(f *fit) error {
	n.found = false
	for range most {
		n.found = len(f.turned)+len(f.suspects) > 0
		worst, w, over := f.worst()
		limit := n.limits(f.Solution).other
		if c, strain := f.worstShared(); strain >= limit && strain/limit > over {
			set := n.setSharedAside
			if n.commons[c].kind != ofFamily {
				set = n.loosen
			}
			if err := set(f, c); err != nil {
				return err
			}
			continue
		}
		if over < 1 {
			return n.readmit(f)
		}
		done, err := n.explainIron(f, w)
		if err != nil {
			return err
		}
		if !done {
			if err := n.setAside(f, worst); err != nil {
				return err
			}
		}
	}
	return n.readmit(f)
}

// readmit takes in again what was left out early and agrees with all that is left:
// several blunders mislead each other's test.
func (n *network) readmit(f *fit) error {
	for k := 0; k < len(f.suspects) && len(f.suspects) > 1; {
		s := f.suspects[k]
		if s.observation == none || s.kept != leftOut || s.was.Model == nil {
			k++
			continue
		}
		p := n.problem
		p.Observations = slices.Clone(p.Observations)
		p.Observations[s.observation] = s.was
		sol, err := adjust.Solve(p)
		if err != nil {
			return err
		}
		again := &fit{Solution: sol, network: n}
		if _, _, over := again.worst(); over >= 1 {
			k++
			continue
		}
		n.problem, f.Solution = p, sol
		f.suspects = slices.Delete(f.suspects, k, k+1)
	}
	return nil
}

// A trial is an explanation with what it mends.
type trial struct {
	*explanation
	gain float64
}

// explainIron tries every way in which an iron that fits badly may have been read
// wrong as a whole. The one that mends the most is taken, if it mends no less
// than setting aside the worst single reading would, leaves nothing of that iron
// in doubt, and mends clearly more than explaining another iron would.
func (n *network) explainIron(f *fit, worst float64) (bool, error) {
	trials := n.trials(f)
	trials = slices.DeleteFunc(trials, func(t trial) bool { return t.gain < t.least })
	if len(trials) == 0 || trials[0].gain < 0.95*worst*worst {
		return false, nil
	}
	best := trials[0]
	sol, err := adjust.Solve(n.with(best.explanation))
	if err != nil || n.stillBad(sol, best.explanation) {
		return false, err
	}
	twin := (*member)(nil)
	for _, t := range trials[1:] {
		if t.gain < 0.8*best.gain {
			break
		}
		if t.key != best.key {
			return false, nil
		}
		if t.member != best.member {
			twin = t.member
		}
	}
	if twin != nil {
		best.says += fmt.Sprintf(" It may as well be the %s: nothing else tells which of the two.", words(twin))
	}
	n.problem = n.with(best.explanation)
	f.Solution = sol
	f.turned = append(f.turned, best.explanation)
	return true, nil
}

// trials are the explanations of every iron that fits badly, the most mending first.
func (n *network) trials(f *fit) []trial {
	var out []trial
	for _, m := range n.illFitting(f) {
		for _, e := range n.accounts(m) {
			e.key = "iron " + m.base
			out = append(out, trial{e, f.WeightedSquares - f.Reread(n.moved(e))})
		}
	}
	for _, e := range n.exchanges(f) {
		out = append(out, trial{e, f.WeightedSquares - f.Reread(n.moved(e))})
	}
	slices.SortStableFunc(out, func(a, b trial) int { return cmp.Compare(b.gain, a.gain) })
	return out
}

// moved is by how much an explanation moves what was read.
func (n *network) moved(e *explanation) []adjust.Partial {
	var out []adjust.Partial
	for _, i := range slices.Sorted(maps.Keys(e.values)) {
		out = append(out, adjust.Partial{Unknown: i, Slope: e.values[i] - n.problem.Observations[i].Value})
	}
	return out
}

// stillBad reports whether any observation of what was explained is doubtful yet.
func (n *network) stillBad(sol *adjust.Solution, e *explanation) bool {
	l := n.limits(sol)
	for i, t := range n.notes {
		_, put := e.values[i]
		if (put || e.member != nil && t.member == e.member) && math.Abs(sol.Standardised[i]) >= l.of(t, sol.Redundancy[i]) {
			return true
		}
	}
	return false
}

// illFitting lists the irons some observation of whose holes is doubtful, worst first.
func (n *network) illFitting(f *fit) []*member {
	worst := map[*member]float64{}
	for i, t := range n.notes {
		if t.member == nil || t.member.iron == nil || len(t.member.holes) < 2 {
			continue
		}
		if w := math.Abs(f.Standardised[i]); w > 2.5 {
			worst[t.member] = max(worst[t.member], w)
			if t.sort == twin { // either of the pair may be the one
				for _, o := range n.families[t.member.base] {
					worst[o] = max(worst[o], w)
				}
			}
		}
	}
	var out []*member
	for _, m := range n.members {
		if worst[m] > 0 {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(a, b *member) int { return cmp.Compare(worst[b], worst[a]) })
	return out[:min(len(out), mostIrons)]
}

// with is the problem with an explanation's values in place of what was read.
func (n *network) with(e *explanation) adjust.Problem {
	p := n.problem
	p.Observations = slices.Clone(p.Observations)
	for i, v := range e.values {
		p.Observations[i].Value = v
	}
	return p
}

// setAside takes the worst observation, or a reading that cannot be told from
// it where the worst is an assumption, out of the adjustment.
func (n *network) setAside(f *fit, worst int) error {
	s := suspect{observation: worst}
	var alike []int
	for i, w := range f.Standardised {
		if i != worst && math.Abs(w) > 3 && math.Abs(f.Correlation(worst, i)) > alikeAbove {
			alike = append(alike, i)
		}
	}
	if n.notes[worst].sort.assumed() {
		for k, i := range alike {
			if !n.notes[i].sort.assumed() {
				s.observation, alike[k] = i, worst
				break
			}
		}
	}
	s.others = alike
	if r := f.Redundancy[s.observation]; r > 0 {
		s.off = -f.Residuals[s.observation] / r
	}
	s.was = n.problem.Observations[s.observation]
	p := adjust.Without(n.problem, s.observation)
	if rival := n.rival(s); rival != none {
		s.kept, s.others = bothKept, []int{rival}
		p = n.problem
		p.Observations = slices.Clone(p.Observations)
		for _, i := range []int{s.observation, rival} {
			p.Observations[i].Doubt = max(p.Observations[i].Doubt, math.Abs(s.off)/math.Sqrt2)
			p.Observations[i].Sources = nil
		}
	}
	sol, err := adjust.Solve(p)
	if err != nil {
		return err
	}
	n.problem, f.Solution = p, sol
	f.suspects = append(f.suspects, s)
	return nil
}

// rival finds the statement that a suspect statement contradicts, where nothing
// tells the two apart: two copies of one figure.
func (n *network) rival(s suspect) int {
	t := n.notes[s.observation]
	if t.sort != stated {
		return none
	}
	for _, o := range s.others {
		if r := n.notes[o]; r.sort == stated && r.known == t.known && r.line != t.line {
			return o
		}
	}
	return none
}

// words names a member as people say it.
func words(m *member) string {
	name := m.base
	switch {
	case m.iron != nil && m.iron.Name != "":
		name = m.iron.Name
	case m.part != nil && m.part.Name != "":
		name = m.part.Name
	}
	s := lower(name)
	if m.hand != vehicle.Alike {
		s = m.hand.String() + " " + s
	}
	if rows := m.rows(); rows > 1 {
		s += fmt.Sprintf(" %d", m.row+1)
	}
	return s
}

// rows is how many stand in the member's row. One timber of a rim stands for all.
func (m *member) rows() int {
	if m.iron != nil {
		return m.iron.Number
	}
	if m.run == vehicle.Round {
		return 1
	}
	return m.part.Number
}

package adjust

import (
	"math"
	"slices"
)

// inseparable is the correlation of two standardised residuals above which one
// cannot tell which of the two observations is wrong.
const inseparable = 0.95

// A Suspect is an observation that contradicts the rest.
type Suspect struct {
	Observation  int
	Standardised float64 // its residual in standard deviations, when it was found
	Error        float64 // how far its value is off, as far as the rest can tell
	Alike        []int   // others that could as well be the one
}

// Snoop looks for blunders one at a time, worst first, each left out before the next
// is looked for (Baarda's data snooping), and returns them with the fit of the rest.
// The level is the chance that a network without any blunder has one named; it is
// shared out among all readings that others check (Sidak). At the end a reading left
// out early that agrees with all that is left is taken in again.
//
// Several blunders that support each other can mislead it: test what would explain
// them together first, or see Robust.
func Snoop(p Problem, level float64) ([]Suspect, *Solution, error) {
	return SnoopAmong(p, level, func(int) bool { return true })
}

// SnoopAmong is Snoop where only observations for which may is true are left out.
func SnoopAmong(p Problem, level float64, may func(observation int) bool) ([]Suspect, *Solution, error) {
	full := p
	var found []Suspect
	for {
		s, err := Solve(p)
		if err != nil {
			return nil, nil, err
		}
		worst := s.worst(level, may)
		if worst < 0 {
			return s.readmit(full, found, level, may)
		}
		found = append(found, Suspect{
			Observation: worst, Standardised: s.Standardised[worst],
			Error: -s.Residuals[worst] / s.Redundancy[worst], Alike: s.alike(worst, inseparable),
		})
		p = Without(p, worst)
	}
}

// limit is the standardised residual that the worst of all checked readings exceeds
// with the chance level.
func (s *Solution) limit(level float64) float64 {
	n := 0
	for i := range s.Redundancy {
		if s.checks(i) {
			n++
		}
	}
	return critical(-math.Expm1(math.Log1p(-level) / float64(max(n, 1))))
}

// worst is the observation furthest beyond the limit that may be left out, or -1.
func (s *Solution) worst(level float64, may func(int) bool) int {
	worst, most := -1, s.limit(level)
	for i, w := range s.Standardised {
		if math.Abs(w) > most && may(i) {
			worst, most = i, math.Abs(w)
		}
	}
	return worst
}

// readmit takes in again, best first, what agrees with s, the fit without all that
// was found, as long as the whole then agrees.
func (s *Solution) readmit(full Problem, found []Suspect, level float64, may func(int) bool) ([]Suspect, *Solution, error) {
	for {
		best, least := -1, s.limit(level)
		for k, f := range found {
			if w := math.Abs(s.predicted(f.Observation)); w <= least {
				best, least = k, w
			}
		}
		if best < 0 {
			return found, s, nil
		}
		kept := slices.Delete(slices.Clone(found), best, best+1)
		var out []int
		for _, f := range kept {
			out = append(out, f.Observation)
		}
		again, err := Solve(Without(full, out...))
		if err != nil {
			return nil, nil, err
		}
		if again.worst(level, may) >= 0 {
			return found, s, nil
		}
		found, s = kept, again
	}
}

// predicted is how far an observation left out lies from what the others say, in
// standard deviations; 0 where they say nothing of it.
func (s *Solution) predicted(observation int) float64 {
	o := s.problem.Observations[observation]
	t := o.Model(s.X)
	if !s.holds(t.Slopes) {
		return 0
	}
	row := s.scaled(t.Slopes)
	for _, q := range o.Sources {
		row = append(row, Partial{len(s.X) + q.Common, math.Ldexp(q.Slope, -s.design.exp[len(s.X)+q.Common])})
	}
	h := s.factor.half(row)
	return s.Residuals[observation] / math.Sqrt(o.Doubt*o.Doubt+h.dot(h))
}

package adjust

import (
	"math"
	"slices"
)

// checked is the redundancy below which nothing checks a reading: what is left of it
// then is rounding.
const checked = 1e-9

// A Solution is a fitted problem. Its fields are for reading. Observations left out
// keep their place: their residual tells how far off they are, their redundancy is 0.
type Solution struct {
	X      []float64 // the unknowns; one that is not determined stays near its start
	Doubts []float64 // their standard uncertainties; +Inf where not determined

	Residuals    []float64 // adjusted minus observed, the part that is the observation's own
	Redundancy   []float64 // 0: nothing else checks it; 1: fully checked by the others
	Standardised []float64 // residual / its own standard uncertainty; 0 where nothing checks it

	CommonErrors     []float64 // what the common errors came out as
	CommonDoubts     []float64
	CommonRedundancy []float64 // with Redundancy sums to Freedom

	WeightedSquares float64 // sum of squared residuals, each over its doubt
	Freedom         int     // observations more than needed
	Rank            int     // how many independent unknowns are determined
	Iterations      int
	Free            []Direction // one for each unknown that Rank lacks

	problem Problem
	design  *design
	factor  *factor
	inverse *inverse
	moves   [][]int // by unknown: the directions that move it
}

func newSolution(p Problem, w *walk) *Solution {
	n, m := len(p.Start), len(p.Observations)
	s := &Solution{problem: p, design: w.d, factor: w.factor, Iterations: w.steps}
	s.inverse = s.factor.invert()
	s.X, s.CommonErrors = w.x[:n:n], w.x[n:]
	s.Rank = s.factor.rank - len(p.Common)
	s.findFree()
	doubts := make([]float64, len(w.x))
	for j := range doubts {
		doubts[j] = s.doubt(j)
	}
	s.Doubts, s.CommonDoubts = doubts[:n:n], doubts[n:]
	s.checkRows(m)
	return s
}

func (s *Solution) doubt(j int) float64 {
	if len(s.moves[j]) > 0 {
		return math.Inf(1)
	}
	return math.Ldexp(math.Sqrt(s.inverse.diag[s.factor.at[j]].hi), -s.design.exp[j])
}

// checkRows fills in what concerns each observation.
func (s *Solution) checkRows(m int) {
	red := make([]float64, len(s.design.miss))
	for i := range red {
		if s.design.left[i] {
			continue
		}
		s.Freedom++
		s.WeightedSquares += s.design.miss[i] * s.design.miss[i]
		red[i] = math.Max(0, 1-s.factor.share(s.inverse, s.design, i)) // below zero is rounding
	}
	s.Freedom -= s.factor.rank
	s.Redundancy, s.CommonRedundancy = red[:m:m], red[m:]
	s.Residuals, s.Standardised = make([]float64, m), make([]float64, m)
	for i, o := range s.problem.Observations {
		if o.left {
			s.Residuals[i] = s.model(i) - o.Value
			continue
		}
		v := -s.design.miss[i]
		s.Residuals[i] = v * o.Doubt
		if red[i] > checked {
			s.Standardised[i] = v / math.Sqrt(red[i])
		}
	}
}

// model is what observation i should have read, common errors and all.
func (s *Solution) model(i int) float64 {
	o := s.problem.Observations[i]
	v := o.Model(s.X).Value
	for _, q := range o.Sources {
		v += q.Slope * s.CommonErrors[q.Common]
	}
	return v
}

// row is row i of the design as a sparse vector.
func (d *design) row(i int) []Partial {
	var out []Partial
	for e := d.first[i]; e < d.first[i+1]; e++ {
		out = append(out, Partial{d.col[e], d.val[e]})
	}
	return out
}

// Determined says whether the observations hold the unknown.
func (s *Solution) Determined(unknown int) bool {
	return s.has(unknown) && len(s.moves[unknown]) == 0
}

func (s *Solution) has(unknown int) bool { return unknown >= 0 && unknown < len(s.X) }

// Covariance is that of two unknowns: the variance where they are one. It is +Inf for
// the variance of an unknown that is not determined, and NaN where a covariance has
// no meaning because one of the two is not; DoubtOf tells what can be said of such.
func (s *Solution) Covariance(i, j int) float64 {
	switch {
	case !s.has(i) || !s.has(j):
		return math.NaN()
	case i == j && !s.Determined(i):
		return math.Inf(1)
	case !s.Determined(i) || !s.Determined(j):
		return math.NaN()
	}
	e := -s.design.exp[i] - s.design.exp[j]
	if z, found := s.factor.entry(s.inverse, s.factor.at[i], s.factor.at[j]); found {
		return math.Ldexp(z.hi, e)
	}
	a, b := s.factor.half([]Partial{{i, 1}}), s.factor.half([]Partial{{j, 1}})
	return math.Ldexp(a.dot(b), e)
}

// DoubtOf is the standard uncertainty of a function of the unknowns, by its
// gradient; +Inf where the observations do not hold it. The function may be held
// even where the unknowns in it are not, as a distance between two free points may.
func (s *Solution) DoubtOf(t Term) float64 {
	for _, p := range t.Slopes {
		if !s.has(p.Unknown) || !finite(p.Slope) {
			return math.NaN()
		}
	}
	if len(t.Slopes) == 1 && t.Slopes[0].Slope != 0 {
		return math.Abs(t.Slopes[0].Slope) * s.Doubts[t.Slopes[0].Unknown]
	}
	if !s.holds(t.Slopes) {
		return math.Inf(1)
	}
	h := s.factor.half(s.scaled(t.Slopes))
	return math.Sqrt(h.dot(h))
}

// scaled brings a gradient to scaled unknowns.
func (s *Solution) scaled(t []Partial) []Partial {
	t = slices.Clone(t)
	for k, p := range t {
		t[k].Slope = math.Ldexp(p.Slope, -s.design.exp[p.Unknown])
	}
	return t
}

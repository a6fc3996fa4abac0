package adjust

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// PosteriorVariance is the weighted squares for each degree of freedom: about 1 where
// the doubts given were honest. Without freedom it has no meaning and is NaN.
func (s *Solution) PosteriorVariance() float64 {
	if s.Freedom == 0 {
		return math.NaN()
	}
	return s.WeightedSquares / float64(s.Freedom)
}

// A Verdict is what the global test says of a whole network.
type Verdict int

// What the global test can say.
const (
	Untested     Verdict = iota // no observation more than needed
	Agrees                      // residuals are as large as the doubts lead to expect
	TooScattered                // larger: a blunder, a wrong model or doubts too small
	TooQuiet                    // smaller: doubts too large, or copied readings
)

// GlobalTest compares the weighted squares with chi-square, both tails together
// having the probability level, and returns the limits between which they agree.
func (s *Solution) GlobalTest(level float64) (verdict Verdict, low, high float64) {
	if s.Freedom <= 0 || !(level > 0 && level < 1) {
		return Untested, 0, math.Inf(1)
	}
	chi := distuv.ChiSquared{K: float64(s.Freedom)}
	low, high = chi.Quantile(level/2), chi.Quantile(1-level/2)
	switch {
	case s.WeightedSquares > high:
		return TooScattered, low, high
	case s.WeightedSquares < low:
		return TooQuiet, low, high
	}
	return Agrees, low, high
}

// LeastNoticed is the smallest error of an observation that a test of its
// standardised residual at the level notices with the given power (both as
// probabilities): W. Baarda, "A testing procedure for use in geodetic networks",
// Netherlands Geodetic Commission, 1968. It is +Inf where nothing checks it.
func (s *Solution) LeastNoticed(observation int, level, power float64) float64 {
	if !s.checks(observation) {
		return math.Inf(1)
	}
	shift := critical(level) + distuv.UnitNormal.Quantile(math.Min(math.Max(power, 0), 1))
	return math.Max(0, shift) * s.problem.Observations[observation].Doubt / math.Sqrt(s.Redundancy[observation])
}

// critical is what a standard normal variable stays below in size, but for the level.
func critical(level float64) float64 {
	return -distuv.UnitNormal.Quantile(math.Min(math.Max(level, 0), 1) / 2)
}

// checks says whether other observations check this one.
func (s *Solution) checks(observation int) bool {
	return observation >= 0 && observation < len(s.Redundancy) && s.Redundancy[observation] > checked
}

// Correlation is that of two observations' standardised residuals; 0 where nothing
// checks one of them. Near 1 or -1, an error in one looks like an error in the other.
func (s *Solution) Correlation(a, b int) float64 {
	if !s.checks(a) || !s.checks(b) {
		return 0
	}
	if a == b {
		return 1
	}
	ha, hb := s.factor.half(s.design.row(a)), s.factor.half(s.design.row(b))
	return s.correlated(a, b, ha.dot(hb))
}

// correlated makes a correlation of the share that two rows have in each other.
func (s *Solution) correlated(a, b int, share float64) float64 {
	return math.Max(-1, math.Min(1, -share/math.Sqrt(s.Redundancy[a]*s.Redundancy[b])))
}

// alike lists the observations whose standardised residuals go with this one's more
// closely than the limit.
func (s *Solution) alike(observation int, limit float64) []int {
	d := s.design
	b := make([]twofold, d.n)
	for _, p := range d.row(observation) {
		b[p.Unknown].hi = p.Slope
	}
	y := s.factor.solve(b)
	var out []int
	for i := range s.Redundancy {
		if i == observation || !s.checks(i) {
			continue
		}
		if math.Abs(s.correlated(observation, i, d.across(i, y))) > limit {
			out = append(out, i)
		}
	}
	return out
}

// across is row i times y, both scaled.
func (d *design) across(i int, y []float64) float64 {
	t := 0.0
	for e := d.first[i]; e < d.first[i+1]; e++ {
		t += d.val[e] * y[d.col[e]]
	}
	return t
}

// bare is the share of an unknown's doubt that is only rounding.
const bare = 1e-9

// Influence is how far each determined unknown moves when the observation does by
// one. Unknowns it moves by nothing but rounding are left out.
func (s *Solution) Influence(observation int) []Partial {
	if observation < 0 || observation >= len(s.Redundancy) || s.design.left[observation] {
		return nil
	}
	doubt := s.problem.Observations[observation].Doubt
	b := make([]twofold, s.design.n)
	for _, p := range s.design.row(observation) {
		b[p.Unknown].hi = p.Slope
	}
	var out []Partial
	for j, y := range s.factor.solve(b) {
		if j >= len(s.X) || !s.Determined(j) {
			continue
		}
		if move := math.Ldexp(y, -s.design.exp[j]); math.Abs(move) > bare*s.Doubts[j] {
			out = append(out, Partial{j, move / doubt})
		}
	}
	return out
}

// Gain is how far the unknown moves when each observation does by one: here the
// entries go by observation, not by unknown. Observations that move it by nothing but
// rounding are left out, and all are where it is not determined. The squares of slope
// times doubt are the shares of the observations' own errors in its variance.
func (s *Solution) Gain(unknown int) []Partial {
	if !s.Determined(unknown) {
		return nil
	}
	b := make([]twofold, s.design.n)
	b[unknown].hi = 1
	y := s.factor.solve(b)
	var out []Partial
	for i := range s.Residuals {
		move := math.Ldexp(s.design.across(i, y), -s.design.exp[unknown])
		if math.Abs(move) > bare*s.Doubts[unknown] {
			out = append(out, Partial{i, move / s.problem.Observations[i].Doubt})
		}
	}
	return out
}

package adjust

import (
	"math"
	"slices"
)

const (
	huberFrom  = 1.5  // standard deviations from which Huber's weights fall
	danishFrom = 3.0  // from which the Danish method's do
	leastShare = 1e-8 // a weight never falls to nothing, so that the rank stays
	rounds     = 40
)

// Robust fits p with weights that fall with the size of the residual, and returns
// the weight that each observation kept: 1 for what agrees, near 0 for what does
// not, 0 for what was left out before. It points at several blunders at once; leave
// them out and solve again, since the doubts of this fit are not those of either.
//
// Weights fall as P. J. Huber's (k = 1.5) until they settle, then as those of the
// Danish method (T. Krarup, J. Juhl, K. Kubik, "Götterdämmerung over least squares
// adjustment", ISPRS 1980), which let go of blunders altogether.
func Robust(p Problem) (fit *Solution, weights []float64, err error) {
	first, err := Solve(p)
	if err != nil {
		return nil, nil, err
	}
	fit, weights = first, slices.Repeat([]float64{1}, len(p.Observations))
	for _, law := range []func(float64) float64{huber, danish} {
		for range rounds {
			next := first.reweigh(fit, law)
			change := 0.0
			for i := range next {
				change = math.Max(change, math.Abs(next[i]-weights[i]))
			}
			weights = next
			if fit, err = Solve(p.weighted(fit.X, weights)); err != nil {
				return nil, nil, err
			}
			if change < 1e-4 {
				break
			}
		}
	}
	for i, o := range p.Observations {
		if o.left {
			weights[i] = 0
		}
	}
	return fit, weights, nil
}

func huber(u float64) float64 { return math.Min(1, huberFrom/u) }

func danish(u float64) float64 {
	return math.Min(1, math.Exp(1-(u/danishFrom)*(u/danishFrom)))
}

// reweigh finds weights from the residuals of fit, which count by the redundancy
// that s, the fit without any, found.
func (s *Solution) reweigh(fit *Solution, law func(u float64) float64) []float64 {
	w := slices.Repeat([]float64{1}, len(s.Residuals))
	for i := range w {
		if s.checks(i) {
			u := math.Abs(fit.Residuals[i]) / (s.problem.Observations[i].Doubt * math.Sqrt(s.Redundancy[i]))
			w[i] = math.Max(leastShare, law(u))
		}
	}
	return w
}

// weighted is p with each observation's weight multiplied, starting from x.
func (p Problem) weighted(x, weights []float64) Problem {
	p.Start, p.Observations = x, slices.Clone(p.Observations)
	for i := range p.Observations {
		p.Observations[i].Doubt /= math.Sqrt(weights[i])
	}
	return p
}

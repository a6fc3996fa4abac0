package adjust

import "math"

// Makeup is what makes up the doubt of a function of the unknowns, by its gradient:
// how far the function moves when an observation's own error, or a common error, is
// one standard uncertainty. Their squares sum to the square of DoubtOf. Both are nil
// where the observations do not hold the function.
func (s *Solution) Makeup(t Term) (own, common []float64) {
	y := s.response(t)
	if y == nil {
		return nil, nil
	}
	all := make([]float64, len(s.design.miss))
	for i := range all {
		all[i] = s.design.across(i, y)
	}
	m := len(s.Residuals)
	return all[:m:m], all[m:]
}

// Covariances are those of a function of the unknowns, by its gradient, with every
// unknown; nil where the observations do not hold it. Summed with the gradient of
// another function that they hold, they give the covariance of the two; for an
// unknown that is not determined an entry has no meaning of its own.
func (s *Solution) Covariances(t Term) []float64 {
	y := s.response(t)
	if y == nil {
		return nil
	}
	out := make([]float64, len(s.X))
	for j := range out {
		out[j] = math.Ldexp(y[j], -s.design.exp[j])
	}
	return out
}

// response solves the normal equations for a gradient, scaled; nil where nothing
// holds the function.
func (s *Solution) response(t Term) []float64 {
	for _, p := range t.Slopes {
		if !s.has(p.Unknown) || !finite(p.Slope) {
			return nil
		}
	}
	if !s.holds(t.Slopes) {
		return nil
	}
	b := make([]twofold, s.design.n)
	for _, p := range s.scaled(t.Slopes) {
		b[p.Unknown].hi = p.Slope
	}
	return s.factor.solve(b)
}

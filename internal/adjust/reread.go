package adjust

// Reread is the weighted squares that the fit would have were the values of some
// observations moved by so much (entries go by observation, as those of Gain), with
// no new factor: exact where models are straight, near enough elsewhere to tell which
// of many accounts of a blunder mends the most. Observations left out do not count.
func (s *Solution) Reread(moved []Partial) float64 {
	miss := append([]float64(nil), s.design.miss...)
	for _, p := range moved {
		if p.Unknown >= 0 && p.Unknown < len(s.Residuals) && !s.design.left[p.Unknown] {
			miss[p.Unknown] += p.Slope / s.problem.Observations[p.Unknown].Doubt
		}
	}
	pull := s.design.pull(miss)
	squares := 0.0
	for _, v := range miss {
		squares += v * v
	}
	for j, y := range s.factor.solve(pull) {
		squares -= y * pull[j].hi
	}
	return squares
}

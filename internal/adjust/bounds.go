package adjust

import (
	"math"
	"slices"
)

// A Bound is a window: Model(x) lies between Low and High, either of which may be
// infinite. Inside, it says nothing; outside, it pulls as an observation of its
// nearer edge with the standard uncertainty Doubt, which says how sharp the edges are.
type Bound struct {
	Low, High, Doubt float64
	Model            func(x []float64) Term
	Sources          []Source
}

// A Side says where a window's value came to lie.
type Side int

// The sides of a window.
const (
	Inside Side = iota // the window says nothing
	AtLow              // the low edge holds it
	AtHigh             // the high edge holds it
)

// SolveBounded fits p within windows. The solution has an observation for each
// window after those of p, left out where the value lies inside. An unknown that
// windows alone speak of is not determined while it lies inside them.
func SolveBounded(p Problem, bounds []Bound) (*Solution, []Side, error) {
	sides := make([]Side, len(bounds))
	for i, b := range bounds {
		if err := b.check(i); err != nil {
			return nil, nil, err
		}
		if b.Low == b.High {
			sides[i] = AtLow
		}
	}
	const together, most = 20, 200
	q := p
	for round := range most {
		q.Observations = slices.Clone(p.Observations)
		for i, b := range bounds {
			q.Observations = append(q.Observations, b.edge(sides[i]))
		}
		s, err := Solve(q)
		if err != nil {
			return nil, nil, err
		}
		moved := false
		for i, b := range bounds {
			if side := b.side(s.model(len(p.Observations)+i), sides[i]); side != sides[i] {
				sides[i], moved = side, true
				if round >= together {
					break // one at a time cannot go in a circle
				}
			}
		}
		if !moved {
			return s, sides, nil
		}
		q.Start = s.X
	}
	return nil, nil, &ConvergenceError{Iterations: most}
}

func (b Bound) check(i int) error {
	switch {
	case b.Model == nil:
		return &InputError{Window, i, NoModel, 0}
	case !finite(b.Doubt) || b.Doubt <= 0:
		return &InputError{Window, i, DoubtNotAboveZero, b.Doubt}
	case math.IsNaN(b.Low) || math.IsInf(b.Low, 1):
		return &InputError{Window, i, NotFinite, b.Low}
	case math.IsNaN(b.High) || math.IsInf(b.High, -1):
		return &InputError{Window, i, NotFinite, b.High}
	case b.Low > b.High:
		return &InputError{Window, i, EdgesCrossed, b.Low}
	}
	return nil
}

// edge is the observation that a window makes.
func (b Bound) edge(side Side) Observation {
	o := Observation{Value: b.Low, Doubt: b.Doubt, Model: b.Model, Sources: b.Sources}
	switch side {
	case Inside:
		o.Value, o.left = 0, true
	case AtHigh:
		o.Value = b.High
	}
	return o
}

// side is where v lies in the window. An edge that just touches keeps its hold.
func (b Bound) side(v float64, was Side) Side {
	touch := 1e-9*b.Doubt + 0x1p-50*math.Abs(v)
	switch {
	case b.Low == b.High:
		return AtLow
	case v < b.Low-touch || was == AtLow && v <= b.Low+touch:
		return AtLow
	case v > b.High+touch || was == AtHigh && v >= b.High-touch:
		return AtHigh
	}
	return Inside
}

package adjust

import (
	"cmp"
	"math"
	"slices"
)

// An Observation says that Model(x) was observed as Value, with the standard
// uncertainty Doubt, which is finite and above zero.
type Observation struct {
	Value, Doubt float64
	Model        func(x []float64) Term
	Sources      []Source // its shares in errors it has in common with others; may be empty

	left bool // left out of the fit, but keeps its number
}

// A Source is an observation's share in a common error: Value was observed as
// Model(x) + Slope e + its own error, with one e for all that share it.
type Source struct {
	Common int // index in Problem.Common
	Slope  float64
}

// A Problem is a network to fit.
type Problem struct {
	Start        []float64 // starting values, one for each unknown
	Observations []Observation
	Common       []float64 // standard uncertainty of each common error, whose mean is zero
}

// Linear is the model constant + sum of slope times unknown. Slopes may come in any
// order; those of one unknown are added.
func Linear(constant float64, slopes ...Partial) func(x []float64) Term {
	sorted := slices.Clone(slopes)
	slices.SortStableFunc(sorted, func(a, b Partial) int { return cmp.Compare(a.Unknown, b.Unknown) })
	kept := sorted[:0]
	for _, p := range sorted {
		if k := len(kept) - 1; k >= 0 && kept[k].Unknown == p.Unknown {
			kept[k].Slope = cancel(kept[k].Slope, p.Slope)
			continue
		}
		kept = append(kept, p)
	}
	kept = slices.DeleteFunc(kept, func(p Partial) bool { return p.Slope == 0 })
	return func(x []float64) Term {
		v := constant
		for _, p := range kept {
			if p.Unknown < 0 || p.Unknown >= len(x) {
				v = math.NaN() // Solve reports the unknown
				break
			}
			v += p.Slope * x[p.Unknown]
		}
		return Term{v, kept}
	}
}

// Without is p with some observations left out of the fit. The others keep their
// numbers; an observation left out still gets a residual, with redundancy zero.
// Numbers that p does not have are passed over.
func Without(p Problem, dropped ...int) Problem {
	p.Observations = slices.Clone(p.Observations)
	for _, i := range dropped {
		if i >= 0 && i < len(p.Observations) {
			p.Observations[i].left = true
		}
	}
	return p
}

// check finds what no fit could be made from.
func (p Problem) check() error {
	for i, v := range p.Start {
		if !finite(v) {
			return &InputError{Start, i, NotFinite, v}
		}
	}
	for i, d := range p.Common {
		if !finite(d) || d <= 0 {
			return &InputError{CommonError, i, DoubtNotAboveZero, d}
		}
	}
	for i, o := range p.Observations {
		switch {
		case o.Model == nil:
			return &InputError{Reading, i, NoModel, 0}
		case !finite(o.Value):
			return &InputError{Reading, i, NotFinite, o.Value}
		case !finite(o.Doubt) || o.Doubt <= 0:
			return &InputError{Reading, i, DoubtNotAboveZero, o.Doubt}
		}
		for _, s := range o.Sources {
			if s.Common < 0 || s.Common >= len(p.Common) {
				return &InputError{Reading, i, NoSuchCommon, float64(s.Common)}
			}
			if !finite(s.Slope) {
				return &InputError{Reading, i, NotFinite, s.Slope}
			}
		}
	}
	return nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

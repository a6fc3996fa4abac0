package wheel

import (
	"errors"

	"lostwood/parts"
)

// limits gathers the faults of a wheel.
type limits struct{ faults []error }

func (l *limits) sound() bool { return len(l.faults) == 0 }

func (l *limits) all() error { return errors.Join(l.faults...) }

func (l *limits) need(figure string, got, lo, hi Length, why string) {
	const rounding = 1e-9
	if got >= lo-rounding && got <= hi+rounding { // false for NaN
		return
	}
	l.faults = append(l.faults, &parts.LimitError{Part: "wheel", Dimension: figure, Got: got, Min: lo, Max: hi, Why: why})
}

// may is for an optional figure: nothing is the matter where it is absent.
func (l *limits) may(figure string, got, lo, hi Length, why string) {
	if got != 0 {
		l.need(figure, got, lo, hi, why)
	}
}

func (l *limits) count(figure string, got, lo, hi int, why string) {
	if got < lo || got > hi {
		l.faults = append(l.faults, &parts.LimitError{
			Part: "wheel", Dimension: figure, Got: Length(got), Min: Length(lo), Max: Length(hi), Why: why, In: parts.InCount,
		})
	}
}

func (l *limits) degrees(figure string, got, lo, hi Angle, why string) {
	if !(got >= lo && got <= hi) {
		l.faults = append(l.faults, &parts.LimitError{
			Part: "wheel", Dimension: figure, Got: Length(got.Degrees()), Min: Length(lo.Degrees()), Max: Length(hi.Degrees()),
			Why: why, In: parts.InDegrees,
		})
	}
}

// A Fault is something about a wheel that cannot be, told in a sentence with its numbers.
type Fault struct {
	Figure string // the figure to change: "dish-built"
	Says   string
}

// Error reads as a sentence.
func (f *Fault) Error() string { return "wheel: " + f.Says }

func (l *limits) tell(figure, says string) { l.faults = append(l.faults, &Fault{figure, says}) }

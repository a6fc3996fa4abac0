package parts

import (
	"errors"
	"fmt"
)

// A LimitError names a dimension that cannot be made, its value and the limits.
type LimitError struct {
	Part      string // the kind, or the part's name once it is known
	Dimension string // as the survey writes it: "deep", "fastening 12 diameter"
	Got       Length
	Min, Max  Length
	Why       string   // what the limit comes from, where that is not plain
	In        Measured // a count stands in Got, Min and Max as a plain number, an angle in degrees
}

// Error reads as a sentence, in millimetres and inches.
func (e *LimitError) Error() string {
	s := fmt.Sprintf("%s is %s; it can be %s to %s",
		e.Dimension, e.told(e.Got), e.told(e.Min), e.told(e.Max))
	if e.Max < e.Min {
		s = fmt.Sprintf("%s is %s; there is no room for it at all", e.Dimension, e.told(e.Got))
	}
	if e.Part != "" {
		s = e.Part + ": " + s
	}
	if e.Why != "" {
		s += " (" + e.Why + ")"
	}
	return s
}

func (e *LimitError) told(l Length) string {
	switch e.In {
	case InCount:
		return fmt.Sprintf("%.0f", float64(l))
	case InDegrees:
		return fmt.Sprintf("%.4g degrees", float64(l))
	}
	return fmt.Sprintf("%.1f mm (%.3g in)", l.Millimetres(), l.Inches())
}

// within reports got where it is not from lo to hi; NaN never is.
func within(dimension string, got, lo, hi Length, why string) error {
	if got >= lo && got <= hi {
		return nil
	}
	return &LimitError{Dimension: dimension, Got: got, Min: lo, Max: hi, Why: why}
}

// limits gathers the faults of one part.
type limits struct {
	part   string
	faults []error
}

func (l *limits) need(dimension string, got, lo, hi Length, why string) {
	l.add(within(dimension, got, lo, hi, why))
}

// may is for an optional dimension: nothing is the matter where it is absent.
func (l *limits) may(dimension string, got, lo, hi Length, why string) {
	if got != 0 {
		l.need(dimension, got, lo, hi, why)
	}
}

func (l *limits) count(dimension string, got, lo, hi int, why string) {
	if got < lo || got > hi {
		l.add(&LimitError{
			Dimension: dimension, Got: Length(got), Min: Length(lo), Max: Length(hi), Why: why, In: InCount,
		})
	}
}

// add takes in an error, taken apart where it is a joined one.
func (l *limits) add(err error) {
	for _, e := range taken(err) {
		if f, ok := errors.AsType[*LimitError](e); ok && f.Part == "" {
			named := *f
			named.Part = l.part
			e = &named
		}
		l.faults = append(l.faults, e)
	}
}

func taken(err error) []error {
	if err == nil {
		return nil
	}
	if j, ok := err.(interface{ Unwrap() []error }); ok {
		var out []error
		for _, e := range j.Unwrap() {
			out = append(out, taken(e)...)
		}
		return out
	}
	return []error{err}
}

func (l *limits) all() error { return errors.Join(l.faults...) }

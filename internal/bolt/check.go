package bolt

import (
	"errors"
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// shortest and longest bound what any part of a vehicle's bolt can be.
const (
	shortest = inch / 32
	longest  = 3 * quantity.Metre
)

// slack is how far readings of a worn bolt may disagree, besides their doubts,
// before they are held to contradict each other (own rule).
const slack = inch / 16

// A SizeError is a reading of a bolt that cannot be used.
type SizeError struct {
	Field string // what was read: "length", "thread", "nut", "washer", "proud", "diameter"
	Got   Length // what was given; zero where it was not
	Found string // what is wrong with it
	Want  string // what would do
}

func (e *SizeError) Error() string { return e.Field + " " + e.Found + "; " + e.Want }

// Check reports every reading of r that is no size, and readings that cannot all
// be of one bolt with its nut on. Each is a *[SizeError]; nil means that [Grip]
// has an answer.
func Check(r Read) error {
	var faults []error
	add := func(err error) {
		if err != nil {
			faults = append(faults, err)
		}
	}
	add(size("diameter", r.Diameter, thinnest, thickest))
	if r.Length == nil {
		add(&SizeError{Field: "length", Found: "was not read", Want: "measure it from under the head to the end of the thread"})
	}
	for _, m := range []struct {
		field string
		read  *Measure
		least Length
	}{
		{"length", r.Length, shortest},
		{"thread", r.Thread, shortest},
		{"nut", r.Nut, shortest},
		{"washer", r.Washer, 0},
		{"proud", r.Proud, 0},
	} {
		if m.read != nil {
			add(size(m.field, m.read.Value, m.least, longest))
			add(size(m.field+", give or take", m.read.Doubt, 0, longest))
		}
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	add(threadFits(r))
	add(nutFits(r))
	return errors.Join(faults...)
}

// size refuses what is no number, or not from least to most.
func size(field string, got, least, most Length) error {
	e := &SizeError{Field: field, Got: got, Want: fmt.Sprintf("it can be %s to %s", told(least), told(most))}
	switch {
	case got >= least && got <= most:
		return nil
	case math.IsNaN(float64(got)):
		e.Found = "is not a number"
	case got < 0:
		e.Found = fmt.Sprintf("is %s, less than nothing", told(got))
	case got < least:
		e.Found = fmt.Sprintf("is %s, too little", told(got))
	default:
		e.Found = fmt.Sprintf("is %s, too much", told(got))
	}
	return e
}

// told gives a length in both units, for people who may have written either.
func told(l Length) string {
	if math.IsInf(float64(l), 0) {
		return "without end"
	}
	return fmt.Sprintf("%s (%s)", quantity.Format(l, quantity.Inches), quantity.Format(l, quantity.Millimetres))
}

// threadFits refuses a thread that is longer than its bolt, or too short to
// hold what is known to have been on it.
func threadFits(r Read) error {
	if r.Thread == nil {
		return nil
	}
	s := stackOf(r)
	t := r.Thread.Value
	e := &SizeError{Field: "thread", Got: t, Want: "measure the thread, its nut and what stands past the nut again"}
	switch held := s.proud.Value + s.nut.Min; {
	case t > s.length.Value+slack+2*doubt(s.thread, s.length):
		e.Found = fmt.Sprintf("is %s, longer than the bolt's %s", told(t), told(s.length.Value))
	case held > t+runOut(r.Diameter)+slack+2*doubt(s.thread, s.proud, s.nutRead):
		e.Found = fmt.Sprintf("is %s, too short for the nut and what stands past it, %s", told(t), told(held))
	default:
		return nil
	}
	return e
}

// nutFits refuses a bolt with no room on it for wood.
func nutFits(r Read) error {
	s := stackOf(r)
	if s.oneReading() > 0 {
		return nil
	}
	return &SizeError{
		Field: "length", Got: s.length.Value,
		Found: fmt.Sprintf("is %s, all taken up by the nut, the washers and what stands past the nut", told(s.length.Value)),
		Want:  "measure them again: nothing is left between head and nut",
	}
}

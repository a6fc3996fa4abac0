package timber

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
)

// An UnknownError is the name of a wood, or a place, that is not in the list.
type UnknownError struct {
	What string   // what was looked for: wood, place
	Name string   // as asked for
	Near []string // names in the list that come nearest, best first
}

func (e *UnknownError) Error() string {
	text := fmt.Sprintf("%s %s is not in the list", e.What, quantity.Quote(e.Name))
	if len(e.Near) > 0 {
		text += "; the nearest there: " + strings.Join(e.Near, ", ")
	}
	return text + "; or give its own figures"
}

// An AmbiguousError is a name that more than one wood goes by.
type AmbiguousError struct {
	Name  string
	Could []string // each with its botanical name
}

func (e *AmbiguousError) Error() string {
	return fmt.Sprintf("%s could be %s; write the one meant, or its botanical name",
		quantity.Quote(e.Name), strings.Join(e.Could, ", or "))
}

// A NoFigureError is a figure nobody has for a wood, and what would do instead.
type NoFigureError struct {
	Wood string
	Need string // the figure that is missing
	Want string // what would do
}

func (e *NoFigureError) Error() string {
	return fmt.Sprintf("%s: %s not found in any source here; %s", e.Wood, e.Need, e.Want)
}

// A RangeError is a number outside what can be worked with.
type RangeError struct {
	What     string // with its unit
	Got      float64
	Min, Max float64 // what would be accepted; infinite where open, the least float64 for above 0
	Want     string  // what would do, where the bounds do not say it
}

func (e *RangeError) Error() string {
	text := fmt.Sprintf("%s: %.6g; it must be a number", e.What, e.Got)
	lo, hi := !math.IsInf(e.Min, -1), !math.IsInf(e.Max, 1)
	switch {
	case lo && e.Min == math.SmallestNonzeroFloat64:
		text = fmt.Sprintf("%s: %.6g; it must be above 0", e.What, e.Got)
	case lo && hi:
		text = fmt.Sprintf("%s: %.6g; it must lie between %.6g and %.6g", e.What, e.Got, e.Min, e.Max)
	case lo:
		text = fmt.Sprintf("%s: %.6g; it must be %.6g or more", e.What, e.Got, e.Min)
	case hi:
		text = fmt.Sprintf("%s: %.6g; it must be %.6g or less", e.What, e.Got, e.Max)
	}
	if e.Want != "" {
		text += "; " + e.Want
	}
	return text
}

// within returns a RangeError unless got lies from lo to hi and is a number.
func within(what string, got, lo, hi float64) error {
	if got >= lo && got <= hi && !math.IsInf(got, 0) { // false for NaN
		return nil
	}
	return &RangeError{What: what, Got: got, Min: lo, Max: hi}
}

// positive returns a RangeError unless got is a number above nothing.
func positive(what string, got float64) error {
	if got > 0 && !math.IsInf(got, 0) {
		return nil
	}
	return &RangeError{What: what, Got: got, Min: math.SmallestNonzeroFloat64, Max: math.Inf(1)}
}

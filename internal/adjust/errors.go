package adjust

import "fmt"

// A Place says which list of a Problem a fault stands in.
type Place int

// The lists of a Problem.
const (
	Start Place = iota
	Reading
	CommonError
	Window
)

// String returns the word for l.
func (l Place) String() string {
	switch l {
	case Start:
		return "starting value"
	case Reading:
		return "observation"
	case CommonError:
		return "common error"
	case Window:
		return "window"
	}
	return "place"
}

// A Fault says what is wrong with an entry of a Problem.
type Fault int

// What can be wrong.
const (
	NotFinite         Fault = iota // a value or slope is infinite or not a number
	DoubtNotAboveZero              // a doubt is zero, negative, infinite or not a number
	NoModel                        // an observation has no model
	NoSuchUnknown                  // a slope's unknown is not in the problem
	NoSuchCommon                   // a source's common error is not in the problem
	SlopesDisordered               // slopes do not rise by unknown
	EdgesCrossed                   // a window's low edge is above its high one
)

// String returns the words for f.
func (f Fault) String() string {
	switch f {
	case NotFinite:
		return "is not a finite number"
	case DoubtNotAboveZero:
		return "is no doubt; a finite number above zero would do"
	case NoModel:
		return "has no model"
	case NoSuchUnknown:
		return "is no unknown of the problem"
	case NoSuchCommon:
		return "is no common error of the problem"
	case SlopesDisordered:
		return "comes out of order among the slopes; unknowns must rise"
	case EdgesCrossed:
		return "is the low edge, above the high one"
	}
	return "cannot be used"
}

// An InputError names the entry of a Problem that no fit can be made from.
type InputError struct {
	Place Place
	Index int // in its list
	Fault Fault
	Got   float64
}

func (e *InputError) Error() string {
	if e.Fault == NoModel {
		return fmt.Sprintf("%v %d %v", e.Place, e.Index, e.Fault)
	}
	return fmt.Sprintf("%v %d: %g %v", e.Place, e.Index, e.Got, e.Fault)
}

// A ConvergenceError says that the steps did not settle. Starting values nearer the
// truth would do.
type ConvergenceError struct {
	Iterations int
	Unknown    int     // the one that moved most in the last step, against its doubt
	Step       float64 // how far it moved
}

func (e *ConvergenceError) Error() string {
	return fmt.Sprintf("no fit found in %d steps: unknown %d still moves by %g; starting values nearer the truth would do",
		e.Iterations, e.Unknown, e.Step)
}

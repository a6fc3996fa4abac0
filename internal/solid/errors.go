package solid

import "fmt"

// A ShapeError tells of a piece of a volume that cannot be made.
type ShapeError struct {
	Where string // which piece of the volume, counted from 1, as in "cut 2: prism"
	Found string
	Want  string
}

func (e *ShapeError) Error() string {
	return fmt.Sprintf("%s: %s; %s", e.Where, e.Found, e.Want)
}

// An EndlessError tells of a volume that goes on for ever.
type EndlessError struct {
	Along string // the axis, "x", "y" or "z"
}

func (e *EndlessError) Error() string {
	return fmt.Sprintf("the piece never ends along %s; give its prism both ends, or cut it off with a plane", e.Along)
}

// A NothingError tells of a volume with no wood in it.
type NothingError struct{}

func (*NothingError) Error() string {
	return "nothing is left of the piece: its cuts take all the wood, or its parts do not meet"
}

package vehicle

import (
	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
)

// A Wheel is one wheel of the vehicle in its place, with what makes it.
type Wheel struct {
	ID    string // as the survey writes it, with its hand: "near-fore-wheel"
	Name  string // as people say it
	Hand  Hand
	Spec  wheel.Spec
	Sizes []Dimension // figures of the Spec by their names, with give or take and how known
	// Place puts the wheel's frame into the vehicle: where the nave's origin
	// stands, and the wheel's axes; the second runs out along the axle arm. It
	// holds the arm's cant and gather. Nil where nothing places it.
	Place *Place
	Parts []*Part // the timbers it is made of: nave, spokes, felloes; those there are
	Tyre  *Iron   // nil where none survives
	Irons []*Iron // bands, box, linchpin
}

// A Disc is the room a wheel takes up: a short round of this radius, half its
// width to either side of its centre along the axis.
type Disc struct {
	Centre [3]quantity.Length
	Axis   [3]float64 // out from the vehicle, of length one
	Radius quantity.Length
	Wide   quantity.Length
}

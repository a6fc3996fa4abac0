package parts

import "lostwood/parts/form"

// Work is the kind of work a feature is.
type Work int

// The kinds of work, in the order a joiner does them.
const (
	Boring Work = iota
	Mortising
	LettingIn // housings and grooves
	Notching
	Tenoning
	Chamfering
	Rounding
)

// String is the word for the work in lists.
func (w Work) String() string {
	return [...]string{"bore", "mortise", "house", "notch", "tenon", "chamfer", "round"}[w]
}

// A Stroke says how a line is drawn.
type Stroke int

// The strokes.
const (
	Seen   Stroke = iota // full line: the work is entered here, or the edge is in sight
	Hidden               // dashed: it leaves here, or lies below the surface
	Middle               // chain line: an axis
)

// A Mark is one line or outline that a feature draws on a face, in the
// face's frame (see Face).
type Mark struct {
	Ref    string        // the feature's Ref
	Work   Work          // for the layer it goes on
	Stroke Stroke        //
	Path   []form.Vertex // the line; its bulges are as in form.Profile
	Closed bool          // whether Path returns to its start
	// Centre is where to prick through, where the work has a centre on this face.
	Centre *form.Point
	// Diameter is that of a round hole; 0 otherwise.
	Diameter Length
	// Depth is how deep the work goes from this face; 0 where it goes through.
	Depth Length
	// Label says what it is, without sizes: "king-bolt hole", "square seat".
	Label string
}

// An Operation is a line in the list of work on a part.
type Operation struct {
	Ref  string
	Work Work
	What string // "king-bolt hole", "housing over the reach"
	Face Face   // where it is entered or set out
	// Meets are the two faces that meet along the edge that is worked; none for
	// other work.
	Meets []Face
	// At is the place of its middle on that face, in the face's frame.
	At form.Point
	// Sizes are its measures in the order people say them.
	Sizes []Measure
	// Note is a short remark: "bore from both faces".
	Note string
}

// A Measure is a named length: "diameter", "deep". Through work has no "deep".
type Measure struct {
	Name  string
	Value Length
}

package parts

// A Kind describes one kind of part to whoever reads a survey: what it is
// called, what it can be asked, and how it is built.
type Kind struct {
	Name  string // "bolster"; in a survey: kind = "bolster"
	Means string // one sentence
	// Dimensions are all it has, the three extents first where it has them.
	Dimensions []Dimension
	// Build makes the part. It reports missing dimensions; limits are for Validate.
	Build func(m Measures) (Part, error)
}

// An Axis says which way a dimension lies in the part's frame.
type Axis int

// The axes. A dimension that is no extent of the box has NoAxis.
const (
	NoAxis Axis = iota
	AlongX
	AcrossY
	UpZ
)

// Need says whether a dimension must be there.
type Need int

// The needs.
const (
	Required Need = iota
	Optional      // the feature it belongs to is left out where it is absent
)

// Measured says what a dimension is measured in.
type Measured int

// What a dimension is measured in.
const (
	InLength Measured = iota
	InCount
	InDegrees
)

// A Dimension is one thing a kind of part can be asked.
type Dimension struct {
	Name  string // "deep"; in a survey: part.deep
	Means string // what it spans, a few words
	Axis  Axis
	In    Measured
	Need  Need
}

// Measures are a part's dimensions by name, and the work that its fastenings
// and joints call for.
type Measures struct {
	Lengths map[string]Length
	Counts  map[string]int
	Angles  map[string]Angle
	Work    []Feature
}

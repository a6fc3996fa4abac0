// Package form describes the shape of a piece of wood exactly, as data: plane
// profiles of lines and arcs, and solids swept or turned from them.
//
// All coordinates are millimetres in a right-handed frame. Nothing here meshes,
// draws or prints; internal/solid makes a distance field of a Volume and
// internal/outline draws a Profile.
package form

import "lostwood/internal/quantity"

// Length is a distance in millimetres.
type Length = quantity.Length

// Angle is in radians.
type Angle = quantity.Angle

// A Point is a place in a plane.
type Point struct{ X, Y Length }

// A Vec is a place or a step in space.
type Vec struct{ X, Y, Z Length }

// A Dir is a direction in space, of length one.
type Dir struct{ X, Y, Z float64 }

// A Vertex is a corner of a Profile and the edge that leaves it.
// Bulge is the tangent of a quarter of the edge's included angle: 0 for a
// straight edge, 1 for a half circle, positive where the edge turns
// anticlockwise (to the left of its chord's direction, so its belly lies to the right).
type Vertex struct {
	Point
	Bulge float64
}

// A Profile is a closed outline of lines and arcs, anticlockwise, that does
// not cross itself; the last vertex's edge returns to the first.
type Profile []Vertex

// A Frame places a plane in space: the profile's x runs along U, its y along
// V, and W = U x V leaves the plane. U and V are at right angles.
type Frame struct {
	Origin Vec
	U, V   Dir
}

// A Volume is a solid: a Prism, a Revolved, an Oval, a Half, or a Union, an
// Intersection or a Difference of them.
type Volume interface{ volume() }

// A Prism is a profile swept along its frame's W, from From to To.
// From -Inf or To +Inf makes it endless that way (a cut right through).
type Prism struct {
	Frame    Frame
	Profile  Profile
	From, To Length
}

// A Revolved is a profile turned about the line through the frame's origin
// along W. The profile's x is the distance from that line (never negative) and
// its y the place along it; the turn starts at U and goes towards V by Sweep,
// at most a full turn of 2 pi.
type Revolved struct {
	Frame   Frame
	Profile Profile
	Sweep   Angle
}

// A Half is all space on the inner side of a plane: where Normal . (p - At) <= 0.
type Half struct {
	At     Vec
	Normal Dir
}

// A Union is all of its members together.
type Union []Volume

// An Intersection is what all its members share.
type Intersection []Volume

// A Difference is From less every one of Cut.
type Difference struct {
	From Volume
	Cut  []Volume
}

func (Prism) volume()        {}
func (Revolved) volume()     {}
func (Half) volume()         {}
func (Union) volume()        {}
func (Intersection) volume() {}
func (Difference) volume()   {}

// Package sight tells what is seen of solid bodies from far off in one
// direction: which of their edges and outlines are in sight and which lie
// behind something, exactly.
//
// A body is the skin of its exact solid (internal/mesh), with its sharp edges
// told from the joints between facets by the solid's own surfaces. Every edge is
// cut where a facet begins or ceases to cover it, by where the two cross, not by
// trying points. Lengths are millimetres; on the view x is to the right, y up
// and depth towards the eye. Nothing here knows of paper, parts or vehicles.
package sight

import (
	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = parts.Length

// A View is a direction to look from: what is to the right on it, what is up.
// The eye is on the side from which Right turns anticlockwise to Up.
type View struct{ Right, Up form.Dir }

// towards is the direction to the eye.
func (v View) towards() form.Dir { return form.Frame{U: v.Right, V: v.Up}.W() }

// A spot is a place as it is seen: right, up, and how near the eye.
type spot struct{ x, y, z float64 }

func (v View) spot(p form.Vec) spot {
	return spot{float64(v.Right.Along(p)), float64(v.Up.Along(p)), float64(v.towards().Along(p))}
}

// On is where a place is seen.
func (v View) On(p form.Vec) form.Point { return form.Point{X: v.Right.Along(p), Y: v.Up.Along(p)} }

func (s spot) point() form.Point { return form.Point{X: Length(s.x), Y: Length(s.y)} }

// between is the place a share t of the way from s to q.
func (s spot) between(q spot, t float64) spot {
	return spot{s.x + (q.x-s.x)*t, s.y + (q.y-s.y)*t, s.z + (q.z-s.z)*t}
}

func v3of(p form.Vec) v3.Vec { return v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)} }

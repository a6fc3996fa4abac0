// Package mesh makes closed triangle skins of solids, checks them, and writes
// and reads them as STL and 3MF.
//
// All coordinates are millimetres in the part's own right-handed frame. A
// triangle's corners run anticlockwise seen from outside the wood. Nothing
// here knows what a part is for; see internal/solid for the shapes.
package mesh

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Mesh is a skin of triangles over shared vertices.
type Mesh struct {
	Vertices  []form.Vec
	Triangles [][3]int // indices into Vertices
}

// Volume returns the signed volume the skin encloses, positive when its
// triangles face outwards. It means nothing for a skin that is not closed.
func (m *Mesh) Volume() quantity.Volume {
	if len(m.Vertices) == 0 {
		return 0
	}
	o := m.Vertices[0] // near the skin, so that large offsets do not cost digits
	sum := 0.0
	for _, t := range m.Triangles {
		a, b, c := step(o, m.Vertices[t[0]]), step(o, m.Vertices[t[1]]), step(o, m.Vertices[t[2]])
		sum += dot(a, cross(b, c))
	}
	return quantity.Volume(sum / 6)
}

// Area returns the area of the skin.
func (m *Mesh) Area() quantity.Area {
	sum := 0.0
	for _, t := range m.Triangles {
		sum += length(m.normal(t))
	}
	return quantity.Area(sum / 2)
}

// Bounds returns the smallest upright box round the vertices; a mesh without
// any has an empty box at the origin.
func (m *Mesh) Bounds() form.Box {
	if len(m.Vertices) == 0 {
		return form.Box{}
	}
	b := form.Box{Min: m.Vertices[0], Max: m.Vertices[0]}
	for _, v := range m.Vertices[1:] {
		b = extended(b, form.Box{Min: v, Max: v})
	}
	return b
}

func extended(b, c form.Box) form.Box {
	return form.Box{
		Min: form.Vec{X: min(b.Min.X, c.Min.X), Y: min(b.Min.Y, c.Min.Y), Z: min(b.Min.Z, c.Min.Z)},
		Max: form.Vec{X: max(b.Max.X, c.Max.X), Y: max(b.Max.Y, c.Max.Y), Z: max(b.Max.Z, c.Max.Z)},
	}
}

// normal is square to the triangle, outwards, twice its area long.
func (m *Mesh) normal(t [3]int) form.Vec {
	return cross(step(m.Vertices[t[0]], m.Vertices[t[1]]), step(m.Vertices[t[0]], m.Vertices[t[2]]))
}

// step is the step from a to b.
func step(a, b form.Vec) form.Vec { return form.Vec{X: b.X - a.X, Y: b.Y - a.Y, Z: b.Z - a.Z} }

func dot(a, b form.Vec) float64 { return float64(a.X*b.X + a.Y*b.Y + a.Z*b.Z) }

func cross(a, b form.Vec) form.Vec {
	return form.Vec{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func length(a form.Vec) float64 { return math.Sqrt(dot(a, a)) }

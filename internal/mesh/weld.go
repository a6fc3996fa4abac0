package mesh

import "lostwood/parts/form"

// A grain is a place as an STL file holds it.
type grain [3]float32

func grainOf(v form.Vec) grain {
	g := grain{float32(v.X), float32(v.Y), float32(v.Z)}
	for i := range g {
		if g[i] == 0 {
			g[i] = 0 // one zero, not two: -0 equals 0 but has other bits
		}
	}
	return g
}

func (g grain) place() form.Vec {
	return form.Vec{X: form.Length(g[0]), Y: form.Length(g[1]), Z: form.Length(g[2])}
}

// A welder gathers triangles and gives places with the same float32 bits one
// vertex.
type welder struct {
	mesh  Mesh
	index map[grain]int
}

func newWelder() *welder { return &welder{index: map[grain]int{}} }

func (w *welder) vertex(g grain) int {
	i, known := w.index[g]
	if !known {
		i = len(w.mesh.Vertices)
		w.index[g] = i
		w.mesh.Vertices = append(w.mesh.Vertices, g.place())
	}
	return i
}

// add keeps a triangle as it is, even one whose corners fell together.
func (w *welder) add(a, b, c grain) {
	w.mesh.Triangles = append(w.mesh.Triangles, [3]int{w.vertex(a), w.vertex(b), w.vertex(c)})
}

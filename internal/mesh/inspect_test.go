package mesh_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/mesh"
	"lostwood/parts/form"
)

func defects(m *mesh.Mesh) []mesh.Defect {
	var ds []mesh.Defect
	r := mesh.Inspect(m)
	for _, f := range r.Faults {
		if !slices.Contains(ds, f.Defect) {
			ds = append(ds, f.Defect)
		}
	}
	return ds
}

func clone(m *mesh.Mesh) *mesh.Mesh {
	return &mesh.Mesh{Vertices: slices.Clone(m.Vertices), Triangles: slices.Clone(m.Triangles)}
}

func TestInspectSound(t *testing.T) {
	r := mesh.Inspect(pyramid())
	assert.NoError(t, r.Err())
	assert.Equal(t, 1, r.Pieces)
	assert.Equal(t, 2, r.Euler)
	assert.InDelta(t, 1000.0/6, float64(r.Volume), 1e-9)
}

// A torus of squares has Euler characteristic 0.
func TestInspectRing(t *testing.T) {
	m := made(t, cutFrom(block(0, 0, 0, 30, 30, 10), block(10, 10, -1, 20, 20, 11)), fine)
	r := mesh.Inspect(m)
	require.NoError(t, r.Err())
	assert.Equal(t, 0, r.Euler)
	assert.InDelta(t, 8000, float64(r.Volume), 1e-6)
	assert.InDelta(t, 2*800+4*300+4*100, float64(m.Area()), 1e-6)
	assert.Equal(t, form.Box{Max: vec(30, 30, 10)}, m.Bounds())
}

func TestInspectFinds(t *testing.T) {
	apart := pyramid() // two pyramids that share one corner
	for _, k := range [][3]int{{0, 1, 2}, {0, 3, 1}, {1, 3, 2}, {2, 3, 0}} {
		apart.Triangles = append(apart.Triangles, [3]int{k[0] + 4, k[1] + 4, k[2] + 4})
	}
	for _, v := range pyramid().Vertices {
		apart.Vertices = append(apart.Vertices, form.Vec{X: -v.X, Y: -v.Y, Z: -v.Z})
	}
	inward := pyramid()
	for i, k := range inward.Triangles {
		inward.Triangles[i] = [3]int{k[0], k[2], k[1]}
	}
	stray := pyramid()
	stray.Vertices[0].X = form.Length(math.NaN())
	flatted := pyramid()
	flatted.Triangles = append(flatted.Triangles, [3]int{0, 1, 1})
	for name, c := range map[string]struct {
		m    *mesh.Mesh
		want mesh.Defect
		word string
	}{
		"nothing":    {&mesh.Mesh{}, mesh.Nothing, "no skin"},
		"stray":      {stray, mesh.Stray, "not a place"},
		"sliver":     {flatted, mesh.Sliver, "no area"},
		"pinched":    {apart, mesh.Pinched, "touches itself"},
		"inside out": {inward, mesh.InsideOut, "inside out"},
		"no vertex":  {&mesh.Mesh{Triangles: [][3]int{{0, 1, 2}}}, mesh.Stray, "not a place"},
	} {
		t.Run(name, func(t *testing.T) {
			r := mesh.Inspect(c.m)
			assert.Contains(t, defects(c.m), c.want)
			assert.ErrorContains(t, r.Err(), c.word)
		})
	}
}

// A hollow faces inwards and is no fault; the same skin on its own is.
func TestInspectHollow(t *testing.T) {
	m := made(t, cutFrom(block(0, 0, 0, 30, 30, 30), block(10, 10, 10, 20, 20, 20)), fine)
	r := mesh.Inspect(m)
	require.NoError(t, r.Err())
	assert.Equal(t, 2, r.Pieces)
	assert.InDelta(t, 26000, float64(r.Volume), 1e-6)
}

// One triangle left out, turned about or doubled is found, whichever it is.
func TestInspectFindsAnyOneFault(t *testing.T) {
	sound := made(t, spoke(), fine)
	rapid.Check(t, func(t *rapid.T) {
		m := clone(sound)
		i := rapid.IntRange(0, len(m.Triangles)-1).Draw(t, "triangle")
		k := m.Triangles[i]
		switch rapid.SampledFrom([]string{"leave out", "turn", "double"}).Draw(t, "fault") {
		case "leave out":
			m.Triangles = slices.Delete(m.Triangles, i, i+1)
			require.Equal(t, []mesh.Defect{mesh.Gap}, defects(m))
		case "turn":
			m.Triangles[i] = [3]int{k[0], k[2], k[1]}
			require.Contains(t, defects(m), mesh.Crowded)
		case "double":
			m.Triangles = append(m.Triangles, k)
			require.Contains(t, defects(m), mesh.Crowded)
		}
	})
}

// A report does not depend on the order of the triangles or where each begins.
func TestInspectIgnoresOrder(t *testing.T) {
	sound := made(t, felloe(), fine)
	rapid.Check(t, func(t *rapid.T) {
		m := clone(sound)
		order := rapid.Permutation(m.Triangles).Draw(t, "order")
		for i, k := range order {
			order[i] = [3]int{k[1], k[2], k[0]}
		}
		m.Triangles = order
		r := mesh.Inspect(m)
		require.NoError(t, r.Err())
		require.Equal(t, 1, r.Pieces)
		require.Equal(t, -2, r.Euler)
	})
}

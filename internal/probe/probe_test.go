package probe_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"lostwood/internal/mesh"
	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

func block(x0, y0, z0, x1, y1, z1 form.Length) form.Volume {
	return form.Prism{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Rectangle(form.Point{X: x0, Y: y0}, form.Point{X: x1, Y: y1}), From: z0, To: z1,
	}
}

// round is a cylinder along an axis.
func round(at form.Vec, axis int, radius, long form.Length) form.Volume {
	f := [3]form.Frame{
		{Origin: at, U: form.Dir{Y: 1}, V: form.Dir{Z: 1}},
		{Origin: at, U: form.Dir{Z: 1}, V: form.Dir{X: 1}},
		{Origin: at, U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
	}[axis]
	return form.Prism{Frame: f, Profile: form.Circle(form.Point{}, radius), To: long}
}

func common(a, b form.Volume) probe.Overlap {
	return probe.Common(probe.New(a), probe.New(b), 0.1)
}

// What two shapes have in common, by formula.
func TestOverlapsByFormula(t *testing.T) {
	for name, c := range map[string]struct {
		a, b   form.Volume
		volume float64
		deep   float64
	}{
		"two blocks, 2 mm into each other": {block(0, 0, 0, 100, 50, 40), block(98, 10, -5, 200, 30, 60), 2 * 20 * 40, 2},
		"a bolt through a plank":           {block(0, 0, 0, 100, 50, 20), round(form.Vec{X: 50, Y: 25, Z: -10}, 2, 6, 60), math.Pi * 36 * 20, 12},
		"a bolt grazing a plank, half in":  {block(0, 0, 0, 100, 50, 20), round(form.Vec{X: 100, Y: 25, Z: -10}, 2, 6, 60), math.Pi * 36 * 20 / 2, 6},
		"half a bolt's radius in":          {block(0, 0, 0, 100, 50, 20), round(form.Vec{X: 103, Y: 25, Z: -10}, 2, 6, 60), 20 * (36*math.Acos(0.5) - 3*math.Sqrt(27)), 3},
		// Two equal cylinders that cross at right angles: Archimedes, The Method: 16 r^3 / 3.
		"two bolts crossing": {round(form.Vec{Z: -50}, 2, 6, 100), round(form.Vec{X: -50}, 0, 6, 100), 16 * 216.0 / 3, 12},
		"apart":              {block(0, 0, 0, 10, 10, 10), block(12, 0, 0, 20, 10, 10), 0, 0},
		"face to face":       {block(0, 0, 0, 10, 10, 10), block(10, 0, 0, 20, 10, 10), 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			o := common(c.a, c.b)
			require.InDelta(t, c.volume, float64(o.Volume), 0.01*c.volume+1e-9)
			require.InDelta(t, c.deep, float64(o.Deep), 0.02*c.deep+1e-9)
		})
	}
}

// A slanting and a rounded shape against the volume that a skin of their
// intersection encloses, which is made another way.
func TestOverlapAgainstSkin(t *testing.T) {
	s, c := math.Sincos(0.4)
	a := form.Moved(form.Difference{From: block(0, 0, 0, 80, 40, 30), Cut: []form.Volume{round(form.Vec{X: 20, Y: 20, Z: -1}, 2, 8, 40)}},
		form.Frame{Origin: form.Vec{X: 3, Y: -4, Z: 2}, U: form.Dir{X: c, Y: s}, V: form.Dir{X: -s, Y: c}})
	b := form.Revolved{
		Frame:   form.Frame{Origin: form.Vec{X: 30, Y: 20, Z: 5}, U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Polygon(form.Point{}, form.Point{X: 30}, form.Point{X: 10, Y: 40}, form.Point{Y: 40}), Sweep: 2 * math.Pi,
	}
	got := common(a, b)
	shape, err := solid.New(form.Intersection{a, b})
	require.NoError(t, err)
	skin, err := mesh.Of(shape, 0.01)
	require.NoError(t, err)
	require.InEpsilon(t, float64(skin.Volume()), float64(got.Volume), 0.01)
}

// The same, and random blocks against cones, against manifold-3d 3.5.4 (npm), a mesh
// library that is not ours.
func TestOverlapAgainstManifold(t *testing.T) {
	check, err := filepath.Abs("../../.ci/meshcheck")
	require.NoError(t, err)
	_, noNode := exec.LookPath("node")
	_, noLibrary := os.Stat(filepath.Join(check, "node_modules", "manifold-3d"))
	if noNode != nil || noLibrary != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("node or manifold-3d is not installed")
		}
		t.Skip("node or manifold-3d is not installed (npm ci in .ci/meshcheck)")
	}
	r := rand.New(rand.NewPCG(8, 1))
	for range 5 {
		s, c := math.Sincos(0.2 + 0.4*r.Float64())
		a := form.Moved(form.Difference{From: block(0, 0, 0, 80, 40, 30), Cut: []form.Volume{round(form.Vec{X: 20, Y: 20, Z: -1}, 2, 8, 40)}},
			form.Frame{Origin: form.Vec{X: 3, Y: -4, Z: 2}, U: form.Dir{X: c, Y: s}, V: form.Dir{X: -s, Y: c}})
		b := form.Revolved{
			Frame:   form.Frame{Origin: form.Vec{X: 10 + form.Length(20*r.Float64()), Y: 20, Z: 5}, U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
			Profile: form.Polygon(form.Point{}, form.Point{X: 30}, form.Point{X: 10, Y: 40}, form.Point{Y: 40}), Sweep: 2 * math.Pi,
		}
		folder := t.TempDir()
		said, err := exec.Command("node", filepath.Join(check, "common.mjs"), skinned(t, folder, "a.stl", a), skinned(t, folder, "b.stl", b)).Output()
		require.NoError(t, err)
		var says struct{ Volume float64 }
		require.NoError(t, json.Unmarshal(said, &says))
		require.Greater(t, says.Volume, 100.0)
		require.InEpsilon(t, says.Volume, float64(common(a, b).Volume), 0.01)
	}
}

// skinned writes a shape's skin as STL.
func skinned(t *testing.T, folder, name string, v form.Volume) string {
	t.Helper()
	shape, err := solid.New(v)
	require.NoError(t, err)
	skin, err := mesh.Of(shape, 0.01)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, mesh.WriteSTL(&out, skin, mesh.Header{Name: name, Unit: "mm", Issue: "A"}))
	file := filepath.Join(folder, name)
	require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
	return file
}

// Two thin slivers that meet in a corner are no deeper for being long.
func TestSliversAreNotDeep(t *testing.T) {
	a := block(0, 0, 0, 100, 50, 40)
	b := form.Difference{From: block(-50, -50, -10, 150, 100, 20), Cut: []form.Volume{block(0.5, 0.5, -11, 200, 200, 21)}}
	o := probe.Common(probe.New(a), probe.New(b), 0.1)
	require.InDelta(t, 0.5, float64(o.Deep), 0.01)
	require.InDelta(t, (100*0.5+49.5*0.5)*20, float64(o.Volume), 10)
}

func TestAlong(t *testing.T) {
	b := probe.New(form.Difference{From: block(0, 0, 0, 100, 50, 20), Cut: []form.Volume{round(form.Vec{X: 50, Y: 25, Z: -10}, 2, 6, 60)}})
	got := b.Along(form.Vec{X: -10, Y: 25, Z: 10}, form.Dir{X: 1})
	require.Len(t, got, 2)
	for i, want := range []form.Stretch{{From: 10, To: 54}, {From: 66, To: 110}} {
		require.InDelta(t, float64(want.From), float64(got[i].From), 1e-6)
		require.InDelta(t, float64(want.To), float64(got[i].To), 1e-6)
	}
	require.Empty(t, b.Along(form.Vec{X: 50, Y: 25, Z: -10}, form.Dir{Z: 1}), "down the bolt hole")
	require.True(t, b.Contains(form.Vec{X: 10, Y: 25, Z: 10}))
	require.False(t, b.Contains(form.Vec{X: 50, Y: 26, Z: 10}))
}

func TestMovedKeepsVolume(t *testing.T) {
	f := form.Frame{Origin: form.Vec{X: 1, Y: 2, Z: 3}, U: form.Dir{Z: 1}, V: form.Dir{X: 1}}
	o := common(form.Moved(block(0, 0, 0, 10, 20, 30), f), block(-500, -500, -500, 500, 500, 500))
	require.InDelta(t, 6000, float64(o.Volume), 1)
	require.InDelta(t, 10, float64(o.Deep), quantity.Millimetre.Millimetres()/100)
}

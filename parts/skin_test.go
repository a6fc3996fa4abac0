package parts_test

import (
	"bytes"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts"
	"lostwood/parts/anypart"
	"lostwood/parts/form"
)

// skins is how many parts of each kind are meshed; LOSTWOOD_SKINS=2000 for a
// longer run.
func skins(t *testing.T) int {
	t.Helper()
	if s := os.Getenv("LOSTWOOD_SKINS"); s != "" {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	if testing.Short() {
		return 8
	}
	return 200
}

// Every kind of part at random legal dimensions has a skin fit to cut from: closed
// and outward as the written file holds it, one piece, everywhere within the
// tolerance of the true surface, with the volume that a finer skin has.
func TestEveryKindHasASkin(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			gen := anypart.Of(k)
			n := skins(t)
			for seed := range n {
				body, err := solid.New(gen.Example(seed).Stick().Volume())
				require.NoError(t, err)
				coarse := skin(t, body, 0.05, seed)
				fine := skin(t, body, 0.02, seed)
				slack := 0.07 * float64(coarse.Area())
				require.InDelta(t, float64(fine.Volume()), float64(coarse.Volume()), slack, "example %d", seed)
			}
		})
	})
}

// Wherever a part stands its skin is as good: twenty places each, however they fall
// on any grid.
func TestSkinsStandAnywhere(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 4))
	off := func() parts.Length { return parts.Length(r.Float64()*200 - 100) }
	kindsOf(func(name string, k parts.Kind) {
		v := anypart.Of(k).Example(7).Stick().Volume()
		for i := range 20 {
			at := form.Frame{Origin: form.Vec{X: off(), Y: off(), Z: off()}, U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
			body, err := solid.New(form.Moved(v, at))
			require.NoError(t, err, name)
			skin(t, body, 0.05, i)
			skin(t, body, 0.02, i)
		}
	})
}

// skin meshes a part, writes it, reads it back and holds it to the true surface.
func skin(t *testing.T, body *solid.Solid, tolerance quantity.Length, seed int) *mesh.Mesh {
	t.Helper()
	m, err := mesh.Of(body, tolerance)
	require.NoError(t, err, "example %d at %v", seed, tolerance)
	var file bytes.Buffer
	require.NoError(t, mesh.WriteSTL(&file, m, mesh.Header{Name: "part", Unit: "mm", Issue: "A"}))
	m, err = mesh.ReadSTL(&file)
	require.NoError(t, err)
	r := mesh.Inspect(m)
	require.NoError(t, r.Err(), "example %d at %v", seed, tolerance)
	require.Equal(t, 1, r.Pieces, "example %d", seed)
	require.Zero(t, r.Euler%2)
	most := 0.0
	for _, f := range m.Triangles {
		a, b, c := m.Vertices[f[0]], m.Vertices[f[1]], m.Vertices[f[2]]
		for _, p := range []v3.Vec{mean(a), mean(a, b), mean(b, c), mean(a, b, c)} {
			most = math.Max(most, math.Abs(body.Evaluate(p)))
		}
	}
	require.LessOrEqual(t, most, float64(tolerance)*1.0001, "example %d at %v", seed, tolerance)
	return m
}

func mean(ps ...form.Vec) v3.Vec {
	var v v3.Vec
	for _, p := range ps {
		v = v.Add(v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)})
	}
	return v.DivScalar(float64(len(ps)))
}

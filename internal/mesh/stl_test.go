package mesh_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/parts/form"
)

var header = mesh.Header{Name: "bolster, off, 1 wanted", Unit: "mm", Issue: "B"}

func written(t testing.TB, m *mesh.Mesh) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, mesh.WriteSTL(&b, m, header))
	return b.Bytes()
}

// pyramid is a sound skin of four triangles.
func pyramid() *mesh.Mesh {
	return &mesh.Mesh{
		Vertices:  []form.Vec{vec(0, 0, 0), vec(10, 0, 0), vec(0, 10, 0), vec(0, 0, 10)},
		Triangles: [][3]int{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}},
	}
}

func TestSTLLayout(t *testing.T) {
	b := written(t, pyramid())
	require.Len(t, b, 84+50*4)
	assert.True(t, strings.HasPrefix(string(b), "part bolster, off, 1 wanted, unit mm, issue B "))
	assert.Equal(t, uint32(4), binary.LittleEndian.Uint32(b[80:]))
	// the first triangle lies in z = 0 and faces down
	assert.Equal(t, float32(-1), math.Float32frombits(binary.LittleEndian.Uint32(b[84+8:])))
}

func TestSTLRoundTrip(t *testing.T) {
	m, err := mesh.ReadSTL(bytes.NewReader(written(t, pyramid())))
	require.NoError(t, err)
	assert.InDelta(t, 1000.0/6, float64(m.Volume()), 1e-9)
	assert.Len(t, m.Vertices, 4)
	assert.NoError(t, func() error { r := mesh.Inspect(m); return r.Err() }())
	assert.Equal(t, written(t, pyramid()), written(t, m))
}

func TestSTLRefusesToWrite(t *testing.T) {
	tiny := pyramid()
	for i := range tiny.Vertices {
		tiny.Vertices[i].X += 1e6
	}
	tiny.Vertices[1].X = 1e6 + 1e-3
	for name, c := range map[string]struct {
		m    *mesh.Mesh
		h    mesh.Header
		want string
	}{
		"unit":     {pyramid(), mesh.Header{Name: "a", Unit: "in"}, "millimetres"},
		"long":     {pyramid(), mesh.Header{Name: strings.Repeat("a", 70), Unit: "mm"}, "too long"},
		"newline":  {pyramid(), mesh.Header{Name: "a\nb", Unit: "mm"}, "does not print"},
		"collapse": {tiny, header, "too small"},
		"astray":   {&mesh.Mesh{Triangles: [][3]int{{0, 1, 2}}}, header, "not there"},
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			err := mesh.WriteSTL(&b, c.m, c.h)
			require.ErrorContains(t, err, c.want)
			assert.Zero(t, b.Len())
		})
	}
}

func TestSTLRefusesToRead(t *testing.T) {
	good := written(t, pyramid())
	with := func(at int, x uint32) []byte {
		b := bytes.Clone(good)
		binary.LittleEndian.PutUint32(b[at:], x)
		return b
	}
	for name, c := range map[string]struct {
		file []byte
		want string
	}{
		"empty":     {nil, "cut short"},
		"truncated": {good[:200], "says it has 4 triangles but ends after 2"},
		"huge":      {with(80, math.MaxUint32), "says it has 4294967295 triangles but ends after 4"},
		"trailing":  {append(bytes.Clone(good), 0), "goes on after its 4"},
		"nan":       {with(84+12, math.Float32bits(float32(math.NaN()))), "triangle 1 has a corner"},
		"infinite":  {with(84+50+12, 0x7f800000), "triangle 2 has a corner"},
		"text":      {[]byte("solid rail\n facet normal 0 0 1\n  outer loop\n"), "written as text"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := mesh.ReadSTL(bytes.NewReader(c.file))
			var f *mesh.FormatError
			require.ErrorAs(t, err, &f)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}

func FuzzReadSTL(f *testing.F) {
	f.Add(written(f, pyramid()))
	f.Add([]byte("solid x\nendsolid x"))
	f.Add(append(make([]byte, 80), 0xff, 0xff, 0xff, 0xff))
	f.Fuzz(func(t *testing.T, b []byte) {
		m, err := mesh.ReadSTL(bytes.NewReader(b))
		if err != nil {
			return
		}
		r := mesh.Inspect(m)
		if r.Err() != nil {
			return
		}
		again, err := mesh.ReadSTL(bytes.NewReader(written(t, m)))
		require.NoError(t, err)
		require.Equal(t, m, again)
	})
}

// admesh runs the independent checker of that name on the written bytes and
// returns its counts by their label.
func admesh(t *testing.T, file []byte) map[string]string {
	t.Helper()
	program, err := exec.LookPath("admesh")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("admesh is not installed; the written meshes must be checked by it here")
		}
		t.Skip("admesh is not installed: the independent check of the written mesh is left out")
	}
	path := filepath.Join(t.TempDir(), "part.stl")
	require.NoError(t, os.WriteFile(path, file, 0o600))
	out, err := exec.Command(program, path).CombinedOutput()
	require.NoError(t, err, string(out))
	found := map[string]string{}
	for _, m := range regexp.MustCompile(`(?m)([A-Z][A-Za-z0-9 ]*?)\s*:\s+(\S+)`).FindAllStringSubmatch(string(out), -1) {
		found[strings.TrimSpace(m[1])] = m[2]
	}
	return found
}

func TestAdmeshFindsNothing(t *testing.T) {
	for name, v := range map[string]form.Volume{"bolster": bolster(), "felloe": felloe(), "reach": reach(), "spoke": spoke()} {
		t.Run(name, func(t *testing.T) {
			m := made(t, v, fine)
			got := admesh(t, written(t, m))
			for _, label := range []string{"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"} {
				assert.Equal(t, "0", got[label], label)
			}
			assert.Equal(t, "1", got["Number of parts"])
		})
	}
}

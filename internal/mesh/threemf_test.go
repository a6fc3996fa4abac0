package mesh_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"github.com/hpinc/go3mf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/parts/form"
)

func packed(t testing.TB, parts ...mesh.Object) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, mesh.Write3MF(&b, mesh.Package{Issue: "C", Survey: "sha256:0f0f", Parts: parts}))
	return b.Bytes()
}

func bolsterObject(t testing.TB) mesh.Object {
	return mesh.Object{Mesh: made(t, bolster(), fine), Name: `bolster "fore" <5 & up>`, Number: "B-1"}
}

// An independent open-source reader finds in the file what was put in it, and
// its validator of the 3MF core specification has nothing to say.
func Test3MFReadBack(t *testing.T) {
	in := []mesh.Object{bolsterObject(t), {Mesh: pyramid(), Name: "wedge", Number: "W-2"}}
	file := packed(t, in...)
	var got go3mf.Model
	require.NoError(t, go3mf.NewDecoder(bytes.NewReader(file), int64(len(file))).Decode(&got))
	require.NoError(t, got.Validate())
	assert.Equal(t, go3mf.UnitMillimeter, got.Units)
	require.Len(t, got.Resources.Objects, 2)
	require.Len(t, got.Build.Items, 2)
	said := map[string]string{}
	for _, m := range got.Metadata {
		said[m.Name.Local] = m.Value
	}
	assert.Equal(t, "issue C, survey sha256:0f0f", said["Description"])
	for i, o := range got.Resources.Objects {
		assert.Equal(t, in[i].Name, o.Name)
		assert.Equal(t, in[i].Number, o.PartNumber)
		m := &mesh.Mesh{}
		for _, v := range o.Mesh.Vertices.Vertex {
			m.Vertices = append(m.Vertices, vec(float64(v[0]), float64(v[1]), float64(v[2])))
		}
		for _, k := range o.Mesh.Triangles.Triangle {
			m.Triangles = append(m.Triangles, [3]int{int(k.V1), int(k.V2), int(k.V3)})
		}
		r := mesh.Inspect(m)
		assert.NoError(t, r.Err())
		assert.InDelta(t, float64(in[i].Mesh.Volume()), float64(m.Volume()), 1e-6*float64(m.Volume()))
	}
}

// Coordinates come back to the last digit that an STL file keeps.
func Test3MFCoordinates(t *testing.T) {
	o := bolsterObject(t)
	file := packed(t, o)
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	f, err := z.Open("3D/3dmodel.model")
	require.NoError(t, err)
	text, err := io.ReadAll(f)
	require.NoError(t, err)
	var model struct {
		Vertices []struct {
			X float32 `xml:"x,attr"`
			Y float32 `xml:"y,attr"`
			Z float32 `xml:"z,attr"`
		} `xml:"resources>object>mesh>vertices>vertex"`
	}
	require.NoError(t, xml.Unmarshal(text, &model))
	require.Len(t, model.Vertices, len(o.Mesh.Vertices))
	for i, v := range model.Vertices {
		w := o.Mesh.Vertices[i]
		require.Equal(t, [3]float32{float32(w.X), float32(w.Y), float32(w.Z)}, [3]float32{v.X, v.Y, v.Z})
	}
}

func Test3MFSameBytes(t *testing.T) {
	assert.True(t, bytes.Equal(packed(t, bolsterObject(t)), packed(t, bolsterObject(t))))
}

func Test3MFRefusals(t *testing.T) {
	flatted := &mesh.Mesh{Vertices: []form.Vec{{}, {X: 1}, {X: 2}}, Triangles: [][3]int{{0, 1, 2}}}
	for name, c := range map[string]struct {
		parts []mesh.Object
		want  string
	}{
		"none":    {nil, "needs a part"},
		"empty":   {[]mesh.Object{{Mesh: &mesh.Mesh{}, Name: "rail"}}, "no triangles"},
		"control": {[]mesh.Object{{Mesh: pyramid(), Name: "rail\x01"}}, "does not print"},
		"no area": {[]mesh.Object{{Mesh: flatted, Name: "rail"}}, "too small"},
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.ErrorContains(t, mesh.Write3MF(&b, mesh.Package{Parts: c.parts}), c.want)
			assert.Zero(t, b.Len())
		})
	}
}

package mesh_test

import (
	"math"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"github.com/deadsy/sdfx/render"
	"github.com/deadsy/sdfx/sdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/internal/mesh/gauge"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// marched is sdfx's own mesh of the field, an independent check: marching
// cubes on an octree, welded, its collapsed triangles left out.
func marched(s sdf.SDF3, cell float64) *mesh.Mesh {
	size := s.BoundingBox().Size().MaxComponent()
	m := &mesh.Mesh{}
	index := map[[3]float32]int{}
	for _, t := range render.ToTriangles(s, render.NewMarchingCubesOctree(int(math.Ceil(size/cell)))) {
		var k [3]int
		for i, v := range t {
			at := [3]float32{float32(v.X) + 0, float32(v.Y) + 0, float32(v.Z) + 0}
			n, known := index[at]
			if !known {
				n = len(m.Vertices)
				index[at] = n
				m.Vertices = append(m.Vertices, vec(float64(at[0]), float64(at[1]), float64(at[2])))
			}
			k[i] = n
		}
		if k[0] != k[1] && k[1] != k[2] && k[2] != k[0] {
			m.Triangles = append(m.Triangles, k)
		}
	}
	return m
}

// sdfx meshes the same field another way: where its cells can resolve the part,
// it finds the same volume and the same pieces and ways through.
func TestAgainstMarchingCubes(t *testing.T) {
	const cell = 1.0
	for name, v := range map[string]form.Volume{
		"counterbore": hard()["a counterbore"].v,
		"crossing":    hard()["two equal holes that cross"].v,
		"blocks":      hard()["blocks with faces in one plane"].v,
		"knob":        hard()["a turned knob with a bore"].v,
		"bar":         hard()["an endless bar between planes"].v,
		"spoke":       spoke(),
	} {
		t.Run(name, func(t *testing.T) {
			s := compiled(t, v)
			ours, theirs := made(t, v, 0.05), marched(s, cell)
			a, b := mesh.Inspect(ours), mesh.Inspect(theirs)
			require.NoError(t, a.Err())
			assert.Equal(t, b.Pieces, a.Pieces)
			assert.Equal(t, b.Euler, a.Euler)
			assert.InDelta(t, float64(b.Volume), float64(a.Volume), 0.3*cell*float64(ours.Area()))
		})
	}
}

// fours are the four test solids in a fixed order.
var fours = []struct {
	name  string
	v     func() form.Volume
	exact func() float64
	most  int // triangles at 0.02 mm: 1.2 times what an exact mesh-boolean library needed
}{
	{"bolster", bolster, bolsterVolume, 936 * 12 / 10},
	{"felloe", felloe, felloeVolume, 1236 * 12 / 10},
	{"spoke", spoke, spokeVolume, 588 * 12 / 10},
	{"reach", reach, reachVolume, 996 * 12 / 10},
}

func TestFewTriangles(t *testing.T) {
	for _, f := range fours {
		m := made(t, f.v(), 0.02)
		assert.LessOrEqual(t, len(m.Triangles), f.most, f.name)
	}
}

// BenchmarkSolids prints, side by side, what our meshes and sdfx's marching
// cubes on an octree of 0.5 mm come to.
func BenchmarkSolids(b *testing.B) {
	for _, f := range fours {
		s := compiled(b, f.v())
		for _, c := range []struct {
			name string
			make func() *mesh.Mesh
		}{
			{"ours_0.05", func() *mesh.Mesh { return of(b, s, 0.05) }},
			{"ours_0.02", func() *mesh.Mesh { return of(b, s, 0.02) }},
			{"cubes_0.5", func() *mesh.Mesh { return marched(s, 0.5) }},
		} {
			b.Run(f.name+"/"+c.name, func(b *testing.B) {
				var m *mesh.Mesh
				peak := peakOf(func() {
					for b.Loop() {
						m = c.make()
					}
				})
				b.ReportMetric(float64(len(m.Triangles)), "triangles")
				b.ReportMetric(peak/1e6, "peak-MB")
				g := gauge.Rough(s, m, 1, 3000)
				b.ReportMetric(float64(g.Skin.Far), "dev-mm")
				b.ReportMetric(float64(g.Edge.Far), "edge-mm")
			})
		}
	}
}

func of(t testing.TB, s *solid.Solid, tolerance quantity.Length) *mesh.Mesh {
	m, err := mesh.Of(s, tolerance)
	require.NoError(t, err)
	return m
}

// peakOf runs f and returns the most heap it held beyond what there was.
func peakOf(f func()) float64 {
	runtime.GC()
	var before runtime.MemStats
	runtime.ReadMemStats(&before)
	var peak atomic.Uint64
	done, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for {
			var now runtime.MemStats
			runtime.ReadMemStats(&now)
			peak.Store(max(peak.Load(), now.HeapInuse))
			select {
			case <-done:
				return
			case <-time.After(time.Millisecond):
			}
		}
	}()
	f()
	close(done)
	<-stopped
	return float64(peak.Load()) - float64(before.HeapInuse)
}

func TestLittleMemory(t *testing.T) {
	for _, f := range fours {
		s := compiled(t, f.v())
		assert.LessOrEqual(t, peakOf(func() { of(t, s, 0.02) }), 32e6, f.name)
	}
}

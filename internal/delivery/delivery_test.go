package delivery_test

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"

	"lostwood/internal/delivery"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/mesh"
	"lostwood/internal/pattern"
	"lostwood/internal/solid"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

const tolerance = 0.05

func order(t *testing.T) delivery.Order {
	t.Helper()
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(t, err)
	woods, err := timber.Published()
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	paper, err := pattern.FindPaper("A4")
	require.NoError(t, err)
	return delivery.Order{Vehicle: v, Survey: demo.Survey(), Woods: woods, Paper: paper, Tolerance: tolerance}
}

func files(t *testing.T) (delivery.Order, map[string][]byte) {
	t.Helper()
	o := order(t)
	list, err := delivery.Make(context.Background(), o)
	require.NoError(t, err)
	out := map[string][]byte{}
	for _, f := range list {
		require.NotContains(t, out, f.Path)
		out[f.Path] = f.Data
	}
	return o, out
}

// Every item has a mesh and a pattern, closed and outward by our own reading of
// the written bytes, with the volume that its formula gives; a handed pair mirrors.
func TestDelivery(t *testing.T) {
	o, out := files(t)
	for _, want := range []string{"README.txt", "record/orchard-wagon_issue-A_findings.txt", "record/orchard-wagon_issue-A_survey.toml"} {
		require.Contains(t, out, want)
	}
	require.Equal(t, demo.Survey(), out["record/orchard-wagon_issue-A_survey.toml"])
	var near *mesh.Mesh
	for _, it := range o.Vehicle.Items {
		stem := o.Vehicle.Stem(it)
		require.True(t, bytes.HasPrefix(out["joiner/patterns/"+stem+".pdf"], []byte("%PDF-")), stem)
		m, err := mesh.ReadSTL(bytes.NewReader(out["cnc/"+stem+".stl"]))
		require.NoError(t, err, stem)
		r := mesh.Inspect(m)
		require.NoError(t, r.Err(), stem)
		require.Equal(t, 1, r.Pieces, stem)

		// The formula takes off the wood of overlapping features twice: a hole
		// through a chamfer or a square seat's corners. That is little.
		net := float64(parts.Net(it.Stick))
		slack := tolerance*float64(m.Area()) + 0.002*net
		require.InDelta(t, net, float64(r.Volume), slack, stem)

		switch it.Hand {
		case vehicle.Near:
			near = m
		case vehicle.Off:
			requireMirrored(t, near, m, it)
		}
	}
}

// requireMirrored holds every vertex of each mesh of a pair, mirrored, to the
// true surface of the other hand.
func requireMirrored(t *testing.T, near, off *mesh.Mesh, it *vehicle.Item) {
	t.Helper()
	require.InDelta(t, float64(near.Volume()), float64(off.Volume()), tolerance*float64(near.Area()), it.Name)
	_, wide, _ := it.Stick.Body.Box()
	for _, c := range []struct {
		mesh  *mesh.Mesh
		other parts.Stick
	}{{near, it.Stick}, {off, it.Stick.Mirrored()}} {
		other, err := solid.New(c.other.Volume())
		require.NoError(t, err)
		for _, v := range c.mesh.Vertices {
			d := other.Evaluate(v3.Vec{X: float64(v.X), Y: float64(wide - v.Y), Z: float64(v.Z)})
			require.InDelta(t, 0, d, tolerance, "%s %v", it.Name, it.Hand)
		}
	}
}

// The same order gives the same bytes on one processor as on several.
func TestSameBytes(t *testing.T) {
	if testing.Short() {
		t.Skip("makes the demo twice")
	}
	o := order(t)
	many, err := delivery.Make(context.Background(), o)
	require.NoError(t, err)
	was := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(was)
	one, err := delivery.Make(context.Background(), order(t))
	require.NoError(t, err)
	require.Equal(t, len(many), len(one))
	for i := range many {
		require.Equal(t, many[i].Path, one[i].Path)
		require.True(t, bytes.Equal(many[i].Data, one[i].Data), many[i].Path)
	}
}

// admesh, a program that is not ours, finds every mesh closed and outward, in
// one piece and of the same volume.
func TestMeshesByAdmesh(t *testing.T) {
	admesh, err := exec.LookPath("admesh")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("admesh is not installed")
		}
		t.Skip("admesh is not installed: the meshes are not checked by an outside program")
	}
	o, out := files(t)
	number := func(text, label string) float64 {
		m := regexp.MustCompile(regexp.QuoteMeta(label) + `\s*:\s*([-\d.]+)`).FindStringSubmatch(text)
		require.NotNil(t, m, "%s in %s", label, text)
		v, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		return v
	}
	for _, it := range o.Vehicle.Items {
		stem := o.Vehicle.Stem(it)
		name := filepath.Join(t.TempDir(), "part.stl")
		require.NoError(t, os.WriteFile(name, out["cnc/"+stem+".stl"], 0o644))
		said, err := exec.Command(admesh, name).CombinedOutput()
		require.NoError(t, err)
		text := string(said)
		for _, label := range []string{"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"} {
			require.Zero(t, number(text, label), "%s: %s", stem, label)
		}
		require.InDelta(t, 1, number(text, "Number of parts"), 0, stem)
		m, err := mesh.ReadSTL(bytes.NewReader(out["cnc/"+stem+".stl"]))
		require.NoError(t, err)
		require.InEpsilon(t, float64(m.Volume()), number(text, "Volume"), 1e-4, stem)
	}
}

// Every file name says number, name, timber, thickness with its unit, number
// off, hand and issue.
func TestNames(t *testing.T) {
	v := order(t).Vehicle
	form := regexp.MustCompile(`^\d\d_[a-z0-9-]+_[a-z-]+_\d+\.\dmm_\d+-off(_NEAR|_OFF)?_issue-A$`)
	seen := map[string]bool{}
	for _, it := range v.Items {
		stem := v.Stem(it)
		require.Regexp(t, form, stem)
		require.False(t, seen[stem], stem)
		seen[stem] = true
		named := strings.Contains(stem, "_NEAR_") || strings.Contains(stem, "_OFF_")
		require.Equal(t, it.Hand != vehicle.Alike, named, stem)
		if named {
			require.Contains(t, stem, "_"+strings.ToUpper(it.Hand.String())+"_")
		}
	}
}

// A delivery stopped half way is no delivery.
func TestStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	list, err := delivery.Make(ctx, order(t))
	require.ErrorIs(t, err, context.Canceled)
	require.Empty(t, list)
}

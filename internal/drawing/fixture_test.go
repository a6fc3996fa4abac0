package drawing

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// wagon is the demo's vehicle, derived once.
var wagon = sync.OnceValues(func() (*vehicle.Vehicle, error) {
	s, err := survey.Read(demo.Name, demo.Survey())
	if err != nil {
		return nil, err
	}
	woods, err := timber.Published()
	if err != nil {
		return nil, err
	}
	return derive.Vehicle(s, woods)
})

func theWagon(t testing.TB) *vehicle.Vehicle {
	v, err := wagon()
	require.NoError(t, err)
	return v
}

func on(t testing.TB, paper string, a Angle) Making {
	p, err := FindPaper(paper)
	require.NoError(t, err)
	return Making{Paper: p, Angle: a, Sawn: func(*vehicle.Item) string { return "40 1/2 × 3 × 2 1/2" }}
}

// ofOne is a vehicle of one item, near, its sizes from iron but for a guess in its depth.
func ofOne(p parts.Part, hand vehicle.Hand, unit quantity.Unit) (*vehicle.Vehicle, *vehicle.Item) {
	s := p.Stick()
	if hand == vehicle.Off {
		s = s.Mirrored()
	}
	l, w, d := s.Body.Box()
	size := func(v Length, k quantity.Known) quantity.Size { return quantity.Size{Value: v, Doubt: 1, Known: k} }
	run := vehicle.Along
	if p.Kind() == "felloe" {
		run = vehicle.Round
	}
	it := &vehicle.Item{
		Number: 7, ID: vehicle.Slug(p.Kind()), Name: p.Kind(), Kind: p.Kind(), Run: run, Hand: hand, NumberOff: 2, Timber: "white oak",
		Shape: p, Stick: s, Status: vehicle.Approved,
		Sizes: []vehicle.Dimension{
			{Name: "long", Axis: parts.AlongX, Size: size(l, quantity.FromIron), By: "fastening 7 and 2 others"},
			{Name: "wide", Axis: parts.AcrossY, Size: size(w, quantity.Measured), By: "clip 4"},
			{Name: "deep", Axis: parts.UpZ, Size: size(d, quantity.Guess), By: "stated on line 51"},
		},
	}
	for _, f := range p.Stick().Features {
		it.Features = append(it.Features, vehicle.Feature{Ref: f.Ref(), Along: size(100, quantity.FromIron), Across: size(20, quantity.TradeRule)})
	}
	v := &vehicle.Vehicle{
		Name: "Orchard wagon", Slug: "orchard-wagon", Issue: "B", Date: time.Date(2024, 5, 1, 0, 0, 0, 0, time.UTC),
		Hash: "3fa9c2d1b7e80a55", Unit: unit, Items: []*vehicle.Item{it},
	}
	return v, it
}

// ranges are what random dimensions are drawn from, in millimetres.
var ranges = map[string][2]float64{
	"long": {500, 2400}, "wide": {25, 110}, "deep": {25, 110}, "thick": {14, 40}, "high": {200, 450},
	"radius": {400, 750}, "return": {250, 400}, "bend": {60, 160}, "chamfer": {3, 8}, "chamfer-stop": {60, 150}, "eased": {2, 5},
	"rise": {5, 12}, "flat": {250, 400}, "king-bolt": {15, 22}, "stake-long": {25, 50}, "stake-wide": {10, 20}, "stake-in": {60, 90},
	"round": {4, 10}, "tenon": {10, 20}, "tenon-long": {20, 50}, "tenon-wide": {10, 20}, "tenon-thick": {10, 20},
	"hind-wide": {25, 110}, "hind-deep": {25, 110}, "round-ends": {3, 10}, "clip-ends": {3, 10},
	"groove-wide": {8, 15}, "groove-deep": {4, 8}, "tongue": {10, 14}, "dowel": {8, 12}, "dowel-deep": {20, 35}, "tyre-bolt": {6, 8}, "gap": {1, 2},
}

// anyPart is a part of a kind with random legal dimensions and some work.
func anyPart(t testing.TB, k parts.Kind, r *rand.Rand) parts.Part {
	between := func(lo, hi float64) Length { return Length(lo + r.Float64()*(hi-lo)) }
	for range 3000 {
		m := parts.Measures{Lengths: map[string]Length{}, Counts: map[string]int{}}
		for _, d := range k.Dimensions {
			if d.Need == parts.Optional && r.IntN(3) == 0 {
				continue
			}
			if d.In == parts.InCount {
				m.Counts["felloes"] = 4 + r.IntN(5)
				continue
			}
			if b, ok := ranges[d.Name]; ok && d.In == parts.InLength {
				m.Lengths[d.Name] = between(b[0], b[1])
			}
		}
		delete(m.Counts, "spokes")
		if k.Name != "felloe" && k.Name != "seat rail" {
			long := float64(m.Lengths["long"])
			for n := range r.IntN(9) {
				f := []parts.Face{parts.Upper, parts.FirstSide, parts.Under, parts.SecondSide}[r.IntN(4)]
				y := m.Lengths[k.Dimensions[1].Name] / 2
				if f == parts.FirstSide || f == parts.SecondSide {
					y = m.Lengths[k.Dimensions[2].Name] / 2
				}
				h := parts.Hole{ID: fmt.Sprint("fastening ", n+1), What: "bolt hole", Face: f, At: form.Point{X: between(0.05*long, 0.95*long), Y: y}, Diameter: between(5, 13)}
				if r.IntN(3) == 0 {
					h.Depth = 8
				}
				m.Work = append(m.Work, h)
			}
		}
		p, err := k.Build(m)
		if err == nil && p.Validate() == nil {
			return p
		}
	}
	t.Fatalf("no legal %s was found", k.Name)
	return nil
}

// tool finds a program to check against. Where it is missing the test is left
// out, with a word; where CI is "true" it fails, so that nothing goes unchecked there.
func tool(t *testing.T, name, from string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is missing; install %s", name, from)
	}
	t.Skipf("%s is missing; install %s to check against it", name, from)
	return ""
}

func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	var out, complaint bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &complaint
	require.NoError(t, c.Run(), complaint.String())
	return out.Bytes()
}

func saved(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

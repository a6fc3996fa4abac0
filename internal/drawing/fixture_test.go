package drawing

import (
	"bytes"
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
	"lostwood/parts/anypart"
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

// anyPart is the nth part of a kind with random dimensions that can be made.
func anyPart(k parts.Kind, n int) parts.Part { return anypart.Of(k).Example(n) }

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

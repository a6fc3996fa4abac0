package survey

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A faulty survey has one fault, where its mark ▲ stands.
type faulty struct{ name, text, found, want string }

func (f faulty) run(t *testing.T) {
	text, at := marked(t, f.text)
	s, err := read("wagon.toml", []byte(text), fakeKinds())
	require.Nil(t, s, "a survey with a fault produces nothing")
	var faults *Faults
	require.ErrorAs(t, err, &faults)
	require.Equal(t, []Fault{{At: at, Found: f.found, Want: f.want}}, faults.List)
}

// A fastening with two directions is still told what else is wrong in it: a thing
// that is nowhere, a grip that is no length.
func TestFaultsBesideTwoDirections(t *testing.T) {
	_, err := Read("wagon.toml", []byte(`[vehicle]
name = "Barrow"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
timber = "white ash"
bought = 15
service = 12
[iron]
plate = { kind = "strap", runs = "along", thick = "1/4", wide = "1", long = "22", holes = ["2", "20"] }
[part]
side = { kind = "sill", runs = "along" }
[[fastening]]
bolt = "3/8"
down = ["side", "plat#1"]
up = ["side", "plate#2"]
grip = "2 1/4 ± "
`))
	var faults *Faults
	require.ErrorAs(t, err, &faults)
	var at []Position
	for _, f := range faults.List {
		at = append(at, f.At)
	}
	require.Equal(t, []Position{{16, 17}, {17, 1}, {18, 16}}, at)
}

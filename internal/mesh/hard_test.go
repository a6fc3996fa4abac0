package mesh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/internal/mesh/gauge"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

func across(x, z, r float64) form.Volume {
	return form.Prism{Frame: side, Profile: disc(x, z, r), From: -endless, To: endless}
}

func cutFrom(v form.Volume, cuts ...form.Volume) form.Volume {
	return form.Difference{From: v, Cut: cuts}
}

// hard are places where meshes go wrong, with the pieces and ways through that
// a person counts in each.
func hard() map[string]struct {
	v       form.Volume
	pieces  int
	through int
} {
	type c = struct {
		v       form.Volume
		pieces  int
		through int
	}
	stick := block(0, -20, 0, 200, 20, 40)
	taper := form.Prism{Frame: side, Profile: polygon(0, 10, 150, 0, 200, 0, 200, 40, 0, 40), From: -20, To: 20}
	k := 1 / math.Sqrt2
	return map[string]c{
		"a wall of 0.05 mm":                {cutFrom(stick, bore(50, 20-5.55, 5.5)), 1, 1},
		"a wall of 0.001 mm":               {cutFrom(stick, bore(50, 20-5.501, 5.5)), 1, 1},
		"a hole that just breaks out":      {cutFrom(stick, bore(50, 20-5.45, 5.5)), 1, 0},
		"a hole tangent to a side":         {cutFrom(stick, bore(50, 14.5, 5.5)), 1, 1},
		"a hole through an arris":          {cutFrom(stick, form.Prism{Frame: front, Profile: disc(20, 40, 5.5), From: 20, To: 60}), 1, 0},
		"a hole that touches an end":       {cutFrom(stick, bore(5.5, 0, 5.5)), 1, 1},
		"a chamfer that runs out":          {cutFrom(taper, form.Prism{Frame: front, Profile: polygon(20, 4, 16, 0, 20, 0), From: -endless, To: endless}), 1, 0},
		"a chamfer stopped on a slope":     {cutFrom(stick, form.Intersection{form.Prism{Frame: front, Profile: polygon(20, 34, 21, 41, 14, 40), From: 40, To: 160}, half(150, 20, 40, 0.98, 0.14, math.Sqrt(1-0.98*0.98-0.14*0.14))}), 1, 0},
		"two equal holes that cross":       {cutFrom(stick, bore(100, 0, 8), across(100, 20, 8)), 1, 3},
		"two holes that cross off centre":  {cutFrom(stick, bore(100, 3, 8), across(103, 20, 6)), 1, 3},
		"two holes that graze":             {cutFrom(stick, bore(100, 0, 8), across(114.2, 20, 6.3)), 1, 3},
		"two holes side by side that meet": {cutFrom(stick, bore(100, 0, 8), bore(112, 0, 8)), 1, 1},
		"a mortise as wide as its hole":    {cutFrom(stick, block(90, -8, 20, 130, 8, 40), bore(110, 0, 8)), 1, 1},
		"a hole in a mortise's corner":     {cutFrom(stick, block(90, -8, 20, 130, 8, 40), bore(90, 8, 5)), 1, 1},
		"a counterbore":                    {cutFrom(stick, bore(50, 0, 5), form.Prism{Frame: flat, Profile: disc(50, 0, 9), From: 30, To: 40}), 1, 1},
		"a bore made in two halves":        {cutFrom(stick, form.Prism{Frame: flat, Profile: disc(50, 0, 9), From: -5, To: 20}, form.Prism{Frame: flat, Profile: disc(50, 0, 9), From: 20, To: 45}), 1, 1},
		"a bore turned and a bore swept":   {cutFrom(stick, form.Prism{Frame: flat, Profile: disc(50, 0, 9), From: -5, To: 20}, form.Revolved{Frame: form.Frame{Origin: vec(50, 0, 0), U: form.Dir{X: 0.8, Y: 0.6}, V: form.Dir{X: -0.6, Y: 0.8}}, Profile: rectangle(0, 10, 9, 50), Sweep: 2 * math.Pi}), 1, 1},
		"blocks with faces in one plane":   {cutFrom(form.Union{block(-100, -20, 0, 100, 20, 40), block(80, -20, 0, 300, 20, 20)}, block(280, -10, -1, 320, 10, 21)), 1, 0},
		"blocks end to end":                {form.Union{stick, block(200, -20, 0, 300, 20, 40)}, 1, 0},
		"a tenon flush on one side":        {form.Union{stick, block(200, -20, 10, 240, 5, 40)}, 1, 0},
		"a cut flush with the top":         {cutFrom(stick, block(50, -5, 20, 80, 5, 40)), 1, 0},
		"a housing flush with both sides":  {cutFrom(stick, block(50, -20, 30, 80, 20, 40)), 1, 0},
		"two pieces":                       {cutFrom(stick, block(90, -30, -1, 110, 30, 41)), 2, 0},
		"a hollow":                         {cutFrom(stick, block(90, -5, 10, 110, 5, 30)), 2, 0},
		"the same block twice":             {form.Union{stick, stick}, 1, 0},
		"a slot at a slant":                {cutFrom(stick, form.Prism{Frame: form.Frame{Origin: vec(100, 0, 20), U: form.Dir{X: k, Z: k}, V: form.Dir{Y: 1}}, Profile: rectangle(-3, -6, 3, 6), From: -endless, To: endless}), 1, 1},
		"an oblique hole out of an arris":  {cutFrom(stick, form.Prism{Frame: form.Frame{Origin: vec(100, 20, 40), U: form.Dir{X: 1}, V: form.Dir{Y: k, Z: -k}}, Profile: disc(0, 0, 6), From: -15, To: endless}), 1, 0},
		"a ball cut flat":                  {form.Intersection{form.Revolved{Frame: flat, Profile: form.Profile{corner(0, -20, 1), corner(0, 20, 0)}, Sweep: 2 * math.Pi}, half(0, 0, 12, 0, 0, 1)}, 1, 0},
		"a turned knob with a bore":        {cutFrom(form.Revolved{Frame: flat, Profile: form.Profile{corner(0, 0, 0), corner(10, 0, 0.4), corner(14, 20, -0.3), corner(6, 40, 0), corner(0, 40, 0)}, Sweep: 2 * math.Pi}, bore(0, 0, 3)), 1, 1},
		"an endless bar between planes":    {form.Intersection{form.Prism{Frame: front, Profile: rounded(-20, 0, 20, 40, 6), From: -endless, To: endless}, half(0, 0, 0, -0.96, 0.28, 0), half(200, 0, 0, 0.8, 0, 0.6)}, 1, 0},
	}
}

func checked(t *testing.T, s *solid.Solid, tolerance quantity.Length, exact float64) (*mesh.Mesh, gauge.Gauge) {
	t.Helper()
	m, err := mesh.Of(s, tolerance)
	require.NoError(t, err)
	r := mesh.Inspect(m)
	require.NoError(t, r.Err())
	g := gauge.Measure(s, m, 1, 600)
	assert.Empty(t, g.Faults(tolerance))
	if exact > 0 {
		assert.InDelta(t, exact, float64(m.Volume()), float64(tolerance)*float64(m.Area()))
	}
	return m, g
}

func TestHardPlaces(t *testing.T) {
	for name, c := range hard() {
		t.Run(name, func(t *testing.T) {
			for _, tolerance := range []quantity.Length{0.05, 0.02} {
				for turn := range 2 {
					v := c.v
					if turn > 0 {
						v = chanceOf(int64(turn)).place().Put(v)
					}
					m, _ := checked(t, compiled(t, v), tolerance, 0)
					r := mesh.Inspect(m)
					assert.Equal(t, c.pieces, r.Pieces)
					assert.Equal(t, 2*c.pieces-2*c.through, r.Euler)
				}
			}
		})
	}
}

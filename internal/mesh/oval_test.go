package mesh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

func ellipse(x, y, u, v float64) form.Ellipse {
	return form.Ellipse{Centre: form.Point{X: form.Length(x), Y: form.Length(y)}, U: form.Length(u), V: form.Length(v)}
}

func oval(first, last form.Ellipse) form.Oval {
	return form.Oval{Frame: flat, From: 0, To: 300, First: first, Last: last}
}

// ovals taper in every way there is: alike, unlike, one way only, against each
// other, round to flat, with their middle going aside.
func ovals() map[string]form.Oval {
	return map[string]form.Oval{
		"tapered alike":        oval(ellipse(0, 0, 30, 20), ellipse(0, 0, 18, 12)),
		"tapered unlike":       oval(ellipse(0, 0, 31, 24), ellipse(0, 0, 20, 16)),
		"not tapered":          oval(ellipse(0, 0, 25, 12), ellipse(0, 0, 25, 12)),
		"tapered one way":      oval(ellipse(0, 0, 30, 20), ellipse(0, 0, 30, 12)),
		"turned about":         oval(ellipse(0, 0, 28, 14), ellipse(0, 0, 14, 28)),
		"from round to flat":   oval(ellipse(0, 0, 22, 22), ellipse(0, 0, 24, 6)),
		"with a straight face": oval(ellipse(0, 0, 30, 20), ellipse(0, 8, 18, 12)),
		"leaning":              oval(ellipse(0, 0, 25, 12), ellipse(40, -9, 25, 12)),
		"round and tapered":    oval(ellipse(0, 0, 25, 25), ellipse(0, 0, 14, 14)),
		"round and straight":   oval(ellipse(3, 4, 20, 20), ellipse(3, 4, 20, 20)),
	}
}

func TestOvals(t *testing.T) {
	for name, o := range ovals() {
		t.Run(name, func(t *testing.T) {
			m, _ := checked(t, compiled(t, o), 0.02, float64(o.Content()))
			assert.Equal(t, 2, mesh.Inspect(m).Euler)
			m, _ = checked(t, compiled(t, chanceOf(1).place().Put(o)), 0.05, float64(o.Content()))
			assert.Equal(t, 2, mesh.Inspect(m).Euler)
		})
	}
}

// An oval put together with every other sort of piece, and what that holds
// where a formula gives it.
func TestOvalsWithOthers(t *testing.T) {
	body := oval(ellipse(0, 0, 31, 24), ellipse(0, 0, 20, 16))
	cone := form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: polygon(0, -10, 9, -10, 3, 310, 0, 310)}
	coneContent := math.Pi * 300 / 3 * (square(9-6*10./320) + square(9-6*310./320) + (9-6*10./320)*(9-6*310./320))
	for name, c := range map[string]struct {
		v       form.Volume
		exact   float64
		through int
	}{
		"a tenon at its foot":         {union(block(-14, -9, -60, 14, 9, 10), body), float64(body.Content()) + 28*18*60, 0},
		"a tongue at its head":        {union(body, form.Prism{Frame: flat, Profile: disc(0, 0, 12), From: 290, To: 360}), float64(body.Content()) + math.Pi*144*60, 0},
		"a tongue as wide as it":      {union(oval(ellipse(0, 0, 31, 24), ellipse(0, 0, 16, 16)), form.Prism{Frame: flat, Profile: disc(0, 0, 16), From: 300, To: 360}), 0, 0},
		"bored along":                 {cutFrom(body, bore(0, 0, 8)), float64(body.Content()) - math.Pi*64*300, 1},
		"bored by a cone":             {cutFrom(body, cone), float64(body.Content()) - coneContent, 1},
		"bored across":                {cutFrom(body, across(0, 150, 7)), 0, 1},
		"bored across off its middle": {cutFrom(body, across(18, 150, 7)), 0, 1},
		"bored tangent to its flank":  {cutFrom(body, across(25, 150, 6)), 0, 0},
		"a mortise":                   {cutFrom(body, block(-5, -40, 120, 5, 40, 180)), 0, 1},
		"one flat":                    {cutFrom(body, half(0, 15, 0, 0, -1, 0)), 0, 0},
		"halved by a box":             {form.Intersection{body, block(0, -40, -10, 40, 40, 310)}, float64(body.Content()) / 2, 0},
		"cut off aslant":              {form.Intersection{body, half(0, 0, 250, 0.3, 0.2, math.Sqrt(1-0.13))}, 0, 0},
		"an eye through two ovals":    {union(body, oval(ellipse(0, 0, 20, 30), ellipse(0, 0, 26, 9))), 0, 0},
		"an oval hole":                {cutFrom(block(-50, -40, 10, 50, 40, 290), body), 0, 1},
		"two ovals end to end": {
			union(body, form.Oval{Frame: flat, From: 300, To: 400, First: ellipse(0, 0, 20, 16), Last: ellipse(0, 0, 10, 14)}),
			float64(body.Content()) + float64(form.Oval{To: 100, First: ellipse(0, 0, 20, 16), Last: ellipse(0, 0, 10, 14)}.Content()), 0,
		},
		"a collar round it": {union(body, form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: polygon(0, 100, 34, 100, 30, 120, 0, 120)}), 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			for turn, tolerance := range []quantity.Length{0.02, 0.05} {
				v := c.v
				if turn > 0 {
					v = chanceOf(int64(turn)).place().Put(v)
				}
				m, _ := checked(t, compiled(t, v), tolerance, c.exact)
				r := mesh.Inspect(m)
				assert.Equal(t, 1, r.Pieces)
				assert.Equal(t, 2-2*c.through, r.Euler)
			}
		})
	}
}

func square(x float64) float64 { return x * x }

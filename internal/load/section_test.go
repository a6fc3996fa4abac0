package load

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts"
	"lostwood/parts/form"
)

func sawn(work ...parts.Feature) *sawyer {
	return newSawyer(parts.Stick{Body: parts.Square(1000, 100, 50), Features: work})
}

// Plain geometry: b h^3 / 12, 1.5 V / A.
func TestWholeSection(t *testing.T) {
	s := sawn().at(300)
	assert.InDelta(t, 5000, float64(s.Area), 1e-6)
	assert.InDelta(t, 100*math.Pow(50, 3)/12, s.Inertia, 1e-3)
	assert.InDelta(t, 25, float64(s.Middle), 1e-9)
	assert.InDelta(t, 50, float64(s.Across), 1e-9)
	assert.InDelta(t, 25, float64(s.Up), 1e-9)
	assert.InDelta(t, 25, float64(s.Down), 1e-9)
	assert.InEpsilon(t, 1.5/5000, s.shear(1), 0.01)
	assert.InDelta(t, 6e5/(100*50*50/6.)/1, s.bending(6e5), 1e-6)
}

// A hole from above takes its width out of the section; one from the side
// takes d^3 out of h^3; a housing takes its depth.
func TestNetSections(t *testing.T) {
	s := sawn(hole("a", 500, 40, 12)).at(500)
	assert.InDelta(t, 88*50, float64(s.Area), 1e-4)
	assert.InDelta(t, 88*math.Pow(50, 3)/12, s.Inertia, 0.1)

	side := parts.Hole{ID: "b", Face: parts.FirstSide, At: form.Point{X: 500, Y: 25}, Diameter: 20}
	s = sawn(side).at(500)
	assert.InDelta(t, 100*30, float64(s.Area), 1e-4)
	assert.InDelta(t, 100*(math.Pow(50, 3)-math.Pow(20, 3))/12, s.Inertia, 0.1)

	// Beside the middle of the hole the chord is 2 sqrt(6^2 - 3^2).
	s = sawn(hole("a", 500, 40, 12)).at(503)
	assert.InDelta(t, (100-2*math.Sqrt(27))*50, float64(s.Area), 1e-3)

	sunk := hole("c", 500, 50, 10)
	sunk.Counterbore = &parts.Counterbore{Diameter: 30, Depth: 20}
	s = sawn(sunk).at(500) // 90 wide below 30, 70 above
	area, low := 90*30+70*20., 90*30*15+70*20*40.
	assert.InDelta(t, area, float64(s.Area), 1e-3)
	assert.InDelta(t, low/area, float64(s.Middle), 1e-6)

	mortise := parts.Mortise{ID: "d", Face: parts.Upper, At: form.Point{X: 500, Y: 50}, Long: 60, Wide: 20, Depth: 25}
	s = sawn(mortise).at(480)
	assert.InDelta(t, 100*50-20*25, float64(s.Area), 1e-3)
	assert.Contains(t, sawn(mortise).worst(), 500.)
}

// A thin fin that a cut leaves standing does not make the section worse than
// it is without it.
func TestFin(t *testing.T) {
	notch := parts.Mortise{ID: "n", Face: parts.Upper, At: form.Point{X: 500, Y: 53}, Long: 60, Wide: 94, Depth: 20}
	s := newSawyer(parts.Stick{Body: parts.Square(1000, 100, 50), Features: []parts.Feature{notch}}).at(500)
	assert.InDelta(t, 100*math.Pow(30, 3)/12, s.Inertia, 100*math.Pow(30, 3)/12*.03)
	assert.InDelta(t, 15, float64(s.Up), 0.5)
}

// Whatever holes there are: a section is no larger than the whole, nor stiffer.
func TestNetIsLess(t *testing.T) {
	whole := sawn().at(500)
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(2, 30).Draw(t, "d")
		y := rapid.Float64Range(d/2+1, 99-d/2).Draw(t, "y")
		s := sawn(hole("a", 500, y, d)).at(500)
		require.InDelta(t, (100-d)*50, float64(s.Area), 1e-3)
		require.Less(t, s.Inertia, whole.Inertia)
		require.Greater(t, s.bending(1), whole.bending(1))
	})
}

// The line across a turned or slanting cut is found as well as one that is worked out.
func TestSoughtAgrees(t *testing.T) {
	p := hole("a", 500, 40, 12).Cuts(parts.Square(1000, 100, 50))[0]
	p = form.Intersection{p, form.Prism{Frame: parts.Upper.Frame(parts.Square(1000, 100, 50)), Profile: form.Rectangle(form.Point{}, form.Point{X: 1000, Y: 100}), From: -50, To: 0}}
	exact, found := across(p, 502, 25), sought(p, 502, 25)
	require.Len(t, found, len(exact))
	for i := range exact {
		assert.InDelta(t, exact[i].from, found[i].from, 1e-6)
		assert.InDelta(t, exact[i].to, found[i].to, 1e-6)
	}
}

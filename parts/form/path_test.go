package form_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts/form"
)

// bentRail is a line, a quarter turn to the left and another line.
func bentRail(a, r, b form.Length) form.Path {
	return form.Path{
		{Point: form.Point{}},
		{Point: form.Point{X: a}, Bulge: math.Tan(math.Pi / 8)},
		{Point: form.Point{X: a + r, Y: r}},
		{Point: form.Point{X: a + r, Y: r + b}},
	}
}

func TestBandKeepsTheMiddleLinesLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) form.Length {
			return form.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		r := draw("r", 20, 300)
		half := draw("half", 2, .9*float64(r))
		p := bentRail(draw("a", 10, 500), r, draw("b", 10, 500))
		band := p.Band(half)
		require.NoError(t, band.Valid())
		// Pappus: a band's area is its width times its middle line.
		require.InEpsilon(t, float64(2*half*p.Long()), float64(band.Area()), 1e-9)
		back := p.Offset(half).Offset(-half)
		for i := range p {
			require.InDelta(t, float64(p[i].X), float64(back[i].X), 1e-9)
			require.InDelta(t, float64(p[i].Y), float64(back[i].Y), 1e-9)
		}
	})
}

func TestEndsAndBends(t *testing.T) {
	p := bentRail(100, 50, 30)
	require.InDelta(t, 130+50*math.Pi/2, float64(p.Long()), 1e-9)
	at, way := p.Start()
	require.Equal(t, form.Point{}, at)
	require.Equal(t, form.Dir{X: 1}, way)
	at, way = p.End()
	require.Equal(t, form.Point{X: 150, Y: 80}, at)
	require.Equal(t, form.Dir{Y: 1}, way)
	b := p.Bend(1)
	require.InDelta(t, 100, float64(b.Centre.X), 1e-9)
	require.InDelta(t, 50, float64(b.Centre.Y), 1e-9)
	require.InDelta(t, 50, float64(b.Radius), 1e-9)
	require.InDelta(t, math.Pi/2, float64(b.Turn), 1e-9)
}

// An ellipse tipped off a circle by 12 degrees, as a felloe's bolt hole is
// seen: sixteen arcs keep within a thousandth of a millimetre, as is said of
// such marks.
func TestArcsThroughACurve(t *testing.T) {
	const r, squash = 11, 0.978
	at := func(t float64) form.Point {
		s, c := math.Sincos(2 * math.Pi * t)
		return form.Point{X: form.Length(r * squash * c), Y: form.Length(r * s)}
	}
	p := form.Profile(form.Through(16, at)[:16])
	require.NoError(t, p.Valid())
	require.InEpsilon(t, math.Pi*r*r*squash, float64(p.Area()), 1e-5)
	for i := range 1000 {
		require.InDelta(t, 0, float64(p.Distance(at(float64(i)/1000))), 1e-3)
	}
}

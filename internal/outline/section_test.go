package outline

import (
	"math"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/solid"
	"lostwood/parts"
	"lostwood/parts/anypart"
	"lostwood/parts/form"
)

// The section at a station is the solid's, for every kind of part at random
// dimensions: every place on its outlines is on the solid's surface, and wood and
// air lie to the sides of it that they should.
func TestSectionIsTheSolids(t *testing.T) {
	for _, k := range parts.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			worst := 0.0
			rapid.Check(t, func(t *rapid.T) {
				s := anypart.Of(k).Draw(t, "part").Stick()
				body, err := solid.New(s.Volume())
				require.NoError(t, err)
				long, _, _ := s.Body.Box()
				x := long / 2
				if _, straight := s.Body.(parts.Sawn); straight {
					x = long * Length(rapid.Float64Range(0.01, 0.99).Draw(t, "station"))
				}
				d := Section(s, x)
				require.NotEmpty(t, d.Paths)
				for _, p := range d.Paths {
					worst = math.Max(worst, onSurface(t, body, x, p))
				}
			})
			t.Logf("out by %.6f mm at most", worst)
		})
	}
}

func onSurface(t *rapid.T, body *solid.Solid, x Length, p Path) float64 {
	worst := 0.0
	segments := p.Segments()
	for i, s := range segments {
		last := segments[(i+len(segments)-1)%len(segments)]
		require.InDelta(t, float64(last.B.X), float64(s.A.X), 1e-3)
		require.InDelta(t, float64(last.B.Y), float64(s.A.Y), 1e-3)
		mid, dx, dy := s.middle()
		field := func(off float64) float64 {
			return body.Evaluate(v3.Vec{X: float64(x), Y: float64(mid.X) - dy*off, Z: float64(mid.Y) + dx*off})
		}
		out := math.Abs(field(0))
		require.Less(t, out, 0.02, "%v in the section at %v", mid, x)
		worst = math.Max(worst, out)
		if distance := math.Hypot(float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y)); distance > 0.1 {
			require.Less(t, field(0.01), 0.0, "wood to the left of %v", mid)
			require.Greater(t, field(-0.01), 0.0, "air to the right of %v", mid)
		}
	}
	return worst
}

// A chamfer of 10 mm takes a triangle of 50 mm2 off each corner of a 100 by 80 mm
// section, and a housing 20 mm deep its whole width: areas by hand.
func TestSectionAreasByHand(t *testing.T) {
	s := parts.Plain{Name: "sill", Long: 900, Wide: 100, Deep: 80, Chamfer: 10, Work: []parts.Feature{
		parts.Housing{ID: "joint 1", What: "housing", Face: parts.Upper, Station: 300, Width: 60, Depth: 20},
		parts.Mortise{ID: "joint 2", What: "mortise", Face: parts.Upper, At: form.Point{X: 600, Y: 50}, Long: 60, Wide: 30},
	}}.Stick()
	area := func(x Length) float64 {
		sum := 0.0
		for _, p := range Section(s, x).Paths {
			sum += float64(form.Profile(p.Run).Area())
		}
		return sum
	}
	require.InDelta(t, 100*80-4*50, area(450), 1e-3)
	require.InDelta(t, 100*60-2*50, area(300), 1e-3)
	require.InDelta(t, 100*80-4*50-30*80, area(600), 1e-3)
	require.Len(t, Section(s, 600).Paths, 2, "a through mortise parts the wood")
	require.Empty(t, Section(s, -5).Paths)
}

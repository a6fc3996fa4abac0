package parts_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/parts"
	"lostwood/parts/form"
)

func stoppedChamfer(stop parts.Length) parts.Stick {
	return parts.Stick{
		Body: parts.Square(1000, 60, 80),
		Features: []parts.Feature{parts.Chamfer{
			ID: "chamfer 1", Edge: parts.Arris{Flat: parts.Upper, Side: parts.FirstSide},
			Size: 10, From: 200, To: 700, Stop: stop,
		}},
	}
}

// Between its stops a chamfer takes a triangular prism, and each stop is a
// pyramid: a third of the triangle times its length.
func TestStoppedChamfer(t *testing.T) {
	for stop, want := range map[parts.Length]float64{
		0:  50 * (500 - 2*10 + 2*10./3), // plain: as long as the chamfer is wide
		35: 50 * (500 - 2*35 + 2*35./3),
	} {
		s := stoppedChamfer(stop)
		require.NoError(t, s.Features[0].Check(s.Body))
		require.InDelta(t, want, float64(s.Body.Net()-parts.Net(s)), 1e-6)
		box := form.Bounds(s.Body.Volume())
		require.InDelta(t, float64(parts.Net(s))/(1000*60*80), strewn(s.Volume(), box), 3e-4)
	}
}

// A plain stop goes in at 45 degrees on both faces.
func TestStoppedChamfersLine(t *testing.T) {
	s := stoppedChamfer(0)
	line := func(f parts.Face) (xs, ys []float64) {
		marks := s.Marks(f)
		require.Len(t, marks, 1)
		for _, v := range marks[0].Path {
			xs, ys = append(xs, float64(v.X)), append(ys, float64(v.Y))
		}
		return xs, ys
	}
	xs, ys := line(parts.Upper)
	require.InDeltaSlice(t, []float64{200, 210, 690, 700}, xs, 1e-9)
	require.InDeltaSlice(t, []float64{0, 10, 10, 0}, ys, 1e-9)
	xs, ys = line(parts.FirstSide)
	require.InDeltaSlice(t, []float64{200, 210, 690, 700}, xs, 1e-9)
	require.InDeltaSlice(t, []float64{80, 70, 70, 80}, ys, 1e-9)
	require.Empty(t, s.Marks(parts.FirstEnd))
	require.Empty(t, s.Marks(parts.Under))
}

// On a tapered timber the lines keep their distance from the edge, square to it.
func TestChamferOnATaper(t *testing.T) {
	r := parts.Reach{Long: 1000, Wide: 100, Deep: 50, HindWide: 40, Chamfer: 8}
	require.NoError(t, r.Validate())
	for _, m := range r.Stick().Marks(parts.Upper) {
		require.Len(t, m.Path, 2)
		d := r.Stick().Body.Outline(parts.Upper).Distance(form.Point{
			X: (m.Path[0].X + m.Path[1].X) / 2, Y: (m.Path[0].Y + m.Path[1].Y) / 2,
		})
		require.InDelta(t, 8, float64(d), 1e-9)
	}
}

// Under a rising bolster the chamfers run out where the rise has taken them:
// 3 mm up a rise of 1 in 10 is 30 beyond the flat.
func TestChamferRunsOutInTheRise(t *testing.T) {
	b := parts.Bolster{Long: 1100, Wide: 95, Deep: 80, Rise: 20, Flat: 700, Chamfer: 3}
	require.NoError(t, b.Validate())
	for _, m := range b.Stick().Marks(parts.Under) {
		require.Len(t, m.Path, 4)
		lo, hi := form.Profile(m.Path).Bounds()
		require.InDelta(t, 170, float64(lo.X), 1e-9)
		require.InDelta(t, 930, float64(hi.X), 1e-9)
		in := math.Min(float64(lo.Y), float64(95-hi.Y))
		require.InDelta(t, 0, in, 1e-9)
	}
}

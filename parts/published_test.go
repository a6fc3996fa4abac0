package parts_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// The three solids whose volumes are published with the project's measurements
// of meshes: a bolster, a felloe and a reach, each in its own frame there.

// Bolster 1100 x 95 x 80, underside rising 20 at both ends beyond 700, chamfers
// of 3, a 20 king-bolt hole, four 11 holes of which two break into a chamfer,
// and a 60 x 40 x 25 mortise: exactly 7 849 996.2222 mm3.
func TestBolsterOfThePublishedVolume(t *testing.T) {
	hole := func(id string, x, y parts.Length) parts.Hole {
		return parts.Hole{ID: id, What: "bolt hole", Face: parts.Upper, At: form.Point{X: 550 + x, Y: 47.5 + y}, Diameter: 11}
	}
	b := parts.Bolster{
		Long: 1100, Wide: 95, Deep: 80, KingBolt: 20, Rise: 20, Flat: 700, Chamfer: 3,
		Work: []parts.Feature{
			hole("fastening 1", 450, 0), hole("fastening 2", -450, 0),
			hole("fastening 3", 300, 40.5), hole("fastening 4", -300, -40.5),
			parts.Mortise{ID: "joint 1", What: "mortise", Face: parts.Upper, At: form.Point{X: 700, Y: 47.5}, Long: 60, Wide: 40, Depth: 25},
		},
	}
	require.NoError(t, b.Validate())
	// Holes 3 and 4 meet two chamfers each, and Net takes their common wood off
	// twice: a segment of the hole, 4 from its middle, under a slope of 1.
	const r, d = 5.5, 4.0
	common := 2./3*math.Pow(r*r-d*d, 1.5) - d*(r*r*math.Acos(d/r)-d*math.Sqrt(r*r-d*d))
	require.InDelta(t, 7849996.2222, float64(parts.Net(b.Stick()))+4*common, 1e-4)
}

// Felloe of a seventh of a rim of radius 560, 50 deep, 45 wide, two 22 tongue
// holes and a 12 dowel hole 50 deep in each end: exactly 1 031 158.455 mm3.
func TestFelloeOfThePublishedVolume(t *testing.T) {
	f := parts.Felloe{
		Radius: 560, Deep: 50, Wide: 45, Felloes: 7, Tongue: 22, Dowel: 12, DowelDeep: 50,
	}
	require.NoError(t, f.Validate())
	require.InDelta(t, 1031158.455, float64(parts.Net(f.Stick())), 1e-3)
}

// Reach 2400 x 50 x 45 with six 11 holes: exactly 5 374 341.042 mm3.
func TestReachOfThePublishedVolume(t *testing.T) {
	r := parts.Reach{Long: 2400, Wide: 50, Deep: 45}
	for _, x := range []parts.Length{50, 200, 866.7, 1450.7, 1977.7, 2351} {
		r.Work = append(r.Work, parts.Hole{ID: "fastening", What: "bolt hole", Face: parts.Under, At: form.Point{X: x, Y: 25}, Diameter: 11})
	}
	require.NoError(t, r.Validate())
	require.InDelta(t, 5374341.042, float64(parts.Net(r.Stick())), 1e-3)
}

// The US Army's six-mule wagon, specification of 1858-61: felloes 2 1/2 wide,
// 2 3/4 deep, wheels 46 and 58 over tyres of 5/8. With two spokes a felloe, six
// fore and seven hind: chord 22 3/8, rise 3.00, stock 5 3/4; and chord 24 5/8,
// rise 2.81, stock 5 9/16, to the nearest sixteenth (worked out from the
// specification's figures).
func TestFelloesOfTheArmyWagon(t *testing.T) {
	const inch = quantity.Inch
	for _, w := range []struct {
		height, chord, rise, stock parts.Length
		felloes                    int
	}{
		{46, 22 + 3./8, 3.00, 5 + 3./4, 6},
		{58, 24 + 5./8, 2.81, 5 + 9./16, 7},
	} {
		f := parts.Felloe{
			Radius: (w.height/2 - 5./8) * inch, Wide: 2.5 * inch, Deep: 2.75 * inch,
			Felloes: w.felloes, Spokes: 2 * w.felloes,
		}
		require.NoError(t, f.Validate())
		arc := f.Stick().Body.(parts.Arc)
		require.InDelta(t, float64(w.chord), arc.Chord().Inches(), 1./32)
		require.InDelta(t, float64(w.rise), arc.Sagitta().Inches(), .005)
		blank := arc.Blank()
		require.InDelta(t, float64(w.stock), blank.Deep.Inches(), 1./32)
		require.InDelta(t, 2.5, blank.Wide.Inches(), 1e-9)
		require.Equal(t, parts.Curved, blank.Making)
		_, _, deep := arc.Box()
		require.LessOrEqual(t, deep, blank.Deep)
	}
}

// A taper in both ways is a prismoid: its volume is (first + 4 middle + last)
// sections times a sixth of its length (prismoidal formula, any handbook of
// mensuration; from memory). The army wagon's coupling pole: 116 long, 4 1/2 by
// 3 at the fore end, 2 3/4 by 2 1/2 at the hind one.
func TestTaperedReachIsAPrismoid(t *testing.T) {
	const in = quantity.Inch
	r := parts.Reach{Long: 116 * in, Wide: 4.5 * in, Deep: 3 * in, HindWide: 2.75 * in, HindDeep: 2.5 * in}
	require.NoError(t, r.Validate())
	middle := (4.5 + 2.75) / 2 * (3 + 2.5) / 2
	want := 116. / 6 * (4.5*3 + 4*middle + 2.75*2.5) * math.Pow(25.4, 3)
	require.InEpsilon(t, want, float64(parts.Net(r.Stick())), 1e-12)
}

// A bent rail's wood is its section times its middle line (Pappus), and so is
// the straight stock that it is bent from.
func TestBentSeatRail(t *testing.T) {
	s := parts.SeatRail{Long: 900, Wide: 30, Deep: 26, Return: 300, Bend: 80}
	require.NoError(t, s.Validate())
	middle := 900.0 - 30 - 160 + 2*(300-15-80) + 80*math.Pi
	stick := s.Stick()
	require.InEpsilon(t, 30*26*middle, float64(parts.Net(stick)), 1e-12)
	require.InEpsilon(t, middle, float64(stick.Body.Blank().Long), 1e-12)
	require.Equal(t, parts.Steamed, stick.Body.Blank().Making)

	s.Round = 6
	require.NoError(t, s.Validate())
	// The section is the rectangle less its corners; its middle is still on the
	// middle line, so Pappus holds as before.
	require.InEpsilon(t, (30*26-(4-math.Pi)*36)*middle, float64(parts.Net(s.Stick())), 1e-12)
}

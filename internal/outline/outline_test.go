package outline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts"
	"lostwood/parts/form"
)

func at(x, y Length) form.Point { return form.Point{X: x, Y: y} }

// A bulge of 1 is a half circle, and one of tan(22.5 degrees) a quarter: the bulge
// is the tangent of a quarter of the included angle (see form.Vertex).
func TestArcOfKnownBulges(t *testing.T) {
	half, ok := Segment{at(0, 0), at(10, 0), 1}.Arc()
	require.True(t, ok)
	require.InDelta(t, 5, float64(half.Centre.X), 1e-12)
	require.InDelta(t, 0, float64(half.Centre.Y), 1e-12)
	require.InDelta(t, 5, float64(half.Radius), 1e-12)
	require.InDelta(t, -5, float64(half.At(0.5).Y), 1e-12, "it turns anticlockwise, so its belly lies to the right of the chord")

	quarter, ok := Segment{at(1, 0), at(0, 1), math.Tan(math.Pi / 8)}.Arc()
	require.True(t, ok)
	require.InDelta(t, 0, float64(quarter.Centre.X), 1e-12)
	require.InDelta(t, 0, float64(quarter.Centre.Y), 1e-12)
	require.InDelta(t, 1, float64(quarter.Radius), 1e-12)

	_, ok = Segment{at(0, 0), at(10, 0), 0}.Arc()
	require.False(t, ok)
}

func segments(t *rapid.T) Segment {
	coordinate := rapid.Float64Range(-500, 500)
	return Segment{
		at(Length(coordinate.Draw(t, "ax")), Length(coordinate.Draw(t, "ay"))),
		at(Length(coordinate.Draw(t, "bx")), Length(coordinate.Draw(t, "by"))),
		rapid.Float64Range(-2, 2).Draw(t, "bulge"),
	}
}

func TestBoundsHoldEveryPointOfASegmentAndTouchIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segments(t)
		b := s.Bounds()
		const sag = 0.001
		var seen Box
		for i, p := range s.Chords(sag) {
			require.True(t, b.Grown(1e-6).Holds(Box{p, p}))
			seen = seen.joined(Box{p, p}, i > 0)
		}
		require.True(t, seen.Grown(sag+1e-6).Holds(b), "the box is no larger than the segment")
	})
}

func TestChordsKeepWithinTheSag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := segments(t)
		a, ok := s.Arc()
		if !ok {
			return
		}
		const sag = 0.05
		p := s.Chords(sag)
		for i := 1; i < len(p); i++ {
			mid := at((p[i-1].X+p[i].X)/2, (p[i-1].Y+p[i].Y)/2)
			off := float64(a.Radius) - math.Hypot(float64(mid.X-a.Centre.X), float64(mid.Y-a.Centre.Y))
			require.InDelta(t, 0, off, sag+1e-6)
		}
	})
}

func TestCrossesSeesALineThroughABox(t *testing.T) {
	box := Box{at(10, 10), at(20, 20)}
	for _, tc := range []struct {
		s    Segment
		want bool
		why  string
	}{
		{Segment{at(0, 15), at(30, 15), 0}, true, "right through"},
		{Segment{at(12, 12), at(13, 13), 0}, true, "all inside"},
		{Segment{at(0, 0), at(30, 5), 0}, false, "below"},
		{Segment{at(0, 10), at(30, 10), 0}, false, "along the edge"},
		{Segment{at(0, 25), at(25, 0), 0}, true, "across a corner"},
		{Segment{at(0, 19), at(19, 0), 0}, false, "past a corner"},
		{Segment{at(0, 30), at(30, 30), 1}, true, "an arc hanging into it"},
		{Segment{at(0, 30), at(30, 30), -1}, false, "the arc the other way"},
	} {
		require.Equal(t, tc.want, tc.s.Crosses(box), tc.why)
	}
}

func bolster() parts.Stick {
	return parts.Bolster{
		Long: 1200, Wide: 90, Deep: 110, Rise: 15, Flat: 700, KingBolt: 27, StakeLong: 40, StakeWide: 30, StakeIn: 60,
		Work: []parts.Feature{
			parts.Hole{ID: "fastening 1", What: "bolt hole", Face: parts.FirstSide, At: at(300, 60), Diameter: 12, Depth: 50},
			parts.Hole{ID: "fastening 2", What: "bolt hole", Face: parts.Upper, At: at(500, 40), Diameter: 12, Counterbore: &parts.Counterbore{Diameter: 30, Depth: 8}},
		},
	}.Stick()
}

// where is a place on a face's sheet as a place in space.
func where(b parts.Body, f parts.Face, p form.Point) [3]float64 {
	fr := f.Frame(b)
	return [3]float64{
		float64(fr.Origin.X) + float64(p.X)*fr.U.X + float64(p.Y)*fr.V.X,
		float64(fr.Origin.Y) + float64(p.X)*fr.U.Y + float64(p.Y)*fr.V.Y,
		float64(fr.Origin.Z) + float64(p.X)*fr.U.Z + float64(p.Y)*fr.V.Z,
	}
}

// Paper folded along the line where two faces meet lies on both: each face's lower
// edge and the next one's upper edge are the same edge of the box.
func TestNeighboursMeetAlongTheirCommonEdge(t *testing.T) {
	s := bolster()
	u := Unfold(s, 10, EndsBelow)
	met := 0
	for i := 1; i < len(u.Laid); i++ {
		up, low := u.Laid[i-1], u.Laid[i]
		if up.Extent.Min.Y != low.Extent.Max.Y {
			continue
		}
		met++
		for _, x := range []Length{0, 600, 1200} {
			a := where(s.Body, up.Face, at(x, 0))
			b := where(s.Body, low.Face, at(x, low.Extent.Height()))
			for k := range a {
				require.InDelta(t, a[k], b[k], 1e-9, "%v meets %v", up.Face, low.Face)
			}
		}
	}
	require.Equal(t, 2, met, "upper, first side, under; the second side and the ends are plain")
	require.Equal(t, []parts.Face{parts.SecondSide, parts.FirstEnd, parts.SecondEnd}, u.Plain)
}

// Where the plain faces lie between the worked ones, the unfolding begins after
// them, so that what can meet does meet.
func TestUnfoldingBeginsAfterThePlainFaces(t *testing.T) {
	s := parts.Plain{Name: "sill", Long: 900, Wide: 60, Deep: 80, Work: []parts.Feature{
		parts.Hole{ID: "fastening 1", What: "bolt hole", Face: parts.SecondSide, At: at(300, 40), Diameter: 12, Depth: 20},
	}}.Stick()
	s.FaceSide, s.FaceEdge = parts.Upper, parts.SecondSide
	u := Unfold(s, 10, EndsBelow)
	require.Len(t, u.Laid, 2)
	require.Equal(t, parts.SecondSide, u.Laid[0].Face)
	require.Equal(t, parts.Upper, u.Laid[1].Face)
	require.Equal(t, u.Laid[0].Extent.Min.Y, u.Laid[1].Extent.Max.Y)
}

func TestFacesDoNotLieOnEachOther(t *testing.T) {
	s := bolster()
	u := Unfold(s, 10, EndsBelow)
	for i, a := range u.Laid {
		for _, b := range u.Laid[i+1:] {
			require.False(t, a.Extent.Meets(b.Extent))
		}
	}
}

func TestFaceDrawsWorkWithItsPensAndLayers(t *testing.T) {
	s := bolster()
	upper, under, side := Face(s, parts.Upper), Face(s, parts.Under), Face(s, parts.FirstSide)
	names := func(d Drawing) map[string]Pen {
		m := map[string]Pen{}
		for _, c := range d.Circles {
			m[c.Layer.Name()] = c.Pen
		}
		for _, p := range d.Paths {
			m[p.Layer.Name()] = p.Pen
		}
		return m
	}
	require.Equal(t, Work, names(upper)["BORE_THROUGH"])
	require.Equal(t, Work, names(upper)["BORE_DEEP_8MM"])
	require.Equal(t, Edge, names(upper)["OUTLINE"])
	require.Equal(t, Below, names(under)["NOT_CUT_HERE_BORE"])
	require.NotContains(t, names(under), "BORE_THROUGH")
	require.Equal(t, Work, names(side)["BORE_DEEP_50MM"])
}

func TestShiftedMovesEverything(t *testing.T) {
	d := Face(bolster(), parts.Upper)
	d.Texts = []Text{{Words: "here", At: at(1, 2)}}
	m := d.Shifted(at(10, -5))
	a, _ := d.Bounds()
	b, _ := m.Bounds()
	require.InDelta(t, float64(a.Min.X)+10, float64(b.Min.X), 1e-9)
	require.InDelta(t, float64(a.Max.Y)-5, float64(b.Max.Y), 1e-9)
	require.Equal(t, at(11, -3), m.Texts[0].At)
	require.Equal(t, d.Circles[0].Centre.X+10, m.Circles[0].Centre.X)
}

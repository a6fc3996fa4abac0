package form_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts/form"
)

// A circle's area and a half circle's centroid, 4 r / (3 pi) from its
// diameter: any handbook of mensuration; from memory.
func TestCircleAndHalfCircle(t *testing.T) {
	c := form.Circle(form.Point{X: 3, Y: -7}, 5)
	require.NoError(t, c.Valid())
	require.InDelta(t, 25*math.Pi, float64(c.Area()), 1e-12)
	require.InDelta(t, 3, float64(c.Centroid().X), 1e-12)
	require.InDelta(t, -7, float64(c.Centroid().Y), 1e-12)

	half := form.Profile{{Point: form.Point{X: -5}}, {Point: form.Point{X: 5}, Bulge: 1}}
	require.NoError(t, half.Valid())
	require.InDelta(t, 25*math.Pi/2, float64(half.Area()), 1e-12)
	require.InDelta(t, 4*5/(3*math.Pi), float64(half.Centroid().Y), 1e-12)
	lo, hi := half.Bounds()
	require.InDelta(t, 0, float64(lo.Y), 1e-12)
	require.InDelta(t, 5, float64(hi.Y), 1e-12)
}

// The area of a circle's segment for radius 1, by central angle: the common
// table of segments, (t - sin t) / 2; from memory: 90 degrees 0.28540, 120
// degrees 0.61418, 60 degrees 0.09059.
func TestSegments(t *testing.T) {
	for degrees, want := range map[float64]float64{60: .09059, 90: .28540, 120: .61418} {
		a := degrees * math.Pi / 360
		x, y := form.Length(math.Sin(a)), form.Length(math.Cos(a))
		p := form.Profile{
			{Point: form.Point{X: -x, Y: y}},
			{Point: form.Point{X: x, Y: y}, Bulge: math.Tan(a / 2)},
		}
		require.InDelta(t, want, float64(p.Area()), 5e-6, "%v degrees", degrees)
	}
}

// blob is a valid outline: a star-shaped polygon whose edges bulge a little.
func blob() *rapid.Generator[form.Profile] {
	return rapid.Custom(func(t *rapid.T) form.Profile {
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		x, y := rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")
		var p form.Profile
		for i := range n {
			a := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, .5).Draw(t, "turn")) / float64(n)
			r := rapid.Float64Range(60, 100).Draw(t, "radius")
			p = append(p, form.Vertex{
				Point: form.Point{X: form.Length(x + r*math.Cos(a)), Y: form.Length(y + r*math.Sin(a))},
				Bulge: rapid.SampledFrom([]float64{0, .1, -.05, 2e-4, .2}).Draw(t, "bulge"),
			})
		}
		return p
	}).Filter(func(p form.Profile) bool { return p.Valid() == nil })
}

// chopped replaces every arc by short chords, found from the arc's included
// angle without the package's own geometry.
func chopped(p form.Profile, pieces int) form.Profile {
	var out form.Profile
	for i, v := range p {
		n := p[(i+1)%len(p)]
		out = append(out, form.Vertex{Point: v.Point})
		if v.Bulge == 0 {
			continue
		}
		t := 4 * math.Atan(v.Bulge)
		dx, dy := float64(n.X-v.X), float64(n.Y-v.Y)
		for k := 1; k < pieces; k++ {
			// The chord from the start turns by half the angle still to go.
			f := float64(k) / float64(pieces)
			a := math.Atan2(dy, dx) - t/2*(1-f)
			l := math.Hypot(dx, dy) * math.Sin(t*f/2) / math.Sin(t/2)
			out = append(out, form.Vertex{Point: form.Point{
				X: v.X + form.Length(l*math.Cos(a)), Y: v.Y + form.Length(l*math.Sin(a)),
			}})
		}
	}
	return out
}

func TestAreaAndCentroidAgainstChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := blob().Draw(t, "p")
		q := chopped(p, 400)
		require.InEpsilon(t, float64(q.Area()), float64(p.Area()), 1e-5)
		require.InDelta(t, float64(q.Centroid().X), float64(p.Centroid().X), 2e-3)
		require.InDelta(t, float64(q.Centroid().Y), float64(p.Centroid().Y), 2e-3)
		plo, phi := p.Bounds()
		qlo, qhi := q.Bounds()
		require.InDelta(t, float64(qlo.X), float64(plo.X), 2e-3)
		require.InDelta(t, float64(qhi.Y), float64(phi.Y), 2e-3)
		require.LessOrEqual(t, plo.Y, qlo.Y+1e-9)
		require.GreaterOrEqual(t, phi.X, qhi.X-1e-9)
	})
}

func TestTurningAboutKeepsTheOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := blob().Draw(t, "p")
		require.InEpsilon(t, -float64(p.Area()), float64(p.Reversed().Area()), 1e-12)
		require.Equal(t, p, p.Reversed().Reversed())
		for _, q := range []form.Profile{p.Mirrored(40), p.Transposed(), p.Translated(3, 4)} {
			require.NoError(t, q.Valid())
			require.InEpsilon(t, float64(p.Area()), float64(q.Area()), 1e-9)
		}
		q := p.Mirrored(40).Mirrored(40)
		for i := range p {
			require.InDelta(t, float64(p[i].Y), float64(q[i].Y), 1e-9)
			require.Equal(t, p[i].Bulge, q[i].Bulge)
		}
	})
}

// inside asks for the polygon through the corners, and changes its mind for
// every arc whose segment holds the point.
func inside(p form.Profile, x, y float64) bool {
	// A chord right through the point would leave open which side it is on.
	x, y = x+1.3e-9, y+1.7e-9
	in := false
	for i, v := range p {
		n := p[(i+1)%len(p)]
		ax, ay, bx, by := float64(v.X), float64(v.Y), float64(n.X), float64(n.Y)
		if (ay > y) != (by > y) && x < ax+(bx-ax)*(y-ay)/(by-ay) {
			in = !in
		}
		if v.Bulge != 0 && inSegment(ax, ay, bx, by, v.Bulge, x, y) {
			in = !in
		}
	}
	return in
}

// inSegment: a point sees the chord under the arc's rim angle or a larger one.
func inSegment(ax, ay, bx, by, bulge, x, y float64) bool {
	side := (bx-ax)*(y-ay) - (by-ay)*(x-ax)
	if side*bulge >= 0 { // an anticlockwise arc lies to the right of its chord
		return false
	}
	ux, uy, vx, vy := ax-x, ay-y, bx-x, by-y
	seen := math.Atan2(math.Abs(ux*vy-uy*vx), ux*vx+uy*vy)
	return seen > math.Pi-2*math.Atan(math.Abs(bulge))
}

func TestContainsAndChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := blob().Draw(t, "p")
		lo, hi := p.Bounds()
		for range 20 {
			q := form.Point{
				X: lo.X + (hi.X-lo.X)*form.Length(rapid.Float64Range(-.1, 1.1).Draw(t, "x")),
				Y: lo.Y + (hi.Y-lo.Y)*form.Length(rapid.Float64Range(-.1, 1.1).Draw(t, "y")),
			}
			if p.Distance(q) < 1e-6 {
				continue
			}
			require.Equal(t, inside(p, float64(q.X), float64(q.Y)), p.Contains(q), "%v", q)
			for _, c := range p.Chords(q.X) {
				require.InDelta(t, 0, float64(p.Distance(form.Point{X: q.X, Y: c.From})), 1e-6)
				require.InDelta(t, 0, float64(p.Distance(form.Point{X: q.X, Y: c.To})), 1e-6)
			}
		}
		// At its own ends, and at every corner, the chords are those just beside.
		for _, v := range p {
			for _, c := range p.Chords(v.X) {
				require.GreaterOrEqual(t, c.Long(), form.Length(0))
			}
		}
	})
}

func TestChordsAtTheEnds(t *testing.T) {
	p := form.Polygon(form.Point{Y: 2}, form.Point{X: 10}, form.Point{X: 10, Y: 8}, form.Point{Y: 6})
	require.Equal(t, []form.Stretch{{From: 2, To: 6}}, p.Chords(0))
	require.Equal(t, []form.Stretch{{From: 0, To: 8}}, p.Chords(10))
	require.Empty(t, p.Chords(10.1))
	require.Empty(t, p.Chords(form.Length(math.NaN())))
	require.True(t, math.IsNaN(float64(p.Span(-1).From)))
}

func TestValidRefuses(t *testing.T) {
	at := func(x, y float64) form.Point { return form.Point{X: form.Length(x), Y: form.Length(y)} }
	for name, p := range map[string]form.Profile{
		"nothing":           nil,
		"one corner":        form.Polygon(at(0, 0)),
		"no area":           form.Polygon(at(0, 0), at(10, 0)),
		"clockwise":         form.Polygon(at(0, 0), at(0, 10), at(10, 10), at(10, 0)),
		"figure of eight":   form.Polygon(at(0, 0), at(10, 10), at(10, 0), at(0, 12)),
		"repeated":          form.Polygon(at(0, 0), at(10, 0), at(10, 0), at(10, 10), at(0, 10)),
		"there and back":    form.Polygon(at(0, 0), at(10, 0), at(5, 0), at(5, 5)),
		"touching":          form.Polygon(at(0, 0), at(10, 0), at(10, 10), at(5, 0), at(0, 10)),
		"arc through side":  {{Point: at(0, 0)}, {Point: at(10, 0)}, {Point: at(10, 4), Bulge: -.9}, {Point: at(0, 4)}},
		"arcs across":       {{Point: at(0, 0), Bulge: -.6}, {Point: at(10, 0)}, {Point: at(10, 4), Bulge: -.6}, {Point: at(0, 4)}},
		"one arc twice":     {{Point: at(-5, 0), Bulge: 1}, {Point: at(5, 0), Bulge: 1}, {Point: at(-5, 0.0001), Bulge: 1}, {Point: at(5, 0.0001), Bulge: 1}},
		"not a number":      form.Polygon(at(0, 0), at(math.NaN(), 0), at(1, 1)),
		"infinite":          form.Polygon(at(0, 0), at(math.Inf(1), 0), at(1, 1)),
		"arc on its chord":  {{Point: at(0, 0), Bulge: .3}, {Point: at(10, 0), Bulge: -.3}},
		"bulge not a value": {{Point: at(0, 0), Bulge: math.NaN()}, {Point: at(10, 0)}, {Point: at(5, 5)}},
	} {
		require.Error(t, p.Valid(), name)
	}
	require.NoError(t, form.Rectangle(at(0, 0), at(3, 4)).Valid())
	require.True(t, form.Rectangle(at(0, 0), at(3, 4)).IsRectangle())
	require.False(t, form.Circle(at(0, 0), 4).IsRectangle())
}

// Four quarter circles with straights between run smoothly into each other:
// no meeting of neighbours may be taken for a crossing.
func TestRoundedRectangleIsValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(10, 3000).Draw(t, "w"), rapid.Float64Range(10, 500).Draw(t, "h")
		r := rapid.Float64Range(.1, .5).Draw(t, "r") * math.Min(w, h)
		c := []form.Point{{}, {X: form.Length(w)}, {X: form.Length(w), Y: form.Length(h)}, {Y: form.Length(h)}}
		var p form.Profile
		for i := range c {
			p = append(p, form.Rounded(c[(i+3)%4], c[i], c[(i+1)%4], form.Length(r))...)
		}
		p = form.Joined(p)
		require.NoError(t, p.Valid())
		require.InEpsilon(t, w*h-(4-math.Pi)*r*r, float64(p.Area()), 1e-9)
	})
}

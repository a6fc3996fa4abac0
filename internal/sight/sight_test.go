package sight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// plan looks down, x to the right.
func plan() View { return View{Right: form.Dir{X: 1}, Up: form.Dir{Y: 1}} }

func block(x0, y0, z0, x1, y1, z1 Length) form.Volume {
	return form.Prism{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Rectangle(form.Point{X: x0, Y: y0}, form.Point{X: x1, Y: y1}), From: z0, To: z1,
	}
}

func body(t require.TestingT, v form.Volume) *Body {
	b, err := Of(v, 0.05)
	require.NoError(t, err)
	return b
}

func totals(lines []Line) (seen, behind float64) {
	for _, l := range lines {
		if l.Sight == Seen {
			seen += float64(l.Path.Long())
		} else {
			behind += float64(l.Path.Long())
		}
	}
	return seen, behind
}

func TestABoxShowsItsOutline(t *testing.T) {
	lines := Look(plan(), []*Body{body(t, block(0, 0, 0, 40, 30, 20))}).Lines()
	seen, behind := totals(lines)
	require.InDelta(t, 140, seen, 1e-6)
	require.Zero(t, behind, "the lower edges lie under the upper ones")
	require.Len(t, lines, 1, "one run round it")
	require.Len(t, lines[0].Path, 5)
}

func TestABoxBehindABox(t *testing.T) {
	front, back := body(t, block(0, 0, 50, 40, 30, 60)), body(t, block(20, 10, 0, 80, 50, 10))
	seen, behind := totals(Look(plan(), []*Body{front, back}).Lines())
	// Of the back one's outline (200) the corner under the front one is hidden: 20 each way.
	require.InDelta(t, 140+200-40, seen, 1e-4)
	require.InDelta(t, 40, behind, 1e-4)
}

func TestAHoleIsSeenAsACircle(t *testing.T) {
	v := form.Difference{From: block(0, 0, 0, 40, 30, 20), Cut: []form.Volume{form.Prism{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Circle(form.Point{X: 20, Y: 15}, 6), From: -5, To: 30,
	}}}
	b := body(t, v)
	lines := Look(plan(), []*Body{b}).Lines()
	seen, behind := totals(lines)
	require.InDelta(t, 140+2*math.Pi*6, seen, 0.01)
	require.Zero(t, behind)
	// From the side it is two dashed lines; no joint of facets is drawn.
	side := Look(View{Right: form.Dir{X: 1}, Up: form.Dir{Z: 1}}, []*Body{b}).Lines()
	seen, behind = totals(side)
	require.InDelta(t, 120, seen, 1e-4)
	require.InDelta(t, 40, behind, 1e-4)
}

// A circle is drawn as arcs, not as the chords of its facets.
func TestCirclesAreArcs(t *testing.T) {
	v := form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: form.Circle(form.Point{X: 3, Y: 4}, 25), To: 10}
	for _, l := range Look(plan(), []*Body{body(t, v)}).Lines() {
		require.LessOrEqual(t, len(l.Path), 5)
		for i := range len(l.Path) - 1 {
			a, b := l.Path[i], l.Path[i+1]
			chord := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
			if a.Bulge == 0 {
				require.Less(t, chord, 3.0)
				continue
			}
			radius := chord * (1 + a.Bulge*a.Bulge) / (4 * math.Abs(a.Bulge))
			require.InDelta(t, 25, radius, 1e-3)
		}
	}
}

func TestAPocketsFloorIsSeenFromAboveAndHiddenFromBelow(t *testing.T) {
	b := body(t, form.Difference{From: block(0, 0, 0, 40, 30, 20), Cut: []form.Volume{block(10, 10, 12, 30, 20, 40)}})
	seen, behind := totals(Look(plan(), []*Body{b}).Lines())
	require.InDelta(t, 140+60, seen, 1e-4)
	require.Zero(t, behind)
	seen, behind = totals(Look(View{Right: form.Dir{X: 1}, Up: form.Dir{Y: -1}}, []*Body{b}).Lines())
	require.InDelta(t, 140, seen, 1e-4)
	require.InDelta(t, 60, behind, 1e-4)
	seen, behind = totals(Look(View{Right: form.Dir{X: 1}, Up: form.Dir{Z: 1}}, []*Body{b}).Lines())
	require.InDelta(t, 120, seen, 1e-4)
	require.InDelta(t, 8+8+20, behind, 1e-4)
}

func TestACylindersOutlineSeenFromTheSide(t *testing.T) {
	v := form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: form.Circle(form.Point{}, 10), To: 30}
	lines := Look(View{Right: form.Dir{X: 1}, Up: form.Dir{Z: 1}}, []*Body{body(t, v)}).Lines()
	seen, behind := totals(lines)
	require.InDelta(t, 20+20+30+30, seen, 0.3, "the facets of its skin keep within 0.05 of the round")
	require.Zero(t, behind)
}

// A long straight side between two rounded corners stays straight.
func TestStraightSidesAreNotTakenForArcs(t *testing.T) {
	q := math.Sqrt2 - 1
	v := form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, To: 10, Profile: form.Profile{
		{Point: form.Point{}},
		{Point: form.Point{X: 900}},
		{Point: form.Point{X: 900, Y: 200}, Bulge: q},
		{Point: form.Point{X: 850, Y: 250}},
		{Point: form.Point{X: 50, Y: 250}, Bulge: q},
		{Point: form.Point{Y: 200}},
	}}
	lines := Look(plan(), []*Body{body(t, v)}).Lines()
	require.Len(t, lines, 1)
	require.Len(t, lines[0].Path, 7)
	require.InDelta(t, 900+200+200+800+math.Pi*50, float64(lines[0].Path.Long()), 0.01)
}

// An eased edge runs smoothly into its faces: no line is drawn there.
func TestSmoothJointsAreNotDrawn(t *testing.T) {
	p := form.Profile{
		{Point: form.Point{}},
		{Point: form.Point{X: 40}},
		{Point: form.Point{X: 40, Y: 14}, Bulge: math.Sqrt2 - 1},
		{Point: form.Point{X: 34, Y: 20}},
		{Point: form.Point{Y: 20}},
	}
	v := form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Z: 1}}, Profile: p, From: -50, To: 0}
	seen, behind := totals(Look(plan(), []*Body{body(t, v)}).Lines())
	require.InDelta(t, 180, seen, 1e-3)
	require.Zero(t, behind)
}

// Touching faces hide nothing of each other, and lines that fall together are drawn once.
func TestTouchingAndLevelFaces(t *testing.T) {
	a, b := body(t, block(0, 0, 0, 40, 30, 20)), body(t, block(40, 0, 0, 60, 30, 20))
	seen, behind := totals(Look(plan(), []*Body{a, b}).Lines())
	require.InDelta(t, 60+60+30+30+30, seen, 1e-4)
	require.Zero(t, behind)
	on := body(t, block(10, 10, 20, 30, 20, 25))
	seen, behind = totals(Look(plan(), []*Body{a, on}).Lines())
	require.InDelta(t, 140+60, seen, 1e-4)
	require.Zero(t, behind)
	// From below the one that lies on top is all hidden.
	seen, behind = totals(Look(View{Right: form.Dir{X: 1}, Up: form.Dir{Y: -1}}, []*Body{a, on}).Lines())
	require.InDelta(t, 140, seen, 1e-4)
	require.InDelta(t, 60, behind, 1e-4)
}

func TestASectionIsWhatIsLeftThere(t *testing.T) {
	b := body(t, form.Difference{From: block(0, 0, 0, 40, 30, 20), Cut: []form.Volume{
		form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: form.Circle(form.Point{X: 20, Y: 15}, 6), From: -5, To: 30},
	}})
	end := View{Right: form.Dir{Y: 1}, Up: form.Dir{Z: 1}}
	area := func(depth Length) (a float64) {
		for _, l := range b.Cut(end, depth) {
			a += float64(form.Profile(l[:len(l)-1]).Area())
		}
		return a
	}
	require.InDelta(t, 600, area(5), 1e-6)
	require.InDelta(t, 600-12*20, area(20), 1)
	flat := b.Cut(plan(), 10)
	require.Len(t, flat, 2)
	sum := 0.0
	for _, l := range flat {
		sum += float64(form.Profile(l[:len(l)-1]).Area())
	}
	require.InDelta(t, 1200-math.Pi*36, sum, 0.05)
}

func TestHatchingCoversWhatIsSeen(t *testing.T) {
	front, back := body(t, block(0, 0, 50, 40, 30, 60)), body(t, block(20, 10, 0, 80, 50, 10))
	s := Look(plan(), []*Body{front, back})
	const apart = 0.25
	got := 0.0
	for _, l := range s.Hatching(apart, math.Pi/4, func(b int) bool { return b == 1 }) {
		got += float64(l.Path.Long()) * apart
	}
	require.InDelta(t, 60*40-20*20, got, 20)
	for i, w := range s.Showings(2) {
		require.Greater(t, float64(w.Room), 15.0, i)
	}
}

// someBodies are a few solids of all sorts that may lie in one another.
func someBodies(t *rapid.T) ([]*Body, []*solid.Solid) {
	num := func(what string, lo, hi float64) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, what)) }
	var bodies []*Body
	var solids []*solid.Solid
	for range rapid.IntRange(1, 3).Draw(t, "how many") {
		x, y, z := num("x", -30, 30), num("y", -30, 30), num("z", -60, 60)
		var v form.Volume
		switch rapid.IntRange(0, 3).Draw(t, "sort") {
		case 0:
			v = block(x, y, z, x+num("long", 5, 60), y+num("wide", 5, 60), z+num("deep", 2, 40))
		case 1:
			v = form.Prism{Frame: form.Frame{Origin: form.Vec{X: x, Y: y, Z: z}, U: form.Dir{X: 1}, V: form.Dir{Z: 1}}, Profile: form.Circle(form.Point{}, num("radius", 4, 25)), From: 0, To: num("long", 5, 50)}
		case 2:
			v = form.Difference{From: block(x, y, z, x+50, y+40, z+20), Cut: []form.Volume{
				form.Prism{Frame: form.Frame{Origin: form.Vec{X: x, Y: y, Z: z}, U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: form.Circle(form.Point{X: 20, Y: 20}, num("bore", 3, 12)), From: num("floor", -5, 10), To: 40},
			}}
		default:
			h := num("tilt", 0.1, 0.9)
			n := math.Hypot(float64(h), 1)
			v = form.Intersection{block(x, y, z, x+40, y+40, z+30), form.Half{At: form.Vec{X: x + 20, Y: y, Z: z + 15}, Normal: form.Dir{X: float64(h) / n, Z: 1 / n}}}
		}
		s, err := solid.New(v)
		require.NoError(t, err)
		solids = append(solids, s)
		bodies = append(bodies, body(t, v))
	}
	return bodies, solids
}

// What a line is said to be is held against the solids' own distance fields:
// along the ray to the eye there is wood before a hidden place, and none before
// one in sight.
func TestSightAgreesWithARayThroughTheSolids(t *testing.T) {
	views := []View{plan(), {Right: form.Dir{X: 1}, Up: form.Dir{Z: 1}}, {Right: form.Dir{X: 0.8, Y: 0.6}, Up: form.Dir{X: -0.36, Y: 0.48, Z: 0.8}}}
	asked := 0
	rapid.Check(t, func(t *rapid.T) {
		bodies, solids := someBodies(t)
		v := rapid.SampledFrom(views).Draw(t, "view")
		s := Look(v, bodies)
		seen, behind := s.pieces()
		for _, p := range append(seen, behind...) {
			share := rapid.Float64Range(0.02, 0.98).Draw(t, "where")
			at := p.a.between(p.b, share)
			deepest, doubtful := ray(v, at, solids)
			if doubtful {
				continue
			}
			asked++
			if p.sight == Seen {
				require.Less(t, deepest, 0.12, "in sight, and yet there is wood before it")
			} else {
				require.Greater(t, deepest, -0.12, "hidden, and yet nothing is before it")
			}
		}
	})
	require.Greater(t, asked, 300)
}

// ray goes from a place towards the eye and gives how deep in wood it comes at
// most; where it only grazes wood it is doubtful.
func ray(v View, at spot, solids []*solid.Solid) (deepest float64, doubtful bool) {
	w := v.towards()
	start := form.Vec{}.Plus(v.Right, Length(at.x)).Plus(v.Up, Length(at.y)).Plus(w, Length(at.z))
	deepest = math.Inf(-1)
	for d := 0.15; d < 250; d += 0.05 {
		p := v3of(start.Plus(w, Length(d)))
		for _, s := range solids {
			deepest = math.Max(deepest, -s.Evaluate(p))
		}
	}
	return deepest, math.Abs(deepest) < 0.15
}

// Seen and hidden together are the whole of every edge.
func TestNothingIsLostInTheCutting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies, _ := someBodies(t)
		s := Look(plan(), bodies)
		seen, behind := s.pieces()
		got, whole := 0.0, 0.0
		for _, p := range append(seen, behind...) {
			got += p.long()
		}
		for i, b := range bodies {
			for _, e := range b.edges {
				p := piece{a: s.spots[i][e.from], b: s.spots[i][e.to]}
				if (e.sharp || s.front[i][e.left] != s.front[i][e.right]) && p.long() >= shortest/10 {
					whole += p.long()
				}
			}
		}
		require.InDelta(t, whole, got, 0.02*float64(len(seen)+len(behind)+1))
	})
}

// Facets tried one by one give the same answer as the tree and the cutting.
func TestSightAgreesWithEveryFacetTriedAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies, _ := someBodies(t)
		s := Look(View{Right: form.Dir{X: 0.8, Y: 0.6}, Up: form.Dir{X: -0.36, Y: 0.48, Z: 0.8}}, bodies)
		seen, behind := s.pieces()
		for _, p := range append(seen, behind...) {
			at := p.a.between(p.b, rapid.Float64Range(0.05, 0.95).Draw(t, "where"))
			clear := math.Inf(1) // how far from any facet's rim, on the view or in depth
			covered := false
			for i := range s.facets {
				in, d := within(&s.facets[i], at)
				d /= 1 + s.facets[i].slope
				covered = covered || in > 0 && d > 0
				// Clear of this facet is what is well outside it, well before it, or well under it.
				clear = math.Min(clear, max(-in, -d, min(in, d)))
			}
			if clear > 1e-3 {
				require.Equal(t, covered, p.sight == Behind)
			}
		}
	})
}

// within is how far inside a facet a place lies on the view, and how far behind it.
func within(f *facet, at spot) (in, behind float64) {
	in = math.Inf(1)
	for k := range 3 {
		a, b := f.corner[k], f.corner[(k+1)%3]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		in = math.Min(in, ((b.x-a.x)*(at.y-a.y)-(b.y-a.y)*(at.x-a.x))/long)
	}
	return in, f.depth(at.x, at.y) - at.z
}

package solid_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/deadsy/sdfx/sdf"
	v2 "github.com/deadsy/sdfx/vec/v2"
	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

var _ sdf.SDF3 = (*solid.Solid)(nil)

func upright(x, y, z form.Length) form.Frame {
	return form.Frame{Origin: form.Vec{X: x, Y: y, Z: z}, U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
}

func tilted(x, y, z form.Length) form.Frame {
	s, c := math.Sincos(0.7)
	return form.Frame{Origin: form.Vec{X: x, Y: y, Z: z}, U: form.Dir{X: c * 0.8, Y: s * 0.8, Z: 0.6}, V: form.Dir{X: -s, Y: c}}
}

func corner(x, y, bulge float64) form.Vertex {
	return form.Vertex{Point: form.Point{X: form.Length(x), Y: form.Length(y)}, Bulge: bulge}
}

func disc(x, y, r float64) form.Profile {
	return form.Profile{corner(x-r, y, 1), corner(x+r, y, 1)}
}

// hooked has straight edges, arcs that bulge both ways and one of more than half a circle.
func hooked(x float64) form.Profile {
	return form.Profile{corner(x, 0, 0), corner(x+40, 0, 0.4), corner(x+40, 30, -0.5), corner(x+20, 30, 1.6), corner(x+8, 30, 0), corner(x, 30, 0)}
}

func half(x, y, z, nx, ny, nz float64) form.Half {
	return form.Half{At: form.Vec{X: form.Length(x), Y: form.Length(y), Z: form.Length(z)}, Normal: form.Dir{X: nx, Y: ny, Z: nz}}
}

// leaves has one of every kind of piece, each made finite where it is not.
func leaves() map[string]form.Volume {
	inf := form.Length(math.Inf(1))
	return map[string]form.Volume{
		"prism":               form.Prism{Frame: tilted(5, -3, 8), Profile: hooked(-10), From: -7, To: 31},
		"round prism":         form.Prism{Frame: tilted(0, 0, 0), Profile: disc(3, 4, 12), From: 0, To: 50},
		"half space":          form.Intersection{half(3, 2, 1, 0.6, 0, 0.8), form.Prism{Frame: upright(0, 0, 0), Profile: disc(0, 0, 30), From: -40, To: 40}},
		"endless prism":       form.Intersection{form.Prism{Frame: upright(0, 0, 0), Profile: hooked(0), From: -inf, To: inf}, half(0, 0, 9, 0, 0, 1), half(0, 0, -9, 0, 0.28, -0.96)},
		"full turn":           form.Revolved{Frame: tilted(1, 2, 3), Profile: hooked(15), Sweep: 2 * math.Pi},
		"part turn":           form.Revolved{Frame: tilted(1, 2, 3), Profile: hooked(15), Sweep: 1.1},
		"more than half turn": form.Revolved{Frame: upright(0, 0, 0), Profile: disc(30, 5, 9), Sweep: 4.9},
		"turned on its axis":  form.Revolved{Frame: upright(0, 0, 0), Profile: form.Profile{corner(0, 0, 0), corner(20, 0, 0), corner(12, 18, 0.3), corner(0, 30, 0)}, Sweep: 2 * math.Pi},
		"wedge of a cone":     form.Revolved{Frame: upright(0, 0, 0), Profile: form.Profile{corner(0, 0, 0), corner(20, 0, 0), corner(0, 30, 0)}, Sweep: 2},
		"oval":                oval(tilted(1, 2, 3), form.Ellipse{U: 24, V: 15}, form.Ellipse{U: 9, V: 13}),
		"leaning oval":        oval(tilted(1, 2, 3), form.Ellipse{Centre: form.Point{X: 4, Y: -3}, U: 20, V: 12}, form.Ellipse{Centre: form.Point{Y: 3}, U: 20, V: 6}),
		"flat oval":           oval(upright(0, 0, 0), form.Ellipse{U: 30, V: 4}, form.Ellipse{U: 5, V: 14}),
		"round oval":          oval(upright(0, 0, 0), form.Ellipse{U: 20, V: 20}, form.Ellipse{U: 12, V: 12}),
		"ball":                form.Revolved{Frame: upright(4, 5, 6), Profile: form.Profile{corner(0, -10, 1), corner(0, 10, 0)}, Sweep: 2 * math.Pi},
	}
}

func oval(f form.Frame, first, last form.Ellipse) form.Oval {
	return form.Oval{Frame: f, From: -8, To: 40, First: first, Last: last}
}

func compile(t testing.TB, v form.Volume) *solid.Solid {
	t.Helper()
	s, err := solid.New(v)
	require.NoError(t, err)
	return s
}

func sample(r *rand.Rand, b sdf.Box3) v3.Vec {
	b = b.ScaleAboutCenter(1.4)
	return v3.Vec{
		X: b.Min.X + r.Float64()*(b.Max.X-b.Min.X),
		Y: b.Min.Y + r.Float64()*(b.Max.Y-b.Min.Y),
		Z: b.Min.Z + r.Float64()*(b.Max.Z-b.Min.Z),
	}
}

func way(r *rand.Rand) v3.Vec {
	return v3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}.Normalize()
}

// The field never changes faster than one goes: what octrees prune by.
func TestFieldIsLipschitz(t *testing.T) {
	for name, v := range leaves() {
		t.Run(name, func(t *testing.T) {
			s := compile(t, v)
			r := rand.New(rand.NewSource(1))
			for range 40000 {
				p := sample(r, s.BoundingBox())
				step := math.Pow(10, -4*r.Float64()) * 20
				q := p.Add(way(r).MulScalar(step))
				require.LessOrEqual(t, math.Abs(s.Evaluate(p)-s.Evaluate(q)), step+1e-9, "between %v and %v", p, q)
			}
		})
	}
}

// A leaf's distance is the true one: stepping down the gradient by it arrives
// on the surface, and nothing nearer changes sign.
func TestLeafDistanceIsTrue(t *testing.T) {
	for name, v := range leaves() {
		if _, tree := v.(form.Intersection); tree {
			continue
		}
		t.Run(name, func(t *testing.T) {
			s := compile(t, v)
			r := rand.New(rand.NewSource(2))
			for range 20000 {
				p := sample(r, s.BoundingBox())
				h := s.At(p)
				require.InDelta(t, s.Evaluate(p), h.Distance, 0)
				foot := p.Sub(h.Normal.MulScalar(h.Distance))
				require.InDelta(t, 0, s.Evaluate(foot), 1e-7, "from %v", p)
				require.InDelta(t, 0, s.Surfaces()[h.Surface].Distance(foot), 1e-6, "from %v", p)
				q := p.Add(way(r).MulScalar(math.Abs(h.Distance) * 0.999))
				require.GreaterOrEqual(t, h.Distance*s.Evaluate(q), 0.0, "from %v to %v", p, q)
			}
		})
	}
}

func TestGradientAgreesWithTheField(t *testing.T) {
	for name, v := range leaves() {
		t.Run(name, func(t *testing.T) {
			s := compile(t, v)
			r := rand.New(rand.NewSource(3))
			bad := 0
			for range 4000 {
				p, u := sample(r, s.BoundingBox()), way(r)
				const h = 1e-5
				slope := (s.Evaluate(p.Add(u.MulScalar(h))) - s.Evaluate(p.Sub(u.MulScalar(h)))) / (2 * h)
				if math.Abs(slope-s.At(p).Normal.Dot(u)) > 1e-3 {
					bad++ // p straddles a crease of the field
				}
			}
			assert.Less(t, bad, 8)
		})
	}
}

func TestBoxHoldsTheSolid(t *testing.T) {
	for name, v := range leaves() {
		t.Run(name, func(t *testing.T) {
			s := compile(t, v)
			r := rand.New(rand.NewSource(4))
			b := s.BoundingBox()
			for range 20000 {
				if p := sample(r, b); s.Evaluate(p) < -1e-9 {
					require.Equal(t, p, p.Max(b.Min).Min(b.Max))
				}
			}
		})
	}
}

// A ring's box by hand: the part of a disc's ring between 0 and 90 degrees.
func TestBoxOfAPartTurn(t *testing.T) {
	s := compile(t, form.Revolved{Frame: upright(0, 0, 0), Profile: disc(30, 5, 9), Sweep: math.Pi / 2})
	b := s.BoundingBox()
	for i, want := range []float64{0, 0, -4, 39, 39, 14} {
		assert.InDelta(t, want, []float64{b.Min.X, b.Min.Y, b.Min.Z, b.Max.X, b.Max.Y, b.Max.Z}[i], 1e-9)
	}
}

// sdfx's own boxes, cylinders and turned profiles, which an earlier measurement
// found to be true distances, agree with ours.
func TestAgainstSdfx(t *testing.T) {
	cylinder, err := sdf.Cylinder3D(40, 12, 0)
	require.NoError(t, err)
	box, err := sdf.Box3D(v3.Vec{X: 30, Y: 20, Z: 10}, 0)
	require.NoError(t, err)
	circle, err := sdf.Circle2D(9)
	require.NoError(t, err)
	ring, err := sdf.Revolve3D(sdf.Transform2D(circle, sdf.Translate2d(v2.Vec{X: 30})))
	require.NoError(t, err)
	rect := form.Profile{corner(-15, -10, 0), corner(15, -10, 0), corner(15, 10, 0), corner(-15, 10, 0)}
	for name, c := range map[string]struct {
		ours   form.Volume
		theirs sdf.SDF3
	}{
		"cylinder": {form.Prism{Frame: upright(0, 0, 0), Profile: disc(0, 0, 12), From: -20, To: 20}, cylinder},
		"box":      {form.Prism{Frame: upright(0, 0, 0), Profile: rect, From: -5, To: 5}, box},
		"ring":     {form.Revolved{Frame: upright(0, 0, 0), Profile: disc(30, 0, 9), Sweep: 2 * math.Pi}, ring},
	} {
		t.Run(name, func(t *testing.T) {
			s := compile(t, c.ours)
			r := rand.New(rand.NewSource(5))
			for range 10000 {
				p := sample(r, s.BoundingBox())
				require.InDelta(t, c.theirs.Evaluate(p), s.Evaluate(p), 1e-9, "at %v", p)
			}
		})
	}
}

func TestSurfacesAreShared(t *testing.T) {
	block := func(x0, x1, top float64) form.Prism {
		return form.Prism{Frame: upright(0, 0, 0), From: 0, To: form.Length(top), Profile: form.Profile{corner(x0, 0, 0), corner(x1, 0, 0), corner(x1, 20, 0), corner(x0, 20, 0)}}
	}
	s := compile(t, form.Union{block(0, 50, 40), block(50, 90, 40)})
	// two of six faces are in the same planes twice over (y = 0, y = 20, bottom, top) and x = 50 is met from both sides
	assert.Len(t, s.Surfaces(), 7)
	for _, f := range s.Surfaces() {
		assert.Equal(t, solid.Plane, f.Kind)
	}
}

func TestRefusals(t *testing.T) {
	inf := form.Length(math.Inf(1))
	square := form.Profile{corner(0, 0, 0), corner(10, 0, 0), corner(10, 10, 0), corner(0, 10, 0)}
	Edge := form.Profile{corner(0, 0, 0), corner(10, 10, 0), corner(10, 0, 0), corner(0, 20, 0)}
	clockwise := form.Profile{corner(0, 10, 0), corner(10, 10, 0), corner(10, 0, 0), corner(0, 0, 0)}
	doubled := form.Profile{corner(0, 0, 0), corner(0, 0, 0), corner(10, 0, 0), corner(0, 10, 0)}
	belly := form.Profile{corner(0, 0, 0), corner(10, 0, 0), corner(10, 10, -1), corner(10, 20, 0), corner(10.1, 30, 0), corner(4, 30, 0), corner(4, 16, 0), corner(5.001, 15, 0), corner(4, 14, 0), corner(0, 12, 0)}
	for name, c := range map[string]struct {
		v    form.Volume
		want string
	}{
		"endless prism": {form.Prism{Frame: upright(0, 0, 0), Profile: square, From: -inf, To: inf}, "never ends along z"},
		"half space":    {half(0, 0, 0, 1, 0, 0), "never ends along x"},
		"crossing":      {form.Prism{Frame: upright(0, 0, 0), Profile: Edge, From: 0, To: 1}, "crosses itself"},
		"clockwise":     {form.Prism{Frame: upright(0, 0, 0), Profile: clockwise, From: 0, To: 1}, "clockwise"},
		"doubled":       {form.Prism{Frame: upright(0, 0, 0), Profile: doubled, From: 0, To: 1}, "corner 1 of the outline is repeated"},
		"touching arc":  {form.Prism{Frame: upright(0, 0, 0), Profile: belly, From: 0, To: 1}, "crosses itself"},
		"no ends":       {form.Prism{Frame: upright(0, 0, 0), Profile: square, From: 2, To: 2}, "second end"},
		"bad frame":     {form.Prism{Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{X: 1}}, Profile: square, From: 0, To: 1}, "right angles"},
		"over axis":     {form.Revolved{Frame: upright(0, 0, 0), Profile: disc(3, 0, 4), Sweep: 1}, "crosses the line"},
		"over turned":   {form.Revolved{Frame: upright(0, 0, 0), Profile: disc(30, 0, 4), Sweep: 7}, "full turn"},
		"not a number":  {form.Prism{Frame: upright(0, 0, 0), Profile: form.Profile{corner(math.NaN(), 0, 0), corner(1, 0, 0), corner(0, 1, 0)}, From: 0, To: 1}, "corner 1 of the outline is not a number"},
		"nothing":       {nil, "no shape"},
		"in a tree":     {form.Difference{From: form.Prism{Frame: upright(0, 0, 0), Profile: square, From: 0, To: 1}, Cut: []form.Volume{half(0, 0, 0, 1, 0, 0), half(0, 0, 0, 2, 0, 0)}}, "cut 2: half space"},
		"apart":         {form.Intersection{form.Prism{Frame: upright(0, 0, 0), Profile: square, From: 0, To: 1}, form.Prism{Frame: upright(0, 0, 9), Profile: square, From: 0, To: 1}}, "nothing is left"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := solid.New(c.v)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}

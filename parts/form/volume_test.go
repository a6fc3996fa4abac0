package form_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts/form"
)

// A ring of round section: 2 pi^2 R r^2, Pappus's own example (from memory).
func TestRingByPappus(t *testing.T) {
	ring := form.Revolved{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Circle(form.Point{X: 40}, 10), Sweep: 2 * math.Pi,
	}
	require.InEpsilon(t, 2*math.Pi*math.Pi*40*100, float64(ring.Content()), 1e-12)
	b := form.Bounds(ring)
	require.InDelta(t, 50, float64(b.Max.X), 1e-9)
	require.InDelta(t, -50, float64(b.Min.Y), 1e-9)
	require.InDelta(t, 10, float64(b.Max.Z), 1e-9)

	ring.Sweep = math.Pi / 2
	b = form.Bounds(ring)
	require.InDelta(t, 0, float64(b.Min.X), 1e-9)
	require.InDelta(t, 50, float64(b.Max.Y), 1e-9)
}

func TestEndlessBounds(t *testing.T) {
	inf := form.Length(math.Inf(1))
	cut := form.Prism{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Circle(form.Point{X: 5, Y: 5}, 2), From: -inf, To: inf,
	}
	b := form.Bounds(cut)
	require.Equal(t, form.Vec{X: 3, Y: 3, Z: -inf}, b.Min)
	require.Equal(t, form.Vec{X: 7, Y: 7, Z: inf}, b.Max)
	half := form.Half{At: form.Vec{Z: 4}, Normal: form.Dir{Z: 1}}
	both := form.Bounds(form.Intersection{cut, half, form.Union{half}})
	require.Equal(t, form.Length(4), both.Max.Z)
	require.Equal(t, b.Max.Y, form.Bounds(form.Difference{From: cut, Cut: []form.Volume{half}}).Max.Y)
}

// holds asks a volume about a point, by the words of the types' own comments.
func holds(v form.Volume, p form.Vec) bool {
	local := func(f form.Frame) (x, y, z float64) {
		d := p.Minus(f.Origin)
		return float64(f.U.Along(d)), float64(f.V.Along(d)), float64(f.W().Along(d))
	}
	switch v := v.(type) {
	case form.Prism:
		x, y, z := local(v.Frame)
		return z >= float64(v.From) && z <= float64(v.To) && inside(v.Profile, x, y)
	case form.Revolved:
		x, y, z := local(v.Frame)
		a := math.Atan2(y, x)
		if a < 0 {
			a += 2 * math.Pi
		}
		return a <= float64(v.Sweep) && inside(v.Profile, math.Hypot(x, y), z)
	case form.Oval:
		x, y, z := local(v.Frame)
		return ovalHolds(v, x, y, z)
	case form.Half:
		return v.Normal.Along(p.Minus(v.At)) <= 0
	case form.Union:
		for _, m := range v {
			if holds(m, p) {
				return true
			}
		}
		return false
	case form.Intersection:
		for _, m := range v {
			if !holds(m, p) {
				return false
			}
		}
		return true
	case form.Difference:
		if !holds(v.From, p) {
			return false
		}
		for _, c := range v.Cut {
			if holds(c, p) {
				return false
			}
		}
		return true
	}
	return false
}

func TestMirroredVolumeHoldsTheMirroredPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		s, c := math.Sincos(angle)
		f := form.Frame{
			Origin: form.Vec{X: 5, Y: 8, Z: -3},
			U:      form.Dir{X: c, Y: s}, V: form.Dir{X: -s * .6, Y: c * .6, Z: .8},
		}
		sweep := rapid.Float64Range(.2, 2*math.Pi).Draw(t, "sweep")
		profile := form.Profile{
			{Point: form.Point{X: 4, Y: -6}, Bulge: .3},
			{Point: form.Point{X: 20, Y: -2}},
			{Point: form.Point{X: 15, Y: 9}, Bulge: -.2},
			{Point: form.Point{X: 2, Y: 5}},
		}
		v := form.Union{
			form.Revolved{Frame: f, Profile: profile, Sweep: form.Angle(sweep)},
			form.Difference{
				From: form.Prism{Frame: f, Profile: profile, From: -10, To: 25},
				Cut:  []form.Volume{form.Intersection{form.Half{At: f.Origin, Normal: f.V}}},
			},
		}
		const wide = 31
		m := form.Mirrored(v, wide)
		box := form.Bounds(v)
		for range 60 {
			p := form.Vec{
				X: form.Length(rapid.Float64Range(-25, 35).Draw(t, "x")),
				Y: form.Length(rapid.Float64Range(-25, 35).Draw(t, "y")),
				Z: form.Length(rapid.Float64Range(-25, 35).Draw(t, "z")),
			}
			in := holds(v, p)
			require.Equal(t, in, holds(m, form.Vec{X: p.X, Y: wide - p.Y, Z: p.Z}))
			if in {
				require.True(t, p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y &&
					p.Z >= box.Min.Z && p.Z <= box.Max.Z, "%v outside %v", p, box)
			}
		}
	})
}

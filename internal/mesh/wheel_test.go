package mesh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// What a wheel is made of: a turned nave with its mortises aslant by the dish
// and a tapered bore, spokes, and felloes whose faces are bevelled.

// radially is a frame whose W leads out from the axis at an angle round it,
// from z along it, leaning by the dish; U runs round and V along.
func radially(angle, z, dish float64) form.Frame {
	s, c := math.Sincos(angle)
	ds, dc := math.Sincos(dish)
	return form.Frame{Origin: vec(0, 0, z), U: form.Dir{X: -s, Y: c}, V: form.Dir{X: -ds * c, Y: -ds * s, Z: dc}}
}

const (
	naveRadius, naveLong = 105.0, 220.0
	boreFront, boreBack  = 26.0, 36.0 // at the nave's two ends
	footWide, footThick  = 26.0, 44.0
	footIn               = 60.0 // from the axis to the mortises' bottoms, along their own
)

// nave is a cylinder with a conical bore, counterbored at both ends, and 14
// mortises in one circle or two, each aslant by the dish.
func nave(body form.Profile, dish, stagger float64) form.Volume {
	d := form.Difference{
		From: form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: body},
		Cut: []form.Volume{
			turned(polygon(0, -1, boreFront-(boreBack-boreFront)/naveLong, -1, boreBack+(boreBack-boreFront)/naveLong, naveLong+1, 0, naveLong+1)),
			turned(rectangle(0, -1, 45, 15)),
			turned(rectangle(0, naveLong-20, 48, naveLong+1)),
		},
	}
	for i := range 14 {
		z := 110 + stagger*float64(1-2*(i%2))
		d.Cut = append(d.Cut, form.Prism{
			Frame:   radially(2*math.Pi*float64(i)/14, z, dish),
			Profile: rectangle(-footWide/2, -footThick/2, footWide/2, footThick/2), From: footIn, To: 200,
		})
	}
	return d
}

func turned(p form.Profile) form.Volume {
	return form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: p}
}

func cylinderContent(r, l float64) float64   { return math.Pi * r * r * l }
func frustumContent(a, b, l float64) float64 { return math.Pi * l / 3 * (a*a + a*b + b*b) }

// naveContent is that of a cylindrical nave: less the bore between its
// counterbores, less the mortises. A mortise is as deep as the cylinder stands
// over its bottom; across it that goes by the circle, and along it it evens out.
func naveContent(dish float64) float64 {
	at := func(z float64) float64 { return boreFront + (boreBack-boreFront)*z/naveLong }
	hollow := cylinderContent(45, 15) + frustumContent(at(15), at(naveLong-20), naveLong-35) + cylinderContent(48, 20)
	const r, h = naveRadius, footWide / 2
	circle := h*math.Sqrt(r*r-h*h) + r*r*math.Asin(h/r)
	mortise := footThick * (circle/math.Cos(dish) - 2*h*footIn)
	return cylinderContent(naveRadius, naveLong) - hollow - 14*mortise
}

func TestNaves(t *testing.T) {
	plain := rectangle(0, 0, naveRadius, naveLong)
	barrel := form.Profile{
		corner(0, 0, 0), corner(70, 0, 0.1), corner(96, 60, 0), corner(99, 63, 0), corner(99, 157, 0),
		corner(96, 160, -0.1), corner(66, 220, 0), corner(0, 220, 0),
	}
	for name, c := range map[string]struct {
		v       form.Volume
		exact   float64
		through int
	}{
		"one circle":            {nave(plain, 0, 0), naveContent(0), 1},
		"dished":                {nave(plain, 0.09, 0), naveContent(0.09), 1},
		"two circles, dished":   {nave(plain, 0.07, 6), naveContent(0.07), 1},
		"a barrel, two circles": {nave(barrel, 0.07, 6), 0, 1},
	} {
		t.Run(name, func(t *testing.T) {
			for turn, tolerance := range []quantity.Length{0.02, 0.05} {
				v := c.v
				if turn > 0 {
					v = chanceOf(int64(turn)).place().Put(v)
				}
				m, _ := checked(t, compiled(t, v), tolerance, c.exact)
				assert.Equal(t, 2-2*c.through, mesh.Inspect(m).Euler)
			}
		})
	}
}

// wheelSpoke is a square foot, an oval body, and a round tongue; the foot and
// the shoulder lean by the dish against the body's axis.
func wheelSpoke(dish float64) form.Volume {
	s, c := math.Sincos(dish)
	foot := form.Frame{U: form.Dir{X: c, Z: -s}, V: form.Dir{Y: 1}} // W leans towards x
	body := form.Oval{Frame: flat, From: -20, To: 430, First: ellipse(0, 0, 30, 22), Last: ellipse(0, 0, 18, 17)}
	return form.Union{
		form.Prism{Frame: foot, Profile: rectangle(-18, -13, 18, 13), From: -60, To: 0},
		form.Intersection{body, half(0, 0, 0, -s, 0, -c)},
		form.Prism{Frame: flat, Profile: disc(0, 0, 14), From: 420, To: 490},
	}
}

// wheelSpokeContent sums the slices of the body that the shoulder leaves, a
// closed form each, by the midpoint rule.
func wheelSpokeContent(dish float64) float64 {
	const n = 200000
	sum := 0.0
	for i := range n {
		z := -20 + 450*(float64(i)+0.5)/n
		a, b := 30-12*(z+20)/450, 22-5*(z+20)/450
		// the shoulder keeps what lies beyond x = -z / tan(dish)
		k := math.Copysign(1, -z)
		if dish != 0 {
			k = max(-1, min(1, -z/math.Tan(dish)/a))
		}
		sum += a * b * (math.Acos(k) - k*math.Sqrt(1-k*k)) * 450 / n
	}
	return sum + 36*26*60 + math.Pi*14*14*60
}

func TestWheelSpokes(t *testing.T) {
	for _, dish := range []float64{0, 0.03, 0.09} {
		for turn, tolerance := range []quantity.Length{0.02, 0.05} {
			v := wheelSpoke(dish)
			if turn > 0 {
				v = chanceOf(int64(turn)).place().Put(v)
			}
			m, _ := checked(t, compiled(t, v), tolerance, wheelSpokeContent(dish))
			assert.Equal(t, 2, mesh.Inspect(m).Euler)
		}
	}
}

// bevelled is a felloe turned about the wheel's axis, its inner and outer faces
// conical, with holes for two tongues aslant by the dish and a dowel in each end.
func bevelled(dish float64, cuts bool) form.Volume {
	const sweep = 2 * math.Pi / 7
	body := form.Revolved{Frame: flat, Sweep: sweep, Profile: polygon(510, 0, 561, 0, 558, 45, 508, 45)}
	if !cuts {
		return body
	}
	d := form.Difference{From: body}
	for _, part := range []float64{0.25, 0.75} {
		f := radially(sweep*part, 22.5-535*math.Tan(dish), dish)
		d.Cut = append(d.Cut, form.Prism{Frame: f, Profile: disc(0, 0, 14), From: 400, To: 700})
	}
	for i, way := range []float64{1, -1} {
		s, c := math.Sincos(sweep * float64(i))
		d.Cut = append(d.Cut, form.Prism{
			Frame:   form.Frame{Origin: vec(535*c, 535*s, 22), U: form.Dir{X: c, Y: s}, V: form.Dir{Z: -way}},
			Profile: disc(0, 0, 6), From: -2, To: 45,
		})
	}
	return d
}

func TestBevelledFelloes(t *testing.T) {
	for _, dish := range []float64{0, 0.04, 0.1} {
		body := bevelled(dish, false).(form.Revolved)
		checked(t, compiled(t, body), 0.05, float64(body.Content()))
		for turn, tolerance := range []quantity.Length{0.02, 0.05} {
			v := bevelled(dish, true)
			if turn > 0 {
				v = chanceOf(int64(turn)).place().Put(v)
			}
			m, _ := checked(t, compiled(t, v), tolerance, 0)
			assert.Equal(t, -2, mesh.Inspect(m).Euler)
			assert.Less(t, float64(m.Volume()), float64(body.Content())-2*math.Pi*36*45)
		}
	}
}

package mesh_test

import (
	"math"

	"lostwood/parts/form"
)

// The test solids. Their exact volumes are worked out by hand beside each, and
// agree with an earlier independent measurement of the same solids.

var endless = form.Length(math.Inf(1))

func corner(x, y, bulge float64) form.Vertex {
	return form.Vertex{Point: form.Point{X: form.Length(x), Y: form.Length(y)}, Bulge: bulge}
}

func polygon(xy ...float64) form.Profile {
	var p form.Profile
	for i := 0; i < len(xy); i += 2 {
		p = append(p, corner(xy[i], xy[i+1], 0))
	}
	return p
}

func disc(x, y, r float64) form.Profile {
	return form.Profile{corner(x-r, y, 1), corner(x+r, y, 1)}
}

func rectangle(x0, y0, x1, y1 float64) form.Profile { return polygon(x0, y0, x1, y0, x1, y1, x0, y1) }

func vec(x, y, z float64) form.Vec {
	return form.Vec{X: form.Length(x), Y: form.Length(y), Z: form.Length(z)}
}

var (
	flat  = form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}} // looks down on x and y
	side  = form.Frame{U: form.Dir{X: 1}, V: form.Dir{Z: 1}} // x and z; its third axis is -y
	front = form.Frame{U: form.Dir{Y: 1}, V: form.Dir{Z: 1}} // y and z; its third axis is x
)

func block(x0, y0, z0, x1, y1, z1 float64) form.Volume {
	return form.Prism{Frame: flat, Profile: rectangle(x0, y0, x1, y1), From: form.Length(z0), To: form.Length(z1)}
}

// bore is a hole right through, along z.
func bore(x, y, r float64) form.Volume {
	return form.Prism{Frame: flat, Profile: disc(x, y, r), From: -endless, To: endless}
}

// bolster is 1100 x 95 x 80, its underside tapered at both ends, with 3 mm
// chamfers, four 11 mm holes, two of which break out through the chamfers, a
// 20 mm king-pin hole and a mortise.
func bolster() form.Volume {
	elevation := polygon(-550, 20, -350, 0, 350, 0, 550, 20, 550, 80, -550, 80)
	end := polygon(-44.5, 0, 44.5, 0, 47.5, 3, 47.5, 77, 44.5, 80, -44.5, 80, -47.5, 77, -47.5, 3)
	return form.Difference{
		From: form.Intersection{
			form.Prism{Frame: side, Profile: elevation, From: -47.5, To: 47.5},
			form.Prism{Frame: front, Profile: end, From: -endless, To: endless},
		},
		Cut: []form.Volume{
			bore(0, 0, 10), bore(450, 0, 5.5), bore(-450, 0, 5.5), bore(300, 40.5, 5.5), bore(-300, -40.5, 5.5),
			block(120, -20, 55, 180, 20, 81),
		},
	}
}

// bolsterVolume: the tapered and chamfered body less the holes; at the two
// outer holes the chamfers have already taken the corner C at each end.
func bolsterVolume() float64 {
	const r, d = 5.5, 4.0
	seg := r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d)
	c := 2.0/3*math.Pow(r*r-d*d, 1.5) - d*seg
	return 7963620 - 60*40*25 - math.Pi*10*10*80 - 2*math.Pi*r*r*70 - 2*(math.Pi*r*r*80-2*c)
}

// felloe is a seventh of a rim of outer radius 560, 50 deep and 45 wide, with
// two 22 mm spoke holes and a 12 mm dowel hole 50 deep in each end.
func felloe() form.Volume {
	h := math.Pi / 7
	s, c := math.Sincos(h)
	b := math.Tan(h / 2)
	body := form.Prism{Frame: flat, From: -22.5, To: 22.5, Profile: form.Profile{
		corner(510*c, 510*s, -b), corner(510*c, -510*s, 0), corner(560*c, -560*s, b), corner(560*c, 560*s, 0),
	}}
	var cuts []form.Volume
	for _, way := range []float64{1, -1} {
		s, c := math.Sincos(way * math.Pi / 14)
		cuts = append(cuts, form.Prism{
			Frame: form.Frame{U: form.Dir{X: -s, Y: c}, V: form.Dir{Z: 1}}, Profile: disc(0, 0, 11), From: 400, To: 700,
		})
		s, c = math.Sincos(way * h)
		at := vec(535*c, 535*s, 0)
		cuts = append(cuts, form.Prism{
			Frame:   form.Frame{Origin: at, U: form.Dir{X: c, Y: s}, V: form.Dir{Z: way}},
			Profile: disc(0, 0, 6), From: -5, To: 50,
		})
	}
	return form.Difference{From: body, Cut: cuts}
}

// felloeVolume: the sector less two dowel holes and two spoke holes, the
// latter by the midpoint rule, which is as good as exact on a periodic function.
func felloeVolume() float64 {
	const n = 4000
	hole := 0.0
	for i := range n {
		t := (float64(i) + 0.5) * math.Pi / n
		u := 11 * math.Cos(t)
		hole += (math.Sqrt(560*560-u*u) - math.Sqrt(510*510-u*u)) * 2 * 11 * 11 * math.Sin(t) * math.Sin(t)
	}
	return math.Pi/7*(560*560-510*510)*45 - 2*hole*math.Pi/n - 2*math.Pi*36*50
}

// reach is 2400 x 50 x 45 with six 11 mm holes.
func reach() form.Volume {
	var cuts []form.Volume
	for _, x := range []float64{-1150, -1000, -333.3, 250.7, 777.7, 1151} {
		cuts = append(cuts, bore(x, 0, 5.5))
	}
	return form.Difference{From: block(-1200, -25, -22.5, 1200, 25, 22.5), Cut: cuts}
}

func reachVolume() float64 { return 2400*50*45 - 6*math.Pi*5.5*5.5*45 }

// spoke is 480 long: a square foot, an oval body whose two half spans taper
// unlike, a round tongue.
func spoke() form.Volume {
	return form.Union{
		block(-20, -14, 0, 20, 14, 60),
		form.Oval{Frame: flat, From: 50, To: 430, First: form.Ellipse{U: 31, V: 24}, Last: form.Ellipse{U: 20, V: 16}},
		form.Prism{Frame: flat, Profile: disc(0, 0, 12), From: 420, To: 480},
	}
}

// spokeVolume: the foot below the body (its top lies within the oval), the
// body, and the tongue above it.
func spokeVolume() float64 {
	return 40*28*50 + math.Pi*380/6*(2*31*24+2*20*16+31*16+20*24) + math.Pi*12*12*50
}

// turnedSpoke has a round body, out of which the corners of the foot stand.
func turnedSpoke() form.Volume {
	return form.Union{
		block(-20, -14, 0, 20, 14, 60),
		form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: polygon(0, 50, 28, 50, 18, 430, 0, 430)},
		form.Revolved{Frame: flat, Sweep: 2 * math.Pi, Profile: polygon(0, 420, 12, 420, 12, 480, 0, 480)},
	}
}

// turnedSpokeVolume: the foot's stump below the body, the cone's frustum less
// nothing (the foot's top lies within it but for its corners), and the tongue.
func turnedSpokeVolume() float64 {
	const half, thick = 20.0, 14.0
	r := func(z float64) float64 { return 28 - 10*(z-50)/380 }
	over := 0.0
	const n = 20000 // the foot's corners that stand out of the cone between z = 50 and 60, by the midpoint rule
	for i := range n {
		z := 50 + 10*(float64(i)+0.5)/n
		over += outside(half, thick, r(z)) * 10 / n
	}
	return 40*28*50 + math.Pi*380*(28*28+28*18+18*18)/3 + over + math.Pi*12*12*50
}

// outside is the area of a rectangle with half sides a and b that lies outside
// the circle of radius r about its middle, r more than either.
func outside(a, b, r float64) float64 {
	if a*a+b*b <= r*r {
		return 0
	}
	x0, y0 := math.Sqrt(r*r-b*b), math.Sqrt(r*r-a*a)
	wedge := r * r / 2 * (math.Asin(b/r) - math.Asin(y0/r))
	return 4 * ((a-x0)*b - (wedge + a*y0/2 - x0*b/2))
}

func union(vs ...form.Volume) form.Volume { return form.Union(vs) }

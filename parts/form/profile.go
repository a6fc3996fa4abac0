package form

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
)

// Rectangle is the profile from one corner to the opposite one.
func Rectangle(from, to Point) Profile {
	return Polygon(from, Point{to.X, from.Y}, to, Point{from.X, to.Y})
}

// Polygon is a profile of straight edges through the points, which go round
// anticlockwise.
func Polygon(points ...Point) Profile {
	p := make(Profile, len(points))
	for i, q := range points {
		p[i].Point = q
	}
	return p
}

// Circle is a round profile: two half circles.
func Circle(centre Point, radius Length) Profile {
	return Profile{
		{Point{centre.X - radius, centre.Y}, 1},
		{Point{centre.X + radius, centre.Y}, 1},
	}
}

// Translated is the profile moved by dx and dy.
func (p Profile) Translated(dx, dy Length) Profile {
	q := slices.Clone(p)
	for i := range q {
		q[i].X += dx
		q[i].Y += dy
	}
	return q
}

// Reversed is the same outline run through the other way: clockwise where p is
// anticlockwise. It starts at the same vertex.
func (p Profile) Reversed() Profile {
	n := len(p)
	q := make(Profile, n)
	for i := range q {
		q[i].Point = p[(n-i)%n].Point
		q[i].Bulge = -p[(2*n-i-1)%n].Bulge
	}
	return q
}

// Mirrored is the profile with y turned to height - y, still anticlockwise.
// A height of 0 mirrors it in the x axis.
func (p Profile) Mirrored(height Length) Profile {
	q := slices.Clone(p)
	for i := range q {
		q[i].Y = height - q[i].Y
		q[i].Bulge = -q[i].Bulge
	}
	return q.Reversed()
}

// Transposed is the profile with x and y exchanged, still anticlockwise.
func (p Profile) Transposed() Profile {
	q := slices.Clone(p)
	for i := range q {
		q[i].X, q[i].Y = q[i].Y, q[i].X
		q[i].Bulge = -q[i].Bulge
	}
	return q.Reversed()
}

// Bounds are the corners of the smallest upright rectangle round the profile.
func (p Profile) Bounds() (lo, hi Point) {
	es := p.edges()
	x0, x1 := extentOf(es, 1, 0)
	y0, y1 := extentOf(es, 0, 1)
	return Point{Length(x0), Length(y0)}, Point{Length(x1), Length(y1)}
}

func (p Profile) extent(dx, dy float64) (lo, hi float64) { return extentOf(p.edges(), dx, dy) }

func extentOf(es []edge, dx, dy float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, e := range es {
		a, b := e.extent(dx, dy)
		lo, hi = math.Min(lo, a), math.Max(hi, b)
	}
	return lo, hi
}

// IsRectangle says whether the profile is an upright rectangle and nothing else.
func (p Profile) IsRectangle() bool {
	if len(p) != 4 {
		return false
	}
	lo, hi := p.Bounds()
	for i, v := range p {
		n := p[(i+1)%4]
		onCorner := (v.X == lo.X || v.X == hi.X) && (v.Y == lo.Y || v.Y == hi.Y)
		if v.Bulge != 0 || !onCorner || (v.X == n.X) == (v.Y == n.Y) {
			return false
		}
	}
	return true
}

// Area is what the profile encloses, exact for lines and arcs; it is negative
// where the profile runs clockwise.
func (p Profile) Area() quantity.Area {
	a, _, _ := p.moments()
	return quantity.Area(a)
}

// Centroid is the middle of the profile's area.
func (p Profile) Centroid() Point {
	a, mx, my := p.moments()
	if len(p) == 0 || a == 0 {
		return Point{}
	}
	return Point{p[0].X + Length(mx/a), p[0].Y + Length(my/a)}
}

// moments are the area and its first moments about the first vertex.
func (p Profile) moments() (area, mx, my float64) {
	if len(p) == 0 {
		return 0, 0, 0
	}
	for _, e := range p.Translated(-p[0].X, -p[0].Y).edges() {
		cross := (e.ax*e.by - e.bx*e.ay) / 2
		area += cross
		mx += cross * (e.ax + e.bx) / 3
		my += cross * (e.ay + e.by) / 3
		if e.bulge != 0 {
			a, off := e.segment()
			l := e.chord()
			area += a
			mx += a*(e.ax+e.bx)/2 + off*(e.by-e.ay)/l
			my += a*(e.ay+e.by)/2 - off*(e.bx-e.ax)/l
		}
	}
	return area, mx, my
}

// segment is the area between an arc and its chord, positive to the chord's
// right, and its moment about the chord, always to the right.
func (e edge) segment() (area, moment float64) {
	b, l := e.bulge, e.chord()
	if math.Abs(b) < 1e-3 {
		// A flat arc is a parabola to within b squared: the closed form loses
		// its digits here.
		h := b * l / 2
		return 2. / 3 * l * h, 2. / 3 * l * h * 2. / 5 * h
	}
	r, t := l*(1+b*b)/(4*math.Abs(b)), 4*math.Atan(math.Abs(b))
	a := r * r / 2 * (t - math.Sin(t))
	m := 2./3*math.Pow(r*math.Sin(t/2), 3) - a*r*math.Cos(t/2)
	return math.Copysign(a, b), m
}

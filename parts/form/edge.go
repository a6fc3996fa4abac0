package form

import "math"

// An edge is one line or arc of a profile or path, in plain numbers.
type edge struct {
	ax, ay, bx, by float64
	bulge          float64
}

func edgeOf(a Vertex, b Point) edge {
	return edge{float64(a.X), float64(a.Y), float64(b.X), float64(b.Y), a.Bulge}
}

// edges are the profile's, the last returning to the first vertex.
func (p Profile) edges() []edge {
	es := make([]edge, len(p))
	for i, v := range p {
		es[i] = edgeOf(v, p[(i+1)%len(p)].Point)
	}
	return es
}

func (e edge) chord() float64 { return math.Hypot(e.bx-e.ax, e.by-e.ay) }

// A circle is the one an arc lies on: it starts at an angle and turns by
// sweep, anticlockwise where that is positive.
type circle struct {
	x, y, r      float64
	start, sweep float64
}

func (e edge) circle() circle {
	b, l := e.bulge, e.chord()
	h := l / 2 * (1 - b*b) / (2 * b) // the centre lies this far to the left of the chord
	nx, ny := -(e.by-e.ay)/l, (e.bx-e.ax)/l
	c := circle{
		x: (e.ax+e.bx)/2 + nx*h,
		y: (e.ay+e.by)/2 + ny*h,
		r: l * (1 + b*b) / (4 * math.Abs(b)),
	}
	c.start = math.Atan2(e.ay-c.y, e.ax-c.x)
	c.sweep = 4 * math.Atan(b)
	return c
}

// passes says whether the arc goes through the angle.
func (c circle) passes(angle float64) bool {
	t := turn(angle - c.start)
	if c.sweep < 0 {
		t = turn(c.start - angle)
	}
	return t <= math.Abs(c.sweep)
}

// turn brings an angle into 0 to 2 pi.
func turn(a float64) float64 {
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// length of the edge along itself.
func (e edge) length() float64 {
	if e.bulge == 0 {
		return e.chord()
	}
	c := e.circle()
	return c.r * math.Abs(c.sweep)
}

// extent is how far the edge reaches in the direction (dx, dy), least and most.
func (e edge) extent(dx, dy float64) (lo, hi float64) {
	a, b := e.ax*dx+e.ay*dy, e.bx*dx+e.by*dy
	lo, hi = math.Min(a, b), math.Max(a, b)
	if e.bulge == 0 {
		return lo, hi
	}
	c := e.circle()
	mid, reach, dir := c.x*dx+c.y*dy, c.r*math.Hypot(dx, dy), math.Atan2(dy, dx)
	// An arc that ends where it turns back reaches no further than its end.
	if c.passes(dir) && mid+reach > hi+slack {
		hi = mid + reach
	}
	if c.passes(dir+math.Pi) && mid-reach < lo-slack {
		lo = mid - reach
	}
	return lo, hi
}

// slack is what the rounding of numbers may make of one place.
const slack = 1e-9

// distance from a point to the edge.
func (e edge) distance(x, y float64) float64 {
	ends := math.Min(math.Hypot(x-e.ax, y-e.ay), math.Hypot(x-e.bx, y-e.by))
	if e.bulge == 0 {
		l := e.chord()
		if l == 0 {
			return ends
		}
		ux, uy := (e.bx-e.ax)/l, (e.by-e.ay)/l
		if t := (x-e.ax)*ux + (y-e.ay)*uy; t > 0 && t < l {
			return math.Abs((y-e.ay)*ux - (x-e.ax)*uy)
		}
		return ends
	}
	c := e.circle()
	if c.passes(math.Atan2(y-c.y, x-c.x)) {
		return math.Abs(math.Hypot(x-c.x, y-c.y) - c.r)
	}
	return ends
}

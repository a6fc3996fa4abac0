package form

import "math"

// A Path is an open line of straight edges and arcs; its last vertex's bulge
// has no meaning.
type Path []Vertex

func (p Path) edges() []edge {
	var es []edge
	for i := 0; i+1 < len(p); i++ {
		es = append(es, edgeOf(p[i], p[i+1].Point))
	}
	return es
}

// Long is the path's developed length.
func (p Path) Long() Length {
	var l float64
	for _, e := range p.edges() {
		l += e.length()
	}
	return Length(l)
}

// Offset is the path that runs beside p at a distance, to the left where that
// is positive. It is exact where p has no corners; an arc on the inner side
// must be wider than the distance.
func (p Path) Offset(by Length) Path {
	es := p.edges()
	q := make(Path, len(p))
	for i, v := range p {
		var dx, dy float64
		if i < len(es) {
			dx, dy = es[i].heading(0)
		} else if i > 0 {
			dx, dy = es[i-1].heading(1)
		}
		q[i] = Vertex{Point{v.X - Length(dy)*by, v.Y + Length(dx)*by}, v.Bulge}
	}
	return q
}

// heading is the direction of travel at the edge's start (0) or its end (1).
func (e edge) heading(at float64) (dx, dy float64) {
	a := math.Atan2(e.by-e.ay, e.bx-e.ax) + 2*math.Atan(e.bulge)*(2*at-1)
	dy, dx = math.Sincos(a)
	return snap(dx), snap(dy)
}

// snap keeps a heading along an axis exactly so.
func snap(v float64) float64 {
	if math.Abs(v) < 1e-15 {
		return 0
	}
	if math.Abs(v) > 1-1e-15 {
		return math.Copysign(1, v)
	}
	return v
}

// Band is the outline of a strip of the path's own length, by half its width
// to either side.
func (p Path) Band(half Length) Profile {
	right, left := p.Offset(-half), p.Offset(half)
	n := len(p)
	out := make(Profile, 0, 2*n)
	for i, v := range right {
		if i == n-1 {
			v.Bulge = 0
		}
		out = append(out, v)
	}
	for i := n - 1; i >= 0; i-- {
		v := Vertex{Point: left[i].Point}
		if i > 0 {
			v.Bulge = -left[i-1].Bulge
		}
		out = append(out, v)
	}
	return out
}

// Through fits a path of arcs to a smooth curve: at runs from 0 to 1, and arc
// i of the pieces passes the curve at i, i + 1/2 and i + 1 pieces.
func Through(pieces int, curve func(at float64) Point) Path {
	p := make(Path, 0, pieces+1)
	for i := range pieces {
		a, m, b := curve(float64(i)/float64(pieces)), curve((float64(i)+.5)/float64(pieces)), curve(float64(i+1)/float64(pieces))
		p = append(p, Vertex{a, bulgeThrough(a, m, b)})
	}
	return append(p, Vertex{Point: curve(1)})
}

// bulgeThrough is the bulge of the arc from a through m to b. Its two chords turn
// at m by half the angle that the whole arc turns by.
func bulgeThrough(a, m, b Point) float64 {
	ux, uy := float64(m.X-a.X), float64(m.Y-a.Y)
	vx, vy := float64(b.X-m.X), float64(b.Y-m.Y)
	turned := math.Atan2(ux*vy-uy*vx, ux*vx+uy*vy) // half the included angle
	return math.Tan(turned / 2)
}

// Start is where the path begins and the way it sets out, level.
func (p Path) Start() (Point, Dir) { return p.way(0, 0) }

// End is where the path stops and the way it is going there, level.
func (p Path) End() (Point, Dir) { return p.way(len(p)-2, 1) }

func (p Path) way(i int, at float64) (Point, Dir) {
	es := p.edges()
	if i < 0 || i >= len(es) {
		return Point{}, Dir{}
	}
	dx, dy := es[i].heading(at)
	return p[i+int(at)].Point, Dir{X: dx, Y: dy}
}

// A Bend is an arc of a path as it is turned: from an angle, anticlockwise by
// Turn, whichever way the path runs.
type Bend struct {
	Centre     Point
	Radius     Length
	From, Turn Angle
}

// Bend is the arc that leaves vertex i, which must have a bulge.
func (p Path) Bend(i int) Bend {
	c := p.edges()[i].circle()
	b := Bend{Point{Length(c.x), Length(c.y)}, Length(c.r), Angle(c.start), Angle(c.sweep)}
	if b.Turn < 0 {
		b.From, b.Turn = b.From+b.Turn, -b.Turn
	}
	return b
}

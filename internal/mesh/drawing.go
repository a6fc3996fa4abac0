package mesh

import (
	"math"
	"slices"
)

// An xy is a place on a plane's drawing.
type xy struct{ x, y float64 }

func (a xy) sub(b xy) xy             { return xy{a.x - b.x, a.y - b.y} }
func (a xy) cross(b xy) float64      { return a.x*b.y - a.y*b.x }
func (a xy) dot(b xy) float64        { return a.x*b.x + a.y*b.y }
func (a xy) length() float64         { return math.Hypot(a.x, a.y) }
func (a xy) plus(b xy, k float64) xy { return xy{a.x + k*b.x, a.y + k*b.y} }

// A drawing is the lines on one plane, laid flat.
type drawing struct {
	carving *carving
	plane   *plane
	o, u, v point
	flat    map[knot]xy
}

func (c *carving) drawing(i int) *drawing {
	q := &c.planes[i]
	u := q.n.Cross(point{X: 1})
	if math.Abs(q.n.X) > 0.6 {
		u = q.n.Cross(point{Y: 1})
	}
	u = u.Normalize()
	return &drawing{carving: c, plane: q, o: q.n.MulScalar(q.d), u: u, v: q.n.Cross(u), flat: map[knot]xy{}}
}

func (d *drawing) xy(k knot) xy {
	p, known := d.flat[k]
	if !known {
		q := d.carving.knots.at[k].Sub(d.o)
		p = xy{q.Dot(d.u), q.Dot(d.v)}
		d.flat[k] = p
	}
	return p
}

func (d *drawing) lift(p xy) point { return d.o.Add(d.u.MulScalar(p.x)).Add(d.v.MulScalar(p.y)) }

// busy says whether there is more on the plane than one facet's own outline.
func (c *carving) busy(i int) bool {
	q := &c.planes[i]
	return len(q.facets) > 1 || len(q.lines) > len(c.facets[q.facets[0]].loop)
}

// divide marks every line wherever another meets it, till nothing is new.
func (c *carving) divide() {
	for news := true; news; {
		news = false
		for i := range c.planes {
			if c.busy(i) {
				d := c.drawing(i)
				news = d.intersect() || news
				news = d.touch() || news
			}
		}
	}
}

// A stroke is a line laid flat, with the box round it.
type stroke struct {
	line   int
	a, b   xy
	lo, hi xy
}

func (d *drawing) strokes() []stroke {
	all := make([]stroke, len(d.plane.lines))
	for i, l := range d.plane.lines {
		a, b := d.xy(d.carving.lines[l].a), d.xy(d.carving.lines[l].b)
		on := d.carving.on
		all[i] = stroke{l, a, b, xy{min(a.x, b.x) - on, min(a.y, b.y) - on}, xy{max(a.x, b.x) + on, max(a.y, b.y) + on}}
	}
	slices.SortStableFunc(all, func(a, b stroke) int { return cmpFloat(a.lo.x, b.lo.x) })
	return all
}

// intersect ties knots where lines cross each other's middles.
func (d *drawing) intersect() bool {
	news := false
	all := d.strokes()
	for i := range all {
		s := &all[i]
		for j := i + 1; j < len(all) && all[j].lo.x <= s.hi.x; j++ {
			t := &all[j]
			if t.lo.y <= s.hi.y && s.lo.y <= t.hi.y {
				news = d.meet(s, t) || news
			}
		}
	}
	return news
}

// meet marks two lines where they cross, unless that is at an end of either:
// touch does those.
func (d *drawing) meet(s, t *stroke) bool {
	sa, sb := sides(s, t, d.carving.on)
	if sa*sb >= 0 {
		return false
	}
	ta, tb := sides(t, s, d.carving.on)
	if ta*tb >= 0 {
		return false
	}
	l := &d.carving.lines[t.line]
	p, q := d.carving.knots.at[l.a], d.carving.knots.at[l.b]
	k := d.carving.knots.of(p.Add(q.Sub(p).MulScalar(sa / (sa - sb))))
	one := d.carving.mark(s.line, k)
	return d.carving.mark(t.line, k) || one
}

// sides is how far the ends of t lie off the line through s; an end on it
// counts as no distance.
func sides(s, t *stroke, on float64) (a, b float64) {
	way := s.b.sub(s.a)
	l := way.length()
	a, b = way.cross(t.a.sub(s.a))/l, way.cross(t.b.sub(s.a))/l
	if math.Abs(a) <= on {
		a = 0
	}
	if math.Abs(b) <= on {
		b = 0
	}
	return a, b
}

// touch marks each line at every knot of the drawing that lies on it.
func (d *drawing) touch() bool {
	news := false
	all := d.strokes()
	ks := d.allKnots()
	first := 0
	for i := range all {
		s := &all[i]
		for first < len(ks) && d.xy(ks[first]).x < s.lo.x {
			first++
		}
		way := s.b.sub(s.a)
		l := way.length()
		for _, k := range ks[first:] {
			p := d.xy(k)
			if p.x > s.hi.x {
				break
			}
			if p.y < s.lo.y || p.y > s.hi.y || math.Abs(way.cross(p.sub(s.a))) > d.carving.on*l {
				continue
			}
			news = d.carving.mark(s.line, k) || news
		}
	}
	return news
}

// allKnots are the knots of the drawing's lines, from left to right.
func (d *drawing) allKnots() []knot {
	var ks []knot
	seen := map[knot]bool{}
	add := func(k knot) {
		if !seen[k] {
			seen[k] = true
			ks = append(ks, k)
		}
	}
	for _, i := range d.plane.lines {
		l := &d.carving.lines[i]
		add(l.a)
		add(l.b)
		for _, k := range l.marks {
			add(k)
		}
	}
	slices.SortStableFunc(ks, func(a, b knot) int { return cmpFloat(d.xy(a).x, d.xy(b).x) })
	return ks
}

// bits are the undivided pieces of the drawing's lines, each once.
func (d *drawing) bits() [][2]knot {
	var out [][2]knot
	seen := map[[2]knot]bool{}
	for _, i := range d.plane.lines {
		l := &d.carving.lines[i]
		a := d.xy(l.a)
		way := d.xy(l.b).sub(a)
		stops := slices.Clone(l.marks)
		slices.SortStableFunc(stops, func(j, k knot) int { return cmpFloat(way.dot(d.xy(j)), way.dot(d.xy(k))) })
		from := l.a
		for _, k := range append(stops, l.b) {
			key := [2]knot{min(from, k), max(from, k)}
			if !seen[key] {
				seen[key] = true
				out = append(out, key)
			}
			from = k
		}
	}
	return out
}

package form

import (
	"math"
	"slices"
)

// A Stretch is part of a line, from one place on it to another.
type Stretch struct{ From, To Length }

// Long is the stretch's length.
func (s Stretch) Long() Length { return s.To - s.From }

// Chords are the stretches of the upright line at x that lie inside the
// profile, from the lowest up. At the profile's own ends, and at a step, they
// are those just inside it. There are none outside.
func (p Profile) Chords(x Length) []Stretch {
	es := p.edges()
	lo, hi := extentOf(es, 1, 0)
	at := float64(x)
	if !(at >= lo-slack && at <= hi+slack) || lo == hi {
		return nil
	}
	at = math.Min(math.Max(at, lo), hi)
	var ys []float64
	for _, e := range es {
		if l, r := e.extent(1, 0); at < l || at > r {
			continue
		}
		if e.bulge == 0 {
			if y, ok := e.crossing(at, at == hi); ok {
				ys = append(ys, y)
			}
			continue
		}
		for _, piece := range e.rising() {
			if y, ok := piece.crossing(at, at == hi); ok {
				ys = append(ys, y)
			}
		}
	}
	slices.Sort(ys)
	var out []Stretch
	for i := 0; i+1 < len(ys); i += 2 {
		out = append(out, Stretch{Length(ys[i]), Length(ys[i+1])})
	}
	return out
}

// Span is the stretch from the lowest to the highest place inside the profile
// at x; both ends are NaN where there is none.
func (p Profile) Span(x Length) Stretch {
	c := p.Chords(x)
	if len(c) == 0 {
		return Stretch{Length(math.NaN()), Length(math.NaN())}
	}
	return Stretch{c[0].From, c[len(c)-1].To}
}

// rising splits an arc where it turns back in x, so that each piece passes an
// upright line at most once.
func (e edge) rising() []edge {
	c := e.circle()
	cuts := []float64{0, c.sweep}
	for _, a := range []float64{0, math.Pi} {
		t := turn(a - c.start)
		if c.sweep < 0 {
			t = -turn(c.start - a)
		}
		if math.Abs(t) < math.Abs(c.sweep) {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	if c.sweep < 0 {
		slices.Reverse(cuts)
	}
	return c.split(e, cuts)
}

func (c circle) split(e edge, cuts []float64) []edge {
	var out []edge
	ax, ay := e.ax, e.ay
	for i := 1; i < len(cuts); i++ {
		if cuts[i] == cuts[i-1] {
			continue
		}
		a := c.start + cuts[i]
		bx, by := c.x+c.r*math.Cos(a), c.y+c.r*math.Sin(a)
		if i == len(cuts)-1 {
			bx, by = e.bx, e.by
		}
		out = append(out, edge{ax, ay, bx, by, math.Tan((cuts[i] - cuts[i-1]) / 4)})
		ax, ay = bx, by
	}
	return out
}

// crossing is where an edge that does not turn back in x passes the upright
// line at x. An edge holds its left end but not its right one, or the other
// way about where atEnd says that x is the profile's last.
func (e edge) crossing(x float64, atEnd bool) (y float64, ok bool) {
	left, right := math.Min(e.ax, e.bx), math.Max(e.ax, e.bx)
	inside := x >= left && x < right
	if atEnd {
		inside = x > left && x <= right
	}
	switch {
	case !inside:
		return 0, false
	case x == e.ax:
		return e.ay, true
	case x == e.bx:
		return e.by, true
	case e.bulge == 0:
		return e.ay + (e.by-e.ay)*(x-e.ax)/(e.bx-e.ax), true
	}
	c := e.circle()
	h := math.Sqrt(math.Max(0, c.r*c.r-(x-c.x)*(x-c.x)))
	if c.passesUpper() {
		return c.y + h, true
	}
	return c.y - h, true
}

// passesUpper says which half of its circle the middle of the arc is on.
func (c circle) passesUpper() bool { return math.Sin(c.start+c.sweep/2) > 0 }

// Contains says whether a point is inside the profile.
func (p Profile) Contains(q Point) bool {
	inside := false
	for _, c := range p.Chords(q.X) {
		if q.Y > c.From && q.Y < c.To {
			inside = true
		}
	}
	return inside
}

// Distance is how far a point is from the profile's outline, inside or out.
func (p Profile) Distance(q Point) Length {
	d := math.Inf(1)
	for _, e := range p.edges() {
		d = math.Min(d, e.distance(float64(q.X), float64(q.Y)))
	}
	return Length(d)
}

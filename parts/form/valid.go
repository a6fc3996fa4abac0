package form

import (
	"errors"
	"fmt"
	"math"
)

// Points nearer than this are taken for one: a millionth of a millimetre is
// far below what any tool can cut and far above the rounding of the numbers.
const same = 1e-6

// near is how far from a shared corner a crossing of its two edges may be
// found: where an arc runs smoothly into a line, their meeting is ill defined.
const near = 1e-3

// Valid reports what keeps the profile from being a closed outline: numbers
// that are none, repeated points, edges that cross or touch, or a clockwise run.
func (p Profile) Valid() error {
	if len(p) < 2 {
		return errors.New("an outline needs two corners or more")
	}
	for i, v := range p {
		s := float64(v.X) + float64(v.Y) + v.Bulge
		if math.IsNaN(s) || math.IsInf(s, 0) {
			return fmt.Errorf("corner %d of the outline is not a number", i+1)
		}
	}
	for i, e := range p.edges() {
		if e.chord() < same {
			return fmt.Errorf("corner %d of the outline is repeated, at (%.6g, %.6g)", i+1, e.ax, e.ay)
		}
	}
	if err := p.crossed(); err != nil {
		return err
	}
	if !(p.Area() > 0) {
		return errors.New("the outline runs clockwise or encloses nothing")
	}
	return nil
}

func (p Profile) crossed() error {
	es := p.edges()
	n := len(es)
	for i := range es {
		for j := i + 1; j < n; j++ {
			for _, q := range es[i].meets(es[j]) {
				if j == i+1 && math.Hypot(q[0]-es[j].ax, q[1]-es[j].ay) < near {
					continue
				}
				if i == 0 && j == n-1 && math.Hypot(q[0]-es[0].ax, q[1]-es[0].ay) < near {
					continue
				}
				return fmt.Errorf("the outline crosses itself at (%.6g, %.6g), edges %d and %d", q[0], q[1], i+1, j+1)
			}
		}
	}
	return nil
}

// meets are points shared by two edges: where they cross or touch, and one in
// the middle of a stretch that they share.
func (e edge) meets(f edge) [][2]float64 {
	if !e.boxesMeet(f) {
		return nil
	}
	switch {
	case e.bulge == 0 && f.bulge == 0:
		return e.lineMeetsLine(f)
	case e.bulge == 0:
		return e.lineMeetsArc(f)
	case f.bulge == 0:
		return f.lineMeetsArc(e)
	}
	return e.arcMeetsArc(f)
}

func (e edge) boxesMeet(f edge) bool {
	for _, d := range [][2]float64{{1, 0}, {0, 1}} {
		a0, a1 := e.extent(d[0], d[1])
		b0, b1 := f.extent(d[0], d[1])
		if a0 > b1+same || b0 > a1+same {
			return false
		}
	}
	return true
}

// on says whether a point of the edge's own line or circle is on the edge.
func (e edge) on(x, y float64) bool { return e.distance(x, y) < same }

func (e edge) lineMeetsLine(f edge) [][2]float64 {
	l := e.chord()
	ux, uy := (e.bx-e.ax)/l, (e.by-e.ay)/l
	off := func(x, y float64) float64 { return (y-e.ay)*ux - (x-e.ax)*uy }
	da, db := off(f.ax, f.ay), off(f.bx, f.by)
	if math.Abs(da) < same && math.Abs(db) < same {
		return e.sharedStretch(f, ux, uy)
	}
	if da*db > 0 && math.Min(math.Abs(da), math.Abs(db)) > same || da == db {
		return nil
	}
	t := da / (da - db)
	x, y := f.ax+t*(f.bx-f.ax), f.ay+t*(f.by-f.ay)
	if e.on(x, y) && f.on(x, y) {
		return [][2]float64{{x, y}}
	}
	return nil
}

// sharedStretch is the middle of what two edges on one line share.
func (e edge) sharedStretch(f edge, ux, uy float64) [][2]float64 {
	along := func(x, y float64) float64 { return (x-e.ax)*ux + (y-e.ay)*uy }
	a, b := along(f.ax, f.ay), along(f.bx, f.by)
	lo, hi := math.Max(0, math.Min(a, b)), math.Min(e.chord(), math.Max(a, b))
	if hi < lo-same {
		return nil
	}
	m := (lo + hi) / 2
	return [][2]float64{{e.ax + m*ux, e.ay + m*uy}}
}

func (e edge) lineMeetsArc(f edge) [][2]float64 {
	c, l := f.circle(), e.chord()
	ux, uy := (e.bx-e.ax)/l, (e.by-e.ay)/l
	t := (c.x-e.ax)*ux + (c.y-e.ay)*uy
	fx, fy := e.ax+t*ux, e.ay+t*uy
	return e.shared(f, c.halfChord(math.Hypot(c.x-fx, c.y-fy)), fx, fy, ux, uy)
}

func (e edge) arcMeetsArc(f edge) [][2]float64 {
	c, d := e.circle(), f.circle()
	apart := math.Hypot(d.x-c.x, d.y-c.y)
	if apart < same {
		if math.Abs(c.r-d.r) > same {
			return nil
		}
		return c.sharedArc(d)
	}
	ux, uy := (d.x-c.x)/apart, (d.y-c.y)/apart
	t := (apart*apart + c.r*c.r - d.r*d.r) / (2 * apart)
	return e.shared(f, c.halfChord(math.Abs(t)), c.x+t*ux, c.y+t*uy, -uy, ux)
}

// halfChord is half the chord at a distance from the centre; NaN where the
// circle is not reached. A grazing chord counts as a touch.
func (c circle) halfChord(from float64) float64 {
	if from > c.r+same {
		return math.NaN()
	}
	h := math.Sqrt(math.Max(0, c.r*c.r-from*from))
	if h < near/2 {
		return 0
	}
	return h
}

// shared keeps, of the two points h either way of (x, y), those on both edges.
func (e edge) shared(f edge, h, x, y, ux, uy float64) [][2]float64 {
	var out [][2]float64
	for _, s := range []float64{-h, h} {
		px, py := x+s*ux, y+s*uy
		if e.on(px, py) && f.on(px, py) {
			out = append(out, [2]float64{px, py})
		}
		if h == 0 {
			break
		}
	}
	return out
}

// sharedArc is where two arcs of one circle begin inside one another, or the
// middle of one that lies within the other.
func (c circle) sharedArc(d circle) [][2]float64 {
	var out [][2]float64
	add := func(o circle, a float64) {
		if o.passes(a) {
			out = append(out, [2]float64{c.x + c.r*math.Cos(a), c.y + c.r*math.Sin(a)})
		}
	}
	for _, part := range []float64{0, .5, 1} {
		add(d, c.start+part*c.sweep)
		add(c, d.start+part*d.sweep)
	}
	return out
}

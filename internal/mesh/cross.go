package mesh

import (
	"math"
	"slices"

	"github.com/deadsy/sdfx/sdf"
)

// cross draws the lines where facets of different bodies cross.
func (c *carving) cross() {
	order := make([]int, len(c.facets))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmpFloat(c.facets[a].box.Min.X, c.facets[b].box.Min.X)
	})
	var open []int
	for _, i := range order {
		f := &c.facets[i]
		kept := open[:0]
		for _, j := range open {
			g := &c.facets[j]
			if g.box.Max.X < f.box.Min.X-c.on {
				continue
			}
			kept = append(kept, j)
			if g.body != f.body && g.plane != f.plane && overlap(f.box, g.box, c.on) {
				c.crossing(f, g)
			}
		}
		open = append(kept, i)
	}
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func overlap(a, b sdf.Box3, on float64) bool {
	return a.Min.Y <= b.Max.Y+on && b.Min.Y <= a.Max.Y+on && a.Min.Z <= b.Max.Z+on && b.Min.Z <= a.Max.Z+on &&
		a.Min.X <= b.Max.X+on && b.Min.X <= a.Max.X+on
}

// A pass is a place where a facet's outline passes through another's plane.
type pass struct {
	at     point
	along  float64 // along the line where the planes cross
	corner int     // the outline's corner there, or -1
	a, b   knot    // the outline's edge there
}

func (c *carving) crossing(f, g *facet) {
	p, q := &c.planes[f.plane], &c.planes[g.plane]
	way := p.n.Cross(q.n)
	if l := way.Length(); l < 1e-9 {
		return // side by side
	} else {
		way = way.DivScalar(l)
	}
	mine := c.passes(f, q, way)
	if len(mine) < 2 {
		return
	}
	theirs := c.passes(g, p, way)
	if len(theirs) < 2 {
		return
	}
	ours := c.stretches(f, mine)
	for _, t := range c.stretches(g, theirs) {
		for _, s := range ours {
			lo, hi := s[0], s[1]
			if t[0].along > lo.along {
				lo = t[0]
			}
			if t[1].along < hi.along {
				hi = t[1]
			}
			if hi.along-lo.along > c.snap {
				c.join(lo, hi, f.plane, g.plane)
			}
		}
	}
}

// passes lists where a facet's outline meets a plane, in order along a line.
func (c *carving) passes(f *facet, q *plane, way point) []pass {
	n := len(f.loop)
	var buf [16]float64
	off := buf[:0]
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, k := range f.loop {
		d := q.off(c.knots.at[k])
		if math.Abs(d) <= c.on {
			d = 0
		}
		lo, hi = min(lo, d), max(hi, d)
		off = append(off, d)
	}
	if lo > 0 || hi < 0 {
		return nil
	}
	var out []pass
	for i, d := range off {
		j := (i + 1) % n
		if d == 0 {
			at := c.knots.at[f.loop[i]]
			out = append(out, pass{at: at, along: at.Dot(way), corner: i})
		} else if d*off[j] < 0 {
			out = append(out, c.through(f.loop[i], f.loop[j], d, off[j], way))
		}
	}
	slices.SortStableFunc(out, func(a, b pass) int { return cmpFloat(a.along, b.along) })
	return out
}

// through is where an edge passes a plane that its ends lie da and db off. It
// is worked out alike from either side of the edge.
func (c *carving) through(a, b knot, da, db float64, way point) pass {
	if a > b {
		a, b, da, db = b, a, db, da
	}
	p, q := c.knots.at[a], c.knots.at[b]
	at := p.Add(q.Sub(p).MulScalar(da / (da - db)))
	return pass{at: at, along: at.Dot(way), corner: -1, a: a, b: b}
}

// stretches are the parts of a line that lie in a facet, from pass to pass.
func (c *carving) stretches(f *facet, p []pass) [][2]pass {
	if !f.hollow {
		return [][2]pass{{p[0], p[len(p)-1]}}
	}
	var out [][2]pass
	n := len(f.loop)
	for i := range p[1:] {
		a, b := p[i], p[i+1]
		if b.along-a.along <= c.snap {
			continue
		}
		beside := a.corner >= 0 && b.corner >= 0 && ((a.corner+1)%n == b.corner || (b.corner+1)%n == a.corner)
		if beside || c.covers(f, a.at.Add(b.at).MulScalar(0.5)) {
			out = append(out, [2]pass{a, b})
		}
	}
	return out
}

// covers says whether a place in a facet's plane, not on its outline, is in it.
func (c *carving) covers(f *facet, p point) bool {
	n := c.planes[f.plane].n
	u, v := dropped(n)
	x, y := component(p, u), component(p, v)
	in := false
	a := c.at(f, len(f.loop)-1)
	for _, k := range f.loop {
		b := c.knots.at[k]
		ax, ay, bx, by := component(a, u), component(a, v), component(b, u), component(b, v)
		if (ay > y) != (by > y) && x < ax+(bx-ax)*(y-ay)/(by-ay) {
			in = !in
		}
		a = b
	}
	return in
}

// dropped are the two axes left when the one most along n is dropped, in an
// order that keeps what is anticlockwise about n so when n points up that axis.
func dropped(n point) (u, v int) {
	x, y, z := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)
	switch {
	case z >= x && z >= y:
		return 0, 1
	case x >= y:
		return 1, 2
	}
	return 2, 0
}

func component(p point, axis int) float64 {
	switch axis {
	case 0:
		return p.X
	case 1:
		return p.Y
	}
	return p.Z
}

// join draws the line where two planes cross between two passes.
func (c *carving) join(lo, hi pass, p, q int) {
	a, b := c.tie(lo), c.tie(hi)
	if a == b {
		return
	}
	c.line(a, b, p)
	c.line(a, b, q)
}

// tie gives a pass its knot and divides the edge it is on.
func (c *carving) tie(p pass) knot {
	k := c.knots.of(p.at)
	if p.corner < 0 {
		c.mark(c.lineOf[[2]knot{p.a, p.b}], k)
	}
	return k
}

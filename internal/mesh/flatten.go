package mesh

import (
	"math"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A style says how finely curved faces are made flat, and how near is the same.
type style struct {
	tolerance float64 // in millimetres
	snap      float64 // how near two places must be to be one, in millimetres
	turn      float64 // by what part of a facet whole circles are turned
}

// widest is the most that one flat facet may turn, however small the arc.
const widest = math.Pi / 3

// steps is into how many flat facets an arc goes so that none strays from it
// by more than the tolerance.
func steps(radius, sweep, tolerance float64) int {
	most := widest
	if c := 1 - tolerance/radius; c > math.Cos(widest/2) {
		most = 2 * math.Acos(c)
	}
	return max(1, int(math.Ceil(math.Abs(sweep)/most-1e-9)))
}

// round is steps for a whole circle: a number that four goes into, so that it
// measures the same both ways.
func round(radius, tolerance float64) int { return (steps(radius, 2*math.Pi, tolerance) + 3) / 4 * 4 }

// A joint tells arcs of one size: a bent piece and the straight pieces it runs
// into have the same, and are to be flattened alike so that they meet.
type joint struct{ radius, sweep float64 }

func jointOf(e solid.Edge) joint {
	return joint{math.Round(radius(e) * 1e6), math.Round(math.Abs(float64(e.Sweep())) * 1e6)}
}

func radius(e solid.Edge) float64 { return e.Radius().Millimetres() }

// joints collects the arcs of turned pieces.
func joints(leaves []*solid.Leaf) map[joint]bool {
	all := map[joint]bool{}
	for _, l := range leaves {
		if _, turned := l.Shape.(form.Revolved); !turned {
			continue
		}
		for _, e := range l.Edges() {
			if e.Radius() > 0 {
				all[jointOf(e)] = true
			}
		}
	}
	return all
}

// A stop is a corner of a flattened profile.
type stop struct {
	x, y float64
	face int // the leaf's face that its following edge belongs to
}

// flatten makes a polygon of a leaf's profile. A turned arc gets half of the
// tolerance, its turning the other half.
func (s style) flatten(l *solid.Leaf, bent map[joint]bool) []stop {
	edges := l.Edges()
	if c, whole := circle(edges); whole {
		return s.ring(l, c, bent[jointOf(c)])
	}
	var out []stop
	for i, e := range edges {
		n := 1
		if e.Radius() > 0 {
			n = steps(radius(e), float64(e.Sweep()), s.share(bent[jointOf(e)]))
		}
		for k := range n {
			x, y := e.At(float64(k) / float64(n))
			out = append(out, stop{x, y, i})
		}
	}
	return out
}

// share is the tolerance left for an arc.
func (s style) share(bent bool) float64 {
	if bent {
		return s.tolerance / 2
	}
	return s.tolerance
}

// circle says whether a profile is one whole circle, in however many arcs.
func circle(edges []solid.Edge) (solid.Edge, bool) {
	sum, one := 0.0, edges[0].Centre()
	for _, e := range edges {
		c := e.Centre()
		off := math.Hypot(float64(c.X-one.X), float64(c.Y-one.Y))
		if e.Radius() == 0 || math.Abs(radius(e)-radius(edges[0]))+off > 1e-9 {
			return solid.Edge{}, false
		}
		sum += float64(e.Sweep())
	}
	return edges[0], math.Abs(sum-2*math.Pi) < 1e-9
}

// ring flattens a whole circle. Its first corner is where the world's axes say,
// so that two holes of one size on one line get the same facets; but where the
// circle runs into a bend, it is where the profile says.
func (s style) ring(l *solid.Leaf, c solid.Edge, bent bool) []stop {
	r := radius(c)
	n := round(r, s.share(bent))
	x, y := float64(c.Centre().X), float64(c.Centre().Y)
	px, py := c.At(0)
	start := math.Atan2(py-y, px-x)
	if _, prism := l.Shape.(form.Prism); prism && !bent {
		start = bearing(l)
	}
	start += s.turn * 2 * math.Pi / float64(n)
	out := make([]stop, n)
	for k := range out {
		sin, cos := math.Sincos(start + 2*math.Pi*float64(k)/float64(n))
		out[k] = stop{x + r*snapped(cos), y + r*snapped(sin), 0}
	}
	return out
}

// snapped keeps the quarter points of a circle exactly on its axes.
func snapped(x float64) float64 {
	if math.Abs(x) < 1e-15 {
		return 0
	}
	return x
}

// bearing is the angle, in a leaf's plane, of the world axis most nearly in it.
func bearing(l *solid.Leaf) float64 {
	u, v, w := l.Axes()
	axis, least := v3.Vec{}, math.Inf(1)
	for _, a := range []v3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		if c := math.Abs(a.Dot(w)); c < least-1e-9 {
			axis, least = a, c
		}
	}
	return math.Atan2(axis.Dot(v), axis.Dot(u))
}

package mesh

import (
	"math"
	"slices"

	"lostwood/internal/solid"
)

// A lack is what a skin that is sound still wants: facets that cut a little too
// deep can hide a corner smaller than they are, and an acute edge lies farther
// from them than their own surfaces do. Finer facets mend both.
type lack struct {
	edge    float64 // farthest of the true edges from the skin, in millimetres
	corners int     // true corners without a vertex
}

func (l lack) none(tolerance float64) bool { return l.corners == 0 && l.edge <= tolerance }

func (l lack) less(m lack) bool {
	return l.corners < m.corners || l.corners == m.corners && l.edge < m.edge
}

// finer is by how much the facets are to be made finer: for a corner a good
// deal, for an edge by what it wants.
func (l lack) finer(tolerance float64) float64 {
	if l.corners > 0 || l.edge <= tolerance {
		return 0.4
	}
	return max(0.1, 0.9*tolerance/l.edge)
}

// review looks for what a skin lacks.
func (h *hide) review(ts []scale) lack {
	l := lack{}
	across := map[[2]knot]int{}
	for i, s := range ts {
		for k, a := range s.knots {
			b := s.knots[(k+1)%3]
			if j, known := across[[2]knot{b, a}]; known {
				if ts[j].surface != s.surface {
					l.edge = max(l.edge, h.chord(a, b, s, ts[j]))
				}
			}
			across[[2]knot{a, b}] = i
		}
	}
	l.corners = h.missing()
	return l
}

// chord is how far the true edge between two surfaces is from the triangles on
// both sides of its chord.
func (h *hide) chord(a, b knot, s, t scale) float64 {
	all := h.solid.Surfaces()
	m := h.at[a].Add(h.at[b]).MulScalar(0.5)
	if all[s.surface].Kind == solid.Plane && all[t.surface].Kind == solid.Plane ||
		all[s.surface].Normal(m).Cross(all[t.surface].Normal(m)).Length() < askew {
		return 0
	}
	q := h.trued(m, []int{s.surface, t.surface})
	if math.Abs(h.solid.Evaluate(q)) > onSurface {
		return 0
	}
	return min(h.toScale(q, s), h.toScale(q, t))
}

const (
	askew     = 0.1  // the sine of the least angle at which surfaces make an edge or a corner
	onSurface = 1e-6 // how near the solid's surface a place on it is found, in millimetres
)

// toScale is the distance from a place to a triangle.
func (h *hide) toScale(p point, s scale) float64 {
	a, b, c := h.at[s.knots[0]], h.at[s.knots[1]], h.at[s.knots[2]]
	n := b.Sub(a).Cross(c.Sub(a))
	inside, best := true, math.Inf(1)
	for _, e := range [3][2]point{{a, b}, {b, c}, {c, a}} {
		way, off := e[1].Sub(e[0]), p.Sub(e[0])
		if way.Cross(off).Dot(n) < 0 {
			inside = false
		}
		t := min(max(off.Dot(way)/way.Dot(way), 0), 1)
		best = min(best, off.Sub(way.MulScalar(t)).Length())
	}
	if l := n.Length(); inside && l > 0 {
		return math.Abs(p.Sub(a).Dot(n)) / l
	}
	return best
}

// missing counts the true corners near the skin's edges that have no vertex.
func (h *hide) missing() int {
	all := h.solid.Surfaces()
	var found []point
	for k, on := range h.surfaces() {
		if len(on) < 2 {
			continue
		}
		p := h.at[k]
		for j := range all {
			if slices.Contains(on, j) || math.Abs(all[j].Distance(p)) > 2*h.tolerance {
				continue
			}
			for i, a := range on {
				for _, b := range on[:i] {
					if q, ok := h.corner(p, [3]int{a, b, j}); ok && h.bare(q) && !near(found, q) {
						found = append(found, q)
					}
				}
			}
		}
	}
	return len(found)
}

func near(ps []point, q point) bool {
	return slices.ContainsFunc(ps, func(p point) bool { return p.Sub(q).Length() < speck })
}

// bare says whether no vertex of the skin is at a place.
func (h *hide) bare(q point) bool {
	return !slices.ContainsFunc(h.rims, func(r rim) bool { return h.at[r.from].Sub(q).Length() < speck })
}

// corner is the true corner of three surfaces near p, if there is one.
func (h *hide) corner(p point, of [3]int) (point, bool) {
	all := h.solid.Surfaces()
	if all[of[0]].Kind == solid.Plane && all[of[1]].Kind == solid.Plane && all[of[2]].Kind == solid.Plane {
		return p, false // never flattened, so never lost
	}
	square := func(q point) bool {
		return math.Abs(all[of[0]].Normal(q).Dot(all[of[1]].Normal(q).Cross(all[of[2]].Normal(q)))) > askew
	}
	if !square(p) {
		return p, false
	}
	q := h.trued(p, of[:])
	if q == p || !square(q) || math.Abs(h.solid.Evaluate(q)) > onSurface {
		return p, false
	}
	for _, i := range of {
		if !h.bounds(i, q) {
			return p, false
		}
	}
	return q, true
}

// bounds says whether a surface is the wood's own close round a place on it.
func (h *hide) bounds(surface int, q point) bool {
	const round, hair = 24, 1e-3
	f := &h.solid.Surfaces()[surface]
	n := f.Normal(q)
	u := n.Cross(axis(leastAlong(n))).Normalize()
	v := n.Cross(u)
	for i := range round {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.3) / round)
		p := q.Add(u.MulScalar(hair * cos)).Add(v.MulScalar(hair * sin))
		m := f.Normal(p)
		p = p.Sub(m.MulScalar(f.Distance(p)))
		up, down := h.solid.Evaluate(p.Add(m.MulScalar(hair/20))), h.solid.Evaluate(p.Sub(m.MulScalar(hair/20)))
		if math.Abs(h.solid.Evaluate(p)) < onSurface && up*down < 0 && min(math.Abs(up), math.Abs(down)) > hair/200 {
			return true
		}
	}
	return false
}

// leastAlong is the axis that a direction goes along least.
func leastAlong(n point) int {
	x, y, z := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)
	switch {
	case x <= y && x <= z:
		return 0
	case y <= z:
		return 1
	}
	return 2
}

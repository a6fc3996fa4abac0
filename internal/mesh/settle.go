package mesh

import (
	"math"
	"slices"
)

// settle moves every knot on to the true surfaces it belongs to, which the
// flat facets only come near to, and rounds it to what an STL file can hold.
// Knots that are held stay where the facets meet, which is within the
// tolerance too: true surfaces may touch where their facets keep clear.
func (h *hide) settle(held map[knot]bool) {
	raw, on := h.at, h.surfaces()
	h.at = slices.Clone(raw)
	smooth := h.smooth(on)
	for k, list := range on {
		if len(list) == 0 || held[k] {
			continue
		}
		if way, ok := smooth[k]; ok {
			h.at[k] = h.slid(raw[k], way, list)
		} else {
			h.at[k] = h.trued(raw[k], list)
		}
	}
	for again := true; again; {
		again = false
		for _, r := range h.rims {
			if h.spoilt(r, raw) {
				again = h.pass(r.from, r.to, on, held) || h.pass(r.to, r.from, on, held) || h.back(r, raw) || again
			}
		}
	}
	for k := range h.at {
		h.at[k] = grained(h.at[k])
	}
}

// short is the longest edge, as a part of the tolerance, that settling may turn
// about: it comes of a near miss, and means nothing.
const short = 1.0 / 50

// spoilt says whether settling shrank a rim or turned it about.
func (h *hide) spoilt(r rim, raw []point) bool {
	before, after := raw[r.to].Sub(raw[r.from]), h.at[r.to].Sub(h.at[r.from])
	l := before.Length()
	return l > short*h.tolerance && after.Dot(before) < l*l/10 && after != point{}
}

// pass lets a corner that settled past a knot of one of its own edges take
// that knot along, and says whether it did.
func (h *hide) pass(corner, along knot, on [][]int, held map[knot]bool) bool {
	if held[along] || len(on[along]) >= len(on[corner]) || !containsAll(on[corner], on[along]) {
		return false
	}
	h.at[along], on[along] = h.at[corner], on[corner]
	return true
}

// back returns a rim's ends to where they were, and says whether they were not.
func (h *hide) back(r rim, raw []point) bool {
	moved := h.at[r.from] != raw[r.from] || h.at[r.to] != raw[r.to]
	h.at[r.from], h.at[r.to] = raw[r.from], raw[r.to]
	return moved
}

// grid is what coordinates are rounded to before they become float32, as a
// power of two so that none of it is lost: about a millionth of a millimetre.
const grid = 1 << 20

func grained(p point) point {
	r := func(x float64) float64 { return float64(float32(math.Round(x*grid) / grid)) }
	return point{X: r(p.X), Y: r(p.Y), Z: r(p.Z)}
}

// surfaces lists the surfaces that meet at each knot, lowest first.
func (h *hide) surfaces() [][]int {
	out := make([][]int, len(h.at))
	for _, r := range h.rims {
		s := h.patches[r.patch].surface
		for _, k := range [2]knot{r.from, r.to} {
			if !slices.Contains(out[k], s) {
				out[k] = append(out[k], s)
			}
		}
	}
	for _, list := range out {
		slices.Sort(list)
	}
	return out
}

// trued brings p on to all of the surfaces by Newton's method, the shortest
// way. Where that does not lead to a place nearby, p stays: it is within the
// tolerance of each as it is.
func (h *hide) trued(p point, surfaces []int) point {
	q := p
	slant := 1.0
	for range 12 {
		step, worst, s := h.step(q, surfaces)
		slant = s
		if worst < 1e-10 {
			break
		}
		q = q.Sub(step)
	}
	_, worst, _ := h.step(q, surfaces)
	// surfaces at a small angle meet far from where their facets do
	nearby := min(3/slant, 60) * h.tolerance
	if !(worst < 1e-6) || !(q.Sub(p).Length() < nearby) {
		return p
	}
	return q
}

// touching is the sine of the angle below which two surfaces only touch.
const touching = 1e-3

// smooth finds the knots where a third surface crosses an edge along which two
// only touch, as a rounded corner runs into a flat, and the way of that edge.
func (h *hide) smooth(on [][]int) map[knot]point {
	all := h.solid.Surfaces()
	beside := h.beside()
	out := map[knot]point{}
	for _, r := range h.rims {
		pair := beside[[2]knot{min(r.from, r.to), max(r.from, r.to)}]
		if len(on[r.from]) < 3 || len(pair) != 2 || pair[0] == pair[1] {
			continue
		}
		p := h.at[r.from]
		if all[pair[0]].Normal(p).Cross(all[pair[1]].Normal(p)).Length() < touching {
			out[r.from] = h.at[r.to].Sub(p).Normalize()
		}
	}
	return out
}

// slid brings p along a way on to all of the surfaces, or leaves it.
func (h *hide) slid(p, way point, surfaces []int) point {
	all := h.solid.Surfaces()
	q := p
	for range 12 {
		far, worst := 0.0, 0.0
		for _, i := range surfaces {
			d, slope := all[i].Distance(q), all[i].Normal(q).Dot(way)
			worst = max(worst, math.Abs(d))
			if math.Abs(slope) > 0.05 && math.Abs(d) > math.Abs(far*slope) {
				far = d / slope
			}
		}
		if worst < 1e-9 {
			return q
		}
		q = q.Sub(way.MulScalar(far))
		if q.Sub(p).Length() > 60*h.tolerance {
			break
		}
	}
	return p
}

// step is the shortest step that would bring p on to surfaces that were flat,
// how far p is from the farthest, and the sine of the least angle at which
// they meet.
func (h *hide) step(p point, surfaces []int) (step point, worst, slant float64) {
	all := h.solid.Surfaces()
	slant = 1
	var buf [3]point
	axes := buf[:0] // square to one another
	for _, i := range surfaces {
		s := &all[i]
		d, n := s.Distance(p), s.Normal(p)
		worst = max(worst, math.Abs(d))
		left := d - step.Dot(n)
		for _, a := range axes {
			n = n.Sub(a.MulScalar(n.Dot(a)))
		}
		if l := n.Length(); l > touching && len(axes) < 3 {
			n = n.DivScalar(l)
			axes = append(axes, n)
			step = step.Add(n.MulScalar(left / l))
			slant = min(slant, l)
		}
	}
	return step, worst, slant
}

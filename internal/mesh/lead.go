package mesh

import "slices"

// Detours are edges that are to be led through knots.
type detours map[[2]knot][]knot

// forget leaves out the detours through knots that are held.
func (d detours) forget(held map[knot]bool) {
	for edge, ks := range d {
		if held[edge[0]] || held[edge[1]] || slices.ContainsFunc(ks, func(k knot) bool { return held[k] }) {
			delete(d, edge)
		}
	}
}

// lead looks in patches that could not be filled for knots that settling took
// over an edge of their own patch, and notes for each such edge the knots it is
// to be led through. An edge is only led through knots that are on both of the
// surfaces it lies between. It says whether any are new.
func (h *hide) lead(patches [][]rim, held map[knot]bool, led detours) bool {
	if len(patches) == 0 {
		return false
	}
	on := h.surfaces()
	beside := h.beside()
	news := false
	for _, rims := range patches {
		lay := h.layer(rims[0].patch)
		for _, r := range rims {
			edge := [2]knot{min(r.from, r.to), max(r.from, r.to)}
			for _, o := range rims {
				k := o.from
				if k == r.from || k == r.to || held[k] || held[r.from] || held[r.to] || slices.Contains(led[edge], k) || !h.over(r, k, lay) || !containsAll(on[k], beside[edge]) {
					continue
				}
				led[edge] = append(led[edge], k)
				news = true
			}
		}
	}
	return news
}

// over says whether a knot lies on the wrong side of a rim, within reach of
// what settling does.
func (h *hide) over(r rim, k knot, lay func(point) spot) bool {
	a, b, p := h.at[r.from], h.at[r.to], h.at[k]
	way := b.Sub(a)
	t := p.Sub(a).Dot(way) / way.Dot(way)
	if t <= 0 || t >= 1 || p.Sub(a.Add(way.MulScalar(t))).Length() > 2*h.tolerance {
		return false
	}
	return turnOf(lay(a), lay(b), lay(p)) <= 0
}

// beside lists the surfaces on the two sides of each edge.
func (h *hide) beside() map[[2]knot][]int {
	out := map[[2]knot][]int{}
	for _, r := range h.rims {
		edge := [2]knot{min(r.from, r.to), max(r.from, r.to)}
		out[edge] = append(out[edge], h.patches[r.patch].surface)
	}
	return out
}

func containsAll(set, some []int) bool {
	return !slices.ContainsFunc(some, func(s int) bool { return !slices.Contains(set, s) })
}

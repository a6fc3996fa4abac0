package mesh

import (
	"cmp"
	"slices"
)

// speck is as near as two places may stay, in millimetres, and be told apart by
// an STL file of a part a metre or two long.
const speck = 1e-4

// gather draws together what is too small for a file to hold: short edges to
// points, knots on to edges that they all but touch, and with them the strips
// between. Each step keeps every rim's counterpart, so the skin stays closed.
// Edges that are to be led through knots are so first.
func (h *hide) gather(led detours) {
	h.rims = slices.Clone(h.rims)
	h.weld(h.shortEdges())
	h.split(led)
	for range 8 {
		twins, splits := h.nearMisses()
		if len(twins) == 0 && len(splits) == 0 {
			return
		}
		h.split(splits)
		h.weld(twins)
	}
}

// shortEdges lists the edges to be drawn together, shortest first.
func (h *hide) shortEdges() [][2]knot {
	rs := slices.Clone(h.rims)
	slices.SortStableFunc(rs, func(a, b rim) int { return cmp.Compare(h.long(a), h.long(b)) })
	var out [][2]knot
	for _, r := range rs {
		if h.long(r) <= speck {
			out = append(out, [2]knot{r.from, r.to})
		}
	}
	return out
}

func (h *hide) long(r rim) float64 { return h.at[r.from].Sub(h.at[r.to]).Length() }

// weld makes one knot of each pair. The one where most surfaces meet stays.
func (h *hide) weld(pairs [][2]knot) {
	on := h.surfaces()
	group := newLinks(len(h.at))
	keep := make([]knot, len(h.at))
	for k := range keep {
		keep[k] = k
	}
	for _, e := range pairs {
		a, b := group.find(e[0]), group.find(e[1])
		p, q := keep[a], keep[b]
		far := h.at[p].Sub(h.at[q]).Length()
		if a == b || far > speck {
			continue
		}
		if len(on[q]) > len(on[p]) || len(on[q]) == len(on[p]) && q < p {
			p = q
		}
		group.join(a, b)
		keep[group.find(a)] = p
	}
	for i := range h.rims {
		r := &h.rims[i]
		r.from, r.to = keep[group.find(r.from)], keep[group.find(r.to)]
	}
	h.cancel()
}

// cancel leaves out rims that shrank to a point, and pairs that run both ways
// along one patch: a strip that closed up.
func (h *hide) cancel() {
	count := map[rim]int{}
	for _, r := range h.rims {
		count[r]++
	}
	var kept []rim
	for _, r := range h.rims {
		back := rim{r.to, r.from, r.patch}
		switch {
		case r.from == r.to:
		case count[r] > 0 && count[back] > 0:
			count[r]--
			count[back]--
		case count[r] > 0:
			count[r]--
			kept = append(kept, r)
		}
	}
	h.rims = kept
}

// nearMisses finds, patch by patch, knots that all but touch another knot or
// an edge of the same patch. Splits lists the knots along each edge in order.
func (h *hide) nearMisses() (twins [][2]knot, splits detours) {
	splits = detours{}
	rs := slices.Clone(h.rims)
	slices.SortStableFunc(rs, func(a, b rim) int { return cmp.Compare(a.patch, b.patch) })
	for n := 0; len(rs) > 0; rs = rs[n:] {
		for n = 1; n < len(rs) && rs[n].patch == rs[0].patch; n++ {
		}
		twins = h.missesIn(rs[:n], twins, splits)
	}
	return twins, splits
}

func (h *hide) missesIn(rims []rim, twins [][2]knot, splits detours) [][2]knot {
	ks := make([]knot, 0, len(rims))
	for _, r := range rims {
		ks = append(ks, r.from)
	}
	slices.SortFunc(ks, func(a, b knot) int { return cmp.Or(cmp.Compare(h.at[a].X, h.at[b].X), cmp.Compare(a, b)) })
	ks = slices.Compact(ks)
	for _, r := range rims {
		a, b := h.at[r.from], h.at[r.to]
		lo, hi := a.Min(b).SubScalar(speck), a.Max(b).AddScalar(speck)
		first, _ := slices.BinarySearchFunc(ks, lo.X, func(k knot, x float64) int { return cmp.Compare(h.at[k].X, x) })
		way := b.Sub(a)
		for _, k := range ks[first:] {
			p := h.at[k]
			if p.X > hi.X {
				break
			}
			if k == r.from || k == r.to || p.Y < lo.Y || p.Y > hi.Y || p.Z < lo.Z || p.Z > hi.Z {
				continue
			}
			t := p.Sub(a).Dot(way) / way.Dot(way)
			switch {
			case p.Sub(a).Length() < speck:
				twins = append(twins, [2]knot{k, r.from})
			case p.Sub(b).Length() < speck:
				twins = append(twins, [2]knot{k, r.to})
			case t > 0 && t < 1 && p.Sub(a).Cross(way).Length()/way.Length() < speck:
				key := [2]knot{min(r.from, r.to), max(r.from, r.to)}
				if !slices.Contains(splits[key], k) {
					splits[key] = append(splits[key], k)
				}
			}
		}
	}
	return twins
}

// split divides edges at knots, for the patches on both sides alike.
func (h *hide) split(at detours) {
	var out []rim
	for _, r := range h.rims {
		ks := slices.Clone(at[[2]knot{min(r.from, r.to), max(r.from, r.to)}])
		way := h.at[r.to].Sub(h.at[r.from])
		slices.SortStableFunc(ks, func(a, b knot) int { return cmp.Compare(h.at[a].Dot(way), h.at[b].Dot(way)) })
		from := r.from
		for _, k := range append(ks, r.to) {
			out = append(out, rim{from, k, r.patch})
			from = k
		}
	}
	h.rims = out
	h.cancel()
}

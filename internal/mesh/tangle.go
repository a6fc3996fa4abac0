package mesh

import (
	"cmp"
	"math"
	"slices"

	"github.com/deadsy/sdfx/sdf"
)

// A flake is a triangle with the box round it and whether settling moved it.
type flake struct {
	t     [3]knot
	box   sdf.Box3
	moved bool
}

// crossed lists the knots of triangles that cut through one another. The flat
// facets did not, so only those that settling moved from raw are looked at.
func (h *hide) crossed(ts []scale, raw []point) []knot {
	fs := make([]flake, len(ts))
	for i, s := range ts {
		t := s.knots
		a, b, c := h.at[t[0]], h.at[t[1]], h.at[t[2]]
		fs[i] = flake{t: t, box: sdf.Box3{Min: a.Min(b).Min(c), Max: a.Max(b).Max(c)}, moved: h.moved(t, raw)}
	}
	slices.SortStableFunc(fs, func(a, b flake) int { return cmp.Compare(a.box.Min.X, b.box.Min.X) })
	var out []knot
	var still, moved []*flake // those the sweep has reached and not yet left
	for i := range fs {
		f := &fs[i]
		gone := func(g *flake) bool { return g.box.Max.X < f.box.Min.X }
		moved = slices.DeleteFunc(moved, gone)
		out = h.cuts(f, moved, out)
		if f.moved {
			still = slices.DeleteFunc(still, gone)
			out = h.cuts(f, still, out)
			moved = append(moved, f)
		} else {
			still = append(still, f)
		}
	}
	return out
}

// moved says whether settling moved a triangle's corners from raw, by more
// than rounding does on the longest timber; without raw, all may be.
func (h *hide) moved(t [3]knot, raw []point) bool {
	return raw == nil || slices.ContainsFunc(t[:], func(k knot) bool { return h.at[k].Sub(raw[k]).Length() > 3e-4 })
}

// strayed lists the knots of triangles that settling has stretched so far that
// their middles, or corners, leave the surface by more than the tolerance.
func (h *hide) strayed(ts []scale, raw []point) []knot {
	all := h.solid.Surfaces()
	var out []knot
	for _, s := range ts {
		if !h.moved(s.knots, raw) {
			continue
		}
		a, b, c := h.at[s.knots[0]], h.at[s.knots[1]], h.at[s.knots[2]]
		for _, p := range []point{a, b, c, a.Add(b).Add(c).DivScalar(3), a.Add(b).MulScalar(0.5), b.Add(c).MulScalar(0.5), c.Add(a).MulScalar(0.5)} {
			if max(math.Abs(all[s.surface].Distance(p)), math.Abs(h.solid.Evaluate(p))) > h.tolerance/slack {
				out = append(out, s.knots[:]...)
				break
			}
		}
	}
	return out
}

// cuts adds the knots of f and of each of the others that it cuts.
func (h *hide) cuts(f *flake, others []*flake, out []knot) []knot {
	for _, g := range others {
		if f.box.Min.Y > g.box.Max.Y || g.box.Min.Y > f.box.Max.Y || f.box.Min.Z > g.box.Max.Z || g.box.Min.Z > f.box.Max.Z {
			continue
		}
		if h.pierces(f.t, g.t) || h.pierces(g.t, f.t) {
			out = append(append(out, f.t[:]...), g.t[:]...)
		}
	}
	return out
}

// pierces says whether a side of one triangle goes through the inside of
// another with which that side shares no corner.
func (h *hide) pierces(s, t [3]knot) bool {
	a, b, c := h.at[t[0]], h.at[t[1]], h.at[t[2]]
	n := b.Sub(a).Cross(c.Sub(a))
	for i, p := range s {
		q := s[(i+1)%3]
		if slices.Contains(t[:], p) || slices.Contains(t[:], q) {
			continue
		}
		dp, dq := h.at[p].Sub(a).Dot(n), h.at[q].Sub(a).Dot(n)
		if dp*dq >= 0 {
			continue
		}
		x := h.at[p].Add(h.at[q].Sub(h.at[p]).MulScalar(dp / (dp - dq)))
		if b.Sub(a).Cross(x.Sub(a)).Dot(n) > 0 && c.Sub(b).Cross(x.Sub(b)).Dot(n) > 0 && a.Sub(c).Cross(x.Sub(c)).Dot(n) > 0 {
			return true
		}
	}
	return false
}

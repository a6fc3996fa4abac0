package mesh

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/solid"
)

// patience is how often settling is tried again before every knot is held.
const patience = 8

// mesh settles the knots and fills the patches with triangles. Where settling
// took a knot over an edge, the edge is led through it. Where it still tangles
// a border, makes two thin sides cross or stretches a facet too far, the knots
// are held.
func (h *hide) mesh() (*Mesh, lack, error) {
	held, led := map[knot]bool{}, detours{}
	for try := 0; ; try++ {
		now := *h
		now.settle(held)
		now.gather(led)
		ts, tangled, err := now.filled()
		if try < patience && now.lead(tangled, held, led) {
			continue
		}
		bad := now.ends(tangled)
		if err == nil {
			raw := h.at
			if len(led) > 0 {
				raw = nil // what was led elsewhere may stray without being moved
			}
			bad = append(now.crossed(ts, raw), now.strayed(ts, raw)...)
		}
		switch {
		case len(bad) == 0:
			return now.numbered(ts), now.review(ts), nil
		case try > patience && err == nil:
			return nil, lack{}, h.fail(bad[0], "two of its sides cross")
		case try > patience:
			return nil, lack{}, err
		case try == patience:
			bad = h.allKnots()
		}
		for _, k := range bad {
			held[k] = true
		}
		led.forget(held)
	}
}

func (h *hide) allKnots() []knot {
	all := make([]knot, len(h.at))
	for k := range all {
		all[k] = k
	}
	return all
}

// filled fills every patch, or lists those that it could not.
func (h *hide) filled() (all []scale, tangled [][]rim, err error) {
	rs := slices.Clone(h.rims)
	slices.SortStableFunc(rs, func(a, b rim) int { return cmp.Compare(a.patch, b.patch) })
	for n := 0; len(rs) > 0; rs = rs[n:] {
		for n = 1; n < len(rs) && rs[n].patch == rs[0].patch; n++ {
		}
		ts, fault := h.fill(rs[:n])
		if fault != nil {
			err = h.fail(rs[0].from, fault.Error())
			tangled = append(tangled, rs[:n])
		}
		for _, t := range ts {
			all = append(all, scale{t, h.patches[rs[0].patch].surface})
		}
	}
	return all, tangled, err
}

// ends lists the knots of patches.
func (h *hide) ends(patches [][]rim) []knot {
	var ks []knot
	for _, rims := range patches {
		for _, r := range rims {
			ks = append(ks, r.from)
		}
	}
	return ks
}

// A scale is a triangle of the skin, on one of the solid's surfaces.
type scale struct {
	knots   [3]knot
	surface int
}

// numbered makes a mesh of triangles of knots.
func (h *hide) numbered(ts []scale) *Mesh {
	m := &Mesh{Triangles: make([][3]int, len(ts))}
	number := make([]int, len(h.at))
	for i, t := range ts {
		for j, k := range t.knots {
			if number[k] == 0 {
				m.Vertices = append(m.Vertices, vec(h.at[k]))
				number[k] = len(m.Vertices)
			}
			m.Triangles[i][j] = number[k] - 1
		}
	}
	return m
}

// fill triangulates one patch.
func (h *hide) fill(rims []rim) ([][3]knot, error) {
	local := map[knot]int{}
	var ks []knot
	var at []spot
	lay := h.layer(rims[0].patch)
	index := func(k knot) int {
		i, known := local[k]
		if !known {
			i = len(ks)
			local[k] = i
			ks = append(ks, k)
			at = append(at, lay(h.at[k]))
		}
		return i
	}
	borders := make([][2]int, len(rims))
	for i, r := range rims {
		borders[i] = [2]int{index(r.from), index(r.to)}
	}
	ts, ok := quadrangle(at, borders)
	if !ok {
		var err error
		if ts, err = triangulate(at, borders); err != nil {
			return nil, err
		}
	}
	for i := range ts {
		for j := range ts[i] {
			ts[i][j] = ks[ts[i][j]]
		}
	}
	return ts, nil
}

// layer lays a patch flat. A plane is laid by leaving out the axis most nearly
// square to it, which keeps what is in line in line to the last digit. A curved
// patch is laid square to its facet: its knots stand off the facet, and seen
// aslant they would seem to be where they are not.
func (h *hide) layer(patch int) func(point) spot {
	n := h.normals[patch]
	u, v := dropped(n)
	if h.solid.Surfaces()[h.patches[patch].surface].Kind != solid.Plane {
		a := n.Cross(axis(u)).Normalize()
		b := n.Cross(a)
		return func(p point) spot { return spot{gridded(p.Dot(a)), gridded(p.Dot(b))} }
	}
	flip := int64(1)
	if component(n, 3-u-v) < 0 {
		flip = -1
	}
	return func(p point) spot { return spot{flip * gridded(component(p, u)), gridded(component(p, v))} }
}

func gridded(x float64) int64 { return int64(math.Round(x * grid)) }

// axis is the direction of one of the axes.
func axis(i int) point {
	switch i {
	case 0:
		return point{X: 1}
	case 1:
		return point{Y: 1}
	}
	return point{Z: 1}
}

// quadrangle fills the commonest border, one of four corners that all turn
// left, without more ado, over its shorter diagonal.
func quadrangle(at []spot, borders [][2]int) ([][3]int, bool) {
	if len(borders) != 4 || len(at) != 4 {
		return nil, false
	}
	var next [4]int
	for _, b := range borders {
		next[b[0]] = b[1]
	}
	a := 0
	b := next[a]
	c := next[b]
	d := next[c]
	if next[d] != a || b == d || turnOf(at[a], at[b], at[c]) <= 0 || turnOf(at[b], at[c], at[d]) <= 0 ||
		turnOf(at[c], at[d], at[a]) <= 0 || turnOf(at[d], at[a], at[b]) <= 0 {
		return nil, false
	}
	if apart(at[a], at[c]) <= apart(at[b], at[d]) {
		return [][3]int{{a, b, c}, {a, c, d}}, true
	}
	return [][3]int{{a, b, d}, {b, c, d}}, true
}

func apart(a, b spot) float64 { return math.Hypot(float64(a.x-b.x), float64(a.y-b.y)) }

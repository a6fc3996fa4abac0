package probe

import "math"

// Stops reports whether the second body is in the way of the first as that moves
// along an axis, way above 0 or below, for so far. Bodies that only slide along
// each other, or are in each other by no more than ease, do not stop each other.
func Stops(a, b *Body, axis int, way, far, ease float64) bool {
	x, y := finite(a.box), finite(b.box)
	var w box
	for i := range 3 {
		w.lo[i], w.hi[i] = math.Max(x.lo[i], y.lo[i])+ease, math.Min(x.hi[i], y.hi[i])-ease
		if i != axis && w.hi[i] <= w.lo[i] {
			return false
		}
	}
	if way > 0 && (y.hi[axis] <= x.lo[axis]+ease || y.lo[axis] >= x.hi[axis]+far) ||
		way < 0 && (y.lo[axis] >= x.hi[axis]-ease || y.hi[axis] <= x.lo[axis]-far) {
		return false
	}
	u, v := (axis+1)%3, (axis+2)%3
	w.lo[axis], w.hi[axis] = -endless, endless // all that lies along the way
	var d, p vec
	d[axis] = way
	us, vs := stations(a, b, w, u, 1), stations(a, b, w, v, 1)
	for _, s := range us {
		for _, t := range vs {
			p[u], p[v] = s.at, t.at
			if ahead(a.root.cross(p, d, nil), b.root.cross(p, d, nil), far, ease) {
				return true
			}
		}
	}
	return false
}

// ahead reports whether on one line some of b lies before some of a, nearer than far.
func ahead(as, bs []span, far, ease float64) bool {
	for _, a := range as {
		for _, b := range bs {
			if b.to > a.from+ease && b.from < a.to+far && (b.from >= a.to-ease || b.to > a.to || b.from > a.from) {
				return true
			}
		}
	}
	return false
}

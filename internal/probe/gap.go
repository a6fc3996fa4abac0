package probe

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Gap is the least room between two bodies along one of the axes.
type Gap struct {
	Wide  quantity.Length
	Axis  int
	At    form.Vec // the middle of it
	After bool     // whether the second body lies on the high side of it
}

// Between finds the least room between two bodies along any axis, up to most;
// not ok where there is none so narrow. Where they are in each other that is passed over.
func Between(a, b *Body, most quantity.Length) (Gap, bool) {
	best, ok := Gap{Wide: most}, false
	x, y := finite(a.box), finite(b.box)
	for axis := range 3 {
		u, v := (axis+1)%3, (axis+2)%3
		var w box
		over := true
		for i := range 3 {
			w.lo[i], w.hi[i] = math.Max(x.lo[i], y.lo[i]), math.Min(x.hi[i], y.hi[i])
			if i != axis && w.hi[i]-w.lo[i] < graze {
				over = false
			}
		}
		if !over || x.lo[axis]-y.hi[axis] > float64(most) || y.lo[axis]-x.hi[axis] > float64(most) {
			continue
		}
		w.lo[axis], w.hi[axis] = -endless, endless // all that lies along the lines
		var d, p vec
		d[axis] = 1
		for _, s := range stations(a, b, w, u, 1) {
			for _, t := range stations(a, b, w, v, 1) {
				p[u], p[v] = s.at, t.at
				if g, at, after, found := least(a.root.cross(p, d, nil), b.root.cross(p, d, nil), float64(best.Wide)); found {
					p[axis] = at
					best, ok = Gap{quantity.Length(g), axis, form.Vec{X: form.Length(p[0]), Y: form.Length(p[1]), Z: form.Length(p[2])}, after}, true
					p[axis] = 0
				}
			}
		}
	}
	return best, ok
}

// graze is how far two bodies must lie over each other to be beside each other.
const graze = 1.0

// least is the least room on one line between the stretches of two bodies, under most.
func least(as, bs []span, most float64) (wide, at float64, after, ok bool) {
	for _, a := range as {
		for _, b := range bs {
			if g := b.from - a.to; g >= 0 && g < most {
				most, at, after, ok = g, (b.from+a.to)/2, true, true
			}
			if g := a.from - b.to; g >= 0 && g < most {
				most, at, after, ok = g, (a.from+b.to)/2, false, true
			}
		}
	}
	return most, at, after, ok
}

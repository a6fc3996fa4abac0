package probe

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// An Overlap is the room that two bodies both fill.
type Overlap struct {
	Volume quantity.Volume
	// Deep is how far one of them reaches into the other: of the longest ways
	// through the overlap along the three axes, the shortest.
	Deep quantity.Length
	Axis int      // the axis along which it is Deep
	At   form.Vec // the middle of the deepest way along that axis
	Box  form.Box // that holds it
}

// Common finds what two bodies both fill, where it is at least so deep; the
// overlap's Volume is nothing where it is not.
func Common(a, b *Body, least quantity.Length) Overlap {
	w, ok := window(a, b, float64(least))
	if !ok {
		return Overlap{}
	}
	o := Overlap{Deep: quantity.Length(math.Inf(1)), Axis: -1}
	var best sum
	for _, axis := range widest(w) {
		s := sweep(a, b, w, axis, 4)
		if s.deep < float64(least) {
			return Overlap{}
		}
		if quantity.Length(s.deep) < o.Deep {
			o.Deep, o.Axis, o.At, best = quantity.Length(s.deep), axis, s.at, s
		}
	}
	for fine := 8; fine <= 64; fine *= 2 { // lines the short way show the depth best
		next := sweep(a, b, w, o.Axis, fine)
		settled := math.Abs(next.volume-best.volume) <= next.volume/500
		best = next
		if settled {
			break
		}
	}
	o.Volume, o.Box = quantity.Volume(best.volume), best.box()
	if best.deep > 0 {
		o.Deep, o.At = quantity.Length(best.deep), best.at
	}
	return o
}

// widest are the axes, the one along which the window is longest first: lines that way
// are the fewest.
func widest(w box) [3]int {
	o := [3]int{0, 1, 2}
	slices.SortStableFunc(o[:], func(a, b int) int { return cmp.Compare(w.hi[b]-w.lo[b], w.hi[a]-w.lo[a]) })
	return o
}

// window is where the boxes of two bodies overlap, at least so much each way.
func window(a, b *Body, least float64) (box, bool) {
	x, y := finite(a.box), finite(b.box)
	var w box
	for i := range 3 {
		w.lo[i], w.hi[i] = math.Max(x.lo[i], y.lo[i]), math.Min(x.hi[i], y.hi[i])
		if w.hi[i]-w.lo[i] < least {
			return w, false
		}
	}
	return w, true
}

// A sum is what lines along one axis through a window show.
type sum struct {
	volume, deep float64
	at           form.Vec
	lo, hi       vec
}

func (s sum) box() form.Box {
	v := func(p vec) form.Vec {
		return form.Vec{X: form.Length(p[0]), Y: form.Length(p[1]), Z: form.Length(p[2])}
	}
	return form.Box{Min: v(s.lo), Max: v(s.hi)}
}

// reach widens the box along an axis.
func (s *sum) reach(axis int, from, to float64) {
	s.lo[axis], s.hi[axis] = math.Min(s.lo[axis], from), math.Max(s.hi[axis], to)
}

// sweep runs lines along an axis through the window and adds up what both hold.
func sweep(a, b *Body, w box, axis, fine int) sum {
	s := sum{lo: vec{far, far, far}, hi: vec{-far, -far, -far}}
	u, v := (axis+1)%3, (axis+2)%3
	us, vs := stations(a, b, w, u, fine), stations(a, b, w, v, fine)
	var d, p vec
	d[axis] = 1
	for _, x := range us {
		for _, y := range vs {
			p[u], p[v] = x.at, y.at
			in := a.root.cross(p, d, nil)
			if len(in) == 0 {
				continue
			}
			for _, c := range common(in, b.root.cross(p, d, nil)) {
				long := c.to - c.from
				s.volume += long * x.weight * y.weight
				s.reach(axis, c.from, c.to)
				s.reach(u, x.at, x.at)
				s.reach(v, y.at, y.at)
				if long > s.deep+1e-9 {
					s.deep = long
					var m vec
					m[axis], m[u], m[v] = (c.from+c.to)/2, x.at, y.at
					s.at = form.Vec{X: form.Length(m[0]), Y: form.Length(m[1]), Z: form.Length(m[2])}
				}
			}
		}
	}
	return s
}

// A station is where a line is run, and the width it stands for.
type station struct{ at, weight float64 }

// Three points of Gauss and Legendre in a stretch of length 1.
var gauss = [3]station{
	{0.5 - 0.3872983346207417, 5.0 / 18}, {0.5, 8.0 / 18}, {0.5 + 0.3872983346207417, 5.0 / 18},
}

// within adds where a piece that comes into the window begins and ends in it.
func (b *box) within(w *box, axis int, ends []float64) []float64 {
	for i := range 3 {
		if i != axis && (b.lo[i] >= w.hi[i] || b.hi[i] <= w.lo[i]) && w.hi[i] > w.lo[i] {
			return ends
		}
	}
	for _, x := range [2]float64{b.lo[axis], b.hi[axis]} {
		if x > w.lo[axis] && x < w.hi[axis] {
			ends = append(ends, x)
		}
	}
	return ends
}

// stations divide a window along an axis at the ends of all pieces, and then into
// steps, a number of them over the whole.
func stations(a, b *Body, w box, axis, fine int) []station {
	lo, hi := w.lo[axis], w.hi[axis]
	ends := []float64{lo, hi}
	for _, pieces := range [2][]box{a.parts, b.parts} {
		for i := range pieces {
			ends = pieces[i].within(&w, axis, ends)
		}
	}
	ends = distinct(ends)
	var out []station
	step := (hi - lo) / float64(fine)
	for i := 0; i+1 < len(ends); i++ {
		wide := ends[i+1] - ends[i]
		n := max(int(math.Ceil(wide/step-1e-9)), 1)
		for k := range n {
			for _, g := range gauss {
				out = append(out, station{ends[i] + wide*(float64(k)+g.at)/float64(n), wide / float64(n) * g.weight})
			}
		}
	}
	return out
}

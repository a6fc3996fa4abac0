package probe

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// An Overlap is the room that two bodies both fill.
type Overlap struct {
	Volume quantity.Volume
	// Deep is how far one of them reaches into the other: at the place where the
	// overlap is thickest, the shortest of its three ways through along the axes.
	Deep quantity.Length
	Axis int      // the axis of that way
	At   form.Vec // that place
	Box  form.Box // that holds it
}

// Common finds what two bodies both fill, where it is at least so deep; the
// overlap's Volume is nothing where it is not.
func Common(a, b *Body, least quantity.Length) Overlap {
	w, ok := window(a, b, float64(least))
	if !ok {
		return Overlap{}
	}
	way := widest(w)
	best := sweep(a, b, w, way, 4)
	if best.deep < float64(least) {
		return Overlap{}
	}
	for fine := 8; fine <= 64; fine *= 2 {
		next := sweep(a, b, w, way, fine)
		settled := math.Abs(next.volume-best.volume) <= next.volume/500
		best = next
		if settled {
			break
		}
	}
	return Overlap{Volume: quantity.Volume(best.volume), Deep: quantity.Length(best.deep), Axis: best.axis, At: best.at, Box: best.box()}
}

// widest is the axis along which a window is longest: lines that way are the fewest.
func widest(w box) int {
	best := 0
	for i := range 3 {
		if w.hi[i]-w.lo[i] > w.hi[best]-w.lo[best] {
			best = i
		}
	}
	return best
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
	axis         int // along which it is deep
	at           form.Vec
	lo, hi       vec
}

func (s sum) box() form.Box {
	v := func(p vec) form.Vec {
		return form.Vec{X: form.Length(p[0]), Y: form.Length(p[1]), Z: form.Length(p[2])}
	}
	return form.Box{Min: v(s.lo), Max: v(s.hi)}
}

// thick takes a place in the overlap for its deepest where it is thicker there than
// anywhere yet; along one axis its thickness is known.
func (s *sum) thick(a, b *Body, m vec, axis int, long float64) {
	thin, on, mid := long, axis, m
	for i := range 3 {
		if i == axis {
			continue
		}
		var d vec
		d[i] = 1
		there, at := 0.0, 0.0
		for _, c := range common(a.root.cross(m, d, nil), b.root.cross(m, d, nil)) {
			if c.from <= 0 && c.to >= 0 {
				there, at = c.to-c.from, (c.from+c.to)/2
			}
		}
		if there < thin {
			thin, on, mid = there, i, m
			mid[i] += at
		}
	}
	if thin > s.deep {
		s.deep, s.axis, s.at = thin, on, form.Vec{X: form.Length(mid[0]), Y: form.Length(mid[1]), Z: form.Length(mid[2])}
	}
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
					m := p
					m[axis] = (c.from + c.to) / 2
					s.thick(a, b, m, axis, long)
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

package mesh

import (
	"math"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// Rings are an oval made flat: polygons round it from end to end, their corners
// on its own straight lines. Where the oval's two half spans taper unlike, four
// corners do not lie in one plane, and each four are two triangles.
type rings struct {
	oval   form.Oval
	start  float64 // the angle of the first corner
	sides  int     // corners in a ring
	spans  int     // stretches from ring to ring
	flat   bool    // four corners lie in one plane
	places [][]point
	rise   [][]bool // by which diagonal each four corners are parted
}

// newRings chooses as few facets as keep the tolerance.
func newRings(l *solid.Leaf, o form.Oval, s style) *rings {
	r := &rings{oval: o}
	a, b := o.First, o.Last
	r.flat = math.Abs(float64(a.U*b.V-b.U*a.V)) < 1e-9*float64(a.U*b.V)
	r.choose(s.tolerance, s.turn)
	r.start = s.turn * 2 * math.Pi / float64(r.sides)
	if same(a.U, a.V) && same(b.U, b.V) {
		r.start += bearing(l)
	}
	for j := range r.spans + 1 {
		ring := make([]point, r.sides)
		for k := range ring {
			ring[k] = l.Ruled(r.angle(k), float64(r.station(j)))
		}
		r.places = append(r.places, ring)
	}
	for j := range r.spans {
		row := make([]bool, r.sides)
		for k := range row {
			rising, falling := r.diagonals(j, k)
			row[k] = rising <= falling
		}
		r.rise = append(r.rise, row)
	}
	return r
}

func same(a, b form.Length) bool { return math.Abs(float64(a-b)) < 1e-9 }

func (r *rings) angle(k int) float64 { return r.start + 2*math.Pi*float64(k)/float64(r.sides) }

// station is where a ring stands along the oval.
func (r *rings) station(j int) form.Length {
	if j == r.spans {
		return r.oval.To
	}
	return r.oval.From + (r.oval.To-r.oval.From)*form.Length(j)/form.Length(r.spans)
}

// mostSpans bounds how many rings are tried.
const mostSpans = 64

// choose tries more and more rings, which let each have fewer corners, and
// keeps what comes to the fewest facets.
func (r *rings) choose(tolerance, turned float64) {
	a, b := r.oval.First, r.oval.Last
	least := round(float64(max(a.U, a.V, b.U, b.V)), tolerance)
	best := rings{}
	for spans := 1; spans <= mostSpans && (best.spans == 0 || least*spans < best.sides*best.spans); spans++ {
		try := *r
		try.spans, try.sides = spans, least
		for !try.flat && !try.keeps(tolerance, turned) && (best.spans == 0 || try.sides*spans < best.sides*best.spans) {
			try.sides += 4
		}
		if best.spans == 0 || try.sides*spans < best.sides*best.spans {
			best = try
		}
		if r.flat {
			break
		}
	}
	r.sides, r.spans = best.sides, best.spans
}

// keeps says whether the facets stay within the tolerance. A side that is ruled
// is nowhere domed: a triangle leaves it farthest in the middle of an edge.
func (r *rings) keeps(tolerance, turned float64) bool {
	r.start = turned * 2 * math.Pi / float64(r.sides)
	for j := range r.spans {
		for k := range r.sides {
			if rising, falling := r.diagonals(j, k); min(rising, falling) > tolerance {
				return false
			}
		}
	}
	return true
}

// diagonals is how far the middles of both diagonals of four corners are from
// the side: of the one that rises with the angle, and of the one that falls.
func (r *rings) diagonals(j, k int) (rising, falling float64) {
	low, high := r.oval.Section(r.station(j)), r.oval.Section(r.station(j+1))
	middle := r.oval.Section((r.station(j) + r.station(j+1)) / 2)
	u, v := float64(middle.U), float64(middle.V)
	off := func(low, high form.Ellipse, from, to float64) float64 {
		s0, c0 := math.Sincos(from)
		s1, c1 := math.Sincos(to)
		x, y := (float64(low.U)*c0+float64(high.U)*c1)/2/u, (float64(low.V)*s0+float64(high.V)*s1)/2/v
		g := math.Hypot(x, y)
		return math.Abs(g-1) * g / math.Hypot(x/u, y/v)
	}
	return off(low, high, r.angle(k), r.angle(k+1)), off(high, low, r.angle(k), r.angle(k+1))
}

// section is the polygon of the facets at z, in the leaf's own coordinates.
func (r *rings) section(l *solid.Leaf, z float64) []stop {
	j := 0
	for j+1 < r.spans && z > float64(r.station(j+1)) {
		j++
	}
	from, to := float64(r.station(j)), float64(r.station(j+1))
	t := (z - from) / (to - from)
	out := make([]stop, 0, 2*r.sides)
	add := func(a, b point) {
		x, y, _ := l.Local(a.Add(b.Sub(a).MulScalar(t)))
		out = append(out, stop{x: x, y: y})
	}
	low, high := r.places[j], r.places[j+1]
	for k := range r.sides {
		n := (k + 1) % r.sides
		add(low[k], high[k])
		switch {
		case r.flat:
		case r.rise[j][k]:
			add(low[k], high[n])
		default:
			add(low[n], high[k])
		}
	}
	return out
}

// faces calls emit with each facet, as a body's does.
func (r *rings) faces(l *solid.Leaf, emit func(face int, loop []point)) {
	for j := range r.spans {
		low, high := r.places[j], r.places[j+1]
		for k := range r.sides {
			n := (k + 1) % r.sides
			switch {
			case r.flat:
				emit(0, []point{low[k], low[n], high[n], high[k]})
			case r.rise[j][k]:
				emit(0, []point{low[k], low[n], high[n]})
				emit(0, []point{low[k], high[n], high[k]})
			default:
				emit(0, []point{low[k], low[n], high[k]})
				emit(0, []point{low[n], high[n], high[k]})
			}
		}
	}
	foot := make([]point, r.sides)
	for k, p := range r.places[0] {
		foot[r.sides-1-k] = p
	}
	emit(1, foot)
	emit(2, r.places[r.spans])
}

package parts

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"

	"lostwood/parts/form"
)

// stations are the places along x where either outline has a corner or turns
// back, in order: between two of them nothing changes abruptly.
func (s Sawn) stations() []float64 {
	var xs []float64
	for _, p := range []form.Profile{s.Plan, s.Side} {
		for i, v := range p {
			xs = append(xs, float64(v.X))
			if v.Bulge != 0 {
				lo, hi := (form.Profile{v, {Point: p[(i+1)%len(p)].Point}}).Bounds()
				xs = append(xs, float64(lo.X), float64(hi.X))
			}
		}
	}
	slices.Sort(xs)
	return slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(b-a) < 1e-9 })
}

// integral sums f over the stretches between the stations. Placing the points
// by the sine takes the sharpness out of a rounded end's upright tangent, so
// that lines and arcs alike come out to the last digits.
func integral(stations []float64, f func(x float64) float64) float64 {
	const points = 24
	var sum float64
	for i := 1; i < len(stations); i++ {
		mid, half := (stations[i]+stations[i-1])/2, (stations[i]-stations[i-1])/2
		sum += quad.Fixed(func(t float64) float64 {
			sin, cos := math.Sincos(t)
			return half * cos * f(mid+half*sin)
		}, -math.Pi/2, math.Pi/2, points, quad.Legendre{}, 0)
	}
	return sum
}

// wood is the stretches of wood under a place on a face, as depths below the
// face of the box, the nearest first. There are none where the place is off the wood.
func (s Sawn) wood(f Face, at form.Point) []form.Stretch {
	long, wide, deep := s.Box()
	p := f.Frame(s).At(at.X, at.Y, 0)
	switch f {
	case Upper, Under:
		if inside(s.Plan.Chords(p.X), p.Y) {
			return depths(s.Side.Chords(p.X), f == Under, deep)
		}
	case FirstSide, SecondSide:
		if inside(s.Side.Chords(p.X), p.Z) {
			return depths(s.Plan.Chords(p.X), f == FirstSide, wide)
		}
	case FirstEnd, SecondEnd:
		a, b := s.Plan.Transposed().Chords(p.Y), s.Side.Transposed().Chords(p.Z)
		return depths(common(a, b), f == FirstEnd, long)
	}
	return nil
}

func inside(chords []form.Stretch, at Length) bool {
	return slices.ContainsFunc(chords, func(c form.Stretch) bool { return at >= c.From && at <= c.To })
}

// depths turns stretches along an axis into depths below the face at its
// start, or else at its far side.
func depths(along []form.Stretch, fromStart bool, far Length) []form.Stretch {
	if fromStart {
		return along
	}
	out := make([]form.Stretch, 0, len(along))
	for _, c := range slices.Backward(along) {
		out = append(out, form.Stretch{From: far - c.To, To: far - c.From})
	}
	return out
}

func common(a, b []form.Stretch) []form.Stretch {
	var out []form.Stretch
	for _, p := range a {
		for _, q := range b {
			c := form.Stretch{From: max(p.From, q.From), To: min(p.To, q.To)}
			if c.Long() > 0 {
				out = append(out, c)
			}
		}
	}
	return out
}

// sunk is how far below the face of the box the wood begins at a place.
func sunk(b Body, f Face, at form.Point) Length {
	if w := shapeOf(b).wood(f, at); len(w) > 0 {
		return w[0].From
	}
	return 0
}

// endOutline is what is seen from the second end: the sections along x
// together. A corner of the section runs from the widest section to the
// deepest one, and what lies inside of that way is hidden behind another.
func (s Sawn) endOutline() form.Profile {
	_, wide, deep := s.Box()
	if s.Plan.IsRectangle() || s.Side.IsRectangle() {
		return form.Rectangle(form.Point{}, form.Point{X: wide, Y: deep})
	}
	var sections [][2]form.Stretch
	for _, x := range s.fine() {
		sections = append(sections, [2]form.Stretch{s.Plan.Span(x), s.Side.Span(x)})
	}
	second := func(c [2]form.Stretch) Length { return c[0].To }
	first := func(c [2]form.Stretch) Length { return -c[0].From }
	upper := func(c [2]form.Stretch) Length { return c[1].To }
	under := func(c [2]form.Stretch) Length { return -c[1].From }
	out := frontier(sections, second, upper)
	for _, q := range slices.Backward(frontier(sections, first, upper)) {
		out = append(out, form.Point{X: -q.X, Y: q.Y})
	}
	for _, q := range frontier(sections, first, under) {
		out = append(out, form.Point{X: -q.X, Y: -q.Y})
	}
	for _, q := range slices.Backward(frontier(sections, second, under)) {
		out = append(out, form.Point{X: q.X, Y: -q.Y})
	}
	// Where a rounded end hardly shows, its places lie closer than any hand can
	// work, and closer than their own figures are sure.
	return tidy(slices.CompactFunc(out, func(a, b form.Point) bool {
		return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) < fineness
	}))
}

// fineness is how close a fitted outline keeps to the true one.
const fineness = 1e-3

// fine are the stations, and so many places between them on curved stretches
// that chords through them are within a thousandth of a millimetre.
func (s Sawn) fine() []Length {
	xs := s.stations()
	curved := slices.ContainsFunc(slices.Concat(s.Plan, s.Side), func(v form.Vertex) bool { return v.Bulge != 0 })
	const pieces = 128
	var out []Length
	for i := 1; i < len(xs); i++ {
		out = append(out, Length(xs[i-1]))
		for k := 1; curved && k < pieces; k++ {
			t := (1 - math.Cos(math.Pi*float64(k)/pieces)) / 2
			out = append(out, Length(xs[i-1]+t*(xs[i]-xs[i-1])))
		}
	}
	return append(out, Length(xs[len(xs)-1]))
}

// frontier is the way of a corner from the section that reaches furthest in
// the first sense to the one furthest in the second, past all others.
func frontier(sections [][2]form.Stretch, x, y func([2]form.Stretch) Length) []form.Point {
	pts := make([]form.Point, len(sections))
	for i, c := range sections {
		pts[i] = form.Point{X: x(c), Y: y(c)}
	}
	slices.SortStableFunc(pts, func(a, b form.Point) int {
		if a.X != b.X {
			return -compare(a.X, b.X)
		}
		return -compare(a.Y, b.Y)
	})
	var out []form.Point
	for _, q := range pts {
		if len(out) == 0 || q.Y > out[len(out)-1].Y+1e-9 {
			out = append(out, q)
		}
	}
	return out
}

func compare(a, b Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// tidy drops repeated points and those in the middle of an edge that is
// straight.
func tidy(pts []form.Point) form.Profile {
	pts = slices.CompactFunc(pts, alike)
	for len(pts) > 1 && alike(pts[0], pts[len(pts)-1]) {
		pts = pts[:len(pts)-1]
	}
	var out []form.Point
	for i, q := range pts {
		if i > 0 && offLine(out[len(out)-1], q, pts[(i+1)%len(pts)]) < 1e-7 {
			continue
		}
		out = append(out, q)
	}
	if n := len(out); n > 3 && offLine(out[n-1], out[0], out[1]) < 1e-7 {
		out = out[1:]
	}
	return form.Polygon(out...)
}

// offLine is how far q is from the line from a to b.
func offLine(a, q, b form.Point) float64 {
	cross := float64((q.X-a.X)*(b.Y-a.Y) - (q.Y-a.Y)*(b.X-a.X))
	return math.Abs(cross) / math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
}

func alike(a, b form.Point) bool {
	return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) < 1e-6
}

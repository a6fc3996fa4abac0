package outline

import (
	"math"

	"lostwood/parts/form"
)

// A Segment is one edge of a path: straight where Bulge is 0, otherwise an arc
// that turns anticlockwise from A to B where Bulge is positive (see form.Vertex).
type Segment struct {
	A, B  form.Point
	Bulge float64
}

// An Arc is the circle a bulged segment runs on. From and Turn are in radians;
// Turn is positive anticlockwise.
type Arc struct {
	Centre     form.Point
	Radius     Length
	From, Turn float64
}

// Segments are the path's edges in order.
func (p Path) Segments() []Segment {
	var s []Segment
	for i, v := range p.Run {
		if i+1 < len(p.Run) {
			s = append(s, Segment{v.Point, p.Run[i+1].Point, v.Bulge})
		} else if p.Closed && len(p.Run) > 1 {
			s = append(s, Segment{v.Point, p.Run[0].Point, v.Bulge})
		}
	}
	return s
}

// straightest is the rise, in millimetres, under which an arc is as good as
// straight: its circle would be so large that its centre could not be told.
const straightest = 1e-4

// Arc is the circle the segment runs on; ok is false for a straight one.
func (s Segment) Arc() (a Arc, ok bool) {
	dx, dy := float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y)
	chord := math.Hypot(dx, dy)
	if rise := math.Abs(s.Bulge) * chord / 2; rise < straightest {
		return Arc{}, false
	}
	// The centre stands off the chord's middle by chord/2 over the tangent of half the turn.
	off := (1 - s.Bulge*s.Bulge) / (4 * s.Bulge)
	c := form.Point{
		X: (s.A.X+s.B.X)/2 - Length(dy*off),
		Y: (s.A.Y+s.B.Y)/2 + Length(dx*off),
	}
	return Arc{
		Centre: c,
		Radius: Length(chord * (1 + s.Bulge*s.Bulge) / (4 * math.Abs(s.Bulge))),
		From:   math.Atan2(float64(s.A.Y-c.Y), float64(s.A.X-c.X)),
		Turn:   4 * math.Atan(s.Bulge),
	}, true
}

// At is the place on the arc a share t of the way along it.
func (a Arc) At(t float64) form.Point {
	sin, cos := math.Sincos(a.From + a.Turn*t)
	return form.Point{X: a.Centre.X + a.Radius*Length(cos), Y: a.Centre.Y + a.Radius*Length(sin)}
}

// Bounds is the exact box of the segment.
func (s Segment) Bounds() Box {
	b := Spanning(s.A, s.B)
	a, ok := s.Arc()
	if !ok {
		return b
	}
	for quarter := range 4 {
		angle := float64(quarter) * math.Pi / 2
		if a.covers(angle) {
			p := Arc{a.Centre, a.Radius, angle, 0}.At(0)
			b = b.With(Box{p, p})
		}
	}
	return b
}

// covers reports whether the arc passes through that direction from its centre.
func (a Arc) covers(angle float64) bool {
	from, turn := a.From, a.Turn
	if turn < 0 {
		from, turn = from+turn, -turn
	}
	rest := math.Mod(angle-from, 2*math.Pi)
	if rest < 0 {
		rest += 2 * math.Pi
	}
	return rest <= turn
}

// Chords are points along the segment, its ends among them, so close that no
// chord leaves the segment by more than sag.
func (s Segment) Chords(sag Length) []form.Point {
	a, ok := s.Arc()
	if !ok {
		return []form.Point{s.A, s.B}
	}
	step := math.Pi // the chord of a half turn is a radius off
	if sag < a.Radius {
		step = 2 * math.Acos(1-float64(sag/a.Radius))
	}
	n := max(1, int(math.Ceil(math.Abs(a.Turn)/step)))
	p := []form.Point{s.A}
	for i := 1; i < n; i++ {
		p = append(p, a.At(float64(i)/float64(n)))
	}
	return append(p, s.B)
}

// Crosses reports whether any of the segment lies inside the box.
func (s Segment) Crosses(b Box) bool {
	if !s.Bounds().Grown(1e-9).Meets(b) {
		return false
	}
	const sag = 0.05
	p := s.Chords(sag)
	for i := 1; i < len(p); i++ {
		if clipped(p[i-1], p[i], b) {
			return true
		}
	}
	return false
}

// clipped reports whether a straight line from p to q passes within the box.
func clipped(p, q form.Point, b Box) bool {
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]Length{
		{p.X - q.X, p.X - b.Min.X},
		{q.X - p.X, b.Max.X - p.X},
		{p.Y - q.Y, p.Y - b.Min.Y},
		{q.Y - p.Y, b.Max.Y - p.Y},
	} {
		step, room := float64(e[0]), float64(e[1])
		switch {
		case step == 0 && room <= 0:
			return false
		case step < 0:
			t0 = math.Max(t0, room/step)
		case step > 0:
			t1 = math.Min(t1, room/step)
		}
	}
	return t0 < t1
}

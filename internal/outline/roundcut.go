package outline

import (
	"math"

	"lostwood/parts/form"
)

// fine is how far chords may lie inside a curve that no arc is: half a thousandth
// of a millimetre.
const fine Length = 0.0005

// ovalCross cuts a piece of oval section that lies along the part.
func ovalCross(o form.Oval, x Length) cross {
	f, w := o.Frame, o.Frame.W()
	at := (x - f.Origin.X) * Length(w.X)
	if math.Abs(w.X) < 1-1e-9 || at < o.From || at > o.To {
		return nowhere()
	}
	e := o.Section(at)
	n := max(24, int(math.Ceil(math.Pi/math.Acos(1-float64(fine/max(e.U, e.V, fine))))))
	var out form.Profile
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, form.Vertex{Point: inPlane(f.At(e.Centre.X+e.U*Length(cos), e.Centre.Y+e.V*Length(sin), at))})
	}
	return enclosed(leftAbout(out))
}

// leftAbout is the profile with its inside to the left.
func leftAbout(p form.Profile) form.Profile {
	if p.Area() < 0 {
		return p.Reversed()
	}
	return p
}

// ringCross cuts a turned piece square to its axis, which lies along the part: a
// disc or a ring for each stretch of its profile there.
func ringCross(r form.Revolved, x Length) cross {
	f, w := r.Frame, r.Frame.W()
	at, centre := (x-f.Origin.X)*Length(w.X), inPlane(f.Origin)
	var all []cross
	for _, c := range turnedBy(r.Profile, form.Point{Y: 1}).Chords(at) { // its y is the radius, downward
		inner, outer := max(0, -c.To), -c.From
		ring := cross{edges: round(centre, outer), holds: func(p form.Point) bool {
			d := Length(math.Hypot(float64(p.X-centre.X), float64(p.Y-centre.Y)))
			return d >= inner && d <= outer
		}}
		if inner > 0 {
			ring.edges = append(ring.edges, round(centre, inner)...)
		}
		all = append(all, ring)
	}
	return cross{edgesOf(all), func(q form.Point) bool { return anyHolds(all, q) }}
}

// round is a circle as two arcs.
func round(c form.Point, r Length) []Segment {
	a, b := form.Point{X: c.X - r, Y: c.Y}, form.Point{X: c.X + r, Y: c.Y}
	return []Segment{{A: a, B: b, Bulge: 1}, {A: b, B: a, Bulge: 1}}
}

// slanted cuts a prism that is swept at a slant to the plane, as a spoke's mortise
// is in a nave, by its chords: those of the profile that lie between its ends.
func slanted(p form.Prism, from, to, x Length) cross {
	f, w := p.Frame, p.Frame.W()
	deep := func(q form.Point) Length { return (x - f.At(q.X, q.Y, 0).X) / Length(w.X) }
	var run []form.Point
	for _, s := range (Path{Run: p.Profile, Closed: true}).Segments() {
		places := s.Chords(fine)
		run = append(run, places[:len(places)-1]...)
	}
	run = kept(run, func(q form.Point) Length { return deep(q) - from })
	run = kept(run, func(q form.Point) Length { return to - deep(q) })
	if len(run) < 3 {
		return nowhere()
	}
	var out form.Profile
	for _, q := range run {
		out = append(out, form.Vertex{Point: inPlane(f.At(q.X, q.Y, deep(q)))})
	}
	return enclosed(leftAbout(out))
}

// kept leaves of a closed run what is not below zero; what says how far above
// is even all along a straight line.
func kept(run []form.Point, above func(form.Point) Length) []form.Point {
	var out []form.Point
	for i, q := range run {
		next := run[(i+1)%len(run)]
		a, b := above(q), above(next)
		if a >= 0 {
			out = append(out, q)
		}
		if (a < 0) != (b < 0) {
			out = append(out, toward(q, next, a/(a-b)))
		}
	}
	return out
}

func toward(a, b form.Point, share Length) form.Point {
	return form.Point{X: a.X + (b.X-a.X)*share, Y: a.Y + (b.Y-a.Y)*share}
}

package parts

import (
	"math"

	"lostwood/parts/form"
)

// An Arris is a long edge: where the upper or under face meets a side.
type Arris struct {
	Flat Face // Upper or Under
	Side Face // FirstSide or SecondSide
}

// Arrises are the four long edges, in unfolding order.
func Arrises() []Arris {
	return []Arris{{Upper, FirstSide}, {Under, FirstSide}, {Under, SecondSide}, {Upper, SecondSide}}
}

func (a Arris) known() bool {
	return (a.Flat == Upper || a.Flat == Under) && (a.Side == FirstSide || a.Side == SecondSide)
}

func (a Arris) mirrored() Arris { return Arris{a.Flat, a.Side.mirrored()} }

// faces are the two that meet at the edge.
func (a Arris) faces() []Face { return []Face{a.Flat, a.Side} }

// String names the edge by its two faces.
func (a Arris) String() string { return a.Flat.String() + " and " + a.Side.String() }

// inY and inZ are the ways into the wood from the edge, +1 or -1.
func (a Arris) inY() Length {
	if a.Side == FirstSide {
		return 1
	}
	return -1
}

func (a Arris) inZ() Length {
	if a.Flat == Under {
		return 1
	}
	return -1
}

// at is the edge's place at a station. It is exact at any x of the body.
func (a Arris) at(s Sawn, x Length) form.Vec {
	y, z := s.Plan.Span(x), s.Side.Span(x)
	p := form.Vec{X: x, Y: y.From, Z: z.From}
	if a.Side == SecondSide {
		p.Y = y.To
	}
	if a.Flat == Upper {
		p.Z = z.To
	}
	return p
}

// A straight is a stretch of an arris along which it does not bend.
type straight struct {
	from, to Length
}

// straights are the stretches along which the edge runs straight, in order of x.
func (a Arris) straights(s Sawn) []straight {
	xs := s.stations()
	var out []straight
	for i := 1; i < len(xs); i++ {
		from, to := Length(xs[i-1]), Length(xs[i])
		p, q := a.near(s, from, to, 0), a.near(s, from, to, 1)
		if !a.runsStraight(s, from, to, p, q) {
			continue
		}
		if n := len(out) - 1; n >= 0 && out[n].to == from && a.runsStraight(s, out[n].from, to, a.near(s, out[n].from, from, 0), q) {
			out[n].to = to
			continue
		}
		out = append(out, straight{from, to})
	}
	return out
}

// near is the edge's place at the start (0) or end (1) of a stretch, carried
// there from inside the stretch: at a step the edge has two.
func (a Arris) near(s Sawn, from, to Length, end float64) form.Vec {
	p, q := a.at(s, from+(to-from)/4), a.at(s, from+(to-from)*3/4)
	t := Length(end*2 - .5)
	d := q.Minus(p)
	return form.Vec{X: from + (to-from)*Length(end), Y: p.Y + d.Y*t, Z: p.Z + d.Z*t}
}

// runsStraight says whether the edge keeps to the line from p to q.
func (a Arris) runsStraight(s Sawn, from, to Length, p, q form.Vec) bool {
	const probes = 16
	for i := 1; i < probes; i++ {
		t := Length(i) / probes
		e := a.at(s, from+(to-from)*t)
		dy, dz := e.Y-p.Y-(q.Y-p.Y)*t, e.Z-p.Z-(q.Z-p.Z)*t
		if !(math.Abs(float64(dy)) < 1e-7 && math.Abs(float64(dz)) < 1e-7) {
			return false
		}
	}
	return true
}

// longest is the longest straight stretch of the edge; ok is false where it has none.
func (a Arris) longest(s Sawn) (st straight, ok bool) {
	for _, c := range a.straights(s) {
		if c.to-c.from > st.to-st.from {
			st, ok = c, true
		}
	}
	return st, ok
}

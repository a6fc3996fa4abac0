package sight

import (
	"math"

	"lostwood/parts/form"
)

// A Sight says whether a line is seen.
type Sight int

// The sights.
const (
	Seen   Sight = iota
	Behind       // something is before it
)

// A Line is a run of edges as it is seen, its circles as arcs.
type Line struct {
	Body  int // of those looked at
	Sight Sight
	Path  form.Path
}

// A piece is a stretch of an edge, all of it seen or all of it not.
type piece struct {
	body  int
	sight Sight
	a, b  spot
}

func (p piece) long() float64 { return math.Hypot(p.b.x-p.a.x, p.b.y-p.a.y) }

// shortest is the least stretch that is drawn, in millimetres.
const shortest = 0.01

// Lines are the edges and outlines of all bodies. Where several lie on one
// another on the view only one is kept, the one in sight before one behind.
func (s *Scene) Lines() []Line {
	seen, behind := s.pieces()
	seen = apart(seen, nil)
	behind = apart(behind, seen)
	return append(s.chained(seen), s.chained(behind)...)
}

// pieces cuts every edge that is drawn where it passes behind something.
func (s *Scene) pieces() (seen, behind []piece) {
	for i, b := range s.bodies {
		for _, e := range b.edges {
			l, r := s.front[i][e.left], s.front[i][e.right]
			if !e.sharp && l == r {
				continue
			}
			whole := piece{i, Behind, s.spots[i][e.from], s.spots[i][e.to]}
			if whole.long() < shortest/10 {
				continue
			}
			if !l && !r {
				behind = append(behind, whole)
				continue
			}
			under := s.hidden(whole.a, whole.b, i, e.left, e.right)
			behind = append(behind, whole.cut(under, Behind)...)
			seen = append(seen, whole.cut(rest(under), Seen)...)
		}
	}
	return seen, behind
}

// cut is the piece's stretches, without those too short to be drawn, unless it
// is that short itself.
func (p piece) cut(spans []span, as Sight) []piece {
	var out []piece
	for _, s := range spans {
		c := piece{p.body, as, p.a, p.b}
		if s.from > 0 {
			c.a = p.a.between(p.b, s.from)
		}
		if s.to < 1 {
			c.b = p.a.between(p.b, s.to)
		}
		if c.long() >= math.Min(shortest, p.long()/2) {
			out = append(out, c)
		}
	}
	return out
}

// one is how near, in millimetres, two lines lie that are drawn as one.
const one = 0.03

// apart takes from pieces whatever lies on one of the others, or on an earlier one.
func apart(pieces, others []piece) []piece {
	all := append(append([]piece{}, others...), pieces...)
	boxes := make([]box, len(all))
	for i, p := range all {
		boxes[i] = around(p.a, p.b)
		boxes[i].near = 0
	}
	t := newTree(boxes)
	var out []piece
	for i, p := range pieces {
		me := len(others) + i
		var taken []span
		t.find(boxes[me].grown(one), 0, func(k int) {
			if k < me {
				if s, ok := p.shared(all[k]); ok {
					taken = append(taken, s)
				}
			}
		})
		out = append(out, p.cut(rest(joined(taken, 0)), p.sight)...)
	}
	return out
}

// shared is the stretch of p along which q lies on it.
func (p piece) shared(q piece) (span, bool) {
	long := p.long()
	ux, uy := (p.b.x-p.a.x)/long, (p.b.y-p.a.y)/long
	at := func(o spot) (along, off float64) {
		return ((o.x-p.a.x)*ux + (o.y-p.a.y)*uy) / long, (o.y-p.a.y)*ux - (o.x-p.a.x)*uy
	}
	t0, d0 := at(q.a)
	t1, d1 := at(q.b)
	if t0 > t1 {
		t0, t1, d0, d1 = t1, t0, d1, d0
	}
	if t1-t0 < 1e-12 {
		return span{}, false
	}
	// Only what lies along p counts: q may leave it beyond its ends.
	offAt := func(t float64) float64 { return d0 + (d1-d0)*(t-t0)/(t1-t0) }
	s := span{math.Max(t0, 0), math.Min(t1, 1)}
	if s.to <= s.from || math.Abs(offAt(s.from)) > one || math.Abs(offAt(s.to)) > one {
		return span{}, false
	}
	return s, true
}

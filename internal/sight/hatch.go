package sight

import (
	"math"

	"lostwood/parts/form"
)

// Hatching is the lines, all one way and so far apart, that lie on what is seen
// of the bodies that are chosen. The lines of all bodies fall in one with each other.
func (s *Scene) Hatching(apart Length, slope float64, chosen func(body int) bool) []Line {
	return s.hatched(apart, slope, everyRow, chosen)
}

// A density says how many rows of a hatching are drawn on a facet.
type density int

const (
	everyRow density = iota
	fewRows          // of large facets only every second, fourth, eighth ...
)

func (s *Scene) hatched(apart Length, slope float64, d density, chosen func(body int) bool) []Line {
	sin, cos := math.Sincos(slope)
	var out []Line
	rows := map[hatchKey][]span{}
	var order []hatchKey
	for i := range s.facets {
		f := &s.facets[i]
		if !chosen(f.body) {
			continue
		}
		f.rows(sin, cos, float64(apart), d, func(row int, p, q spot) {
			k := hatchKey{f.body, row}
			if _, known := rows[k]; !known {
				order, rows[k] = append(order, k), nil
			}
			for _, sp := range rest(s.hidden(p, q, f.body, f.index)) {
				a, b := p.between(q, sp.from), p.between(q, sp.to)
				rows[k] = append(rows[k], span{a.x*cos + a.y*sin, b.x*cos + b.y*sin})
			}
		})
	}
	for _, k := range order {
		off := float64(k.row) * float64(apart)
		at := func(along float64) form.Vertex {
			return form.Vertex{Point: form.Point{X: Length(along*cos - off*sin), Y: Length(along*sin + off*cos)}}
		}
		for _, sp := range joined(rows[k], one) {
			if sp.to-sp.from > one {
				out = append(out, Line{Body: k.body, Path: form.Path{at(sp.from), at(sp.to)}})
			}
		}
	}
	return out
}

type hatchKey struct{ body, row int }

// rows calls with each line of a hatching that crosses the facet, where it enters and leaves.
func (f *facet) rows(sin, cos, apart float64, d density, with func(row int, p, q spot)) {
	across := func(s spot) float64 { return s.y*cos - s.x*sin }
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range f.corner {
		lo, hi = math.Min(lo, across(c)), math.Max(hi, across(c))
	}
	stride := 1
	const enough = 6 // rows on a facet
	for d == fewRows && hi-lo > 2*enough*apart*float64(stride) {
		stride *= 2
	}
	first := int(math.Ceil(lo / apart / float64(stride)))
	for row := first * stride; float64(row)*apart <= hi; row += stride {
		at := float64(row) * apart
		var cut []spot
		for k := range 3 {
			a, b := f.corner[k], f.corner[(k+1)%3]
			va, vb := across(a), across(b)
			if (va > at) != (vb > at) {
				cut = append(cut, a.between(b, (at-va)/(vb-va)))
			}
		}
		if len(cut) != 2 {
			continue
		}
		p, q := cut[0], cut[1]
		if p.x*cos+p.y*sin > q.x*cos+q.y*sin {
			p, q = q, p
		}
		if (piece{a: p, b: q}).long() > shortest {
			with(row, p, q)
		}
	}
}

// A Showing is where a body shows itself best: the middle of the largest stretch
// of its facets that is in sight there.
type Showing struct {
	At   form.Point
	Room Length // how long that stretch is, across the shorter way
}

// Showings gives for each body a place where it is in sight; Room is 0 for one
// that is nowhere seen. Lines of a hatching so far apart, both ways, are tried.
func (s *Scene) Showings(apart Length) []Showing {
	out := make([]Showing, len(s.bodies))
	all := func(int) bool { return true }
	level := s.hatched(apart, 0, fewRows, all)
	var boxes []box
	lines := s.hatched(apart, math.Pi/2, fewRows, all)
	for _, l := range lines {
		a, b := l.Path[0], l.Path[1]
		boxes = append(boxes, around(spot{x: float64(a.X), y: float64(a.Y)}, spot{x: float64(b.X), y: float64(b.Y)}))
	}
	upright := newTree(boxes)
	for _, l := range level {
		a, b := l.Path[0], l.Path[1]
		box := around(spot{x: float64(a.X), y: float64(a.Y)}, spot{x: float64(b.X), y: float64(b.Y)})
		middle := (box.x0 + box.x1) / 2
		upright.find(box, 0, func(i int) {
			u := boxes[i]
			if lines[i].Body != l.Body {
				return
			}
			room := math.Min(box.x1-box.x0, u.y1-u.y0)
			// Of places with as much room, the one in the middle of both stretches.
			off := math.Abs(u.x0-middle) + math.Abs((u.y0+u.y1)/2-box.y0)
			if score := Length(room - off*0.2); score > out[l.Body].Room {
				out[l.Body] = Showing{form.Point{X: Length(u.x0), Y: Length(box.y0)}, score}
			}
		})
	}
	return out
}

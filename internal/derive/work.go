package derive

import (
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A work is one piece of work that a fastening or joint calls for on a timber,
// not yet made a feature: its place is still an estimate.
type work struct {
	key           string // the same for the same work on every one of a family
	ref           string
	along, across func(x []float64) adjust.Term // on its face, in the face's frame
	extents       []func(x []float64) adjust.Term
	make          func(at form.Point, extents []quantity.Length) parts.Feature
}

// work lists what is to be done to one timber.
func (a *assembly) work(m *member) []work {
	var out []work
	for _, s := range a.network.spans {
		for i := range s.stops {
			if s.stops[i].member != m || s.fastening.Diameter <= 0 {
				continue
			}
			if w := s.hole(m, i); w != nil {
				out = append(out, *w)
			}
			if l := s.stops[i].let; l != nil && l.into == m {
				out = append(out, s.housing(m, l, i))
			}
			if i+1 < len(s.stops) {
				if l := s.stops[i+1].let; l != nil && l.into == m {
					out = append(out, s.housing(m, l, i+1))
				}
			}
		}
	}
	return append(once(out), a.joinery(m)...)
}

// once leaves out a housing that several fastenings speak of.
func once(ws []work) []work {
	seen := map[string]bool{}
	var out []work
	for _, w := range ws {
		if !seen[w.key] {
			seen[w.key] = true
			out = append(out, w)
		}
	}
	return out
}

// key names a span's work on a member, leaving out what tells the member from
// the others of its family.
func (s *span) key(m *member, what string) string {
	k := what + " " + s.fastening.ID
	if m.rows() <= 1 {
		k += fmt.Sprintf(" row %d", s.row)
	}
	if m.hand == vehicle.Alike {
		k += " " + s.hand.String()
	}
	return k
}

// ref names a span on the sheet of a member, which says its own hand and row.
func (s *span) ref(m *member) string {
	rows, hand := 1, vehicle.Alike
	if m.rows() <= 1 {
		rows = max(s.fastening.Number, 1)
	}
	if m.hand == vehicle.Alike {
		hand = s.hand
	}
	return "fastening " + spanID(s.fastening, s.row, rows, hand)
}

// entry is the face by which a span enters a member.
func (s *span) entry(m *member) parts.Face {
	j := m.along(s.axis)
	if m.axes[j].sign*s.sign > 0 {
		return [3]parts.Face{parts.FirstEnd, parts.FirstSide, parts.Under}[j]
	}
	return [3]parts.Face{parts.SecondEnd, parts.SecondSide, parts.Upper}[j]
}

// hole is the boring for a span in one timber.
func (s *span) hole(m *member, i int) *work {
	w := &work{key: s.key(m, "hole"), ref: s.ref(m)}
	if !m.placed() {
		return s.radialHole(m, w)
	}
	f := s.entry(m)
	line := func(j int) func(x []float64) adjust.Term {
		return func(x []float64) adjust.Term {
			return m.own(x, j, adjust.At(x, s.line[m.axes[j].of]))
		}
	}
	w.along, w.across = onFace(m, f, line)
	h := parts.Hole{ID: w.ref, What: s.what(), Face: f, Diameter: bolt.Hole(s.fastening.Diameter)}
	if i == 0 {
		h.Seat, h.Counterbore = s.seat()
	}
	w.make = func(at form.Point, _ []quantity.Length) parts.Feature {
		h.At = at
		return h
	}
	return w
}

// what names a span's hole.
func (s *span) what() string {
	if s.fastening.Name != "" {
		return lower(s.fastening.Name) + " hole"
	}
	return s.fastening.What + " hole"
}

// seat is what the head of a span's bolt wants of the first timber.
func (s *span) seat() (*parts.SquareSeat, *parts.Counterbore) {
	var seat *parts.SquareSeat
	var sunk *parts.Counterbore
	d := s.fastening.Diameter
	if s.fastening.Head == survey.SquareNeck {
		if wide, deep, from := bolt.Neck(d); from != bolt.Unlisted {
			seat = &parts.SquareSeat{Width: wide, Depth: deep}
		}
	}
	if s.fastening.Sunk > 0 {
		sunk = &parts.Counterbore{Diameter: bolt.HeadRoom(d), Depth: s.fastening.Sunk}
	}
	return seat, sunk
}

// onFace turns a line's own coordinates into a face's frame.
func onFace(m *member, f parts.Face, own func(j int) func(x []float64) adjust.Term) (along, across func(x []float64) adjust.Term) {
	from := func(j int) func(x []float64) adjust.Term { // from the far side
		return func(x []float64) adjust.Term { return adjust.At(x, m.extent[j]).Minus(own(j)(x)) }
	}
	switch f {
	case parts.Upper:
		return own(0), own(1)
	case parts.FirstSide:
		return own(0), own(2)
	case parts.Under:
		return own(0), from(1)
	case parts.SecondSide:
		return own(0), from(2)
	case parts.FirstEnd:
		return from(1), own(2)
	}
	return own(1), own(2)
}

// radialHole is a boring through a rim timber, at the middle of its length and width.
func (s *span) radialHole(m *member, w *work) *work {
	zero := func([]float64) adjust.Term { return adjust.Constant(0) }
	w.along = zero
	w.across = func(x []float64) adjust.Term { return adjust.At(x, m.extent[1]).Scaled(0.5) }
	w.make = func(at form.Point, _ []quantity.Length) parts.Feature {
		return parts.RadialHole{ID: w.ref, What: s.what(), Across: at.Y, Diameter: bolt.Hole(s.fastening.Diameter)}
	}
	return w
}

// housing is what is cut out of m where another thing lies let into it: across
// the whole face where the other passes right over, else a shallow mortise.
func (s *span) housing(m *member, l *let, after int) work {
	entering := s.stops[after].member == m
	f := s.entry(m)
	if !entering {
		f = f.Opposite()
	}
	o := l.other
	w := meetingWork("housing", m, o)
	what := "housing for the " + lower(nameOf(o))
	return m.recess(w, what, f, o, l.depth)
}

// meetingWork starts the work on m that another thing calls for. Its ref tells
// the other's hand and row where m is not of one.
func meetingWork(kind string, m, o *member) work {
	w := work{key: kind + " for " + o.base, ref: kind + " for the "}
	if m.hand == vehicle.Alike && o.hand != vehicle.Alike {
		w.key += " " + o.hand.String()
		w.ref += o.hand.String() + " "
	}
	w.ref += lower(nameOf(o))
	if o.rows() > 1 {
		w.key += fmt.Sprintf(" %d", o.row)
		w.ref += fmt.Sprintf(" %d", o.row+1)
	}
	return w
}

// recess places a housing by the box of what lies in it, as far as that lies
// over m.
func (m *member) recess(w work, what string, f parts.Face, o *member, depth quantity.Length) work {
	middle := func(j int) func(x []float64) adjust.Term {
		return func(x []float64) adjust.Term {
			lo, hi := m.under(x, j, o)
			return lo.Plus(hi).Scaled(0.5)
		}
	}
	extent := func(j int) func(x []float64) adjust.Term {
		return func(x []float64) adjust.Term {
			lo, hi := m.under(x, j, o)
			return hi.Minus(lo)
		}
	}
	w.along, w.across = onFace(m, f, middle)
	other := 1
	if f == parts.FirstSide || f == parts.SecondSide {
		other = 2
	}
	room := func(x []float64) adjust.Term { return adjust.At(x, m.extent[other]) }
	w.extents = []func(x []float64) adjust.Term{extent(0), extent(other), room}
	w.make = func(at form.Point, e []quantity.Length) parts.Feature {
		if e[1] > e[2]*98/100 {
			return parts.Housing{ID: w.ref, What: what, Face: f, Station: at.X, Width: e[0], Depth: depth}
		}
		return parts.Mortise{ID: w.ref, What: what, Face: f, At: at, Long: e[0], Wide: e[1], Depth: depth}
	}
	return w
}

// under is the stretch of m's own axis j that o lies over.
func (m *member) under(x []float64, j int, o *member) (lo, hi adjust.Term) {
	v := m.axes[j].of
	lo, hi = m.own(x, j, o.low(x, v)), m.own(x, j, o.high(x, v))
	if m.axes[j].sign < 0 {
		lo, hi = hi, lo
	}
	if lo.Value < 0 {
		lo = adjust.Constant(0)
	}
	if end := adjust.At(x, m.extent[j]); hi.Value > end.Value {
		hi = end
	}
	return lo, hi
}

package load

import (
	"math"
	"slices"

	"lostwood/internal/vehicle"
)

// A link makes two members go down together at a place; one that only touches
// does so only while they press on each other.
type link struct {
	upper, lower *member
	at           [3]float64
	bolt         *vehicle.Fastening // nil where they touch, or are housed in each other
	touches      bool
	ends         [4]end
	area         float64
	open         bool // a touching one that has parted
}

// An end is what a link has to do with one degree of freedom.
type end struct {
	dof   int
	share float64
}

const (
	// near is how far apart two faces may be and still touch: places come from
	// an adjustment, and are no surer than that.
	near = 1.
	// least is how far two members must overlap on plan to bear on each other.
	least = 5.
)

// joints finds what holds what: fastenings first, then housed wood, then faces that touch.
func (s *study) joints() {
	for _, f := range s.vehicle.Fastenings {
		s.fasten(f)
	}
	for i, m := range s.list {
		for _, o := range s.list[i+1:] {
			if m.lo[0] < o.hi[0] && o.lo[0] < m.hi[0] && m.lo[1] < o.hi[1] && o.lo[1] < m.hi[1] {
				s.meet(m, o)
			}
		}
	}
}

// fasten links what follows each other in a fastening's run.
func (s *study) fasten(f *vehicle.Fastening) {
	at, ok := spot(f)
	if !ok {
		return
	}
	var before *member
	for _, st := range f.Through {
		m := s.byID[st.ID]
		if m == nil {
			continue
		}
		if before != nil && before != m {
			upper, lower := ordered(before, m)
			s.links = append(s.links, &link{upper: upper, lower: lower, at: at, bolt: f, area: overlap(upper, lower)})
		}
		before = m
	}
}

// ordered gives the one that lies higher first.
func ordered(a, b *member) (upper, lower *member) {
	if a.lo[2]+a.hi[2] >= b.lo[2]+b.hi[2] {
		return a, b
	}
	return b, a
}

// plan is where two members overlap as seen from above.
func plan(a, b *member) (lo, hi [2]float64) {
	for i := range 2 {
		lo[i], hi[i] = max(a.lo[i], b.lo[i]), min(a.hi[i], b.hi[i])
	}
	return lo, hi
}

func overlap(a, b *member) float64 {
	lo, hi := plan(a, b)
	return max(0, hi[0]-lo[0]) * max(0, hi[1]-lo[1])
}

// meet links two members that lie one on the other, or one in the other.
func (s *study) meet(m, o *member) {
	upper, lower := ordered(m, o)
	lo, hi := plan(m, o)
	if hi[0]-lo[0] < least || hi[1]-lo[1] < least || m.axis == 2 && o.axis == 2 {
		return
	}
	gap := upper.lo[2] - lower.hi[2]
	if gap > near {
		return
	}
	housed := gap < -near
	if housed && (m.iron != nil || o.iron != nil) {
		return // an iron is let in only where a fastening says so
	}
	if m.axis != o.axis && s.boltedThrough(m, o) {
		return // the bolt's own run says how they bear on each other
	}
	for _, at := range s.places(m, o, lo, hi) {
		l := &link{upper: upper, lower: lower, at: at, touches: !housed, area: (hi[0] - lo[0]) * (hi[1] - lo[1])}
		if !s.linked(l, lo, hi) {
			s.links = append(s.links, l)
		}
	}
}

// boltedThrough reports whether one upright bolt goes through both.
func (s *study) boltedThrough(m, o *member) bool {
	return slices.ContainsFunc(s.vehicle.Fastenings, func(f *vehicle.Fastening) bool {
		in := func(id string) bool {
			return slices.ContainsFunc(f.Through, func(st vehicle.Stop) bool { return st.ID == id })
		}
		return math.Abs(f.Way[2]) > .5 && in(m.id) && in(o.id)
	})
}

// places are where two members bear on each other: crossing, in the middle of
// the crossing; side by side lengthwise, near both ends of where they touch.
func (s *study) places(m, o *member, lo, hi [2]float64) [][3]float64 {
	z := max(m.lo[2], o.lo[2])
	middle := [3]float64{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2, z}
	if m.axis != o.axis || m.axis == 2 {
		return [][3]float64{middle}
	}
	const inset = .02
	first, last := middle, middle
	step := inset * (hi[m.axis] - lo[m.axis])
	first[m.axis], last[m.axis] = lo[m.axis]+step, hi[m.axis]-step
	return [][3]float64{first, last}
}

// linked reports whether a fastening already holds the two near there.
func (s *study) linked(l *link, lo, hi [2]float64) bool {
	const room = .05
	return slices.ContainsFunc(s.links, func(o *link) bool {
		if o.bolt == nil || o.upper != l.upper || o.lower != l.lower {
			return false
		}
		for i := range 2 {
			if math.Abs(o.at[i]-l.at[i]) > max(room*(hi[i]-lo[i]), least) && l.upper.axis == l.lower.axis {
				return false
			}
		}
		return true
	})
}

// breadths keeps members level that are held, or laden, at both sides of their
// own middle line: what crosses such a one bears on it over its whole breadth.
func (s *study) breadths() {
	for _, m := range s.list {
		m.rolls = m.axis < 2 && s.offsets(m) > m.wide()/3
	}
	bolts := slices.Clone(s.links)
	for _, m := range s.list {
		if !m.rolls {
			continue
		}
		done := map[*member]bool{}
		for _, l := range bolts {
			o := l.upper
			if o == m {
				o = l.lower
			}
			if l.upper != m && l.lower != m || o.axis != 1-m.axis || done[o] || l.bolt != nil && math.Abs(l.bolt.Way[2]) < .5 {
				continue
			}
			done[o] = true
			s.edges(m, o, l)
		}
	}
}

// edges are two more places where a member bears on one that crosses it.
func (s *study) edges(m, o *member, l *link) {
	lo, hi := plan(m, o)
	side := 1 - m.axis
	if hi[side]-lo[side] < 4*least {
		return
	}
	const inset = .02
	step := inset * (hi[side] - lo[side])
	for _, at := range [2]float64{lo[side] + step, hi[side] - step} {
		e := *l
		e.bolt, e.touches = nil, true
		e.at[side] = at
		e.at[m.axis] = min(max(e.at[m.axis], lo[m.axis]), hi[m.axis])
		s.links = append(s.links, &e)
	}
}

// offsets is how far apart, across a member, the places are where it is held or laden.
func (s *study) offsets(m *member) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range s.links {
		if l.upper == m || l.lower == m {
			e := m.offset(l.at)
			lo, hi = min(lo, e), max(hi, e)
		}
	}
	return hi - lo
}

func (m *member) wide() float64 { return m.hi[1-m.axis] - m.lo[1-m.axis] }

// offset is how far a place lies from a lying member's middle line, within its breadth.
func (m *member) offset(at [3]float64) float64 {
	if m.axis == 2 {
		return 0
	}
	side := 1 - m.axis
	half := m.wide() / 2
	return min(max(at[side]-(m.lo[side]+m.hi[side])/2, -half), half)
}

// supports are where wheels carry the axles.
type support struct {
	axle *member
	hand vehicle.Hand
	at   float64
	dof  int
}

// stand finds the axles, fore to hind, and where their wheels are: at the track
// that the survey states, else at the ends of the axle, against its shoulders.
func (s *study) findAxles() {
	for _, m := range s.list {
		if m.iron != nil && m.iron.Kind == "axle" && m.axis == 1 {
			s.axles = append(s.axles, m)
		}
	}
	if len(s.axles) == 0 {
		for _, m := range s.list {
			if m.part != nil && m.part.Kind == "axle bed" && m.axis == 1 {
				s.axles = append(s.axles, m)
			}
		}
	}
	slices.SortStableFunc(s.axles, func(a, b *member) int {
		switch x, y := a.lo[0]+a.hi[0], b.lo[0]+b.hi[0]; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
}

func (s *study) stand() {
	for _, a := range s.axles {
		y := [2]float64{a.hi[1], a.lo[1]}
		if half := float64(s.vehicle.Track) / 2; half > 0 {
			y = [2]float64{half, -half}
			a.lo[1], a.hi[1] = min(a.lo[1], -half), max(a.hi[1], half) // its arms
		}
		for i, hand := range [2]vehicle.Hand{vehicle.Near, vehicle.Off} {
			s.supports = append(s.supports, &support{axle: a, hand: hand, at: y[i] - a.lo[1]})
		}
	}
}

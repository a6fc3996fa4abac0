package load

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/vehicle"
)

// A lot is the share of a load that one member takes.
type lot struct {
	on *member
	patch
	middle [3]float64 // in the vehicle, on the upper face
}

// lay shares a load out over what it lies on, by how much of each is covered.
func (s *study) lay(l *vehicle.Load) []lot {
	on := s.carriers(l)
	if len(on) == 0 {
		return nil
	}
	newtons := float64(l.Total()) * gravity
	if l.Lies == vehicle.InPlaces {
		return inPlaces(on, l.Number, newtons)
	}
	lo, hi := footprint(on, l)
	var lots []lot
	area := 0.0
	for _, m := range on {
		a, b := lo, hi
		for i := range 2 {
			a[i], b[i] = max(a[i], m.lo[i]), min(b[i], m.hi[i])
		}
		covered := max(0, b[0]-a[0]) * max(0, b[1]-a[1])
		if covered == 0 {
			continue
		}
		area += covered
		one := lot{on: m, middle: [3]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, m.hi[2]}}
		one.total = covered
		if m.axis < 2 {
			one.from, one.to = a[m.axis]-m.lo[m.axis], b[m.axis]-m.lo[m.axis]
		}
		lots = append(lots, one)
	}
	for i := range lots {
		lots[i].total *= newtons / area
	}
	return lots
}

// carriers are the members that a load lies on, in the vehicle's order.
func (s *study) carriers(l *vehicle.Load) []*member {
	var on []*member
	for _, id := range l.On {
		if m := s.byID[id]; m != nil {
			on = append(on, m)
		} else {
			s.note(id, fmt.Sprintf("The place of %s is not known, so that nothing of %s is put on it.", id, l.Name))
		}
	}
	slices.SortStableFunc(on, func(a, b *member) int { return slices.Index(s.list, a) - slices.Index(s.list, b) })
	return slices.Compact(on)
}

// footprint is the rectangle on plan that a load covers.
func footprint(on []*member, l *vehicle.Load) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, m := range on {
		for i := range 2 {
			lo[i], hi[i] = min(lo[i], m.lo[i]), max(hi[i], m.hi[i])
		}
	}
	in := float64(l.Within)
	switch l.Lies {
	case vehicle.ForeEdge:
		lo[0] = max(lo[0], hi[0]-in)
	case vehicle.HindEdge:
		hi[0] = min(hi[0], lo[0]+in)
	case vehicle.NearEdge:
		lo[1] = max(lo[1], hi[1]-in)
	case vehicle.OffEdge:
		hi[1] = min(hi[1], lo[1]+in)
	}
	return lo, hi
}

// inPlaces puts one of each in the middle of its share of the part's length.
func inPlaces(on []*member, number int, newtons float64) []lot {
	var lots []lot
	for _, m := range on {
		for k := range number {
			at := m.long() * (float64(k) + .5) / float64(number)
			one := lot{on: m, patch: patch{at, at, newtons / float64(number*len(on))}}
			for i := range 2 {
				one.middle[i] = (m.lo[i] + m.hi[i]) / 2
			}
			one.middle[2] = m.hi[2]
			if m.axis < 2 {
				one.middle[m.axis] = m.lo[m.axis] + at
			}
			lots = append(lots, one)
		}
	}
	return lots
}

// lade puts on every member what it carries in a state: its own weight, the
// bolts in it, and its lots of the loads.
func (s *study) lade(state State) {
	for _, m := range s.list {
		m.loads, m.leans = nil, nil
	}
	for _, m := range s.list {
		if m.mass.kg > 0 {
			s.put(lot{on: m, patch: patch{0, m.long(), m.mass.kg * gravity}, middle: m.mass.at})
		}
	}
	for _, b := range s.bolts {
		if m := s.carries(b.fastening); m != nil {
			at := m.place(b.at)
			s.put(lot{on: m, patch: patch{at, at, b.kg * gravity}, middle: b.at})
		}
	}
	for i := range s.vehicle.Loads {
		l := &s.vehicle.Loads[i]
		times := state.counts(l)
		for _, p := range s.lay(l) {
			if p.total *= times; p.total > 0 {
				s.put(p)
			}
		}
	}
}

// carries is the first timber a bolt goes through, else the first iron.
func (s *study) carries(f *vehicle.Fastening) *member {
	var first *member
	for _, st := range f.Through {
		m := s.byID[st.ID]
		if m != nil && m.part != nil {
			return m
		}
		if first == nil {
			first = m
		}
	}
	return first
}

// put lays a lot on its member, or on what that one lies on where nothing holds it.
func (s *study) put(p lot) {
	if s.holds[p.on] {
		p.on.take(p.patch, p.middle)
		return
	}
	under, at := s.rest(p.on, s.holds)
	if under == nil {
		return
	}
	s.note(p.on.id, fmt.Sprintf("Nothing in the survey fastens the %s to what stands on the wheels: its weight is set on the %s.", lower(p.on.name), lower(under.name)))
	place := under.place(at)
	under.take(patch{place, place, p.total}, at)
}

// take puts a load on a member, with how it leans it.
func (m *member) take(p patch, middle [3]float64) {
	m.loads = append(m.loads, p)
	if m.rolls {
		p.total *= m.offset(middle) / (m.wide() / 2)
		m.leans = append(m.leans, p)
	}
}

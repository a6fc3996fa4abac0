package load

import (
	"math"
	"slices"
)

// wire gives every joint its place on its member and its degree of freedom. A
// member with one joint, or none, only hangs.
func (s *study) wire() {
	places := map[*member][]float64{}
	put := func(m *member, at float64) { places[m] = append(places[m], at) }
	for _, l := range s.links {
		put(l.upper, l.upper.place(l.at))
		put(l.lower, l.lower.place(l.at))
	}
	for _, p := range s.supports {
		put(p.axle, p.at)
	}
	s.size = 0
	for _, m := range s.list {
		at := places[m]
		slices.Sort(at)
		m.joints = nil
		for _, a := range at {
			if n := len(m.joints); n == 0 || a-m.joints[n-1] > 2*same {
				m.joints = append(m.joints, a)
			}
		}
		if n := len(m.joints); n < 2 || m.joints[n-1]-m.joints[0] < m.long()/50 {
			m.bends = false
		}
		m.first = s.size
		s.size += m.ways()
		if m.rolls = m.rolls && m.bends; m.rolls {
			s.size += len(m.joints)
		}
	}
	for _, l := range s.links {
		a, b := l.upper.ends(l.at), l.lower.ends(l.at)
		l.ends = [4]end{a[0], a[1], {b[0].dof, -b[0].share}, {b[1].dof, -b[1].share}}
	}
	for _, p := range s.supports {
		p.dof = p.axle.dof(p.at)
	}
}

// ways is how many degrees of freedom a member has besides its lean.
func (m *member) ways() int {
	if m.bends {
		return len(m.joints)
	}
	return 1
}

// ends say how a place of a member goes down: with its nearest joint, and as it
// leans, by how near the place is to its edge.
func (m *member) ends(at [3]float64) [2]end {
	e := [2]end{{m.dof(m.place(at)), 1}, {m.first, 0}}
	if m.rolls {
		e[1] = end{e[0].dof + m.ways(), m.offset(at) / (m.wide() / 2)}
	}
	return e
}

// meets is how far the upper member goes down more than the lower at a link.
func (l *link) meets(down []float64) float64 {
	sum := 0.0
	for _, e := range l.ends {
		sum += e.share * down[e.dof]
	}
	return sum
}

// dof is the degree of freedom nearest to a place on the member.
func (m *member) dof(at float64) int {
	if !m.bends {
		return m.first
	}
	best := 0
	for i, j := range m.joints {
		if math.Abs(j-at) < math.Abs(m.joints[best]-at) {
			best = i
		}
	}
	return m.first + best
}

// held tells for every member whether a way of joints leads from it to a wheel.
func (s *study) held() map[*member]bool {
	next := map[*member][]*member{}
	for _, l := range s.links {
		next[l.upper] = append(next[l.upper], l.lower)
		next[l.lower] = append(next[l.lower], l.upper)
	}
	held := map[*member]bool{}
	var way []*member
	for _, p := range s.supports {
		way = append(way, p.axle)
	}
	for len(way) > 0 {
		m := way[len(way)-1]
		way = way[:len(way)-1]
		if !held[m] {
			held[m] = true
			way = append(way, next[m]...)
		}
	}
	return held
}

// rest finds what a member that nothing holds lies on: the highest one under it,
// else the nearest.
func (s *study) rest(m *member, held map[*member]bool) (*member, [3]float64) {
	at := m.mass.at
	var best *member
	how := math.Inf(1)
	for _, o := range s.list {
		if !held[o] || o.axis == 2 {
			continue
		}
		far := 0.0
		for i := range 2 {
			far = math.Hypot(far, max(o.lo[i]-at[i], at[i]-o.hi[i], 0))
		}
		cost := 1e3*far + math.Abs(at[2]-o.hi[2])
		if o.hi[2] > m.hi[2] {
			cost += 1e3 // it lies over it: things hang less often than they lie
		}
		if cost < how {
			best, how = o, cost
		}
	}
	return best, at
}

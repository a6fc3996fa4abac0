package load

import (
	"math"
	"slices"
)

const (
	// firm is how stiff a joint and the ground are, N/mm: they hardly give.
	firm = 1e6
	// faint keeps a member that nothing holds from flying off, N/mm; it takes no load that counts.
	faint = 1e-5
	// adrift is how far down, mm, tells of a member that nothing holds.
	adrift = 500.
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

// A solved grid is one case: how far every joint goes down, N on every link,
// and what stands on every wheel.
type solved struct {
	down   []float64
	bows   map[*member]*bowed
	bends  map[*member]*bent
	press  []float64 // by link: N, pressing positive
	wheels []float64 // by support, N
}

// solve works out the grid under the members' loads. Faces that would pull
// apart are let go, one turn after another, until none does.
func (s *study) solve() (*solved, error) {
	r := &solved{bows: map[*member]*bowed{}, bends: map[*member]*bent{}}
	base := newBands(s.size)
	push := make([]float64, s.size)
	for _, m := range s.list {
		if !m.bends {
			for _, p := range m.loads {
				push[m.first] += p.total
			}
			continue
		}
		b, err := s.bow(m)
		if err != nil {
			return nil, err
		}
		r.bows[m] = b
		for i := range m.joints {
			push[m.first+i] += b.push[i]
			for k := i; k < len(m.joints); k++ {
				base.add(m.first+i, m.first+k, b.stiff.At(i, k))
			}
		}
		if m.rolls {
			s.twist(m, base, push)
		}
	}
	for i := range s.size {
		base.add(i, i, faint)
	}
	for _, p := range s.supports {
		base.add(p.dof, p.dof, firm)
	}
	for _, l := range s.links {
		l.open = false
	}
	const turns = 40
	for turn := range turns {
		k := base.clone()
		for _, l := range s.links {
			if !l.open {
				k.tie(l.ends, firm)
			}
		}
		var err error
		if r.down, err = k.solve(push); err != nil {
			return nil, err
		}
		again := mayClose
		if turn > turns/2 {
			again = mayNot // or two faces could part and meet for ever
		}
		if !s.part(r.down, again) {
			break
		}
	}
	return r, s.settle(r)
}

// part opens the touching links that pull, and closes those that have met
// again where that is still allowed.
func (s *study) part(down []float64, again closing) bool {
	const pull, apart = .5, 1e-4 // N, mm
	changed := false
	for _, l := range s.links {
		if !l.touches {
			continue
		}
		gap := -l.meets(down)
		switch {
		case !l.open && gap*firm > pull:
			l.open, changed = true, true
		case l.open && again == mayClose && gap < -apart:
			l.open, changed = false, true
		}
	}
	return changed
}

// A closing says whether faces that parted may meet again.
type closing int

const (
	mayClose closing = iota
	mayNot
)

func (s *study) settle(r *solved) error {
	for _, m := range s.list {
		if !m.bends {
			continue
		}
		t, err := r.bows[m].settle(r.down[m.first : m.first+len(m.joints)])
		if err != nil {
			return err
		}
		r.bends[m] = t
	}
	for _, l := range s.links {
		f := 0.0
		if !l.open {
			f = firm * l.meets(r.down)
		}
		r.press = append(r.press, f)
	}
	for _, p := range s.supports {
		r.wheels = append(r.wheels, firm*r.down[p.dof])
	}
	return nil
}

// twist enters what holds a member's joints from leaning each its own way, and
// what leans them. A lean is told by how far the edge goes down, mm.
func (s *study) twist(m *member, k *bands, push []float64) {
	wide, deep := m.wide(), m.hi[2]-m.lo[2]
	broad, thin := max(wide, deep), min(wide, deep)
	stiff := broad * thin * thin * thin / 3 * (1 - .63*thin/broad) // of a rectangle, from memory
	e := s.stiff(m) / 16
	if m.iron != nil {
		e = s.stiff(m) / 2.6
	}
	first := m.first + m.ways()
	for i := 1; i < len(m.joints); i++ {
		spring := e * stiff / ((m.joints[i] - m.joints[i-1]) * wide / 2 * wide / 2)
		k.add(first+i-1, first+i-1, spring)
		k.add(first+i, first+i, spring)
		k.add(first+i-1, first+i, -spring)
	}
	for _, p := range m.leans {
		const pieces = 8
		for n := range pieces {
			at := p.from + (p.to-p.from)*(float64(n)+.5)/pieces
			i, t := m.between(at)
			push[first+i] += p.total / pieces * (1 - t)
			push[first+min(i+1, len(m.joints)-1)] += p.total / pieces * t
		}
	}
}

// between is the joint before a place, and how far it is on the way to the next.
func (m *member) between(at float64) (joint int, share float64) {
	for i := len(m.joints) - 1; i >= 0; i-- {
		switch j := m.joints[i]; {
		case at < j:
		case i == len(m.joints)-1:
			return i, 0
		default:
			return i, (at - j) / (m.joints[i+1] - j)
		}
	}
	return 0, 0
}

// bow reduces one member to its joints.
func (s *study) bow(m *member) (*bowed, error) {
	e := s.stiff(m)
	b := lay(m.long(), func(at float64) (bend, shear float64) {
		g := m.gross(at)
		if m.iron != nil {
			return e * g.Inertia, e / 2.6 * float64(g.Area) * 5 / 6 // shear of iron: E / 2 (1 + .3)
		}
		return e * g.Inertia, e / 16 * float64(g.Area) * 5 / 6
	}, m.joints, m.loads)
	return b.reduce()
}

// IronStiffness is the modulus of elasticity irons are reckoned with, MPa; of
// wrought iron and mild steel alike within 5 % (from memory).
const IronStiffness = 200e3

// stiff is a member's modulus of elasticity; that of middling hardwood where its wood has none.
func (s *study) stiff(m *member) float64 {
	if m.iron != nil {
		return IronStiffness
	}
	const middling = 11e3
	if w, err := s.woods.Find(m.timber()); err == nil {
		if e, _, err := w.Stiffness(s.vehicle.Moisture.Service); err == nil {
			return float64(e)
		}
	}
	return middling
}

package load

const (
	// firm is how stiff a joint and the ground are, N/mm: they hardly give.
	firm = 1e6
	// faint keeps a member that nothing holds from flying off, N/mm; it takes no load that counts.
	faint = 1e-5
	// adrift is how far down, mm, tells of a member that nothing holds.
	adrift = 500.
)

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
	base, push, err := s.stiffen(r)
	if err != nil {
		return nil, err
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

// stiffen reduces every member to its joints, and gives what they are stiff by
// and what pushes them, with the ground under the wheels.
func (s *study) stiffen(r *solved) (*bands, []float64, error) {
	base, push := newBands(s.size), make([]float64, s.size)
	for _, m := range s.list {
		if !m.bends {
			for _, p := range m.loads {
				push[m.first] += p.total
			}
			continue
		}
		b, err := s.bow(m)
		if err != nil {
			return nil, nil, err
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
	return base, push, nil
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

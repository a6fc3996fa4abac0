package load

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Comparison is a stress beside what clear wood bears.
type Comparison struct {
	Stress timber.Megapascals
	Clear  timber.Megapascals // the average of small clear pieces, at service moisture; 0 where not known
	Left   timber.Megapascals // of that, after the lessenings
	Basis  string
}

// Share is the stress in shares of what is left; not a number where that is not known.
func (c Comparison) Share() float64 {
	if c.Left <= 0 {
		return math.NaN()
	}
	return float64(c.Stress / c.Left)
}

// A Beam is one timber as the load bends it.
type Beam struct {
	Part           *vehicle.Part
	Bending, Shear Comparison
	At, ShearAt    quantity.Length // where each is greatest, along the part from its first end
	Where          string          // At in words
	ShearWhere     string          // ShearAt in words
	Section        Section         // there, with its holes
	Sag            quantity.Length // how far it goes down between what it bears on, at most
	Span           quantity.Length // from one to the next, where it sags most
	place          vehicle.Spot
}

// A Bearing is one member pressing on another.
type Bearing struct {
	Upper, Lower string // names
	On           *vehicle.Part
	Force        timber.Newtons
	Area         quantity.Area
	Pressed      Comparison
}

// A Washer is a bolt that the load pulls on, and the wood under its washer.
type Washer struct {
	Fastening *vehicle.Fastening
	On        *vehicle.Part
	Force     timber.Newtons
	Area      quantity.Area
	Pressed   Comparison
}

// A strength is what a wood bears at service moisture.
type strength struct{ bending, shear, bearing Comparison }

func (s *study) strengthOf(name string) strength {
	if got, ok := s.wood[name]; ok {
		return got
	}
	var st strength
	at := s.vehicle.Moisture.Service
	w, err := s.woods.Find(name)
	set := func(c *Comparison, of func(quantity.Moisture) (timber.Megapascals, timber.Basis, error), less []timber.Lessening) {
		if err != nil {
			c.Basis = err.Error()
			return
		}
		v, basis, bad := of(at)
		if bad != nil {
			c.Basis = bad.Error()
			return
		}
		*c = Comparison{Clear: v, Left: v * timber.Megapascals(timber.Left(less)), Basis: basis.String()}
	}
	set(&st.bending, w.Rupture, timber.OfBending())
	set(&st.shear, w.Shear, timber.OfShear())
	set(&st.bearing, w.Bearing, timber.OfBearing())
	s.wood[name] = st
	return st
}

func (c Comparison) of(stress float64) Comparison {
	c.Stress = timber.Megapascals(stress)
	return c
}

// compare sets every timber's stresses beside its wood's.
func (s *study) compare(r *solved) {
	for _, m := range s.list {
		t := r.bends[m]
		if t == nil || m.part == nil || !s.holds[m] || slices.ContainsFunc(t.down, func(d float64) bool { return math.Abs(d) > adrift }) {
			continue
		}
		s.report.Beams = append(s.report.Beams, s.beam(m, t, r))
	}
	s.bearings(r)
}

func (s *study) beam(m *member, t *bent, r *solved) Beam {
	st := s.strengthOf(m.timber())
	b := Beam{Part: m.part}
	var most, mostShear float64
	for _, at := range stations(m, t) {
		force, moment := t.forces(at)
		net := m.net(at)
		if f := net.bending(moment); f > most*(1+1e-6) {
			most, b.At, b.Section = f, quantity.Length(m.grain(at)), net
			b.Where = s.where(m, at)
			b.place = m.spot(at)
		}
		if f := net.shear(force); f > mostShear*(1+1e-6) && !m.stubby(at) {
			mostShear, b.ShearAt, b.ShearWhere = f, quantity.Length(m.grain(at)), s.where(m, at)
		}
	}
	b.Bending, b.Shear = st.bending.of(most), st.shear.of(mostShear)
	b.Sag, b.Span = s.sag(m, t, r)
	return b
}

// stubby reports a place between two joints nearer together than the member is
// deep: there a force goes straight across and does not shear it as a beam.
func (m *member) stubby(at float64) bool {
	deep := m.hi[2] - m.lo[2]
	for i := 1; i < len(m.joints); i++ {
		a, b := m.joints[i-1], m.joints[i]
		if b-a < deep && at > a-same && at < b+same {
			return true
		}
	}
	return false
}

// stations are where a member may be worst off: nodes, where the moment turns,
// and where holes and joints leave least.
func stations(m *member, t *bent) []float64 {
	out := slices.Concat(t.at, t.turning())
	if m.wood != nil {
		for _, x := range m.wood.worst() {
			out = append(out, m.fromGrain(x))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func (m *member) spot(at float64) vehicle.Spot {
	var p vehicle.Spot
	for i := range p {
		p[i] = quantity.Length((m.lo[i] + m.hi[i]) / 2)
	}
	p[m.axis] = quantity.Length(m.lo[m.axis] + at)
	return p
}

// where names a place along a member: a fastening there, else how far from its first end.
func (s *study) where(m *member, at float64) string {
	const by = 15
	best, name := by+1., ""
	for _, l := range s.links {
		if l.bolt == nil || l.upper != m && l.lower != m {
			continue
		}
		if d := math.Abs(m.place(l.at) - at); d < best {
			best, name = d, "at fastening "+l.bolt.ID
		}
	}
	if best <= by {
		return name
	}
	end := [2]string{"fore", "near"}[m.axis]
	return fmt.Sprintf("%s from its %s end", quantity.Format(quantity.Length(m.grain(at)), s.vehicle.Unit), end)
}

// A prop is a joint at which a beam is borne, and how far it goes down there.
type prop struct{ at, down float64 }

// props are the joints that push a beam up.
func (s *study) props(m *member, r *solved) []prop {
	up := make([]float64, len(m.joints))
	for i, l := range s.links {
		if l.upper == m {
			up[l.ends[0].dof-m.first] += r.press[i]
		}
		if l.lower == m {
			up[l.ends[2].dof-m.first] -= r.press[i]
		}
	}
	for i, p := range s.supports {
		if p.axle == m {
			up[p.dof-m.first] += r.wheels[i]
		}
	}
	const counts = .01 // of the greatest, for a joint to count
	var on []prop
	for i, f := range up {
		if f > counts*slices.Max(up) {
			on = append(on, prop{m.joints[i], r.down[m.first+i]})
		}
	}
	return on
}

// sag is how far a beam goes down below the straight line from one prop to the
// next; past the last one, below that.
func (s *study) sag(m *member, t *bent, r *solved) (sag, span quantity.Length) {
	on := s.props(m, r)
	if len(on) == 0 {
		return 0, 0
	}
	for i, x := range t.at {
		k := 0
		for k < len(on) && on[k].at < x {
			k++
		}
		line, wide := 0.0, 0.0
		switch {
		case k == 0:
			line, wide = on[0].down, on[0].at-x
		case k == len(on):
			line, wide = on[k-1].down, x-on[k-1].at
		default:
			a, b := on[k-1], on[k]
			wide = b.at - a.at
			line = a.down + (b.down-a.down)*(x-a.at)/wide
		}
		if d := quantity.Length(t.down[i] - line); d > sag {
			sag, span = d, quantity.Length(wide)
		}
	}
	return sag, span
}

// bearings are the wood faces that are pressed, and the bolts that are pulled.
func (s *study) bearings(r *solved) {
	type pair struct{ upper, lower *member }
	force := map[pair]float64{}
	var order []pair
	for i, l := range s.links {
		if l.bolt != nil && math.Abs(l.bolt.Way[2]) < .5 {
			continue // a bolt from the side carries by its shank
		}
		if l.bolt != nil && r.press[i] < -1 {
			s.pulled(l, -r.press[i])
		}
		p := pair{l.upper, l.lower}
		if _, ok := force[p]; !ok {
			order = append(order, p)
		}
		force[p] += max(r.press[i], 0)
	}
	for _, p := range order {
		f, area := force[p], overlap(p.upper, p.lower)
		if f < 1 || area == 0 {
			continue
		}
		for _, m := range []*member{p.upper, p.lower} {
			if m.part == nil {
				continue
			}
			s.report.Bearings = append(s.report.Bearings, Bearing{
				Upper: p.upper.name, Lower: p.lower.name, On: m.part, Force: timber.Newtons(f), Area: quantity.Area(area),
				Pressed: s.strengthOf(m.timber()).bearing.of(f / area),
			})
		}
	}
}

// pulled tells of the wood under a pulled bolt's washer, at whichever end it bears on wood.
func (s *study) pulled(l *link, newtons float64) {
	f := l.bolt
	size, source := bolt.Washer(f.Diameter, bolt.Wide)
	if source == bolt.Unlisted || f.What != "bolt" {
		return
	}
	area := math.Pi / 4 * float64(size.Outside*size.Outside-size.Inside*size.Inside)
	for _, st := range []vehicle.Stop{f.Through[0], f.Through[len(f.Through)-1]} {
		m := s.byID[st.ID]
		if m == nil || m.part == nil {
			continue // it bears on iron, which spreads it
		}
		s.report.Washers = append(s.report.Washers, Washer{
			Fastening: f, On: m.part, Force: timber.Newtons(newtons), Area: quantity.Area(area),
			Pressed: s.strengthOf(m.timber()).bearing.of(newtons / area),
		})
	}
}

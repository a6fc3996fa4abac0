package load

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// balance sums masses and where they lie. Woods of one species are taken to be
// off together, as if out of one log, so that the give or take is not too small.
func (s *study) balance(state State) Balance {
	var all []mass
	var kinds []string
	add := func(kind string, m mass) { all, kinds = append(all, m), append(kinds, kind) }
	for _, w := range s.report.Weights {
		if w.Placed && w.ID != "" && w.Why == "" {
			add(w.Of, w.mass)
		}
	}
	for _, b := range s.bolts {
		add("iron", mass{kg: b.kg, spread: 2 * ironSpread * b.kg, at: b.at})
	}
	for _, w := range s.onAxle {
		add("iron", w.mass)
	}
	for i := range s.vehicle.Loads {
		l := &s.vehicle.Loads[i]
		if state.counts(l) == 0 {
			continue
		}
		for _, p := range s.lay(l) {
			part := p.total / gravity / float64(l.Total())
			m := mass{kg: p.total / gravity, spread: part * float64(l.Doubt) * float64(l.Number), at: p.middle}
			m.at[2] += float64(l.Middle)
			add(fmt.Sprintf("load %d", i), m)
		}
	}
	return sum(all, kinds)
}

// sum finds where masses balance, and how far that may be off.
func sum(all []mass, kinds []string) Balance {
	kg := 0.0
	var at [3]float64
	for _, m := range all {
		kg += m.kg
		for i := range at {
			at[i] += m.kg * m.at[i]
		}
	}
	if kg <= 0 {
		return Balance{}
	}
	for i := range at {
		at[i] /= kg
	}
	return Balance{Mass: quantity.Mass(kg)}.doubted(at, all, kinds)
}

// doubted adds how far a balance may be off: each thing by its own sizes and
// place, and all of a kind together by its density.
func (b Balance) doubted(at [3]float64, all []mass, kinds []string) Balance {
	kg := float64(b.Mass)
	together := map[string][4]float64{} // what each kind's density moves it by, and makes it heavier by
	var names []string
	var heavy float64
	var moved [3]float64
	for k, m := range all {
		t, seen := together[kinds[k]]
		if !seen {
			names = append(names, kinds[k])
		}
		for i := range 3 {
			arm := m.at[i] - at[i]
			t[i] += m.spread * arm / kg
			moved[i] += math.Pow(m.sized*arm/kg, 2) + math.Pow(m.kg*m.atDoubt[i]/kg, 2)
		}
		t[3] += m.spread
		together[kinds[k]] = t
		heavy += m.sized * m.sized
	}
	for _, k := range names {
		for i := range moved {
			moved[i] += math.Pow(together[k][i], 2)
		}
		heavy += math.Pow(together[k][3], 2)
	}
	for i := range at {
		b.At[i] = quantity.Size{Value: quantity.Length(at[i]), Doubt: quantity.Length(math.Sqrt(moved[i])), Known: quantity.FromIron}
	}
	b.Doubt = quantity.Mass(math.Sqrt(heavy))
	return b
}

package makers

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
)

// A way is one set of circumstances under which a unit is tried.
type way struct {
	near   quantity.Length // how near the maker worked
	shrunk float64         // share lost across the grain
	weight float64
}

// ways lists the circumstances with weights that sum to one: makers who worked
// as near as asked or much nearer, and wood as quoted or shrunk.
func (q Question) ways(l *lot) []way {
	const (
		most  = 0.04 // shrunk from green is more (Wood Handbook, FPL-GTR-282, table 4-3), but makers used dry wood
		steps = 40
	)
	var out []way
	for _, near := range []quantity.Length{q.Close, q.Close / 4} {
		if q.Shrinkage != Sought || !l.across {
			out = append(out, way{near: near, weight: 1. / 2})
			continue
		}
		out = append(out, way{near: near, weight: 1. / 4})
		for k := 1; k <= steps; k++ {
			out = append(out, way{near: near, shrunk: most * float64(k) / steps, weight: 1. / 4 / steps})
		}
	}
	return out
}

// A trial is how well one unit explains a lot.
type trial struct {
	unit    Unit
	logOdds float64 // against chance, after the unit's own weight
	byParts []float64
	ways    []tried
}

// A tried is a way with what became of it.
type tried struct {
	way
	logOdds  float64   // within the unit, the way's weight in it
	shares   []float64 // the habit the sizes speak for, averaged
	off      float64
	nearness [][]float64 // of each size to the marks of each division
}

// tryAll tries every unit; the likeliest comes first.
func tryAll(l *lot, units []Unit, q Question) []trial {
	ways := q.ways(l)
	var out []trial
	for _, u := range units {
		out = append(out, try(l, u, ways))
	}
	slices.SortStableFunc(out, func(a, b trial) int {
		switch {
		case a.logOdds > b.logOdds:
			return -1
		case a.logOdds < b.logOdds:
			return 1
		}
		return 0
	})
	return out
}

func try(l *lot, u Unit, ways []way) trial {
	t := trial{unit: u, byParts: slices.Repeat([]float64{math.Inf(-1)}, len(u.parts))}
	hs := habits(len(u.parts))
	var all []float64
	for _, w := range ways {
		tr := tried{way: w, nearness: nearnesses(l, u, w)}
		logs := tr.weigh(l, hs)
		for i, h := range hs {
			logs[i] += math.Log(h.weight * w.weight)
			t.byParts[h.finest] = logSum([]float64{t.byParts[h.finest], logs[i]})
		}
		tr.average(hs, logs)
		all = append(all, tr.logOdds)
		t.ways = append(t.ways, tr)
	}
	t.logOdds = logSum(all) + math.Log(u.weight)
	return t
}

func nearnesses(l *lot, u Unit, w way) [][]float64 {
	out := make([][]float64, len(l.sizes))
	for i, s := range l.sizes {
		s = asMade(s, w.shrunk)
		for _, parts := range u.parts {
			out[i] = append(out[i], beyondRule(s.Value, u.step(parts), width(s, w.near), s.Read))
		}
	}
	return out
}

// weigh returns the log odds of each habit.
func (t *tried) weigh(l *lot, hs []habit) []float64 {
	out := make([]float64, len(hs))
	for k, h := range hs {
		sum := 0.
		for i, near := range t.nearness {
			sum += l.voice[i] * math.Log(h.density(near))
		}
		out[k] = sum
	}
	return out
}

// density is that of a size by the habit over that by chance.
func (h habit) density(near []float64) float64 {
	d := h.off
	for j, share := range h.shares {
		d += share * near[j]
	}
	return d
}

// average takes the habits by how well each did.
func (t *tried) average(hs []habit, logs []float64) {
	t.logOdds = logSum(logs)
	t.shares = make([]float64, len(hs[0].shares))
	for k, h := range hs {
		p := math.Exp(logs[k] - t.logOdds)
		t.off += p * h.off
		for j, share := range h.shares {
			t.shares[j] += p * share
		}
	}
}

// division is the part that explains the sizes best. Makers who keep to a
// coarse one fit a finer one as well, but there chance does better too, so the
// coarse one comes out ahead.
func (t trial) division() int {
	best := 0
	for j, odds := range t.byParts {
		if odds > t.byParts[best] {
			best = j
		}
	}
	return t.unit.parts[best]
}

package derive

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
)

// What one more reading would narrow is known before it is taken: the doubts hang
// on what is read, not on what it reads. With C the covariance of the unknowns, r
// the gradient of the reading and s its doubt, a size of gradient g then has the
// variance g'Cg - (g'Cr)^2 / (s^2 + r'Cr): an update of rank one, no new solution
// (F. R. Helmert's method of adding observations; from memory).

// unsettled is what a size that nothing tells counts as doubtful by, to rank what
// would tell it: hardly any size of a timber is guessed a foot wrong.
const unsettled = 1 * quantity.Foot

// A foresight is what a reading would do.
type foresight struct {
	reading
	column []float64 // covariance of every unknown with what is read; nil where nothing holds that
	noise  float64   // variance of what is read and of the reading together
	free   []float64 // where nothing holds it: by free direction, how far it moves with that
	doubts []float64 // of every target, afterwards
	gain   float64   // weighted, in millimetres
}

// foresee works out what a reading does to targets whose doubts are now before.
func (f *fit) foresee(r reading, ts []target, before []float64) foresight {
	o := f.look(r)
	o.doubts = make([]float64, len(ts))
	for i, t := range ts {
		o.doubts[i] = f.after(&o, t.term, before[i])
		o.gain += t.weight * narrowed(before[i], o.doubts[i])
	}
	return o
}

// look finds what a reading has to do with every unknown.
func (f *fit) look(r reading) foresight {
	o := foresight{reading: r, noise: r.doubt * r.doubt}
	if r.again != none {
		own := f.network.problem.Observations[r.again].Doubt
		own *= own
		o.noise = 1/(1/o.noise-1/own) + own*(1-f.Redundancy[r.again])
		o.column = make([]float64, len(f.X))
		for _, p := range f.Influence(r.again) {
			o.column[p.Unknown] = p.Slope * own
		}
		return o
	}
	if o.column = f.Covariances(r.term); o.column != nil {
		o.noise += dot(r.term, o.column)
		return o
	}
	o.free = f.moving(r.term)
	return o
}

// after is a function's doubt once the reading is taken.
func (f *fit) after(o *foresight, t adjust.Term, before float64) float64 {
	switch {
	case o.column != nil && math.IsInf(before, 1), o.column == nil && !math.IsInf(before, 1):
		return before
	case o.column != nil:
		c := dot(t, o.column)
		return math.Sqrt(max(0, before*before-c*c/o.noise))
	}
	by, ok := ratio(f.moving(t), o.free)
	if !ok {
		return before
	}
	return math.Hypot(by*o.doubt, f.DoubtOf(t.Minus(o.term.Scaled(by))))
}

// moving is how far a function moves with each free direction.
func (f *fit) moving(t adjust.Term) []float64 {
	out := make([]float64, len(f.Free))
	for k, d := range f.Free {
		for _, p := range d {
			if i, ok := slices.BinarySearchFunc(t.Slopes, p.Unknown, func(q adjust.Partial, u int) int { return cmp.Compare(q.Unknown, u) }); ok {
				out[k] += p.Slope * t.Slopes[i].Slope
			}
		}
	}
	return out
}

// ratio is a over b where they are multiples of each other, up to rounding.
func ratio(a, b []float64) (float64, bool) {
	top, size := 0.0, 0.0
	for k := range a {
		top += a[k] * b[k]
		size += b[k] * b[k]
	}
	if size == 0 {
		return 0, false
	}
	by := top / size
	for k := range a {
		if math.Abs(a[k]-by*b[k]) > 1e-8*(math.Abs(a[k])+math.Abs(by*b[k])) {
			return 0, false
		}
	}
	return by, by != 0
}

func dot(t adjust.Term, v []float64) float64 {
	sum := 0.0
	for _, p := range t.Slopes {
		sum += p.Slope * v[p.Unknown]
	}
	return sum
}

// narrowed is by how much a doubt becomes less.
func narrowed(before, after float64) float64 {
	return max(0, min(before, unsettled.Millimetres())-min(after, unsettled.Millimetres()))
}

// listed is how many readings are told.
const listed = 10

// ownAtLeast is how much of what a reading gains must be its own, when those before
// it in the list are taken too: two readings that tell the same are one line.
const ownAtLeast = 0.5

// next ranks the readings that could still be taken by what they do for some
// targets, and leaves out those that say what one before them says.
func (st *Study) next(rs []reading, ts []target, before []float64, most int) []foresight {
	var all []foresight
	for _, r := range rs {
		if o := st.fit.foresee(r, ts, before); o.gain > 0 && o.counts(before) {
			o.column = nil // made again for the few that are told
			all = append(all, o)
		}
	}
	slices.SortStableFunc(all, func(a, b foresight) int { return cmp.Compare(b.gain, a.gain) })
	var out, taken []foresight
	bench := map[string]bool{} // irons whose holes are told of
	for _, o := range all {
		if len(out) == most {
			break
		}
		if o.of != "" && bench[o.of] {
			continue
		}
		fresh := st.fit.look(o.reading)
		if st.own(&fresh, taken, ts, before) < ownAtLeast*o.gain {
			continue
		}
		out, taken = append(out, o), append(taken, fresh)
		bench[o.of] = true
	}
	return out
}

// own is what a reading gains after others have been taken. It turns the
// reading's column, and its noise, to what they are then.
func (st *Study) own(o *foresight, taken []foresight, ts []target, before []float64) float64 {
	if o.column == nil {
		for _, b := range taken {
			if b.column == nil {
				if _, same := ratio(o.free, b.free); same {
					return 0
				}
			}
		}
	}
	now := slices.Clone(before)
	for _, b := range taken {
		for i, t := range ts {
			now[i] = st.fit.after(&b, t.term, now[i])
		}
		if b.column == nil || o.column == nil {
			continue
		}
		c := dot(o.term, b.column)
		for j, v := range b.column {
			o.column[j] -= v * c / b.noise
		}
		o.noise -= c * c / b.noise
	}
	gain := 0.0
	for i, t := range ts {
		gain += t.weight * narrowed(now[i], st.fit.after(o, t.term, now[i]))
	}
	return gain
}

func (st *Study) doubts(ts []target) []float64 {
	out := make([]float64, len(ts))
	for i, t := range ts {
		out[i] = st.fit.DoubtOf(t.term)
	}
	return out
}

// worthTelling is the share by which a doubt must narrow to be spoken of by
// itself; worthCounting, to be counted among those narrowed a little.
const (
	worthTelling  = 0.1
	worthCounting = 0.02
)

// counts reports whether a reading narrows anything enough to be listed.
func (o *foresight) counts(before []float64) bool {
	for i, b := range before {
		if o.doubts[i] < (1-worthCounting)*b {
			return true
		}
	}
	return false
}

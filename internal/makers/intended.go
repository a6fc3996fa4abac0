package makers

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
)

// A Tell is whether an intended size can be told, and why not.
type Tell int

// The tells.
const (
	Likely     Tell = iota // one mark is likely
	OffMarks               // it lies on no mark: worn, shrunk or made to fit
	BetweenTwo             // it lies between two marks
	TooWide                // its give or take is too wide for the marks, wherever it lay
	NoUnit                 // no unit is claimed
	NotCounted             // not known well enough to be asked
)

// likelyEnough is how probable a mark must be to be told.
const likelyEnough = 0.8

// An Intended is one size with the mark it was likely made to.
type Intended struct {
	Name     string
	Derived  quantity.Size
	Intended quantity.Length // zero unless Tell is Likely; as made, before any shrinking
	Chance   float64         // that it was made to its likeliest mark, if the unit is right; zero where none was sought
	Tell     Tell
}

// propose finds the likeliest mark of each size, and counts those on marks;
// where a size cannot tell, it is not counted as if it did.
func (v *Verdict) propose(l *lot, t trial) {
	b := t.belief()
	v.Shrunk = b.shrunk
	for i, place := range l.place {
		s := asMade(l.sizes[i], b.shrunk)
		mark, chance := b.likeliest(s)
		out := &v.Sizes[place]
		out.Chance = chance
		out.Tell = b.tell(s, chance, v.Division)
		switch {
		case out.Tell == TooWide:
			v.Vague, v.Of = v.Vague+1, v.Of-1
		case b.onMarks(s, v.Division) >= 1./2:
			v.On++
		}
		if out.Tell == Likely {
			out.Intended = mark
		}
	}
	v.Fit = b.fit(l, v.Division)
}

// tell says what can be told of a size. Where the next mark of the division
// would be in doubt even if it lay right on it, its give or take is to blame.
func (b belief) tell(s Sized, chance float64, division int) Tell {
	if chance >= likelyEnough {
		return Likely
	}
	right := s
	right.Value = nextMark(s.Value, b.unit.step(division))
	if _, best := b.likeliest(right); best < likelyEnough {
		return TooWide
	}
	if b.onMarks(s, b.unit.parts...) < 1./2 {
		return OffMarks
	}
	return BetweenTwo
}

// A belief is what the sizes together say of one unit's maker.
type belief struct {
	unit   Unit
	shrunk float64
	ways   []tried   // those with the wood so shrunk
	weight []float64 // of each, summing to one
}

// belief takes the likeliest shrinkage. What each weighed beforehand is in its
// odds, so that no wood is said to have shrunk without need.
func (t trial) belief() belief {
	b := belief{unit: t.unit, shrunk: t.likeliestShrinkage()}
	var logs []float64
	for _, w := range t.ways {
		if w.shrunk == b.shrunk {
			b.ways = append(b.ways, w)
			logs = append(logs, w.logOdds)
		}
	}
	sum := logSum(logs)
	for _, x := range logs {
		b.weight = append(b.weight, math.Exp(x-sum))
	}
	return b
}

func (t trial) likeliestShrinkage() float64 {
	best := t.ways[0]
	for _, w := range t.ways {
		if w.logOdds > best.logOdds {
			best = w
		}
	}
	return best.shrunk
}

// likeliest returns the mark a size was likeliest made to, and how likely. It
// is the nearest mark of one of the divisions.
func (b belief) likeliest(s Sized) (quantity.Length, float64) {
	var mark quantity.Length
	most := 0.
	for _, parts := range b.unit.parts {
		step := b.unit.step(parts)
		near := nextMark(s.Value, step)
		if p := b.chance(s, near); p > most*(1+1e-9) {
			mark, most = near, p
		}
	}
	return mark, most
}

// nextMark is the mark nearest to x, of those above nothing.
func nextMark(x, step quantity.Length) quantity.Length {
	return quantity.Length(math.Max(1, math.Round(float64(x/step)))) * step
}

// chance is how likely a size was made to that mark.
func (b belief) chance(s Sized, mark quantity.Length) float64 {
	p := 0.
	for k, w := range b.ways {
		wide := width(s, w.near)
		z := float64((s.Value - mark) / wide)
		bell := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
		all, here := w.off, 0.
		for j, parts := range b.unit.parts {
			step := b.unit.step(parts)
			near := beyondRule(s.Value, step, wide, s.Read)
			all += w.shares[j] * near
			if math.Abs(fromMark(mark, step)) < 1e-6 {
				alone := math.Max(nearness(s.Value, step, wide), math.SmallestNonzeroFloat64)
				here += w.shares[j] * near * math.Min(1, bell*float64(step/wide)/alone)
			}
		}
		p += b.weight[k] * here / all
	}
	return p
}

// onMarks is how likely a size was made to a mark of one of those divisions.
func (b belief) onMarks(s Sized, divisions ...int) float64 {
	p := 0.
	for k, w := range b.ways {
		on, all := 0., w.off
		for j, parts := range b.unit.parts {
			near := w.shares[j] * beyondRule(s.Value, b.unit.step(parts), width(s, w.near), s.Read)
			all += near
			if slices.ContainsFunc(divisions, func(d int) bool { return d%parts == 0 }) {
				on += near
			}
		}
		p += b.weight[k] * on / all
	}
	return p
}

// fit compares how far the sizes lie from the marks of that division with what
// their own doubts would have.
func (b belief) fit(l *lot, division int) Fit {
	const (
		points  = 64
		tooGood = -3.
	)
	step := b.unit.step(division)
	over, spread := 0., 0.
	for i, s := range l.sizes {
		s = asMade(s, b.shrunk)
		mean, square := 0., 0.
		for k := range points {
			r := (float64(k)+0.5)/points - 0.5
			p := nearness(quantity.Length(r)*step, step, width(s, 0)) / points
			mean += p * r * r
			square += p * r * r * r * r
		}
		r := fromMark(s.Value, step)
		over += l.voice[i] * (r*r - mean)
		spread += l.voice[i] * (square - mean*mean)
	}
	if spread > 0 && over < tooGood*math.Sqrt(spread) {
		return TooGood
	}
	return AsDoubted
}

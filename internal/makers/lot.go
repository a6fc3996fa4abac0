package makers

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
)

// A lot is the sizes that count, in an order of their own.
type lot struct {
	sizes  []Sized
	place  []int     // of each in the caller's list
	voice  []float64 // what each counts for: one, or less where sizes are alike
	across bool      // some size runs across the grain
}

// newLot orders the sizes so that the order they came in reaches no sum.
func newLot(sizes []Sized, counted []int) *lot {
	l := &lot{place: slices.Clone(counted)}
	slices.SortStableFunc(l.place, func(a, b int) int {
		s, t := sizes[a], sizes[b]
		return cmp.Or(
			cmp.Compare(s.Value, t.Value), cmp.Compare(s.Doubt, t.Doubt), cmp.Compare(s.Alike, t.Alike),
			cmp.Compare(s.Read, t.Read), cmp.Compare(s.Grain, t.Grain),
		)
	})
	for _, i := range l.place {
		l.sizes = append(l.sizes, sizes[i])
		l.across = l.across || sizes[i].Grain == Across
	}
	l.share()
	return l
}

// share gives each size its voice.
func (l *lot) share() {
	l.voice = make([]float64, len(l.sizes))
	for i, s := range l.sizes {
		crowd := 0.
		for _, t := range l.sizes {
			crowd += likeness(s, t)
		}
		l.voice[i] = 1 / crowd
	}
}

// likeness is how far two sizes may be one: wholly if they are named so, and
// otherwise the less the further they are apart for their doubts.
func likeness(s, t Sized) float64 {
	if s.Alike != "" && s.Alike == t.Alike || s.Value == t.Value {
		return 1
	}
	z := float64(s.Value-t.Value) / math.Hypot(float64(s.Doubt), float64(t.Doubt))
	return math.Exp(-z * z / 4)
}

func (l *lot) voices() float64 {
	sum := 0.
	for _, v := range l.voice {
		sum += v
	}
	return sum
}

// width is the doubt of a size about the mark it was made to: its own, and how
// near the maker worked.
func width(s Sized, near quantity.Length) quantity.Length {
	return quantity.Length(math.Hypot(float64(s.Doubt), float64(near)))
}

// asMade is what a size was before the wood lost that share across the grain.
func asMade(s Sized, shrunk float64) Sized {
	if s.Grain == Across {
		s.Value /= quantity.Length(1 - shrunk)
		s.Doubt /= quantity.Length(1 - shrunk)
	}
	return s
}

// logSum is the log of the sum of what x are the logs of.
func logSum(x []float64) float64 {
	top := slices.Max(x)
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.
	for _, v := range x {
		sum += math.Exp(v - top)
	}
	return top + math.Log(sum)
}

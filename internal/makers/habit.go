package makers

import "math"

// A habit is how a maker divides sizes among the marks of a rule: the share
// made to whole units, to halves and so on (a half may fall on a whole one),
// and the share on no mark at all.
type habit struct {
	shares []float64 // for each division of the unit
	off    float64
	finest int     // index of the finest division with a share
	weight float64 // fixed beforehand; a unit's habits sum to one
}

const (
	fewOff  = 0.03 // of the sizes are off the marks even of a maker who keeps to them
	stepsOf = 4    // shares go by quarters
	offLess = 3    // a habit with one quarter more off the marks counts for so much less
)

// habits lists those that are weighed for a unit of n divisions. Each finest
// division has the same weight: half for makers who use its marks all alike,
// half for those who prefer some.
func habits(n int) []habit {
	var out []habit
	for finest := range n {
		half := 0.5
		mixed := mixtures(n, finest)
		if len(mixed) == 0 {
			half = 1
		}
		out = append(out, weighed(plain(n, finest), half/float64(n))...)
		out = append(out, weighed(mixed, half/float64(n))...)
	}
	return out
}

// plain lists habits of one division only.
func plain(n, finest int) []habit {
	var out []habit
	for off := 0; off <= stepsOf/2; off++ {
		quarters := make([]int, n)
		quarters[finest] = stepsOf - off
		out = append(out, newHabit(quarters, off, finest))
	}
	return out
}

// mixtures lists habits of several divisions, down to the finest.
func mixtures(n, finest int) []habit {
	var out []habit
	var fill func(at, left int, quarters []int)
	fill = func(at, left int, quarters []int) {
		if at < finest {
			for k := 0; k <= left; k++ {
				quarters[at] = k
				fill(at+1, left-k, quarters)
			}
			quarters[at] = 0
			return
		}
		for k := 1; k <= left; k++ {
			quarters[at] = k
			if off := left - k; off <= stepsOf/2 && k+off < stepsOf {
				out = append(out, newHabit(quarters, off, finest))
			}
		}
		quarters[at] = 0
	}
	fill(0, stepsOf, make([]int, n))
	return out
}

func newHabit(quarters []int, off, finest int) habit {
	h := habit{finest: finest, shares: make([]float64, len(quarters)), weight: math.Pow(offLess, -float64(off))}
	for i, k := range quarters {
		h.shares[i] = (1 - fewOff) * float64(k) / stepsOf
	}
	h.off = fewOff + (1-fewOff)*float64(off)/stepsOf
	return h
}

// weighed scales the weights of hs to that sum.
func weighed(hs []habit, sum float64) []habit {
	total := 0.
	for _, h := range hs {
		total += h.weight
	}
	for i := range hs {
		hs[i].weight *= sum / total
	}
	return hs
}

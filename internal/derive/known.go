package derive

import (
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
)

// byStrength solves again with only the evidence that is at least so strong, to
// tell how each dimension is known.
func (n *network) byStrength(f *fit) error {
	for k := quantity.Measured; k < quantity.Unknown; k++ {
		var weaker []int
		for i, t := range n.notes {
			if t.known > k {
				weaker = append(weaker, i)
			}
		}
		if len(weaker) == 0 {
			f.strength = append(f.strength, f.Solution)
			continue
		}
		sol, err := adjust.Solve(adjust.Without(n.problem, weaker...))
		if err != nil {
			return err
		}
		f.strength = append(f.strength, sol)
	}
	return nil
}

// size is a value of the adjusted network with its doubt and how it is known.
func (f *fit) size(t adjust.Term) quantity.Size {
	return quantity.Size{
		Value: quantity.Length(t.Value), Doubt: quantity.Length(f.DoubtOf(t)), Known: f.known(t),
	}
}

// enough is how much wider a doubt may be on stronger evidence alone for that
// evidence to be the one that tells.
const enough = 1.5

// bears is the share of a value's give or take, squared, from which evidence
// really bears on it.
const bears = 0.1

// known tells how a value is known. Where evidence stands side by side it is the
// strongest that alone would give the value nearly as well as everything together.
// Where one piece hangs on another it is the weakest of the chain, but for links
// that hardly bear on the value.
func (f *fit) known(t adjust.Term) quantity.Known {
	if len(t.Slopes) != 1 {
		return f.knownAnew(t)
	}
	if f.unknowns == nil {
		f.unknowns = map[int]quantity.Known{}
	}
	u := t.Slopes[0].Unknown
	k, ok := f.unknowns[u]
	if !ok {
		k = f.knownAnew(t)
		f.unknowns[u] = k
	}
	return k
}

func (f *fit) knownAnew(t adjust.Term) quantity.Known {
	full := f.DoubtOf(t)
	if math.IsInf(full, 1) {
		return quantity.Unknown
	}
	alone := quantity.Guess
	for k, sol := range f.strength {
		if sol.DoubtOf(t) <= enough*full {
			alone = quantity.Known(k)
			break
		}
	}
	if alone == quantity.Measured {
		return alone
	}
	return min(alone, f.chain(t, full))
}

// chain is the strongest class such that all weaker evidence together hardly
// bears on a value.
func (f *fit) chain(t adjust.Term, full float64) quantity.Known {
	own, common := f.Makeup(t)
	var share [quantity.Unknown]float64
	for i, m := range own {
		share[f.network.notes[i].known] += m * m
	}
	for c, m := range common {
		share[f.network.commons[c].known] += m * m
	}
	weaker := 0.0
	for k := quantity.Guess; k > quantity.Measured; k-- {
		if weaker += share[k]; weaker > bears*full*full {
			return k
		}
	}
	return quantity.Measured
}

package makers_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"lostwood/internal/makers"
	"lostwood/internal/quantity"
)

// A draw makes one true size.
type draw func(*rand.Rand) quantity.Length

// anySize is between 20 mm and 2 m, as many in each doubling.
func anySize(r *rand.Rand) quantity.Length {
	return quantity.Length(20 * math.Pow(100, r.Float64()))
}

// onStep rounds any size to steps of q, the least being q.
func onStep(q quantity.Length) draw {
	return func(r *rand.Rand) quantity.Length {
		return quantity.Length(math.Max(1, math.Round(float64(anySize(r)/q)))) * q
	}
}

// onRule rounds to whole units with the first share, halves with the second and so on.
func onRule(one quantity.Length, shares ...float64) draw {
	return func(r *rand.Rand) quantity.Length {
		u, q := r.Float64(), one
		for _, share := range shares {
			if u < share {
				break
			}
			u -= share
			q /= 2
		}
		return onStep(q)(r)
	}
}

// stock uses k sizes again and again for n parts.
func stock(k, n int) draw {
	var have []quantity.Length
	drawn := 0
	return func(r *rand.Rand) quantity.Length {
		if drawn%n == 0 {
			have = have[:0]
			for range k {
				have = append(have, anySize(r))
			}
		}
		drawn++
		return have[r.IntN(k)]
	}
}

// measured draws n sizes and what a survey would make of them.
func measured(r *rand.Rand, d draw, n int, doubt quantity.Length) (sizes []makers.Sized, truth []quantity.Length) {
	for i := range n {
		x := d(r)
		truth = append(truth, x)
		sizes = append(sizes, sized(fmt.Sprintf("size %d", i+1), x+doubt*quantity.Length(r.NormFloat64()), doubt))
	}
	return sizes, truth
}

func sized(name string, value, doubt quantity.Length) makers.Sized {
	return makers.Sized{Name: name, Size: quantity.Size{Value: value, Doubt: doubt, Known: quantity.FromIron}}
}

func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1841)) }

// claims counts the runs in which a unit is claimed, by its name.
func claims(r *rand.Rand, d draw, runs, n int, doubt quantity.Length, q makers.Question) map[string]int {
	out := map[string]int{}
	for range runs {
		sizes, _ := measured(r, d, n, doubt)
		if v := makers.Study(sizes, q); v.Claimed == makers.Claimed {
			out[v.Unit.String()]++
		}
	}
	return out
}

func total(counts map[string]int) int {
	n := 0
	for _, c := range counts {
		n += c
	}
	return n
}

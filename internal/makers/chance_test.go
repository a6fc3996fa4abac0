package makers_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/makers"
	"lostwood/internal/quantity"
)

// falseAlarms asserts that sizes on no grid are claimed in less than 1 % of runs.
func falseAlarms(t *testing.T, d draw, runs int, doubt quantity.Length, q makers.Question) {
	t.Helper()
	found := total(claims(seeded(7), d, runs, 20, doubt, q))
	t.Logf("claimed in %d of %d (%.2f %%) at %.1f mm", found, runs, 100*float64(found)/float64(runs), float64(doubt))
	assert.Less(t, float64(found), 0.01*float64(runs))
}

// Sizes drawn from no grid, and stock of no grid used again and again, show no unit.
func TestNoGridIsNotClaimed(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of vehicles")
	}
	for name, d := range map[string]func() draw{
		"any":            func() draw { return anySize },
		"eight of stock": func() draw { return stock(8, 20) },
		"five of stock":  func() draw { return stock(5, 20) },
	} {
		for _, doubt := range []quantity.Length{0.3, 1} {
			t.Run(name, func(t *testing.T) { falseAlarms(t, d(), 2000, doubt, makers.Usual()) })
		}
	}
	q := makers.Usual()
	q.Shrinkage = makers.Sought
	t.Run("shrinkage sought", func(t *testing.T) {
		found, r := 0, seeded(8)
		for range 2000 {
			sizes, _ := measured(r, anySize, 20, 0.5)
			for i := range sizes {
				sizes[i].Grain = makers.Grain(i % 2)
			}
			if makers.Study(sizes, makers.Question{Weakest: q.Weakest, Units: q.Units[:2], Shrinkage: q.Shrinkage}).Claimed == makers.Claimed {
				found++
			}
		}
		t.Logf("claimed in %d of 2000", found)
		assert.Less(t, found, 20)
	})
}

// How often the inch is found with 20 sizes: by makers who like coarse marks
// (shares whole, half, quarter, eighth), and by makers who use all eighths alike.
// The latter cannot be found by any test at 1 mm: see TestBestPossible.
func TestInchIsFound(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of vehicles")
	}
	const runs = 1000
	liking := []float64{0.35, 0.25, 0.2, 0.2}
	for _, c := range []struct {
		name  string
		d     draw
		doubt quantity.Length
		n     int
		least int // measured, less three standard deviations of counting
		most  int
	}{
		{"coarse marks liked", onRule(quantity.Inch, liking...), 0.5, 20, 990, runs},
		{"coarse marks liked", onRule(quantity.Inch, liking...), 1, 20, 849, runs},
		{"mostly whole inches", onRule(quantity.Inch, 0.5, 0.2, 0.15, 0.15), 1, 20, 951, runs},
		{"coarse marks liked", onRule(quantity.Inch, liking...), 1, 40, 985, runs},
		{"eighths all alike", onStep(quantity.Inch / 8), 0.3, 20, 990, runs},
		{"eighths all alike", onStep(quantity.Inch / 8), 0.5, 20, 803, runs},
		{"eighths all alike", onStep(quantity.Inch / 8), 1, 20, 0, 110}, // no test can: 8 %
	} {
		t.Run(c.name, func(t *testing.T) {
			got := claims(seeded(11), c.d, runs, c.n, c.doubt, makers.Usual())
			inch := got["English inch"]
			t.Logf("%d sizes at %.1f mm: found in %.1f %%, another unit claimed in %.1f %%",
				c.n, float64(c.doubt), 100*float64(inch)/runs, 100*float64(total(got)-inch)/runs)
			assert.GreaterOrEqual(t, inch, c.least)
			assert.LessOrEqual(t, inch, c.most)
			assert.Less(t, total(got)-inch, runs/100)
		})
	}
}

// The best that any test of false alarms 1 % can do, by the lemma of Neyman and
// Pearson: the likelihood ratio with the unit, the doubts and the shares known.
// For marks all alike and wide doubts it is Kendall's quantogram (D. G. Kendall,
// Hunting quanta, Phil. Trans. R. Soc. A 276 (1974) 231): normal, variance one,
// mean nought by chance and rho sqrt(2n) on the marks, rho = exp(-2 pi^2 s^2/q^2).
func TestBestPossible(t *testing.T) {
	const n, runs = 20, 4000
	q, s := quantity.Inch/8, quantity.Millimetre
	r := seeded(3)
	ratio := func(d draw) float64 {
		sizes, _ := measured(r, d, n, s)
		sum := 0.
		for _, x := range sizes {
			sum += math.Log(makers.Nearness(x.Value, q, s))
		}
		return sum
	}
	var chance []float64
	for range runs {
		chance = append(chance, ratio(anySize))
	}
	slices.Sort(chance)
	found := 0
	for range runs {
		if ratio(onStep(q)) > chance[runs*99/100] {
			found++
		}
	}
	rho := math.Exp(-2 * math.Pi * math.Pi * math.Pow(float64(s/q), 2))
	closed := math.Erfc((2.326348-rho*math.Sqrt(2*n))/math.Sqrt2) / 2 // 2.326: the normal table at 1 %
	t.Logf("best possible %.1f %%, by Kendall's distribution %.1f %%", 100*float64(found)/runs, 100*closed)
	assert.InDelta(t, closed, float64(found)/runs, 0.025)
	assert.Less(t, float64(found)/runs, 0.12)
}

// The chances told come true, with one size in twenty on no mark: as many marks
// are right as their chances add up to.
func TestChancesComeTrue(t *testing.T) {
	right, told, sum := 0, 0, 0.
	r, made := seeded(5), onRule(quantity.Inch, 0.35, 0.25, 0.2, 0.2)
	worn := func(r *rand.Rand) quantity.Length {
		if r.Float64() < 0.05 {
			return anySize(r)
		}
		return made(r)
	}
	for range 150 {
		sizes, truth := measured(r, worn, 30, 0.7)
		v := makers.Study(sizes, makers.Usual())
		for i, s := range v.Sizes {
			if s.Tell != makers.Likely {
				continue
			}
			told++
			sum += s.Chance
			if math.Abs(float64(s.Intended-truth[i])) < 1e-6 {
				right++
			}
		}
	}
	t.Logf("%d told, %.1f %% right, promised %.1f %%", told, 100*float64(right)/float64(told), 100*sum/float64(told))
	assert.Greater(t, told, 1500)
	assert.InDelta(t, sum/float64(told), float64(right)/float64(told), 0.03)
}

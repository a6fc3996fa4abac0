package adjust_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// levels is a net of height differences among n points, each to its next three, one
// fixed; blunders are added to the observations named.
func levels(n int, seed uint64, blunders map[int]float64) adjust.Problem {
	r := rand.New(rand.NewPCG(seed, 9))
	p := adjust.Problem{Start: make([]float64, n)}
	p.Observations = append(p.Observations, linear(0, 0.1, on(0, 1)))
	for a := range n {
		for step := 1; step <= 3; step++ {
			b := (a + step) % n
			rise := float64(b*b%17) - float64(a*a%17)
			p.Observations = append(p.Observations, linear(rise+r.NormFloat64(), 1, on(b, 1), on(a, -1)))
		}
	}
	for i, by := range blunders {
		p.Observations[i].Value += by
	}
	return p
}

// The level is the chance of any alarm in a clean set. Over 2,000 clean nets the
// share of alarms lies within four standard deviations of it; correlated tests make
// Sidak's level a little too careful, so the low side has twice the room.
func TestFalseAlarms(t *testing.T) {
	const runs, level = 2000, 0.05
	alarms := 0
	for k := range runs {
		found, _, err := adjust.Snoop(levels(8, uint64(k), nil), level)
		require.NoError(t, err)
		if len(found) > 0 {
			alarms++
		}
	}
	share, spread := float64(alarms)/runs, math.Sqrt(level*(1-level)/runs)
	t.Logf("alarms in %.1f %% of clean nets, wanted %.1f %%", 100*share, 100*level)
	require.Less(t, share, level+4*spread)
	require.Greater(t, share, level-8*spread)
}

// A blunder of the least size noticed with a power of 80 % raises |w| above the limit
// in about 80 % of nets.
func TestLeastNoticedIsNoticed(t *testing.T) {
	const runs, level, power = 3000, 0.001, 0.80
	noticed := 0
	for k := range runs {
		clean, err := adjust.Solve(levels(8, uint64(k), nil))
		require.NoError(t, err)
		least := clean.LeastNoticed(5, level, power)
		s, err := adjust.Solve(levels(8, uint64(k), map[int]float64{5: least}))
		require.NoError(t, err)
		if math.Abs(s.Standardised[5]) > 3.2905 { // normal tables, two-sided 0.1 %
			noticed++
		}
	}
	share := float64(noticed) / runs
	t.Logf("noticed in %.1f %%", 100*share)
	require.InDelta(t, power, share, 4*math.Sqrt(power*(1-power)/runs))
}

func TestSnoopNamesSeveral(t *testing.T) {
	p := levels(20, 5, map[int]float64{3: 14, 30: -17, 47: 20})
	found, rest, err := adjust.Snoop(p, 0.01)
	require.NoError(t, err)
	var named []int
	for _, f := range found {
		named = append(named, f.Observation)
		require.InDelta(t, map[int]float64{3: 14, 30: -17, 47: 20}[f.Observation], f.Error, 9)
	}
	slices.Sort(named)
	require.Equal(t, []int{3, 30, 47}, named)
	verdict, _, _ := rest.GlobalTest(0.01)
	require.Equal(t, adjust.Agrees, verdict)

	found, _, err = adjust.SnoopAmong(p, 0.01, func(i int) bool { return i != 47 })
	require.NoError(t, err)
	for _, f := range found {
		require.NotEqual(t, 47, f.Observation)
	}
}

// Three readings of one kind and one of another, all of one loop: errors in the loop's
// two unshared lines cannot be told apart, and both are named.
func TestSnoopTellsWhatCannotBeToldApart(t *testing.T) {
	p := adjust.Problem{Start: []float64{0, 0, 0}, Observations: []adjust.Observation{
		linear(0, 0.1, on(0, 1)),
		linear(5, 1, on(1, 1), on(0, -1)), linear(5, 1, on(1, 1), on(0, -1)), linear(5, 1, on(1, 1), on(0, -1)),
		linear(3, 1, on(2, 1), on(1, -1)), linear(30, 1, on(2, 1), on(0, -1)),
	}}
	found, _, err := adjust.Snoop(p, 0.05)
	require.NoError(t, err)
	require.Len(t, found, 1)
	both := append(slices.Clone(found[0].Alike), found[0].Observation)
	slices.Sort(both)
	require.Equal(t, []int{4, 5}, both)
}

func TestRobustPointsAtSeveral(t *testing.T) {
	blunders := map[int]float64{3: 14, 4: 15, 30: -17, 47: 20}
	p := adjust.Without(levels(20, 5, blunders), 11)
	s, weights, err := adjust.Robust(p)
	require.NoError(t, err)
	for i, w := range weights {
		_, bad := blunders[i]
		switch {
		case bad:
			require.Less(t, w, 0.05, "%d", i)
		case i == 11:
			require.Zero(t, w)
		default:
			require.Greater(t, w, 0.3, "%d", i)
		}
	}
	clean, err := adjust.Solve(adjust.Without(p, 3, 4, 30, 47))
	require.NoError(t, err)
	for j := range s.X {
		require.InDelta(t, clean.X[j], s.X[j], clean.Doubts[j])
	}
}

// A good reading thrown out early comes back once the real culprits are out: with any
// of those still out taken in again, the net would not agree.
func TestSnoopTakesBackWhatAgrees(t *testing.T) {
	const limit = 3.08 // normal tables: 0.2 % two-sided, that is 5 % over 25 readings
	back := 0
	for seed := range uint64(300) {
		p := levels(9, seed, map[int]float64{4: 9, 5: 9, 8: -9})
		found, rest, err := adjust.Snoop(p, 0.05)
		require.NoError(t, err)
		require.Less(t, largest(rest.Standardised), limit+0.1)
		for _, f := range found {
			others := slices.DeleteFunc(numbers(found), func(i int) bool { return i == f.Observation })
			s, err := adjust.Solve(adjust.Without(p, others...))
			require.NoError(t, err)
			require.Greater(t, largest(s.Standardised), limit-0.1, "seed %d", seed)
		}
		if !slices.Contains(numbers(found), worstOf(t, p)) {
			back++
		}
	}
	t.Logf("in %d nets of 300 the first one out came back", back)
	require.Positive(t, back)
}

// worstOf is the observation that would be thrown out first.
func worstOf(t *testing.T, p adjust.Problem) int {
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	most := largest(s.Standardised)
	return slices.IndexFunc(s.Standardised, func(w float64) bool { return math.Abs(w) == most })
}

func numbers(found []adjust.Suspect) []int {
	var out []int
	for _, f := range found {
		out = append(out, f.Observation)
	}
	return out
}

func largest(v []float64) float64 {
	most := 0.0
	for _, x := range v {
		most = math.Max(most, math.Abs(x))
	}
	return most
}

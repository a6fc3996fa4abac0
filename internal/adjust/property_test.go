package adjust_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/adjust"
)

// moved is a model whose unknowns carry other numbers: place[j] is the new number of j.
func moved(model func([]float64) adjust.Term, place []int) func([]float64) adjust.Term {
	return func(x []float64) adjust.Term {
		old := make([]float64, len(place))
		for j, k := range place {
			old[j] = x[k]
		}
		t := model(old)
		sum := adjust.Constant(t.Value)
		for _, p := range t.Slopes {
			sum = sum.Plus(adjust.Term{Slopes: []adjust.Partial{on(place[p.Unknown], p.Slope)}})
		}
		return sum
	}
}

func TestOrderChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawNet(t).p
		n, m := len(p.Start), len(p.Observations)
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		place, turn := r.Perm(n), r.Perm(m)
		q := adjust.Problem{Start: make([]float64, n), Observations: make([]adjust.Observation, m)}
		for j, k := range place {
			q.Start[k] = p.Start[j]
		}
		for i, k := range turn {
			q.Observations[k] = p.Observations[i]
			q.Observations[k].Model = moved(p.Observations[i].Model, place)
		}
		a, err := adjust.Solve(p)
		require.NoError(t, err)
		b, err := adjust.Solve(q)
		require.NoError(t, err)
		require.Equal(t, a.Rank, b.Rank)
		near(t, a.WeightedSquares, b.WeightedSquares, 1e-9)
		for j, k := range place {
			require.Equal(t, a.Determined(j), b.Determined(k))
			if a.Determined(j) {
				near(t, a.X[j], b.X[k], 1e-9)
				near(t, 1, a.Doubts[j]/b.Doubts[k], 1e-9)
			}
		}
		for i, k := range turn {
			near(t, a.Redundancy[i], b.Redundancy[k], 1e-9)
			near(t, a.Residuals[i], b.Residuals[k], 1e-9)
		}
	})
}

func TestAnotherObservationNeverWidensADoubt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawNet(t).p
		last := len(p.Observations) - 1
		all, err := adjust.Solve(p)
		require.NoError(t, err)
		fewer, err := adjust.Solve(adjust.Without(p, last))
		require.NoError(t, err)
		for j := range p.Start {
			require.LessOrEqual(t, all.Doubts[j], fewer.Doubts[j]*(1+1e-9))
		}
		for i := range last {
			require.GreaterOrEqual(t, all.Redundancy[i], fewer.Redundancy[i]-1e-9)
		}
		require.LessOrEqual(t, fewer.WeightedSquares, all.WeightedSquares*(1+1e-9)+1e-9)
		require.Zero(t, fewer.Redundancy[last])
	})
}

func TestLeavingOutIsTheSameAsNeverReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawNet(t).p
		k := rapid.IntRange(0, len(p.Observations)-1).Draw(t, "left")
		out, err := adjust.Solve(adjust.Without(p, k))
		require.NoError(t, err)
		q := p
		q.Observations = slices.Delete(slices.Clone(p.Observations), k, k+1)
		never, err := adjust.Solve(q)
		require.NoError(t, err)
		require.Equal(t, never.X, out.X)
		require.Equal(t, never.Doubts, out.Doubts)
		require.Equal(t, never.Freedom, out.Freedom)
		o := p.Observations[k]
		require.InDelta(t, o.Model(out.X).Value-o.Value, out.Residuals[k], 1e-12*math.Abs(o.Value))
	})
}

// An observation in other units, value, doubt and model alike, says the same; so does
// an unknown in other units.
func TestUnitsChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawNet(t).p
		unit := rapid.SampledFrom([]float64{25.4, 1e-3, 1e6, 3})
		u, k := unit.Draw(t, "unknown's"), unit.Draw(t, "observation's")
		q := p
		q.Start = slices.Clone(p.Start)
		q.Start[0] /= u
		q.Observations = slices.Clone(p.Observations)
		for i, o := range p.Observations {
			scale := 1.0
			if i == 0 {
				scale = k
			}
			q.Observations[i].Value *= scale
			q.Observations[i].Doubt *= scale
			q.Observations[i].Model = func(x []float64) adjust.Term {
				x = slices.Clone(x)
				x[0] *= u
				t := o.Model(x).Scaled(scale)
				t.Slopes = slices.Clone(t.Slopes)
				if len(t.Slopes) > 0 && t.Slopes[0].Unknown == 0 {
					t.Slopes[0].Slope *= u
				}
				return t
			}
		}
		a, err := adjust.Solve(p)
		require.NoError(t, err)
		b, err := adjust.Solve(q)
		require.NoError(t, err)
		require.Equal(t, a.Rank, b.Rank)
		for j := range a.X {
			require.Equal(t, a.Determined(j), b.Determined(j))
			if !a.Determined(j) {
				continue
			}
			scale := 1.0
			if j == 0 {
				scale = u
			}
			near(t, a.X[j], b.X[j]*scale, 1e-8)
			near(t, 1, b.Doubts[j]*scale/a.Doubts[j], 1e-9)
		}
		for i := range a.Redundancy {
			near(t, a.Redundancy[i], b.Redundancy[i], 1e-9)
			near(t, a.Standardised[i], b.Standardised[i], 1e-6)
		}
	})
}

func TestSameInputSameBits(t *testing.T) {
	p := wagon(700, 1)
	a, err := adjust.Solve(p)
	require.NoError(t, err)
	for range 3 {
		b, err := adjust.Solve(p)
		require.NoError(t, err)
		require.Equal(t, a.X, b.X)
		require.Equal(t, a.Doubts, b.Doubts)
		require.Equal(t, a.Redundancy, b.Redundancy)
		require.Equal(t, a.Free, b.Free)
	}
}

// Two networks in one problem come out as each alone, even where one bends and
// starts far off.
func TestBlocksDoNotDisturbEachOther(t *testing.T) {
	a := wagon(300, 1)
	n := len(a.Start)
	alone, err := adjust.Solve(a)
	require.NoError(t, err)
	both := adjust.Problem{
		Start: append(slices.Clone(a.Start), 40, -3), Observations: slices.Clone(a.Observations), Common: a.Common,
	}
	for i, y := range []float64{10, 6.1, 3.6, 2.2, 1.4} { // a decay, started where steps must be shortened
		both.Observations = append(both.Observations, adjust.Observation{Value: y, Doubt: 0.1, Model: func(x []float64) adjust.Term {
			return adjust.At(x, n).Times(adjust.At(x, n+1).Scaled(float64(i)).Exp())
		}})
	}
	s, err := adjust.Solve(both)
	require.NoError(t, err)
	require.InDelta(t, 10, s.X[n], 0.1)
	require.InDelta(t, -0.5, s.X[n+1], 0.01)
	for j := range n {
		if alone.Determined(j) {
			near(t, alone.X[j], s.X[j], 1e-9)
			near(t, 1, s.Doubts[j]/alone.Doubts[j], 1e-9)
		}
	}
	require.Equal(t, alone.Free, s.Free)
}

// Gain and Influence tell what solving again with one reading changed does.
func TestGainAndInfluence(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawNet(t).p
		k := rapid.IntRange(0, len(p.Observations)-1).Draw(t, "changed")
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		q := p
		q.Observations = slices.Clone(p.Observations)
		by := 100 * q.Observations[k].Doubt
		q.Observations[k].Value += by
		after, err := adjust.Solve(q)
		require.NoError(t, err)
		moves := make([]float64, len(p.Start))
		for _, i := range s.Influence(k) {
			moves[i.Unknown] = i.Slope
		}
		for j := range moves {
			if !s.Determined(j) {
				require.Zero(t, moves[j])
				require.Empty(t, s.Gain(j))
				continue
			}
			require.InDelta(t, (after.X[j]-s.X[j])/s.Doubts[j], by*moves[j]/s.Doubts[j], 1e-6)
			gain, variance := 0.0, 0.0
			for _, g := range s.Gain(j) {
				if g.Unknown == k {
					gain = g.Slope
				}
				variance += math.Pow(g.Slope*p.Observations[g.Unknown].Doubt, 2)
			}
			require.InDelta(t, moves[j]*by/s.Doubts[j], gain*by/s.Doubts[j], 1e-6)
			near(t, 1, math.Sqrt(variance)/s.Doubts[j], 1e-7)
		}
		// A residual answers a change in its own reading by the redundancy, and
		// in another's by the correlation of the two.
		for i, o := range p.Observations {
			want := s.Correlation(k, i) * math.Sqrt(s.Redundancy[k]*s.Redundancy[i])
			if s.Redundancy[k] > 1e-6 && s.Redundancy[i] > 1e-6 {
				require.InDelta(t, want, -(after.Residuals[i]-s.Residuals[i])/o.Doubt*(q.Observations[k].Doubt/by), 1e-6)
			}
		}
	})
}

// Slopes by forward differentiation against differences.
func TestSlopes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := []float64{rapid.Float64Range(0.5, 1.4).Draw(t, "x"), rapid.Float64Range(0.5, 1.4).Draw(t, "y")}
		f := func(x []float64) adjust.Term {
			a, b := adjust.At(x, 0), adjust.At(x, 1)
			return a.Sin().Times(b.Cos()).Plus(a.Over(b).Sqrt()).Minus(a.Tan().Scaled(0.3)).
				Plus(a.Atan2(b)).Plus(b.Scaled(-2).Exp()).Plus(adjust.Constant(4))
		}
		got := f(x)
		require.Len(t, got.Slopes, 2)
		for j, p := range got.Slopes {
			require.Equal(t, j, p.Unknown)
			const h = 1e-5
			up, down := slices.Clone(x), slices.Clone(x)
			up[j] += h
			down[j] -= h
			near(t, (f(up).Value-f(down).Value)/(2*h), p.Slope, 1e-7)
		}
		require.Empty(t, adjust.At(x, 0).Minus(adjust.At(x, 0)).Slopes)
		require.Empty(t, adjust.At(x, 0).Scaled(0).Slopes)
	})
}

package adjust_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// distance is the distance of points a and b, whose x and y are unknowns 2a, 2a+1.
func distance(a, b int) func(x []float64) adjust.Term {
	return func(x []float64) adjust.Term {
		dx := adjust.At(x, 2*a).Minus(adjust.At(x, 2*b))
		dy := adjust.At(x, 2*a+1).Minus(adjust.At(x, 2*b+1))
		return dx.Times(dx).Plus(dy.Times(dy)).Sqrt()
	}
}

// freeNet measures all distances among n points: nothing says where they stand or
// how they are turned, three free directions (E. M. Mikhail, G. Gracie, Analysis and
// Adjustment of Survey Measurements, 1981: datum defect of a plane trilateration).
func freeNet(n int, doubt float64) adjust.Problem {
	r := rand.New(rand.NewPCG(3, 4))
	truth := make([]float64, 2*n)
	for j := range truth {
		truth[j] = 1000 * r.Float64()
	}
	p := adjust.Problem{}
	for _, v := range truth {
		p.Start = append(p.Start, v+20*r.NormFloat64())
	}
	for a := range n {
		for b := range a {
			m := distance(a, b)
			p.Observations = append(p.Observations, adjust.Observation{
				Value: m(truth).Value + doubt*r.NormFloat64(), Doubt: doubt, Model: m,
			})
		}
	}
	return p
}

func TestFreeNet(t *testing.T) {
	const n = 9
	p := freeNet(n, 0.5)
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, 2*n-3, s.Rank)
	require.Len(t, s.Free, 3)
	require.Equal(t, n*(n-1)/2-(2*n-3), s.Freedom)
	for j := range p.Start {
		require.False(t, s.Determined(j))
		require.True(t, math.IsInf(s.DoubtOf(adjust.At(s.X, j)), 1))
		require.True(t, math.IsInf(s.Covariance(j, j), 1))
	}
	verdict, _, _ := s.GlobalTest(0.001)
	require.Equal(t, adjust.Agrees, verdict)
	for a := range n {
		for b := range a { // a distance is known better than it was read
			d := s.DoubtOf(distance(a, b)(s.X))
			require.Greater(t, d, 0.0)
			require.Less(t, d, 0.5)
		}
	}
	for _, way := range s.Free { // along each, no distance changes
		for _, o := range p.Observations {
			change := 0.0
			for _, g := range o.Model(s.X).Slopes {
				for _, q := range way {
					if q.Unknown == g.Unknown {
						change += g.Slope * q.Slope
					}
				}
			}
			require.InDelta(t, 0, change, 1e-9)
		}
	}
	// Held at three coordinates, the doubts of distances stay what they were.
	held := p
	for _, j := range []int{0, 1, 3} {
		held.Observations = append(held.Observations[:len(held.Observations):len(held.Observations)],
			linear(s.X[j], 1e-4, on(j, 1)))
	}
	h, err := adjust.Solve(held)
	require.NoError(t, err)
	require.Equal(t, 2*n, h.Rank)
	require.InDelta(t, s.WeightedSquares, h.WeightedSquares, 1e-6)
	for a := range n {
		for b := range a {
			require.InDelta(t, 1, h.DoubtOf(distance(a, b)(h.X))/s.DoubtOf(distance(a, b)(s.X)), 1e-6)
		}
	}
}

// Directions are short: a middle line known but not the width is one pair of edges.
func TestFreeDirectionsAreShort(t *testing.T) {
	p := adjust.Problem{Start: make([]float64, 6)}
	for k := range 3 { // unknowns: edges of three timbers; known: their middles
		p.Observations = append(p.Observations, linear(10*float64(k), 1, on(2*k, 0.5), on(2*k+1, 0.5)))
	}
	p.Observations = append(p.Observations, // as wide as the next
		linear(0, 1, on(0, 1), on(1, -1), on(2, -1), on(3, 1)))
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, []adjust.Direction{
		{on(0, 1), on(1, -1), on(2, 1), on(3, -1)},
		{on(4, 1), on(5, -1)},
	}, s.Free)
	width := adjust.At(s.X, 0).Minus(adjust.At(s.X, 1))
	require.True(t, math.IsInf(s.DoubtOf(width), 1))
	require.InDelta(t, 1, s.DoubtOf(width.Minus(adjust.At(s.X, 2)).Plus(adjust.At(s.X, 3))), 1e-12)
	require.InDelta(t, 1, s.DoubtOf(adjust.At(s.X, 4).Plus(adjust.At(s.X, 5)).Scaled(0.5)), 1e-12)
}

func TestNothingAtAll(t *testing.T) {
	s, err := adjust.Solve(adjust.Problem{})
	require.NoError(t, err)
	require.Empty(t, s.X)
	s, err = adjust.Solve(adjust.Problem{Start: []float64{4, 5}})
	require.NoError(t, err)
	require.Equal(t, []float64{4, 5}, s.X)
	require.Equal(t, []adjust.Direction{{on(0, 1)}, {on(1, 1)}}, s.Free)
	require.True(t, math.IsNaN(s.PosteriorVariance()))
	verdict, _, _ := s.GlobalTest(0.05)
	require.Equal(t, adjust.Untested, verdict)
}

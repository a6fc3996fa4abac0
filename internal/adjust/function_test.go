package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// JCGM 100:2008 (GUM), 5.1.2 and 5.2.2: the variance of a function is the sum of
// the squares that its inputs bring, common errors among them.
func TestMakeupIsWhole(t *testing.T) {
	lin := adjust.Linear
	p := adjust.Problem{
		Start: []float64{0, 0, 0},
		Observations: []adjust.Observation{
			{Value: 5, Doubt: 0.3, Model: lin(0, adjust.Partial{Unknown: 0, Slope: 1})},
			{Value: 7, Doubt: 0.4, Model: lin(0, adjust.Partial{Unknown: 1, Slope: 1}), Sources: []adjust.Source{{Common: 0, Slope: 1}}},
			{Value: 6.8, Doubt: 0.2, Model: lin(0, adjust.Partial{Unknown: 1, Slope: 1}), Sources: []adjust.Source{{Common: 0, Slope: 1}}},
		},
		Common: []float64{0.5},
	}
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	g := adjust.At(s.X, 0).Plus(adjust.At(s.X, 1).Scaled(2))
	own, common := s.Makeup(g)
	require.Len(t, own, 3)
	require.Len(t, common, 1)
	sum := 0.0
	for _, v := range append(own, common...) {
		sum += v * v
	}
	require.InDelta(t, s.DoubtOf(g), math.Sqrt(sum), 1e-12)
	require.InDelta(t, 0.3, math.Abs(own[0]), 1e-12)
	require.InDelta(t, 2*0.5, math.Abs(common[0]), 1e-12)

	c := s.Covariances(g)
	require.InDelta(t, s.Covariance(0, 0)+2*s.Covariance(0, 1), c[0], 1e-12)
	require.InDelta(t, s.Covariance(0, 1)+2*s.Covariance(1, 1), c[1], 1e-12)

	free := adjust.At(s.X, 2)
	own, common = s.Makeup(free)
	require.Nil(t, own)
	require.Nil(t, common)
	require.Nil(t, s.Covariances(free))
	require.Nil(t, s.Covariances(adjust.At(s.X, 7)))
}

package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

func on(unknown int, slope float64) adjust.Partial {
	return adjust.Partial{Unknown: unknown, Slope: slope}
}

func linear(value, doubt float64, slopes ...adjust.Partial) adjust.Observation {
	return adjust.Observation{Value: value, Doubt: doubt, Model: adjust.Linear(0, slopes...)}
}

// A chain hangs on a datum a hundred million times looser than its links, each read
// twice. By hand: link k's end has the variance datum^2 + k link^2 / 2; the datum has
// redundancy 0, every link reading 1/2; a span of links is as good as its links.
func TestWeightsFarApart(t *testing.T) {
	const links, datum, link = 40, 1e5, 1e-3
	p := adjust.Problem{Start: make([]float64, links+1)}
	p.Observations = append(p.Observations, linear(7, datum, on(0, 1)))
	for k := range links {
		p.Observations = append(p.Observations,
			linear(3, link, on(k+1, 1), on(k, -1)),
			linear(3.001, link, on(k, -1), on(k+1, 1)))
	}
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, links+1, s.Rank)
	require.Equal(t, links, s.Freedom)
	for k, x := range s.X {
		require.InDelta(t, 7+3.0005*float64(k), x, 1e-9)
		require.InDelta(t, 1, s.Doubts[k]/math.Sqrt(datum*datum+float64(k)*link*link/2), 1e-12)
	}
	require.InDelta(t, 0, s.Redundancy[0], 1e-9)
	for i := range s.Residuals[1:] {
		require.InDelta(t, 0.5, s.Redundancy[i+1], 1e-9)
		require.InDelta(t, 0.0005, math.Abs(s.Residuals[i+1]), 1e-9)
		require.InDelta(t, math.Sqrt(0.5), math.Abs(s.Standardised[i+1]), 1e-6)
	}
	span := adjust.At(s.X, 30).Minus(adjust.At(s.X, 10))
	require.InDelta(t, 1, s.DoubtOf(span)/(link*math.Sqrt(20.0/2)), 1e-6)
}

// Units: an unknown in nanometres beside one in light years. By hand: the same as
// with plain units.
func TestUnitsFarApart(t *testing.T) {
	for _, unit := range []float64{1, 1e-150, 1e9, 1e150} {
		p := adjust.Problem{Start: []float64{0, 0}, Observations: []adjust.Observation{
			linear(2, 1, on(0, unit)),
			linear(4, 1, on(0, unit)),
			linear(10, 2, on(0, unit), on(1, 1)),
		}}
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		require.InDelta(t, 3, s.X[0]*unit, 1e-12)
		require.InDelta(t, 7, s.X[1], 1e-12)
		require.InDelta(t, math.Sqrt(0.5), s.Doubts[0]*unit, 1e-12)
		require.InDelta(t, math.Sqrt(4.5), s.Doubts[1], 1e-12)
		require.InDelta(t, -0.5, s.Covariance(0, 1)*unit, 1e-12)
	}
}

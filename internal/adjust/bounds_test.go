package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/adjust"
)

// The oracle tries every choice of edges; the fit in windows is the one whose cost,
// that of readings and of what lies outside the windows, is least.
func TestWindowsAgreeWithEveryChoice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "unknowns")
		p := adjust.Problem{Start: make([]float64, n)}
		small := rapid.Float64Range(-3, 3)
		for j := range n { // every unknown is read, so that there is one answer
			p.Observations = append(p.Observations, linear(small.Draw(t, "value"), 1, on(j, 1)))
		}
		var bounds []adjust.Bound
		for range rapid.IntRange(1, 4).Draw(t, "windows") {
			var slopes []adjust.Partial
			for j := range n {
				slopes = append(slopes, on(j, small.Draw(t, "slope")))
			}
			low := small.Draw(t, "low")
			bounds = append(bounds, adjust.Bound{
				Low: low, High: low + rapid.SampledFrom([]float64{0, 0.5, 2, math.Inf(1)}).Draw(t, "wide"),
				Doubt: rapid.SampledFrom([]float64{0.01, 0.1, 1}).Draw(t, "doubt"), Model: adjust.Linear(0, slopes...),
			})
		}
		cost := func(x []float64) float64 {
			sum := 0.0
			for _, o := range p.Observations {
				sum += math.Pow((o.Model(x).Value-o.Value)/o.Doubt, 2)
			}
			for _, b := range bounds {
				v := b.Model(x).Value
				sum += math.Pow(math.Max(0, math.Max(b.Low-v, v-b.High))/b.Doubt, 2)
			}
			return sum
		}
		best := math.Inf(1)
		for choice := range int(math.Pow(3, float64(len(bounds)))) {
			q := p
			q.Observations = q.Observations[:n:n]
			for _, b := range bounds {
				if edge := []float64{math.Inf(1), b.Low, b.High}[choice%3]; !math.IsInf(edge, 1) {
					q.Observations = append(q.Observations, adjust.Observation{Value: edge, Doubt: b.Doubt, Model: b.Model})
				}
				choice /= 3
			}
			s, err := adjust.Solve(q)
			require.NoError(t, err)
			best = math.Min(best, cost(s.X))
		}
		s, sides, err := adjust.SolveBounded(p, bounds)
		require.NoError(t, err)
		near(t, best, cost(s.X), 1e-7)
		near(t, best, s.WeightedSquares, 1e-7)
		for i, b := range bounds {
			v := b.Model(s.X).Value
			switch sides[i] {
			case adjust.Inside:
				require.GreaterOrEqual(t, v, b.Low-1e-8)
				require.LessOrEqual(t, v, b.High+1e-8)
			case adjust.AtLow:
				if b.Low < b.High {
					require.LessOrEqual(t, v, b.Low+1e-8)
				}
			case adjust.AtHigh:
				require.GreaterOrEqual(t, v, b.High-1e-8)
			}
		}
	})
}

// A window alone leaves its unknown free inside, and brings a start from outside to
// its edge.
func TestWindowAlone(t *testing.T) {
	window := []adjust.Bound{{Low: 2, High: 3, Doubt: 0.01, Model: adjust.Linear(0, on(0, 1))}}
	s, sides, err := adjust.SolveBounded(adjust.Problem{Start: []float64{2.5}}, window)
	require.NoError(t, err)
	require.Equal(t, []adjust.Side{adjust.Inside}, sides)
	require.Equal(t, 2.5, s.X[0])
	require.False(t, s.Determined(0))
	s, sides, err = adjust.SolveBounded(adjust.Problem{Start: []float64{7}}, window)
	require.NoError(t, err)
	require.Equal(t, []adjust.Side{adjust.AtHigh}, sides)
	require.InDelta(t, 3, s.X[0], 1e-12)
}

func TestWindowFaults(t *testing.T) {
	m := adjust.Linear(0, on(0, 1))
	for fault, b := range map[adjust.Fault]adjust.Bound{
		adjust.EdgesCrossed:      {Low: 3, High: 2, Doubt: 1, Model: m},
		adjust.NotFinite:         {Low: math.NaN(), High: 2, Doubt: 1, Model: m},
		adjust.DoubtNotAboveZero: {Low: 1, High: 2, Model: m},
		adjust.NoModel:           {Low: 1, High: 2, Doubt: 1},
	} {
		_, _, err := adjust.SolveBounded(adjust.Problem{Start: []float64{0}}, []adjust.Bound{b})
		var input *adjust.InputError
		require.ErrorAs(t, err, &input)
		require.Equal(t, fault, input.Fault)
		require.Equal(t, adjust.Window, input.Place)
	}
}

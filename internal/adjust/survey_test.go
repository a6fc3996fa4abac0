package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// ghilani is the levelling net of Example 12.1, A fixed; the unknowns are B, C, D.
func ghilani(t *testing.T) adjust.Problem {
	p := adjust.Problem{Start: []float64{440, 440, 440}}
	point := map[string]int{"B": 0, "C": 1, "D": 2}
	for _, r := range table(t, "ghilani_12_1.csv") {
		fixed := 0.0
		var slopes []adjust.Partial
		for end, sign := range []float64{-1, 1} {
			if u, free := point[r[end]]; free {
				slopes = append(slopes, on(u, sign))
			} else {
				fixed += sign * 437.596
			}
		}
		p.Observations = append(p.Observations, adjust.Observation{
			Value: number(t, r[2]), Doubt: number(t, r[3]), Model: adjust.Linear(fixed, slopes...),
		})
	}
	return p
}

// Ghilani and Wolf, Adjustment Computations, 4th ed., Example 12.1: heights; v'Wv
// there is from rounded residuals. Unrounded figures: solved apart, from the same data.
func TestGhilani(t *testing.T) {
	s, err := adjust.Solve(ghilani(t))
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{448.1087, 453.4685, 444.9436}, s.X, 0.00005)
	require.Equal(t, 3, s.Freedom)
	require.InDelta(t, 1.26976, s.WeightedSquares, 0.003)
	require.InDelta(t, 1.272123, s.WeightedSquares, 5e-7)
	require.InDelta(t, 0.651184, math.Sqrt(s.PosteriorVariance()), 5e-7)
	require.InDeltaSlice(t, []float64{0.003525, 0.004048, 0.002704}, s.Doubts, 5e-7)
	require.InDeltaSlice(t, []float64{0.00371, -0.00024, -0.00186, 0.00039, 0.00189, -0.00853}, s.Residuals, 5e-6)
	require.InDeltaSlice(t, []float64{0.6549, 0.3294, 0.5092, 0.1877, 0.4326, 0.8862}, s.Redundancy, 5e-5)
	require.InDeltaSlice(t, []float64{0.764, -0.106, -0.522, 0.304, 0.720, -0.755}, s.Standardised, 5e-4)
	verdict, low, high := s.GlobalTest(0.05)
	require.Equal(t, adjust.Agrees, verdict)
	require.InDelta(t, 0.216, low, 0.0005) // chi-square tables, 3 degrees of freedom
	require.InDelta(t, 9.348, high, 0.0005)
}

// The same net with 40 mm added to the line B-C: two lines look bad, and the right one
// is named. Figures solved apart, from the same data.
func TestGhilaniBlunder(t *testing.T) {
	p := ghilani(t)
	p.Observations[1].Value += 0.040
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.InDelta(t, 35.4367, s.WeightedSquares, 5e-5)
	require.InDeltaSlice(t, []float64{-0.977, -5.846, -5.399, -0.439, 4.300, 0.871}, s.Standardised, 5e-4)
	verdict, _, _ := s.GlobalTest(0.05)
	require.Equal(t, adjust.TooScattered, verdict)

	found, rest, err := adjust.Snoop(p, 0.05)
	require.NoError(t, err)
	require.Len(t, found, 1)
	require.Equal(t, 1, found[0].Observation)
	require.InDelta(t, -5.846, found[0].Standardised, 5e-4)
	require.InDelta(t, 0.040, found[0].Error, 0.004)
	t.Logf("alike %v, correlation with C-D %.3f", found[0].Alike, s.Correlation(1, 2))
	verdict, _, _ = rest.GlobalTest(0.05)
	require.Equal(t, adjust.Agrees, verdict)
	require.InDelta(t, -0.040, rest.Residuals[1], 0.004)

	_, weights, err := adjust.Robust(p)
	require.NoError(t, err)
	for i, w := range weights {
		if i == 1 {
			require.Less(t, w, 0.01)
		} else {
			require.Greater(t, w, 0.5)
		}
	}
}

// JCGM 100:2008 (GUM), H.3: a calibration line b = y1 + y2 (t - 20) with an unknown
// variance; with a common error of 0.005, u(y1) is 0.00576893138 in the documentation of
// an open uncertainty library that works the same example.
func TestThermometer(t *testing.T) {
	temperature, correction := points(t, "gum_h3.csv")
	line := func(doubt float64, shared ...float64) adjust.Problem {
		p := adjust.Problem{Start: []float64{0, 0}, Common: shared}
		for i := range temperature {
			o := linear(correction[i], doubt, on(0, 1), on(1, temperature[i]-20))
			for c := range shared {
				o.Sources = append(o.Sources, adjust.Source{Common: c, Slope: 1})
			}
			p.Observations = append(p.Observations, o)
		}
		return p
	}
	s, err := adjust.Solve(line(1))
	require.NoError(t, err)
	scale := math.Sqrt(s.PosteriorVariance())
	require.InDelta(t, 0.0035, scale, 0.00005)
	require.InDelta(t, -0.1712, s.X[0], 0.00005)
	require.InDelta(t, 0.00218, s.X[1], 0.000005)
	require.InDelta(t, 0.0029, scale*s.Doubts[0], 0.00005)
	require.InDelta(t, 0.00067, scale*s.Doubts[1], 0.000005)
	require.InDelta(t, -0.930, s.Covariance(0, 1)/(s.Doubts[0]*s.Doubts[1]), 0.0005)
	require.InDelta(t, 0.000110096583109, s.WeightedSquares, 1e-15)
	at30 := adjust.At(s.X, 0).Plus(adjust.At(s.X, 1).Scaled(10))
	require.InDelta(t, -0.1494, at30.Value, 0.00005)
	require.InDelta(t, 0.0041, scale*s.DoubtOf(at30), 0.00005)

	common, err := adjust.Solve(line(scale, 0.005))
	require.NoError(t, err)
	require.InDelta(t, 0.00576893138, common.Doubts[0], 5e-12)
	require.InDelta(t, scale*s.Doubts[1], common.Doubts[1], 1e-14)
	require.InDelta(t, s.X[0], common.X[0], 1e-12)
}

// Four points of a circle: linear (Kasa) and geometric fits, solved apart from the same
// data; no published answer.
func TestCircle(t *testing.T) {
	xs, ys := points(t, "circle4.csv")
	kasa := adjust.Problem{Start: make([]float64, 3)} // 2 a x + 2 b y + c = x2 + y2
	circle := adjust.Problem{Start: []float64{5, 5, 5}}
	for i, x := range xs {
		y := ys[i]
		kasa.Observations = append(kasa.Observations, linear(x*x+y*y, 1, on(0, 2*x), on(1, 2*y), on(2, 1)))
		circle.Observations = append(circle.Observations, adjust.Observation{Doubt: 1, Model: func(v []float64) adjust.Term {
			dx, dy := adjust.Constant(x).Minus(adjust.At(v, 0)), adjust.Constant(y).Minus(adjust.At(v, 1))
			return dx.Times(dx).Plus(dy.Times(dy)).Sqrt().Minus(adjust.At(v, 2))
		}})
	}
	s, err := adjust.Solve(kasa)
	require.NoError(t, err)
	require.InDelta(t, 6.081443, s.X[0], 5e-7)
	require.InDelta(t, 3.634645, s.X[1], 5e-7)
	require.InDelta(t, 6.699184, math.Sqrt(s.X[2]+s.X[0]*s.X[0]+s.X[1]*s.X[1]), 5e-7)
	s, err = adjust.Solve(circle)
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{6.081131, 3.629951, 6.698732}, s.X, 5e-7)
	require.InDelta(t, 0.0772005, s.WeightedSquares, 5e-8)
}

// J. Mahun, Least Squares Lite (open access), a level net in feet, unweighted and
// weighted by setups. The bench marks' heights are inferred from printed averages, so
// the published figures bind only to +-0.002.
func TestMahun(t *testing.T) {
	bench := map[byte]float64{'A': 806.52, 'B': 818.32, 'C': 820.12, 'D': 824.04}
	lines := []struct {
		line   string
		rise   float64
		setups float64
	}{
		{"AQ", 8.91, 3},
		{"BQ", -2.92, 2},
		{"CQ", -4.67, 1},
		{"DQ", -8.66, 3},
		{"AR", -3.56, 3},
		{"CR", -17.12, 4},
		{"DR", -21.10, 2},
		{"QR", -12.47, 3},
	}
	net := func(weight func(setups float64) float64) *adjust.Solution {
		p := adjust.Problem{Start: []float64{800, 800}}
		for _, l := range lines {
			to := on(int(l.line[1]-'Q'), 1)
			o := linear(l.rise, 1/math.Sqrt(weight(l.setups)), to, on(0, -1))
			if b, known := bench[l.line[0]]; known {
				o = linear(l.rise+b, 1/math.Sqrt(weight(l.setups)), to)
			}
			p.Observations = append(p.Observations, o)
		}
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		return s
	}
	plain := net(func(float64) float64 { return 1 })
	require.InDeltaSlice(t, []float64{815.418, 802.962}, plain.X, 0.002)
	require.InDelta(t, 0.028, math.Sqrt(plain.PosteriorVariance()), 0.002)
	weighted := net(func(setups float64) float64 { return 12 / setups })
	require.InDeltaSlice(t, []float64{815.424, 802.958}, weighted.X, 0.002)
	s0 := math.Sqrt(weighted.PosteriorVariance())
	require.InDelta(t, 0.067, s0, 0.002)
	require.InDeltaSlice(t, []float64{0.012, 0.016}, []float64{s0 * weighted.Doubts[0], s0 * weighted.Doubts[1]}, 0.002)
}

// Chi-square tables, two-sided 5 % (from memory), through a net of n readings of one
// unknown, and Baarda's 4.13 for a level of 0.1 % and a power of 80 %.
func TestTables(t *testing.T) {
	for freedom, want := range map[int][2]float64{
		1: {0.00098, 5.02}, 2: {0.0506, 7.38}, 3: {0.216, 9.35}, 4: {0.484, 11.14},
		5: {0.831, 12.83}, 6: {1.24, 14.45}, 9: {2.70, 19.02},
	} {
		p := adjust.Problem{Start: []float64{0}}
		for range freedom + 1 {
			p.Observations = append(p.Observations, linear(1, 2, on(0, 1)))
		}
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		verdict, low, high := s.GlobalTest(0.05)
		require.Equal(t, adjust.TooQuiet, verdict)
		require.InDelta(t, want[0], low, 0.005*math.Max(1, want[0]))
		require.InDelta(t, want[1], high, 0.006)
		r := float64(freedom) / float64(freedom+1)
		require.InDelta(t, 4.13*2/math.Sqrt(r), s.LeastNoticed(0, 0.001, 0.80), 0.01)
	}
}

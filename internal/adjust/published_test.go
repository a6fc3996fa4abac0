package adjust_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// table reads the rows under the heading of a file in testdata.
func table(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", name))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// points reads two columns of numbers.
func points(t *testing.T, name string) (a, b []float64) {
	t.Helper()
	for _, r := range table(t, name) {
		a, b = append(a, number(t, r[0])), append(b, number(t, r[1]))
	}
	return a, b
}

// digits is how many digits two numbers share: -log10 of their relative difference.
func digits(got, want float64) float64 {
	if got == want {
		return 16
	}
	return -math.Log10(math.Abs(got-want) / math.Abs(want))
}

// curve is a problem with observations y of model(x), each of doubt 1.
func curve(start, x, y []float64, model func(b []float64, x float64) adjust.Term) adjust.Problem {
	p := adjust.Problem{Start: start}
	for i := range x {
		p.Observations = append(p.Observations, adjust.Observation{
			Value: y[i], Doubt: 1, Model: func(b []float64) adjust.Term { return model(b, x[i]) },
		})
	}
	return p
}

// agree compares values, their standard deviations scaled by the residual one, and
// the sum of squares, and tells the least number of digits that agree.
func agree(t *testing.T, s *adjust.Solution, values, deviations []float64, squares, least float64) {
	t.Helper()
	v, u := 16.0, 16.0
	scale := math.Sqrt(s.PosteriorVariance())
	for i := range values {
		v = math.Min(v, digits(s.X[i], values[i]))
		u = math.Min(u, digits(s.Doubts[i]*scale, deviations[i]))
	}
	q := digits(s.WeightedSquares, squares)
	t.Logf("digits that agree: values %.1f, deviations %.1f, squares %.1f; %d steps", v, u, q, s.Iterations)
	require.Greater(t, v, least, "values %v", s.X)
	require.Greater(t, u, least)
	require.Greater(t, q, least)
}

// NIST StRD "Norris", certified values.
func TestNorris(t *testing.T) {
	y, x := points(t, "norris.csv")
	p := adjust.Problem{Start: []float64{0, 0}}
	for i := range x {
		p.Observations = append(p.Observations, adjust.Observation{
			Value: y[i], Doubt: 1, Model: adjust.Linear(0, adjust.Partial{Unknown: 0, Slope: 1}, adjust.Partial{Unknown: 1, Slope: x[i]}),
		})
	}
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, 34, s.Freedom)
	require.InDelta(t, 0.884796396144373, math.Sqrt(s.PosteriorVariance()), 1e-13)
	agree(t, s,
		[]float64{-0.262323073774029, 1.00211681802045},
		[]float64{0.232818234301152, 0.429796848199937e-03}, 26.6173985294224, 12)
}

// NIST StRD "Longley", certified values; data and values from memory, which so many
// digits in agreement bear out.
func TestLongley(t *testing.T) {
	p := adjust.Problem{Start: make([]float64, 7)}
	for _, r := range table(t, "longley.csv") {
		slopes := []adjust.Partial{{Unknown: 0, Slope: 1}}
		for k, x := range r[1:] {
			slopes = append(slopes, adjust.Partial{Unknown: k + 1, Slope: number(t, x)})
		}
		p.Observations = append(p.Observations, adjust.Observation{
			Value: number(t, r[0]), Doubt: 1, Model: adjust.Linear(0, slopes...),
		})
	}
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, 9, s.Freedom)
	agree(t, s,
		[]float64{
			-3482258.63459582, 15.0618722713733, -0.358191792925910e-01, -2.02022980381683,
			-1.03322686717359, -0.511041056535807e-01, 1829.15146461355,
		},
		[]float64{
			890420.383607373, 84.9149257747669, 0.334910077722432e-01, 0.488399681651699,
			0.214274163161675, 0.226073200069370, 455.478499142212,
		}, 836424.055505915, 11)
}

// NIST StRD "Wampler1" and "Wampler2": a fifth power through exact points, certified
// coefficients 1, and 1, 0.1, 0.01 ...; from memory.
func TestWampler(t *testing.T) {
	for _, ratio := range []float64{1, 0.1} {
		p := adjust.Problem{Start: make([]float64, 6)}
		for x := range 21 {
			var slopes []adjust.Partial
			y := 0.0
			for k := range 6 {
				slopes = append(slopes, adjust.Partial{Unknown: k, Slope: math.Pow(float64(x), float64(k))})
				y += math.Pow(ratio*float64(x), float64(k))
			}
			p.Observations = append(p.Observations, adjust.Observation{Value: y, Doubt: 1, Model: adjust.Linear(0, slopes...)})
		}
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		least := 16.0
		for k, b := range s.X {
			least = math.Min(least, digits(b, math.Pow(ratio, float64(k))))
		}
		t.Logf("digits that agree: %.1f", least)
		require.Greater(t, least, 9.0)
	}
}

// NIST StRD "Misra1a", certified to 11 digits, from both published starts.
func TestMisra1a(t *testing.T) {
	y, x := points(t, "misra1a.csv")
	for _, start := range [][]float64{{500, 0.0001}, {250, 0.0005}} {
		s, err := adjust.Solve(curve(start, x, y, func(b []float64, x float64) adjust.Term {
			decay := adjust.At(b, 1).Scaled(-x).Exp()
			return adjust.At(b, 0).Times(adjust.Constant(1).Minus(decay))
		}))
		require.NoError(t, err)
		require.Equal(t, 12, s.Freedom)
		agree(t, s,
			[]float64{2.3894212918e+02, 5.5015643181e-04},
			[]float64{2.7070075241e+00, 7.2668688436e-06}, 1.2455138894e-01, 10)
	}
}

// NIST StRD "Thurber", certified to 11 digits, from both published starts.
func TestThurber(t *testing.T) {
	y, x := points(t, "thurber.csv")
	for _, start := range [][]float64{
		{1000, 1000, 400, 40, 0.7, 0.3, 0.03},
		{1300, 1500, 500, 75, 1, 0.4, 0.05},
	} {
		s, err := adjust.Solve(curve(start, x, y, func(b []float64, x float64) adjust.Term {
			cubic := func(c adjust.Term, first int) adjust.Term {
				for k := range 3 {
					c = c.Plus(adjust.At(b, first+k).Scaled(math.Pow(x, float64(k+1))))
				}
				return c
			}
			return cubic(adjust.At(b, 0), 1).Over(cubic(adjust.Constant(1), 4))
		}))
		require.NoError(t, err)
		require.Equal(t, 30, s.Freedom)
		agree(t, s,
			[]float64{
				1.2881396800e+03, 1.4910792535e+03, 5.8323836877e+02, 7.5416644291e+01,
				9.6629502864e-01, 3.9797285797e-01, 4.9727297349e-02,
			},
			[]float64{
				4.6647963344e+00, 3.9571156086e+01, 2.8698696102e+01, 5.5675370270e+00,
				3.1333340687e-02, 1.4984928198e-02, 6.5842344623e-03,
			}, 5.6427082397e+03, 10)
	}
}

// K. Madsen, H. B. Nielsen, O. Tingleff, Methods for Non-linear Least Squares Problems,
// 2004 (from memory): x + 1 and c x^2 + x - 1 are least together at x = 0 for c < 1, and
// plain Gauss-Newton steps lead away from there for c < -1.
func TestStronglyBent(t *testing.T) {
	for _, c := range []float64{0.5, -0.5, -1.5, -3, -10, -30} {
		s, err := adjust.Solve(adjust.Problem{Start: []float64{0.3}, Observations: []adjust.Observation{
			{Doubt: 1, Model: adjust.Linear(1, on(0, 1))},
			{Doubt: 1, Model: func(v []float64) adjust.Term {
				x := adjust.At(v, 0)
				return x.Times(x).Scaled(c).Plus(x).Minus(adjust.Constant(1))
			}},
		}})
		require.NoError(t, err, "c %g", c)
		require.InDelta(t, 0, s.X[0], 1e-8)
		require.InDelta(t, 2, s.WeightedSquares, 1e-12)
	}
}

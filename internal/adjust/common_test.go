package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"lostwood/internal/adjust"
)

// The oracle is generalised least squares with the full covariance of the readings,
// own errors and common ones, in dense matrices (Aitken 1935).
func TestCommonErrorsAgreeWithFullCovariance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, c := rapid.IntRange(1, 4).Draw(t, "unknowns"), rapid.IntRange(1, 3).Draw(t, "common")
		m := n + rapid.IntRange(1, 8).Draw(t, "more")
		p := adjust.Problem{Start: make([]float64, n)}
		for range c {
			p.Common = append(p.Common, rapid.Float64Range(0.1, 3).Draw(t, "common doubt"))
		}
		a, y := mat.NewDense(m, n, nil), mat.NewVecDense(m, nil)
		cov := mat.NewSymDense(m, nil)
		shares := mat.NewDense(m, c, nil)
		for i := range m {
			var slopes []adjust.Partial
			for j := range n {
				k := rapid.Float64Range(-2, 2).Draw(t, "slope")
				if i%n == j {
					k += 5 * float64(1+i/n) // keeps the oracle well conditioned
				}
				a.Set(i, j, k)
				slopes = append(slopes, on(j, k))
			}
			y.SetVec(i, rapid.Float64Range(-10, 10).Draw(t, "value"))
			doubt := rapid.Float64Range(0.2, 2).Draw(t, "doubt")
			o := linear(y.AtVec(i), doubt, slopes...)
			for k := range c {
				if s := rapid.SampledFrom([]float64{0, 1, -1, 0.5}).Draw(t, "share"); s != 0 {
					o.Sources = append(o.Sources, adjust.Source{Common: k, Slope: s})
					shares.Set(i, k, s)
				}
			}
			cov.SetSym(i, i, doubt*doubt)
			p.Observations = append(p.Observations, o)
		}
		for i := range m {
			for l := i; l < m; l++ {
				v := cov.At(i, l)
				for k, u := range p.Common {
					v += shares.At(i, k) * shares.At(l, k) * u * u
				}
				cov.SetSym(i, l, v)
			}
		}
		s, err := adjust.Solve(p)
		require.NoError(t, err)

		var w, aw, normal, inv, right, x, v, wv mat.Dense
		require.NoError(t, w.Inverse(cov))
		aw.Mul(a.T(), &w)
		normal.Mul(&aw, a)
		require.NoError(t, inv.Inverse(&normal))
		right.Mul(&aw, y)
		x.Mul(&inv, &right)
		v.Mul(a, &x)
		v.Sub(&v, y)
		wv.Mul(&w, &v)
		var squares mat.Dense
		squares.Mul(v.T(), &wv)
		for j := range n {
			near(t, x.At(j, 0), s.X[j], 1e-8)
			near(t, math.Sqrt(inv.At(j, j)), s.Doubts[j], 1e-8)
		}
		near(t, squares.At(0, 0), s.WeightedSquares, 1e-8)
		require.Equal(t, m-n, s.Freedom)
		var qv, wq, wqw, ax mat.Dense // a blunder's test: (W v)_i over its standard deviation
		ax.Mul(a, &inv)
		qv.Mul(&ax, a.T())
		qv.Sub(cov, &qv)
		wq.Mul(&w, &qv)
		wqw.Mul(&wq, &w)
		for i := range m {
			if s.Redundancy[i] > 1e-6 {
				near(t, wv.At(i, 0)/math.Sqrt(wqw.At(i, i)), s.Standardised[i], 1e-6)
			}
		}
		sum := 0.0
		for _, r := range append(append([]float64{}, s.Redundancy...), s.CommonRedundancy...) {
			sum += r
		}
		near(t, float64(s.Freedom), sum, 1e-9)
	})
}

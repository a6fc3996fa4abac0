package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"lostwood/internal/adjust"
)

// dense is a linear network written out in full, for the oracle.
type dense struct {
	a      *mat.Dense // slopes over doubts
	miss   []float64  // at the start, over doubts
	doubts []float64
	p      adjust.Problem
}

// drawNet makes a random linear network; about half have a rank defect, made by rows
// that see only differences, sums or too few of the unknowns.
func drawNet(t *rapid.T) dense {
	n := rapid.IntRange(1, 14).Draw(t, "unknowns")
	m := rapid.IntRange(1, 28).Draw(t, "observations")
	slope := rapid.OneOf(
		rapid.SampledFrom([]float64{-1, 1, -1, 1, 2, -2}),
		rapid.Float64Range(-3, 3).Filter(func(v float64) bool { return math.Abs(v) > 0.05 }),
	)
	d := dense{a: mat.NewDense(max(m, n), n, nil), miss: make([]float64, max(m, n))}
	for range n {
		d.p.Start = append(d.p.Start, rapid.Float64Range(-100, 100).Draw(t, "start"))
	}
	for i := range m {
		doubt := rapid.SampledFrom([]float64{0.1, 0.5, 1, 3, 10}).Draw(t, "doubt")
		value := rapid.Float64Range(-100, 100).Draw(t, "value")
		fall := value
		var slopes []adjust.Partial
		for _, j := range rapid.SliceOfNDistinct(rapid.IntRange(0, n-1), 1, min(n, 4), rapid.ID[int]).Draw(t, "of") {
			k := slope.Draw(t, "slope")
			slopes = append(slopes, adjust.Partial{Unknown: j, Slope: k})
			d.a.Set(i, j, k/doubt)
			fall -= k * d.p.Start[j]
		}
		d.miss[i] = fall / doubt
		d.doubts = append(d.doubts, doubt)
		d.p.Observations = append(d.p.Observations, adjust.Observation{
			Value: value, Doubt: doubt, Model: adjust.Linear(0, slopes...),
		})
	}
	return d
}

// oracle is the answer by dense singular values.
type oracle struct {
	rank       int
	step       []float64 // least-norm correction to the start
	variance   []float64
	determined []bool
	redundancy []float64
	null       *mat.Dense // columns, or nil
}

func (d dense) answer(t require.TestingT) oracle {
	var svd mat.SVD
	require.True(t, svd.Factorize(d.a, mat.SVDThin))
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	values := svd.Values(nil)
	_, n := d.a.Dims()
	o := oracle{step: make([]float64, n), variance: make([]float64, n), determined: make([]bool, n)}
	for _, s := range values {
		if s > values[0]*1e-11 {
			o.rank++
		}
	}
	for j := range n {
		loose := 0.0
		for c := range n {
			if c >= o.rank {
				loose += v.At(j, c) * v.At(j, c)
				continue
			}
			q := mat.Dot(u.ColView(c), mat.NewVecDense(len(d.miss), d.miss)) / values[c]
			o.step[j] += q * v.At(j, c)
			o.variance[j] += v.At(j, c) * v.At(j, c) / (values[c] * values[c])
		}
		o.determined[j] = loose < 1e-12
	}
	for i := range d.doubts {
		h := 0.0
		for c := range o.rank {
			h += u.At(i, c) * u.At(i, c)
		}
		o.redundancy = append(o.redundancy, 1-h)
	}
	if o.rank < n {
		o.null = mat.DenseCopyOf(v.Slice(0, n, o.rank, n))
	}
	return o
}

// near compares with room for the oracle's own rounding.
func near(t require.TestingT, want, got, share float64, what ...any) {
	require.InDelta(t, want, got, share*math.Max(1, math.Abs(want)), what...)
}

// The oracle is gonum's dense singular value decomposition.
func TestSolveAgreesWithSingularValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawNet(t)
		o := d.answer(t)
		s, err := adjust.Solve(d.p)
		require.NoError(t, err)
		n := len(d.p.Start)
		require.Equal(t, o.rank, s.Rank)
		require.Equal(t, len(d.doubts)-o.rank, s.Freedom)
		require.Len(t, s.Free, n-o.rank)
		for j := range n {
			require.Equal(t, o.determined[j], s.Determined(j), "unknown %d", j)
			if !o.determined[j] {
				require.True(t, math.IsInf(s.Doubts[j], 1))
				continue
			}
			near(t, d.p.Start[j]+o.step[j], s.X[j], 1e-7)
			near(t, 1, s.Doubts[j]/math.Sqrt(o.variance[j]), 1e-6)
		}
		sum := 0.0
		for i, r := range o.redundancy {
			near(t, r, s.Redundancy[i], 1e-8)
			sum += s.Redundancy[i]
		}
		near(t, float64(s.Freedom), sum, 1e-9)
		checkSpan(t, s, o, d)
	})
}

// checkSpan holds every free direction against the observations and against the
// oracle's null space.
func checkSpan(t *rapid.T, s *adjust.Solution, o oracle, d dense) {
	n := len(d.p.Start)
	for _, way := range s.Free {
		z := mat.NewVecDense(n, nil)
		most := 0.0
		for k, p := range way {
			require.True(t, k == 0 || way[k-1].Unknown < p.Unknown)
			z.SetVec(p.Unknown, p.Slope)
			most = math.Max(most, math.Abs(p.Slope))
		}
		require.InDelta(t, 1, most, 1e-12)
		var seen, share, rest mat.VecDense
		seen.MulVec(d.a, z)
		require.InDelta(t, 0, mat.Norm(&seen, math.Inf(1))/mat.Norm(d.a, math.Inf(1)), 1e-9)
		share.MulVec(o.null.T(), z)
		rest.MulVec(o.null, &share)
		rest.SubVec(z, &rest)
		require.InDelta(t, 0, mat.Norm(&rest, 2), 1e-6)
	}
	if len(s.Free) == 0 {
		return
	}
	span := mat.NewDense(len(s.Free), n, nil)
	for k, way := range s.Free {
		for _, p := range way {
			span.Set(k, p.Unknown, p.Slope)
		}
	}
	var svd mat.SVD
	require.True(t, svd.Factorize(span, mat.SVDNone))
	values := svd.Values(nil)
	require.Greater(t, values[len(s.Free)-1], 1e-3*values[0], "directions hang on each other")
}

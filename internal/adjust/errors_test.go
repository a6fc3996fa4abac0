package adjust_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/adjust"
)

func TestFaultsAreNamed(t *testing.T) {
	nan := math.NaN()
	one := []float64{1}
	for name, c := range map[string]struct {
		p     adjust.Problem
		place adjust.Place
		fault adjust.Fault
		says  string
	}{
		"start":     {adjust.Problem{Start: []float64{nan}}, adjust.Start, adjust.NotFinite, "starting value 0: NaN is not a finite number"},
		"value":     {adjust.Problem{Start: one, Observations: []adjust.Observation{linear(nan, 1, on(0, 1))}}, adjust.Reading, adjust.NotFinite, ""},
		"no doubt":  {adjust.Problem{Start: one, Observations: []adjust.Observation{linear(1, 0, on(0, 1))}}, adjust.Reading, adjust.DoubtNotAboveZero, "observation 0: 0 is no doubt; a finite number above zero would do"},
		"all doubt": {adjust.Problem{Start: one, Observations: []adjust.Observation{linear(1, math.Inf(1), on(0, 1))}}, adjust.Reading, adjust.DoubtNotAboveZero, ""},
		"no model":  {adjust.Problem{Start: one, Observations: []adjust.Observation{{Doubt: 1}}}, adjust.Reading, adjust.NoModel, "observation 0 has no model"},
		"unknown":   {adjust.Problem{Start: one, Observations: []adjust.Observation{linear(1, 1, on(1, 1))}}, adjust.Reading, adjust.NoSuchUnknown, "observation 0: 1 is no unknown of the problem"},
		"below": {adjust.Problem{Start: one, Observations: []adjust.Observation{{
			Doubt: 1, Model: func(x []float64) adjust.Term { return adjust.At(x, -1) },
		}}}, adjust.Reading, adjust.NoSuchUnknown, ""},
		"slope": {adjust.Problem{Start: []float64{0}, Observations: []adjust.Observation{{
			Doubt: 1, Model: func(x []float64) adjust.Term { return adjust.At(x, 0).Sqrt() },
		}}}, adjust.Reading, adjust.NotFinite, ""},
		"disorder": {adjust.Problem{Start: []float64{0, 0}, Observations: []adjust.Observation{{
			Doubt: 1, Model: func([]float64) adjust.Term { return adjust.Term{Slopes: []adjust.Partial{on(1, 1), on(0, 1)}} },
		}}}, adjust.Reading, adjust.SlopesDisordered, ""},
		"common": {adjust.Problem{Start: one, Common: []float64{-1}}, adjust.CommonError, adjust.DoubtNotAboveZero, ""},
		"source": {adjust.Problem{Start: one, Observations: []adjust.Observation{{
			Doubt: 1, Model: adjust.Linear(0, on(0, 1)), Sources: []adjust.Source{{Common: 0, Slope: 1}},
		}}}, adjust.Reading, adjust.NoSuchCommon, ""},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := adjust.Solve(c.p)
			var input *adjust.InputError
			require.ErrorAs(t, err, &input)
			require.Equal(t, c.place, input.Place)
			require.Equal(t, c.fault, input.Fault)
			if c.says != "" {
				require.EqualError(t, err, c.says)
			}
		})
	}
}

// A model whose slope points the wrong way leads nowhere, and that is told.
func TestNoConvergenceIsTold(t *testing.T) {
	_, err := adjust.Solve(adjust.Problem{Start: []float64{5}, Observations: []adjust.Observation{
		{Value: 2, Doubt: 1, Model: func(x []float64) adjust.Term {
			return adjust.Term{Value: x[0], Slopes: []adjust.Partial{on(0, -1)}}
		}},
	}})
	var lost *adjust.ConvergenceError
	require.ErrorAs(t, err, &lost)
	require.Zero(t, lost.Unknown)
	require.Contains(t, err.Error(), "starting values nearer the truth would do")
}

// Whatever numbers come in, a solution or an error comes out.
func TestNeverPanics(t *testing.T) {
	odd := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{
		0, 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64, 1e-200, 1e200,
	}))
	rapid.Check(t, func(t *rapid.T) {
		p := adjust.Problem{Start: rapid.SliceOfN(odd, 0, 4).Draw(t, "start"), Common: rapid.SliceOfN(odd, 0, 2).Draw(t, "common")}
		for range rapid.IntRange(0, 6).Draw(t, "observations") {
			var slopes []adjust.Partial
			for range rapid.IntRange(0, 3).Draw(t, "slopes") {
				slopes = append(slopes, on(rapid.IntRange(-1, 4).Draw(t, "unknown"), odd.Draw(t, "slope")))
			}
			o := linear(odd.Draw(t, "value"), math.Abs(odd.Draw(t, "doubt")), slopes...)
			if rapid.Bool().Draw(t, "bent") {
				straight := o.Model
				o.Model = func(x []float64) adjust.Term { return straight(x).Sin() }
			}
			if rapid.Bool().Draw(t, "shares") {
				o.Sources = []adjust.Source{{Common: rapid.IntRange(-1, 2).Draw(t, "source"), Slope: odd.Draw(t, "share")}}
			}
			p.Observations = append(p.Observations, o)
		}
		s, err := adjust.Solve(p)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		for j := range s.X {
			require.False(t, math.IsNaN(s.X[j]) || math.IsNaN(s.Doubts[j]))
			s.Gain(j)
			s.DoubtOf(adjust.At(s.X, j))
			s.Covariance(0, j)
		}
		for i := range s.Residuals {
			s.Influence(i)
			s.LeastNoticed(i, 0.01, 0.8)
			s.Correlation(0, i)
		}
		s.GlobalTest(0.05)
		_, _, _ = adjust.Snoop(p, 0.05)
		_, _, _ = adjust.Robust(p)
	})
}

// A step to where a model has no value, here a root below zero, is shortened.
func TestStepsStayWhereModelsHaveValues(t *testing.T) {
	s, err := adjust.Solve(adjust.Problem{Start: []float64{9}, Observations: []adjust.Observation{
		{Value: 0.1, Doubt: 1, Model: func(x []float64) adjust.Term { return adjust.At(x, 0).Sqrt() }},
	}})
	require.NoError(t, err)
	require.InDelta(t, 0.01, s.X[0], 1e-12)
	require.InDelta(t, 0.2, s.Doubts[0], 1e-9) // the slope there is 5
}

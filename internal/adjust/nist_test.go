package adjust_test

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
)

// raised is base to the power, of a base above nothing.
func raised(base, power adjust.Term) adjust.Term {
	log := base.Scaled(1 / base.Value)
	log.Value = math.Log(base.Value)
	return log.Times(power).Exp()
}

// A certified set of NIST StRD: from memory, all of it, which so many digits in
// agreement between data and certified answers bear out.
type certified struct {
	name               string
	x, y               []float64
	model              func(b []float64, x float64) adjust.Term
	starts             [][]float64
	values, deviations []float64
	squares            float64
}

func steps(from, by float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = from + by*float64(i)
	}
	return out
}

func nonlinearSets(t *testing.T) []certified {
	y, x := points(t, "misra1a.csv") // Misra1b, c and d have the data of Misra1a
	at, one := adjust.At, adjust.Constant(1)
	return []certified{
		{
			"Misra1b", x, y,
			func(b []float64, x float64) adjust.Term {
				u := one.Plus(at(b, 1).Scaled(x / 2))
				return at(b, 0).Times(one.Minus(one.Over(u.Times(u))))
			},
			[][]float64{{500, 0.0001}, {300, 0.0002}},
			[]float64{3.3799746163e+02, 3.9039091287e-04},
			[]float64{3.1643950207e+00, 4.2547321834e-06},
			7.5464681533e-02,
		},
		{
			"Misra1c", x, y,
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Times(one.Minus(one.Over(one.Plus(at(b, 1).Scaled(2 * x)).Sqrt())))
			},
			[][]float64{{500, 0.0001}, {600, 0.0002}},
			[]float64{6.3642725809e+02, 2.0813627256e-04},
			[]float64{4.6638326572e+00, 1.7728423155e-06},
			4.0966836971e-02,
		},
		{
			"Misra1d", x, y,
			func(b []float64, x float64) adjust.Term {
				u := at(b, 1).Scaled(x)
				return at(b, 0).Times(u).Over(one.Plus(u))
			},
			[][]float64{{500, 0.0001}, {450, 0.0003}},
			[]float64{4.3736970754e+02, 3.0227324449e-04},
			[]float64{3.6489174345e+00, 2.9334354479e-06},
			5.6419295283e-02,
		},
		{
			"DanWood",
			[]float64{1.309, 1.471, 1.490, 1.565, 1.611, 1.680},
			[]float64{2.138, 3.421, 3.597, 4.340, 4.882, 5.660},
			func(b []float64, x float64) adjust.Term { return at(b, 0).Times(raised(adjust.Constant(x), at(b, 1))) },
			[][]float64{{1, 5}, {0.7, 4}},
			[]float64{7.6886226176e-01, 3.8604055871e+00},
			[]float64{1.8281973860e-02, 5.1726610913e-02},
			4.3173084083e-03,
		},
		{
			"BoxBOD",
			[]float64{1, 2, 3, 5, 7, 10},
			[]float64{109, 149, 149, 191, 213, 224},
			func(b []float64, x float64) adjust.Term { return at(b, 0).Times(one.Minus(at(b, 1).Scaled(-x).Exp())) },
			[][]float64{{1, 1}, {100, 0.75}},
			[]float64{2.1380940889e+02, 5.4723748542e-01},
			[]float64{1.2354515176e+01, 1.0455993237e-01},
			1.1680088766e+03,
		},
		{
			"Rat42",
			[]float64{9, 14, 21, 28, 42, 57, 63, 70, 79},
			[]float64{8.930, 10.800, 18.590, 22.330, 39.350, 56.110, 61.730, 64.620, 67.080},
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Over(one.Plus(at(b, 1).Minus(at(b, 2).Scaled(x)).Exp()))
			},
			[][]float64{{100, 1, 0.1}, {75, 2.5, 0.07}},
			[]float64{7.2462237576e+01, 2.6180768402e+00, 6.7359200066e-02},
			[]float64{1.7340283401e+00, 8.8295217536e-02, 3.4465663377e-03},
			8.0565229338e+00,
		},
		{
			"Rat43",
			steps(1, 1, 15),
			[]float64{16.08, 33.83, 65.80, 97.20, 191.55, 326.20, 386.87, 520.53, 590.03, 651.92, 724.93, 699.56, 689.96, 637.56, 717.41},
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Over(raised(one.Plus(at(b, 1).Minus(at(b, 2).Scaled(x)).Exp()), one.Over(at(b, 3))))
			},
			[][]float64{{100, 10, 1, 1}, {700, 5, 0.75, 1.3}},
			[]float64{6.9964151270e+02, 5.2771253025e+00, 7.5962938329e-01, 1.2792483859e+00},
			[]float64{1.6302297817e+01, 2.0828735829e+00, 1.9566123451e-01, 6.8761936385e-01},
			8.7864049080e+03,
		},
		{
			"Eckerle4",
			append(append(steps(400, 5, 7), steps(435, 1.5, 20)...), steps(465, 5, 8)...),
			[]float64{
				0.0001575, 0.0001699, 0.0002350, 0.0003102, 0.0004917, 0.0008710, 0.0017418, 0.0046400, 0.0065895, 0.0097302,
				0.0149002, 0.0237310, 0.0401683, 0.0712559, 0.1264458, 0.2073413, 0.2902366, 0.3445623, 0.3698049, 0.3668534,
				0.3106727, 0.2078154, 0.1164354, 0.0616764, 0.0337200, 0.0194023, 0.0117831, 0.0074357, 0.0022732, 0.0008800,
				0.0004579, 0.0002345, 0.0001586, 0.0001143, 0.0000710,
			},
			func(b []float64, x float64) adjust.Term {
				u := adjust.Constant(x).Minus(at(b, 2)).Over(at(b, 1))
				return at(b, 0).Over(at(b, 1)).Times(u.Times(u).Scaled(-0.5).Exp())
			},
			[][]float64{{1, 10, 500}, {1.5, 5, 450}},
			[]float64{1.5543827178e+00, 4.0888321754e+00, 4.5154121844e+02},
			[]float64{1.5408051163e-02, 4.6803020753e-02, 4.6800518816e-02},
			1.4635887487e-03,
		},
		{
			"MGH09",
			[]float64{4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625},
			[]float64{0.1957, 0.1947, 0.1735, 0.1600, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246},
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Times(adjust.Constant(x * x).Plus(at(b, 1).Scaled(x))).
					Over(adjust.Constant(x * x).Plus(at(b, 2).Scaled(x)).Plus(at(b, 3)))
			},
			[][]float64{{25, 39, 41.5, 39}, {0.25, 0.39, 0.415, 0.39}},
			[]float64{1.9280693458e-01, 1.9128232873e-01, 1.2305650693e-01, 1.3606233068e-01},
			[]float64{1.1435312227e-02, 1.9633220911e-01, 8.0842031232e-02, 9.0025542308e-02},
			3.0750560385e-04,
		},
		{
			"MGH17",
			steps(0, 10, 33),
			[]float64{
				0.844, 0.908, 0.932, 0.936, 0.925, 0.908, 0.881, 0.850, 0.818, 0.784, 0.751, 0.718, 0.685, 0.658, 0.628, 0.603, 0.580,
				0.558, 0.538, 0.522, 0.506, 0.490, 0.478, 0.467, 0.457, 0.448, 0.438, 0.431, 0.424, 0.420, 0.414, 0.411, 0.406,
			},
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Plus(at(b, 1).Times(at(b, 3).Scaled(-x).Exp())).Plus(at(b, 2).Times(at(b, 4).Scaled(-x).Exp()))
			},
			[][]float64{{50, 150, -100, 1, 2}, {0.5, 1.5, -1, 0.01, 0.02}},
			[]float64{3.7541005211e-01, 1.9358469127e+00, -1.4646871366e+00, 1.2867534640e-02, 2.2122699662e-02},
			[]float64{2.0723153551e-03, 2.2031669222e-01, 2.2175707739e-01, 4.4861358114e-04, 8.9471996575e-04},
			5.4648946975e-05,
		},
		{
			"MGH10",
			steps(50, 5, 16),
			[]float64{34780, 28610, 23650, 19630, 16370, 13720, 11540, 9744, 8261, 7030, 6005, 5147, 4427, 3820, 3307, 2872},
			func(b []float64, x float64) adjust.Term {
				return at(b, 0).Times(at(b, 1).Over(adjust.Constant(x).Plus(at(b, 2))).Exp())
			},
			[][]float64{{2, 400000, 25000}, {0.02, 4000, 250}},
			[]float64{5.6096364710e-03, 6.1813463463e+03, 3.4522363462e+02},
			[]float64{1.5687892471e-04, 2.3309021107e+01, 7.8486103508e-01},
			8.7945855171e+01,
		},
	}
}

func TestNonlinearSets(t *testing.T) {
	for _, c := range nonlinearSets(t) {
		require.Len(t, c.y, len(c.x), c.name)
		for k, start := range c.starts {
			t.Run(c.name+[]string{" far", " near"}[k], func(t *testing.T) {
				s, err := adjust.Solve(curve(start, c.x, c.y, c.model))
				require.NoError(t, err)
				agree(t, s, c.values, c.deviations, c.squares, 9)
			})
		}
	}
}

// NIST StRD "Wampler3", "Wampler4" and "Wampler5": a fifth power with more and more
// noise, certified coefficients all 1; from memory.
func TestNoisyWampler(t *testing.T) {
	deviations := []float64{2152.32624678170, 2363.55173469681, 779.343524331583, 101.475507550350, 5.64566512170752, 0.112324854679312}
	for k, y := range [][]float64{
		{760, -2042, 2111, -1684, 3888, 1858, 11379, 17560, 39287, 64382, 113159, 175108, 273291, 400186, 581243, 811568, 1121004, 1506550, 2002767, 2611612, 3369180},
		{75901, -204794, 204863, -204436, 253665, -200894, 214131, -185192, 221249, -138370, 315911, -27644, 455253, 197434, 783995, 608816, 1370781, 1303798, 2205519, 2408860, 3444321},
		{7590001, -20479994, 20480063, -20479636, 25231365, -20476094, 20489331, -20460392, 18417449, -20413570, 20591111, -20302844, 18651453, -20077766, 21059195, -19666384, 26348481, -18971402, 22480719, -17866340, 10958421},
	} {
		p := adjust.Problem{Start: make([]float64, 6)}
		for i, v := range y {
			var slopes []adjust.Partial
			for k := range 6 {
				slopes = append(slopes, adjust.Partial{Unknown: k, Slope: math.Pow(float64(i), float64(k))})
			}
			p.Observations = append(p.Observations, adjust.Observation{Value: v, Doubt: 1, Model: adjust.Linear(0, slopes...)})
		}
		s, err := adjust.Solve(p)
		require.NoError(t, err)
		larger := math.Pow(100, float64(k))
		var sd []float64
		for _, d := range deviations {
			sd = append(sd, d*larger)
		}
		// each step of noise is a hundred times that before: as many digits go
		agree(t, s, []float64{1, 1, 1, 1, 1, 1}, sd, 83554268*larger*larger, 8)
	}
}

// A tenth power over -9 to -3, as crooked as NIST StRD "Filip" (whose data are too many
// to recall), against the normal equations solved in whole fractions: plain double
// precision is lost here altogether by normal equations, and keeps 7 or 8 digits by
// orthogonal ones.
func TestTenthPower(t *testing.T) {
	const unknowns, n = 11, 82
	p := adjust.Problem{Start: make([]float64, unknowns)}
	exact := make([][]*big.Rat, unknowns) // normal equations, right-hand side last
	for j := range exact {
		for range unknowns + 1 {
			exact[j] = append(exact[j], new(big.Rat))
		}
	}
	for i := range n {
		x := -9 + 6*float64(i)/(n-1)
		y := 0.8 + 0.1*math.Sin(2*x)
		row := make([]*big.Rat, 0, unknowns+1)
		var slopes []adjust.Partial
		for k := range unknowns {
			v := math.Pow(x, float64(k))
			slopes, row = append(slopes, adjust.Partial{Unknown: k, Slope: v}), append(row, new(big.Rat).SetFloat64(v))
		}
		row = append(row, new(big.Rat).SetFloat64(y))
		for j := range exact {
			for k := range exact[j] {
				exact[j][k].Add(exact[j][k], new(big.Rat).Mul(row[j], row[k]))
			}
		}
		p.Observations = append(p.Observations, adjust.Observation{Value: y, Doubt: 1, Model: adjust.Linear(0, slopes...)})
	}
	s, err := adjust.Solve(p)
	require.NoError(t, err)
	require.Equal(t, unknowns, s.Rank)
	least := 16.0
	for j, want := range solvedExactly(exact) {
		least = math.Min(least, digits(s.X[j], want))
	}
	t.Logf("digits that agree: %.1f", least)
	require.Greater(t, least, 7.0)
}

// solvedExactly is elimination in whole fractions.
func solvedExactly(a [][]*big.Rat) []float64 {
	n := len(a)
	for k := range n {
		for i := range n {
			if i == k {
				continue
			}
			f := new(big.Rat).Quo(a[i][k], a[k][k])
			for j := k; j <= n; j++ {
				a[i][j].Sub(a[i][j], new(big.Rat).Mul(f, a[k][j]))
			}
		}
	}
	out := make([]float64, n)
	for k := range n {
		out[k], _ = new(big.Rat).Quo(a[k][n], a[k][k]).Float64()
	}
	return out
}

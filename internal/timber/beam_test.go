package timber_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Wood Handbook 2021 eq. 9-2, worked out by hand: 100 by 125 mm, 1 m, 5 kN at
// the middle, 14.9 GPa: 0.430 mm of bending and 0.129 mm of shear.
func TestDeflection(t *testing.T) {
	b := timber.Beam{Width: 100, Depth: 125, Span: 1000, Load: 5000, Loading: timber.CentreOnTwoEnds, Stiffness: 14900}
	bending, shear, err := b.Deflection()
	require.NoError(t, err)
	assert.InDelta(t, 0.430, float64(bending), 0.0005)
	assert.InDelta(t, 0.129, float64(shear), 0.0005)
}

// moments are the bending moment at x of a unit total load on a unit span, by
// statics, for each loading; m0 is the fixing moment of clamped ends.
var moments = map[timber.Loading]func(x float64) float64{
	timber.UniformOnTwoEnds:     func(x float64) float64 { return x * (1 - x) / 2 },
	timber.UniformBetweenClamps: func(x float64) float64 { return x*(1-x)/2 - 1./12 },
	timber.CentreOnTwoEnds:      func(x float64) float64 { return math.Min(x, 1-x) / 2 },
	timber.CentreBetweenClamps:  func(x float64) float64 { return math.Min(x, 1-x)/2 - 1./8 },
	timber.QuarterPointsMiddle:  func(x float64) float64 { return math.Min(math.Min(x, 1-x), 0.25) / 2 },
	timber.QuarterPointsLoad:    func(x float64) float64 { return math.Min(math.Min(x, 1-x), 0.25) / 2 },
	timber.UniformCantilever:    func(x float64) float64 { return x * x / 2 }, // x from the free end
	timber.EndLoadCantilever:    func(x float64) float64 { return x },
}

// T20: Wood Handbook 2021 table 9-1, kb of the eight cases, against the
// deflection integrated from the moments (unit load method). The case at the
// quarter points themselves, 1/96, is from memory.
func TestDeflectionFactors(t *testing.T) {
	printed := map[timber.Loading]float64{
		timber.UniformOnTwoEnds: 5. / 384, timber.UniformBetweenClamps: 1. / 384, timber.CentreOnTwoEnds: 1. / 48,
		timber.CentreBetweenClamps: 1. / 192, timber.QuarterPointsMiddle: 11. / 768, timber.QuarterPointsLoad: 1. / 96,
		timber.UniformCantilever: 1. / 8, timber.EndLoadCantilever: 1. / 3,
	}
	require.Len(t, printed, 8)
	for loading, kb := range printed {
		// Width 12 and depth 1 make the second moment of area 1.
		bending, _, err := timber.Beam{Width: 12, Depth: 1, Span: 1, Load: 1, Loading: loading, Stiffness: 1}.Deflection()
		require.NoError(t, err)
		assert.InDelta(t, kb, float64(bending), 1e-12)
		unit := func(x float64) float64 { return math.Min(x, 1-x) / 2 } // unit load at the middle
		switch loading {
		case timber.QuarterPointsLoad:
			unit = func(x float64) float64 { return math.Min(0.75*x, 0.25*(1-x)) }
		case timber.UniformCantilever, timber.EndLoadCantilever:
			unit = func(x float64) float64 { return x }
		}
		const n = 20000
		sum := 0.0
		for i := range n {
			x := (float64(i) + 0.5) / n
			sum += moments[loading](x) * unit(x) / n
		}
		assert.InDelta(t, sum, float64(bending), 1e-7, "loading %d", loading)
	}
}

// Shear factors of the same table.
func TestShearFactors(t *testing.T) {
	for loading, ks := range map[timber.Loading]float64{
		timber.UniformOnTwoEnds: 1. / 8, timber.UniformBetweenClamps: 1. / 8, timber.CentreOnTwoEnds: 1. / 4, timber.CentreBetweenClamps: 1. / 4,
		timber.QuarterPointsMiddle: 1. / 8, timber.UniformCantilever: 1. / 2, timber.EndLoadCantilever: 1,
	} {
		// Five sixths of 1.2 by 1 is 1; a stiffness of 16 makes the shear one 1.
		_, shear, err := timber.Beam{Width: 1.2, Depth: 1, Span: 1, Load: 1, Loading: loading, Stiffness: 16}.Deflection()
		require.NoError(t, err)
		assert.InDelta(t, ks, float64(shear), 1e-12)
	}
}

func TestDeflectionRefuses(t *testing.T) {
	good := timber.Beam{Width: 1, Depth: 1, Span: 1, Load: 1, Stiffness: 1}
	for _, change := range []func(*timber.Beam){
		func(b *timber.Beam) { b.Width = 0 },
		func(b *timber.Beam) { b.Depth = -1 },
		func(b *timber.Beam) { b.Span = quantity.Length(math.NaN()) },
		func(b *timber.Beam) { b.Load = -1 },
		func(b *timber.Beam) { b.Stiffness = 0 },
		func(b *timber.Beam) { b.Loading = 8 },
	} {
		b := good
		change(&b)
		_, _, err := b.Deflection()
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
	_, _, err := timber.Beam{}.Deflection()
	assert.EqualError(t, err, "beam width, mm: 0; it must be above 0")
}

// T18: Wood Handbook 2021 eq. 9-18, printed example: 10,000 lbf/in2 at 2 in
// deep, 28 in span, one load at the middle; 10 in deep, 216 in span, loads at
// the third points: 7,330. To a tenth of a percent.
func TestSizeEffect(t *testing.T) {
	const in = quantity.Inch
	got, err := timber.SizeEffect(10000, timber.Bent{Depth: 2 * in, Span: 28 * in}, timber.Bent{Depth: 10 * in, Span: 216 * in, Apart: 72 * in})
	require.NoError(t, err)
	assert.InEpsilon(t, 7330, float64(got), 0.001)
	for _, bad := range []timber.Bent{{}, {Depth: 1, Span: 1, Apart: 2}, {Depth: 1, Span: quantity.Length(math.Inf(1))}} {
		_, err := timber.SizeEffect(1, bad, timber.Bent{Depth: 1, Span: 1})
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
	_, err = timber.SizeEffect(-1, timber.Bent{Depth: 1, Span: 1}, timber.Bent{Depth: 1, Span: 1})
	require.Error(t, err)
}

// T19: National Design Specification tables 12.5.1, bolt of 6.35 mm: 7D 44.45,
// 3.5D 22.225, 4D 25.4, 1.5D 9.525 mm.
func TestBoltClearances(t *testing.T) {
	const d = quantity.Length(6.35)
	end, err := timber.BoltEnd(d, timber.Softwood, timber.TowardEnd)
	require.NoError(t, err)
	assert.InDelta(t, 44.45, float64(end.Full), 1e-9)
	assert.InDelta(t, 22.225, float64(end.Least), 1e-9)
	end, err = timber.BoltEnd(d, timber.Hardwood, timber.TowardEnd)
	require.NoError(t, err)
	assert.InDelta(t, 5*6.35, float64(end.Full), 1e-9)
	for _, pull := range []timber.Pull{timber.AwayFromEnd, timber.Across} {
		end, err = timber.BoltEnd(d, timber.Hardwood, pull)
		require.NoError(t, err)
		assert.InDelta(t, 25.4, float64(end.Full), 1e-9)
		assert.InDelta(t, 12.7, float64(end.Least), 1e-9)
	}
	row, err := timber.BoltRow(d)
	require.NoError(t, err)
	assert.InDelta(t, 25.4, float64(row.Full), 1e-9)
	assert.InDelta(t, 19.05, float64(row.Least), 1e-9)
	for _, c := range []struct {
		thick, between quantity.Length
		pull           timber.Pull
		edge           timber.Edge
		want           float64
	}{
		{38, 0, timber.TowardEnd, timber.UnloadedEdge, 9.525}, // l/D just under 6
		{39, 100, timber.TowardEnd, timber.UnloadedEdge, 50},  // over 6: half the distance between rows
		{39, 10, timber.TowardEnd, timber.UnloadedEdge, 9.525},
		{38, 100, timber.Across, timber.LoadedEdge, 25.4},
		{39, 100, timber.Across, timber.UnloadedEdge, 9.525},
	} {
		got, err := timber.BoltEdge(d, c.thick, c.between, c.pull, c.edge)
		require.NoError(t, err)
		assert.InDelta(t, c.want, float64(got.Full), 1e-9)
	}
	for thick, want := range map[quantity.Length]float64{d: 2.5, 2 * d: 2.5, 4 * d: 3.75, 6 * d: 5, 20 * d: 5} {
		got, err := timber.BoltRows(d, thick, timber.Across)
		require.NoError(t, err)
		assert.InDelta(t, want*6.35, float64(got.Full), 1e-9)
	}
	rows, err := timber.BoltRows(d, 50, timber.TowardEnd)
	require.NoError(t, err)
	assert.InDelta(t, 9.525, float64(rows.Full), 1e-9)
}

// Between the full and the least distance the bolt holds in proportion; under
// it nothing is permitted (National Design Specification 12.5.1).
func TestBoltShare(t *testing.T) {
	c := timber.Clearance{Full: 40, Least: 20}
	for actual, want := range map[quantity.Length]float64{50: 1, 40: 1, 30: 0.75, 20: 0.5, 19.9: 0} {
		assert.InDelta(t, want, c.Share(actual), 1e-12)
	}
	for _, err := range []error{
		second(timber.BoltEnd(0, timber.Hardwood, timber.Across)), second(timber.BoltRow(-1)),
		second(timber.BoltEdge(6, 0, 0, timber.Across, timber.LoadedEdge)), second(timber.BoltRows(6, -1, timber.Across)),
	} {
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
}

func second[T any](_ T, err error) error { return err }

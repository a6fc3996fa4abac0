package load

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/timber"
)

// A trial beam: 100 by 125 mm, 1 m, E 14.9 GPa, G a sixteenth of it.
func trial(at float64) (bend, shear float64) {
	return 14900 * 100 * math.Pow(125, 3) / 12, 14900. / 16 * 5 / 6 * 100 * 125
}

// settled bends a beam whose joints do not give way, and returns it with the
// force that each joint pushes up with.
func settled(t require.TestingT, joints []float64, loads ...patch) (*bent, []float64) {
	b, err := lay(1000, trial, joints, loads).reduce()
	require.NoError(t, err)
	got, err := b.settle(make([]float64, len(joints)))
	require.NoError(t, err)
	return got, b.push
}

func (t *bent) down1(at float64) float64 { return t.down[t.node(at)] }

// Wood Handbook 2021 table 9-1 and eq. 9-2, as timber.Beam has them with their
// own tests: deflections with shear, simple beams. The worked example, 5 kN
// in the middle: 4.80 MPa and 0.558 mm.
func TestSimpleBeams(t *testing.T) {
	for loading, loads := range map[timber.Loading][]patch{
		timber.UniformOnTwoEnds:    {{0, 1000, 5000}},
		timber.CentreOnTwoEnds:     {{500, 500, 5000}},
		timber.QuarterPointsMiddle: {{250, 250, 2500}, {750, 750, 2500}, {500, 500, 0}},
	} {
		got, push := settled(t, []float64{0, 1000}, loads...)
		bending, shear, err := timber.Beam{Width: 100, Depth: 125, Span: 1000, Load: 5000, Loading: loading, Stiffness: 14900}.Deflection()
		require.NoError(t, err)
		assert.InEpsilon(t, float64(bending+shear), got.down1(500), 1e-6, "loading %d", loading)
		assert.InDeltaSlice(t, []float64{2500, 2500}, push, 1e-6)
	}
	got, _ := settled(t, []float64{0, 1000}, patch{500, 500, 5000})
	force, moment := got.forces(500)
	assert.InDelta(t, 4.80, rectangle(100, 125).bending(moment), 0.005)
	assert.InDelta(t, 0.558, got.down1(500), 0.001)
	assert.InDelta(t, 2500, math.Abs(force), 1e-6)
}

// A cantilever is a beam held down at its end and borne a little way from it:
// over the bearing the moment is W times the overhang, by statics.
func TestOverhang(t *testing.T) {
	got, push := settled(t, []float64{0, 400}, patch{1000, 1000, 600})
	_, moment := got.forces(400)
	assert.InDelta(t, -600*600, moment, 1e-3)
	assert.InDeltaSlice(t, []float64{-900, 1500}, push, 1e-6)
	// The end goes down by W a^2 (l + a) / 3 EI and by shear (any handbook of
	// statics): W a (l + a) / (l G A') beyond a span l.
	bend, shear := trial(0)
	want := 600*600*600*1000/(3*bend)*1 + 600*600*1000/(400*shear)
	assert.InEpsilon(t, want*1, got.down1(1000), 1e-6)
}

// Two equal spans, evenly laden: 3/8, 10/8, 3/8 of one span's load, and w l^2 / 8
// over the middle; any table of continuous beams. They are for slender beams,
// which this one is made by a stiffness in shear without end.
func TestTwoSpans(t *testing.T) {
	slender := func(float64) (float64, float64) { b, _ := trial(0); return b, 1e15 }
	b, err := lay(1000, slender, []float64{0, 500, 1000}, []patch{{0, 1000, 8000}}).reduce()
	require.NoError(t, err)
	got, err := b.settle([]float64{0, 0, 0})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{3. / 8 * 4000, 10. / 8 * 4000, 3. / 8 * 4000}, b.push, 0.01)
	_, moment := got.forces(500)
	assert.InDelta(t, -8.*500*500/8, moment, 1)
	most := 0.0
	for _, x := range got.turning() {
		_, m := got.forces(x)
		most = max(most, m)
	}
	assert.InDelta(t, 9./128*8*500*500, most, 5) // 9/128 w l^2, at 3/8 of the span
	// Propped so, the spans sag w l^4 / 185 EI (w l^4 over 184.6).
	bend, _ := trial(0)
	sag := 0.0
	for _, d := range got.down {
		sag = max(sag, d)
	}
	assert.InEpsilon(t, 8*math.Pow(500, 4)/(184.6*bend), sag, 0.03)
}

// A sinking prop takes less: at 5 w l^4 / 384 EI of the whole span it takes nothing.
func TestSinkingProp(t *testing.T) {
	slender := func(float64) (float64, float64) { b, _ := trial(0); return b, 1e15 }
	b, err := lay(1000, slender, []float64{0, 500, 1000}, []patch{{0, 1000, 8000}}).reduce()
	require.NoError(t, err)
	bend, _ := trial(0)
	sunk := 5. / 384 * 8 * 1e12 / bend
	assert.InDelta(t, 0, b.push[1]-b.stiff.At(1, 1)*sunk, 0.05)
}

// Any loads on any bearings: the joints push up with all of it, about any
// place, and twice the load bends twice as far.
func TestBeamBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		joints := []float64{rapid.Float64Range(0, 300).Draw(t, "a"), rapid.Float64Range(400, 600).Draw(t, "b"), rapid.Float64Range(700, 1000).Draw(t, "c")}
		var loads, twice []patch
		all, moment := 0.0, 0.0
		for range rapid.IntRange(1, 4).Draw(t, "loads") {
			from := rapid.Float64Range(0, 1000).Draw(t, "from")
			to := rapid.Float64Range(from, 1000).Draw(t, "to")
			w := rapid.Float64Range(1, 1e4).Draw(t, "w")
			p := patch{from, to, w}
			loads, twice = append(loads, p), append(twice, patch{from, to, 2 * w})
			all += w
			moment += w * (from + to) / 2
		}
		got, push := settled(t, joints, loads...)
		up, turned := 0.0, 0.0
		for i, f := range push {
			up += f
			turned += f * got.at[got.joints[i]]
		}
		require.InEpsilon(t, all, up, 1e-6)
		require.InDelta(t, moment, turned, 1.5*all*same+1e-6*all*1000)
		more, _ := settled(t, joints, twice...)
		for i := range got.moment {
			require.InDelta(t, 2*got.moment[i], more.moment[i], 1e-6*all*1000)
			require.InDelta(t, 2*got.down[i], more.down[i], 1e-6+1e-6*math.Abs(got.down[i]))
		}
	})
}

func TestNothingHeld(t *testing.T) {
	_, err := lay(1000, trial, []float64{500}, nil).reduce()
	require.Error(t, err)
}

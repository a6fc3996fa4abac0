package makers_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/makers"
	"lostwood/internal/quantity"
)

// Right on a mark the wrapped normal density is Jacobi's theta function of the
// third kind; at nome exp(-pi) that is pi^(1/4)/Gamma(3/4) (from memory), where
// s = q/sqrt(2 pi).
func TestNearnessIsTheta(t *testing.T) {
	want := math.Pow(math.Pi, 0.25) / math.Gamma(0.75)
	q := quantity.Length(3.175)
	got := makers.Nearness(20*q, q, q/quantity.Length(math.Sqrt(2*math.Pi)))
	assert.InDelta(t, want, got, 1e-12)
}

// The two sums are one function where one takes over from the other, and the
// mean over a step is one.
func TestNearness(t *testing.T) {
	for _, r := range []quantity.Length{0, 0.1, 0.25, 0.4, 0.5} {
		assert.InDelta(t, makers.Nearness(7+r, 1, 0.3-1e-9), makers.Nearness(7+r, 1, 0.3+1e-9), 1e-6)
	}
	for _, s := range []quantity.Length{0.02, 0.1, 0.29, 0.31, 1, 10} {
		sum := 0.
		for k := range 1000 {
			sum += makers.Nearness(quantity.Length(k)/1000, 1, s) / 1000
		}
		assert.InDelta(t, 1, sum, 1e-9, s)
	}
}

// Read to sixteenths, eighths are one mark of two and sixteenths say nothing.
func TestBeyondRule(t *testing.T) {
	q, s := quantity.Inch/8, quantity.Length(0.7)
	on := makers.BeyondRule(5*q, q, s, q/2)
	off := makers.BeyondRule(5*q+q/2, q, s, q/2)
	assert.InDelta(t, 1, (on+off)/2, 1e-12)
	assert.Greater(t, on, 1.3)
	assert.InDelta(t, 1, makers.BeyondRule(5*q+0.1, q/2, s, q/2), 1e-12)
	assert.InDelta(t, makers.Nearness(123, 10, s), makers.BeyondRule(123, 10, s, q), 1e-12) // centimetres off an inch rule
}

// The worked example of the V test in the documentation of the library pingouin
// (function circ_vtest): five angles in radians about 1 give V = 2.486 and
// p = 0.05794648732225438. V sqrt(2/n) is Kendall's quantogram, to which the
// wrapped normal comes down where the doubt is wide (Kendall 1974, as above).
func TestVTestExample(t *testing.T) {
	const q = 3.175
	s := quantity.Length(q)
	rho := math.Exp(-2 * math.Pi * math.Pi)
	v := 0.
	angles := []float64{0.785, 1.570, 3.141, 0.839, 5.934}
	for _, a := range angles {
		size := quantity.Length(50*q + (a-1)*q/(2*math.Pi))
		v += (makers.Nearness(size, q, s) - 1) / (2 * rho)
	}
	assert.InDelta(t, 2.486, v, 0.0005)
	quantogram := v * math.Sqrt(2/float64(len(angles)))
	assert.InDelta(t, 0.05794648732225438, math.Erfc(quantogram/math.Sqrt2)/2, 1e-6)
}

// Feet in metres by the second source: Brockhaus' Kleines Konversations-Lexikon,
// 5th ed. (1911), vol. 1, p. 634.
func TestOldFeet(t *testing.T) {
	feet := map[string]float64{"Paris inch": 0.32484, "Rhenish inch": 0.31385, "Vienna inch": 0.31608}
	found := 0
	for _, u := range makers.Units() {
		if want, ok := feet[u.String()]; ok {
			assert.InDelta(t, want, 12*float64(u.One())/1000, 0.0001*want, u)
			found++
		}
		assert.NotEmpty(t, u.Source())
	}
	assert.Equal(t, len(feet), found)
}

// Timber of the US Army six-mule wagon, specification of 1858 to 1861, in inches
// (public domain; bolster, hounds, pole and tongue from memory): were it only
// known to a millimetre, the inch would show.
func armyWagon() []float64 {
	return []float64{
		46, 58, 10, 14.5, 10.25, 14.25, 2.5, 2.75, 4.75, 4, 53, 5, 3.5, 74, 3, 50, 116, 4.5, 105, 128, 2.25, 32, 42, 24, 120,
	}
}

func TestArmyWagon(t *testing.T) {
	r := seeded(1858)
	found, told, right := 0, 0, 0
	const runs = 100
	for range runs {
		var sizes []makers.Sized
		for _, in := range armyWagon() {
			sizes = append(sizes, sized("", quantity.Length(in)*quantity.Inch+quantity.Length(r.NormFloat64()), 1))
		}
		v := makers.Study(sizes, makers.Usual())
		if v.Claimed != makers.Claimed {
			continue
		}
		require.Equal(t, "English inch", v.Unit.String())
		found++
		for i, s := range v.Sizes {
			if s.Tell == makers.Likely {
				told++
				if math.Abs(s.Intended.Inches()-armyWagon()[i]) < 1e-9 {
					right++
				}
			}
		}
	}
	t.Logf("found in %d of %d; %d sizes told, %d right", found, runs, told, right)
	assert.GreaterOrEqual(t, found, 95)
	assert.Greater(t, float64(right), 0.9*float64(told))
}

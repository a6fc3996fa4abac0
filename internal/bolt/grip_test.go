package bolt_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

func measure(value, doubt quantity.Length) *bolt.Measure {
	return &bolt.Measure{Value: value, Doubt: doubt}
}

// Worked by hand from the published sizes: thread by ASME B18.5, nut by ASME
// B18.2.2 or by Sellers's rule, no washer, nut just covered. The lower limit is
// worked for a nut that stops at the last full thread; ours lets it on by 2 1/2
// threads of the coarser system.
func TestWindowsWorkedByHand(t *testing.T) {
	for _, c := range []struct {
		d, length, thread, least, modern, period string
		perInch                                  quantity.Length
	}{
		{"1/4", "2 1/2", "3/4", "1.750", "2.28125", "2.250", 20},
		{"3/8", "4", "1", "3.000", "3.671875", "3.625", 16},
		{"1/2", "8", "1 1/2", "6.500", "7.5625", "7.500", 12},
	} {
		r := bolt.Read{
			Diameter: inches(t, c.d), Length: measure(inches(t, c.length), 0), Thread: measure(inches(t, c.thread), 0),
		}
		least := inches(t, c.least) - 2.5*inch/c.perInch
		w := bolt.Grip(r)
		assert.Equal(t, bolt.Anywhere, w.Kind)
		near(t, least, w.Least)
		near(t, inches(t, c.modern), w.Most)
		near(t, (w.Least+w.Most)/2, w.Value)
		assert.InDelta(t, float64(w.Most-w.Least)/math.Sqrt(12), float64(w.Doubt), exact)

		rough, _ := bolt.Nut(r.Diameter, bolt.RoughNut)
		r.Nut = measure(rough.Thickness, 0)
		w = bolt.Grip(r)
		near(t, least, w.Least)
		near(t, inches(t, c.period), w.Most)
	}
}

// By subtraction: G = L - e - nut - washers, and doubts in quadrature (JCGM
// 100:2008, 5.1.2). 8 - 1/4 - 7/16 - .109 = 7.2035; .02 and .015 give .025.
func TestGripBySubtraction(t *testing.T) {
	r := bolt.Read{
		Diameter: inch / 2, Length: measure(8*inch, .02*inch), Proud: measure(inch/4, .015*inch),
		Nut: measure(7*inch/16, 0), Washer: measure(.109*inch, 0),
	}
	w := bolt.Grip(r)
	assert.Equal(t, bolt.OneReading, w.Kind)
	near(t, 7.2035*inch, w.Value)
	near(t, .025*inch, w.Doubt)
	near(t, (8-7./16-.109)*inch, w.Most)

	// The nut not read: between 7/16 and 1/2, so 15/32 with 1/16 over 2 sqrt 3,
	// .01804 in.
	r.Nut = nil
	w = bolt.Grip(r)
	near(t, (8-.25-15./32-.109)*inch, w.Value)
	assert.InDelta(t, math.Hypot(.025, .01804), w.Doubt.Inches(), 1e-5)
	assert.Contains(t, w.Basis, "between the modern and the old")
}

// The doubt of a nut that was not read covers every published nut of a wagon
// bolt, at every size.
func TestUnreadNutCoversTheTables(t *testing.T) {
	for _, d := range sizes {
		r := bolt.Read{Diameter: d, Length: measure(8*inch, 0), Proud: measure(0, 0)}
		w := bolt.Grip(r)
		for _, standard := range []bolt.NutStandard{bolt.SquareNut, bolt.RoughNut, bolt.WhitworthNut} {
			n, _ := bolt.Nut(d, standard)
			r.Nut = measure(n.Thickness, 0)
			// The ends of a rectangle lie sqrt 3 of its deviations from its middle.
			assert.LessOrEqual(t, math.Abs(float64(bolt.Grip(r).Value-w.Value)), math.Sqrt(3)*float64(w.Doubt)+exact)
		}
	}
}

func TestOddDiameterSaysSo(t *testing.T) {
	odd := bolt.Read{Diameter: 11 * inch / 32, Length: measure(4*inch, 0), Proud: measure(inch/8, 0)}
	w := bolt.Grip(odd)
	assert.Contains(t, w.Basis, "in no table")
	near(t, (4-1./8-15./16*11/32)*inch, w.Value)
	listed := odd
	listed.Diameter = 3 * inch / 8
	assert.Greater(t, float64(w.Doubt), 1.5*float64(bolt.Grip(listed).Doubt))

	odd.Proud = nil
	odd.Thread = measure(inch, 0)
	// The run-out is that of the next size up, 3/8-16; the thinnest nut 13/16 D.
	near(t, (3-2.5/16)*inch, bolt.Grip(odd).Least)
	near(t, (4-13./16*11/32)*inch, bolt.Grip(odd).Most)

	// Over every table, half the diameter.
	odd.Diameter, odd.Thread = 2*inch, measure(2*inch, 0)
	odd.Length = measure(12*inch, 0)
	near(t, 9*inch, bolt.Grip(odd).Least)

	nearest := bolt.Read{Diameter: 9.5, Length: measure(4*inch, 0)}
	assert.Contains(t, bolt.Grip(nearest).Basis, "taken as a 3/8 in bolt")
}

func TestThreadNotRead(t *testing.T) {
	r := bolt.Read{Diameter: inch / 2, Length: measure(8*inch, 0)}
	w := bolt.Grip(r)
	// Twice 1 1/2, and 2 1/2 threads of 12.
	near(t, (8-3-2.5/12)*inch, w.Least)
	assert.Contains(t, w.Basis, "thread not read")
	r.Thread = measure(1.5*inch, 0)
	assert.Less(t, float64(bolt.Grip(r).Doubt), float64(w.Doubt))

	// Threaded to the head: no grip is less than nothing.
	assert.Zero(t, bolt.Grip(bolt.Read{Diameter: inch / 2, Length: measure(inch, 0)}).Least)
}

// The middle is L - washers - (T + run-out + nut)/2: thread and nut count by half
// in its doubt. 1/10 of each of four readings of an inch is, in quadrature,
// .1 sqrt(1 + 1 + 1/4 + 1/4), besides the window of 4.5625 - 3.2916... over
// 2 sqrt 3.
func TestDoubtOfAWindow(t *testing.T) {
	w := bolt.Grip(bolt.Read{
		Diameter: inch / 2, Length: measure(5*inch, inch/10), Thread: measure(1.5*inch, inch/10),
		Nut: measure(7*inch/16, inch/10), Washer: measure(0, inch/10),
	})
	width := 4.5625 - (5 - 1.5 - 2.5/12)
	assert.InDelta(t, math.Sqrt(width*width/12+.01*2.5), w.Doubt.Inches(), 1e-9)
}

// Readings may miss each other by a little and pass [bolt.Check]; what the iron
// allows then still holds the reading, and never runs backwards.
func TestLimitsHoldReadingsThatMiss(t *testing.T) {
	r := bolt.Read{
		Diameter: inch / 2, Length: measure(4*inch, 0), Thread: measure(inch, 0),
		Nut: measure(inch/2, 0), Proud: measure(.75*inch, 0),
	}
	w := bolt.Grip(r)
	near(t, 2.75*inch, w.Value) // under 4 - 1 - 2.5/12
	near(t, w.Value, w.Least)

	r.Proud, r.Thread = nil, measure(inch/4, 0)
	w = bolt.Grip(r)
	near(t, 3.5*inch, w.Most) // under 4 - 1/4 - 2.5/12
	near(t, w.Most, w.Least)

	// A long nut was on a thread at least as long as itself.
	r = bolt.Read{Diameter: inch / 4, Length: measure(8*inch, 0), Nut: measure(3*inch, 0)}
	w = bolt.Grip(r)
	near(t, 5*inch, w.Most)
	near(t, (5-2.5/20)*inch, w.Least)
}

func TestBasisTellsOfWashers(t *testing.T) {
	r := bolt.Read{Diameter: inch / 2, Length: measure(8*inch, 0), Nut: measure(inch/2, 0)}
	assert.Contains(t, bolt.Grip(r).Basis, "no washer read")
	assert.Contains(t, bolt.Grip(r).Basis, "nut as read")
	r.Washer = measure(.109*inch, 0)
	assert.Contains(t, bolt.Grip(r).Basis, "washers as read")
}

// draw makes a bolt as it was, and the readings of it without error.
func draw(t *rapid.T) (grip quantity.Length, r bolt.Read) {
	length := func(name string, least, most float64) quantity.Length {
		return quantity.Length(rapid.Float64Range(least, most).Draw(t, name)) * inch
	}
	r.Diameter = rapid.SampledFrom(sizes).Draw(t, "diameter")
	standard := rapid.SampledFrom([]bolt.NutStandard{bolt.SquareNut, bolt.RoughNut, bolt.WhitworthNut}).Draw(t, "standard")
	n, _ := bolt.Nut(r.Diameter, standard)
	grip = length("grip", .5, 20)
	proud, washers := length("proud", 0, .5), length("washers", 0, .2)
	r.Length = measure(grip+washers+n.Thickness+proud, 0)
	r.Washer = measure(washers, 0)
	switch rapid.IntRange(0, 2).Draw(t, "read") {
	case 0:
		r.Nut = measure(n.Thickness, 0)
		r.Proud = measure(proud, 0)
	case 1:
		r.Nut = measure(n.Thickness, 0)
	}
	r.Thread = measure(n.Thickness+proud+min(grip, length("spare", 0, .5)), 0)
	return grip, r
}

// The grip that there was is what is read, or lies in its window; and the window
// has the doubt of any place in it being as likely.
func TestGripHoldsTheTruth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grip, r := draw(t)
		require.NoError(t, bolt.Check(r))
		w := bolt.Grip(r)
		require.LessOrEqual(t, float64(w.Least), float64(grip)+exact)
		require.GreaterOrEqual(t, float64(w.Most), float64(grip)-exact)
		require.LessOrEqual(t, float64(w.Least), float64(w.Value)+exact)
		require.GreaterOrEqual(t, float64(w.Most), float64(w.Value)-exact)
		if w.Kind == bolt.OneReading {
			require.InDelta(t, float64(grip), float64(w.Value), 1e-6)
			return
		}
		require.Equal(t, bolt.Anywhere, w.Kind)
		require.LessOrEqual(t, math.Abs(float64(w.Value-grip)), math.Sqrt(3)*float64(w.Doubt)+exact)
	})
}

// Knowing less never makes surer, and nor does a greater doubt.
func TestGripKnowingLessIsNotSurer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := draw(t)
		sure := bolt.Grip(r).Doubt
		vague := r
		vague.Length = measure(r.Length.Value, quantity.Length(rapid.Float64Range(0.01, 10).Draw(t, "doubt")))
		require.Greater(t, float64(bolt.Grip(vague).Doubt), float64(sure))
		for _, without := range []func(*bolt.Read){
			func(r *bolt.Read) { r.Nut = nil },
			func(r *bolt.Read) { r.Proud = nil },
		} {
			less := r
			without(&less)
			require.GreaterOrEqual(t, float64(bolt.Grip(less).Doubt), float64(sure)-exact)
		}
	})
}

// A window or a refusal, never a wrong number, whatever is given.
func FuzzGrip(f *testing.F) {
	f.Add(12.7, 203.2, 0.4, 38.0, 11.0, 2.0, 3.0)
	f.Add(-1.0, math.NaN(), math.Inf(1), 0.0, -1e-308, 1e308, 1e-308)
	f.Fuzz(func(t *testing.T, diameter, length, doubt, thread, nut, washer, proud float64) {
		read := func(v float64) *bolt.Measure {
			if v == 0 {
				return nil
			}
			return measure(quantity.Length(v), quantity.Length(doubt))
		}
		r := bolt.Read{
			Diameter: quantity.Length(diameter), Length: read(length), Thread: read(thread),
			Nut: read(nut), Washer: read(washer), Proud: read(proud),
		}
		w := bolt.Grip(r)
		if bolt.Check(r) != nil {
			require.Equal(t, bolt.NoGrip, w.Kind)
			return
		}
		require.NotEqual(t, bolt.NoGrip, w.Kind)
		require.True(t, w.Least >= 0 && w.Least <= w.Value && w.Value <= w.Most, "%+v", w)
		require.True(t, w.Doubt >= 0 && !math.IsInf(float64(w.Doubt), 0) && w.Most < r.Length.Value)
		require.NotEmpty(t, w.Basis)
	})
}

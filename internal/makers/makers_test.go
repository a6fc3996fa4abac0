package makers_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/makers"
	"lostwood/internal/quantity"
)

func wagonSizes(seed uint64, n int, doubt quantity.Length) []makers.Sized {
	sizes, _ := measured(seeded(seed), onRule(quantity.Inch, 0.4, 0.2, 0.2, 0.2), n, doubt)
	return sizes
}

func TestOrderChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := wagonSizes(rapid.Uint64().Draw(t, "seed"), 16, 0.5)
		at := rapid.Permutation([]int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15}).Draw(t, "order")
		var turned []makers.Sized
		for _, i := range at {
			turned = append(turned, sizes[i])
		}
		want, got := makers.Study(sizes, makers.Usual()), makers.Study(turned, makers.Usual())
		require.Equal(t, want, makers.Study(sizes, makers.Usual()))
		for k, i := range at {
			require.Equal(t, want.Sizes[i], got.Sizes[k])
		}
		want.Sizes, got.Sizes = nil, nil
		require.Equal(t, want, got)
	})
}

// Sizes, doubts, units and the nearness of the work all so many times as large
// change nothing but the lengths told.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := wagonSizes(rapid.Uint64().Draw(t, "seed"), 12, 0.5)
		by := quantity.Length(rapid.Float64Range(0.01, 100).Draw(t, "by"))
		q, p := makers.Usual(), makers.Usual()
		p.Close *= by
		for i := range p.Units {
			p.Units[i] = p.Units[i].Stretched(by)
		}
		large := slices.Clone(sizes)
		for i := range large {
			large[i].Value *= by
			large[i].Doubt *= by
		}
		v, w := makers.Study(sizes, q), makers.Study(large, p)
		require.Equal(t, v.Claimed, w.Claimed)
		require.Equal(t, v.Division, w.Division)
		require.Equal(t, v.Unit.String(), w.Unit.String())
		require.InEpsilon(t, v.Odds, w.Odds, 1e-6)
		for i := range v.Sizes {
			require.Equal(t, v.Sizes[i].Tell, w.Sizes[i].Tell)
			require.InDelta(t, float64(v.Sizes[i].Intended*by), float64(w.Sizes[i].Intended), 1e-6*float64(by*v.Sizes[i].Derived.Value))
			require.InDelta(t, v.Sizes[i].Chance, w.Sizes[i].Chance, 1e-6)
		}
	})
}

// Nothing anyone can hand in makes it fall over, and no number comes out that is none.
func TestAnyInput(t *testing.T) {
	lengths := []quantity.Length{0, -1, 1e-300, 1e300, 0.001, 25.4, 50, quantity.Length(math.NaN()), quantity.Length(math.Inf(1))}
	rapid.Check(t, func(t *rapid.T) {
		length := func(what string) quantity.Length {
			return rapid.OneOf(rapid.SampledFrom(lengths), rapid.Map(rapid.Float64Range(1, 3000), func(f float64) quantity.Length { return quantity.Length(f) })).Draw(t, what)
		}
		var sizes []makers.Sized
		for i := range rapid.IntRange(0, 12).Draw(t, "n") {
			s := sized(fmt.Sprint(i), length("value"), length("doubt"))
			s.Known = quantity.Known(rapid.IntRange(-1, 8).Draw(t, "known"))
			s.Read, s.Grain = length("read"), makers.Grain(rapid.IntRange(-1, 2).Draw(t, "grain"))
			s.Alike = rapid.SampledFrom([]string{"", "", "a"}).Draw(t, "alike")
			sizes = append(sizes, s)
		}
		q := makers.Question{Weakest: quantity.Guess, Units: makers.Units(), Close: length("close")}
		q.Units = append(q.Units, makers.Unit{})
		v := makers.Study(sizes, q)
		require.Len(t, v.Sizes, len(sizes))
		require.False(t, math.IsNaN(v.Odds) || math.IsInf(v.Odds, 0) || v.Odds < 0)
		require.NotEmpty(t, v.Words())
		for i, s := range v.Sizes {
			require.True(t, s.Chance >= 0 && s.Chance <= 1+1e-9, "%v", s)
			require.Equal(t, sizes[i].Name, s.Name)
			require.Equal(t, s.Tell == makers.Likely, s.Intended > 0)
		}
	})
}

func TestWeakSizesAreNotAsked(t *testing.T) {
	sizes := wagonSizes(1, 12, 0.3)
	sizes[3].Known, sizes[4].Known, sizes[5].Known = quantity.Guess, quantity.LikeVehicle, quantity.Unknown
	v := makers.Study(sizes, makers.Usual())
	assert.Equal(t, 9, v.Of+v.Vague)
	for _, i := range []int{3, 4, 5} {
		assert.Equal(t, makers.NotCounted, v.Sizes[i].Tell)
		assert.Zero(t, v.Sizes[i].Intended)
	}
}

// A size given ten times speaks once.
func TestAlikeSizesShareAVoice(t *testing.T) {
	one := makers.Study([]makers.Sized{sized("", 50.8, 0.3)}, makers.Usual())
	var ten []makers.Sized
	for range 10 {
		ten = append(ten, sized("cross bar, wide", 50.8, 0.3))
	}
	v := makers.Study(ten, makers.Usual())
	assert.Equal(t, makers.TooFew, v.Claimed)
	assert.InDelta(t, 1, v.Voices, 1e-9)
	assert.InEpsilon(t, one.Odds, v.Odds, 1e-9)
	named := []makers.Sized{sized("", 50.8, 0.3), sized("", 101.6, 0.3)}
	named[0].Alike, named[1].Alike = "rails", "rails"
	assert.InDelta(t, 1, makers.Study(named, makers.Usual()).Voices, 1e-9)
}

// An old foot is told from the English and the metric.
func TestOldFootIsFound(t *testing.T) {
	for _, u := range makers.Units() {
		got := claims(seeded(2), onRule(u.One(), 0.5, 0.5), 20, 25, 0.4, makers.Usual())
		if u.String() == "Swiss or Baden inch" || u.String() == "centimetre" {
			continue // three centimetres, and their half, are marks of either
		}
		assert.GreaterOrEqual(t, got[u.String()], 17, "%v %v", u, got)
		assert.LessOrEqual(t, total(got)-got[u.String()], 1, "%v %v", u, got)
	}
	got := claims(seeded(2), onStep(5), 20, 25, 0.4, makers.Usual())
	assert.GreaterOrEqual(t, got["centimetre"], 18)
}

// Wood shrunk by 2 % across the grain is told so when asked, and its sizes as made.
func TestShrunkWood(t *testing.T) {
	r, q := seeded(21), makers.Usual()
	q.Shrinkage = makers.Sought
	found, told, right := 0, 0, 0
	for range 10 {
		sizes, truth := measured(r, onRule(quantity.Inch, 0.4, 0.3, 0.3), 24, 0.3)
		for i := range sizes {
			if truth[i] < 400 {
				sizes[i].Grain = makers.Across
				sizes[i].Value -= 0.02 * truth[i]
			}
		}
		v := makers.Study(sizes, q)
		if v.Claimed != makers.Claimed {
			continue
		}
		found++
		assert.InDelta(t, 0.02, v.Shrunk, 0.004)
		for i, s := range v.Sizes {
			if s.Tell == makers.Likely {
				told++
				if math.Abs(float64(s.Intended-truth[i])) < 1e-6 {
					right++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, found, 9)
	assert.Greater(t, float64(right), 0.95*float64(told))
	plain := makers.Study(wagonSizes(4, 20, 0.3), q)
	assert.Zero(t, plain.Shrunk)
}

// The restorer's own rule is not taken for the maker's.
func TestRuleTheyWereReadWith(t *testing.T) {
	const sixteenth = quantity.Inch / 16
	rounded := func(x quantity.Length) quantity.Length {
		return quantity.Length(math.Round(float64(x/sixteenth))) * sixteenth
	}
	r := seeded(16)
	var told, untold []makers.Sized
	for range 60 {
		s := sized("", rounded(anySize(r)), sixteenth/2)
		untold = append(untold, s)
		s.Read = sixteenth
		told = append(told, s)
	}
	v := makers.Study(told, makers.Usual())
	assert.Equal(t, makers.NoSign, v.Claimed, v.Words())
	if v = makers.Study(untold, makers.Usual()); v.Claimed == makers.Claimed {
		assert.Equal(t, makers.TooGood, v.Fit)
		assert.Contains(t, v.Words(), "the rule they were read with")
	}
}

func TestOffMarksAndTooWide(t *testing.T) {
	sizes := wagonSizes(9, 20, 0.2)
	sizes[8] = sized("worn", 61.3, 0.2)
	sizes[9] = sized("doubtful", 300, 9)
	v := makers.Study(sizes, makers.Usual())
	require.Equal(t, makers.Claimed, v.Claimed)
	assert.Equal(t, makers.TooWide, v.Sizes[9].Tell)
	assert.Equal(t, 20, v.Of+v.Vague)
	assert.Contains(t, v.Words(), fmt.Sprintf("(%d more are too doubtful to tell)", v.Vague))
	assert.GreaterOrEqual(t, v.Vague, 1)
	assert.NotEqual(t, makers.Likely, v.Sizes[8].Tell)
	assert.Zero(t, v.Sizes[8].Intended+v.Sizes[9].Intended)
	assert.Equal(t, "give or take is too wide to tell a mark", v.Sizes[9].Words(v))
}

func TestWords(t *testing.T) {
	var sizes []makers.Sized
	for i, in := range []float64{2.125, 3.375, 1.75, 38.625, 4.25, 67.75, 8.875, 5.625, 14.125, 12.5} {
		sizes = append(sizes, sized("", quantity.Length(in)*quantity.Inch+quantity.Length(i%3-1)*0.2, 0.2))
	}
	v := makers.Study(sizes, makers.Usual())
	assert.Regexp(t, `^The maker worked in eighths of an English inch: 10 of 10 sizes lie on them; odds against chance [0-9,]+ to 1\.$`, v.Words())
	assert.Regexp(t, `^likely meant as 2 1/8 in \([89][0-9] in 100\)$`, v.Sizes[0].Words(v))

	for i := range sizes {
		sizes[i].Doubt = 1.5
	}
	v = makers.Study(sizes, makers.Usual())
	assert.Equal(t, makers.NoSign, v.Claimed)
	assert.Regexp(t, `^No sign of the maker's unit: the sizes lie as chance would have them\. .*would show only with every size known to [0-9.]+ mm or better\.$`, v.Words())
	assert.Equal(t, "Too few sizes to tell the maker's unit: 0, and alike ones count once.", makers.Study(nil, makers.Usual()).Words())
}

func BenchmarkStudy(b *testing.B) {
	sizes := wagonSizes(1, 60, 0.5)
	for b.Loop() {
		makers.Study(sizes, makers.Usual())
	}
}

package cutlist_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func among(t *testing.T, names ...string) []timber.Species {
	t.Helper()
	if len(names) == 0 {
		return woods(t).Woods()
	}
	var out []timber.Species
	for _, n := range names {
		w, err := woods(t).Find(n)
		require.NoError(t, err)
		out = append(out, w)
	}
	return out
}

func choice(t *testing.T, v *vehicle.Vehicle, it *vehicle.Item, rank cutlist.Rank, splinter timber.Splinter, names ...string) *cutlist.Choice {
	t.Helper()
	c, err := cutlist.Choose(v, it, woods(t), among(t, names...), splinter, rank)
	require.NoError(t, err)
	return c
}

func order(c *cutlist.Choice) []string {
	var out []string
	for _, k := range c.Candidates {
		out = append(out, k.Wood.Common)
	}
	return out
}

// Wood Handbook table 5-3 (seen), at 12 %: stiffness 12.0 GPa of white ash, 12.3 of
// white oak, 10.9 of yellow-poplar; strength 103, 105, 70 MPa; specific gravity 0.60,
// 0.68, 0.42; movement (table 13-5) 0.274, 0.365 (group), 0.289.
func TestRanksFollowTheFigures(t *testing.T) {
	v := wagon(20, 12, block("tailboard", "yellow-poplar", 1, 39*in, 14*in, 0.8*in))
	v.Moisture.Driest, v.Moisture.Wettest = 9, 15
	three := []string{"yellow-poplar", "white oak", "white ash"}
	for rank, want := range map[cutlist.Rank][]string{
		cutlist.Stiffest:  {"white oak", "white ash", "yellow-poplar"},
		cutlist.Strongest: {"white oak", "white ash", "yellow-poplar"},
		cutlist.Lightest:  {"yellow-poplar", "white ash", "white oak"},
		cutlist.Stillest:  {"white ash", "yellow-poplar", "white oak"},
		cutlist.Unranked:  {"yellow-poplar", "white oak", "white ash"},
	} {
		assert.Equal(t, want, order(choice(t, v, v.Items[0], rank, timber.Splinter{}, three...)))
	}
	likest := choice(t, v, v.Items[0], cutlist.Likest, timber.Splinter{Density: 690, At: 12}, three...)
	assert.Equal(t, "white ash", likest.Candidates[0].Wood.Common)
}

// The part's own timber stands first where nothing is ranked.
func TestOwnTimberStandsFirst(t *testing.T) {
	v := wagon(20, 12, block("reach", "Ash, white", 1, 68*in, 2.5*in, 2*in))
	assert.Equal(t, "white ash", order(choice(t, v, v.Items[0], cutlist.Unranked, timber.Splinter{}))[0])
}

// No order without its reason in view; a part that asks for something else
// says so; woods of which it is not known come last and have no rank.
func TestReasonIsInView(t *testing.T) {
	v := orchardWagon(t)
	reach := v.Items[0]
	text := words(t, choice(t, v, reach, cutlist.Lightest, timber.Splinter{}).List())
	assert.Contains(t, text, "Ranked by mass alone, the lightest first, because the load is carried with the wood's own weight. This part asks rather for strength and stiffness.")
	text = words(t, choice(t, v, reach, cutlist.Stiffest, timber.Splinter{}).List())
	assert.NotContains(t, text, "asks rather")
	assert.Contains(t, text, "A reach: it takes the pull and the shocks between the axles")
	text = words(t, choice(t, v, nil, cutlist.Unranked, timber.Splinter{}).List())
	assert.Contains(t, text, "Not ranked: no one figure decides.")

	l := choice(t, v, reach, cutlist.Hardest, timber.Splinter{}).List()
	gone := false
	for i := range l.Rows {
		r := row(t, l, i)
		if r["hardness_n"] == nil {
			gone = true
			assert.Nil(t, r["rank"])
			assert.Equal(t, "not found", r["hardness_source"])
		} else {
			assert.False(t, gone, "known after unknown")
		}
	}
	assert.True(t, gone)
}

// Figures from memory, and those that are only a group's least, are marked; the
// list is valid in every format and narrow enough for paper.
func TestChoiceIsMarked(t *testing.T) {
	v := orchardWagon(t)
	for _, it := range append([]*vehicle.Item{nil}, v.Items...) {
		l := choice(t, v, it, cutlist.Unranked, timber.Splinter{Density: 700, At: 12}).List()
		var b bytes.Buffer
		require.NoError(t, l.Write(&b, listing.JSON))
		assert.True(t, json.Valid(b.Bytes()))
		require.NoError(t, l.Write(&b, listing.CSV))
	}
	rail := v.Items[6]
	text := words(t, choice(t, v, rail, cutlist.Unranked, timber.Splinter{}, "white ash", "white oak", "brush box", "yellow-poplar").List())
	for _, want := range []string{"too tight m", "takes it m", "prove it", "16.0 g m", "m from memory", "bends no tighter than 126 mm"} {
		assert.Contains(t, text, want)
	}
}

func TestChoiceRefuses(t *testing.T) {
	v := orchardWagon(t)
	_, err := cutlist.ParseRank("beauty")
	assert.EqualError(t, err, "“beauty” is nothing to rank woods by; there are none, stiffness, strength, hardness, mass, movement, splinter")
	_, err = cutlist.Choose(v, nil, woods(t), nil, timber.Splinter{}, cutlist.Likest)
	require.Error(t, err)
	_, err = cutlist.Choose(nil, nil, woods(t), nil, timber.Splinter{}, cutlist.Unranked)
	require.Error(t, err)
	_, err = cutlist.Choose(v, nil, woods(t), nil, timber.Splinter{}, cutlist.Rank(99))
	require.Error(t, err)
	_, err = cutlist.Choose(v, &vehicle.Item{Name: "hub", NumberOff: 1}, woods(t), nil, timber.Splinter{}, cutlist.Unranked)
	require.Error(t, err)
	v.Moisture.Service = -1
	_, err = cutlist.Choose(v, nil, woods(t), among(t, "white ash"), timber.Splinter{}, cutlist.Unranked)
	require.Error(t, err)
}

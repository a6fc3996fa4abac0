package cutlist_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// Every fault is told at once, in words, each wood once with all its parts.
func TestFaultsAreToldAtOnce(t *testing.T) {
	near := block("hub", "wych elm", 1, 12*in, 9*in, 9*in)
	off := block("hub", "wych elm", 1, 12*in, 9*in, 9*in)
	near.Hand, off.Hand = vehicle.Near, vehicle.Off
	_, err := cutlist.Make(wagon(20, 12,
		near, off,
		block("sill", "whit ash", 1, 9*ft, 3*in, 2*in),
		block("spoke", "hickory", 14, 20*in, 2*in, 1.5*in),
		block("slat", "white ash", 0, 3*ft, 4*in, 1*in),
		block("rail", "white ash", 1, 3*ft, quantity.Length(math.NaN()), 1*in),
		&vehicle.Item{Name: "riser", Timber: "white ash", NumberOff: 1},
		nil), woods(t), cutlist.Usual())
	require.Error(t, err)
	const want = `hub near, hub off: wych elm: tangential shrinkage not found in any source here; give it with the wood, or name a wood that is like it and has one
sill: wood “whit ash” is not in the list; the nearest there: white ash; or give its own figures
spoke: “hickory” could be shagbark hickory (Carya ovata), or mockernut hickory (Carya tomentosa), or pignut hickory (Carya glabra), or shellbark hickory (Carya laciniosa), or pecan (Carya illinoinensis), or hickory ash (Flindersia ifflana); write the one meant, or its botanical name
slat: 0 off are to be made; it must be 1 or more
rail: one of its sizes is NaN mm, from which nothing can be cut; give it a size
riser: it has no shape; give its sizes
a part: nothing is known of it; take it out of the vehicle`
	assert.Equal(t, want, err.Error())
	var missing *timber.NoFigureError
	require.ErrorAs(t, err, &missing)
	var unknown *timber.UnknownError
	require.ErrorAs(t, err, &unknown)
}

func TestMoistureOutOfReach(t *testing.T) {
	sill := func(wood string) *vehicle.Item { return block("sill", wood, 1, 9*ft, 3*in, 2*in) }
	for _, c := range []struct {
		bought, service quantity.Moisture
		wood, want      string
	}{
		{0, 12, "white ash", "the moisture that the wood is bought at is 0 %; it can be above 0, to 600, such as 12"},
		{20, quantity.Moisture(math.NaN()), "white ash", "the moisture that the wood is worked at is NaN %; it can be above 0, to 600, such as 12\nthe moisture that the wood is kept at in service is NaN %; it can be above 0, to 600, such as 12"},
		// Over saturation, where it cannot be.
		{60, 45, "white ash", "the moisture that the wood is kept at in service is 45 %; from the air alone wood in service takes up no more than 30, where its fibres are full; write such as 12"},
		// Wood Handbook 2021, 4-3: 100 (1.54 - 0.55) / (1.54 x 0.55) = 117 % is all that white ash can hold.
		{190, 12, "white ash", "sill: white ash: moisture, percent: 190; it must lie between 0 and 116.883; full of water it holds 117"},
	} {
		_, err := cutlist.Make(wagon(c.bought, c.service, sill(c.wood)), woods(t), cutlist.Usual())
		assert.EqualError(t, err, c.want)
	}
	// A wood of which only its movement in service is known says nothing of green wood.
	own, err := woods(t).With(timber.Species{Common: "river wattle", Move: timber.Movement{
		Kind: timber.UnitShrinkage, Tangential: timber.Given(0.3, "the restorer"),
	}})
	require.NoError(t, err)
	_, err = cutlist.Make(wagon(40, 12, sill("river wattle")), own, cutlist.Usual())
	assert.EqualError(t, err, "sill: river wattle: shrinkage from above 18 % moisture not found in any source here; give its shrinkage green to 12 %, or work from seasoned wood")
}

func TestAllowancesThatNoShopLeaves(t *testing.T) {
	a := cutlist.Usual()
	require.NoError(t, a.Validate())
	a.Planing, a.Jointing, a.WidestBoard, a.BendWaste = -1, 40, 0, math.NaN()
	_, err := cutlist.Make(wagon(12, 12), woods(t), a)
	assert.EqualError(t, err, "planing off each face is -1 mm; it can be 0 to 25 mm\n"+
		"jointing off each edge is 40 mm; it can be 0 to 25 mm\n"+
		"widest board is 0 mm; it can be 100 to 3000 mm\n"+
		"waste of bends, as a part of them is NaN; it can be 0 to 5")
	_, err = cutlist.Make(nil, woods(t), cutlist.Usual())
	assert.Error(t, err)
}

func TestNothingToBuy(t *testing.T) {
	it := block("sill", "white ash", 1, 9*ft, 3*in, 2*in)
	it.Status = vehicle.Fitted
	for _, v := range []*vehicle.Vehicle{wagon(12, 12), wagon(12, 12, it)} {
		var b bytes.Buffer
		require.NoError(t, made(t, v, cutlist.Usual()).Totals().Write(&b, listing.Table))
		assert.Contains(t, b.String(), "Nothing is to be bought.")
	}
}

// What cannot be cut is named, not passed over.
func TestWhatIsAbsentIsNamed(t *testing.T) {
	l := made(t, orchardWagon(t), cutlist.Usual())
	for _, list := range []*listing.List{l.Cutting(), l.Totals()} {
		assert.Contains(t, strings.Join(strings.Fields(strings.Join(list.Foot, " ")), " "), "side rail near, side rail off (left open).")
	}
}

// A guess is marked wherever the size it makes stands, and a known one is not.
func TestGuessesAreMarked(t *testing.T) {
	known := map[string]quantity.Known{"wide": quantity.Guess}
	v := wagon(12, 12, built(t, 1, "riser", "riser", "white ash", 1, sizes(lengths{"long": 16 * in, "thick": 7 * in / 8, "high": 11 * in}),
		map[string]quantity.Known{"high": quantity.Guess}),
		built(t, 2, "sill", "sill", "white ash", 1, sizes(lengths{"long": 8 * ft, "wide": 3 * in, "deep": 2 * in}), known),
		built(t, 3, "sand board", "sand board", "white ash", 1, sizes(lengths{"long": 4 * ft, "wide": 3 * in, "deep": 2 * in}), nil),
		built(t, 4, "felloe", "felloe", "white ash", 6, felloeSizes(), map[string]quantity.Known{"radius": quantity.Guess}))
	cutting := made(t, v, cutlist.Usual()).Cutting()
	words := func(i int, key string) string { return wordsOf(cutting, cutting.Rows[i], key) }
	assert.Equal(t, "16 x 11? x 7/8", words(0, "finished_long_mm"))
	assert.Equal(t, "96 x 3? x 2", words(1, "finished_long_mm"))
	assert.Equal(t, "48 x 3 x 2", words(2, "finished_long_mm"))
	assert.Equal(t, "19 1/2? x 4 11/32? x 1 1/2", words(3, "finished_long_mm"))
	assert.Equal(t, "wide", row(t, cutting, 1)["guessed"])
	assert.Equal(t, "", row(t, cutting, 2)["guessed"])
}

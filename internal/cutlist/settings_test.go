package cutlist_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func with(t require.TestingT, v *vehicle.Vehicle, s cutlist.Settings) *cutlist.List {
	l, err := cutlist.MakeWith(v, woods(t), s)
	require.NoError(t, err)
	return l
}

func words(t require.TestingT, l *listing.List) string {
	var b bytes.Buffer
	require.NoError(t, l.Write(&b, listing.Table))
	return strings.Join(strings.Fields(b.String()), " ")
}

// Wood Handbook table 4-3 and eq. 4-9, white oak, by hand. Kept at 12 %, worked
// at 16 %, bought at 20 %: across, with the rings not known, 10.5 %.
//
//	12 %: 1 - .105 x 18/30 = .937   16 %: 1 - .105 x 14/30 = .951   20 %: .965
//
// 100 mm are worked to 100 x .951/.937 = 101.4941; with 12 mm for jointing
// 113.4941; sawn at 20 %: x .965/.951 = 115.1649. Quarter-sawn, 5.6 %: .9664, .9738667,
// .9813333: 100.7727, 112.7727, 113.6373. Green (30 %): 1/.951, 1/.9738667.
func TestThroughTheMoistureOfTheDay(t *testing.T) {
	v := wagon(20, 12, block("bolster", "white oak", 1, 1200, 100, 50))
	v.Moisture.Worked = 16
	a := cutlist.Usual()
	n := with(t, v, cutlist.Settings{Allowances: a}).Lines[0]
	assert.InDelta(t, 101.4941, float64(n.Worked.Wide), 0.0001)
	assert.InDelta(t, 115.1649, float64(n.Sawn.Wide), 0.0001)
	assert.InDelta(t, 113.4941/0.951, float64(n.Green.Wide), 0.0001)
	assert.InDelta(t, (50*0.951/0.937+6)*0.965/0.951, float64(n.Sawn.Thick), 1e-9)

	quarter := with(t, v, cutlist.Settings{Allowances: a, Rings: []cutlist.PartRings{{Part: "bolster", Rings: timber.Rings{Lie: timber.QuarterSawn}}}}).Lines[0]
	assert.InDelta(t, 100.7727, float64(quarter.Worked.Wide), 0.0001)
	assert.InDelta(t, 113.6373, float64(quarter.Sawn.Wide), 0.0001)
	assert.InDelta(t, float64(n.Sawn.Thick), float64(quarter.Sawn.Thick), 1e-9, "its thickness lies along the rings")
	flat := with(t, v, cutlist.Settings{Allowances: a, Rings: []cutlist.PartRings{{Rings: timber.Rings{Lie: timber.FlatSawn}}}}).Lines[0]
	assert.InDelta(t, float64(n.Sawn.Wide), float64(flat.Sawn.Wide), 1e-9)
	assert.Less(t, flat.Sawn.Thick, n.Sawn.Thick)
}

// Worked drier than it is kept the wood opens: known rings tell by how much,
// unknown ones leave it as it is, and it is never sawn under size.
func TestWorkedDrierThanKept(t *testing.T) {
	v := wagon(10, 14, block("bolster", "white oak", 1, 1200, 100, 50))
	v.Moisture.Worked = 10
	n := with(t, v, cutlist.Settings{Allowances: none()}).Lines[0]
	assert.InDelta(t, 100, float64(n.Worked.Wide), 1e-9)
	// Flat-sawn: 100 x (1 - .105 x 20/30) / (1 - .105 x 16/30) = .93/.944
	flat := with(t, v, cutlist.Settings{Allowances: none(), Rings: []cutlist.PartRings{{Rings: timber.Rings{Lie: timber.FlatSawn}}}})
	assert.InDelta(t, 100*0.93/0.944, float64(flat.Lines[0].Worked.Wide), 1e-9)
	assert.InDelta(t, 100, float64(flat.Lines[0].Sawn.Wide), 1e-9)
	assert.Contains(t, words(t, flat.Cutting()), "the wood opens across the grain before it is at 14 %")
}

// Every sawn size, dried by the same rule to the day it is worked, leaves the
// worked size and the allowances; the worked size, dried on, is the finished
// one: within 0.01 mm. Wetter wood is never sawn smaller, green least of all.
func TestRoundTripThroughTheDay(t *testing.T) {
	all := usable(t)
	rapid.Check(t, func(t *rapid.T) {
		it := anyItem(t, all)
		a := anyAllowances(t)
		lie := rapid.SampledFrom([]timber.Rings{{}, {Lie: timber.FlatSawn}, {Lie: timber.QuarterSawn}, {Lie: timber.Slanting, Angle: 35 * quantity.Degree}}).Draw(t, "rings")
		service := quantity.Moisture(rapid.Float64Range(5, 14).Draw(t, "service"))
		worked := service + quantity.Moisture(rapid.Float64Range(0, 8).Draw(t, "worked"))
		bought := worked + quantity.Moisture(rapid.Float64Range(0, 20).Draw(t, "bought"))
		v := wagon(bought, service, it)
		v.Moisture.Worked = worked
		n := with(t, v, cutlist.Settings{Allowances: a, Rings: []cutlist.PartRings{{Rings: lie}}}).Lines[0]
		for _, d := range []struct {
			sawn, left, worked, blank, green quantity.Length
			extent                           timber.Extent
		}{
			{n.Sawn.Wide, 2 * quantity.Length(n.Boards) * a.Jointing, n.Worked.Wide, n.Blank.Wide, n.Green.Wide, timber.Broad},
			{n.Sawn.Thick, 2 * a.Planing, n.Worked.Thick, n.Blank.Thick, n.Green.Thick, timber.Thin},
		} {
			day, err := n.Wood.ResizeAs(d.sawn, bought, worked, lie, d.extent)
			require.NoError(t, err)
			require.InDelta(t, float64(d.worked+d.left), float64(day), 0.01)
			end, err := n.Wood.ResizeAs(d.worked, worked, service, lie, d.extent)
			require.NoError(t, err)
			require.InDelta(t, float64(d.blank), float64(end), 0.01)
			require.GreaterOrEqual(t, float64(d.sawn), float64(d.blank+d.left)-1e-9)
			require.GreaterOrEqual(t, float64(d.green), float64(d.sawn)-1e-9)
		}
	})
}

// A kerf is beside every board and beyond its end, in what is bought: 10 in x 100 in of 1 in
// with 1/8 in: 10 1/8 x 100 1/8 / 144 = 7.040 bd ft, and no other size changes.
func TestKerf(t *testing.T) {
	a := none()
	v := wagon(12, 12, block("board", "white ash", 1, 100*in, 10*in, 13*in/16))
	plain := with(t, v, cutlist.Settings{Allowances: a})
	a.Kerf = in / 8
	kerf := with(t, v, cutlist.Settings{Allowances: a})
	assert.InDelta(t, 10.125*100.125/144, kerf.Lines[0].Bought.BoardFeet(), 1e-9)
	assert.Equal(t, plain.Lines[0].Sawn, kerf.Lines[0].Sawn)
	assert.Contains(t, words(t, kerf.Cutting()), "The saw's kerf: 1/8 in beside every board and beyond its end")
	assert.Contains(t, words(t, plain.Cutting()), "The saw's kerf: within the waste.")
}

// 16.3195 bd ft with the waste, counted 16 by the trade's tally (worked by hand in
// TestOneBolsterByHand), at 9.50: 152.00. By the cubic metre and the super foot plain volume counts.
func TestPrices(t *testing.T) {
	v := wagon(20, 12, block("fore bolster", "white oak", 2, 48*in, 4*in, 3.5*in))
	cost := func(prices ...string) cutlist.Cost {
		s := cutlist.Settings{Allowances: cutlist.Usual()}
		for _, text := range prices {
			p, err := cutlist.ParsePrice(text, "$")
			require.NoError(t, err)
			s.Prices = append(s.Prices, p)
		}
		return with(t, v, s).Groups[0].Cost
	}
	assert.Equal(t, "$152.00", cost("9.50/bdft").String())
	assert.Equal(t, "$152.00", cost("1/bdft", "white oak = 9.50 / bd ft").String())
	assert.Equal(t, "$152.00", cost("Quercus alba 16/4 = 9.50/bdft", "white oak = 3/bdft", "16/4=4/bdft").String())
	assert.InDelta(t, 0.0385098*2000, cost("2000/m3").Amount, 0.01)
	assert.InDelta(t, 16.3195*2, cost("2/superft").Amount, 0.001)
	assert.False(t, cost().Known)
	assert.False(t, cost("white oak 8/4 = 3/bdft").Known)
	for _, bad := range []string{"", "9", "9/yard", "x/bdft", "-1/bdft", "NaN/bdft", "oak = /bdft"} {
		_, err := cutlist.ParsePrice(bad, "$")
		var fault *cutlist.SettingError
		require.ErrorAs(t, err, &fault, bad)
	}
	two := wagon(20, 12, block("sill", "white oak", 1, 48*in, 4*in, 1*in), block("slat", "yellow-poplar", 1, 48*in, 4*in, 1*in))
	l := with(t, two, cutlist.Settings{Allowances: cutlist.Usual(), Prices: []cutlist.Price{{Timber: "white oak", Amount: 9, Currency: "$"}}})
	assert.Contains(t, words(t, l.Totals()), "without a price, and not in it: yellow-poplar")
	assert.NotContains(t, words(t, l.Order()), "$", "the mill is not told")
}

// The yard's own thicknesses stand in for the trade's; what none of them holds is
// to order, with a word of warning.
func TestYardsOwnThicknesses(t *testing.T) {
	v := wagon(12, 12, block("slat", "white ash", 1, 3*ft, 6*in, 1.5*in), block("hub", "white ash", 1, 1*ft, 6*in, 3*in))
	var s cutlist.Settings
	s.Allowances = cutlist.Usual()
	for _, text := range []string{"2 1/8 = 1 7/8", "1 = 13/16"} {
		n, err := cutlist.ParseThickness(text, quantity.Inches)
		require.NoError(t, err)
		s.Stock = append(s.Stock, n)
	}
	l := with(t, v, s)
	assert.Equal(t, "2 1/8 in", l.Lines[0].Stock.Name)
	assert.Equal(t, timber.Own, l.Lines[0].Stock.Basis.Standing)
	assert.Equal(t, cutlist.ToOrder, l.Lines[1].Stock.Kept, "a board thinner than the part is never offered")
	assert.GreaterOrEqual(t, l.Lines[1].Stock.Rough, l.Lines[1].Sawn.Thick)
	assert.Contains(t, words(t, l.Cutting()), "thicker than yards stock")
	for _, bad := range []string{"", "2", "2=3", "0=0", "x=1", "2=-1"} {
		_, err := cutlist.ParseThickness(bad, quantity.Inches)
		var fault *cutlist.SettingError
		require.ErrorAs(t, err, &fault, bad)
	}
}

// Measured boards: one ready, one to wait for, one too thin for a part: it needs (3.5 x .944/.937
// + 6 mm) x .965/.944 = 3.846 in, told as 3 7/8. White
// oak from 22 to 12 %: 12 in are 12 x .972/.937 = 12.4482 in wet: 29/64, told as 15/32.
func TestMeasuredBoards(t *testing.T) {
	v := wagon(20, 12, block("bolster", "white oak", 1, 48*in, 4*in, 3.5*in), block("slat", "white oak", 1, 48*in, 4*in, 1*in))
	v.Moisture.Worked = 14
	s := cutlist.Settings{Allowances: cutlist.Usual(), Boards: []cutlist.Board{
		{ID: "b1", Timber: "White Oak", Thick: 2 * in, Moisture: 22, Number: 2},
		{ID: "b2", Timber: "Quercus alba", Thick: 2 * in, Moisture: 14.5, Number: 1},
		{ID: "b3", Timber: "white oak", Moisture: 8, Number: 1},
		{ID: "b4", Timber: "pear", Moisture: 8, Number: 1},
	}}
	text := words(t, with(t, v, s).Cutting())
	for _, want := range []string{
		"White oak boards as measured: ready to be worked, b2 at 14.5 %; b1 at 22 % is too wet: let it dry to 14 %, or leave 15/32 in in every 12 in on across the grain",
		"to 1000 days at this thickness, from memory", // 250 days an inch, at 2 in squared
		"b3 at 8 % is drier than it will live",
		"the thickest measured is 2 in, too thin for some (No. 1 bolster needs 3 7/8 in): buy for those, or build them up",
		"Board b4 is of pear, of which no part is.",
	} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "slat needs")
}

// Every setting that cannot be is told, all at once.
func TestSettingsThatCannotBe(t *testing.T) {
	v := wagon(20, 12, block("sill", "white oak", 1, 9*ft, 3*in, 2*in))
	s := cutlist.Settings{
		Allowances: cutlist.Usual(),
		Stock:      []timber.Nominal{{Name: "thin", Rough: 10, Planed: 12, Charged: 25.4}},
		Prices:     []cutlist.Price{{Timber: "jarrah", Amount: 1}, {Amount: math.NaN()}, {Per: 9}},
		Boards:     []cutlist.Board{{ID: "b1", Timber: "white oak", Moisture: 700}},
		Rings:      []cutlist.PartRings{{Part: "hub"}},
		Wanted:     cutlist.Wanted{RunOut: 0.5},
	}
	s.Allowances.Kerf = 11
	_, err := cutlist.MakeWith(v, woods(t), s)
	require.Error(t, err)
	for _, want := range []string{
		"the saw's kerf is 11 mm; it can be 0 to 10 mm",
		"a thickness of the yard, “thin”: sawn 10 mm, dressed 12 mm; dressed must be above 0 and no more than sawn",
		"a price is given for “jarrah”, of which no part is to be made",
		"a price of NaN for a board foot; it must be 0 or more",
		"a price for Measure(9)",
		"board “b1” has a moisture of 700 %; it can be above 0, to 600, such as 14",
		"board “b1”: 0 alike; it must be 1 or more",
		"rings are asked for “hub”, which is no part of the Orchard wagon that can be made",
		"grain running out 1 in 0.5; it can be 1 in 1 to 1 in 100, such as 15",
	} {
		assert.ErrorContains(t, err, want)
	}
}

// Pieces alike are one line of the order, whatever parts they make; near and off are
// told apart in what they are for. The order holds as much wood as the totals.
func TestRoughPiecesAlike(t *testing.T) {
	near, off := block("inner slat", "yellow-poplar", 1, 83*in, 4*in, 0.9*in), block("inner slat", "yellow-poplar", 1, 83*in, 4*in, 0.9*in)
	near.Hand, off.Hand, near.Number, off.Number = vehicle.Near, vehicle.Off, 2, 2
	v := wagon(20, 12, block("centre slat", "yellow-poplar", 1, 83*in, 4*in, 0.9*in), near, off, block("outer slat", "yellow-poplar", 2, 83*in, 5*in, 0.9*in))
	l := with(t, v, cutlist.Settings{Allowances: cutlist.Usual(), Wanted: cutlist.Wanted{Grade: "prime", RunOut: 20, Sap: cutlist.SapRefused, Note: "From one log."}})
	rough := l.Rough()
	require.Len(t, rough, 2)
	assert.Equal(t, 2, rough[0].Pieces, "the widest first")
	assert.Equal(t, 3, rough[1].Pieces)
	assert.Equal(t, "1 of No. 1 centre slat, 1 of No. 2 inner slat NEAR, 1 of No. 2 inner slat OFF", rough[1].Parts())
	var net quantity.Volume
	for _, r := range rough {
		net += r.Net
	}
	assert.InDelta(t, float64(l.Groups[0].Net), float64(net), 1)
	text := words(t, l.Order())
	for _, want := range []string{"Liriodendron tulipifera", "grade prime", "running out no more than 1 in 20", "no heart centre (pith), no sapwood", "From one log."} {
		assert.Contains(t, text, want)
	}
	cells := row(t, l.Order(), 0)
	assert.Equal(t, cells["board_feet"], cells["super_feet"])
}

// The water goes and the wood stays: 29.279 kg at 20 % (by hand in
// TestOneBolsterByHand) are 29.279 x 1.12 / 1.20 = 27.327 kg at 12 %.
func TestDriedOrder(t *testing.T) {
	l := with(t, wagon(20, 12, block("fore bolster", "white oak", 2, 48*in, 4*in, 3.5*in)), cutlist.Settings{Allowances: cutlist.Usual()})
	assert.InDelta(t, 27.327, float64(l.Groups[0].Dry.Mass), 0.002)
}

func FuzzParsePrice(f *testing.F) {
	for _, s := range []string{"white oak 8/4 = 9.80/bdft", "9/m3", "=", "/", "8/4=1/bdft", "a=b=c/d"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if p, err := cutlist.ParsePrice(text, "$"); err == nil {
			require.GreaterOrEqual(t, p.Amount, 0.0)
		}
		if n, err := cutlist.ParseThickness(text, quantity.Inches); err == nil {
			require.LessOrEqual(t, n.Planed, n.Rough)
			require.Positive(t, n.Planed)
		}
		_, _ = cutlist.ParsePartRings(text)
	})
}

func TestParsePartRings(t *testing.T) {
	r, err := cutlist.ParsePartRings(" reach = quarter")
	require.NoError(t, err)
	assert.Equal(t, cutlist.PartRings{Part: "reach", Rings: timber.Rings{Lie: timber.QuarterSawn}}, r)
	r, err = cutlist.ParsePartRings("flat")
	require.NoError(t, err)
	assert.Equal(t, cutlist.PartRings{Rings: timber.Rings{Lie: timber.FlatSawn}}, r)
	for _, bad := range []string{"=flat", "reach=", "reach=sideways", ""} {
		_, err := cutlist.ParsePartRings(bad)
		require.Error(t, err, bad)
	}
}

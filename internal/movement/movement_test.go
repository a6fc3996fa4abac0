package movement_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/listing"
	"lostwood/internal/movement"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

const in = quantity.Inch

func woods(t require.TestingT) timber.Catalogue {
	c, err := timber.Published()
	require.NoError(t, err)
	return c
}

// board is a timber that runs across the vehicle and lies flat: its grain from
// near to off, its breadth fore and aft.
func board(id, name, wood string, long, wide, thick quantity.Length) *vehicle.Part {
	it := &vehicle.Item{Number: 1, ID: id, Name: name, Timber: wood, NumberOff: 1, Stick: parts.Stick{Body: parts.Square(long, wide, thick)}}
	p := &vehicle.Part{ID: id, Name: name, Timber: wood, Item: it, Place: &vehicle.Place{
		Axes: [3][3]float64{{0, -1, 0}, {1, 0, 0}, {0, 0, 1}},
	}}
	it.Parts = []*vehicle.Part{p}
	return p
}

// bolted is a half-inch bolt straight down through things, at x and y.
func bolted(id string, x, y quantity.Length, stops ...vehicle.Stop) *vehicle.Fastening {
	return &vehicle.Fastening{
		ID: id, Title: id, What: "bolt", Diameter: in / 2, Grip: quantity.Size{Value: 200}, Through: stops,
		Head: [3]quantity.Size{{Value: x}, {Value: y}, {}}, Way: [3]float64{0, 0, -1},
	}
}

func stop(id string, hole int) vehicle.Stop { return vehicle.Stop{ID: id, Hole: hole} }

// plated is a seat board of a wood with an iron across its grain, held at
// places fore and aft.
func plated(wood string, driest, wettest, worked quantity.Moisture, at ...quantity.Length) *vehicle.Vehicle {
	p := board("seat-board", "Seat board", wood, 900, 400, 25)
	v := &vehicle.Vehicle{
		Name: "Orchard wagon", Issue: "A", Unit: quantity.Inches,
		Moisture: vehicle.Moisture{Bought: 20, Worked: worked, Service: (driest + wettest) / 2, Driest: driest, Wettest: wettest},
		Parts:    []*vehicle.Part{p}, Items: []*vehicle.Item{p.Item},
		Irons: []*vehicle.Iron{{ID: "strap", Name: "Strap"}},
	}
	for i, x := range at {
		v.Fastenings = append(v.Fastenings, bolted(string(rune('1'+i)), x, 0, stop("strap", i+1), stop("seat-board", 0)))
	}
	return v
}

func of(t require.TestingT, v *vehicle.Vehicle) *movement.Report {
	r, err := movement.Of(v, woods(t))
	require.NoError(t, err)
	return r
}

// Wood Handbook table 4-3, white oak 10.5 % tangential, and eq. 4-9, by hand: in
// service at 12 % a size is 1 - .105 x 18/30 = 0.937 of green. From 9 % to 15 %
// it goes .105 x 6/30 = 0.021 of green, 0.0224120 of itself: 10 in go 5.6926 mm.
// A bolt of 1/2 in in a hole 1/32 larger (bored as the rule is) gives 0.794 mm.
func TestPlateAcrossTheGrain(t *testing.T) {
	r := of(t, plated("white oak", 9, 15, 12, 0, 10*in))
	require.Len(t, r.Spacings, 1)
	s := r.Spacings[0]
	assert.Equal(t, movement.Across, s.Grain)
	assert.True(t, s.Iron)
	assert.InDelta(t, 254, float64(s.Span), 1e-9)
	assert.InDelta(t, 5.6926, float64(s.By.Year()), 0.0001)
	assert.InDelta(t, -5.6926/2, float64(s.By.Driest), 0.0001)
	assert.InDelta(t, 0.79375, float64(s.Play), 1e-9)
	assert.True(t, s.TooFar())
	slots := s.Slots()
	require.Len(t, slots, 1, "one end is held fast")
	assert.Equal(t, 2, slots[0].Hole.Number)
	assert.InDelta(t, 5.6926, float64(slots[0].By), 0.0001)
	require.NotEmpty(t, r.Findings)
	assert.Equal(t, "Strap: the fastenings stand 10 in apart across the grain of the seat board, more than 5 in. "+
		"From the driest month (9 %) to the wettest (15 %) it goes 15/64 in there; bored at 12 % it closes by up to 1/8 in and opens by up to 1/8 in, and the fastenings give 1/32 in either way. "+
		"Hold hole 1 (fastening 1) fast and make a slot in the wood, not in the old iron, at hole 2 (fastening 2) 15/64 in longer than round, that way of the wood; "+
		"or put the iron on as separate plates; and let the wood dry first, to between 11 % and 13 %.", r.Findings[0].Says)
	assert.NotEmpty(t, r.Notes(r.Parts[0].Item))
}

// With a hole in the middle the wood goes both ways from there, half as far.
func TestMiddleHoleIsHeldFast(t *testing.T) {
	s := of(t, plated("white oak", 9, 15, 12, 0, 5*in, 10*in)).Spacings[0]
	assert.Equal(t, 1, s.Fast())
	slots := s.Slots()
	require.Len(t, slots, 2)
	for _, slot := range slots {
		assert.InDelta(t, 5.6926/2, float64(slot.By), 0.0001)
	}
}

// Canadian Wood Council, on bolted connections (seen): separate plates where
// bolts stand over 125 mm apart across the grain. Named even where they give enough.
func TestOverFiveInchesIsNamed(t *testing.T) {
	far := of(t, plated("white oak", 11.9, 12.1, 12, 0, 126))
	assert.True(t, far.Spacings[0].TooFar())
	assert.Zero(t, far.Spacings[0].Needs())
	require.NotEmpty(t, far.Findings)
	assert.Contains(t, far.Findings[0].Says, "That is far for one plate: bolt it fast in one place only and leave the other easy, or put it on as separate plates")
	near := of(t, plated("white oak", 11.9, 12.1, 12, 0, 124.9))
	assert.False(t, near.Spacings[0].TooFar())
	assert.Empty(t, near.Findings)
}

// One moisture all year says nothing of the year, and that is said; what a point
// moves is told instead. Wood Handbook table 13-5: white ash .00274 a point at 10 %.
func TestSteadyClimate(t *testing.T) {
	r := of(t, plated("white ash", 10, 10, 10, 0, 10*in))
	assert.Contains(t, r.Findings[0].Says, "The survey names one moisture for all the year, 10 %")
	assert.Contains(t, r.Findings[1].Says, "It moves 1/32 in there for each percent of moisture") // .00274 x 10 in = 0.027 in, the nearest 64th
	assert.Zero(t, r.Spacings[0].By.Year())
}

// A reach of 8 ft: 0.2 % green to ovendry (from memory of Wood Handbook p. 4-5):
// from 6 to 16 %, 2438.4 x .002 x 10/30 / (1 - .002 x 19/30) = 1.628 mm, twice what
// the bolts give.
func TestLongReachAlongTheGrain(t *testing.T) {
	p := board("reach", "Reach", "white ash", 2500, 60, 50)
	p.Place.Axes = [3][3]float64{{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}
	v := plated("white ash", 6, 16, 11, 0)
	v.Parts, v.Items = []*vehicle.Part{p}, []*vehicle.Item{p.Item}
	v.Fastenings = []*vehicle.Fastening{
		bolted("1", 0, 0, stop("strap", 1), stop("reach", 0)), bolted("2", -96*in, 0, stop("reach", 0), stop("strap", 2)),
	}
	r := of(t, v)
	require.Len(t, r.Spacings, 1)
	s := r.Spacings[0]
	assert.Equal(t, movement.Along, s.Grain)
	assert.InDelta(t, 1.628, float64(s.By.Year()), 0.001)
	assert.Greater(t, s.Needs(), quantity.Length(0))
	assert.False(t, s.TooFar(), "along the grain nothing is too far")
	assert.Contains(t, r.Findings[0].Says, "Along the grain the wood goes")
	// In an even climate the bolts give enough.
	v.Moisture.Driest, v.Moisture.Wettest = 10, 12
	assert.Zero(t, of(t, v).Spacings[0].Needs())
}

// A timber across a timber holds it as an iron does, but for its own length's
// movement; two timbers the same way move together.
func TestTimberHoldsTimber(t *testing.T) {
	v := plated("white oak", 9, 15, 12)
	riser := board("riser", "Riser", "white oak", 500, 30, 300)
	riser.Place.Axes = [3][3]float64{{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}
	v.Parts, v.Items = append(v.Parts, riser), append(v.Items, riser.Item)
	v.Fastenings = []*vehicle.Fastening{
		bolted("1", 0, 0, stop("seat-board", 0), stop("riser", 0)), bolted("2", 10*in, 0, stop("seat-board", 0), stop("riser", 0)),
	}
	r := of(t, v)
	require.Len(t, r.Spacings, 1)
	assert.Equal(t, "Seat board", r.Spacings[0].Part.Name)
	assert.False(t, r.Spacings[0].Iron)
	// 5.6926 across less 254 x .002 x 6/30 / (1 - .002 x 18/30) = 0.1017 along.
	assert.InDelta(t, 5.6926-0.1017, float64(r.Spacings[0].By.Year()), 0.0002)
	riser.Place.Axes = v.Parts[0].Place.Axes
	assert.Empty(t, of(t, v).Spacings)
}

// Yellow-poplar 8.2 % tangential (Wood Handbook table 4-3): slats of 100 mm held on
// their middle line, 3 mm apart at 12 %: each edge goes 50 x .082 x 5/30 / (1 - .082 x 18/30)
// = 0.7187 mm in five points; two of them, 1.4375.
func TestGapsBetweenSlats(t *testing.T) {
	v := plated("yellow-poplar", 7, 17, 12)
	v.Parts, v.Items = nil, nil
	for i, id := range []string{"near", "middle", "off"} {
		p := board(id, id+" slat", "yellow-poplar", 2000, 100, 20)
		p.Kind = "slat"
		p.Place.Axes = [3][3]float64{{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}
		p.Place.At[1].Value = quantity.Length(200 - 103*i)
		v.Parts, v.Items = append(v.Parts, p), append(v.Items, p.Item)
	}
	r := of(t, v)
	require.Len(t, r.Gaps, 2)
	g := r.Gaps[0]
	assert.Equal(t, "near slat", g.Between[0].Name)
	assert.InDelta(t, 3, float64(g.Service), 1e-9)
	assert.InDelta(t, 3+1.4375, float64(g.Driest), 0.0002)
	assert.InDelta(t, 3-1.4375, float64(g.Wettest), 0.0002)
	// Held at the far edge, the whole of its width goes towards the gap.
	v.Fastenings = []*vehicle.Fastening{bolted("1", -500, 200, stop("near", 0)), bolted("2", -500, 47, stop("middle", 0))}
	assert.InDelta(t, 3+1.5*1.4375, float64(of(t, v).Gaps[0].Driest), 0.0003)
	// Too close: they press when wet.
	v.Fastenings = nil
	v.Parts[1].Place.At[1].Value += 2.5
	r = of(t, v)
	assert.Less(t, float64(r.Gaps[0].Wettest), 0.0)
	assert.Contains(t, r.Findings[0].Says, "press on each other at 17 %")
	var b bytes.Buffer
	require.NoError(t, r.GapsList().Write(&b, listing.Table))
	assert.Contains(t, b.String(), "presses")
}

// White ash 7.8 %: 200 mm of it in a grip lose 200 x .078 x 3/30 / (1 - .078 x 18/30) from
// 12 to 9 %: 1.6366 mm. A screw clamps nothing, a clip does.
func TestGripsGoSlack(t *testing.T) {
	v := plated("white ash", 9, 15, 12, 0)
	v.Parts[0].Item.Stick.Body = parts.Square(900, 400, 200)
	f := v.Fastenings[0]
	for what, want := range map[string]int{"bolt": 1, "clip": 1, "screw": 0} {
		f.What = what
		r := of(t, v)
		require.Len(t, r.Grips, want, what)
		if want > 0 {
			assert.InDelta(t, 1.6366, float64(r.Grips[0].By.Shrinks()), 0.0001)
			assert.Contains(t, r.Findings[len(r.Findings)-1].Says, "one fastening is slack by the driest month")
		}
	}
}

// A felloe's depth is across the grain: the girth goes 2 pi times as far.
// White ash, 2 in deep, 9 to 15 %: 50.8 x .078 x 6/30 / (1 - .078 x 18/30) = 0.8314; x 2 pi = 5.22 mm.
func TestTyresGoSlack(t *testing.T) {
	v := plated("white ash", 9, 15, 12)
	v.Unit = quantity.Millimetres
	it := v.Items[0]
	it.Kind, it.Name = "felloe", "Fore felloe"
	it.Sizes = []vehicle.Dimension{{Name: "deep", Size: quantity.Size{Value: 2 * in}}}
	r := of(t, v)
	assert.Contains(t, r.Findings[0].Says, "girth go 5.2 mm")
}

// A wood whose movement is in no source is named, and the rest goes on; a wood
// not in the list likewise; moisture that no wood has is refused.
func TestWhatIsNotKnownIsNamed(t *testing.T) {
	for _, wood := range []string{"wych elm", "pear"} {
		v := plated(wood, 9, 15, 12, 0, 10*in)
		r := of(t, v)
		assert.Contains(t, r.Findings[0].Says, "How "+wood+" moves cannot be told")
		assert.False(t, r.Spacings[0].By.Known())
		assert.True(t, r.Spacings[0].TooFar())
		for _, l := range []*listing.List{r.PartsList(), r.SpacingsList(), r.GapsList(), r.GripsList()} {
			var b bytes.Buffer
			require.NoError(t, l.Write(&b, listing.Table))
			require.NoError(t, l.Write(&b, listing.JSON))
		}
		var b bytes.Buffer
		require.NoError(t, r.SpacingsList().Write(&b, listing.CSV))
		assert.Contains(t, b.String(), "not known")
	}
	_, err := movement.Of(nil, woods(t))
	require.Error(t, err)
	for _, m := range []vehicle.Moisture{{}, {Bought: 12, Service: 12, Driest: 9, Wettest: 45}, {Bought: 12, Service: 12, Driest: 15, Wettest: 9}, {Bought: 12, Service: quantity.Moisture(math.NaN()), Driest: 9, Wettest: 9}} {
		v := plated("white oak", 9, 15, 12)
		v.Moisture = m
		_, err := movement.Of(v, woods(t))
		require.Error(t, err)
	}
}

// The farther apart, the more it moves, in step; slots never ask more than the
// whole way; the order of bolts does not matter; every list is one row a thing.
func TestSpacingsInProportion(t *testing.T) {
	names := []string{"white oak", "white ash", "yellow-poplar", "blackbutt", "jarrah"}
	rapid.Check(t, func(t *rapid.T) {
		wood := rapid.SampledFrom(names).Draw(t, "wood")
		driest := quantity.Moisture(rapid.Float64Range(4, 12).Draw(t, "driest"))
		wettest := driest + quantity.Moisture(rapid.Float64Range(0, 6).Draw(t, "by"))
		worked := quantity.Moisture(rapid.Float64Range(4, 18).Draw(t, "worked"))
		span := quantity.Length(rapid.Float64Range(6, 390).Draw(t, "span"))
		part := quantity.Length(rapid.Float64Range(0.1, 0.9).Draw(t, "part"))
		r := of(t, plated(wood, driest, wettest, worked, span, 0, part*span))
		s := r.Spacings[0]
		require.InDelta(t, float64(span), float64(s.Span), 1e-9)
		half := of(t, plated(wood, driest, wettest, worked, 0, span/2))
		if span/2 >= 5 {
			require.InDelta(t, float64(s.By.Year()/2), float64(half.Spacings[0].By.Year()), 1e-9)
		}
		require.GreaterOrEqual(t, s.By.Total(), s.By.Year()-1e-9)
		for _, slot := range s.Slots() {
			require.LessOrEqual(t, float64(slot.By), float64(s.By.Total())+1e-9)
		}
		var b bytes.Buffer
		require.NoError(t, r.SpacingsList().Write(&b, listing.CSV))
		rows, err := csv.NewReader(&b).ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, 1+len(r.Spacings))
	})
}

// Near and off alike are told once, by the worse of them.
func TestHandsAreToldTogether(t *testing.T) {
	v := plated("white oak", 9, 15, 12)
	v.Irons = nil
	for i, hand := range []string{"near", "off"} {
		id := hand + "-hinge"
		v.Irons = append(v.Irons, &vehicle.Iron{ID: id, Name: strings.ToUpper(hand[:1]) + hand[1:] + " hinge"})
		y := quantity.Length(200 - 400*i)
		v.Fastenings = append(v.Fastenings,
			bolted("1 "+hand, 0, y, stop(id, 1), stop("seat-board", 0)), bolted("2 "+hand, 150+quantity.Length(i), y, stop(id, 2), stop("seat-board", 0)))
	}
	r := of(t, v)
	require.Len(t, r.Spacings, 2)
	count := 0
	for _, f := range r.Findings {
		if strings.Contains(f.Says, "hinge") {
			count++
			assert.True(t, strings.HasPrefix(f.Says, "Near and off hinge: the fastenings stand 5 15/16 in apart"), f.Says)
		}
	}
	assert.Equal(t, 1, count)
}

package derive_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/testdata/armywagon"
)

// army is the wagon derived from its published irons and further evidence. What
// is worked out by hand stands beside each check; a1, a2 and M are the sources, as
// in package armywagon.
func army(t *testing.T, evidence ...string) *vehicle.Vehicle {
	t.Helper()
	return derived(t, "irons.toml", armywagon.Survey(evidence...))
}

func published(t *testing.T) []armywagon.Figure {
	t.Helper()
	f, err := armywagon.Published()
	require.NoError(t, err)
	return f
}

// overTyre and ofWood are the two ways to read the heights of the wheels, 46 and 58 (a1 a2).
func overTyre() []string {
	return []string{"2 fore-tyre.radius + 2 fore-tyre.thick = 46", "2 hind-tyre.radius + 2 hind-tyre.thick = 58"}
}

func ofWood() []string { return []string{"2 fore-felloe.radius = 46", "2 hind-felloe.radius = 58"} }

// specified states what is published of the timbers: what was seen as of an old
// drawing, what is from memory as a guess. Where copies differ both are stated.
func specified(t *testing.T) []string {
	t.Helper()
	var seen []string
	recalled := []string{"hind-axle.mid-x = fore-axle.mid-x - 73"} // M
	for _, f := range timbers(t, army(t)) {
		if f.Source == armywagon.FromMemory {
			recalled = append(recalled, f.String())
		} else {
			seen = append(seen, f.String())
		}
	}
	return []string{armywagon.State("like", append(seen, overTyre()...)...), armywagon.State("guess", recalled...)}
}

// timbers are the published sizes of the timbers in the survey.
func timbers(t *testing.T, v *vehicle.Vehicle) []armywagon.Figure {
	t.Helper()
	var out []armywagon.Figure
	for _, f := range published(t) {
		if f.OfSurvey() && timberNamed(v, f.Item) != nil {
			out = append(out, f)
		}
	}
	return out
}

// timberNamed finds a part: the near one, of a pair.
func timberNamed(v *vehicle.Vehicle, id string) *vehicle.Part {
	for _, p := range v.Parts {
		if p.ID == id || p.ID == "near-"+id {
			return p
		}
	}
	return nil
}

// called is what findings call a timber, without its side or number.
func called(p *vehicle.Part) string {
	return strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(p.Name), "near "), " 1")
}

// The survey has the published irons: every size that a survey can hold.
func TestArmyIronsArePublished(t *testing.T) {
	v := army(t)
	checked := 0
	for _, f := range published(t) {
		if !f.OfSurvey() || timberNamed(v, f.Item) != nil || f.Source == armywagon.FromMemory || f.Dimension == "height" {
			continue
		}
		got := sizeOf(t, v, f.Item, f.Dimension)
		assert.InDelta(t, f.Size.Inches(), got.Value.Inches(), 1e-6, "%v", f)
		assert.Equal(t, quantity.FromIron, got.Known, "%v", f)
		checked++
	}
	require.Equal(t, 18, checked)
}

// Irons alone tell the widths of the felloes and nothing else of the wood; every
// other size is not known, with a finding that says so.
func TestArmyIronsAlone(t *testing.T) {
	v := army(t)
	fromIron := 0
	for _, f := range timbers(t, v) {
		if strings.HasPrefix(f.Dimension, "hind-") {
			continue // a taper is asked for only where something speaks of one
		}
		got := sizeOf(t, v, f.Item, f.Dimension)
		if f.Dimension == "wide" && strings.HasSuffix(f.Item, "felloe") { // 2 1/2 (a1 a2)
			require.Equal(t, quantity.FromIron, got.Known, "%v", f)
			require.InDelta(t, f.Size.Inches(), got.Value.Inches(), 1e-6, "%v", f)
			require.Less(t, got.Doubt.Inches(), 1./8, "%v", f)
			fromIron++
			continue
		}
		require.Equal(t, quantity.Unknown, got.Known, "%v", f)
		require.True(t, math.IsInf(got.Doubt.Inches(), 1), "%v", f)
		require.Equal(t, quantity.NotKnown, got.Words(quantity.Inches), "%v", f)
		require.True(t, told(v, vehicle.Open, f.Dimension, called(timberNamed(v, f.Item))), "%v", f)
	}
	require.Equal(t, 2, fromIron)
	require.Empty(t, v.Items, "nothing can be made of what is not known")
	for _, p := range v.Parts {
		require.True(t, told(v, vehicle.Unmakeable, strings.TrimPrefix(called(p), "off ")), p.ID)
	}
}

// Closure 6. No hole's place on the wood is known, for no timber's end is. But the two
// axle bolts are 6 from the middle: 12 apart (a1).
func TestArmyHoles(t *testing.T) {
	v := army(t)
	for id, want := range map[string]float64{"3 near": 6, "3 off": -6, "4 near": 6, "4 off": -6} {
		head := fastening(t, v, id).Head
		require.Less(t, head[1].Known, quantity.Unknown)
		require.InDelta(t, want, head[1].Value.Inches(), 1e-6)
		require.Equal(t, quantity.Unknown, head[2].Known, "how high its head stands")
	}
	holes := 0
	for _, p := range v.Parts {
		for _, f := range p.Features {
			if p.Run != vehicle.Round {
				require.Equal(t, quantity.Unknown, f.Along.Known, "%s %s", p.ID, f.Ref)
				holes++
			}
		}
	}
	require.Equal(t, 7, holes) // three in either stock, one in the bolster
}

// Closure 1. Hubs are 14 1/2 (a1) or 14 1/4 (a2) long and boxes 12: 2 1/2 or 2 1/4 of
// hub stand beyond the box, and a band of 2 3/4 covers either.
func TestArmyHubCopiesDiffer(t *testing.T) {
	copies := []quantity.Length{14.5 * quantity.Inch, 14.25 * quantity.Inch}

	// As printed sizes of a like wagon, 1/4 either way, both are held: 14 3/8.
	v := army(t, armywagon.State("like", "fore-hub.long = 14 1/2", "fore-hub.long = 14 1/4"))
	hub := sizeOf(t, v, "fore-hub", "long")
	require.Equal(t, quantity.LikeVehicle, hub.Known)
	require.InDelta(t, 14.375, hub.Value.Inches(), 1e-6)
	for _, c := range copies {
		require.LessOrEqual(t, math.Abs(float64(c-hub.Value)), float64(hub.Doubt))
		beyond := c - sizeOf(t, v, "fore-box", "long").Value
		require.Greater(t, sizeOf(t, v, "linch-band", "wide").Value, beyond)
	}
	require.InDelta(t, 2.375, (hub.Value - sizeOf(t, v, "fore-box", "long").Value).Inches(), 1e-6)
	require.False(t, told(v, vehicle.Contradiction, "hub"))

	// Taken at their word, 1/32 either way, they are 5.7 standard deviations apart, and named.
	v = army(t, armywagon.State("like", "near-fore-hub.long = 14 1/2 ± 1/32", "near-fore-hub.long = 14 1/4 ± 1/32"))
	require.True(t, told(v, vehicle.Contradiction, "near-fore-hub.long = 14 1/2 ± 1/32", "near-fore-hub.long = 14 1/4 ± 1/32", "1/4 in"))
}

// The copies are named too where both hubs of the pair are meant.
func TestArmyHubPairCopiesDiffer(t *testing.T) {
	v := army(t, armywagon.State("like", "fore-hub.long = 14 1/2 ± 1/32", "fore-hub.long = 14 1/4 ± 1/32"))
	require.True(t, told(v, vehicle.Contradiction, "fore-hub.long = 14 1/"))
}

// Closure 2. A wheel 46 or 58 high has a rim of 22 3/8 or 28 3/8 under a 5/8 tyre, if that
// is over the tyre, and of 23 or 29 if it is of the wood. No copy says which.
func TestArmyRims(t *testing.T) {
	radius := func(v *vehicle.Vehicle, wheel string) vehicle.Dimension {
		return sizeOf(t, v, wheel+"-felloe", "radius")
	}
	v := army(t)
	require.Equal(t, quantity.Unknown, radius(v, "fore").Known)
	require.True(t, told(v, vehicle.Open, "radius", "fore felloe", "fore tyre"))

	for _, read := range []struct {
		heights []string
		want    [2]float64
	}{{overTyre(), [2]float64{22.375, 28.375}}, {ofWood(), [2]float64{23, 29}}} {
		v := army(t, armywagon.State("like", read.heights...))
		for i, wheel := range []string{"fore", "hind"} {
			require.Equal(t, quantity.LikeVehicle, radius(v, wheel).Known)
			require.InDelta(t, read.want[i], radius(v, wheel).Value.Inches(), 1e-6)
		}
	}

	// Half of 5/8 either way of the middle holds both.
	r := radius(army(t, armywagon.State("like", "fore-felloe.radius = 22 11/16 ± 5/16")), "fore")
	require.LessOrEqual(t, (r.Value - r.Doubt).Inches(), 22.375+1e-9)
	require.GreaterOrEqual(t, (r.Value + r.Doubt).Inches(), 23-1e-9)

	// Both at once, as close as a tape reads: 5/8 of contradiction, which may lie in either.
	const wood, over = "2 hind-felloe.radius = 58 ± 1/16", "2 hind-tyre.radius + 2 hind-tyre.thick = 58 ± 1/16"
	v = army(t, armywagon.State("like", wood, over))
	require.True(t, told(v, vehicle.Contradiction, wood, over, "5/8 in"))
}

// Closure 3. Felloe stock, heights over the tyre; 6 and 7 felloes are assumed. By hand,
// chord 2 R sin(180/n), rise R (1 - cos(180/n)), stock rise + 2 3/4 (deep: a1 a2):
// fore 22.375, 2.998, 5.748; hind 24.623, 2.810, 5.560.
func TestArmyFelloeStock(t *testing.T) {
	v := army(t, armywagon.State("like", overTyre()...), armywagon.State("rule", "fore-felloe.deep = 2 3/4", "hind-felloe.deep = 2 3/4"))
	for id, want := range map[string]struct {
		chord, rise float64
		stock       string
		off         int
	}{
		"fore-felloe": {22.375, 3.00, "5 3/4", 12},
		"hind-felloe": {24.625, 2.81, "5 9/16", 14},
	} {
		it := item(t, v, id)
		b := it.Stick.Body.Blank()
		require.InDelta(t, want.chord, b.Long.Inches(), .005, id)
		require.InDelta(t, want.rise, (b.Deep - 2.75*quantity.Inch).Inches(), .005, id)
		require.Equal(t, want.stock, quantity.Fraction(b.Deep, 16), id)
		require.InDelta(t, 2.5, b.Wide.Inches(), 1e-6, id)
		require.Equal(t, parts.Curved, b.Making)
		require.Equal(t, want.off, it.NumberOff, id)
	}
}

// Closure 4. At the king bolt lie bolster 3 1/2 (from memory), stock 4 and iron 1 1/2
// (a1): 9, before sand board, reach and plates. The specification gives the bolt no length.
func TestArmyKingBoltStack(t *testing.T) {
	stock, bolster := armywagon.State("like", "fore-stock.deep = 4"), armywagon.State("guess", "fore-bolster.deep = 3 1/2")
	for _, evidence := range [][]string{nil, {stock}, {bolster}} {
		grip := fastening(t, army(t, evidence...), "1").Grip
		require.Equal(t, quantity.Unknown, grip.Known, evidence)
		require.Equal(t, quantity.NotKnown, grip.Words(quantity.Inches))
	}
	grip := fastening(t, army(t, stock, bolster), "1").Grip
	require.Equal(t, quantity.Guess, grip.Known, "no better known than the bolster")
	require.InDelta(t, 3.5+4+1.5, grip.Value.Inches(), 1e-6)
	require.Greater(t, grip.Doubt.Inches(), .5, "nor better than its give or take")
}

// Closure 5. A 7/8 hole in a bar 1 1/2 wide leaves 5/16 a side, if the bar is not swelled
// there (a1). It is thin, but so it was ordered: it is not refused.
func TestArmyKingBoltHole(t *testing.T) {
	v := army(t, append(specified(t), armywagon.State("rule", "fore-stock.long = 60"))...) // any length: none is told
	hole := fastening(t, v, "1").Diameter
	require.InDelta(t, 5./16, (sizeOf(t, v, "fore-axle", "wide").Value-hole).Inches()/2, 1e-6)
	require.False(t, told(v, vehicle.Unmakeable, "fore axle"))
	stock := item(t, v, "fore-stock")
	require.NoError(t, stock.Shape.Validate())
	i := 0
	for _, f := range stock.Stick.Features {
		if h, ok := f.(parts.Hole); ok && math.Abs(float64(h.Diameter-bolt.Hole(hole))) < 1e-6 {
			require.InDelta(t, 30, h.At.X.Inches(), 1e-6, "in the middle of its length")
			i++
		}
	}
	require.Equal(t, 1, i)
}

// With the timbers as specified every one of them can be made but the stocks, whose
// lengths no copy has, and each is as large as specified.
func TestArmyAsSpecified(t *testing.T) {
	v := army(t, specified(t)...)
	for _, f := range timbers(t, v) {
		got := sizeOf(t, v, f.Item, f.Dimension)
		require.LessOrEqual(t, math.Abs(float64(f.Size-got.Value)), float64(got.Doubt)+1e-6, "%v", f)
		if f.Source == armywagon.FromMemory {
			require.Equal(t, quantity.Guess, got.Known, "%v", f)
		}
	}
	for _, p := range v.Parts {
		_, open := map[string]bool{"fore-stock": true, "hind-stock": true}[p.ID]
		require.Equal(t, open, p.Item == nil, p.ID)
	}
	for _, f := range v.Findings {
		require.NotEqual(t, vehicle.Contradiction, f.Concern, f.Says)
	}
}

// The same survey gives the same vehicle.
func TestArmyDeterministic(t *testing.T) {
	lines := specified(t)
	requireSame(t, army(t, lines...), army(t, lines...))
}

package load

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// White ash at 12 %: 103 MPa and 12.0 GPa (Wood Handbook table 5-3a); left of
// it in bending (1 - 1.645 x .16) x .6 x .89 of that, by hand 40.53 MPa.
const ashLeft = 103 * (1 - 1.645*.16) * .6 * .89

// slatOver is a slat of ash 100 wide on two stiff bars 2 m apart, with a hole
// of 10 mm bored through its middle, and goods on all its length.
func slatOver(thick, kg float64) rig {
	r := newRig()
	r.frame()
	r.bars(0, -2000)
	r.timber("slat", "white ash", vehicle.Along, [3]float64{100, 50, 1500}, [3]float64{2200, 100, thick}, hole("spare hole", 1100, 50, 10))
	r.bolt(0, 0, 1500+thick, "slat", "bar-1")
	r.bolt(-2000, 0, 1500+thick, "slat", "bar-2")
	r.Loads = []vehicle.Load{{Name: "apple boxes", Mass: quantity.Mass(kg), Number: 1, On: []string{"slat"}, Shock: 1}}
	return r
}

// byHand is the stress in the middle of that slat: w (l^2 / 8 - a^2 / 2) with a
// the overhang of 100 mm, its own weight with it, over what the hole leaves.
func byHand(t *testing.T, thick, kg float64) float64 {
	ash, err := woods(t).Find("white ash")
	require.NoError(t, err)
	density, _, err := ash.Density(12)
	require.NoError(t, err)
	own := float64(density.Mass(quantity.Volume((2200*100 - math.Pi*25) * thick)))
	w := (kg + own) * 9.80665 / 2200
	return w * (2000*2000/8. - 100*100/2.) / (90 * thick * thick / 6)
}

// An overloaded slat is found, with the stress that statics give by hand; the
// same slat thick enough is not.
func TestOverloadedSlat(t *testing.T) {
	got := slatOver(22, 200).report(t)
	b := got.beam(t, "slat")
	want := byHand(t, 22, 200)
	assert.InEpsilon(t, want, float64(b.Bending.Stress), 0.003)
	assert.InDelta(t, 103, float64(b.Bending.Clear), 1e-9)
	assert.InDelta(t, ashLeft, float64(b.Bending.Left), 1e-9)
	assert.InDelta(t, 1100, float64(b.At), 1)
	require.Equal(t, vehicle.LookAt, got.Remarks[0].Gravity)
	assert.Equal(t, "bending", got.Remarks[0].Check)
	assert.InEpsilon(t, want, got.Remarks[0].Measured.Value, 0.003)
	assert.Equal(t, []string{"slat"}, got.Remarks[0].Parts)
	assert.Contains(t, got.Remarks[0].Says, "Slat is bent to 61.8 MPa 1100.0 mm from its fore end, and sags 175.5 mm. Clear white ash bears 103.0 MPa on average, of which 40.5 MPa is left when variation, lasting load and grade are taken off: it comes to 152 % of that.")
	assert.Contains(t, got.Remarks[0].Do, "28.0 mm deep where it is 22.0 mm now")

	put := slatOver(28, 200).report(t)
	assert.InEpsilon(t, byHand(t, 28, 200), float64(put.beam(t, "slat").Bending.Stress), 0.003)
	for _, r := range put.Remarks {
		assert.Equal(t, vehicle.Noted, r.Gravity, r.Says)
	}
}

// Its sag, by Wood Handbook 2021 eq. 9-2 (constants of table 9-1) for a span
// with the overhangs' moment taken off: 5 w l^4 / 384 EI - M l^2 / 8 EI.
func TestSag(t *testing.T) {
	b := slatOver(29, 200).report(t).beam(t, "slat")
	i := 100 * math.Pow(29, 3) / 12
	w := byHand(t, 29, 200) * (90 * 29 * 29 / 6.) / (2000*2000/8. - 100*100/2.)
	bending, shear, err := timber.Beam{Width: 100, Depth: 29, Span: 2000, Load: timber.Newtons(w * 2000), Loading: timber.UniformOnTwoEnds, Stiffness: 12000}.Deflection()
	require.NoError(t, err)
	want := float64(bending+shear) - w*100*100/2*2000*2000/(8*12000*i)
	assert.InEpsilon(t, want, float64(b.Sag), 0.005)
	assert.InDelta(t, 2000, float64(b.Span), 1e-6)
}

// Two beams that cross in the middle share a load as they are stiff: each
// gives P l^3 / 48 EI + P l / 4 G A' (Wood Handbook 2021 eq. 9-2, table 9-1).
func TestCrossingBeamsShare(t *testing.T) {
	r := newRig()
	r.frame()
	r.bars(0, -2000)
	r.timber("long", "white ash", vehicle.Along, [3]float64{0, 30, 1500}, [3]float64{2000, 60, 60})
	r.bolt(0, 0, 1560, "long", "bar-1")
	r.bolt(-2000, 0, 1560, "long", "bar-2")
	r.timber("short", "white oak", vehicle.Across, [3]float64{-1030, 500, 1440}, [3]float64{1000, 60, 60})
	for _, y := range []float64{500, -500} { // hung from stiff irons on the sills
		id := map[bool]string{true: "near", false: "off"}[y > 0] + "-post"
		r.iron(id, "stay", vehicle.Upright, [3]float64{-1000, y, 1100}, [3]float64{400, 1, 1})
		f := r.bolt(-1000, y, 1470, id, "short")
		f.Way = [3]float64{0, -1, 0}
		g := r.bolt(-1000, y, 1105, id, strings.TrimSuffix(id, "-post")+"-sill")
		g.Way = [3]float64{0, -1, 0}
	}
	r.bolt(-1000, 0, 1560, "long", "short")
	const kg = 150
	r.Loads = []vehicle.Load{{Name: "a press", Mass: kg, Number: 1, On: []string{"long"}, Lies: vehicle.InPlaces, Shock: 1}}
	less := r.report(t)
	r.Loads[0].Mass = 2 * kg
	more := r.report(t)
	stiff := func(e, l float64) float64 {
		bending, shear, err := timber.Beam{Width: 60, Depth: 60, Span: quantity.Length(l), Load: 1, Loading: timber.CentreOnTwoEnds, Stiffness: timber.Megapascals(e)}.Deflection()
		require.NoError(t, err)
		return 1 / float64(bending+shear)
	}
	long, short := stiff(12000, 2000), stiff(12300, 1000)
	p := kg * gravity
	// What one load more adds: their own weights bend them otherwise.
	for id, share := range map[string]float64{"long": long / (long + short), "short": short / (long + short)} {
		l := map[string]float64{"long": 2000, "short": 1000}[id]
		want := p * share * l / 4 / (60 * 60 * 60 / 6)
		assert.InEpsilon(t, want, float64(more.beam(t, id).Bending.Stress-less.beam(t, id).Bending.Stress), 0.003, id)
	}
}

// Axle loads by statics: a load a quarter of the way from the fore axle to the
// hind one stands three quarters on the fore axle; a fifth of the way from the
// near wheel, four fifths on the near one.
func TestAxleLoads(t *testing.T) {
	r := newRig()
	r.frame()
	r.bars(-500)
	empty := r.report(t)
	r.Loads = []vehicle.Load{{Name: "barrel", Mass: 100, Number: 1, On: []string{"bar-1"}, Lies: vehicle.NearEdge, Within: 700, Shock: 3}}
	laden := r.report(t)
	// From 550 to -150 the middle lies at 200: 700 mm from the off wheel's 500.
	fore, hind := laden.Axles[0], laden.Axles[1]
	assert.InDelta(t, 75, float64(fore.Laden.All-empty.Axles[0].Empty.All), 0.01)
	assert.InDelta(t, 25, float64(hind.Laden.All-empty.Axles[1].Empty.All), 0.01)
	assert.InDelta(t, 75*.7, float64(fore.Laden.Near-empty.Axles[0].Empty.Near), 0.05)
	assert.InDelta(t, 25*.3, float64(hind.Laden.Off-empty.Axles[1].Empty.Off), 0.05)
	assert.InDelta(t, float64(laden.Laden.Mass), float64(fore.Laden.All+hind.Laden.All), 0.01)
	assert.InDelta(t, float64(laden.Empty.Mass), float64(fore.Empty.All+hind.Empty.All), 0.01)
	// The track only spreads the wheels.
	r.Track = 1400
	wide := r.report(t)
	assert.InDelta(t, 75*(700+200)/1400., float64(wide.Axles[0].Laden.Near-wide.Axles[0].Empty.Near), 0.05)
}

// Where two boxes and a load balance, by hand.
func TestBalance(t *testing.T) {
	r := newRig()
	r.iron("block", "plate", vehicle.Along, [3]float64{0, 50, 0}, [3]float64{1000, 100, 100})
	r.iron("plate", "plate", vehicle.Along, [3]float64{-1000, 50, 0}, [3]float64{1000, 100, 50})
	got := r.report(t)
	block, plate := 7689*1e-2, 7689*.5e-2
	assert.InDelta(t, block+plate, float64(got.Empty.Mass), 1e-6)
	assert.InDelta(t, (block*-500+plate*-1500)/(block+plate), float64(got.Empty.At[0].Value), 1e-6)
	assert.InDelta(t, (block*50+plate*25)/(block+plate), float64(got.Empty.At[2].Value), 1e-6)
	r.Loads = []vehicle.Load{{Name: "sacks", Mass: 40, Number: 2, On: []string{"plate"}, Middle: 300, Shock: 1}}
	got = r.report(t)
	m := block + plate + 80
	assert.InDelta(t, (block*-500+plate*-1500+80*-1500)/m, float64(got.Laden.At[0].Value), 1e-6)
	assert.InDelta(t, (block*50+plate*25+80*350)/m, float64(got.Laden.At[2].Value), 1e-6)
	assert.Contains(t, got.Why, "no axle")
}

// Masses by formula: a bored box of white oak, a bar of wrought iron an inch
// square and a yard long (10 lb, the trade's rule), a tyre.
func TestMasses(t *testing.T) {
	r := newRig()
	r.timber("sill", "white oak", vehicle.Along, [3]float64{0, 50, 0}, [3]float64{2000, 50, 60}, hole("a", 500, 25, 20))
	r.iron("bar", "strap", vehicle.Along, [3]float64{0, 50, 60}, [3]float64{36 * 25.4, 25.4, 25.4})
	r.Irons = append(r.Irons, &vehicle.Iron{ID: "tyre", Name: "Tyre", Kind: "tyre", Run: vehicle.Round, Sizes: []vehicle.Dimension{
		{Name: "radius", Size: quantity.Size{Value: 500}}, {Name: "wide", Size: quantity.Size{Value: 38}}, {Name: "thick", Size: quantity.Size{Value: 10}},
	}})
	got := r.report(t)
	oak, err := woods(t).Find("white oak")
	require.NoError(t, err)
	density, _, err := oak.Density(12)
	require.NoError(t, err)
	volume := 2000*50*60 - math.Pi*100*60
	assert.InDelta(t, float64(density)*volume/1e9, float64(got.Weights[0].Mass), 1e-9)
	assert.InDelta(t, 10, got.Weights[1].Mass.Pounds(), 0.01)
	assert.InDelta(t, 7689e-9*math.Pi*(510*510-500*500)*38, float64(got.Weights[2].Mass), 1e-9)
	// Off by a tenth, as pieces of one species are.
	assert.InDelta(t, float64(got.Weights[0].Mass)/10, float64(got.Weights[0].Doubt), 1e-9)
}

// A bolt: a shank of 1/2 in through 6 in of wood, a square nut and head and a
// wide washer, by the tables of package bolt.
func TestBoltMass(t *testing.T) {
	const in = 25.4
	f := &vehicle.Fastening{What: "bolt", Diameter: in / 2, Grip: quantity.Size{Value: 6 * in}}
	across, nut := 13./16*in, 7./16*in
	volume := across*across*(in/3+nut) + math.Pi/16*in*in*(6*in+in/8) + math.Pi/4*(1.375*1.375-.562*.562)*.109*in*in*in
	assert.InDelta(t, 7689e-9*volume, boltMass(f), 1e-9)
	assert.Zero(t, boltMass(&vehicle.Fastening{What: "bolt"}))
}

// The US Army six-mule wagon: about two tons (4,000 lb) on a wagon of 1,950 lb
// (specifications of 1882, as a web log quotes them). Hind axle stock 4 3/4
// wide and 4 deep on an iron 1 1/2 square in its middle (the 1858
// specification, as a wheel maker reprints it); bolster 53 by 5 by 3 1/2,
// wheels 5 ft apart (from memory). The body, 42 inside, stands on the bolster
// 21 to either side.
//
// By hand, with all of the bending in the stock: half of 4,000 lb and of the
// body's 1,000 on the hind axle, a quarter on each side, 9 in inside the
// wheel: 1,250 lbf x 9 in over 4.75 x 4^2 / 6 in3, 890 lbf/in2 or 6.1 MPa. The
// bolster lies on the stock for all its length and helps, and so does the iron,
// so that it must be less, and not under a third of it. Wagons of this pattern
// carried such loads for decades, on bad roads that shake it twice or three
// times its weight: a stock must come to well under what is left of clear oak.
func TestSixMuleWagon(t *testing.T) {
	const in = 25.4
	r := newRig()
	r.Unit = quantity.Inches
	r.Track = 60 * in
	for i, hand := range []string{"fore", "hind"} {
		x := -73. * float64(i) * in // from king bolt to hind axle, from memory
		r.iron(hand+"-axle", "axle", vehicle.Across, [3]float64{x - .75*in, 22.5 * in, 0}, [3]float64{45 * in, 1.5 * in, 1.5 * in})
		r.timber(hand+"-stock", "white oak", vehicle.Across, [3]float64{x - 2.375*in, 22.5 * in, 1.5 * in}, [3]float64{45 * in, 4.75 * in, 4 * in})
		r.timber(hand+"-bolster", "white oak", vehicle.Across, [3]float64{x - 2.5*in, 26.5 * in, 5.5 * in}, [3]float64{53 * in, 5 * in, 3.5 * in})
		r.bolt(x, 6*in, 9*in, hand+"-bolster", hand+"-stock", hand+"-axle")
		r.bolt(x, -6*in, 9*in, hand+"-bolster", hand+"-stock", hand+"-axle")
		for _, y := range []float64{21, -21} {
			r.bolt(x, y*in, 9*in, hand+"-stock", hand+"-axle") // clips near the ends of the stock
		}
	}
	for i, id := range []string{"near-sill", "off-sill"} { // the body's lower edge
		y := (21 - 42*float64(i)) * in
		r.timber(id, "white oak", vehicle.Along, [3]float64{12 * in, y + in, 9 * in}, [3]float64{120 * in, 2 * in, 6 * in})
		for _, x := range []float64{0, -73} {
			r.bolt(x*in, y, 15*in, id, map[float64]string{0: "fore", -73: "hind"}[x]+"-bolster")
		}
	}
	r.Loads = []vehicle.Load{
		{Name: "rations", Mass: 4000 * quantity.Pound, Number: 1, On: []string{"near-sill", "off-sill"}, Shock: 1},
		{Name: "body", Mass: 1000 * quantity.Pound, Number: 1, On: []string{"near-sill", "off-sill"}, Always: vehicle.Standing, Shock: 1},
	}
	got := r.report(t)
	b := got.beam(t, "hind-stock")
	t.Logf("hind stock %.2f MPa, left %.1f MPa; bolster %.2f MPa; hind axle %.0f lb", b.Bending.Stress, b.Bending.Left, got.beam(t, "hind-bolster").Bending.Stress, got.Axles[1].Laden.All.Pounds())
	assert.Less(t, float64(b.Bending.Stress), 6.1)
	assert.Greater(t, float64(b.Bending.Stress), 6.1/3)
	assert.Less(t, 3*float64(b.Bending.Stress), float64(b.Bending.Left))
	for _, m := range got.Remarks {
		assert.NotEqual(t, vehicle.LookAt, m.Gravity, m.Says)
	}
}

// trialWagon is one with slats that share, for the properties.
func trialWagon(loads ...vehicle.Load) rig {
	r := newRig()
	r.frame()
	for i, x := range []float64{0, -900, -2000} {
		id := "cross-" + string(rune('a'+i))
		r.timber(id, "white oak", vehicle.Across, [3]float64{x - 30, 550, 1100}, [3]float64{1100, 60, 60})
		r.bolt(x, 500, 1160, id, "near-sill")
		r.bolt(x, -500, 1160, id, "off-sill")
	}
	for i, y := range []float64{300, 0, -300} {
		id := "slat-" + string(rune('a'+i))
		r.timber(id, "white ash", vehicle.Along, [3]float64{50, y + 60, 1160}, [3]float64{2100, 120, 20 + 5*float64(i)})
		for k, x := range []float64{0, -900, -2000} {
			r.bolt(x, y, 1180, id, "cross-"+string(rune('a'+k)))
		}
	}
	r.Loads = loads
	return r
}

func drawn(t *rapid.T) []vehicle.Load {
	var loads []vehicle.Load
	for i := range rapid.IntRange(1, 3).Draw(t, "loads") {
		loads = append(loads, vehicle.Load{
			Name: string(rune('a' + i)), Mass: quantity.Mass(rapid.Float64Range(1, 500).Draw(t, "kg")), Number: 1, Shock: 1,
			On:   rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"slat-a", "slat-b", "slat-c", "cross-a"}), 1, 3, rapid.ID[string]).Draw(t, "on"),
			Lies: rapid.SampledFrom(vehicle.Lies()).Draw(t, "lies"), Within: 200,
		})
	}
	return loads
}

// Whatever it carries, the wheels carry all of it.
func TestWheelsCarryAll(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		got, err := Of(trialWagon(drawn(rt)...).Vehicle, woods(rt))
		require.NoError(rt, err)
		for _, c := range []struct {
			all quantity.Mass
			of  func(Axle) Stand
		}{{got.Empty.Mass, func(a Axle) Stand { return a.Empty }}, {got.Laden.Mass, func(a Axle) Stand { return a.Laden }}} {
			up := 0.0
			for _, a := range got.Axles {
				up += float64(c.of(a).All)
			}
			require.InEpsilon(rt, float64(c.all), up, 1e-4)
		}
		// Statics: the axles' turning about the fore one is the whole's.
		require.InDelta(rt, float64(got.Laden.Mass)*float64(got.Laden.At[0].Value), float64(got.Axles[1].Laden.All)*float64(got.Axles[1].At), 25*float64(got.Laden.Mass))
	})
}

// Twice of all that a wagon bears, itself with it, bends and presses twice as much.
func TestTwiceTheLoad(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := newStudy(trialWagon(drawn(rt)...).Vehicle, woods(rt))
		s.lade(Laden)
		once, err := s.solve()
		require.NoError(rt, err)
		for _, m := range s.list {
			for _, loads := range [][]patch{m.loads, m.leans} {
				for i := range loads {
					loads[i].total *= 2
				}
			}
		}
		twice, err := s.solve()
		require.NoError(rt, err)
		for _, m := range s.list {
			for i := range once.bends[m].moment {
				require.InDelta(rt, 2*once.bends[m].moment[i], twice.bends[m].moment[i], 1)
			}
		}
		for i := range once.press {
			require.InDelta(rt, 2*once.press[i], twice.press[i], 1e-2)
		}
	})
}

// In whatever order parts, irons and fastenings stand, each timber comes to the same.
func TestOrderChangesNothing(t *testing.T) {
	load := vehicle.Load{Name: "boxes", Mass: 400, Number: 1, Shock: 1, On: []string{"slat-a", "slat-b"}}
	r := trialWagon(load)
	want := r.report(t)
	random := rand.New(rand.NewPCG(4, 2))
	for range 5 {
		random.Shuffle(len(r.Parts), func(i, j int) { r.Parts[i], r.Parts[j] = r.Parts[j], r.Parts[i] })
		random.Shuffle(len(r.Irons), func(i, j int) { r.Irons[i], r.Irons[j] = r.Irons[j], r.Irons[i] })
		random.Shuffle(len(r.Fastenings), func(i, j int) { r.Fastenings[i], r.Fastenings[j] = r.Fastenings[j], r.Fastenings[i] })
		got := r.report(t)
		for _, b := range want.Beams {
			assert.InEpsilon(t, float64(b.Bending.Stress), float64(got.beam(t, b.Part.ID).Bending.Stress), 1e-4, b.Part.ID)
		}
	}
	// And the same input gives the same bytes.
	write := func(r *Report) string {
		var s strings.Builder
		for _, l := range r.Lists() {
			require.NoError(t, l.Write(&s, listing.CSV))
		}
		return s.String()
	}
	assert.Equal(t, write(r.report(t)), write(r.report(t)))
}

// A load where nothing carries it, one axle, no vehicle: told, not guessed.
func TestTold(t *testing.T) {
	_, err := Of(nil, woods(t))
	require.Error(t, err)
	r := trialWagon(vehicle.Load{Name: "boxes", Mass: 10, Number: 1, Shock: 1, On: []string{"gone"}})
	got := r.report(t)
	assert.Contains(t, got.Notes[0].Says, "gone")
	r.Irons = r.Irons[:1]
	assert.Contains(t, r.report(t).Why, "one axle")
	r = trialWagon()
	r.timber("chest", "white ash", vehicle.Along, [3]float64{0, 100, 1300}, [3]float64{500, 200, 200})
	got = r.report(t)
	assert.Contains(t, got.Notes[0].Says, "Nothing in the survey fastens the chest to what stands on the wheels: its weight is set on the slat-")
	assert.Contains(t, got.Remarks[1].Says, "states no load")
}

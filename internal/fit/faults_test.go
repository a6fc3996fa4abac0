package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

func TestSoundSillHasNoFault(t *testing.T) { nothing(t, sill(100, 495, 85)) }

// Grip 65 mm; nut 7/16 in (ASME B18.2.2); one thread of 13 to the inch (unified coarse).
func TestShortBolt(t *testing.T) {
	r := theOne(t, sill(100, 495, 70), "bolt length")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 70, r.Measured.Value, 1e-9)
	near(t, 65+7.0/16*25.4+25.4/13, r.Limit.Value, 0.01)
}

func TestBoltFillsItsNutWithNoThreadPast(t *testing.T) {
	r := theOne(t, sill(100, 495, 77), "bolt length")
	require.Equal(t, vehicle.LookAt, r.Gravity)
}

func TestBoltTooLong(t *testing.T) {
	b := sill(100, 495, 120)
	b.Fastenings[0].Hardware.Bolt.Thread = 70
	require.Equal(t, vehicle.LookAt, theOne(t, b, "bolt length").Gravity)
}

// The nut comes to 65 mm; a bolt 85 long with 15 of thread ends it at 70 and the
// run-out of the die.
func TestThreadEndsTooSoon(t *testing.T) {
	b := sill(100, 495, 85)
	b.Fastenings[0].Hardware.Bolt.Thread = 15
	r := theOne(t, b, "thread")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 5+2.5*25.4/13, r.Limit.Value-r.Measured.Value, 0.01)
}

func TestHoleFourMillimetresOff(t *testing.T) {
	r := theOne(t, sill(104, 495, 85), "holes in line")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 4, r.Measured.Value, 1e-6)
	near(t, 25.4/32, r.Limit.Value, 1e-6)
	require.Equal(t, []string{"sill"}, r.Parts)
}

func TestContactMissing(t *testing.T) {
	b := sill(100, 492, 90) // the strap hangs 3 mm under the sill
	for _, f := range b.Fastenings {
		f.Grip = sized(68)
		f.Hardware.Bolt.Length = 88
	}
	r := theOne(t, b, "contact")
	near(t, 3, r.Measured.Value, 1e-6)
	require.Equal(t, 2, r.Number, "at both bolts")
	for _, f := range b.Fastenings {
		f.Through[1].Gap = 3 // said in the survey
	}
	nothing(t, b)
}

// A bar across that comes 2 mm down into the sill: 2 x 40 x 50 mm by formula.
func TestClashOfTwoMillimetres(t *testing.T) {
	b := sill(100, 495, 85)
	b.wood("bar", form.Vec{X: 520, Y: -100, Z: 558}, across, 300, 40, 50)
	r := theOne(t, b, "overlap")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 2, r.Measured.Value, 0.02)
	require.Contains(t, r.Says, "4.00 cm3")
	near(t, 500, r.Place[0].Millimetres(), 20.1)
	near(t, 559, r.Place[2].Millimetres(), 0.1)
	b.Parts[1].Place.At[2] = sized(560)
	nothing(t, b)
}

// A tenon in its mortise is no clash; left too thick it is, by half a millimetre on
// each side and so no more than is pared, or by 2 mm.
func TestTenonInItsMortise(t *testing.T) {
	for _, c := range []struct {
		thick length
		fault bool
	}{{16, false}, {20, true}} {
		b := newBuild()
		b.wood("post", form.Vec{Z: 100}, straight, 400, 60, 60,
			parts.Mortise{ID: "mortise", What: "mortise", Face: parts.FirstSide, At: form.Point{X: 200, Y: 30}, Long: 40, Wide: 16, Depth: 0})
		b.wood("rail", form.Vec{X: 220, Y: -300, Z: 100}, across, 360, 40, 60,
			parts.Tenon{ID: "tenon", End: parts.SecondEnd, At: form.Point{X: 20, Y: 30}, Long: 60, Wide: 40, Thick: c.thick})
		b.Parts[1].Place.At[0] = sized(220)
		if !c.fault {
			nothing(t, b)
			continue
		}
		r := theOne(t, b, "overlap")
		near(t, 2, r.Measured.Value, 0.02) // on each cheek of the tenon
	}
}

// Two slats 100 mm wide, each held in the middle: 0.00289 of the width for each
// percent of moisture, yellow-poplar, tangential (Wood Handbook, table 13-5).
func TestSlatBindsWhenWet(t *testing.T) {
	slats := func(gap length) *build {
		b := newBuild()
		b.Moisture.Wettest = 16
		b.wood("bar", form.Vec{X: 100, Y: -150, Z: 400}, across, 300, 60, 50, bored("1", 99.75-gap/2, 30), bored("2", 200.25+gap/2, 30))
		for i, y := range []length{-100 - gap/2 - 0.25, gap/2 + 0.25} {
			id := []string{"1", "2"}[i]
			p := b.wood("slat "+id, form.Vec{Y: y, Z: 450}, straight, 900, 100, 20, bored(id, 70, 50))
			p.Kind, p.Item.Kind = "slat", "slat"
			b.bolt(id, form.Vec{X: 70, Y: y + 50, Z: 470}, 70, vehicle.Stop{ID: p.ID}, vehicle.Stop{ID: "bar"})
		}
		return b
	}
	r := theOne(t, slats(0), "binds when wet") // 0.5 mm apart
	near(t, 0.5-2*50*0.00289*6, r.Measured.Value, 0.06)
	nothing(t, slats(2.5))
}

// A slot 30 mm high takes no bolt of 100, though there is room for its head.
func TestBoltThatCannotBeEntered(t *testing.T) {
	slotted := func(high length) *build {
		b := newBuild()
		b.wood("beam", form.Vec{Z: 500}, straight, 600, 60, 200,
			parts.Mortise{ID: "slot", What: "slot", Face: parts.FirstSide, At: form.Point{X: 300, Y: 80 + high/2}, Long: 80, Wide: high},
			parts.Hole{ID: "fastening 1", Face: parts.Under, At: form.Point{X: 300, Y: 30}, Diameter: half + quantity.Inch/32, Depth: 81})
		b.bar("strap", form.Vec{Z: 495}, 600, 60, 5, 300)
		b.bolt("1", form.Vec{X: 300, Y: 30, Z: 580}, 85, vehicle.Stop{ID: "beam"}, vehicle.Stop{ID: "strap", Hole: 1})
		return b
	}
	r := theOne(t, slotted(40), "bolt entry")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 40-half.Millimetres()-25.4/8, r.Measured.Value, 4) // above its head
	b := slotted(40)
	b.Fastenings[0].Way, b.Fastenings[0].Head[2] = [3]float64{0, 0, 1}, sized(495) // turned round: its nut is in the slot
	b.Fastenings[0].Through[0], b.Fastenings[0].Through[1] = b.Fastenings[0].Through[1], b.Fastenings[0].Through[0]
	nothing(t, b)
}

// Between two cheeks 20 mm from a nut's middle no spanner turns, and a lid over its
// end keeps a box spanner off.
func TestNutThatCannotBeTurned(t *testing.T) {
	b := newBuild()
	b.wood("beam", form.Vec{Z: 500}, straight, 600, 60, 200,
		parts.Mortise{ID: "pocket", What: "pocket", Face: parts.FirstSide, At: form.Point{X: 300, Y: 50}, Long: 26, Wide: 30},
		parts.Hole{ID: "fastening 1", Face: parts.Upper, At: form.Point{X: 300, Y: 30}, Diameter: half + quantity.Inch/32, Depth: 136})
	b.bar("strap", form.Vec{Z: 700}, 600, 60, 5, 300)
	b.bolt("1", form.Vec{X: 300, Y: 30, Z: 705}, 140, vehicle.Stop{ID: "strap", Hole: 1}, vehicle.Stop{ID: "beam"})
	found := grave(offered(t, b))
	require.NotEmpty(t, found)
	require.Equal(t, "spanner", found[0].Check)
}

// A block in a box of four walls, a floor and a lid of one piece.
func TestPartThatIsTrapped(t *testing.T) {
	b := newBuild()
	b.wood("beam", form.Vec{}, straight, 600, 100, 100,
		parts.Mortise{ID: "hollow", What: "hollow", Face: parts.FirstSide, At: form.Point{X: 300, Y: 50}, Long: 60, Wide: 40})
	b.wood("key", form.Vec{X: 280, Y: 20, Z: 40}, straight, 40, 60, 20)
	nothing(t, b) // it slides out of the side
	b.bar("lid near", form.Vec{X: 200, Y: 100}, 200, 5, 100)
	b.bar("lid off", form.Vec{X: 200, Y: -5}, 200, 5, 100)
	nothing(t, b) // the lids come off first
}

// A key that is thicker at both its ends than the mortise it goes through can never
// have been brought in; as thick as its middle all along, it can.
func TestKeyThatIsTrapped(t *testing.T) {
	keyed := func(waisted ...parts.Feature) *build {
		b := newBuild()
		b.wood("beam", form.Vec{}, straight, 600, 100, 100,
			parts.Mortise{ID: "hollow", What: "hollow", Face: parts.FirstSide, At: form.Point{X: 300, Y: 50}, Long: 104, Wide: 24})
		at, deep := form.Vec{X: 350, Y: -100}, length(100)
		if len(waisted) == 0 {
			at.Z, deep = 40, 20
		}
		b.wood("key", at, across, 300, 100, deep, waisted...)
		return b
	}
	waist := func(id string, f parts.Face) parts.Housing {
		return parts.Housing{ID: id, What: "waist", Face: f, Station: 150, Width: 104, Depth: 40}
	}
	nothing(t, keyed())
	r := offered(t, keyed(waist("above", parts.Upper), waist("below", parts.Under))).Remarks
	require.NotEmpty(t, r)
	require.Equal(t, vehicle.CannotGo, r[0].Gravity)
	require.Equal(t, "trapped", r[0].Check)
	require.Subset(t, []string{"beam", "key"}, r[0].Parts)
}

// A wheel of radius 500 whose inner face is 300 from the king bolt meets a body's
// side a from it where 300 cos - 500 sin of the angle is a: by hand, a = 90.85 mm
// at 22 degrees.
func turning(halfBody length, asked float64) *build {
	b := newBuild()
	b.wood("body", form.Vec{X: -1000, Y: -halfBody, Z: 300}, straight, 2000, 2*halfBody, 400)
	b.wood("bed", form.Vec{X: 30, Y: -250, Z: 100}, across, 500, 60, 60)
	b.Moves = []vehicle.Move{{
		Kind: vehicle.Turns, Name: "fore carriage", With: []string{"bed"}, Axis: [3]float64{0, 0, 1},
		At: [3]quantity.Size{sized(0), sized(0), sized(0)}, Asked: quantity.Angle(asked) * quantity.Degree,
		Wheels: []vehicle.WheelRoom{
			{Name: "near fore wheel", Centre: [3]length{0, 325, 500}, Axis: [3]float64{0, 1, 0}, Radius: 500, Wide: 50},
			{Name: "off fore wheel", Centre: [3]length{0, -325, 500}, Axis: [3]float64{0, -1, 0}, Radius: 500, Wide: 50},
		},
	}}
	return b
}

func TestWheelTouchesTheBody(t *testing.T) {
	for _, at := range []float64{10, 22, 35} {
		s, c := math.Sincos(at * math.Pi / 180)
		a := length(300*c - 500*s)
		if a < 10 {
			a = 10
		}
		r := offered(t, turning(a, 0)).Remarks
		require.Len(t, r, 1)
		want := math.Atan2(300, 500) - math.Asin(float64(a)/math.Hypot(300, 500)) // of 300 cos - 500 sin = a
		near(t, want*180/math.Pi, r[0].Measured.Value, 0.1)
		require.Equal(t, vehicle.Noted, r[0].Gravity)
	}
	s, c := math.Sincos(22 * math.Pi / 180)
	r := theOne(t, turning(length(300*c-500*s), 30), "turning")
	require.Equal(t, vehicle.CannotGo, r.Gravity)
	near(t, 22, r.Measured.Value, 0.1)
	near(t, 30, r.Limit.Value, 1e-9)
	require.Contains(t, r.Says, "fore wheel")
	nothing(t, turning(length(300*c-500*s), 20))
}

// A tailboard t thick on a pin in its hind face, q above its lower edge, g behind a
// cross bar: the edge strikes the bar where t cos + q sin of the angle is t + g.
func tailboard(q, g length) *build {
	const t = 20
	b := newBuild()
	b.wood("tailboard", form.Vec{Y: -400, Z: 200 - q}, across, 800, t, 300)
	b.wood("hind cross bar", form.Vec{X: g + 60, Y: -400, Z: 100}, across, 800, 60, 101)
	b.Moves = []vehicle.Move{{
		Kind: vehicle.Swings, Name: "tailboard", With: []string{"tailboard"}, Axis: [3]float64{0, -1, 0},
		At: [3]quantity.Size{sized(-t), sized(0), sized(200)}, Asked: 90 * quantity.Degree,
	}}
	return b
}

func TestTailboardHitsTheHindCrossBar(t *testing.T) {
	for _, c := range []struct{ q, g length }{{30, 5}, {40, 8}, {25, 1}} {
		r := theOne(t, tailboard(c.q, c.g), "swing")
		require.Equal(t, vehicle.CannotGo, r.Gravity)
		want := math.Atan2(float64(c.q), 20) - math.Acos(float64(20+c.g)/math.Hypot(20, float64(c.q)))
		near(t, want*180/math.Pi, r.Measured.Value, 0.15)
	}
	nothing(t, tailboard(0, 5))
}

// A brake block 40 mm before a wheel; a spring that comes to its stop.
func TestTravels(t *testing.T) {
	b := newBuild()
	b.wood("block", form.Vec{X: 560, Y: -50, Z: 470}, across, 100, 20, 60)
	wheel := vehicle.WheelRoom{Name: "near hind wheel", Centre: [3]length{0, 0, 500}, Axis: [3]float64{0, 1, 0}, Radius: 500, Wide: 50}
	b.Moves = []vehicle.Move{{
		Kind: vehicle.Travels, Name: "brake", With: []string{"block"}, Axis: [3]float64{-1, 0, 0}, Stop: 50, Wheels: []vehicle.WheelRoom{wheel},
	}}
	r := offered(t, b).Remarks
	require.Empty(t, grave(offered(t, b)))
	require.Equal(t, "reach", r[1].Check)
	near(t, 40, r[1].Measured.Value, 0.1)
	b.Moves[0].Stop = 30
	late := theOne(t, b, "reach")
	near(t, 40, late.Measured.Value, 0.1)

	s := newBuild()
	s.wood("axle", form.Vec{Z: 100}, across, 500, 60, 60)
	s.wood("sill", form.Vec{X: -200, Y: 200, Z: 240}, straight, 400, 60, 60)
	s.Moves = []vehicle.Move{{Kind: vehicle.Travels, Name: "spring", With: []string{"axle"}, Axis: [3]float64{0, 0, 1}, Loaded: 50, Stop: 70}}
	nothing(t, s) // 80 mm of room
	s.Moves[0].Stop = 90
	hit := theOne(t, s, "travel")
	require.Equal(t, vehicle.LookAt, hit.Gravity)
	near(t, 80, hit.Measured.Value, 0.1)
	s.Moves[0].Loaded = 85
	require.Equal(t, vehicle.CannotGo, theOne(t, s, "travel").Gravity)
}

// 2.5 and 1.5 bolt diameters: National Design Specification, tables 12.5.1A to C.
func TestHoleNearTheEnd(t *testing.T) {
	b := newBuild()
	b.wood("sill", form.Vec{Z: 500}, straight, 1000, 50, 60, bored("1", 30, 15), bored("2", 900, 25))
	b.bar("strap", form.Vec{Y: -10, Z: 495}, 200, 50, 5, 30)
	b.bar("strap 2", form.Vec{X: 800, Z: 495}, 150, 50, 5, 100)
	b.bolt("1", form.Vec{X: 30, Y: 15, Z: 560}, 65, vehicle.Stop{ID: "sill"}, vehicle.Stop{ID: "strap", Hole: 1})
	b.bolt("2", form.Vec{X: 900, Y: 25, Z: 560}, 65, vehicle.Stop{ID: "sill"}, vehicle.Stop{ID: "strap 2", Hole: 1})
	found := grave(offered(t, b))
	require.Len(t, found, 2, "%v", found)
	require.Equal(t, "end distance", found[0].Check)
	near(t, 30, found[0].Measured.Value, 1e-6)
	near(t, 2.5*12.7, found[0].Limit.Value, 1e-6)
	require.Equal(t, "edge distance", found[1].Check)
	near(t, 15, found[1].Measured.Value, 1e-6)
	near(t, 1.5*12.7, found[1].Limit.Value, 1e-6)
}

func TestSquareNeckOnIron(t *testing.T) {
	b := newBuild()
	b.wood("sill", form.Vec{Z: 500}, straight, 1000, 50, 60, bored("1", 500, 25))
	b.bar("strap", form.Vec{Z: 560}, 1000, 50, 5, 500)
	f := b.bolt("1", form.Vec{X: 500, Y: 25, Z: 565}, 65, vehicle.Stop{ID: "strap", Hole: 1}, vehicle.Stop{ID: "sill"})
	nothing(t, b)
	f.Hardware.Head = vehicle.SquareNeck
	require.Equal(t, vehicle.LookAt, theOne(t, b, "square neck").Gravity)
}

func TestHoleTooTight(t *testing.T) {
	b := sill(100, 495, 85)
	shape := parts.Plain{Name: "sill", Long: 1000, Wide: 50, Deep: 60, Work: []parts.Feature{
		parts.Hole{ID: "fastening 1", Face: parts.Upper, At: form.Point{X: 100, Y: 25}, Diameter: half}, bored("2", 900, 25),
	}}
	b.Items[0].Shape, b.Items[0].Stick = shape, shape.Stick()
	near(t, 0, theOne(t, b, "hole size").Measured.Value, 1e-9)
}

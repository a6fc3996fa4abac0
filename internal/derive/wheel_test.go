package derive_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
)

// A cart is a survey of one pair of wheels on an axle; %s are the tyre's line and the wheel's.
const cart = `[vehicle]
name = "Barrow"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
timber = "white oak"
bought = 20
service = "9 .. 14"
[iron]
axle = { kind = "axle", runs = "across", thick = "1 1/4", wide = "1 1/4", long = "%s" }
%s
[part]
bed = { kind = "axle bed", runs = "across", long = "38 guess", wide = "3 guess", deep = "3 guess" }
[wheel]
barrow-wheel = { pair = true, felloes = 6, axle = "axle", nave-timber = "rock elm", %s }
[[fastening]]
bolt = "3/8"
down = ["bed", "axle"]
grip = "4 1/4"
[evidence]
guess = ["bed.mid-x = axle.mid-x", "bed.near = axle.near"]
`

func cartOf(long, tyre, line string) []byte { return fmt.Appendf(nil, cart, long, tyre, line) }

func wheelNamed(t *testing.T, v *vehicle.Vehicle, id string) *vehicle.Wheel {
	t.Helper()
	for _, w := range v.Wheels {
		if w.ID == id {
			return w
		}
	}
	require.Fail(t, "no wheel "+id, "%v", v.Findings)
	return nil
}

func figure(t *testing.T, w *vehicle.Wheel, name string) vehicle.Dimension {
	t.Helper()
	for _, d := range w.Sizes {
		if d.Name == name {
			return d
		}
	}
	require.Fail(t, "no figure "+name)
	return vehicle.Dimension{}
}

// sayings are every finding of a concern, in one text.
func sayings(v *vehicle.Vehicle, c vehicle.Concern) string {
	var out []string
	for _, f := range v.Findings {
		if f.Concern == c {
			out = append(out, f.Says)
		}
	}
	return strings.Join(out, "\n")
}

const inch = 25.4

// From a whole tyre, from a piece of 60 degrees, and for the wheel of the pair of
// which nothing is left, the true radius of the wood lies within what is stated:
// never past 3.5 times it, and past 1.96 times it in no more than a tenth.
func TestWheelsHoldTheTruth(t *testing.T) {
	const runs = 60
	r := rand.New(rand.NewPCG(1858, 7))
	read := func(mm, by float64) string { return fmt.Sprintf("%.3f mm", mm+r.NormFloat64()*by) }
	give := map[string]float64{}
	for _, kind := range []string{"whole", "piece"} {
		beyond := map[string]int{}
		for range runs {
			radius, thick, wide := 500+r.NormFloat64()*60, 9.5+r.NormFloat64(), 38+r.NormFloat64()*3
			outer := radius + thick
			var tyre string
			if kind == "whole" {
				tyre = fmt.Sprintf(`tyre = { kind = "tyre", girth = "%s ± 1.5 mm", wide = "%s ± 0.4 mm", thick = "%s ± 0.4 mm" }`,
					read(2*math.Pi*outer, 1.5), read(wide, .4), read(thick, .4))
			} else {
				rise := outer * (1 - math.Cos(math.Pi/6))
				tyre = fmt.Sprintf(`tyre = { kind = "tyre", chord = "%s ± 0.8 mm", rise = "%s ± 0.8 mm", wide = "%s ± 0.4 mm", thick = "%s ± 0.4 mm" }`,
					read(outer, .8), read(rise, .8), read(wide, .4), read(thick, .4))
			}
			v := derived(t, "cart", cartOf("38", tyre, `tyre = "tyre"`))
			// The other wheel differs as near and off may: its doubt is the survey's own.
			truth := map[string]float64{"near-barrow-wheel": radius, "off-barrow-wheel": radius + r.NormFloat64()*float64(quantity.Inch)/16}
			for id, want := range truth {
				d := figure(t, wheelNamed(t, v, id), "radius")
				off := math.Abs(d.Value.Millimetres()-want) / d.Doubt.Millimetres()
				require.Less(t, off, 3.5, "%s %s: %.2f, give or take %.2f; true %.2f", kind, id, d.Value, d.Doubt, want)
				if off > 1.96 {
					beyond[id]++
				}
				give[kind+" "+id] = d.Doubt.Millimetres()
			}
		}
		for id, n := range beyond {
			require.LessOrEqual(t, n, runs/10, "%s %s", kind, id)
		}
	}
	t.Logf("give or take of the radius, mm: %v", give)
	require.Greater(t, give["piece near-barrow-wheel"], 2*give["whole near-barrow-wheel"], "a piece tells less than the whole")
	require.Greater(t, give["whole off-barrow-wheel"], give["whole near-barrow-wheel"], "the twin tells less than the tyre")
}

// How each wheel is known: one from its tyre, the other only as its twin, and the
// figures nobody read by the trade's rules.
func TestWheelsTellHowTheyAreKnown(t *testing.T) {
	v := derived(t, "cart", cartOf("38", `tyre = { kind = "tyre", girth = "125 21/32", wide = "1 1/2", thick = "3/8" }`, `tyre = "tyre"`))
	near, off := wheelNamed(t, v, "near-barrow-wheel"), wheelNamed(t, v, "off-barrow-wheel")
	require.Equal(t, quantity.FromIron, figure(t, near, "radius").Known)
	require.Equal(t, quantity.Paired, figure(t, off, "radius").Known)
	require.Equal(t, quantity.TradeRule, figure(t, near, "dish").Known)
	require.NotNil(t, near.Tyre)
	require.Nil(t, off.Tyre)
	// Tongue: a third of the tyre's width and 1/8 in, Richardson, Practical Carriage
	// Building (1891), "Points for wheelwrights"; dish 3/4 to 1 in for a wagon,
	// Holmstrom, second book.
	require.InDelta(t, (1.5/3+.125)*inch, figure(t, near, "tongue").Value.Millimetres(), .5)
	dish := figure(t, near, "dish").Value.Inches()
	require.True(t, dish >= .75 && dish <= 1, "%v", dish)
	for _, w := range v.Wheels {
		made, err := w.Made()
		require.NoError(t, err)
		require.InDelta(t, 0, made.Stance().OutOfPlumb[0].Degrees(), .02, "the bottom spoke stands plumb")
		// The hub stands out past its axle's end, and the arm falls outward.
		y := w.Place.At[1].Value.Inches()
		require.Greater(t, math.Abs(y), 19.)
		require.Equal(t, w.Hand == vehicle.Near, y > 0)
		require.Less(t, w.Place.Axes[1][2], 0.)
		var kinds []string
		for _, p := range w.Parts {
			kinds = append(kinds, p.Kind)
			require.NotNil(t, p.Item)
		}
		require.Equal(t, []string{"nave", "spoke"}, kinds)
	}
	for _, it := range v.Items {
		if want := map[string]int{"barrow-wheel-nave": 2, "barrow-wheel-spoke": 24}[it.ID]; want != 0 {
			require.Equal(t, want, it.NumberOff, it.ID)
			require.NoError(t, it.Shape.Validate())
		}
	}
}

const whole = `tyre = { kind = "tyre", girth = "125 21/32", wide = "1 1/2", thick = "3/8" }`

// A published height that says nothing of what it is over is told of as open, and
// holds both; where irons tell, they are asked.
func TestHeightOverIsAsked(t *testing.T) {
	bare := derived(t, "cart", cartOf("38", "", `height = "40 ± 1/16 like", tyre-thick = "3/8 ± 1/64 like"`))
	require.Contains(t, sayings(bare, vehicle.Open), "Nothing else tells")
	d := figure(t, wheelNamed(t, bare, "near-barrow-wheel"), "radius")
	for _, radius := range []float64{20, 20 - 3./8} {
		require.Less(t, math.Abs(d.Value.Inches()-radius), 1.96*d.Doubt.Inches(), "both ways")
	}
	ironed := derived(t, "cart", cartOf("38", whole, `tyre = "tyre", height = "40 ± 1/16 like"`))
	require.Contains(t, sayings(ironed, vehicle.Advice), "By its irons it is over the tyre")
	wood := derived(t, "cart", cartOf("38", "", `height = "40 ± 1/16 like", over = "wood"`))
	require.NotContains(t, sayings(wood, vehicle.Open), "It is not said")
	require.InDelta(t, 20, figure(t, wheelNamed(t, wood, "near-barrow-wheel"), "radius").Value.Inches(), .01)
}

// Arm, box, dish, cant and track close where they are those of one wheel, and the
// one that is not is told of, by how much and with its line. The readings are
// taken from package wheel's own geometry.
func TestClosureIsToldWithWhatContradicts(t *testing.T) {
	v := derived(t, "cart", cartOf("38", whole, `tyre = "tyre"`))
	made, err := wheelNamed(t, v, "near-barrow-wheel").Made()
	require.NoError(t, err)
	s := made.Spec
	s.Track = wheel.Track{Wide: 1200}
	drawn, err := wheel.New(s)
	require.NoError(t, err)
	pair, ok := drawn.Pair()
	require.True(t, ok)
	fall := float64(s.Arm.Long) * math.Sin(float64(drawn.Stance().Cant))
	line := func(fall, collar, track float64) []byte {
		mm := func(name string, v float64) string { return fmt.Sprintf(`%s = "%.2f mm ± 0.4 mm measured"`, name, v) }
		return cartOf(fmt.Sprintf("%.2f mm", float64(pair.Shoulders)), whole, strings.Join([]string{
			`tyre = "tyre"`, mm("dish", float64(s.Dish.Tyred)), mm("foot-wide", float64(s.Spokes.FootWide)), mm("nave", float64(s.Nave.Diameter)),
			mm("nave-long", float64(s.Nave.Long)), mm("nave-forward", float64(s.Nave.Forward)), mm("box-in", float64(s.Box.In)),
			mm("box-large", float64(s.Box.Large)), mm("arm-collar", collar), mm("arm-long", float64(s.Arm.Long)),
			mm("arm-fall", fall), mm("track", track),
		}, ", "))
	}
	good := float64(s.Box.Large) - inch/32
	v = derived(t, "cart", line(fall, good, 1200))
	require.Empty(t, sayings(v, vehicle.Contradiction))
	require.Equal(t, 3, strings.Count(sayings(v, vehicle.Advice), "close:"), sayings(v, vehicle.Advice))
	v = derived(t, "cart", line(fall+20, good, 1200))
	require.Contains(t, sayings(v, vehicle.Contradiction), "arm-fall")
	v = derived(t, "cart", line(fall, good+8, 1200))
	require.Contains(t, sayings(v, vehicle.Contradiction), "arm-collar")
	v = derived(t, "cart", line(fall, good, 1275))
	require.Contains(t, sayings(v, vehicle.Contradiction), "track")
}

// A wheel of which nothing at all is left cannot be made, and what would tell is said.
func TestNothingLeftIsTold(t *testing.T) {
	v := derived(t, "cart", cartOf("38", "", `use = "wagon"`))
	require.Empty(t, v.Wheels)
	require.Contains(t, sayings(v, vehicle.Unmakeable), "A tyre, a piece of one, its height or a twin would tell")
}

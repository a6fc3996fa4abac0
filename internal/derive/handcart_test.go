package derive_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// The hand-cart of P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, in a copy
// that is garbled in places; sums by hand stand beside each check.
func handcart(t *testing.T, evidence string, replace ...string) *vehicle.Vehicle {
	t.Helper()
	data, err := os.ReadFile("../../testdata/handcart/cart.toml")
	require.NoError(t, err)
	text := string(data)
	for i := 0; i < len(replace); i += 2 {
		require.Equal(t, 1, strings.Count(text, replace[i]), replace[i])
		text = strings.Replace(text, replace[i], replace[i+1], 1)
	}
	return derived(t, "cart.toml", []byte(text+evidence))
}

// The pillar bolt goes through capping bar 1 1/2, pillar, and cross rail 1 1/4 notched
// 3/16 over the pillar: 2 9/16 and the pillar. Neither the bolt's length nor the
// pillar's height is told; either gives the other, and without one there is none.
func TestHandcartPillarBolt(t *testing.T) {
	v := handcart(t, "")
	require.Equal(t, quantity.Unknown, sizeOf(t, v, "front-pillar", "high").Known)
	require.True(t, told(v, vehicle.Open, "high", "front pillar"))
	for _, id := range []string{"2 near", "2 off"} {
		require.Equal(t, quantity.Unknown, fastening(t, v, id).Grip.Known)
	}

	// a pillar of 14, or a bolt with its mark at 18: any such figure
	v = handcart(t, "\n[evidence]\nmeasured = [\"front-pillar.high = 14\"]\n")
	for _, id := range []string{"2 near", "2 off"} {
		grip := fastening(t, v, id).Grip
		require.InDelta(t, 1.5+14+1.25-3./16, grip.Value.Inches(), 1e-6)
		require.Equal(t, quantity.LikeVehicle, grip.Known, "the bars are")
	}
	v = handcart(t, "", `bolt = "23/64"`, "grip = [\"18\", \"18\"]\nbolt = \"23/64\"")
	high := sizeOf(t, v, "front-pillar", "high")
	require.InDelta(t, 18-(1.5+1.25-3./16), high.Value.Inches(), 1e-6)
	require.Equal(t, quantity.LikeVehicle, high.Known)
	require.False(t, told(v, vehicle.Open, "high", "front pillar"))
}

// A handle 1 1/2 wide on a bottom side of 1 1/2 is a grip of 3. With a nut of 17/64
// (ASME B18.2.2 square) to 5/16 (rough, Franklin Institute 1864), washers of .065 to .083
// (ASME B18.21.1 plain N and W) and one thread of 18 to the inch, a bolt of 3.39 to 3.45 is needed: buy 3 1/2.
func TestHandcartHandleBolt(t *testing.T) {
	v := handcart(t, "")
	for _, id := range []string{"1 near", "1 off"} {
		f := fastening(t, v, id)
		require.InDelta(t, 3, f.Grip.Value.Inches(), 1e-6)
		require.Equal(t, quantity.LikeVehicle, f.Grip.Known)
		for standard, washer := range map[bolt.NutStandard]quantity.Length{
			bolt.SquareNut: .065 * quantity.Inch, bolt.RoughNut: .083 * quantity.Inch,
		} {
			nut, source := bolt.Nut(f.Diameter, standard)
			require.NotEqual(t, bolt.Unlisted, source)
			need := bolt.Need(f.Grip.Value, washer, nut.Thickness, quantity.Inch/18)
			length, err := bolt.StockLength(need)
			require.NoError(t, err)
			require.InDelta(t, 3.5, length.Inches(), 1e-6)
			// Two widths of an old book, 1/4 each, leave it open: measure before buying.
			require.Greater(t, need+f.Grip.Doubt, length)
		}
	}
	require.True(t, told(v, vehicle.Open, "long", "handle"))
}

func TestHandcartDeterministic(t *testing.T) { requireSame(t, handcart(t, ""), handcart(t, "")) }

// What follows serves this test and that of the army wagon.

func requireSame(t *testing.T, a, b *vehicle.Vehicle) {
	t.Helper()
	require.Equal(t, a.Findings, b.Findings)
	require.Equal(t, a.Fastenings, b.Fastenings)
	for i := range a.Parts {
		require.Equal(t, a.Parts[i].Sizes, b.Parts[i].Sizes)
		require.Equal(t, a.Parts[i].Place, b.Parts[i].Place)
	}
	for i := range a.Items {
		require.Equal(t, a.Items[i].Stick, b.Items[i].Stick)
	}
}

// sizeOf finds a size of a timber or an iron: of the near one, of a pair.
func sizeOf(t *testing.T, v *vehicle.Vehicle, id, name string) vehicle.Dimension {
	t.Helper()
	var of []vehicle.Dimension
	for _, p := range v.Parts {
		if p.ID == id || p.ID == "near-"+id {
			of = p.Sizes
		}
	}
	for _, i := range v.Irons {
		if i.ID == id || i.ID == "near-"+id || i.ID == "near-"+id+"-1" {
			of = i.Sizes
		}
	}
	for _, d := range of {
		if d.Name == name {
			return d
		}
	}
	require.Fail(t, "there is no "+name+" of "+id)
	return vehicle.Dimension{}
}

func fastening(t *testing.T, v *vehicle.Vehicle, id string) *vehicle.Fastening {
	t.Helper()
	for _, f := range v.Fastenings {
		if f.ID == id {
			return f
		}
	}
	require.Fail(t, "there is no fastening "+id)
	return nil
}

func item(t *testing.T, v *vehicle.Vehicle, id string) *vehicle.Item {
	t.Helper()
	for _, i := range v.Items {
		if i.ID == id {
			return i
		}
	}
	require.Fail(t, "there is no item "+id)
	return nil
}

// told reports whether a finding of a concern has all the words.
func told(v *vehicle.Vehicle, c vehicle.Concern, words ...string) bool {
	for _, f := range v.Findings {
		all := f.Concern == c
		for _, w := range words {
			all = all && strings.Contains(strings.ToLower(f.Says), w)
		}
		if all {
			return true
		}
	}
	return false
}

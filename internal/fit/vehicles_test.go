package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"lostwood/internal/fit"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// Vehicles built piece by piece, for one known fault each.

type length = quantity.Length

// A build is a vehicle while it is put together. Things are placed by the low corner
// of their box: x from the hind end, y from the off side, z from below.
type build struct{ vehicle.Vehicle }

func sized(v length) quantity.Size { return quantity.Size{Value: v, Known: quantity.Measured} }

func placed(at form.Vec, axes [3][3]float64) *vehicle.Place {
	return &vehicle.Place{At: [3]quantity.Size{sized(at.X), sized(at.Y), sized(at.Z)}, Axes: axes}
}

// straight is the frame of what lies along, from its hind end, right-handed.
var straight = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

// across is the frame of what lies across, from its off end.
var across = [3][3]float64{{0, 1, 0}, {-1, 0, 0}, {0, 0, 1}}

func newBuild() *build {
	return &build{vehicle.Vehicle{
		Name: "Test cart", Slug: "test-cart", Issue: "A", Unit: quantity.Millimetres,
		Moisture: vehicle.Moisture{Bought: 12, Worked: 10, Service: 10, Driest: 10, Wettest: 10},
	}}
}

// wood enters a timber with its work.
func (b *build) wood(id string, at form.Vec, axes [3][3]float64, long, wide, deep length, work ...parts.Feature) *vehicle.Part {
	shape := parts.Plain{Name: "sill", Long: long, Wide: wide, Deep: deep, Work: work}
	it := &vehicle.Item{
		Number: len(b.Items) + 1, ID: id, Name: id, Kind: "sill", NumberOff: 1, Timber: "yellow-poplar", Shape: shape, Stick: shape.Stick(),
	}
	p := &vehicle.Part{ID: id, Name: id, Kind: "sill", Timber: "yellow-poplar", Item: it, Place: placed(at, axes), Sizes: extents(long, wide, deep)}
	if axes == across {
		it.Run, p.Run = vehicle.Across, vehicle.Across
	}
	it.Parts = []*vehicle.Part{p}
	it.Sizes = p.Sizes
	b.Parts, b.Items = append(b.Parts, p), append(b.Items, it)
	return p
}

func extents(long, wide, deep length) []vehicle.Dimension {
	return []vehicle.Dimension{
		{Name: "long", Axis: parts.AlongX, Size: sized(long)}, {Name: "wide", Axis: parts.AcrossY, Size: sized(wide)}, {Name: "deep", Axis: parts.UpZ, Size: sized(deep)},
	}
}

// bar enters a straight iron with holes along it.
func (b *build) bar(id string, at form.Vec, long, wide, thick length, holes ...length) *vehicle.Iron {
	i := &vehicle.Iron{ID: id, Name: id, Kind: "strap", Place: placed(at, straight), Sizes: extents(long, wide, thick)}
	for _, h := range holes {
		i.Holes = append(i.Holes, sized(h))
	}
	b.Irons = append(b.Irons, i)
	return i
}

// half is a bolt's diameter in most of these: half an inch.
const half = quantity.Inch / 2

// bolt enters a bolt that goes down from a head.
func (b *build) bolt(id string, head form.Vec, grip length, through ...vehicle.Stop) *vehicle.Fastening {
	f := &vehicle.Fastening{
		ID: id, Title: id, What: "bolt", Diameter: half, Grip: sized(grip), Through: through,
		Head: [3]quantity.Size{sized(head.X), sized(head.Y), sized(head.Z)}, Way: [3]float64{0, 0, -1},
	}
	b.Fastenings = append(b.Fastenings, f)
	return f
}

// bored is a hole down through a timber, at its own x and y.
func bored(id string, x, y length) parts.Hole {
	return parts.Hole{ID: "fastening " + id, Face: parts.Upper, At: form.Point{X: x, Y: y}, Diameter: half + quantity.Inch/32}
}

func offered(t *testing.T, b *build) *fit.Report {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	r, err := fit.Of(&b.Vehicle, woods, nil)
	require.NoError(t, err)
	return r
}

// grave are the remarks that are more than noted.
func grave(r *fit.Report) []vehicle.Remark {
	var out []vehicle.Remark
	for _, m := range r.Remarks {
		if m.Gravity != vehicle.Noted {
			out = append(out, m)
		}
	}
	return out
}

func theOne(t *testing.T, b *build, check string) vehicle.Remark {
	t.Helper()
	all := grave(offered(t, b))
	require.Len(t, all, 1, "%v", all)
	require.Equal(t, check, all[0].Check)
	require.NotEmpty(t, all[0].Says)
	require.NotEmpty(t, all[0].Do)
	return all[0]
}

func nothing(t *testing.T, b *build) {
	t.Helper()
	require.Empty(t, grave(offered(t, b)))
}

// sill is a timber with a strap under it and two bolts down through both, 50 and 60
// mm of poplar and 5 of iron.
func sill(holeAt, strapAt, boltLong length) *build {
	b := newBuild()
	b.wood("sill", form.Vec{Z: 500}, straight, 1000, 50, 60, bored("1", holeAt, 25), bored("2", 900, 25))
	b.bar("strap", form.Vec{Z: strapAt}, 1000, 50, 5, 100, 900)
	for i, x := range []length{100, 900} {
		f := b.bolt([]string{"1", "2"}[i], form.Vec{X: x, Y: 25, Z: 560}, 65, vehicle.Stop{ID: "sill"}, vehicle.Stop{ID: "strap", Hole: i + 1})
		f.Hardware.Bolt = &vehicle.OldBolt{ID: "b", Length: 85, Thread: 30}
	}
	b.Fastenings[0].Hardware.Bolt.Length = boltLong
	return b
}

func near(t *testing.T, want, got, within float64) { t.Helper(); require.InDelta(t, want, got, within) }

var _ = math.Pi

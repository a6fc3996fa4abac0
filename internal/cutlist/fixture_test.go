package cutlist_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

const (
	in = quantity.Inch
	ft = quantity.Foot
	mm = quantity.Millimetre
)

func woods(t require.TestingT) timber.Catalogue {
	c, err := timber.Published()
	require.NoError(t, err)
	return c
}

func made(t require.TestingT, v *vehicle.Vehicle, a cutlist.Allowances) *cutlist.List {
	l, err := cutlist.Make(v, woods(t), a)
	require.NoError(t, err)
	return l
}

// block is an item that is a plain squared timber.
func block(name, wood string, off int, long, wide, deep quantity.Length) *vehicle.Item {
	return &vehicle.Item{
		Number: 1, Name: name, Timber: wood, NumberOff: off, Stick: parts.Stick{Body: parts.Square(long, wide, deep)},
	}
}

// wagon is a vehicle of items, bought and worked at one moisture and kept at another.
func wagon(bought, service quantity.Moisture, items ...*vehicle.Item) *vehicle.Vehicle {
	return &vehicle.Vehicle{
		Name: "Orchard wagon", Slug: "orchard-wagon", Issue: "A", Date: time.Date(2026, 10, 30, 0, 0, 0, 0, time.UTC),
		Moisture: vehicle.Moisture{Bought: bought, Worked: service, Service: service}, Items: items,
	}
}

// none leaves nothing on.
func none() cutlist.Allowances { return cutlist.Allowances{WidestBoard: 3 * quantity.Metre} }

// built is an item of a real kind, with dimensions stated to be known in one way.
func built(t *testing.T, number int, name, kind, wood string, off int, m parts.Measures, known map[string]quantity.Known) *vehicle.Item {
	k, err := parts.Find(kind)
	require.NoError(t, err)
	p, err := k.Build(m)
	require.NoError(t, err)
	require.NoError(t, p.Validate())
	it := &vehicle.Item{Number: number, Name: name, Kind: kind, Timber: wood, NumberOff: off, Shape: p, Stick: p.Stick()}
	for _, d := range k.Dimensions {
		value, given := m.Lengths[d.Name]
		if !given {
			continue
		}
		it.Sizes = append(it.Sizes, vehicle.Dimension{
			Name: d.Name, Axis: d.Axis, Size: quantity.Size{Value: value, Doubt: in / 32, Known: known[d.Name]},
		})
	}
	return it
}

type lengths = map[string]quantity.Length

func sizes(l lengths) parts.Measures { return parts.Measures{Lengths: l} }

// orchardWagon is a small vehicle with every kind of making.
func orchardWagon(t *testing.T) *vehicle.Vehicle {
	guess := func(names ...string) map[string]quantity.Known {
		known := map[string]quantity.Known{}
		for _, n := range names {
			known[n] = quantity.Guess
		}
		return known
	}
	near := built(t, 4, "sill", "sill", "white oak", 1, sizes(lengths{"long": 9*ft + 4*in, "wide": 2.25 * in, "deep": 3 * in, "chamfer": in / 4}), nil)
	off := *near
	near.Hand, off.Hand, off.Stick = vehicle.Near, vehicle.Off, near.Stick.Mirrored()
	fitted := built(t, 9, "riser", "riser", "white ash", 2, sizes(lengths{"long": 16 * in, "thick": 7 * in / 8, "high": 11 * in}), nil)
	fitted.Status = vehicle.Fitted
	v := wagon(
		20, 12,
		built(t, 1, "reach", "reach", "Ash, white", 2, sizes(lengths{"long": 7*ft + 6*in, "wide": 1.875 * in, "deep": 2.5 * in}), guess("long")),
		built(t, 2, "fore bolster", "bolster", "white oak", 1, sizes(lengths{"long": 4 * ft, "wide": 4 * in, "deep": 3.5 * in}), nil),
		built(t, 3, "hind axle bed", "axle bed", "white oak", 1, sizes(lengths{"long": 4*ft + 2*in, "wide": 4.5 * in, "deep": 4.25 * in}), nil),
		near, &off,
		built(t, 5, "fore wheel felloe", "felloe", "white ash", 12, felloeSizes(), guess("radius")),
		built(t, 6, "seat rail", "seat rail", "white ash", 1, railSizes(), nil),
		built(t, 7, "floor slat", "slat", "yellow-poplar", 9, sizes(lengths{"long": 3*ft + 2*in, "wide": 3.5 * in, "thick": 5 * in / 8}), guess("wide", "thick")),
		built(t, 8, "tailboard", "tailboard", "yellow-poplar", 1, sizes(lengths{"long": 3*ft + 3*in, "thick": 13 * in / 16, "high": 14 * in}), nil),
		fitted,
	)
	v.Moisture.Worked = 16
	v.Parts = []*vehicle.Part{
		{Name: "reach", Item: v.Items[0]},
		{Name: "side rail", Hand: vehicle.Near},
		{Name: "side rail", Hand: vehicle.Off, Status: vehicle.LeftOpen},
	}
	return v
}

func felloeSizes() parts.Measures {
	return parts.Measures{
		Lengths: lengths{"wide": 1.5 * in, "radius": 19.5 * in, "deep": 2 * in, "tongue": 3 * in / 4},
		Counts:  map[string]int{"felloes": 6},
	}
}

func railSizes() parts.Measures {
	return sizes(lengths{"long": 3*ft + 4*in, "wide": 1.125 * in, "deep": 1.25 * in, "return": 14 * in, "bend": 5 * in})
}

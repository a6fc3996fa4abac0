package pattern

import (
	"time"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

const inch = quantity.Inch

// wagon is a vehicle with items on it.
func wagon(items ...*vehicle.Item) *vehicle.Vehicle {
	return &vehicle.Vehicle{
		Name: "Orchard wagon", Slug: "orchard-wagon", Issue: "B",
		Date: time.Date(2024, 5, 1, 0, 0, 0, 0, time.UTC), Hash: "3fa9c2d1b7e80a55", Unit: quantity.Inches,
		Moisture: vehicle.Moisture{Service: 12}, Items: items,
	}
}

func size(v, doubt Length, k quantity.Known) quantity.Size {
	return quantity.Size{Value: v, Doubt: doubt, Known: k}
}

// known gives every hole of a stick a doubt of where it stands.
func known(s parts.Stick, k quantity.Known) []vehicle.Feature {
	var out []vehicle.Feature
	seen := map[string]bool{}
	for _, op := range s.Operations() {
		if op.Work < parts.Tenoning && !seen[op.Ref] {
			seen[op.Ref] = true
			out = append(out, vehicle.Feature{Ref: op.Ref, Along: size(op.At.X, 0.9, k), Across: size(op.At.Y, 0.4, quantity.FromIron)})
		}
	}
	return out
}

// item makes an item of a part.
func item(number int, name string, run vehicle.Run, hand vehicle.Hand, timber string, p parts.Part, deep quantity.Known) *vehicle.Item {
	s := p.Stick()
	if hand == vehicle.Off {
		s = s.Mirrored()
	}
	l, w, d := s.Body.Box()
	return &vehicle.Item{
		Number: number, ID: vehicle.Slug(name), Name: name, Kind: p.Kind(), Run: run, Hand: hand, NumberOff: 1, Timber: timber,
		Shape: p, Stick: s, Features: known(s, quantity.FromIron),
		Sizes: []vehicle.Dimension{
			{Name: "long", Axis: parts.AlongX, Size: size(l, 3, quantity.FromIron), By: "fastening 7 and 2 others"},
			{Name: "wide", Axis: parts.AcrossY, Size: size(w, 0.7, quantity.FromIron), By: "clip 4"},
			{Name: "deep", Axis: parts.UpZ, Size: size(d, 6, deep), By: "fastening 5"},
		},
	}
}

// bolster is a bolster with a rising underside, stakes, seats and a housing.
func bolster() *vehicle.Item {
	b := parts.Bolster{
		Long: 48.5 * inch, Wide: 3.5 * inch, Deep: 4.25 * inch, Rise: 0.75 * inch, Flat: 30 * inch,
		StakeLong: 1.5 * inch, StakeWide: 1.25 * inch, StakeIn: 2.5 * inch, Chamfer: 0.25 * inch, ChamferStop: 6 * inch,
		Work: []parts.Feature{
			hole("fastening 3", parts.Upper, 9.5*inch, 1.75*inch, 0.5625*inch),
			parts.Hole{
				ID: "fastening 5", What: "king-bolt hole", Face: parts.Upper, At: form.Point{X: 24.25 * inch, Y: 1.75 * inch},
				Diameter: 1.0625 * inch, Counterbore: &parts.Counterbore{Diameter: 2 * inch, Depth: 0.375 * inch},
			},
			parts.Hole{
				ID: "fastening 6", What: "bolt hole", Face: parts.Under, At: form.Point{X: 39 * inch, Y: 1.75 * inch},
				Diameter: 0.4375 * inch, Seat: &parts.SquareSeat{Width: 0.5 * inch, Depth: 0.25 * inch},
			},
			parts.Housing{ID: "joint 2", What: "housing for the sill", Face: parts.Upper, Station: 15 * inch, Width: 2.5 * inch, Depth: 0.5 * inch},
		},
	}
	i := item(3, "hind bolster", vehicle.Across, vehicle.Alike, "white oak", b, quantity.Guess)
	i.Features[2].Along.Known = quantity.Guess
	return i
}

func hole(id string, f parts.Face, x, y, d Length) parts.Hole {
	return parts.Hole{ID: id, What: "bolt hole", Face: f, At: form.Point{X: x, Y: y}, Diameter: d}
}

// felloe is one of seven of a 48 in wheel.
func felloe() *vehicle.Item {
	f := parts.Felloe{
		Radius: 23.5 * inch, Wide: 1.75 * inch, Deep: 2 * inch, Felloes: 7, Tongue: 0.75 * inch,
		Dowel: 0.5 * inch, DowelDeep: 1.5 * inch, TyreBolt: 0.25 * inch, Gap: 0.0625 * inch,
	}
	i := item(9, "hind felloe", vehicle.Round, vehicle.Alike, "white ash", f, quantity.FromIron)
	i.NumberOff = 14
	return i
}

// sill is one of a handed pair: a fore end clipped for, and holes to one side.
func sill(hand vehicle.Hand) *vehicle.Item {
	p := parts.Plain{
		Name: "sill", Long: 40 * inch, Wide: 2.25 * inch, Deep: 3 * inch,
		Work: []parts.Feature{
			hole("fastening 12", parts.Upper, 6*inch, 0.875*inch, 0.4375*inch),
			hole("fastening 13", parts.FirstSide, 12.5*inch, 1.5*inch, 0.375*inch),
			parts.Hole{ID: "fastening 14", What: "bolt hole", Face: parts.SecondSide, At: form.Point{X: 29 * inch, Y: 1.125 * inch}, Diameter: 0.375 * inch, Depth: 1.5 * inch},
			parts.Notch{ID: "joint 4", What: "notch for the standard", Face: parts.FirstSide, Edge: parts.Upper, At: 20 * inch, Long: 2 * inch, In: 1 * inch, Depth: 0.75 * inch},
		},
	}
	i := item(5, "sill", vehicle.Along, hand, "white oak", p, quantity.FromIron)
	return i
}

// slat is thin and narrow.
func slat() *vehicle.Item {
	s := parts.Slat{Long: 36 * inch, Wide: 2.5 * inch, Thick: 0.75 * inch, Work: []parts.Feature{
		hole("fastening 21", parts.Upper, 3*inch, 1.25*inch, 0.25*inch),
		hole("fastening 22", parts.Upper, 33*inch, 1.25*inch, 0.25*inch),
	}}
	return item(11, "floor slat", vehicle.Along, vehicle.Alike, "yellow-poplar", s, quantity.TradeRule)
}

// seatRail is bent.
func seatRail() *vehicle.Item {
	r := parts.SeatRail{Long: 34 * inch, Wide: 1.25 * inch, Deep: 1 * inch, Return: 14 * inch, Bend: 5 * inch, Tenon: 0.75 * inch, TenonLong: 1 * inch}
	return item(14, "seat rail", vehicle.Across, vehicle.Alike, "white ash", r, quantity.FromIron)
}

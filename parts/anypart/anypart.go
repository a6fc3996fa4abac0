// Package anypart draws timber parts of every kind at random dimensions that can
// be made, for tests.
package anypart

import (
	"math"

	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A draw takes random dimensions that ought to be legal, by name.
type draw struct {
	t *rapid.T
	m parts.Measures
}

func (d draw) between(name string, lo, hi float64) float64 {
	v := math.Round(rapid.Float64Range(lo, hi).Draw(d.t, name)*16) / 16
	return min(max(v, lo), hi)
}

func (d draw) set(name string, lo, hi float64) float64 {
	v := d.between(name, lo, hi)
	d.m.Lengths[name] = parts.Length(v)
	return v
}

func (d draw) maybe(name string, lo, hi float64) float64 {
	if hi < lo || rapid.Bool().Draw(d.t, "with "+name) {
		return 0
	}
	return d.set(name, lo, hi)
}

func (d draw) yes(what string) bool { return rapid.Bool().Draw(d.t, what) }

// Of is a part of a kind with random legal dimensions and some work.
func Of(kind parts.Kind) *rapid.Generator[parts.Part] {
	return rapid.Custom(func(t *rapid.T) parts.Part {
		d := draw{t, parts.Measures{
			Lengths: map[string]parts.Length{}, Counts: map[string]int{}, Angles: map[string]parts.Angle{},
		}}
		switch kind.Name {
		case "felloe":
			d.felloe()
		case "seat rail":
			d.seatRail()
		case "nave":
			d.nave()
		case "spoke":
			d.spoke()
		default:
			d.straight(kind)
		}
		p, err := kind.Build(d.m)
		if err != nil {
			t.Fatal(err)
		}
		return p
	})
}

func (d draw) felloe() {
	n := rapid.IntRange(4, 9).Draw(d.t, "felloes")
	each := rapid.IntRange(1, 3).Draw(d.t, "spokes each")
	d.m.Counts["felloes"] = n
	if each != 2 || d.yes("say spokes") {
		d.m.Counts["spokes"] = n * each
	}
	r := d.set("radius", 350, 800)
	wide, deep := d.set("wide", 32, 90), d.set("deep", 36, 80)
	d.maybe("gap", 0, 3)
	d.maybe("tongue", 8, wide*.4)
	if d.yes("dowel") {
		dowel := d.set("dowel", 6, math.Min(wide, deep)*.3)
		mid := r - deep/2 + dowel/2
		d.set("dowel-deep", 20, .9*math.Min(math.Sqrt(r*r-mid*mid), r*math.Sin(math.Pi/float64(n))))
	}
	d.maybe("tyre-bolt", 5, 10)
	d.maybe("eased", 1, 8)
	if d.yes("dished") {
		d.dished(wide, deep)
	}
}

// dished leans the spokes of a wheel and bevels its felloes, a little.
func (d draw) dished(wide, deep float64) {
	lean := rapid.Float64Range(-4, 4).Draw(d.t, "lean")
	d.m.Angles["lean"] = parts.Angle(lean) * quantity.Degree
	if d.yes("coned") {
		d.m.Angles["bevel"] = d.m.Angles["lean"]
	}
	if d.yes("staggered") {
		d.m.Angles["lean-back"] = parts.Angle(lean+.75) * quantity.Degree
	}
	if d.m.Lengths["tongue"] == 0 && d.yes("square tongues") {
		d.set("tongue-square", 8, min(wide, deep)*.3)
	}
}

func (d draw) seatRail() {
	long := d.set("long", 600, 1200)
	wide, deep := d.set("wide", 20, 40), d.set("deep", 20, 40)
	if d.yes("bent") {
		ret := d.set("return", 200, 400)
		d.set("bend", wide/2+6, math.Min(long/2-wide/2, ret-wide/2)-70)
	}
	d.maybe("round", 1, math.Min(wide, deep)/2-1)
	if d.yes("round ends") {
		d.set("tenon", 8, math.Min(wide, deep))
		d.set("tenon-long", 10, 60)
	}
	at := form.Point{X: parts.Length(long / 2), Y: parts.Length(wide / 2)}
	d.m.Work = append(d.m.Work, parts.Hole{ID: "fastening 3", What: "bolt hole", Face: parts.Upper, At: at, Diameter: 9})
	at.Y = parts.Length(deep / 2)
	d.m.Work = append(d.m.Work, parts.Hole{ID: "fastening 4", What: "bolt hole", Face: parts.FirstSide, At: at, Diameter: 7, Depth: parts.Length(wide / 2)})
}

// straight draws the extents, the options, and work in places of its own so
// that pieces of work keep apart.
func (d draw) straight(k parts.Kind) {
	has := func(name string) bool { _, ok := k.Dimension(name); return ok }
	long := d.set("long", 700, 2500)
	wide := d.set(k.Dimensions[1].Name, 30, 120)
	deep := d.set(k.Dimensions[2].Name, 30, 120)
	least := math.Min(wide, deep)
	if has("rise") && d.yes("rise") {
		d.set("rise", 4, deep/3)
		d.set("flat", .5*long, .8*long)
	}
	if has("hind-wide") {
		wide2, deep2 := d.maybe("hind-wide", .8*wide, 1.2*wide), d.maybe("hind-deep", .8*deep, 1.2*deep)
		if wide2 > 0 {
			least = math.Min(least, wide2)
		}
		if deep2 > 0 {
			least = math.Min(least, deep2)
		}
		if d.maybe("round-ends", 2, .35*math.Min(wide, least)) == 0 {
			d.maybe("clip-ends", 2, .35*math.Min(wide, least))
		}
	}
	if has("round") {
		d.maybe("round", 3, least/2)
	}
	if has("tenon-long") && d.yes("tenons") {
		d.set("tenon-long", 20, 60)
		d.set("tenon-wide", 10, wide)
		d.set("tenon-thick", 10, deep)
	}
	if has("groove-wide") && d.yes("groove") {
		d.set("groove-wide", 5, .4*wide)
		d.set("groove-deep", 3, .3*deep)
	}
	if has("king-bolt") {
		d.maybe("king-bolt", 10, .4*wide)
	}
	if has("stake-in") && d.yes("stakes") {
		d.set("stake-long", 20, 60)
		d.set("stake-wide", 10, wide/2)
		d.set("stake-in", 50, 100)
	}
	d.edges(has, long, least)
	d.work(long, wide, deep, least)
}

func (d draw) edges(has func(string) bool, long, least float64) {
	if has("chamfer") && d.maybe("chamfer", 2, .14*least) > 0 {
		_, rounded := d.m.Lengths["round-ends"]
		_, clipped := d.m.Lengths["clip-ends"]
		if rounded || clipped || d.yes("stopped") {
			d.set("chamfer-stop", 60, long/2-40)
		}
		return
	}
	if has("eased") {
		d.maybe("eased", 1, .14*least)
	}
}

// work adds one of each kind of feature, each in a stretch of its own.
func (d draw) work(long, wide, deep, least float64) {
	at := func(share, y float64) form.Point {
		return form.Point{X: parts.Length(share * long), Y: parts.Length(y)}
	}
	faces := parts.LongFaces()
	face := func(what string) parts.Face { return rapid.SampledFrom(faces).Draw(d.t, what) }
	middle := func(f parts.Face) float64 {
		if f == parts.Upper || f == parts.Under {
			return wide / 2
		}
		return deep / 2
	}
	if f := face("hole face"); d.yes("hole") {
		h := parts.Hole{ID: "fastening 1", What: "bolt hole", Face: f, At: at(.2, middle(f)), Diameter: 8}
		if d.yes("blind") {
			h.Depth = parts.Length(.4 * least)
		}
		if d.yes("counterbore") {
			h.Counterbore = &parts.Counterbore{Diameter: 14, Depth: parts.Length(.1 * least)}
		}
		if d.yes("seat") {
			h.Seat = &parts.SquareSeat{Width: 8.25, Depth: 3}
		}
		d.m.Work = append(d.m.Work, h)
	}
	if f := face("mortise face"); d.yes("mortise") {
		m := parts.Mortise{ID: "joint 1", What: "mortise", Face: f, At: at(.34, middle(f)), Long: 30, Wide: parts.Length(.3 * least)}
		if d.yes("stopped mortise") {
			m.Depth = parts.Length(.3 * least)
		}
		d.m.Work = append(d.m.Work, m)
	}
	if d.yes("housing") {
		d.m.Work = append(d.m.Work, parts.Housing{
			ID: "joint 2", What: "housing", Face: face("housing face"),
			Station: parts.Length(.6 * long), Width: 40, Depth: parts.Length(.2 * least),
		})
	}
	if d.yes("notch") {
		f := face("notch face")
		beside := map[parts.Face][]parts.Face{
			parts.Upper: {parts.FirstSide, parts.SecondSide}, parts.Under: {parts.FirstSide, parts.SecondSide},
			parts.FirstSide: {parts.Upper, parts.Under}, parts.SecondSide: {parts.Upper, parts.Under},
		}[f]
		n := parts.Notch{
			ID: "joint 3", What: "notch", Face: f, Edge: rapid.SampledFrom(beside).Draw(d.t, "edge"),
			At: parts.Length(.75 * long), Long: 36, In: parts.Length(.15 * least),
		}
		if d.yes("stopped notch") {
			n.Depth = parts.Length(.3 * least)
		}
		d.m.Work = append(d.m.Work, n)
	}
}

package anypart

import (
	"math"

	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

func (d draw) angle(name string, lo, hi float64) float64 {
	a := rapid.Float64Range(lo, hi).Draw(d.t, name)
	d.m.Angles[name] = parts.Angle(a) * quantity.Degree
	return a
}

func (d draw) spoke() {
	wide, thick := d.set("wide", 34, 90), d.set("thick", 28, 60)
	long := d.set("between", 200, 600)
	d.set("square", 20, long/3)
	tipWide, tipThick := d.set("tip-wide", 22, wide-2), d.set("tip-thick", 22, thick-2)
	foot := d.set("foot-wide", 20, wide-2)
	d.set("foot-long", 30, 80)
	d.set("foot-thick", 12, thick-2)
	if d.yes("tapered foot") {
		d.set("foot-point", foot*.8, foot-.5)
	}
	if d.yes("dished") {
		d.angle("shoulder", -3, 6)
		d.angle("tip-shoulder", -3, 6)
	}
	if d.yes("square tongue") {
		d.set("tongue-square", 8, 1/math.Hypot(1/(tipWide-2), 1/(tipThick-2)))
	} else {
		d.set("tongue", 8, math.Min(tipWide, tipThick)-2)
	}
	d.set("tongue-long", 30, 80)
}

func (d draw) nave() {
	wide, thick := d.set("foot-wide", 30, 60), d.set("foot-thick", 14, 24)
	stagger := d.maybe("stagger", 4, 16)
	seat := d.set("seat-long", wide+stagger+6, wide+stagger+20)
	n := 2 * rapid.IntRange(4, 8).Draw(d.t, "pairs of spokes")
	d.m.Counts["spokes"] = n
	deep := d.set("foot-deep", 30, 60)
	bore := d.set("box-large", 44, 70)
	least := math.Max(bore/2+12, (thick+4)/2/math.Tan(math.Pi/float64(n)))
	diameter := d.set("diameter", 2*(least+deep)+10, 2*(least+deep)+60)
	long := d.set("long", seat+140, seat+260)
	d.set("forward", long*.45, long*.55)
	d.set("back", diameter*.75, diameter*.95)
	d.set("front", diameter*.7, diameter*.9)
	d.set("box-small", bore*.7, bore-1)
	in := d.maybe("box-in", 4, 20)
	d.set("box-long", long*.6, long-in-5)
	if d.yes("recess") {
		d.set("front-recess", bore, bore+15)
	}
	if d.yes("tapered feet") {
		d.set("foot-point", wide*.85, wide-.5)
	}
	if d.yes("dished") {
		lean := d.angle("lean", -1, 4)
		if stagger != 0 {
			d.angle("lean-back", lean, lean+1.5)
			d.angle("seat-fall", 0, 3)
		}
	}
}

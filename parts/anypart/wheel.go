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

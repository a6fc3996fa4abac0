package fit

import (
	"fmt"
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A Bolt is what one fastening wants to hold what it goes through.
type Bolt struct {
	Fastening   string
	What        string
	Diameter    quantity.Length
	Grip        quantity.Length // from the head's seat to the washer or nut
	Washer, Nut quantity.Length // thickness, as supplied or as read
	Need        quantity.Length // the least length under the head, one thread past the nut
	Stock       quantity.Length // the length to buy, rounded up; 0 where none is sold so long
	Thread      quantity.Length // the least thread of that one
	Old         quantity.Length // length of the bolt that was read; 0 for none
	Head        vehicle.HeadShape
	Through     int // how many things
}

// lengths works out what every bolt wants, and sets beside it the bolt that was read.
func (c *check) lengths() {
	for _, r := range c.runs {
		if r.f.What != "bolt" && r.f.What != "rivet" {
			continue
		}
		from, to := r.stack()
		if !(to > from) {
			continue
		}
		b := r.wants(to - from)
		c.report.Bolts = append(c.report.Bolts, b)
		c.neck(r, b)
		if old := r.f.Hardware.Bolt; old != nil && old.Length > 0 {
			c.oldBolt(r, b, old)
		}
	}
}

func (r *run) wants(grip quantity.Length) Bolt {
	d := r.f.Diameter
	b := Bolt{
		Fastening: r.f.ID, What: r.f.What, Diameter: d, Grip: grip, Washer: r.size.washer, Head: r.f.Hardware.Head, Through: len(r.stops),
	}
	nut, _ := bolt.Nut(d, bolt.SquareNut)
	b.Nut = nut.Thickness
	if old := r.f.Hardware.Bolt; old != nil {
		b.Old = old.Length
		if old.Nut > 0 {
			b.Nut = old.Nut
		}
	}
	b.Need = bolt.Need(b.Grip, b.Washer, b.Nut, r.size.thread)
	if stock, err := bolt.StockLength(b.Need); err == nil {
		b.Stock = stock
		b.Thread = bolt.ThreadNeeded(stock, b.Grip, b.Washer)
	}
	return b
}

// runOut is how far short of its shank a die leaves a full thread.
const runOut = 2.5 // threads

// oldBolt sets a bolt that was read beside what it is to hold.
func (c *check) oldBolt(r *run, b Bolt, old *vehicle.OldBolt) {
	m := vehicle.Remark{
		Check: "bolt length", Subject: "fastening " + r.f.ID, Place: placeOf(r.along(b.Grip)),
		Measured: vehicle.OfLength(old.Length), Limit: vehicle.OfLength(b.Need), Things: []string{"fastening " + r.f.ID},
	}
	bare := b.Grip + b.Washer + b.Nut
	switch proud := old.Length - bare; {
	case old.Length < bare-roundings:
		m.Gravity = vehicle.CannotGo
		m.Says = fmt.Sprintf("The bolt of fastening %s is %s long and wants %s: %s to grip, washer, nut and one thread past it. It is %s short.",
			r.f.ID, c.show(old.Length), c.show(b.Need), c.show(b.Grip), c.show(b.Need-old.Length))
		m.Do = c.buy(b)
	case old.Length < b.Need-roundings:
		m.Gravity = vehicle.LookAt
		m.Says = fmt.Sprintf("The bolt of fastening %s fills its nut with less than one thread past it: it is %s long and wants %s.", r.f.ID, c.show(old.Length), c.show(b.Need))
		m.Do = "Leave out the washer, take a thinner nut, or: " + c.buy(b)
	case old.Thread > 0 && old.Length-old.Thread+quantity.Length(runOut)*r.size.thread > b.Grip+b.Washer+roundings:
		short := old.Length - old.Thread + quantity.Length(runOut)*r.size.thread - b.Grip - b.Washer
		m.Check, m.Gravity = "thread", vehicle.CannotGo
		m.Measured, m.Limit = vehicle.OfLength(old.Thread), vehicle.OfLength(old.Thread+short)
		m.Says = fmt.Sprintf("The nut of fastening %s runs out of thread %s before it is tight: the thread is %s long and the nut has to come %s down the bolt.",
			r.f.ID, c.show(short), c.show(old.Thread), c.show(old.Length-b.Grip-b.Washer))
		m.Do = fmt.Sprintf("Cut the thread %s farther, or put on washers.", c.show(short))
	case proud > old.Nut+r.f.Diameter:
		m.Gravity = vehicle.LookAt
		m.Says = fmt.Sprintf("The bolt of fastening %s stands %s out of its nut.", r.f.ID, c.show(proud))
		m.Do = "See whether it is the bolt of another fastening, or something that it held is missing from its run."
	default:
		return
	}
	m.Basis = "one full thread past the nut (bolt makers' rule)"
	for _, t := range r.stops {
		if t != nil && t.wood() {
			m.Parts = append(m.Parts, t.id)
		}
	}
	c.say(m)
}

func (c *check) buy(b Bolt) string {
	if b.Stock == 0 {
		return fmt.Sprintf("Have one made, %s long with %s of thread.", c.show(b.Need), c.show(b.Nut+b.Need-b.Grip-b.Washer-b.Nut))
	}
	return fmt.Sprintf("Buy one %s by %s with at least %s of thread.", c.show(b.Diameter), c.show(b.Stock), c.show(b.Thread))
}

// neck looks at a square neck: it wants wood to sink into, deeper than itself.
func (c *check) neck(r *run, b Bolt) {
	if r.f.Hardware.Head != vehicle.SquareNeck || r.stops[0] == nil {
		return
	}
	_, deep, _ := bolt.Neck(r.f.Diameter)
	first := r.stops[0]
	m := vehicle.Remark{
		Check: "square neck", Gravity: vehicle.LookAt, Subject: "fastening " + r.f.ID, Place: placeOf(r.head),
		Limit: vehicle.OfLength(deep), Basis: "ASME B18.5", Things: []string{"fastening " + r.f.ID},
	}
	c.about(&m, first)
	thick := quantity.Length(r.leave[0] - r.enter[0])
	switch {
	case !first.wood():
		m.Says = fmt.Sprintf("The square neck of fastening %s bears on %s: that needs a square hole, or its head stands off by %s.", r.f.ID, first.the(), c.show(deep))
		m.Do = "See whether the iron's hole is square. If it is round, the bolt is another fastening's, or its head is plain."
		m.Measured = vehicle.OfLength(deep)
	case !math.IsNaN(float64(thick)) && thick < deep:
		m.Says = fmt.Sprintf("The square neck of fastening %s is %s deep and %s only %s thick.", r.f.ID, c.show(deep), first.the(), c.show(thick))
		m.Do = "Take a plain head, or a bolt with a shorter neck."
		m.Measured = vehicle.OfLength(thick)
	default:
		return
	}
	c.say(m)
}

package fit

import (
	"cmp"
	"fmt"
	"slices"

	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// trifle is what a plane or a file takes off in the fitting without its being
// called a clash; common practice, no source.
const trifle = quantity.Millimetre

// near is how close two things are taken to be beside each other.
const nearby = quantity.Inch / 4

// A pair is two things whose boxes come near each other.
type pair struct{ a, b *thing }

// neighbours finds them, in the order of the things: along one axis they are swept
// past each other, so that the work grows with what is near, not with all pairs.
func (c *check) neighbours() []pair {
	axis := c.longest()
	order := make([]int, len(c.things))
	for i := range order {
		order[i] = i
	}
	low := func(i int) float64 { lo, _ := reach(c.things[i].box, axis); return lo }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(low(a), low(b)) })
	var found [][2]int
	var open []int
	for _, i := range order {
		from := low(i) - float64(nearby)
		open = slices.DeleteFunc(open, func(j int) bool { _, hi := reach(c.things[j].box, axis); return hi < from })
		for _, j := range open {
			if close(c.things[i], c.things[j]) {
				found = append(found, [2]int{min(i, j), max(i, j)})
			}
		}
		open = append(open, i)
	}
	slices.SortFunc(found, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	out := make([]pair, len(found))
	for i, f := range found {
		out[i] = pair{c.things[f[0]], c.things[f[1]]}
	}
	c.report.Counts.Pairs = len(out)
	return out
}

// longest is the axis along which the vehicle is longest.
func (c *check) longest() int {
	best, most := 0, 0.0
	for axis := range 3 {
		lo, hi := 0.0, 0.0
		for i, t := range c.things {
			l, h := reach(t.box, axis)
			if i == 0 {
				lo, hi = l, h
			}
			lo, hi = min(lo, l), max(hi, h)
		}
		if hi-lo > most {
			best, most = axis, hi-lo
		}
	}
	return best
}

func close(a, b *thing) bool {
	for axis := range 3 {
		al, ah := reach(a.box, axis)
		bl, bh := reach(b.box, axis)
		if al-float64(nearby) > bh || bl-float64(nearby) > ah {
			return false
		}
	}
	return true
}

// holds reports whether a fastening goes through a thing.
func (t *thing) holds(o *thing) bool {
	if t.bolt == nil {
		return false
	}
	for _, s := range t.bolt.Through {
		if s.ID == o.id {
			return true
		}
	}
	return false
}

// meant reports whether two things are to be in each other: a bolt and what it
// holds, whose hole is looked at by itself.
func (p pair) meant() bool { return p.a.holds(p.b) || p.b.holds(p.a) }

// clashes tells of what two solids both fill.
func (c *check) clashes() {
	for _, p := range c.near {
		if p.meant() {
			continue
		}
		o := probe.Common(p.a.body, p.b.body, trifle)
		if o.Volume <= 0 {
			continue
		}
		c.say(vehicle.Remark{
			Check: "overlap", Gravity: vehicle.CannotGo,
			Subject:  p.a.name + " and " + p.b.name,
			Says:     fmt.Sprintf("%s and %s are in each other by %s: %.1f cm3 of both in one place.", p.a.name, p.b.name, c.show(o.Deep), float64(o.Volume)/1000),
			Measured: vehicle.OfLength(o.Deep), Limit: vehicle.OfLength(trifle), Place: placeOf(o.At),
		})
	}
}

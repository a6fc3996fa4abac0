package fit

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// lost is how far a hole may lie off its bolt and still be taken for that bolt's.
const lost = 2 * quantity.Inch

// boreOf finds a fastening's hole in one of the things it goes through: by name,
// else the nearest that goes its way.
func (r *run) boreOf(i int) (bore, bool) {
	t, best, found := r.stops[i], float64(lost), false
	var out bore
	if t == nil {
		return out, false
	}
	for _, b := range t.bores {
		if n := r.f.Through[i].Hole; n > 0 && b.number == n {
			return b, true
		}
		if !parallel(b.way, r.way) {
			continue
		}
		d := off(r.head, r.way, b.at)
		if named := b.ref != "" && r.isRef(b.ref); named {
			d /= 100 // a hole that bears its name is its own, wherever it lies
		}
		if d < best {
			best, out, found = d, b, true
		}
	}
	return out, found
}

// isRef reports whether a hole's name on a sheet means this fastening: a sheet
// that says its own hand and row leaves them out.
func (r *run) isRef(ref string) bool {
	id, ok := strings.CutPrefix(ref, "fastening ")
	base := func(s string) string { s, _, _ = strings.Cut(s, " "); s, _, _ = strings.Cut(s, "."); return s }
	return ok && base(id) == base(r.f.ID)
}

// holes looks at the holes of every bolt: whether they are there, in line, and of a size for it.
func (c *check) holes() {
	for _, r := range c.runs {
		if r.f.What == "clip" {
			continue
		}
		c.inLine(r)
		c.holeSizes(r)
	}
}

// A seen is one hole of a run as its bolt sees it.
type seen struct {
	bore
	thing *thing
	x, y  float64 // off the bolt's line
}

func (r *run) seen() []seen {
	var out []seen
	u, v := square(r.way)
	for i, t := range r.stops {
		if b, ok := r.boreOf(i); ok {
			d := b.at.Minus(r.head)
			out = append(out, seen{b, t, float64(u.Along(d)), float64(v.Along(d))})
		}
	}
	return out
}

// inLine tells of the two holes of a run that are farthest out of line, where the
// bolt no longer goes through both.
func (c *check) inLine(r *run) {
	hs := r.seen()
	worst, at := 0.0, [2]int{-1, -1}
	for i := range hs {
		for j := range i {
			if by := math.Hypot(hs[i].x-hs[j].x, hs[i].y-hs[j].y) - r.slack(hs[i], hs[j]); by > worst {
				worst, at = by, [2]int{j, i}
			}
		}
	}
	if at[0] < 0 || worst < unseen {
		return
	}
	a, b := hs[at[0]], hs[at[1]]
	apart := quantity.Length(math.Hypot(a.x-b.x, a.y-b.y))
	m := vehicle.Remark{
		Check: "holes in line", Gravity: vehicle.CannotGo, Subject: r.self.title(r),
		Says: fmt.Sprintf("For fastening %s the hole in %s and the hole in %s are %s out of line; its bolt goes through up to %s.",
			r.f.ID, a.thing.the(), b.thing.the(), c.show(apart), c.show(quantity.Length(r.slack(a, b)))),
		Do:       fmt.Sprintf("Bore it in %s with %s held in its place, not to the drawing.", woodOf(a, b).the(), other(a, b).the()),
		Measured: vehicle.OfLength(apart), Limit: vehicle.OfLength(quantity.Length(r.slack(a, b))), Basis: "the play of the bolt in both holes",
		Place: placeOf(b.at),
	}
	if worst <= float64(ease) {
		m.Gravity = vehicle.LookAt
		m.Do = fmt.Sprintf("Ease the hole in %s by %s, or bore it with the other in place.", woodOf(a, b).the(), c.show(quantity.Length(worst)))
	}
	c.about(&m, a.thing, b.thing)
	m.Things = append(m.Things, "fastening "+r.f.ID)
	c.say(m)
}

// unseen is what no hole is bored to; common practice, no source.
const unseen = 0.4

// roundings is what two ways to work out one place may differ by.
const roundings = 0.05

// ease is how far a hole is eased with a round file in the fitting and no harm
// done; common practice, no source.
const ease = quantity.Inch / 16

func (r *run) slack(a, b seen) float64 {
	d := r.f.Diameter
	return math.Max(0, float64(a.diameter-d)/2) + math.Max(0, float64(b.diameter-d)/2)
}

// woodOf is the one of two that can be bored anew.
func woodOf(a, b seen) *thing {
	if b.thing.wood() {
		return b.thing
	}
	return a.thing
}

func other(a, b seen) *thing {
	if woodOf(a, b) == b.thing {
		return a.thing
	}
	return b.thing
}

// title names a fastening in lists; it works for one that is no solid.
func (t *thing) title(r *run) string { return "fastening " + r.f.ID }

// holeSizes sets every hole beside its bolt: bored too tight it splits the wood.
func (c *check) holeSizes(r *run) {
	for _, h := range r.seen() {
		if !h.thing.wood() || r.f.What != "bolt" || r.f.Diameter <= 0 {
			continue
		}
		play := h.diameter - r.f.Diameter
		m := vehicle.Remark{
			Check: "hole size", Gravity: vehicle.LookAt, Subject: "fastening " + r.f.ID,
			Measured: vehicle.OfLength(play), Basis: "National Design Specification for Wood Construction, 12.1.3.2", Place: placeOf(h.at),
		}
		switch {
		case play < bolt.LeastPlay-roundings:
			m.Limit = vehicle.OfLength(bolt.LeastPlay)
			m.Says = fmt.Sprintf("The hole in %s for fastening %s is only %s wider than its bolt: driving it splits the wood.", h.thing.the(), r.f.ID, c.show(play))
			m.Do = fmt.Sprintf("Bore it %s.", c.show(bolt.Hole(r.f.Diameter)))
		case play > bolt.MostPlay+roundings:
			m.Limit = vehicle.OfLength(bolt.MostPlay)
			m.Says = fmt.Sprintf("The hole in %s for fastening %s is %s wider than its bolt, which works loose in it.", h.thing.the(), r.f.ID, c.show(play))
			m.Do = fmt.Sprintf("Bore it %s.", c.show(bolt.Hole(r.f.Diameter)))
		default:
			continue
		}
		c.about(&m, h.thing)
		c.say(m)
	}
}

// drawn is how wide a gap a bolt draws up as its nut is run down; common practice, no source.
const drawn = quantity.Inch / 16

// contacts looks between neighbours in a run that are meant to touch.
func (c *check) contacts() {
	for _, r := range c.runs {
		for i := 1; i < len(r.stops); i++ {
			if r.f.What != "clip" {
				c.contact(r, i)
			}
		}
	}
}

func (c *check) contact(r *run, i int) {
	a, b := r.stops[i-1], r.stops[i]
	if a == nil || b == nil || math.IsNaN(r.enter[i]) || math.IsNaN(r.leave[i-1]) {
		return
	}
	gap := quantity.Length(r.enter[i]-r.leave[i-1]) - max(r.f.Through[i].Gap, 0)
	if gap <= drawn {
		return
	}
	m := vehicle.Remark{
		Check: "contact", Gravity: vehicle.LookAt, Subject: a.name + ", " + b.name,
		Says: fmt.Sprintf("%s and %s are to touch at fastening %s and are %s apart.", capital(a.the()), b.the(), r.f.ID, c.show(gap)),
		Do: fmt.Sprintf("Pack it out by %s, or say in the run that there is a gap (\"gap %s\"). If neither is so, a size or a reading between them is wrong: see lostwood questions.",
			c.show(gap), c.show(gap)),
		Measured: vehicle.OfLength(gap), Limit: vehicle.OfLength(drawn), Basis: fitting,
		Place: placeOf(r.along(quantity.Length(r.leave[i-1]))),
	}
	c.about(&m, a, b)
	m.Things = append(m.Things, "fastening "+r.f.ID)
	c.say(m)
}

package fit

import (
	"fmt"
	"math"

	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// narrow is the room under which two things that are not bolted to each other are
// told to be too near: paint fills it, and grit jams in it; common practice, no source.
const narrow = quantity.Inch / 32

// looks is how far apart two things are still looked at.
const looks = quantity.Inch / 8

// season tells what the wettest and the driest month do: what binds, what comes
// loose, what holes drift.
func (c *check) season() {
	rooms := make([]*probe.Gap, len(c.near))
	sideBySide(len(c.near), func(i int) {
		p := c.near[i]
		if p.a.bolt != nil || p.b.bolt != nil || !p.a.wood() && !p.b.wood() || c.bolted(p) {
			return
		}
		if g, ok := probe.Between(p.a.body, p.b.body, looks); ok {
			rooms[i] = &g
		}
	})
	for i, g := range rooms {
		if g != nil {
			c.room(c.near[i], *g)
		}
	}
	c.slack()
	c.drift()
}

// bolted reports whether one fastening goes through both.
func (c *check) bolted(p pair) bool {
	for _, r := range c.runs {
		if r.through(p.a) && r.through(p.b) {
			return true
		}
	}
	return false
}

// room tells of two things that come too near each other, in service or when wet.
func (c *check) room(p pair, g probe.Gap) {
	wet := c.grows(p.a, g, g.After) + c.grows(p.b, g, !g.After)
	left := g.Wide - wet
	m := vehicle.Remark{
		Gravity: vehicle.LookAt, Subject: p.a.name + ", " + p.b.name, Place: placeOf(g.At), Basis: fitting,
	}
	switch {
	case g.Wide > roundings && left < 0:
		m.Check = "binds when wet"
		m.Says = fmt.Sprintf("%s and %s are %s apart in service and press on each other when wet: the wood wants %s, at %.3g %% moisture.",
			capital(p.a.the()), p.b.the(), c.show(g.Wide), c.show(wet), float64(c.vehicle.Moisture.Wettest))
		m.Do = fmt.Sprintf("Take %s off %s, or leave that much more room.", c.show(narrow-left), planed(p).the())
		m.Measured, m.Limit = vehicle.OfLength(left), vehicle.OfLength(0)
	case g.Wide > roundings && g.Wide < narrow:
		m.Check = "near miss"
		m.Says = fmt.Sprintf("%s and %s pass each other with %s to spare.", capital(p.a.the()), p.b.the(), c.show(g.Wide))
		m.Do = "See that they are meant to, and ease one if not."
		m.Measured, m.Limit = vehicle.OfLength(g.Wide), vehicle.OfLength(narrow)
	default:
		return
	}
	if d := c.doubtBetween(p.a, p.b, g.Axis); d > g.Wide {
		m.Gravity = vehicle.Noted // nobody knows it so well
	}
	c.about(&m, p.a, p.b)
	c.say(m)
}

// planed is the one of a pair that is wood and was not made of one piece with its joints.
func planed(p pair) *thing {
	if p.a.wood() {
		return p.a
	}
	return p.b
}

// grows is how far a timber's side comes out at the wettest: the growth of the wood
// between what holds it and that side. High says which side of it the gap is on.
func (c *check) grows(t *thing, g probe.Gap, high bool) quantity.Length {
	if !t.wood() || axisOf(t.grain()) == g.Axis {
		return 0 // iron, or along the grain
	}
	lo, hi := reach(t.box, g.Axis)
	edge := lo
	if high {
		edge = hi
	}
	held := (lo + hi) / 2
	least := math.Inf(1)
	for _, r := range c.runs {
		if r.f.What == "clip" || math.Abs(r.f.Way[g.Axis]) > 0.5 || !r.through(t) {
			continue
		}
		if d := math.Abs(spot(r.head)[g.Axis] - edge); d < least {
			least, held = d, spot(r.head)[g.Axis]
		}
	}
	return quantity.Length(math.Abs(edge-held) * c.swells(t))
}

// swells is how much wider a timber gets across the grain from service to the
// wettest month, as a part of its width.
func (c *check) swells(t *thing) float64 {
	for _, p := range c.seasons.Parts {
		if p.Item == t.part.Item && p.Broad > 0 && p.BroadBy.Known() {
			return float64(p.BroadBy.Wettest / p.Broad)
		}
	}
	return 0
}

// loose is how much slack under a nut a person notices; common practice, no source.
const loose = quantity.Inch / 32

// slack tells which nuts come loose in the driest month.
func (c *check) slack() {
	for _, g := range c.seasons.Grips {
		if !g.By.Known() || -g.By.Driest < loose {
			continue
		}
		m := vehicle.Remark{
			Check: "loosens when dry", Gravity: vehicle.Noted, Subject: "fastening " + g.Fastening.ID,
			Says: fmt.Sprintf("What fastening %s holds shrinks by %s to the driest month: its nut comes loose.", g.Fastening.ID, c.show(-g.By.Driest)),
			Do:   "Tighten it after the first dry season.", Measured: vehicle.OfLength(-g.By.Driest), Limit: vehicle.OfLength(loose), Basis: fitting,
			Things: []string{"fastening " + g.Fastening.ID},
		}
		c.say(m)
	}
}

// drift tells where wood carries its holes away from those of its iron.
func (c *check) drift() {
	for _, s := range c.seasons.Spacings {
		if s.Needs() <= 0 {
			continue
		}
		last := s.Holes[len(s.Holes)-1].Fastening
		worst := max(s.By.Shrinks(), s.By.Swells())
		m := vehicle.Remark{
			Check: "holes drift", Gravity: vehicle.LookAt, Subject: lower(s.Part.Name) + ", " + lower(s.Holder),
			Says: fmt.Sprintf("Between fastening %s and fastening %s %s moves by %s against %s over the year, and its bolts give by %s.",
				s.Holes[0].Fastening.ID, last.ID, the(lower(s.Part.Name)), c.show(worst), the(lower(s.Holder)), c.show(s.Play)),
			Do:       fmt.Sprintf("Hold it fast at fastening %s and slot the other holes by %s.", s.Holes[s.Fast()].Fastening.ID, c.show(s.Needs())),
			Measured: vehicle.OfLength(worst), Limit: vehicle.OfLength(s.Play), Parts: []string{s.Part.ID}, Basis: "the play of the bolts",
		}
		if t := c.byID[s.Part.ID]; t != nil {
			m.Place = placeOf(t.point(0, 0, 0))
		}
		c.say(m)
	}
}

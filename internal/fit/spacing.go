package fit

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// Distances of bolts in wood, in bolt diameters: National Design Specification for
// Wood Construction, Tables 12.5.1A to 12.5.1D. The full figure lets a bolt carry all
// it can; under the least one the specification lets it carry nothing. Old work may
// stand closer: it is told, and no hole is moved.
const (
	endFull, endLeast  = 5.0, 2.5 // towards the end of the grain, hardwood pulled along it
	edgeLeast          = 1.5      // towards an edge along the grain
	rowFull, rowLeast  = 4.0, 3.0 // from the next bolt along the grain
	boltDistancesBasis = "National Design Specification for Wood Construction, Tables 12.5.1A to D"
)

// nearEnough is what a distance may fall short by and still print as the figure asked.
const nearEnough = 0.97

// distances looks how far every bolt is from the ends and edges of its timbers and
// from the next bolt along the grain.
func (c *check) distances() {
	for _, t := range c.things {
		if t.stick == nil {
			continue
		}
		for i, b := range t.bores {
			r := c.boredFor(t, b)
			if r == nil || r.f.What != "bolt" || r.f.Diameter <= 0 || parallel(b.way, t.grain()) {
				continue
			}
			c.fromEnds(t, b, r)
			c.fromEdges(t, b, r)
			c.fromNext(t, i, r)
		}
	}
}

// boredFor is the fastening that a bore is for: the one whose line it lies on.
func (c *check) boredFor(t *thing, b bore) *run {
	var best *run
	least := float64(lost)
	for _, r := range c.runs {
		for _, s := range r.stops {
			if s != t || !parallel(r.way, b.way) {
				continue
			}
			if d := off(r.head, r.way, b.at); d < least {
				best, least = r, d
			}
		}
	}
	return best
}

// side is a direction square to two others.
func side(a, b form.Dir) form.Dir { return form.Frame{U: a, V: b}.W() }

func (c *check) fromEnds(t *thing, b bore, r *run) {
	for k, way := range []form.Dir{t.grain(), t.grain().Opposite()} {
		left, to := t.beyond(b, way), "hind"
		if k == 1 {
			to = "fore"
		}
		if left >= quantity.Length(endLeast*nearEnough)*r.f.Diameter {
			continue
		}
		c.tooNear(t, r, b, "end distance", left, endLeast, endFull,
			fmt.Sprintf("from the %s end of %s", t.endWord(to), t.the()))
	}
}

// endWord is an end by the way its timber runs.
func (t *thing) endWord(end string) string {
	first := end == "fore"
	switch t.part.Run {
	case vehicle.Across:
		return map[bool]string{true: "near", false: "off"}[first]
	case vehicle.Upright:
		return map[bool]string{true: "lower", false: "upper"}[first]
	}
	return end
}

// beyond is how far a bore's middle is from where the timber ends that way,
// whatever other holes there are between.
func (t *thing) beyond(b bore, way form.Dir) quantity.Length {
	most := quantity.Length(0)
	lift := side(way, b.way)
	for _, k := range []quantity.Length{-1, 0, 1} { // a hole in line must not hide the end
		at := b.at.Plus(b.way, t.halfway(b)).Plus(lift, k*(b.diameter/2+quantity.Millimetre))
		for _, s := range t.body.Along(at, way) {
			most = max(most, s.To)
		}
	}
	return most
}

// halfway is how far along a bore the middle of the wood beside it lies.
func (t *thing) halfway(b bore) quantity.Length {
	u, _ := square(b.way)
	for _, s := range t.body.Along(b.at.Plus(u, b.diameter/2+quantity.Millimetre), b.way) {
		if s.To > quantity.Millimetre {
			return (max(s.From, 0) + s.To) / 2
		}
	}
	return 0
}

func (c *check) fromEdges(t *thing, b bore, r *run) {
	across := side(t.grain(), b.way)
	for _, way := range []form.Dir{across, across.Opposite()} {
		left := t.beyond(b, way)
		if left >= quantity.Length(edgeLeast*nearEnough)*r.f.Diameter {
			continue
		}
		c.tooNear(t, r, b, "edge distance", left, edgeLeast, edgeLeast, "from an edge of "+t.the())
	}
}

// fromNext looks at the next bolt the same way through the same timber, along its grain.
func (c *check) fromNext(t *thing, i int, r *run) {
	b := t.bores[i]
	for j, o := range t.bores {
		if j <= i || !parallel(o.way, b.way) || c.boredFor(t, o) == nil {
			continue
		}
		d := o.at.Minus(b.at)
		along := quantity.Length(math.Abs(float64(t.grain().Along(d))))
		across := quantity.Length(math.Abs(float64(side(t.grain(), b.way).Along(d))))
		if across > 2*r.f.Diameter || along >= quantity.Length(rowLeast)*r.f.Diameter {
			continue
		}
		c.tooNear(t, r, b, "bolt spacing", along, rowLeast, rowFull, fmt.Sprintf("from fastening %s along the grain of %s", c.boredFor(t, o).f.ID, t.the()))
	}
}

func (c *check) tooNear(t *thing, r *run, b bore, check string, left quantity.Length, least, full float64, from string) {
	d := r.f.Diameter
	rule := fmt.Sprintf("the published rule asks %.3g, and gives a bolt nearer than %.3g nothing to carry", full, least)
	if full == least {
		rule = fmt.Sprintf("the published rule asks %.3g", full)
	}
	m := vehicle.Remark{
		Check: check, Gravity: vehicle.LookAt, Subject: "fastening " + r.f.ID + ", " + t.name,
		Says: fmt.Sprintf("The hole of fastening %s is %s %s: %.1f times its bolt's diameter; %s.", r.f.ID, c.show(left), from, float64(left/d), rule),
		Do:   "The old irons put it there, so leave it there. Choose straight grain without a knot or check, and let a competent person judge what it carries.",

		Measured: vehicle.OfLength(left), Limit: vehicle.OfLength(quantity.Length(least) * d), Basis: boltDistancesBasis, Place: placeOf(b.at),
		Things: []string{"fastening " + r.f.ID},
	}
	c.about(&m, t)
	c.say(m)
}

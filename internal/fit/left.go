package fit

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// What is left of a timber beside and under what is cut into it; common practice, no source.
const (
	floorLeast = 1.0 / 3               // of its depth, under a housing or a blind mortise
	wallLeast  = quantity.Inch * 3 / 8 // beside a mortise
	endLeft    = quantity.Inch         // from a mortise to the end of the grain
)

// woodLeft looks at what mortises and housings leave of their timbers, once for
// each distinct part.
func (c *check) woodLeft() {
	seen := map[*vehicle.Item]bool{}
	for _, t := range c.things {
		if t.stick == nil || seen[t.part.Item] {
			continue
		}
		seen[t.part.Item] = true
		for _, f := range t.stick.Features {
			switch f := f.(type) {
			case parts.Mortise:
				c.mortise(t, f)
			case parts.Housing:
				c.floor(t, f.What, f.Face, f.Depth)
			}
		}
	}
}

// through is how thick a timber's box is under a face, and how wide the face.
func through(s *parts.Stick, f parts.Face) (thick, wide, long quantity.Length) {
	l, w, d := s.Body.Box()
	switch f {
	case parts.Upper, parts.Under:
		return d, w, l
	case parts.FirstSide, parts.SecondSide:
		return w, d, l
	}
	return l, d, w
}

func (c *check) floor(t *thing, what string, f parts.Face, deep quantity.Length) {
	thick, _, _ := through(t.stick, f)
	left := thick - deep
	if deep <= 0 || left >= thick*quantity.Length(floorLeast) {
		return
	}
	c.weak(t, what, fmt.Sprintf("leaves %s of wood under it, of %s", c.show(left), c.show(thick)), left, thick*quantity.Length(floorLeast))
}

func (c *check) mortise(t *thing, m parts.Mortise) {
	c.floor(t, m.What, m.Face, m.Depth)
	_, wide, long := through(t.stick, m.Face)
	wall := min(m.At.Y-m.Wide/2, wide-m.At.Y-m.Wide/2)
	if wall < wallLeast && wall > 0 {
		c.weak(t, m.What, fmt.Sprintf("leaves a wall of %s beside it", c.show(wall)), wall, wallLeast)
	}
	end := min(m.At.X-m.Long/2, long-m.At.X-m.Long/2)
	if end < endLeft && end > 0 {
		c.weak(t, m.What, fmt.Sprintf("leaves %s to the end of the timber, short grain that splits out", c.show(end)), end, endLeft)
	}
}

func (c *check) weak(t *thing, what, leaves string, left, limit quantity.Length) {
	m := vehicle.Remark{
		Check: "wood left", Gravity: vehicle.LookAt, Subject: lower(t.part.Item.Name),
		Says: fmt.Sprintf("In %s the %s %s.", the(lower(t.part.Item.Name)), what, leaves),
		Do:   "Cut it less deep or move it where the irons allow; else choose the straightest grain there is.", Basis: fitting,
		Measured: vehicle.OfLength(left), Limit: vehicle.OfLength(limit), Place: placeOf(t.point(0, 0, 0)),
	}
	for _, p := range t.part.Item.Parts {
		m.Parts = append(m.Parts, p.ID)
	}
	c.say(m)
}

// A Leave is wood to leave on, or a hole to leave unbored, until the part is held
// to its place.
type Leave struct {
	Part   *vehicle.Item
	What   string          // "its hind end", "fastening 7"
	By     quantity.Length // how far it may be off: twice the standard uncertainty
	Allows quantity.Length // what the fit allows
	Until  string          // what it is to be held to
	Says   string
}

// sure is how many standard uncertainties are covered: nineteen times in twenty.
const sure = 2

// leaveEnds tells of the ends of timbers that are not known as well as a joint
// wants, from the bolt nearest to each.
func (c *check) leaveEnds() {
	if c.doubts == nil {
		return
	}
	seen := map[*vehicle.Item]bool{}
	for _, t := range c.things {
		if t.stick == nil || seen[t.part.Item] {
			continue
		}
		seen[t.part.Item] = true
		axis := axisOf(t.grain())
		for k, where := range []vehicle.MarkKind{vehicle.MarkLow, vehicle.MarkHigh} {
			end := vehicle.Mark{ID: t.id, Axis: axis, Where: where}
			hold := c.nearestBolt(t, axis, k == 0)
			if hold == nil {
				continue
			}
			u := c.doubts.Apart(vehicle.Mark{ID: hold.f.ID, Axis: axis, Where: vehicle.MarkLine}, end).Doubt
			by := sure * u
			if math.IsInf(float64(by), 0) || math.IsNaN(float64(by)) || by <= drawn {
				continue
			}
			word := t.endWord("fore")
			if (t.grain().X+t.grain().Y+t.grain().Z > 0) == (k == 1) {
				word = t.endWord("hind")
			}
			c.report.Leave = append(c.report.Leave, Leave{
				Part: t.part.Item, What: "its " + word + " end", By: by, Allows: drawn, Until: "fastening " + hold.f.ID,
				Says: fmt.Sprintf("Leave the %s end of %s %s long until it is bolted up at fastening %s and can be marked from what it meets.",
					word, the(lower(t.part.Item.Name)), c.show(by), hold.f.ID),
			})
		}
	}
}

func axisOf(d form.Dir) int {
	switch {
	case math.Abs(d.X) > 0.5:
		return 0
	case math.Abs(d.Y) > 0.5:
		return 1
	}
	return 2
}

// nearestBolt is the fastening through a timber that stands nearest to one of its ends.
func (c *check) nearestBolt(t *thing, axis int, low bool) *run {
	var best *run
	at := 0.0
	for _, r := range c.runs {
		if r.f.What == "clip" || math.Abs(r.f.Way[axis]) > 0.5 || !r.through(t) {
			continue
		}
		k := spot(r.head)[axis]
		if best == nil || low && k < at || !low && k > at {
			best, at = r, k
		}
	}
	return best
}

func (r *run) through(t *thing) bool {
	for _, s := range r.stops {
		if s == t {
			return true
		}
	}
	return false
}

// leaveHoles tells of holes that an iron asks of a timber and that the readings of
// the iron do not place as well as its bolts want. One is bored to the drawing; the
// others are marked through the iron.
func (c *check) leaveHoles() {
	if c.doubts == nil {
		return
	}
	type key struct {
		item *vehicle.Item
		iron string
	}
	seen := map[key]int{}
	for _, s := range c.things {
		if s.iron == nil {
			continue
		}
		for _, t := range c.things {
			if t.stick == nil {
				continue
			}
			l, ok := c.leaveHolesOf(t, s)
			if !ok {
				continue
			}
			k := key{t.part.Item, s.iron.Name}
			if i, ok := seen[k]; ok {
				if l.By > c.report.Leave[i].By {
					c.report.Leave[i] = l
				}
				continue
			}
			seen[k] = len(c.report.Leave)
			c.report.Leave = append(c.report.Leave, l)
		}
	}
}

func (c *check) leaveHolesOf(t, s *thing) (Leave, bool) {
	var shared []*run
	var holes []int
	for _, r := range c.runs {
		if r.f.What != "bolt" || !r.through(t) {
			continue
		}
		for i, o := range r.stops {
			if o == s && r.f.Through[i].Hole > 0 {
				shared, holes = append(shared, r), append(holes, r.f.Through[i].Hole)
			}
		}
	}
	if len(shared) < 2 {
		return Leave{}, false
	}
	axis := axisOf(s.place.U)
	first := len(shared) / 2
	var names []string
	var worst quantity.Length
	for i, r := range shared {
		if i == first {
			continue
		}
		u := c.doubts.Apart(vehicle.Mark{ID: s.id, Axis: axis, Where: vehicle.MarkHole, Hole: holes[first]},
			vehicle.Mark{ID: s.id, Axis: axis, Where: vehicle.MarkHole, Hole: holes[i]}).Doubt
		if math.IsInf(float64(u), 0) || math.IsNaN(float64(u)) || sure*u <= c.allows(r)+c.allows(shared[first]) {
			continue
		}
		names = append(names, r.f.ID)
		worst = max(worst, sure*u)
	}
	if len(names) == 0 {
		return Leave{}, false
	}
	return Leave{
		Part: t.part.Item, What: "holes " + listed(names), By: worst, Allows: 2 * c.allows(shared[first]), Until: s.the(),
		Says: fmt.Sprintf("In %s bore fastening %s, bolt up %s there, and mark fastening %s through its holes: they may be %s off.",
			t.the(), shared[first].f.ID, s.the(), listed(names), c.show(worst)),
	}, true
}

// allows is how far a bolt can stand off in the hole of the timber and of the iron.
func (c *check) allows(r *run) quantity.Length {
	hs := r.seen()
	if len(hs) < 2 {
		return 0
	}
	return quantity.Length(r.slack(hs[0], hs[len(hs)-1]))
}

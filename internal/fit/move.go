package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"

	v3 "github.com/deadsy/sdfx/vec/v3"
)

// A motion is a move as it is worked out: what moves, what stands, how a place moves.
type motion struct {
	move    *vehicle.Move
	goes    []*thing
	stands  []*thing
	at      v3.Vec
	axis    v3.Vec
	way     float64 // which way it turns or goes
	end     float64 // how far it is followed, in radians or millimetres
	skipped map[*thing]bool
}

// A meeting is where a motion ends.
type meeting struct {
	by          float64 // how far, in radians or millimetres
	goes, meets *thing
	at          form.Vec
}

// followed is how far a turn without a limit asked is followed, to either side, and
// a swing.
const followed = 90 * quantity.Degree

func (c *check) moves() {
	for i := range c.vehicle.Moves {
		m := &c.vehicle.Moves[i]
		c.report.Counts.Moves++
		switch m.Kind {
		case vehicle.Turns:
			c.turn(m)
		case vehicle.Swings:
			c.swing(m)
		default:
			c.travel(m)
		}
	}
}

// motion sorts what moves from what stands.
func (c *check) motion(m *vehicle.Move, way, end float64) *motion {
	o := &motion{
		move: m, way: way, end: end, skipped: map[*thing]bool{},
		at:   v3.Vec{X: m.At[0].Value.Millimetres(), Y: m.At[1].Value.Millimetres(), Z: m.At[2].Value.Millimetres()},
		axis: v3.Vec{X: m.Axis[0], Y: m.Axis[1], Z: m.Axis[2]},
	}
	goes := map[string]bool{}
	for _, id := range m.With {
		goes[id] = true
	}
	for _, t := range c.things {
		switch {
		case slices.Contains(m.On, t.id) || t.bolt != nil && slices.Contains(m.On, t.bolt.ID) || o.onAxis(t):
		case goes[t.id] || t.bolt != nil && allOf(t.bolt, goes):
			o.goes = append(o.goes, t)
		case t.bolt != nil && anyOf(t.bolt, goes): // it holds the two together: not told
		default:
			o.stands = append(o.stands, t)
		}
	}
	for i := range m.Wheels {
		w := roomThing(&m.Wheels[i])
		if m.Kind == vehicle.Travels {
			o.stands = append(o.stands, w)
		} else {
			o.goes = append(o.goes, w)
		}
	}
	return o
}

func allOf(f *vehicle.Fastening, ids map[string]bool) bool {
	for _, s := range f.Through {
		if !ids[s.ID] {
			return false
		}
	}
	return true
}

func anyOf(f *vehicle.Fastening, ids map[string]bool) bool {
	for _, s := range f.Through {
		if ids[s.ID] {
			return true
		}
	}
	return false
}

// onAxis reports whether a fastening is what a thing turns on: its line is the axis.
func (o *motion) onAxis(t *thing) bool {
	if t.bolt == nil || o.move.Kind == vehicle.Travels || !parallel(dir(t.bolt.Way), dir(o.move.Axis)) {
		return false
	}
	at := form.Vec{X: t.bolt.Head[0].Value, Y: t.bolt.Head[1].Value, Z: t.bolt.Head[2].Value}
	return off(at, dir(o.move.Axis), form.Vec{X: form.Length(o.at.X), Y: form.Length(o.at.Y), Z: form.Length(o.at.Z)}) < 1
}

// roomThing is a wheel as the round that it fills.
func roomThing(w *vehicle.WheelRoom) *thing {
	u, v := square(dir(w.Axis))
	p := form.Prism{
		Frame:   form.Frame{Origin: form.Vec{X: w.Centre[0], Y: w.Centre[1], Z: w.Centre[2]}, U: u, V: v},
		Profile: form.Circle(form.Point{}, w.Radius), From: -w.Wide / 2, To: w.Wide / 2,
	}
	return &thing{id: w.Name, name: w.Name, shape: p, box: form.Bounds(p)}
}

// back takes a place to where it was before the motion went so far.
func (o *motion) back(by float64) pose {
	by *= -o.way
	if o.move.Kind == vehicle.Travels {
		return func(p v3.Vec) v3.Vec { return p.Add(o.axis.MulScalar(by)) }
	}
	s, c := math.Sincos(by)
	return func(p v3.Vec) v3.Vec {
		q := p.Sub(o.at)
		k := o.axis.Dot(q)
		return o.at.Add(q.MulScalar(c)).Add(o.axis.Cross(q).MulScalar(s)).Add(o.axis.MulScalar(k * (1 - c)))
	}
}

// arm is how far a thing's farthest corner stands from the axis; of a travel 1.
func (o *motion) arm(t *thing) float64 {
	if o.move.Kind == vehicle.Travels {
		return 1
	}
	_, far := o.ring(t)
	return far
}

// ring is between what distances from the axis a thing lies, by its box.
func (o *motion) ring(t *thing) (near, far float64) {
	lo, hi := spot(t.box.Min), spot(t.box.Max)
	at, ax := [3]float64{o.at.X, o.at.Y, o.at.Z}, [3]float64{o.axis.X, o.axis.Y, o.axis.Z}
	for i := range 3 {
		if math.Abs(ax[i]) > 0.5 {
			continue
		}
		a, b := lo[i]-at[i], hi[i]-at[i]
		out := math.Max(math.Abs(a), math.Abs(b))
		far = math.Hypot(far, out)
		if a > 0 || b < 0 {
			near = math.Hypot(near, math.Min(math.Abs(a), math.Abs(b)))
		}
	}
	return near, far
}

// canMeet reports whether two things could meet anywhere on the way.
func (o *motion) canMeet(a, b *thing) bool {
	ax := [3]float64{o.axis.X, o.axis.Y, o.axis.Z}
	travels := o.move.Kind == vehicle.Travels
	for i := range 3 {
		al, ah := reach(a.box, i)
		bl, bh := reach(b.box, i)
		along := math.Abs(ax[i]) > 0.5
		switch {
		case travels && along:
			step := ax[i] * o.way * o.end
			al, ah = al+math.Min(step, 0), ah+math.Max(step, 0)
			if al > bh || bl > ah {
				return false
			}
		case travels || along: // what lies flat on it slides
			if math.Min(ah, bh)-math.Max(al, bl) < slides {
				return false
			}
		}
	}
	if travels {
		return true
	}
	an, af := o.ring(a)
	bn, bf := o.ring(b)
	return an <= bf && bn <= af
}

// slides is how far two things may reach into each other across the way of a motion
// and still be taken to slide on each other.
const slides = 2.0

// first is what a motion meets first. What stands nearest is followed first: farther
// things then need be followed no farther than that.
func (c *check) first(o *motion, meets func(*thing) bool) (meeting, bool) {
	type couple struct {
		a, b  *thing
		apart float64
	}
	var all []couple
	for _, a := range o.goes {
		for _, b := range o.stands {
			if o.canMeet(a, b) && (meets == nil || meets(b)) {
				all = append(all, couple{a, b, o.boxesApart(a, b, 0) / math.Max(o.arm(a), 1)})
			}
		}
	}
	slices.SortStableFunc(all, func(x, y couple) int { return cmp.Compare(x.apart, y.apart) })
	best, found := meeting{by: o.end}, false
	for _, k := range all {
		if m, ok := c.meet(o, k.a, k.b, best.by); ok {
			best, found = m, true
		}
	}
	return best, found
}

// rests is how much deeper than at rest things that touch at rest must come into
// each other before they are said to meet.
const rests = 0.5

// strides is in how many steps, at the most, what touches at rest is followed: it
// cannot be stepped over, and is halved back to.
const strides = 60

// met is how near the edge of meeting a motion is followed.
const met = 0.02

// meet follows two things until they meet, or up to a limit. A step is as far as
// the motion can go without their meeting, by what was found of the room between
// them; should it have gone too far all the same, it is halved back.
func (c *check) meet(o *motion, a, b *thing, limit float64) (meeting, bool) {
	arm := o.arm(a)
	sa, sb := c.field(a), c.field(b)
	if sa == nil || sb == nil || arm <= 0 {
		return meeting{}, false
	}
	mid, half := around(b, arm*limit/2)
	until, pace, closely := 0.0, met/arm, 6.0
	room := func(by float64) room {
		if apart := o.boxesApart(a, b, by); apart > 2*met {
			return room{least: apart / 2, found: apart / 2}
		}
		return nearest(sa, sb, o.back(by), mid, half, arm*(limit-by), closely)
	}
	now := room(0)
	switch {
	case now.least > arm*limit:
		return meeting{}, false
	case now.found < 0.1: // they touch at rest, and slide or part
		until, pace = math.Min(now.found, 0)-rests, limit/strides
		closely = until + rests/2
	}
	last := 0.0
	for by, n := 0.0, 0; by < limit && n < 300; n++ {
		if now.found-until <= met {
			if now.found < until-met {
				by, now = c.backTo(room, last, by, until)
			}
			return meeting{by, a, b, form.Vec{X: form.Length(now.at.X), Y: form.Length(now.at.Y), Z: form.Length(now.at.Z)}}, true
		}
		last = by
		by = math.Min(by+math.Max((math.Max(now.least, 0.8*now.found)-until)/arm, pace), limit)
		now = room(by)
	}
	if now.found < until-met {
		by, hit := c.backTo(room, last, limit, until)
		return meeting{by, a, b, form.Vec{X: form.Length(hit.at.X), Y: form.Length(hit.at.Y), Z: form.Length(hit.at.Z)}}, true
	}
	return meeting{}, false
}

// boxesApart is how far two things are surely apart after a motion: their boxes are.
func (o *motion) boxesApart(a, b *thing, by float64) float64 {
	lo, hi := spot(a.box.Min), spot(a.box.Max)
	to := o.back(-by)
	var min3, max3 [3]float64
	for k := range 8 {
		p := lo
		for i := range 3 {
			if k&(1<<i) != 0 {
				p[i] = hi[i]
			}
		}
		q := to(v3.Vec{X: p[0], Y: p[1], Z: p[2]})
		for i, x := range [3]float64{q.X, q.Y, q.Z} {
			if k == 0 || x < min3[i] {
				min3[i] = x
			}
			if k == 0 || x > max3[i] {
				max3[i] = x
			}
		}
	}
	blo, bhi := spot(b.box.Min), spot(b.box.Max)
	apart := 0.0
	for i := range 3 {
		apart = math.Hypot(apart, math.Max(0, math.Max(blo[i]-max3[i], min3[i]-bhi[i])))
	}
	return apart
}

// backTo halves back to where the room is just what meeting leaves.
func (c *check) backTo(at func(float64) room, from, to, until float64) (float64, room) {
	now := at(to)
	for range 12 {
		by := (from + to) / 2
		if r := at(by); r.found < until {
			to, now = by, r
		} else {
			from = by
		}
	}
	return to, now
}

// around is a cube that holds all the places between a thing and what is to meet it.
func around(b *thing, more float64) (v3.Vec, float64) {
	lo, hi := spot(b.box.Min), spot(b.box.Max)
	m := middle(b.box)
	half := 0.0
	for i := range 3 {
		half = math.Max(half, (hi[i]-lo[i])/2)
	}
	return v3.Vec{X: m[0], Y: m[1], Z: m[2]}, half + more + 1
}

// field is a thing's distance field, made when it is first wanted.
func (c *check) field(t *thing) *solid.Solid {
	if f, ok := c.fields[t]; ok {
		return f
	}
	f, err := solid.New(t.shape)
	if err != nil {
		f = nil
	}
	c.fields[t] = f
	return f
}

func (c *check) turn(m *vehicle.Move) {
	end := float64(followed)
	if m.Asked > 0 {
		end = math.Max(float64(m.Asked), end)
	}
	worst := meeting{by: math.Inf(1)}
	side, met := "", false
	var told []string
	for _, d := range []struct {
		way  float64
		word string
	}{{1, "near"}, {-1, "off"}} {
		o := c.motion(m, d.way, end)
		hit, ok := c.first(o, nil)
		if !ok {
			told = append(told, fmt.Sprintf("clear to %.0f degrees to the %s side", quantity.Angle(end).Degrees(), d.word))
			continue
		}
		told = append(told, fmt.Sprintf("%.1f degrees to the %s side, where %s touches %s", quantity.Angle(hit.by).Degrees(), d.word, hit.goes.the(), hit.meets.the()))
		if hit.by < worst.by {
			worst, side, met = hit, d.word, true
		}
	}
	r := vehicle.Remark{Check: "turning", Gravity: vehicle.Noted, Subject: m.Name, Says: fmt.Sprintf("%s turns %s.", capital(the(m.Name)), listed(told))}
	if met {
		r.Measured, r.Place = vehicle.OfAngle(quantity.Angle(worst.by)), placeOf(worst.at)
		c.about(&r, worst.goes, worst.meets)
	}
	if m.Asked > 0 {
		r.Limit, r.Basis = vehicle.OfAngle(m.Asked), "asked in the survey"
	}
	if met && worst.by < float64(m.Asked)-0.001 {
		r.Gravity = vehicle.CannotGo
		r.Says = fmt.Sprintf("%s turns only %.1f degrees to the %s side of the %.0f that are asked: there %s touches %s.", capital(the(m.Name)),
			quantity.Angle(worst.by).Degrees(), side, m.Asked.Degrees(), worst.goes.the(), worst.meets.the())
		r.Do = fmt.Sprintf("Look again at the track of the wheels and at where %s lies; if the old wagon locked so, ask for less, and put a rub iron there.", worst.meets.the())
	}
	c.say(r)
}

func (c *check) swing(m *vehicle.Move) {
	end := float64(m.Asked)
	if end <= 0 {
		end = float64(followed)
	}
	hit, ok := c.first(c.motion(m, 1, end), nil)
	r := vehicle.Remark{
		Check: "swing", Gravity: vehicle.Noted, Subject: m.Name, Limit: vehicle.OfAngle(quantity.Angle(end)),
		Says: fmt.Sprintf("%s swings clear through %.0f degrees.", capital(the(m.Name)), quantity.Angle(end).Degrees()),
	}
	if ok {
		r.Measured, r.Place, r.Gravity = vehicle.OfAngle(quantity.Angle(hit.by)), placeOf(hit.at), vehicle.LookAt
		r.Says = fmt.Sprintf("%s swings %.1f degrees and there %s hits %s.", capital(the(m.Name)), quantity.Angle(hit.by).Degrees(), hit.goes.the(), hit.meets.the())
		c.about(&r, hit.goes, hit.meets)
		if m.Asked > 0 {
			r.Gravity = vehicle.CannotGo
			r.Says = fmt.Sprintf("%s swings only %.1f degrees of the %.0f that are asked: there %s hits %s.", capital(the(m.Name)),
				quantity.Angle(hit.by).Degrees(), m.Asked.Degrees(), hit.goes.the(), hit.meets.the())
			r.Do = fmt.Sprintf("Ease the edge of %s, or move the hinge's pin away from %s.", hit.goes.the(), hit.meets.the())
			r.Basis = "asked in the survey"
		}
	}
	c.say(r)
}

func (c *check) travel(m *vehicle.Move) {
	end := m.Stop.Millimetres()
	o := c.motion(m, 1, end)
	wanted := func(t *thing) bool {
		return slices.Contains(m.Meets, t.id) || slices.ContainsFunc(m.Wheels, func(w vehicle.WheelRoom) bool { return w.Name == t.id })
	}
	if len(m.Meets)+len(m.Wheels) > 0 {
		c.reaches(o, wanted)
	}
	hit, ok := c.first(o, func(t *thing) bool { return !wanted(t) })
	r := vehicle.Remark{
		Check: "travel", Gravity: vehicle.Noted, Subject: m.Name, Limit: vehicle.OfLength(m.Stop), Basis: "asked in the survey",
		Says: fmt.Sprintf("%s travels clear through %s.", capital(the(m.Name)), c.show(m.Stop)),
	}
	if ok {
		r.Measured, r.Place, r.Gravity = vehicle.OfLength(quantity.Length(hit.by)), placeOf(hit.at), vehicle.LookAt
		r.Says = fmt.Sprintf("%s travels %s of the %s to its stop, and there %s meets %s.", capital(the(m.Name)),
			c.show(quantity.Length(hit.by)), c.show(m.Stop), hit.goes.the(), hit.meets.the())
		r.Do = "See that the stop comes first, or make room there."
		if m.Loaded > 0 && hit.by < m.Loaded.Millimetres() {
			r.Gravity = vehicle.CannotGo
			r.Says = fmt.Sprintf("%s meets %s after %s, before the load that it is to carry has pressed it down by %s.", capital(hit.goes.the()), hit.meets.the(),
				c.show(quantity.Length(hit.by)), c.show(m.Loaded))
			r.Limit = vehicle.OfLength(m.Loaded)
		}
		c.about(&r, hit.goes, hit.meets)
	}
	c.say(r)
}

// reaches tells whether a travel comes to what it is to touch.
func (c *check) reaches(o *motion, wanted func(*thing) bool) {
	m := o.move
	for _, t := range o.stands {
		if !wanted(t) {
			continue
		}
		far := *o
		far.end = o.end + float64(looksOn)
		far.stands = []*thing{t}
		hit, ok := c.first(&far, nil)
		r := vehicle.Remark{Check: "reach", Subject: m.Name + ", " + t.name, Limit: vehicle.OfLength(m.Stop), Basis: "asked in the survey"}
		switch {
		case !ok:
			r.Gravity = vehicle.LookAt
			r.Says = fmt.Sprintf("%s does not come to %s in %s.", capital(the(m.Name)), t.the(), c.show(quantity.Length(far.end)))
			r.Do = "Look again at which way it goes and at where the two lie."
		case hit.by > o.end:
			r.Gravity, r.Measured = vehicle.LookAt, vehicle.OfLength(quantity.Length(hit.by))
			r.Says = fmt.Sprintf("%s touches %s after %s, and its travel is %s.", capital(the(m.Name)), t.the(), c.show(quantity.Length(hit.by)), c.show(m.Stop))
			r.Do = fmt.Sprintf("Make its blocks %s thicker, or give it more travel.", c.show(quantity.Length(hit.by)-m.Stop))
		default:
			r.Gravity, r.Measured = vehicle.Noted, vehicle.OfLength(quantity.Length(hit.by))
			r.Says = fmt.Sprintf("%s touches %s after %s of its %s.", capital(the(m.Name)), t.the(), c.show(quantity.Length(hit.by)), c.show(m.Stop))
		}
		c.about(&r, hit.goes)
		c.say(r)
	}
}

// looksOn is how far beyond its travel it is looked for what a thing is to touch.
const looksOn = 12 * quantity.Inch

package fit

import (
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// A run is a fastening with what it goes through, as the solids stand.
type run struct {
	f     *vehicle.Fastening
	self  *thing
	stops []*thing // head first; nil where a thing has no place
	enter []float64
	leave []float64 // from Head along Way to where each stop's material begins and ends round the hole
	head  form.Vec
	way   form.Dir
	size  hardware
}

// hardware is what a bolt brings besides its shank.
type hardware struct {
	shank              quantity.Length // its diameter
	headWide, headDeep quantity.Length
	nutWide, nutDeep   quantity.Length // across the flats
	washer, washerWide quantity.Length
	thread             quantity.Length // one thread
}

// legs is how thick a clip is taken to be where its survey says only how wide it
// is between its legs; common practice, no source.
const legs = quantity.Inch * 3 / 8

func (c *check) run(f *vehicle.Fastening) *run {
	r := &run{f: f, way: dir(f.Way), head: form.Vec{X: f.Head[0].Value, Y: f.Head[1].Value, Z: f.Head[2].Value}}
	for _, s := range f.Through {
		r.stops = append(r.stops, c.byID[s.ID])
	}
	r.size = sizesOf(f)
	if last := r.stops[len(r.stops)-1]; f.What == "bolt" && last != nil && last.wood() {
		if w, from := bolt.Washer(f.Diameter, bolt.Wide); from != bolt.Unlisted {
			r.size.washer, r.size.washerWide = w.Thickness, w.Outside
		}
	}
	if b := f.Hardware.Bolt; b != nil && b.Washer > 0 {
		r.size.washer = b.Washer
	}
	r.measure()
	return r
}

// sizesOf are a fastening's own: as read, else the larger of what the trade has used.
func sizesOf(f *vehicle.Fastening) hardware {
	h := hardware{shank: f.Diameter}
	if f.What == "clip" {
		h.shank = legs
	}
	d := h.shank
	nut, _ := bolt.Nut(d, bolt.RoughNut)
	h.nutWide, h.nutDeep = nut.Across, nut.Thickness
	h.headWide, h.headDeep = nut.Across, nut.Thickness
	if f.Hardware.Head == vehicle.SquareNeck {
		wide, deep, _ := bolt.Head(d)
		h.headWide, h.headDeep = wide.Max, deep.Max
	}
	if f.Hardware.Head == vehicle.Flush {
		h.headDeep = 0
	}
	if b := f.Hardware.Bolt; b != nil && b.Nut > 0 {
		h.nutDeep = b.Nut
	}
	h.thread, _ = bolt.OneThread(d, bolt.American)
	return h
}

// ring is how many lines are run round a hole.
const ring = 8

// measure finds where the material of each stop begins and ends round the hole.
func (r *run) measure() {
	r.enter, r.leave = make([]float64, len(r.stops)), make([]float64, len(r.stops))
	for i, t := range r.stops {
		r.enter[i], r.leave[i] = math.NaN(), math.NaN()
		if t == nil {
			continue
		}
		for _, line := range r.around(t) {
			from, to := r.ends(i, line)
			r.enter[i] = less(r.enter[i], from)
			r.leave[i] = -less(-r.leave[i], -to)
		}
	}
}

// ends are where a thing begins and ends on one line: the first from its place
// nearest to the head, the last to its place nearest to the nut, whatever slots lie
// beyond; those between from side to side.
func (r *run) ends(i int, line []form.Stretch) (from, to float64) {
	from, to = float64(line[0].From), float64(line[len(line)-1].To)
	for _, s := range line {
		if k := float64(s.From); i == 0 && math.Abs(k-float64(r.f.Hardware.Sunk)) < math.Abs(from-float64(r.f.Hardware.Sunk)) {
			from = k
		}
		if k := float64(s.To); i == len(r.stops)-1 && math.Abs(k-float64(r.f.Grip.Value)) < math.Abs(to-float64(r.f.Grip.Value)) {
			to = k
		}
	}
	return from, to
}

// less is the smaller of two, of which the first may not be there yet.
func less(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}

// around runs lines beside a fastening through one thing it holds, all that lies
// within reach of its own head and nut.
func (r *run) around(t *thing) [][]form.Stretch {
	var out [][]form.Stretch
	enter := func(at form.Vec) {
		if line := t.body.Along(at, r.way); len(line) > 0 {
			out = append(out, line)
		}
	}
	if r.f.What == "clip" { // it goes round, not through
		enter(r.head)
		return out
	}
	radius := r.size.shank/2 + 2*quantity.Millimetre
	for _, b := range t.bores {
		if parallel(b.way, r.way) && off(r.head, r.way, b.at) < float64(b.diameter) {
			radius = max(radius, b.diameter/2+quantity.Millimetre+quantity.Length(off(r.head, r.way, b.at)))
		}
	}
	u, v := square(r.way)
	for k := range ring {
		s, c := math.Sincos(2 * math.Pi * (float64(k) + 0.25) / ring)
		enter(r.head.Plus(u, radius*quantity.Length(c)).Plus(v, radius*quantity.Length(s)))
	}
	return out
}

// square gives two directions square to one and to each other.
func square(d form.Dir) (u, v form.Dir) {
	switch {
	case math.Abs(d.X) < 0.9:
		u = form.Dir{X: 1}
	default:
		u = form.Dir{Y: 1}
	}
	k := u.X*d.X + u.Y*d.Y + u.Z*d.Z
	u = form.Direction(form.Vec{}, form.Vec{X: form.Length(u.X - k*d.X), Y: form.Length(u.Y - k*d.Y), Z: form.Length(u.Z - k*d.Z)})
	return u, form.Frame{U: d, V: u}.W()
}

func parallel(a, b form.Dir) bool { return math.Abs(a.X*b.X+a.Y*b.Y+a.Z*b.Z) > 0.999 }

// off is how far a place lies from a line.
func off(at form.Vec, way form.Dir, p form.Vec) float64 {
	d := p.Minus(at)
	k := way.Along(d)
	return math.Hypot(math.Hypot(float64(d.X-quantity.Length(way.X)*k), float64(d.Y-quantity.Length(way.Y)*k)), float64(d.Z-quantity.Length(way.Z)*k))
}

// stack is what lies between head and nut, washers aside: from where the head
// bears to where the last thing ends.
func (r *run) stack() (from, to quantity.Length) {
	to = r.f.Grip.Value
	if r.f.What == "clip" {
		return 0, to
	}
	if e := r.enter[0]; !math.IsNaN(e) {
		from = quantity.Length(e)
	} else {
		from = r.f.Hardware.Sunk
	}
	last := len(r.leave) - 1
	if l := r.leave[last]; !math.IsNaN(l) {
		to = quantity.Length(l)
	}
	if r.f.What == "screw" { // it ends in the last thing
		if e := r.enter[last]; last > 0 && !math.IsNaN(e) {
			to = min(to, quantity.Length(e)+bite*(quantity.Length(e)-from))
		}
	}
	return from, to
}

// bite is how far a screw goes into the last thing, against the thickness of what
// it holds to it; common practice, no source.
const bite = 2

// along is a place on the fastening's line.
func (r *run) along(by quantity.Length) form.Vec { return r.head.Plus(r.way, by) }

// thing is the fastening as a solid: head, shank, washer, nut and the thread past it.
func (r *run) thing() *thing {
	name := "fastening " + r.f.ID
	t := &thing{id: "fastening " + r.f.ID, name: name, bolt: r.f}
	from, to := r.stack()
	if !(to > from) || r.size.shank <= 0 {
		return nil
	}
	switch r.f.What {
	case "clip":
		t.shape = r.clip(to)
	case "screw":
		t.shape = r.rod(r.size.shank, from, to) // its head is sunk flush
	default:
		t.shape = r.bolt(from, to)
	}
	if t.shape == nil {
		return nil
	}
	return t
}

func (r *run) bolt(from, to quantity.Length) form.Volume {
	h := r.size
	u := form.Union{r.rod(h.shank, from, to+h.washer+h.nutDeep+h.thread)}
	switch r.f.Hardware.Head {
	case vehicle.SquareNeck:
		u = append(u, r.rod(h.headWide, from-h.headDeep, from))
	case vehicle.PlainHead:
		u = append(u, r.bar(h.headWide, from-h.headDeep, from))
	}
	if h.washer > 0 && h.washerWide > 0 {
		u = append(u, r.rod(h.washerWide, to, to+h.washer))
	}
	return append(u, r.bar(h.nutWide, to+h.washer, to+h.washer+h.nutDeep))
}

func (r *run) frame() form.Frame {
	u, v := square(r.way)
	return form.Frame{Origin: r.head, U: u, V: v}
}

func (r *run) rod(diameter, from, to quantity.Length) form.Volume {
	return form.Prism{Frame: r.frame(), Profile: form.Circle(form.Point{}, diameter/2), From: from, To: to}
}

func (r *run) bar(wide, from, to quantity.Length) form.Volume {
	h := wide / 2
	return form.Prism{Frame: r.frame(), Profile: form.Rectangle(form.Point{X: -h, Y: -h}, form.Point{X: h, Y: h}), From: from, To: to}
}

// clip is a bar over the first thing and two legs beside it, across its grain.
func (r *run) clip(to quantity.Length) form.Volume {
	t := r.stops[0]
	for _, s := range r.stops {
		if s != nil && s.wood() {
			t = s
			break
		}
	}
	if t == nil || r.f.Hardware.Inside <= 0 {
		return nil
	}
	across := form.Frame{U: r.way, V: t.place.U}.W()
	half := r.f.Hardware.Inside/2 + legs/2
	f := r.frame()
	leg := func(side quantity.Length) form.Volume {
		g := f
		g.Origin = f.Origin.Plus(across, side)
		return form.Prism{Frame: g, Profile: form.Circle(form.Point{}, legs/2), From: 0, To: to + r.size.nutDeep + r.size.thread}
	}
	u, v := square(across)
	over := form.Prism{
		Frame:   form.Frame{Origin: r.head.Plus(r.way, -legs/2), U: u, V: v},
		Profile: form.Circle(form.Point{}, legs/2), From: -half, To: half,
	}
	return form.Union{leg(-half), leg(half), over}
}

package fit

import (
	"math"

	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A thing is one solid in its place in the vehicle: a timber, an iron, or a
// fastening with its head and nut.
type thing struct {
	id, name string // as people say it, with its hand: "near reach"
	part     *vehicle.Part
	iron     *vehicle.Iron
	bolt     *vehicle.Fastening
	shape    form.Volume
	body     *probe.Body
	box      form.Box
	place    form.Frame   // of a timber or iron: its own frame, right-handed
	mirrored bool         // its own y runs against the frame's V
	bores    []bore       // of a timber or iron: its holes
	stick    *parts.Stick // of a timber that can be made
}

// A bore is a hole as it will be in its thing, in the vehicle's frame.
type bore struct {
	ref      string
	at       form.Vec // on its middle line
	way      form.Dir
	diameter quantity.Length
	number   int // of an iron's hole, from 1
	feature  parts.Hole
}

func (t *thing) wood() bool { return t.part != nil }

// assemble sets every solid in its place. What has no place or no size is left
// out, and told by derivation.
func (c *check) assemble() {
	for _, p := range c.vehicle.Parts {
		if p.Place == nil || p.Status == vehicle.LeftOpen || unplaced(p.Place) {
			continue
		}
		if t := timberThing(p); t != nil {
			c.add(t)
		}
	}
	for _, i := range c.vehicle.Irons {
		if i.Place == nil || unplaced(i.Place) {
			continue
		}
		if t := c.ironThing(i); t != nil {
			c.add(t)
		}
	}
	for _, f := range c.vehicle.Fastenings {
		if f.Way == ([3]float64{}) || unknownPlace(f.Head) {
			continue
		}
		c.runs = append(c.runs, c.run(f))
	}
	for _, r := range c.runs {
		if t := r.thing(); t != nil {
			r.self = t
			c.add(t)
		}
	}
}

func (c *check) add(t *thing) {
	t.body = probe.New(t.shape)
	t.box = t.body.Box()
	c.things = append(c.things, t)
	c.byID[t.id] = t
}

func unplaced(p *vehicle.Place) bool { return unknownPlace(p.At) }

func unknownPlace(at [3]quantity.Size) bool {
	for _, s := range at {
		if s.Known == quantity.Unknown || math.IsInf(float64(s.Doubt), 0) || math.IsNaN(float64(s.Value)) {
			return true
		}
	}
	return false
}

// frameOf is a place as a right-handed frame: where the thing's own is left-handed,
// as an off part's is, it is mirrored across first.
func frameOf(p *vehicle.Place) (form.Frame, bool) {
	f := form.Frame{
		Origin: form.Vec{X: p.At[0].Value, Y: p.At[1].Value, Z: p.At[2].Value},
		U:      dir(p.Axes[0]), V: dir(p.Axes[1]),
	}
	w, z := f.W(), dir(p.Axes[2])
	if w.X*z.X+w.Y*z.Y+w.Z*z.Z > 0 {
		return f, false
	}
	f.V = f.V.Opposite()
	return f, true
}

func dir(d [3]float64) form.Dir { return form.Dir{X: d[0], Y: d[1], Z: d[2]} }

// set puts a volume of a thing's own frame into the vehicle.
func (t *thing) set(v form.Volume) form.Volume {
	if t.mirrored {
		v = form.Mirrored(v, 0)
	}
	return form.Moved(v, t.place)
}

// point is a place in the thing's own frame as it stands in the vehicle.
func (t *thing) point(x, y, z quantity.Length) form.Vec {
	if t.mirrored {
		y = -y
	}
	return t.place.At(x, y, z)
}

// way is a direction of the thing's own frame in the vehicle.
func (t *thing) way(d form.Dir) form.Dir {
	from := t.point(0, 0, 0)
	return form.Direction(from, t.point(quantity.Length(d.X), quantity.Length(d.Y), quantity.Length(d.Z)))
}

// grain is the direction of a timber's grain.
func (t *thing) grain() form.Dir { return t.place.U }

// timberThing is a timber as it will be made, in its place; one that cannot be made
// stands as its box.
func timberThing(p *vehicle.Part) *thing {
	t := &thing{id: p.ID, name: lower(p.Name), part: p}
	t.place, t.mirrored = frameOf(p.Place)
	if p.Item == nil || p.Item.Shape == nil {
		b, ok := boxOf(p.Sizes)
		if !ok {
			return nil
		}
		t.shape = t.set(b)
		return t
	}
	stick := p.Item.Shape.Stick()
	t.stick = &stick
	t.shape = t.set(stick.Volume())
	for _, f := range stick.Features {
		h, ok := f.(parts.Hole)
		if !ok {
			continue
		}
		paper := h.Face.Frame(stick.Body)
		on := paper.At(h.At.X, h.At.Y, 0)
		t.bores = append(t.bores, bore{
			ref: h.ID, at: t.point(on.X, on.Y, on.Z), way: t.way(paper.W().Opposite()), diameter: h.Diameter, feature: h,
		})
	}
	return t
}

// boxOf is a block of a thing's three extents, from its origin.
func boxOf(sizes []vehicle.Dimension) (form.Volume, bool) {
	var e [3]quantity.Length
	for _, d := range sizes {
		if d.Axis != parts.NoAxis {
			e[d.Axis-1] = d.Value
		}
	}
	for _, l := range e {
		if !(l > 0) || math.IsInf(float64(l), 0) {
			return nil, false
		}
	}
	return block(form.Vec{}, form.Vec{X: e[0], Y: e[1], Z: e[2]}), true
}

func block(from, to form.Vec) form.Prism {
	return form.Prism{
		Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
		Profile: form.Rectangle(form.Point{X: from.X, Y: from.Y}, form.Point{X: to.X, Y: to.Y}), From: from.Z, To: to.Z,
	}
}

// reach is how far a box goes along an axis.
func reach(b form.Box, axis int) (lo, hi float64) {
	l, h := spot(b.Min), spot(b.Max)
	return l[axis], h[axis]
}

func spot(p form.Vec) [3]float64 { return [3]float64{float64(p.X), float64(p.Y), float64(p.Z)} }

func vecOf(p [3]float64) form.Vec {
	return form.Vec{X: form.Length(p[0]), Y: form.Length(p[1]), Z: form.Length(p[2])}
}

func lower(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	if len(r) > 1 && r[1] >= 'A' && r[1] <= 'Z' {
		return s // an abbreviation
	}
	if r[0] >= 'A' && r[0] <= 'Z' {
		r[0] += 'a' - 'A'
	}
	return string(r)
}

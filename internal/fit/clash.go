package fit

import (
	"cmp"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"

	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"

	v3 "github.com/deadsy/sdfx/vec/v3"
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
			if beside(c.things[i], c.things[j]) {
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

func beside(a, b *thing) bool {
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
	found := make([]probe.Overlap, len(c.near))
	sideBySide(len(c.near), func(i int) {
		if p := c.near[i]; !p.meant() {
			found[i] = probe.Common(p.a.body, p.b.body, trifle)
		}
	})
	for i, o := range found {
		if o.Volume > 0 && c.thickest(c.near[i], &o) >= trifle {
			c.clash(c.near[i], o)
		}
	}
}

// thickest is how deep an overlap is at its thickest, as the diameter of the largest
// ball that fits in it: thin slivers round a joint are thin, however they run together.
func (c *check) thickest(p pair, o *probe.Overlap) quantity.Length {
	a, b := c.field(p.a), c.field(p.b)
	if a == nil || b == nil {
		return o.Deep
	}
	lo, hi := spot(o.Box.Min), spot(o.Box.Max)
	m := middle(o.Box)
	half := 0.0
	for i := range 3 {
		half = math.Max(half, (hi[i]-lo[i])/2)
	}
	stay := func(p v3.Vec) v3.Vec { return p }
	r := nearest(a, b, stay, v3.Vec{X: m[0], Y: m[1], Z: m[2]}, half, math.Inf(1), math.Inf(1))
	o.Deep = min(o.Deep, quantity.Length(math.Max(-2*r.found, 0)))
	o.At = form.Vec{X: form.Length(r.at.X), Y: form.Length(r.at.Y), Z: form.Length(r.at.Z)}
	return o.Deep
}

// sideBySide does so many things on as many processors as there are.
func sideBySide(n int, do func(i int)) {
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), max(n, 1)) {
		workers.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
}

func (c *check) clash(p pair, o probe.Overlap) {
	a, b := c.piece(p.a, o.At), c.piece(p.b, o.At)
	r := vehicle.Remark{
		Check: "overlap", Gravity: vehicle.CannotGo, Subject: p.a.name + ", " + p.b.name,
		Says: fmt.Sprintf("%s and %s are in each other, %s deep (%s).",
			capital(a), b, c.show(o.Deep), vehicle.OfVolume(o.Volume).Words(c.vehicle.Unit)),
		Do: c.cure(p, o), Measured: vehicle.OfLength(o.Deep), Limit: vehicle.OfLength(trifle), Basis: fitting, Place: placeOf(o.At),
	}
	if doubt := c.doubtBetween(p.a, p.b, o.Axis); o.Deep < quantity.Length(2)*doubt {
		r.Gravity = vehicle.LookAt
		r.Do = fmt.Sprintf("No more than how well their places are known: leave wood on until one is held to the other. %s", r.Do)
	}
	c.about(&r, p.a, p.b)
	c.say(r)
	c.inEachOther[p] = true
}

const fitting = "common practice, no source"

// piece names a thing by the part of it that lies at a place: the nut of a bolt.
func (c *check) piece(t *thing, at form.Vec) string {
	if t.bolt == nil {
		return t.the()
	}
	for _, r := range c.runs {
		if r.self == t {
			return r.partAt(at) + " of " + t.name
		}
	}
	return t.name
}

// partAt is which part of a fastening lies at a place.
func (r *run) partAt(at form.Vec) string {
	from, to := r.stack()
	switch k := r.way.Along(at.Minus(r.head)); {
	case r.f.What == "clip":
		return "a leg"
	case k <= from:
		return "the head"
	case k < to:
		return "the shank"
	case r.f.What == "screw":
		return "the point"
	}
	return "the nut"
}

// cure is what would put an overlap right.
func (c *check) cure(p pair, o probe.Overlap) string {
	a, b := p.a, p.b
	if a.bolt != nil {
		a, b = b, a
	}
	switch {
	case a.bolt != nil:
		return "Move one of the two, or turn one end for end."
	case b.bolt == nil && a.wood() && b.wood():
		return fmt.Sprintf("Cut one back by %s, or let one into the other and say so under [[joint]].", c.show(o.Deep))
	case b.bolt == nil && (a.wood() || b.wood()):
		return "Let the iron into the wood and say so, or look again at where the iron lies."
	case b.bolt == nil:
		return "Look again at where the two irons lie, or whether one was bent."
	}
	part := c.piece(b, o.At)
	if part[:len("the shank")] == "the shank" {
		return fmt.Sprintf("Let the bolt go through %s too, and say so in its run, or move it.", a.the())
	}
	if a.wood() {
		return fmt.Sprintf("Cut a pocket for it in %s, let it go through that too, or turn the bolt round.", a.the())
	}
	return fmt.Sprintf("Sink it flush (sunk, or head = \"flush\"), or let the bolt go through %s too.", a.the())
}

// about enters what a remark bears on.
func (c *check) about(r *vehicle.Remark, things ...*thing) {
	for _, t := range things {
		switch {
		case t == nil:
		case t.wood():
			r.Parts = append(r.Parts, t.id)
		default:
			r.Things = append(r.Things, t.id)
		}
	}
	for _, t := range things { // where it is all iron, it bears on the timbers that are bolted up
		if len(r.Parts) > 0 || t == nil || t.bolt == nil {
			continue
		}
		for _, s := range t.bolt.Through {
			if o := c.byID[s.ID]; o != nil && o.wood() && !slices.Contains(r.Parts, o.id) {
				r.Parts = append(r.Parts, o.id)
			}
		}
	}
}

// doubtBetween is the standard uncertainty of how two things stand to each other
// along an axis; nothing where nobody can tell.
func (c *check) doubtBetween(a, b *thing, axis int) quantity.Length {
	if c.doubts == nil || axis < 0 {
		return 0
	}
	s := c.doubts.Apart(a.mark(axis), b.mark(axis))
	if math.IsInf(float64(s.Doubt), 0) || math.IsNaN(float64(s.Doubt)) {
		return 0
	}
	return s.Doubt
}

// mark is a thing's middle on an axis; a fastening's is its line, and along
// itself the first thing that it goes through.
func (t *thing) mark(axis int) vehicle.Mark {
	if t.bolt == nil {
		return vehicle.Mark{ID: t.id, Axis: axis, Where: vehicle.MarkMiddle}
	}
	if math.Abs(t.bolt.Way[axis]) > 0.5 {
		return vehicle.Mark{ID: t.bolt.Through[0].ID, Axis: axis, Where: vehicle.MarkMiddle}
	}
	return vehicle.Mark{ID: t.bolt.ID, Axis: axis, Where: vehicle.MarkLine}
}

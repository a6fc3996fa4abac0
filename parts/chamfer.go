package parts

import (
	"errors"

	"lostwood/parts/form"
)

// A Chamfer takes off a long edge with one plane, as wide on the one face as
// on the other. It follows the longest straight stretch of the edge; where it
// is not stopped it runs out at the part's end, or where the edge bends away.
//
// A curved edge cannot be chamfered: Check says so. See EasedEdge.
type Chamfer struct {
	ID   string
	Edge Arris
	Size Length // on each face, square to the edge
	// From and To are the stations of its stops; 0 lets it run out at that end.
	From, To Length
	// Stop is how long each stop is along the edge; 0 makes a plain one, as
	// long as the chamfer is wide: 45 degrees on the face. Every stop is a plane.
	Stop Length
}

// Ref is as in Feature.
func (c Chamfer) Ref() string { return c.ID }

// planes are the half spaces whose common part the chamfer takes away: beyond
// its own plane, and inside its stops.
func (c Chamfer) planes(b Body) []form.Half {
	s := shapeOf(b)
	run, ok := c.Edge.longest(s)
	if !ok {
		return nil
	}
	p, q := c.Edge.near(s, run.from, run.to, 0), c.Edge.near(s, run.from, run.to, 1)
	along := form.Direction(p, q)
	inY, inZ := into(along, form.Dir{Y: float64(c.Edge.inY())}), into(along, form.Dir{Z: float64(c.Edge.inZ())})
	onFlat, onSide := p.Plus(inY, c.Size), p.Plus(inZ, c.Size)
	out := square(along, form.Direction(onSide, onFlat))
	if out.Along(p.Minus(onFlat)) < 0 {
		out = out.Opposite()
	}
	depth := out.Along(p.Minus(onFlat))
	halves := []form.Half{{At: onFlat, Normal: out.Opposite()}}
	if c.From > 0 {
		halves = append(halves, c.stop(stationOn(p, along, c.From), along, out, depth))
	}
	if c.To > 0 {
		halves = append(halves, c.stop(stationOn(p, along, c.To), along.Opposite(), out, depth))
	}
	return halves
}

// stop is the half space ahead of a stop: its plane sinks from the edge at a
// place to the chamfer's own plane within the stop's length.
func (c Chamfer) stop(at form.Vec, ahead, out form.Dir, depth Length) form.Half {
	fall := depth / c.stopLong()
	n := form.Vec{}.Plus(ahead, -fall).Plus(out, -1)
	return form.Half{At: at, Normal: form.Direction(form.Vec{}, n)}
}

func (c Chamfer) stopLong() Length {
	if c.Stop == 0 {
		return c.Size
	}
	return c.Stop
}

// into is the direction square to an edge in the plane of the edge and d.
func into(along, d form.Dir) form.Dir {
	s := form.Vec{X: Length(d.X), Y: Length(d.Y), Z: Length(d.Z)}
	return form.Direction(form.Vec{}, s.Plus(along, -along.Along(s)))
}

// square is the direction square to two others.
func square(a, b form.Dir) form.Dir {
	w := form.Frame{U: a, V: b}.W()
	return form.Direction(form.Vec{}, form.Vec{X: Length(w.X), Y: Length(w.Y), Z: Length(w.Z)})
}

// stationOn is the place on a line through p at a station.
func stationOn(p form.Vec, along form.Dir, x Length) form.Vec {
	return p.Plus(along, (x-p.X)/Length(along.X))
}

// Cuts is as in Feature.
func (c Chamfer) Cuts(b Body) []form.Volume {
	h := c.planes(b)
	switch len(h) {
	case 0:
		return nil
	case 1:
		return []form.Volume{h[0]}
	}
	cut := make(form.Intersection, len(h))
	for i := range h {
		cut[i] = h[i]
	}
	return []form.Volume{cut}
}

// Operations is as in Feature.
func (c Chamfer) Operations(b Body) []Operation {
	from, to := c.ends(b)
	middle := c.Edge.at(shapeOf(b), (from+to)/2)
	op := Operation{
		Ref: c.ID, Work: Chamfering, What: "chamfer", Face: c.Edge.Flat, Meets: c.Edge.faces(),
		At:    c.Edge.Flat.Frame(b).On(middle),
		Sizes: measured(Measure{"wide", c.Size}, Measure{"from", c.From}, Measure{"to", c.To}, Measure{"stop", c.Stop}),
	}
	switch {
	case c.From == 0 && c.To == 0:
		op.Note = "from end to end"
	case c.Stop == 0:
		op.Note = "plain stops, 45 degrees on the face"
	default:
		op.Note = "sloped stops"
	}
	return []Operation{op}
}

// ends are the stations between which the chamfer runs along its edge.
func (c Chamfer) ends(b Body) (from, to Length) {
	run, _ := c.Edge.longest(shapeOf(b))
	from, to = run.from, run.to
	if c.From > 0 {
		from = c.From
	}
	if c.To > 0 {
		to = c.To
	}
	return from, to
}

// Check is as in Feature.
func (c Chamfer) Check(b Body) error {
	if !c.Edge.known() {
		return errors.New(c.ID + ": a chamfer runs along the upper or under face and a side")
	}
	s := shapeOf(b)
	run, ok := c.Edge.longest(s)
	l := limits{}
	if _, bent := b.(ended); bent || !ok {
		l.need(c.ID+" size", c.Size, 0, 0, "a curved edge can be eased, not chamfered")
		return l.all()
	}
	l.need(c.ID+" size", c.Size, .5, min(leastSpan(s.Plan), leastSpan(s.Side))-1, "it must leave wood on both faces")
	l.may(c.ID+" stop", c.Stop, .5, run.to-run.from, "")
	l.may(c.ID+" from", c.From, run.from, run.to, "the edge is straight between these")
	l.may(c.ID+" to", c.To, run.from, run.to, "the edge is straight between these")
	if len(l.faults) > 0 {
		return l.all()
	}
	from, to := c.ends(b)
	stops := Length(0)
	for _, at := range []Length{c.From, c.To} {
		if at > 0 {
			stops += c.stopLong()
		}
	}
	l.need(c.ID+" length", to-from, stops, run.to-run.from, "its stops need room")
	if c.From == 0 && !c.runsOut(s, run.from, -1) {
		l.need(c.ID+" from", c.From, run.from, run.to, "the edge is not straight beyond: stop the chamfer")
	}
	if c.To == 0 && !c.runsOut(s, run.to, 1) {
		l.need(c.ID+" to", c.To, run.from, run.to, "the edge is not straight beyond: stop the chamfer")
	}
	return l.all()
}

// Mirrored is as in Feature.
func (c Chamfer) Mirrored(Body) Feature {
	c.Edge = c.Edge.mirrored()
	return c
}

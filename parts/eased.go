package parts

import (
	"errors"
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// An EasedEdge is a long edge rounded to a radius, from end to end.
//
// It follows an edge that is straight, or straight between rounded corners,
// where it runs out; a felloe's edges, round the wheel; and a bent rail's, round
// its bends, where FirstSide means the side to the right of its middle line.
type EasedEdge struct {
	ID     string
	Edge   Arris
	Radius Length
}

// A curvedBody rounds its edges in its own way.
type curvedBody interface {
	easedCuts(e EasedEdge) []form.Volume
	easedLines(e EasedEdge, f Face) []form.Path
	// easedRoom is the most that an edge can be rounded by, and easedWood what
	// the rounding takes off.
	easedRoom(a Arris) Length
	easedWood(e EasedEdge) quantity.Volume
}

// Ref is as in Feature.
func (e EasedEdge) Ref() string { return e.ID }

// spandrel is what a rounding takes off, square to the edge: the corner at the
// origin, the wood at negative x and y, and past the wood so much more that no
// skin is left.
func spandrel(radius, past Length) form.Profile {
	return form.Profile{
		{Point: form.Point{X: 0, Y: -radius}},
		{Point: form.Point{X: past, Y: -radius}},
		{Point: form.Point{X: past, Y: past}},
		{Point: form.Point{X: -radius, Y: past}},
		{Point: form.Point{X: -radius, Y: 0}, Bulge: -quarter},
	}
}

// quarter is the bulge of a quarter of a circle: the tangent of an eighth of pi.
const quarter = math.Sqrt2 - 1

// spandrelCentroid is how far from both faces the middle of the wood in a
// rounding's corner lies, in radii.
const spandrelCentroid = (1./2 - math.Pi/4 + 1./3) / (1 - math.Pi/4)

// frame has its origin on the edge, U and V out of the wood and W along the edge.
func (e EasedEdge) frame(s Sawn) form.Frame {
	run, _ := e.Edge.longest(s)
	p := e.Edge.near(s, run.from, run.to, 0)
	along := form.Direction(p, e.Edge.near(s, run.from, run.to, 1))
	u := into(along, form.Dir{Y: -float64(e.Edge.inY())})
	v := into(along, form.Dir{Z: -float64(e.Edge.inZ())})
	f := form.Frame{Origin: p, U: u, V: v}
	if f.W().X < 0 {
		f.U, f.V = v, u // the spandrel is alike both ways round
	}
	return f
}

// Cuts is as in Feature.
func (e EasedEdge) Cuts(b Body) []form.Volume {
	if c, ok := b.(curvedBody); ok {
		return c.easedCuts(e)
	}
	return []form.Volume{form.Prism{
		Frame: e.frame(shapeOf(b)), Profile: spandrel(e.Radius, overrun), From: -endless(), To: endless(),
	}}
}

// Marks is as in Feature: the line on each face where the rounding begins, and
// its arc across the corner of an end.
func (e EasedEdge) Marks(b Body, f Face) []Mark {
	var lines []form.Path
	if c, ok := b.(curvedBody); ok {
		lines = c.easedLines(e, f)
	} else {
		lines = e.lines(b, f)
	}
	var out []Mark
	for _, p := range lines {
		out = append(out, Mark{Ref: e.ID, Work: Rounding, Stroke: Seen, Path: p, Label: "eased edge"})
	}
	return out
}

func (e EasedEdge) lines(b Body, f Face) []form.Path {
	s := shapeOf(b)
	run, ok := e.Edge.longest(s)
	if !ok || !f.known() {
		return nil
	}
	p, q := e.Edge.near(s, run.from, run.to, 0), e.Edge.near(s, run.from, run.to, 1)
	along := form.Direction(p, q)
	onFlat := into(along, form.Dir{Y: float64(e.Edge.inY())})
	onSide := into(along, form.Dir{Z: float64(e.Edge.inZ())})
	frame := f.Frame(b)
	on := func(v form.Vec, d form.Dir) form.Point { return frame.On(v.Plus(d, e.Radius)) }
	long, _, _ := b.Box()
	switch {
	case f == e.Edge.Flat:
		return []form.Path{carried(b.Outline(f), on(p, onFlat), on(q, onFlat))}
	case f == e.Edge.Side:
		return []form.Path{carried(b.Outline(f), on(p, onSide), on(q, onSide))}
	case f == FirstEnd && run.from == 0:
		return []form.Path{cornerArc(on(p, onSide), frame.On(p), on(p, onFlat))}
	case f == SecondEnd && run.to == long:
		return []form.Path{cornerArc(on(q, onSide), frame.On(q), on(q, onFlat))}
	}
	return nil
}

// carried is the line from a to b; where the outline's corners are rounded, it
// goes on to the outline.
func carried(outline form.Profile, a, b form.Point) form.Path {
	if a.Y == b.Y && !outline.IsRectangle() {
		if c := outline.Transposed().Span(a.Y); c.Long() > 0 {
			a.X, b.X = c.From, c.To
		}
	}
	return form.Path{{Point: a}, {Point: b}}
}

// cornerArc is the quarter circle from a to b that takes off a square corner.
func cornerArc(a, corner, b form.Point) form.Path {
	turn := (corner.X-a.X)*(b.Y-corner.Y) - (corner.Y-a.Y)*(b.X-corner.X)
	return form.Path{{Point: a, Bulge: math.Copysign(quarter, float64(turn))}, {Point: b}}
}

// Operations is as in Feature.
func (e EasedEdge) Operations(b Body) []Operation {
	long, _, _ := b.Box()
	op := Operation{
		Ref: e.ID, Work: Rounding, What: "ease the edge", Face: e.Edge.Flat, Meets: e.Edge.faces(),
		At: e.Edge.Flat.Frame(b).On(e.Edge.at(shapeOf(b), long/2)), Sizes: measured(Measure{"radius", e.Radius}),
		Note: "from end to end",
	}
	return []Operation{op}
}

// Check is as in Feature.
func (e EasedEdge) Check(b Body) error {
	if !e.Edge.known() {
		return errors.New(e.ID + ": an eased edge runs along the upper or under face and a side")
	}
	l := limits{}
	if c, ok := b.(curvedBody); ok {
		l.need(e.ID+" radius", e.Radius, .5, c.easedRoom(e.Edge), "it must leave wood on both faces")
		return l.all()
	}
	s := shapeOf(b)
	run, ok := e.Edge.longest(s)
	long, _, _ := s.Box()
	straightToEnd := func(end, way, rest Length) bool {
		return rest < 1e-6 || e.Edge.fallsAway(s, run, end, way, rest)
	}
	if !ok || !straightToEnd(run.from, -1, run.from) || !straightToEnd(run.to, 1, long-run.to) || len(e.Edge.straights(s)) > 1 {
		l.need(e.ID+" radius", e.Radius, 0, 0, "the edge is not straight from end to end")
		return l.all()
	}
	l.need(e.ID+" radius", e.Radius, .5, min(leastSpan(s.Plan), leastSpan(s.Side))-.5, "it must leave wood on both faces")
	return l.all()
}

// Mirrored is as in Feature.
func (e EasedEdge) Mirrored(Body) Feature {
	e.Edge = e.Edge.mirrored()
	return e
}

func (e EasedEdge) removed(b Body) quantity.Volume {
	if c, ok := b.(curvedBody); ok {
		return c.easedWood(e)
	}
	run, _ := e.Edge.longest(shapeOf(b))
	return squareCorner(e.Radius, run.to-run.from)
}

// squareCorner is the wood that a rounding takes off a square edge, by the
// length of the way of its centroid.
func squareCorner(radius, long Length) quantity.Volume {
	return quantity.Volume((1 - math.Pi/4) * float64(radius) * float64(radius) * float64(long))
}

package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Notch is cut out of an edge of a face: a corner at an end, or a bite out
// of a side.
type Notch struct {
	ID    string
	What  string // "notch for the standard"
	Face  Face   // the face it is set out on
	Edge  Face   // the face at that edge of it, beside Face
	At    Length // its middle along the edge, in Face's frame
	Long  Length // along the edge
	In    Length // into the wood from the edge, across Face
	Depth Length // from Face down; 0 goes right through
}

// Ref is as in Feature.
func (n Notch) Ref() string { return n.ID }

// alongX says whether the edge runs along the face's x.
func (n Notch) alongX(b Body) bool { return n.outward(b).X == 0 }

// outward is the way to the edge in the face's frame.
func (n Notch) outward(b Body) form.Point {
	f, w := n.Face.Frame(b), vec(n.Edge.Frame(b).W())
	return form.Point{X: f.U.Along(w), Y: f.V.Along(w)}
}

// edge is where the wood's edge is at the notch's middle, in the face's frame.
func (n Notch) edge(b Body) form.Point {
	outline, out := outlineAt(b, n.Face), n.outward(b)
	if n.alongX(b) {
		c := outline.Span(n.At)
		if out.Y > 0 {
			return form.Point{X: n.At, Y: c.To}
		}
		return form.Point{X: n.At, Y: c.From}
	}
	c := outline.Transposed().Span(n.At)
	if out.X > 0 {
		return form.Point{X: c.To, Y: n.At}
	}
	return form.Point{X: c.From, Y: n.At}
}

// bite is the notch on the face, carried past the edge.
func (n Notch) bite(b Body, past Length) form.Profile {
	e, out := n.edge(b), n.outward(b)
	half := form.Point{X: n.Long / 2, Y: n.Long / 2}
	if n.alongX(b) {
		half.Y = (n.In + past) / 2
	} else {
		half.X = (n.In + past) / 2
	}
	shift := (past - n.In) / 2
	at := form.Point{X: e.X + out.X*shift, Y: e.Y + out.Y*shift}
	return block(at, 2*half.X, 2*half.Y)
}

func (n Notch) middle(b Body) form.Point {
	lo, hi := n.bite(b, 0).Bounds()
	return form.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
}

// Cuts is as in Feature.
func (n Notch) Cuts(b Body) []form.Volume {
	reach := endless()
	if n.Depth != 0 {
		reach = sunk(b, n.Face, n.middle(b)) + n.Depth
	}
	// A notch at the very corner of the face goes past that side of it as well.
	return []form.Volume{sink(n.Face.Frame(b), n.pastCorner(b, n.bite(b, 2*overrun)), reach)}
}

// pastCorner carries the bite past the sides of the box that it touches.
func (n Notch) pastCorner(b Body, p form.Profile) form.Profile {
	w, h := n.Face.extent(b)
	lo, hi := p.Bounds()
	const touch Length = 1e-6
	if lo.X > -touch && lo.X < touch {
		lo.X -= overrun
	}
	if lo.Y > -touch && lo.Y < touch {
		lo.Y -= overrun
	}
	if hi.X > w-touch && hi.X < w+touch {
		hi.X += overrun
	}
	if hi.Y > h-touch && hi.Y < h+touch {
		hi.Y += overrun
	}
	return form.Rectangle(lo, hi)
}

// Marks is as in Feature: its outline on the face, where it comes out on the
// opposite one, and what is seen of it on the edge.
func (n Notch) Marks(b Body, f Face) []Mark {
	switch {
	case f == n.Face:
		m := closed(n.ID, Notching, Seen, n.bite(b, 0), n.What)
		m.Depth = n.Depth
		return []Mark{m}
	case f == n.Face.Opposite() && n.Depth == 0:
		lo, hi := n.bite(b, 0).Bounds()
		p, q := n.Face.through(b, lo), n.Face.through(b, hi)
		return []Mark{closed(n.ID, Notching, Hidden, upright(p, q), n.What)}
	case f == n.Edge:
		return []Mark{closed(n.ID, Notching, Seen, n.seenFromEdge(b), n.What)}
	}
	return nil
}

func (n Notch) seenFromEdge(b Body) form.Profile {
	from, to := n.Face.Frame(b), n.Edge.Frame(b)
	lo, hi := n.bite(b, 0).Bounds()
	top := sunk(b, n.Face, n.middle(b))
	deep := top + n.Depth
	if n.Depth == 0 {
		deep = top + thickness(b, n.Face, n.middle(b))
	}
	return upright(to.On(from.At(lo.X, lo.Y, -top)), to.On(from.At(hi.X, hi.Y, -deep)))
}

// upright is the rectangle with two opposite corners.
func upright(p, q form.Point) form.Profile {
	return form.Rectangle(
		form.Point{X: min(p.X, q.X), Y: min(p.Y, q.Y)}, form.Point{X: max(p.X, q.X), Y: max(p.Y, q.Y)})
}

// Operations is as in Feature.
func (n Notch) Operations(b Body) []Operation {
	return []Operation{{
		Ref: n.ID, Work: Notching, What: n.What, Face: n.Face, At: n.middle(b),
		Sizes: measured(Measure{"long", n.Long}, Measure{"in", n.In}, Measure{"deep", n.Depth}),
	}}
}

// Check is as in Feature.
func (n Notch) Check(b Body) error {
	if !n.Face.known() || !n.Edge.known() || n.Edge == n.Face || n.Edge == n.Face.Opposite() {
		return errors.New(n.ID + ": a notch is set out on one face, at its edge with a face beside it")
	}
	if _, curved := b.(ended); curved {
		return errors.New(n.ID + ": a notch is cut in a straight timber only")
	}
	along, across := n.Face.extent(b)
	if !n.alongX(b) {
		along, across = across, along
	}
	l := limits{}
	l.need(n.ID+" long", n.Long, 1, along, "")
	if l.sound() {
		l.need(n.ID+" along", n.At, n.Long/2, along-n.Long/2, "it must lie on the wood")
	}
	if !l.sound() {
		return l.all()
	}
	outline := outlineAt(b, n.Face)
	if n.alongX(b) {
		across = outline.Span(n.At).Long()
	} else {
		across = outline.Transposed().Span(n.At).Long()
	}
	l.need(n.ID+" in", n.In, .5, across-1, "it must leave wood behind it")
	if l.sound() {
		l.may(n.ID+" deep", n.Depth, .5, thickness(b, n.Face, n.middle(b))-.5, "it must leave wood below it")
	}
	return l.all()
}

// Mirrored is as in Feature.
func (n Notch) Mirrored(b Body) Feature {
	at := form.Point{X: n.At}
	if !n.alongX(b) {
		at = form.Point{Y: n.At}
	}
	at = n.Face.mirroredAt(b, at)
	m := n
	m.Face, m.Edge = n.Face.mirrored(), n.Edge.mirrored()
	if n.alongX(b) {
		m.At = at.X
	} else {
		m.At = at.Y
	}
	return m
}

func (n Notch) removed(b Body) quantity.Volume {
	return quantity.Volume(float64(n.Long) * float64(n.In) * depthOfWood(b, n.Face, n.middle(b), n.Depth))
}

package parts

import (
	"errors"
	"math"

	"lostwood/parts/form"
)

// A Hole is bored square to a face.
type Hole struct {
	ID       string
	What     string     // "king-bolt hole"
	Face     Face       // where it is entered
	At       form.Point // its centre, in that face's frame
	Diameter Length
	Depth    Length // from the wood's surface at its centre; 0 goes right through
	// Counterbore lets in a head or nut on the entry face; nil for none.
	Counterbore *Counterbore
	// Seat holds a square neck on the entry face, at the bottom of the
	// counterbore where there is one; nil for none.
	Seat *SquareSeat
}

// A Counterbore is a wider, flat-bottomed bore at the mouth of a hole.
type Counterbore struct{ Diameter, Depth Length }

// A SquareSeat is the square sinking that keeps a carriage bolt from turning.
type SquareSeat struct{ Width, Depth Length }

// Ref is as in Feature.
func (h Hole) Ref() string { return h.ID }

// reach is how far below the box's face the hole ends.
func (h Hole) reach(b Body) Length {
	if h.Depth == 0 {
		return endless()
	}
	return sunk(b, h.Face, h.At) + h.Depth
}

// floors are the depths below the surface of the counterbore and the seat; 0 for none.
func (h Hole) floors() (counterbore, seat Length) {
	if h.Counterbore != nil {
		counterbore = h.Counterbore.Depth
	}
	if h.Seat != nil {
		seat = counterbore + h.Seat.Depth
	}
	return counterbore, seat
}

// Cuts is as in Feature.
func (h Hole) Cuts(b Body) []form.Volume {
	f, top := h.Face.Frame(b), sunk(b, h.Face, h.At)
	cb, seat := h.floors()
	cuts := []form.Volume{sink(f, disc(h.At, h.Diameter), h.reach(b))}
	if h.Counterbore != nil {
		cuts = append(cuts, sink(f, disc(h.At, h.Counterbore.Diameter), top+cb))
	}
	if h.Seat != nil {
		cuts = append(cuts, sink(f, block(h.At, h.Seat.Width, h.Seat.Width), top+seat))
	}
	return cuts
}

// Marks is as in Feature: full circles on the entry face, a dashed one where
// the hole leaves the wood.
func (h Hole) Marks(b Body, f Face) []Mark {
	switch {
	case f == h.Face:
		cb, seat := h.floors()
		m := []Mark{h.circle(Seen, h.At, h.Diameter, h.Depth, h.What)}
		if h.Counterbore != nil {
			m = append(m, h.circle(Seen, h.At, h.Counterbore.Diameter, cb, "counterbore"))
		}
		if h.Seat != nil {
			s := closed(h.ID, Boring, Seen, block(h.At, h.Seat.Width, h.Seat.Width), "square seat")
			s.Depth = seat
			m = append(m, s)
		}
		return m
	case f == h.Face.Opposite() && h.Depth == 0:
		return []Mark{h.circle(Hidden, h.Face.through(b, h.At), h.Diameter, 0, h.What)}
	}
	return nil
}

func (h Hole) circle(s Stroke, at form.Point, diameter, depth Length, label string) Mark {
	m := closed(h.ID, Boring, s, disc(at, diameter), label)
	m.Centre, m.Diameter, m.Depth = &at, diameter, depth
	return m
}

// Operations is as in Feature.
func (h Hole) Operations(Body) []Operation {
	op := Operation{
		Ref: h.ID, Work: Boring, What: h.What, Face: h.Face, At: h.At,
		Sizes: measured(Measure{"diameter", h.Diameter}, Measure{"deep", h.Depth}),
	}
	if h.Depth == 0 {
		op.Note = "bore from both faces"
	}
	ops := []Operation{op}
	if c := h.Counterbore; c != nil {
		ops = append(ops, Operation{
			Ref: h.ID, Work: Boring, What: "counterbore", Face: h.Face, At: h.At,
			Sizes: measured(Measure{"diameter", c.Diameter}, Measure{"deep", c.Depth}),
			Note:  "bore before the hole",
		})
	}
	if s := h.Seat; s != nil {
		ops = append(ops, Operation{
			Ref: h.ID, Work: Mortising, What: "square seat", Face: h.Face, At: h.At,
			Sizes: measured(Measure{"square", s.Width}, Measure{"deep", s.Depth}),
		})
	}
	return ops
}

// Check is as in Feature.
func (h Hole) Check(b Body) error {
	if !h.Face.known() {
		return errors.New(h.ID + ": a hole needs one of the part's six faces to be entered on")
	}
	outline := outlineAt(b, h.Face)
	if err := placed(h.ID, outline, h.At, h.Diameter); err != nil {
		return err
	}
	room := 2 * outline.Distance(h.At)
	l := limits{}
	l.need(h.ID+" diameter", h.Diameter, 1, room, "it must not break out of a side")
	deep := thickness(b, h.Face, h.At)
	l.may(h.ID+" depth", h.Depth, 1, deep-1, "it must stop inside the wood")
	if h.Depth > 0 {
		deep = min(deep, h.Depth)
	}
	h.checkMouth(&l, b, outline, room, deep)
	return l.all()
}

// checkMouth looks at what is cut round the hole's mouth.
func (h Hole) checkMouth(l *limits, b Body, outline form.Profile, room, deep Length) {
	const why = "it must leave wood below it"
	cb, _ := h.floors()
	if c := h.Counterbore; c != nil {
		l.need(h.ID+" counterbore", c.Diameter, h.Diameter, room, "it must not break out of a side")
		l.need(h.ID+" counterbore depth", c.Depth, .5, deep-1, why)
	}
	if s := h.Seat; s != nil {
		l.need(h.ID+" seat depth", s.Depth, .5, deep-cb-1, why)
		most := room
		if !holds(outline, block(h.At, s.Width, s.Width)) {
			most = min(room, s.Width) / math.Sqrt2
		}
		l.need(h.ID+" seat", s.Width, 1, most, "it must not break out of a side")
	}
}

// Mirrored is as in Feature.
func (h Hole) Mirrored(b Body) Feature {
	h.At = h.Face.mirroredAt(b, h.At)
	h.Face = h.Face.mirrored()
	return h
}

package parts

import (
	"errors"

	"lostwood/parts/form"
)

// A Mortise is a square-cornered hole cut square to a face.
type Mortise struct {
	ID    string
	What  string     // "stake mortise"
	Face  Face       // where it is entered
	At    form.Point // its middle, in that face's frame
	Long  Length     // along the face's x
	Wide  Length     // along the face's y
	Depth Length     // from the wood's surface at its middle; 0 goes right through
}

// Ref is as in Feature.
func (m Mortise) Ref() string { return m.ID }

// Cuts is as in Feature.
func (m Mortise) Cuts(b Body) []form.Volume {
	reach := endless()
	if m.Depth != 0 {
		reach = sunk(b, m.Face, m.At) + m.Depth
	}
	return []form.Volume{sink(m.Face.Frame(b), block(m.At, m.Long, m.Wide), reach)}
}

// Marks is as in Feature.
func (m Mortise) Marks(b Body, f Face) []Mark {
	switch {
	case f == m.Face:
		k := closed(m.ID, Mortising, Seen, block(m.At, m.Long, m.Wide), m.What)
		k.Depth, k.Centre = m.Depth, &m.At
		return []Mark{k}
	case f == m.Face.Opposite() && m.Depth == 0:
		at := m.Face.through(b, m.At)
		k := closed(m.ID, Mortising, Hidden, block(at, m.Long, m.Wide), m.What)
		k.Centre = &at
		return []Mark{k}
	}
	return nil
}

// Operations is as in Feature.
func (m Mortise) Operations(Body) []Operation {
	op := Operation{
		Ref: m.ID, Work: Mortising, What: m.What, Face: m.Face, At: m.At,
		Sizes: measured(Measure{"long", m.Long}, Measure{"wide", m.Wide}, Measure{"deep", m.Depth}),
	}
	if m.Depth == 0 {
		op.Note = "cut from both faces"
	}
	return []Operation{op}
}

// Check is as in Feature.
func (m Mortise) Check(b Body) error {
	if !m.Face.known() {
		return errors.New(m.ID + ": a mortise needs one of the part's six faces to be entered on")
	}
	outline := outlineAt(b, m.Face)
	if err := placed(m.ID, outline, m.At, m.Wide); err != nil {
		return err
	}
	const why = "it must not break out of a side"
	l := limits{}
	l.need(m.ID+" long", m.Long, 1, alongBy(outline, m.At), why)
	l.need(m.ID+" wide", m.Wide, 1, acrossBy(outline, m.At), why)
	if len(l.faults) == 0 && !holds(outline, block(m.At, m.Long, m.Wide)) {
		l.need(m.ID+" wide", m.Wide, 1, narrowest(outline, m.At, m.Long), why)
	}
	l.may(m.ID+" depth", m.Depth, 1, thickness(b, m.Face, m.At)-1, "it must stop inside the wood")
	return l.all()
}

// narrowest is the room across at both ends of a piece and in its middle.
func narrowest(outline form.Profile, at form.Point, long Length) Length {
	room := acrossBy(outline, at)
	for _, x := range []Length{at.X - long/2, at.X + long/2} {
		room = min(room, acrossBy(outline, form.Point{X: x, Y: at.Y}))
	}
	return room
}

// Mirrored is as in Feature.
func (m Mortise) Mirrored(b Body) Feature {
	m.At = m.Face.mirroredAt(b, m.At)
	m.Face = m.Face.mirrored()
	return m
}

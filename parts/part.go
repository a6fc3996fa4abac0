// Package parts says what the timber parts of a horse-drawn vehicle are: each
// kind's dimensions, limits, shape and work.
//
// A part is a [Stick]: a [Body] (what the saw leaves) and its features (holes,
// mortises, housings, chamfers ...). Each is declared once and serves the
// solid, the pattern and the list of operations alike.
//
// [Kinds] and [Find] tell what kinds there are, what each can be asked, and
// how it is built from [Measures]. Each kind is a struct as well, whose fields
// are its drawing: [Bolster], [Felloe], [Nave], [Reach], [SeatRail], [Slat],
// [Spoke] and, for the squared timbers, [Plain]. An optional length of 0 stands for no such work.
//
// Bodies are [Sawn], [Arc], [Bent] and [Turned]. Work is a [Hole], [Mortise],
// [Housing], [Groove], [Notch], [Tenon], [RoundTenon], [Chamfer], [EasedEdge],
// [RadialHole] or [EndHole]; of wheels [Bevelled], [Foot], [Tapered], [Tongue],
// [TurnedBore] and [SpokeMortise].
//
// Every [Length] is in millimetres. A part's frame is right-handed: x along the
// grain from its first end (fore, near or lower, as it is fitted), y across it
// from its first side, z up as fitted; the box of the finished part starts at
// the origin. Nothing here meshes, draws or prints.
package parts

import (
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = quantity.Length

// Angle is in radians.
type Angle = quantity.Angle

// A Part is one kind of timber part with its dimensions.
type Part interface {
	// Kind is the trade's name for the kind: "bolster", "felloe".
	Kind() string
	// Validate reports every dimension that cannot be made, all at once:
	// a joined list of *LimitError.
	Validate() error
	// Stick lays the part out for making. It is whole only where Validate
	// reports nothing.
	Stick() Stick
}

// A Body is a part as the saw or the bending form leaves it, before any feature.
type Body interface {
	// Box gives the finished part's extent along x, y and z.
	Box() (long, wide, deep Length)
	// Volume is the solid in the part's frame.
	Volume() form.Volume
	// Outline is the exact outline seen square on to a face, in that face's frame.
	Outline(f Face) form.Profile
	// Net is the exact volume of wood in the body.
	Net() quantity.Volume
	// Mirrored is the body of the other hand: y becomes wide - y.
	Mirrored() Body
	// Blank is the stock it is cut from.
	Blank() Blank
}

// A Blank is the squared stock, along the grain, that a part is cut from with
// nothing to spare, and how the part comes out of it.
type Blank struct {
	Long, Wide, Deep Length
	Making           Making
}

// Making says how a body comes out of its blank.
type Making int

// The ways a body is made.
const (
	Squared Making = iota // sawn and planed straight
	Curved                // sawn to a curve out of wider stock
	Steamed               // bent, from straight stock of the developed length
	Lathed                // turned round
)

// A Feature is one piece of work on a part: a hole, a mortise, a chamfer.
type Feature interface {
	// Ref names the feature, alone in its part: "fastening 12", "chamfer 1".
	Ref() string
	// Cuts are the solids it takes away, in the part's frame.
	Cuts(b Body) []form.Volume
	// Marks are its lines on one face, in that face's frame.
	Marks(b Body, f Face) []Mark
	// Operations are its lines in the list of work.
	Operations(b Body) []Operation
	// Check reports where it cannot be made in this body: joined *LimitError.
	Check(b Body) error
	// Mirrored is the same feature on the other hand's body.
	Mirrored(b Body) Feature
}

// A Stick is a part laid out for making.
type Stick struct {
	Body     Body
	Features []Feature
	// FaceSide and FaceEdge are the two true faces that everything is gauged from.
	FaceSide, FaceEdge Face
}

// Volume is the finished part in its own frame.
func (s Stick) Volume() form.Volume {
	var cut []form.Volume
	for _, f := range s.Features {
		cut = append(cut, f.Cuts(s.Body)...)
	}
	if len(cut) == 0 {
		return s.Body.Volume()
	}
	return form.Difference{From: s.Body.Volume(), Cut: cut}
}

// Marks are all features' lines on one face, in the order of the features.
func (s Stick) Marks(f Face) []Mark {
	var m []Mark
	for _, w := range s.Features {
		m = append(m, w.Marks(s.Body, f)...)
	}
	return m
}

// Operations are the lines of the list of work, in the order of the features.
func (s Stick) Operations() []Operation {
	var ops []Operation
	for _, w := range s.Features {
		ops = append(ops, w.Operations(s.Body)...)
	}
	return ops
}

// Mirrored is the stick of the other hand.
func (s Stick) Mirrored() Stick {
	m := Stick{Body: s.Body.Mirrored(), FaceSide: s.FaceSide.mirrored(), FaceEdge: s.FaceEdge.mirrored()}
	for _, f := range s.Features {
		m.Features = append(m.Features, f.Mirrored(s.Body))
	}
	return m
}

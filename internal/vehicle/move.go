package vehicle

import "lostwood/internal/quantity"

// A Move is something of the vehicle that turns, swings or travels, and how far it must.
type Move struct {
	Kind   MoveKind
	Name   string      // as people say it: "fore carriage"
	Line   int         // of the survey
	With   []string    // ids of the timbers and irons that go along; their own fastenings go too
	On     []string    // ids of what it turns on (a king bolt, hinges): left out of what is in its way
	Wheels []WheelRoom // of a turn: those that go along; of a travel: those it is to meet
	// At is a place on the line it turns about, Axis that line; of a travel, Axis is the way it goes.
	At   [3]quantity.Size
	Axis [3]float64 // of length one
	// Asked is how far a turn must go to either side, or a swing in all; 0 where nothing is asked.
	Asked quantity.Angle
	// Loaded and Stop are how far a travel goes: under its load, and in all. Loaded is 0 where not told.
	Loaded, Stop quantity.Length
	Meets        []string // ids of timbers and irons that it is to touch before it stops
}

// A MoveKind is how something moves.
type MoveKind int

// The kinds of move.
const (
	Turns   MoveKind = iota // to both sides about an upright line: a fore carriage on its king bolt
	Swings                  // one way about a hinge
	Travels                 // straight: a spring, a brake beam
)

// String is the word in lists.
func (k MoveKind) String() string { return [...]string{"turns", "swings", "travels"}[k] }

// A WheelRoom is the room that a wheel takes up: a short round of this radius
// over the tyre, half its width to either side of its centre along the axis.
type WheelRoom struct {
	Name   string // "near fore wheel"
	Centre [3]quantity.Length
	Axis   [3]float64 // of length one
	Radius quantity.Length
	Wide   quantity.Length
}

// A Hardware is what is known of a fastening's bolt itself.
type Hardware struct {
	Head   HeadShape
	Sunk   quantity.Length // how deep its head lies in a counterbore
	Inside quantity.Length // of a clip: between its legs; 0 where not read
	Bolt   *OldBolt        // nil where none was read
	// Missing says that there is none: the survey says so, or nothing of it was read.
	Missing bool
}

// A HeadShape is how a bolt's head bears.
type HeadShape int

// The shapes.
const (
	PlainHead  HeadShape = iota // square or hexagon, lying on the face
	SquareNeck                  // a dome with a square neck that sinks into wood
	Flush                       // sunk level into what it bears on
)

// String is the word in lists.
func (h HeadShape) String() string { return [...]string{"plain", "square neck", "flush"}[h] }

// An OldBolt is a surviving bolt as it was read; lengths that were not read are 0.
type OldBolt struct {
	ID                                 string
	Length, Thread, Nut, Washer, Proud quantity.Length
}

// A Mark is a place that one thing of the vehicle has on one of the vehicle's axes.
type Mark struct {
	ID    string // of a timber, an iron or a fastening
	Axis  int    // 0 x, 1 y, 2 z
	Where MarkKind
	Hole  int // of MarkHole: from 1
}

// A MarkKind says which place of a thing is meant.
type MarkKind int

// The kinds of mark.
const (
	MarkLow    MarkKind = iota // where its box begins on the axis
	MarkHigh                   // where it ends
	MarkMiddle                 // halfway
	MarkHole                   // the middle of a hole of an iron
	MarkLine                   // a fastening's line
)

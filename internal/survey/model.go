// Package survey reads the file a restorer writes: the irons, bolts, parts and
// fastenings of one vehicle, and whatever else is known of it. It checks the
// file and says where it is wrong; it derives nothing.
//
// A survey is a TOML file. Lengths are text ("1 3/4", "3 ft 6 1/2", "44.5 mm")
// and become millimetres; a bare number has the vehicle's unit.
package survey

import (
	"time"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Position is a place in the file, from line 1 and column 1.
type Position struct{ Line, Column int }

// A Survey is a file that was read and found without fault. Things stand in
// the order of the file. Every reference in it leads somewhere.
type Survey struct {
	File       string // as given, for messages
	Hash       string // SHA-256 of the bytes, in hex
	Name       string
	Issue      string
	Date       time.Time
	Unit       quantity.Unit
	Note       string
	Wood       Wood
	Doubts     Doubts
	Smith      Smith
	Datum      []Statement // what fixes the vehicle's frame
	Irons      []Iron
	Parts      []Part
	Wheels     []Wheel
	Fastenings []Fastening
	Joints     []Joint
	Moves      []Move
	Evidence   []Statement
	Timbers    []Timber
	Splinters  []Splinter
	Making     Making
	Yard       Yard
	Prices     []Price
	Boards     []Board
	Loads      []Load
	Record     Record
	Approvals  []Approval
	Settled    []Settled
	Track      quantity.Length // from the middle of one wheel's tread to the other's; 0 where not stated
}

// Wood is what the timber is bought at and will live at. Moisture is in percent.
type Wood struct {
	Timber  string // where a part names none
	Bought  quantity.Moisture
	Worked  quantity.Moisture // on the day it is worked; as bought where not stated
	Service Climate
	Rings   *timber.Rings // of every part that says nothing of its own; nil where not stated
	// Tightened is the moisture of the wood when nuts were last run down, which grips
	// speak for, and its standard uncertainty; zero where not stated.
	Tightened, TightenedDoubt quantity.Moisture
	TightenedAt               Position
}

// A Climate is the moisture the vehicle will live at, one of three ways:
// Driest and Wettest straight in percent; the name of a published Place; or
// Months of temperature (degrees Celsius) and relative humidity (percent).
type Climate struct {
	At              Position
	Driest, Wettest quantity.Moisture // equal where one figure is given
	Place           string
	Months          [][2]float64
}

// Doubts are what one reading of each sort is worth (standard uncertainties),
// unless a line says otherwise. All have defaults, At nowhere; Value and Doubt
// are both the uncertainty.
type Doubts struct {
	Rule, Callipers, Tape Reading                   // instruments
	Grip                  Reading                   // a grip read from a bolt's mark
	Contact               Reading                   // faces said to touch
	Play                  Reading                   // a bolt in its hole
	Centre                Reading                   // a bolt on the middle line of its timber
	Twin                  Reading                   // near against off, and off the middle line of the vehicle
	Row                   Reading                   // one of a row against the next
	Rust                  Reading                   // what rust adds to a reading on it
	Shear                 Reading                   // a bruise on a shank
	Known                 [quantity.Unknown]Reading // by how a statement is known
}

// A Reading is a length that was read or stated, with its doubt worked out.
type Reading struct {
	At    Position
	Value quantity.Length
	Doubt quantity.Length // standard uncertainty; by its own ±, else by its instrument
	By    *Instrument     // one of the survey's own; nil for any other
}

// A Size is a named reading: thick, wide, long ...
type Size struct {
	Name string
	Reading
}

// Sides says whether a thing is single or one of a near and off pair.
type Sides int

// The sides.
const (
	Single Sides = iota
	Pair
)

// An IronKind is what an iron is.
type IronKind string

// The kinds of iron.
const (
	Strap  IronKind = "strap"
	Plate  IronKind = "plate"
	Clip   IronKind = "clip"
	Socket IronKind = "socket"
	Rail   IronKind = "rail"
	Hinge  IronKind = "hinge"
	Stay   IronKind = "stay"
	Tyre   IronKind = "tyre"
	Band   IronKind = "band"
	Ring   IronKind = "ring"
	Axle   IronKind = "axle"
	Spring IronKind = "spring"
)

// An Iron is one iron, a pair, or a row of irons alike.
//
// Its sizes are long, wide and thick, where they are read; a tyre or ring has
// instead outside or girth (both over the iron), or chord and rise of a
// piece (over the iron), and wide and thick. A socket has mouth (the wood's
// size it takes, along its bolts' row) besides.
type Iron struct {
	At        Position
	ID, Name  string
	Kind      IronKind
	Runs      vehicle.Run
	Sides     Sides
	Number    int // in a row, fore to hind or near to off; 1 where single
	Sizes     []Size
	Holes     []Reading // from its fore, near or lower end; a zero Reading is one whose place is not trusted
	From      End       // what holes are read from
	Across    []Reading // where each hole stands across the iron; empty for its middle line
	Bent      *Reading  // as found: how far its middle stands off the straight line between its ends
	Cranks    []Crank
	Points    [][2]Reading // of a piece of tyre: places on its outside, from any straight edge
	Off       *Other       // the off one of a pair, where it was read too
	Found     *Other       // as found, where that differs from as made
	Missing   Missing
	Condition string
	Where     string // where found
	Marks     string
	Photos    []string
	Note      string
}

// An End is what an iron's holes are read from.
type End int

// The ends.
const (
	FirstEnd   End = iota // fore, near or lower
	FromMiddle            // the middle; towards the first end less than nothing
)

// A Crank is a step that was meant: beyond At from its first end an iron stands By
// further up, fore or outwards.
type Crank struct{ At, By Reading }

// Other is a second set of readings of an iron.
type Other struct {
	Sizes []Size
	Holes []Reading
	Why   string
}

// A Part is a timber that is wanted: one, a pair, or a row.
type Part struct {
	At       Position
	ID, Name string
	Kind     parts.Kind
	Runs     vehicle.Run
	Sides    Sides
	Handed   Handedness
	Number   int // in a row, or alike; 1 where single
	Centred  Centring
	Timber   string
	Rings    *timber.Rings // nil where its line says nothing
	Stated   []Statement   // dimensions given with the part, one term each
	Counts   map[string]int
	Angles   map[string]quantity.Angle
	Status   vehicle.Status
	Kept     string
	Decided  string // why new, grafted to the survivor, or left open
	AsMade   []Size
	Note     string
}

// Handedness says whether the near and the off of a pair are mirror images.
type Handedness int

// The two.
const (
	Handed Handedness = iota // a pair is two mirrored parts
	Same                     // one pattern serves both sides
)

// Centring says whether bolts are taken to lie on the middle line of the timber.
type Centring int

// The two.
const (
	Central Centring = iota
	Anywhere
)

// A Direction is the way a fastening goes from its head to its nut.
type Direction int

// The directions. Inward is from the outer side towards the middle line of the
// vehicle, or towards the hub in a wheel.
const (
	Down Direction = iota
	Up
	Inward
	Outward
	Hindward
	Forward
)

// A Fastening is a bolt, clip, rivet or screw through a run of things, head first.
type Fastening struct {
	At        Position
	ID        string // "7", by its order in the file, or as written
	Name      string
	What      string          // "bolt", "clip", "rivet", "screw"
	Diameter  quantity.Length // of a bolt; 0 for a clip
	Inside    *Reading        // a clip's width between its legs
	Direction Direction
	Through   []Step
	Sides     Sides       // Pair where written, or where a thing in it is paired
	Number    int         // of the row it stands in; 1 where single
	Grips     [][]Reading // by member of the row, then near and off; a zero Reading is one not taken
	Bolt      *Bolt       // what else was read of it
	Bolts     [][]*Bolt   // the same where each of the row and side has its own, as Grips; nil for one not found
	Shears    []Shear
	Missing   Missing
	Head      Head
	Sunk      quantity.Length // how deep the head lies in a counterbore; 0 for flush on the face
}

// A Head is the shape of a bolt's head, as it bears on wood.
type Head string

// The heads.
const (
	PlainHead  Head = "plain"       // square or hexagon, lying on the face
	SquareNeck Head = "square-neck" // a carriage bolt: its neck sinks into the wood
	FlushHead  Head = "flush"       // sunk level into what it bears on
)

// A Shear is a bruise on a bolt's shank, where the far face of Thing bore on it.
type Shear struct {
	Thing string
	Reading
}

// A Bolt is what was read of a bolt with no grip mark.
type Bolt struct {
	At               Position
	ID               string
	Diameter         quantity.Length
	Length           Reading  // under the head
	Thread           *Reading // length of thread
	Nut              *Reading // thickness
	Washer           *Reading // thickness, all washers together
	Proud            *Reading // thread past the nut
	Mark             *Reading // grip mark: head to nut, rust line or polish
	Rusted           *Reading // head to nut, rusted where it was
	Crushed          *Reading // how deep its head has sunk into the wood
	NutKind          NutKind  // where its nut was not measured
	WasherKind       WasherKind
	Bent, Worn       quantity.Length // off the straight in the middle; gone from its end
	Condition, Where string
}

// A Step is one thing in a fastening's run, or a depth or gap between two.
type Step struct {
	At    Position
	Thing string // id of a part or iron; empty for a depth or gap
	Holes []int  // which hole of an iron, by member of the row; one serves all
	Let   *Reading
	Into  string // the part that is cut for Let
	Gap   *Reading
	Worn  quantity.Length // by how much a hole is worn
}

// A Joint is one of wood to wood, or wood cut for an iron.
type Joint struct {
	At    Position
	Kind  JointKind
	Of    string // the part that is cut: the tenon's own part, the part notched or housed
	With  string // what it meets: the mortised part; what passes the notch
	End   string // of a tenon: "near", "off", "fore", "hind", "lower", "upper", "both"
	Sizes []Size // long, wide, thick, deep, clear as they apply
}

// A JointKind is how wood is joined.
type JointKind string

// The joints.
const (
	TenonJoint   JointKind = "tenon"
	HousingJoint JointKind = "housing"
	NotchJoint   JointKind = "notch"
	MortiseJoint JointKind = "mortise"
)

// A Statement is an equation between dimensions and places:
// the sum of the terms plus the constant is zero, give or take Doubt.
type Statement struct {
	At       Position
	Text     string // as written
	Known    quantity.Known
	Terms    []Term
	Constant quantity.Length
	Doubt    quantity.Length
}

// A Term is a dimension or a place in a statement: "reach.wide", "sill-plate#3.x".
type Term struct {
	At      Position
	Factor  float64
	Thing   string
	Hole    int // 0 for none
	Feature string
}

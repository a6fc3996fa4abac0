// Package vehicle is what a survey comes to: every timber with its size, place
// and hand, the irons and fastenings that hold it, and what is doubtful. It is
// made by internal/derive, whole and checked, and every output is made from it,
// so that no two outputs can disagree.
//
// Lengths are in millimetres. The vehicle's frame is right-handed: x forward,
// y to the near (left) side, z up from the ground.
package vehicle

import (
	"time"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

// A Vehicle is a derived vehicle.
type Vehicle struct {
	Name       string // as written: "Orchard wagon"
	Slug       string // for folders and files: "orchard-wagon"
	Issue      string // the issue letter of the survey
	Date       time.Time
	Hash       string        // SHA-256 of the survey's bytes, in hex
	Unit       quantity.Unit // the unit the survey was written in, and lists are printed in
	Moisture   Moisture
	Parts      []*Part // every timber, near before off, fore before hind
	Items      []*Item // every distinct thing to make, by number
	Fastenings []*Fastening
	Irons      []*Iron
	Moves      []Move    // what turns, swings or travels
	Wheels     []*Wheel  // near before off, fore before hind
	Findings   []Finding // what contradicts, what is open, what to heed
	Loads      []Load    // what it is meant to carry
	Record     Record    // what was decided, approved and left undone
	// Track is from the middle of one wheel's tread to the other's; 0 where not stated.
	Track quantity.Length
}

// Moisture is what the wood is bought, worked and kept at.
type Moisture struct {
	Bought, Worked, Service quantity.Moisture
	Driest, Wettest         quantity.Moisture // in service
	Basis                   string            // where the service figures come from
}

// A Hand is the side of the vehicle a part belongs to.
type Hand int

// The hands.
const (
	Alike Hand = iota // the same on both sides, or single
	Near              // left, looking forward
	Off               // right
)

// String is the trade's word; empty for a part that has no hand.
func (h Hand) String() string { return [...]string{"", "near", "off"}[h] }

// A Run is the way a part lies in the vehicle.
type Run int

// The runs.
const (
	Along   Run = iota // fore and aft; its first end is the fore end
	Across             // from near to off; its first end is the near end
	Upright            // its first end is the lower end
	Round              // in a wheel's rim
)

// String is the word a survey uses.
func (r Run) String() string { return [...]string{"along", "across", "upright", "round"}[r] }

// A Status is how far a part has come.
type Status int

// The statuses.
const (
	Proposed Status = iota
	Approved
	Made
	Fitted
	LeftOpen // deliberately not to be made
)

// String is the word a survey uses.
func (s Status) String() string {
	return [...]string{"proposed", "approved", "made", "fitted", "left open"}[s]
}

// A Dimension is one size of a part.
type Dimension struct {
	Name string // "deep"
	Axis parts.Axis
	quantity.Size
	// By names the strongest evidence that bears on it, in the survey's words:
	// "fastening 7 and 2 others".
	By string
}

// A Part is one timber in its place.
type Part struct {
	ID       string // as the survey writes it, with its row number: "cross-bar-2"
	Name     string // as people say it
	Kind     string
	Run      Run
	Hand     Hand
	Timber   string
	Sizes    []Dimension
	Place    *Place // nil where nothing places it
	Status   Status
	Kept     string // who keeps what of an original; empty for none
	Item     *Item
	Features []Feature
}

// A Place is where a part's origin stands in the vehicle and which way its axes point.
type Place struct {
	At   [3]quantity.Size // x, y, z
	Axes [3][3]float64    // the part's x, y, z axes in the vehicle's frame
}

// A Feature is a piece of work with the doubt of where it stands.
type Feature struct {
	Ref string // the parts.Feature's Ref
	// Along and Across are its place on its face, with give or take and how known.
	Along, Across quantity.Size
}

// An Item is one distinct thing to make: one line of the parts table, one mesh, one pattern.
type Item struct {
	Number    int // from 1; a handed pair shares it
	ID        string
	Name      string
	Kind      string
	Run       Run
	Hand      Hand
	NumberOff int
	Timber    string
	Shape     parts.Part
	Stick     parts.Stick // in the hand of this item
	Sizes     []Dimension
	Features  []Feature
	Status    Status
	Parts     []*Part // the timbers in the vehicle that it makes
	Notes     []string
	Fails     []string // why it cannot go together as it stands, a sentence each; empty where it can, or nobody looked
}

// A Fastening is a bolt or clip through a run of things.
type Fastening struct {
	ID       string // "7", "7 near"
	Title    string // "7 near: reach to hind bolster"
	What     string // "bolt" or "clip"
	Diameter quantity.Length
	Grip     quantity.Size // head to nut, as adjusted
	Through  []Stop        // what it goes through, head first
	Hardware Hardware
	// Head is where its head bears; Way is the direction from there to the nut.
	// In a wheel Head is not known and Way is zero.
	Head [3]quantity.Size
	Way  [3]float64
}

// A Stop is one thing that a fastening goes through.
type Stop struct {
	ID   string
	Hole int // of an iron, from 1; 0 for a timber
	// Gap is how far it lies from the one before on purpose; below 0 it is let in that deep.
	Gap quantity.Length
}

// A Step is a crank of an iron: beyond At from its first end it stands By farther up, fore or outwards.
type Step struct{ At, By quantity.Length }

// An Iron is one iron as adjusted.
type Iron struct {
	ID, Name, Kind string
	Run            Run
	Hand           Hand
	Sizes          []Dimension
	Holes          []quantity.Size // from its fore, near or lower end
	Condition      string
	Where          string // where it was found
	Marks, Note    string
	Photos         []string // names of picture files
	Missing        bool     // it is not there, and must be made
	Steps          []Step   // cranks that were meant, in order from its first end
	Place          *Place
}

// A Concern says what a finding is about.
type Concern int

// The concerns, gravest first.
const (
	Unmakeable    Concern = iota // a part that cannot be made as it stands
	Contradiction                // readings that do not agree
	Open                         // nothing determines it
	Unlike                       // a pair or row that is not alike
	Advice                       // to heed in the making
)

// String is a heading for the concern.
func (c Concern) String() string {
	return [...]string{"cannot be made", "contradicts", "not known", "not alike", "heed"}[c]
}

// A Finding is one thing the restorer should know.
type Finding struct {
	Concern Concern
	Subject string // the iron, part or fastening it is about
	Says    string // one or two plain sentences
	Line    int    // of the survey, where one line is to blame; 0 otherwise
}

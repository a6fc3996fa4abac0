package vehicle

import "lostwood/internal/quantity"

// An Account tells how one size or place comes about, and how far it can be trusted.
type Account struct {
	Subject  string // what was asked for, in full: "near-reach.deep"
	Asks     string // in words: "how deep the near reach is"
	Size     quantity.Size
	Alike    string    // what it is made alike with, a sentence; empty where with nothing
	Bearings []Bearing // what bears on it, weightiest first; their shares sum to 1
	Told     []Bearing // the same for reading: what says so singly, what is taken for granted by its kind, the rest in one
	// Sentences, each list empty where there is nothing to tell.
	Contradicts []string // what does not agree, and what was done with it
	GiveOrTake  []string // where the give or take comes from
	Bounds      []string // what bolts without a mark allow, and whether that holds it
	Unchecked   []string // what nothing checks, and the least slip that would show
	Open        []string // why it is not known
	Next        []Reading
}

// A Bearing is one reading, statement or assumption that bears on a size.
type Bearing struct {
	Says   string // "the grip of fastening 6 near"
	Role   Role
	Kind   string          // of what is taken for granted: "faces touch"
	Line   int             // of the survey; 0 for none
	Read   quantity.Length // what was read; NaN where nothing was
	Alone  quantity.Length // what the size would be were this one exactly right; NaN where that has no meaning
	Share  float64         // how much of the weight it has, 0 to 1
	Adds   quantity.Length // the give or take that it alone brings
	Checks float64         // how well others check it: 0 not at all, 1 fully
}

// A Role says what a bearing is.
type Role int

// The roles.
const (
	Speaks  Role = iota // it was read or stated
	Granted             // it is taken for granted
	Rest                // all that is too light to be told singly
)

// String is the word in lists.
func (r Role) String() string { return [...]string{"says so", "taken for granted", "the rest"}[r] }

// A Reading is one that could still be taken, with what it would gain.
type Reading struct {
	Says     string // "hole 3 of the off hind plate, with a rule"
	Where    Where
	Doubt    quantity.Length // what such a reading is worth
	Line     int             // of the survey, where it belongs; 0 for none
	Write    string          // how it is written there
	Settles  string          // what it would tell best: "how deep the near reach is"
	From, To quantity.Length // that one's give or take, now and then; From +Inf where it is not known
	Others   int             // how many other sizes and places it would narrow by a tenth or more
	Gain     quantity.Length // all that it narrows together, weighted by what hangs on it
	Words    string          // all this in a sentence
}

// A Where says where a reading is to be had.
type Where int

// Where readings are to be had.
const (
	OnIrons   Where = iota // on the irons and bolts at hand
	Elsewhere              // on a like vehicle, in an old drawing
)

// String is the word in lists.
func (w Where) String() string { return [...]string{"on the irons", "elsewhere"}[w] }

// Questions are what a survey leaves to be asked.
type Questions struct {
	Contradicts []Finding
	Ill         []Finding // readings that sit worst with the rest, worst first, though nothing is plainly wrong with them
	Unchecked   []Finding // readings that nothing checks, the gravest first
	More        int       // how many more there are that nothing checks
	Open        []Finding
	Next        []Reading // the readings that would help most: those on the irons, best first, then those elsewhere
}

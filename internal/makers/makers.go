// Package makers tells the maker's unit: makers worked to sizes. It asks
// whether the sizes of a vehicle lie on the marks of a rule (an inch and its
// halves, quarters, eighths, sixteenths; centimetres; the inch of an old foot)
// more closely than chance would have it, with what odds, and which mark each
// size was likely meant to be.
//
// Lengths are in millimetres. The derived sizes are never changed: a likely
// intended size stands beside each, and only where the give or take is narrow
// enough to tell.
//
// # How the odds are reckoned
//
// For one size of doubt s and marks a distance q apart, the density of where it
// would lie between two marks, if it was made to one, over that density if marks
// meant nothing (even), is that of the wrapped normal distribution. A maker's
// habit is the share of sizes made to whole units, halves, quarters and so on,
// and a share that lies on no mark (worn, shrunk, made to fit), so a few such
// sizes spoil nothing. The product over all sizes, averaged over all habits,
// divisions and units with weights fixed beforehand, has the mean one if there
// are no marks: an e-value (Vovk and Wang, E-values: calibration, combination
// and applications, Annals of Statistics 49 (2021) 1736). By Markov's inequality
// chance then gives odds of K to 1 in at most one vehicle of K, whatever the
// doubts are and however many units were tried: the weights pay for them.
//
// Where one true size was derived several times the sizes share one voice: each
// factor is raised to the power 1/m, which keeps the mean at or below one under
// any dependence (Hölder's inequality). Sizes named alike share so; and sizes
// that cannot be told apart share by how near they are, for they may well be
// one board planed once. Sums of other sizes do not belong in the list.
package makers

import (
	"math"

	"lostwood/internal/quantity"
)

// A Sized is one derived size.
type Sized struct {
	Name string // as people read it: "reach, deep"
	quantity.Size
	// Alike names the one size that several were meant to be, such as both of a
	// pair or all of a row; empty for a size of its own.
	Alike string
	// Read is the division its readings were rounded to where that is not well
	// below its doubt; zero otherwise. Marks that the restorer's own rule bears
	// are then no sign of the maker's.
	Read  quantity.Length
	Grain Grain
}

// A Grain is the way a size runs to the grain of its wood.
type Grain int

// The ways of the grain. Wood shrinks across it only.
const (
	Along Grain = iota
	Across
)

// A Shrinkage is what is taken for granted of the wood since it was made.
type Shrinkage int

// The shrinkages.
const (
	AsQuoted Shrinkage = iota // the sizes are those of the day the maker measured
	Sought                    // the sizes across the grain may all have shrunk by one share, to 4 %
)

// A Question is what is asked of the sizes.
type Question struct {
	Weakest   quantity.Known  // sizes known by less are left out
	Units     []Unit          // that the maker may have had
	Close     quantity.Length // how near to a mark makers worked; zero or less for a 1/64 in
	Shrinkage Shrinkage
}

// Usual asks for every unit of [Units], of sizes measured, from iron or paired.
func Usual() Question {
	return Question{Weakest: quantity.Paired, Units: Units(), Close: closeWork}
}

// closeWork is how near to a mark a coachbuilder or wheelwright worked: common
// practice, no source.
const closeWork = quantity.Inch / 64

// A Claim is what may be said of the maker's unit.
type Claim int

// The claims.
const (
	NoSign  Claim = iota // the sizes lie as chance would have them
	Slight               // some sign, but too little to go by
	Unclear              // on marks of some unit, but two units explain it nearly as well
	Claimed              // chance does as well in less than one vehicle of a hundred, by simulation
	TooFew               // fewer sizes than can tell
)

// A Fit is how near the sizes lie to the marks for their give or take.
type Fit int

// The fits.
const (
	AsDoubted Fit = iota // as their give or take has it
	TooGood              // nearer: the doubts are wide, or the marks are those of the rule they were read with
)

// A Verdict is what the sizes say of the maker's unit.
type Verdict struct {
	Claimed  Claim
	Unit     Unit // the likeliest, also where it is not claimed
	Division int  // the finest part of the unit worked to: 8 for eighths
	// Odds are those against chance, after paying for all units and divisions tried.
	Odds    float64
	On, Of  int     // of the sizes that can tell, how many likely lie on marks of the division
	Vague   int     // how many more are too doubtful to tell
	Voices  float64 // what the sizes count for together, once alike ones share a voice
	Shrunk  float64 // the share lost across the grain, if that was sought and found
	Fit     Fit
	Needs   Needs
	Sizes   []Intended // in the order given
	Against Unit       // the next likely unit, where the unit is unclear
}

// Study asks whether sizes lie on the marks of a unit. The order of sizes
// changes nothing but the order of the answers. Sizes that are no use (not
// known well enough, not finite, not above zero) come back as [NotCounted].
func Study(sizes []Sized, q Question) Verdict {
	if !(q.Close > 0) || math.IsInf(float64(q.Close), 0) {
		q.Close = closeWork
	}
	v := Verdict{Sizes: make([]Intended, len(sizes))}
	var counted []int
	for i, s := range sizes {
		v.Sizes[i] = Intended{Name: s.Name, Derived: s.Size, Tell: NotCounted}
		if s.useful(q.Weakest) {
			v.Sizes[i].Tell = NoUnit
			counted = append(counted, i)
		}
	}
	units := usable(q.Units)
	v.Of = len(counted)
	if len(units) == 0 || v.Of == 0 {
		v.Claimed = TooFew
		return v
	}
	l := newLot(sizes, counted)
	v.Voices = l.voices()
	trials := tryAll(l, units, q)
	v.judge(l, trials)
	if v.Claimed == Claimed {
		v.propose(l, trials[0])
	} else {
		v.Needs = l.needs(units[0], q.Close)
	}
	return v
}

func (s Sized) useful(weakest quantity.Known) bool {
	positive := func(l quantity.Length) bool { return l > 0 && !math.IsInf(float64(l), 0) }
	return s.Known >= quantity.Measured && s.Known <= weakest && s.Known < quantity.Unknown &&
		positive(s.Value) && (s.Doubt == 0 || positive(s.Doubt))
}

// What is asked of the odds before a unit is claimed. Markov's inequality has
// chance reach enough in one vehicle of 10 at the very most; by simulation it
// does so in less than one of 200, on even sizes and on stock used again and
// again alike, for the weights of what was tried leave it little room.
const (
	enough     = 10
	slight     = 3
	sureOfUnit = 0.9 // share of the odds that one unit must hold
	fewest     = 5   // voices
)

// judge fills in what is said of the lot as a whole. Trials come best first.
func (v *Verdict) judge(l *lot, trials []trial) {
	best := trials[0]
	v.Unit, v.Division = best.unit, best.division()
	v.Odds = math.Exp(min(best.logOdds, maxLogOdds))
	all := make([]float64, len(trials))
	for i, t := range trials {
		all[i] = t.logOdds
	}
	share := math.Exp(best.logOdds - logSum(all))
	switch {
	case v.Voices < fewest:
		v.Claimed = TooFew
	case math.Exp(min(logSum(all), maxLogOdds)) >= enough && share < sureOfUnit:
		v.Claimed, v.Against = Unclear, trials[1].unit
	case v.Odds >= enough:
		v.Claimed = Claimed
	case v.Odds >= slight:
		v.Claimed = Slight
	}
}

// maxLogOdds keeps the odds a number.
const maxLogOdds = 700

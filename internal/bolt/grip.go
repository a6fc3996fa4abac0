package bolt

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
)

// A Measure is one reading with its standard uncertainty.
type Measure struct{ Value, Doubt Length }

// A Read is what was read of a bolt; nil where it was not read.
type Read struct {
	Diameter Length   // of the shank where it is clean, or the nominal size
	Length   *Measure // from the bearing face of the head to the end of the thread
	Thread   *Measure // from that end to the last full thread
	Nut      *Measure // thickness
	Washer   *Measure // all washers together; where it is not read there was none
	Proud    *Measure // thread past the nut
}

// A Kind says what a [Window] is.
type Kind int

// The kinds.
const (
	NoGrip     Kind = iota // the readings give none: [Check] says why
	OneReading             // the nut's place was read: Value is a reading
	Anywhere               // it was not: every grip from Least to Most is as likely
)

// A Window is what a bolt says of the thickness that it held, head to nut, on
// the day its nut was last run down. Wood that shrank since was thicker before.
type Window struct {
	Value, Doubt Length // of Anywhere, the middle and its standard uncertainty
	Least, Most  Length // what the iron allows, wherever the nut was
	Kind         Kind
	Basis        string // how it was come by, in words
}

// Grip works out what a bolt gripped. Where the thread past the nut is known it
// is found by subtraction; otherwise it lies between the grip at which the nut
// meets the end of the thread and that at which the nut just covers its bolt.
//
// A nut that was not read is taken between the modern and the old patterns, with
// a doubt that covers both: for one bolt they differ by D/8. The square neck is
// part of the length and of the grip; iron straps under head or nut are part of
// the grip.
//
// Grip answers whatever it is given: readings that [Check] refuses come back as
// [NoGrip] with an endless doubt.
func Grip(r Read) Window {
	if Check(r) != nil {
		return Window{Doubt: Length(math.Inf(1)), Kind: NoGrip, Basis: "the readings of the bolt cannot be used"}
	}
	s := stackOf(r)
	w := Window{
		Least: max(0, s.length.Value-s.thread.Value-runOut(r.Diameter)-s.washer.Value),
		Most:  s.length.Value - s.nut.Min - s.washer.Value,
		Basis: s.basis(r),
	}
	// A nut as thick as its thread is long has one place, whatever the readings
	// of the two miss it by.
	w.Least = min(w.Least, w.Most)
	if r.Proud != nil {
		w.Kind = OneReading
		w.Value = s.oneReading()
		w.Doubt = Length(math.Hypot(float64(doubt(s.length, s.proud, s.nutRead, s.washer)), float64(s.nut.Doubt())))
		w.Least = min(w.Least, w.Value)
		return w
	}
	w.Kind = Anywhere
	edges := Limits{Max: w.Most, Min: w.Least}
	// Thread and nut each move one edge, and so the middle by half.
	half := doubt(s.thread, s.nutRead) / 2
	w.Value = edges.Middle()
	w.Doubt = Length(math.Hypot(float64(edges.Doubt()), math.Hypot(float64(half), float64(doubt(s.length, s.washer)))))
	return w
}

// A stack is a bolt with what stood on it, everything that was not read filled
// in. Doubts are of readings alone.
type stack struct {
	length, thread, washer, proud Measure
	nut                           Limits  // one thickness where it was read
	nutRead                       Measure // zero where it was not
	nutBy                         Source
}

// stackOf needs r.Length.
func stackOf(r Read) stack {
	s := stack{length: *r.Length, washer: read(r.Washer), proud: read(r.Proud), nutRead: read(r.Nut)}
	s.nut = Limits{Max: s.nutRead.Value, Min: s.nutRead.Value}
	if r.Nut == nil {
		s.nut, s.nutBy = nutBetween(r.Diameter)
	}
	s.thread = read(r.Thread)
	if r.Thread == nil {
		// Old shops threaded to need: allow twice the rule (common practice, no
		// source), and at the least what is known to have been on the thread.
		rule, _ := ThreadLength(r.Diameter, s.length.Value)
		s.thread.Value = max(2*rule, s.proud.Value+s.nut.Max)
	}
	return s
}

func read(m *Measure) Measure {
	if m == nil {
		return Measure{}
	}
	return *m
}

// oneReading is the grip by subtraction, with the nut of middling thickness;
// with nothing past the nut where that was not read.
func (s stack) oneReading() Length {
	return s.length.Value - s.proud.Value - s.nut.Middle() - s.washer.Value
}

// doubt is the standard uncertainty of a sum or difference of readings.
func doubt(of ...Measure) Length {
	var sum float64
	for _, m := range of {
		sum = math.Hypot(sum, float64(m.Doubt))
	}
	return Length(sum)
}

func (s stack) basis(r Read) string {
	var says []string
	if r.Proud != nil {
		says = append(says, "length less what stands past the nut")
	} else {
		says = append(says, "anywhere from the end of the thread to a nut just covered")
		if r.Thread == nil {
			says = append(says, "thread not read, taken as up to twice the published rule")
		}
	}
	switch {
	case r.Nut != nil:
		says = append(says, "nut as read")
	case s.nutBy == Pattern:
		says = append(says, "nut not read, and this diameter is in no table: by the pattern of the tables, with twice the doubt")
	default:
		says = append(says, "nut not read, taken between the modern and the old")
	}
	if nominal, by := sized(r.Diameter); by == Nearest {
		says = append(says, fmt.Sprintf("taken as a %s in bolt", quantity.Fraction(nominal, 16)))
	}
	if r.Washer != nil {
		says = append(says, "washers as read")
	} else {
		says = append(says, "no washer read, none taken off")
	}
	return strings.Join(says, "; ")
}

// Package compare sets two issues of a survey side by side: which sizes moved,
// by how much against their give or take, which parts lose their approval, and
// which files in the makers' hands are stale.
package compare

import (
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Scribed is the least move that counts: the width of a scribed line, finer than
// anyone saws to (common practice, no source).
const Scribed = 0.25 * quantity.Millimetre

// A Comparison is what is otherwise in the new vehicle than in the old one.
type Comparison struct {
	Old, New *vehicle.Vehicle
	Moved    []Change // by part as the new vehicle lists them, then the parts that are gone
	Falls    []Fall   // parts whose approval, or whose making, no longer fits
}

// A Change is one thing about a part that is otherwise.
type Change struct {
	Part, Name string // its id, and as people say it
	What       string // "deep", "bolt hole on the upper face, along"
	Way        Way
	Was, Is    quantity.Size // of a Moved or Rested change
	// Said and Says are what stood and stands there, of any other.
	Said, Says string
}

// A Way is how something is otherwise.
type Way int

// The ways.
const (
	Moved   Way = iota // a size is another
	Rested             // a size is the same, and rests on weaker evidence
	Added              // it is new
	Gone               // it is no longer there
	Altered            // what was said is otherwise: a timber, a hand
)

// By is how far a size has moved; NaN where it was or is not known.
func (c Change) By() quantity.Length {
	if c.Was.Known == quantity.Unknown || c.Is.Known == quantity.Unknown {
		return quantity.Length(math.NaN())
	}
	return c.Is.Value - c.Was.Value
}

// Against is how far it has moved against the give or take of the two
// together; NaN where that has no meaning.
func (c Change) Against() float64 {
	both := math.Hypot(c.Was.Doubt.Millimetres(), c.Is.Doubt.Millimetres())
	if both == 0 || math.IsInf(both, 0) {
		return math.NaN()
	}
	return math.Abs(c.By().Millimetres()) / both
}

// A Fall is a part that was approved or made as it stood in the old issue, and
// stands otherwise in the new one.
type Fall struct {
	Part, Name string
	Had        vehicle.Status
	Why        []string // what is otherwise, the names of the changes
}

// Vehicles compares two vehicles.
func Vehicles(old, new *vehicle.Vehicle) *Comparison {
	c := &Comparison{Old: old, New: new}
	before := byID(old)
	for _, p := range new.Parts {
		was, both := before[p.ID]
		if !both {
			c.Moved = append(c.Moved, Change{Part: p.ID, Name: p.Name, What: "the part", Way: Added})
			continue
		}
		delete(before, p.ID)
		changes := partChanges(was, p)
		c.Moved = append(c.Moved, changes...)
		c.fall(was, p, changes)
	}
	for _, p := range old.Parts {
		if _, left := before[p.ID]; left {
			c.Moved = append(c.Moved, Change{Part: p.ID, Name: p.Name, What: "the part", Way: Gone})
		}
	}
	return c
}

func byID(v *vehicle.Vehicle) map[string]*vehicle.Part {
	m := map[string]*vehicle.Part{}
	for _, p := range v.Parts {
		m[p.ID] = p
	}
	return m
}

// fall notes a part that somebody approved or made as it no longer stands.
func (c *Comparison) fall(was, is *vehicle.Part, changes []Change) {
	settled := was.Status == vehicle.Approved || was.Status == vehicle.Made || was.Status == vehicle.Fitted
	if !settled || len(changes) == 0 || is.Status == vehicle.Proposed || is.Status == vehicle.LeftOpen {
		return
	}
	var why []string
	for _, ch := range changes {
		if !slices.Contains(why, ch.What) {
			why = append(why, ch.What)
		}
	}
	c.Falls = append(c.Falls, Fall{Part: is.ID, Name: is.Name, Had: was.Status, Why: why})
}

// partChanges lists all that is otherwise about a part.
func partChanges(was, is *vehicle.Part) []Change {
	p := pair{was: was, is: is}
	p.said("kind", was.Kind, is.Kind)
	p.said("timber", was.Timber, is.Timber)
	p.said("hand", was.Hand.String(), is.Hand.String())
	before, now := sizes(was), sizes(is)
	for _, d := range now {
		if o := slices.IndexFunc(before, named(d.Name)); o >= 0 {
			p.size(d.Name, before[o].Size, d.Size)
		} else {
			p.only(d.Name, Added)
		}
	}
	for _, o := range before {
		if !slices.ContainsFunc(now, named(o.Name)) {
			p.only(o.Name, Gone)
		}
	}
	p.work()
	return p.changes
}

// sizes are those a part is made to: its item's, or its own where it cannot be made.
func sizes(p *vehicle.Part) []vehicle.Dimension {
	if p.Item != nil {
		return p.Item.Sizes
	}
	return p.Sizes
}

func named(name string) func(vehicle.Dimension) bool {
	return func(d vehicle.Dimension) bool { return d.Name == name }
}

// A pair is one part in both issues, and what is otherwise about it so far.
type pair struct {
	was, is *vehicle.Part
	changes []Change
}

func (p *pair) add(c Change) {
	c.Part, c.Name = p.is.ID, p.is.Name
	p.changes = append(p.changes, c)
}

func (p *pair) only(what string, w Way) { p.add(Change{What: what, Way: w}) }

func (p *pair) said(what, was, is string) {
	if !strings.EqualFold(was, is) {
		p.add(Change{What: what, Way: Altered, Said: was, Says: is})
	}
}

// size compares one size. A size that nobody knows in either issue is the same.
func (p *pair) size(what string, was, is quantity.Size) {
	change := Change{What: what, Was: was, Is: is}
	switch {
	case was.Known == quantity.Unknown && is.Known == quantity.Unknown:
		return
	case was.Known == quantity.Unknown || is.Known == quantity.Unknown,
		math.Abs((is.Value - was.Value).Millimetres()) > Scribed.Millimetres():
		change.Way = Moved
	case is.Known > was.Known: // the strongest come first
		change.Way = Rested
	default:
		return
	}
	p.add(change)
}

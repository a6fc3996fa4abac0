package movement

import (
	"errors"
	"fmt"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Report is what moves in a vehicle. Near comes before off, as in the vehicle.
type Report struct {
	Parts    []Part    // one an item
	Spacings []Spacing // one for each thing that holds a timber in two places or more, and way
	Grips    []Grip    // one for each fastening that wood is held by
	Gaps     []Gap     // one between each two slats side by side
	Findings []vehicle.Finding

	vehicle *vehicle.Vehicle
	woods   map[string]wood
}

// A wood is what is known of one timber's movement.
type wood struct {
	timber.Species
	across, along error // why it does not tell, and nil where it does
}

// Of works out what moves in v. A timber whose movement is not known is
// named among the findings, and its parts say why; it does not take the others
// with it. The error is a moisture that no wood has.
func Of(v *vehicle.Vehicle, woods timber.Catalogue) (*Report, error) {
	if v == nil {
		return nil, errors.New("there is no vehicle whose wood could move; derive one from its survey first")
	}
	r := &Report{vehicle: v, woods: map[string]wood{}}
	m := v.Moisture
	for _, s := range [...]struct {
		what     string
		at, most quantity.Moisture
	}{{"driest", m.Driest, saturated}, {"wettest", m.Wettest, saturated}, {"service", m.Service, saturated}, {"worked", r.worked(), soaked}} {
		if !(s.at > 0 && s.at <= s.most) {
			return nil, fmt.Errorf("the %s moisture is %g %%; it can be above 0, to %g, such as 12", s.what, float64(s.at), float64(s.most))
		}
	}
	if m.Driest > m.Wettest {
		return nil, fmt.Errorf("the driest moisture, %g %%, is above the wettest, %g %%", float64(m.Driest), float64(m.Wettest))
	}
	r.study(woods)
	for _, it := range v.Items {
		if it != nil && it.Stick.Body != nil {
			r.Parts = append(r.Parts, r.part(it))
		}
	}
	r.spacings()
	r.grips()
	r.gaps()
	r.find()
	return r, nil
}

// What wood takes up from the air at most, and the most that any holds, percent.
const saturated, soaked quantity.Moisture = 30, 600

// worked is the moisture on the day holes are bored.
func (r *Report) worked() quantity.Moisture {
	m := r.vehicle.Moisture
	if m.Worked == 0 {
		return m.Bought
	}
	return m.Worked
}

// steady reports a climate of one moisture all year.
func (r *Report) steady() bool { return r.vehicle.Moisture.Driest == r.vehicle.Moisture.Wettest }

// study looks up every timber, at every moisture there is.
func (r *Report) study(woods timber.Catalogue) {
	for _, p := range r.vehicle.Parts {
		r.learn(woods, p.Timber)
	}
	for _, it := range r.vehicle.Items {
		if it != nil {
			r.learn(woods, it.Timber)
		}
	}
}

func (r *Report) learn(woods timber.Catalogue, name string) {
	if _, known := r.woods[name]; known {
		return
	}
	s, err := woods.Find(name)
	w := wood{Species: s, across: err, along: err}
	m := r.vehicle.Moisture
	for _, at := range [...]quantity.Moisture{m.Driest, m.Wettest, r.worked()} {
		if w.across == nil {
			_, w.across = s.Resize(100, m.Service, at, timber.Worst)
		}
		if w.along == nil {
			_, w.along = s.Resize(100, m.Service, at, timber.Lengthwise)
		}
	}
	r.woods[name] = w
}

// A Change is how far a size lies from what it is in service, at the driest, at the
// wettest, and on the day it is worked. Where it is not known, Why says so.
type Change struct {
	Driest, Wettest, Worked quantity.Length
	Why                     error
}

// Known reports whether there are figures.
func (c Change) Known() bool { return c.Why == nil }

// Year is how far the size goes between driest and wettest.
func (c Change) Year() quantity.Length { return c.Wettest - c.Driest }

// Shrinks and Swells are how far it goes either way from the day it is
// worked, neither below nothing.
func (c Change) Shrinks() quantity.Length { return max(c.Worked-c.Driest, 0) }

// Swells is the other way: see Shrinks.
func (c Change) Swells() quantity.Length { return max(c.Wettest-c.Worked, 0) }

// Total is the whole way the size goes, from the day it is worked on.
func (c Change) Total() quantity.Length { return c.Shrinks() + c.Swells() }

// plus adds another size's change, taken so many times.
func (c Change) plus(o Change, times quantity.Length) Change {
	return Change{
		c.Driest + times*o.Driest, c.Wettest + times*o.Wettest, c.Worked + times*o.Worked,
		errors.Join(c.Why, o.Why),
	}
}

// change is that of a size of a timber, one way.
func (r *Report) change(name string, size quantity.Length, d timber.Direction) Change {
	w := r.woods[name]
	why := w.across
	if d == timber.Lengthwise {
		why = w.along
	}
	if why != nil {
		return Change{Why: why}
	}
	m := r.vehicle.Moisture
	at := func(to quantity.Moisture) quantity.Length {
		s, err := w.Resize(size, m.Service, to, d)
		why = errors.Join(why, err)
		return s - size
	}
	c := Change{Driest: at(m.Driest), Wettest: at(m.Wettest), Worked: at(r.worked())}
	c.Why = why
	return c
}

// A Part is what one item does. Sizes are in service, of the finished box, of a
// bend as if it were straight; Broad is the greater extent across the grain.
type Part struct {
	Item                *vehicle.Item
	Long, Broad, Thin   quantity.Length
	LongBy, BroadBy, By Change // By is that of Thin
}

func (r *Report) part(it *vehicle.Item) Part {
	long, wide, deep := it.Stick.Body.Box()
	if b := it.Stick.Body.Blank(); b.Making == parts.Steamed { // its box is over its bends
		long, wide, deep = b.Long, b.Wide, b.Deep
	}
	p := Part{Item: it, Long: long, Broad: max(wide, deep), Thin: min(wide, deep)}
	p.LongBy = r.change(it.Timber, p.Long, timber.Lengthwise)
	p.BroadBy = r.change(it.Timber, p.Broad, timber.Worst)
	p.By = r.change(it.Timber, p.Thin, timber.Worst)
	return p
}

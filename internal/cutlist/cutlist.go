// Package cutlist works out what to cut and what to buy for a vehicle: every
// part's sawn size from its finished one, the thickness of board it comes out
// of, its measure and its mass.
//
// Lengths are in millimetres inside. A finished size is one in service, at the
// vehicle's service moisture; a worked size is what it must measure on the day
// it is worked, so as to come to that; a sawn size is at the moisture the wood
// is bought at. Where it is not asked how the growth rings lie, sizes across
// the grain move by the larger of radial and tangential. Board feet and cubic
// metres are of the boards bought: the stock's thickness, the piece's sawn
// width and length, and the saw's kerf where one is set.
//
// Laying pieces out on boards, and reading surveys, are not here.
package cutlist

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A List is the cutting list of one vehicle.
type List struct {
	Lines      []Line  // one an item and hand, in the vehicle's order
	Groups     []Group // what of them is to be bought, by species and then thickness
	Allowances Allowances

	settings Settings
	vehicle  *vehicle.Vehicle
}

// Vehicle is the one that the list is of.
func (l *List) Vehicle() *vehicle.Vehicle { return l.vehicle }

// Make works out the cutting list of v with nothing set but the allowances:
// see MakeWith.
func Make(v *vehicle.Vehicle, woods timber.Catalogue, a Allowances) (*List, error) {
	return MakeWith(v, woods, Settings{Allowances: a})
}

// MakeWith works out the cutting list of v. The error joins every fault there is:
// a *[WoodError] for each timber that is not in the list of woods, whose
// shrinkage is not known, or that cannot hold the moisture; a *[PartError] for
// each part without a size; a *[MoistureError]; an *[AllowanceError]; a
// *[SettingError].
func MakeWith(v *vehicle.Vehicle, woods timber.Catalogue, s Settings) (*List, error) {
	if v == nil {
		return nil, errors.New("there is no vehicle to make a cutting list of; derive one from its survey first")
	}
	l := &List{Allowances: s.Allowances, settings: s, vehicle: v}
	faults := []error{s.validate(v, woods), checkMoisture(v.Moisture)}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	named := map[string]*WoodError{}
	for _, it := range v.Items {
		if err := checkItem(it); err != nil {
			faults = append(faults, err)
			continue
		}
		line, err := l.line(it, woods)
		if err != nil {
			w, known := named[it.Timber]
			if !known {
				w = &WoodError{Timber: it.Timber, Err: err}
				named[it.Timber] = w
				faults = append(faults, w)
			}
			w.Parts = append(w.Parts, nameOf(it))
			continue
		}
		l.Lines = append(l.Lines, line)
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	var err error
	if l.Groups, err = l.total(woods); err != nil {
		return nil, err
	}
	return l, nil
}

// nameOf is the part's name with its hand, for messages.
func nameOf(it *vehicle.Item) string {
	return strings.TrimSpace(it.Name + " " + it.Hand.String())
}

// A WoodError says why a timber cannot be reckoned with, and which parts are
// to be of it.
type WoodError struct {
	Timber string
	Parts  []string
	Err    error // of package timber
}

func (e *WoodError) Error() string {
	return fmt.Sprintf("%s: %v", strings.Join(slices.Compact(e.Parts), ", "), e.Err)
}

func (e *WoodError) Unwrap() error { return e.Err }

// A PartError says what a part lacks.
type PartError struct {
	Part string
	Says string
}

func (e *PartError) Error() string { return e.Part + ": " + e.Says }

// A MoistureError is a moisture that wood is not bought or kept at.
type MoistureError struct {
	What string // "bought"
	Got  quantity.Moisture
	Most quantity.Moisture // 600 where nothing else holds
}

func (e *MoistureError) Error() string {
	if e.Most == green {
		return fmt.Sprintf("the moisture that the wood is %s is %g %%; from the air alone wood in service takes up no more than %g, where its fibres are full; write such as 12", e.What, float64(e.Got), float64(e.Most))
	}
	return fmt.Sprintf("the moisture that the wood is %s is %g %%; it can be above 0, to %d, such as 12", e.What, float64(e.Got), wettest)
}

// wettest is more water than any wood holds, percent of its dry mass.
const wettest = 600

func checkMoisture(m vehicle.Moisture) error {
	var faults []error
	for _, s := range []struct {
		what string
		at   quantity.Moisture
	}{{"bought at", m.Bought}, {"worked at", worked(m)}, {"kept at in service", m.Service}} {
		if !(s.at > 0 && s.at <= wettest) {
			faults = append(faults, &MoistureError{What: s.what, Got: s.at, Most: wettest})
		}
	}
	if m.Service > green && m.Service <= wettest {
		faults = append(faults, &MoistureError{"kept at in service", m.Service, green})
	}
	return errors.Join(faults...)
}

// worked is what the wood is worked at: as bought, where nothing else is said.
func worked(m vehicle.Moisture) quantity.Moisture {
	if m.Worked == 0 {
		return m.Bought
	}
	return m.Worked
}

// checkItem reports an item that no size can be read from.
func checkItem(it *vehicle.Item) error {
	switch {
	case it == nil:
		return &PartError{"a part", "nothing is known of it; take it out of the vehicle"}
	case it.Stick.Body == nil:
		return &PartError{nameOf(it), "it has no shape; give its sizes"}
	case it.NumberOff < 1:
		return &PartError{nameOf(it), fmt.Sprintf("%d off are to be made; it must be 1 or more", it.NumberOff)}
	}
	b := it.Stick.Body.Blank()
	for _, size := range []quantity.Length{b.Long, b.Wide, b.Deep} {
		if !(size > 0 && size < 100*quantity.Metre) {
			return &PartError{nameOf(it), fmt.Sprintf("one of its sizes is %.4g mm, from which nothing can be cut; give it a size", size.Millimetres())}
		}
	}
	return nil
}

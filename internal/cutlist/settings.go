package cutlist

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// Settings are what a list is worked out with besides the vehicle. Only the
// allowances must be there.
type Settings struct {
	Allowances Allowances
	Stock      []timber.Nominal // the yard's own thicknesses; those of the trade where empty
	Prices     []Price
	Boards     []Board // the actual boards, measured
	Rings      []PartRings
	Wanted     Wanted
}

// PartRings say how the rings are to lie in a part, by its number, id or
// name; in every part that has no word of its own where Part is empty.
type PartRings struct {
	Part  string
	Rings timber.Rings
}

// A Board is one of the actual boards, and others alike.
type Board struct {
	ID, Timber string
	Thick      quantity.Length // as it lies there; 0 where not measured
	Moisture   quantity.Moisture
	Number     int // how many alike, from 1
}

// Wanted is what the order asks besides species, sizes and moisture.
type Wanted struct {
	Grade  string  // in the yard's words; the usual where empty
	RunOut float64 // the grain may run out 1 in so many at most; 0 asks for straight grain in words
	Sap    Sap
	Note   string // anything else
}

// Sap says whether sapwood is taken.
type Sap int

// Whether sapwood is taken.
const (
	SapTaken Sap = iota
	SapRefused
)

// A SettingError is a setting that cannot be worked with.
type SettingError struct{ Says string }

func (e *SettingError) Error() string { return e.Says }

func badSetting(format string, values ...any) error {
	return &SettingError{fmt.Sprintf(format, values...)}
}

// validate reports every setting that cannot be worked with, and every name in
// them that is no part or timber of v.
func (s Settings) validate(v *vehicle.Vehicle, woods timber.Catalogue) error {
	faults := []error{s.Allowances.Validate()}
	for _, n := range s.Stock {
		if !(n.Rough > 0 && n.Rough < quantity.Metre && n.Planed > 0 && n.Planed <= n.Rough && n.Charged > 0) {
			faults = append(faults, badSetting("a thickness of the yard, %s: sawn %.4g mm, dressed %.4g mm; dressed must be above 0 and no more than sawn",
				quantity.Quote(n.Name), n.Rough.Millimetres(), n.Planed.Millimetres()))
		}
	}
	for _, p := range s.Prices {
		faults = append(faults, p.validate(), s.usedTimber(v, woods, p.Timber, "a price"))
	}
	for _, b := range s.Boards {
		faults = append(faults, b.validate())
	}
	for _, r := range s.Rings {
		if r.Part != "" && !hasPart(v, r.Part) {
			faults = append(faults, badSetting("rings are asked for %s, which is no part of the %s that can be made", quantity.Quote(r.Part), v.Name))
		}
	}
	if w := s.Wanted; w.RunOut != 0 && !(w.RunOut >= 1 && w.RunOut <= 100) {
		faults = append(faults, badSetting("grain running out 1 in %.4g; it can be 1 in 1 to 1 in 100, such as 15", w.RunOut))
	}
	return errors.Join(faults...)
}

func (b Board) validate() error {
	var faults []error
	name := "board " + quantity.Quote(b.ID)
	if !(b.Thick >= 0 && b.Thick < quantity.Metre) {
		faults = append(faults, badSetting("%s is %.4g mm thick; measure it", name, b.Thick.Millimetres()))
	}
	if !(b.Moisture > 0 && b.Moisture <= wettest) {
		faults = append(faults, badSetting("%s has a moisture of %.4g %%; it can be above 0, to %d, such as 14", name, float64(b.Moisture), wettest))
	}
	if b.Number < 1 {
		faults = append(faults, badSetting("%s: %d alike; it must be 1 or more", name, b.Number))
	}
	return errors.Join(faults...)
}

func hasPart(v *vehicle.Vehicle, word string) bool {
	for _, it := range v.Items {
		if it != nil && isPart(it, word) {
			return true
		}
	}
	return false
}

// isPart reports whether a word is the number, id or name of an item.
func isPart(it *vehicle.Item, word string) bool {
	slug := vehicle.Slug(word)
	return slug != "" && (slug == fmt.Sprint(it.Number) || slug == it.ID || slug == vehicle.Slug(it.Name))
}

// usedTimber reports a timber that no part is of. One that the list of woods
// does not know may still be what parts say.
func (s Settings) usedTimber(v *vehicle.Vehicle, woods timber.Catalogue, name, what string) error {
	if name == "" {
		return nil
	}
	for _, it := range v.Items {
		if it != nil && sameTimber(woods, it.Timber, name) {
			return nil
		}
	}
	return badSetting("%s is given for %s, of which no part is to be made", what, quantity.Quote(name))
}

// sameTimber reports whether two names are one wood.
func sameTimber(woods timber.Catalogue, a, b string) bool {
	if strings.EqualFold(a, b) {
		return true
	}
	x, errX := woods.Find(a)
	y, errY := woods.Find(b)
	return errX == nil && errY == nil && x.Common == y.Common && x.Botanical == y.Botanical
}

// rings are those asked for an item.
func (s Settings) rings(it *vehicle.Item) timber.Rings {
	var all timber.Rings
	for _, r := range s.Rings {
		switch {
		case r.Part == "":
			all = r.Rings
		case isPart(it, r.Part):
			return r.Rings
		}
	}
	return all
}

// A Measure is what a price is for.
type Measure int

// The measures that are priced.
const (
	BoardFoot Measure = iota // of the hardwood trade's tally
	SuperFoot
	CubicMetre
)

// String is the measure in words.
func (m Measure) String() string {
	switch m {
	case BoardFoot:
		return "board foot"
	case SuperFoot:
		return "super foot"
	case CubicMetre:
		return "cubic metre"
	}
	return fmt.Sprintf("Measure(%d)", int(m))
}

// A Price is what a timber costs.
type Price struct {
	Timber   string // of every timber that has none of its own where empty
	Stock    string // the name of the thickness; every thickness where empty
	Amount   float64
	Per      Measure
	Currency string // as it is to be printed: "$"
}

func (p Price) validate() error {
	if p.Per < BoardFoot || p.Per > CubicMetre {
		return badSetting("a price for %v; it can be for a board foot, a super foot or a cubic metre", p.Per)
	}
	if !(p.Amount >= 0 && p.Amount < 1e9) || math.IsInf(p.Amount, 0) {
		return badSetting("a price of %.6g for a %v; it must be 0 or more", p.Amount, p.Per)
	}
	return nil
}

// A Cost is money, or none where no price was given.
type Cost struct {
	Known    bool
	Amount   float64
	Currency string
}

// cost is what a group costs, by the price that speaks of it most closely.
func (s Settings) cost(woods timber.Catalogue, g Group) Cost {
	var best *Price
	rank := -1
	for i, p := range s.Prices {
		near := 0
		if p.Timber != "" {
			if !sameTimber(woods, p.Timber, g.Lines[0].Item.Timber) {
				continue
			}
			near += 2
		}
		if p.Stock != "" {
			if p.Stock != g.Stock.Name {
				continue
			}
			near++
		}
		if near > rank {
			best, rank = &s.Prices[i], near
		}
	}
	if best == nil {
		return Cost{}
	}
	units := g.Charged
	switch best.Per {
	case SuperFoot:
		units = float64(g.Order / timber.SuperFoot)
	case CubicMetre:
		units = g.Order.CubicMetres()
	}
	return Cost{true, units * best.Amount, best.Currency}
}

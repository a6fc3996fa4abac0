package timber

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// Bending says how tightly 25 mm of a wood can be bent after steaming: the
// least inner radius in mm, with a tension strap and end stops and without.
type Bending struct {
	Strap, Free Figure
	Words       string // how it takes to bending, where no radius is known
}

// A Support is what holds a piece while it is bent.
type Support int

// How a piece is held.
const (
	Unsupported Support = iota // bent by itself
	Strapped                   // a strap on the outside of the bend, its end stops tight
)

// A Bend is what to expect of one steam bend.
type Bend struct {
	Ratio    float64         // inner radius over thickness
	Limit    quantity.Length // least inner radius for that thickness; zero where none is known
	Basis    Basis           // of Limit
	Form     [2]quantity.Length
	Steaming float64 // hours in steam, about, for air-dried stock
	Warnings []string
}

// tested is the thickness that published limiting radii are for.
const tested = 25 * quantity.Millimetre

// What steamed wood bears, as ratios of inner radius to thickness: bent by
// itself it stretches 1.7 to 2.5 % at most, strapped it shortens 25 to 30 %.
// From memory of E. C. Peck, USDA Agriculture Handbook 125.
const (
	freeDoubtful  = 30.0
	freeHopeless  = 20.0
	strapDoubtful = 3.0
	strapHopeless = 2.3
)

// SteamBend says what to expect of bending a piece of that thickness to an
// inner radius: the tightest published for the wood, which grows with the
// thickness, and warnings where the bend is tighter. Form is the range of form
// radii to try, 0.90 to 0.95 of the radius wanted, since the bend opens; prove
// it with two trial pieces. Every figure is from memory and for the best of
// stock: allow more in the shop.
func (s Species) SteamBend(inner, thickness quantity.Length, support Support) (Bend, error) {
	if err := positive("inner radius, mm", inner.Millimetres()); err != nil {
		return Bend{}, err
	}
	if err := positive("thickness, mm", thickness.Millimetres()); err != nil {
		return Bend{}, err
	}
	b := Bend{
		Ratio:    float64(inner / thickness),
		Form:     [2]quantity.Length{0.90 * inner, 0.95 * inner},
		Steaming: float64(thickness / tested), // about an hour for each 25 mm
	}
	limit, held := s.Bending.Free, "without a strap"
	if support == Strapped {
		limit, held = s.Bending.Strap, "with a strap"
	}
	if limit.Known() {
		b.Limit = quantity.Length(limit.Value) * thickness / tested
		b.Basis = limit.Basis()
		if inner < b.Limit {
			b.warn("%s bends no tighter than %.0f mm inside at this thickness %s (%v)", s.label(), b.Limit.Millimetres(), held, b.Basis)
		}
	}
	b.compare(support, limit.Known())
	if s.Bending.Words != "" {
		b.warn("%s: %s", s.label(), s.Bending.Words)
	}
	if support == Unsupported && !s.Bending.Free.Known() && s.Bending.Strap.Known() {
		b.warn("no limit is known for %s without a strap", s.label())
	}
	return b, nil
}

func (b *Bend) warn(format string, values ...any) {
	b.Warnings = append(b.Warnings, fmt.Sprintf(format, values...))
}

// compare warns by what any steamed wood bears.
func (b *Bend) compare(support Support, limitKnown bool) {
	doubtful, hopeless, held := freeDoubtful, freeHopeless, "without a strap"
	if support == Strapped {
		doubtful, hopeless, held = strapDoubtful, strapHopeless, "even with a strap"
	}
	switch {
	case limitKnown:
	case b.Ratio < hopeless:
		b.warn("the radius is %.1f times the thickness; %s wood breaks under about %g", b.Ratio, held, hopeless)
	case b.Ratio < doubtful:
		b.warn("the radius is %.1f times the thickness; %s wood is at risk under about %g", b.Ratio, held, doubtful)
	}
}

// BendCautions are the usual cautions of steam bending, for every sheet that
// asks for a bend. Local rules come first.
func BendCautions() []string {
	return []string{
		"Vent the steam box; never seal it.",
		"Wear gloves and eye protection, and work with a second person.",
		"A strap under load stores energy: stand clear of its ends.",
		"Straight grain only, running out less than about 1 in 15, with no defect on either face.",
	}
}

// BendStrain returns how much of their length the fibres of a piece lose
// inside the bend with a strap, or gain outside it without one (by geometry).
func BendStrain(inner, thickness quantity.Length, support Support) float64 {
	if support == Strapped {
		return float64(thickness / (inner + thickness))
	}
	return float64(thickness / (2*inner + thickness))
}

// AirDrying is how many days 25 mm (1 in) boards take in the air to 20 % moisture.
type AirDrying struct {
	Least, Most float64
	Basis       Basis
}

// DryingDays returns how many days boards of a thickness take in the air to
// 20 % moisture: the published range for an inch, grown with the power 1.5
// (least) to 2 (most) of the thickness, from memory. Lumber piled late will
// not be dry before the next spring (FPL Technical Note 233).
func (s Species) DryingDays(thickness quantity.Length) (least, most float64, basis Basis, err error) {
	if err := positive("thickness, mm", thickness.Millimetres()); err != nil {
		return 0, 0, Basis{}, err
	}
	d := s.Drying
	if d.Basis.Standing == Missing {
		return 0, 0, Basis{}, &NoFigureError{
			s.label(), "air-drying time",
			"weigh a sample until it stops losing; a year for each 25 mm is often quoted and often disputed",
		}
	}
	inches := thickness.Inches()
	a, b := math.Pow(inches, 1.5), inches*inches
	return d.Least * min(a, b), d.Most * max(a, b), d.Basis, nil
}

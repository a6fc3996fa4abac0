package timber

import (
	"errors"
	"fmt"
	"strings"

	"lostwood/internal/quantity"
)

// A Species is one wood and what is known of it.
type Species struct {
	Common    string   // white ash
	Also      []string // other names it goes by
	Botanical string   // Fraxinus americana; further ones of the genus after /
	Region    string

	Shrink     Shrinkage
	Move       Movement
	Weight     Weight
	Green, Dry Strength // soaked, and at 12 % moisture
	Meeting    Figure   // moisture at which the strength of drying wood begins to rise, percent; 25 where missing
	Groups     Groups
	Durability Text
	Drying     AirDrying
	Bending    Bending
	Note       string // a doubt about the published figures
}

// A Text is a published statement in words.
type Text struct {
	Words string
	Basis
}

// A Convention says between which states a shrinkage was measured.
type Convention int

// The two conventions of shrinkage; they must not be mixed.
const (
	GreenToOvendry Convention = iota // ASTM D143, the Wood Handbook, Europe
	GreenTo12                        // Australia: to 12 % moisture
)

// A Shrinkage is in percent of the green size.
type Shrinkage struct {
	To                 Convention
	Radial, Tangential Figure
	Volumetric         Figure // measured apart; need not agree with the other two
	Lengthwise         Figure // green to ovendry always; 0.2 where missing
	Saturation         Figure // percent moisture at which shrinkage begins; 30 where missing
}

// A Coefficient says what a movement per point of moisture was measured on.
type Coefficient int

// The kinds of movement coefficient.
const (
	NoCoefficient Coefficient = iota
	HandbookOwn               // Wood Handbook table 13-5, for the species itself
	HandbookGroup             // Wood Handbook table 13-5, for a commercial group
	UnitShrinkage             // Australia: of seasoned, reconditioned wood
)

// A Movement is in percent of the size per percent of moisture.
type Movement struct {
	Kind               Coefficient
	Radial, Tangential Figure
}

// A Weight holds specific gravities (ovendry mass; volume green, or at 12 %),
// the density at 12 % moisture in kg/m3, and the moisture of green wood in percent.
type Weight struct {
	Basic, At12, Density12   Figure
	GreenHeart, GreenSapwood Figure
}

// A Strength holds averages of small clear pieces.
type Strength struct {
	Rupture   Figure // modulus of rupture in bending, MPa
	Stiffness Figure // modulus of elasticity in bending, GPa
	Hardness  Figure // Janka, on the side, N
}

// label is a name for messages: the common name, or else the botanical one.
func (s Species) label() string {
	switch {
	case s.Common != "":
		return s.Common
	case s.Botanical != "":
		return s.Botanical
	}
	return "a wood with no name"
}

// full is the common name with the botanical one behind it.
func (s Species) full() string {
	if s.Common == "" || s.Botanical == "" {
		return s.label()
	}
	return fmt.Sprintf("%s (%s)", s.Common, s.Botanical)
}

// Validate reports every figure of s that no wood could have, and a wood
// without a name. It says nothing of figures that are missing.
func (s Species) Validate() error {
	var faults []error
	check := func(what string, f Figure, lo, hi float64) {
		if !f.Known() {
			return
		}
		if err := within(s.label()+": "+what, f.Value, lo, hi); err != nil {
			faults = append(faults, err)
		}
	}
	if strings.TrimSpace(s.Common+s.Botanical) == "" {
		faults = append(faults, errors.New("a wood has neither a common nor a botanical name; write one"))
	}
	check("radial shrinkage, percent", s.Shrink.Radial, 0.01, 40)
	check("tangential shrinkage, percent", s.Shrink.Tangential, 0.01, 40)
	check("volumetric shrinkage, percent", s.Shrink.Volumetric, 0.01, 60)
	check("lengthwise shrinkage, percent", s.Shrink.Lengthwise, 0, 5)
	check("saturation, percent moisture", s.Shrink.Saturation, 15, 40)
	check("radial movement, percent per percent", s.Move.Radial, 0.01, 2)
	check("tangential movement, percent per percent", s.Move.Tangential, 0.01, 2)
	check("basic specific gravity", s.Weight.Basic, 0.05, 1.5)
	check("specific gravity at 12 %", s.Weight.At12, 0.05, 1.5)
	check("density at 12 %, kg/m3", s.Weight.Density12, 50, 1700)
	check("moisture of green heartwood, percent", s.Weight.GreenHeart, 10, wettest)
	check("moisture of green sapwood, percent", s.Weight.GreenSapwood, 10, wettest)
	check("moisture at which strength rises, percent", s.Meeting, 15, 40)
	for _, v := range [...]Strength{s.Green, s.Dry} {
		check("bending strength, MPa", v.Rupture, 1, 500)
		check("stiffness, GPa", v.Stiffness, 0.1, 60)
		check("hardness, N", v.Hardness, 10, 50000)
	}
	return errors.Join(faults...)
}

// A Direction is the way a dimension lies in the wood.
type Direction int

// The directions of a dimension.
const (
	Radial     Direction = iota // across the rings: the width of a quarter-sawn board
	Tangential                  // along the rings: the width of a flat-sawn board
	Worst                       // the rings are not known: whichever moves more
	Lengthwise                  // along the grain
)

var directionWords = [...]string{"radial", "tangential", "grain not known", "lengthwise"}

// String returns the words for d.
func (d Direction) String() string {
	if d < Radial || d > Lengthwise {
		return fmt.Sprintf("Direction(%d)", int(d))
	}
	return directionWords[d]
}

func badDirection(d Direction) error {
	return &RangeError{What: "direction in the wood", Got: float64(d), Min: float64(Radial), Max: float64(Lengthwise)}
}

// Mass returns the mass of v, which was measured at the same moisture.
func (s Species) Mass(v quantity.Volume, at quantity.Moisture) (quantity.Mass, Basis, error) {
	d, basis, err := s.Density(at)
	if err != nil {
		return 0, Basis{}, err
	}
	return d.Mass(v), basis, nil
}

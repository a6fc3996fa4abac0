package quantity

import (
	"fmt"
	"math/big"
	"strings"
)

// A Unit is what a person counts lengths in.
type Unit int

// The units lengths are written and read in.
const (
	Inches Unit = iota
	Feet
	Millimetres
	Centimetres
	Metres
)

// unitWords are the ways a unit is written, the first of each the one we write.
var unitWords = [...][]string{
	Inches:      {"in", "inch", "inches", `"`, "″", "”", "“", "''", "′′", "’’"},
	Feet:        {"ft", "foot", "feet", "'", "′", "’", "‘"},
	Millimetres: {"mm", "millimetre", "millimetres", "millimeter", "millimeters"},
	Centimetres: {"cm", "centimetre", "centimetres", "centimeter", "centimeters"},
	Metres:      {"m", "metre", "metres", "meter", "meters"},
}

// wantUnit says which units would do.
const wantUnit = "write in, ft, mm, cm or m"

// A UnitError is a word that is no unit of length.
type UnitError struct {
	Text string // as written
}

func (e *UnitError) Error() string {
	return fmt.Sprintf("%s is no unit of length here; %s", Quote(e.Text), wantUnit)
}

// ParseUnit reads a unit of length: in, ft, mm, cm or m, in full or short, in
// either case, and the marks ' and ". The error is a *[UnitError].
func ParseUnit(s string) (Unit, error) {
	word := strings.TrimSuffix(strings.ToLower(strings.TrimSpace(s)), ".")
	for u, words := range unitWords {
		for _, w := range words {
			if w == word {
				return Unit(u), nil
			}
		}
	}
	return 0, &UnitError{s}
}

// known reports whether u is one of the constants.
func (u Unit) known() bool { return u >= Inches && u <= Metres }

// String returns the short form of u: in, ft, mm, cm or m.
func (u Unit) String() string {
	if !u.known() {
		return fmt.Sprintf("Unit(%d)", int(u))
	}
	return unitWords[u][0]
}

// One returns the length of one u, and zero for a Unit that is none of the constants.
func (u Unit) One() Length {
	switch u {
	case Inches:
		return Inch
	case Feet:
		return Foot
	case Millimetres:
		return Millimetre
	case Centimetres:
		return Centimetre
	case Metres:
		return Metre
	}
	return 0
}

// exact returns the millimetres in one u as a rational number.
func (u Unit) exact() *big.Rat {
	switch u {
	case Inches:
		return big.NewRat(254, 10)
	case Feet:
		return big.NewRat(12*254, 10)
	case Centimetres:
		return big.NewRat(10, 1)
	case Metres:
		return big.NewRat(1000, 1)
	}
	return big.NewRat(1, 1)
}

// imperial reports whether fractions are at home in u.
func (u Unit) imperial() bool { return u == Inches || u == Feet }

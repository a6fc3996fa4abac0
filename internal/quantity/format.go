package quantity

import (
	"math"
	"math/big"
	"strconv"
)

// NotKnown is what people read where there is no figure.
const NotKnown = "not known"

// shownDenominator is the finest part of an inch written in lists.
const shownDenominator = 32

// Fraction returns l in inches to the nearest fraction with that denominator,
// reduced and without its unit: 2 5/8, 7/8, -1/16, 0. Halves go away from zero.
// A denominator under one asks for no fraction: decimal inches come back.
// A length that is no number comes back as [NotKnown].
func Fraction(l Length, denominator int) string {
	if !finite(l) {
		return NotKnown
	}
	if denominator < 1 {
		return decimal(l.Inches(), 4)
	}
	parts := wholeParts(l, denominator)
	sign := ""
	if l < 0 && parts.Sign() > 0 {
		sign = "-"
	}
	return sign + mixed(parts, int64(denominator))
}

// wholeParts returns the nearest count of 1/denominator inches in |l|.
func wholeParts(l Length, denominator int) *big.Int {
	// A half that float64 holds a hair low must still round up, on every machine.
	const half = 0.5 + 1e-9
	n := new(big.Float).SetPrec(128).SetFloat64(math.Abs(l.Inches()))
	n.Mul(n, new(big.Float).SetInt64(int64(denominator)))
	parts, _ := n.Add(n, big.NewFloat(half)).Int(nil)
	return parts
}

// mixed writes parts/den as a whole number and a reduced fraction.
func mixed(parts *big.Int, den int64) string {
	d := big.NewInt(den)
	whole, rest := new(big.Int).QuoRem(parts, d, new(big.Int))
	if rest.Sign() == 0 {
		return whole.String()
	}
	f := new(big.Rat).SetFrac(rest, d)
	if whole.Sign() == 0 {
		return f.String()
	}
	return whole.String() + " " + f.String()
}

// FeetInches returns l in feet and inches with its units, to the nearest
// fraction of an inch with that denominator: 3 ft 6 1/2 in, 4 ft, 7/8 in.
// The denominator is as for [Fraction].
func FeetInches(l Length, denominator int) string {
	if !finite(l) {
		return NotKnown
	}
	if denominator < 1 {
		return decimal(float64(l/Foot), 4) + " ft"
	}
	parts := wholeParts(l, denominator)
	foot := new(big.Int).Mul(big.NewInt(12), big.NewInt(int64(denominator)))
	feet, rest := new(big.Int).QuoRem(parts, foot, new(big.Int))
	text := mixed(rest, int64(denominator)) + " in"
	switch {
	case feet.Sign() > 0 && rest.Sign() == 0:
		text = feet.String() + " ft"
	case feet.Sign() > 0:
		text = feet.String() + " ft " + text
	}
	if l < 0 && parts.Sign() > 0 {
		text = "-" + text
	}
	return text
}

// Format returns l with its unit as lists show it: inches to the nearest 1/32
// (2 5/8 in), feet and inches likewise (3 ft 6 1/2 in), millimetres to a tenth
// (66.7 mm), and centimetres and metres to the same tenth of a millimetre.
// [ParseLength] reads it back. A length that is no number is [NotKnown].
func Format(l Length, u Unit) string {
	if !finite(l) {
		return NotKnown
	}
	switch u {
	case Feet:
		return FeetInches(l, shownDenominator)
	case Millimetres:
		return decimal(l.Millimetres(), 1) + " mm"
	case Centimetres:
		return decimal(float64(l/Centimetre), 2) + " cm"
	case Metres:
		return decimal(float64(l/Metre), 4) + " m"
	}
	return Fraction(l, shownDenominator) + " in"
}

// decimal writes f with that many places, and never a minus before nothing.
func decimal(f float64, places int) string {
	text := strconv.FormatFloat(f, 'f', places, 64)
	if v, err := strconv.ParseFloat(text, 64); err == nil && v == 0 {
		return strconv.FormatFloat(0, 'f', places, 64)
	}
	return text
}

func finite(l Length) bool {
	return !math.IsNaN(float64(l)) && !math.IsInf(float64(l), 0)
}

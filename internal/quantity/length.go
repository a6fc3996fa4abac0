// Package quantity holds what a restorer measures: lengths, angles, moisture,
// areas, volumes, masses, and how well each is known.
//
// A Length is in millimetres everywhere inside the program; people write and
// read inches with fractions, feet, decimals or millimetres. Lengths are read
// exactly (as rational numbers) and rounded once, to float64.
//
// Nothing here knows of vehicles, timber or files.
package quantity

// A Length is a distance in millimetres.
type Length float64

// Units of length. An inch is 25.4 mm by definition.
const (
	Millimetre Length = 1
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25.4 * Millimetre
	Foot              = 12 * Inch
)

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Millimetres returns l in millimetres.
func (l Length) Millimetres() float64 { return float64(l) }

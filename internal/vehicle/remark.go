package vehicle

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// A Remark is what one check comes to when the parts are offered up, before
// anything is cut.
type Remark struct {
	Check    string   // the check's name, short, as the list's column has it: "bolt length", "overlap"
	Gravity  Gravity  // how much it matters
	Subject  string   // what it is about, as people say it: "fastening 7 near", "near reach and hind bolster"
	Says     string   // what was found: one or two plain sentences
	Do       string   // what would put it right, a sentence; empty where there is nothing to do
	Measured Figure   // what was found
	Limit    Figure   // what it was held against; no figure where there is none
	Basis    string   // where the limit comes from; empty where it is plain
	Place    *Spot    // where in the vehicle; nil where it has no one place
	Parts    []string // ids of the timbers (Part.ID) it bears on: their outputs are marked
	Number   int      // how many alike it stands for; 0 and 1 are one
	Alike    []string // the subjects of the others
	Things   []string // ids of irons and fastenings it bears on
}

// A Spot is a place in the vehicle's frame.
type Spot [3]quantity.Length

// A Gravity says how much a remark matters.
type Gravity int

// The gravities, gravest first.
const (
	CannotGo Gravity = iota // it cannot go together as it stands
	LookAt                  // a person should look at it before cutting
	Noted                   // reported, nothing need be done
)

// String is the heading in lists.
func (g Gravity) String() string {
	return [...]string{"cannot go together", "look at", "noted"}[g]
}

// A Figure is a number with what it measures; the zero Figure is none.
type Figure struct {
	Value float64 // in the measure's unit
	Of    Measure
}

// A Measure is what a figure measures, and so its unit.
type Measure int

// The measures.
const (
	NoMeasure Measure = iota
	LengthMM          // millimetres
	VolumeMM3         // cubic millimetres
	AngleDeg          // degrees
	StressMPa         // newtons per square millimetre
	MassKg            // kilograms
	Times             // a plain ratio
)

// Symbol is the unit's symbol, as columns and cells of programs have it.
func (m Measure) Symbol() string {
	return [...]string{"", "mm", "mm3", "deg", "MPa", "kg", "times"}[m]
}

// OfLength is a length as a figure.
func OfLength(l quantity.Length) Figure { return Figure{l.Millimetres(), LengthMM} }

// OfAngle is an angle as a figure.
func OfAngle(a quantity.Angle) Figure { return Figure{a.Degrees(), AngleDeg} }

// OfVolume is a volume as a figure.
func OfVolume(v quantity.Volume) Figure { return Figure{float64(v), VolumeMM3} }

// OfMass is a mass as a figure.
func OfMass(m quantity.Mass) Figure { return Figure{float64(m), MassKg} }

// Words is the figure as people read it; a length in their unit. It is empty
// for no figure.
func (f Figure) Words(u quantity.Unit) string {
	switch {
	case f.Of == NoMeasure:
		return ""
	case math.IsNaN(f.Value) || math.IsInf(f.Value, 0):
		return quantity.NotKnown
	}
	switch f.Of {
	case LengthMM:
		return quantity.Format(quantity.Length(f.Value), u)
	case VolumeMM3:
		return fmt.Sprintf("%.2f cm3", f.Value/1000)
	case AngleDeg:
		return fmt.Sprintf("%.1f degrees", f.Value)
	case StressMPa:
		return fmt.Sprintf("%.1f MPa", f.Value)
	case MassKg:
		return fmt.Sprintf("%.1f kg", f.Value)
	}
	return fmt.Sprintf("%.2f times", f.Value)
}

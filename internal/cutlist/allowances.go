package cutlist

import (
	"errors"
	"fmt"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

// Allowances are what is left on a finished size for the making, and what is
// bought over the pieces themselves.
type Allowances struct {
	Planing      quantity.Length // off each of the two faces
	Jointing     quantity.Length // off each edge, and each edge of a joint between boards
	Trimming     quantity.Length // off each end
	BendTrimming quantity.Length // off each end of a piece to be steam-bent
	// Kerf is what the saw takes beside every board and beyond its end, of the
	// wood bought; 0 leaves it within the waste.
	Kerf quantity.Length
	// WidestBoard is the widest that boards are reckoned to come, as bought: a
	// straight piece that needs more is jointed up from several.
	WidestBoard quantity.Length
	// What is bought over the sawn pieces, as a part of them: 0.25 is a quarter more.
	StraightWaste, CurveWaste, BendWaste float64
}

// Usual returns allowances as shops leave them; common practice, no source.
// Rough boards lose 3 mm a face and 6 mm a jointed edge; ends lose 25 to 50 mm,
// those of bends 75 to 150. Straight work wastes 15 to 30 %. Sawn curves waste
// 40 to 100 % of the finished part; here they are reckoned from the squared
// piece the curve is sawn from, which holds some of that, so the least is
// taken. Bends lose what straight work does, and trials and breakages.
func Usual() Allowances {
	return Allowances{
		Planing:       3 * quantity.Millimetre,
		Jointing:      6 * quantity.Millimetre,
		Trimming:      38 * quantity.Millimetre,
		BendTrimming:  100 * quantity.Millimetre,
		WidestBoard:   300 * quantity.Millimetre,
		StraightWaste: 0.25,
		CurveWaste:    0.40,
		BendWaste:     0.40,
	}
}

// An AllowanceError is an allowance that no shop could leave.
type AllowanceError struct {
	Name     string
	In       string // its unit, with a blank before it; empty for a share
	Got      float64
	Min, Max float64
}

func (e *AllowanceError) Error() string {
	return fmt.Sprintf("%s is %.4g%s; it can be %g to %g%s", e.Name, e.Got, e.In, e.Min, e.Max, e.In)
}

// Validate reports every allowance that no shop could leave, as *[AllowanceError].
func (a Allowances) Validate() error {
	var faults []error
	need := func(name, in string, got, lo, hi float64) {
		if !(got >= lo && got <= hi) { // true for NaN
			faults = append(faults, &AllowanceError{name, in, got, lo, hi})
		}
	}
	length := func(name string, got, lo, hi quantity.Length) {
		need(name, " mm", got.Millimetres(), lo.Millimetres(), hi.Millimetres())
	}
	length("planing off each face", a.Planing, 0, 25)
	length("jointing off each edge", a.Jointing, 0, 25)
	length("trimming off each end", a.Trimming, 0, 500)
	length("trimming off each end of a bend", a.BendTrimming, 0, 1000)
	length("the saw's kerf", a.Kerf, 0, 10)
	length("widest board", a.WidestBoard, 100, 3000)
	need("waste of straight pieces, as a part of them", "", a.StraightWaste, 0, 5)
	need("waste of sawn curves, as a part of them", "", a.CurveWaste, 0, 5)
	need("waste of bends, as a part of them", "", a.BendWaste, 0, 5)
	return errors.Join(faults...)
}

// trimming is what each end loses of a part made that way.
func (a Allowances) trimming(m parts.Making) quantity.Length {
	if m == parts.Steamed {
		return a.BendTrimming
	}
	return a.Trimming
}

// waste is what is bought over a part made that way.
func (a Allowances) waste(m parts.Making) float64 {
	switch m {
	case parts.Curved:
		return a.CurveWaste
	case parts.Steamed:
		return a.BendWaste
	}
	return a.StraightWaste
}

package timber

import (
	"math"

	"lostwood/internal/quantity"
)

// A Board is one sawn board as the yard measures it.
type Board struct {
	Width, Length quantity.Length
	Thickness     Nominal
}

// A Rule is how a yard turns boards into board feet.
type Rule int

// The yard's rules.
const (
	PlainVolume Rule = iota // charged thickness x width x length, unrounded
	// Hardwood practice of the National Hardwood Lumber Association: the length
	// cut down to a whole foot, width kept, surface measure to the nearest square
	// foot, exact halves up and down by turns; a bundle of one thickness is
	// summed, multiplied by it, and rounded.
	SurfaceMeasure
	// The same with the width to the nearest inch, exact halves up and down by
	// turns: the tally for export.
	ExportTally
	// Width up to the next inch and length up to the next foot, unrounded:
	// as some yards charge.
	NextInchNextFoot
)

// A Measured is what boards come to by a rule: the surface measure of each
// board in square feet, and the board feet of them all.
type Measured struct {
	Surface   []float64
	BoardFeet float64
}

// Measure returns what boards come to, in their order; rounding by turns
// follows that order. A board less than an inch thick counts as an inch by every
// rule but plain volume. (National Hardwood Lumber Association practice, as the
// American Hardwood Export Council prints it.)
func (r Rule) Measure(boards []Board) (Measured, error) {
	if r < PlainVolume || r > NextInchNextFoot {
		return Measured{}, &RangeError{What: "rule of measure", Got: float64(r), Min: float64(PlainVolume), Max: float64(NextInchNextFoot)}
	}
	var out Measured
	var widths, surfaces, totals turns
	sum := map[float64]float64{} // surface by thickness in inches
	var order []float64
	for _, b := range boards {
		if err := b.validate(); err != nil {
			return Measured{}, err
		}
		width, length := r.count(b, &widths)
		surface := width * length / 12
		if r == SurfaceMeasure || r == ExportTally {
			surface = surfaces.round(surface)
		}
		out.Surface = append(out.Surface, surface)
		thick := b.Thickness.Charged.Inches()
		if r == PlainVolume {
			thick = b.Thickness.Rough.Inches()
		}
		if _, ok := sum[thick]; !ok {
			order = append(order, thick)
		}
		sum[thick] += surface
	}
	for _, thick := range order {
		feet := sum[thick] * thick
		if r == SurfaceMeasure || r == ExportTally {
			feet = totals.round(feet)
		}
		out.BoardFeet += feet
	}
	return out, nil
}

func (b Board) validate() error {
	for _, d := range [...]struct {
		what string
		size quantity.Length
	}{
		{"board width, mm", b.Width},
		{"board length, mm", b.Length},
		{"board thickness, mm", b.Thickness.Rough},
		{"board thickness charged, mm", b.Thickness.Charged},
	} {
		if err := positive(d.what, d.size.Millimetres()); err != nil {
			return err
		}
	}
	return nil
}

// count returns the width in inches and the length in feet that r counts.
func (r Rule) count(b Board, widths *turns) (width, length float64) {
	width, length = b.Width.Inches(), float64(b.Length/quantity.Foot)
	switch r {
	case SurfaceMeasure:
		return width, math.Floor(length + hair)
	case ExportTally:
		return widths.round(width), math.Floor(length + hair)
	case NextInchNextFoot:
		return math.Ceil(width - hair), math.Ceil(length - hair)
	}
	return width, length
}

// hair is what float64 may lose of a whole number.
const hair = 1e-9

// turns rounds, and exact halves up and down by turns. Which comes first is
// common practice, no source.
type turns struct{ down bool }

func (t *turns) round(v float64) float64 {
	whole := math.Floor(v)
	switch rest := v - whole; {
	case math.Abs(rest-0.5) > hair:
		return math.Round(v)
	case t.down:
		t.down = false
		return whole
	}
	t.down = true
	return whole + 1
}

// SuperFoot is the Australian measure of sawn wood, a twelfth of a cubic foot:
// from memory, the same as the board foot.
const SuperFoot = quantity.BoardFoot

// HoppusFoot is the volume of a log that counts as one Hoppus foot: 4/pi cubic feet.
const HoppusFoot = quantity.Volume(4 / math.Pi * float64(quantity.Foot*quantity.Foot*quantity.Foot))

// HoppusFeet returns the measure of a log from its girth at half its length:
// a quarter of the girth, squared, times the length.
func HoppusFeet(girth, length quantity.Length) (float64, error) {
	if err := positive("girth, mm", girth.Millimetres()); err != nil {
		return 0, err
	}
	if err := positive("log length, mm", length.Millimetres()); err != nil {
		return 0, err
	}
	quarter := girth.Inches() / 4
	return quarter * quarter * float64(length/quantity.Foot) / 144, nil
}

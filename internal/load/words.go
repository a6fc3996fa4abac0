package load

import (
	"fmt"
	"math"
	"strconv"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Caution stands under everything that is told of loads.
const Caution = "This compares; it does not pass, fail or rate anything. Whether a vehicle may carry persons or goods is for a competent person " +
	"who has the timber in hand, and the local rules for vehicles on roads come first."

func (r *Report) imperial() bool {
	return r.vehicle.Unit == quantity.Inches || r.vehicle.Unit == quantity.Feet
}

// massWords is a mass as the restorer writes it, to a hundredth of itself or so.
func (r *Report) massWords(m quantity.Mass) string {
	v, unit := float64(m), "kg"
	if r.imperial() {
		v, unit = m.Pounds(), "lb"
	}
	if math.Abs(v) < 10 {
		return strconv.FormatFloat(v, 'f', 1, 64) + " " + unit
	}
	return thousands(v) + " " + unit
}

// give is a give or take, rounded up.
func (r *Report) give(m quantity.Mass) string {
	v, unit := float64(m), "kg"
	if r.imperial() {
		v, unit = m.Pounds(), "lb"
	}
	if v < 10 {
		return strconv.FormatFloat(math.Ceil(v*10)/10, 'f', 1, 64) + " " + unit
	}
	return thousands(math.Ceil(v)) + " " + unit
}

// stress is one in the restorer's unit: pounds on a square inch to the nearest
// ten, or megapascals.
func (r *Report) stress(p timber.Megapascals) string {
	return r.stressFigure(p) + " " + r.stressUnit()
}

func (r *Report) stressUnit() string {
	if r.imperial() {
		return "lbf/in2"
	}
	return "MPa"
}

func (r *Report) stressFigure(p timber.Megapascals) string {
	if !r.imperial() {
		return strconv.FormatFloat(float64(p), 'f', 1, 64)
	}
	v := p.PoundsPerSquareInch()
	if v >= 100 {
		v = math.Round(v/10) * 10
	}
	return thousands(v)
}

func (r *Report) force(n timber.Newtons) string {
	if r.imperial() {
		return thousands(quantity.Mass(float64(n)/gravity).Pounds()) + " lbf"
	}
	return thousands(float64(n)) + " N"
}

func (r *Report) length(l quantity.Length) string { return quantity.Format(l, r.vehicle.Unit) }

// small is a length to a 64th of an inch, or a tenth of a millimetre.
func (r *Report) small(l quantity.Length) string {
	if r.imperial() {
		return quantity.Fraction(l, 64) + " in"
	}
	return strconv.FormatFloat(l.Millimetres(), 'f', 1, 64) + " mm"
}

// upTo rounds up to a size people work to: a 16th of an inch, a millimetre.
func (r *Report) upTo(l quantity.Length) string {
	step := quantity.Millimetre
	if r.imperial() {
		step = quantity.Inch / 16
	}
	return r.length(quantity.Length(math.Ceil(float64(l/step)-1e-9)) * step)
}

// thousands puts commas between them.
func thousands(v float64) string {
	s := strconv.FormatFloat(math.Abs(math.Round(v)), 'f', 0, 64)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	if math.Round(v) < 0 {
		return "-" + s
	}
	return s
}

// percent is a share; under a half of one it says so.
func percent(share float64) string {
	switch {
	case math.IsNaN(share):
		return quantity.NotKnown
	case share < .005:
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// lessWords tells the lessenings, one after another.
func lessWords(less []timber.Lessening) string {
	s := ""
	for i, l := range less {
		if i > 0 {
			s += "; "
		}
		s += fmt.Sprintf("%s leaves %.2f: %s", l.What, l.Leaves, l.Why)
	}
	return s
}

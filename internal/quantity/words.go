package quantity

import (
	"math"
	"strings"
)

// Words returns s as people say it: 2 5/8 in, give or take 1/16. The give or
// take is rounded up to a step people use, so it is never less than the doubt.
// Where nothing determines s the words are [NotKnown]; a doubt of zero is not
// mentioned.
func (s Size) Words(u Unit) string {
	if s.Known < Measured || s.Known >= Unknown || !finite(s.Value) || !finite(s.Doubt) || s.Doubt < 0 {
		return NotKnown
	}
	if s.Doubt == 0 {
		return Format(s.Value, u)
	}
	return Format(s.Value, u) + ", give or take " + s.doubtWords(u)
}

// doubtWords gives the doubt its own unit wherever it would not be plain.
func (s Size) doubtWords(u Unit) string {
	if u.imperial() {
		up := roundUpInches(s.Doubt)
		if u == Feet {
			return FeetInches(up, finestDoubt)
		}
		return Fraction(up, finestDoubt)
	}
	up := roundUpMillimetres(s.Doubt)
	if !finite(up) {
		return NotKnown
	}
	text := trimDecimal(decimal(up.Millimetres(), 1))
	if u != Millimetres {
		text += " mm"
	}
	return text
}

// trimDecimal drops a tenth of nothing.
func trimDecimal(s string) string { return strings.TrimSuffix(s, ".0") }

// finestDoubt is the smallest part of an inch that a give or take is told in.
const finestDoubt = 64

// roundUpInches returns the first step people use that is not below l: 1/64,
// 1/32, 3/64, 1/16, 3/32 and so on to 1 1/2; then whole inches, and whole feet from 2 ft.
func roundUpInches(l Length) Length {
	for _, n := range [...]Length{1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96} {
		if step := n * Inch / finestDoubt; notBelow(step, l) {
			return step
		}
	}
	if notBelow(2*Foot, l) {
		return roundUpTo(l, Inch)
	}
	return roundUpTo(l, Foot)
}

// roundUpMillimetres returns the first step that is not below l of one figure,
// or one and a half: 0.1, 0.2, 0.3 ... 1, 1.5, 2, 3 ... 10, 15, 20.
func roundUpMillimetres(l Length) Length {
	if notBelow(Millimetre, l) {
		return roundUpTo(l, Millimetre/10)
	}
	decade := Length(math.Pow(10, math.Floor(math.Log10(float64(l)))))
	if notBelow(1.5*decade, l) && !notBelow(decade, l) {
		return 1.5 * decade
	}
	return roundUpTo(l, decade)
}

// notBelow reports whether step covers l, but for what float64 cannot hold.
func notBelow(step, l Length) bool { return step >= l*(1-1e-12) }

func roundUpTo(l, step Length) Length {
	return Length(math.Ceil(float64(l/step)*(1-1e-12))) * step
}

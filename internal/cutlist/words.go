package cutlist

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"lostwood/internal/quantity"
)

// imperial says whether lists are in inches; all else is in millimetres.
func imperial(u quantity.Unit) bool { return u == quantity.Inches || u == quantity.Feet }

// shown is the unit sizes stand in on paper.
func shown(u quantity.Unit) quantity.Unit {
	if imperial(u) {
		return quantity.Inches
	}
	return quantity.Millimetres
}

func roundUp(l, step quantity.Length) quantity.Length {
	return quantity.Length(math.Ceil(float64(l/step)-hair)) * step
}

// plain is a size without its unit: 2 5/8, 66.7.
func plain(l quantity.Length, u quantity.Unit) string {
	if imperial(u) {
		return quantity.Fraction(l, 32)
	}
	return strings.TrimSuffix(strconv.FormatFloat(l.Millimetres(), 'f', 1, 64), ".0")
}

// named is a size with its unit.
func named(l quantity.Length, u quantity.Unit) string { return plain(l, u) + " " + shown(u).String() }

// steps are what sawn sizes are rounded up to on paper.
func steps(u quantity.Unit) (long, across quantity.Length) {
	if imperial(u) {
		return quantity.Inch / 4, quantity.Inch / 16
	}
	return 5 * quantity.Millimetre, quantity.Millimetre
}

// upward rounds a size up to what is marked out on rough wood.
func (s Size) upward(u quantity.Unit) Size {
	long, across := steps(u)
	return Size{roundUp(s.Long, long), roundUp(s.Wide, across), roundUp(s.Thick, across)}
}

// words are the three sizes as a joiner says them, a guessed one marked.
func (s Size) words(u quantity.Unit, g guesses) string {
	return plain(s.Long, u) + mark(g.long) + " x " + plain(s.Wide, u) + mark(g.wide) + " x " + plain(s.Thick, u) + mark(g.thick)
}

// percent is a moisture or a share in words.
func percent(v float64) string { return fmt.Sprintf("%.3g %%", v) }

// wrapped breaks a remark into lines for paper, the later ones set in. A
// figure keeps its unit by it.
func wrapped(text string) []string {
	const broad = 118
	const fast = "\u00a0"
	for _, unit := range []string{"mm", "in", "%", "m3", "lb", "kg"} {
		text = strings.ReplaceAll(text, " "+unit, fast+unit)
	}
	var out []string
	line := ""
	for _, w := range strings.Split(text, " ") {
		if line != "" && utf8.RuneCountInString(line+" "+w) > broad {
			out = append(out, line)
			line = " "
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	out = append(out, line)
	for i := range out {
		out[i] = strings.ReplaceAll(out[i], fast, " ")
	}
	return out
}

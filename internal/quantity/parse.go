package quantity

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestText bounds what is read as one length; the longest honest one,
// in words, is about half of this.
const longestText = 96

// wantLength says what a length looks like.
const wantLength = "write a length such as 1 3/4, 3 ft 6 1/2 or 44.5 mm"

// ParseLength reads a length as people write one:
//
//	1 3/4   1-3/4 in   2½   7/8"   12.5   3 ft 6 1/2   3' 6½"   44.5 mm   -5/16
//
// A number with no unit is in bare; after feet it is in inches. Curly and
// typewriter primes, and every vulgar fraction in Unicode, are read. The value
// is worked out exactly and rounded once.
//
// What could be read two ways is refused: a comma in a number, a fraction of
// one or more (13/4 is often 1 3/4 with its space lost), twelve inches or more
// after feet, and a fraction with no unit where millimetres, centimetres or
// metres are expected. The error is a *[LengthError].
func ParseLength(s string, bare Unit) (Length, error) {
	m, err := parseMeasure(s, 0, len(s), bare)
	if err != nil {
		return 0, err
	}
	return m.length(), nil
}

// A measure is a length as it was written.
type measure struct {
	mm    *big.Rat
	units []Unit // those that were written, in order; none for a bare number
}

func (m measure) length() Length {
	f, _ := m.mm.Float64()
	return Length(f)
}

// A reader works along text up to end.
type reader struct {
	text    string
	at, end int
}

// parseMeasure reads text[from:to] as one length; offsets in errors are into text.
func parseMeasure(text string, from, to int, bare Unit) (measure, error) {
	r := &reader{text: text, at: from, end: to}
	if err := r.bounds(bare); err != nil {
		return measure{}, err
	}
	r.space()
	negative := r.sign()
	m, err := r.quantities(bare)
	if err != nil {
		return measure{}, err
	}
	if negative {
		m.mm.Neg(m.mm)
	}
	return m, nil
}

// bounds refuses what should not be read at all.
func (r *reader) bounds(bare Unit) error {
	switch {
	case !bare.known():
		return r.fault(r.at, "no unit is set for a number without one", wantUnit)
	case r.end-r.at > longestText:
		return r.fault(r.at+longestText, "far too long a text", wantLength)
	case !utf8.ValidString(r.text):
		return r.fault(r.at, "text that is not UTF-8", wantLength)
	case strings.TrimSpace(r.text[r.at:r.end]) == "":
		return r.fault(r.at, "nothing", wantLength)
	}
	return nil
}

func (r *reader) fault(at int, found, want string) error {
	return &LengthError{Text: r.text, Offset: at, Found: found, Want: want}
}

// quantities reads one number and its unit, or feet and then inches, to the end.
func (r *reader) quantities(bare Unit) (measure, error) {
	start := r.at
	n, err := r.number()
	if err != nil {
		return measure{}, err
	}
	u, stated, err := r.unit(n)
	switch {
	case err != nil:
		return measure{}, err
	case !stated && n.fraction && !bare.imperial():
		return measure{}, r.fault(start, fmt.Sprintf("a fraction with no unit, where %v is meant by a bare number", bare),
			fmt.Sprintf("write %s in for inches, or decimals of %v", strings.TrimSpace(r.text[start:r.at]), bare))
	case !stated:
		u = bare
	}
	m := measure{mm: new(big.Rat).Mul(n.value, u.exact())}
	if stated {
		m.units = append(m.units, u)
	}
	if r.rest() && stated && u == Feet {
		return r.inchesAfter(n, m)
	}
	return m, r.finished(stated)
}

// inchesAfter reads the inches that follow whole feet.
func (r *reader) inchesAfter(feet number, m measure) (measure, error) {
	if c, size := r.peek(); isHyphen(c) && !unicode.IsSpace(r.before()) { // 3'-6"
		r.at += size
	} else {
		r.space()
	}
	start := r.at
	if !feet.value.IsInt() {
		return measure{}, r.fault(start, "more after a part of a foot", "write whole feet and then inches, such as 3 ft 6 1/2")
	}
	n, err := r.number()
	if err != nil {
		return measure{}, err
	}
	u, stated, err := r.unit(n)
	if err != nil {
		return measure{}, err
	}
	if stated && u != Inches {
		return measure{}, r.fault(start, fmt.Sprintf("%v after feet", u), "write inches after feet, such as 3 ft 6 1/2 in")
	}
	if n.value.Cmp(big.NewRat(12, 1)) >= 0 {
		return measure{}, r.fault(start, "twelve inches or more after feet", "write the whole in feet and inches, or all in inches")
	}
	m.mm.Add(m.mm, new(big.Rat).Mul(n.value, Inches.exact()))
	m.units = append(m.units, Inches)
	return m, r.finished(stated)
}

// finished refuses whatever is left over.
func (r *reader) finished(stated bool) error {
	if !r.rest() {
		return nil
	}
	r.space()
	c, _ := r.peek()
	want := wantLength
	switch {
	case c == ',':
		want = "write decimals with a point and thousands with no mark: 1.5, 1200"
	case stated:
		want = "end at the unit: the number first, with its fraction, then the unit, such as 6 1/2 in"
	case unicode.IsDigit(c):
		want = "write feet and inches as 3 ft 6, a fraction as 3 5/8"
	}
	return r.fault(r.at, "an unexpected "+Quote(string(c)), want)
}

// peek returns the rune at hand, or 0 at the end.
func (r *reader) peek() (c rune, size int) {
	if r.at >= r.end {
		return 0, 0
	}
	return utf8.DecodeRuneInString(r.text[r.at:r.end])
}

func (r *reader) before() rune {
	c, _ := utf8.DecodeLastRuneInString(r.text[:r.at])
	return c
}

func (r *reader) space() {
	for c, size := r.peek(); unicode.IsSpace(c); c, size = r.peek() {
		r.at += size
	}
}

// rest reports whether anything but space is left.
func (r *reader) rest() bool { return strings.TrimSpace(r.text[r.at:r.end]) != "" }

// sign reads an optional sign and reports whether it is a minus.
func (r *reader) sign() bool {
	c, size := r.peek()
	if c != '+' && c != '-' && c != '−' {
		return false
	}
	r.at += size
	r.space()
	return c != '+'
}

func isHyphen(c rune) bool { return c == '-' || c == '‐' || c == '‑' || c == '–' }

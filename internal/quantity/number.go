package quantity

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
)

// A number is what was written before a unit.
type number struct {
	value    *big.Rat
	fraction bool // written with a fraction
	decimal  bool // written with a point
}

// vulgar holds Unicode's fractions of one character, as numerator and denominator.
func vulgar(c rune) (num, den int64, ok bool) {
	switch c {
	case '¼':
		return 1, 4, true
	case '½':
		return 1, 2, true
	case '¾':
		return 3, 4, true
	case '↉':
		return 0, 3, true
	}
	const first, last = '⅐', '⅞' // in Unicode's own order
	table := [...][2]int64{
		{1, 7},
		{1, 9},
		{1, 10},
		{1, 3},
		{2, 3},
		{1, 5},
		{2, 5},
		{3, 5},
		{4, 5},
		{1, 6},
		{5, 6},
		{1, 8},
		{3, 8},
		{5, 8},
		{7, 8},
	}
	if c < first || c > last {
		return 0, 0, false
	}
	f := table[c-first]
	return f[0], f[1], true
}

// number reads a whole number, a decimal, a fraction, or a whole number and a fraction.
func (r *reader) number() (number, error) {
	start := r.at
	whole := r.digits()
	switch c, size := r.peek(); {
	case c == '.':
		r.at += size
		if r.digits() == "" {
			return number{}, r.fault(r.at-1, "a point with no figure after it", "write 12.5, or 12")
		}
		return number{value: ratOf(r.text[start:r.at]), decimal: true}, nil
	case whole != "" && (c == '/' || c == '⁄'):
		r.at = start
		f, err := r.fraction()
		return number{value: f, fraction: true}, err
	case whole == "":
		return r.fractionAlone()
	}
	n := number{value: ratOf(whole)}
	back := r.at
	if c, size := r.peek(); isHyphen(c) {
		r.at += size
	} else {
		r.space()
	}
	if !r.fractionNext() {
		r.at = back
		return n, nil
	}
	f, err := r.fraction()
	if err != nil {
		return number{}, err
	}
	return number{value: n.value.Add(n.value, f), fraction: true}, nil
}

// fractionAlone reads a fraction that begins with neither a figure nor a point.
func (r *reader) fractionAlone() (number, error) {
	c, _ := r.peek()
	switch {
	case r.fractionNext():
		f, err := r.fraction()
		return number{value: f, fraction: true}, err
	case c == 0:
		return number{}, r.fault(r.at, "no number", wantLength)
	case unicode.IsDigit(c):
		return number{}, r.fault(r.at, "a figure that is not 0 to 9, "+Quote(string(c)), "write it with the figures 0 to 9")
	}
	return number{}, r.fault(r.at, Quote(string(c))+" where a number was expected", wantLength)
}

// fractionNext reports whether a fraction, with its slash, stands here.
func (r *reader) fractionNext() bool {
	back := r.at
	defer func() { r.at = back }()
	if c, _ := r.peek(); c == '⅟' {
		return true
	} else if _, _, ok := vulgar(c); ok {
		return true
	}
	if r.digits() == "" {
		return false
	}
	c, _ := r.peek()
	return c == '/' || c == '⁄'
}

// fraction reads a fraction under one.
func (r *reader) fraction() (*big.Rat, error) {
	start := r.at
	c, size := r.peek()
	if num, den, ok := vulgar(c); ok {
		r.at += size
		return big.NewRat(num, den), nil
	}
	num := "1"
	if c == '⅟' { // Unicode's "one over"
		r.at += size
	} else {
		num = r.digits()
		_, slash := r.peek()
		r.at += slash
	}
	den := r.digits()
	if den == "" {
		return nil, r.fault(r.at, "a fraction with nothing under it", "write it whole, such as 7/8")
	}
	n, d := ratOf(num), ratOf(den)
	switch {
	case d.Sign() == 0:
		return nil, r.fault(start, "a fraction over nothing, "+Quote(r.text[start:r.at]), "write what the inch was divided by, such as 7/8")
	case n.Cmp(d) >= 0:
		return nil, r.fault(start, "a fraction of one or more, "+Quote(r.text[start:r.at]), properForm(num, n, d))
	}
	return n.Quo(n, d), nil
}

// properForm offers the fraction n/d as a whole number and a fraction, and
// the readings in which a space was lost.
func properForm(num string, n, d *big.Rat) string {
	whole, part := new(big.Int).QuoRem(n.Num(), d.Num(), new(big.Int))
	want := fmt.Sprintf("write %v %v/%v", whole, part, d.Num())
	if part.Sign() == 0 {
		want = fmt.Sprintf("write %v", whole)
	}
	if len(num) > 4 {
		return want
	}
	for i := 1; i < len(num); i++ {
		if lost := ratOf(num[i:]); num[i] != '0' && lost.Cmp(d) < 0 {
			want += fmt.Sprintf(", or %s %v/%v if a space was lost", num[:i], lost.Num(), d.Num())
		}
	}
	return want
}

// digits reads figures, perhaps none.
func (r *reader) digits() string {
	start := r.at
	for r.at < r.end && r.text[r.at] >= '0' && r.text[r.at] <= '9' {
		r.at++ // one byte: a figure is ASCII
	}
	return r.text[start:r.at]
}

// ratOf returns figures that digits has read as an exact number.
func ratOf(figures string) *big.Rat {
	if strings.HasPrefix(figures, ".") {
		figures = "0" + figures
	}
	v, ok := new(big.Rat).SetString(figures)
	if !ok {
		return new(big.Rat)
	}
	return v
}

// unit reads a unit after n, if there is one.
func (r *reader) unit(n number) (u Unit, stated bool, err error) {
	back := r.at
	r.space()
	start := r.at
	for c, size := r.peek(); unicode.IsLetter(c) || isMark(c); c, size = r.peek() {
		if r.at > start && isMark(c) != isMark(r.before()) {
			break
		}
		r.at += size
	}
	word := r.text[start:r.at]
	if word == "" {
		r.at = back
		return 0, false, nil
	}
	u, err = ParseUnit(word)
	if err != nil {
		want := wantUnit
		if n.decimal || !n.fraction {
			want += " after the number, or nothing"
		}
		return 0, false, r.fault(start, Quote(word)+", which is no unit of length here", want)
	}
	if c, size := r.peek(); c == '.' && !isMark(r.before()) { // an abbreviation: ft. in.
		r.at += size
	}
	return u, true, nil
}

// isMark reports whether c is one of the marks for feet and inches.
func isMark(c rune) bool { return c != 0 && strings.ContainsRune(`'"′″’”‘“`, c) }

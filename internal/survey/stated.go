package survey

import (
	"fmt"
	"strings"
	"unicode"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

// A way is a word for how a dimension is known.
type way struct {
	word  string
	known quantity.Known
}

// ways are the words, strongest first; they are the lines of [evidence] too.
func ways() []way {
	return []way{
		{"measured", quantity.Measured},
		{"iron", quantity.FromIron},
		{"paired", quantity.Paired},
		{"like", quantity.LikeVehicle},
		{"rule", quantity.TradeRule},
		{"guess", quantity.Guess},
	}
}

func wayWords() []string {
	var words []string
	for _, w := range ways() {
		words = append(words, w.word)
	}
	return words
}

// statedSize takes a dimension as a part's line states it: a length, its give
// or take if any, the instrument if any, and how it is known.
func (r *reader) statedSize(v *node, dim parts.Dimension, kind parts.Kind, id string) (Statement, bool) {
	length, known, ok := r.splitKnown(v)
	if !ok {
		return Statement{}, false
	}
	sign := zeroToo
	if dim.Axis != parts.NoAxis {
		sign = positive
	}
	w, ok := r.written(length, sign)
	if !ok {
		return Statement{}, false
	}
	if w.instrument != "" && known == quantity.Unknown {
		known = quantity.Measured
	}
	if known == quantity.Unknown {
		known = quantity.Guess
	}
	r.dimensionPeer(aPart(kind), dim, Reading{At: r.at(v), Value: w.Value})
	return Statement{
		At: r.at(v), Text: dim.Name + " = " + string(v.said()), Known: known,
		Terms:    []Term{{At: r.at(v), Factor: 1, Thing: id, Feature: dim.Name}},
		Constant: -w.Value, Doubt: r.worth(w, r.s.Doubts.Known[known].Value),
	}, true
}

// splitKnown takes the word for how it is known off the end of a dimension.
func (r *reader) splitKnown(v *node) (length *node, known quantity.Known, ok bool) {
	if v.shape != textShape {
		return v, quantity.Unknown, true
	}
	text := strings.TrimRightFunc(v.text, unicode.IsSpace)
	i := strings.LastIndexByte(text, ' ')
	if i < 0 {
		return v, quantity.Unknown, true
	}
	word := text[i+1:]
	for _, w := range ways() {
		// "by rule" is an instrument
		if strings.EqualFold(word, w.word) && !strings.HasSuffix(strings.ToLower(text[:i]), " by") {
			return v.cut(text[:i]), w.known, true
		}
	}
	if !allLetters(word) || strings.HasSuffix(text[:i], " by") {
		return v, quantity.Unknown, true
	}
	if _, err := quantity.ParseUnit(word); err == nil {
		return v, quantity.Unknown, true
	}
	r.fault(v.place(i+1), quote(word)+", which is no unit and no way of knowing", r.meant(word, wayWords(), "write"))
	return v, quantity.Unknown, false
}

func allLetters(s string) bool {
	for _, c := range s {
		if !unicode.IsLetter(c) {
			return false
		}
	}
	return s != ""
}

// cut is the node with only the beginning of its text; places in it stay true.
func (n *node) cut(text string) *node {
	c := *n
	c.text = text
	c.whole = n.wholeText()
	return &c
}

// angle takes degrees: "7 1/8 deg", "7°", or a number.
func (r *reader) angle(v *node) (quantity.Angle, bool) {
	const most = 180
	if v.shape != textShape {
		f, ok := r.number(v, "degrees", -most, most)
		return quantity.Angle(f) * quantity.Degree, ok
	}
	text := strings.TrimSpace(v.text)
	for _, unit := range []string{"degrees", "degree", "deg.", "deg", "°"} {
		if cut, ok := strings.CutSuffix(text, unit); ok {
			text = strings.TrimSpace(cut)
			break
		}
	}
	const want = "write degrees, such as \"7 1/8 deg\""
	if strings.ContainsFunc(text, func(c rune) bool { return unicode.IsLetter(c) || strings.ContainsRune(`'"′″`, c) }) {
		r.fault(v.at, quote(v.text)+" where an angle was expected", want)
		return 0, false
	}
	// The same figures as a length in inches read as so many inches.
	l, err := quantity.ParseLength(text, quantity.Inches)
	if err != nil {
		r.fault(v.at, quote(v.text)+" where an angle was expected", want)
		return 0, false
	}
	if d := l.Inches(); d < -most || d > most {
		r.fault(v.at, fmt.Sprintf("an angle of %.4g degrees", d), "write one from -180 to 180")
		return 0, false
	}
	return quantity.Angle(l.Inches()) * quantity.Degree, true
}

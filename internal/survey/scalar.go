package survey

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
)

// mistaken tells that v is not the sort of value that was expected.
func (r *reader) mistaken(v *node, expected, want string) {
	r.fault(v.at, v.shape.words()+" where "+expected+" was expected", want)
}

// text takes free text. Nothing, and what does not print, is refused.
func (r *reader) text(v *node) (string, bool) {
	if v.shape != textShape {
		want := "put it between quotes"
		if v.shape != listShape && v.shape != groupShape && len(v.raw) <= longestID {
			want = "write it between quotes: \"" + string(v.raw) + "\""
		}
		r.mistaken(v, "text", want)
		return "", false
	}
	if strings.TrimSpace(v.text) == "" {
		r.fault(v.at, "empty text", "write something between the quotes, or take the line away")
		return "", false
	}
	for i, c := range v.text {
		if unicode.IsControl(c) && c != '\n' && c != '\t' && c != '\r' {
			r.fault(v.place(i), fmt.Sprintf("a control character (%#02x) in text", c), "take it out")
			return "", false
		}
	}
	return strings.TrimSpace(v.text), true
}

func (r *reader) yesNo(v *node) (yes, ok bool) {
	if v.shape != yesNoShape {
		r.mistaken(v, "true or false", "write true or false, without quotes")
		return false, false
	}
	return v.text == "true", true
}

// whole takes a whole number from lo to hi.
func (r *reader) whole(v *node, lo, hi int) (int, bool) {
	want := fmt.Sprintf("write a whole number from %d to %d, without quotes", lo, hi)
	if v.shape != wholeShape {
		r.mistaken(v, "a whole number", want)
		return 0, false
	}
	n, err := strconv.ParseInt(strings.ReplaceAll(v.text, "_", ""), 0, 64)
	if err != nil || n < int64(lo) || n > int64(hi) {
		r.fault(v.at, quote(v.text)+", which is out of range", want)
		return 0, false
	}
	return int(n), true
}

// number takes any number from lo to hi. what is it in words: "moisture in percent".
func (r *reader) number(v *node, what string, lo, hi float64) (float64, bool) {
	want := fmt.Sprintf("write %s from %v to %v, without quotes", what, lo, hi)
	if v.shape != wholeShape && v.shape != decimalShape {
		r.mistaken(v, "a number", want)
		return 0, false
	}
	f, ok := figure(v)
	switch {
	case !ok:
		r.fault(v.at, quote(v.text)+", which is no number", want)
		return 0, false
	case f < lo || f > hi:
		r.fault(v.at, quote(v.text)+", which is out of range", want)
		return 0, false
	}
	return f, true
}

// figure returns the value of a number, unless it is none that can be written out.
func figure(v *node) (float64, bool) {
	s := strings.ReplaceAll(v.text, "_", "")
	if v.shape == wholeShape {
		n, err := strconv.ParseInt(s, 0, 64)
		return float64(n), err == nil
	}
	f, err := strconv.ParseFloat(s, 64)
	return f, err == nil && !math.IsInf(f, 0) && !math.IsNaN(f)
}

// word takes one of a list of known words.
func (r *reader) word(v *node, known []string) (string, bool) {
	if v.shape != textShape {
		r.mistaken(v, "a word", "write one of "+listed(quoted(known), "or"))
		return "", false
	}
	for _, k := range known {
		if strings.EqualFold(strings.TrimSpace(v.text), k) {
			return k, true
		}
	}
	want := r.meant(v.text, known, "write")
	if want == "" {
		want = "see the reference for the words that are known"
	}
	r.fault(v.at, quote(v.text)+", which is not known here", want)
	return "", false
}

func quoted(words []string) []string {
	q := make([]string, len(words))
	for i, w := range words {
		q[i] = `"` + w + `"`
	}
	return q
}

// date takes a day, as TOML writes it or the same between quotes.
func (r *reader) date(v *node) (time.Time, bool) {
	const want = "write year, month and day, such as 2026-10-30"
	if v.shape != dateShape && v.shape != textShape {
		r.mistaken(v, "a date", want)
		return time.Time{}, false
	}
	day, err := time.Parse(time.DateOnly, v.text)
	if err != nil || day.Year() < 1000 {
		r.fault(v.at, quote(v.text)+", which is no day of the calendar", want)
		return time.Time{}, false
	}
	return day, true
}

// texts takes a list of texts; one text alone is a list of one.
func (r *reader) texts(v *node) []*node {
	if v.shape == textShape {
		return []*node{v}
	}
	if v.shape != listShape {
		r.mistaken(v, "a list", "write it between [ and ], with a comma between two")
		return nil
	}
	if len(v.items) == 0 && !r.broken {
		return nil
	}
	for _, i := range v.items {
		if i.shape != textShape {
			r.mistaken(i, "text", "put it between quotes")
			return nil
		}
	}
	return v.items
}

// identifier checks an id that names what.
func (r *reader) identifier(at int, id, what string) bool {
	if isID(id) {
		return true
	}
	r.fault(at, quote(id)+", which is no id for "+what, "write a short one: a letter first, then letters, figures and hyphens, such as reach-plate")
	return false
}

// longestID keeps ids, and the names of files made from them, short.
const longestID = 40

func isID(s string) bool {
	if s == "" || len(s) > longestID || !isLetter(s[0]) {
		return false
	}
	return allID(s)
}

// allID reports whether s is letters, figures and hyphens, with no hyphen last.
func allID(s string) bool {
	for i := range len(s) {
		if c := s[i]; !isLetter(c) && (c < '0' || c > '9') && c != '-' {
			return false
		}
	}
	return s != "" && s[len(s)-1] != '-'
}

func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// spoken is an id as people say it: hyphens as spaces, a capital first.
func spoken(id string) string {
	s := strings.ReplaceAll(id, "-", " ")
	return strings.ToUpper(s[:1]) + s[1:]
}

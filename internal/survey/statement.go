package survey

import (
	"strings"

	"lostwood/internal/quantity"
)

// A clause is a piece of a statement and where it begins in its text, in bytes.
type clause struct {
	text string
	at   int
}

func (c clause) trimmed() clause {
	t := strings.TrimLeft(c.text, " \t\u00a0")
	return clause{strings.TrimRight(t, " \t\u00a0"), c.at + len(c.text) - len(t)}
}

const wantStatement = "write it such as \"reach.wide = reach-plate.wide\" or \"slat.wide = 4 ± 1/4\""

// statement takes sum = sum [± doubt].
func (r *reader) statement(v *node, known quantity.Known) (Statement, bool) {
	s := Statement{At: r.at(v), Text: strings.TrimSpace(v.text), Known: known, Doubt: r.s.Doubts.Known[known].Value}
	left, right, ok := strings.Cut(v.text, "=")
	switch {
	case !ok:
		r.fault(v.at, "a statement with no =", wantStatement)
		return s, false
	case strings.Contains(right, "="):
		r.fault(v.place(len(left)+1+strings.Index(right, "=")), "a second = in a statement", "write two statements")
		return s, false
	}
	r1 := clause{right, len(left) + 1}
	if i, mark := doubtMark(right); i >= 0 {
		r1.text = right[:i]
		if s.Doubt, ok = r.statedDoubt(v, clause{right[i+len(mark):], r1.at + i + len(mark)}); !ok {
			return s, false
		}
	}
	if i, _ := doubtMark(left); i >= 0 {
		r.fault(v.place(i), "a give or take before the =", "write it at the end of the statement")
		return s, false
	}
	okL := r.sum(v, clause{left, 0}, 1, &s)
	okR := r.sum(v, r1, -1, &s)
	if !okL || !okR {
		return s, false
	}
	return s, r.meaningful(v, &s)
}

// doubtMark finds where a give or take begins.
func doubtMark(s string) (at int, mark string) {
	at = -1
	for _, m := range []string{"give or take", "+/-", "+/−", "+-", "±"} {
		if i := strings.Index(s, m); i >= 0 && (at < 0 || i < at) {
			at, mark = i, m
		}
	}
	return at, mark
}

func (r *reader) statedDoubt(v *node, c clause) (quantity.Length, bool) {
	c = c.trimmed()
	l, err := quantity.ParseLength(c.text, r.unit())
	switch {
	case err != nil:
		r.lengthFault(v, c.at, err)
		return 0, false
	case l <= 0 || l > furthest:
		r.fault(v.place(c.at), "a give or take of "+quote(c.text), "write how far off it may well be, such as ± 1/16")
		return 0, false
	}
	return l, true
}

// sum takes terms joined by + and -, and adds them to s with a sign.
func (r *reader) sum(v *node, c clause, sign float64, s *Statement) bool {
	ok := true
	for _, t := range terms(c) {
		f := sign
		if t.minus {
			f = -f
		}
		ok = r.term(v, t.clause.trimmed(), f, s) && ok
	}
	return ok
}

// A signed clause is a term and whether a minus stands before it.
type signed struct {
	clause
	minus bool
}

// terms splits a sum at every + and - that has a space on both sides.
func terms(c clause) []signed {
	var list []signed
	from, minus := 0, false
	for i := 1; i < len(c.text); i++ {
		size := 1
		if strings.HasPrefix(c.text[i:], "−") {
			size = len("−")
		} else if c.text[i] != '+' && c.text[i] != '-' {
			continue
		}
		if c.text[i-1] != ' ' || i+size >= len(c.text) || c.text[i+size] != ' ' {
			continue
		}
		if strings.TrimSpace(c.text[from:i]) != "" || len(list) > 0 {
			list = append(list, signed{clause{c.text[from:i], c.at + from}, minus})
		}
		from, minus = i+size, c.text[i] != '+'
	}
	return append(list, signed{clause{c.text[from:], c.at + from}, minus})
}

// term takes a length, THING.FEATURE or N THING.FEATURE.
func (r *reader) term(v *node, c clause, sign float64, s *Statement) bool {
	if c.text == "" {
		r.fault(v.place(c.at), "nothing where a length or a thing's size was expected", wantStatement)
		return false
	}
	i := strings.LastIndexAny(c.text, " \t") + 1
	word := clause{c.text[i:], c.at + i}
	if !looksNamed(word.text) || i > 0 && !strings.ContainsAny(word.text, ".#") {
		if f, rest, ok := strings.Cut(c.text, " "); ok && looksNamed(f) {
			r.fault(v.place(c.at+len(f)), quote(rest)+" straight after "+quote(f), "write + or - between two terms, with a space on both sides")
			return false
		}
		l, err := quantity.ParseLength(c.text, r.unit())
		if err != nil {
			r.lengthFault(v, c.at, err)
			return false
		}
		s.Constant += quantity.Length(sign) * l
		return true
	}
	factor := 1.0
	if i > 0 {
		f, err := quantity.ParseLength(c.text[:i], quantity.Inches)
		if err != nil || strings.ContainsFunc(c.text[:i], isUnitRune) || f <= 0 {
			r.fault(v.place(c.at), quote(strings.TrimSpace(c.text[:i]))+" before "+quote(word.text),
				"write how many times, such as 1/2 reach.wide, or + or - between the two with a space on both sides")
			return false
		}
		factor = f.Inches()
	}
	t, ok := r.named(v, word)
	t.Factor = sign * factor
	s.Terms = append(s.Terms, t)
	return ok
}

func isUnitRune(c rune) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || strings.ContainsRune(`'"′″’”`, c)
}

// looksNamed reports whether a word is meant as THING.FEATURE: a letter first, and no unit.
func looksNamed(w string) bool {
	if w == "" || !isLetter(w[0]) {
		return false
	}
	_, err := quantity.ParseUnit(w)
	return err != nil
}

// named takes THING.FEATURE or THING#HOLE.FEATURE.
func (r *reader) named(v *node, c clause) (Term, bool) {
	t := Term{At: r.src.position(v.place(c.at))}
	thing, feature, ok := strings.Cut(c.text, ".")
	if !ok {
		r.fault(v.place(c.at), quote(c.text)+" with no point", "write the thing, a point, and what of it is meant: reach.wide, sill-plate#3.x")
		return t, false
	}
	thing, hole, holed := strings.Cut(thing, "#")
	t.Thing, t.Feature = thing, feature
	if !isID(thing) {
		r.fault(v.place(c.at), quote(thing)+", which is no id", "write the id of an iron or a part")
		return t, false
	}
	if holed {
		n, ok := r.holeNumber(v, clause{hole, c.at + len(thing) + 1})
		if !ok {
			return t, false
		}
		t.Hole = n
	}
	return t, true
}

// meaningful refuses statements that say nothing.
func (r *reader) meaningful(v *node, s *Statement) bool {
	type what struct {
		thing, feature string
		hole           int
	}
	sum := map[what]float64{}
	for _, t := range s.Terms {
		sum[what{t.Thing, t.Feature, t.Hole}] += t.Factor
	}
	for _, f := range sum {
		if f != 0 {
			return r.withinReach(v, s)
		}
	}
	if len(s.Terms) == 0 {
		r.fault(v.at, "a statement that names no iron and no part", wantStatement)
	} else {
		r.fault(v.at, "a statement with the same on both sides, which says nothing", "mend one side, or take it away")
	}
	return false
}

func (r *reader) withinReach(v *node, s *Statement) bool {
	if s.Constant > furthest || s.Constant < -furthest {
		return r.sensible(v, s.Constant, anySign)
	}
	return true
}

// evidenceKeys are the lines of [evidence]: statements by how they are known.
func evidenceKeys() []key[Survey] {
	examples := map[quantity.Known][2]string{
		quantity.Measured:    {"measured on old wood of the part itself", `["cross-bar-1.wide = 2 1/2"]`},
		quantity.FromIron:    {"read from surviving iron", `["reach.wide = reach-plate.wide"]`},
		quantity.Paired:      {"from the other side, or from another of the row", `["cross-bar-2.wide = cross-bar-1.wide"]`},
		quantity.LikeVehicle: {"from a like vehicle, or an old drawing", `["slat.wide = 4"]`},
		quantity.TradeRule:   {"by a rule of the trade", `["fore-bed.deep = 2 fore-axle.thick"]`},
		quantity.Guess:       {"settled by a guess", `["sand-board.long = 18 ± 2"]`},
	}
	var keys []key[Survey]
	for _, w := range ways() {
		keys = append(keys, key[Survey]{
			name: w.word, means: examples[w.known][0], example: examples[w.known][1],
			take: func(r *reader, v *node, s *Survey) { s.Evidence = append(s.Evidence, r.statements(v, w.known)...) },
		})
	}
	return keys
}

func (r *reader) statements(v *node, known quantity.Known) []Statement {
	var list []Statement
	for _, t := range r.texts(v) {
		if s, ok := r.statement(t, known); ok {
			list = append(list, s)
		}
	}
	return list
}

func (r *reader) evidence(n *node) { readGroup(r, n, "[evidence]", evidenceKeys(), r.s) }

const datumMeans = "What fixes the vehicle in its place: where its middle line is and how high it stands. " +
	"Each statement names one thing. Without it the first thing in the file stands at nothing."

func datumKeys() []key[Survey] {
	return []key[Survey]{{
		name: "zero", example: `["fore-axle.mid-x = 0", "fore-axle.under = 19 3/8"]`,
		means: "statements that hold exactly",
		take: func(r *reader, v *node, s *Survey) {
			for _, t := range r.texts(v) {
				if i, _ := doubtMark(t.text); i >= 0 {
					r.fault(t.place(i), "a give or take in the datum, which holds exactly", "take it away, or put the statement under [evidence]")
					continue
				}
				if st, ok := r.statement(t, quantity.Measured); ok {
					st.Doubt = 0
					s.Datum = append(s.Datum, st)
				}
			}
		},
	}}
}

func (r *reader) datum(n *node) { readGroup(r, n, "[datum]", datumKeys(), r.s) }

const evidenceMeans = "Whatever else is known, as short statements, by how they are known. " +
	"A statement sets one sum equal to another: reach.hind = reach-plate.hind - 1 1/2 ± 1/16. The terms stand with + and - between them, a space on both sides. " +
	"A term is a length, or THING.FEATURE, or so many times that (1/2 reach.wide), or the middle of a hole, THING#HOLE.x. " +
	"A pair or a row means each of it; near-reach and off-reach are its sides, cross-bar-2 the second of its row."

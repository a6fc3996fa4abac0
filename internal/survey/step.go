package survey

import (
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// step takes one thing of a run, or a depth or gap between two:
// "reach-plate#2 worn 1/16", "let 3/4 into reach", "gap 1/8".
func (r *reader) step(v *node) (Step, bool) {
	s := Step{At: r.at(v)}
	text := strings.TrimSpace(v.text)
	lead := strings.Index(v.text, text)
	word, rest, _ := strings.Cut(text, " ")
	c := clause{rest, lead + len(word) + 1}.trimmed()
	switch strings.ToLower(word) {
	case "":
		r.fault(v.at, "nothing between the quotes", "write the id of an iron or a part")
		return s, false
	case "let":
		return s, r.let(v, c, &s)
	case "gap":
		rd, ok := r.between(v, c)
		s.Gap = &rd
		return s, ok
	}
	thing, holes, holed := strings.Cut(word, "#")
	s.Thing = thing
	if !isID(thing) {
		r.fault(v.place(lead), quote(word)+" in a run", "write the id of an iron (with a hole: reach-plate#2) or a part, \"let 3/4 into reach\" or \"gap 1/8\"")
		return s, false
	}
	if holed && !r.stepHoles(v, clause{holes, lead + len(thing) + 1}, &s) {
		return s, false
	}
	return s, c.text == "" || r.worn(v, c, &s)
}

// let takes LENGTH into PART.
func (r *reader) let(v *node, c clause, s *Step) bool {
	depth, into, ok := strings.Cut(c.text, " into ")
	if !ok {
		r.fault(v.at, quote(v.text)+", which does not say into what", "write how deep and which part is cut: \"let 3/4 into reach\"")
		return false
	}
	rd, ok := r.between(v, clause{depth, c.at})
	s.Let = &rd
	s.Into = strings.TrimSpace(into)
	if !isID(s.Into) {
		r.fault(v.place(c.at+len(depth)+len(" into ")), quote(s.Into)+", which is no id", "write the id of the part that is cut")
		return false
	}
	return ok
}

// between takes the length of a let or a gap. It was read with a rule.
func (r *reader) between(v *node, c clause) (Reading, bool) {
	c = c.trimmed()
	rd, err := quantity.ParseReading(c.text, r.unit())
	if err != nil {
		r.lengthFault(v, c.at, err)
		return Reading{}, false
	}
	read := Reading{At: r.src.position(v.place(c.at)), Value: rd.Value, Doubt: r.s.Doubts.Rule.Value}
	if rd.Stated == quantity.DoubtStated {
		read.Doubt = rd.Doubt
	}
	return read, r.sensible(v, rd.Value, positive)
}

// worn takes worn LENGTH.
func (r *reader) worn(v *node, c clause, s *Step) bool {
	word, rest, ok := strings.Cut(c.text, " ")
	if !ok || !strings.EqualFold(word, "worn") {
		r.fault(v.place(c.at), quote(c.text)+" after "+quote(s.Thing), "write each thing between quotes of its own, or \"worn 1/16\" after an iron's hole")
		return false
	}
	l, err := quantity.ParseLength(rest, r.unit())
	if err != nil {
		r.lengthFault(v, c.at+len(word)+1, err)
		return false
	}
	s.Worn = l
	return r.sensible(v, l, positive)
}

// stepHoles takes 2 or 1,3,5.
func (r *reader) stepHoles(v *node, c clause, s *Step) bool {
	at := c.at
	for _, h := range strings.Split(c.text, ",") {
		n, ok := r.holeNumber(v, clause{h, at})
		if !ok {
			return false
		}
		s.Holes = append(s.Holes, n)
		at += len(h) + 1
	}
	return true
}

func (r *reader) holeNumber(v *node, c clause) (int, bool) {
	n, err := strconv.Atoi(strings.TrimSpace(c.text))
	if err != nil || n < 1 || n > mostAlike {
		r.fault(v.place(c.at), quote(c.text)+" as a hole", "count the holes from 1: reach-plate#2, or for a row sill-plate#1,3,5")
		return 0, false
	}
	return n, true
}

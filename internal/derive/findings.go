package derive

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"unicode"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// findings puts into words what contradicts and what nothing determines.
func (a *assembly) findings() {
	for _, e := range a.fit.turned {
		if e.member == nil {
			t := a.network.notes[slices.Min(slices.Collect(maps.Keys(e.values)))]
			a.find(vehicle.Contradiction, t.subject, t.line, e.says)
			continue
		}
		a.find(vehicle.Contradiction, e.member.id, e.member.iron.At.Line, e.says)
	}
	told := map[string]bool{}
	for _, s := range a.fit.suspects {
		if s.of != nil {
			a.find(vehicle.Contradiction, "", s.of.line, s.of.untrue())
			continue
		}
		t := a.network.notes[s.observation]
		says := a.network.doubtful(t, s, a.vehicle.Unit)
		if k := fmt.Sprint(t.line, t.what); t.sort != stated || !told[k] {
			told[k] = true
			a.find(vehicle.Contradiction, t.subject, t.line, says)
		}
	}
}

func (a *assembly) find(c vehicle.Concern, subject string, line int, says string) {
	a.vehicle.Findings = append(a.vehicle.Findings, vehicle.Finding{Concern: c, Subject: subject, Line: line, Says: says})
}

// doubtful says what is wrong with an observation that was set aside.
func (n *network) doubtful(t note, s suspect, u quantity.Unit) string {
	by := quantity.Format(quantity.Length(math.Abs(s.off)), u)
	if s.kept == bothKept {
		return fmt.Sprintf("%s and %s cannot both be: they are %s apart. Nothing tells which is right; the give or take holds both.",
			capital(n.saying(t)), n.saying(n.notes[s.others[0]]), by)
	}
	var says string
	switch {
	case t.sort.assumed():
		says = fmt.Sprintf("It does not hold that %s: the readings are %s against it. It was left out; look which is so.", n.saying(t), by)
	case t.sort == stated:
		says = fmt.Sprintf("%s does not agree with the rest, by %s. It was left out; look where it comes from.", capital(n.saying(t)), by)
	default:
		way := "less"
		if s.off < 0 {
			way = "more"
		}
		says = fmt.Sprintf("%s does not agree with the rest: it would have to be about %s %s%s. It was left out; read it again.",
			capital(n.saying(t)), by, way, slipped(s.off, u))
	}
	return says + n.asWell(s.others)
}

// asWell names what a suspect cannot be told from: readings and statements, then
// assumptions.
func (n *network) asWell(others []int) string {
	var read, held []string
	for _, o := range others {
		if t := n.notes[o]; t.sort.assumed() {
			held = append(held, n.saying(t))
		} else {
			read = append(read, n.saying(t))
		}
	}
	says := ""
	if len(read) > 0 {
		says += fmt.Sprintf(" It could as well be %s.", list(read))
	}
	if len(held) > 0 {
		says += fmt.Sprintf(" Or one of these does not hold: %s.", strings.Join(held, "; "))
	}
	return says
}

// slipped says so where a reading is off by very nearly a whole inch, a foot, or
// ten millimetres: the commonest slips of reading.
func slipped(off float64, u quantity.Unit) string {
	const near = 0.06 * 25.4
	slips := []struct {
		by    quantity.Length
		words string
	}{{quantity.Inch, "an inch"}, {quantity.Foot, "a foot"}}
	if u == quantity.Millimetres || u == quantity.Centimetres {
		slips = []struct {
			by    quantity.Length
			words string
		}{{quantity.Centimetre, "a centimetre"}, {10 * quantity.Centimetre, "ten centimetres"}}
	}
	for _, s := range slips {
		if math.Abs(math.Abs(off)-s.by.Millimetres()) < near {
			return fmt.Sprintf(" (%s slipped, it seems)", s.words)
		}
	}
	return ""
}

// saying names an observation as the subject of a sentence.
func (n *network) saying(t note) string {
	switch t.sort {
	case sizeRead, holeRead, pointRead:
		return "the reading of " + n.label(t)
	case stated:
		return "the statement " + n.label(t)
	}
	return n.label(t)
}

func verb(of []string, one, many string) string {
	if len(of) == 1 {
		return one
	}
	return many
}

// list joins words as people do, and stops where it would tire the reader.
func list(words []string) string {
	const most = 5
	if len(words) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(words[:most], ", "), len(words)-most)
	}
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func (n *network) line(m *member) int {
	if m.iron != nil {
		return m.iron.At.Line
	}
	return m.part.At.Line
}

func nameOf(m *member) string {
	if m.iron != nil {
		return m.iron.Name
	}
	return m.part.Name
}

// lower and capital set the first letter of a name.
func lower(s string) string { return recase(s, unicode.ToLower) }

func capital(s string) string { return recase(s, unicode.ToUpper) }

func recase(s string, to func(rune) rune) string {
	r := []rune(s)
	if len(r) == 0 || len(r) > 1 && unicode.IsUpper(r[1]) {
		return s
	}
	r[0] = to(r[0])
	return string(r)
}

package derive

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// findings puts into words what contradicts and what nothing determines.
func (a *assembly) findings() {
	for _, e := range a.fit.turned {
		a.find(vehicle.Contradiction, e.member.id, e.member.iron.At.Line, e.says)
	}
	for _, s := range a.fit.suspects {
		t := a.network.notes[s.observation]
		says := a.network.doubtful(t, s.off, a.vehicle.Unit)
		for _, o := range s.others {
			says += fmt.Sprintf(" It could as well be %s.", a.network.saying(a.network.notes[o]))
		}
		a.find(vehicle.Contradiction, t.subject, t.line, says)
	}
	for _, d := range a.fit.Free {
		subject, line, says := a.network.open(d)
		a.find(vehicle.Open, subject, line, says)
	}
}

func (a *assembly) find(c vehicle.Concern, subject string, line int, says string) {
	a.vehicle.Findings = append(a.vehicle.Findings, vehicle.Finding{Concern: c, Subject: subject, Line: line, Says: says})
}

// doubtful says what is wrong with an observation that was set aside.
func (n *network) doubtful(t note, off float64, u quantity.Unit) string {
	by := quantity.Format(quantity.Length(math.Abs(off)), u)
	if t.sort.assumed() {
		return fmt.Sprintf("It does not hold that %s: the readings are %s against it. It was left out; look which is so.", n.saying(t), by)
	}
	way := "less"
	if off < 0 {
		way = "more"
	}
	return fmt.Sprintf("%s does not agree with the rest: it would have to be about %s %s. It was left out; read it again.",
		capital(n.saying(t)), by, way)
}

// saying names an observation as people would.
func (n *network) saying(t note) string {
	name := t.subject
	if m := n.byID[t.subject]; m != nil {
		name = words(m)
	}
	switch t.sort {
	case sizeRead:
		return fmt.Sprintf("the reading of how %s the %s is", t.what, name)
	case holeRead:
		return fmt.Sprintf("the reading of the %s's %s", name, t.what)
	case gripRead:
		return fmt.Sprintf("the grip of fastening %s", name)
	case clipRead:
		return fmt.Sprintf("the width of the clip of fastening %s", name)
	case touching:
		return fmt.Sprintf("%s touch at fastening %s", t.what, name)
	case inLine:
		return fmt.Sprintf("%s is in line with fastening %s", t.what, name)
	case central:
		return fmt.Sprintf("fastening %s is in the middle of %s", name, t.what)
	case twin:
		return fmt.Sprintf("the %s is like its near twin (%s)", name, t.what)
	case inRow:
		return fmt.Sprintf("the %s is like the one before it (%s)", name, t.what)
	case midway:
		return fmt.Sprintf("the %s %s", name, t.what)
	}
	return fmt.Sprintf("the statement %q", t.what)
}

// open says what a free direction leaves undetermined, and what would settle it.
func (n *network) open(d adjust.Direction) (subject string, line int, says string) {
	var sizes, places []string
	seen := map[string]bool{}
	way := ""
	for _, p := range d {
		u := n.unknowns[p.Unknown]
		var text string
		switch {
		case u.span != nil:
			text = "fastening " + u.span.fastening.ID
		case u.place:
			text = "the " + lower(nameOf(u.member))
			way = map[string]string{"x": "lengthwise", "y": "across", "z": "up and down"}[u.what]
		default:
			text = fmt.Sprintf("%s of the %s", u.what, lower(nameOf(u.member)))
		}
		if u.span == nil && (subject == "" || !u.place && len(sizes) == 0) {
			subject, line = u.member.base, n.line(u.member)
		}
		if seen[text] {
			continue
		}
		seen[text] = true
		if u.place || u.span != nil {
			places = append(places, text)
		} else {
			sizes = append(sizes, text)
		}
	}
	slices.Sort(sizes)
	slices.Sort(places)
	return subject, line, openWords(sizes, places, way)
}

func openWords(sizes, places []string, way string) string {
	switch {
	case len(sizes) == 0:
		return fmt.Sprintf("Nothing says where %s %s %s: free to slide. Say where an end, an edge or a hole stands.", list(places), verb(places, "stands", "stand"), way)
	case len(sizes) == 1:
		return fmt.Sprintf("Nothing says the %s. Measure it, say what it is flush with, or settle it as a guess.", sizes[0])
	}
	return fmt.Sprintf("Nothing says the %s one without the other. Settle one of them and the rest follows.", list(sizes))
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

package derive

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
)

// evidence names what bears most on an unknown, as strong as known says, in the
// survey's words: "fastening 7, fastening 9 and 3 others".
func (a *assembly) evidence(m *member, u int, known quantity.Known) string {
	if known == quantity.Unknown {
		return "nothing"
	}
	type share struct {
		name string
		of   float64
	}
	byName := map[string]float64{}
	var order []string
	for _, p := range a.fit.Gain(u) {
		t := a.network.notes[p.Unknown]
		if t.known > known || t.sort == frame || t.sort == touching || t.sort == inLine {
			continue
		}
		o := a.network.problem.Observations[p.Unknown]
		name := a.network.source(t, m)
		if _, ok := byName[name]; !ok {
			order = append(order, name)
		}
		byName[name] += (p.Slope * o.Doubt) * (p.Slope * o.Doubt)
	}
	var shares []share
	total := 0.0
	for _, name := range order {
		shares = append(shares, share{name, byName[name]})
		total += byName[name]
	}
	slices.SortStableFunc(shares, func(a, b share) int { return cmp.Compare(b.of, a.of) })
	const told = 2
	var names []string
	rest := 0
	for i, s := range shares {
		switch {
		case s.of < 0.02*total || math.IsNaN(s.of):
		case i < told:
			names = append(names, s.name)
		default:
			rest++
		}
	}
	if rest > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(names, ", "), rest)
	}
	return strings.Join(names, " and ")
}

// source names an observation briefly, as evidence for a member: by the iron or
// fastening that was read, or by what a statement sets it beside.
func (n *network) source(t note, of *member) string {
	name := t.subject
	if m := n.byID[t.subject]; m != nil {
		name = words(m)
	}
	switch t.sort {
	case sizeRead, holeRead, pointRead:
		return name
	case gripRead, clipRead, shearRead, central:
		return "fastening " + name
	case twin:
		return "its twin"
	case inRow:
		return "its row"
	case midway:
		return "the middle line"
	}
	for _, m := range append([]*member{t.member}, t.speaks...) {
		if m.base != of.base {
			return words(m)
		}
	}
	return fmt.Sprintf("stated on line %d", t.line)
}

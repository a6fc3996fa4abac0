package derive

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A gap is what one free direction of the network leaves open, in words.
type gap struct {
	subject       string
	line          int
	sizes, places []string // "how long the reach is"; "the reach"
	ways          []string // "lengthwise", for places
	what          []string // "long", where it is all sizes of one thing alone
	alone         string   // that thing's name
}

// openings puts the free directions into words, the same thing's together.
func (n *network) openings(free []adjust.Direction) []gap {
	var out []gap
	seen := map[string]int{}
	for _, d := range free {
		g := n.gapOf(d)
		k := strings.Join(g.sizes, "|") + "#" + strings.Join(g.places, "|")
		if len(g.sizes) > 0 {
			k = strings.Join(g.sizes, "|") // where it stands goes with its size
		}
		if g.alone != "" {
			k = g.alone
		}
		at, ok := seen[k]
		if !ok {
			seen[k] = len(out)
			out = append(out, g)
			continue
		}
		for _, w := range g.what {
			if !slices.Contains(out[at].what, w) {
				out[at].what = append(out[at].what, w)
			}
		}
		out[at].places = union(out[at].places, g.places)
		for _, w := range g.ways {
			if !slices.Contains(out[at].ways, w) {
				out[at].ways = append(out[at].ways, w)
			}
		}
	}
	return out
}

func (n *network) gapOf(d adjust.Direction) gap {
	var g gap
	add := func(to *[]string, s string) {
		if !slices.Contains(*to, s) {
			*to = append(*to, s)
		}
	}
	for _, p := range d {
		u := n.unknowns[p.Unknown]
		switch {
		case u.span != nil:
			add(&g.places, "fastening "+u.span.fastening.ID)
			if g.line == 0 {
				g.subject, g.line = u.span.fastening.ID, u.span.fastening.At.Line
			}
			add(&g.ways, wayWords[u.what])
			continue
		case u.place:
			add(&g.places, "the "+lower(nameOf(u.member)))
			add(&g.ways, wayWords[u.what])
		default:
			add(&g.sizes, sizeWords(u))
		}
		if !u.place || len(g.sizes) == 0 {
			g.subject, g.line = u.member.base, n.line(u.member)
		}
	}
	slices.Sort(g.sizes)
	slices.Sort(g.places)
	if m := n.aloneIn(d); m != nil && len(g.sizes) <= 1 {
		g.alone = lower(nameOf(m))
		for _, p := range d {
			if u := n.unknowns[p.Unknown]; !u.place && len(g.what) == 0 {
				g.what = append(g.what, u.what)
			}
		}
		if len(g.what) > 0 { // where it stands goes with its size
			g.places, g.ways = nil, nil
		}
	}
	return g
}

// aloneIn is the thing that a free direction is about, where it is about one only.
func (n *network) aloneIn(d adjust.Direction) *member {
	var m *member
	for _, p := range d {
		u := n.unknowns[p.Unknown]
		if u.span != nil || m != nil && u.member.base != m.base {
			return nil
		}
		m = u.member
	}
	return m
}

func union(a, b []string) []string {
	for _, s := range b {
		if !slices.Contains(a, s) {
			a = append(a, s)
		}
	}
	return a
}

var wayWords = map[string]string{"x": "lengthwise", "y": "across", "z": "up and down"}

// sizeWords says an open size as people do.
func sizeWords(u unknown) string {
	name := lower(nameOf(u.member))
	switch u.what {
	case "long", "wide", "deep", "thick", "high":
		return fmt.Sprintf("how %s the %s is", u.what, name)
	}
	if k, ok := strings.CutSuffix(u.what, " across"); ok {
		return fmt.Sprintf("where %s of the %s is across it", k, name)
	}
	if k, ok := strings.CutPrefix(u.what, "hole "); ok {
		return fmt.Sprintf("where hole %s of the %s is", k, name)
	}
	return fmt.Sprintf("the %s of the %s", strings.ReplaceAll(u.what, "-", " "), name)
}

// says is a sentence for the restorer, with what would settle it.
func (g gap) says() string {
	if g.alone != "" {
		return g.saysAlone()
	}
	switch {
	case len(g.sizes) == 1:
		return fmt.Sprintf("Nothing says %s. Measure it, say what it is flush with, or settle it as a guess.", g.sizes[0])
	case len(g.sizes) > 1:
		return fmt.Sprintf("Nothing says %s, the one without the other. Settle one of them and the rest follows.", list(g.sizes))
	}
	way := ""
	if len(g.ways) < 3 {
		way = " " + list(g.ways)
	}
	return fmt.Sprintf("Nothing says where %s %s%s. Say where an end, an edge or a hole stands.",
		list(g.places), verb(g.places, "stands", "stand"), way)
}

// saysAlone is the sentence where a thing's own sizes or place are open:
// "Nothing says how long and wide the reach is, nor where it stands."
func (g gap) saysAlone() string {
	var how, named []string
	for _, w := range g.what {
		switch k, isHole := strings.CutPrefix(w, "hole "); {
		case slices.Contains([]string{"long", "wide", "deep", "thick", "high"}, w):
			how = append(how, w)
		case isHole:
			named = append(named, "where hole "+k+" of the "+g.alone+" is")
		default:
			named = append(named, "the "+strings.ReplaceAll(w, "-", " ")+" of the "+g.alone)
		}
	}
	if len(how) > 0 {
		named = append([]string{"how " + list(how) + " the " + g.alone + " is"}, named...)
	}
	way := ""
	if len(g.ways) > 0 && len(g.ways) < 3 {
		way = " " + list(g.ways)
	}
	switch {
	case len(named) == 0:
		return fmt.Sprintf("Nothing says where the %s stands%s. Say where an end, an edge or a hole stands.", g.alone, way)
	case len(g.ways) > 0:
		return fmt.Sprintf("Nothing says %s, nor where it stands%s. Measure it, say what it is flush with, or settle it as a guess.", list(named), way)
	}
	return fmt.Sprintf("Nothing says %s. Measure it, say what it is flush with, or settle it as a guess.", list(named))
}

// openFindings tells what nothing determines, but for sizes of parts that are
// told of as not to be made.
func (a *assembly) openFindings() {
	told := map[string]bool{}
	for _, g := range a.network.openings(a.fit.Free) {
		says := g.says()
		if !told[says] {
			told[says] = true
			a.find(vehicle.Open, g.subject, g.line, says)
		}
	}
	for _, s := range a.network.spans {
		if s.grip != nil || s.fastening.What == "screw" {
			continue
		}
		if t := a.network.length(a.fit.X, s); a.fit.known(t) == quantity.Unknown {
			name := "fastening " + s.fastening.ID
			if s.fastening.Name != "" {
				name = "the " + lower(s.fastening.Name)
			}
			says := fmt.Sprintf("How long %s must be is not known: the thickness of what it goes through is open.", name)
			if !told[says] {
				told[says] = true
				a.find(vehicle.Open, s.fastening.ID, s.fastening.At.Line, says)
			}
		}
	}
}

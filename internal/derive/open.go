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
		at, ok := seen[k]
		if !ok {
			seen[k] = len(out)
			out = append(out, g)
			continue
		}
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
	return g
}

var wayWords = map[string]string{"x": "lengthwise", "y": "across", "z": "up and down"}

// sizeWords says an open size as people do.
func sizeWords(u unknown) string {
	name := lower(nameOf(u.member))
	switch u.what {
	case "long", "wide", "deep", "thick", "high":
		return fmt.Sprintf("how %s the %s is", u.what, name)
	}
	if k, ok := strings.CutPrefix(u.what, "hole "); ok {
		return fmt.Sprintf("where hole %s of the %s is", k, name)
	}
	return fmt.Sprintf("the %s of the %s", strings.ReplaceAll(u.what, "-", " "), name)
}

// says is a sentence for the restorer, with what would settle it.
func (g gap) says() string {
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

package derive

import (
	"fmt"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A target is a size or a place that can be asked about.
type target struct {
	subject string // "near-reach.deep"
	asks    string // "how deep the near reach is"
	member  *member
	term    adjust.Term
	weight  float64 // how many timbers hang on it, its own among them; 0 for none
}

// targets are what the making hangs on: every wanted size of every timber and
// the place of every piece of work on it. Edges and the like have nothing that
// hangs on them, and are left out.
func (st *Study) targets() []target {
	var out []target
	for _, m := range st.network.members {
		if m.part == nil || m.part.Status == vehicle.LeftOpen {
			continue
		}
		for _, d := range m.sizes {
			t := st.sizeTarget(m, d)
			if t.weight = st.hanging(m, d); t.weight > 0 {
				out = append(out, t)
			}
		}
		bored := st.boredWith(m)
		for _, w := range st.assembly.work(m) {
			for _, t := range st.workTargets(m, w) {
				t.weight = max(float64(bored[w.ref]), 1)
				if len(t.term.Slopes) > 0 {
					out = append(out, t)
				}
			}
		}
	}
	return out
}

func (st *Study) sizeTarget(m *member, d named) target {
	return target{subject: m.id + "." + d.name, asks: asks(m, d.name), member: m, term: adjust.At(st.fit.X, d.unknown)}
}

// asks says a dimension as a question's end: "how deep the near reach is".
func asks(m *member, dimension string) string {
	switch dimension {
	case "long", "wide", "deep", "thick", "high":
		return fmt.Sprintf("how %s %s is", dimension, the(m))
	}
	return fmt.Sprintf("the %s of %s", strings.ReplaceAll(dimension, "-", " "), the(m))
}

// the names a member within a sentence: the near reach, cross bar 2.
func the(m *member) string {
	if m.rows() > 1 {
		return words(m)
	}
	return "the " + words(m)
}

// workTargets are where a piece of work stands on its face, along it and across.
func (st *Study) workTargets(m *member, w work) []target {
	one := func(way string, at func(x []float64) adjust.Term) target {
		t := target{
			subject: fmt.Sprintf("%s.%s %s", m.id, w.ref, way),
			asks:    fmt.Sprintf("where %s stands %s %s", workWords(w), way, the(m)), member: m, term: at(st.fit.X),
		}
		if m.placed() && moves(t.term, m.at[m.axes[0].of]) {
			t.asks += " (from its " + [...]string{"fore", "near", "lower", "first"}[m.run] + " end)"
		}
		return t
	}
	return []target{one("along", w.along), one("across", w.across)}
}

// moves reports whether an unknown moves a function.
func moves(t adjust.Term, unknown int) bool {
	for _, p := range t.Slopes {
		if p.Unknown == unknown {
			return true
		}
	}
	return false
}

// workWords names a piece of work within a sentence.
func workWords(w work) string {
	if strings.HasPrefix(w.ref, "fastening ") {
		return w.ref
	}
	return "the " + w.ref
}

// hanging counts the timbers that hang on a size: the timber itself and those
// bolted to it that way. A timber of a rim stands for all of them. On what a
// part need not have, nothing hangs but bolts through what it makes thinner.
func (st *Study) hanging(m *member, d named) float64 {
	if m.run == vehicle.Round {
		if !required(m.part, d.name) {
			return 0
		}
		return float64(max(m.part.Number, 1) * len(hands(m.part.Sides)))
	}
	others := map[*member]bool{}
	thinned := false
	for _, s := range st.network.spans {
		i := s.stopOf(m)
		if i == none {
			continue
		}
		if d.axis == parts.NoAxis {
			if !st.thins(s, i, d.unknown) {
				continue
			}
			thinned = true
		} else if m.axes[d.axis-1].of != s.axis {
			continue
		}
		for _, p := range s.stops {
			if p.part != nil && p.member != m {
				others[p.member] = true
			}
		}
	}
	if d.axis == parts.NoAxis && !thinned && !required(m.part, d.name) {
		return 0
	}
	return float64(1 + len(others))
}

func required(p *survey.Part, dimension string) bool {
	for _, d := range p.Kind.Dimensions {
		if d.Name == dimension {
			return d.Need == parts.Required
		}
	}
	return false
}

func (s *span) stopOf(m *member) int {
	for i := range s.stops {
		if s.stops[i].member == m {
			return i
		}
	}
	return none
}

// thins reports whether a size changes how thick the timber is at a fastening.
func (st *Study) thins(s *span, stop, unknown int) bool {
	for _, way := range []float64{-1, 1} {
		for _, p := range st.network.falls[side{s, &s.stops[stop], way}].slopes {
			if p.Unknown == unknown {
				return true
			}
		}
	}
	return false
}

// boredWith counts the timbers that each fastening through a timber goes through,
// by what its hole is called on that timber.
func (st *Study) boredWith(m *member) map[string]int {
	out := map[string]int{}
	for _, s := range st.network.spans {
		if s.stopOf(m) == none {
			continue
		}
		n := 0
		for _, p := range s.stops {
			if p.part != nil {
				n++
			}
		}
		out[s.ref(m)] = n
	}
	return out
}

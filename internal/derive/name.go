package derive

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// A NameError is a name that is no size or place of the vehicle.
type NameError struct {
	Name string // as asked for
	Says string // what is wrong and what would do
}

func (e *NameError) Error() string { return e.Says }

// find turns a name such as near-reach.deep into what it asks about: one size or
// place, or two for a piece of work, along its face and across.
func (st *Study) find(name string) ([]target, error) {
	thing, feature, cut := strings.Cut(strings.TrimSpace(name), ".")
	m := st.memberNamed(strings.TrimSpace(thing))
	if m == nil {
		return nil, &NameError{name, fmt.Sprintf("%s is no part or iron of the survey; %s", quoted(thing), st.otherThing(thing))}
	}
	if feature = strings.TrimSpace(feature); !cut || feature == "" {
		has := st.features(m)
		return nil, &NameError{name, fmt.Sprintf("%s is a whole thing; say which of its sizes, such as %s.%s. It has %s",
			the(m), m.id, has[0], strings.Join(has, ", "))}
	}
	if ts := st.targetsNamed(m, feature); len(ts) > 0 {
		return ts, nil
	}
	known := st.features(m)
	hint := survey.Meant(feature, known, "it has")
	if hint == "" {
		hint = "it has " + strings.Join(known, ", ")
	}
	return nil, &NameError{name, fmt.Sprintf("%s has no %s; %s", the(m), quoted(feature), hint)}
}

func quoted(s string) string { return fmt.Sprintf("%q", s) }

// memberNamed finds a timber or iron: by its own id, or the first of its family.
func (st *Study) memberNamed(word string) *member {
	word = vehicle.Slug(word)
	if m := st.network.byID[word]; m != nil {
		return m
	}
	if _, ok := st.network.index.Find(word); ok {
		return st.network.member(word, 0, vehicle.Near)
	}
	for _, m := range st.network.members { // by what people call it
		if word != "" && (word == vehicle.Slug(words(m)) || word == vehicle.Slug(nameOf(m))) {
			return m
		}
	}
	return nil
}

// otherThing says which thing was likely meant.
func (st *Study) otherThing(word string) string {
	var ids, families []string
	for _, m := range st.network.members {
		for _, id := range []string{m.base, m.id} {
			if !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
		if m.part != nil && !slices.Contains(families, m.base) {
			families = append(families, m.base)
		}
	}
	if hint := survey.Meant(vehicle.Slug(word), ids, "there is"); hint != "" {
		return hint
	}
	return "its parts are " + strings.Join(families, ", ")
}

// features are the names of all that can be asked about a member.
func (st *Study) features(m *member) []string {
	var out []string
	for _, d := range m.sizes {
		out = append(out, d.name)
	}
	for k := range m.holes {
		out = append(out, fmt.Sprintf("hole %d", k+1))
	}
	if m.part != nil {
		for _, w := range st.assembly.work(m) {
			out = append(out, w.ref)
		}
	}
	if m.placed() {
		out = append(out, "fore", "hind", "near", "off", "top", "under", "mid-x", "mid-y", "mid-z")
	}
	return out
}

// placeWords are the places that statements know, and what they are called.
func placeWords() map[string]string {
	return map[string]string{
		"fore": "fore end or side", "hind": "hind end or side", "near": "near side or end", "off": "off side or end",
		"top": "top", "under": "underside", "mid-x": "middle, fore and aft,", "mid-y": "middle, across,", "mid-z": "middle, up and down,",
	}
}

// targetsNamed finds a feature of a member.
func (st *Study) targetsNamed(m *member, feature string) []target {
	slug := vehicle.Slug(feature)
	for _, d := range m.sizes {
		if d.name == slug {
			return []target{st.sizeTarget(m, d)}
		}
	}
	for k, u := range m.holes {
		if slug == fmt.Sprintf("hole-%d", k+1) {
			t := st.sizeTarget(m, named{name: fmt.Sprintf("hole %d", k+1), unknown: u})
			t.asks = fmt.Sprintf("where hole %d of %s is (from its %s end)", k+1, the(m), [...]string{"fore", "near", "lower", "first"}[m.run])
			return []target{t}
		}
	}
	if says, ok := placeWords()[slug]; ok && m.placed() {
		return []target{{
			subject: m.id + "." + slug, asks: fmt.Sprintf("where the %s of %s stands", says, the(m)), member: m,
			term: m.feature(st.fit.X, survey.Term{Feature: slug}, m.hand),
		}}
	}
	if m.part == nil {
		return nil
	}
	for _, w := range st.assembly.work(m) {
		if slug != vehicle.Slug(w.ref) {
			continue
		}
		var out []target
		for _, t := range st.workTargets(m, w) {
			if len(t.term.Slopes) > 0 {
				out = append(out, t)
			}
		}
		return out
	}
	return nil
}

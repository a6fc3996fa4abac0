package timber

import (
	"slices"
	"strings"
	"unicode"
)

// Find returns the wood of that name: common, botanical or another it goes by,
// in either case and any order of words (white ash; Ash, white; Elm, American
// (white) for a wood that is called American and white elm). A name of
// several woods gives an *[AmbiguousError], an unknown one an *[UnknownError]
// with the nearest names.
func (c Catalogue) Find(name string) (Species, error) {
	key := nameKey(name)
	var exact, part []Species
	for _, w := range c.woods {
		keys := w.keys()
		switch {
		case slices.Contains(keys, key) || moreThanOneName(keys, key):
			exact = append(exact, w)
		case slices.ContainsFunc(keys, func(k string) bool { return holdsWords(k, key) }):
			part = append(part, w)
		}
	}
	switch {
	case key == "":
		return Species{}, &UnknownError{What: "wood", Name: name}
	case len(exact) == 1:
		return exact[0], nil
	case len(exact) > 1:
		return Species{}, &AmbiguousError{name, fullNames(exact)}
	case len(part) > 1:
		return Species{}, &AmbiguousError{name, fullNames(part)}
	}
	return Species{}, &UnknownError{What: "wood", Name: name, Near: c.nearest(key, part)}
}

func fullNames(woods []Species) []string {
	out := make([]string, len(woods))
	for i, w := range woods {
		out[i] = w.full()
	}
	return out
}

// nearest returns up to three names: those of part, and then those that differ
// from key by the fewest letters, if not by a third of them.
func (c Catalogue) nearest(key string, part []Species) []string {
	type near struct {
		name string
		far  int
	}
	var all []near
	for _, w := range c.woods {
		best := len(key) + 1
		for _, k := range w.keys() {
			best = min(best, lettersApart(key, k))
		}
		if 3*best <= len(key) {
			all = append(all, near{w.Common, best})
		}
	}
	slices.SortStableFunc(all, func(a, b near) int { return a.far - b.far })
	var out []string
	for _, w := range part {
		out = append(out, w.Common)
	}
	for _, n := range all {
		if !slices.Contains(out, n.name) {
			out = append(out, n.name)
		}
	}
	return out[:min(len(out), 3)]
}

// keys are the names of s, each as nameKey makes it.
func (s Species) keys() []string {
	out := []string{nameKey(s.Common), nameKey(s.Botanical)}
	for _, a := range s.Also {
		out = append(out, nameKey(a))
	}
	genus, _, _ := strings.Cut(s.Botanical, " ")
	for i, epithet := range split(s.Botanical, "/") {
		if i > 0 {
			epithet = genus + " " + epithet
		}
		out = append(out, nameKey(epithet))
	}
	return out
}

// nameKey returns the words of a name in small letters and in order, so that
// "Ash, white" and "white ash" are one.
func nameKey(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	slices.Sort(words)
	return strings.Join(words, " ")
}

// moreThanOneName reports whether key is one of the names with nothing more
// than words of the others.
func moreThanOneName(keys []string, key string) bool {
	return holdsWords(strings.Join(keys, " "), key) &&
		slices.ContainsFunc(keys, func(k string) bool { return holdsWords(key, k) })
}

// holdsWords reports whether every word of part is in whole.
func holdsWords(whole, part string) bool {
	words := strings.Fields(whole)
	for _, p := range strings.Fields(part) {
		if !slices.Contains(words, p) {
			return false
		}
	}
	return part != ""
}

// longestName bounds the names that are compared letter by letter.
const longestName = 60

// lettersApart counts the letters to be changed, added or dropped to make one
// name of the other (Levenshtein's distance).
func lettersApart(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > longestName || len(y) > longestName {
		return max(len(x), len(y))
	}
	last := make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		next := make([]int, len(y)+1)
		next[0] = i + 1
		for j := range y {
			swap := last[j]
			if x[i] != y[j] {
				swap++
			}
			next[j+1] = min(swap, last[j+1]+1, next[j]+1)
		}
		last = next
	}
	return last[len(y)]
}

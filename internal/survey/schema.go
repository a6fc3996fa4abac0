package survey

import "strings"

// need says whether a line must be there.
type need int

const (
	may need = iota
	must
)

// A key is one line a thing can have: the reader takes it, and the reference
// page describes it, from here alone.
type key[T any] struct {
	name    string
	also    string // other words people write for it, with spaces between
	means   string // for the reference page
	example string // as it stands after the =
	need    need
	take    func(r *reader, v *node, to *T)
}

// An entry is a key as the reference page shows it.
type entry struct {
	name, means, example string
	need                 need
}

func entries[T any](keys []key[T]) []entry {
	var e []entry
	for _, k := range keys {
		e = append(e, entry{k.name, k.means, k.example, k.need})
	}
	return e
}

// readGroup reads the lines of n into to. What is the thing in words: "an iron".
// It reports whether n was a group at all.
func readGroup[T any](r *reader, n *node, what string, keys []key[T], to *T) bool {
	if n.shape != groupShape {
		r.fault(n.at, n.shape.words()+" where "+what+" was expected", "write it between { and }, such as { "+exampleOf(keys)+" }")
		return false
	}
	for _, l := range n.lines {
		if k := find(keys, l.name); k != nil {
			k.take(r, l.value, to)
			continue
		}
		r.unknownKey(l, what, suggestions(keys))
	}
	for _, k := range keys {
		if k.need == must && n.named[k.name] == nil {
			r.missing(n.at, what+" with no "+quote(k.name), "write "+k.name+" = "+k.example)
		}
	}
	return true
}

func find[T any](keys []key[T], name string) *key[T] {
	for i := range keys {
		if keys[i].name == name {
			return &keys[i]
		}
	}
	return nil
}

// exampleOf shows the lines a thing must have.
func exampleOf[T any](keys []key[T]) string {
	var s []string
	for _, k := range keys {
		if k.need == must {
			s = append(s, k.name+" = "+k.example)
		}
	}
	if len(s) == 0 && len(keys) > 0 {
		s = append(s, keys[0].name+" = "+keys[0].example)
	}
	return strings.Join(s, ", ")
}

// A suggestion is a known name and the other words people write for it.
type suggestion struct{ name, also string }

func suggestions[T any](keys []key[T]) []suggestion {
	var s []suggestion
	for _, k := range keys {
		s = append(s, suggestion{k.name, k.also})
	}
	return s
}

// unknownKey tells of a name that a thing does not have.
func (r *reader) unknownKey(l *line, what string, known []suggestion) {
	var names []string
	for _, k := range known {
		for _, w := range strings.Fields(k.also) {
			if strings.EqualFold(w, l.name) {
				r.fault(l.at, what+" has no "+quote(l.name), "write "+k.name)
				return
			}
		}
		names = append(names, k.name)
	}
	want := r.meant(l.name, names, "write")
	if want == "" {
		want = "see the reference for what it has"
	}
	r.fault(l.at, what+" has no "+quote(l.name), want)
}

// Ways to take a value, each for a place in a T.

func intoText[T any](place func(*T) *string) func(*reader, *node, *T) {
	return func(r *reader, v *node, to *T) {
		if s, ok := r.text(v); ok {
			*place(to) = s
		}
	}
}

func intoWhole[T any](lo, hi int, place func(*T) *int) func(*reader, *node, *T) {
	return func(r *reader, v *node, to *T) {
		if n, ok := r.whole(v, lo, hi); ok {
			*place(to) = n
		}
	}
}

// intoChoice takes one of two things by true and false.
func intoChoice[T, C any](yes, no C, place func(*T) *C) func(*reader, *node, *T) {
	return func(r *reader, v *node, to *T) {
		b, ok := r.yesNo(v)
		switch {
		case ok && b:
			*place(to) = yes
		case ok:
			*place(to) = no
		}
	}
}

// intoWord takes one of a list of words.
func intoWord[T any, W ~string](words []W, place func(*T) *W) func(*reader, *node, *T) {
	return func(r *reader, v *node, to *T) {
		if w, ok := r.word(v, plain(words)); ok {
			*place(to) = W(w)
		}
	}
}

func plain[W ~string](words []W) []string {
	var s []string
	for _, w := range words {
		s = append(s, string(w))
	}
	return s
}

package parts

import (
	"fmt"
	"slices"
	"strings"
)

// Kinds are all kinds of part, by name.
func Kinds() []Kind {
	ks := append(plainKinds(), bolsterKind(), felloeKind(), naveKind(), reachKind(), seatRailKind(), slatKind(), spokeKind())
	slices.SortFunc(ks, func(a, b Kind) int { return strings.Compare(a.Name, b.Name) })
	return ks
}

// An UnknownKindError names a kind of part that there is not.
type UnknownKindError struct {
	Name    string
	Nearest string // what may have been meant
}

// Error reads as a sentence.
func (e *UnknownKindError) Error() string {
	return fmt.Sprintf("there is no kind of part called %q; did you mean %q?", e.Name, e.Nearest)
}

// Find is the kind of that name.
func Find(name string) (Kind, error) {
	var names []string
	for _, k := range Kinds() {
		if k.Name == name {
			return k, nil
		}
		names = append(names, k.Name)
	}
	return Kind{}, &UnknownKindError{Name: name, Nearest: nearest(name, names)}
}

package parts

import (
	"errors"
	"fmt"
	"maps"
	"slices"
)

// A MissingError names a dimension that a part has to have and was not given.
type MissingError struct {
	Part      string
	Dimension string
	Means     string // what it spans
}

// Error reads as a sentence.
func (e *MissingError) Error() string {
	return fmt.Sprintf("%s: %s is missing: %s", e.Part, e.Dimension, e.Means)
}

// An UnknownDimensionError names a dimension that the kind of part does not have.
type UnknownDimensionError struct {
	Part      string
	Dimension string
	Nearest   string // what may have been meant
}

// Error reads as a sentence.
func (e *UnknownDimensionError) Error() string {
	return fmt.Sprintf("%s: it has no dimension %q; did you mean %q?", e.Part, e.Dimension, e.Nearest)
}

// A MeasuredError names a dimension given as the wrong sort of thing: a length
// where a number of pieces is asked.
type MeasuredError struct {
	Part      string
	Dimension string
	Want      Measured
}

// Error reads as a sentence.
func (e *MeasuredError) Error() string {
	want := [...]string{"a length", "a number of pieces", "an angle"}[e.Want]
	return fmt.Sprintf("%s: %s has to be %s", e.Part, e.Dimension, want)
}

// Dimension is the kind's dimension of that name.
func (k Kind) Dimension(name string) (d Dimension, ok bool) {
	i := slices.IndexFunc(k.Dimensions, func(d Dimension) bool { return d.Name == name })
	if i < 0 {
		return Dimension{}, false
	}
	return k.Dimensions[i], true
}

// asked reports what measures lack, and what they have that the kind does not know.
func (k Kind) asked(m Measures) error {
	given := map[string]Measured{}
	for n := range m.Lengths {
		given[n] = InLength
	}
	for n := range m.Counts {
		given[n] = InCount
	}
	for n := range m.Angles {
		given[n] = InDegrees
	}
	var faults []error
	for _, d := range k.Dimensions {
		in, ok := given[d.Name]
		switch {
		case !ok && d.Need == Required:
			faults = append(faults, &MissingError{k.Name, d.Name, d.Means})
		case ok && in != d.In:
			faults = append(faults, &MeasuredError{k.Name, d.Name, d.In})
		}
	}
	for _, n := range slices.Sorted(maps.Keys(given)) {
		if _, ok := k.Dimension(n); !ok {
			faults = append(faults, &UnknownDimensionError{k.Name, n, k.nearest(n)})
		}
	}
	return errors.Join(faults...)
}

func (k Kind) nearest(name string) string {
	names := make([]string, len(k.Dimensions))
	for i, d := range k.Dimensions {
		names[i] = d.Name
	}
	return nearest(name, names)
}

// built wraps the making of a part in the kind's own check of its measures.
func (k Kind) built(make func(Measures) Part) Kind {
	k.Build = func(m Measures) (Part, error) {
		if err := k.asked(m); err != nil {
			return nil, err
		}
		return make(m), nil
	}
	return k
}

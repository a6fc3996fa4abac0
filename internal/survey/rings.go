package survey

import (
	"strconv"
	"strings"

	"lostwood/internal/timber"
)

// ringsKey is the line that says how the growth rings lie.
func ringsKey[T any](means string, place func(*T) **timber.Rings) key[T] {
	return key[T]{
		name: "rings", also: "grain ring", example: `"quarter"`, means: means,
		take: func(r *reader, v *node, to *T) {
			if rings, ok := r.rings(v); ok {
				*place(to) = &rings
			}
		},
	}
}

// rings takes flat, quarter, unknown, or degrees: 30, "30 deg".
func (r *reader) rings(v *node) (timber.Rings, bool) {
	const want = "write flat, quarter, unknown, or the degrees between the rings and the broad face, from 0 to 90, such as \"30 deg\""
	if v.shape != textShape && v.shape != wholeShape && v.shape != decimalShape {
		r.mistaken(v, "the lie of the rings", want)
		return timber.Rings{}, false
	}
	if v.shape == textShape {
		if rings, err := timber.ParseRings(v.text); err == nil {
			return rings, true
		}
		if !strings.ContainsAny(v.text, "0123456789") {
			r.fault(v.at, quote(v.text)+", which does not say how the rings lie", want)
			return timber.Rings{}, false
		}
	}
	a, ok := r.angle(v)
	if !ok {
		return timber.Rings{}, false
	}
	rings, err := timber.ParseRings(strconv.FormatFloat(a.Degrees(), 'g', -1, 64))
	if err != nil {
		r.fault(v.at, quote(string(v.said()))+" where the lie of the rings was expected", want)
	}
	return rings, err == nil
}

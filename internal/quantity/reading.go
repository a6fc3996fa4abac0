package quantity

import (
	"fmt"
	"strings"
)

// Stated says whether a reading came with its own give or take.
type Stated int

// Whether a doubt was written with the value.
const (
	DoubtUnstated Stated = iota
	DoubtStated
)

// A Reading is what a person wrote of one measurement. Doubt is zero where
// none was stated: then how it was measured must say.
type Reading struct {
	Value  Length
	Doubt  Length
	Stated Stated
}

// doubtMarks are the ways a give or take is announced, longest first.
var doubtMarks = [...]string{", give or take", "give or take", "+/-", "+/−", "+-", "±"}

// ParseReading reads a length and, if one follows ±, +/-, +- or the words
// give or take, its doubt: 1 3/4 ± 1/32.
//
// A doubt with no unit is in the value's last written unit, or else in bare.
// Where that would have to be feet or metres the doubt must name its own unit,
// and a doubt in another unit than bare asks for the value's too: 44.5 ± 0.5 mm
// in a survey of inches is refused. A doubt of nothing or less is refused.
// The error is a *[LengthError].
func ParseReading(s string, bare Unit) (Reading, error) {
	at, mark := len(s), ""
	for _, m := range doubtMarks {
		if i := strings.Index(s, m); i >= 0 && i < at {
			at, mark = i, m
		}
	}
	value, err := parseMeasure(s, 0, at, bare)
	if err != nil {
		return Reading{}, err
	}
	if mark == "" {
		return Reading{Value: value.length()}, nil
	}
	doubt, err := parseDoubt(s, at+len(mark), value, bare)
	if err != nil {
		return Reading{}, err
	}
	return Reading{Value: value.length(), Doubt: doubt, Stated: DoubtStated}, nil
}

// parseDoubt reads s from at as the doubt of value.
func parseDoubt(s string, at int, value measure, bare Unit) (Length, error) {
	r := &reader{text: s, at: at, end: len(s)}
	unit := bare
	if n := len(value.units); n > 0 {
		unit = value.units[n-1]
	}
	doubt, err := parseMeasure(s, at, len(s), unit)
	if err != nil {
		return 0, err
	}
	r.space()
	switch {
	case doubt.mm.Sign() <= 0:
		return 0, r.fault(r.at, "a give or take of nothing or less", "write how far off the reading may be, such as 1/32, or leave it out")
	case len(doubt.units) == 0 && (unit == Feet || unit == Metres):
		return 0, r.fault(r.at, fmt.Sprintf("a give or take with no unit after %v", unit), "write its unit too, such as 1/2 in or 5 mm")
	case len(value.units) == 0 && len(doubt.units) > 0 && doubt.units[len(doubt.units)-1] != bare:
		return 0, r.fault(r.at, "a unit on the give or take but none on the reading", "write the unit of both")
	}
	return doubt.length(), nil
}

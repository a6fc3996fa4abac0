package survey

import (
	"strconv"
	"strings"

	"lostwood/internal/vehicle"
)

// Missing tells which of a pair or row are not there and must be made.
type Missing struct {
	At  Position
	All bool
	Of  []Absent
}

// An Absent is one of a pair, of a row, or of a row on one side.
type Absent struct {
	Hand vehicle.Hand // Alike for both sides
	Row  int          // from 1; 0 for the whole row
}

// Lacks reports whether the one of that side and row (from 1) is missing.
func (m Missing) Lacks(hand vehicle.Hand, row int) bool {
	for _, a := range m.Of {
		if (a.Hand == vehicle.Alike || a.Hand == hand) && (a.Row == 0 || a.Row == row) {
			return true
		}
	}
	return m.All
}

const missingMeans = "what of it is not there and must be made: all, near, off, the number of one in a row (2, or near 2), or a list of such. "

func missingKey[T any](means, example string, place func(*T) *Missing) key[T] {
	return key[T]{
		name: "missing", also: "lost gone absent", example: example, means: missingMeans + means,
		take: func(r *reader, v *node, to *T) {
			m := Missing{At: r.at(v)}
			if v.shape != textShape && v.shape != listShape {
				r.mistaken(v, "what is missing", "write missing = \"all\", \"near\", \"off\", or the number of one in a row between quotes")
				return
			}
			for _, text := range r.texts(v) {
				if s, ok := r.text(text); ok {
					r.absent(text, s, &m)
				}
			}
			*place(to) = m
		},
	}
}

// absent takes one of what is missing.
func (r *reader) absent(v *node, text string, m *Missing) {
	var a Absent
	for i, word := range strings.Fields(strings.ToLower(text)) {
		row, err := strconv.Atoi(word)
		switch {
		case word == "all" && i == 0:
			m.All = true
			return
		case word == "near" && i == 0:
			a.Hand = vehicle.Near
		case word == "off" && i == 0:
			a.Hand = vehicle.Off
		case err == nil && row > 0 && a.Row == 0:
			a.Row = row
		default:
			r.fault(v.at, quote(text)+" as what is missing", "write \"all\", \"near\", \"off\", or the number of one in a row: \"2\" or \"near 2\"")
			return
		}
	}
	m.Of = append(m.Of, a)
}

// missingSense refuses what is missing of a thing that has no such one.
func (r *reader) missingSense(m Missing, sides Sides, number int) {
	for _, a := range m.Of {
		switch {
		case a.Hand != vehicle.Alike && sides != Pair:
			r.faultAt(m.At, "the "+a.Hand.String()+" one of a thing that is no pair as missing", "write missing = \"all\", or pair = true if there are two")
		case a.Row > number:
			r.faultAt(m.At, "number "+numbered(a.Row)+" of "+numbered(number)+" as missing", "write a number of those there are")
		}
	}
}

// allMissing looks ahead: what is written of an iron that is not there was never read.
func allMissing(v *node) bool {
	m := v.get("missing")
	return m != nil && m.shape == textShape && strings.EqualFold(strings.TrimSpace(m.text), "all")
}

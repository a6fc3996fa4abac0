package survey

import "strings"

// none marks that there is no such one.
const none = -1

// Taken reports whether there is such a reading: a hole or a grip written as "-" is
// there, but was not read or is not trusted.
func (r Reading) Taken() bool { return r.Doubt > 0 }

// hole takes one hole's place, or "-" for one whose place is not trusted.
func (r *reader) hole(v *node) (Reading, bool) {
	if v.shape == textShape && strings.TrimSpace(v.text) == "-" {
		return Reading{}, true
	}
	s := positive
	if r.middle {
		s = anySign
	}
	return r.reading(v, r.s.Doubts.of(byRule), s)
}

// fromMiddle looks ahead: holes read from the middle can be less than nothing.
func fromMiddle(v *node) bool {
	f := v.get("from")
	return f != nil && f.shape == textShape && strings.EqualFold(strings.TrimSpace(f.text), "middle")
}

// holes takes the places of an iron's holes, which must rise.
func (r *reader) holes(v *node) []Reading {
	if v.shape != listShape {
		r.mistaken(v, "a list of holes", "write them between [ and ], such as [\"1 1/2\", \"15 1/2\"]")
		return nil
	}
	var holes []Reading
	whole := true
	for _, h := range v.items {
		rd, ok := r.hole(h)
		whole = whole && ok
		holes = append(holes, rd)
	}
	before := none
	for i := 0; whole && i < len(holes); i++ {
		if !holes[i].Taken() {
			continue
		}
		if before, i := before, i; before != none && holes[i].Value <= holes[before].Value {
			r.faultAt(holes[i].At, "hole "+numbered(i+1)+" at "+r.show(holes[i].Value)+", which is not beyond hole "+numbered(before+1)+" at "+r.show(holes[before].Value),
				"write the holes in order from one end, each measured from that end")
			return nil
		}
		before = i
	}
	if !whole {
		return nil
	}
	return holes
}

// endHoles refuses holes beyond an iron's end. Its length is in sizes, or else in fallback.
func (r *reader) endHoles(sizes []Size, holes []Reading, fallback []Size) {
	long := sizeNamed(sizes, "long")
	if long == nil {
		long = sizeNamed(fallback, "long")
	}
	if long == nil {
		return
	}
	most := long.Value
	if r.middle {
		most /= 2
	}
	for i, h := range holes {
		if h.Value < most && -h.Value < most {
			continue
		}
		r.faultAt(h.At, "hole "+numbered(i+1)+" at "+r.show(h.Value)+" in an iron "+r.show(long.Value)+" long",
			"see which of the two is wrong, and whether both are in the same unit")
		return
	}
}

func sizeNamed(sizes []Size, name string) *Size {
	for i := range sizes {
		if sizes[i].Name == name {
			return &sizes[i]
		}
	}
	return nil
}

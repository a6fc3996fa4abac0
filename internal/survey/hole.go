package survey

// holes takes the places of an iron's holes, which must rise.
func (r *reader) holes(v *node) []Reading {
	if v.shape != listShape {
		r.mistaken(v, "a list of holes", "write them between [ and ], such as [\"1 1/2\", \"15 1/2\"]")
		return nil
	}
	var holes []Reading
	whole := true
	for _, h := range v.items {
		rd, ok := r.reading(h, r.s.Doubts.of(byRule), positive)
		whole = whole && ok
		holes = append(holes, rd)
	}
	for i := 1; whole && i < len(holes); i++ {
		if holes[i].Value <= holes[i-1].Value {
			r.faultAt(holes[i].At, "hole "+numbered(i+1)+" at "+r.show(holes[i].Value)+", which is not beyond hole "+numbered(i)+" at "+r.show(holes[i-1].Value),
				"write the holes in order from one end, each measured from that end")
			return nil
		}
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
	for i, h := range holes {
		if h.Value < long.Value {
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

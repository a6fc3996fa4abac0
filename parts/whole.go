package parts

import "lostwood/parts/form"

// sound says whether nothing has been found so far.
func (l *limits) sound() bool { return len(l.faults) == 0 }

// stick looks at the body's features one by one and together. A fault in the
// part's own features is told by the dimension it comes from: own gives that by
// what the feature calls it.
func (l *limits) stick(s Stick, own map[string]string) error {
	if !l.sound() {
		return l.all() // features are looked at in a body that can be made
	}
	var faults []error
	for _, f := range s.Features {
		faults = append(faults, taken(f.Check(s.Body))...)
	}
	faults = append(faults, chamfersMeet(s)...)
	told := map[string]bool{} // one dimension may shape several features: once is enough
	for _, e := range faults {
		if f, ok := e.(*LimitError); ok {
			if d, ok := own[f.Dimension]; ok {
				if told[d] {
					continue
				}
				told[d] = true
				named := *f
				named.Dimension = d
				e = &named
			}
		}
		l.add(e)
	}
	return l.all()
}

// chamfersMeet reports chamfers, or roundings, that meet on a face: nothing
// would be left of it between them.
func chamfersMeet(s Stick) []error {
	var faults []error
	for i, a := range s.Features {
		for _, b := range s.Features[:i] {
			e, size, ok := eased(a)
			f, other, also := eased(b)
			if !ok || !also || e == f || (e.Flat != f.Flat && e.Side != f.Side) {
				continue
			}
			outline := shapeOf(s.Body).Plan
			if e.Side == f.Side {
				outline = shapeOf(s.Body).Side
			}
			room := leastSpan(outline)
			most := room - other - .5
			if size == other {
				most = (room - .5) / 2
			}
			if err := within(a.Ref()+" size", size, 0, most, "it would meet "+b.Ref()); err != nil {
				faults = append(faults, err)
			}
		}
	}
	return faults
}

// eased gives the long edge that a feature takes off and how much of the
// faces goes with it.
func eased(f Feature) (Arris, Length, bool) {
	switch f := f.(type) {
	case Chamfer:
		return f.Edge, f.Size, true
	case EasedEdge:
		return f.Edge, f.Radius, true
	}
	return Arris{}, 0, false
}

// leastSpan is how wide an outline is where it is narrowest, its shaped ends
// left out.
func leastSpan(p form.Profile) Length {
	lo, hi := p.Bounds()
	least := hi.Y - lo.Y
	const probes = 16
	for i := 1; i < probes; i++ {
		least = min(least, p.Span(lo.X+(hi.X-lo.X)*Length(i)/probes).Long())
	}
	return least
}

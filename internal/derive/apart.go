package derive

import (
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Apart is how far mark b lies beyond mark a on their axis, with the give or take
// of that distance itself: what both hang on alike does not count in it. It is
// not known where one of the two has no place.
func (st *Study) Apart(a, b vehicle.Mark) quantity.Size {
	from, okA := st.standing(a)
	to, okB := st.standing(b)
	if !okA || !okB || a.Axis != b.Axis {
		return quantity.Size{Doubt: quantity.Length(math.Inf(1)), Known: quantity.Unknown}
	}
	d := to.Minus(from)
	return quantity.Size{Value: quantity.Length(d.Value), Doubt: quantity.Length(st.fit.DoubtOf(d))}
}

// standing is a mark's place.
func (st *Study) standing(k vehicle.Mark) (adjust.Term, bool) {
	x := st.fit.X
	if k.Axis < 0 || k.Axis > 2 {
		return adjust.Term{}, false
	}
	if k.Where == vehicle.MarkLine {
		s := st.spanNamed(k.ID)
		if s == nil || s.line[k.Axis] == none {
			return adjust.Term{}, false
		}
		return adjust.At(x, s.line[k.Axis]), true
	}
	m := st.network.byID[k.ID]
	if m == nil || !m.placed() {
		return adjust.Term{}, false
	}
	switch k.Where {
	case vehicle.MarkLow:
		return m.low(x, k.Axis), true
	case vehicle.MarkHigh:
		return m.high(x, k.Axis), true
	case vehicle.MarkHole:
		if k.Hole < 1 || k.Hole > len(m.holes) {
			return adjust.Term{}, false
		}
		return m.hole(x, k.Hole-1, k.Axis), true
	}
	return m.middle(x, k.Axis), true
}

func (st *Study) spanNamed(id string) *span {
	for _, s := range st.network.spans {
		if s.id == id {
			return s
		}
	}
	return nil
}

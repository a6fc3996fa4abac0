package survey

import "strings"

// grips takes what was read of the grip, for each of the row and each side.
func (r *reader) grips(v *node, number int, sides Sides) [][]Reading {
	want := gripsWanted(number, sides)
	rows := []*node{v}
	if number > 1 {
		if v.shape != listShape || len(v.items) != number {
			r.fault(v.at, gripCount(v)+" for a row of "+numbered(number), want)
			return nil
		}
		rows = v.items
	}
	var all [][]Reading
	for _, row := range rows {
		each := []*node{row}
		if row.shape == listShape {
			each = row.items
		}
		if sides == Pair && len(each) != 2 {
			r.fault(row.at, gripCount(row)+" for a near and off pair", want)
			return nil
		}
		if sides == Single && len(each) != 1 {
			r.fault(row.at, gripCount(row)+" for one fastening", want)
			return nil
		}
		var of []Reading
		for _, g := range each {
			rd, ok := r.grip(g)
			if !ok {
				return nil
			}
			of = append(of, rd)
		}
		all = append(all, of)
	}
	return all
}

func gripCount(v *node) string {
	if v.shape == listShape {
		return counted(len(v.items), "grip")
	}
	return counted(1, "grip")
}

// gripsWanted shows as many grips as there should be.
func gripsWanted(number int, sides Sides) string {
	one := `"7"`
	if sides == Pair {
		one = `["7 1/16", "7"]`
	}
	if number == 1 && sides == Single {
		return "write one, such as grip = " + one
	}
	const shown = 3
	s := one
	if number > 1 {
		s = "[" + strings.Repeat(one+", ", min(number, shown)-1) + one + "]"
		if number > shown {
			s = strings.TrimSuffix(s, "]") + ", ...]"
		}
	}
	what := "write near and off"
	if number > 1 {
		what = "write one for each of the row"
		if sides == Pair {
			what = "write near and off for each of the row"
		}
	}
	return what + ", \"-\" for one not taken, such as grip = " + s
}

// grip takes one grip, or "-" for one not taken.
func (r *reader) grip(v *node) (Reading, bool) {
	if v.shape == textShape && strings.TrimSpace(v.text) == "-" {
		return Reading{}, true
	}
	return r.reading(v, r.s.Doubts.Grip.Value, positive)
}

// eachGrip reads every grip on its own, for what is wrong in it, where it is not
// known how many there should be.
func (r *reader) eachGrip(v *node) {
	switch {
	case v == nil:
	case v.shape == listShape:
		for _, g := range v.items {
			r.eachGrip(g)
		}
	default:
		r.grip(v)
	}
}

// compareGrips puts the grips of one fastening beside each other.
func (r *reader) compareGrips(grips [][]Reading) {
	var first *Reading
	for i := range grips {
		for j := range grips[i] {
			g := &grips[i][j]
			switch {
			case g.Value == 0:
			case first == nil:
				first = g
			default:
				r.sameUnit(*first, *g, "grip of one fastening")
			}
		}
	}
}

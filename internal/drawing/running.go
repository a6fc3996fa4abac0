package drawing

import (
	"cmp"
	"slices"

	"lostwood/internal/sheet"
	"lostwood/parts/form"
)

// A station is one figure of a row of running dimensions: all told from one
// end, each on its own extension line (ISO 129-1, superimposed running dimensions).
type station struct {
	place Length // on paper, along the row
	from  Length // where its extension line starts, across the row
	words string
}

// Room of a row of stations, in millimetres.
const (
	toLine Length = 7   // from the object to the dimension line
	toWord Length = 6   // from there to the words, for lines to spread
	slot   Length = 4.2 // from one line of words to the next
)

// spread sets places apart, so that none is nearer the next than gap, each as near
// as can be to where it belongs. Places are given in order.
func spread(places []Length, gap Length) []Length {
	type group struct {
		sum   Length // of where its members would put its first
		n     int
		first Length
	}
	var groups []group
	for i, p := range places {
		g := group{sum: p - Length(i)*gap, n: 1}
		g.first = g.sum
		groups = append(groups, g)
		for k := len(groups) - 1; k > 0 && groups[k-1].first > groups[k].first; k-- {
			groups[k-1].sum += groups[k].sum
			groups[k-1].n += groups[k].n
			groups[k-1].first = groups[k-1].sum / Length(groups[k-1].n)
			groups = groups[:k]
		}
	}
	var out []Length
	for _, g := range groups {
		for range g.n {
			out = append(out, g.first+Length(len(out))*gap)
		}
	}
	return out
}

// longest is how long the longest of the stations' words runs.
func (b board) longest(all []station) Length {
	most := Length(0)
	for _, s := range all {
		most = max(most, b.letters.Width(s.words, small, sheet.Plain))
	}
	return most
}

// rowHigh is the room that a row takes up beside its object; 0 for none.
func (b board) rowHigh(all []station) Length {
	if len(all) == 0 {
		return 0
	}
	return toLine + toWord + 1 + b.longest(all)
}

// ordered puts stations in order and drops those that say the same at one place.
func ordered(all []station) []station {
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(a, b station) int {
		return cmp.Or(cmp.Compare(a.place, b.place), cmp.Compare(a.words, b.words))
	})
	return slices.CompactFunc(all, func(a, b station) bool { return a.place == b.place && a.words == b.words })
}

func slots(all []station) []Length {
	places := make([]Length, len(all))
	for i, s := range all {
		places[i] = s.place
	}
	return spread(places, slot)
}

// rowAbove draws stations on a level line at y above their object, told from zero.
func (b board) rowAbove(zero, zeroFrom, y Length, all []station) {
	all = ordered(append([]station{{zero, zeroFrom, "0"}}, all...))
	b.Circle(sheet.Narrow, at(zero, y), 0.9)
	set := slots(all)
	last := zero
	for i, s := range all {
		b.Straight(sheet.Narrow, at(s.place, s.from+clear), at(s.place, y+1))
		b.Poly(sheet.Narrow, at(s.place, y+1), at(set[i], y+toWord))
		b.upward(at(set[i]+small/2, y+toWord+1), s.words, small, sheet.Plain)
		b.mark(s.place-last, func() { b.arrow(at(s.place, y), 1, 0) }, at(s.place, y), s.place > zero)
		last = s.place
	}
	b.Straight(sheet.Narrow, at(zero, y), at(last, y))
}

// rowBeside draws stations on an upright line at x to the right of their object.
func (b board) rowBeside(zero, zeroFrom, x Length, all []station) {
	all = ordered(append([]station{{zero, zeroFrom, "0"}}, all...))
	b.Circle(sheet.Narrow, at(x, zero), 0.9)
	set := slots(all)
	last := zero
	for i, s := range all {
		b.Straight(sheet.Narrow, at(s.from+clear, s.place), at(x+1, s.place))
		b.Poly(sheet.Narrow, at(x+1, s.place), at(x+toWord, set[i]))
		b.say(at(x+toWord+1, set[i]-small/2), s.words, small, sheet.Plain)
		b.mark(s.place-last, func() { b.arrow(at(x, s.place), 0, 1) }, at(x, s.place), s.place > zero)
		last = s.place
	}
	b.Straight(sheet.Narrow, at(x, zero), at(x, last))
}

// mark draws an arrow where there is room for one since the last, a dot where not.
func (b board) mark(room Length, arrow func(), p form.Point, wanted bool) {
	switch {
	case !wanted:
	case room >= 1.6*arrowLong:
		arrow()
	default:
		b.Circle(sheet.Black, p, 0.45)
	}
}

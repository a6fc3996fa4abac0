package parts

import "lostwood/parts/form"

// leaning is a coned piece's outline where its sides do not show: seen square on the
// back or belly, or on an end. Its edges are straight from side to side but for what
// the gap bends them, which is less than a thousandth of a millimetre.
func (a Arc) leaning(f Face) form.Profile {
	c := a.Centre()
	reach := func(y Length) Length { r := a.backAt(y); return a.at(r, a.half(r)).X - c.X }
	low := func(y Length) Length { r := a.bellyAt(y); return a.at(r, a.half(r)).Y }
	first, last := Length(0), a.Wide
	if f == Under || f == FirstEnd { // their paper has y the other way
		first, last = last, first
	}
	if f.isEnd() {
		return form.Polygon(
			form.Point{X: 0, Y: low(first)}, form.Point{X: a.Wide, Y: low(last)},
			form.Point{X: a.Wide, Y: c.Y + a.backAt(last)}, form.Point{X: 0, Y: c.Y + a.backAt(first)})
	}
	return form.Polygon(
		form.Point{X: c.X - reach(first), Y: 0}, form.Point{X: c.X + reach(first), Y: 0},
		form.Point{X: c.X + reach(last), Y: a.Wide}, form.Point{X: c.X - reach(last), Y: a.Wide})
}

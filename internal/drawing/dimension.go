package drawing

import (
	"lostwood/internal/sheet"
	"lostwood/parts/form"
)

// Sizes on paper of what belongs to a dimension, in millimetres (ISO 129-1).
const (
	arrowLong Length = 2.5
	arrowHalf Length = 0.42 // of its width: about 20 degrees
	clear     Length = 0.8  // from an outline to its extension line
	past      Length = 1.5  // of an extension line past the dimension line
	above     Length = 1.35 // from a dimension line to its figure
)

// arrow draws a closed, filled head with its point at p, coming along a direction.
func (b board) arrow(p form.Point, dx, dy Length) {
	back := at(p.X-arrowLong*dx, p.Y-arrowLong*dy)
	b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Black, Closed: true, Run: form.Polygon(
		p, at(back.X-arrowHalf*dy, back.Y+arrowHalf*dx), at(back.X+arrowHalf*dy, back.Y-arrowHalf*dx))})
}

// level draws a dimension from x0 to x1 on a line at y below its object, whose
// edges there end at the heights from0 and from1.
func (b board) level(x0, x1, y, from0, from1 Length, figure string) {
	b.extend(at(x0, from0), at(x0, y))
	b.extend(at(x1, from1), at(x1, y))
	long := b.letters.Width(figure, small, sheet.Plain)
	word := at((x0+x1-long)/2, y+above)
	from, to := x0, x1
	if x1-x0 < long+2 {
		word.X = x1 + arrowLong + 1.5
		to = word.X + long
	}
	if x1-x0 < 4*arrowLong {
		b.arrow(at(x0, y), 1, 0)
		b.arrow(at(x1, y), -1, 0)
		from = x0 - 2*arrowLong
		to = max(to, x1+2*arrowLong)
	} else {
		b.arrow(at(x0, y), -1, 0)
		b.arrow(at(x1, y), 1, 0)
	}
	b.Straight(sheet.Narrow, at(from, y), at(to, y))
	b.say(word, figure, small, sheet.Plain)
}

// upright draws a dimension from y0 to y1 on a line at x, beside its object,
// whose edges there end at from0 and from1.
func (b board) upright(y0, y1, x, from0, from1 Length, figure string) {
	b.extend(at(from0, y0), at(x, y0))
	b.extend(at(from1, y1), at(x, y1))
	long := b.letters.Width(figure, small, sheet.Plain)
	word := at(x-above, (y0+y1-long)/2)
	from, to := y0, y1
	if y1-y0 < long+2 {
		word.Y = y1 + arrowLong + 1.5
		to = word.Y + long
	}
	if y1-y0 < 4*arrowLong {
		b.arrow(at(x, y0), 0, 1)
		b.arrow(at(x, y1), 0, -1)
		from = y0 - 2*arrowLong
		to = max(to, y1+2*arrowLong)
	} else {
		b.arrow(at(x, y0), 0, -1)
		b.arrow(at(x, y1), 0, 1)
	}
	b.Straight(sheet.Narrow, at(x, from), at(x, to))
	b.upward(word, figure, small, sheet.Plain)
}

// uprightReach is how far a dimension's figure may stand past its object.
func (b board) uprightReach(high Length, figure string) Length {
	if long := b.letters.Width(figure, small, sheet.Plain); high < long+2 {
		return arrowLong + 1.5 + long
	}
	return 0
}

// extend draws an extension line from an outline to a little past a dimension line.
func (b board) extend(from, to form.Point) {
	switch {
	case from.X == to.X && to.Y < from.Y:
		b.Straight(sheet.Narrow, at(from.X, from.Y-clear), at(to.X, to.Y-past))
	case from.X == to.X:
		b.Straight(sheet.Narrow, at(from.X, from.Y+clear), at(to.X, to.Y+past))
	case to.X < from.X:
		b.Straight(sheet.Narrow, at(from.X-clear, from.Y), at(to.X-past, to.Y))
	default:
		b.Straight(sheet.Narrow, at(from.X+clear, from.Y), at(to.X+past, to.Y))
	}
}

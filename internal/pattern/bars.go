package pattern

import (
	"fmt"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// barHigh is how thick a check bar is.
const barHigh Length = 2.4

// slimBar is how thick the upright ones are.
const slimBar Length = 1.8

// barLetters is the height of the words at the bars.
const barLetters Length = 1.8

// bar is a check bar to the right from a point, black to its very ends, in so
// many steps, with its words over it.
func (l *layout) bar(at form.Point, long Length, steps int, words string) outline.Drawing {
	d := chequers(at, form.Point{X: long / Length(steps)}, form.Point{Y: barHigh / 2}, steps)
	d.Texts = append(d.Texts, l.fitted(form.Point{X: at.X, Y: at.Y + barHigh + 0.7}, words, barLetters, outline.Plain, long))
	return d
}

// barWords stand over the 100 mm bar of every sheet.
func barWords(p Printer) string {
	if p.true() {
		return "100 mm: measure the bars both ways before you saw"
	}
	return fmt.Sprintf("put right for bars of %s: must now measure 100 mm", p.words())
}

// uprightBars are the 100 mm and the 4 in bar up the left of every sheet, their
// words between them.
func (l *layout) uprightBars(at form.Point) outline.Drawing {
	const apart = 6.8
	d := chequers(at, form.Point{Y: 10}, form.Point{X: slimBar / 2}, 10)
	d.Add(chequers(form.Point{X: at.X + apart, Y: at.Y}, form.Point{Y: 4 * quantity.Inch / 8}, form.Point{X: slimBar / 2}, 8))
	for i, words := range []string{"mm", "100"} {
		d.Texts = append(d.Texts, l.fitted(form.Point{X: at.X + slimBar + 0.4, Y: at.Y + Length(i)*3}, words, barLetters, outline.Plain, apart-slimBar-0.8))
	}
	for i, words := range []string{"in", "4"} {
		t := l.text(form.Point{Y: at.Y + 12 + Length(i)*3}, words, barLetters, outline.Plain)
		t.At.X = at.X + apart - 0.4 - t.Width
		d.Texts = append(d.Texts, t)
	}
	return d
}

// chequers are two rows of blocks, filled by turns, so that one of the two is
// black at each end.
func chequers(at, step, across form.Point, steps int) outline.Drawing {
	var d outline.Drawing
	for i := range steps {
		side := Length(i % 2)
		a := form.Point{X: at.X + step.X*Length(i) + across.X*side, Y: at.Y + step.Y*Length(i) + across.Y*side}
		d.Rect(guide(), outline.Solid, outline.Spanning(a, form.Point{X: a.X + step.X + across.X, Y: a.Y + step.Y + across.Y}))
	}
	return d
}

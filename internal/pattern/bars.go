package pattern

import (
	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// barHigh is how thick a check bar is.
const barHigh Length = 2.4

// bar is a check bar to the right from a point, black to its very ends, in so
// many steps, with its words over it.
func (l *layout) bar(at form.Point, long Length, steps int, words string) outline.Drawing {
	d := chequers(at, form.Point{X: long / Length(steps)}, form.Point{Y: barHigh / 2}, steps)
	d.Texts = append(d.Texts, l.text(form.Point{X: at.X, Y: at.Y + barHigh + 0.7}, words, 1.8, outline.Plain))
	return d
}

// uprightBar is the 100 mm bar up the left of every sheet.
func (l *layout) uprightBar(at form.Point) outline.Drawing {
	d := chequers(at, form.Point{Y: 10}, form.Point{X: barHigh / 2}, 10)
	for i, words := range []string{"mm", "100"} {
		d.Texts = append(d.Texts, l.fitted(form.Point{X: at.X + barHigh + 0.6, Y: at.Y + Length(i)*3}, words, 1.8, outline.Plain, 5.5))
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

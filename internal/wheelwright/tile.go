package wheelwright

import (
	"fmt"
	"math"

	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// A Sheet is one drawing at full size, cut over as many pages as it takes.
type Sheet struct {
	Name  string // "nave: turning template"
	Means string // how it is used, a sentence or two
	outline.Drawing
	// Check is a length to measure over the joined sheets, from one place to another.
	Check [2]form.Point
}

// A grid is how a drawing is cut: its lower left corner, the step from page to
// page, and how many there are.
type grid struct {
	low          form.Point
	wide, high   Length // of a page's window
	cols, rows   int
	stepX, stepY Length
}

func (p *press) grid(b outline.Box) grid {
	const beside = 6 // room round the drawing for words
	g := grid{
		low:  form.Point{X: b.Min.X - beside, Y: b.Min.Y - beside},
		wide: Length(p.wide()-2*margin-8) / p.growth.X, high: Length(p.high()-margin-foot-6) / p.growth.Y,
	}
	g.stepX, g.stepY = g.wide-lap, g.high-lap
	over := func(size, window, step Length) int {
		return 1 + max(0, int(math.Ceil(float64((size-window)/step)-1e-9)))
	}
	g.cols = over(b.Max.X-b.Min.X+2*beside, g.wide, g.stepX)
	g.rows = over(b.Max.Y-b.Min.Y+2*beside, g.high, g.stepY)
	return g
}

func (g grid) window(row, col int) outline.Box {
	low := form.Point{X: g.low.X + Length(col)*g.stepX, Y: g.low.Y + Length(row)*g.stepY}
	return outline.Box{Min: low, Max: form.Point{X: low.X + g.wide, Y: low.Y + g.high}}
}

// sheet prints a drawing, page after page; pages with nothing on them are left out.
func (p *press) sheet(s Sheet) {
	b, ok := s.Bounds()
	if !ok {
		return
	}
	g := p.grid(b)
	type place struct{ row, col int }
	var needed []place
	for r := range g.rows {
		for c := range g.cols {
			if shows(s.Drawing, g.window(r, c)) {
				needed = append(needed, place{r, c})
			}
		}
	}
	for i, n := range needed {
		p.tile(s, g, n.row, n.col, fmt.Sprintf("%d of %d", i+1, len(needed)))
	}
}

func shows(d outline.Drawing, w outline.Box) bool {
	for _, t := range d.Paths {
		for _, s := range t.Segments() {
			if s.Crosses(w) {
				return true
			}
		}
	}
	for _, c := range d.Circles {
		if outline.Around(c.Centre, c.Diameter/2).Meets(w) {
			return true
		}
	}
	return false
}

func (p *press) tile(s Sheet, g grid, row, col int, counted string) {
	p.doc.AddPage()
	p.counted++
	w := g.window(row, col)
	v := view{low: w.Min, x: margin + 8, y: foot}
	x, y := p.on(v, form.Point{X: w.Min.X, Y: w.Max.Y})
	p.doc.ClipRect(x, y, float64(g.wide*p.growth.X), float64(g.high*p.growth.Y), false)
	p.drawing(v, s.Drawing)
	p.joins(v, g, row, col, w)
	p.doc.ClipEnd()
	letter := fmt.Sprintf("%c%d", 'A'+row%26, col+1)
	p.words(p.wide()-margin-14, p.high()-17, letter, "B", 17)
	p.words(margin+118, p.high()-15, s.Name, "B", 9)
	p.words(margin+118, p.high()-11, fmt.Sprintf("%s · %s", p.s.Vehicle, p.s.Name), "", 7.5)
	p.words(margin+118, p.high()-7.5, fmt.Sprintf("issue %s · sheet %s · full size: measure both bars", p.s.Issue, counted), "", 7.5)
	p.barsOf()
}

// joins are dotted where the next sheets begin, with crosses to bring them together.
func (p *press) joins(v view, g grid, row, col int, w outline.Box) {
	var d outline.Drawing
	layer := outline.Layer{Role: outline.Guide}
	upright := func(x Length) {
		d.Line(layer, outline.Join, form.Point{X: x, Y: w.Min.Y}, form.Point{X: x, Y: w.Max.Y})
		for _, t := range []Length{.25, .75} {
			y := w.Min.Y + g.high*t
			d.Line(layer, outline.Thin, form.Point{X: x - 4, Y: y}, form.Point{X: x + 4, Y: y})
		}
	}
	level := func(y Length) {
		d.Line(layer, outline.Join, form.Point{X: w.Min.X, Y: y}, form.Point{X: w.Max.X, Y: y})
		for _, t := range []Length{.25, .75} {
			x := w.Min.X + g.wide*t
			d.Line(layer, outline.Thin, form.Point{X: x, Y: y - 4}, form.Point{X: x, Y: y + 4})
		}
	}
	if col+1 < g.cols {
		upright(w.Max.X - lap/2)
	}
	if col > 0 {
		upright(w.Min.X + lap/2)
	}
	if row+1 < g.rows {
		level(w.Max.Y - lap/2)
	}
	if row > 0 {
		level(w.Min.Y + lap/2)
	}
	p.drawing(v, d)
}

// barsOf are 100 mm both ways, and 4 in under the level one.
func (p *press) barsOf() {
	var d outline.Drawing
	layer := outline.Layer{Role: outline.Guide}
	bar := func(a, b form.Point, tick form.Point) {
		d.Line(layer, outline.Thin, a, b)
		for _, e := range []form.Point{a, b} {
			d.Line(layer, outline.Thin, form.Point{X: e.X - tick.X, Y: e.Y - tick.Y}, form.Point{X: e.X + tick.X, Y: e.Y + tick.Y})
		}
	}
	bar(form.Point{X: 0, Y: 16}, form.Point{X: 100, Y: 16}, form.Point{Y: 1.6})
	bar(form.Point{X: 0, Y: 8.5}, form.Point{X: 101.6, Y: 8.5}, form.Point{Y: 1.6})
	bar(form.Point{X: -5, Y: 24}, form.Point{X: -5, Y: 124}, form.Point{X: 1.6})
	d.Texts = append(
		d.Texts,
		outline.Text{At: form.Point{X: 35, Y: 17}, Height: 2, Words: "100 mm"},
		outline.Text{At: form.Point{X: 35, Y: 9.5}, Height: 2, Words: "4 in"},
		outline.Text{At: form.Point{X: -4, Y: 126}, Height: 2, Words: "100 mm"},
	)
	p.drawing(view{x: margin + 6, y: 0}, d)
}

package pattern

import (
	"fmt"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A grid cuts a drawing into sheets. Sheet row r, column c shows the window
// [x - overlap, x + stepX] by [y - overlap, y + stepY] with x = Left + c*StepX
// and y = Top - (r+1)*StepY: what it shares with its neighbours to the left and
// below lies under them once they are joined.
type grid struct {
	left, top    Length // the first joint would stand at left + stepX
	stepX, stepY Length
	round        Length // what joints along x are a multiple of; 0 where they are odd figures
	cols, rows   int
	page         form.Point // the sheet's own width and height
}

// A turn says which way up a sheet is used.
type turn int

const (
	flat turn = iota // long side along the wood
	tall
)

// pageFor is the size of the sheets that a box is cut into, as they measure when
// printed: a roll is as long as the box, or as a page can be.
func pageFor(p Paper, way turn, box outline.Box) form.Point {
	const leastLong = leastFoot + 25
	g := p.Printer.growth(way)
	switch p.Feed {
	case unbounded:
		return form.Point{
			X: max(leastLong, box.Width()+2*bare+barWide+1),
			Y: max(150, box.Height()+2*bare+stripHigh+1),
		}
	case Roll:
		return form.Point{X: min(longestRoll, max(leastLong, box.Width()+2*bare+barWide+1)), Y: p.Width / g.Y}
	}
	if way == tall {
		return form.Point{X: p.Width / g.X, Y: p.Height / g.Y}
	}
	return form.Point{X: p.Height / g.X, Y: p.Width / g.Y}
}

// gridOn lays sheets of one size over a box. Joints stand at the roundest figures
// from the first end that take no more sheets.
func gridOn(page form.Point, box outline.Box, unit quantity.Unit) grid {
	g := grid{
		left: box.Min.X + overlap, top: box.Max.Y, page: page,
		stepX: page.X - 2*bare - barWide - overlap,
		stepY: page.Y - 2*bare - stripHigh - overlap,
	}
	g.cols, g.rows = count(box.Max.X-g.left, g.stepX), count(g.top-box.Min.Y-overlap, g.stepY)
	for _, round := range roundSteps(unit) {
		r := g
		r.stepX, r.left = floorTo(g.stepX, round), floorTo(g.left, round)
		if r.stepX > 0 && count(box.Max.X-r.left, r.stepX) <= g.cols {
			r.round = round
			return r
		}
	}
	return g
}

// roundSteps are what joints had best stand a multiple of, roundest first.
func roundSteps(unit quantity.Unit) []Length {
	if unit == quantity.Inches || unit == quantity.Feet {
		return []Length{quantity.Inch / 2, quantity.Inch / 4, quantity.Inch / 8, quantity.Inch / 16}
	}
	return []Length{10, 5, 1}
}

func count(room, step Length) int {
	n := 1
	for Length(n)*step < room {
		n++
	}
	return n
}

func floorTo(l, step Length) Length {
	n := Length(int(l / step))
	if n*step > l {
		n--
	}
	return n * step
}

// core is the part of the drawing that only this sheet is to show.
func (g grid) core(row, col int) outline.Box {
	x, y := g.left+Length(col)*g.stepX, g.top-Length(row+1)*g.stepY
	b := outline.Box{Min: form.Point{X: x, Y: y}, Max: form.Point{X: x + g.stepX, Y: y + g.stepY}}
	if col == 0 {
		b.Min.X -= overlap
	}
	if row == g.rows-1 {
		b.Min.Y -= overlap
	}
	return b
}

// window is all that a sheet shows of the drawing.
func (g grid) window(row, col int) outline.Box {
	x, y := g.left+Length(col)*g.stepX, g.top-Length(row+1)*g.stepY
	return outline.Box{
		Min: form.Point{X: x - overlap, Y: y - overlap},
		Max: form.Point{X: x + g.stepX, Y: y + g.stepY},
	}
}

// onPage is where the window's lower left corner stands on the sheet.
func (g grid) onPage() form.Point { return form.Point{X: bare + barWide, Y: bare + stripHigh} }

// letter names a sheet: rows by letter, columns by number.
func letter(row, col int) string {
	s := ""
	for n := row; ; n = n/26 - 1 {
		s = string(rune('A'+n%26)) + s
		if n < 26 {
			break
		}
	}
	return fmt.Sprintf("%s%d", s, col+1)
}

// folds are the joining lines, from end to end of the sheets.
func (g grid) folds() []outline.Segment {
	var s []outline.Segment
	all := g.all()
	for c := 1; c < g.cols; c++ {
		x := g.left + Length(c)*g.stepX
		s = append(s, outline.Segment{A: form.Point{X: x, Y: all.Min.Y}, B: form.Point{X: x, Y: all.Max.Y}})
	}
	for r := 1; r < g.rows; r++ {
		y := g.top - Length(r)*g.stepY
		s = append(s, outline.Segment{A: form.Point{X: all.Min.X, Y: y}, B: form.Point{X: all.Max.X, Y: y}})
	}
	return s
}

// joints are strips along the joining lines, where words had better not stand.
func (g grid) joints() []outline.Box {
	var b []outline.Box
	for _, s := range g.folds() {
		b = append(b, outline.Box{
			Min: form.Point{X: s.A.X - overlap, Y: s.A.Y - overlap},
			Max: form.Point{X: s.B.X + 2, Y: s.B.Y + 2},
		})
	}
	return b
}

// all is every sheet together.
func (g grid) all() outline.Box { return g.window(0, 0).With(g.window(g.rows-1, g.cols-1)) }

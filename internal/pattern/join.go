package pattern

import (
	"slices"

	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// joins draws the joining lines of one sheet with their diamonds, in the
// drawing's own frame. Each diamond stands across a joining line and is drawn on
// both sheets: half of it on the sheet that is trimmed there, the whole on the
// one that lies under. Any mis-join breaks it, along the line or across.
func (l *layout) joins(row, col int) outline.Drawing {
	var d outline.Drawing
	w := l.grid.window(row, col)
	if c := col + 1; l.printed(row, c) {
		d.Add(l.joint(w.Max.X, w, upright, letter(row, col), letter(row, c)))
	}
	if l.printed(row, col-1) {
		d.Add(l.joint(w.Min.X+overlap, w, upright, letter(row, col-1), letter(row, col)))
	}
	if l.strips() {
		return d
	}
	if l.printed(row-1, col) {
		d.Add(l.joint(w.Max.Y, w, level, letter(row-1, col), letter(row, col)))
	}
	if r := row + 1; l.printed(r, col) {
		d.Add(l.joint(w.Min.Y+overlap, w, level, letter(row, col), letter(r, col)))
	}
	return d
}

func (l *layout) printed(row, col int) bool {
	return row >= 0 && col >= 0 && row < l.grid.rows && col < l.grid.cols && l.needed[row][col]
}

// A lie is the way a joining line runs.
type lie int

const (
	upright lie = iota
	level
)

// joint draws one joining line across a window, at a place along x or y, between
// the two sheets named: left and right of it, or above and below.
func (l *layout) joint(at Length, w outline.Box, way lie, before, after string) outline.Drawing {
	var d outline.Drawing
	a, b := form.Point{X: at, Y: w.Min.Y}, form.Point{X: at, Y: w.Max.Y}
	if way == level {
		a, b = form.Point{X: w.Min.X, Y: at}, form.Point{X: w.Max.X, Y: at}
	}
	d.Line(guide(), outline.Join, a, b)
	for _, p := range l.jointPlaces(at, w, way) {
		d.Add(l.diamond(p.on(at, w, way), way, p.gap, before, after))
	}
	return d
}

const (
	diamondReach Length = 5 // from the middle of a diamond to its corners
	jointLetters        = small
)

// A jointPlace is where a diamond stands along a joint, and how far off it the
// letters do.
type jointPlace struct{ share, gap Length }

func (p jointPlace) on(at Length, w outline.Box, way lie) form.Point {
	if way == level {
		return form.Point{X: w.Min.X + overlap + p.share, Y: at}
	}
	return form.Point{X: at, Y: w.Min.Y + overlap + p.share}
}

// letterGaps are how far off the letters may stand, best first: further off where
// an edge of the wood runs along the joint.
func letterGaps() []Length { return []Length{0.9, 4, 7.5, 11} }

// jointPlaces finds two places along a joint, well apart, where the diamond or at
// least the letters of the sheets strike nothing. It depends only on what both
// sheets share, so that both draw the same.
func (l *layout) jointPlaces(at Length, w outline.Box, way lie) []jointPlace {
	long := w.Height() - overlap
	if way == level {
		long = w.Width() - overlap
	}
	var found []jointPlace
	for _, wish := range []Length{0.24, 0.71} {
		found = append(found, l.freeOnJoint(at, w, way, long, wish*long, found))
	}
	return found
}

// freeOnJoint is the free place nearest to a wish, away from those taken.
func (l *layout) freeOnJoint(at Length, w outline.Box, way lie, long, wish Length, taken []jointPlace) jointPlace {
	const step, apart = 2, 25
	var lettersOnly *jointPlace
	for _, gap := range letterGaps() {
		for off := Length(0); off < long; off += step {
			for _, s := range []Length{wish + off, wish - off} {
				tooNear := func(o jointPlace) bool { return s-o.share < apart && o.share-s < apart }
				if s < diamondReach || s > long-diamondReach-jointRoom || slices.ContainsFunc(taken, tooNear) {
					continue
				}
				p := jointPlace{s, gap}
				c := p.on(at, w, way)
				before, after := jointWords(c, way, gap, jointRoom)
				if !l.crowd.free(before) || !l.crowd.free(after) {
					continue
				}
				if l.crowd.free(outline.Around(c, diamondReach)) {
					return p
				}
				if lettersOnly == nil && l.crowd.wordless(outline.Around(c, diamondReach)) {
					lettersOnly = &p
				}
			}
		}
		if lettersOnly != nil {
			return *lettersOnly
		}
	}
	return jointPlace{wish, letterGaps()[0]}
}

// jointRoom is as long as the letters of a sheet get.
const jointRoom Length = 7

// jointWords are the places of the two sheets' letters beside a diamond: left and
// right of it, or above and below the line to its right.
func jointWords(c form.Point, way lie, off, wide Length) (before, after outline.Box) {
	high := jointLetters
	if way == level {
		const beside = 0.9
		x := c.X + diamondReach + beside
		return outline.Spanning(form.Point{X: x, Y: c.Y + off}, form.Point{X: x + wide, Y: c.Y + off + high}),
			outline.Spanning(form.Point{X: x, Y: c.Y - off - high}, form.Point{X: x + wide, Y: c.Y - off})
	}
	y := c.Y + high/2
	return outline.Spanning(form.Point{X: c.X - diamondReach - off - wide, Y: y - high}, form.Point{X: c.X - diamondReach - off, Y: y}),
		outline.Spanning(form.Point{X: c.X + diamondReach + off, Y: y - high}, form.Point{X: c.X + diamondReach + off + wide, Y: y})
}

// diamond draws the mark itself with the letters of the two sheets beside it.
func (l *lettering) diamond(c form.Point, way lie, gap Length, before, after string) outline.Drawing {
	var d outline.Drawing
	r := diamondReach
	d.Paths = append(d.Paths, outline.Path{Layer: guide(), Pen: outline.Thin, Closed: true, Run: []form.Vertex{
		{Point: form.Point{X: c.X - r, Y: c.Y}},
		{Point: form.Point{X: c.X, Y: c.Y - r}},
		{Point: form.Point{X: c.X + r, Y: c.Y}},
		{Point: form.Point{X: c.X, Y: c.Y + r}},
	}})
	if way == level {
		d.Line(guide(), outline.Thin, form.Point{X: c.X, Y: c.Y - r}, form.Point{X: c.X, Y: c.Y + r})
	} else {
		d.Line(guide(), outline.Thin, form.Point{X: c.X - r, Y: c.Y}, form.Point{X: c.X + r, Y: c.Y})
	}
	b, _ := jointWords(c, way, gap, l.width(before, jointLetters, outline.Bold))
	_, a := jointWords(c, way, gap, l.width(after, jointLetters, outline.Bold))
	d.Texts = []outline.Text{
		l.text(b.Min, before, jointLetters, outline.Bold),
		l.text(a.Min, after, jointLetters, outline.Bold),
	}
	return d
}

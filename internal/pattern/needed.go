package pattern

import (
	"slices"

	"lostwood/internal/outline"
)

// need finds the sheets that show anything to set out. Straight edges along the
// grain are nothing to set out but for their ends.
func (l *layout) need() {
	l.needed = make([][]bool, l.grid.rows)
	for r := range l.needed {
		l.needed[r] = make([]bool, l.grid.cols)
		for c := range l.needed[r] {
			l.needed[r][c] = l.shows(l.grid.core(r, c).Grown(0.5))
		}
	}
}

func (l *layout) shows(b outline.Box) bool {
	for _, t := range l.drawing.Texts {
		if textBox(t).Meets(b) {
			return true
		}
	}
	for _, c := range l.drawing.Circles {
		if outline.Around(c.Centre, c.Diameter/2).Meets(b) {
			return true
		}
	}
	return slices.ContainsFunc(l.inked(), func(s boxed) bool {
		if s.Bulge == 0 && s.A.Y == s.B.Y {
			return b.Holds(outline.Box{Min: s.A, Max: s.A}) || b.Holds(outline.Box{Min: s.B, Max: s.B})
		}
		return s.crosses(b)
	})
}

// inked are all lines of the drawing so far.
func (l *layout) inked() []boxed {
	for ; l.boxedTo < len(l.drawing.Paths); l.boxedTo++ {
		l.boxed = append(l.boxed, boxedLines(l.drawing.Paths[l.boxedTo])...)
	}
	return l.boxed
}

// plain are the sheets that show nothing to set out: words had better not call for them.
func (l *layout) plain() []outline.Box {
	var b []outline.Box
	for r := range l.needed {
		for c, needed := range l.needed[r] {
			if !needed {
				b = append(b, l.grid.core(r, c))
			}
		}
	}
	return b
}

// trim takes away rows and columns at the grid's edges that show nothing, so that
// the letters begin at A1.
func (l *layout) trim() {
	bareRow := func(r int) bool { return !slices.Contains(l.needed[r], true) }
	bareCol := func(c int) bool {
		return !slices.ContainsFunc(l.needed, func(row []bool) bool { return row[c] })
	}
	for g := &l.grid; g.rows > 1 && bareRow(0); l.need() {
		g.top -= g.stepY
		g.rows--
	}
	for g := &l.grid; g.rows > 1 && bareRow(g.rows-1); l.need() {
		g.rows--
	}
	for g := &l.grid; g.cols > 1 && bareCol(0); l.need() {
		g.left += g.stepX
		g.cols--
	}
	for g := &l.grid; g.cols > 1 && bareCol(g.cols-1); l.need() {
		g.cols--
	}
}

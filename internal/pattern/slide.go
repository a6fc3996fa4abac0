package pattern

import "lostwood/internal/outline"

// slide shifts the grid as far as its spare room goes, to the place where fewest
// sheets are printed and the joints run clear of the work and of the wood's edges.
func (l *layout) slide(box outline.Box) {
	first := l.grid
	spareX := first.left + Length(first.cols)*first.stepX - box.Max.X
	spareY := Length(first.rows)*first.stepY + overlap - (first.top - box.Min.Y)
	stepX, stepY := first.round, Length(2)
	if stepX == 0 {
		stepX = 1
	}
	stepX *= Length(max(1, int(spareX/stepX/8))) // eight places are enough to choose from
	best, least := first, -1.0
	for x := Length(0); x <= max(0, spareX); x += stepX {
		for y := Length(0); y <= max(0, spareY); y += stepY {
			l.grid = first
			l.grid.left -= x
			l.grid.top += y
			l.need()
			if price := l.jointPrice(); least < 0 || price < least {
				best, least = l.grid, price
			}
		}
	}
	l.grid = best
}

// jointPrice is what a place of the grid costs: sheets above all, then work that a
// joint cuts, then edges that run close along a joint.
func (l *layout) jointPrice() float64 {
	const sheetCost, cutCost = 1000, 30
	sum := sheetCost * float64(l.printedCount())
	for _, j := range l.grid.joints() {
		for _, c := range l.drawing.Circles {
			if outline.Around(c.Centre, c.Diameter/2+2).Meets(j) {
				sum += cutCost
			}
		}
		for _, s := range l.inked() {
			sum += closeness(s.Segment, j)
		}
	}
	return sum
}

// closeness is what a straight edge along the grain costs near a level joint.
func closeness(s outline.Segment, joint outline.Box) float64 {
	const room, dear = 8, 10
	if s.Bulge != 0 || s.A.Y != s.B.Y || joint.Width() < joint.Height() {
		return 0
	}
	off := s.A.Y - (joint.Min.Y + overlap)
	if off < 0 {
		off = -off
	}
	if off >= room {
		return 0
	}
	return dear * float64(1-off/room)
}

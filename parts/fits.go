package parts

import (
	"math"

	"lostwood/parts/form"
)

// placed reports a middle that is off the wood, or so near its side that work
// of this width breaks out.
func placed(ref string, outline form.Profile, at form.Point, width Length) error {
	lo, hi := outline.Bounds()
	half := width / 2
	if !(width > 0) || width > longest {
		half = 0 // the width has its own fault; the place is looked at for itself
	}
	if !(at.X >= lo.X && at.X <= hi.X) {
		return within(ref+" along", at.X, lo.X+half, hi.X-half, "it must lie on the wood")
	}
	if outline.Contains(at) {
		return nil
	}
	c := outline.Span(at.X)
	return within(ref+" across", at.Y, c.From+half, c.To-half, "it must lie on the wood")
}

// thickness is how much wood the first stretch under a place has.
func thickness(b Body, f Face, at form.Point) Length {
	if w := shapeOf(b).wood(f, at); len(w) > 0 {
		return w[0].Long()
	}
	return 0
}

// holds says whether a straight-edged piece lies within an outline, both convex.
func holds(outline, piece form.Profile) bool {
	for _, v := range piece {
		if !outline.Contains(v.Point) && outline.Distance(v.Point) > 1e-6 {
			return false
		}
	}
	return true
}

// alongBy is the room along the face's x, and acrossBy across it, for a middle
// at a place: twice the way to the nearer side of the outline.
func alongBy(outline form.Profile, at form.Point) Length {
	return roomIn(outline.Transposed().Chords(at.Y), at.X)
}

func acrossBy(outline form.Profile, at form.Point) Length {
	return roomIn(outline.Chords(at.X), at.Y)
}

func roomIn(chords []form.Stretch, at Length) Length {
	for _, c := range chords {
		if at >= c.From && at <= c.To {
			return 2 * min(at-c.From, c.To-at)
		}
	}
	return Length(math.NaN())
}

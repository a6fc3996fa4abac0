package pattern

import (
	"fmt"
	"math"

	"lostwood/parts/form"
)

// pack lays the faces on a roll, strip under strip, so that no face is parted: one
// that no longer goes on a strip begins the next. It refuses a roll that is
// narrower than a face.
func (l *layout) pack() error {
	g := l.paper.Printer.growth(l.way)
	step := l.paper.Width/g.Y - 2*bare - stripHigh - overlap
	const under = overlap + 2 // the strip above shows so much of this one
	widest := Length(0)
	for _, f := range l.faces.Laid {
		widest = max(widest, f.Extent.Height())
	}
	if room := step - max(headRoom, under) - 1; widest > room {
		least := math.Ceil(float64((widest - room + l.paper.Width/g.Y) * g.Y))
		return &PaperError{l.paper, fmt.Sprintf("the widest face is %.0f mm, and bars, title and check stand beside it; a roll at least %.0f mm wide would do", widest.Millimetres(), least)}
	}
	first := l.faces.Laid[0]
	top := first.Extent.Max.Y
	if b, ok := first.Drawing.Bounds(); ok {
		top = max(top, b.Max.Y)
	}
	top += headRoom
	strip, by := 0, Length(0)
	for i, f := range l.faces.Laid {
		beside := i > 0 && f.Extent.Min.X > 0 // the second end stands beside the first
		floor := top - Length(strip+1)*step + 1
		if !beside && f.Extent.Min.Y+by < floor {
			strip++
			by = top - Length(strip)*step - under - f.Extent.Max.Y
		}
		l.faces.Laid[i] = f.Shifted(form.Point{Y: by})
	}
	return nil
}

// strips reports whether the sheets are strips of a roll, which are not joined
// one under the other. A whole rim may be wider than a roll, and is joined.
func (l *layout) strips() bool { return l.paper.Feed == Roll && l.rim == nil }

// rolled is what the key says of strips.
func (l *layout) rolled() string {
	if n := l.printedCount(); n > 1 {
		return fmt.Sprintf("The faces stand on %d strips of the roll, each whole from end to end: there is nothing to join.", n)
	}
	return "All faces stand on one strip of the roll, whole from end to end: there is nothing to join."
}

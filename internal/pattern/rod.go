package pattern

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// rodFrom is the length from which a part gets a rod: a yard (common practice, no source).
const rodFrom = 3 * quantity.Foot

const (
	rodHigh  Length = 26 // of a strip
	rodTick  Length = 5
	rodTrim  Length = 3                                          // between strips, to cut in
	rodStrip Length = bare + stripHigh + 3 + 102 + 4 + 26 + bare // of a roll: the rod over the upright bars
	rodWords        = small
)

// A station is a place along the wood that a rod shows.
type station struct {
	at    Length
	words string
}

// rod makes the sheets of strips that join into a rod: the whole length with every
// station, to be pasted on a lath and carried to the wood. A short part has none.
func (l *layout) rod() []sheet {
	long := l.rodLong()
	if _, bent := l.item.Stick.Body.(parts.Bent); long < rodFrom && !bent {
		return nil
	}
	page := pageFor(l.paper, flat, outline.Box{Max: form.Point{X: long + sideRoom + overlap}})
	if l.strips() {
		page.Y = min(page.Y, rodStrip) // no more of the roll than it takes
	}
	on := l.grid.onPage()
	step := page.X - 2*bare - barWide - overlap
	strips := max(1, int(math.Ceil(float64((long+sideRoom)/step)-1e-9)))
	d, ok := l.rodDrawing(long, step, strips)
	if !ok {
		return nil
	}
	perSheet := max(1, int((page.Y-bare-on.Y)/(rodHigh+rodTrim)))
	var out []sheet
	for first := 0; first < strips; first += perSheet {
		s := sheet{letter: fmt.Sprintf("R%d", len(out)+1), size: page, growth: l.paper.Printer.growth(flat)}
		for n := first; n < min(strips, first+perSheet); n++ {
			y := page.Y - bare - Length(n-first+1)*(rodHigh+rodTrim) + rodTrim
			s.panes = append(s.panes, l.strip(d, n, strips, step, form.Point{X: on.X, Y: y}))
		}
		s.frame = l.frame(page, l.paper.Printer, s.letter, l.rodSays(strips))
		out = append(out, s)
	}
	return out
}

// rodLong is the length that the rod shows: of the straight blank, where the part
// is bent out of one.
func (l *layout) rodLong() Length {
	blank := l.item.Stick.Body.Blank()
	if blank.Making == parts.Steamed {
		return blank.Long
	}
	long, _, _ := l.item.Stick.Body.Box()
	return long
}

// strip is the n-th strip of a rod in its place on a sheet.
func (l *layout) strip(d outline.Drawing, n, strips int, step Length, at form.Point) pane {
	w := outline.Box{
		Min: form.Point{X: Length(n)*step - overlap},
		Max: form.Point{X: Length(n+1) * step, Y: rodHigh},
	}
	seen := within(d, w)
	for _, j := range []int{n, n + 1} {
		if j == 0 || j == strips {
			continue
		}
		x := Length(j) * step
		seen.Line(guide(), outline.Join, form.Point{X: x}, form.Point{X: x, Y: rodHigh})
		seen.Add(l.diamond(form.Point{X: x, Y: rodHigh - diamondReach - 1}, upright, letterGaps()[0], fmt.Sprint(j), fmt.Sprint(j+1)))
	}
	by := form.Point{X: at.X - w.Min.X, Y: at.Y}
	return pane{w.Shifted(by), seen.Shifted(by)}
}

// rodSays is what to do with the rod.
func (l *layout) rodSays(strips int) string {
	what := "rod"
	if l.item.Stick.Body.Blank().Making == parts.Steamed {
		what = "rod of the straight blank"
	}
	if strips == 1 {
		return what + ", in one piece: paste it on a lath"
	}
	return what + ": join the strips by their diamonds, paste on a lath"
}

// rodDrawing draws the whole rod: its edge along y = 0, a tick at each station,
// and the words over them. It reports false where the words find no room.
func (l *layout) rodDrawing(long, step Length, strips int) (outline.Drawing, bool) {
	var d outline.Drawing
	d.Line(guide(), outline.Edge, form.Point{}, form.Point{X: long})
	d.Line(guide(), outline.Faint, form.Point{Y: rodHigh - 0.2}, form.Point{X: long, Y: rodHigh - 0.2})
	all := l.stations(long)
	for _, s := range all {
		pen := outline.Thin
		if s.at == 0 || s.at == long {
			pen = outline.Edge
		}
		d.Line(guide(), pen, form.Point{X: s.at}, form.Point{X: s.at, Y: rodTick})
	}
	busy := crowd{clear: clearance}
	busy.add(d)
	for n := 1; n < strips; n++ {
		x := Length(n) * step
		busy.folds = append(busy.folds, outline.Segment{A: form.Point{X: x}, B: form.Point{X: x, Y: rodHigh}})
		busy.avoid = append(busy.avoid, outline.Box{Min: form.Point{X: x - overlap}, Max: form.Point{X: x + overlap, Y: rodHigh}})
	}
	name := l.block([]line{{l.number() + " · " + l.stock() + " · issue " + l.v.Issue, rodWords, outline.Bold}}, 0.3)
	name.wish = form.Point{X: 4, Y: rodHigh - 5}
	name.within = outline.Box{Max: form.Point{X: long, Y: rodHigh - 0.5}}
	if one, ok := busy.place([]label{name}); ok {
		d.Add(one)
	}
	for _, s := range all {
		tip := form.Point{X: s.at, Y: rodTick}
		b := l.block([]line{{s.words, rodWords, outline.Plain}}, 0.3)
		b.anchor = &outline.Box{Min: tip, Max: tip}
		b.within = outline.Box{Min: form.Point{X: -overlap + 1, Y: 1}, Max: form.Point{X: Length(strips)*step - 1, Y: rodHigh - 0.5}}
		b.home = b.within
		one, ok := busy.place([]label{b})
		if !ok {
			return outline.Drawing{}, false
		}
		d.Add(one)
	}
	return d, true
}

// stations are the ends and every place along the long faces where work stands, in
// order from the first end; work at one place shares a station.
func (l *layout) stations(long Length) []station {
	all := []station{
		{0, l.item.FaceWords(parts.FirstEnd)},
		{long, firm(l.size(long)) + " " + l.item.FaceWords(parts.SecondEnd)},
	}
	if b, bent := l.item.Stick.Body.(parts.Bent); bent {
		return ordered(append(all, l.bentStations(b)...))
	}
	for _, op := range l.item.Stick.Operations() {
		for _, x := range stationsOf(op, long) {
			all = append(all, station{x, l.size(x) + " " + op.Ref + l.queried(op.Ref)})
		}
	}
	return ordered(all)
}

// ordered puts stations in order from the first end; those at one place are one.
func ordered(all []station) []station {
	slices.SortStableFunc(all, func(a, b station) int { return cmp.Compare(a.at, b.at) })
	var out []station
	for _, s := range all {
		if n := len(out); n > 0 && s.at-out[n-1].at < 0.01 {
			if out[n-1].words != s.words {
				out[n-1].words += ", " + s.words
			}
			continue
		}
		out = append(out, s)
	}
	return out
}

// queried marks work whose place along the wood is not known.
func (l *layout) queried(ref string) string {
	if f := l.feature(ref); f != nil && doubtful(f.Along.Known) {
		return " ? GUESS"
	}
	return ""
}

// stationsOf are the places along the wood of one operation: the middle of a hole,
// both sides of a housing or notch, the shoulder of a tenon.
func stationsOf(op parts.Operation, long Length) []Length {
	switch {
	case op.Work == parts.Tenoning && op.Face == parts.FirstEnd:
		return []Length{sized(op, "long")}
	case op.Work == parts.Tenoning && op.Face == parts.SecondEnd:
		return []Length{long - sized(op, "long")}
	case op.Face == parts.FirstEnd || op.Face == parts.SecondEnd || op.Work >= parts.Tenoning:
		return nil
	case op.Work == parts.Boring:
		return []Length{op.At.X}
	}
	half := sized(op, "long", "wide") / 2
	switch op.Work {
	case parts.LettingIn:
		half = sized(op, "wide") / 2
	case parts.Notching:
		half = notched(op, long) / 2
	}
	return []Length{op.At.X - half, op.At.X + half}
}

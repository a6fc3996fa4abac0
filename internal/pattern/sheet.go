package pattern

import (
	"errors"
	"fmt"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A sheet is one piece of paper. Everything is in its own frame: x to the right
// and y up from its lower left corner.
type sheet struct {
	letter string
	size   form.Point // as it measures when printed
	growth form.Point // how much larger it is drawn, for a printer that is out
	panes  []pane
	frame  outline.Drawing // what stands round the panes
}

// A pane is a window on a sheet, and the drawing seen in it, cut off at its edge.
type pane struct {
	window outline.Box
	seen   outline.Drawing
}

// sheets makes the key and every full-size sheet of an item.
func sheets(v *vehicle.Vehicle, item *vehicle.Item, p Paper) ([]sheet, error) {
	if err := shaped(item); err != nil {
		return nil, err
	}
	l, err := lay(v, item, p)
	if err != nil {
		return nil, err
	}
	return l.sheets()
}

// sheets are the key, the rods and the sheets of a settled layout.
func (l *layout) sheets() ([]sheet, error) {
	out := append(l.key(), l.rods...)
	n := 0
	for r := range l.grid.rows {
		for c := range l.grid.cols {
			if l.needed[r][c] {
				n++
				out = append(out, l.sheet(r, c, fmt.Sprintf("sheet %d of %d · ", n, l.printedCount())))
			}
		}
	}
	for _, s := range out {
		if err := l.legible(s); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// shaped refuses an item that there is nothing to draw of.
func shaped(item *vehicle.Item) error {
	if item.Stick.Body == nil {
		return errors.New("it has no shape yet, so there is nothing to draw")
	}
	long, wide, deep := item.Stick.Body.Box()
	for _, l := range []Length{long, wide, deep} {
		if !(l > 0 && l < longestPart) {
			return fmt.Errorf("it measures %v by %v by %v mm; a pattern is drawn of parts up to %v mm", long, wide, deep, longestPart)
		}
	}
	return nil
}

// longestPart is far longer than any timber of a vehicle; it keeps a slip of the
// pen from asking for a million sheets.
const longestPart Length = 20_000

// legible refuses words that the lettering has no shapes for.
func (l *lettering) legible(s sheet) error {
	all := s.frame.Texts
	for _, p := range s.panes {
		all = append(all[:len(all):len(all)], p.seen.Texts...)
	}
	for _, t := range all {
		if r, ok := l.lacks(t.Words); ok {
			return fmt.Errorf("the letter %q in %q cannot be set on a pattern; write it another way", r, t.Words)
		}
	}
	return nil
}

// sheet cuts one sheet out of the drawing.
func (l *layout) sheet(row, col int, counted string) sheet {
	s := sheet{letter: letter(row, col), size: l.grid.page, growth: l.paper.Printer.growth(l.way)}
	on := l.grid.onPage()
	w := l.grid.window(row, col)
	drawn := within(l.drawing, w)
	drawn.Add(l.joins(row, col))
	by := form.Point{X: on.X - w.Min.X, Y: on.Y - w.Min.Y}
	s.panes = []pane{{w.Shifted(by), drawn.Shifted(by)}}
	s.frame = l.frame(s.size, l.paper.Printer, s.letter, counted+l.where(col))
	return s
}

// within is what of a drawing reaches into a box.
func within(d outline.Drawing, b outline.Box) outline.Drawing {
	var in outline.Drawing
	for _, p := range d.Paths {
		if box, ok := (outline.Drawing{Paths: []outline.Path{p}}).Bounds(); ok && box.Grown(1).Meets(b) {
			in.Paths = append(in.Paths, p)
		}
	}
	for _, c := range d.Circles {
		if outline.Around(c.Centre, c.Diameter/2+1).Meets(b) {
			in.Circles = append(in.Circles, c)
		}
	}
	for _, t := range d.Texts {
		if textBox(t).Meets(b) {
			in.Texts = append(in.Texts, t)
		}
	}
	return in
}

// where says between which places along the wood a sheet stands, so that it can
// be laid by rule where its neighbour is plain.
func (l *layout) where(col int) string {
	if l.rim != nil {
		return "whole rim, outer side · " + l.joinedAt(col)
	}
	return l.joinedAt(col)
}

func (l *layout) joinedAt(col int) string {
	if l.grid.cols == 1 {
		return "from end to end on this sheet"
	}
	left, right := l.grid.left+Length(col)*l.grid.stepX, l.grid.left+Length(col+1)*l.grid.stepX
	from := " from the " + l.item.FaceWords(parts.FirstEnd)
	if l.rim != nil {
		left, right = left+l.rim.Back, right+l.rim.Back
		from = " from the rim's left edge"
	}
	switch col {
	case 0:
		return "right joining line " + l.jointAt(right) + from
	case l.grid.cols - 1:
		return "left joining line " + l.jointAt(left) + from
	}
	return "joining lines " + l.jointAt(left) + " and " + l.jointAt(right) + from
}

// jointAt is where a joining line stands. One at an odd figure is told in
// millimetres: a fraction of an inch would round it.
func (l *layout) jointAt(x Length) string {
	if l.grid.round == 0 {
		return firm(quantity.Format(x, quantity.Millimetres))
	}
	return l.size(x)
}

// frame is the strip along the foot and the one up the left: bars, letter, title.
func (l *layout) frame(size form.Point, printer Printer, name, where string) outline.Drawing {
	var d outline.Drawing
	d.Line(guide(), outline.Thin, form.Point{X: bare, Y: bare + stripHigh - 1.5}, form.Point{X: size.X - bare, Y: bare + stripHigh - 1.5})
	top := Length(bare + stripHigh - 3)
	const bars = 102
	d.Add(l.bar(form.Point{X: bare, Y: top - 5}, 100, 10, barWords(printer)))
	d.Add(l.bar(form.Point{X: bare, Y: top - 11}, 4*quantity.Inch, 8, "4 in"))
	d.Add(l.uprightBars(form.Point{X: bare + 0.3, Y: bare + stripHigh + 3}))
	right := size.X - bare
	if h := l.hand(); h != "" {
		w := l.width(h, hands, outline.Bold)
		right -= w
		d.Texts = append(d.Texts, l.text(form.Point{X: right, Y: bare + 2}, h, hands, outline.Bold))
		right -= 3
	}
	room := right - bare
	if room > bars+60 {
		room = right - bare - bars - 4
		d.Add(l.title(form.Point{X: bare + bars + 4, Y: top}, room, name, where))
		return d
	}
	d.Add(l.lines(form.Point{X: bare, Y: bare + 1}, bars, where))
	if room = right - bare - bars - 3; room > 16 {
		d.Texts = append(d.Texts, l.fitted(form.Point{X: bare + bars + 3, Y: bare + 2}, name, title, outline.Bold, room))
		return d
	}
	// No room beside the hand: the letter stands over the upright bar.
	d.Texts = append(d.Texts, l.fitted(form.Point{X: bare, Y: bare + stripHigh + 108}, name, title, outline.Bold, barWide-0.5))
	return d
}

// title is the sheet's letter with the title under it, where there is room beside the bars.
func (l *layout) title(at form.Point, room Length, letter, where string) outline.Drawing {
	var d outline.Drawing
	d.Texts = append(d.Texts, l.fitted(form.Point{X: at.X, Y: at.Y - title}, letter, title, outline.Bold, room))
	d.Add(l.lines(form.Point{X: at.X, Y: bare + 1}, room, where))
	return d
}

// lines are the three lines of the title, upwards from a point.
func (l *layout) lines(at form.Point, room Length, where string) outline.Drawing {
	var d outline.Drawing
	for i, n := range []line{
		{where, small, outline.Plain},
		{l.issue(), small, outline.Plain},
		{l.number() + " · " + l.stock(), normal, outline.Bold},
	} {
		d.Texts = append(d.Texts, l.fitted(form.Point{X: at.X, Y: at.Y + Length(i)*4}, n.words, n.height, n.weight, room))
	}
	return d
}

func guide() outline.Layer { return outline.Layer{Role: outline.Guide} }

package pattern

import (
	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A column sets blocks of words down the key, from sheet to sheet.
type column struct {
	*layout
	size    form.Point
	printer Printer
	done    []sheet
	d       outline.Drawing
	y       Length // the foot of what is set so far
	floor   Length
	left    Length
	right   Length
}

// keyPaper is what the key is printed on: office paper, whatever the pattern is
// on. A plotter's faults are not the office printer's.
func (l *layout) keyPaper() (form.Point, Printer) {
	g := l.paper.Printer.growth(tall)
	switch l.paper.Name {
	case "A4", "A3":
		return form.Point{X: 210 / g.X, Y: 297 / g.Y}, l.paper.Printer
	case "Letter", "Tabloid":
		return form.Point{X: 8.5 * quantity.Inch / g.X, Y: 11 * quantity.Inch / g.Y}, l.paper.Printer
	}
	return form.Point{X: 210, Y: 297}, Printer{}
}

// key makes the sheets that say what the pattern is: sizes, map, work, cautions.
func (l *layout) key() []sheet {
	c := &column{layout: l, floor: bare + stripHigh + 2, left: bare + barWide + 4}
	c.size, c.printer = l.keyPaper()
	c.right = c.size.X - bare - 2
	c.begin()
	if c.rim != nil {
		c.rimOpening()
	} else {
		c.opening()
		c.workList()
		c.sections()
	}
	c.heed()
	c.end()
	for i := range c.done {
		if len(c.done) > 1 {
			c.done[i].letter += string(rune('1' + i))
		}
		c.done[i].frame = l.frame(c.size, c.printer, c.done[i].letter, "key to the pattern; the bars are here too: measure them")
	}
	return c.done
}

func (c *column) begin() {
	c.d = outline.Drawing{}
	c.y = c.size.Y - bare - 2
}

func (c *column) end() {
	c.done = append(c.done, sheet{
		letter: "KEY", size: c.size, growth: c.printer.growth(tall),
		panes: []pane{{outline.Box{Min: form.Point{X: bare, Y: bare}, Max: form.Point{X: c.size.X - bare, Y: c.size.Y - bare}}, c.d}},
	})
}

// room begins a new sheet where less than that is left.
func (c *column) room(high Length) {
	if c.y-high < c.floor {
		c.end()
		c.begin()
	}
}

// say sets words flush left between two places, breaking lines.
func (c *column) say(words string, height Length, w outline.Weight, from, to Length) {
	for _, s := range c.wrap(words, height, w, to-from) {
		c.room(lineStep * height)
		c.y -= lineStep * height
		c.d.Texts = append(c.d.Texts, c.fitted(form.Point{X: from, Y: c.y + descent*height}, s, height, w, to-from))
	}
}

// head sets a heading with a rule over it.
func (c *column) head(words string) {
	c.room(22)
	c.y -= 4
	c.d.Line(guide(), outline.Thin, form.Point{X: c.left, Y: c.y}, form.Point{X: c.right, Y: c.y})
	c.y -= 1.2
	c.say(words, large, outline.Bold, c.left, c.right)
	c.y -= 1
}

// An entry is a short name with words beside it.
type entry struct {
	name, words string
	height      Length // of the words' capitals
	queried     bool   // framed: it tells of a guess
}

// nameRoom is how far the words of an entry stand in.
const nameRoom Length = 34

// enter sets an entry; it stays together on one sheet.
func (c *column) enter(e entry) {
	in := nameRoom
	body := c.wrap(e.words, e.height, outline.Plain, c.right-c.left-in)
	label := c.wrap(e.name, normal, outline.Bold, in-3)
	high := max(Length(len(body))*lineStep*e.height, Length(len(label))*lineStep*normal)
	c.room(high + 2)
	top := c.y
	c.say(e.name, normal, outline.Bold, c.left, c.left+in-3)
	after := c.y
	c.y = top - (normal-e.height)*(lineStep-descent) // the first lines stand level
	c.say(e.words, e.height, outline.Plain, c.left+in, c.right)
	c.y = min(c.y, after)
	if e.queried {
		c.d.Rect(guide(), outline.Query, outline.Box{
			Min: form.Point{X: c.left - 1.5, Y: c.y - 0.8}, Max: form.Point{X: c.right + 1, Y: top + 0.5},
		})
	}
	c.y -= 1.6
	if e.queried {
		c.y--
	}
}

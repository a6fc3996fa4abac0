package jobpack

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = quantity.Length

const (
	left, right, foot Length = 13, 199, 16 // the margins of A4 upright
	text              Length = 2.5
	step              Length = 3.9
)

// A cover is the sheet while it is set, from above to below; it goes on to more
// paper only where a vehicle has more parts than one sheet holds.
type cover struct {
	letters *sheet.Lettering
	pages   []sheet.Sheet
	y       Length
}

// WriteCover writes a maker's cover sheet as a PDF.
func WriteCover(w io.Writer, v *vehicle.Vehicle, m Maker, list *cutlist.List) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	wants := m.wants(v, list)
	c := &cover{letters: letters}
	c.page()
	c.heading(v, m, wants)
	c.table(m, wants)
	for _, block := range m.blocks(v, wants) {
		c.block(block[0], block[1])
	}
	return sheet.WritePDF(w, letters, sheet.Mark{Title: v.Name + ", issue " + v.Issue + ": for the " + m.String(), Subject: "survey " + v.Hash, Day: v.Date}, c.pages)
}

func (c *cover) page() {
	c.pages = append(c.pages, sheet.Sheet{Name: fmt.Sprintf("Cover %d", len(c.pages)+1), Width: 210, Height: 297, Stroke: 0.25})
	c.y = 297 - 18
}

func (c *cover) sheet() *sheet.Sheet { return &c.pages[len(c.pages)-1] }

func (c *cover) say(x Length, words string, high Length, w sheet.Weight) {
	s := c.sheet()
	s.Words = append(s.Words, c.letters.Word(form.Point{X: x, Y: c.y}, words, high, w, sheet.Across))
}

func (c *cover) down(by Length) {
	c.y -= by
	if c.y < foot {
		c.page()
	}
}

// heading tells the issue and the unit before all else.
func (c *cover) heading(v *vehicle.Vehicle, m Maker, wants []want) {
	c.say(left, v.Name+": for the "+m.String(), 5, sheet.Heavy)
	c.down(8)
	c.say(left, fmt.Sprintf("Issue %s of %s · survey %.8s · work to no other issue", v.Issue, v.Date.Format("2 January 2006"), v.Hash), 3.5, sheet.Plain)
	c.down(6)
	unit := "inches"
	if m.Unit(v) == quantity.Millimetres {
		unit = "MILLIMETRES"
	}
	c.say(left, "Unit: "+unit+", in every figure here and in these files that names no other.", 3.5, sheet.Heavy)
	c.down(6)
	n := 0
	for _, w := range wants {
		n += w.off
	}
	c.say(left, fmt.Sprintf("How many: %s, %d distinct.", counted(n, "piece"), len(wants)), 3.5, sheet.Plain)
	c.down(8)
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// A column of the table: its heading, where it starts and what is in it.
type column struct {
	head string
	at   Length
	of   func(w want) string
}

func (m Maker) columns() []column {
	of := "Timber"
	if m == Smith {
		of = "Out of"
	}
	return []column{
		{"No.", left, func(w want) string { return w.number }},
		{"Wanted", left + 7, func(w want) string { return w.name }},
		{"Off", left + 39, func(w want) string { return fmt.Sprint(w.off) }},
		{"Hand", left + 45, func(w want) string { return w.hand }},
		{of, left + 71, func(w want) string { return w.of }},
		{"Thick", left + 97, func(w want) string { return w.thick }},
		{"Check on the first piece made", left + 111, func(w want) string { return strings.Join(w.checks, ", ") }},
	}
}

// table lists what is wanted. Words that are too long for their column go on below.
func (c *cover) table(m Maker, wants []want) {
	columns := m.columns()
	for _, col := range columns {
		c.say(col.at, col.head, text, sheet.Heavy)
	}
	c.rule()
	for _, w := range wants {
		var cells [][]string
		most := 1
		for i, col := range columns {
			end := right
			if i+1 < len(columns) {
				end = columns[i+1].at - 1.5
			}
			lines := c.letters.Wrap(col.of(w), text, sheet.Plain, end-col.at)
			cells = append(cells, lines)
			most = max(most, len(lines))
		}
		if c.y-Length(most)*step < foot {
			c.page()
		}
		for line := range most {
			for i, col := range columns {
				if line < len(cells[i]) {
					c.say(col.at, cells[i][line], text, sheet.Plain)
				}
			}
			c.y -= step
		}
	}
	c.down(2)
	if len(wants) == 0 {
		c.say(left, "Nothing is wanted of the "+m.String()+" as the survey stands.", 3.5, sheet.Plain)
		c.down(6)
	}
}

func (c *cover) rule() {
	c.y -= 1.4
	c.sheet().Straight(sheet.Narrow, form.Point{X: left, Y: c.y}, form.Point{X: right, Y: c.y})
	c.y -= step
}

func (c *cover) block(head, words string) {
	if c.y < foot+3*step {
		c.page()
	}
	c.say(left, head, text, sheet.Heavy)
	for _, line := range c.letters.Wrap(words, text, sheet.Plain, right-left-32) {
		c.say(left+32, line, text, sheet.Plain)
		c.down(step)
	}
	c.y -= 1
}

// blocks are what stands below the table: a heading and its words.
func (m Maker) blocks(v *vehicle.Vehicle, wants []want) [][2]string {
	blocks := [][2]string{{"Left for hand work", handWork(wants)}}
	switch m {
	case Joiner:
		blocks[0] = [2]string{"Left for hand work", "Everything on the patterns. " + handWork(wants) + " Each pattern says which."}
		blocks = append(blocks,
			[2]string{"Print", "At full size, never fitted to the page; measure the 100 mm bars of every sheet, both ways."},
			[2]string{"Order", "Offer each part up to its irons before boring through. A guess is marked as one: settle it first."})
	case CNC:
		blocks = append(blocks,
			[2]string{"Files", "STL: the finished solid, closed, in millimetres, z up as fitted, x along the grain. DXF: one file for each worked face, as seen from that face, 1:1, a layer for each kind of work and depth. PDF: the drawing, with its give or take."},
			[2]string{"Hands", "NEAR and OFF are mirror images, each with files of its own: never two of one."},
			[2]string{"Timber", "Supplied by the joiner, at " + moisture(v.Moisture.Worked) + " moisture: the grain runs along x."},
			[2]string{"Tolerance", "0.2 mm on holes, 0.5 mm on outlines, unless the drawing says otherwise (common practice, no source)."})
	case Yard:
		blocks[0] = [2]string{"Left for hand work", "Nothing: sawn sizes, allowances within. The joiner planes and trims."}
		blocks = append(blocks, [2]string{"Moisture", "As bought: " + moisture(v.Moisture.Bought) + ". Say what it is when it is sent."})
	case Smith:
		blocks[0] = [2]string{"Settle first", handWork(wants)}
		blocks = append(blocks, [2]string{"Left for hand work", "All of it is fitted to the wood when the parts are offered up; holes marked open are drilled then."})
	}
	return append(blocks,
		[2]string{"Ask", "Of sizes and fit: the restorer who made the survey. Of what may be made: the office that approves. Of how it is put together: the joiner. Write their telephone numbers here: ......................................................"},
		[2]string{"Cautions", m.cautions()})
}

func moisture(m quantity.Moisture) string { return fmt.Sprintf("%.3g %%", float64(m)) }

// handWork gathers what is left to hand: each kind of work with the numbers it is on.
func handWork(wants []want) string {
	on := map[string][]string{}
	var order []string
	for _, w := range wants {
		for _, h := range w.byHand {
			if _, seen := on[h]; !seen {
				order = append(order, h)
			}
			if !slices.Contains(on[h], w.number) {
				on[h] = append(on[h], w.number)
			}
		}
	}
	if len(order) == 0 {
		return "Nothing."
	}
	var out []string
	for _, h := range order {
		out = append(out, h+" (No. "+strings.Join(on[h], ", ")+")")
	}
	return strings.ToUpper(out[0][:1]) + strings.Join(out, "; ")[1:] + "."
}

func (m Maker) cautions() string {
	switch m {
	case Smith:
		return "Hot iron burns black as well as red. Plated, galvanised or painted iron gives off poisonous fume: strip it first. What carries load or brakes is to be judged by someone competent. Local codes come first."
	case Yard:
		return "Saws, and stacks that can fall, are for trained hands. Dust harms: draw it off."
	}
	return "Guard machines, hold short and curved pieces in a jig, draw off dust and wear a mask; old paint may hold lead. Nothing here says that a part is fit to carry a load or a person: have someone competent judge it. Local codes come first."
}

package drawing

import (
	"lostwood/internal/outline"
	"lostwood/internal/sheet"
)

// A table is rows of words under a head.
type table struct {
	title   string
	columns []column
	rows    []row
}

type column struct {
	head  string
	share Length // of the table's width
}

// A row is its cells. A heavy one is set in bold; a note runs across all columns.
type row struct {
	cells  []string
	weight sheet.Weight
}

const (
	lineHigh Length = 4 // from one line of a table to the next
	rowAir   Length = 1.3
)

// A flow fills regions of sheets with tables, and takes new sheets as it needs them.
type flow struct {
	b       board
	regions []outline.Box // still free, on b
	more    func() (board, []outline.Box)
	y       Length
}

func newFlow(b board, regions []outline.Box, more func() (board, []outline.Box)) *flow {
	f := &flow{b: b, regions: regions, more: more}
	if len(regions) > 0 {
		f.y = regions[0].Max.Y
	}
	return f
}

// need goes on to the next region unless there is that much room left, and says
// whether it did.
func (f *flow) need(high Length) (turned bool) {
	for len(f.regions) == 0 || f.y-high < f.regions[0].Min.Y {
		turned = true
		if len(f.regions) > 1 {
			f.regions = f.regions[1:]
		} else {
			f.b, f.regions = f.more()
		}
		f.y = f.regions[0].Max.Y
	}
	return turned
}

// cells are a row's words in lines, by column.
func (f *flow) cells(t table, r row, wide Length) (lines [][]string, high Length) {
	most := 1
	for i, words := range r.cells {
		l := f.b.letters.Wrap(words, small, r.weight, t.columns[i].share*wide-2)
		lines, most = append(lines, l), max(most, len(l))
	}
	return lines, Length(most)*lineHigh + rowAir
}

// table prints a table, its head again wherever it goes on.
func (f *flow) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	const headHigh = 6 + lineHigh + rowAir
	for i, r := range t.rows {
		_, high := f.cells(t, r, f.widest())
		if i == 0 {
			f.need(headHigh + high + lineHigh)
			f.head(t)
		} else if f.need(high) {
			f.head(t)
		}
		f.row(t, r)
	}
	f.y -= 5
}

func (f *flow) head(t table) {
	r := f.regions[0]
	f.b.say(at(r.Min.X, f.y-4), t.title, normal, sheet.Heavy)
	f.y -= 6
	f.rule(sheet.Wide)
	cells := make([]string, len(t.columns))
	for i, c := range t.columns {
		cells[i] = c.head
	}
	f.row(t, row{cells: cells, weight: sheet.Heavy})
}

func (f *flow) rule(p sheet.Pen) {
	r := f.regions[0]
	f.b.Straight(p, at(r.Min.X, f.y), at(r.Max.X, f.y))
}

func (f *flow) row(t table, r row) {
	box := f.regions[0]
	lines, high := f.cells(t, r, box.Width())
	x := box.Min.X
	for i, cell := range lines {
		for k, words := range cell {
			if words != "" {
				f.b.say(at(x+0.6, f.y-lineHigh*Length(k+1)+0.4), words, small, r.weight)
			}
		}
		x += t.columns[i].share * box.Width()
	}
	f.y -= high
	f.rule(sheet.Hatch)
}

// notes prints paragraphs under a head.
func (f *flow) notes(head string, says []string) {
	if len(says) == 0 {
		return
	}
	for i, s := range says {
		lines := f.b.letters.Wrap(s, small, sheet.Plain, f.widest()-4)
		high := Length(len(lines))*lineHigh + 0.8
		if i == 0 {
			f.need(6 + high)
			f.b.say(at(f.regions[0].Min.X, f.y-4), head, normal, sheet.Heavy)
			f.y -= 6
		}
		f.need(high)
		box := f.regions[0]
		lines = f.b.letters.Wrap(s, small, sheet.Plain, box.Width()-4)
		f.b.Circle(sheet.Black, at(box.Min.X+1, f.y-lineHigh+1.4), 0.5)
		for _, l := range lines {
			f.y -= lineHigh
			f.b.say(at(box.Min.X+3, f.y+0.4), l, small, sheet.Plain)
		}
		f.y -= 0.8
	}
	f.y -= 3
}

// widest is the least width of the regions at hand: words broken for it fit all.
func (f *flow) widest() Length {
	least := titleWide * 4
	for _, r := range f.regions {
		least = min(least, r.Width())
	}
	return least
}

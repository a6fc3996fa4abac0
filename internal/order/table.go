package order

// A side is where a column's words keep to.
type side int

const (
	toLeft side = iota
	toRight
)

// A column is one of a table's; all the widths together are the room.
type column struct {
	head  string
	width float64
	side  side
	over  string // stands over the heads of all neighbours that have the same
	blank bool   // a place to write in, ruled off
}

// A cell is what stands in one column of a row.
type cell struct {
	words string
	style style
	tint  tint
}

// A table is printed row after row; its head stands on every page it runs over.
type table struct {
	press   *press
	columns []column
	boxed   bool // whether each row starts with a box to tick
}

const (
	gutter = 3.0  // between columns
	pad    = 1.05 // above and below the words of a row
)

// head prints the columns' heads.
func (t *table) head() {
	p := t.press
	const points = small
	lines := make([][]string, len(t.columns))
	most, above := 1, 0.0
	for i, c := range t.columns {
		lines[i] = p.wrap(c.head, c.width-gutter, bold, points)
		most = max(most, len(lines[i]))
		if c.over != "" {
			above = points * lead
		}
	}
	height := above + float64(most)*points*lead + 2*pad
	if p.y+height+3*body*lead > lowest {
		p.foot()
		p.open()
	}
	p.fill(left, p.y, room, height, moss)
	t.overs()
	x := left
	for i, c := range t.columns {
		for k, words := range lines[i] {
			p.set(bold, points, tint{255, 255, 255})
			p.text(t.at(x, c, words), p.y+pad+above+(float64(k)+0.78)*points*lead, words)
		}
		x += c.width
	}
	p.y += height
}

// overs prints what stands over several heads, with a line under it.
func (t *table) overs() {
	p := t.press
	x := left
	for i := 0; i < len(t.columns); {
		c := t.columns[i]
		width := 0.0
		for ; i < len(t.columns) && t.columns[i].over == c.over; i++ {
			width += t.columns[i].width
		}
		if c.over != "" {
			p.set(bold, small, tint{255, 255, 255})
			at := x + width - gutter/2 - p.doc.GetStringWidth(c.over)
			p.text(at, p.y+pad+0.78*small*lead, c.over)
			p.doc.SetDrawColor(hair.r, hair.g, hair.b)
			p.doc.SetLineWidth(0.15)
			p.doc.Line(x+gutter, p.y+pad+small*lead, x+width-gutter/2, p.y+pad+small*lead)
		}
		x += width
	}
}

// at is where words start in a column that starts at x; the font is set.
func (t *table) at(x float64, c column, words string) float64 {
	if c.side == toRight {
		return x + c.width - gutter/2 - t.press.doc.GetStringWidth(words)
	}
	return x + gutter/2
}

// row prints one row, over pages where it must.
func (t *table) row(cells []cell) {
	p := t.press
	lines := make([][]string, len(cells))
	most := 0
	for i, c := range cells {
		lines[i] = p.wrap(c.words, t.columns[i].width-gutter, c.style, body)
		most = max(most, len(lines[i]))
	}
	const step = body * lead
	for from := 0; from < most; {
		fit := int((lowest - p.y - 2*pad) / step)
		if fit < min(most-from, 3) {
			p.turn()
			fit = int((lowest - p.y - 2*pad) / step)
		}
		to := min(most, from+max(fit, 1))
		t.part(cells, lines, from, to)
		from = to
	}
	p.rule(p.y, hair, 0.15)
}

// part prints some of a row's lines.
func (t *table) part(cells []cell, lines [][]string, from, to int) {
	p := t.press
	const step = body * lead
	if t.boxed && from == 0 {
		p.box(left+1, p.y+pad+0.25, 2.9)
	}
	x := left
	for i, c := range cells {
		if t.columns[i].blank {
			p.doc.SetDrawColor(hair.r, hair.g, hair.b)
			p.doc.SetLineWidth(0.15)
			p.doc.Line(x, p.y, x, p.y+float64(to-from)*step+2*pad)
		}
		for k := from; k < min(to, len(lines[i])); k++ {
			p.set(c.style, body, c.tint)
			p.text(t.at(x, t.columns[i], lines[i][k]), p.y+pad+(float64(k-from)+0.78)*step, lines[i][k])
		}
		x += t.columns[i].width
	}
	p.y += float64(to-from)*step + 2*pad
}

// band prints a line of its own across the table, to head a group of rows: a
// wood's name, its botanical one, and what else there is to say, side by side
// where they fit and else below each other.
func (t *table) band(name, botanical, rest string) {
	p := t.press
	const points = large - 1
	type run struct {
		words  string
		style  style
		points float64
		tint   tint
	}
	width := func(r run) float64 {
		p.doc.SetFont("go", string(r.style), r.points)
		return p.doc.GetStringWidth(r.words)
	}
	runs := []run{{name, bold, points, ink}, {botanical, italic, body, moss}, {firm(rest), plain, body, faded}}
	const apart = 3.0
	if width(runs[0])+width(runs[1])+width(runs[2])+2*apart < room-gutter {
		const height = points*lead + 2*pad
		p.need(height + 3*body*lead)
		p.fill(left, p.y, room, height, straw)
		x, base := left+gutter/2, p.y+pad+0.78*points*lead
		for i, r := range runs {
			if i == 2 {
				x = right - gutter/2 - width(r)
			}
			p.set(r.style, r.points, r.tint)
			p.text(x, base, r.words)
			x += width(r) + apart
		}
		p.y += height
		return
	}
	for i, r := range runs {
		for k, words := range p.wrap(r.words, room-gutter, r.style, r.points) {
			if words == "" {
				continue
			}
			height := r.points*lead + pad
			p.need(height + float64(3-i)*body*lead + 3*body*lead)
			if i == 0 && k == 0 {
				height += pad
			}
			p.fill(left, p.y, room, height, straw)
			p.set(r.style, r.points, r.tint)
			p.text(left+gutter/2, p.y+height-pad-0.22*r.points*lead, words)
			p.y += height
		}
	}
}

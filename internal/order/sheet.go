package order

import (
	"fmt"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
)

// masthead opens a sheet: whose it is, what it is, and a few facts.
func (p *press) masthead(what string, facts []string) {
	v := p.v
	p.fill(left, p.y, room, 1.6, moss)
	p.y += 5
	p.set(plain, body, faded)
	mark := "issue " + v.Issue
	if !v.Date.IsZero() {
		mark += ", " + v.Date.Format("2 January 2006")
	}
	markWide := min(p.doc.GetStringWidth(mark), room/2)
	for i, line := range p.wrap(mark, markWide+0.1, plain, body) {
		p.set(plain, body, faded)
		p.text(right-p.doc.GetStringWidth(line), p.y+4.2+float64(i)*body*lead, line)
	}
	for _, line := range p.wrap(v.Name, room-markWide-8, bold, grand) {
		p.y += grand * lead * 0.82
		p.set(bold, grand, ink)
		p.text(left, p.y-1.6, line)
	}
	p.y += 1
	p.paragraph(what, 0, plain, large+1.5, moss)
	p.y += 1.4
	for _, f := range facts {
		p.paragraph(f, 0, plain, body, ink)
	}
	p.y += 3
}

// heading starts a section.
func (p *press) heading(words string) {
	p.need(large*lead + 3*body*lead + 6)
	p.y += 4.5
	p.paragraph(words, 0, bold, large, moss)
	p.y += 1.2
}

// remarks prints paragraphs with a mark before each.
func (p *press) remarks(says []string) {
	for _, s := range says {
		lines := len(p.wrap(s, room-4, plain, body))
		p.need(float64(min(lines, 3)) * body * lead)
		p.doc.SetFillColor(moss.r, moss.g, moss.b)
		p.doc.Rect(left+0.6, p.y+body*lead*0.42, 1.1, 1.1, "F")
		p.paragraph(s, 4, plain, body, ink)
		p.y += 0.8
	}
}

func percent(m quantity.Moisture) string { return fmt.Sprintf("%.3g %%", float64(m)) }

// groupRest says what a group comes to.
func groupRest(l *cutlist.List, g cutlist.Group) string {
	words := fmt.Sprintf("%s · %s · %s", l.Stands(g.Stock), counted(g.Pieces, "board"), l.Measure(g.Net))
	return words
}

func counted(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return fmt.Sprintf("%d %ss", n, of)
}

// sentence closes what is said of a line.
func sentence(says []string) string {
	if len(says) == 0 {
		return ""
	}
	return strings.Join(says, "; ") + "."
}

package wheelwright

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"time"

	"lostwood/internal/pattern"
)

// Write prints a wheel's sheets as a PDF, whole or not at all: its figures, the
// order of work and the cautions, then the gauge and the templates at full size,
// cut over pages of that paper. A roll is no paper for it: its pages are read at
// the bench. The same wheel gives the same bytes.
func Write(out io.Writer, s Subject, day time.Time, paper pattern.Paper) error {
	if paper.Feed != pattern.Sheets || paper.Height < 200 || paper.Width < 180 {
		return fmt.Errorf("the wheel's sheets are printed on cut paper of at least 180 by 200 mm, such as A4 or Letter, not on %s", paper.Name)
	}
	p := newPress(s, day, paper)
	p.page()
	p.title()
	for _, sec := range Figures(s) {
		p.section(sec)
	}
	p.list("Heed", Heeds(s))
	p.list("Order of work", OrderOfWork(s))
	p.list("Before the fire: a tyre is shrunk on once", BeforeFire(s))
	p.list("Cautions", Cautions())
	sheets := Sheets(s)
	p.drawings(sheets)
	for _, d := range sheets {
		p.sheet(d)
	}
	var whole bytes.Buffer
	if err := p.finish(&whole); err != nil {
		return fmt.Errorf("the sheets of the %s: %w", s.Name, err)
	}
	_, err := whole.WriteTo(out)
	return err
}

func (p *press) title() {
	p.words(margin, p.y+6, "Wheel sheet: "+p.s.Name, "B", 17)
	p.words(margin, p.y+12, p.s.Vehicle+" · issue "+p.s.Issue+" · every figure is worked out from the survey; the wheel itself, where it differs, goes before", "", 8)
	p.y += 14
}

func (p *press) head(words string) {
	p.room(22)
	p.y += 4
	p.rule(p.y)
	p.y = p.paragraph(words, "B", 10.5, margin, p.wide()-margin, p.y) + 1.5
}

// Where the columns of a row stand: its name, its figure, what to know of it.
const (
	figureAt = 50.
	noteAt   = 104.
)

func (p *press) section(sec Section) {
	p.head(sec.Head)
	const points = 8.
	right := p.wide() - margin
	for _, r := range sec.Rows {
		lines := max(p.lines(r.Name, "", points, figureAt-2), p.lines(r.Is, "B", points, noteAt-figureAt-3), p.lines(r.Note, "", points-1, right-margin-noteAt))
		p.room(float64(lines)*points*.3528*1.28 + 1)
		a := p.paragraph(r.Name, "", points, margin, margin+figureAt-2, p.y)
		b := p.paragraph(r.Is, "B", points, margin+figureAt, margin+noteAt-3, p.y)
		c := p.paragraph(r.Note, "", points-1, margin+noteAt, right, p.y)
		p.y = max(a, b, c) + .8
	}
}

func (p *press) list(head string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.head(head)
	const points = 8.5
	right := p.wide() - margin
	for i, l := range lines {
		p.room(float64(p.lines(l, "", points, right-margin-8))*points*.3528*1.28 + 2)
		p.words(margin, p.y+points*.3528*1.28, fmt.Sprintf("%d", i+1), "B", points)
		p.y = p.paragraph(l, "", points, margin+8, right, p.y) + 1.2
	}
}

// drawings tells of the sheets that follow.
func (p *press) drawings(sheets []Sheet) {
	p.head("The sheets at full size")
	const points = 8.5
	right := p.wide() - margin
	p.y = p.paragraph("Print without fitting to the page. Measure the 100 mm bars both ways before anything is cut. Lay each sheet over the one before it, dotted line on dotted line; A1 is at the lower left, letters go up, figures to the right.", "", points, margin, right, p.y) + 2
	for _, s := range sheets {
		dx, dy := float64(s.Check[1].X-s.Check[0].X), float64(s.Check[1].Y-s.Check[0].Y)
		check := fmt.Sprintf("%s Check over the joined sheets, end to end: %s.", s.Means, p.s.both(Length(math.Hypot(dx, dy))))
		p.room(float64(p.lines(check, "", points, right-margin-figureAt))*points*.3528*1.28 + 2)
		a := p.paragraph(s.Name, "B", points, margin, margin+figureAt-2, p.y)
		b := p.paragraph(check, "", points, margin+figureAt, right, p.y)
		p.y = max(a, b) + 1.2
	}
}

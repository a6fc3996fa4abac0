package order

import (
	"fmt"
	"io"
	"strconv"

	"lostwood/internal/cutlist"
)

// WriteOrder prints the sawmill's sheet, whole or not at all: what to quote for,
// with room for the prices, and how the wood is to be. The same list gives the
// same bytes.
func WriteOrder(w io.Writer, l *cutlist.List) error {
	const what = "Order to the sawmill"
	err := printed(w, l.Vehicle(), what, func(p *press) {
		p.masthead("Order to the sawmill, for a price", sawmillFacts(l))
		p.toFill([]string{"To", "From", "Wanted by"})
		p.boards(l)
		p.renewed = nil
		p.heading("What is wanted")
		p.remarks(l.Asked())
		p.heading("Please say in your answer")
		p.remarks([]string{
			"The price, by the piece or by your measure, and what your measure counts; sawing and delivery apart.",
			"The moisture now, how it was dried and since when, and what can be had only in other sizes.",
			"Of what you cannot supply in one board: which, and what you would offer for it.",
		})
	})
	if err != nil {
		return fmt.Errorf("the order to the sawmill: %w", err)
	}
	return nil
}

func sawmillFacts(l *cutlist.List) []string {
	m := l.Vehicle().Moisture
	return []string{fmt.Sprintf("Rough sizes in %s. Moisture wanted: %s. Every size is a least size.", unitWords(l), percent(m.Bought))}
}

// toFill are lines to write on.
func (p *press) toFill(names []string) {
	p.y += 1
	each := room / float64(len(names))
	for i, name := range names {
		x := left + float64(i)*each
		p.set(plain, small, faded)
		p.text(x, p.y+5, name)
		from := x + p.doc.GetStringWidth(name) + 1.5
		p.doc.SetDrawColor(hair.r, hair.g, hair.b)
		p.doc.SetLineWidth(0.3)
		p.doc.Line(from, p.y+5.6, x+each-5, p.y+5.6)
	}
	p.y += 8
}

// boards lists every size, by species and thickness, with room for a price.
func (p *press) boards(l *cutlist.List) {
	p.heading("Boards")
	if len(l.Groups) == 0 {
		p.paragraph("Nothing is to be bought.", 0, plain, body, ink)
		return
	}
	in, measure, long := l.UnitName(), "Bd ft", "Long"
	if in == "mm" {
		measure, long = "m3", "Long, mm"
	}
	t := &table{press: p, columns: []column{
		{head: "Line", width: 12, side: toRight},
		{head: "Pieces", width: 15, side: toRight},
		{head: "Wide, " + in, width: 20, side: toRight},
		{head: long, width: 27, side: toRight},
		{head: measure, width: 17, side: toRight},
		{head: "Asked of it", width: room - 135},
		{head: "Price each", width: 22, blank: true},
		{head: "In all", width: 22, blank: true},
	}}
	p.renewed = t.head
	t.head()
	var last *cutlist.Group
	for i, r := range l.Rough() {
		if r.Group != last {
			last = r.Group
			t.band(last.Lines[0].Timber(), last.Wood.Botanical, "Thickness "+groupRest(l, *last)+" · with the waste about "+l.Measure(last.Order))
		}
		asks := r.Asks()
		if r.Doubtful {
			asks = spaced(asks, "? ask before sawing")
		}
		figure := fmt.Sprintf("%.2f", r.Net.BoardFeet())
		if in == "mm" {
			figure = fmt.Sprintf("%.4f", r.Net.CubicMetres())
		}
		t.row([]cell{
			{strconv.Itoa(i + 1), plain, faded},
			{strconv.Itoa(r.Pieces), bold, ink},
			{l.Figure(r.Sawn.Wide), plain, ink},
			{l.LongFigure(r.Sawn.Long), plain, ink},
			{figure, plain, ink},
			{asks, plain, ink},
			{},
			{},
		})
	}
	p.renewed = nil
}

func spaced(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

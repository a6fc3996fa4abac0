package order

import (
	"fmt"
	"io"
	"slices"
	"strconv"

	"lostwood/internal/cutlist"
)

// WriteCutting prints the joiner's cutting list, whole or not at all: what to
// rough out of which boards, what each part is made to, and what to heed. Heed
// holds further remarks, such as what movement asks. The same list gives the
// same bytes.
func WriteCutting(w io.Writer, l *cutlist.List, heed []string) error {
	const what = "Cutting list"
	err := printed(w, l.Vehicle(), what, func(p *press) {
		p.masthead("Cutting list, for the joiner", joinerFacts(l))
		p.roughing(l)
		p.making(l)
		p.renewed = nil
		p.heading("To heed, part by part")
		p.remarks(partRemarks(l))
		if len(heed) > 0 {
			p.heading("What the wood will do")
			p.remarks(heed)
		}
		p.heading("How these sizes were reckoned")
		p.remarks(l.Said())
	})
	if err != nil {
		return fmt.Errorf("the cutting list: %w", err)
	}
	return nil
}

func joinerFacts(l *cutlist.List) []string {
	m := l.Vehicle().Moisture
	facts := []string{fmt.Sprintf("All sizes in %s, long x wide x thick, along the grain first. Bought at %s moisture, worked at %s, kept at %s.",
		unitWords(l), percent(m.Bought), percent(l.WorkedAt()), percent(m.Service))}
	return append(facts, "A ? stands behind every size that rests on a guess. Offer each part up to its irons before boring through.")
}

func unitWords(l *cutlist.List) string {
	if l.UnitName() == "mm" {
		return "millimetres"
	}
	return "inches"
}

// roughing lists the boards to saw first, group by group.
func (p *press) roughing(l *cutlist.List) {
	p.heading("1  Rough out")
	if len(l.Groups) == 0 {
		p.paragraph("Nothing is to be sawn.", 0, plain, body, ink)
		return
	}
	in := l.UnitName()
	t := &table{press: p, boxed: true, columns: []column{
		{width: 6},
		{head: "Off", width: 11, side: toRight},
		{head: "Sawn long, " + in, width: 24, side: toRight},
		{head: "Sawn wide, " + in, width: 24, side: toRight},
		{head: "It makes", width: room - 65},
	}}
	p.renewed = t.head
	t.head()
	var last *cutlist.Group
	for _, r := range l.Rough() {
		if r.Group != last {
			last = r.Group
			t.band(last.Lines[0].Timber(), last.Wood.Botanical, groupRest(l, *last))
		}
		guess := ""
		if r.Doubtful {
			guess = "?"
		}
		makes := r.Parts()
		if asks := r.Asks(); asks != "" {
			makes += " (" + asks + ")"
		}
		t.row([]cell{
			{},
			{strconv.Itoa(r.Pieces), bold, ink},
			{l.Figure(r.Sawn.Long) + guess, plain, ink},
			{l.Figure(r.Sawn.Wide) + guess, plain, ink},
			{makes, plain, ink},
		})
	}
	p.renewed = nil
}

// making lists the parts, with the sizes to make them to.
func (p *press) making(l *cutlist.List) {
	p.need(45) // the heading with what it heads
	p.heading("2  Make")
	if l.WorkedAt() != l.Vehicle().Moisture.Service {
		p.paragraph(fmt.Sprintf("Dress the stock to the sizes at %s, the moisture of the day, and it comes to those in service. Of a bend the first sizes are of the straight stock, the others over the bends.",
			percent(l.WorkedAt())), 0, plain, body, ink)
		p.y += 1.2
	}
	in := l.UnitName()
	stock, service := "Stock at "+percent(l.WorkedAt())+", "+in, "In service, "+in
	t := &table{press: p, boxed: true, columns: []column{
		{width: 6},
		{head: "No.", width: 9, side: toRight},
		{head: "Part", width: 37},
		{head: "Off", width: 9, side: toRight},
		{head: "Timber", width: 23},
		{head: "long", width: 19, side: toRight, over: stock},
		{head: "wide", width: 15, side: toRight, over: stock},
		{head: "thick", width: 14, side: toRight, over: stock},
		{head: "long", width: 18, side: toRight, over: service},
		{head: "wide", width: 14.5, side: toRight, over: service},
		{head: "thick", width: room - 164.5, side: toRight, over: service},
	}}
	p.renewed = t.head
	t.head()
	for _, n := range l.Lines {
		worked, finished := l.WorkedFigures(n), l.FinishedFigures(n)
		tone := ink
		if !n.ToMake {
			tone = faded
		}
		off := strconv.Itoa(n.Item.NumberOff)
		t.row([]cell{
			{},
			{strconv.Itoa(n.Item.Number), plain, tone},
			{n.Title(), bold, tone},
			{off, bold, tone},
			{n.Timber(), plain, tone},
			{worked.Long, plain, tone},
			{worked.Wide, plain, tone},
			{worked.Thick, plain, tone},
			{finished.Long, plain, faded},
			{finished.Wide, plain, faded},
			{finished.Thick, plain, faded},
		})
	}
	p.renewed = nil
}

// partRemarks are what to heed of each part, those of near and off alike once.
func partRemarks(l *cutlist.List) []string {
	var out []string
	for _, n := range l.Lines {
		says := l.Remarks(n)
		if len(says) == 0 {
			continue
		}
		if s := fmt.Sprintf("No. %d %s: %s", n.Item.Number, n.Item.Name, sentence(says)); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		out = append(out, "Nothing beyond the rules of the trade.")
	}
	return out
}

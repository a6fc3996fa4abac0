package movement

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
)

// mm is a cell in millimetres, on paper with its sign and unit.
func (r *Report) mm(l quantity.Length, why error) listing.Cell {
	if why != nil {
		return listing.Cell{Words: quantity.NotKnown}
	}
	return listing.Cell{Value: listing.Rounded(l.Millimetres(), 3), Words: r.signed(l)}
}

// sized is a cell of a plain size.
func (r *Report) sized(l quantity.Length) listing.Cell {
	return listing.Cell{Value: listing.Rounded(l.Millimetres(), 3), Words: r.size(l)}
}

func (r *Report) title(what string) string {
	return fmt.Sprintf("%s, issue %s: %s", r.vehicle.Name, r.vehicle.Issue, what)
}

// foot says how it was reckoned.
func (r *Report) foot() []string {
	m := r.vehicle.Moisture
	return []string{
		"",
		fmt.Sprintf("Against the size in service, at %s: at the driest, %s; at the wettest, %s; on the day it is worked, %s.",
			percent(m.Service), percent(m.Driest), percent(m.Wettest), percent(r.worked())),
		"The rings not being known, across the grain the larger way is taken. Clear, straight wood; the average of its kind.",
	}
}

// PartsList is a row for each item.
func (r *Report) PartsList() *listing.List {
	l := &listing.List{Title: r.title("what the wood does"), Foot: r.foot(), Columns: []listing.Column{
		{Key: "number", Head: "No.", Align: listing.Right},
		{Key: "part", Head: "Part"},
		{Key: "hand"},
		{Key: "timber", Head: "Timber"},
		{Key: "broad_mm", Head: "Broad", Align: listing.Right},
		{Key: "broad_driest_mm", Head: "Driest", Align: listing.Right},
		{Key: "broad_wettest_mm", Head: "Wettest", Align: listing.Right},
		{Key: "broad_worked_mm", Head: "Worked", Align: listing.Right},
		{Key: "thin_mm", Head: "Thin", Align: listing.Right},
		{Key: "thin_driest_mm"},
		{Key: "thin_wettest_mm"},
		{Key: "thin_year_mm", Head: "Year", Align: listing.Right},
		{Key: "long_mm", Head: "Long", Align: listing.Right},
		{Key: "long_driest_mm"},
		{Key: "long_wettest_mm"},
		{Key: "long_year_mm", Head: "Year", Align: listing.Right},
	}}
	for _, p := range r.Parts {
		b, t, g := p.BroadBy, p.By, p.LongBy
		name := strings.TrimSpace(p.Item.Name + " " + strings.ToUpper(p.Item.Hand.String()))
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: p.Item.Number},
			{Value: p.Item.Name, Words: name},
			{Value: p.Item.Hand.String()},
			{Value: p.Item.Timber},
			r.sized(p.Broad), r.mm(b.Driest, b.Why), r.mm(b.Wettest, b.Why), r.mm(b.Worked, b.Why),
			r.sized(p.Thin), r.mm(t.Driest, t.Why), r.mm(t.Wettest, t.Why), r.mm(t.Year(), t.Why),
			r.sized(p.Long), r.mm(g.Driest, g.Why), r.mm(g.Wettest, g.Why), r.mm(g.Year(), g.Why),
		})
	}
	return l
}

// SpacingsList is a row for everything that holds a timber in two places or more.
func (r *Report) SpacingsList() *listing.List {
	l := &listing.List{Title: r.title("fastenings apart in the wood"), Foot: r.foot(), Columns: []listing.Column{
		{Key: "part", Head: "Timber part"},
		{Key: "held_by", Head: "Held by"},
		{Key: "way", Head: "Grain"},
		{Key: "fastenings", Head: "Fastenings"},
		{Key: "span_mm", Head: "Apart", Align: listing.Right},
		{Key: "driest_mm", Head: "Driest", Align: listing.Right},
		{Key: "wettest_mm", Head: "Wettest", Align: listing.Right},
		{Key: "worked_mm"},
		{Key: "play_mm", Head: "Bolts give", Align: listing.Right},
		{Key: "slot_mm"},
		{Key: "verdict", Head: "So"},
	}}
	for _, s := range r.Spacings {
		var ids []string
		for _, h := range s.Holes {
			ids = append(ids, h.Fastening.ID)
		}
		way := "across"
		if s.Grain == Along {
			way = "along"
		}
		slot := listing.Cell{}
		if s.By.Known() {
			slot.Value = listing.Rounded(math.Ceil(s.longest().Millimetres()*1000)/1000, 3)
		}
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: s.Part.Name},
			{Value: s.Holder},
			{Value: way},
			{Value: strings.Join(ids, ", ")},
			r.sized(s.Span), r.mm(s.By.Driest, s.By.Why), r.mm(s.By.Wettest, s.By.Why), r.mm(s.By.Worked, s.By.Why),
			r.sized(s.Play), slot,
			{Value: r.verdict(s)},
		})
	}
	return l
}

// longest is the longest slot a spacing wants.
func (s Spacing) longest() quantity.Length {
	var most quantity.Length
	for _, slot := range s.Slots() {
		most = max(most, slot.By)
	}
	return most
}

func (r *Report) verdict(s Spacing) string {
	var words []string
	if s.TooFar() {
		words = append(words, "over "+r.tooFar()+" across")
	}
	switch most := s.longest(); {
	case !s.By.Known():
		words = append(words, quantity.NotKnown)
	case most > 0:
		words = append(words, "slot "+r.up(most))
	default:
		words = append(words, "bolts give enough")
	}
	return strings.Join(words, "; ")
}

// GapsList is a row for each two slats side by side.
func (r *Report) GapsList() *listing.List {
	l := &listing.List{Title: r.title("gaps between slats"), Foot: r.foot(), Columns: []listing.Column{
		{Key: "slat", Head: "Slat"},
		{Key: "next", Head: "Next to"},
		{Key: "service_mm", Head: "In service", Align: listing.Right},
		{Key: "driest_mm", Head: "Driest", Align: listing.Right},
		{Key: "wettest_mm", Head: "Wettest", Align: listing.Right},
		{Key: "worked_mm", Head: "As fitted", Align: listing.Right},
	}}
	room := func(g Gap, size quantity.Length) listing.Cell {
		if g.Why != nil {
			return listing.Cell{Words: quantity.NotKnown}
		}
		c := r.sized(size)
		if size <= 0 {
			c.Words += ", presses"
		}
		return c
	}
	for _, g := range r.Gaps {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: g.Between[0].Name},
			{Value: g.Between[1].Name},
			r.sized(g.Service),
			room(g, g.Driest), room(g, g.Wettest), room(g, g.Worked),
		})
	}
	if len(l.Rows) == 0 {
		l.Foot = append(l.Foot, "No two slats lie side by side.")
	}
	return l
}

// GripsList is a row for each bolt and clip.
func (r *Report) GripsList() *listing.List {
	l := &listing.List{Title: r.title("what bolts and clips hold"), Foot: r.foot(), Columns: []listing.Column{
		{Key: "fastening", Head: "Fastening"},
		{Key: "wood_mm", Head: "Wood in it", Align: listing.Right},
		{Key: "driest_mm", Head: "Driest", Align: listing.Right},
		{Key: "wettest_mm", Head: "Wettest", Align: listing.Right},
		{Key: "worked_mm", Head: "Worked", Align: listing.Right},
		{Key: "slack_mm", Head: "Slack when driest", Align: listing.Right},
	}}
	for _, g := range r.Grips {
		slack := listing.Cell{Words: quantity.NotKnown}
		if g.By.Known() {
			slack = listing.Cell{Value: listing.Rounded(g.By.Shrinks().Millimetres(), 3), Words: r.up(g.By.Shrinks())}
		}
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: g.Fastening.Title},
			r.sized(g.Wood),
			r.mm(g.By.Driest, g.By.Why), r.mm(g.By.Wettest, g.By.Why), r.mm(g.By.Worked, g.By.Why), slack,
		})
	}
	return l
}

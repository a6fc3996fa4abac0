package cutlist

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// Totals is the yard's list: what to quote for, a row a species and thickness.
func (l *List) Totals() *listing.List {
	out := &listing.List{
		Title: fmt.Sprintf("%s, issue %s, %s: timber to buy", l.vehicle.Name, l.vehicle.Issue,
			l.vehicle.Date.Format("2 January 2006")),
		Columns: l.totalsColumns(),
	}
	for _, g := range l.Groups {
		out.Rows = append(out.Rows, l.totalsRow(g))
	}
	out.Foot = l.totalsFoot()
	return out
}

func (l *List) totalsColumns() []listing.Column {
	u, cost := l.vehicle.Unit, ""
	if len(l.settings.Prices) > 0 {
		cost = "Cost"
	}
	mass, feet, order, surface, net, metres := "lb", "Bd ft", "To order", "NHLA", "", ""
	if !imperial(u) {
		mass, feet, order, surface, net, metres = "kg", "", "", "", "m3", "To order"
	}
	return []listing.Column{
		{Key: "timber", Head: "Timber"},
		{Key: "botanical"},
		{Key: "stock", Head: "Thickness"},
		{Key: "stock_thick_mm"},
		{Key: "pieces", Head: "Pieces", Align: listing.Right},
		{Key: "rough_sizes", Head: "Rough sizes, wide x long"},
		{Key: "widest_mm"},
		{Key: "longest_mm"},
		{Key: "bought_moisture_percent"},
		{Key: "board_feet", Head: feet, Align: listing.Right},
		{Key: "cubic_metres", Head: net, Align: listing.Right},
		{Key: "waste_percent", Head: "Waste", Align: listing.Right},
		{Key: "order_board_feet", Head: order, Align: listing.Right},
		{Key: "order_nhla_board_feet", Head: surface, Align: listing.Right},
		{Key: "order_cubic_metres", Head: metres, Align: listing.Right},
		{Key: "order_super_feet"},
		{Key: "order_mass_kg", Head: mass, Align: listing.Right},
		{Key: "order_dry_mass_kg"},
		{Key: "cost", Head: cost, Align: listing.Right},
		{Key: "currency"},
		{Key: "making"},
		{Key: "guessed"},
		{Key: "parts"},
	}
}

func (l *List) totalsRow(g Group) []listing.Cell {
	u := l.vehicle.Unit
	first := g.Lines[0]
	name := first.timber()
	if name != g.Wood.Botanical && g.Wood.Botanical != "" {
		name += "\n" + g.Wood.Botanical
	}
	stock := g.Stock.Name
	if g.Stock.Kept == ToOrder {
		stock += "\nto order"
	}
	share := listing.Rounded(100*(float64(g.Order/g.Net)-1), 1)
	wide, long := g.largest()
	return []listing.Cell{
		{Value: first.timber(), Words: name},
		{Value: g.Wood.Botanical},
		{Value: g.Stock.Name, Words: stock},
		{Value: up(g.Stock.Rough)},
		{Value: g.Pieces},
		{Value: joined(g.cuts(exactly), "; "), Words: joined(g.cuts(roughly(u)), "\n")},
		{Value: up(wide)},
		{Value: up(long)},
		{Value: float64(l.vehicle.Moisture.Bought)},
		feet(g.Net), metres(g.Net),
		{Value: share, Words: percent(share)},
		feet(g.Order),
		{Value: g.Charged},
		metres(g.Order),
		{Value: listing.Rounded(float64(g.Order/timber.SuperFoot), 4)},
		g.Mass.cell(1, u), g.Dry.cell(1, u), g.Cost.cell(),
		{Value: g.Cost.Currency},
		{Value: g.each(func(n Line) []string { return []string{making(n.Making)} })},
		{Value: g.each(func(n Line) []string { return guessedOf(n) })},
		{Value: g.each(func(n Line) []string { return []string{fmt.Sprintf("%d %s", n.Item.Number, nameOf(n.Item))} })},
	}
}

// cell is a cost, with its currency on paper.
func (c Cost) cell() listing.Cell {
	if !c.Known {
		return listing.Cell{Words: "-"}
	}
	return listing.Cell{Value: listing.Rounded(c.Amount, 2), Words: c.String()}
}

// String is a cost as it is printed, to the hundredth.
func (c Cost) String() string { return c.Currency + fmt.Sprintf("%.2f", c.Amount) }

// largest are the widest board and the longest that the group needs.
func (g Group) largest() (wide, long quantity.Length) {
	for _, n := range g.Lines {
		wide, long = max(wide, n.board()), max(long, n.Sawn.Long)
	}
	return wide, long
}

func joined(cuts []cut, by string) string {
	out := make([]string, len(cuts))
	for i, c := range cuts {
		out[i] = c.String()
	}
	return strings.Join(out, by)
}

// exactly writes a rough size for programs, in mm.
func exactly(n Line) string {
	tenth := quantity.Millimetre / 10
	return fmt.Sprintf("%.1f x %.1f mm", roundUp(n.board(), tenth).Millimetres(), roundUp(n.Sawn.Long, tenth).Millimetres()) + shaped(n)
}

// shaped names what is not made straight.
func shaped(n Line) string {
	if n.Making == parts.Squared {
		return ""
	}
	return ", " + making(n.Making)
}

// roughly writes a rough size as a yard reads it, rounded up, a guess marked.
func roughly(u quantity.Unit) func(Line) string {
	return func(n Line) string {
		s := Size{Long: n.Sawn.Long, Wide: n.board()}.upward(u)
		words := plain(s.Wide, u) + " x " + plain(s.Long, u) + " mm"
		if imperial(u) {
			words = quantity.Fraction(s.Wide, 16) + " in x " + quantity.FeetInches(s.Long, 4)
		}
		words += shaped(n)
		if n.doubtful() {
			words += " ?"
		}
		return words
	}
}

func guessedOf(n Line) []string {
	var out []string
	for _, d := range guessedNames(n.Item) {
		out = append(out, n.Item.Name+" "+d)
	}
	return out
}

// each gathers what the lines say, each thing once.
func (g Group) each(says func(Line) []string) string {
	var out []string
	for _, n := range g.Lines {
		for _, s := range says(n) {
			if !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	return strings.Join(out, "; ")
}

// makes says whether anything to be made is made that way.
func (l *List) makes(m parts.Making) bool {
	return slices.ContainsFunc(l.Lines, func(n Line) bool { return n.ToMake && n.Making == m })
}

// present are the names of what is there already or left open.
func (l *List) present() []string {
	var out []string
	for _, n := range l.Lines {
		if !n.ToMake {
			out = append(out, fmt.Sprintf("No. %d %s (%v)", n.Item.Number, nameOf(n.Item), n.Item.Status))
		}
	}
	return out
}

// bought is the moisture asked of the yard.
func bought(m vehicle.Moisture) string {
	if m.Bought >= green {
		return fmt.Sprintf("Moisture wanted: green off the saw, about %s; end-seal it and put it in stick at once.", percent(float64(m.Bought)))
	}
	return fmt.Sprintf("Moisture wanted: %s of the dry weight, by meter, in the middle of the board as well as at its face; say how it was dried.", percent(float64(m.Bought)))
}

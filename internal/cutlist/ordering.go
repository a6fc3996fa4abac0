package cutlist

import (
	"fmt"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Order is the sawmill's sheet: a row for every size of board.
func (l *List) Order() *listing.List {
	out := &listing.List{
		Title:   fmt.Sprintf("%s, issue %s, %s: order to the sawmill", l.vehicle.Name, l.vehicle.Issue, l.vehicle.Date.Format("2 January 2006")),
		Columns: orderColumns(l.vehicle.Unit),
		Foot:    paper(l.Asked()),
	}
	for i, r := range l.Rough() {
		out.Rows = append(out.Rows, l.orderRow(i+1, r))
	}
	return out
}

func orderColumns(u quantity.Unit) []listing.Column {
	in := shown(u).String()
	inFeet, inMetres := "Bd ft", ""
	if !imperial(u) {
		inFeet, inMetres = "", "m3"
	}
	return []listing.Column{
		{Key: "line", Head: "Line", Align: listing.Right},
		{Key: "timber", Head: "Timber"},
		{Key: "botanical", Head: "Botanical name"},
		{Key: "stock", Head: "Thickness"},
		{Key: "stock_thick_mm"},
		{Key: "wide_mm", Head: "Wide, " + in, Align: listing.Right},
		{Key: "long_mm", Head: "Long, " + in, Align: listing.Right},
		{Key: "pieces", Head: "Pieces", Align: listing.Right},
		{Key: "board_feet", Head: inFeet, Align: listing.Right},
		{Key: "super_feet"},
		{Key: "cubic_metres", Head: inMetres, Align: listing.Right},
		{Key: "moisture_percent"},
		{Key: "asks", Head: "Asked of it"},
		{Key: "guessed"},
		{Key: "parts"},
	}
}

func (l *List) orderRow(number int, r Rough) []listing.Cell {
	u, g := l.vehicle.Unit, r.Group
	asks, guessed := r.Asks(), ""
	words := asks
	if r.Doubtful {
		words, guessed = strings.TrimSpace(words+" ?"), "a size stands on a guess"
	}
	return []listing.Cell{
		{Value: number},
		{Value: g.Lines[0].timber()},
		{Value: g.Wood.Botanical},
		{Value: g.Stock.Name, Words: g.Stock.words()},
		{Value: up(g.Stock.Rough)},
		{Value: up(r.Sawn.Wide), Words: plain(r.Sawn.Wide, u)},
		{Value: up(r.Sawn.Long), Words: plain(r.Sawn.Long, u)},
		{Value: r.Pieces},
		feet(r.Net),
		{Value: listing.Rounded(float64(r.Net/timber.SuperFoot), 4)},
		metres(r.Net),
		{Value: float64(l.vehicle.Moisture.Bought)},
		{Value: asks, Words: words},
		{Value: guessed},
		{Value: r.Parts()},
	}
}

// words name a stock, and that it is to order.
func (s Stock) words() string {
	if s.Kept == ToOrder {
		return s.Name + ", to order"
	}
	return s.Name
}

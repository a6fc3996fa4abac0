package cutlist

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// Cutting is the joiner's list: a row an item and hand. What is not "each" is
// of all its number off.
func (l *List) Cutting() *listing.List {
	u := l.vehicle.Unit
	out := &listing.List{
		Title:   fmt.Sprintf("%s, issue %s: cutting list", l.vehicle.Name, l.vehicle.Issue),
		Columns: cuttingColumns(u),
	}
	for _, n := range l.Lines {
		out.Rows = append(out.Rows, l.cuttingRow(n))
	}
	out.Foot = l.cuttingFoot()
	return out
}

// cuttingColumns: on paper the three sizes stand together under the first of them.
func cuttingColumns(u quantity.Unit) []listing.Column {
	in := shown(u).String()
	feet, metres := "Bd ft", ""
	if !imperial(u) {
		feet, metres = "", "m3"
	}
	return []listing.Column{
		{Key: "number", Head: "No.", Align: listing.Right},
		{Key: "part", Head: "Part"},
		{Key: "hand"},
		{Key: "number_off", Head: "Off", Align: listing.Right},
		{Key: "timber", Head: "Timber"},
		{Key: "botanical"},
		{Key: "making"},
		{Key: "status"},
		{Key: "finished_long_mm", Head: "Finished, " + in},
		{Key: "finished_wide_mm"},
		{Key: "finished_thick_mm"},
		{Key: "blank_long_mm"},
		{Key: "blank_wide_mm"},
		{Key: "blank_thick_mm"},
		{Key: "rings"},
		{Key: "worked_long_mm"},
		{Key: "worked_wide_mm"},
		{Key: "worked_thick_mm"},
		{Key: "sawn_long_mm", Head: "Sawn, " + in},
		{Key: "sawn_wide_mm"},
		{Key: "sawn_thick_mm"},
		{Key: "green_sawn_long_mm"},
		{Key: "green_sawn_wide_mm"},
		{Key: "green_sawn_thick_mm"},
		{Key: "boards_each"},
		{Key: "stock", Head: "Buy"},
		{Key: "stock_thick_mm"},
		{Key: "bought_moisture_percent"},
		{Key: "worked_moisture_percent"},
		{Key: "service_moisture_percent"},
		{Key: "board_feet", Head: feet, Align: listing.Right},
		{Key: "cubic_metres", Head: metres, Align: listing.Right},
		{Key: "waste_percent"},
		{Key: "mass_each_kg"},
		{Key: "mass_kg"},
		{Key: "bought_mass_kg"},
		{Key: "guessed"},
		{Key: "remarks"},
	}
}

func (l *List) cuttingRow(n Line) []listing.Cell {
	u, it := l.vehicle.Unit, n.Item
	off := float64(it.NumberOff)
	row := []listing.Cell{
		{Value: it.Number},
		{Value: it.Name, Words: strings.TrimSpace(it.Name + " " + strings.ToUpper(it.Hand.String()))},
		{Value: it.Hand.String()},
		{Value: it.NumberOff},
		{Value: n.timber()},
		{Value: n.Wood.Botanical},
		{Value: making(n.Making)},
		{Value: it.Status.String()},
	}
	row = append(row, sizeCells(n.Finished, n.Finished.words(u, n.guessedBox()))...)
	row = append(row, sizeCells(n.Blank, "")...)
	row = append(row, listing.Cell{Value: n.Rings.String()})
	row = append(row, sizeCells(n.Worked, "")...)
	row = append(row, sizeCells(n.Sawn, n.Sawn.upward(u).words(u, n.guessedBlank()))...)
	row = append(row, n.greenCells()...)
	row = append(row, listing.Cell{Value: n.Boards})
	row = append(row, n.stockCells()...)
	row = append(row,
		listing.Cell{Value: float64(l.vehicle.Moisture.Bought)},
		listing.Cell{Value: float64(worked(l.vehicle.Moisture))},
		listing.Cell{Value: float64(l.vehicle.Moisture.Service)})
	row = append(row, n.measureCells()...)
	return append(row,
		n.Mass.cell(1, u), n.Mass.cell(off, u), n.boughtMass(off, u),
		listing.Cell{Value: strings.Join(guessedNames(it), "; ")},
		listing.Cell{Value: strings.Join(l.Remarks(n), "; ")})
}

// timber is the wood's name as the trade has it.
func (n Line) timber() string {
	if n.Wood.Common != "" {
		return n.Wood.Common
	}
	return n.Wood.Botanical
}

// sizeCells are in mm, up to a thousandth so that no size is listed below itself.
func sizeCells(s Size, words string) []listing.Cell {
	return []listing.Cell{{Value: up(s.Long), Words: words}, {Value: up(s.Wide)}, {Value: up(s.Thick)}}
}

func up(l quantity.Length) float64 {
	return listing.Rounded(math.Ceil(l.Millimetres()*1000-1e-6)/1000, 3)
}

// greenCells are nothing where no green size is known.
func (n Line) greenCells() []listing.Cell {
	if n.Green == (Size{}) {
		return make([]listing.Cell, 3)
	}
	return sizeCells(n.Green, "")
}

// boughtMass is that of the boards for the whole line, and nothing for what is there already.
func (n Line) boughtMass(off float64, u quantity.Unit) listing.Cell {
	if !n.ToMake {
		return listing.Cell{}
	}
	return n.Rough.cell(off, u)
}

// stockCells say what to buy, and nothing for what is there already.
func (n Line) stockCells() []listing.Cell {
	if !n.ToMake {
		return []listing.Cell{{Words: "none"}, {}}
	}
	words := n.Stock.Name + shaped(n)
	if n.Stock.Kept == ToOrder {
		words += ", ask"
	}
	return []listing.Cell{{Value: n.Stock.Name, Words: words}, {Value: up(n.Stock.Rough)}}
}

func (n Line) measureCells() []listing.Cell {
	if !n.ToMake {
		return []listing.Cell{{}, {}, {}}
	}
	return []listing.Cell{feet(n.all()), metres(n.all()), {Value: listing.Rounded(100*n.Waste, 1)}}
}

func feet(v quantity.Volume) listing.Cell {
	return listing.Cell{Value: listing.Rounded(v.BoardFeet(), 4), Words: fmt.Sprintf("%.2f", v.BoardFeet())}
}

func metres(v quantity.Volume) listing.Cell {
	return listing.Cell{Value: listing.Rounded(v.CubicMetres(), 7), Words: fmt.Sprintf("%.4f", v.CubicMetres())}
}

// cell gives so many times the mass, on paper in the vehicle's unit.
func (m Mass) cell(times float64, u quantity.Unit) listing.Cell {
	if !m.Known {
		return listing.Cell{Words: "-"}
	}
	all := m.Mass * quantity.Mass(times)
	shown := float64(all)
	if imperial(u) {
		shown = all.Pounds()
	}
	return listing.Cell{Value: listing.Rounded(float64(all), 4), Words: fmt.Sprintf("%.1f", shown)}
}

// making is how a part comes out of its stock, in a word.
func making(m parts.Making) string {
	switch m {
	case parts.Curved:
		return "curve"
	case parts.Steamed:
		return "bend"
	case parts.Lathed:
		return "turned"
	}
	return "straight"
}

// Remarks are what to heed of one line.
func (l *List) Remarks(n Line) []string {
	switch n.Item.Status {
	case vehicle.Made, vehicle.Fitted:
		return append([]string{n.Item.Status.String() + " already: nothing to buy"}, n.Item.Notes...)
	case vehicle.LeftOpen:
		return append([]string{"left open: nothing to buy"}, n.Item.Notes...)
	}
	var out []string
	if len(n.Item.Fails) > 0 {
		out = append(out, strings.ToUpper(vehicle.NotFitting)+" as it stands: do not cut it yet. "+n.Item.Fails[0])
	}
	switch n.Making {
	case parts.Steamed:
		out = append(out, "to be steam-bent: sawn straight, its length that along the bend; the finished size is over the bends")
	case parts.Curved:
		out = append(out, "sawn to its curve out of the squared piece, the grain along its chord")
	}
	if n.Rings.Lie != timber.RingsNotKnown {
		out = append(out, "reckoned as "+n.Rings.String()+": look at the end of the board before it is cut")
	}
	out = append(out, n.bendWarnings()...)
	if n.Boards > 1 {
		out = append(out, fmt.Sprintf("jointed up from %d boards side by side; or one wide board, where the yard has it", n.Boards))
	}
	if n.Boards == 1 && n.Sawn.Wide > l.Allowances.WidestBoard {
		out = append(out, "wider than boards usually come: ask, and do not joint it up without thought")
	}
	if n.Stock.Kept == ToOrder {
		out = append(out, "thicker than yards stock: ask for it sawn to order, or build it up from thinner boards")
	}
	return append(out, n.Item.Notes...)
}

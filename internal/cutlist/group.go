package cutlist

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Group is what one order line comes to: the pieces of one species out of
// one thickness.
type Group struct {
	Wood    timber.Species
	Stock   Stock
	Lines   []Line
	Pieces  int             // boards to be cut, all told
	Net     quantity.Volume // of the boards, without waste
	Order   quantity.Volume // with it
	Charged float64         // board feet of the order by the hardwood trade's rule
	Mass    Mass            // of the order, as bought
	Dry     Mass            // of the same, dried to the service moisture
	Cost    Cost            // of the order
}

// total sorts what is to be made into groups.
func (l *List) total(woods timber.Catalogue) ([]Group, error) {
	var gs []*Group
	for _, n := range l.Lines {
		if !n.ToMake {
			continue
		}
		i := slices.IndexFunc(gs, func(g *Group) bool {
			return g.Wood.Common == n.Wood.Common && g.Wood.Botanical == n.Wood.Botanical && g.Stock.Name == n.Stock.Name
		})
		if i < 0 {
			i = len(gs)
			gs = append(gs, &Group{Wood: n.Wood, Stock: n.Stock})
		}
		gs[i].Lines = append(gs[i].Lines, n)
	}
	var out []Group
	for _, g := range gs {
		if err := g.add(l.vehicle.Moisture); err != nil {
			return nil, err
		}
		g.Cost = l.settings.cost(woods, *g)
		out = append(out, *g)
	}
	slices.SortStableFunc(out, func(a, b Group) int {
		return cmp.Or(
			strings.Compare(strings.ToLower(a.Lines[0].timber()), strings.ToLower(b.Lines[0].timber())),
			strings.Compare(a.Wood.Botanical, b.Wood.Botanical),
			cmp.Compare(a.Stock.Rough, b.Stock.Rough),
		)
	})
	return out, nil
}

func (g *Group) add(m vehicle.Moisture) error {
	for _, n := range g.Lines {
		g.Pieces += n.pieces()
		g.Net += n.all()
		g.Order += n.all() * quantity.Volume(1+n.Waste)
	}
	var err error
	if g.Charged, err = charged(g.Order, g.Stock.Nominal); err != nil {
		return err
	}
	g.Mass, err = massOf(g.Wood, g.Order, m.Bought)
	g.Dry = g.Mass
	g.Dry.Mass *= quantity.Mass((100 + float64(m.Service)) / (100 + float64(m.Bought))) // the water goes, the wood stays
	return err
}

// charged is the order as one bundle by the National Hardwood Lumber
// Association's practice: its surface to a whole square foot, by the charged
// thickness, to a whole board foot. The boards that come are tallied one by one.
func charged(order quantity.Volume, stock timber.Nominal) (float64, error) {
	const long = 12 * quantity.Foot
	wide := quantity.Length(float64(order) / float64(stock.Rough) / float64(long))
	m, err := timber.SurfaceMeasure.Measure([]timber.Board{{Width: wide, Length: long, Thickness: stock}})
	return m.BoardFeet, err
}

// A cut is boards of one rough size.
type cut struct {
	pieces int
	words  string
}

// cuts are the rough sizes of a group as written by words, the widest first.
func (g Group) cuts(words func(Line) string) []cut {
	lines := slices.Clone(g.Lines)
	slices.SortStableFunc(lines, func(a, b Line) int {
		return cmp.Or(cmp.Compare(b.board(), a.board()), cmp.Compare(b.Sawn.Long, a.Sawn.Long))
	})
	var out []cut
	for _, n := range lines {
		w := words(n)
		if i := slices.IndexFunc(out, func(c cut) bool { return c.words == w }); i >= 0 {
			out[i].pieces += n.pieces()
			continue
		}
		out = append(out, cut{n.pieces(), w})
	}
	return out
}

// board is the sawn width of one board of a piece.
func (n Line) board() quantity.Length { return n.Sawn.Wide / quantity.Length(n.Boards) }

func (c cut) String() string { return fmt.Sprintf("%d of %s", c.pieces, c.words) }

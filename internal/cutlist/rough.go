package cutlist

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Rough is a set of boards alike, to be sawn out before anything else: of one
// species, thickness, size as marked out, way of making and of the rings.
type Rough struct {
	Group    *Group // it belongs to
	Making   parts.Making
	Rings    timber.Rings
	Sawn     Size // of one board, as marked out on rough wood; its thickness is the stock's
	Pieces   int
	For      []Share
	Doubtful bool            // a size stands on a guess
	Net      quantity.Volume // of them all, without waste
}

// A Share is how many of a set go into one part.
type Share struct {
	Item   *vehicle.Item
	Pieces int
}

// String names the part, its hand and how many: “6 reach NEAR, 1”.
func (s Share) String() string {
	return fmt.Sprintf("%d of No. %d %s", s.Pieces, s.Item.Number, titled(s.Item))
}

// titled is a part's name with its hand as it is marked.
func titled(it *vehicle.Item) string {
	return strings.TrimSpace(it.Name + " " + strings.ToUpper(it.Hand.String()))
}

// Rough lists what is to be sawn, group after group, the widest boards first.
func (l *List) Rough() []Rough {
	var out []Rough
	for i := range l.Groups {
		g := &l.Groups[i]
		from := len(out)
		for _, n := range g.Lines {
			size := Size{Long: n.Sawn.Long, Wide: n.board()}.upward(l.vehicle.Unit)
			size.Thick = n.Stock.Rough
			at := slices.IndexFunc(out[from:], func(r Rough) bool {
				return r.Sawn == size && r.Making == n.Making && r.Rings == n.Rings && r.Doubtful == n.doubtful()
			})
			if at < 0 {
				at = len(out) - from
				out = append(out, Rough{Group: g, Making: n.Making, Rings: n.Rings, Sawn: size, Doubtful: n.doubtful()})
			}
			r := &out[from+at]
			r.Pieces += n.pieces()
			r.Net += n.all()
			r.For = append(r.For, Share{n.Item, n.pieces()})
		}
		slices.SortStableFunc(out[from:], func(a, b Rough) int {
			return cmp.Or(cmp.Compare(b.Sawn.Wide, a.Sawn.Wide), cmp.Compare(b.Sawn.Long, a.Sawn.Long))
		})
	}
	return out
}

// Parts are the parts a set makes, in words.
func (r Rough) Parts() string {
	var out []string
	for _, s := range r.For {
		out = append(out, s.String())
	}
	return strings.Join(out, ", ")
}

// Asks is what a yard is asked of a set besides its size: its way of making and
// how its rings lie, empty for straight pieces of any.
func (r Rough) Asks() string {
	var out []string
	switch r.Making {
	case parts.Curved:
		out = append(out, "for sawn curves")
	case parts.Steamed:
		out = append(out, "for steam bending")
	case parts.Lathed:
		out = append(out, "a billet in the round for turning, seasoned whole, its butt end marked")
	}
	if slices.ContainsFunc(r.For, func(s Share) bool { return s.Item.Kind == "spoke" }) {
		out = append(out, "cleft, not sawn, straight in the grain from end to end")
	}
	if r.Rings.Lie != timber.RingsNotKnown {
		out = append(out, r.Rings.String())
	}
	return strings.Join(out, ", ")
}

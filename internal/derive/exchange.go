package derive

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/bolt"
	"lostwood/internal/vehicle"
)

// exchanges lists the ways in which the grips that fit badly may have gone wrong: two
// bolts changed about, or the nut of another bolt measured.
func (n *network) exchanges(f *fit) []*explanation {
	var bad []int
	for i, t := range n.notes {
		if t.sort == gripRead && t.span != nil && t.what == "grip" && math.Abs(f.Standardised[i]) > 3 {
			bad = append(bad, i)
		}
	}
	slices.SortStableFunc(bad, func(a, b int) int {
		return int(math.Copysign(1, math.Abs(f.Standardised[b])-math.Abs(f.Standardised[a])))
	})
	bad = bad[:min(len(bad), mostIrons)]
	var out []*explanation
	for k, i := range bad {
		for _, j := range bad[k+1:] {
			if e := n.changedAbout(i, j); e != nil {
				// as good as leaving both out would be, or it is chance that they fit
				e.least = 0.95 * (math.Pow(f.Standardised[i], 2) + math.Pow(f.Standardised[j], 2))
				out = append(out, e)
			}
		}
		out = append(out, n.otherNut(i)...)
	}
	return out
}

// changedAbout gives two bolts each other's grip, where they are of one diameter and
// what was read of them differs.
func (n *network) changedAbout(i, j int) *explanation {
	a, b := n.notes[i].span, n.notes[j].span
	va, vb := n.problem.Observations[i].Value, n.problem.Observations[j].Value
	if a.fastening.Diameter != b.fastening.Diameter || va == vb {
		return nil
	}
	which := fmt.Sprintf("of fastening %s and of fastening %s", a.id, b.id)
	if a.fastening == b.fastening && a.row == b.row {
		which = fmt.Sprintf("of fastening %s, near and off,", spanID(a.fastening, a.row, max(a.fastening.Number, 1), vehicle.Alike))
	}
	return &explanation{
		key: fmt.Sprint("bolts ", i, j), values: map[int]float64{i: vb, j: va},
		says: fmt.Sprintf("The bolts %s were changed about: each with the other's grip agrees with everything else. They are taken so here; see which is which and mend the survey.", which),
	}
}

// otherNut takes a bolt's nut for one of the usual thickness, in place of what was
// measured.
func (n *network) otherNut(i int) []*explanation {
	s := n.notes[i].span
	side := 0
	if s.hand == vehicle.Off {
		side = 1
	}
	b := boltOf(s.fastening, s.row, side)
	if b == nil || b.Nut == nil || b.Mark != nil || b.Rusted != nil {
		return nil
	}
	var out []*explanation
	for _, k := range [...]struct {
		of   bolt.NutStandard
		word string
	}{{bolt.SquareNut, "a modern"}, {bolt.RoughNut, "an old"}} {
		size, by := bolt.Nut(b.Diameter, k.of)
		if by == bolt.Unlisted {
			continue
		}
		out = append(out, &explanation{
			key: fmt.Sprint("nut ", i), values: map[int]float64{i: n.problem.Observations[i].Value + (b.Nut.Value - size.Thickness).Millimetres()},
			says: fmt.Sprintf("The nut that was measured with bolt %s is another bolt's, it seems: with %s nut of that bolt's size it agrees with everything else. It is taken so here; look for its own nut and mend the survey.", b.ID, k.word),
		})
	}
	return out
}

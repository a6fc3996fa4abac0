package jobpack

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/smith"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A want is one line of a cover sheet: one distinct thing, and what to measure on
// the first of it.
type want struct {
	number, name, hand string
	off                int
	of                 string // timber, or bar
	thick              string
	checks             []string // three sizes
	byHand             []string // what is left to hand
}

// wants lists what a maker is to make.
func (m Maker) wants(v *vehicle.Vehicle, list *cutlist.List) []want {
	switch m {
	case Yard:
		return boards(list)
	case Smith:
		return irons(v)
	}
	var out []want
	for _, it := range v.Items {
		w := m.timber(v, it)
		if last := len(out) - 1; last >= 0 && out[last].pairs(w) {
			out[last].hand = fmt.Sprintf("%d %s %d %s", out[last].off, out[last].hand, w.off, w.hand)
			out[last].off += w.off
			continue
		}
		out = append(out, w)
	}
	return out
}

// pairs reports whether the other is the same piece for the other hand.
func (w want) pairs(o want) bool {
	return w.number == o.number && w.hand != o.hand && w.thick == o.thick && slices.Equal(w.checks, o.checks)
}

func (m Maker) timber(v *vehicle.Vehicle, it *vehicle.Item) want {
	u := m.Unit(v)
	w := want{
		number: fmt.Sprintf("%02d", it.Number), name: it.Name, hand: handWord(it.Hand), off: it.NumberOff,
		of: it.Timber, thick: figure(it.Thickness(), u), checks: checks(it, u),
	}
	if m == CNC {
		w.byHand = byHand(it)
	} else {
		w.byHand = untilOfferedUp(it)
	}
	return w
}

func handWord(h vehicle.Hand) string {
	if h == vehicle.Alike {
		return alike
	}
	return strings.ToUpper(h.String())
}

// alike is the hand of what serves either side.
const alike = "alike"

// figure is a length without its unit, which the sheet tells once.
func figure(l parts.Length, u quantity.Unit) string {
	if u == quantity.Millimetres {
		return fmt.Sprintf("%.1f", l.Millimetres())
	}
	return quantity.Fraction(l, 32)
}

// checks are the three sizes to measure on the first piece: how long it is, its
// thickness, and from its first hole to its last; its width where it has none.
func checks(it *vehicle.Item, u quantity.Unit) []string {
	blank := it.Stick.Body.Blank()
	say := func(what string, l parts.Length) string { return what + " " + figure(l, u) }
	out := []string{say("over all", overall(it)), say("thick", it.Thickness())}
	if from, to, ok := farthest(it); ok {
		return append(out, say("end holes", to-from))
	}
	return append(out, say("wide", max(min(blank.Wide, blank.Long), it.Thickness())))
}

// overall is the greatest extent of the finished piece.
func overall(it *vehicle.Item) parts.Length {
	l, w, d := it.Stick.Body.Box()
	return max(l, w, d)
}

// farthest finds the face with the holes that stand farthest apart along the grain.
func farthest(it *vehicle.Item) (from, to parts.Length, ok bool) {
	type span struct {
		from, to parts.Length
		n        int
	}
	by := map[parts.Face]span{}
	for _, op := range it.Stick.Operations() {
		if op.Work != parts.Boring {
			continue
		}
		s, seen := by[op.Face]
		if !seen {
			s = span{op.At.X, op.At.X, 0}
		}
		by[op.Face] = span{min(s.from, op.At.X), max(s.to, op.At.X), s.n + 1}
	}
	for f := parts.Upper; f <= parts.SecondEnd; f++ {
		if s := by[f]; s.n > 1 && s.to-s.from > to-from {
			from, to, ok = s.from, s.to, true
		}
	}
	return from, to, ok
}

// byHand is what a round cutter that comes from above leaves: corners, long edges, ends.
func byHand(it *vehicle.Item) []string {
	var out []string
	add := func(s string) {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	for _, op := range it.Stick.Operations() {
		switch op.Work {
		case parts.Mortising:
			add("square the corners of " + plural(op.What))
		case parts.LettingIn, parts.Notching:
			add("pare the inside corners of " + plural(op.What))
		case parts.Tenoning:
			add("tenons and their shoulders")
		case parts.Chamfering, parts.Rounding:
			add("chamfers and eased edges")
		}
	}
	faces := map[parts.Face]bool{}
	for _, op := range it.Stick.Operations() {
		if op.Work == parts.Boring {
			faces[op.Face] = true
		}
	}
	if len(faces) > 1 {
		add(fmt.Sprintf("turn it: it is bored from %d faces", len(faces)))
	}
	return out
}

func plural(what string) string {
	switch {
	case strings.HasSuffix(what, "s"):
		return what
	case strings.HasSuffix(what, "ch"):
		return what + "es"
	}
	return what + "s"
}

// untilOfferedUp is what the joiner leaves until the piece is held to its irons.
func untilOfferedUp(it *vehicle.Item) []string {
	var long []string
	for _, d := range it.Sizes {
		if d.Known == quantity.Guess || d.Doubt > quantity.Inch/8 {
			long = append(long, d.Name)
		}
	}
	var out []string
	if len(long) > 0 {
		out = append(out, "leave some sizes full until offered up")
	}
	for _, f := range it.Features {
		if f.Along.Known == quantity.Guess || f.Along.Doubt > quantity.Inch/8 {
			return append(out, "leave some work undone until offered up")
		}
	}
	return out
}

// boards are what the yard is to saw, widest first within a timber and thickness.
func boards(list *cutlist.List) []want {
	var out []want
	for n, r := range list.Rough() {
		out = append(out, want{
			number: fmt.Sprint(n + 1), name: "board", off: r.Pieces, of: r.Group.Wood.Common,
			thick: list.Stands(r.Group.Stock), hand: "none",
			checks: []string{
				"long " + list.Figure(r.Sawn.Long), "wide " + list.Figure(r.Sawn.Wide), "thick " + list.Figure(r.Sawn.Thick),
			},
		})
	}
	return out
}

// irons are the smith's pieces.
func irons(v *vehicle.Vehicle) []want {
	var out []want
	for _, p := range smith.Of(v).Pieces {
		w := want{number: fmt.Sprint(p.Number), name: p.Name, off: p.NumberOff, of: p.Stock, hand: ironHand(p), thick: ironThick(v, p)}
		if p.Cut > 0 {
			w.checks = append(w.checks, "cut "+quantity.Format(p.Cut, v.Unit))
		}
		if n := len(p.Holes); n > 1 {
			w.checks = append(w.checks, "first hole to last "+quantity.Format(p.Holes[n-1].At.Value-p.Holes[0].At.Value, v.Unit))
		}
		for _, d := range p.Sizes {
			if len(w.checks) < 3 && !math.IsInf(float64(d.Doubt), 1) && d.Known != quantity.Unknown {
				w.checks = append(w.checks, d.Name+" "+quantity.Format(d.Value, v.Unit))
			}
		}
		w.byHand = append(w.byHand, p.Open...)
		out = append(out, w)
	}
	return out
}

func ironHand(p *smith.Piece) string {
	if len(p.Steps) > 0 {
		if hand, _, two := strings.Cut(p.Name, " "); two && (hand == "Near" || hand == "Off") {
			return strings.ToUpper(hand)
		}
	}
	return alike
}

func ironThick(v *vehicle.Vehicle, p *smith.Piece) string {
	for _, d := range p.Sizes {
		if d.Name == "thick" || d.Name == "diameter" {
			return quantity.Format(d.Value, v.Unit)
		}
	}
	return ""
}

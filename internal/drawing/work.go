package drawing

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A work is one piece of work on a part, under its letter.
type work struct {
	letter string
	ops    []parts.Operation
	at     form.Vec // its middle, in the part's frame
	doubt  *vehicle.Feature
	seat   seat
}

// A seat says which of the views tells a work's station.
type seat int

const (
	onPlan  seat = iota // on the upper or under face
	onFront             // on a side
	onEnd               // no station to tell
)

// worksOf gathers a part's work, edges apart, in the order of the views and
// along each; every one has a letter.
func worksOf(i *vehicle.Item) []work {
	body := i.Stick.Body
	var all []work
	byRef := map[string]int{}
	for _, op := range i.Stick.Operations() {
		if op.Work == parts.Chamfering || op.Work == parts.Rounding {
			continue
		}
		if k, ok := byRef[op.Ref]; ok {
			all[k].ops = append(all[k].ops, op)
			continue
		}
		byRef[op.Ref] = len(all)
		w := work{ops: []parts.Operation{op}, at: op.Face.Frame(body).At(op.At.X, op.At.Y, 0), seat: seatOf(i, op)}
		for k := range i.Features {
			if i.Features[k].Ref == op.Ref {
				w.doubt = &i.Features[k]
			}
		}
		all = append(all, w)
	}
	slices.SortStableFunc(all, func(a, b work) int { return cmp.Or(cmp.Compare(a.seat, b.seat), cmp.Compare(a.at.X, b.at.X)) })
	for k := range all {
		all[k].letter = lettered(k)
	}
	return all
}

// lettered is a, b ... z, aa, ab ...
func lettered(k int) string {
	if k < 26 {
		return string(rune('a' + k))
	}
	return lettered(k/26-1) + lettered(k%26)
}

func seatOf(i *vehicle.Item, op parts.Operation) seat {
	for _, f := range i.Stick.Features {
		if f.Ref() == op.Ref {
			if _, runs := f.(parts.Groove); runs {
				return onEnd
			}
			if _, round := f.(parts.RadialHole); round {
				return onFront
			}
		}
	}
	switch op.Face {
	case parts.Upper, parts.Under:
		return onPlan
	case parts.FirstSide, parts.SecondSide:
		return onFront
	}
	return onEnd
}

// along and across are how sure a work's place is.
func (w work) along() quantity.Known {
	if w.doubt == nil {
		return quantity.Measured
	}
	return w.doubt.Along.Known
}

func (w work) across() quantity.Known {
	if w.doubt == nil {
		return quantity.Measured
	}
	return w.doubt.Across.Known
}

// brief is what stands at a work's station: its letter, place and size.
func (w work) brief(v *vehicle.Vehicle) string {
	op := w.ops[0]
	words := w.letter + "  " + marked(v, w.at.X, w.along())
	var sizes []string
	for _, m := range op.Sizes {
		switch m.Name {
		case "diameter":
			words += "  Ø\u00a0" + figure(v, m.Value)
		case "deep":
			sizes = append(sizes, figure(v, m.Value)+" deep")
		default:
			sizes = append(sizes, m.Name+" "+figure(v, m.Value))
		}
	}
	if op.Work != parts.Boring {
		return words + "  " + strings.Join(sizes, ", ")
	}
	return words
}

// told is all that is to be done there, in words.
func (w work) told(v *vehicle.Vehicle) string {
	var all []string
	for _, op := range w.ops {
		all = append(all, operation(v, op))
	}
	return strings.Join(all, "; ")
}

func operation(v *vehicle.Vehicle, op parts.Operation) string {
	words := op.What
	through := op.Work == parts.Boring || op.Work == parts.Mortising
	for _, m := range op.Sizes {
		switch m.Name {
		case "diameter":
			words += " Ø\u00a0" + figure(v, m.Value)
		case "deep":
			words, through = words+", "+figure(v, m.Value)+" deep", false
		default:
			words += ", " + m.Name + " " + figure(v, m.Value)
		}
	}
	if through {
		words += ", through"
	}
	return words
}

// workTable is the list of work by its letters.
func workTable(v *vehicle.Vehicle, i *vehicle.Item, works []work) table {
	t := table{title: "Work", columns: []column{
		{"", 0.05}, {"what", 0.32}, {"entered on", 0.14}, {"from " + i.FaceWords(parts.FirstEnd), 0.15}, {"across", 0.15}, {"how we know", 0.19},
	}}
	for _, w := range works {
		op := w.ops[0]
		r := row{cells: []string{w.letter, capital(w.told(v)), i.FaceWords(op.Face), "", "", ""}}
		if w.seat != onEnd {
			r.cells[3] = marked(v, w.at.X, w.along())
		}
		if across, from, ok := w.acrossFrom(i); ok {
			r.cells[4] = marked(v, across, w.across()) + " from " + from
		}
		if d := w.doubt; d != nil {
			r.cells[5] = d.Along.Known.String() + doubtWords(d.Along, v.Unit)
			if d.Across.Known != d.Along.Known {
				r.cells[5] += "; across: " + d.Across.Known.String()
			}
			if guessed(max(d.Along.Known, d.Across.Known)) {
				r.cells[5] = "[" + r.cells[5] + "]"
			}
		}
		t.rows = append(t.rows, r)
	}
	for _, words := range edges(v, i) {
		t.rows = append(t.rows, row{cells: []string{"", words, "", "", "", ""}})
	}
	return t
}

func doubtWords(s quantity.Size, u quantity.Unit) string {
	if words := giveOrTake(s, u); words != "" {
		return " ± " + words
	}
	return ""
}

// acrossFrom is how far a work stands from the nearer of the edges that run
// beside it, and which that is; not for what goes from side to side.
func (w work) acrossFrom(i *vehicle.Item) (Length, string, bool) {
	switch w.ops[0].Work {
	case parts.Boring, parts.Mortising:
	default:
		return 0, "", false
	}
	_, wide, deep := i.Stick.Body.Box()
	switch w.ops[0].Face {
	case parts.Upper, parts.Under:
		return w.at.Y, i.FaceWords(parts.FirstSide), wide > 0
	case parts.FirstSide, parts.SecondSide:
		return w.at.Z, i.FaceWords(parts.Under), deep > 0
	}
	return 0, "", false
}

// edges tells of what is done along the edges, those alike together.
func edges(v *vehicle.Vehicle, i *vehicle.Item) []string {
	type alike struct {
		words string
		n     int
		on    []string
	}
	var all []alike
	for _, op := range i.Stick.Operations() {
		if op.Work != parts.Chamfering && op.Work != parts.Rounding {
			continue
		}
		what := "Chamfer"
		if op.Work == parts.Rounding {
			what = "Edge rounded"
		}
		var sizes []string
		for _, m := range op.Sizes {
			sizes = append(sizes, m.Name+" "+figure(v, m.Value))
		}
		words := what + ", " + strings.Join(sizes, ", ")
		_, edge, _ := strings.Cut(op.What, ", ")
		if k := slices.IndexFunc(all, func(a alike) bool { return a.words == words }); k >= 0 {
			all[k].n++
			all[k].on = append(all[k].on, edgeWords(i, edge))
		} else {
			all = append(all, alike{words, 1, []string{edgeWords(i, edge)}})
		}
	}
	var out []string
	for _, a := range all {
		on := strings.Join(a.on, "; ")
		if a.n == len(parts.Arrises()) {
			on = "all four long edges"
		}
		out = append(out, fmt.Sprintf("%s: %s", a.words, on))
	}
	return out
}

// edgeWords names an edge by its faces as they are fitted.
func edgeWords(i *vehicle.Item, edge string) string {
	var pairs []string
	for _, f := range parts.Faces() {
		pairs = append(pairs, f.String(), strings.TrimSuffix(i.FaceWords(f), " face"))
	}
	return strings.NewReplacer(pairs...).Replace(edge)
}

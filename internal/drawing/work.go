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
	radial bool // towards a wheel's centre
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
		w := work{ops: []parts.Operation{op}, at: op.Face.Frame(body).At(op.At.X, op.At.Y, 0), seat: seatOf(i, op), radial: radial(i, op.Ref)}
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
			if radial(i, op.Ref) {
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

// radial says whether a work runs to a wheel's centre.
func radial(i *vehicle.Item, ref string) bool {
	return slices.ContainsFunc(i.Stick.Features, func(f parts.Feature) bool {
		_, r := f.(parts.RadialHole)
		return r && f.Ref() == ref
	})
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

// sized is a measure of a work; where the part's own dimension that gives it is a
// guess it is marked. Work that a fastening calls for is as sure as its bolt.
func (w work) sized(v *vehicle.Vehicle, i *vehicle.Item, l Length) string {
	if w.doubt != nil {
		return figure(v, l)
	}
	return ownSize(v, i, l)
}

// ownSize is the figure of a measure of the part's own work, with its mark.
func ownSize(v *vehicle.Vehicle, i *vehicle.Item, l Length) string {
	const same = 1e-6
	for _, d := range i.Sizes {
		if d.Axis == parts.NoAxis && d.Value > l-same && d.Value < l+same {
			return marked(v, l, d.Known)
		}
	}
	return figure(v, l)
}

// brief is what stands at a work's station: its letter, place and size.
func (w work) brief(v *vehicle.Vehicle, i *vehicle.Item) string {
	op := w.ops[0]
	words := w.letter + "  " + marked(v, w.at.X, w.along())
	var sizes []string
	for _, m := range op.Sizes {
		switch m.Name {
		case "diameter":
			words += "  Ø\u00a0" + w.sized(v, i, m.Value)
		case "deep":
			sizes = append(sizes, w.sized(v, i, m.Value)+" deep")
		default:
			sizes = append(sizes, m.Name+" "+w.sized(v, i, m.Value))
		}
	}
	if op.Work != parts.Boring {
		return words + "  " + strings.Join(sizes, ", ")
	}
	return words
}

// told is all that is to be done there, in words.
func (w work) told(v *vehicle.Vehicle, i *vehicle.Item) string {
	var all []string
	for _, op := range w.ops {
		all = append(all, w.operation(v, i, op))
	}
	return strings.Join(all, "; ")
}

func (w work) operation(v *vehicle.Vehicle, i *vehicle.Item, op parts.Operation) string {
	words := op.What
	through := op.Work == parts.Boring || op.Work == parts.Mortising
	for _, m := range op.Sizes {
		switch m.Name {
		case "diameter":
			words += " Ø\u00a0" + w.sized(v, i, m.Value)
		case "deep":
			words, through = words+", "+w.sized(v, i, m.Value)+" deep", false
		default:
			words += ", " + m.Name + " " + w.sized(v, i, m.Value)
		}
	}
	if through {
		words += ", through"
	}
	return words
}

// workTable is the list of work by its letters. Across is told from the same
// edge throughout; the notes say which.
func workTable(v *vehicle.Vehicle, i *vehicle.Item, works []work) table {
	t := table{title: "Work", columns: []column{
		{"", 0.04}, {"what", 0.3}, {"entered on", 0.13}, {"from " + i.FaceWords(parts.FirstEnd), 0.14}, {"give or take", 0.13}, {"across", 0.1}, {"how we know", 0.16},
	}}
	for _, w := range works {
		r := row{cells: []string{w.letter, capital(w.told(v, i)), i.FaceWords(w.ops[0].Face), "", "", "", ""}}
		if w.seat != onEnd {
			r.cells[3] = marked(v, w.at.X, w.along())
		}
		if across, ok := w.acrossFrom(); ok {
			r.cells[5] = marked(v, across, w.across())
		}
		if d := w.doubt; d != nil {
			r.cells[4] = giveOrTake(d.Along, v.Unit)
			r.cells[6] = d.Along.Known.String()
			if guessed(d.Along.Known) {
				r.cells[6] = "[" + strings.ToUpper(r.cells[6]) + "]"
			}
		}
		t.rows = append(t.rows, r)
	}
	return t
}

// acrossNote says from where the places across are told.
func acrossNote(i *vehicle.Item, works []work) []string {
	var on [2]bool
	for _, w := range works {
		if _, ok := w.acrossFrom(); ok && w.radial {
			on[onPlan] = true
		} else if ok && w.seat != onEnd {
			on[w.seat] = true
		}
	}
	var out []string
	if on[onPlan] {
		out = append(out, fmt.Sprintf("on the %s and the %s from the %s", i.FaceWords(parts.Upper), i.FaceWords(parts.Under), i.FaceWords(parts.FirstSide)))
	}
	if on[onFront] {
		out = append(out, fmt.Sprintf("on the %s and the %s from the %s", i.FaceWords(parts.FirstSide), i.FaceWords(parts.SecondSide), i.FaceWords(parts.Under)))
	}
	if len(out) == 0 {
		return nil
	}
	return []string{"Across is told " + strings.Join(out, ", ") + "."}
}

// acrossFrom is how far a work stands from the first side, or on a side from the
// under face; ok is false for what goes from side to side.
func (w work) acrossFrom() (across Length, ok bool) {
	switch w.ops[0].Work {
	case parts.Boring, parts.Mortising:
	default:
		return 0, false
	}
	switch {
	case w.seat == onPlan || w.radial:
		return w.at.Y, true
	case w.seat == onFront:
		return w.at.Z, true
	}
	return 0, false
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
			words := ownSize(v, i, m.Value)
			if m.Name == "from" || m.Name == "to" {
				words = marked(v, m.Value, sureOf(i, "chamfer-stop"))
			}
			sizes = append(sizes, m.Name+" "+words)
		}
		words := what + ", " + strings.Join(sizes, ", ")
		_, edge, _ := strings.Cut(i.WorkWords(op), ", ")
		if k := slices.IndexFunc(all, func(a alike) bool { return a.words == words }); k >= 0 {
			all[k].n++
			all[k].on = append(all[k].on, edge)
		} else {
			all = append(all, alike{words, 1, []string{edge}})
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

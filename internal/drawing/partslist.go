package drawing

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// timbers is the parts table: each timber by its number.
func (a *arrangement) timbers() table {
	t := table{title: "New timber", columns: []column{
		{"no.", 0.06}, {"part", 0.24}, {"off", 0.06}, {"timber", 0.16}, {"finished size", 0.27}, {"least sure", 0.21},
	}}
	for _, it := range a.v.Items {
		long, wide, deep := it.Stick.Body.Box()
		name := capital(it.Name)
		if it.Hand != vehicle.Alike {
			name += ", " + it.Hand.String()
		}
		how := weakest(it)
		for _, d := range it.Sizes {
			if guessed(d.Known) {
				how = "[" + strings.TrimSuffix(how, "]") + "]"
				break
			}
		}
		t.rows = append(t.rows, row{cells: []string{
			fmt.Sprint(it.Number), name, fmt.Sprint(it.NumberOff), it.Timber,
			figure(a.v, long) + " × " + figure(a.v, wide) + " × " + figure(a.v, deep), how,
		}})
	}
	return t
}

// irons is the table of the irons by their letters.
func (a *arrangement) irons() table {
	t := table{title: "Irons, as found", columns: []column{
		{"", 0.06}, {"iron", 0.26}, {"number", 0.09}, {"kind", 0.12}, {"size", 0.27}, {"condition", 0.2},
	}}
	for _, th := range a.things {
		if th.sort != iron {
			continue
		}
		i := th.irons[0]
		var sizes []string
		for _, n := range []string{"long", "wide", "thick"} {
			if l := ironSize(i, n); l > 0 {
				sizes = append(sizes, figure(a.v, l))
			}
		}
		words := strings.Join(sizes, " × ")
		if r := ironSize(i, "radius"); r > 0 {
			words = "inside radius " + figure(a.v, r) + ", " + words
		}
		condition := i.Condition
		if len(th.bodies) == 0 {
			condition = strings.TrimPrefix(condition+"; not placed", "; ")
		}
		t.rows = append(t.rows, row{cells: []string{th.mark, th.name(), fmt.Sprint(len(th.irons)), i.Kind, words, condition}})
	}
	return t
}

// fastenings is the table of the bolts, clips and screws by their numbers.
func (a *arrangement) fastenings() table {
	t := table{title: "Bolts, clips and screws", columns: []column{
		{"no.", 0.06}, {"joins", 0.44}, {"number", 0.09}, {"what", 0.2}, {"grip", 0.21},
	}}
	for _, th := range a.things {
		if th.sort != fastening {
			continue
		}
		f := th.bolts[0]
		what := f.What
		if f.Diameter > 0 {
			what += " Ø\u00a0" + figure(a.v, f.Diameter)
		}
		grip := ""
		if f.What != "screw" && f.Grip.Known < quantity.Unknown {
			lo, hi := f.Grip.Value, f.Grip.Value
			for _, o := range th.bolts {
				lo, hi = min(lo, o.Grip.Value), max(hi, o.Grip.Value)
			}
			grip = figure(a.v, lo)
			if high := figure(a.v, hi); high != grip {
				grip += " to " + high
			}
			if guessed(f.Grip.Known) {
				grip = "[" + grip + " " + f.Grip.Known.String() + "]"
			}
		}
		t.rows = append(t.rows, row{cells: []string{th.mark, th.name(), fmt.Sprint(len(th.bolts)), what, grip}})
	}
	return t
}

// remarks are the notes of the general arrangement.
func (a *arrangement) remarks() []string {
	out := []string{
		"Numbers in rounds are of new timber, letters in squares of irons, numbers in six-sided marks of fastenings. What is hatched is iron, what is plain is new timber.",
	}
	out = append(out, a.unplaced()...)
	if words := named(a.unseen); words != "" {
		out = append(out, "Out of sight in all four views: "+words+".")
	}
	if words := named(a.unshown); words != "" {
		out = append(out, "Drawn, but without a mark for want of room: "+words+".")
	}
	return append(out,
		"Irons are drawn straight and flat, as they bear on the wood. Heads, nuts and the rods of clips are drawn in usual sizes: they were not read. Screws show their heads.",
		"Sizes in brackets are guesses, with the word. Finished sizes in service. Lines out of sight are left out. Do not scale from the paper.",
		"Nothing here says that the vehicle is fit for a load, a person or a horse's pull: a competent wheelwright or engineer judges that, and local codes come first.")
}

// unplaced tells what the survey gives no place.
func (a *arrangement) unplaced() []string {
	var out []string
	var lost []*thing
	for _, t := range a.things {
		if len(t.bodies) == 0 {
			lost = append(lost, t)
		}
	}
	wheels := false
	for _, t := range lost {
		wheels = wheels || t.sort == newTimber && t.item.Run == vehicle.Round || t.sort == iron && t.irons[0].Run == vehicle.Round
	}
	if wheels {
		out = append(out, "No wheels are drawn: the survey gives them no place in the vehicle.")
	}
	if words := named(lost); words != "" {
		out = append(out, "Without a place, and so not drawn: "+words+".")
	}
	return out
}

// named is a list of things by mark and name.
func named(all []*thing) string {
	var words []string
	for _, t := range all {
		switch t.sort {
		case fastening:
			words = append(words, "fastening "+t.mark)
		default:
			words = append(words, t.mark+" "+strings.ToLower(t.name()))
		}
	}
	return strings.Join(words, ", ")
}

// title is what the block says of the whole.
func (a *arrangement) title(s Scale, page, of int) title {
	placed, irons, bolts := 0, 0, 0
	for _, p := range a.v.Parts {
		if p.Place != nil {
			placed++
		}
	}
	for _, t := range a.things {
		irons += len(t.irons)
		bolts += len(t.bolts)
	}
	return title{
		number: "00", name: a.v.Name, kind: "general arrangement",
		fields: []field{
			{"timbers", fmt.Sprint(len(a.v.Parts))},
			{"in their place", fmt.Sprint(placed)},
			{"irons", fmt.Sprint(irons)},
			{"fastenings", fmt.Sprint(bolts)},
			{"things to make", fmt.Sprint(len(a.v.Items))},
			{"views", "plan, near side, fore, hind"},
			{"service moisture", moisture(a.v)},
			{"origin", "x fore, y near, z up"},
		},
		scale: s, angle: a.making.Angle, page: page, of: of,
	}
}

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

// Said is how the sizes of the cutting list were reckoned and what to heed in
// all of it; what to heed of one line is in [List.Remarks].
func (l *List) Said() []string {
	u, m := l.vehicle.Unit, l.vehicle.Moisture
	long, across := steps(u)
	name := func(s quantity.Length) string { return named(s, u) }
	var says []string
	say := func(format string, values ...any) { says = append(says, fmt.Sprintf(format, values...)) }

	say("Long x wide x thick. Finished: in service, at %s moisture. Sawn: rounded up, lengths to %s, widths and thicknesses to %s; %s.",
		percent(float64(m.Service)), name(long), name(across), swollen(m))
	a := l.Allowances
	whence := "common practice, no source"
	if a != Usual() {
		whence = "as set; common practice where not"
	}
	say("Allowed for making (%s): planing %s off each face, jointing %s off each edge, trimming %s off each end, %s off each end of a bend.",
		whence, name(a.Planing), name(a.Jointing), name(a.Trimming), name(a.BendTrimming))
	say("The saw's kerf: %s.", l.kerf())
	say("Buy: the least stock that dresses to the size as bought. %s of that stock, by plain volume, for all off, without waste.", measured(u))
	if slices.ContainsFunc(l.Lines, Line.doubtful) {
		say("? The size stands on a guess: settle it before cutting.")
	}
	if l.handed() {
		say("NEAR is the left side looking forward. NEAR and OFF are mirror images: mark each piece before it leaves the bench.")
	}
	if c := l.closing(); c != "" {
		say("%s", c)
	}
	if len(l.Lines) > 0 {
		say("%s", l.weight())
	}
	if p := l.absent(); p != "" {
		say("Not in this list, since they cannot be made as things stand or are left open: %s.", p)
	}
	says = append(says, l.readings()...)
	if l.makes(parts.Steamed) {
		says = append(says, "Bending: "+strings.Join(timber.BendCautions(), " "))
	}
	return append(says, "Extract the dust, wear a mask that fits, keep the guards on: machines are for trained hands, and local codes come first.")
}

// cuttingFoot is all there is to say, for the list on paper.
func (l *List) cuttingFoot() []string {
	says := l.Said()
	safety := says[len(says)-1]
	says = says[:len(says)-1]
	for _, n := range l.Lines {
		if r := l.Remarks(n); len(r) > 0 {
			if s := fmt.Sprintf("No. %d %s: %s.", n.Item.Number, n.Item.Name, strings.Join(r, "; ")); !slices.Contains(says, s) {
				says = append(says, s) // near and off alike are told once
			}
		}
	}
	return paper(append(says, safety))
}

// absent names the vehicle's timbers that there is nothing to cut for.
func (l *List) absent() string {
	var out []string
	for _, p := range l.vehicle.Parts {
		if p.Item != nil {
			continue
		}
		name := strings.TrimSpace(p.Name + " " + p.Hand.String())
		if p.Status == vehicle.LeftOpen {
			name += " (left open)"
		}
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return strings.Join(out, ", ")
}

// paper breaks remarks into lines, below an empty one.
func paper(says []string) []string {
	out := []string{""}
	for _, s := range says {
		out = append(out, wrapped(s)...)
	}
	return out
}

// swollen says what was done for moisture.
func swollen(m vehicle.Moisture) string {
	switch {
	case m.Bought > m.Service:
		return fmt.Sprintf("as bought, at %s, swollen by what drying will take (where the run of the rings is not known, by the larger way)", moistureWords(m.Bought))
	case m.Bought < m.Service:
		return fmt.Sprintf("as bought, at %s; it will swell, and nothing is taken off for that", moistureWords(m.Bought))
	}
	return "bought at the same moisture"
}

// kerf says where the saw's kerf is reckoned.
func (l *List) kerf() string {
	if k := l.Allowances.Kerf; k > 0 {
		return named(k, l.vehicle.Unit) + " beside every board and beyond its end, in the measure of what is bought"
	}
	return "within the waste"
}

// green is the moisture above which wood does not shrink, where it has no
// figure of its own: Wood Handbook 2021, eq. 4-9.
const green quantity.Moisture = 30

func moistureWords(m quantity.Moisture) string {
	if m >= green {
		return percent(float64(m)) + ", green"
	}
	return percent(float64(m))
}

// closing says by how much each wood closes, or opens, after it is worked.
func (l *List) closing() string {
	m, u := l.vehicle.Moisture, l.vehicle.Unit
	if worked(m) == m.Service {
		return ""
	}
	span := 100 * quantity.Millimetre
	if imperial(u) {
		span = 12 * quantity.Inch
	}
	var woods []string
	for _, n := range l.Lines {
		wet, err := n.Wood.Resize(span, m.Service, worked(m), timber.Worst)
		if err != nil || !n.ToMake {
			continue
		}
		by := max(wet-span, span-wet)
		if w := n.timber() + " " + named(roundUp(by, finest(u)), u); !slices.Contains(woods, w) {
			woods = append(woods, w)
		}
	}
	if len(woods) == 0 {
		return ""
	}
	if worked(m) < m.Service {
		return fmt.Sprintf("Worked at %s, the wood opens across the grain before it is at %s. In every %s by up to: %s. Keep it dry until it is fitted, and leave it that room.",
			percent(float64(worked(m))), percent(float64(m.Service)), named(span, u), strings.Join(woods, ", "))
	}
	return fmt.Sprintf("Worked at %s, the wood closes across the grain before it is at %s. In every %s by up to: %s. Let it dry before it is finished, or leave that on: the sizes for the day it is worked have it in them.",
		percent(float64(worked(m))), percent(float64(m.Service)), named(span, u), strings.Join(woods, ", "))
}

// weight is that of all the finished parts.
func (l *List) weight() string {
	var sum quantity.Mass
	var without []string
	for _, n := range l.Lines {
		sum += n.Mass.Mass * quantity.Mass(n.Item.NumberOff)
		if !n.Mass.Known && !slices.Contains(without, n.Item.Name) {
			without = append(without, n.Item.Name)
		}
	}
	words := fmt.Sprintf("The finished timbers weigh about %s in all, in service", massWords(sum, l.vehicle.Unit))
	if len(without) > 0 {
		words += "; not counted, the weight of their wood not being known: " + strings.Join(without, ", ")
	}
	return words + "."
}

func massWords(m quantity.Mass, u quantity.Unit) string {
	if imperial(u) {
		return fmt.Sprintf("%.0f lb", m.Pounds())
	}
	return fmt.Sprintf("%.0f kg", float64(m))
}

// measured names the measure that the list has on paper.
func measured(u quantity.Unit) string {
	if imperial(u) {
		return "Bd ft are"
	}
	return "The m3 are"
}

func finest(u quantity.Unit) quantity.Length {
	if imperial(u) {
		return quantity.Inch / 32
	}
	return quantity.Millimetre / 10
}

func (l *List) handed() bool {
	return slices.ContainsFunc(l.Lines, func(n Line) bool { return n.Item.Hand != vehicle.Alike })
}

// shares are the wastes that the lines to be made call for.
func (l *List) shares() string {
	var out []string
	for _, n := range l.Lines {
		if w := making(n.Making) + " " + percent(listing.Rounded(100*n.Waste, 1)); n.ToMake && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return strings.Join(out, ", ")
}

package cutlist

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/parts"
)

// thick is from where boards are seldom dry in the middle; common practice, no source.
const thick = 60 * quantity.Millimetre

// totalsFoot is the wording of the order, for the list of totals on paper.
func (l *List) totalsFoot() []string {
	legend := []string{fmt.Sprintf("%s plain volume with the waste (%s over the pieces). %s", orderHead(l.vehicle.Unit), l.shares(), l.measureWords())}
	if slices.ContainsFunc(l.Groups, func(g Group) bool { return !g.Mass.Known }) {
		legend = append(legend, "- The weight of this wood is not known, and not counted in the whole.")
	}
	if c := l.costWords(); c != "" {
		legend = append(legend, c)
	}
	return paper(l.asked(legend))
}

// Asked is the wording of the order, without a word of what it was reckoned to cost. Grades and cautions are common practice,
// no source; the yard's own rules come first.
func (l *List) Asked() []string { return l.asked(nil) }

// asked has a legend of the columns behind the sum.
func (l *List) asked(legend []string) []string {
	var says []string
	say := func(format string, values ...any) { says = append(says, fmt.Sprintf(format, values...)) }
	if p := l.present(); len(p) > 0 {
		say("Not in this order: %s.", strings.Join(p, ", "))
	}
	if p := l.absent(); p != "" {
		say("Not in this order, since it cannot be said yet what they take: %s.", p)
	}
	if len(l.Groups) == 0 {
		return append(says, "Nothing is to be bought.")
	}
	say("Please quote by the piece or by volume, by your own measure and grade rules: these come first.")
	say("Rough sizes are least sizes, sawn and unplaned, with an allowance for drying, planing and trimming. " +
		"Longer boards that hold several pieces end to end will do, of the same thickness and grade.")
	say("%s", l.sum())
	says = append(says, legend...)
	says = append(says, l.wanted()...)
	if slices.ContainsFunc(l.Lines, func(n Line) bool { return n.ToMake && n.doubtful() }) {
		say("? A size among these stands on a guess: ask before sawing to it.")
	}
	return says
}

// orderHead explains the columns of volume.
func orderHead(u quantity.Unit) string {
	if imperial(u) {
		return "Bd ft are those of the pieces out of that thickness. To order is in bd ft too, by"
	}
	return "The m3 are those of the pieces out of that thickness. To order is in m3 too, by"
}

func (l *List) measureWords() string {
	const mass = "The weight is of the order, as bought."
	if imperial(l.vehicle.Unit) {
		return "NHLA is the same as one bundle, its surface to the nearest square foot, under 1 in counted as 1 in; the tally of the boards that come is what counts. " + mass
	}
	return mass
}

// costWords is what the order comes to by the prices given.
func (l *List) costWords() string {
	if len(l.settings.Prices) == 0 {
		return ""
	}
	sums := map[string]float64{}
	var order, without []string
	for _, g := range l.Groups {
		if !g.Cost.Known {
			without = append(without, g.Lines[0].timber()+" "+g.Stock.Name)
			continue
		}
		if _, ok := sums[g.Cost.Currency]; !ok {
			order = append(order, g.Cost.Currency)
		}
		sums[g.Cost.Currency] += g.Cost.Amount
	}
	words := "No price given speaks of anything in this order"
	if len(order) > 0 {
		var all []string
		for _, c := range order {
			all = append(all, Cost{true, sums[c], c}.String())
		}
		words = "By the prices given, with the waste (board feet by the trade's tally, else plain volume): " + strings.Join(all, " and ")
	}
	if len(without) > 0 {
		words += "; without a price, and not in it: " + strings.Join(without, ", ")
	}
	return words + "."
}

// sum is the whole order.
func (l *List) sum() string {
	var pieces int
	var net, order quantity.Volume
	var mass quantity.Mass
	for _, g := range l.Groups {
		pieces += g.Pieces
		net += g.Net
		order += g.Order
		mass += g.Mass.Mass
	}
	if imperial(l.vehicle.Unit) {
		return fmt.Sprintf("In all %d pieces of %.1f bd ft; with the waste %.1f bd ft (%.3f m3), about %s as bought.",
			pieces, net.BoardFeet(), order.BoardFeet(), order.CubicMetres(), massWords(mass, l.vehicle.Unit))
	}
	return fmt.Sprintf("In all %d pieces of %.3f m3; with the waste %.3f m3 (%.1f board feet), about %s as bought.",
		pieces, net.CubicMetres(), order.CubicMetres(), order.BoardFeet(), massWords(mass, l.vehicle.Unit))
}

// usualGrade is asked for where nothing else is: common practice, no source.
const usualGrade = "first grade for length and width (FAS or its like where your rules have it), or a lower one from which these pieces come clear"

// wanted describes the wood.
func (l *List) wanted() []string {
	says := []string{bought(l.vehicle.Moisture), l.description()}
	if l.makes(parts.Steamed) {
		says = append(says, "For bends: the straightest, running out less than about 1 in 15, air-dried and not kiln-dried, no defect on either face.")
	}
	if l.makes(parts.Curved) {
		says = append(says, "For sawn curves: boards wide enough for the squared piece; naturally curved grain that follows it is welcome, so show it.")
	}
	if slices.ContainsFunc(l.Groups, func(g Group) bool { return g.Stock.Rough >= thick }) {
		says = append(says, "Thick stock is seldom dry in the middle: say what it is there, and how long it has been in stick.")
	}
	if slices.ContainsFunc(l.Groups, func(g Group) bool { return g.Stock.Kept == ToOrder }) {
		says = append(says, "To order: thicker than boards usually come. Quote for sawing it clear of the heart; or say that it is not to be had, and it is built up from thinner boards.")
	}
	if l.settings.Wanted.Note != "" {
		says = append(says, l.settings.Wanted.Note)
	}
	return says
}

// description is the wood asked for.
func (l *List) description() string {
	w := l.settings.Wanted
	grade := usualGrade
	if w.Grade != "" {
		grade = "grade " + w.Grade
	}
	straight := "straight-grained"
	if w.RunOut != 0 {
		straight = fmt.Sprintf("straight-grained, running out no more than 1 in %.3g", w.RunOut)
	}
	heart := "no heart centre (pith)"
	if w.Sap == SapRefused {
		heart += ", no sapwood"
	}
	return fmt.Sprintf("Wood wanted: by the botanical name given; sound, %s, %s, free of knots, shakes, end splits and wind on the sizes named; %s%s.",
		straight, heart, l.ringsWanted(), grade)
}

// ringsWanted says how the rings are to lie, where that is asked of all the pieces.
func (l *List) ringsWanted() string {
	rough := l.Rough()
	for _, r := range rough {
		if r.Rings.Lie == timber.RingsNotKnown || r.Rings != rough[0].Rings {
			return ""
		}
	}
	if len(rough) == 0 {
		return ""
	}
	return rough[0].Rings.String() + "; "
}

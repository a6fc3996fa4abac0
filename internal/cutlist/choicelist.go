package cutlist

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/parts"
)

// List is the woods side by side, a row each.
func (c *Choice) List() *listing.List {
	title := "Woods side by side"
	if c.Part != nil {
		title = fmt.Sprintf("%s, issue %s: woods for No. %d %s", c.vehicle.Name, c.vehicle.Issue, c.Part.Number, titled(c.Part))
	}
	out := &listing.List{Title: title + "\n" + c.reason(), Columns: c.columns()}
	heeds := &heeds{}
	for i, k := range c.Candidates {
		out.Rows = append(out.Rows, c.row(i+1, k, heeds))
	}
	out.Foot = paper(c.foot(heeds))
	return out
}

func (c *Choice) columns() []listing.Column {
	mass, weigh, moves, percent := "Part, kg", "kg/m3", "Moves, mm", ""
	if imperial(c.vehicle.Unit) {
		mass, weigh, moves = "Part, lb", "lb/ft3", "Moves, in"
	}
	if c.Part == nil {
		mass = ""
	} else {
		weigh = ""
	}
	if c.Part == nil || c.steady() {
		moves, percent = "", "% a point"
	}
	bends := "Bends"
	if c.Part != nil && !c.bent() {
		bends = ""
	}
	splinter := ""
	if c.splinter.Density > 0 {
		splinter = "Splinter"
	}
	rank := ""
	if c.Rank != Unranked {
		rank = "Rank"
	}
	return []listing.Column{
		{Key: "rank", Head: rank, Align: listing.Right},
		{Key: "timber", Head: "Timber"},
		{Key: "botanical"},
		{Key: "region"},
		{Key: "stiffness_mpa", Head: "Stiff, GPa", Align: listing.Right},
		{Key: "stiffness_source"},
		{Key: "strength_mpa", Head: "Strong, MPa", Align: listing.Right},
		{Key: "strength_source"},
		{Key: "hardness_n", Head: "Hard, kN", Align: listing.Right},
		{Key: "hardness_source"},
		{Key: "density_kg_m3", Head: weigh, Align: listing.Right},
		{Key: "density_source"},
		{Key: "part_kg", Head: mass, Align: listing.Right},
		{Key: "part_moves_mm", Head: moves, Align: listing.Right},
		{Key: "moves_percent_per_point", Head: percent, Align: listing.Right},
		{Key: "movement_source"},
		{Key: "against_splinter_percent", Head: splinter, Align: listing.Right},
		{Key: "lasts", Head: "Lasts"},
		{Key: "lasts_source"},
		{Key: "bends", Head: bends},
		{Key: "look"},
		{Key: "heed", Head: "Heed"},
	}
}

func (c *Choice) row(rank int, k timber.Candidate, h *heeds) []listing.Cell {
	u := c.vehicle.Unit
	name := k.Wood.Common
	if name == c.now && c.Part != nil {
		name += " (now)"
	}
	position := listing.Cell{}
	if c.Rank != Unranked && c.Rank.figure(k).Known() {
		position = listing.Cell{Value: rank}
	}
	density, mass := 1.0, 1.0
	moves := quantity.Inch.Millimetres()
	if imperial(u) {
		density, mass = 1/quantity.Density(1).PoundsPerCubicFoot(), 1/quantity.Mass(1).Pounds()
	} else {
		moves = 1
	}
	look, _, _ := k.Wood.Look()
	lasts := listing.Cell{Words: "-"}
	if k.Lasts.Words != "" {
		lasts = listing.Cell{Value: k.Lasts.Words, Words: k.Wood.Durability.Words + mark1(k.Lasts.Basis)}
	}
	partMass, partMoves := k.Mass, k.Moves
	if c.Part == nil {
		partMass, partMoves = timber.Quality{}, timber.Quality{}
	}
	return []listing.Cell{
		position,
		{Value: k.Wood.Common, Words: name},
		{Value: k.Wood.Botanical},
		{Value: k.Wood.Region},
		told(k.Stiffness, 1000, "%.1f"), source(k.Stiffness), told(k.Strength, 1, "%.0f"), source(k.Strength),
		told(k.Hardness, 1000, "%.1f"), source(k.Hardness),
		told(k.Density, density, "%.0f"), source(k.Density), told(partMass, mass, "%.2f"),
		told(partMoves, moves, "%.3f"), told(k.PerPoint, 1, "%.2f"), source(k.PerPoint),
		told(k.Heavier, 1, "%+.0f %%"),
		lasts,
		{Value: k.Lasts.Basis.String()},
		c.bends(k),
		{Value: look},
		{Value: strings.Join(k.Cautions, "; "), Words: h.letters(k)},
	}
}

// steady reports a climate of one moisture all year, in which nothing moves.
func (c *Choice) steady() bool {
	return c.vehicle.Moisture.Driest == c.vehicle.Moisture.Wettest
}

// bent reports whether the part is to be bent.
func (c *Choice) bent() bool {
	return c.Part != nil && c.Part.Stick.Body.Blank().Making == parts.Steamed
}

// told is a figure, on paper divided by a unit and marked by how it stands; a
// dash where it is not known.
func told(q timber.Quality, unit float64, format string) listing.Cell {
	if !q.Known() {
		return listing.Cell{Words: "-"}
	}
	return listing.Cell{Value: listing.Rounded(q.Value, 4), Words: fmt.Sprintf(format, q.Value/unit) + mark1(q.Basis)}
}

// mark1 marks a figure that is from memory, or only the least of a strength group.
func mark1(b timber.Basis) string {
	out := ""
	if strings.HasPrefix(b.Source, "least of its strength group") {
		out = " g"
	}
	if b.Standing == timber.FromMemory {
		out += " m"
	}
	return out
}

func source(q timber.Quality) listing.Cell {
	if !q.Known() {
		return listing.Cell{Value: timber.Missing.String()}
	}
	return listing.Cell{Value: q.Basis.String()}
}

// bends says how a wood takes the part's bend, or what bend it takes at all.
func (c *Choice) bends(k timber.Candidate) listing.Cell {
	switch {
	case k.Bend == nil && k.Wood.Bending.Strap.Known():
		words := fmt.Sprintf("to %.0f mm m", k.Wood.Bending.Strap.Value)
		return listing.Cell{Value: words, Words: words}
	case k.Bend == nil:
		return listing.Cell{Words: "-"}
	case len(k.Bend.Warnings) > 0 && k.Bend.Limit > 0:
		return listing.Cell{Value: "too tight for it", Words: "too tight m"}
	case k.Bend.Limit > 0:
		return listing.Cell{Value: "takes the bend", Words: "takes it m"}
	}
	return listing.Cell{Value: "not known; prove it", Words: "prove it"}
}

// heeds gathers cautions, each once, under a number.
type heeds struct{ all []string }

func (h *heeds) letters(k timber.Candidate) string {
	var out []string
	for _, s := range k.Cautions {
		s = strings.TrimSuffix(s, ".")
		i := slices.Index(h.all, s)
		if i < 0 {
			i = len(h.all)
			h.all = append(h.all, s)
		}
		out = append(out, fmt.Sprint(i+1))
	}
	return strings.Join(out, " ")
}

func (c *Choice) foot(h *heeds) []string {
	m := c.vehicle.Moisture
	var says []string
	if c.Part != nil {
		if n := needOf(c.Part.Kind); n.words != "" {
			says = append(says, fmt.Sprintf("A %s: %s (common practice, no source).", c.Part.Kind, n.words))
		}
	}
	says = append(says, fmt.Sprintf("Stiffness, bending strength, hardness and weight at %s moisture, the averages of small clear pieces: for comparing woods, not for judging what a part will bear.", percent(float64(m.Service))))
	if c.Part != nil && !c.steady() {
		says = append(says, fmt.Sprintf("Moves: the part's broad side between %s and %s, the larger way of the grain.", percent(float64(m.Driest)), percent(float64(m.Wettest))))
	} else {
		says = append(says, "% a point: movement across the grain, the larger way, for each percent of moisture.")
	}
	says = append(says,
		"m from memory, its source not seen. g only the least of its strength group. - not found in any source here.",
		"Lasts: heartwood, by its printed class; AG above ground, IG in the ground, 1 the best. Sapwood of no wood lasts.")
	if c.Part == nil {
		says = append(says, "Bends: inside radius of 25 mm, steamed and strapped.")
	}
	if c.splinter.Density > 0 {
		says = append(says, c.splinterWords()...)
	}
	for i, s := range h.all {
		says = append(says, fmt.Sprintf("%d  %s.", i+1, s))
	}
	return append(says, "A vehicle that carries people is to be judged by a competent wheelwright or engineer; local codes come first.")
}

// splinterWords hold the surviving piece against the woods.
func (c *Choice) splinterWords() []string {
	says := []string{fmt.Sprintf("Splinter: by how much the wood's average is heavier or lighter than %.0f kg/m3, weighed at %s. Single pieces differ by a tenth and more from the average; over a fifth, it is hardly that wood.",
		float64(c.splinter.Density), percent(float64(c.splinter.At)))}
	for _, k := range c.Candidates {
		if !k.Heavier.Known() || k.UnlikeSplinter() {
			continue
		}
		if look, _, err := k.Wood.Look(); err == nil {
			says = append(says, fmt.Sprintf("Look for, %s: %s (from memory).", k.Wood.Common, look))
		}
	}
	return says
}

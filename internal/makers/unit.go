package makers

import (
	"math"
	"sort"

	"lostwood/internal/quantity"
)

// A Unit is what a rule is divided by: an inch of some foot, or a centimetre,
// and the parts of it that the rule shows.
type Unit struct {
	name   string // "English inch"
	short  string // written after a size
	one    quantity.Length
	parts  []int // the divisions, coarsest first: 1, 2, 4, 8
	weight float64
	metric bool
	source string
}

// String is the name of u.
func (u Unit) String() string { return u.name }

// One is the length of one unit.
func (u Unit) One() quantity.Length { return u.one }

// Source is where its length comes from.
func (u Unit) Source() string { return u.source }

// Sources of the old feet; both seen. The lengths are Herder's where both give one.
const (
	herder    = "Herders Conversations-Lexikon (1854), vol. 2, p. 831"
	brockhaus = "Brockhaus' Kleines Konversations-Lexikon, 5th ed. (1911), vol. 1, p. 634"
	definedBy = "by definition"
)

// Units lists the units that are looked for, likeliest first. How a rule was
// halved below the inch is common practice, no source; twelve lines to the inch
// are in Brockhaus (1911).
//
// Half of the weight is the English inch's, a quarter the centimetre's, and all
// old feet share the rest: so much the odds are divided by. The weights are our
// choice.
func Units() []Unit {
	units := []Unit{
		{name: "English inch", short: "in", one: quantity.Inch, parts: []int{1, 2, 4, 8, 16}, weight: 1. / 2, source: definedBy},
		{name: "centimetre", short: "cm", one: quantity.Centimetre, parts: []int{1, 2, 5}, weight: 1. / 4, metric: true, source: definedBy},
	}
	old := oldUnits()
	for _, u := range old {
		u.weight = 1. / 4 / float64(len(old))
		units = append(units, u)
	}
	return units
}

func oldUnits() []Unit {
	lines, tenths := []int{1, 2, 4, 8, 12}, []int{1, 2, 10}
	inch := func(name string, foot quantity.Length, to int, parts []int, source string) Unit {
		return Unit{name: name, short: name + "es", one: foot / quantity.Length(to), parts: parts, source: source}
	}
	return []Unit{
		inch("Paris inch", 324.839, 12, lines, herder+"; "+brockhaus),
		inch("Rhenish inch", 313.854, 12, lines, herder+"; "+brockhaus),
		inch("Vienna inch", 316.103, 12, lines, herder+"; "+brockhaus+" gives 316.08"),
		inch("Bavarian or Hanover inch", 291.859, 12, lines, herder),
		inch("Saxon inch", 283.260, 12, lines, herder),
		inch("Swedish inch", 296.838, 12, lines, herder+"; twelve to the foot from memory"),
		inch("Amsterdam inch", 283.056, 11, lines, herder+"; eleven to the foot from memory"),
		inch("Württemberg inch", 286.490, 10, tenths, herder+"; ten to the foot from memory"),
		inch("Swiss or Baden inch", 300.000, 10, tenths, herder+"; ten to the foot from memory"),
	}
}

// usable leaves out what cannot be divided by, and puts the rest in an order of its own.
func usable(units []Unit) []Unit {
	var out []Unit
	for _, u := range units {
		if u.one > 0 && !math.IsInf(float64(u.one), 0) && len(u.parts) > 0 && u.weight > 0 {
			out = append(out, u)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].weight > out[j].weight })
	return out
}

// step is how far apart the marks of that division are.
func (u Unit) step(parts int) quantity.Length { return u.one / quantity.Length(parts) }

// Write gives l in u to the nearest mark of that division, with the unit's
// name: "2 3/8 in", "4.5 cm", "3 1/4 Paris inches".
func (u Unit) Write(l quantity.Length, division int) string {
	if u.metric {
		return trimmed(float64(l/u.one), 1) + " " + u.short
	}
	// Fractions of any inch are written as those of the English one.
	return quantity.Fraction(l/u.one*quantity.Inch, division) + " " + u.short
}

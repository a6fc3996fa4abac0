package survey

import (
	"fmt"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

const loadMeans = "What the vehicle is meant to carry, as far as you know: goods on the floor, persons on the seat, somebody who steps on the edge. " +
	"Write [[load]] on a line before each. What bends, presses and weighs on each wheel is told from them; without any, only what the vehicle itself weighs."

// A Load is one thing to be carried. Masses are in kilograms.
type Load struct {
	At     Position
	Name   string
	Mass   quantity.Mass // of each
	Doubt  quantity.Mass
	Number int
	On     []Named
	Lies   vehicle.Lie
	Within quantity.Length // of a load at an edge
	Middle quantity.Length
	Shock  float64
	Always vehicle.Presence

	placesAt Position // where it says how it lies
}

// A Named is an id where it stands.
type Named struct {
	At Position
	ID string
}

const (
	// heaviest is more than a horse-drawn vehicle carries; it catches slips.
	heaviest quantity.Mass = 20000
	// mostShock is more than any load is taken for on rough ground.
	mostShock = 5
)

func loadKeys() []key[Load] {
	return []key[Load]{
		{
			name: "name", also: "what title goods", need: must, example: `"apple boxes"`, means: "what it is",
			take: intoText(func(l *Load) *string { return &l.Name }),
		},
		{
			name: "mass", also: "weight weighs load", need: must, example: `"1200 lb ± 100"`,
			means: "what it weighs, in lb or kg, and how far that may be off if you like; of each where there are several",
			take:  (*reader).loadMass,
		},
		{
			name: "number", also: "count persons quantity", example: "2", means: "how many of it; one where not given",
			take: intoWhole(1, mostAlike, func(l *Load) *int { return &l.Number }),
		},
		{
			name: "on", also: "over parts carries", need: must, example: `["slat-in", "slat-out"]`, means: "the parts or irons it lies on; a pair or a row means all of it",
			take: func(r *reader, v *node, l *Load) {
				for _, n := range r.texts(v) {
					if id, ok := r.text(n); ok {
						l.On = append(l.On, Named{r.at(n), id})
					}
				}
				if len(l.On) == 0 && v.shape == listShape && len(v.items) == 0 {
					r.fault(v.at, "an empty list of what the load lies on", `write the ids of parts, such as on = ["slat-in", "slat-out"]`)
				}
			},
		},
		{
			name: "lies", also: "where how spread", example: `"spread"`,
			means: "how: spread (evenly over all of them; so where not given), in places (each of several at its own, evenly along one part: persons on a seat), or at the fore edge, hind edge, near edge or off edge of them all",
			take:  (*reader).loadLies,
		},
		{
			name: "within", also: "reaches", example: `"10"`, means: "of a load at an edge: how far in from the edge it reaches",
			take: func(r *reader, v *node, l *Load) { l.Within, _ = r.plainLength(v, positive) },
		},
		{
			name: "middle", also: "height high", example: `"12"`, means: "how high its own middle is above what it lies on; for the balance",
			take: func(r *reader, v *node, l *Load) { l.Middle, _ = r.plainLength(v, zeroToo) },
		},
		{
			name: "shock", also: "impact dynamic", example: "1.5",
			means: "what you assume it comes to on rough ground, in times its weight at rest; 1 where not given",
			take: func(r *reader, v *node, l *Load) {
				if f, ok := r.number(v, "in times its weight,", 1, mostShock); ok {
					l.Shock = f
				}
			},
		},
		{
			name: "always", also: "fixed empty", example: "true", means: "true for what is always there and no part or iron of this survey: hubs and spokes, a toolbox",
			take: intoChoice(vehicle.Standing, vehicle.Working, func(l *Load) *vehicle.Presence { return &l.Always }),
		},
	}
}

// loadMass takes NUMBER lb|kg, with ± NUMBER before or after the unit.
func (r *reader) loadMass(v *node, l *Load) {
	const want = `write a number and lb or kg between quotes, such as "1200 lb" or "1200 lb ± 100"`
	if v.shape != textShape {
		r.mistaken(v, "a mass", want)
		return
	}
	text := strings.ReplaceAll(v.text, "+/-", "±")
	unit := quantity.Mass(0)
	for _, u := range []struct {
		word string
		size quantity.Mass
	}{{"lb", quantity.Pound}, {"lbs", quantity.Pound}, {"kg", 1}} {
		if fields := strings.Fields(text); unit == 0 && containsWord(fields, u.word) {
			unit = u.size
			text = strings.Join(withoutWord(fields, u.word), " ")
		}
	}
	value, doubt, stated := strings.Cut(text, "±")
	m, ok := plainNumber(value)
	d, okDoubt := plainNumber(doubt)
	switch {
	case unit == 0:
		r.fault(v.at, quote(v.text)+", which is no mass in lb or kg", want)
	case !ok || m <= 0 || stated && (!okDoubt || d < 0):
		r.fault(v.at, quote(v.text)+", which is no mass", want)
	case quantity.Mass(m)*unit > heaviest:
		r.fault(v.at, quote(v.text)+", more than any horse-drawn vehicle carries", "see whether the figure and its unit are right")
	default:
		l.Mass = quantity.Mass(m) * unit
		if stated {
			l.Doubt = quantity.Mass(d) * unit
		}
	}
}

func containsWord(words []string, word string) bool {
	for _, w := range words {
		if strings.EqualFold(w, word) {
			return true
		}
	}
	return false
}

func withoutWord(words []string, word string) []string {
	var out []string
	for _, w := range words {
		if !strings.EqualFold(w, word) {
			out = append(out, w)
		}
	}
	return out
}

// plainNumber reads figures with a point, and commas between thousands.
func plainNumber(s string) (float64, bool) {
	s = strings.ReplaceAll(strings.TrimSpace(s), ",", "")
	if strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	f, err := strconv.ParseFloat(s, 64)
	return f, err == nil
}

func (r *reader) loadLies(v *node, l *Load) {
	var words []string
	for _, w := range vehicle.Lies() {
		words = append(words, w.String())
	}
	l.placesAt = r.at(v)
	if w, ok := r.word(v, words); ok {
		for _, k := range vehicle.Lies() {
			if k.String() == w {
				l.Lies = k
			}
		}
	}
}

func (r *reader) loads(n *node) {
	first := map[string]Position{}
	for _, v := range n.items {
		l := Load{At: r.at(v), Number: 1, Shock: 1, placesAt: r.at(v)}
		if !readGroup(r, v, "a load", loadKeys(), &l) {
			continue
		}
		atEdge := l.Lies != vehicle.Spread && l.Lies != vehicle.InPlaces
		switch {
		case atEdge && v.named["within"] == nil:
			r.missing(v.at, "a load at the "+l.Lies.String()+" with no “within”", `write how far in from the edge it reaches: within = "10"`)
		case !atEdge && v.named["within"] != nil:
			r.fault(v.named["within"].at, "“within” of a load that is not at an edge", `write lies = "hind edge", or another edge, or take it away`)
		}
		if l.Always == vehicle.Standing && l.Shock > 1 {
			r.fault(v.named["shock"].at, "a shock of what is always there", "take it away; the vehicle's own weight is taken at rest")
		}
		if before, twice := first[strings.ToLower(l.Name)]; twice && l.Name != "" {
			r.fault(v.named["name"].value.at, "a second load called "+quote(l.Name)+", first on "+before.words(), "call one of them something else")
		} else {
			first[strings.ToLower(l.Name)] = l.At
		}
		r.s.Loads = append(r.s.Loads, l)
	}
}

// loadsOn checks what loads lie on.
func (r *reader) loadsOn() {
	for i := range r.s.Loads {
		l := &r.s.Loads[i]
		pieces := 0
		sound := true
		for _, n := range l.On {
			t, ok := r.find(n.ID, n.At)
			if !ok {
				sound = false
				continue
			}
			if t.Runs() == vehicle.Round {
				r.faultAt(n.At, "a load on "+quote(n.ID)+", which goes round in a wheel", "write the axle of that wheel")
				sound = false
				continue
			}
			sides := 1
			if t.bothSides() {
				sides = 2
			}
			pieces += sides * t.rows()
		}
		if sound && l.Lies == vehicle.InPlaces && pieces > 1 {
			r.faultAt(l.placesAt, fmt.Sprintf("a load in places along %d parts", pieces), "write the one part it is along, and one [[load]] for each part")
		}
	}
}

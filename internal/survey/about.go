package survey

import (
	"slices"

	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// about checks what a statement names.
func (r *reader) about(s *Statement, each func(*Term, Thing)) {
	rows, from, pairs := 1, "", false
	var found []Thing
	for i := range s.Terms {
		t := &s.Terms[i]
		thing, ok := r.find(t.Thing, t.At)
		if !ok || !r.featureOf(t, thing) {
			return
		}
		if each != nil {
			each(t, thing)
		}
		switch n := thing.rows(); {
		case n < 2 || n == rows:
		case rows == 1:
			rows, from = n, t.Thing
		default:
			r.faultAt(t.At, counted(n, "place")+" for "+quote(t.Thing)+" and "+numbered(rows)+" for "+quote(from), "name the one that is meant: "+t.Thing+"-1")
			return
		}
		pairs = pairs || thing.bothSides()
		found = append(found, thing)
	}
	if r.oneAxis(s) {
		r.twoSided(s, found, pairs)
	}
	r.sizeStated(s)
}

// datumThing wants a datum to name one thing.
func (r *reader) datumThing(t *Term, thing Thing) {
	if thing.bothSides() || thing.rows() > 1 {
		r.faultAt(t.At, quote(t.Thing)+" in the datum, which is more than one", "name one of them, such as "+oneOf(thing))
	}
}

func oneOf(t Thing) string {
	name := t.ID()
	if t.bothSides() {
		name = "near-" + name
	}
	if t.rows() > 1 {
		name += "-1"
	}
	return name
}

// axisOf is the vehicle's axis that a place lies on, or 0 for a size.
func axisOf(feature string) byte {
	switch feature {
	case "fore", "hind", "mid-x", "x":
		return 'x'
	case "near", "off", "outer", "inner", "mid-y", "y":
		return 'y'
	case "top", "under", "mid-z", "z":
		return 'z'
	}
	return 0
}

func places() []string {
	return []string{"fore", "hind", "near", "off", "outer", "inner", "top", "under", "mid-x", "mid-y", "mid-z"}
}

// featureOf checks that a thing has what a term asks of it.
func (r *reader) featureOf(t *Term, thing Thing) bool {
	if t.Hole > 0 {
		return r.holeOf(t, thing)
	}
	if thing.unknownKind() {
		return true // its kind is told, and what it has is anyone's guess
	}
	sizes := sizesKnown(thing)
	if slices.Contains(sizes, t.Feature) {
		return true
	}
	if slices.Contains(places(), t.Feature) {
		if thing.Runs() != vehicle.Round {
			return true
		}
		r.faultAt(t.At, quote(t.Feature)+" of "+quote(t.Thing)+", which goes round and has no such place", "write one of its sizes: "+listed(sizes, "or"))
		return false
	}
	known := sizes
	if thing.Runs() != vehicle.Round {
		known = append(known, places()...)
	}
	r.faultAt(t.At, quote(t.Thing)+" has no "+quote(t.Feature), r.meant(t.Feature, known, "write"))
	return false
}

// sizesKnown are the sizes a statement can name of a thing.
func sizesKnown(t Thing) []string {
	if t.Part != nil {
		var names []string
		for _, d := range t.Part.Kind.Dimensions {
			if d.In == parts.InLength {
				names = append(names, d.Name)
			}
		}
		return names
	}
	if t.Iron.Kind.round() {
		return roundSizes()
	}
	names := straightSizes()
	if sizeNamed(t.Iron.Sizes, "mouth") != nil {
		names = append(names, "mouth")
	}
	return names
}

func straightSizes() []string { return []string{"long", "wide", "thick"} }

func roundSizes() []string { return []string{"radius", "wide", "thick"} }

func (r *reader) holeOf(t *Term, thing Thing) bool {
	switch {
	case thing.Part != nil:
		r.faultAt(t.At, "a hole of "+quote(t.Thing)+", which is a part", "write a hole of an iron, or a size or place of the part")
	case t.Hole > len(thing.Iron.Holes):
		r.faultAt(t.At, "hole "+numbered(t.Hole)+" of "+quote(t.Thing)+", which has "+counted(len(thing.Iron.Holes), "hole"), holesWanted(thing.Iron))
	case t.Feature != "x" && t.Feature != "y" && t.Feature != "z":
		r.faultAt(t.At, quote(t.Feature)+" of a hole", "write .x (fore and aft), .y (near to off) or .z (up and down)")
	default:
		return true
	}
	return false
}

// oneAxis refuses a statement that sets a place along the vehicle against a height.
func (r *reader) oneAxis(s *Statement) bool {
	var first *Term
	for i := range s.Terms {
		t := &s.Terms[i]
		switch a := axisOf(t.Feature); {
		case a == 0:
		case first == nil:
			first = t
		case axisOf(first.Feature) != a:
			r.faultAt(t.At, quote(first.Feature)+" and "+quote(t.Feature)+" in one statement, which lie different ways",
				"set fore and hind against each other, near and off, or top and under")
			return false
		}
	}
	return true
}

// twoSided checks the words for the two sides of a pair.
func (r *reader) twoSided(s *Statement, things []Thing, pairs bool) {
	for i := range s.Terms {
		t := &s.Terms[i]
		switch {
		case (t.Feature == "outer" || t.Feature == "inner") && !pairs && things[i].Side == vehicle.Alike:
			r.faultAt(t.At, quote(t.Feature)+" where there is no pair", "write near or off")
		case (t.Feature == "near" || t.Feature == "off") && things[i].bothSides():
			r.faultAt(t.At, quote(t.Feature)+" of "+quote(t.Thing)+", which is a pair", "write outer or inner, or near-"+t.Thing+" for the near one alone")
		case (t.Feature == "mid-y" || t.Feature == "y") && things[i].bothSides() && !amongPairs(s, things):
			r.faultAt(t.At, quote(t.Feature)+" of "+quote(t.Thing)+", which is a pair", "write near-"+t.Thing+" for the near one alone, or outer or inner")
		}
	}
}

// amongPairs reports whether a statement compares pairs only with one another.
func amongPairs(s *Statement, things []Thing) bool {
	for i := range things {
		if !things[i].bothSides() {
			return false
		}
	}
	return s.Constant == 0
}

// sizeStated refuses a size of nothing or less.
func (r *reader) sizeStated(s *Statement) {
	if len(s.Terms) != 1 || axisOf(s.Terms[0].Feature) != 0 {
		return
	}
	if -float64(s.Constant)/s.Terms[0].Factor <= 0 {
		r.faultAt(s.At, "a size of nothing or less", "write how large it is, or take it away")
	}
}

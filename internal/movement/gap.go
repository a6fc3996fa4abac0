package movement

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Gap is the room between two slats side by side. Service is that in
// service; the others follow from how far each slat reaches from its
// fastenings. Below nothing they press on each other.
type Gap struct {
	Between                          [2]*vehicle.Part
	Service, Driest, Wettest, Worked quantity.Length
	Why                              error // nil where the last three are known
}

// gaps enters the room between neighbours among the slats.
func (r *Report) gaps() {
	var slats []*vehicle.Part
	for _, p := range r.vehicle.Parts {
		if p.Kind == "slat" && p.Place != nil {
			slats = append(slats, p)
		}
	}
	for across := range 3 {
		var row []side
		for _, p := range slats {
			if s, ok := sideOf(p, across); ok {
				row = append(row, s)
			}
		}
		slices.SortStableFunc(row, func(a, b side) int { return -cmp.Compare(a.low+a.high, b.low+b.high) }) // near first
		for i := 0; i+1 < len(row); i++ {
			if beside(row[i].part, row[i+1].part, across) {
				r.Gaps = append(r.Gaps, r.gap(row[i], row[i+1], across))
			}
		}
	}
}

// A side is where a slat lies along one of the vehicle's axes, and which of its
// own that is.
type side struct {
	part      *vehicle.Part
	low, high quantity.Length
	axis      int
}

// sideOf is for slats whose broad face lies that way.
func sideOf(p *vehicle.Part, across int) (side, bool) {
	axis := 1
	if extent(p, 2) > extent(p, 1) {
		axis = 2
	}
	if math.Abs(p.Place.Axes[axis][across]) < 0.99 {
		return side{}, false
	}
	low, high := reach(p, across)
	return side{p, low, high, axis}, true
}

// reach is how far a part's box goes along one of the vehicle's axes.
func reach(p *vehicle.Part, v int) (low, high quantity.Length) {
	low = p.Place.At[v].Value
	high = low
	for axis := range 3 {
		by := extent(p, axis) * quantity.Length(p.Place.Axes[axis][v])
		low += min(by, 0)
		high += max(by, 0)
	}
	return low, high
}

// beside reports whether two parts lie over each other in both other ways.
func beside(a, b *vehicle.Part, across int) bool {
	for v := range 3 {
		aLow, aHigh := reach(a, v)
		bLow, bHigh := reach(b, v)
		if v != across && min(aHigh, bHigh) <= max(aLow, bLow) {
			return false
		}
	}
	return true
}

// gap is the room between upper and, below it along the axis, lower.
func (r *Report) gap(upper, lower side, across int) Gap {
	g := Gap{Between: [2]*vehicle.Part{upper.part, lower.part}, Service: upper.low - lower.high}
	a := r.change(upper.part.Timber, r.held(upper, across, upper.low), timber.Worst)
	b := r.change(lower.part.Timber, r.held(lower, across, lower.high), timber.Worst)
	both := a.plus(b, 1)
	g.Why = both.Why
	g.Driest, g.Wettest, g.Worked = g.Service-both.Driest, g.Service-both.Wettest, g.Service-both.Worked
	return g
}

// held is how far an edge of a slat stands from what holds it there: the
// fastening nearest to it, or its middle where nothing is known to.
func (r *Report) held(s side, across int, edge quantity.Length) quantity.Length {
	best := (s.high - s.low) / 2
	found := false
	for _, f := range r.vehicle.Fastenings {
		if !holds(f, s.part.ID) || math.Abs(f.Way[across]) > 0.5 {
			continue
		}
		d := quantity.Length(math.Abs(float64(f.Head[across].Value - edge)))
		if d <= s.high-s.low && (!found || d < best) {
			best, found = d, true
		}
	}
	return best
}

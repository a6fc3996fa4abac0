package movement

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Grip is what a fastening holds, head to nut: the wood in it, and how that
// changes. Iron in it does not.
type Grip struct {
	Fastening *vehicle.Fastening
	Wood      quantity.Length
	By        Change
}

// grips enters every bolt and clip that holds wood. Screws and nails clamp nothing.
func (r *Report) grips() {
	for _, f := range r.vehicle.Fastenings {
		if f.Way == [3]float64{} || f.What == "screw" || f.What == "nail" {
			continue
		}
		g := Grip{Fastening: f}
		for _, s := range f.Through {
			p := r.placed(s.ID)
			if p == nil {
				continue
			}
			axis := 0
			for i := range 3 {
				if math.Abs(dot(p.Place.Axes[i], f.Way)) > math.Abs(dot(p.Place.Axes[axis], f.Way)) {
					axis = i
				}
			}
			thick := min(extent(p, axis), f.Grip.Value)
			way := timber.Worst
			if axis == 0 {
				way = timber.Lengthwise
			}
			g.Wood += thick
			g.By = g.By.plus(r.change(p.Timber, thick, way), 1)
		}
		if g.Wood > 0 {
			r.Grips = append(r.Grips, g)
		}
	}
}

func (r *Report) placed(id string) *vehicle.Part {
	for _, p := range r.vehicle.Parts {
		if p.ID == id && p.Place != nil {
			return p
		}
	}
	return nil
}

// sortHoles puts holes in order, those in one line in that of the vehicle.
func sortHoles(holes []Hole) {
	slices.SortStableFunc(holes, func(a, b Hole) int { return cmp.Compare(a.At, b.At) })
}

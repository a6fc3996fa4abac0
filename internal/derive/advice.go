package derive

import (
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// advice tells what is to be heeded though it can be made.
func (a *assembly) advice() {
	told := map[string]bool{}
	for _, s := range a.network.spans {
		for i := range s.stops {
			p := &s.stops[i]
			if p.hole == none || p.extent[1] == none || s.fastening.Diameter <= 0 {
				continue
			}
			wide := a.fit.size(adjust.At(a.fit.X, p.extent[1]))
			left := (wide.Value - s.fastening.Diameter) / 2
			if wide.Known == quantity.Unknown || left >= s.fastening.Diameter/2 {
				continue
			}
			says := fmt.Sprintf("Only %s of iron is left on each side of hole %d in the %s, beside a bolt of %s. Look for cracks there, and whether the iron swells at the hole.",
				quantity.Format(left, a.vehicle.Unit), p.hole+1, lower(nameOf(p.member)), quantity.Format(s.fastening.Diameter, a.vehicle.Unit))
			if !told[says] {
				told[says] = true
				a.find(vehicle.Advice, p.id, a.network.line(p.member), says)
			}
		}
	}
}

package derive

import (
	"slices"

	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// loads enters what the survey says the vehicle is to carry, and on what.
func (a *assembly) loads() {
	s := a.network.survey
	a.vehicle.Track = s.Track
	for _, l := range s.Loads {
		a.vehicle.Loads = append(a.vehicle.Loads, vehicle.Load{
			Name: l.Name, Mass: l.Mass, Doubt: l.Doubt, Number: l.Number, On: a.carriers(l),
			Lies: l.Lies, Within: l.Within, Middle: l.Middle, Shock: l.Shock, Always: l.Always, Line: l.At.Line,
		})
	}
}

// carriers are the members that a load lies on, in the vehicle's order.
func (a *assembly) carriers(l survey.Load) []string {
	var ids []string
	for _, m := range a.network.members {
		for _, on := range l.On {
			t, ok := a.network.index.Find(on.ID)
			if !ok || t.ID() != m.base || t.Row > 0 && m.row != t.Row-1 || t.Side != vehicle.Alike && m.hand != t.Side {
				continue
			}
			if !slices.Contains(ids, m.id) {
				ids = append(ids, m.id)
			}
		}
	}
	return ids
}

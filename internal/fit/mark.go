package fit

import (
	"slices"

	"lostwood/internal/vehicle"
)

// InOrder sorts remarks, of whatever check, worst first.
func InOrder(rs []vehicle.Remark) []vehicle.Remark {
	out := slices.Clone(rs)
	order(out)
	return out
}

// Fails are the remarks by which something cannot go together.
func Fails(rs []vehicle.Remark) []vehicle.Remark { return of(rs, vehicle.CannotGo) }

// Mark marks every item that cannot go together as it stands, so that all that is
// made of it says so, and returns those items.
func Mark(v *vehicle.Vehicle, rs []vehicle.Remark) []*vehicle.Item {
	var out []*vehicle.Item
	for _, it := range v.Items {
		it.Fails = nil
		for _, r := range Fails(rs) {
			if concerns(r, it) {
				it.Fails = append(it.Fails, r.Says)
			}
		}
		if len(it.Fails) > 0 {
			out = append(out, it)
		}
	}
	return out
}

func concerns(r vehicle.Remark, it *vehicle.Item) bool {
	for _, p := range it.Parts {
		if slices.Contains(r.Parts, p.ID) {
			return true
		}
	}
	return false
}

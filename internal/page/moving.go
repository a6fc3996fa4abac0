package page

import (
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// How far things turn where nothing tells: these show the movement, and claim
// nothing of how far it will really go.
const (
	carriageTurns  = 30 * math.Pi / 180
	tailboardFalls = 90 * math.Pi / 180
)

// movingOf finds what turns from the fastenings: what hangs on the king bolt
// below the place where two irons lie on one another, and a tailboard on hinges.
func movingOf(v *vehicle.Vehicle) []Moving {
	var out []Moving
	if g, ok := foreCarriage(v); ok {
		out = append(out, g)
	}
	if g, ok := tailboard(v); ok {
		out = append(out, g)
	}
	return out
}

// foreCarriage turns about the upright bolt that goes through two irons in contact.
func foreCarriage(v *vehicle.Vehicle) (Moving, bool) {
	irons := map[string]bool{}
	for _, i := range v.Irons {
		irons[i.ID] = true
	}
	var king *vehicle.Fastening
	var below []string
	for _, f := range v.Fastenings {
		if math.Abs(f.Way[2]) != 1 || king != nil && f.Diameter <= king.Diameter {
			continue
		}
		for k := 1; k+1 < len(f.Through); k++ {
			if !irons[f.Through[k-1].ID] || !irons[f.Through[k].ID] {
				continue
			}
			king, below = f, ids(f.Through[k:])
			if f.Way[2] > 0 {
				below = ids(f.Through[:k])
			}
		}
	}
	if king == nil || king.Head[0].Known == quantity.Unknown {
		return Moving{}, false
	}
	members := together(v, below, func(f *vehicle.Fastening) bool { return f != king })
	for _, stop := range king.Through {
		if members[stop.ID] != contains(below, stop.ID) {
			return Moving{}, false // the two halves hang together some other way: it does not turn
		}
	}
	return Moving{
		Name: "Turn the fore carriage", At: [3]Length{king.Head[0].Value, king.Head[1].Value, king.Head[2].Value}, Way: [3]float64{0, 0, 1},
		Members: listed(v, members), From: -carriageTurns, To: carriageTurns,
	}, true
}

// tailboard turns on its hinges, about a line across at its lower edge.
func tailboard(v *vehicle.Vehicle) (Moving, bool) {
	hinges := map[string]bool{}
	for _, i := range v.Irons {
		if i.Kind == "hinge" {
			hinges[i.ID] = true
		}
	}
	for _, p := range v.Parts {
		if !strings.Contains(p.Kind, "tailboard") || p.Place == nil || p.Item == nil {
			continue
		}
		onHinge := false
		for _, f := range v.Fastenings {
			for _, stop := range f.Through {
				onHinge = onHinge || hinges[stop.ID] && goesThrough(f, p.ID)
			}
		}
		if !onHinge {
			continue
		}
		members := together(v, []string{p.ID}, func(f *vehicle.Fastening) bool { return true }, hinges)
		way := -1.0 // falls hindward where it hangs behind the middle of the vehicle
		if p.Place.At[0].Value > middle(v) {
			way = 1
		}
		at := [3]Length{p.Place.At[0].Value, p.Place.At[1].Value, p.Place.At[2].Value}
		return Moving{Name: "Swing the tailboard", At: at, Way: [3]float64{0, way, 0}, Members: listed(v, members), To: tailboardFalls}, true
	}
	return Moving{}, false
}

// middle is the middle of where the parts begin, fore and aft.
func middle(v *vehicle.Vehicle) Length {
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, p := range v.Parts {
		if p.Place != nil && p.Place.At[0].Known != quantity.Unknown {
			lo, hi = min(lo, p.Place.At[0].Value), max(hi, p.Place.At[0].Value)
		}
	}
	return (lo + hi) / 2
}

// together is all that hangs together with the first ones by the fastenings
// that count. What is in stop is not gone on from, nor counted in.
func together(v *vehicle.Vehicle, first []string, counts func(*vehicle.Fastening) bool, stop ...map[string]bool) map[string]bool {
	out := map[string]bool{}
	for _, id := range first {
		out[id] = true
	}
	for news := true; news; {
		news = false
		for _, f := range v.Fastenings {
			touched := false
			for _, s := range f.Through {
				touched = touched || out[s.ID]
			}
			if !touched || !counts(f) {
				continue
			}
			for _, s := range f.Through {
				if !out[s.ID] && (len(stop) == 0 || !stop[0][s.ID]) {
					out[s.ID], news = true, true
				}
			}
		}
	}
	return out
}

// listed are the members in the vehicle's own order.
func listed(v *vehicle.Vehicle, members map[string]bool) []string {
	var out []string
	for _, p := range v.Parts {
		if members[p.ID] {
			out = append(out, p.ID)
		}
	}
	for _, i := range v.Irons {
		if members[i.ID] {
			out = append(out, i.ID)
		}
	}
	return out
}

func ids(stops []vehicle.Stop) []string {
	var out []string
	for _, s := range stops {
		out = append(out, s.ID)
	}
	return out
}

func contains(all []string, one string) bool {
	for _, a := range all {
		if a == one {
			return true
		}
	}
	return false
}

// turns is which moving takes a member along; -1 for none.
func (s *stage) turns(id string) int {
	for k, g := range s.moving {
		if contains(g.Members, id) {
			return k
		}
	}
	return -1
}

// boltTurns is which moving takes a fastening along: one that all of its
// members but hinges are in.
func (s *stage) boltTurns(f *vehicle.Fastening) int {
	k := -1
	for _, stop := range f.Through {
		if s.isHinge(stop.ID) {
			continue
		}
		t := s.turns(stop.ID)
		if t < 0 {
			return -1
		}
		k = t
	}
	return k
}

func (s *stage) isHinge(id string) bool {
	for _, i := range s.model.Vehicle.Irons {
		if i.ID == id {
			return i.Kind == "hinge"
		}
	}
	return false
}

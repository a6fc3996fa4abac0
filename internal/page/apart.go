package page

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// lifts are how far things part for each place between them: fore and aft,
// sideways and up.
var lifts = [3]float64{130, 150, 85}

// apart works out where things go when they are lifted away from each other, and
// in which order they go together. What a fastening holds in a run parts along
// it; what is bolted to it across goes along with it.
func (s *stage) apart() {
	order := newStacking(s.model.Vehicle)
	var levels [3]map[string]int
	for axis := range levels {
		levels[axis] = order.levels(axis)
	}
	for i := range s.scene.Things {
		t := &s.scene.Things[i]
		if t.Sort != "fastening" {
			s.lift(t, levels)
		}
	}
	s.order()
	for i := range s.scene.Things {
		if t := &s.scene.Things[i]; t.Sort == "fastening" {
			s.liftBolt(t)
		}
	}
}

// lift gives a timber or iron its way out.
func (s *stage) lift(t *thing, levels [3]map[string]int) {
	c := t.centre()
	if t.axle != "" {
		t.Lift = [3]float64{0, math.Copysign(3*lifts[1], c[1]), lifts[2] * float64(levels[2][t.axle])}
		return
	}
	mid := [2]float64{middle(s.model.Vehicle).Millimetres(), 0}
	for axis := range 2 {
		const near = 60 // of the middle: what stands there goes neither way
		if off := c[axis] - mid[axis]; math.Abs(off) > near {
			t.Lift[axis] = math.Copysign(lifts[axis]*float64(levels[axis][t.ID]), off) + 0
		}
	}
	t.Lift[2] = lifts[2] * float64(levels[2][t.ID])
}

// order numbers the steps in which the members go together.
func (s *stage) order() {
	if s.model.Order != nil {
		for k, step := range s.model.Order {
			for i := range s.scene.Things {
				if t := &s.scene.Things[i]; contains(step, t.ID) {
					t.Step = k
				}
			}
		}
		s.scene.Steps = len(s.model.Order)
		return
	}
	rank := func(t thing) [3]float64 { return [3]float64{t.Lift[2], math.Abs(t.Lift[1]), math.Abs(t.Lift[0])} }
	var ranks [][3]float64
	for _, t := range s.scene.Things {
		if r := rank(t); t.Sort != "fastening" && !slices.Contains(ranks, r) {
			ranks = append(ranks, r)
		}
	}
	slices.SortFunc(ranks, func(a, b [3]float64) int { return slices.Compare(a[:], b[:]) })
	for i := range s.scene.Things {
		if t := &s.scene.Things[i]; t.Sort != "fastening" {
			t.Step = slices.Index(ranks, rank(*t))
		}
	}
	s.scene.Steps = len(ranks)
}

// liftBolt draws a fastening out of the last of what it holds, head first.
func (s *stage) liftBolt(t *thing) {
	way := [3]float64{t.Matrix[2], t.Matrix[6], t.Matrix[10]}
	for _, f := range s.model.Vehicle.Fastenings {
		if "fastening "+f.ID != t.ID {
			continue
		}
		for _, o := range s.scene.Things {
			if o.ID == f.Through[0].ID {
				for k := range t.Lift {
					t.Lift[k] = round(o.Lift[k] - 0.9*lifts[k]*way[k])
				}
			}
			if goesThrough(f, o.ID) {
				t.Step = max(t.Step, o.Step)
			}
		}
	}
}

// centre is the middle of a thing's box in the vehicle.
func (t *thing) centre() (c [3]float64) {
	if t.tyre { // its frame is about its middle
		return [3]float64{t.Matrix[3], t.Matrix[7], t.Matrix[11]}
	}
	for row := range c {
		c[row] = t.Matrix[4*row+3]
		for col := range 3 {
			c[row] += t.Matrix[4*row+col] * t.Box[col] / 2
		}
	}
	return c
}

// A stacking is what lies on what, by the fastenings.
type stacking struct {
	vehicle *vehicle.Vehicle
	members []string
}

func newStacking(v *vehicle.Vehicle) stacking {
	all := map[string]bool{}
	for _, p := range v.Parts {
		all[p.ID] = true
	}
	for _, i := range v.Irons {
		all[i.ID] = true
	}
	return stacking{v, listed(v, all)}
}

// levels are how many things lie between each member and the lowest (on axis 2)
// or the innermost (on 0 and 1) it is fastened through to.
func (s stacking) levels(axis int) map[string]int {
	group := s.groups(axis)
	under := map[string][]string{} // by group, the groups directly under it
	for _, f := range s.vehicle.Fastenings {
		if f.Way[axis] == 0 {
			continue
		}
		for k := range len(f.Through) - 1 {
			over, below := group[f.Through[k].ID], group[f.Through[k+1].ID]
			if s.outward(f, axis) < 0 {
				over, below = below, over
			}
			if over != below && !slices.Contains(under[over], below) {
				under[over] = append(under[over], below)
			}
		}
	}
	level := map[string]int{}
	busy := map[string]bool{}
	var find func(g string) int
	find = func(g string) int {
		if l, ok := level[g]; ok || busy[g] {
			return l // where things lie on each other in a ring, the ring is cut here
		}
		busy[g] = true
		l := 0
		for _, b := range under[g] {
			l = max(l, find(b)+1)
		}
		busy[g] = false
		level[g] = l
		return l
	}
	out := map[string]int{}
	for _, m := range s.members {
		out[m] = find(group[m])
	}
	return out
}

// outward tells whether a fastening's head lies outward of its nut: 1, or -1.
func (s stacking) outward(f *vehicle.Fastening, axis int) float64 {
	if axis == 2 {
		return -f.Way[2]
	}
	mid := 0.0
	if axis == 0 {
		mid = middle(s.vehicle).Millimetres()
	}
	return -f.Way[axis] * math.Copysign(1, f.Head[axis].Value.Millimetres()-mid)
}

// groups join what is bolted together across an axis, which moves as one along it.
func (s stacking) groups(axis int) map[string]string {
	lead := map[string]string{}
	var find func(m string) string
	find = func(m string) string {
		if lead[m] == "" || lead[m] == m {
			return m
		}
		return find(lead[m])
	}
	for _, f := range s.vehicle.Fastenings {
		if f.Way[axis] != 0 || f.Way == ([3]float64{}) {
			continue
		}
		for _, stop := range f.Through[1:] {
			a, b := find(f.Through[0].ID), find(stop.ID)
			if a != b {
				lead[max(a, b)] = min(a, b)
			}
		}
	}
	out := map[string]string{}
	for _, m := range s.members {
		out[m] = find(m)
	}
	return out
}

// spacings enters what is known of distances between two holes.
func (s *stage) spacings() {
	pair := func(q quantity.Size) [2]float64 { return [2]float64{round(q.Value.Millimetres()), give(q.Doubt)} }
	for _, p := range s.model.Spacings {
		of := ""
		switch {
		case p.Item != nil:
			of = recordID(p.Item)
		case p.Iron != nil:
			of = "iron-" + p.Iron.ID
		}
		s.scene.Spacings = append(s.scene.Spacings, spacing{of, p.A, p.B, pair(p.Along), pair(p.Across)})
	}
	slices.SortStableFunc(s.scene.Spacings, func(a, b spacing) int { return cmp.Compare(a.Of, b.Of) })
}

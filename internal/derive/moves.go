package derive

import (
	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// moves enters what turns, swings or travels, where it stands.
func (a *assembly) moves() {
	for i := range a.network.survey.Moves {
		m := &a.network.survey.Moves[i]
		v := vehicle.Move{
			Name: m.Name, Line: m.At.Line, With: a.membersOf(m.With), Asked: m.Asked, Loaded: m.Loaded, Stop: m.Stop,
			Meets: a.membersOf(m.Meets), Wheels: a.wheelRoom(m.Wheels),
		}
		ok := true
		switch m.Kind {
		case survey.MoveTurns:
			v.Kind = vehicle.Turns
			ok = a.turnsOn(m, &v)
		case survey.MoveSwings:
			v.Kind, v.On = vehicle.Swings, a.membersOf(m.On)
			ok = a.hinged(m, &v)
		default:
			v.Kind = vehicle.Travels
			axis, sign := heading(m.Way, vehicle.Near)
			v.Axis[axis] = sign
		}
		if ok {
			a.vehicle.Moves = append(a.vehicle.Moves, v)
		}
	}
}

// membersOf spreads names into the things they mean.
func (a *assembly) membersOf(names []string) []string {
	var out []string
	for _, name := range names {
		t, ok := a.network.index.Find(name)
		if !ok {
			continue
		}
		for _, m := range a.network.families[t.ID()] {
			if (t.Row == 0 || m.row == t.Row-1) && (t.Side == vehicle.Alike || m.hand == t.Side) {
				out = append(out, m.id)
			}
		}
	}
	return out
}

// turnsOn takes the line of a fastening for the axis of a turn.
func (a *assembly) turnsOn(m *survey.Move, v *vehicle.Move) bool {
	for _, s := range a.network.spans {
		if len(m.On) == 0 || s.fastening.ID != m.On[0] || !s.stops[0].placed() {
			continue
		}
		v.On = []string{s.id}
		v.Axis[s.axis] = 1
		for _, o := range others(s.axis) {
			v.At[o] = a.fit.size(adjust.At(a.fit.X, s.line[o]))
		}
		v.At[s.axis] = a.fit.size(a.network.enters(a.fit.X, s, &s.stops[0]))
		return true
	}
	return false
}

// hinged places the pin of a swing and finds which way round it turns.
func (a *assembly) hinged(m *survey.Move, v *vehicle.Move) bool {
	if len(m.Line) != 2 {
		return false
	}
	x := a.fit.X
	free := 3
	for i := range m.Line {
		st := &m.Line[i]
		sum := adjust.Constant(st.Constant.Millimetres())
		axis := 0
		for _, t := range st.Terms {
			mem := a.network.member(t.Thing, 0, vehicle.Near)
			if !mem.placed() {
				return false
			}
			sum = sum.Plus(mem.feature(x, t, vehicle.Near).Scaled(t.Factor))
			if on, ok := placeAxis(t.Feature); ok {
				axis = on
			}
		}
		v.At[axis] = a.fit.size(sum)
		free -= axis
	}
	way, sign := heading(m.Way, vehicle.Near)
	v.Axis[free] = a.turnSign(v, free, way) * sign
	return way != free
}

// placeAxis is the vehicle's axis that a place in a statement lies on.
func placeAxis(feature string) (int, bool) {
	switch feature {
	case "fore", "hind", "mid-x", "x":
		return 0, true
	case "near", "off", "outer", "inner", "mid-y", "y":
		return 1, true
	case "top", "under", "mid-z", "z":
		return 2, true
	}
	return 0, false
}

// turnSign is which way round the axis what swings must turn for its middle to set
// out along another axis: the sign of that part of axis x arm.
func (a *assembly) turnSign(v *vehicle.Move, free, way int) float64 {
	arm := 3 - free - way
	mid, n := 0.0, 0.0
	for _, id := range v.With {
		if m := a.network.byID[id]; m != nil && m.placed() {
			mid, n = mid+m.middle(a.fit.X, arm).Value, n+1
		}
	}
	if n == 0 {
		return 1
	}
	sign := 1.0
	if (free+1)%3 == way { // free x arm = -way
		sign = -1
	}
	if mid/n < v.At[arm].Value.Millimetres() {
		sign = -sign
	}
	return sign
}

// wheelRoom are a near and an off wheel, upright on their axle.
func (a *assembly) wheelRoom(w *survey.MoveWheels) []vehicle.WheelRoom {
	if w == nil {
		return nil
	}
	axle, tyre := a.network.member(w.Axle, 0, vehicle.Near), a.network.member(w.Tyre, 0, vehicle.Near)
	radius, thick, wide := tyre.size("radius"), tyre.size("thick"), tyre.size("wide")
	if !axle.placed() || radius == none || thick == none || wide == none {
		return nil
	}
	x := a.fit.X
	name := words(axle)
	var out []vehicle.WheelRoom
	for _, s := range []struct {
		word string
		sign float64
	}{{"near", 1}, {"off", -1}} {
		out = append(out, vehicle.WheelRoom{
			Name: s.word + " wheel on the " + name,
			Centre: [3]quantity.Length{
				quantity.Length(axle.middle(x, 0).Value), quantity.Length(s.sign) * w.Gauge / 2, quantity.Length(axle.middle(x, 2).Value),
			},
			Axis: [3]float64{1: s.sign}, Radius: quantity.Length(x[radius] + x[thick]), Wide: quantity.Length(x[wide]),
		})
	}
	return out
}

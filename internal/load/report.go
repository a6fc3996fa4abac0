package load

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Report is what a vehicle weighs and how it bears what it is to carry.
type Report struct {
	Weights      []Weight
	Empty, Laden Balance
	Axles        []Axle // fore to hind
	Beams        []Beam // every timber that lies level, as the vehicle has them; none where Why says why
	Bearings     []Bearing
	Washers      []Washer
	Why          string           // why nothing is told of stresses; empty where it is
	Notes        []vehicle.Remark // what is left out, and what is taken for granted
	Remarks      []vehicle.Remark // the outcome, worst first, then the notes

	vehicle *vehicle.Vehicle
}

// A Balance is a mass and where it balances, in the vehicle's frame.
type Balance struct {
	Mass  quantity.Mass
	Doubt quantity.Mass
	At    [3]quantity.Size // its doubt is the give or take
}

// An Axle is what stands on an axle and its two wheels.
type Axle struct {
	ID, Name     string
	At           quantity.Length // how far forward
	Empty, Laden Stand
}

// A Stand is what an axle carries to the ground: all of it, and each wheel.
type Stand struct{ All, Near, Off quantity.Mass }

// A study is a report in the making.
type study struct {
	report   *Report
	vehicle  *vehicle.Vehicle
	woods    timber.Catalogue
	list     []*member
	byID     map[string]*member
	axles    []*member
	bolts    []bolted
	onAxle   []Weight // bolts in wheels
	links    []*link
	supports []*support
	size     int
	told     map[string]bool
	holds    map[*member]bool
	wood     map[string]strength
}

// Of works out what v weighs and how it bears its stated loads in its own
// timbers at service moisture. What cannot be told is said in the report; the
// error is a grid that cannot be worked out at all.
func Of(v *vehicle.Vehicle, woods timber.Catalogue) (*Report, error) {
	if v == nil {
		return nil, errors.New("there is no vehicle to weigh; derive one from its survey first")
	}
	s := newStudy(v, woods)
	s.report.Empty, s.report.Laden = s.balance(Empty), s.balance(Laden)
	if err := s.work(); err != nil {
		return nil, err
	}
	s.remark()
	return s.report, nil
}

// newStudy weighs everything and finds how it hangs together.
func newStudy(v *vehicle.Vehicle, woods timber.Catalogue) *study {
	s := &study{
		report: &Report{vehicle: v}, vehicle: v, woods: woods,
		byID: map[string]*member{}, told: map[string]bool{}, wood: map[string]strength{},
	}
	s.members()
	s.findAxles()
	s.weigh()
	s.joints()
	s.breadths()
	s.stand()
	s.wire()
	s.holds = s.held()
	return s
}

// note tells once what is left out or taken for granted.
func (s *study) note(subject, says string) {
	if s.told[subject+says] {
		return
	}
	s.told[subject+says] = true
	s.report.Notes = append(s.report.Notes, vehicle.Remark{Check: "loads", Gravity: vehicle.Noted, Subject: subject, Says: says})
}

// A State is what the vehicle carries.
type State int

// The states.
const (
	Empty   State = iota // itself, and what is always there
	Laden                // and what it is meant to carry, standing still
	Shocked              // the same on rough ground, each load by its own shock
)

// counts is how many times its weight a load counts in a state.
func (s State) counts(l *vehicle.Load) float64 {
	switch {
	case l.Always == vehicle.Standing:
		return 1
	case s == Empty:
		return 0
	case s == Shocked:
		return max(l.Shock, 1)
	}
	return 1
}

// work bends the grid, empty, laden and shocked.
func (s *study) work() error {
	if len(s.axles) < 2 {
		s.report.Why = map[int]string{
			0: "The survey names no axle and no axle bed: where the vehicle stands cannot be told, and so nothing of what bends it.",
			1: "The survey names one axle: what a horse, a pole or a prop carries of it is not told, and so nothing of what bends it.",
		}[len(s.axles)]
		return nil
	}
	var cases [3]*solved
	for state := Empty; state <= Shocked; state++ {
		if state == Shocked && !s.shocks() {
			cases[state] = cases[Laden]
			break
		}
		s.lade(state)
		r, err := s.solve()
		if err != nil {
			return err
		}
		cases[state] = r
	}
	s.axleLoads(cases[Empty], cases[Laden])
	s.adrift(cases[Shocked])
	s.compare(cases[Shocked])
	return nil
}

func (s *study) shocks() bool {
	return slices.ContainsFunc(s.vehicle.Loads, func(l vehicle.Load) bool { return l.Shock > 1 && l.Always == vehicle.Working })
}

// adrift tells of members that nothing holds in their place.
func (s *study) adrift(r *solved) {
	for _, m := range s.list {
		for i := range m.ways() {
			if math.Abs(r.down[m.first+i]) > adrift && s.holds[m] {
				s.note(m.id, fmt.Sprintf("%s is held so that it can turn or drop, as far as the survey tells: nothing is told of what bends it.", m.name))
				break
			}
		}
	}
}

// axleLoads shares the whole weight out to two axles by their distances, and to
// more by the grid; to the wheels as the grid leans.
func (s *study) axleLoads(empty, laden *solved) {
	for i, a := range s.axles {
		x := Axle{ID: a.id, Name: a.name, At: quantity.Length((a.lo[0] + a.hi[0]) / 2)}
		for k, c := range [2]*solved{empty, laden} {
			st := Stand{
				Near: quantity.Mass(c.wheels[2*i]/gravity) + s.wheelWeight(i),
				Off:  quantity.Mass(c.wheels[2*i+1]/gravity) + s.wheelWeight(i),
			}
			st.All = st.Near + st.Off
			if k == 0 {
				x.Empty = st
			} else {
				x.Laden = st
			}
		}
		s.report.Axles = append(s.report.Axles, x)
	}
}

// wheelWeight is what the survey tells of one wheel of an axle.
func (s *study) wheelWeight(axle int) quantity.Mass {
	kg := 0.0
	for _, list := range [2][]Weight{s.report.Weights, s.onAxle} {
		for i := range list {
			if list[i].onWheels == axle+1 {
				kg += list[i].kg / 2
			}
		}
	}
	return quantity.Mass(kg)
}

package derive

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// An assembly turns the adjusted network into the vehicle.
type assembly struct {
	network *network
	fit     *fit
	vehicle *vehicle.Vehicle
	made    map[*member]*vehicle.Part
	sized   map[*member][]vehicle.Dimension
	// ofWheels are the timbers that belong to a whole wheel.
	ofWheels map[*vehicle.Item]wheelTimber
}

// parts enters every timber with its sizes and place.
func (a *assembly) parts() {
	a.made = map[*member]*vehicle.Part{}
	for _, m := range a.network.members {
		if m.part == nil || m.wheel != nil {
			continue
		}
		p := &vehicle.Part{
			ID: m.id, Name: capital(words(m)), Kind: m.part.Kind.Name, Run: m.run, Hand: m.hand,
			Timber: a.network.timberOf(m.part), Status: m.part.Status, Kept: m.part.Kept,
			Sizes: a.sizes(m), Place: a.place(m),
		}
		for _, w := range a.work(m) {
			p.Features = append(p.Features, vehicle.Feature{Ref: w.ref, Along: a.fit.size(w.along(a.fit.X)), Across: a.fit.size(w.across(a.fit.X))})
		}
		a.made[m] = p
		a.vehicle.Parts = append(a.vehicle.Parts, p)
	}
}

func (n *network) timberOf(p *survey.Part) string {
	if p.Timber != "" {
		return p.Timber
	}
	return n.survey.Wood.Timber
}

// sizes are a member's dimensions, each with the evidence that bears on it most.
func (a *assembly) sizes(m *member) []vehicle.Dimension {
	if a.sized == nil {
		a.sized = map[*member][]vehicle.Dimension{}
	}
	out, ok := a.sized[m]
	if ok {
		return slices.Clone(out)
	}
	for _, d := range m.sizes {
		s := a.fit.size(adjust.At(a.fit.X, d.unknown))
		out = append(out, vehicle.Dimension{Name: d.name, Axis: d.axis, Size: s, By: a.evidence(m, d.unknown, s.Known)})
	}
	a.sized[m] = out
	return slices.Clone(out)
}

// place is where a member stands; nil in a wheel.
func (a *assembly) place(m *member) *vehicle.Place {
	if !m.placed() {
		return nil
	}
	p := &vehicle.Place{}
	for i, u := range m.at {
		p.At[i] = a.fit.size(adjust.At(a.fit.X, u))
		p.Axes[i][m.axes[i].of] = m.axes[i].sign
	}
	return p
}

// stand enters where a fastening stands.
func (a *assembly) stand(f *vehicle.Fastening, s *span) {
	x := a.fit.X
	if !s.stops[0].placed() {
		for i := range f.Head {
			f.Head[i] = quantity.Size{Doubt: quantity.Length(math.Inf(1)), Known: quantity.Unknown}
		}
		return
	}
	f.Way[s.axis] = s.sign
	f.Head[s.axis] = a.fit.size(a.network.enters(x, s, &s.stops[0]))
	for _, o := range others(s.axis) {
		f.Head[o] = a.fit.size(adjust.At(x, s.line[o]))
	}
}

// irons enters every iron as adjusted.
func (a *assembly) irons() {
	for _, m := range a.network.members {
		if m.iron == nil {
			continue
		}
		i := &vehicle.Iron{
			ID: m.id, Name: capital(words(m)), Kind: string(m.iron.Kind), Run: m.run, Hand: m.hand,
			Sizes: a.sizes(m), Condition: m.iron.Condition, Place: a.place(m),
			Where: m.iron.Where, Marks: m.iron.Marks, Note: m.iron.Note, Photos: m.iron.Photos, Missing: m.iron.Missing.Lacks(m.hand, m.row+1),
		}
		for _, c := range m.iron.Cranks {
			i.Steps = append(i.Steps, vehicle.Step{At: c.At.Value, By: c.By.Value})
		}
		for _, h := range m.holes {
			i.Holes = append(i.Holes, a.fit.size(adjust.At(a.fit.X, h)))
		}
		a.vehicle.Irons = append(a.vehicle.Irons, i)
	}
}

// fastenings enters every fastening with its adjusted grip.
func (a *assembly) fastenings() {
	for _, s := range a.network.spans {
		f := &vehicle.Fastening{
			ID: s.id, What: s.fastening.What, Diameter: s.fastening.Diameter,
			Grip: a.fit.size(a.network.length(a.fit.X, s)), Hardware: hardware(s),
		}
		for i := range s.stops {
			f.Through = append(f.Through, vehicle.Stop{ID: s.stops[i].id, Hole: s.stops[i].hole + 1, Gap: s.stops[i].gap})
		}
		a.stand(f, s)
		first, last := s.stops[0].member, s.stops[len(s.stops)-1].member
		f.Title = fmt.Sprintf("%s: %s to %s", s.id, words(first), words(last))
		if s.fastening.Name != "" {
			f.Title = fmt.Sprintf("%s: %s", s.id, s.fastening.Name)
		}
		a.vehicle.Fastenings = append(a.vehicle.Fastenings, f)
	}
}

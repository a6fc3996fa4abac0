package load

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// WroughtIron is the density irons are weighed with: 480 lb in a cubic foot, the
// trade's 10 lb for a yard of inch-square bar (C. Hutton and others; from memory).
// Steel is 2 % heavier, which the give or take covers.
const WroughtIron quantity.Density = 7689

// How far a density may be off, as shares: of wood, 10 % from piece to piece of
// one species (Wood Handbook table 5-6, specific gravity, from memory); of iron, 2 %.
const woodSpread, ironSpread = .10, .02

// A mass is one thing's, kg, with where it balances.
type mass struct {
	kg, spread, sized float64    // spread and sized: give or take by its density and by its sizes
	at                [3]float64 // mm in the vehicle
	atDoubt           [3]float64
}

// A Weight is one line of what the vehicle weighs.
type Weight struct {
	ID, Name string
	Of       string // its timber; "iron"
	Number   int
	Mass     quantity.Mass // of all of them
	Doubt    quantity.Mass
	Why      string // why it is not known; empty where it is
	Placed   bool   // it counts in the balance: it has a place
	onWheels int    // of which axle, from 1; 0 for what the grid bears
	mass
}

func (s *study) densities(name string) (quantity.Density, error) {
	w, err := s.woods.Find(name)
	if err != nil {
		return 0, err
	}
	d, _, err := w.Density(s.vehicle.Moisture.Service)
	return d, err
}

// weigh weighs every timber and iron, then bolts, nuts and washers.
func (s *study) weigh() {
	for _, p := range s.vehicle.Parts {
		s.report.Weights = append(s.report.Weights, s.weighPart(p))
	}
	for _, i := range s.vehicle.Irons {
		s.report.Weights = append(s.report.Weights, s.weighIron(i))
	}
	s.weighBolts()
	var unknown []string
	for _, w := range s.report.Weights {
		if w.Why != "" {
			unknown = append(unknown, lower(w.Name))
		}
	}
	if len(unknown) > 0 {
		s.note("weight", fmt.Sprintf("Not weighed, because not all of their sizes or their timber's density are known: %s.", strings.Join(unknown, ", ")))
	}
	for _, w := range s.report.Weights {
		if m := s.byID[w.ID]; m != nil {
			m.mass = w.mass
		}
	}
}

func (s *study) weighPart(p *vehicle.Part) Weight {
	w := Weight{ID: p.ID, Name: p.Name, Of: p.Timber, Number: 1}
	d, err := s.densities(p.Timber)
	switch {
	case err != nil:
		w.Why = err.Error()
		return w
	case p.Item == nil || p.Item.Stick.Body == nil:
		w.Why = "not all its sizes are known"
		return w
	}
	if p.Run == vehicle.Round && len(p.Item.Parts) > 0 {
		w.Number = max(1, p.Item.NumberOff/len(p.Item.Parts))
	}
	volume := parts.Net(p.Item.Stick)
	w.kg = float64(d.Mass(volume)) * float64(w.Number)
	w.spread, w.sized = woodSpread*w.kg, spreadOf(p.Sizes)*w.kg
	if m := s.byID[p.ID]; m != nil {
		w.Placed = true
		w.at, w.atDoubt = m.balance(), doubts(p.Place)
	} else {
		w.axle(s, p.ID)
	}
	return w.done()
}

// done rounds off what is told.
func (w Weight) done() Weight {
	w.Mass, w.Doubt = quantity.Mass(w.kg), quantity.Mass(math.Hypot(w.spread, w.sized))
	return w
}

// spreadOf is the share by which a box's volume may be off by its three sizes.
func spreadOf(sizes []vehicle.Dimension) float64 {
	sum := 0.0
	for _, d := range sizes {
		if d.Axis >= parts.AlongX && d.Axis <= parts.UpZ && d.Value > 0 && !math.IsInf(float64(d.Doubt), 0) {
			sum += math.Pow(float64(d.Doubt/d.Value), 2)
		}
	}
	return math.Sqrt(sum)
}

func doubts(p *vehicle.Place) [3]float64 {
	var d [3]float64
	for i := range d {
		if v := float64(p.At[i].Doubt); !math.IsInf(v, 0) && !math.IsNaN(v) {
			d[i] = v
		}
	}
	return d
}

// balance is where a member balances: its body's middle, less what is cut out of it.
func (m *member) balance() [3]float64 {
	var at [3]float64
	for i := range at {
		at[i] = (m.lo[i] + m.hi[i]) / 2
	}
	if m.wood == nil {
		return at
	}
	c := m.wood.centroid()
	if m.part.Item.Hand == vehicle.Off { // its stick is of its own hand, its place in the mirror of the near one's
		c[1] = m.wood.box[1] - c[1]
	}
	for i := range 3 {
		// The part's axes lie on the vehicle's: its middle is off the box's by as much.
		for a, axis := range m.part.Place.Axes {
			at[i] += axis[i] * (c[a] - m.wood.box[a]/2)
		}
	}
	return at
}

// centroid is the middle of the wood in the part's own frame.
func (w *sawyer) centroid() [3]float64 {
	if w.middle != nil {
		return *w.middle
	}
	const steps = 24
	var volume float64
	var sum [3]float64
	add := func(share, x, y, z float64) {
		volume += share
		sum[0] += share * x
		sum[1] += share * y
		sum[2] += share * z
	}
	for i := range steps {
		x := w.box[0] * (float64(i) + .5) / steps
		s := w.gross(x)
		add(float64(s.Area)*w.box[0]/steps, x, float64(s.Across), float64(s.Middle))
	}
	bare := parts.Stick{Body: w.body}
	whole := parts.Net(bare)
	for _, f := range w.features {
		gone := float64(whole - parts.Net(parts.Stick{Body: w.body, Features: []parts.Feature{f}}))
		if at, ok := w.within(f.Cuts(w.body)); ok {
			add(-gone, at[0], at[1], at[2])
		}
	}
	c := [3]float64{w.box[0] / 2, w.box[1] / 2, w.box[2] / 2}
	if volume > 0 {
		c = [3]float64{sum[0] / volume, sum[1] / volume, sum[2] / volume}
	}
	w.middle = &c
	return c
}

// within is the middle of the part of cuts that lies in the timber's box.
func (w *sawyer) within(cuts []form.Volume) (at [3]float64, ok bool) {
	for i, c := range cuts {
		b := form.Bounds(c)
		lo := [3]float64{float64(b.Min.X), float64(b.Min.Y), float64(b.Min.Z)}
		hi := [3]float64{float64(b.Max.X), float64(b.Max.Y), float64(b.Max.Z)}
		for k := range at {
			middle := (max(lo[k], 0) + min(hi[k], w.box[k])) / 2
			at[k] += (middle - at[k]) / float64(i+1)
		}
	}
	return at, len(cuts) > 0
}

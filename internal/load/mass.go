package load

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/bolt"
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

func (s *study) weighIron(i *vehicle.Iron) Weight {
	w := Weight{ID: i.ID, Name: i.Name, Of: "iron", Number: 1}
	var volume float64
	if r := ironSize(i, "radius"); r > 0 {
		wide, thick := ironSize(i, "wide"), ironSize(i, "thick")
		volume = math.Pi * (2*r + thick) * thick * wide
		if volume == 0 {
			w.Why = "not all its sizes are known"
			return w
		}
		w.Number = s.wheelsOf(i.ID)
		volume *= float64(w.Number)
	} else {
		box, known := ironBox(i)
		if !known {
			w.Why = "not all its sizes are known"
			return w
		}
		volume = box[0]*box[1]*box[2] - s.holesIn(i)*box[2]
	}
	w.kg = float64(WroughtIron.Mass(quantity.Volume(volume)))
	w.spread, w.sized = ironSpread*w.kg, spreadOf(i.Sizes)*w.kg
	if m := s.byID[i.ID]; m != nil {
		w.Placed = true
		w.at, w.atDoubt = m.balance(), doubts(i.Place)
	} else {
		w.axle(s, i.ID)
	}
	return w.done()
}

// holesIn is the area of an iron's holes, of those that a bolt goes through.
func (s *study) holesIn(i *vehicle.Iron) float64 {
	area := 0.0
	for _, f := range s.vehicle.Fastenings {
		for _, st := range f.Through {
			if st.ID == i.ID && st.Hole > 0 {
				area += math.Pi / 4 * float64(f.Diameter*f.Diameter)
			}
		}
	}
	return area
}

// wheelsOf is how many wheels have a tyre like this one: as many as the felloes
// bolted to it make.
func (s *study) wheelsOf(id string) int {
	for _, f := range s.vehicle.Fastenings {
		if len(f.Through) == 0 || f.Through[0].ID != id {
			continue
		}
		for _, p := range s.vehicle.Parts {
			if p.Item == nil || p.ID != f.Through[len(f.Through)-1].ID {
				continue
			}
			if felloe, ok := p.Item.Shape.(parts.Felloe); ok && felloe.Felloes > 0 {
				return max(1, p.Item.NumberOff/max(1, len(p.Item.Parts))/felloe.Felloes)
			}
		}
	}
	return 1
}

// axle puts what belongs to wheels over their axle, where its name tells which.
func (w *Weight) axle(s *study, id string) {
	var on []*member
	for _, a := range s.axles {
		fore := strings.Contains(id, "fore") || strings.Contains(id, "front")
		hind := strings.Contains(id, "hind") || strings.Contains(id, "rear")
		switch {
		case len(s.axles) == 1, fore && a == s.axles[0], hind && a == s.axles[len(s.axles)-1]:
			on = append(on, a)
		}
	}
	if len(on) != 1 {
		return
	}
	w.Placed, w.onWheels = true, s.axleNumber(on[0])
	for i := range 3 {
		w.at[i] = (on[0].lo[i] + on[0].hi[i]) / 2
	}
}

func (s *study) axleNumber(m *member) int {
	for i, a := range s.axles {
		if a == m {
			return i + 1
		}
	}
	return 0
}

// weighBolts weighs bolts with heads, nuts and washers, each where it stands.
// A clip is left out: nobody reads how thick its legs are.
func (s *study) weighBolts() {
	w := Weight{ID: "", Name: "Bolts, nuts and washers", Of: "iron"}
	clips := 0
	for _, f := range s.vehicle.Fastenings {
		if f.What == "clip" {
			clips++
			continue
		}
		number := 1
		kg := boltMass(f)
		at, placed := spot(f)
		if !placed {
			number = s.piecesOn(f)
		}
		w.Number += number
		kg *= float64(number)
		w.kg += kg
		b := bolted{fastening: f, kg: kg, at: at}
		if placed {
			s.bolts = append(s.bolts, b)
		} else {
			one := Weight{mass: mass{kg: kg}}
			one.axle(s, f.Through[0].ID)
			if one.Placed {
				s.onAxle = append(s.onAxle, one)
			}
		}
	}
	w.spread = 2 * ironSpread * w.kg // heads and nuts vary more than their iron
	w.Placed = true
	if w.Number > 0 {
		s.report.Weights = append(s.report.Weights, w.done())
	}
	if clips > 0 {
		s.note("clips", fmt.Sprintf("%d clips are not weighed: how thick their iron is stands nowhere in the survey.", clips))
	}
}

// A bolted is one bolt with its weight and its middle.
type bolted struct {
	fastening *vehicle.Fastening
	kg        float64
	at        [3]float64
}

// piecesOn is how many a bolt stands for in the wheels.
func (s *study) piecesOn(f *vehicle.Fastening) int {
	for _, st := range f.Through {
		for _, p := range s.vehicle.Parts {
			if p.ID == st.ID && p.Item != nil && p.Run == vehicle.Round {
				return max(1, p.Item.NumberOff/max(1, len(p.Item.Parts)))
			}
		}
	}
	return 1
}

// boltMass is a plain shank of the grip and its nut, a square head, a nut, and
// one washer; a screw has no nut. A size in no table is taken by its diameter.
func boltMass(f *vehicle.Fastening) float64 {
	d := float64(f.Diameter)
	grip := float64(f.Grip.Value)
	if d <= 0 || math.IsNaN(grip) || math.IsInf(grip, 0) {
		return 0
	}
	shank := math.Pi / 4 * d * d
	across, thick := 1.6*d, .9*d
	if n, source := bolt.Nut(f.Diameter, bolt.SquareNut); source != bolt.Unlisted {
		across, thick = float64(n.Across), float64(n.Thickness)
	}
	const head = 2. / 3 // a square head is two thirds of the diameter deep; ASME B18.2.1, from memory
	volume := across*across*head*d + shank*grip
	if f.What == "bolt" {
		volume += across*across*thick + shank*d/4 // the nut's hole is full of bolt, which stands out a little
		if w, source := bolt.Washer(f.Diameter, bolt.Wide); source != bolt.Unlisted {
			volume += math.Pi / 4 * float64((w.Outside*w.Outside-w.Inside*w.Inside)*w.Thickness)
		}
	}
	return float64(WroughtIron.Mass(quantity.Volume(volume)))
}

// spot is the middle of a fastening; there is none in a wheel.
func spot(f *vehicle.Fastening) (at [3]float64, ok bool) {
	for i, h := range f.Head {
		at[i] = float64(h.Value) + f.Way[i]*float64(f.Grip.Value)/2
		if math.IsNaN(at[i]) || math.IsInf(at[i], 0) {
			return at, false
		}
	}
	return at, f.Way != [3]float64{}
}

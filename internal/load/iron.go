package load

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

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

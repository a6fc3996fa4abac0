package movement

import (
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// TooFar is how far apart across the grain bolts through one plate may stand:
// 125 mm (5 in), beyond which separate plates are advised (Canadian Wood
// Council, on bolted connections).
const TooFar = 125 * quantity.Millimetre

// A Spacing is a timber held in two places or more by one thing that does not
// move with it: an iron, or a timber whose grain runs the other way.
type Spacing struct {
	Part   *vehicle.Part
	Holder string // the thing's name, its hand in it
	Iron   bool   // or a timber
	Grain  Grain
	Holes  []Hole // in order along that way
	Span   quantity.Length
	By     Change // of the span against the thing
	Play   quantity.Length
}

// Grain says which way of the timber a spacing lies.
type Grain int

// The ways.
const (
	Across Grain = iota
	Along
)

// A Hole is one place where a timber is held.
type Hole struct {
	Fastening *vehicle.Fastening
	Number    int             // of the iron's hole, from 1; 0 in a timber
	At        quantity.Length // along the way, from the first
}

// trifle is what no hole is bored to, and wood and screw give without harm;
// common practice, no source.
const trifle = 0.4 * quantity.Millimetre

// Needs is how much longer than round a hole at the far end must be, where the
// other end is held fast, beyond the play that bolts have.
func (s Spacing) Needs() quantity.Length {
	if !s.By.Known() {
		return 0
	}
	if max(s.By.Shrinks(), s.By.Swells()) <= max(s.Play, trifle) {
		return 0
	}
	return s.By.Total()
}

// Fast is the hole to hold fast: the one nearest the middle, so that the wood goes
// both ways from there.
func (s Spacing) Fast() int {
	best := 0
	for i, h := range s.Holes {
		if math.Abs(float64(h.At-s.Span/2)) < math.Abs(float64(s.Holes[best].At-s.Span/2))-1e-6 {
			best = i
		}
	}
	return best
}

// A Slot is a hole to be made longer, and by how much.
type Slot struct {
	Hole Hole
	By   quantity.Length
}

// Slots are the holes to slot, in proportion to how far they stand from the one held fast.
func (s Spacing) Slots() []Slot {
	if s.Needs() == 0 || s.Span <= 0 {
		return nil
	}
	fast := s.Holes[s.Fast()]
	var out []Slot
	for _, h := range s.Holes {
		part := quantity.Length(math.Abs(float64(h.At-fast.At))) / s.Span
		if by := part * s.By.Total(); part*max(s.By.Shrinks(), s.By.Swells()) > max(s.Play, trifle) {
			out = append(out, Slot{h, by})
		}
	}
	return out
}

// TooFar reports a spacing that wants more than a slot to be thought of.
func (s Spacing) TooFar() bool { return s.Grain == Across && s.Span > TooFar }

// A holder is one thing that a timber is held by.
type holder struct {
	id, name string
	part     *vehicle.Part // where it is a timber
}

func (r *Report) spacings() {
	for _, p := range r.vehicle.Parts {
		if p.Place == nil {
			continue
		}
		for _, h := range r.holders(p) {
			r.spacing(p, h)
		}
	}
}

// holders are what shares two fastenings or more with a timber, in the order they are met.
func (r *Report) holders(p *vehicle.Part) []holder {
	var order []string
	count := map[string]int{}
	for _, f := range r.vehicle.Fastenings {
		if !holds(f, p.ID) {
			continue
		}
		for _, s := range f.Through {
			if s.ID == p.ID {
				continue
			}
			if count[s.ID] == 0 {
				order = append(order, s.ID)
			}
			count[s.ID]++
		}
	}
	var out []holder
	for _, id := range order {
		if h, ok := r.named(id); ok && count[id] > 1 {
			out = append(out, h)
		}
	}
	return out
}

func (r *Report) named(id string) (holder, bool) {
	for _, i := range r.vehicle.Irons {
		if i.ID == id {
			return holder{id: id, name: i.Name}, true
		}
	}
	for _, p := range r.vehicle.Parts {
		if p.ID == id && p.Place != nil {
			return holder{id, p.Name, p}, true
		}
	}
	return holder{}, false
}

// holds reports whether a fastening goes through a hole in a thing; a clip goes round it.
func holds(f *vehicle.Fastening, id string) bool {
	if f.What == "clip" || f.Way == [3]float64{} {
		return false
	}
	for _, s := range f.Through {
		if s.ID == id {
			return true
		}
	}
	return false
}

// least is under what two fastenings stand in one line.
const least = 5 * quantity.Millimetre

// spacing enters how the holder's fastenings stand in each way of the timber.
func (r *Report) spacing(p *vehicle.Part, by holder) {
	for axis := range 3 {
		holes, play := r.line(p, by, axis)
		if len(holes) < 2 {
			continue
		}
		s := Spacing{Part: p, Holder: by.name, Iron: by.part == nil, Holes: holes, Span: holes[len(holes)-1].At, Play: play}
		if s.Span < least {
			continue
		}
		way := timber.Worst
		if axis == 0 {
			s.Grain, way = Along, timber.Lengthwise
		}
		s.By = r.change(p.Timber, s.Span, way)
		if by.part != nil {
			if other, ok := grainOf(by.part, p.Place.Axes[axis]); axis == 0 || !ok || other != timber.Lengthwise {
				continue // it moves with it, or is told of the other timber, whose grain is crossed
			}
			s.By = s.By.plus(r.change(by.part.Timber, s.Span, timber.Lengthwise), -1)
		}
		r.Spacings = append(r.Spacings, s)
	}
}

// line is where a holder's fastenings stand along one axis of a timber, in
// order, and how far the outer two can give.
func (r *Report) line(p *vehicle.Part, by holder, axis int) ([]Hole, quantity.Length) {
	var holes []Hole
	way := p.Place.Axes[axis]
	for _, f := range r.vehicle.Fastenings {
		if !holds(f, p.ID) || !holds(f, by.id) || math.Abs(dot(f.Way, way)) > 0.5 {
			continue
		}
		h := Hole{Fastening: f}
		for i := range 3 {
			h.At += f.Head[i].Value * quantity.Length(way[i])
		}
		for _, s := range f.Through {
			if s.ID == by.id {
				h.Number = s.Hole
			}
		}
		holes = append(holes, h)
	}
	if len(holes) < 2 {
		return nil, 0
	}
	sortHoles(holes)
	first := holes[0].At
	for i := range holes {
		holes[i].At -= first
	}
	return holes, give(holes[0].Fastening)/2 + give(holes[len(holes)-1].Fastening)/2
}

// give is how far a fastening can shift in its hole, from side to side; a screw cannot.
func give(f *vehicle.Fastening) quantity.Length {
	if f.What != "bolt" {
		return 0
	}
	return bolt.Hole(f.Diameter) - f.Diameter
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// grainOf is how a timber lies along a way of the vehicle; not ok where it slants.
func grainOf(p *vehicle.Part, way [3]float64) (timber.Direction, bool) {
	switch c := math.Abs(dot(p.Place.Axes[0], way)); {
	case c > 0.99:
		return timber.Lengthwise, true
	case c < 0.01:
		return timber.Worst, true
	}
	return 0, false
}

// extent is a part's size along one of its axes, in service.
func extent(p *vehicle.Part, axis int) quantity.Length {
	for _, d := range p.Sizes {
		if d.Axis == [3]parts.Axis{parts.AlongX, parts.AcrossY, parts.UpZ}[axis] {
			return d.Value
		}
	}
	if p.Item == nil || p.Item.Stick.Body == nil {
		return 0
	}
	long, wide, deep := p.Item.Stick.Body.Box()
	return [3]quantity.Length{long, wide, deep}[axis]
}

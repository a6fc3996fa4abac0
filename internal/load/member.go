package load

import (
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A member is one timber or iron as it bears: a box in the vehicle, mm.
type member struct {
	id, name string
	part     *vehicle.Part // one of the two
	iron     *vehicle.Iron
	lo, hi   [3]float64
	axis     int // the vehicle's axis it lies on: 0 along, 1 across, 2 upright
	// begins is where the part's own x starts on that axis, and way its sense.
	begins, way float64
	wood        *sawyer // nil for an iron, or a timber not laid out
	mass        mass
	joints      []float64 // places on its axis, mm from lo, in order
	first       int       // index of its first joint in the grid; one that only hangs has one
	bends       bool      // it is a beam; else it goes up and down whole
	rolls       bool      // it can lean about its own length: one more degree of freedom a joint, after all of them
	loads       []patch   // of the case being worked out
	leans       []patch   // what they do to lean it, N at its edge
}

func (m *member) long() float64 { return m.hi[m.axis] - m.lo[m.axis] }

// grain is the place along the part's own x of a place along the member.
func (m *member) grain(s float64) float64 { return m.way * (m.lo[m.axis] + s - m.begins) }

// fromGrain is the other way about.
func (m *member) fromGrain(x float64) float64 { return m.begins + m.way*x - m.lo[m.axis] }

// place is where along the member a place of the vehicle lies.
func (m *member) place(at [3]float64) float64 {
	return min(max(at[m.axis]-m.lo[m.axis], 0), m.long())
}

func (m *member) timber() string {
	if m.part != nil {
		return m.part.Timber
	}
	return ""
}

// box places a box of three extents in the vehicle.
func (m *member) box(p *vehicle.Place, extents [3]float64) {
	for i := range 3 {
		m.lo[i] = float64(p.At[i].Value)
		m.hi[i] = m.lo[i]
	}
	for a, axis := range p.Axes {
		for i, d := range axis {
			end := d * extents[a]
			m.lo[i] += min(end, 0)
			m.hi[i] += max(end, 0)
		}
	}
	for i, d := range p.Axes[0] {
		if math.Abs(d) > .5 {
			m.axis, m.way, m.begins = i, math.Copysign(1, d), float64(p.At[i].Value)
		}
	}
}

// members are all timbers and irons that have a place, in the vehicle's order.
func (s *study) members() {
	sawyers := map[*vehicle.Item]*sawyer{}
	for _, p := range s.vehicle.Parts {
		if p.Place == nil || !finite(p.Place) {
			continue
		}
		m := &member{id: p.ID, name: p.Name, part: p}
		extents, known := sizesOf(p.Sizes)
		if p.Item != nil && p.Item.Stick.Body != nil {
			if sawyers[p.Item] == nil {
				sawyers[p.Item] = newSawyer(p.Item.Stick)
			}
			m.wood, known = sawyers[p.Item], true
			extents = m.wood.box
			_, steamed := p.Item.Stick.Body.(parts.Bent)
			m.bends = !steamed
		}
		if !known {
			continue
		}
		m.box(p.Place, extents)
		m.bends = m.bends && m.axis != 2
		s.list = append(s.list, m)
	}
	for _, i := range s.vehicle.Irons {
		extents, known := ironBox(i)
		if i.Place == nil || !finite(i.Place) || !known {
			continue
		}
		m := &member{id: i.ID, name: i.Name, iron: i}
		m.box(i.Place, extents)
		m.bends = m.axis != 2
		s.list = append(s.list, m)
	}
	for _, m := range s.list {
		s.byID[m.id] = m
	}
}

func finite(p *vehicle.Place) bool {
	return !slices.ContainsFunc(p.At[:], func(a quantity.Size) bool {
		return math.IsNaN(float64(a.Value)) || math.IsInf(float64(a.Value), 0)
	})
}

// sizesOf are a part's extents on its own axes.
func sizesOf(sizes []vehicle.Dimension) (extents [3]float64, known bool) {
	for _, d := range sizes {
		if d.Axis >= parts.AlongX && d.Axis <= parts.UpZ {
			extents[d.Axis-parts.AlongX] = float64(d.Value)
		}
	}
	return extents, extents[0] > 0 && extents[1] > 0 && extents[2] > 0
}

func ironBox(i *vehicle.Iron) (extents [3]float64, known bool) {
	for k, name := range [3]string{"long", "wide", "thick"} {
		extents[k] = ironSize(i, name)
	}
	return extents, extents[0] > 0 && extents[1] > 0 && extents[2] > 0
}

// ironSize is one size of an iron; 0 where it is not known.
func ironSize(i *vehicle.Iron, name string) float64 {
	for _, d := range i.Sizes {
		if d.Name == name && d.Value > 0 && !math.IsInf(float64(d.Value), 0) && !math.IsInf(float64(d.Doubt), 0) {
			return float64(d.Value)
		}
	}
	return 0
}

// gross is the section of the member where it is whole.
func (m *member) gross(at float64) Section {
	if m.wood != nil {
		return m.wood.gross(m.grain(at))
	}
	side := 1 - m.axis
	return rectangle(m.hi[side]-m.lo[side], m.hi[2]-m.lo[2])
}

// net is the section as it is made.
func (m *member) net(at float64) Section {
	if m.wood != nil {
		return m.wood.at(m.grain(at))
	}
	return m.gross(at)
}

// lower is a name within a sentence.
func lower(name string) string {
	if name == "" {
		return name
	}
	return strings.ToLower(name[:1]) + name[1:]
}

func capital(name string) string {
	if name == "" {
		return name
	}
	return strings.ToUpper(name[:1]) + name[1:]
}

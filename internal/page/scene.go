package page

import (
	"math"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = quantity.Length

// viewing is how far a mesh on the page may lie from the true surface.
const viewing = 0.3 * quantity.Millimetre

// A scene is what the page's program draws.
type scene struct {
	Unit     string     `json:"unit"`
	Meshes   []skin     `json:"meshes"`
	Things   []thing    `json:"things"`
	Moving   []movement `json:"moving"`
	Steps    int        `json:"steps"`
	Spacings []spacing  `json:"spacings"`
	Known    []string   `json:"known"`
	Statuses []string   `json:"statuses"`
	Concerns []string   `json:"concerns"`
	Timbers  []string   `json:"timbers"`
}

// A thing is one timber, iron or fastening as it stands in the vehicle.
type thing struct {
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	Sort    string      `json:"sort"`   // "timber", "iron", "fastening"
	Record  string      `json:"record"` // the id of what the record says of it
	Of      string      `json:"of"`     // whose spacings are its own
	Mesh    int         `json:"mesh"`   // -1 for a fastening
	Bolt    *boltShape  `json:"bolt,omitempty"`
	Matrix  [12]float64 `json:"m"` // 3 rows of 4, from its own frame to the vehicle's
	Lift    [3]float64  `json:"lift"`
	Step    int         `json:"step"`
	Turns   int         `json:"turns"` // which moving takes it along; -1 for none
	Known   int         `json:"known"`
	Placed  int         `json:"placed"`
	Timber  int         `json:"timber"`
	Status  int         `json:"status"`
	Concern int         `json:"concern"` // -1 for none
	Box     [3]float64  `json:"box"`
	BoxGive [3]float64  `json:"boxGive"` // give or take of the box
	Give    [3]float64  `json:"give"`    // of its place, on its own axes
	Anchors []anchor    `json:"anchors"`
	axle    string      // of the wheel that it is a piece of
	tyre    bool
}

// An anchor is a place on a thing that can be measured to: the centre of a
// hole's mouth, or of an end.
type anchor struct {
	Name string     `json:"n"`
	Ref  string     `json:"r,omitempty"` // of a hole; what spacings call it
	At   [3]float64 `json:"p"`           // in the thing's own frame
	Give [3]float64 `json:"g"`
}

// A boltShape is what a fastening is drawn from.
type boltShape struct {
	Diameter float64 `json:"d"` // 0 for a clip
	Grip     float64 `json:"grip"`
	Across   float64 `json:"across,omitempty"` // of a clip, between its legs
	Screw    bool    `json:"screw,omitempty"`
}

// A movement is a Moving for the page's program.
type movement struct {
	Name string     `json:"name"`
	At   [3]float64 `json:"at"`
	Way  [3]float64 `json:"way"`
	From float64    `json:"from"` // degrees
	To   float64    `json:"to"`
}

// A spacing is a vehicle.Spacing for the page's program.
type spacing struct {
	Of     string     `json:"of"`
	A      string     `json:"a"`
	B      string     `json:"b"`
	Along  [2]float64 `json:"along"` // value, give or take
	Across [2]float64 `json:"across"`
}

// A stage makes a scene.
type stage struct {
	model  Model
	scene  scene
	meshes map[string]int
	moving []Moving
	bored  map[vehicle.Stop]Length // the holes of irons, by the bolts in them
	notes  []string                // what is drawn otherwise than it was, for the record
	unseen []string                // what is not drawn at all
}

func newStage(m Model) (*stage, error) {
	s := &stage{model: m, meshes: map[string]int{}, bored: map[vehicle.Stop]Length{}}
	s.scene.Unit = m.Vehicle.Unit.String()
	s.words()
	for _, f := range m.Vehicle.Fastenings {
		for _, stop := range f.Through {
			if stop.Hole > 0 {
				s.bored[stop] = max(s.bored[stop], f.Diameter)
			}
		}
	}
	s.moving = m.Moving
	if s.moving == nil {
		s.moving = movingOf(m.Vehicle)
	}
	for _, g := range s.moving {
		s.scene.Moving = append(s.scene.Moving, movement{
			g.Name, floats(g.At), g.Way, degrees(g.From), degrees(g.To),
		})
	}
	for _, step := range []func() error{s.timbers, s.irons, s.wheels} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	s.fastenings()
	s.apart()
	s.spacings()
	return s, nil
}

// words are the lists that things point into.
func (s *stage) words() {
	for k := quantity.Measured; k <= quantity.Unknown; k++ {
		s.scene.Known = append(s.scene.Known, k.String())
	}
	for k := vehicle.Proposed; k <= vehicle.LeftOpen; k++ {
		s.scene.Statuses = append(s.scene.Statuses, k.String())
	}
	for k := vehicle.Unmakeable; k <= vehicle.Advice; k++ {
		s.scene.Concerns = append(s.scene.Concerns, k.String())
	}
	for _, p := range s.model.Vehicle.Parts {
		s.timber(p.Timber)
	}
}

func (s *stage) timber(name string) int {
	for i, t := range s.scene.Timbers {
		if t == name {
			return i
		}
	}
	s.scene.Timbers = append(s.scene.Timbers, name)
	return len(s.scene.Timbers) - 1
}

// mesh makes a skin once for all things that share it.
func (s *stage) mesh(key string, of func() form.Volume) (int, error) {
	if i, ok := s.meshes[key]; ok {
		return i, nil
	}
	body, err := solid.New(of())
	if err != nil {
		return 0, err
	}
	m, err := mesh.Of(body, viewing)
	if err != nil {
		return 0, err
	}
	s.meshes[key] = len(s.scene.Meshes)
	s.scene.Meshes = append(s.scene.Meshes, pack(m))
	return s.meshes[key], nil
}

// matrix takes a place in a thing's frame to the vehicle's.
func matrix(at [3]float64, axes [3][3]float64) [12]float64 {
	var m [12]float64
	for row := range 3 {
		for col := range 3 {
			m[4*row+col] = axes[col][row]
		}
		m[4*row+3] = round(at[row])
	}
	return m
}

func placeMatrix(p *vehicle.Place) [12]float64 { return matrix(values(p.At), p.Axes) }

func values(at [3]quantity.Size) (v [3]float64) {
	for i, s := range at {
		v[i] = s.Value.Millimetres()
	}
	return v
}

// gives are the give or take of a place, on the axes of what stands there.
func gives(p *vehicle.Place) (g [3]float64) {
	for own, axis := range p.Axes {
		for of, by := range axis {
			if by != 0 {
				g[own] = give(p.At[of].Doubt)
			}
		}
	}
	return g
}

// give is a give or take for the page: -1 where it is not known.
func give(d Length) float64 {
	if f := d.Millimetres(); !math.IsInf(f, 0) && !math.IsNaN(f) {
		return math.Round(f*1e4) / 1e4
	}
	return -1
}

// weakest is the weakest of several ways of knowing.
func weakest(known quantity.Known, of ...quantity.Size) quantity.Known {
	for _, s := range of {
		known = max(known, s.Known)
	}
	return known
}

func floats(at [3]Length) (v [3]float64) {
	for i, l := range at {
		v[i] = l.Millimetres()
	}
	return v
}

func degrees(a quantity.Angle) float64 { return round(float64(a) * 180 / math.Pi) }

// round keeps millionths of a millimetre, so that what lies half way between two
// words in a list goes the same way here, and no negative nothing.
func round(f float64) float64 {
	const step = 1e6
	return math.Round(f*step)/step + 0
}

func rounded(v ...float64) (out [3]float64) {
	for i := range out {
		out[i] = round(v[i])
	}
	return out
}

func boxOf(b parts.Body) (out [3]float64) {
	l, w, d := b.Box()
	return rounded(l.Millimetres(), w.Millimetres(), d.Millimetres())
}

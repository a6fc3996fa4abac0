package page

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// irons enters every iron that stands in the vehicle, drawn straight, as made:
// a bar of its three sizes with its holes. A hinge whose line crosses it is drawn
// as two leaves.
func (s *stage) irons() error {
	for _, i := range s.model.Vehicle.Irons {
		if i.Run == vehicle.Round {
			continue // with its wheel
		}
		box, doubt, ok := ironBox(i)
		if i.Place == nil || !ok {
			s.unseen = append(s.unseen, i.Name)
			continue
		}
		for _, leaf := range s.leaves(i, box) {
			k, err := s.mesh(fmt.Sprintf("iron %s %v", i.ID, leaf.from), func() form.Volume { return s.bar(i, box, leaf) })
			if err != nil {
				return fmt.Errorf("%s: %w", i.Name, err)
			}
			t := s.ironThing(i, k)
			t.Matrix, t.Give, t.Turns = placeMatrix(i.Place), gives(i.Place), leaf.turns
			t.Placed = int(weakest(quantity.Measured, i.Place.At[:]...))
			t.Box, t.BoxGive = box, doubt
			t.Anchors = ironAnchors(i, box, doubt, leaf)
			s.scene.Things = append(s.scene.Things, t)
		}
	}
	return nil
}

func (s *stage) ironThing(i *vehicle.Iron, k int) thing {
	known := quantity.Measured
	for _, d := range i.Sizes {
		known = max(known, d.Known)
	}
	return thing{
		ID: i.ID, Name: i.Name, Sort: "iron", Record: "iron-" + i.ID, Of: "iron-" + i.ID, Mesh: k, Turns: s.turns(i.ID),
		Known: int(known), Timber: -1, Status: -1, Concern: s.concern(i.ID, i.Name),
	}
}

// ironBox are an iron's long, wide and thick, and their give or take.
func ironBox(i *vehicle.Iron) (box, doubt [3]float64, ok bool) {
	doubt = [3]float64{-1, -1, -1}
	for _, d := range i.Sizes {
		if k := axisIndex(d.Axis); k >= 0 && d.Known != quantity.Unknown {
			box[k], doubt[k] = round(d.Value.Millimetres()), give(d.Doubt)
		}
	}
	return box, doubt, box[0] > 0 && box[1] > 0 && box[2] > 0
}

// A leaf is a length of an iron, and what takes it along.
type leaf struct {
	from, to float64
	turns    int
}

// leaves divides a hinge where the line it turns about crosses it.
func (s *stage) leaves(i *vehicle.Iron, box [3]float64) []leaf {
	whole := []leaf{{0, box[0], s.turns(i.ID)}}
	if i.Kind != "hinge" {
		return whole
	}
	for k, g := range s.moving {
		along := 0.0
		for a, by := range i.Place.Axes[0] {
			along += by * (g.At[a].Millimetres() - i.Place.At[a].Value.Millimetres())
		}
		if !s.hangs(i.ID, k) || along <= 1 || along >= box[0]-1 {
			continue
		}
		leaves := []leaf{{0, along, -1}, {along, box[0], k}}
		if s.reaches(i, k) == lowEnd {
			leaves[0].turns, leaves[1].turns = k, -1
		}
		return leaves
	}
	return whole
}

// hangs reports whether an iron holds both what a moving takes along and what stays.
func (s *stage) hangs(id string, moving int) bool {
	moves, stays := false, false
	for _, f := range s.model.Vehicle.Fastenings {
		if !goesThrough(f, id) {
			continue
		}
		for _, stop := range f.Through {
			if stop.ID != id {
				moves = moves || s.turns(stop.ID) == moving
				stays = stays || s.turns(stop.ID) != moving
			}
		}
	}
	return moves && stays
}

// An end is one of an iron's two.
type end int

const (
	lowEnd end = iota
	highEnd
)

// reaches tells at which end of an iron what moves is fastened.
func (s *stage) reaches(i *vehicle.Iron, moving int) end {
	var sum, n float64
	for _, f := range s.model.Vehicle.Fastenings {
		hole, moves := 0, false
		for _, stop := range f.Through {
			if stop.ID == i.ID {
				hole = stop.Hole
			} else {
				moves = moves || s.turns(stop.ID) == moving
			}
		}
		if moves && hole > 0 && hole <= len(i.Holes) {
			sum += i.Holes[hole-1].Value.Millimetres()
			n++
		}
	}
	box, _, _ := ironBox(i)
	if n > 0 && sum/n < box[0]/2 {
		return lowEnd
	}
	return highEnd
}

func goesThrough(f *vehicle.Fastening, id string) bool {
	for _, stop := range f.Through {
		if stop.ID == id {
			return true
		}
	}
	return false
}

// bar is a length of an iron with the holes that are in it.
func (s *stage) bar(i *vehicle.Iron, box [3]float64, l leaf) form.Volume {
	frame := form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
	prism := func(p form.Profile, from, to float64) form.Volume {
		return form.Prism{Frame: frame, Profile: p, From: Length(from), To: Length(to)}
	}
	bar := prism(form.Rectangle(form.Point{X: Length(l.from)}, form.Point{X: Length(l.to), Y: Length(box[1])}), 0, box[2])
	var holes []form.Volume
	for k, h := range i.Holes {
		d := s.holeWide(i, k)
		at := h.Value.Millimetres()
		if d == 0 || at-d/2 <= l.from || at+d/2 >= l.to || d >= box[1] {
			continue
		}
		c := form.Circle(form.Point{X: h.Value, Y: Length(box[1] / 2)}, Length(d/2))
		holes = append(holes, prism(c, math.Inf(-1), math.Inf(1)))
	}
	if len(holes) == 0 {
		return bar
	}
	return form.Difference{From: bar, Cut: holes}
}

// holeWide is how wide a hole is drawn: as its bolt; 0 where nothing tells.
func (s *stage) holeWide(i *vehicle.Iron, k int) float64 {
	return s.bored[vehicle.Stop{ID: i.ID, Hole: k + 1}].Millimetres()
}

// ironAnchors are the centres of the holes, on the face above, and of the ends.
func ironAnchors(i *vehicle.Iron, box, doubt [3]float64, l leaf) []anchor {
	var out []anchor
	for k, h := range i.Holes {
		if at := h.Value.Millimetres(); at >= l.from && at <= l.to {
			a := anchor{Name: fmt.Sprintf("hole %d", k+1), Ref: fmt.Sprintf("hole %d", k+1), At: rounded(at, box[1]/2, box[2])}
			a.Give = scaledGive(a.At, box, doubt)
			a.Give[0] = give(h.Doubt)
			out = append(out, a)
		}
	}
	for e, at := range []float64{0, box[0]} {
		if at >= l.from && at <= l.to {
			p := rounded(at, box[1]/2, box[2]/2)
			out = append(out, anchor{Name: "middle of the " + endWords(i.Run)[e], At: p, Give: scaledGive(p, box, doubt)})
		}
	}
	return out
}

func endWords(r vehicle.Run) [2]string {
	switch r {
	case vehicle.Across:
		return [2]string{"near end", "off end"}
	case vehicle.Upright:
		return [2]string{"lower end", "upper end"}
	}
	return [2]string{"fore end", "hind end"}
}

// fastenings enters every bolt, screw, rivet and clip whose line is known.
func (s *stage) fastenings() {
	for _, f := range s.model.Vehicle.Fastenings {
		grip := f.Grip.Value.Millimetres()
		if f.Way == ([3]float64{}) || f.Grip.Known == quantity.Unknown || !(grip > 0) {
			continue
		}
		t := thing{
			ID: "fastening " + f.ID, Name: "Fastening " + f.Title, Sort: "fastening", Record: "fastening-" + vehicle.Slug(f.ID),
			Mesh: -1, Timber: -1, Status: -1, Known: int(f.Grip.Known), Placed: int(weakest(quantity.Measured, f.Head[:]...)),
			Turns: s.boltTurns(f), Concern: s.concern("fastening "+f.ID, f.ID, f.Title),
			Bolt: &boltShape{Diameter: round(f.Diameter.Millimetres()), Grip: round(grip), Screw: f.What == "screw"},
		}
		if f.Diameter == 0 {
			t.Bolt.Across = s.spanned(f)
		}
		t.Matrix = matrix(values(f.Head), s.boltAxes(f))
		s.scene.Things = append(s.scene.Things, t)
	}
}

// spanned is how wide what a clip holds is, across the clip.
func (s *stage) spanned(f *vehicle.Fastening) float64 {
	for _, t := range s.scene.Things {
		if t.ID == f.Through[0].ID {
			return t.Box[1]
		}
	}
	return 50
}

// boltAxes has its third axis from head to nut, and its first along what it
// goes through, as a clip lies.
func (s *stage) boltAxes(f *vehicle.Fastening) [3][3]float64 {
	w := f.Way
	u := [3]float64{1, 0, 0}
	for _, t := range s.scene.Things {
		if t.ID == f.Through[0].ID {
			u = [3]float64{t.Matrix[0], t.Matrix[4], t.Matrix[8]}
		}
	}
	if math.Abs(u[0]*w[0]+u[1]*w[1]+u[2]*w[2]) > .5 {
		u = [3]float64{w[1], w[2], w[0]}
	}
	v := [3]float64{w[1]*u[2] - w[2]*u[1], w[2]*u[0] - w[0]*u[2], w[0]*u[1] - w[1]*u[0]}
	return [3][3]float64{u, v, w}
}

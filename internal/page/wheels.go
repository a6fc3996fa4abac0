package page

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// clearOfAxle is how far beyond the end of its axle a wheel is drawn, to the rim's
// inner side: nothing in a survey tells how far out it ran.
const clearOfAxle = 40

// wheels draws rims and tyres that nothing places, each at the axle whose height
// is that of the wheel's middle.
func (s *stage) wheels() error {
	drawn := map[string]bool{}
	for _, p := range s.model.Vehicle.Parts {
		if p.Item == nil || p.Place != nil {
			continue
		}
		f, ok := p.Item.Shape.(parts.Felloe)
		if !ok {
			continue
		}
		tyre := s.tyreOf(f)
		axle := s.axleFor(f, tyre)
		if axle == nil {
			s.unseen = append(s.unseen, p.Name)
			continue
		}
		if err := s.rims(p, f, axle); err != nil {
			return err
		}
		if tyre != nil && !drawn[tyre.ID] {
			drawn[tyre.ID] = true
			if err := s.tyres(tyre, f, axle); err != nil {
				return err
			}
		}
		s.notes = append(s.notes, fmt.Sprintf("The wheels of the %s are drawn at the %s, whose height above the ground is theirs, and just clear of its ends: "+
			"nothing in the survey says how far out they ran.", lowered(p.Name), lowered(axle.Name)))
	}
	for _, i := range s.model.Vehicle.Irons {
		if i.Run == vehicle.Round && !drawn[i.ID] {
			s.unseen = append(s.unseen, i.Name)
		}
	}
	return nil
}

// rims draws the felloes of a near and an off wheel.
func (s *stage) rims(p *vehicle.Part, f parts.Felloe, axle *vehicle.Iron) error {
	stick := f.Stick()
	k, err := s.mesh(fmt.Sprint("item ", p.Item.Number), stick.Volume)
	if err != nil {
		return fmt.Errorf("%s: %w", p.Name, err)
	}
	for _, side := range []float64{1, -1} {
		c := hubAt(axle, side, f.Wide)
		for n := range f.Felloes {
			t := s.timberThing(p, k, stick)
			t.ID = fmt.Sprintf("%s-%s-%d", p.ID, sideWord(side), n+1)
			t.Name = fmt.Sprintf("%s %d of the %s wheel", p.Name, n+1, sideWord(side))
			t.axle, t.Turns = axle.ID, s.turns(axle.ID)
			t.Placed = int(quantity.Guess)
			t.Give = [3]float64{-1, -1, -1}
			t.Matrix = rimMatrix(c, 2*math.Pi*(float64(n)+.5)/float64(f.Felloes), t.Box, f.Radius.Millimetres())
			s.scene.Things = append(s.scene.Things, t)
		}
	}
	return nil
}

// rimMatrix stands a felloe in a wheel, its middle turned from upright.
func rimMatrix(c [3]float64, turn float64, box [3]float64, radius float64) [12]float64 {
	sin, cos := math.Sincos(turn)
	axes := [3][3]float64{{cos, 0, -sin}, {0, 1, 0}, {sin, 0, cos}}
	from := [3]float64{-box[0] / 2, -box[1] / 2, radius - box[2]}
	at := c
	for k, by := range from {
		for i := range at {
			at[i] += by * axes[k][i]
		}
	}
	for k := range axes {
		for i := range axes[k] {
			axes[k][i] = math.Round(axes[k][i]*1e9)/1e9 + 0
		}
	}
	return matrix(at, axes)
}

// tyres draws a tyre round each of the two wheels.
func (s *stage) tyres(i *vehicle.Iron, f parts.Felloe, axle *vehicle.Iron) error {
	r, thick, wide := f.Radius, sizeOf(i, "thick"), sizeOf(i, "wide")
	k, err := s.mesh("tyre "+i.ID, func() form.Volume {
		return form.Revolved{
			Frame:   form.Frame{U: form.Dir{Z: 1}, V: form.Dir{X: 1}},
			Profile: form.Rectangle(form.Point{X: r, Y: -wide / 2}, form.Point{X: r + thick, Y: wide / 2}),
			Sweep:   2 * math.Pi,
		}
	})
	if err != nil {
		return fmt.Errorf("%s: %w", i.Name, err)
	}
	for _, side := range []float64{1, -1} {
		t := s.ironThing(i, k)
		t.ID, t.Name = i.ID+"-"+sideWord(side), i.Name+" of the "+sideWord(side)+" wheel"
		t.axle, t.tyre = axle.ID, true
		t.Placed, t.Turns = int(quantity.Guess), s.turns(axle.ID)
		t.Give, t.BoxGive = [3]float64{-1, -1, -1}, [3]float64{-1, -1, -1}
		t.Box = rounded(2*(r+thick).Millimetres(), wide.Millimetres(), 2*(r+thick).Millimetres())
		t.Matrix = matrix(hubAt(axle, side, f.Wide), [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}})
		s.scene.Things = append(s.scene.Things, t)
	}
	return nil
}

// hubAt is the middle of a wheel's rim beside its axle.
func hubAt(axle *vehicle.Iron, side float64, wide Length) [3]float64 {
	c := centreOf(axle)
	box, _, _ := ironBox(axle)
	c[1] += side * (box[0]/2 + clearOfAxle + wide.Millimetres()/2)
	return c
}

func centreOf(i *vehicle.Iron) [3]float64 {
	c := values(i.Place.At)
	box, _, _ := ironBox(i)
	for k, axis := range i.Place.Axes {
		for a, by := range axis {
			c[a] += by * box[k] / 2
		}
	}
	return c
}

// tyreOf is the tyre that fits a rim best, if one does within a finger's breadth.
func (s *stage) tyreOf(f parts.Felloe) *vehicle.Iron {
	var best *vehicle.Iron
	off := 20.0
	for _, i := range s.model.Vehicle.Irons {
		if i.Run != vehicle.Round || i.Kind != "tyre" || !(sizeOf(i, "thick") > 0) || !(sizeOf(i, "wide") > 0) {
			continue
		}
		if d := math.Abs((sizeOf(i, "radius") - f.Radius).Millimetres()); d < off {
			best, off = i, d
		}
	}
	return best
}

// axleFor is the axle whose middle is as high as the wheel's.
func (s *stage) axleFor(f parts.Felloe, tyre *vehicle.Iron) *vehicle.Iron {
	high := f.Radius.Millimetres()
	if tyre != nil {
		high += sizeOf(tyre, "thick").Millimetres()
	}
	var best *vehicle.Iron
	off := 100.0
	for _, i := range s.model.Vehicle.Irons {
		if _, _, ok := ironBox(i); i.Kind != "axle" || i.Place == nil || !ok {
			continue
		}
		if d := math.Abs(centreOf(i)[2] - high); d < off {
			best, off = i, d
		}
	}
	return best
}

func sizeOf(i *vehicle.Iron, name string) Length {
	for _, d := range i.Sizes {
		if d.Name == name && d.Known != quantity.Unknown {
			return d.Value
		}
	}
	return 0
}

func sideWord(side float64) string {
	if side > 0 {
		return vehicle.Near.String()
	}
	return vehicle.Off.String()
}

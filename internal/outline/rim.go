package outline

import (
	"math"

	"lostwood/parts"
	"lostwood/parts/form"
)

// A Spoke is the line of a spoke of a rim, from inside the belly to the back.
type Spoke struct{ Inner, Outer form.Point }

// A Rim is the whole rim of a wheel laid flat on the bench, seen from its outer
// side, with the wheel's centre at 0, 0. Its felloes are in order anticlockwise,
// the first at the foot.
type Rim struct {
	Felloes []Drawing // each with the lines of its work, in its place
	Spokes  []Spoke
	Box     Box
	Back    Length // radius of the back
	Belly   Length // radius of the belly
}

// RimOf lays out the rim that a felloe is one piece of; ok is false for any other part.
func RimOf(s parts.Stick) (r Rim, ok bool) {
	a, ok := s.Body.(parts.Arc)
	if !ok || a.Pieces < 1 {
		return Rim{}, false
	}
	long, _, _ := a.Box()
	centre := form.Point{X: long / 2, Y: a.Radius}
	side := Face(s, parts.SecondSide)
	r = Rim{Back: a.Radius, Belly: a.Radius - a.Depth, Box: Around(form.Point{}, a.Radius)}
	step := 2 * math.Pi / float64(a.Pieces)
	for k := range a.Pieces {
		turn := rotation{about: centre, by: step * float64(k)}
		r.Felloes = append(r.Felloes, turn.drawing(side))
		for _, p := range spokeLines(s) {
			r.Spokes = append(r.Spokes, turn.spoke(p))
		}
	}
	return r, true
}

// spokeLines are the middle lines of the holes bored from the belly, on the outer
// side, carried on some way inside the rim.
func spokeLines(s parts.Stick) []Spoke {
	const inside = 35
	var out []Spoke
	for _, f := range s.Features {
		h, radial := f.(parts.RadialHole)
		if !radial || h.Face != parts.Under {
			continue
		}
		for _, m := range f.Marks(s.Body, parts.SecondSide) {
			if m.Stroke != parts.Middle || len(m.Path) != 2 {
				continue
			}
			belly, back := m.Path[0].Point, m.Path[1].Point
			share := inside / Length(math.Hypot(float64(back.X-belly.X), float64(back.Y-belly.Y)))
			out = append(out, Spoke{
				form.Point{X: belly.X + (belly.X-back.X)*share, Y: belly.Y + (belly.Y-back.Y)*share}, back,
			})
		}
	}
	return out
}

// A rotation turns about a place, anticlockwise, and brings the place to 0, 0.
type rotation struct {
	about form.Point
	by    float64
}

func (r rotation) at(p form.Point) form.Point {
	sin, cos := math.Sincos(r.by)
	x, y := float64(p.X-r.about.X), float64(p.Y-r.about.Y)
	return form.Point{X: Length(x*cos - y*sin), Y: Length(x*sin + y*cos)}
}

func (r rotation) spoke(s Spoke) Spoke { return Spoke{r.at(s.Inner), r.at(s.Outer)} }

func (r rotation) drawing(d Drawing) Drawing {
	var out Drawing
	for _, p := range d.Paths {
		run := make([]form.Vertex, len(p.Run))
		for i, v := range p.Run {
			run[i] = form.Vertex{Point: r.at(v.Point), Bulge: v.Bulge}
		}
		p.Run = run
		out.Paths = append(out.Paths, p)
	}
	for _, c := range d.Circles {
		c.Centre = r.at(c.Centre)
		out.Circles = append(out.Circles, c)
	}
	return out
}

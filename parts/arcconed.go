package parts

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// turning is the frame of a ring about the wheel's centre: its profiles have the
// radius for their x and the place across for their y.
func (a Arc) turning() form.Frame {
	c := a.Centre()
	return form.Frame{Origin: form.Vec{X: c.X, Z: c.Y}, U: form.Dir{Z: 1}, V: form.Dir{X: 1}}
}

// coned is the body whose back and belly are bevelled: a ring turned to the
// bevel, cut by the planes of its joints.
func (a Arc) coned() form.Volume {
	section := form.Polygon(
		form.Point{X: a.bellyAt(0)}, form.Point{X: a.backAt(0)},
		form.Point{X: a.backAt(a.Wide), Y: a.Wide}, form.Point{X: a.bellyAt(a.Wide), Y: a.Wide})
	// The ring goes a little past the joints, which cut it.
	half := math.Pi/float64(a.Pieces) + math.Min(.1, float64(overrun/a.Radius))
	sin, cos := math.Sincos(half)
	ring := a.turning()
	ring.U, ring.V = form.Dir{X: -sin, Z: cos}, form.Dir{X: cos, Z: sin}
	out := form.Intersection{form.Revolved{Frame: ring, Profile: section, Sweep: Angle(2 * half)}}
	for _, f := range []Face{FirstEnd, SecondEnd} {
		end, _ := a.end(f)
		out = append(out, form.Half{At: end.Origin, Normal: end.W()})
	}
	return out
}

// conedNet sums the rings' sectors from side to side.
func (a Arc) conedNet() quantity.Volume {
	const points = 12
	// A sector between planes half a gap beside the centre: the whole sector, less
	// the strip along each plane.
	inside := func(r float64) float64 {
		g := float64(a.Gap) / 2
		h := math.Asin(g / r)
		strip := (r*r*h + g*math.Sqrt(r*r-g*g)) / 2
		return r*r*math.Pi/float64(a.Pieces) - 2*strip
	}
	return quantity.Volume(quad.Fixed(func(y float64) float64 {
		return inside(float64(a.backAt(Length(y)))) - inside(float64(a.bellyAt(Length(y))))
	}, 0, float64(a.Wide), points, quad.Legendre{}, 0))
}

package gauge

import (
	"math"
	"math/rand"

	"lostwood/parts/form"
)

// A Place is somewhere in space to put a whole volume, turned about.
type Place struct {
	turn [4]float64 // a unit quaternion
	by   form.Vec
}

// Anywhere is a random place, within 100 mm of the origin each way.
func Anywhere(r *rand.Rand) Place {
	step := func() form.Length { return form.Length(r.Float64()*200 - 100) }
	p := Place{by: form.Vec{X: step(), Y: step(), Z: step()}}
	l := 0.0
	for i := range p.turn {
		p.turn[i] = r.NormFloat64()
		l += p.turn[i] * p.turn[i]
	}
	for i := range p.turn {
		p.turn[i] /= math.Sqrt(l)
	}
	return p
}

// At is a place that way from the origin, not turned.
func At(by form.Vec) Place { return Place{[4]float64{1, 0, 0, 0}, by} }

// Tipped is a place that way from the origin, turned a quarter about x.
func Tipped(by form.Vec) Place { return Place{[4]float64{math.Sqrt2 / 2, math.Sqrt2 / 2, 0, 0}, by} }

// To is the same turn elsewhere.
func (p Place) To(by form.Vec) Place { return Place{p.turn, by} }

func (p Place) dir(d form.Dir) form.Dir {
	w, x, y, z := p.turn[0], p.turn[1], p.turn[2], p.turn[3]
	return form.Dir{
		X: (1-2*(y*y+z*z))*d.X + 2*(x*y-w*z)*d.Y + 2*(x*z+w*y)*d.Z,
		Y: 2*(x*y+w*z)*d.X + (1-2*(x*x+z*z))*d.Y + 2*(y*z-w*x)*d.Z,
		Z: 2*(x*z-w*y)*d.X + 2*(y*z+w*x)*d.Y + (1-2*(x*x+y*y))*d.Z,
	}
}

func (p Place) vec(v form.Vec) form.Vec {
	d := p.dir(form.Dir{X: float64(v.X), Y: float64(v.Y), Z: float64(v.Z)})
	return form.Vec{X: form.Length(d.X) + p.by.X, Y: form.Length(d.Y) + p.by.Y, Z: form.Length(d.Z) + p.by.Z}
}

func (p Place) frame(f form.Frame) form.Frame {
	return form.Frame{Origin: p.vec(f.Origin), U: p.dir(f.U), V: p.dir(f.V)}
}

// Put is a volume in that place.
func (p Place) Put(v form.Volume) form.Volume {
	switch v := v.(type) {
	case form.Prism:
		v.Frame = p.frame(v.Frame)
		return v
	case form.Revolved:
		v.Frame = p.frame(v.Frame)
		return v
	case form.Oval:
		v.Frame = p.frame(v.Frame)
		return v
	case form.Half:
		return form.Half{At: p.vec(v.At), Normal: p.dir(v.Normal)}
	case form.Union:
		return form.Union(p.each(v))
	case form.Intersection:
		return form.Intersection(p.each(v))
	case form.Difference:
		return form.Difference{From: p.Put(v.From), Cut: p.each(v.Cut)}
	}
	return v
}

func (p Place) each(vs []form.Volume) []form.Volume {
	out := make([]form.Volume, len(vs))
	for i := range vs {
		out[i] = p.Put(vs[i])
	}
	return out
}

package form

import (
	"math"

	"lostwood/internal/quantity"
)

// Content is the volume of a prism; infinite where the prism is endless.
func (p Prism) Content() quantity.Volume {
	return quantity.Volume(float64(p.Profile.Area()) * float64(p.To-p.From))
}

// Content is the volume of a revolved solid: by Pappus, its profile's area
// times the way its centroid goes.
func (r Revolved) Content() quantity.Volume {
	way := float64(r.Profile.Centroid().X) * float64(r.Sweep)
	return quantity.Volume(float64(r.Profile.Area()) * way)
}

// A Box is an upright block of space from one corner to the opposite one.
type Box struct{ Min, Max Vec }

func everywhere() Box {
	i := Length(math.Inf(1))
	return Box{Vec{-i, -i, -i}, Vec{i, i, i}}
}

// Bounds is a box round the volume: the smallest one for a prism, a revolved
// solid, an oval and a union of them, and one that is surely large enough for an
// intersection or a difference. Sides without end are infinite.
func Bounds(v Volume) Box {
	switch v := v.(type) {
	case Prism:
		return v.bounds()
	case Revolved:
		return v.bounds()
	case Oval:
		return v.bounds()
	case Half:
		return v.bounds()
	case Difference:
		return Bounds(v.From)
	case Intersection:
		b := everywhere()
		for _, m := range v {
			b = b.within(Bounds(m))
		}
		return b
	case Union:
		b := everywhere()
		b.Min, b.Max = b.Max, b.Min
		for _, m := range v {
			b = b.with(Bounds(m))
		}
		return b
	}
	return everywhere()
}

func (b Box) with(c Box) Box {
	return Box{
		Vec{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y), min(b.Min.Z, c.Min.Z)},
		Vec{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y), max(b.Max.Z, c.Max.Z)},
	}
}

func (b Box) within(c Box) Box {
	return Box{
		Vec{max(b.Min.X, c.Min.X), max(b.Min.Y, c.Min.Y), max(b.Min.Z, c.Min.Z)},
		Vec{min(b.Max.X, c.Max.X), min(b.Max.Y, c.Max.Y), min(b.Max.Z, c.Max.Z)},
	}
}

// boxOf makes a box of the extent along each axis.
func boxOf(extent func(axis Dir) (lo, hi float64)) Box {
	x0, x1 := extent(Dir{X: 1})
	y0, y1 := extent(Dir{Y: 1})
	z0, z1 := extent(Dir{Z: 1})
	return Box{Vec{Length(x0), Length(y0), Length(z0)}, Vec{Length(x1), Length(y1), Length(z1)}}
}

func (p Prism) bounds() Box {
	w := p.Frame.W()
	return boxOf(func(axis Dir) (lo, hi float64) {
		lo, hi = p.Profile.extent(axis.dot(p.Frame.U), axis.dot(p.Frame.V))
		o, c := float64(axis.Along(p.Frame.Origin)), axis.dot(w)
		if c == 0 { // keeps an endless sweep from making 0 times infinity
			return o + lo, o + hi
		}
		a, b := c*float64(p.From), c*float64(p.To)
		return o + lo + math.Min(a, b), o + hi + math.Max(a, b)
	})
}

func (r Revolved) bounds() Box {
	w := r.Frame.W()
	return boxOf(func(axis Dir) (lo, hi float64) {
		u, v := axis.dot(r.Frame.U), axis.dot(r.Frame.V)
		reach, towards := math.Hypot(u, v), math.Atan2(v, u)
		c := circle{start: 0, sweep: math.Min(float64(r.Sweep), 2*math.Pi)}
		least, most := math.Min(u, u*math.Cos(c.sweep)+v*math.Sin(c.sweep)), math.Max(u, u*math.Cos(c.sweep)+v*math.Sin(c.sweep))
		if c.passes(towards) {
			most = reach
		}
		if c.passes(towards + math.Pi) {
			least = -reach
		}
		o, h := float64(axis.Along(r.Frame.Origin)), axis.dot(w)
		lo, _ = r.Profile.extent(least, h)
		_, hi = r.Profile.extent(most, h)
		return o + lo, o + hi
	})
}

func (h Half) bounds() Box {
	b := everywhere()
	switch h.Normal {
	case Dir{X: 1}:
		b.Max.X = h.At.X
	case Dir{X: -1}:
		b.Min.X = h.At.X
	case Dir{Y: 1}:
		b.Max.Y = h.At.Y
	case Dir{Y: -1}:
		b.Min.Y = h.At.Y
	case Dir{Z: 1}:
		b.Max.Z = h.At.Z
	case Dir{Z: -1}:
		b.Min.Z = h.At.Z
	}
	return b
}

func (d Dir) dot(e Dir) float64 { return d.X*e.X + d.Y*e.Y + d.Z*e.Z }

// Mirrored is the volume of the other hand: y becomes wide - y.
func Mirrored(v Volume, wide Length) Volume {
	switch v := v.(type) {
	case Prism:
		return Prism{v.Frame.mirrored(wide), v.Profile.Mirrored(0), v.From, v.To}
	case Revolved:
		return v.mirrored(wide)
	case Oval:
		return v.mirrored(wide)
	case Half:
		return Half{v.At.mirrored(wide), v.Normal.mirrored()}
	case Union:
		return Union(mirroredAll(v, wide))
	case Intersection:
		return Intersection(mirroredAll(v, wide))
	case Difference:
		return Difference{Mirrored(v.From, wide), mirroredAll(v.Cut, wide)}
	}
	return v
}

func mirroredAll(vs []Volume, wide Length) []Volume {
	out := make([]Volume, len(vs))
	for i, v := range vs {
		out[i] = Mirrored(v, wide)
	}
	return out
}

func (p Vec) mirrored(wide Length) Vec { return Vec{p.X, wide - p.Y, p.Z} }

func (d Dir) mirrored() Dir { return Dir{d.X, -d.Y, d.Z} }

// mirrored keeps the frame right-handed by turning V about, so that the
// profile in it has to be mirrored in its x axis; W is mirrored as it stands.
func (f Frame) mirrored(wide Length) Frame {
	return Frame{f.Origin.mirrored(wide), f.U.mirrored(), f.V.mirrored().Opposite()}
}

// mirrored starts the turn at its other end, so that it still goes anticlockwise.
func (r Revolved) mirrored(wide Length) Revolved {
	s, c := math.Sincos(float64(r.Sweep))
	if r.Sweep >= 2*math.Pi {
		s, c = 0, 1
	}
	u, v := r.Frame.U.mirrored(), r.Frame.V.mirrored()
	r.Frame = Frame{
		r.Frame.Origin.mirrored(wide),
		Dir{c*u.X + s*v.X, c*u.Y + s*v.Y, c*u.Z + s*v.Z},
		Dir{s*u.X - c*v.X, s*u.Y - c*v.Y, s*u.Z - c*v.Z},
	}
	return r
}

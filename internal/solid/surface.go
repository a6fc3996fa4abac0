package solid

import (
	"math"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// A Kind is what a surface is.
type Kind int

// The kinds of surface a form can have.
const (
	Plane Kind = iota
	Cylinder
	Cone
	Sphere
	Torus
	OvalSide
)

// kindWords are the words people read, in the order of the constants.
var kindWords = [...]string{"plane", "cylinder", "cone", "sphere", "torus", "oval side"}

func (k Kind) String() string {
	if k < Plane || k > OvalSide {
		return "surface"
	}
	return kindWords[k]
}

// NoSurface stands where a face is missing, as at an endless prism's end.
const NoSurface = -1

// A Surface is an exact, untrimmed surface: it goes on beyond the face it
// bounds. Places are in millimetres.
type Surface struct {
	Kind  Kind
	At    v3.Vec      // a plane's place; a cylinder's, cone's or torus's place on its axis; a sphere's centre; an oval's origin
	Axis  v3.Vec      // a plane's normal, or the axis; of length one
	Major form.Length // radius of a cylinder or a sphere, of a cone at At, or of a torus's ring
	Minor form.Length // radius of a torus's section
	Slope float64     // how much a cone's radius grows for each millimetre along Axis
	Oval  *form.Oval  // the oval of an oval side, which goes on both ways till a half span closes up

	ruled *Leaf // the leaf it is the side of
}

func flat(at, normal v3.Vec) Surface { return Surface{Kind: Plane, At: at, Axis: normal} }

// Distance returns the distance from the untrimmed surface at p: for a plane,
// positive on the side of its normal; for the others, positive away from the
// axis or the centre of the section.
func (s *Surface) Distance(p v3.Vec) float64 {
	d, _ := s.distance(p)
	return d
}

// Normal returns the direction in which Distance grows.
func (s *Surface) Normal(p v3.Vec) v3.Vec {
	_, n := s.distance(p)
	return n
}

func (s *Surface) distance(p v3.Vec) (float64, v3.Vec) {
	q := p.Sub(s.At)
	major, minor := float64(s.Major), float64(s.Minor)
	switch s.Kind {
	case Plane:
		return q.Dot(s.Axis), s.Axis
	case OvalSide:
		return s.toOval(p)
	case Sphere:
		r := q.Length()
		return r - major, q.DivScalar(max(r, tiny))
	}
	z := q.Dot(s.Axis)
	out := q.Sub(s.Axis.MulScalar(z))
	r := out.Length()
	out = out.DivScalar(max(r, tiny))
	switch s.Kind {
	case Cone:
		k := 1 / math.Sqrt(1+s.Slope*s.Slope)
		return (r - major - s.Slope*z) * k, out.Sub(s.Axis.MulScalar(s.Slope)).MulScalar(k)
	case Torus:
		l := math.Hypot(r-major, z)
		return l - minor, out.MulScalar(r - major).Add(s.Axis.MulScalar(z)).DivScalar(max(l, tiny))
	}
	return r - major, out
}

// tiny keeps a division by a vanishing radius finite.
const tiny = 1e-300

// surface returns the index of s among the surfaces, adding it when it is new.
func (b *builder) surface(s Surface) int {
	for i := range b.surfaces {
		if b.surfaces[i].same(&s) {
			return i
		}
	}
	b.surfaces = append(b.surfaces, s)
	return len(b.surfaces) - 1
}

// Surfaces are one and the same within these.
const (
	sameLength = 1e-6 // millimetres
	sameSine   = 1e-9
)

// same says whether two surfaces are one, whichever way each faces.
func (s *Surface) same(t *Surface) bool {
	if s.Kind != t.Kind || !alike(s.Major, t.Major) && s.Kind != Cone || !alike(s.Minor, t.Minor) {
		return false
	}
	off := t.At.Sub(s.At)
	parallel := s.Axis.Cross(t.Axis).Length() < sameSine
	switch s.Kind {
	case OvalSide:
		return s.sameOval(t)
	case Plane:
		return parallel && math.Abs(off.Dot(s.Axis)) < sameLength
	case Sphere:
		return off.Length() < sameLength
	case Torus:
		return parallel && off.Length() < sameLength
	}
	z := off.Dot(s.Axis)
	if !parallel || off.Sub(s.Axis.MulScalar(z)).Length() > sameLength {
		return false
	}
	way := math.Copysign(1, s.Axis.Dot(t.Axis))
	return math.Abs(s.Slope-way*t.Slope) < sameSine && alike(s.Major+form.Length(s.Slope*z), t.Major)
}

func alike(a, b form.Length) bool { return math.Abs(float64(a-b)) < sameLength }

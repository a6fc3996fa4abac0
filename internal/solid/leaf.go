package solid

import (
	"math"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// A Face is one face of a leaf: a side for each edge of its profile (an oval
// has one), in order, then its two ends.
type Face struct {
	Surface int // index into the solid's surfaces, or NoSurface
}

// A Leaf is one piece the solid is combined from.
type Leaf struct {
	Shape form.Volume // a Prism, a Revolved, an Oval or a Half
	Faces []Face

	origin, u, v, w v3.Vec
	outline         outline
	from, to        float64 // a prism's ends along w
	sweep           float64 // a turned piece's angle
	oval            *oval

	near func(v3.Vec) (d float64, q v3.Vec, face int)
}

// Full says whether a turned piece goes all the way round.
func (l *Leaf) Full() bool { return l.sweep > 2*math.Pi-1e-9 }

// bare says whether an edge bounds no wood: one on the line a piece turns about.
func (l *Leaf) bare(edge int) bool { return l.Faces[edge].Surface == NoSurface }

func (l *Leaf) faceOn(surface int) { l.Faces = append(l.Faces, Face{Surface: surface}) }

// spoke is the direction from a turned piece's axis at an angle from u.
func (l *Leaf) spoke(angle float64) v3.Vec {
	return l.u.MulScalar(math.Cos(angle)).Add(l.v.MulScalar(math.Sin(angle)))
}

// local splits p along the leaf's frame.
func (l *Leaf) local(p v3.Vec) (q pt, z float64) {
	d := p.Sub(l.origin)
	return pt{d.Dot(l.u), d.Dot(l.v)}, d.Dot(l.w)
}

// world is the place of a profile's point at z along w.
func (l *Leaf) world(q pt, z float64) v3.Vec {
	return l.origin.Add(l.u.MulScalar(q.x)).Add(l.v.MulScalar(q.y)).Add(l.w.MulScalar(z))
}

// onTurn is the place of a turned profile's point at an angle from u.
func (l *Leaf) onTurn(q pt, angle float64) v3.Vec {
	return l.origin.Add(l.spoke(angle).MulScalar(q.x)).Add(l.w.MulScalar(q.y))
}

func (l *Leaf) nearHalf(p v3.Vec) (float64, v3.Vec, int) {
	d := p.Sub(l.origin).Dot(l.w)
	return d, p.Sub(l.w.MulScalar(d)), 0
}

func (l *Leaf) nearPrism(p v3.Vec) (float64, v3.Vec, int) {
	at, z := l.local(p)
	d, q, side := l.outline.near(at, l.bare)
	end, over, stop := len(l.outline), l.from-z, l.from
	if z-l.to > over {
		end, over, stop = end+1, z-l.to, l.to
	}
	switch {
	case over <= 0 && (d > 0 || d > over):
		return d, l.world(q, z), side
	case d <= 0:
		return over, l.world(at, stop), end
	case over > d:
		side = end
	}
	return math.Hypot(d, over), l.world(q, stop), side
}

func (l *Leaf) nearRevolved(p v3.Vec) (float64, v3.Vec, int) {
	at, z := l.local(p)
	r, angle := at.length(), turn(0, angleOf(at), 1)
	d, q, side := l.outline.near(pt{r, z}, l.bare)
	if l.Full() {
		return d, l.onTurn(q, angle), side
	}
	within := angle <= l.sweep
	if within && d > 0 {
		return d, l.onTurn(q, angle), side
	}
	start, sq := l.toEnd(r, angle, z)
	stop, eq := l.toEnd(r, l.sweep-angle, z)
	end, far, at2, turnTo := len(l.outline), start, sq, 0.0
	if stop < start {
		end, far, at2, turnTo = end+1, stop, eq, l.sweep
	}
	if within && -d < far {
		return d, l.onTurn(q, angle), side
	}
	if within {
		far = -far
	}
	return far, l.onTurn(at2, turnTo), end
}

// toEnd returns the distance to the flat end that lies an angle away, and the
// nearest place on it.
func (l *Leaf) toEnd(r, angle, z float64) (float64, pt) {
	foot := pt{r * math.Cos(angle), z}
	off := r * math.Sin(angle)
	if d, q, _ := l.outline.near(foot, allEdges); d > 0 {
		return math.Hypot(d, off), q
	}
	return math.Abs(off), foot
}

// gradient returns the direction in which the leaf's distance grows at p.
func (l *Leaf) gradient(p v3.Vec, d float64, q v3.Vec, face int) v3.Vec {
	if math.Abs(d) > 1e-7 {
		return p.Sub(q).DivScalar(d)
	}
	return l.outward(q, face)
}

// outward is the direction out of the leaf at a place on one of its faces.
func (l *Leaf) outward(q v3.Vec, face int) v3.Vec {
	switch l.Shape.(type) {
	case form.Half:
		return l.w
	case form.Oval:
		return l.outOfOval(q, face)
	}
	at, z := l.local(q)
	_, turned := l.Shape.(form.Revolved)
	switch face - len(l.outline) {
	case 0:
		if turned {
			return l.v.Neg()
		}
		return l.w.Neg()
	case 1:
		if turned {
			return l.spoke(l.sweep + math.Pi/2)
		}
		return l.w
	}
	if !turned {
		n := l.outline[face].normal(at)
		return l.u.MulScalar(n.x).Add(l.v.MulScalar(n.y))
	}
	n := l.outline[face].normal(pt{at.length(), z})
	return l.spoke(angleOf(at)).MulScalar(n.x).Add(l.w.MulScalar(n.y))
}

// sideOf is the surface an edge of a prism's profile sweeps.
func (l *Leaf) sideOf(e *Edge) Surface {
	if e.straight() {
		n := e.normal(e.a)
		return flat(l.world(e.a, 0), l.u.MulScalar(n.x).Add(l.v.MulScalar(n.y)))
	}
	return Surface{Kind: Cylinder, At: l.world(e.centre, 0), Axis: l.w, Major: form.Length(e.radius)}
}

// turnedOf is the surface an edge of a turned profile sweeps.
func (l *Leaf) turnedOf(e *Edge) Surface {
	if !e.straight() {
		s := Surface{Kind: Torus, At: l.onTurn(pt{0, e.centre.y}, 0), Axis: l.w, Major: form.Length(e.centre.x), Minor: form.Length(e.radius)}
		if math.Abs(e.centre.x) < touch {
			s.Kind, s.Major, s.Minor = Sphere, form.Length(e.radius), 0
		}
		return s
	}
	n := e.normal(e.a)
	switch {
	case math.Abs(n.x) < 1e-12:
		return flat(l.onTurn(pt{0, e.a.y}, 0), l.w.MulScalar(n.y))
	case math.Abs(n.y) < 1e-12:
		return Surface{Kind: Cylinder, At: l.origin, Axis: l.w, Major: form.Length(e.a.x)}
	}
	slope := -n.y / n.x
	return Surface{Kind: Cone, At: l.origin, Axis: l.w, Major: form.Length(e.a.x - slope*e.a.y), Slope: slope}
}

package solid

import (
	"math"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// rulings is on how many of its straight lines an oval's side is looked at
// before the nearest are gone into.
const rulings = 64

// An oval is a compiled form.Oval, in its own frame. Its side is ruled: the
// place an angle round, a part of the way along, moves evenly with that part.
type oval struct {
	from, to    float64
	first, last ellipse
	lines       [rulings]ruling
	wide        float64 // the most from one of them to the next
}

type ellipse struct {
	centre pt
	a, b   float64
}

// A ruling is one straight line of the side, and its foot at the first end.
type ruling struct {
	sin, cos   float64
	foot, step v3.Vec // step leads to the last end
	perSquare  float64
}

func newOval(o form.Oval) *oval {
	c := &oval{from: float64(o.From), to: float64(o.To), first: compiled(o.First), last: compiled(o.Last)}
	c.wide = float64(max(o.First.U, o.First.V, o.Last.U, o.Last.V)) * 2 * math.Pi / rulings
	for i := range c.lines {
		c.lines[i] = c.ruling(2 * math.Pi * float64(i) / rulings)
	}
	return c
}

func compiled(e form.Ellipse) ellipse { return ellipse{place(e.Centre), float64(e.U), float64(e.V)} }

func (o *oval) ruling(angle float64) ruling {
	sin, cos := math.Sincos(angle)
	a, b := o.first.at(sin, cos), o.last.at(sin, cos)
	r := ruling{sin: sin, cos: cos, foot: v3.Vec{X: a.x, Y: a.y, Z: o.from}, step: v3.Vec{X: b.x - a.x, Y: b.y - a.y, Z: o.to - o.from}}
	r.perSquare = 1 / r.step.Dot(r.step)
	return r
}

func (e *ellipse) at(sin, cos float64) pt { return pt{e.centre.x + e.a*cos, e.centre.y + e.b*sin} }

// holds says whether a place of the section's plane is in it.
func (e *ellipse) holds(p pt) bool {
	x, y := (p.x-e.centre.x)/e.a, (p.y-e.centre.y)/e.b
	return x*x+y*y < 1
}

// section is the oval's section a part of the way along.
func (o *oval) section(t float64) ellipse {
	return ellipse{
		o.first.centre.add(o.last.centre.sub(o.first.centre).mul(t)),
		o.first.a + t*(o.last.a-o.first.a), o.first.b + t*(o.last.b-o.first.b),
	}
}

func (o *oval) part(z float64) float64 { return (z - o.from) / (o.to - o.from) }

// reach is a stretch of the side, in parts of the way along.
type reach struct{ lo, hi float64 }

// trimmed is the side from end to end.
func trimmed() reach { return reach{0, 1} }

// untrimmed is how far the side goes on before a half span closes up.
func (o *oval) untrimmed() reach {
	r := reach{math.Inf(-1), math.Inf(1)}
	for _, s := range [2][2]float64{{o.first.a, o.last.a}, {o.first.b, o.last.b}} {
		switch d := s[1] - s[0]; {
		case d < 0:
			r.hi = min(r.hi, -s[0]/d)
		case d > 0:
			r.lo = max(r.lo, -s[0]/d)
		}
	}
	return r
}

// A spot is a place on the side: how far it is from the place asked about
// (squared), how that changes with the angle, and where it is.
type spot struct {
	square, slope float64
	q             v3.Vec
	normal        v3.Vec
}

// spot is the place on a ruling nearest to p.
func (o *oval) spot(r *ruling, p v3.Vec, within reach) spot {
	t := min(max(p.Sub(r.foot).Dot(r.step)*r.perSquare, within.lo), within.hi)
	q := r.foot.Add(r.step.MulScalar(t))
	off := q.Sub(p)
	e := o.section(t)
	return spot{
		square: off.Dot(off), slope: off.Y*e.b*r.cos - off.X*e.a*r.sin, q: q,
		normal: v3.Vec{X: e.b * r.cos, Y: e.a * r.sin, Z: -(e.a*r.sin*r.step.Y + e.b*r.cos*r.step.X) / r.step.Z},
	}
}

// side is the place on the side nearest to p. Every ruling that is nearer than
// its neighbours is gone into.
func (o *oval) side(p v3.Vec, within reach) spot {
	var square [rulings]float64
	far := 0.0 // the most that a foot lies beyond an end, in parts of the length
	for i := range o.lines {
		r := &o.lines[i]
		d := p.Sub(r.foot)
		t := min(max(d.Dot(r.step)*r.perSquare, within.lo), within.hi)
		d = d.Sub(r.step.MulScalar(t))
		far = max(far, t-1, -t)
		square[i] = d.Dot(d)
	}
	best := spot{square: math.Inf(1)}
	least := math.Sqrt(slices.Min(square[:])) + o.wide*(1+2*far)
	for i, s := range square {
		if s <= least*least && s <= square[(i+1)%rulings] && s <= square[(i+rulings-1)%rulings] {
			if c := o.hollow(p, within, i); c.square < best.square {
				best = c
			}
		}
	}
	return best
}

// hollow is the nearest of the side's places between the neighbours of ruling
// i: where the distance stops falling and starts to rise.
func (o *oval) hollow(p v3.Vec, within reach, i int) spot {
	const width = 2 * math.Pi / rulings
	at := func(angle float64) spot {
		r := o.ruling(angle)
		return o.spot(&r, p, within)
	}
	a := o.spot(&o.lines[(i+rulings-1)%rulings], p, within)
	best := a
	for k := i; k <= i+1; k++ {
		b := o.spot(&o.lines[k%rulings], p, within)
		for _, c := range []spot{b, valley(at, float64(k-1)*width, float64(k)*width, a, b)} {
			if c.square < best.square {
				best = c
			}
		}
		a = b
	}
	return best
}

// valley finds where the slope passes zero between two angles, by the secant
// kept in bounds (regula falsi, the Illinois way).
func valley(at func(float64) spot, lo, hi float64, a, b spot) spot {
	if !(a.slope < 0 && b.slope > 0) {
		return a
	}
	fa, fb := a.slope, b.slope
	c, before := a, lo
	for range 40 {
		m := lo + (hi-lo)*fa/(fa-fb)
		if !(m > lo && m < hi) {
			m = (lo + hi) / 2
		}
		if math.Abs(m-before) < 1e-11 {
			break
		}
		before = m
		c = at(m)
		switch {
		case c.slope < 0:
			lo, fa, fb = m, c.slope, fb/2
		case c.slope > 0:
			hi, fb, fa = m, c.slope, fa/2
		}
		if c.slope == 0 {
			break
		}
	}
	return c
}

func (l *Leaf) nearOval(p v3.Vec) (float64, v3.Vec, int) {
	at, z := l.local(p)
	o := l.oval
	s := o.side(v3.Vec{X: at.x, Y: at.y, Z: z}, trimmed())
	d, q, face := math.Sqrt(s.square), l.world(pt{s.q.X, s.q.Y}, s.q.Z), 0
	for i, e := range []*ellipse{&o.first, &o.last} {
		stop := [2]float64{o.from, o.to}[i]
		if off := math.Abs(z - stop); off < d && e.holds(at) {
			d, q, face = off, l.world(at, stop), i+1
		}
	}
	if e := o.section(o.part(z)); z > o.from && z < o.to && e.holds(at) {
		d = -d
	}
	return d, q, face
}

// outOfOval is the way out of the oval at a place on one of its faces.
func (l *Leaf) outOfOval(q v3.Vec, face int) v3.Vec {
	switch face {
	case 1:
		return l.w.Neg()
	case 2:
		return l.w
	}
	at, z := l.local(q)
	return l.turnedOut(l.oval.side(v3.Vec{X: at.x, Y: at.y, Z: z}, trimmed()).normal)
}

// turnedOut brings a direction of the leaf's frame into the world's.
func (l *Leaf) turnedOut(n v3.Vec) v3.Vec {
	return l.u.MulScalar(n.X).Add(l.v.MulScalar(n.Y)).Add(l.w.MulScalar(n.Z)).Normalize()
}

func (b *builder) ovalLeaf(where string, o form.Oval) *Leaf {
	l := b.stood(where, o, o.Frame)
	if err := o.Valid(); err != nil {
		b.fault(where, err.Error(), "give two sections with a width, the last beyond the first")
		return nil
	}
	if l == nil {
		return nil
	}
	l.oval = newOval(o)
	l.faceOn(b.surface(l.sideOfOval(&o)))
	l.faceOn(b.cap(l.world(pt{}, l.oval.from), l.w.Neg()))
	l.faceOn(b.cap(l.world(pt{}, l.oval.to), l.w))
	l.near = l.nearOval
	return l
}

// sideOfOval is the surface of an oval's side: a cylinder or a cone where it is
// round and stands upright.
func (l *Leaf) sideOfOval(o *form.Oval) Surface {
	f, e := l.oval.first, l.oval.last
	lean := e.centre.sub(f.centre).length()
	if lean > touch || math.Abs(f.a-f.b) > touch || math.Abs(e.a-e.b) > touch {
		return Surface{Kind: OvalSide, At: l.origin, Axis: l.w, Oval: o, ruled: l}
	}
	s := Surface{Kind: Cylinder, At: l.world(f.centre, l.oval.from), Axis: l.w, Major: form.Length(f.a)}
	if slope := (e.a - f.a) / (l.oval.to - l.oval.from); math.Abs(slope) > 1e-12 {
		s.Kind, s.Slope = Cone, slope
	}
	return s
}

// toOval is the distance from an untrimmed oval side, and the way it grows.
func (s *Surface) toOval(p v3.Vec) (float64, v3.Vec) {
	l := s.ruled
	at, z := l.local(p)
	o := l.oval
	within := o.untrimmed()
	c := o.side(v3.Vec{X: at.x, Y: at.y, Z: z}, within)
	d := math.Sqrt(c.square)
	t := o.part(z)
	if e := o.section(t); t > within.lo && t < within.hi && e.holds(at) {
		d = -d
	}
	if math.Abs(d) > 1e-7 {
		return d, p.Sub(l.world(pt{c.q.X, c.q.Y}, c.q.Z)).DivScalar(d)
	}
	return d, l.turnedOut(c.normal)
}

// sameOval says whether two oval sides are one: their sections have one centre
// and reach as far, at two places along and three ways across.
func (s *Surface) sameOval(t *Surface) bool {
	l, m := s.ruled, t.ruled
	if l.w.Cross(m.w).Length() > sameSine {
		return false
	}
	for i, e := range []ellipse{l.oval.first, l.oval.last} {
		centre := l.world(e.centre, [2]float64{l.oval.from, l.oval.to}[i])
		_, z := m.local(centre)
		f := m.oval.section(m.oval.part(z))
		if m.world(f.centre, z).Sub(centre).Length() > sameLength {
			return false
		}
		for _, way := range []v3.Vec{l.u, l.v, l.u.Add(l.v).Normalize()} {
			mine, theirs := math.Hypot(e.a*l.u.Dot(way), e.b*l.v.Dot(way)), math.Hypot(f.a*m.u.Dot(way), f.b*m.v.Dot(way))
			if math.Abs(mine-theirs) > sameLength {
				return false
			}
		}
	}
	return true
}

// Ruled is the place on an oval's side an angle round it, measured as its
// sections' eccentric angle from U, at z along W.
func (l *Leaf) Ruled(angle, z float64) v3.Vec {
	sin, cos := math.Sincos(angle)
	e := l.oval.section(l.oval.part(z))
	return l.world(e.at(sin, cos), z)
}

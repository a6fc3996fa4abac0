package solid

import (
	"errors"
	"fmt"
	"math"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// A builder turns a volume into a tree, collecting leaves, surfaces and
// faults on the way.
type builder struct {
	leaves   []*Leaf
	surfaces []Surface
	faults   []error
}

func (b *builder) err() error { return errors.Join(b.faults...) }

func (b *builder) fault(where, found, want string) {
	b.faults = append(b.faults, &ShapeError{Where: where, Found: found, Want: want})
}

func (b *builder) build(v form.Volume, where string) node {
	switch v := v.(type) {
	case form.Prism:
		return b.leaf(where+"prism", v)
	case form.Revolved:
		return b.leaf(where+"turned piece", v)
	case form.Oval:
		return b.leaf(where+"oval", v)
	case form.Half:
		return b.leaf(where+"half space", v)
	case form.Union:
		return node{op: union, kids: b.members(where, "part", v)}
	case form.Intersection:
		return node{op: intersection, kids: b.members(where, "member", v)}
	case form.Difference:
		return node{op: difference, kids: append([]node{b.build(v.From, where)}, b.members(where, "cut", v.Cut)...)}
	}
	b.fault(where+"volume", "there is no shape here", "give a prism, a turned piece, an oval or a half space")
	return node{}
}

func (b *builder) members(where, role string, vs []form.Volume) []node {
	if len(vs) == 0 && role != "cut" {
		b.fault(where+role+"s", "there are none", "give at least one")
	}
	kids := make([]node, len(vs))
	for i, v := range vs {
		kids[i] = b.build(v, fmt.Sprintf("%s%s %d: ", where, role, i+1))
	}
	return kids
}

// leaf checks a piece and adds it with its faces.
func (b *builder) leaf(where string, v form.Volume) node {
	before := len(b.faults)
	var l *Leaf
	switch v := v.(type) {
	case form.Prism:
		l = b.prism(where, v)
	case form.Revolved:
		l = b.revolved(where, v)
	case form.Oval:
		l = b.ovalLeaf(where, v)
	case form.Half:
		l = b.half(where, v)
	}
	if len(b.faults) > before {
		return node{}
	}
	b.leaves = append(b.leaves, l)
	return node{op: single, leaf: len(b.leaves) - 1}
}

func (b *builder) half(where string, h form.Half) *Leaf {
	n := direction(h.Normal)
	if !finite(float64(h.At.X), float64(h.At.Y), float64(h.At.Z)) || !(math.Abs(n.Length()-1) < 1e-6) {
		b.fault(where, fmt.Sprintf("its plane's place %v or direction %v is not usable", h.At, h.Normal),
			"give a place in millimetres and a direction of length one")
		return nil
	}
	n = n.Normalize()
	l := &Leaf{Shape: h, origin: position(h.At), w: n}
	l.faceOn(b.surface(flat(l.origin, n)))
	l.near = l.nearHalf
	return l
}

func (b *builder) prism(where string, p form.Prism) *Leaf {
	l := b.framed(where, p, p.Frame, p.Profile)
	if !(p.From < p.To) || math.IsInf(float64(p.From), 1) || math.IsInf(float64(p.To), -1) {
		b.fault(where, fmt.Sprintf("it runs from %v to %v", p.From, p.To), "its second end must lie beyond its first")
		return nil
	}
	if l == nil {
		return nil
	}
	l.from, l.to = float64(p.From), float64(p.To)
	for i := range l.outline {
		l.faceOn(b.surface(l.sideOf(&l.outline[i])))
	}
	l.faceOn(b.cap(l.origin.Add(l.w.MulScalar(l.from)), l.w.Neg()))
	l.faceOn(b.cap(l.origin.Add(l.w.MulScalar(l.to)), l.w))
	l.near = l.nearPrism
	return l
}

// cap is the surface of an end; an endless prism has none there.
func (b *builder) cap(at, normal v3.Vec) int {
	if !finite(at.X, at.Y, at.Z) {
		return NoSurface
	}
	return b.surface(flat(at, normal))
}

func (b *builder) revolved(where string, r form.Revolved) *Leaf {
	l := b.framed(where, r, r.Frame, r.Profile)
	sweep := float64(r.Sweep)
	if !(sweep > 0) || sweep > 2*math.Pi+1e-9 {
		b.fault(where, fmt.Sprintf("it turns through %.6g degrees", r.Sweep.Degrees()), "give more than none and at most a full turn of 360")
		return nil
	}
	if l == nil {
		return nil
	}
	if lo, _ := r.Profile.Bounds(); lo.X < -touch {
		b.fault(where, "its profile crosses the line it turns about", "keep every place of the profile on the one side, x never negative")
		return nil
	}
	l.sweep = min(sweep, 2*math.Pi)
	for i := range l.outline {
		l.faceOn(b.turned(l, &l.outline[i]))
	}
	if l.Full() {
		l.faceOn(NoSurface)
		l.faceOn(NoSurface)
	} else {
		l.faceOn(b.surface(flat(l.origin, l.v.Neg())))
		l.faceOn(b.surface(flat(l.origin, l.spoke(l.sweep+math.Pi/2))))
	}
	l.near = l.nearRevolved
	return l
}

// turned is the surface an edge sweeps; an edge on the line it turns about
// sweeps none.
func (b *builder) turned(l *Leaf, e *Edge) int {
	if e.straight() && math.Abs(e.a.x) < touch && math.Abs(e.b.x) < touch {
		return NoSurface
	}
	return b.surface(l.turnedOf(e))
}

// stood starts a leaf in a frame.
func (b *builder) stood(where string, shape form.Volume, f form.Frame) *Leaf {
	u, v := direction(f.U), direction(f.V)
	square := math.Abs(u.Length()-1) < 1e-6 && math.Abs(v.Length()-1) < 1e-6 && math.Abs(u.Dot(v)) < 1e-6
	if !square || !finite(float64(f.Origin.X), float64(f.Origin.Y), float64(f.Origin.Z)) {
		b.fault(where, fmt.Sprintf("its frame at %v with directions %v and %v is not usable", f.Origin, f.U, f.V),
			"give two directions of length one at right angles")
		return nil
	}
	u = u.Normalize()
	w := u.Cross(v).Normalize()
	return &Leaf{Shape: shape, origin: position(f.Origin), u: u, v: w.Cross(u), w: w}
}

// framed starts a leaf with a frame and an outline.
func (b *builder) framed(where string, shape form.Volume, f form.Frame, p form.Profile) *Leaf {
	l := b.stood(where, shape, f)
	if l == nil {
		return nil
	}
	if l.outline = b.outline(where, p); l.outline == nil {
		return nil
	}
	return l
}

func (b *builder) outline(where string, p form.Profile) outline {
	if err := p.Valid(); err != nil {
		b.fault(where, err.Error(), "draw it anticlockwise round the wood, in lines and arcs that do not cross")
		return nil
	}
	return newOutline(p)
}

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

func position(p form.Vec) v3.Vec  { return v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)} }
func direction(d form.Dir) v3.Vec { return v3.Vec{X: d.X, Y: d.Y, Z: d.Z} }

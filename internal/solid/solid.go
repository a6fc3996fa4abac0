// Package solid turns a [form.Volume] into a distance field that keeps its
// exact surfaces.
//
// A [Solid] is a tree of our own over the form's prisms, turned pieces, ovals and
// half spaces. It satisfies sdfx's SDF3 interface, so that sdfx's renderers can
// serve as a check on ours. Distances are in millimetres, in the volume's own
// right-handed frame, negative in the wood. The distance to one prism, turned
// piece, oval or half space is exact; the tree combines them with min and max, which
// gives the right sign everywhere and never more than the distance to the
// surface (a Lipschitz constant of 1).
//
// Places, and distances from them, are sdfx's vectors and plain float64, in
// millimetres, because its interface asks for them. Nothing here makes triangles; see internal/mesh.
package solid

import (
	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/parts/form"
)

// A Solid is a compiled volume. It does not change once made, so any number of
// goroutines may ask it at once.
type Solid struct {
	root     node
	leaves   []*Leaf
	surfaces []Surface
	box      sdf.Box3
}

// New compiles v. It refuses a volume that never ends ([*EndlessError]) and one
// whose pieces cannot be made ([*ShapeError]); every fault found is reported.
func New(v form.Volume) (*Solid, error) {
	b := builder{}
	root := b.build(v, "")
	if err := b.err(); err != nil {
		return nil, err
	}
	s := &Solid{root: root, leaves: b.leaves, surfaces: b.surfaces}
	var err error
	s.box, err = boundsOf(root, b.leaves)
	if err != nil {
		return nil, err
	}
	return s, nil
}

// Evaluate returns the signed distance bound at p, negative inside.
func (s *Solid) Evaluate(p v3.Vec) float64 {
	return s.root.evaluate(func(leaf int) float64 {
		d, _, _ := s.leaves[leaf].near(p)
		return d
	})
}

// BoundingBox returns a box that holds the whole solid; it may be a little
// larger than it need be.
func (s *Solid) BoundingBox() sdf.Box3 { return s.box }

// A Hit says which surface decides the field at a place.
type Hit struct {
	Distance float64 // in millimetres, negative inside
	Normal   v3.Vec  // the field's gradient, of length one, pointing out of the wood
	Surface  int     // index into Surfaces
}

// At returns the field, its gradient and the deciding surface at p.
func (s *Solid) At(p v3.Vec) Hit {
	leaf, sign := s.root.decide(func(leaf int) float64 {
		d, _, _ := s.leaves[leaf].near(p)
		return d
	})
	l := s.leaves[leaf]
	d, q, face := l.near(p)
	n := l.gradient(p, d, q, face)
	return Hit{Distance: sign * d, Normal: n.MulScalar(sign), Surface: l.Faces[face].Surface}
}

// Surfaces lists the distinct surfaces that bound the solid's pieces. Faces
// of different pieces that lie in one surface share one entry.
func (s *Solid) Surfaces() []Surface { return s.surfaces }

// Leaves lists the pieces the solid is combined from, in the order of the
// volume's tree.
func (s *Solid) Leaves() []*Leaf { return s.leaves }

// Inside says whether a place is in the solid, given which leaves it is in.
func (s *Solid) Inside(in func(leaf int) bool) bool {
	return s.root.evaluate(func(leaf int) float64 {
		if in(leaf) {
			return -1
		}
		return 1
	}) < 0
}

package sight

import (
	"math"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/mesh"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A Body is a closed skin, its facets and its edges.
type Body struct {
	corners []form.Vec
	facets  [][3]int
	edges   []edge
	sag     float64 // how far a facet may lie from the true surface
}

// An edge is where two facets meet.
type edge struct {
	from, to    int // corners
	left, right int // facets
	sharp       bool
}

// Of is the body of a volume; no facet lies farther than the tolerance from its
// true surface. Its errors are those of solid.New and mesh.Of.
func Of(v form.Volume, tolerance Length) (*Body, error) {
	s, err := solid.New(v)
	if err != nil {
		return nil, err
	}
	m, err := mesh.Of(s, tolerance)
	if err != nil {
		return nil, err
	}
	b := &Body{corners: m.Vertices, facets: m.Triangles, sag: 1.1 * float64(tolerance)}
	b.findEdges(s.Surfaces())
	return b, nil
}

// least is the turn between two faces, as a sine, that is drawn as an edge: where
// they run into each other smoothly there is none (about six degrees).
const least = 0.1

// findEdges pairs the facets over their edges, in the order of the facets.
func (b *Body) findEdges(surfaces []solid.Surface) {
	on := make([]int, len(b.facets))
	for i := range b.facets {
		on[i] = b.surfaceOf(i, surfaces)
	}
	open := map[[2]int]int{}
	for i, f := range b.facets {
		for k := range 3 {
			from, to := f[k], f[(k+1)%3]
			other, met := open[[2]int{to, from}]
			if !met {
				open[[2]int{from, to}] = i
				continue
			}
			delete(open, [2]int{to, from})
			e := edge{from: to, to: from, left: other, right: i}
			e.sharp = on[other] != on[i] && b.turns(e, surfaces[on[other]], surfaces[on[i]])
			b.edges = append(b.edges, e)
		}
	}
}

// surfaceOf finds the exact surface that a facet's corners lie on. A flat end's
// facets may have all corners on the curved side as well: the facing tells.
func (b *Body) surfaceOf(facet int, surfaces []solid.Surface) int {
	const onIt = 1e-3
	n := b.normal(facet)
	f := b.facets[facet]
	middle := v3of(b.corners[f[0]]).Add(v3of(b.corners[f[1]])).Add(v3of(b.corners[f[2]])).DivScalar(3)
	best, bestFit := 0, math.Inf(-1)
	for i := range surfaces {
		off := 0.0
		for _, c := range f {
			off = math.Max(off, math.Abs(surfaces[i].Distance(v3of(b.corners[c]))))
		}
		fit := math.Abs(surfaces[i].Normal(middle).Dot(n))
		if off > onIt {
			fit -= 2 + off
		}
		if fit > bestFit {
			best, bestFit = i, fit
		}
	}
	return best
}

// turns says whether two surfaces meet at an angle along an edge.
func (b *Body) turns(e edge, left, right solid.Surface) bool {
	middle := v3of(b.corners[e.from]).Add(v3of(b.corners[e.to])).DivScalar(2)
	facing := func(s solid.Surface, facet int) v3.Vec {
		n := s.Normal(middle)
		if n.Dot(b.normal(facet)) < 0 {
			return n.Neg()
		}
		return n
	}
	l, r := facing(left, e.left), facing(right, e.right)
	return l.Dot(r) < 0 || l.Cross(r).Length() > least
}

// normal is square to a facet, outwards, of length one.
func (b *Body) normal(facet int) v3.Vec {
	f := b.facets[facet]
	p, q, r := v3of(b.corners[f[0]]), v3of(b.corners[f[1]]), v3of(b.corners[f[2]])
	n := q.Sub(p).Cross(r.Sub(p))
	if n.Length() == 0 {
		return n
	}
	return n.Normalize()
}

// A Pose puts a body somewhere else: its origin, and its own x, y and z as they lie there.
type Pose struct {
	At   form.Vec
	Axes [3]form.Dir
}

// place is where the pose puts a place of the body.
func (p Pose) place(v form.Vec) form.Vec {
	return p.At.Plus(p.Axes[0], v.X).Plus(p.Axes[1], v.Y).Plus(p.Axes[2], v.Z)
}

// Placed is the body in a pose. A pose whose axes are left-handed makes its mirror image.
func (b *Body) Placed(p Pose) *Body {
	out := &Body{corners: make([]form.Vec, len(b.corners)), facets: b.facets, edges: b.edges, sag: b.sag}
	for i, c := range b.corners {
		out.corners[i] = p.place(c)
	}
	x, y, z := p.Axes[0], p.Axes[1], p.Axes[2]
	w := form.Frame{U: x, V: y}.W()
	if w.X*z.X+w.Y*z.Y+w.Z*z.Z < 0 {
		out.facets = make([][3]int, len(b.facets))
		for i, f := range b.facets {
			out.facets[i] = [3]int{f[0], f[2], f[1]}
		}
	}
	return out
}

// Bounds is the smallest upright box round the body.
func (b *Body) Bounds() form.Box {
	m := mesh.Mesh{Vertices: b.corners}
	return m.Bounds()
}

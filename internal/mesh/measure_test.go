package mesh_test

import (
	"math"
	"math/rand"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/mesh"
	"lostwood/internal/solid"
)

// A gauge is what was measured of a skin against its solid, in millimetres.
type gauge struct {
	dev     float64 // farthest of the skin's vertices, middles of edges and triangles from the true surface
	devAt   v3.Vec
	cover   float64 // farthest of the true surface's samples from the skin
	coverAt v3.Vec
	edge    float64 // farthest of the true edges' samples from the skin
	edgeAt  v3.Vec
	corner  float64 // farthest of the true corners from a vertex
	stray   float64 // farthest of the skin's sharp edges from where two true surfaces meet
	tilt    float64 // most that a triangle's normal leans from its surface's, in degrees
	tiltAt  v3.Vec
	wrong   int    // samples that the skin and the field disagree about, inside or outside
	crossed int    // pairs of triangles that cut through one another
	samples [3]int // of surface, edges and corners
}

func measured(s *solid.Solid, m *mesh.Mesh, seed int64, samples int) gauge {
	g := gauge{}
	n := newNest(m)
	g.crossed, _ = n.crossings()
	for t := range m.Triangles {
		g.triangle(s, n, t)
	}
	g.sharp(s, n)
	p := &probe{s: s, r: rand.New(rand.NewSource(seed))}
	g.surface(p, n, samples)
	g.edges(p, n, samples)
	g.corners(p, n)
	g.sides(p, n, samples/10)
	return g
}

func (g *gauge) triangle(s *solid.Solid, n *nest, t int) {
	a, b, c := n.corners(t)
	middle := a.Add(b).Add(c).DivScalar(3)
	for _, p := range []v3.Vec{a, middle, a.Add(b).MulScalar(0.5), b.Add(c).MulScalar(0.5), c.Add(a).MulScalar(0.5)} {
		if d := math.Abs(s.Evaluate(p)); d > g.dev {
			g.dev, g.devAt = d, p
		}
	}
	if n.height(t) < sliver {
		return
	}
	normal := b.Sub(a).Cross(c.Sub(a)).Normalize()
	tilt := math.Inf(1) // from the nearest of the surfaces at hand: a thin wall has two
	for i := range s.Surfaces() {
		if f := &s.Surfaces()[i]; math.Abs(f.Distance(middle)) < 0.06 {
			tilt = min(tilt, math.Acos(min(1, math.Abs(f.Normal(middle).Dot(normal))))*180/math.Pi)
		}
	}
	if tilt > g.tilt {
		g.tilt, g.tiltAt = tilt, middle
	}
}

// sliver is how narrow a triangle may be for which way it faces to mean
// nothing: its corners all lie on the surface, and the tolerance tilts it.
const sliver = 0.1

// height is how wide a triangle is at its narrowest.
func (n *nest) height(t int) float64 {
	a, b, c := n.corners(t)
	return b.Sub(a).Cross(c.Sub(a)).Length() / max(b.Sub(a).Length(), c.Sub(b).Length(), a.Sub(c).Length())
}

// winding is how often the skin goes round p: 1 inside, 0 outside, by the sum
// of the angles in which p sees the triangles (A. van Oosterom and J. Strackee,
// The solid angle of a plane triangle, IEEE Trans. Biomed. Eng. 30, 1983).
func (n *nest) winding(p v3.Vec) float64 {
	sum := 0.0
	for t := range n.m.Triangles {
		a, b, c := n.corners(t)
		a, b, c = a.Sub(p), b.Sub(p), c.Sub(p)
		la, lb, lc := a.Length(), b.Length(), c.Length()
		sum += math.Atan2(a.Dot(b.Cross(c)), la*lb*lc+a.Dot(b)*lc+b.Dot(c)*la+c.Dot(a)*lb)
	}
	return sum / (2 * math.Pi)
}

// sides compares the skin's inside with the field's, near the surface and far.
func (g *gauge) sides(p *probe, n *nest, samples int) {
	for i := range samples {
		q := p.anywhere()
		if i%4 > 0 {
			q = p.near(n)
		}
		if d := p.s.Evaluate(q); math.Abs(d) > 1.2*g.dev+1e-3 && math.Abs(n.winding(q)-inside(d)) > 1e-6 {
			g.wrong++
		}
	}
}

func inside(d float64) float64 {
	if d < 0 {
		return 1
	}
	return 0
}

// sharp measures the skin's sharp edges from true surfaces that meet at an angle.
func (g *gauge) sharp(s *solid.Solid, n *nest) {
	normal := map[[2]int]v3.Vec{}
	for t, k := range n.m.Triangles {
		a, b, c := n.corners(t)
		if n.height(t) < sliver {
			continue
		}
		for i := range k {
			normal[[2]int{k[i], k[(i+1)%3]}] = b.Sub(a).Cross(c.Sub(a)).Normalize()
		}
	}
	for e, u := range normal {
		v, both := normal[[2]int{e[1], e[0]}]
		a, b := n.at[e[0]], n.at[e[1]]
		if !both || e[0] > e[1] || u.Dot(v) > 0.6 || a.Sub(b).Length() < 0.1 {
			continue
		}
		var near []float64
		all := s.Surfaces()
		m := a.Add(b).MulScalar(0.5)
		for i := range all {
			near = append(near, math.Abs(all[i].Distance(m)))
		}
		slices.Sort(near)
		g.stray = max(g.stray, near[1])
	}
}

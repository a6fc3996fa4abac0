// Package gauge measures a skin against the solid it was made of, for tests. It
// knows the solid's field and surfaces and nothing of how the skin was made.
//
// Places are sdfx's vectors, as in internal/solid; all is in millimetres.
package gauge

import (
	"fmt"
	"math"
	"math/rand"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/mesh"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A Gauge is what was measured of a skin against its solid.
type Gauge struct {
	Skin     Worst       // of the skin's vertices, middles of edges and triangles, from the true surface
	Cover    Worst       // of the true surface's samples, from the skin
	Edge     Worst       // of the true edges' samples, from the skin
	Corner   Worst       // of the true corners, from a vertex
	Stray    form.Length // farthest of the skin's sharp edges from where two true surfaces meet
	Tilt     form.Angle  // most that a triangle's normal leans from its surface's
	Wrong    int         // samples that the skin and the field disagree about, inside or outside
	Crossed  int         // pairs of triangles that cut through one another
	Surfaces int         // how many places of the true surface were looked at
	Edges    int         // of its edges
	Corners  int         // of its corners
}

// A Worst is the largest distance of its sort, and where it was found.
type Worst struct {
	Far form.Length
	At  v3.Vec
}

func (w *Worst) take(far float64, at v3.Vec) {
	if l := form.Length(far); l > w.Far {
		*w = Worst{l, at}
	}
}

// cornerLimit is how near a vertex must be to a true corner.
const cornerLimit = 1e-4

// Faults lists what an acceptance at a tolerance finds wrong.
func (g *Gauge) Faults(tolerance form.Length) []string {
	var out []string
	for _, l := range []struct {
		what  string
		worst Worst
		limit form.Length
	}{
		{"the skin is off the surface", g.Skin, tolerance},
		{"the surface is off the skin", g.Cover, tolerance},
		{"a true edge is off the skin", g.Edge, tolerance},
		{"a true corner is off a vertex", g.Corner, cornerLimit},
	} {
		if !(l.worst.Far <= l.limit) {
			out = append(out, fmt.Sprintf("%s by %.5g mm at %.4f", l.what, float64(l.worst.Far), l.worst.At))
		}
	}
	if g.Crossed > 0 {
		out = append(out, fmt.Sprintf("%d pairs of triangles cut one another", g.Crossed))
	}
	if g.Wrong > 0 {
		out = append(out, fmt.Sprintf("%d places are wrongly inside or outside", g.Wrong))
	}
	return out
}

// Measure looks at every triangle and at so many random places of the surface
// and of the edges.
func Measure(s *solid.Solid, m *mesh.Mesh, seed int64, samples int) Gauge {
	g := Gauge{}
	n := newNest(m)
	g.Crossed, _ = n.crossings()
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

// Rough measures Skin and Edge alone, and of a great skin only every so manyth
// triangle.
func Rough(s *solid.Solid, m *mesh.Mesh, seed int64, samples int) Gauge {
	const enough = 200000
	g := Gauge{}
	n := newNest(m)
	for t := 0; t < len(m.Triangles); t += 1 + len(m.Triangles)/enough {
		g.triangle(s, n, t)
	}
	g.edges(&probe{s: s, r: rand.New(rand.NewSource(seed))}, n, samples)
	return g
}

func (g *Gauge) triangle(s *solid.Solid, n *nest, t int) {
	a, b, c := n.corners(t)
	middle := a.Add(b).Add(c).DivScalar(3)
	for _, p := range []v3.Vec{a, middle, a.Add(b).MulScalar(0.5), b.Add(c).MulScalar(0.5), c.Add(a).MulScalar(0.5)} {
		g.Skin.take(math.Abs(s.Evaluate(p)), p)
	}
	if n.height(t) < sliver {
		return
	}
	normal := b.Sub(a).Cross(c.Sub(a)).Normalize()
	tilt := math.Inf(1) // from the nearest of the surfaces at hand: a thin wall has two
	for i := range s.Surfaces() {
		if f := &s.Surfaces()[i]; math.Abs(f.Distance(middle)) < 0.06 {
			tilt = min(tilt, math.Acos(min(1, math.Abs(f.Normal(middle).Dot(normal)))))
		}
	}
	g.Tilt = max(g.Tilt, form.Angle(tilt))
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
func (g *Gauge) sides(p *probe, n *nest, samples int) {
	for i := range samples {
		q := p.anywhere()
		if i%4 > 0 {
			q = p.near(n)
		}
		if d := p.s.Evaluate(q); math.Abs(d) > 1.2*float64(g.Skin.Far)+1e-3 && math.Abs(n.winding(q)-inside(d)) > 1e-6 {
			g.Wrong++
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
func (g *Gauge) sharp(s *solid.Solid, n *nest) {
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
		g.Stray = max(g.Stray, form.Length(near[1]))
	}
}

package gauge

import (
	"math"
	"math/rand"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/solid"
)

// A probe finds places on the true surface.
type probe struct {
	s *solid.Solid
	r *rand.Rand
}

func (p *probe) anywhere() v3.Vec {
	b := p.s.BoundingBox()
	return v3.Vec{
		X: b.Min.X + p.r.Float64()*(b.Max.X-b.Min.X),
		Y: b.Min.Y + p.r.Float64()*(b.Max.Y-b.Min.Y),
		Z: b.Min.Z + p.r.Float64()*(b.Max.Z-b.Min.Z),
	}
}

// onto brings q on to some of the surfaces by Newton's method.
func (p *probe) onto(q v3.Vec, surfaces ...int) (v3.Vec, bool) {
	all := p.s.Surfaces()
	for range 30 {
		worst := 0.0
		for _, i := range surfaces { // one after the other, over and over
			d := all[i].Distance(q)
			worst = max(worst, math.Abs(d))
			q = q.Sub(all[i].Normal(q).MulScalar(d))
		}
		if worst < 1e-11 {
			return q, true
		}
		if len(surfaces) > 1 {
			q = p.newton(q, surfaces)
		}
	}
	return q, false
}

// newton takes one step to where flat stand-ins of two or three surfaces meet.
func (p *probe) newton(q v3.Vec, surfaces []int) v3.Vec {
	all := p.s.Surfaces()
	n := []v3.Vec{}
	d := []float64{}
	for _, i := range surfaces {
		n, d = append(n, all[i].Normal(q)), append(d, all[i].Distance(q))
	}
	if len(n) == 2 {
		n, d = append(n, n[0].Cross(n[1])), append(d, 0)
	}
	c := n[1].Cross(n[2])
	det := n[0].Dot(c)
	if math.Abs(det) < 1e-6 {
		return q
	}
	step := c.MulScalar(d[0]).Add(n[2].Cross(n[0]).MulScalar(d[1])).Add(n[0].Cross(n[1]).MulScalar(d[2])).DivScalar(det)
	return q.Sub(step)
}

// border says whether q, on the field's zero, has wood on one side only along n.
func (p *probe) border(q, n v3.Vec) bool {
	const h = 1e-4
	a, b := p.s.Evaluate(q.Add(n.MulScalar(h))), p.s.Evaluate(q.Sub(n.MulScalar(h)))
	return a*b < 0 && math.Abs(a) > h/10 && math.Abs(b) > h/10
}

func (g *Gauge) surface(p *probe, n *nest, samples int) {
	for range samples {
		q := p.anywhere()
		i := p.s.At(q).Surface
		q, ok := p.onto(q, i)
		if !ok || math.Abs(p.s.Evaluate(q)) > 1e-9 || !p.border(q, p.s.Surfaces()[i].Normal(q)) {
			continue
		}
		g.Surfaces++
		g.Cover.take(n.nearest(q), q)
	}
}

// meets lists the surfaces that bound the wood within a hair of q, and face
// apart by more than a few degrees.
func (p *probe) meets(q v3.Vec) []int {
	const hair = 1e-3
	all := p.s.Surfaces()
	seen := map[int]bool{}
	for range 60 {
		u := v3.Vec{X: p.r.NormFloat64(), Y: p.r.NormFloat64(), Z: p.r.NormFloat64()}.Normalize()
		h := p.s.At(q.Add(u.MulScalar(hair)))
		foot, ok := p.onto(q.Add(u.MulScalar(hair)), h.Surface)
		if ok && math.Abs(p.s.Evaluate(foot)) < 1e-9 && foot.Sub(q).Length() < 2*hair && p.border(foot, all[h.Surface].Normal(foot)) {
			seen[h.Surface] = true
		}
	}
	var out []int
	for i := range all {
		if seen[i] {
			out = append(out, i)
		}
	}
	return out
}

func (g *Gauge) edges(p *probe, n *nest, samples int) {
	all := p.s.Surfaces()
	for range samples {
		q := p.near(n)
		h := p.s.At(q)
		j := p.r.Intn(len(all))
		if math.Abs(all[j].Distance(q)) > 30 {
			continue
		}
		q, ok := p.onto(q, h.Surface, j)
		if !ok || j == h.Surface || math.Abs(p.s.Evaluate(q)) > 1e-9 || math.Abs(all[j].Normal(q).Dot(all[h.Surface].Normal(q))) > 0.9 {
			continue
		}
		if m := p.meets(q); !slices.Contains(m, j) || !slices.Contains(m, h.Surface) {
			continue
		}
		g.Edges++
		g.Edge.take(n.nearest(q), q)
	}
}

// near is a place near the skin: edges are too thin to hit from anywhere.
func (p *probe) near(n *nest) v3.Vec {
	a := n.at[p.r.Intn(len(n.at))]
	return a.Add(v3.Vec{X: p.r.NormFloat64(), Y: p.r.NormFloat64(), Z: p.r.NormFloat64()}.MulScalar(3))
}

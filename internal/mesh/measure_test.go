package mesh_test

import (
	"math"
	"math/rand"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/mesh"
	"lostwood/internal/solid"
)

// A nest of boxes over triangles, to find the nearest and those that cross.
type nest struct {
	m     *mesh.Mesh
	at    []v3.Vec
	order []int
	boxes []nestBox
}

type nestBox struct {
	lo, hi      v3.Vec
	first, last int // of order
	kids        [2]int
}

func newNest(m *mesh.Mesh) *nest {
	n := &nest{m: m, order: make([]int, len(m.Triangles))}
	for _, v := range m.Vertices {
		n.at = append(n.at, v3.Vec{X: float64(v.X), Y: float64(v.Y), Z: float64(v.Z)})
	}
	for i := range n.order {
		n.order[i] = i
	}
	n.build(0, len(n.order))
	return n
}

func (n *nest) corners(t int) (a, b, c v3.Vec) {
	k := n.m.Triangles[t]
	return n.at[k[0]], n.at[k[1]], n.at[k[2]]
}

func (n *nest) build(first, last int) int {
	box := nestBox{first: first, last: last, kids: [2]int{-1, -1}}
	box.lo, box.hi = v3.Vec{X: 1e300, Y: 1e300, Z: 1e300}, v3.Vec{X: -1e300, Y: -1e300, Z: -1e300}
	for _, t := range n.order[first:last] {
		a, b, c := n.corners(t)
		box.lo, box.hi = box.lo.Min(a).Min(b).Min(c), box.hi.Max(a).Max(b).Max(c)
	}
	i := len(n.boxes)
	n.boxes = append(n.boxes, box)
	if last-first <= 4 {
		return i
	}
	size := box.hi.Sub(box.lo)
	key := func(t int) float64 {
		a, b, c := n.corners(t)
		s := a.Add(b).Add(c)
		switch {
		case size.X >= size.Y && size.X >= size.Z:
			return s.X
		case size.Y >= size.Z:
			return s.Y
		}
		return s.Z
	}
	slices.SortFunc(n.order[first:last], func(a, b int) int {
		switch x, y := key(a), key(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	mid := (first + last) / 2
	left := n.build(first, mid)
	right := n.build(mid, last)
	n.boxes[i].kids = [2]int{left, right}
	return i
}

func (b *nestBox) distance(p v3.Vec) float64 { return p.Sub(p.Max(b.lo).Min(b.hi)).Length() }

// nearest is how far p is from the skin.
func (n *nest) nearest(p v3.Vec) float64 {
	best := math.Inf(1)
	var look func(i int)
	look = func(i int) {
		b := &n.boxes[i]
		if b.distance(p) >= best {
			return
		}
		if b.kids[0] < 0 {
			for _, t := range n.order[b.first:b.last] {
				best = min(best, toTriangle(n.corners3(t), p))
			}
			return
		}
		l, r := b.kids[0], b.kids[1]
		if n.boxes[r].distance(p) < n.boxes[l].distance(p) {
			l, r = r, l
		}
		look(l)
		look(r)
	}
	look(0)
	return best
}

func (n *nest) corners3(t int) [3]v3.Vec {
	a, b, c := n.corners(t)
	return [3]v3.Vec{a, b, c}
}

func toSegment(a, b, p v3.Vec) float64 {
	d := b.Sub(a)
	t := max(0, min(1, p.Sub(a).Dot(d)/d.Dot(d)))
	return p.Sub(a.Add(d.MulScalar(t))).Length()
}

func toTriangle(t [3]v3.Vec, p v3.Vec) float64 {
	n := t[1].Sub(t[0]).Cross(t[2].Sub(t[0]))
	inside := true
	for i := range t {
		if t[(i+1)%3].Sub(t[i]).Cross(p.Sub(t[i])).Dot(n) < 0 {
			inside = false
		}
	}
	if inside {
		return math.Abs(p.Sub(t[0]).Dot(n)) / n.Length()
	}
	return min(toSegment(t[0], t[1], p), toSegment(t[1], t[2], p), toSegment(t[2], t[0], p))
}

// crossings counts the pairs of triangles that cut through one another by
// more than rounding does.
func (n *nest) crossings() (count int, at v3.Vec) {
	var pair func(i, j int)
	pair = func(i, j int) {
		a, b := &n.boxes[i], &n.boxes[j]
		if a.lo.X > b.hi.X || b.lo.X > a.hi.X || a.lo.Y > b.hi.Y || b.lo.Y > a.hi.Y || a.lo.Z > b.hi.Z || b.lo.Z > a.hi.Z {
			return
		}
		switch {
		case a.kids[0] < 0 && b.kids[0] < 0:
			for _, s := range n.order[a.first:a.last] {
				for _, t := range n.order[b.first:b.last] {
					if (i != j || s < t) && n.cut(s, t) {
						count++
						at, _, _ = n.corners(s)
					}
				}
			}
		case i == j:
			pair(a.kids[0], a.kids[0])
			pair(a.kids[0], a.kids[1])
			pair(a.kids[1], a.kids[1])
		case b.kids[0] < 0 || a.kids[0] >= 0 && a.last-a.first > b.last-b.first:
			pair(a.kids[0], j)
			pair(a.kids[1], j)
		default:
			pair(i, b.kids[0])
			pair(i, b.kids[1])
		}
	}
	pair(0, 0)
	return count, at
}

// cut says whether an edge of one triangle, not ending in a corner of the
// other, goes through the other's inside.
func (n *nest) cut(s, t int) bool {
	return n.pierces(s, t) || n.pierces(t, s)
}

func (n *nest) pierces(s, t int) bool {
	ks, kt := n.m.Triangles[s], n.m.Triangles[t]
	a, b, c := n.corners(t)
	normal := b.Sub(a).Cross(c.Sub(a)).Normalize()
	const slack = 2e-4 // twice what rounding to float32 moves a corner, on parts of a metre
	for i := range ks {
		p, q := ks[i], ks[(i+1)%3]
		if slices.Contains(kt[:], p) || slices.Contains(kt[:], q) {
			continue
		}
		dp, dq := n.at[p].Sub(a).Dot(normal), n.at[q].Sub(a).Dot(normal)
		if dp*dq >= 0 || min(math.Abs(dp), math.Abs(dq)) < slack {
			continue
		}
		x := n.at[p].Add(n.at[q].Sub(n.at[p]).MulScalar(dp / (dp - dq)))
		in := true
		for _, e := range [][2]v3.Vec{{a, b}, {b, c}, {c, a}} {
			way := e[1].Sub(e[0])
			if way.Cross(x.Sub(e[0])).Dot(normal)/way.Length() < slack {
				in = false
			}
		}
		if in {
			return true
		}
	}
	return false
}

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

func (g *gauge) surface(p *probe, n *nest, samples int) {
	for range samples {
		q := p.anywhere()
		i := p.s.At(q).Surface
		q, ok := p.onto(q, i)
		if !ok || math.Abs(p.s.Evaluate(q)) > 1e-9 || !p.border(q, p.s.Surfaces()[i].Normal(q)) {
			continue
		}
		g.samples[0]++
		if d := n.nearest(q); d > g.cover {
			g.cover, g.coverAt = d, q
		}
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

func (g *gauge) edges(p *probe, n *nest, samples int) {
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
		g.samples[1]++
		if d := n.nearest(q); d > g.edge {
			g.edge, g.edgeAt = d, q
		}
	}
}

// near is a place near the skin: edges are too thin to hit from anywhere.
func (p *probe) near(n *nest) v3.Vec {
	a := n.at[p.r.Intn(len(n.at))]
	return a.Add(v3.Vec{X: p.r.NormFloat64(), Y: p.r.NormFloat64(), Z: p.r.NormFloat64()}.MulScalar(3))
}

// corners solves for every three surfaces, keeps the true corners and measures
// how far each is from a vertex.
func (g *gauge) corners(p *probe, n *nest) {
	all := p.s.Surfaces()
	for i := range all {
		for j := range i {
			for k := range j {
				for range 2 {
					q := p.near(n)
					if all[i].Kind == solid.Plane && all[j].Kind == solid.Plane && all[k].Kind == solid.Plane {
						q = p.s.BoundingBox().Center()
					}
					q, ok := p.onto(q, i, j, k)
					if !ok || math.Abs(p.s.Evaluate(q)) > 1e-9 || math.Abs(all[i].Normal(q).Dot(all[j].Normal(q).Cross(all[k].Normal(q)))) < 0.2 {
						continue
					}
					if m := p.meets(q); !slices.Contains(m, i) || !slices.Contains(m, j) || !slices.Contains(m, k) {
						continue
					}
					g.samples[2]++
					best := math.Inf(1)
					for _, v := range n.at {
						best = min(best, v.Sub(q).Length())
					}
					g.corner = max(g.corner, best)
				}
			}
		}
	}
}

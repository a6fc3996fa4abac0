package probe

import (
	"math"
	"slices"

	"lostwood/parts/form"
)

// far stands for an end that is not there, and endless for all of a line.
const far, endless = 1e7, 2e7

func compile(v form.Volume) node {
	switch v := v.(type) {
	case form.Prism:
		return newPrism(v)
	case form.Revolved:
		return &turned{box: finite(form.Bounds(v)), shape: v, w: dirVec(v.Frame.W())}
	case form.Oval:
		return &oval{box: finite(form.Bounds(v)), shape: v}
	case form.Half:
		return &half{at: vecOf(v.At), n: dirVec(v.Normal), box: finite(form.Bounds(v))}
	case form.Union:
		return newMany(anyOf, []form.Volume(v))
	case form.Intersection:
		return newMany(allOf, []form.Volume(v))
	case form.Difference:
		return &cut{from: compile(v.From), by: newMany(anyOf, v.Cut)}
	}
	return newMany(anyOf, nil)
}

func dirVec(d form.Dir) vec { return vec{d.X, d.Y, d.Z} }

func finite(b form.Box) box {
	out := box{vecOf(b.Min), vecOf(b.Max)}
	for a := range 3 {
		out.lo[a], out.hi[a] = math.Max(out.lo[a], -far), math.Min(out.hi[a], far)
	}
	return out
}

// Combinations.

type mode int

const (
	anyOf mode = iota
	allOf
)

type many struct {
	how mode
	of  []node
	box box
}

func newMany(how mode, vs []form.Volume) *many {
	m := &many{how: how, box: box{vec{far, far, far}, vec{-far, -far, -far}}}
	if how == allOf {
		m.box.lo, m.box.hi = m.box.hi, m.box.lo
	}
	for _, v := range vs {
		n := compile(v)
		m.of = append(m.of, n)
		b := n.bounds()
		for a := range 3 {
			if how == anyOf {
				m.box.lo[a], m.box.hi[a] = math.Min(m.box.lo[a], b.lo[a]), math.Max(m.box.hi[a], b.hi[a])
			} else {
				m.box.lo[a], m.box.hi[a] = math.Max(m.box.lo[a], b.lo[a]), math.Min(m.box.hi[a], b.hi[a])
			}
		}
	}
	return m
}

func (m *many) bounds() box { return m.box }

func (m *many) cross(p, d vec, out []span) []span {
	if _, ok := m.box.clip(p, d); !ok {
		return out
	}
	var got []span
	for i, n := range m.of {
		if m.how == anyOf {
			if _, ok := n.bounds().clip(p, d); ok {
				got = union(got, n.cross(p, d, nil))
			}
			continue
		}
		one := n.cross(p, d, nil)
		if i == 0 {
			got = one
		} else {
			got = common(got, one)
		}
		if len(got) == 0 {
			return out
		}
	}
	return append(out, got...)
}

func (m *many) corners(to *[]box) {
	for _, n := range m.of {
		n.(interface{ corners(*[]box) }).corners(to)
	}
}

type cut struct {
	from node
	by   *many
}

func (c *cut) bounds() box { return c.from.bounds() }

func (c *cut) cross(p, d vec, out []span) []span {
	body := c.from.cross(p, d, nil)
	if len(body) == 0 {
		return out
	}
	return append(out, less(body, c.by.cross(p, d, nil))...)
}

func (c *cut) corners(to *[]box) {
	c.from.(interface{ corners(*[]box) }).corners(to)
	c.by.corners(to)
}

type half struct {
	at, n vec
	box   box
}

func (h *half) bounds() box { return h.box }

func (h *half) corners(to *[]box) { *to = append(*to, h.box) }

func (h *half) cross(p, d vec, out []span) []span {
	off, rate := dot(h.n, minus(p, h.at)), dot(h.n, d)
	switch {
	case math.Abs(rate) < 1e-12:
		if off <= 0 {
			return append(out, span{-far, far})
		}
		return out
	case rate > 0:
		return append(out, span{-far, -off / rate})
	}
	return append(out, span{-off / rate, far})
}

// A prism, its profile's edges made ready.
type prism struct {
	box      box
	o        vec
	u, v, w  vec
	from, to float64
	edges    []edge
}

// An edge is a line or an arc of a profile.
type edge struct {
	x0, y0, x1, y1 float64
	arc            bool
	cx, cy, r      float64
	start, sweep   float64
}

func newPrism(p form.Prism) *prism {
	n := &prism{
		box: finite(form.Bounds(p)), o: vecOf(p.Frame.Origin), u: dirVec(p.Frame.U), v: dirVec(p.Frame.V), w: dirVec(p.Frame.W()),
		from: math.Max(float64(p.From), -far), to: math.Min(float64(p.To), far),
	}
	for i, a := range p.Profile {
		n.edges = append(n.edges, newEdge(a, p.Profile[(i+1)%len(p.Profile)]))
	}
	return n
}

func newEdge(a, b form.Vertex) edge {
	e := edge{x0: float64(a.X), y0: float64(a.Y), x1: float64(b.X), y1: float64(b.Y)}
	if a.Bulge == 0 {
		return e
	}
	e.arc = true
	k := (1 - a.Bulge*a.Bulge) / (4 * a.Bulge)
	dx, dy := e.x1-e.x0, e.y1-e.y0
	e.cx, e.cy = (e.x0+e.x1)/2-k*dy, (e.y0+e.y1)/2+k*dx
	e.r = math.Hypot(e.x0-e.cx, e.y0-e.cy)
	e.start, e.sweep = math.Atan2(e.y0-e.cy, e.x0-e.cx), 4*math.Atan(a.Bulge)
	return e
}

func (n *prism) bounds() box { return n.box }

func (n *prism) corners(to *[]box) { *to = append(*to, n.box) }

func (n *prism) cross(p, d vec, out []span) []span {
	s, ok := n.box.clip(p, d)
	if !ok {
		return out
	}
	q := minus(p, n.o)
	px, py, pz := dot(n.u, q), dot(n.v, q), dot(n.w, q)
	dx, dy, dz := dot(n.u, d), dot(n.v, d), dot(n.w, d)
	if math.Abs(dz) < 1e-12 {
		if pz < n.from || pz > n.to {
			return out
		}
	} else {
		t0, t1 := (n.from-pz)/dz, (n.to-pz)/dz
		s.from, s.to = math.Max(s.from, math.Min(t0, t1)), math.Min(s.to, math.Max(t0, t1))
	}
	if s.from >= s.to {
		return out
	}
	if math.Hypot(dx, dy) < 1e-9 {
		if n.holds(px, py) {
			return append(out, s)
		}
		return out
	}
	var buf [16]float64
	ts := append(buf[:0], s.from, s.to)
	for i := range n.edges {
		ts = n.edges[i].meets(px, py, dx, dy, ts)
	}
	slices.Sort(ts)
	for i := 0; i+1 < len(ts); i++ {
		from, to := math.Max(ts[i], s.from), math.Min(ts[i+1], s.to)
		if to-from < 1e-9 {
			continue
		}
		m := (from + to) / 2
		if !n.holds(px+m*dx, py+m*dy) {
			continue
		}
		if k := len(out); k > 0 && from-out[k-1].to < 1e-9 {
			out[k-1].to = to
		} else {
			out = append(out, span{from, to})
		}
	}
	return out
}

// aside keeps a place that is asked about off the lines through corners, where
// left and right cannot be told.
const asideX, asideY = 1.1e-7, 0.7e-7

// holds reports whether a place lies within the profile: within the outline of
// the edges' chords, or else between an arc and its chord, but not both.
func (n *prism) holds(x, y float64) bool {
	x, y = x+asideX, y+asideY
	in := false
	for i := range n.edges {
		e := &n.edges[i]
		if (e.y0 > y) != (e.y1 > y) && x < e.x0+(y-e.y0)*(e.x1-e.x0)/(e.y1-e.y0) {
			in = !in
		}
		if !e.arc || math.Hypot(x-e.cx, y-e.cy) >= e.r {
			continue
		}
		if side := (e.x1-e.x0)*(y-e.y0) - (e.y1-e.y0)*(x-e.x0); side < 0 == (e.sweep > 0) {
			in = !in
		}
	}
	return in
}

// meets adds where a line in the profile's plane crosses the edge.
func (e *edge) meets(px, py, dx, dy float64, ts []float64) []float64 {
	if !e.arc {
		ex, ey := e.x1-e.x0, e.y1-e.y0
		det := dx*ey - dy*ex
		if math.Abs(det) < 1e-12 {
			return ts
		}
		qx, qy := e.x0-px, e.y0-py
		if k := (qx*dy - qy*dx) / det; k < -1e-9 || k > 1+1e-9 {
			return ts
		}
		return append(ts, (qx*ey-qy*ex)/det)
	}
	fx, fy := px-e.cx, py-e.cy
	a, b, c := dx*dx+dy*dy, fx*dx+fy*dy, fx*fx+fy*fy-e.r*e.r
	disc := b*b - a*c
	if disc < 0 {
		return ts
	}
	root := math.Sqrt(disc)
	for _, t := range [2]float64{(-b - root) / a, (-b + root) / a} {
		turn := math.Mod(math.Atan2(fy+t*dy, fx+t*dx)-e.start, 2*math.Pi)
		if e.sweep < 0 {
			turn = -turn
		}
		if turn < -1e-9 {
			turn += 2 * math.Pi
		}
		if turn <= math.Abs(e.sweep)+1e-9 {
			ts = append(ts, t)
		}
	}
	return ts
}

// A turned piece is stepped through.
type turned struct {
	box   box
	shape form.Revolved
	w     vec
}

func (n *turned) bounds() box { return n.box }

func (n *turned) corners(to *[]box) { *to = append(*to, n.box) }

const steps = 256

func (n *turned) cross(p, d vec, out []span) []span { return stepped(n.box, n.contains, p, d, out) }

// stepped goes along a line in steps, and finds where the answer changes.
func stepped(b box, contains func(vec) bool, p, d vec, out []span) []span {
	s, ok := b.clip(p, d)
	if !ok {
		return out
	}
	in := func(t float64) bool { return contains(vec{p[0] + t*d[0], p[1] + t*d[1], p[2] + t*d[2]}) }
	edge := func(a, b float64) float64 { // where the answer changes between a and b
		was := in(a)
		for range 40 {
			if m := (a + b) / 2; in(m) == was {
				a = m
			} else {
				b = m
			}
		}
		return (a + b) / 2
	}
	at, was := s.from, false
	begun := 0.0
	for i := range steps + 1 {
		t := s.from + (s.to-s.from)*(float64(i)+0.5)/(steps+1)
		if is := in(t); is != was {
			x := at
			if i > 0 {
				x = edge(at, t)
			}
			if is {
				begun = x
			} else {
				out = append(out, span{begun, x})
			}
			was = is
		}
		at = t
	}
	if was {
		out = append(out, span{begun, s.to})
	}
	return out
}

func (n *turned) contains(p vec) bool {
	f := n.shape.Frame
	q := minus(p, vecOf(f.Origin))
	x, y, z := dot(dirVec(f.U), q), dot(dirVec(f.V), q), dot(n.w, q)
	if turn := math.Atan2(y, x); float64(n.shape.Sweep) < 2*math.Pi-1e-9 {
		if turn < 0 {
			turn += 2 * math.Pi
		}
		if turn > float64(n.shape.Sweep) {
			return false
		}
	}
	return n.shape.Profile.Contains(form.Point{X: form.Length(math.Hypot(x, y)), Y: form.Length(z)})
}

func dot(a, b vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func minus(a, b vec) vec { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

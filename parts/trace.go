package parts

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// runsOut says whether the edge beyond the end of its straight stretch is the
// part's end, or falls away from the chamfer by straight stretches only.
func (c Chamfer) runsOut(s Sawn, end Length, way Length) bool {
	long, _, _ := s.Box()
	rest := long - end
	if way < 0 {
		rest = end
	}
	if rest < 1e-6 {
		return true
	}
	run, _ := c.Edge.longest(s)
	covered := Length(0)
	for _, st := range c.Edge.straights(s) {
		if (way > 0 && st.from >= end-1e-6) || (way < 0 && st.to <= end+1e-6) {
			covered += st.to - st.from
		}
	}
	if covered < rest-1e-6 {
		return false
	}
	return c.Edge.fallsAway(s, run, end, way, rest)
}

// fallsAway says whether the edge keeps on the wood's side of its straight
// stretch carried on.
func (a Arris) fallsAway(s Sawn, run straight, end, way, rest Length) bool {
	p, q := a.near(s, run.from, run.to, 0), a.near(s, run.from, run.to, 1)
	slopeY, slopeZ := (q.Y-p.Y)/(q.X-p.X), (q.Z-p.Z)/(q.X-p.X)
	const probes = 32
	for i := 1; i <= probes; i++ {
		e := a.at(s, end+way*rest*Length(i)/probes)
		dy := (e.Y - p.Y - slopeY*(e.X-p.X)) * a.inY()
		dz := (e.Z - p.Z - slopeZ*(e.X-p.X)) * a.inZ()
		if dy < -1e-7 || dz < -1e-7 {
			return false
		}
	}
	return true
}

// A gap is how wide a chamfer is on a face at a station, square to x.
type gap struct{ x, wide float64 }

// trace follows the chamfer's line on a face, from where it leaves the edge or
// the part's end to where it meets it again. Between two of its places it is straight.
func (c Chamfer) trace(b Body, f Face) []gap {
	s, halves := shapeOf(b), c.planes(b)
	xs := s.stations()
	var out []gap
	for i := 1; i < len(xs); i++ {
		for _, g := range c.stretch(s, f, halves, xs[i-1], xs[i]) {
			if n := len(out); n > 0 && g.x-out[n-1].x < 1e-9 {
				continue
			}
			out = append(out, g)
		}
	}
	return straightened(out)
}

// stretch is the part of the trace between two stations.
func (c Chamfer) stretch(s Sawn, f Face, halves []form.Half, from, to float64) []gap {
	n := len(halves)
	at, end := make([]float64, n), make([]float64, n)
	for i, h := range halves {
		at[i], end[i] = c.wide(s, f, h, from), c.wide(s, f, h, to)
	}
	ts := []float64{0, 1}
	for i := range n {
		ts = append(ts, at[i]/(at[i]-end[i]))
		for j := range i {
			ts = append(ts, (at[i]-at[j])/((at[i]-at[j])-(end[i]-end[j])))
		}
	}
	ts = slices.DeleteFunc(ts, func(t float64) bool { return !(t >= 0 && t <= 1) })
	slices.Sort(ts)
	var out []gap
	for _, t := range ts {
		least := math.Inf(1)
		for i := range n {
			least = math.Min(least, at[i]+t*(end[i]-at[i]))
		}
		if least > -1e-9 && n > 0 {
			out = append(out, gap{from + t*(to-from), math.Max(0, least)})
		}
	}
	if len(out) < 2 || out[len(out)-1].x-out[0].x < 1e-9 {
		return nil
	}
	return out
}

// wide is how far from the edge, on a face, one of the chamfer's planes is met.
func (c Chamfer) wide(s Sawn, f Face, h form.Half, x float64) float64 {
	step := form.Vec{Y: c.Edge.inY()}
	if f == c.Edge.Side {
		step = form.Vec{Z: c.Edge.inZ()}
	}
	away := h.Normal.Along(h.At.Minus(c.Edge.at(s, Length(x))))
	return float64(away / h.Normal.Along(step))
}

// straightened drops the places in the middle of a straight line.
func straightened(in []gap) []gap {
	var out []gap
	for i, g := range in {
		if i > 0 && i < len(in)-1 {
			a, b := in[i-1], in[i+1]
			if math.Abs((g.wide-a.wide)*(b.x-g.x)-(b.wide-g.wide)*(g.x-a.x)) < 1e-9*(b.x-a.x) {
				continue
			}
		}
		out = append(out, g)
	}
	return out
}

// place is a place of the trace in space.
func (c Chamfer) place(s Sawn, f Face, g gap) form.Vec {
	p := c.Edge.at(s, Length(g.x))
	if f == c.Edge.Side {
		p.Z += c.Edge.inZ() * Length(g.wide)
	} else {
		p.Y += c.Edge.inY() * Length(g.wide)
	}
	return p
}

// Marks is as in Feature: the chamfer's line on both its faces, with its
// stops, and across the corner of an end that it runs out at.
func (c Chamfer) Marks(b Body, f Face) []Mark {
	s := shapeOf(b)
	m := Mark{Ref: c.ID, Work: Chamfering, Stroke: Seen, Label: "chamfer"}
	switch {
	case f == c.Edge.Flat || f == c.Edge.Side:
		for _, g := range c.trace(b, f) {
			m.Path = append(m.Path, form.Vertex{Point: f.Frame(b).On(c.place(s, f, g))})
		}
	case f.isEnd():
		for _, on := range []Face{c.Edge.Flat, c.Edge.Side} {
			if g, ok := c.atEnd(b, on, f); ok {
				m.Path = append(m.Path, form.Vertex{Point: f.Frame(b).On(c.place(s, on, g))})
			}
		}
	}
	if len(m.Path) < 2 {
		return nil
	}
	return []Mark{m}
}

// atEnd is the trace's place on an end of the part, where it gets that far.
func (c Chamfer) atEnd(b Body, on, end Face) (g gap, ok bool) {
	t := c.trace(b, on)
	long, _, _ := b.Box()
	if len(t) == 0 {
		return gap{}, false
	}
	g = t[0]
	if end == SecondEnd {
		g = t[len(t)-1]
	}
	at := 0.0
	if end == SecondEnd {
		at = float64(long)
	}
	return g, math.Abs(g.x-at) < 1e-6 && g.wide > 1e-6
}

// removed is the wood that the chamfer takes off: its section square to x is a
// triangle, whose sides are the traces' widths. It is exact on a squared
// timber and on one that tapers to one side of the edge.
func (c Chamfer) removed(b Body) quantity.Volume {
	s, halves := shapeOf(b), c.planes(b)
	var xs []float64
	for _, f := range []Face{c.Edge.Flat, c.Edge.Side} {
		for _, g := range c.trace(b, f) {
			xs = append(xs, g.x)
		}
	}
	slices.Sort(xs)
	return quantity.Volume(integral(slices.Compact(xs), func(x float64) float64 {
		y, z := math.Inf(1), math.Inf(1)
		for _, h := range halves {
			y = math.Min(y, c.wide(s, c.Edge.Flat, h, x))
			z = math.Min(z, c.wide(s, c.Edge.Side, h, x))
		}
		return math.Max(0, y) * math.Max(0, z) / 2
	}))
}

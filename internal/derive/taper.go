package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/parts"
)

// A timber that is no plain box (a bolster that rises to its ends, a reach that
// tapers) is thinner at some bolts than its dimensions say. How much thinner
// comes from the part itself, so that its shape is told in one place.

// A fall is how far inside its box a timber's surface lies where a span meets
// it, as a linear function of the sizes that make the taper, about those it was
// last worked out for. The part's extents and the bolt's place change it too, but
// hardly, and must not seem to be told by it: they count in the next round only.
type fall struct {
	value  float64
	slopes []adjust.Partial
	about  []float64 // the unknowns' values, in the order of slopes
}

// A side is one side of one timber at one span.
type side struct {
	span *span
	at   *stop
	way  float64
}

// rounds is how often the falls are worked out anew; the sizes they hang on
// change by hundredths of a millimetre after the first.
const rounds = 3

// taper works out the falls and solves again, until they stay as they are.
func (n *network) taper(sol *adjust.Solution) (*adjust.Solution, error) {
	for range rounds {
		n.falls = n.allFalls(sol.X)
		if len(n.falls) == 0 {
			return sol, nil
		}
		n.problem.Start = sol.X
		var err error
		if sol, err = adjust.Solve(n.problem); err != nil {
			return nil, fmt.Errorf("the readings could not be brought together: %w", err)
		}
	}
	return sol, nil
}

// allFalls works out every fall that is not nothing.
func (n *network) allFalls(x []float64) map[side]fall {
	out := map[side]fall{}
	bodies := map[*member]parts.Sawn{}
	for _, m := range n.members {
		if m.part == nil || !m.placed() {
			continue
		}
		if b, ok := m.body(x); ok && !(b.Side.IsRectangle() && b.Plan.IsRectangle()) {
			bodies[m] = b
		}
	}
	for _, s := range n.spans {
		for i := range s.stops {
			b, ok := bodies[s.stops[i].member]
			if !ok || s.stops[i].along(s.axis) == 0 {
				continue
			}
			for _, way := range []float64{-1, 1} {
				k := side{s, &s.stops[i], way}
				if f, ok := n.fallOf(x, k, b); ok {
					out[k] = f
				}
			}
		}
	}
	return out
}

// fallOf works out one fall and how it changes with what it hangs on.
func (n *network) fallOf(x []float64, k side, b parts.Sawn) (fall, bool) {
	m := k.at.member
	station := m.own(x, 0, adjust.At(x, k.span.line[m.axes[0].of]))
	j := m.along(k.span.axis)
	here := m.inside(b, x, j, station.Value, k.way)
	if math.Abs(here) < 1e-6 {
		return fall{}, false
	}
	const step = 1e-3 // millimetres: small against any part, large against rounding
	t := adjust.Constant(here)
	moved := append([]float64(nil), x...)
	for _, d := range m.sizes {
		if d.axis != parts.NoAxis {
			continue // nor does where the bolt stands: see fall
		}
		moved[d.unknown] += step
		if c, ok := m.body(moved); ok {
			slope := (m.inside(c, moved, j, station.Value, k.way) - here) / step
			t = t.Plus(adjust.At(x, d.unknown).Minus(adjust.Constant(x[d.unknown])).Scaled(slope))
		}
		moved[d.unknown] = x[d.unknown]
	}
	f := fall{value: here, slopes: t.Slopes}
	for _, p := range t.Slopes {
		f.about = append(f.about, x[p.Unknown])
	}
	return f, true
}

// fall is how far inside its box a stop's surface lies at a span, on the side
// that looks that way along the stop's own axis.
func (n *network) fall(x []float64, s *span, p *stop, way float64) adjust.Term {
	f, ok := n.falls[side{s, p, way}]
	if !ok {
		return adjust.Constant(0)
	}
	t := adjust.Term{Value: f.value, Slopes: f.slopes}
	for i, q := range f.slopes {
		t.Value += q.Slope * (x[q.Unknown] - f.about[i])
	}
	return t
}

// body is a member's body at its present sizes, where they can be made.
func (m *member) body(x []float64) (parts.Sawn, bool) {
	ms := parts.Measures{Lengths: map[string]quantity.Length{}, Counts: m.part.Counts, Angles: m.part.Angles}
	for _, d := range m.sizes {
		ms.Lengths[d.name] = quantity.Length(x[d.unknown])
	}
	p, err := m.part.Kind.Build(ms)
	if err != nil || p.Validate() != nil {
		return parts.Sawn{}, false
	}
	b, ok := p.Stick().Body.(parts.Sawn)
	return b, ok
}

// inside is how far a body's surface lies inside its box at a station, at the
// beginning of the member's own axis j (way below 0) or at its end.
func (m *member) inside(b parts.Sawn, x []float64, j int, station, way float64) float64 {
	outline := b.Side
	if j == 1 {
		outline = b.Plan
	}
	wood := outline.Span(quantity.Length(min(max(station, 0), x[m.extent[0]])))
	if way < 0 {
		return wood.From.Millimetres()
	}
	return x[m.extent[j]] - wood.To.Millimetres()
}

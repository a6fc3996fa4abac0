package derive

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A bolt with no mark gives a window for its grip. Windows of one run are intersected
// first. Where nothing else tells the grip as well as the window does, its middle
// counts as a reading, every place in it as likely; elsewhere it is a bound, which
// says nothing while the grip lies inside.

// A window is what one bolt, or all of one run, allow.
type window struct {
	spans       []*span // of one run, the first of which has the observation
	low, high   quantity.Length
	edge        float64 // how sharp its edges are
	observation int
	as          windowUse
	kept        adjust.Observation // while it counts
}

// A windowUse is what became of a window.
type windowUse int

// What can become of one.
const (
	asReading  windowUse = iota // its middle counts as a reading
	idle                        // a bound, and the grip lies inside
	heldAtLow                   // a bound that holds the grip from being less
	heldAtHigh                  // or more
	shut                        // its bolts allow nothing together
)

// allow enters what a span's bolt allows.
func (n *network) allow(s *span, b *saying) {
	n.windows = append(n.windows, &window{spans: []*span{s}, low: b.least, high: b.most, edge: math.Max(b.windowEdge(), fixed.Millimetres())})
	n.said[s] = b
}

// windowEdge is how well the edges of a window are known: what the reading is worth
// beside its width.
func (b *saying) windowEdge() float64 {
	wide := float64(b.most-b.least) / (2 * math.Sqrt(3))
	return math.Sqrt(math.Max(0, float64(b.Doubt*b.Doubt)-wide*wide))
}

// intersect puts the windows of each run together and enters them.
func (n *network) intersect() {
	byRun := map[string]*window{}
	var out []*window
	for _, w := range n.windows {
		k := runOf(w.spans[0])
		first := byRun[k]
		if first == nil {
			byRun[k] = w
			out = append(out, w)
			continue
		}
		first.spans = append(first.spans, w.spans[0])
		first.low, first.high = max(first.low, w.low), min(first.high, w.high)
		first.edge = math.Max(first.edge, w.edge)
	}
	n.windows = out
	for _, w := range out {
		s := w.spans[0]
		if float64(w.low-w.high) > 3*w.edge {
			w.as, w.observation = shut, none
			continue
		}
		w.low = min(w.low, w.high)
		middle, doubt := (w.low+w.high)/2, math.Hypot(float64(w.high-w.low)/(2*math.Sqrt(3)), w.edge)
		b := n.said[s]
		n.observe(note{sort: gripRead, subject: s.id, what: "window", line: b.At.Line, known: quantity.FromIron, span: s, why: w.saysFrom(n.survey.Unit)},
			middle, quantity.Length(doubt), func(x []float64) adjust.Term { return n.length(x, s) })
		w.observation = len(n.notes) - 1
		w.kept = n.problem.Observations[w.observation]
	}
}

func (w *window) saysFrom(u quantity.Unit) string {
	return fmt.Sprintf("from %s to %s", quantity.Format(w.low, u), quantity.Format(w.high, u))
}

// runOf tells runs through the very same things apart from others.
func runOf(s *span) string {
	var b strings.Builder
	for i := range s.stops {
		fmt.Fprintf(&b, "%s %g|", s.stops[i].id, float64(s.stops[i].gap))
	}
	return b.String()
}

// settle decides what each window is, with the rest as it stands, and fits again.
func (n *network) settle() (*adjust.Solution, error) {
	var at []int
	for _, w := range n.windows {
		if w.observation != none {
			at = append(at, w.observation)
			n.problem.Observations[w.observation] = w.kept
		}
	}
	rest, err := adjust.Solve(adjust.Without(n.problem, at...))
	if err != nil || len(at) == 0 {
		return rest, err
	}
	var bounds []adjust.Bound
	var bounding []*window
	var off []int
	for _, w := range n.windows {
		if w.observation == none {
			continue
		}
		w.as = asReading
		if rest.DoubtOf(w.kept.Model(rest.X)) < w.kept.Doubt {
			bounding = append(bounding, w)
			off = append(off, w.observation)
			bounds = append(bounds, adjust.Bound{Low: w.low.Millimetres(), High: w.high.Millimetres(), Doubt: w.edge, Model: w.kept.Model})
		}
	}
	_, sides, err := adjust.SolveBounded(adjust.Without(n.problem, off...), bounds)
	if err != nil {
		return nil, err
	}
	var out []int
	for i, w := range bounding {
		o := w.kept
		o.Doubt = w.edge
		switch sides[i] {
		case adjust.AtLow:
			w.as, o.Value = heldAtLow, w.low.Millimetres()
		case adjust.AtHigh:
			w.as, o.Value = heldAtHigh, w.high.Millimetres()
		default:
			w.as = idle
			out = append(out, w.observation)
		}
		n.problem.Observations[w.observation] = o
	}
	n.problem = adjust.Without(n.problem, out...)
	return adjust.Solve(n.problem)
}

// windowFindings tells of windows that hold something, and of bolts that allow
// nothing together.
func (a *assembly) windowFindings() {
	u := a.vehicle.Unit
	for _, w := range a.network.windows {
		line := w.spans[0].fastening.At.Line
		switch w.as {
		case shut:
			a.find(vehicle.Contradiction, w.spans[0].id, line, fmt.Sprintf(
				"The bolts of %s go through the same things, but what they allow does not meet: one would have it %s at the least, another %s at the most. One of the bolts, or its nut, is of another place; neither was counted.",
				list(w.names()), quantity.Format(w.low, u), quantity.Format(w.high, u)))
		case heldAtLow, heldAtHigh:
			a.find(vehicle.Advice, w.spans[0].id, line, w.words(u))
		}
	}
}

func (w *window) names() []string {
	var names []string
	for _, s := range w.spans {
		names = append(names, "fastening "+s.id)
	}
	return names
}

// words say what a window did.
func (w *window) words(u quantity.Unit) string {
	name, from := list(w.names()), quantity.Format(w.low, u)+" to "+quantity.Format(w.high, u)
	bolts := "bolt of " + name + " allows"
	if len(w.spans) > 1 {
		bolts = "bolts of " + name + " together allow"
	}
	switch w.as {
	case heldAtLow:
		return fmt.Sprintf("The %s %s. All else would have it thinner than that, and is held there: look at that bolt's thread again.", bolts, from)
	case heldAtHigh:
		return fmt.Sprintf("The %s %s. All else would have it thicker than that, and is held there: look at that bolt's length again.", bolts, from)
	case asReading:
		return fmt.Sprintf("The %s %s, and nothing else tells it better.", bolts, from)
	}
	return fmt.Sprintf("The %s %s; it lies inside, so that bounds nothing here.", bolts, from)
}

// bounds tells of the windows of all that passes a timber the way a size lies.
func (st *Study) bounds(t target) []string {
	var out []string
	for _, w := range st.network.windows {
		if w.observation == none {
			continue
		}
		meets := slices.ContainsFunc(w.spans, func(s *span) bool {
			return s.stopOf(t.member) != none && moves(t.term, t.member.extent[t.member.along(s.axis)])
		})
		if meets {
			out = append(out, w.words(st.Vehicle.Unit))
		}
	}
	return out
}

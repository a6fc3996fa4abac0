package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
)

// A closure is what must hold together in a wheel on its axle: it ties figures
// that were read apart from each other.
type closure struct {
	member      *member
	kind        closureKind
	figures     string // "the arm and its box at the collar"
	observation int
}

// A closureKind says what is tied.
type closureKind int

// The closures.
const (
	armInBox   closureKind = iota // the arm's two diameters and the box's bores
	plumbSpoke                    // the arm's fall and the dish
	trackTrue                     // track, shoulders, nave, box and dish
)

// How well each holds, one standard uncertainty (common practice, no source).
const (
	boxPlay   = quantity.Inch / 32 // of the arm in its box
	boxWithin = quantity.Inch / 32
	plumbTo   = .009 // half a degree, in a unit's length of the arm
	trackTo   = quantity.Inch / 8
)

// wheelCloses enters what must hold of a wheel on its axle.
func (n *network) wheelCloses(m *member) {
	enter := func(k closureKind, figures, what string, value, doubt quantity.Length, model func(x []float64) adjust.Term) {
		n.closures = append(n.closures, closure{m, k, figures, len(n.notes)})
		n.observe(note{
			sort: stated, subject: m.id, what: m.id + ": " + what, line: m.wheel.At.Line, known: quantity.TradeRule, member: m,
		}, value, doubt, model)
	}
	for _, s := range [][3]string{{"arm-collar", "box-large", "collar"}, {"arm-point", "box-small", "point"}} {
		enter(armInBox, "the arm and its box at the "+s[2], "the arm runs in its box", -boxPlay, boxWithin, func(x []float64) adjust.Term {
			return m.of(x, s[0]).Minus(m.of(x, s[1]))
		})
	}
	const arm = 200 // millimetres: how long an arm is, about
	enter(plumbSpoke, "the cant of the arm and the dish, for a plumb bottom spoke,", "the bottom spoke stands plumb", 0, plumbTo*arm, func(x []float64) adjust.Term {
		lean := m.stands(x).Over(m.spokeLong(x))
		return m.of(x, "arm-fall").Minus(m.of(x, "arm-long").Times(lean))
	})
	if m.size("track") == none {
		return
	}
	enter(trackTrue, "the track, the axle's shoulders, the nave, its box and the dish", "the track is what the axle and the wheels come to", 0, trackTo, func(x []float64) adjust.Term {
		return m.of(x, "track").Minus(m.trackByAxle(x))
	})
}

// trackByAxle is from middle to middle of two such wheels' tyres on the ground.
func (m *member) trackByAxle(x []float64) adjust.Term {
	sin := m.of(x, "arm-fall").Over(m.of(x, "arm-long"))
	cos := adjust.Constant(1).Minus(sin.Times(sin)).Sqrt()
	collar := m.of(x, "nave-forward").Minus(m.of(x, "nave-long")).Plus(m.of(x, "box-in"))
	tread := m.of(x, "radius").Plus(m.of(x, "tyre-thick"))
	half := m.stands(x).Minus(collar).Times(cos).Minus(tread.Times(sin))
	return m.of(x, "shoulders").Plus(half.Scaled(2))
}

// misclosed is from how many standard uncertainties a closure contradicts.
const misclosed = 3.0

// A misclosure is how far a closure is from closing when all else is adjusted
// without it.
type misclosure struct {
	closure
	by, doubt quantity.Length
}

// misclosures works out every closure of the wheels from evidence that does not
// hold it for granted. One that only rules of the trade bear on says nothing and is left out.
// The adjustment x is where the search begins.
func (n *network) misclosures(x []float64) ([]misclosure, error) {
	var out []misclosure
	for k := armInBox; k <= trackTrue; k++ {
		var without []int
		for _, c := range n.closures {
			if c.kind == k && n.closureRead(c) {
				without = append(without, c.observation)
			}
		}
		if len(without) == 0 {
			continue
		}
		p := adjust.Without(n.problem, without...)
		p.Start = x
		sol, err := adjust.Solve(p)
		if err != nil {
			return nil, fmt.Errorf("the closures of the wheels could not be worked out: %w", err)
		}
		for _, c := range n.closures {
			if c.kind != k || !n.closureRead(c) {
				continue
			}
			o := n.problem.Observations[c.observation]
			t := o.Model(sol.X)
			doubt := quantity.Length(math.Hypot(sol.DoubtOf(t), o.Doubt))
			if !math.IsInf(float64(doubt), 0) {
				out = append(out, misclosure{c, quantity.Length(t.Value - o.Value), doubt})
			}
		}
	}
	return out, nil
}

// closureRead reports whether the survey gives what a closure ties, so that it is
// more than one rule beside another.
func (n *network) closureRead(c closure) bool {
	says := c.member.wheel.Part.Speaks
	switch c.kind {
	case armInBox:
		return says("arm-collar") && says("box-large") || says("arm-point") && says("box-small")
	case plumbSpoke:
		return says("arm-fall") && (says("dish") || says("offset"))
	}
	return says("track") && c.member.wheel.Axle.ID != ""
}

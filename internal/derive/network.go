package derive

import (
	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A sort is what an observation is.
type sort int

// The sorts of observation: readings first, then what is taken for granted.
const (
	sizeRead sort = iota
	holeRead
	gripRead
	clipRead
	shearRead
	pointRead
	stated
	touching // neighbours in a run touch
	inLine   // a hole lies on its fastening's line
	central  // a fastening on the middle line of its timber
	twin     // near and off alike
	inRow    // one of a row like the next
	midway   // what lies across stands on the middle line of the vehicle
	ofWheel  // a wheel has the sizes of its irons and felloes, or of its twin
	frame    // what fixes the frame
)

// assumed reports whether an observation of this sort is an assumption.
func (s sort) assumed() bool { return s >= touching }

// A note says what an observation was, for words.
type note struct {
	sort    sort
	subject string // member or fastening
	what    string // "hole 3", "thick", the statement's text
	line    int
	known   quantity.Known
	member  *member
	hole    int       // of sort holeRead, from 0
	speaks  []*member // of a statement: whatever else it speaks of
	span    *span     // of a grip or a bruise
	why     string    // why a reading's doubt is what it is, where that is to be told
}

// An unknown is what the adjustment looks for.
type unknown struct {
	member *member
	span   *span  // of a fastening's line
	what   string // "deep", "hole 3", "x"
	place  bool   // whether it is a place rather than a size
}

// A network is a survey turned into unknowns and observations.
type network struct {
	survey   *survey.Survey
	index    survey.Index
	members  []*member
	families map[string][]*member
	byID     map[string]*member
	spans    []*span
	unknowns []unknown
	notes    []note // one for each observation
	problem  adjust.Problem
	commons  []common // one for each common error of problem
	lasting  map[*survey.Instrument]lasting
	windows  []*window
	said     map[*span]*saying
	closures []closure
	found    bool          // something was named as contradicting
	season   *season       // nil where the survey does not say how damp the wood was
	falls    map[side]fall // where timbers are no plain boxes, once sizes are about known
}

func newNetwork(s *survey.Survey) *network {
	n := &network{
		survey: s, index: s.Index(), families: map[string][]*member{}, byID: map[string]*member{},
		lasting: map[*survey.Instrument]lasting{}, said: map[*span]*saying{},
	}
	for i := range s.Irons {
		n.addIron(&s.Irons[i])
	}
	for i := range s.Parts {
		n.addPart(&s.Parts[i])
	}
	for i := range s.Fastenings {
		n.addFastening(&s.Fastenings[i])
	}
	for i := range s.Wheels {
		n.addWheel(&s.Wheels[i])
	}
	n.wheelTwins()
	n.fixFrame()
	for i := range s.Evidence {
		n.state(&s.Evidence[i], stated)
	}
	n.intersect()
	return n
}

func (n *network) unknown(m *member, what string, start quantity.Length) int {
	n.unknowns = append(n.unknowns, unknown{member: m, what: what})
	n.problem.Start = append(n.problem.Start, start.Millimetres())
	return len(n.unknowns) - 1
}

func (n *network) observe(t note, value, doubt quantity.Length, model func(x []float64) adjust.Term) {
	n.notes = append(n.notes, t)
	n.problem.Observations = append(n.problem.Observations, adjust.Observation{
		Value: value.Millimetres(), Doubt: doubt.Millimetres(), Model: model,
	})
}

// read observes an unknown directly.
func (n *network) read(t note, r survey.Reading, u int) {
	t.line = r.At.Line
	n.observe(t, r.Value, r.Doubt, func(x []float64) adjust.Term { return adjust.At(x, u) })
	n.by(r)
}

func (n *network) join(m *member) {
	n.members = append(n.members, m)
	n.families[m.base] = append(n.families[m.base], m)
	n.byID[m.id] = m
}

// setOut gives a member its place's unknowns.
func (n *network) setOut(m *member) {
	for a, s := range [3]string{"x", "y", "z"} {
		m.at[a] = n.unknown(m, s, 0)
		n.unknowns[m.at[a]].place = true
	}
}

// addPart enters a timber, or a pair, or a row of them.
func (n *network) addPart(p *survey.Part) {
	rows := max(p.Number, 1)
	if p.Runs == vehicle.Round {
		n.addRound(p)
		return
	}
	shared := n.sharedSizes(p)
	for row := range rows {
		for _, hand := range hands(p.Sides) {
			m := &member{
				id: memberID(p.ID, hand, row, rows), base: p.ID, row: row, hand: hand, part: p,
				run: p.Runs, axes: axesOf(p.Runs, hand, none), extent: [3]int{none, none, none},
			}
			for _, d := range p.Kind.Dimensions {
				if d.Axis == parts.NoAxis {
					continue
				}
				j := int(d.Axis) - 1
				m.extent[j] = n.unknown(m, d.Name, 0)
				m.sizes = append(m.sizes, named{d.Name, d.Axis, m.extent[j]})
			}
			m.sizes = append(m.sizes, shared...)
			n.setOut(m)
			n.join(m)
		}
	}
	for _, d := range shared {
		n.unknowns[d.unknown].member = n.families[p.ID][0]
	}
	n.stateSizes(p)
	n.alike(p.ID, p.Sides, p.Runs, p.At.Line)
}

// addRound enters the timbers of a rim: one stands for all, and has no place.
func (n *network) addRound(p *survey.Part) {
	m := &member{
		id: p.ID, base: p.ID, part: p, run: p.Runs,
		at: [3]int{none, none, none}, extent: [3]int{none, none, none},
	}
	for _, d := range p.Kind.Dimensions {
		if d.In != parts.InLength || d.Need == parts.Optional && !p.Speaks(d.Name) && !n.spokenOf(p.ID, d.Name) {
			continue
		}
		u := n.unknown(m, d.Name, 0)
		m.sizes = append(m.sizes, named{d.Name, d.Axis, u})
		if d.Axis != parts.NoAxis {
			m.extent[d.Axis-1] = u
		}
	}
	if m.extent[2] == none { // from back to belly: what a tyre bolt goes through
		m.extent[2] = m.size("deep")
	}
	n.join(m)
	n.stateSizes(p)
}

// sharedSizes are the dimensions that are no extents: all of a family have the same.
func (n *network) sharedSizes(p *survey.Part) []named {
	var out []named
	for _, d := range p.Kind.Dimensions {
		if d.Axis != parts.NoAxis || d.In != parts.InLength {
			continue
		}
		if d.Need == parts.Optional && !p.Speaks(d.Name) && !n.spokenOf(p.ID, d.Name) {
			continue
		}
		out = append(out, named{d.Name, d.Axis, n.unknown(nil, d.Name, 0)})
	}
	return out
}

// spokenOf reports whether any statement speaks of a part's dimension.
func (n *network) spokenOf(id, dimension string) bool {
	for _, e := range n.survey.Evidence {
		for _, t := range e.Terms {
			if t.Feature == dimension && n.family(t.Thing) == id {
				return true
			}
		}
	}
	return false
}

// stateSizes enters the dimensions that were given with a part, once for its family.
func (n *network) stateSizes(p *survey.Part) {
	for i := range p.Stated {
		st := &p.Stated[i]
		m := n.families[p.ID][0]
		u := m.size(st.Terms[0].Feature)
		if u == none {
			continue
		}
		n.observe(note{sort: stated, subject: p.ID, what: st.Text, line: st.At.Line, known: st.Known, member: m},
			-st.Constant, st.Doubt, func(x []float64) adjust.Term { return adjust.At(x, u) })
	}
}

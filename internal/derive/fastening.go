package derive

import (
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// A span is one fastening in its place: one of a row, on one side.
type span struct {
	fastening *survey.Fastening
	id        string
	row       int
	hand      vehicle.Hand
	axis      int     // the vehicle's axis it lies on
	sign      float64 // the way from head to nut
	line      [3]int  // unknowns of its line on the vehicle's axes; none on its own
	stops     []stop
	grip      *survey.Reading
}

// A stop is one thing that a fastening goes through.
type stop struct {
	*member
	hole int // of an iron, from 0; none for a timber, which is bored where the line falls
	gap  quantity.Length
	// gapDoubt is that of gap: what was let in or left open was itself measured.
	gapDoubt quantity.Length
	worn     quantity.Length
	let      *let // how this stop and the one before it are let into each other
}

// A let is a housing: how deep, and which of the two is cut.
type let struct {
	depth quantity.Length
	into  *member
	other *member
}

// heading gives the vehicle's axis of a direction and its sign, on one side.
func heading(d survey.Direction, hand vehicle.Hand) (int, float64) {
	inward := -1.0
	if hand == vehicle.Off {
		inward = 1
	}
	switch d {
	case survey.Up:
		return 2, 1
	case survey.Inward:
		return 1, inward
	case survey.Outward:
		return 1, -inward
	case survey.Hindward:
		return 0, -1
	case survey.Forward:
		return 0, 1
	}
	return 2, -1
}

// addFastening enters every fastening of a row and its two sides.
func (n *network) addFastening(f *survey.Fastening) {
	rows := max(f.Number, 1)
	for row := range rows {
		for _, hand := range hands(f.Sides) {
			s := &span{fastening: f, row: row, hand: hand, line: [3]int{none, none, none}}
			s.id = spanID(f, row, rows, hand)
			s.axis, s.sign = heading(f.Direction, hand)
			n.goThrough(s)
			n.spans = append(n.spans, s)
			if s.stops[0].placed() {
				n.place(s)
			}
			n.gripOf(s)
		}
	}
}

func spanID(f *survey.Fastening, row, rows int, hand vehicle.Hand) string {
	id := f.ID
	if rows > 1 {
		id = fmt.Sprintf("%s.%d", id, row+1)
	}
	if hand != vehicle.Alike {
		id += " " + hand.String()
	}
	return id
}

// goThrough finds the members that one span goes through.
func (n *network) goThrough(s *span) {
	var gap, gapDoubt quantity.Length
	var pending *survey.Step
	for i := range s.fastening.Through {
		st := &s.fastening.Through[i]
		switch {
		case st.Gap != nil:
			gap, gapDoubt = gap+st.Gap.Value, quantity.Length(hypot(gapDoubt, st.Gap.Doubt))
			continue
		case st.Let != nil:
			gap, gapDoubt = gap-st.Let.Value, quantity.Length(hypot(gapDoubt, st.Let.Doubt))
			pending = st
			continue
		}
		m := n.member(st.Thing, s.row, s.hand)
		p := stop{member: m, hole: none, gap: gap, gapDoubt: gapDoubt, worn: st.Worn}
		if m.iron != nil && len(st.Holes) > 0 {
			p.hole = st.Holes[min(s.row, len(st.Holes)-1)] - 1
			if s.hand == vehicle.Off && m.hand == vehicle.Alike {
				p.hole = len(m.holes) - 1 - p.hole
			}
		}
		p.gapDoubt = quantity.Length(hypot(p.gapDoubt, m.stepDoubt(p.hole)))
		if pending != nil && len(s.stops) > 0 {
			before := s.stops[len(s.stops)-1].member
			p.let = &let{depth: pending.Let.Value, into: before, other: m}
			if n.family(pending.Into) == m.base {
				p.let.into, p.let.other = m, before
			}
		}
		pending, gap, gapDoubt = nil, 0, 0
		s.stops = append(s.stops, p)
	}
}

// member finds the one of a family that a name means, in a row and on a side
// where the name leaves them open.
func (n *network) member(name string, row int, hand vehicle.Hand) *member {
	t, ok := n.index.Find(name)
	if !ok {
		return n.members[0]
	}
	if t.Row > 0 {
		row = t.Row - 1
	}
	if t.Side != vehicle.Alike {
		hand = t.Side
	}
	f := n.families[t.ID()]
	for _, m := range f {
		if (m.hand == hand || m.hand == vehicle.Alike) && (m.row == row || rowsOf(f) == 1) {
			return m
		}
	}
	return f[0]
}

func rowsOf(f []*member) int { return f[len(f)-1].row + 1 }

// place enters a span's line, its contacts and its holes.
func (n *network) place(s *span) {
	for _, a := range others(s.axis) {
		n.unknowns = append(n.unknowns, unknown{span: s, what: [3]string{"x", "y", "z"}[a], place: true})
		n.problem.Start = append(n.problem.Start, 0)
		s.line[a] = len(n.unknowns) - 1
	}
	d := &n.survey.Doubts
	for i := range s.stops {
		p := &s.stops[i]
		if i > 0 {
			b := &s.stops[i-1]
			n.observe(note{sort: touching, subject: s.id, what: b.id + " and " + p.id, line: s.fastening.At.Line, known: quantity.FromIron},
				p.gap, quantity.Length(hypot(d.Contact.Doubt, p.gapDoubt)), func(x []float64) adjust.Term { return n.enters(x, s, p).Minus(n.leaves(x, s, b)).Scaled(s.sign) })
		}
		if p.hole != none {
			n.lineUp(s, p)
		} else if p.part != nil && p.part.Centred == survey.Central {
			n.centre(s, p)
		}
	}
}

// lineUp holds an iron's hole to the span's line, both ways across it.
func (n *network) lineUp(s *span, p *stop) {
	for _, a := range others(s.axis) {
		doubt := quantity.Length(hypot(n.survey.Doubts.Play.Doubt, p.worn))
		n.observe(note{sort: inLine, subject: s.id, what: fmt.Sprintf("%s hole %d", p.id, p.hole+1), line: s.fastening.At.Line, known: quantity.FromIron, member: p.member, hole: p.hole},
			0, doubt, func(x []float64) adjust.Term {
				return p.member.hole(x, p.hole, a).Minus(adjust.At(x, s.line[a]))
			})
	}
}

// centre takes a fastening to lie on the middle line of its timber.
func (n *network) centre(s *span, p *stop) {
	for _, a := range others(s.axis) {
		if p.along(a) == 0 {
			continue
		}
		n.observe(note{sort: central, subject: s.id, what: p.id, line: s.fastening.At.Line, known: quantity.TradeRule, member: p.member},
			0, n.survey.Doubts.Centre.Doubt, func(x []float64) adjust.Term {
				return p.middle(x, a).Minus(adjust.At(x, s.line[a]))
			})
	}
}

// enters and leaves are where the span's line meets a stop, on the span's axis.
func (n *network) enters(x []float64, s *span, p *stop) adjust.Term {
	return n.meets(x, s, p, -s.sign)
}

func (n *network) leaves(x []float64, s *span, p *stop) adjust.Term {
	return n.meets(x, s, p, s.sign)
}

// meets is where the span's line meets the side of a stop that looks that way
// along the vehicle's axis.
func (n *network) meets(x []float64, s *span, p *stop, way float64) adjust.Term {
	box := p.high(x, s.axis)
	if way < 0 {
		box = p.low(x, s.axis)
	}
	if step := p.stepped(p.hole, s.axis); step != 0 {
		box = box.Plus(adjust.Constant(step))
	}
	return box.Minus(n.fall(x, s, p, way*p.axes[p.along(s.axis)].sign).Scaled(way))
}

// length is the span's grip: from where it enters the first thing to where it
// leaves the last. In a wheel it is the sum of the thicknesses.
func (n *network) length(x []float64, s *span) adjust.Term {
	if s.stops[0].placed() {
		return n.leaves(x, s, &s.stops[len(s.stops)-1]).Minus(n.enters(x, s, &s.stops[0])).Scaled(s.sign)
	}
	sum := adjust.Constant(0)
	for i := range s.stops {
		sum = sum.Plus(adjust.At(x, s.stops[i].extent[2])).Plus(adjust.Constant(s.stops[i].gap.Millimetres()))
	}
	return sum
}

// gripOf enters what was read of the span's bolt or clip.
func (n *network) gripOf(s *span) {
	f := s.fastening
	side := 0
	if s.hand == vehicle.Off {
		side = 1
	}
	if s.row < len(f.Grips) && side < len(f.Grips[s.row]) && f.Grips[s.row][side].Value > 0 {
		n.gripped(s, &saying{Reading: f.Grips[s.row][side]})
	} else if b := boltOf(f, s.row, side); b != nil {
		if said := n.saysOf(b, f.What); said != nil {
			n.gripped(s, said)
		}
	}
	n.shearsOf(s)
	if f.Inside != nil && s.row == 0 && side == 0 {
		n.clasp(s, f.Inside)
	}
}

// boltOf is the bolt of one fastening of a row and side, where the survey tells of it:
// its own, or the one bolt that is told of, which is the first.
func boltOf(f *survey.Fastening, row, side int) *survey.Bolt {
	switch {
	case row < len(f.Bolts) && side < len(f.Bolts[row]):
		return f.Bolts[row][side]
	case row == 0 && side == 0:
		return f.Bolt
	}
	return nil
}

// gripped enters what a span's bolt says of what it goes through.
func (n *network) gripped(s *span, b *saying) {
	s.grip = &b.Reading
	if b.window {
		n.allow(s, b)
		return
	}
	t := note{sort: gripRead, subject: s.id, what: "grip", line: s.fastening.At.Line, known: quantity.FromIron, span: s, why: b.why}
	if b.At.Line > 0 {
		t.line = b.At.Line
	}
	n.observe(t, b.Value, b.Doubt, func(x []float64) adjust.Term { return n.length(x, s) })
	o := &n.problem.Observations[len(n.notes)-1]
	o.Sources = append(o.Sources, b.sources...)
	n.by(b.Reading)
}

// clasp enters a clip's width: that of the first timber it goes round, across its grain.
func (n *network) clasp(s *span, inside *survey.Reading) {
	for i := range s.stops {
		p := &s.stops[i]
		if p.part == nil || !p.placed() {
			continue
		}
		for _, a := range others(s.axis) {
			if j := p.along(a); j != 0 {
				n.read(note{sort: clipRead, subject: s.id, what: "clip", known: quantity.FromIron, member: p.member}, *inside, p.extent[j])
				return
			}
		}
	}
}

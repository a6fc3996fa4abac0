package derive

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A reading is one that could still be taken.
type reading struct {
	says  string // "hole 3 of the off hind plate, with a rule"
	asks  string // what it tells, where that is a size of its own: "how long the seat board is"
	of    string // what it is read of, for holes: those of one iron are read together
	where vehicle.Where
	term  adjust.Term
	doubt float64 // what it is worth
	again int     // the observation whose place it takes, read better; none for a new one
	line  int
	write string
}

// calliperReach is the longest that is read with callipers: the common workshop
// sizes open no farther (common practice, no source).
const calliperReach = 12 * quantity.Inch

// byHand is an instrument a survey counts on.
type byHand struct {
	name  string
	doubt quantity.Length
}

// instrument is what a size of an iron is usually read with.
func (n *network) instrument(size string, value quantity.Length) byHand {
	switch size {
	case "thick", "wide", "mouth", "inside":
		if value <= calliperReach {
			return byHand{"callipers", n.survey.Doubts.Callipers.Doubt}
		}
	}
	return byHand{"a rule", n.survey.Doubts.Rule.Doubt}
}

// better is the finest instrument that a length can be read with.
func (n *network) better(value quantity.Length) byHand {
	if value <= calliperReach {
		return byHand{"callipers", n.survey.Doubts.Callipers.Doubt}
	}
	return byHand{"a rule", n.survey.Doubts.Rule.Doubt}
}

// untaken lists the readings that could still be taken, in the survey's order.
func (st *Study) untaken() []reading {
	var out []reading
	taken := st.takenReadings()
	for _, m := range st.network.members {
		if m.iron != nil {
			out = append(out, st.untakenOf(m, taken)...)
		}
	}
	for _, s := range st.network.spans {
		if r, ok := st.gripOf(s); ok {
			out = append(out, r)
		}
	}
	out = append(out, st.again()...)
	for _, f := range st.network.survey.Parts {
		out = append(out, st.ofTimber(st.network.families[f.ID][0])...)
	}
	return out
}

// takenReadings are the sizes and holes of irons that were read.
func (st *Study) takenReadings() map[string]bool {
	out := map[string]bool{}
	for _, t := range st.network.notes {
		if t.sort == sizeRead || t.sort == holeRead {
			out[t.member.id+"."+t.what] = true
		}
	}
	return out
}

// untakenOf are the sizes and holes of one iron that were not read: of the off
// one of a pair, of the others of a row, or at all.
func (st *Study) untakenOf(m *member, taken map[string]bool) []reading {
	var out []reading
	add := func(what, says, of string, by byHand, u int, write string) {
		if taken[m.id+"."+what] || !m.placed() {
			return
		}
		out = append(out, reading{
			says: fmt.Sprintf("%s, with %s", says, by.name), of: of, term: adjust.At(st.fit.X, u), doubt: by.doubt.Millimetres(),
			again: none, line: m.iron.At.Line, write: write,
		})
	}
	for _, d := range m.sizes {
		by := st.network.instrument(d.name, quantity.Length(st.fit.X[d.unknown]))
		add(d.name, asks(m, d.name), "", by, d.unknown, st.writeSize(m, d.name, by))
	}
	for k, u := range m.holes {
		by := byHand{"a rule", st.network.survey.Doubts.Rule.Doubt}
		add(fmt.Sprintf("hole %d", k+1), fmt.Sprintf("hole %d of %s", k+1, the(m)), m.id, by, u, st.writeHole(m, k, by))
	}
	return out
}

// writeSize says where in the survey a size of an iron is written.
func (st *Study) writeSize(m *member, size string, by byHand) string {
	switch {
	case m.row == 0 && m.hand != vehicle.Off:
		return fmt.Sprintf("in its line: %s = \"...\"", size)
	case m.row == 0:
		return fmt.Sprintf("in its line: off = { %s = \"...\" }", size)
	}
	return st.stateSize(m, size, by)
}

// stateSize says how a size of an iron is written as a statement.
func (st *Study) stateSize(m *member, size string, by byHand) string {
	return fmt.Sprintf("under [evidence], iron: \"%s.%s = ... ± %s\"", m.id, size, figure(by.doubt, st.Vehicle.Unit))
}

// writeHole says where in the survey a hole of an iron is written.
func (st *Study) writeHole(m *member, k int, by byHand) string {
	if m.row == 0 && m.hand == vehicle.Off {
		return "in its line: off = { holes = [ all of them ] }"
	}
	return st.stateHole(m, k, by)
}

// stateHole says how a hole of an iron is written as a statement.
func (st *Study) stateHole(m *member, k int, by byHand) string {
	from := [3]string{"x = " + m.id + ".fore - ", "y = " + m.id + ".near - ", "z = " + m.id + ".under + "}[m.axes[0].of]
	return fmt.Sprintf("under [evidence], iron: \"%s#%d.%s... ± %s\"", m.id, k+1, from, figure(by.doubt, st.Vehicle.Unit))
}

// figure is a doubt as a survey writes it, without its unit where that is the survey's own.
func figure(l quantity.Length, u quantity.Unit) string {
	switch u {
	case quantity.Inches:
		return quantity.Fraction(l, 64)
	case quantity.Feet:
		return quantity.Fraction(l, 64) + " in"
	}
	return strings.TrimSuffix(quantity.Format(l, u), " "+u.String())
}

// gripOf is a fastening's grip that was not read, where it has one.
func (st *Study) gripOf(s *span) (reading, bool) {
	if s.grip != nil || s.fastening.What == "screw" {
		return reading{}, false
	}
	by := st.network.survey.Doubts.Grip.Doubt
	return reading{
		says: fmt.Sprintf("the grip of %s, head to nut", fasteningWords(s)), term: st.network.length(st.fit.X, s),
		doubt: by.Millimetres(), again: none, line: s.fastening.At.Line, write: "in its lines: grip",
	}, true
}

// fasteningWords names one fastening of a row and side: by its name, where it has one.
func fasteningWords(s *span) string {
	if s.fastening.Name != "" {
		return strings.TrimSpace(fmt.Sprintf("the %s %s", s.hand, lower(s.fastening.Name)))
	}
	return "fastening " + s.id
}

// again lists the readings that a finer instrument would better, and grips that
// were worked out from a bolt and can be read from a mark.
func (st *Study) again() []reading {
	var out []reading
	n := st.network
	for i, t := range n.notes {
		o := n.problem.Observations[i]
		value, was := quantity.Length(o.Value), quantity.Length(o.Doubt)
		var by byHand
		switch t.sort {
		case sizeRead, holeRead, clipRead:
			by = n.better(value)
		case gripRead:
			by = byHand{"the mark of its nut", n.survey.Doubts.Grip.Doubt}
		default:
			continue
		}
		if st.setAside(i) || by.doubt <= 0 {
			continue
		}
		if by.doubt >= was {
			if r, ok := st.twice(i, by); ok {
				out = append(out, r)
			}
			continue
		}
		out = append(out, reading{
			says: fmt.Sprintf("%s, again, with %s", n.label(t), by.name), term: o.Model(st.fit.X),
			doubt: by.doubt.Millimetres(), again: i, line: t.line,
			write: fmt.Sprintf("in its place: \"... ± %s\"", figure(by.doubt, st.Vehicle.Unit)),
		})
	}
	return out
}

// twice is a second reading, beside a first that nothing checks, of a size or a
// hole of an iron.
func (st *Study) twice(i int, by byHand) (reading, bool) {
	t := st.network.notes[i]
	if st.fit.Redundancy[i] >= loose || t.sort != sizeRead && t.sort != holeRead || !t.member.placed() {
		return reading{}, false
	}
	r := reading{
		says: fmt.Sprintf("%s, a second time, with %s", st.network.label(t), by.name), term: st.network.problem.Observations[i].Model(st.fit.X),
		doubt: by.doubt.Millimetres(), again: none, line: t.line,
	}
	if r.write = st.stateSize(t.member, t.what, by); t.sort == holeRead {
		r.of, r.write = t.member.id, st.stateHole(t.member, t.hole, by)
	}
	return r, true
}

// setAside reports whether an observation was left out.
func (st *Study) setAside(observation int) bool {
	for _, s := range st.fit.suspects {
		if s.observation == observation {
			return true
		}
	}
	return false
}

// ofTimber lists the sizes of a timber that nothing better than a like vehicle
// tells: from the mark it left on an iron that lay along it, else from a like vehicle.
func (st *Study) ofTimber(m *member) []reading {
	var out []reading
	if m.part.Status == vehicle.LeftOpen {
		return nil
	}
	for _, d := range m.sizes {
		t := adjust.At(st.fit.X, d.unknown)
		if !required(m.part, d.name) || st.fit.known(t) < quantity.LikeVehicle {
			continue
		}
		r := reading{asks: asks(m, d.name), where: vehicle.Elsewhere, term: t, again: none, line: m.part.At.Line}
		if iron := st.marked(m, d); iron != nil {
			r.says = fmt.Sprintf("%s, from the lines that its edges left in rust or paint on %s", r.asks, the(iron))
			r.where = vehicle.OnIrons
			r.doubt = st.network.survey.Doubts.Known[quantity.FromIron].Doubt.Millimetres()
			r.write = fmt.Sprintf("under [evidence], iron: \"%s.%s = ...\"", m.id, d.name)
		} else {
			r.says = r.asks + ", from a like vehicle"
			if st.fit.known(t) == quantity.LikeVehicle {
				r.says = r.asks + ", from another like vehicle"
			}
			r.doubt = st.network.survey.Doubts.Known[quantity.LikeVehicle].Doubt.Millimetres()
			r.write = fmt.Sprintf("under [evidence], like: \"%s.%s = ...\"", m.id, d.name)
		}
		out = append(out, r)
	}
	return out
}

// marked finds an iron that lies on a timber and reaches over both of its edges
// that way, so that both may have left their mark on it.
func (st *Study) marked(m *member, d named) *member {
	if d.axis == parts.NoAxis || !m.placed() {
		return nil
	}
	for _, s := range st.network.spans {
		i := s.stopOf(m)
		if i == none {
			continue
		}
		for _, k := range []int{i - 1, i + 1} {
			if k < 0 || k >= len(s.stops) || s.stops[k].iron == nil {
				continue
			}
			iron := s.stops[k].member
			j := iron.along(m.axes[d.axis-1].of)
			over := st.fit.X[iron.extent[j]] - st.fit.X[d.unknown]
			if iron.axes[j].of == m.axes[d.axis-1].of && j != iron.along(s.axis) && over > 0 && !math.IsNaN(over) {
				return iron
			}
		}
	}
	return nil
}

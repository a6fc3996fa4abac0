package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// addIron enters an iron, or a pair, or a row of them, with what was read of it.
func (n *network) addIron(i *survey.Iron) {
	round := i.Kind == survey.Tyre || i.Kind == survey.Ring || i.Kind == survey.Band
	rows := max(i.Number, 1)
	through := n.boltsOf(i)
	for row := range rows {
		for _, hand := range hands(i.Sides) {
			m := &member{
				id: memberID(i.ID, hand, row, rows), base: i.ID, row: row, hand: hand, iron: i,
				run: i.Runs, axes: axesOf(i.Runs, hand, through),
				at: [3]int{none, none, none}, extent: [3]int{none, none, none},
			}
			if round {
				n.setOutRound(m)
			} else {
				n.setOutIron(m)
			}
			n.join(m)
		}
	}
	first := n.families[i.ID][0]
	n.readIron(first, i.Sizes, i.Holes, n.bendOf(i))
	n.readAcross(first)
	n.readPoints(first)
	if i.Off != nil && i.Sides == survey.Pair {
		n.readIron(n.families[i.ID][1], i.Off.Sizes, i.Off.Holes, nil)
	}
	n.alike(i.ID, i.Sides, i.Runs, i.At.Line)
}

// setOutIron gives a straight iron its box, holes and place.
func (n *network) setOutIron(m *member) {
	for j, s := range [3]string{"long", "wide", "thick"} {
		m.extent[j] = n.unknown(m, s, start(m.iron, s))
		m.sizes = append(m.sizes, named{s, parts.Axis(j + 1), m.extent[j]})
	}
	for _, s := range m.iron.Sizes {
		if m.size(s.Name) == none {
			m.sizes = append(m.sizes, named{s.Name, parts.NoAxis, n.unknown(m, s.Name, s.Value)})
		}
	}
	for k, h := range m.iron.Holes {
		m.holes = append(m.holes, n.unknown(m, fmt.Sprintf("hole %d", k+1), h.Value))
	}
	for k, r := range m.iron.Across {
		m.asides = append(m.asides, n.unknown(m, fmt.Sprintf("hole %d across", k+1), r.Value))
	}
	n.setOut(m)
}

// setOutRound gives a tyre, ring or band its sizes. It has no place: its radius,
// on the inside, is the wood's.
func (n *network) setOutRound(m *member) {
	r := 500 * quantity.Millimetre
	chord := quantity.Length(0)
	for _, s := range m.iron.Sizes {
		switch s.Name {
		case "outside":
			r = s.Value / 2
		case "girth":
			r = s.Value / (2 * math.Pi)
		case "chord":
			chord = s.Value
		}
	}
	for _, s := range m.iron.Sizes {
		if s.Name == "rise" && chord > 0 && s.Value > 0 {
			r = chord*chord/(8*s.Value) + s.Value/2
		}
	}
	for _, s := range []struct {
		name  string
		start quantity.Length
	}{{"radius", r}, {"wide", start(m.iron, "wide")}, {"thick", start(m.iron, "thick")}} {
		m.sizes = append(m.sizes, named{s.name, parts.NoAxis, n.unknown(m, s.name, s.start)})
	}
	m.extent[1], m.extent[2] = m.size("wide"), m.size("thick")
	if chord > 0 {
		m.sizes = append(m.sizes, named{"chord", parts.NoAxis, n.unknown(m, "chord", chord)})
	}
}

func start(i *survey.Iron, size string) quantity.Length {
	for _, s := range i.Sizes {
		if s.Name == size {
			return s.Value
		}
	}
	return 0
}

// readIron enters what was read of one iron.
func (n *network) readIron(m *member, sizes []survey.Size, holes []survey.Reading, b *bend) {
	for _, s := range sizes {
		t := note{sort: sizeRead, subject: m.id, what: s.Name, known: m.ironKnown(), member: m, line: s.At.Line}
		if u := m.size(s.Name); u != none {
			if s.Name == "long" && b != nil {
				was, off := b.straightened(s.Reading, 0)
				t.why = workedBack
				n.read(t, was, u)
				n.shares(b.common, off)
				continue
			}
			n.read(t, s.Reading, u)
			continue
		}
		if model := roundReading(m, s.Name); model != nil {
			n.observe(t, s.Value, s.Doubt, model)
			n.by(s.Reading)
		}
	}
	for k, h := range holes {
		if k < len(m.holes) && h.Taken() {
			n.readHole(m, k, h, b)
		}
	}
}

// ironKnown is how a size written of an iron is known: what is written of one that
// is not there is what it is to be.
func (m *member) ironKnown() quantity.Known {
	if m.iron.Missing.All {
		return quantity.Guess
	}
	return quantity.FromIron
}

const workedBack = "worked back along its bend"

// readHole enters what was read of one hole of an iron, from its end or its middle.
func (n *network) readHole(m *member, k int, h survey.Reading, b *bend) {
	t := note{sort: holeRead, subject: m.id, what: fmt.Sprintf("hole %d", k+1), known: m.ironKnown(), member: m, hole: k, line: h.At.Line}
	var off quantity.Length
	if b != nil {
		base := 0.0
		if m.iron.From == survey.FromMiddle {
			base = b.chord / 2
		}
		h, off = b.straightened(h, base)
		t.why = workedBack
	}
	if m.iron.From == survey.FromMiddle {
		n.observe(t, h.Value, h.Doubt, func(x []float64) adjust.Term {
			return adjust.At(x, m.holes[k]).Minus(adjust.At(x, m.extent[0]).Scaled(0.5))
		})
		n.by(h)
	} else {
		n.read(t, h, m.holes[k])
	}
	if b != nil {
		n.shares(b.common, off)
	}
}

// roundReading models a reading over the outside of a tyre or ring.
func roundReading(m *member, name string) func(x []float64) adjust.Term {
	radius, thick, chord := m.size("radius"), m.size("thick"), m.size("chord")
	if radius == none {
		return nil
	}
	outer := func(x []float64) adjust.Term { return adjust.At(x, radius).Plus(adjust.At(x, thick)) }
	switch name {
	case "outside":
		return func(x []float64) adjust.Term { return outer(x).Scaled(2) }
	case "girth":
		return func(x []float64) adjust.Term { return outer(x).Scaled(2 * math.Pi) }
	case "rise":
		if chord == none {
			return nil
		}
		return func(x []float64) adjust.Term {
			r, c := outer(x), adjust.At(x, chord)
			return r.Minus(r.Times(r).Minus(c.Times(c).Scaled(0.25)).Sqrt())
		}
	}
	return nil
}

// boltsOf finds the vehicle's axis that an iron's bolts lie on: its thickness
// lies that way. Down is taken where no fastening tells.
func (n *network) boltsOf(i *survey.Iron) int {
	for _, f := range n.survey.Fastenings {
		for _, s := range f.Through {
			if n.family(s.Thing) == i.ID {
				a, _ := heading(f.Direction, vehicle.Alike)
				return a
			}
		}
	}
	return 2
}

// alike enters what is taken for granted of a pair and of a row: same sizes and
// holes, mirrored or equal places. A single thing that lies across stands on
// the vehicle's middle line.
func (n *network) alike(id string, sides survey.Sides, run vehicle.Run, line int) {
	f := n.families[id]
	first := f[0]
	if sides == survey.Single && first.placed() && run == vehicle.Across {
		for _, m := range f {
			n.observe(note{sort: midway, subject: m.id, what: "stands on the middle line of the vehicle", line: line, known: quantity.TradeRule, member: m},
				0, n.survey.Doubts.Twin.Doubt, func(x []float64) adjust.Term { return m.middle(x, 1) })
		}
	}
	step := len(hands(sides))
	for i, m := range f {
		if m.hand == vehicle.Off {
			n.same(twin, f[i-1], m, n.survey.Doubts.Twin.Doubt, []int{0, 1, 2}, line)
		} else if i >= step {
			free := 0 // the axis along which a row is spread
			if run == vehicle.Along {
				free = 1
			}
			n.same(inRow, f[i-step], m, n.survey.Doubts.Row.Doubt, others(free), line)
		}
	}
}

func others(a int) []int {
	var o []int
	for b := range 3 {
		if b != a {
			o = append(o, b)
		}
	}
	return o
}

// same takes two members for alike in size and holes, and in their places on axes.
func (n *network) same(s sort, a, b *member, doubt quantity.Length, axes []int, line int) {
	equal := func(what string, u, v int, sign float64) {
		n.observe(note{sort: s, subject: b.id, what: what, line: line, known: quantity.Paired, member: b}, 0, doubt,
			func(x []float64) adjust.Term { return adjust.At(x, v).Minus(adjust.At(x, u).Scaled(sign)) })
	}
	for i, d := range a.sizes {
		if d.unknown != b.sizes[i].unknown {
			equal(d.name, d.unknown, b.sizes[i].unknown, 1)
		}
	}
	for k := range a.holes {
		equal(fmt.Sprintf("hole %d", k+1), a.holes[k], b.holes[k], 1)
	}
	for k := range a.asides {
		equal(fmt.Sprintf("hole %d across", k+1), a.asides[k], b.asides[k], 1)
	}
	if !a.placed() {
		return
	}
	for _, x := range axes {
		sign := 1.0
		if x == 1 && s == twin {
			sign = -1
		}
		equal("place "+[3]string{"lengthwise", "across", "up and down"}[x], a.at[x], b.at[x], sign)
	}
}

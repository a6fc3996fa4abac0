package derive

import (
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// An axis says along which of the vehicle's axes (0 x, 1 y, 2 z) a member's
// own axis lies, and which way.
type axis struct {
	of   int
	sign float64
}

// none marks an unknown that a member does not have.
const none = -1

// A member is one timber or iron in its place: one side of a pair, one of a row.
//
// Its box starts at its origin and runs along its own axes: first with its
// length, then across, then through. An off member's frame is the mirror of the
// near one's, so that near and off share their numbers.
type member struct {
	id, base string
	row      int // from 0
	hand     vehicle.Hand
	iron     *survey.Iron // one of the two
	part     *survey.Part
	wheel    *survey.Wheel // of a whole wheel, whose part stands for it in words
	run      vehicle.Run
	axes     [3]axis
	at       [3]int // unknowns of the origin on the vehicle's axes; none in a wheel
	extent   [3]int // unknowns of the box
	sizes    []named
	holes    []int
	asides   []int // where each hole stands across; empty where on the middle line
}

// A named is a dimension and its unknown.
type named struct {
	name    string
	axis    parts.Axis
	unknown int
}

func (m *member) placed() bool { return m.at[0] != none }

// size finds the unknown of a dimension, or none.
func (m *member) size(name string) int {
	for _, d := range m.sizes {
		if d.name == name {
			return d.unknown
		}
	}
	return none
}

// along finds which of the member's own axes lies on the vehicle's axis a.
func (m *member) along(a int) int {
	for j, e := range m.axes {
		if e.of == a {
			return j
		}
	}
	return 0
}

// low and high are where the member's box begins and ends on the vehicle's axis a.
func (m *member) low(x []float64, a int) adjust.Term {
	j := m.along(a)
	o := adjust.At(x, m.at[a])
	if m.axes[j].sign > 0 {
		return o
	}
	return o.Minus(adjust.At(x, m.extent[j]))
}

func (m *member) high(x []float64, a int) adjust.Term {
	j := m.along(a)
	o := adjust.At(x, m.at[a])
	if m.axes[j].sign < 0 {
		return o
	}
	return o.Plus(adjust.At(x, m.extent[j]))
}

func (m *member) middle(x []float64, a int) adjust.Term {
	return m.low(x, a).Plus(m.high(x, a)).Scaled(0.5)
}

// own turns a place on the vehicle's axis that the member's axis j lies on into
// the member's own coordinate.
func (m *member) own(x []float64, j int, place adjust.Term) adjust.Term {
	return place.Minus(adjust.At(x, m.at[m.axes[j].of])).Scaled(m.axes[j].sign)
}

// hole is where hole k (from 0) of an iron stands on the vehicle's axis a: along
// the iron by its reading, across it in the middle of its width unless read there too.
func (m *member) hole(x []float64, k, a int) adjust.Term {
	j := m.along(a)
	if j == 0 {
		return adjust.At(x, m.at[a]).Plus(adjust.At(x, m.holes[k]).Scaled(m.axes[0].sign))
	}
	if j == 1 && k < len(m.asides) {
		return adjust.At(x, m.at[a]).Plus(adjust.At(x, m.asides[k]).Scaled(m.axes[1].sign))
	}
	return m.middle(x, a)
}

// axesOf gives the frame of a member by the way it runs. A part's thickness
// stands up (or fore, in an upright); an iron's lies along its bolts, on the
// vehicle's axis through.
func axesOf(run vehicle.Run, hand vehicle.Hand, through int) [3]axis {
	out := -1.0 // from the outer side inwards, for a near or single one
	if hand == vehicle.Off {
		out = 1
	}
	var e [3]axis
	switch run {
	case vehicle.Across:
		e = [3]axis{{1, -1}, {0, 1}, {2, 1}}
	case vehicle.Upright:
		e = [3]axis{{2, 1}, {1, out}, {0, 1}}
	default:
		e = [3]axis{{0, -1}, {1, out}, {2, 1}}
	}
	if through != none && e[1].of == through {
		e[1], e[2] = e[2], e[1]
	}
	return e
}

// memberID names a member as statements do: near-reach, cross-bar-2.
func memberID(base string, hand vehicle.Hand, row, of int) string {
	id := base
	if hand != vehicle.Alike {
		id = hand.String() + "-" + id
	}
	if of > 1 {
		id = fmt.Sprintf("%s-%d", id, row+1)
	}
	return id
}

// hands lists the hands of a thing.
func hands(s survey.Sides) []vehicle.Hand {
	if s == survey.Pair {
		return []vehicle.Hand{vehicle.Near, vehicle.Off}
	}
	return []vehicle.Hand{vehicle.Alike}
}

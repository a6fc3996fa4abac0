package derive

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// accounts lists the ways in which the readings of a whole iron may have gone
// wrong together.
func (n *network) accounts(m *member) []*explanation {
	at, ok := n.holesRead(m)
	if !ok {
		return nil
	}
	var out []*explanation
	for _, e := range []*explanation{n.turned(m, at), n.swapped(m, at)} {
		if e != nil {
			out = append(out, e)
		}
	}
	return append(out, n.shifted(m, at)...)
}

// holesRead finds the observations of an iron's holes, in order; ok only where
// every hole was read.
func (n *network) holesRead(m *member) (at []int, ok bool) {
	at = make([]int, len(m.holes))
	read := 0
	for i, t := range n.notes {
		if t.sort == holeRead && t.member == m {
			at[t.hole] = i
			read++
		}
	}
	return at, read == len(m.holes)
}

// turned reads an iron's holes from its other end, where its length was read too.
func (n *network) turned(m *member, at []int) *explanation {
	long := math.NaN()
	for i, t := range n.notes {
		if t.sort == sizeRead && t.what == "long" && t.member.base == m.base && (t.member == m || math.IsNaN(long)) {
			long = n.problem.Observations[i].Value
		}
	}
	if math.IsNaN(long) {
		return nil
	}
	e := &explanation{member: m, values: map[int]float64{}}
	for k, i := range at {
		e.values[i] = long - n.problem.Observations[at[len(at)-1-k]].Value
	}
	e.says = fmt.Sprintf("The holes of the %s were read from its wrong end: turned end for end they agree with everything else. They are taken so here; look at the iron again and mend the survey.", words(m))
	return e
}

// swapped gives the near iron of a pair the off one's readings, and the off one
// the near one's.
func (n *network) swapped(m *member, at []int) *explanation {
	if m.hand != vehicle.Near {
		return nil
	}
	for _, o := range n.families[m.base] {
		if o.hand != vehicle.Off || o.row != m.row {
			continue
		}
		other, ok := n.holesRead(o)
		if !ok || len(other) != len(at) {
			return nil
		}
		e := &explanation{member: m, values: map[int]float64{}}
		for k := range at {
			e.values[at[k]] = n.problem.Observations[other[k]].Value
			e.values[other[k]] = n.problem.Observations[at[k]].Value
		}
		e.says = fmt.Sprintf("The near and the off %s were changed about: with the holes of the one given to the other they agree with everything else. They are taken so here; look at both irons again and mend the survey.", lower(nameOf(m)))
		return e
	}
	return nil
}

// shifted reads every hole of an iron short or long by the same: from the rule's
// inch mark, or to the holes' edges in place of their middles.
func (n *network) shifted(m *member, at []int) []*explanation {
	var out []*explanation
	shift := func(by quantity.Length, says string) {
		e := &explanation{member: m, values: map[int]float64{}, says: says}
		for _, i := range at {
			e.values[i] = n.problem.Observations[i].Value + by.Millimetres()
		}
		out = append(out, e)
	}
	name := words(m)
	for _, by := range []quantity.Length{-quantity.Inch, quantity.Inch} {
		shift(by, fmt.Sprintf("The holes of the %s were all read an inch wrong, from the rule's inch mark it seems: put right by an inch they agree with everything else. They are taken so here; look at the iron again and mend the survey.", name))
	}
	slip, far := quantity.Foot, "a foot"
	if n.survey.Unit == quantity.Millimetres {
		slip, far = 10*quantity.Centimetre, "ten centimetres"
	}
	for _, by := range []quantity.Length{-slip, slip} {
		shift(by, fmt.Sprintf("The holes of the %s were all read %s wrong, it seems: put right by so much they agree with everything else. They are taken so here; look at the iron again and mend the survey.", name, far))
	}
	if d := n.boltOf(m); d > 0 {
		for _, by := range []quantity.Length{-d / 2, d / 2} {
			shift(by, fmt.Sprintf("The holes of the %s were read to their edges, it seems, not to their middles: moved by half a bolt they agree with everything else. They are taken so here; look at the iron again and mend the survey.", name))
		}
	}
	return out
}

// boltOf is the diameter of the bolts through an iron, where they are all of one size.
func (n *network) boltOf(m *member) quantity.Length {
	var d quantity.Length
	for _, s := range n.spans {
		for i := range s.stops {
			if s.stops[i].member != m || s.fastening.Diameter == 0 {
				continue
			}
			if d != 0 && d != s.fastening.Diameter {
				return 0
			}
			d = s.fastening.Diameter
		}
	}
	return d
}

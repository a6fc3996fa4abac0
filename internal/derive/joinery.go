package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// joinery lists the work of the joints of wood to wood, and of wood to iron that
// passes it, on one timber.
func (a *assembly) joinery(m *member) []work {
	var out []work
	for i := range a.network.survey.Joints {
		j := &a.network.survey.Joints[i]
		if a.network.family(j.Of) == m.base {
			if j.Kind == survey.TenonJoint {
				out = append(out, m.tenons(j)...)
				continue
			}
			for _, o := range a.network.meeting(m, j.With) {
				out = append(out, a.cutFor(m, o, j))
			}
		}
		if j.Kind == survey.TenonJoint && a.network.family(j.With) == m.base {
			for _, o := range a.network.meeting(m, j.Of) {
				if a.faces(m, o) {
					out = append(out, a.mortiseFor(m, o, j))
				}
			}
		}
	}
	return out
}

// meeting lists those of a family that can meet a member: of its own hand, or of none.
func (n *network) meeting(m *member, thing string) []*member {
	t, _ := n.index.Find(thing)
	var out []*member
	for _, o := range n.families[n.family(thing)] {
		if t.Row > 0 && o.row != t.Row-1 || t.Side != vehicle.Alike && o.hand != t.Side {
			continue
		}
		if o.hand == m.hand || o.hand == vehicle.Alike || m.hand == vehicle.Alike {
			out = append(out, o)
		}
	}
	return out
}

// faces reports whether a tenoned timber's length runs at the member.
func (a *assembly) faces(m, o *member) bool { return m.along(o.axes[0].of) != 0 }

// cutFor is what is cut out of m for o.
func (a *assembly) cutFor(m, o *member, j *survey.Joint) work {
	w := meetingWork(string(j.Kind), m, o)
	what := fmt.Sprintf("%s for the %s", j.Kind, lower(nameOf(o)))
	switch j.Kind {
	case survey.NotchJoint:
		return a.notch(w, what, m, o, jointSize(j, "clear"))
	case survey.HousingJoint:
		return m.recess(w, what, a.toward(m, o), o, jointSize(j, "deep"))
	}
	return a.mortise(w, what, m, o, j)
}

func jointSize(j *survey.Joint, name string) quantity.Length {
	for _, s := range j.Sizes {
		if s.Name == name {
			return s.Value
		}
	}
	return 0
}

// toward is the face of m that looks at o: the one o stands farthest out from.
func (a *assembly) toward(m, o *member) parts.Face {
	x := a.fit.X
	best, face := math.Inf(-1), parts.Upper
	for j := range 3 {
		v := m.axes[j].of
		d := o.middle(x, v).Value - m.middle(x, v).Value
		out := math.Abs(d) - (m.high(x, v).Value-m.low(x, v).Value)/2
		if out > best {
			best = out
			face = endFace(j, d*m.axes[j].sign)
		}
	}
	return face
}

// endFace is the face at which the member's own axis j begins (way below 0) or ends.
func endFace(j int, way float64) parts.Face {
	if way < 0 {
		return [3]parts.Face{parts.FirstEnd, parts.FirstSide, parts.Under}[j]
	}
	return [3]parts.Face{parts.SecondEnd, parts.SecondSide, parts.Upper}[j]
}

// notch is cut out of the edge of m that o passes.
func (a *assembly) notch(w work, what string, m, o *member, clear quantity.Length) work {
	x := a.fit.X
	through := 2
	if !overshoots(x, m, o, 2) && overshoots(x, m, o, 1) {
		through = 1
	}
	side := 3 - through
	v := m.axes[side].of
	edge := endFace(side, (o.middle(x, v).Value-m.middle(x, v).Value)*m.axes[side].sign)
	face := endFace(through, 1)
	w.along = func(x []float64) adjust.Term { return m.own(x, 0, o.middle(x, m.axes[0].of)) }
	w.across = func([]float64) adjust.Term { return adjust.Constant(0) }
	long := func(x []float64) adjust.Term {
		return o.high(x, m.axes[0].of).Minus(o.low(x, m.axes[0].of)).Plus(adjust.Constant(2 * clear.Millimetres()))
	}
	in := func(x []float64) adjust.Term {
		half := o.high(x, v).Minus(o.low(x, v)).Scaled(0.5).Plus(adjust.Constant(clear.Millimetres()))
		own := m.own(x, side, o.middle(x, v))
		if edge == endFace(side, -1) {
			return own.Plus(half)
		}
		return adjust.At(x, m.extent[side]).Minus(own).Plus(half)
	}
	w.extents = []func(x []float64) adjust.Term{long, in}
	w.make = func(at form.Point, e []quantity.Length) parts.Feature {
		return parts.Notch{ID: w.ref, What: what, Face: face, Edge: edge, At: at.X, Long: e[0], In: e[1]}
	}
	return w
}

// overshoots reports whether o reaches past m both ways along m's own axis j.
func overshoots(x []float64, m, o *member, j int) bool {
	v := m.axes[j].of
	return o.low(x, v).Value < m.low(x, v).Value && o.high(x, v).Value > m.high(x, v).Value
}

// mortise is cut in m for what stands in it.
func (a *assembly) mortise(w work, what string, m, o *member, j *survey.Joint) work {
	f, clear, deep := a.toward(m, o), jointSize(j, "clear"), jointSize(j, "deep")
	w = m.recess(w, what, f, o, deep)
	w.make = func(at form.Point, e []quantity.Length) parts.Feature {
		return parts.Mortise{ID: w.ref, What: what, Face: f, At: at, Long: e[0] + 2*clear, Wide: e[1] + 2*clear, Depth: deep}
	}
	return w
}

// tenons are those at a timber's own ends.
func (m *member) tenons(j *survey.Joint) []work {
	var out []work
	for _, end := range []parts.Face{parts.FirstEnd, parts.SecondEnd} {
		if !m.isEnd(j.End, end) {
			continue
		}
		half := func(axis int) func(x []float64) adjust.Term {
			return func(x []float64) adjust.Term { return adjust.At(x, m.extent[axis]).Scaled(0.5) }
		}
		t := parts.Tenon{
			ID: "tenon at the " + end.String(), What: "tenon", End: end,
			Long: jointSize(j, "long"), Wide: jointSize(j, "wide"), Thick: jointSize(j, "thick"),
		}
		out = append(out, work{
			key: t.ID, ref: t.ID, along: half(1), across: half(2),
			make: func(at form.Point, _ []quantity.Length) parts.Feature {
				t.At = at
				return t
			},
		})
	}
	return out
}

// isEnd reports whether a survey's word means that end of a member.
func (m *member) isEnd(word string, end parts.Face) bool {
	switch word {
	case "near", "fore", "lower":
		return end == parts.FirstEnd
	case "off", "hind", "upper":
		return end == parts.SecondEnd
	}
	return true
}

// mortiseFor is the mortise in m for o's tenon.
func (a *assembly) mortiseFor(m, o *member, j *survey.Joint) work {
	f := a.toward(m, o)
	w := meetingWork("mortise", m, o)
	middle := func(k int) func(x []float64) adjust.Term {
		return func(x []float64) adjust.Term { return m.own(x, k, o.middle(x, m.axes[k].of)) }
	}
	w.along, w.across = onFace(m, f, middle)
	long, wide := jointSize(j, "wide"), jointSize(j, "thick")
	if m.axes[0].of != o.axes[1].of {
		long, wide = wide, long
	}
	mortise := parts.Mortise{
		ID: w.ref, What: "mortise for the " + lower(nameOf(o)), Face: f,
		Long: long, Wide: wide, Depth: jointSize(j, "long"),
	}
	w.make = func(at form.Point, _ []quantity.Length) parts.Feature {
		mortise.At = at
		return mortise
	}
	return w
}

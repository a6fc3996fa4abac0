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

// figures are the unknowns of a wheel: all but those that are worked out of the
// others, and those of an axle where nothing tells of one.
func (n *network) figures(w *survey.Wheel) []string {
	axle := w.Axle.ID != "" || w.Part.Speaks("shoulders") || w.Part.Speaks("track")
	var out []string
	for _, d := range survey.WheelFigures() {
		switch d.Name {
		case "height", "bolt-pitch", "offset", "spoke-long":
			continue
		case "stagger":
			if !w.Part.Speaks(d.Name) {
				continue
			}
		case "shoulders", "track":
			if !axle {
				continue
			}
		}
		out = append(out, d.Name)
	}
	return out
}

// addWheel enters a wheel, or a pair of them: its figures, what was read of it,
// its irons, and the rules of the trade for all that nobody read.
func (n *network) addWheel(w *survey.Wheel) {
	var f []*member
	for _, hand := range hands(w.Sides) {
		m := &member{
			id: memberID(w.ID, hand, 0, 1), base: w.ID, hand: hand, part: w.Part, wheel: w, run: vehicle.Round,
			at: [3]int{none, none, none}, extent: [3]int{none, none, none},
		}
		for _, name := range n.figures(w) {
			m.sizes = append(m.sizes, named{name, parts.NoAxis, n.unknown(m, name, n.wheelStart(w, name))})
		}
		n.join(m)
		f = append(f, m)
	}
	read := f[0]
	if w.Sides == survey.Pair && w.Of == vehicle.Off {
		read = f[1]
	}
	for i := range w.Stated {
		n.readWheel(read, &w.Stated[i])
	}
	n.wheelIrons(w, f, read)
	n.wheelRules(read)
	n.wheelCloses(read)
	if len(f) == 2 {
		n.same(twin, f[0], f[1], n.survey.Doubts.Twin.Doubt, nil, w.At.Line)
	}
}

// wheelTwins takes wheels of two lines for alike where the survey says so. A twin
// of another line may differ by twice what near and off may.
func (n *network) wheelTwins() {
	for i := range n.survey.Wheels {
		w := &n.survey.Wheels[i]
		if w.Twin.ID == "" {
			continue
		}
		for k, m := range n.families[w.ID] {
			o := n.families[w.Twin.ID]
			like := o[min(k, len(o)-1)]
			for _, d := range m.sizes {
				u := like.size(d.name)
				if u == none || d.name == "shoulders" || d.name == "track" {
					continue
				}
				v := d.unknown
				n.observe(note{
					sort: ofWheel, subject: m.id, what: fmt.Sprintf("%s of %s", d.name, like.id),
					line: w.Twin.At.Line, known: quantity.Paired, member: m, speaks: []*member{like},
				}, 0, 2*n.survey.Doubts.Twin.Doubt, func(x []float64) adjust.Term { return adjust.At(x, v).Minus(adjust.At(x, u)) })
			}
		}
	}
}

// wheelStart is where the search for a figure begins.
func (n *network) wheelStart(w *survey.Wheel, figure string) quantity.Length {
	stated := func(name string) (quantity.Length, bool) {
		for i := range w.Stated {
			if w.Stated[i].Terms[0].Feature == name {
				return -w.Stated[i].Constant, true
			}
		}
		return 0, false
	}
	if v, ok := stated(figure); ok {
		return v
	}
	switch figure {
	case "radius":
		if h, ok := stated("height"); ok {
			return h / 2
		}
		if t := n.families[n.family(w.Tyre.ID)]; len(t) > 0 {
			return quantity.Length(n.problem.Start[t[0].size("radius")])
		}
		return 500
	case "felloe-deep", "box-in", "gap", "tongue-short", "stagger", "dish", "dish-built":
		return 10
	case "arm-long":
		return 200
	}
	return 40
}

// of is a figure of a wheel in the adjustment; nothing for one it has not.
func (m *member) of(x []float64, figure string) adjust.Term {
	if u := m.size(figure); u != none {
		return adjust.At(x, u)
	}
	return adjust.Constant(0)
}

// stands is how far the rim's middle is out from midway between the mortise circles.
func (m *member) stands(x []float64) adjust.Term {
	return m.of(x, "dish").Plus(m.of(x, "stagger").Scaled(.5)).
		Plus(m.of(x, "foot-wide").Minus(m.of(x, "tyre-wide")).Scaled(.5))
}

// spoke is how far a spoke runs from shoulder to shoulder, square to the axle.
func (m *member) spokeRun(x []float64) adjust.Term {
	return m.of(x, "radius").Minus(m.of(x, "felloe-deep")).Minus(m.of(x, "nave").Scaled(.5))
}

func (m *member) spokeLong(x []float64) adjust.Term {
	run, out := m.spokeRun(x), m.stands(x)
	return run.Times(run).Plus(out.Times(out)).Sqrt()
}

// readWheel enters one figure that was stated with a wheel.
func (n *network) readWheel(m *member, st *survey.Statement) {
	figure := st.Terms[0].Feature
	value, doubt := -st.Constant, st.Doubt
	model := func(x []float64) adjust.Term { return m.of(x, figure) }
	tread := func(x []float64) adjust.Term { return m.of(x, "radius").Plus(m.of(x, "tyre-thick")) }
	switch figure {
	case "height":
		switch m.wheel.Over {
		case survey.OverTheTyre:
			model = func(x []float64) adjust.Term { return tread(x).Scaled(2) }
		case survey.OverTheWood:
			model = func(x []float64) adjust.Term { return m.of(x, "radius").Scaled(2) }
		default: // half a tyre's two thicknesses either way
			model = func(x []float64) adjust.Term { return tread(x).Plus(m.of(x, "radius")) }
			doubt = quantity.Length(hypot(doubt, quantity.Length(n.thickOf(m.wheel))))
		}
	case "bolt-pitch":
		k := 2 * math.Sin(math.Pi/float64(m.wheel.Felloes))
		model = func(x []float64) adjust.Term { return tread(x).Scaled(k) }
	case "offset":
		model = func(x []float64) adjust.Term {
			return m.of(x, "nave-long").Minus(m.of(x, "nave-forward")).Plus(m.stands(x))
		}
	case "spoke-long":
		model = m.spokeLong
	}
	n.observe(note{sort: stated, subject: m.id, what: st.Text, line: st.At.Line, known: st.Known, member: m}, value, doubt, model)
}

// thickOf is about how thick a wheel's tyre is.
func (n *network) thickOf(w *survey.Wheel) float64 {
	if t := n.families[n.family(w.Tyre.ID)]; len(t) > 0 {
		if thick := start(t[0].iron, "thick"); thick > 0 {
			return thick.Millimetres()
		}
	}
	for i := range w.Stated {
		if w.Stated[i].Terms[0].Feature == "tyre-thick" {
			return -w.Stated[i].Constant.Millimetres()
		}
	}
	return 10
}

// wheelIrons ties a wheel to the irons and felloes that are left of it.
func (n *network) wheelIrons(w *survey.Wheel, f []*member, read *member) {
	tie := func(m *member, figure string, o *member, size string, known quantity.Known, line int, doubt quantity.Length) {
		u, v := m.size(figure), o.size(size)
		if u == none || v == none {
			return
		}
		n.observe(note{
			sort: ofWheel, subject: m.id, what: fmt.Sprintf("%s of %s", size, o.id), line: line,
			known: known, member: m, speaks: []*member{o},
		}, 0, doubt, func(x []float64) adjust.Term { return adjust.At(x, u).Minus(adjust.At(x, v)) })
	}
	each := func(id survey.Named, do func(m, o *member)) {
		if id.ID == "" {
			return
		}
		if t, _ := n.index.Find(id.ID); len(n.families[t.ID()]) == len(f) && len(f) == 2 && t.Side == vehicle.Alike {
			for k := range f {
				do(f[k], n.families[t.ID()][k])
			}
			return
		}
		do(read, n.member(id.ID, 0, vehicle.Near))
	}
	each(w.Tyre, func(m, o *member) {
		for _, s := range []string{"radius", "wide", "thick"} {
			figure := map[string]string{"radius": "radius", "wide": "tyre-wide", "thick": "tyre-thick"}[s]
			tie(m, figure, o, s, quantity.FromIron, w.Tyre.At.Line, n.survey.Doubts.Contact.Doubt/8)
		}
	})
	each(w.Axle, func(m, o *member) {
		tie(m, "shoulders", o, "long", quantity.FromIron, w.Axle.At.Line, n.survey.Doubts.Contact.Doubt/8)
	})
	each(w.Felloe, func(m, o *member) {
		for _, s := range [][2]string{{"radius", "radius"}, {"tyre-wide", "wide"}, {"felloe-deep", "deep"}, {"tongue", "tongue"}, {"gap", "gap"}} {
			tie(m, s[0], o, s[1], quantity.FromIron, w.Felloe.At.Line, n.survey.Doubts.Contact.Doubt/8)
		}
	})
}

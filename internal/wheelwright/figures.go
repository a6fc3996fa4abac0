package wheelwright

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
)

// A Section is a group of figures under a heading.
type Section struct {
	Head string
	Rows []Row
}

// A Row is one figure: what it is, how much, and what to know of it.
type Row struct{ Name, Is, Note string }

// Figures are all that is known of the wheel, in the order it is built in.
func Figures(s Subject) []Section {
	return []Section{s.whole(), s.dish(), s.nave(), s.spokes(), s.rim(), s.tyre(), s.bars(), s.arm()}
}

func degrees(a quantity.Angle) string { return fmt.Sprintf("%.2f degrees", a.Degrees()) }

func (s Subject) whole() Section {
	w := s.Wheel
	over, wood := w.Heights()
	other := "so taken; were it of the wood, the wood would be " + s.both(w.Spec.Tyre.Thick) + " larger in radius"
	if w.Spec.Over == wheel.OfWood {
		other = "so taken; were it over the tyre, the wood would be " + s.both(w.Spec.Tyre.Thick) + " smaller in radius"
	}
	return Section{"The wheel", []Row{
		{"height over the tyre", s.both(over), "the height stands " + w.Spec.Over.String() + ", " + other},
		{"height of the wood", s.both(wood), "with the tyre on"},
		{"spokes and felloes", fmt.Sprintf("%d and %d", w.Spec.Spokes.Number, w.Spec.Rim.Felloes), "two spokes to a felloe"},
		{"kind and condition", w.Spec.Use.String() + ", " + w.Spec.Condition.String(), ""},
	}}
}

func (s Subject) dish() Section {
	w := s.Wheel
	c := w.Closing()
	return Section{"Dish", []Row{
		{"before the tyre is on", s.both(w.FaceDish(wheel.Built)), "from the front of the mortises to the face of the rim, by a straight-edge across the rim"},
		{"with the tyre on", s.both(w.FaceDish(wheel.Tyred)), "the same way"},
		{"from middle to middle", s.both(w.Dish(wheel.Built)) + ", then " + s.both(w.Dish(wheel.Tyred)), "from midway between the mortise circles to the middle of the rim"},
		{"spokes lean out", degrees(w.Lean(wheel.Built)) + ", then " + degrees(w.Lean(wheel.Tyred)), "from square to the axle"},
		{"the joints alone would bring", s.both(c.DishByJoints), "closing all of them, if no spoke shortens or sinks; reckoned"},
	}}
}

func (s Subject) nave() Section {
	w := s.Wheel
	n, b := w.Spec.Nave, w.Spec.Box
	rows := []Row{
		{"long", s.both(n.Long), "stations below are from its back end"},
	}
	for _, t := range w.Stations() {
		rows = append(rows, Row{"turned at " + s.both(t.Along), s.both(t.Diameter), ""})
	}
	for _, band := range n.Bands {
		rows = append(rows, Row{band.Name, fmt.Sprintf("from %s, %s wide", s.both(band.From), s.both(band.Wide)), s.both(band.Thick) + " thick; turn to the band itself, a drive fit, put on hot"})
	}
	for _, c := range w.Cuts() {
		name, next := "mortises", "to its neighbour"
		if len(w.Rows()) > 1 {
			name = "mortises, " + c.Row.String()
		}
		rows = append(rows,
			Row{name, fmt.Sprintf("%s to %s", s.both(c.MouthBack), s.both(c.MouthFront)), fmt.Sprintf("%s round, %s deep along the spoke, leaning %s to the front", s.both(c.Thick), s.both(c.Deep), degrees(w.Row(c.Row).Lean))},
			Row{"wood left", s.both(c.ToNext) + " " + next, s.both(c.Space) + " between the foot and the box; about 1/4 in is usual (Richardson 1891)"},
		)
	}
	rows = append(rows,
		Row{"mortises round", fmt.Sprintf("%d, one from the next %s", w.Spec.Spokes.Number, s.both(n.Diameter*Length(w.Pitch()/2))), "round the nave in the middle of the seat, by the paper strip"},
		Row{"seat for the shoulders", n.Seat.String(), ""},
		Row{"bore for the box", fmt.Sprintf("%s to %s in %s", s.both(b.Large+2*b.Wall), s.both(b.Small+2*b.Wall), s.both(b.Long)), fmt.Sprintf("from %s in; half its taper is %s; ream to the box itself", s.both(b.In), degrees(w.BoxTaper()))},
	)
	behind, rule := w.BoxMiddle()
	return Section{"Nave", append(rows, Row{"middle of the box", s.both(behind) + " behind the front of the mortises", "half the tyre's width, " + s.both(rule) + ", is one rule (Cordrey in Richardson 1891)"})}
}

func (s Subject) spokes() Section {
	w := s.Wheel
	k := w.Spec.Spokes
	var rows []Row
	for _, r := range w.Rows() {
		line := w.Row(r)
		name := "shoulder to shoulder"
		if len(w.Rows()) > 1 {
			name += ", " + r.String()
		}
		rows = append(rows,
			Row{name, s.both(line.Long), s.both(line.Between) + " from nave to belly on the middle line; the flat shoulders bed before and behind the foot, and with their sides in the round of the belly"},
			Row{"foot's shoulder", degrees(line.Shoulder) + " out of square", s.both(k.Wide*Length(math.Abs(math.Tan(float64(line.Shoulder))))) + " across it, " + whichWay(line.Shoulder)},
			Row{"tongue's shoulder", degrees(line.TipShoulder) + " out of square", ""},
			Row{"tongue long", s.both(line.TongueLong), "it stops " + s.both(k.Tongue.Short) + " below the sole, that the tyre may not press on it (Richardson 1891); others saw it flush"},
		)
	}
	p := w.Spacing()
	rows = append(
		rows,
		Row{"square", s.both(k.Wide) + " by " + s.both(k.Thick), "front to back first; left square for " + s.both(k.Square)},
		Row{"oval at the felloe", s.both(k.TipWide) + " by " + s.both(k.TipThick), ""},
		Row{"foot", fmt.Sprintf("%s by %s, %s long", s.both(k.FootWide), s.both(k.FootThick), s.both(k.FootLong)), "front to back first; calliper it the same in thickness from end to end"},
		Row{"tongue", s.both(k.Tongue.Thick) + " " + k.Tongue.Form.String(), "a third of the tyre's width and 1/8 in would be " + s.both(wheel.TongueByTyre(w.Spec.Tyre.Wide)) + " (Richardson 1891)"},
		Row{"apart at the rim", s.both(p.AtSole), "round the wood's outside; " + s.both(p.Clear) + " clear at the belly; not above 16 in is one rule (Felton 1794)"},
		Row{"by height", fmt.Sprintf("%d spokes", wheel.SpokeCounts(w.Spec.Height)), "Felton's rule (1794, from memory)"},
	)
	return Section{"Spokes", rows}
}

func whichWay(a quantity.Angle) string {
	switch {
	case math.Abs(float64(a)) < 1e-6:
		return "square"
	case a > 0:
		return "its front edge nearer the felloe"
	}
	return "its front edge nearer the nave"
}

package survey

import (
	"errors"
	"fmt"
	"strings"

	"lostwood/internal/timber"
)

const timberMeans = "A timber that is not in the program's list of woods, or of which you have better figures. Write [[timber]] on a line before each. " +
	"One that is in the list keeps what you do not state; but shrinkage, movement, weight and strength are each replaced as a whole, so write all figures of one source together."

// A Timber is one whose figures the survey gives.
type Timber struct {
	At   Position
	Wood timber.Species
}

// A timberDraft is a timber while its lines are read: the source, which every
// figure carries, may stand last.
type timberDraft struct {
	wood    timber.Species
	source  string
	figures []func(*timber.Species) *timber.Figure
}

// A timberFigure is one number of a timber.
type timberFigure struct {
	name, also, means, example string
	place                      func(*timber.Species) *timber.Figure
}

func timberFigures() []timberFigure {
	type wood = timber.Species
	type number = timber.Figure
	return []timberFigure{
		{"radial", "", "shrinkage across the rings, in percent of the green size", "4.9", func(s *wood) *number { return &s.Shrink.Radial }},
		{"tangential", "", "shrinkage along the rings, in percent of the green size", "7.8", func(s *wood) *number { return &s.Shrink.Tangential }},
		{"lengthwise", "longitudinal", "shrinkage along the grain, green to ovendry, in percent; 0.2 where not known", "0.2", func(s *wood) *number { return &s.Shrink.Lengthwise }},
		{"saturation", "fibre-saturation", "the moisture at which it begins to shrink, in percent; 30 where not known", "27", func(s *wood) *number { return &s.Shrink.Saturation }},
		{"moves-radial", "", "movement across the rings, in percent of the size for each percent of moisture", "0.17", func(s *wood) *number { return &s.Move.Radial }},
		{"moves-tangential", "", "movement along the rings, in percent of the size for each percent of moisture", "0.27", func(s *wood) *number { return &s.Move.Tangential }},
		{"density", "weight mass", "its density at 12 percent moisture, in kg/m3", "690", func(s *wood) *number { return &s.Weight.Density12 }},
		{"strength-green", "", "bending strength of green wood (modulus of rupture), in MPa", "66", func(s *wood) *number { return &s.Green.Rupture }},
		{"strength-dry", "strength", "bending strength at 12 percent moisture, in MPa", "103", func(s *wood) *number { return &s.Dry.Rupture }},
		{"stiffness-green", "", "stiffness of green wood (modulus of elasticity), in GPa", "9.9", func(s *wood) *number { return &s.Green.Stiffness }},
		{"stiffness-dry", "stiffness", "stiffness at 12 percent moisture, in GPa", "12", func(s *wood) *number { return &s.Dry.Stiffness }},
		{"hardness-green", "", "side hardness of green wood (Janka), in N", "4300", func(s *wood) *number { return &s.Green.Hardness }},
		{"hardness-dry", "hardness janka", "side hardness at 12 percent moisture (Janka), in N", "5900", func(s *wood) *number { return &s.Dry.Hardness }},
	}
}

func timberKeys() []key[timberDraft] {
	keys := []key[timberDraft]{
		{
			name: "name", also: "timber common", need: must, example: `"field elm"`, means: "what the survey calls it",
			take: intoText(func(d *timberDraft) *string { return &d.wood.Common }),
		},
		{
			name: "source", also: "from reference", need: must, example: `"tests of the county college, 1931"`, means: "where its figures are from; it is printed with them",
			take: intoText(func(d *timberDraft) *string { return &d.source }),
		},
		{
			name: "also", also: "names", example: `["hedge elm"]`, means: "other names that it goes by",
			take: func(r *reader, v *node, d *timberDraft) {
				for _, i := range r.texts(v) {
					if s, ok := r.text(i); ok {
						d.wood.Also = append(d.wood.Also, s)
					}
				}
			},
		},
		{
			name: "botanical", also: "latin", example: `"Ulmus minor"`, means: "its botanical name, for the order to the sawmill",
			take: intoText(func(d *timberDraft) *string { return &d.wood.Botanical }),
		},
		{
			name: "shrinks-to", also: "shrinks shrink-to", example: `"ovendry"`, means: "what its shrinkage was measured to: ovendry (where not given), or 12 (percent moisture, as in Australia)",
			take: (*reader).convention,
		},
	}
	for _, f := range timberFigures() {
		keys = append(keys, key[timberDraft]{
			name: f.name, also: f.also, means: f.means, example: f.example,
			take: func(r *reader, v *node, d *timberDraft) { r.timberFigure(v, f, d) },
		})
	}
	return append(keys, key[timberDraft]{
		name: "durability", also: "durable lasts", example: `"slightly durable"`, means: "how long its heartwood lasts, in words",
		take: intoText(func(d *timberDraft) *string { return &d.wood.Durability.Words }),
	})
}

func (r *reader) convention(v *node, d *timberDraft) {
	said := string(v.said())
	switch strings.ToLower(strings.TrimSpace(said)) {
	case "ovendry", "oven-dry", "0":
		d.wood.Shrink.To = timber.GreenToOvendry
	case "12":
		d.wood.Shrink.To = timber.GreenTo12
	default:
		r.fault(v.at, quote(said)+", to which no shrinkage is measured", "write \"ovendry\" or \"12\"")
	}
}

// timberFigure takes a number that a wood can have; package timber says which.
func (r *reader) timberFigure(v *node, f timberFigure, d *timberDraft) {
	const label = "it"
	if v.shape != wholeShape && v.shape != decimalShape {
		r.mistaken(v, "a number", "write it without quotes, such as "+f.name+" = "+f.example)
		return
	}
	value, ok := figure(v)
	if !ok {
		r.fault(v.at, quote(v.text)+", which is no number", "write one such as "+f.example)
		return
	}
	alone := timber.Species{Common: label}
	*f.place(&alone) = timber.Given(value, label)
	if bad := (*timber.RangeError)(nil); errors.As(alone.Validate(), &bad) {
		r.fault(v.at, quote(v.text)+", which no wood has",
			fmt.Sprintf("write %s, from %v to %v", strings.TrimPrefix(bad.What, label+": "), bad.Min, bad.Max))
		return
	}
	*f.place(&d.wood) = timber.Given(value, "")
	d.figures = append(d.figures, f.place)
}

func (r *reader) timbers(n *node) {
	first := map[string]Position{}
	for _, v := range n.items {
		d := timberDraft{}
		if !readGroup(r, v, "a timber", timberKeys(), &d) {
			continue
		}
		for _, place := range d.figures {
			place(&d.wood).Source = d.source
		}
		r.inPairs(v)
		d.settle()
		if d.wood.Common == "" {
			continue
		}
		at := r.src.position(v.named["name"].value.at)
		if before, twice := first[strings.ToLower(d.wood.Common)]; twice {
			r.faultAt(at, quote(d.wood.Common)+", of which figures stand on "+before.words()+" too", "put all of them under one [[timber]]")
			continue
		}
		first[strings.ToLower(d.wood.Common)] = at
		r.s.Timbers = append(r.s.Timbers, Timber{At: at, Wood: d.wood})
	}
}

// settle gives what is no number its source, and movement its kind: with
// shrinkage to 12 % that of seasoned wood, else of the size about 10 %.
func (d *timberDraft) settle() {
	w := &d.wood
	if w.Durability.Words != "" {
		w.Durability.Basis = timber.Basis{Source: d.source, Standing: timber.Own}
	}
	switch {
	case !w.Move.Radial.Known() && !w.Move.Tangential.Known():
	case w.Shrink.To == timber.GreenTo12:
		w.Move.Kind = timber.UnitShrinkage
	default:
		w.Move.Kind = timber.HandbookOwn
	}
}

// inPairs wants the figures of both ways of the grain, since one alone would
// stand beside none, or beside one of another source.
func (r *reader) inPairs(v *node) {
	for _, pair := range [...][2]string{{"radial", "tangential"}, {"moves-radial", "moves-tangential"}} {
		for i, name := range pair {
			if other := pair[1-i]; v.get(name) != nil && v.get(other) == nil {
				r.fault(v.named[name].at, quote(name)+" with no "+quote(other), "write both, of the same source")
			}
		}
	}
	if to := v.named["shrinks-to"]; to != nil && v.get("radial") == nil && v.get("tangential") == nil && v.get("moves-radial") == nil && v.get("moves-tangential") == nil {
		r.fault(to.at, "shrinks-to with no figure of shrinkage", "write radial and tangential too, or take it away")
	}
}

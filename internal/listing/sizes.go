package listing

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Sizes lists every dimension of every distinct part, and of the parts that
// cannot be made or are left open.
func Sizes(v *vehicle.Vehicle) *List {
	l := &List{
		Title: fmt.Sprintf("%s, issue %s: sizes", v.Name, v.Issue),
		Columns: []Column{
			{Key: "number", Head: "No.", Align: Right},
			{Key: "part", Head: "Part"},
			{Key: "hand", Head: "Hand"},
			{Key: "dimension", Head: "Size"},
			{Key: "value_mm"},
			{Key: "give_or_take_mm"},
			{Key: "words", Head: "Measures"},
			{Key: "known", Head: "How we know"},
			{Key: "by", Head: "What says so"},
		},
	}
	for _, it := range v.Items {
		for _, d := range it.Sizes {
			l.add(v.Unit, it.Number, it.Name, it.Hand, d)
		}
	}
	for _, p := range v.Parts {
		if p.Item == nil {
			for _, d := range p.Sizes {
				l.add(v.Unit, 0, p.Name, vehicle.Alike, d) // its name says its hand
			}
		}
	}
	l.Foot = append(l.Foot, "", "Give or take is the standard uncertainty: about two in three such sizes lie within it, nearly all within twice as much.")
	if len(l.Rows) == 0 {
		l.Foot = append(l.Foot, "The survey names no parts.")
	}
	return l
}

func (l *List) add(u quantity.Unit, number int, name string, hand vehicle.Hand, d vehicle.Dimension) {
	no := Cell{Value: number}
	if number == 0 {
		no = Cell{}
	}
	value, doubt := Rounded(d.Value.Millimetres(), 3), roundUp(d.Doubt.Millimetres())
	if d.Known == quantity.Unknown {
		value, doubt = math.NaN(), math.NaN()
	}
	l.Rows = append(l.Rows, []Cell{
		no,
		{Value: name},
		{Value: hand.String()},
		{Value: d.Name},
		{Value: value},
		{Value: doubt},
		{Value: d.Words(u)},
		{Value: d.Known.String()},
		{Value: d.By},
	})
}

// roundUp keeps a give or take to a thousandth of a millimetre, never less than it is.
func roundUp(v float64) float64 { return math.Ceil(v*1000) / 1000 }

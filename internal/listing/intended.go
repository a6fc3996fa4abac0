package listing

import (
	"fmt"

	"lostwood/internal/makers"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// Intended lists every size of the vehicle with the size its maker likely meant,
// and says in what unit he worked, if that can be told. The derived sizes stand
// as they are.
func Intended(v *vehicle.Vehicle) *List {
	sizes := made(v)
	verdict := makers.Study(sizes, makers.Usual())
	l := &List{
		Title: fmt.Sprintf("%s, issue %s: sizes as derived, and as the maker likely meant them", v.Name, v.Issue),
		Columns: []Column{
			{Key: "part", Head: "Size"},
			{Key: "value_mm"},
			{Key: "give_or_take_mm"},
			{Key: "words", Head: "Measures"},
			{Key: "known", Head: "How we know"},
			{Key: "intended_mm"},
			{Key: "chance"},
			{Key: "intended", Head: "Likely meant"},
		},
		Foot: []string{"", verdict.Words()},
	}
	for _, s := range verdict.Sizes {
		meant, chance := Cell{}, Cell{}
		if s.Tell == makers.Likely {
			meant, chance = Cell{Value: Rounded(s.Intended.Millimetres(), 3)}, Cell{Value: Rounded(s.Chance, 3)}
		}
		l.Rows = append(l.Rows, []Cell{
			{Value: s.Name},
			{Value: Rounded(s.Derived.Value.Millimetres(), 3)},
			{Value: roundUp(s.Derived.Doubt.Millimetres())},
			{Value: s.Derived.Words(v.Unit)},
			{Value: s.Derived.Known.String()},
			meant, chance,
			{Value: s.Words(verdict)},
		})
	}
	return l
}

// made lists the sizes that a maker set out, once for each that he meant alike.
func made(v *vehicle.Vehicle) []makers.Sized {
	read := quantity.Inch / 32
	if v.Unit == quantity.Millimetres || v.Unit == quantity.Centimetres {
		read = quantity.Millimetre
	}
	var out []makers.Sized
	for _, it := range v.Items {
		if it.Hand == vehicle.Off {
			continue // made as its near twin
		}
		for _, d := range it.Sizes {
			grain := makers.Across
			if d.Axis == parts.AlongX {
				grain = makers.Along
			}
			out = append(out, makers.Sized{
				Name: it.Name + ", " + d.Name, Size: d.Size, Alike: it.ID + " " + d.Name, Read: read, Grain: grain,
			})
		}
	}
	return out
}

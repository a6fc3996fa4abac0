package wheel

import "math"

// A Bar is the length to cut a tyre's bar to by one rule, and what it is summed from.
type Bar struct {
	Rule   string
	Source string
	Cut    Length
	Sum    []Addend
}

// An Addend is one of the pieces a sum is made of.
type Addend struct {
	What  string
	Value Length
}

// Weld is what a scarfed weld takes of the bar: about 5/8 in (Hasluck, Tyring cart wheels).
const Weld = 5 * inch / 8

// BarRules are the rules for a tyre bar's length, the reckoned one first.
func BarRules() []string {
	var names []string
	for _, r := range barRules() {
		names = append(names, r.name)
	}
	return names
}

// A barRule says how many thicknesses it adds, and whether it counts the nip
// and the weld or adds a plain allowance in their place.
type barRule struct {
	name, source string
	thicknesses  float64
	plain        Length
}

func barRules() []barRule {
	const present = "a carriage maker of today, writing in August 2003"
	return []barRule{
		{"the bar's middle line keeps its length", "reckoned: pi thicknesses", math.Pi, 0},
		{"three thicknesses", holmstromSecond, 3, 0},
		{"three and a half thicknesses", present, 3.5, 0},
		{"three and three quarter thicknesses, ends much upset", present, 3.75, 0},
		{"an inch over the girth", hasluckTyring + "; it leaves the nip to the cutting after bending", 0, 1 * inch},
		{"an inch over the girth, the least", holmstromSecond, 0, 1 * inch},
		{"two inches over the girth, the most", holmstromSecond, 0, 2 * inch},
	}
}

// Bars are the lengths to cut by every rule, for a rim of a girth, a bar of a
// thickness, a nip and what the weld takes.
func Bars(girth, thick, nip, weld Length) []Bar {
	var out []Bar
	for _, r := range barRules() {
		b := Bar{Rule: r.name, Source: r.source, Sum: []Addend{{"girth of the rim", girth}}}
		if r.plain != 0 {
			b.Sum = append(b.Sum, Addend{"over it", r.plain})
		} else {
			b.Sum = append(b.Sum, Addend{"nip", -nip}, Addend{"for the bending", Length(r.thicknesses) * thick}, Addend{"for the weld", weld})
		}
		for _, a := range b.Sum {
			b.Cut += a.Value
		}
		out = append(out, b)
	}
	return out
}

// Bars are the lengths to cut the wheel's tyre bar to. A coned tyre is longer
// at its back edge than at its front one: these are for its middle.
func (w *Wheel) Bars() []Bar {
	return Bars(w.Girths(Built).Middle, w.Spec.Tyre.Thick, w.Nip(), Weld)
}

// InsideBeforeWeld is Holmstrom's other way (his second book, for a tyre 1/2 in
// thick): the bent tyre is run round inside before it is welded, and is to measure
// the wheel's girth where the wheel is much dished, 1/4 in less where it is straight.
func InsideBeforeWeld(girth Length, c Condition) Length {
	if c == MuchDished {
		return girth
	}
	return girth - inch/4
}

// TongueByTyre is the rule for a round tongue: a third of the tyre's width and
// 1/8 in (Richardson, Practical Carriage Building, 1891, Points for wheelwrights).
func TongueByTyre(wide Length) Length { return wide/3 + inch/8 }

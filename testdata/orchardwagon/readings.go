package orchardwagon

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// Blunder says whether the blunder is planted.
type Blunder int

// With the blunder, or without.
const (
	Clean Blunder = iota
	Planted
)

// Survey writes the survey that a careful restorer would make of this wagon.
func (w *Wagon) Survey(b Blunder) []byte {
	text := newText(Drawing)
	for i := range w.survey.Irons {
		iron := &w.survey.Irons[i]
		near, off := member(iron, vehicle.Near), member(iron, vehicle.Off)
		w.readIron(text, near, iron.Sizes, iron.Holes, b)
		if iron.Off != nil {
			w.readIron(text, off, iron.Off.Sizes, iron.Off.Holes, Clean)
		}
	}
	for i := range w.survey.Fastenings {
		w.readFastening(text, &w.survey.Fastenings[i])
	}
	for i := range w.survey.Wheels {
		w.readWheel(text, &w.survey.Wheels[i])
	}
	out := text.String()
	head := strings.Index(out, "[vehicle]")
	return []byte("# Orchard wagon: the irons as they were measured, with rule and callipers.\n\n" + out[head:])
}

// Australian is a survey of the same irons that names Australian hardwoods, to
// show the choice, for a vehicle that will live in a dry inland town.
func Australian(survey []byte) []byte {
	return []byte(strings.NewReplacer(
		`"white oak"`, `"grey ironbark"`, `"white ash"`, `"spotted gum"`, `"yellow-poplar"`, `"silky oak, northern"`,
		"bought  = 20", "bought  = 16", "worked  = 14", "worked  = 12", `service = "9 .. 14"            # a dry shed`, `service = "8 .. 11"            # a dry shed inland`,
	).Replace(string(survey)))
}

// Truth is what the wagon truly measures.
func (w *Wagon) Truth() Truth { return w.truth }

// Order lists the ids of the timbers as the vehicle has them.
func (w *Wagon) Order() []string {
	var ids []string
	for _, p := range w.drawn.Parts {
		ids = append(ids, p.ID)
	}
	for _, v := range w.drawn.Wheels {
		ids = append(ids, v.ID)
	}
	return ids
}

func member(i *survey.Iron, hand vehicle.Hand) string {
	id := i.ID
	if i.Sides == survey.Pair {
		id = hand.String() + "-" + id
	}
	if i.Number > 1 {
		id += "-1"
	}
	return id
}

func (w *Wagon) readIron(t *text, id string, sizes []survey.Size, holes []survey.Reading, b Blunder) {
	for _, s := range sizes {
		t.put(s.At, w.read(w.size(id, s.Name), s.Name))
	}
	values := make([]float64, len(holes))
	for k, h := range holes {
		values[k] = w.hole(id, k, h.Value)
	}
	if b == Planted && id == "near-sill-plate" {
		slices.Reverse(values)
		for k := range values {
			values[k] = w.boxes[id].sizes["long"] - values[k]
		}
	}
	for k, h := range holes {
		t.put(h.At, w.read(values[k], "hole"))
	}
}

// clipped is the first timber that a clip goes round.
func (w *Wagon) clipped(f *survey.Fastening) string {
	for _, st := range f.Through {
		id := strings.TrimPrefix(st.Thing, "near-")
		if slices.ContainsFunc(w.survey.Parts, func(p survey.Part) bool { return p.ID == id }) {
			return id
		}
	}
	return ""
}

func (w *Wagon) readFastening(t *text, f *survey.Fastening) {
	if f.Inside != nil {
		t.put(f.Inside.At, w.read(w.boxes[w.clipped(f)].sizes["wide"], "inside"))
	}
	for row, sides := range f.Grips {
		for side, g := range sides {
			id := f.ID
			if f.Number > 1 {
				id = fmt.Sprintf("%s.%d", id, row+1)
			}
			if f.Sides == survey.Pair {
				id += []string{" near", " off"}[side]
			}
			t.put(g.At, w.read(w.grip(id), "grip"))
		}
	}
}

// read is a true length as a person reads it off: with an error, and to the
// nearest 32nd of an inch, or 64th by callipers.
func (w *Wagon) read(mm float64, what string) string {
	steps := 32
	if reads[what] < quantity.Inch/40 {
		steps = 64
	}
	v := (mm + w.differ(reads[what])) / quantity.Inch.Millimetres()
	return fraction(int(math.Round(v*float64(steps))), steps)
}

func fraction(n, steps int) string {
	whole, part := n/steps, n%steps
	for part != 0 && part%2 == 0 {
		part, steps = part/2, steps/2
	}
	switch {
	case part == 0:
		return fmt.Sprint(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, steps)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, steps)
}

// A text is the drawing with readings to put in the place of its lengths.
type text struct {
	lines []string
	edits map[int]map[int]string
}

func newText(b []byte) *text {
	return &text{lines: strings.Split(string(b), "\n"), edits: map[int]map[int]string{}}
}

// put replaces the quoted length at a place.
func (t *text) put(at survey.Position, s string) {
	if t.edits[at.Line] == nil {
		t.edits[at.Line] = map[int]string{}
	}
	t.edits[at.Line][at.Column] = s
}

func (t *text) String() string {
	lines := slices.Clone(t.lines)
	for n, edits := range t.edits {
		l := []rune(lines[n-1])
		columns := slices.Sorted(maps.Keys(edits))
		slices.Reverse(columns)
		for _, c := range columns {
			from := c - 1
			for l[from] != '"' {
				from--
			}
			to := from + 1
			for l[to] != '"' {
				to++
			}
			l = slices.Concat(l[:from+1], []rune(edits[c]), l[to:])
		}
		lines[n-1] = string(l)
	}
	return strings.Join(lines, "\n")
}

func sorted(m map[string]quantity.Length) []string { return slices.Sorted(maps.Keys(m)) }

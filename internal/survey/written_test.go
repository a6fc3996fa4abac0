package survey

import (
	"fmt"
	"math/big"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// thirtySeconds is a length of n 32nds of an inch, worked out exactly.
func thirtySeconds(n int) quantity.Length {
	f, _ := big.NewRat(int64(n)*254, 320).Float64()
	return quantity.Length(f)
}

// A writer writes a survey, for the test alone.
type writer struct{ strings.Builder }

func (w *writer) line(format string, a ...any) { fmt.Fprintf(w, format+"\n", a...) }

// inches writes a length that thirtySeconds made.
func inches(l quantity.Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	n := int(l/quantity.Inch*32 + 0.5)
	switch {
	case n%32 == 0:
		return fmt.Sprintf("%s%d", sign, n/32)
	case n < 32:
		return fmt.Sprintf("%s%d/32", sign, n)
	}
	return fmt.Sprintf("%s%d %d/32", sign, n/32, n%32)
}

func read1(r Reading) string { return fmt.Sprintf("%q", inches(r.Value)+" ± "+inches(r.Doubt)) }

func readAll(list []Reading) string {
	var s []string
	for _, r := range list {
		if r.Value == 0 {
			s = append(s, `"-"`)
			continue
		}
		s = append(s, read1(r))
	}
	return "[" + strings.Join(s, ", ") + "]"
}

func (w *writer) family(runs vehicle.Run, s Sides, number int) {
	w.line("runs = %q", runs)
	w.line("pair = %v", s == Pair)
	w.line("number = %d", number)
}

func (w *writer) sizes(sizes []Size) {
	for _, s := range sizes {
		w.line("%s = %s", s.Name, read1(s.Reading))
	}
}

func (w *writer) survey(s *Survey) {
	w.line("[vehicle]\nname = %q\nissue = %q\ndate = %s\nunit = \"in\"", s.Name, s.Issue, s.Date.Format(time.DateOnly))
	w.line("[wood]\ntimber = %q\nbought = %v\nservice = \"%v .. %v\"", s.Wood.Timber, s.Wood.Bought, s.Wood.Service.Driest, s.Wood.Service.Wettest)
	w.line("[doubts]\nguess = %q", inches(s.Doubts.Known[quantity.Guess].Value))
	for _, i := range s.Irons {
		w.line("[iron.%s]\nkind = %q\nname = %q", i.ID, i.Kind, i.Name)
		w.family(i.Runs, i.Sides, i.Number)
		w.sizes(i.Sizes)
		w.line("holes = %s", readAll(i.Holes))
		if i.Off != nil {
			w.line("[iron.%s.off]\nholes = %s", i.ID, readAll(i.Off.Holes))
		}
	}
	for _, p := range s.Parts {
		w.line("[part.%s]\nkind = %q\nname = %q\nhanded = %v", p.ID, p.Kind.Name, p.Name, p.Handed == Handed)
		w.family(p.Runs, p.Sides, p.Number)
		for _, st := range p.Stated {
			w.line("%s = \"%s ± %s %s\"", st.Terms[0].Feature, inches(-st.Constant), inches(st.Doubt), wayOf(st.Known))
		}
	}
	for _, f := range s.Fastenings {
		w.fastening(&f)
	}
	w.line("[evidence]")
	for _, k := range ways() {
		w.line("%s = [", k.word)
		for _, st := range s.Evidence {
			if st.Known == k.known {
				w.line("%q,", st.Text)
			}
		}
		w.line("]")
	}
	for _, b := range s.Boards {
		w.line("[[board]]\nid = %q\ntimber = %q\nmoisture = %v\nnumber = %d", b.ID, b.Timber, b.Moisture, b.Number)
		w.line("thick = %q\nwide = %q\nlong = %q", inches(b.Thick), inches(b.Wide), inches(b.Long))
	}
}

func wayOf(k quantity.Known) string {
	for _, w := range ways() {
		if w.known == k {
			return w.word
		}
	}
	return ""
}

func (w *writer) fastening(f *Fastening) {
	w.line("[[fastening]]\nid = %q\nbolt = %q\nhead = %q\nsunk = %q", f.ID, inches(f.Diameter), f.Head, inches(f.Sunk))
	var run []string
	for _, s := range f.Through {
		switch {
		case s.Let != nil:
			run = append(run, fmt.Sprintf("let %s ± %s into %s", inches(s.Let.Value), inches(s.Let.Doubt), s.Into))
		case len(s.Holes) > 0:
			run = append(run, s.Thing+"#"+strings.Trim(strings.ReplaceAll(fmt.Sprint(s.Holes), " ", ","), "[]"))
		default:
			run = append(run, s.Thing)
		}
	}
	w.line(`%s = ["%s"]`, headings()[f.Direction].name, strings.Join(run, `", "`))
	var rows []string
	for _, g := range f.Grips {
		row := readAll(g)
		if f.Sides == Single {
			row = strings.Trim(row, "[]")
		}
		rows = append(rows, row)
	}
	switch {
	case len(rows) == 1:
		w.line("grip = %s", rows[0])
	case len(rows) > 1:
		w.line("grip = [%s]", strings.Join(rows, ", "))
	}
}

// drawn makes a survey at random that has no fault.
func drawn(t *rapid.T) *Survey {
	some := func(what string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, what) }
	length := func(lo, hi int) quantity.Length { return thirtySeconds(some("length", lo, hi)) }
	reading := func(lo, hi int) Reading { return Reading{Value: length(lo, hi), Doubt: length(1, 32)} }
	s := &Survey{Name: "Orchard wagon", Issue: "B", Date: time.Date(2026, 10, 30, 0, 0, 0, 0, time.UTC)}
	s.Wood = Wood{Timber: "white oak", Bought: 15, Worked: 15, Service: Climate{Driest: 6, Wettest: quantity.Moisture(some("wettest", 6, 28))}}
	s.Doubts = usualDoubts()
	s.Doubts.Known[quantity.Guess].Value = length(1, 64)
	s.Doubts.Known[quantity.Guess].Doubt = s.Doubts.Known[quantity.Guess].Value
	number := some("row", 1, 3)
	sides := Sides(some("sides", 0, 1))
	for i := range some("irons", 1, 3) {
		iron := Iron{ID: fmt.Sprintf("plate-of-%c", 'a'+i), Kind: Plate, Runs: vehicle.Along, Sides: sides, Number: number}
		iron.Name = spoken(iron.ID)
		iron.Sizes = []Size{{"long", reading(3200, 3600)}, {"wide", reading(32, 96)}, {"thick", reading(4, 16)}}
		for h := range some("holes", 1, 4) {
			iron.Holes = append(iron.Holes, reading(32+h*640, 600+h*640))
		}
		if sides == Pair && rapid.Bool().Draw(t, "off") {
			iron.Off = &Other{Holes: iron.Holes}
		}
		s.Irons = append(s.Irons, iron)
	}
	for i := range some("parts", 1, 3) {
		p := Part{ID: fmt.Sprintf("sill-%c", 'a'+i), Kind: fakeKinds()[2], Runs: vehicle.Along, Sides: Pair, Number: number}
		p.Name, p.Handed = spoken(p.ID), Handedness(some("handed", 0, 1))
		for _, d := range []string{"wide", "deep"} {
			p.Stated = append(p.Stated, Statement{
				Known: quantity.Known(some("known", 0, 5)), Terms: []Term{{Factor: 1, Thing: p.ID, Feature: d}},
				Constant: -length(64, 128), Doubt: length(1, 32),
			})
		}
		s.Parts = append(s.Parts, p)
	}
	for i := range some("fastenings", 0, 4) {
		iron := s.Irons[some("iron", 0, len(s.Irons)-1)]
		part := s.Parts[some("part", 0, len(s.Parts)-1)]
		f := Fastening{ID: fmt.Sprint(i + 1), What: "bolt", Diameter: length(8, 24), Sides: Pair, Number: number, Head: PlainHead, Sunk: length(0, 16)}
		f.Direction = []Direction{Down, Up, Inward, Outward}[some("direction", 0, 3)]
		f.Through = []Step{{Thing: part.ID}}
		if rapid.Bool().Draw(t, "let") {
			let := reading(8, 32)
			f.Through = append(f.Through, Step{Let: &let, Into: part.ID})
		}
		f.Through = append(f.Through, Step{Thing: iron.ID, Holes: []int{some("hole", 1, len(iron.Holes))}})
		if iron.Sides == Single { // a near and an off bolt cannot share a hole
			continue
		}
		for range number {
			f.Grips = append(f.Grips, []Reading{reading(100, 200), {}})
		}
		s.Fastenings = append(s.Fastenings, f)
	}
	for i, k := range ways() {
		c, doubt := length(1, 3200), length(1, 32)
		s.Evidence = append(s.Evidence, Statement{
			Text: fmt.Sprintf("sill-a.long = 1/2 %s.long - %s + plate-of-a.wide ± %s", s.Irons[0].ID, inches(c), inches(doubt)), Known: quantity.Known(i),
			Terms:    []Term{{Factor: 1, Thing: "sill-a", Feature: "long"}, {Factor: -0.5, Thing: s.Irons[0].ID, Feature: "long"}, {Factor: -1, Thing: "plate-of-a", Feature: "wide"}},
			Constant: c, Doubt: doubt,
		})
		require.Equal(t, quantity.Known(i), k.known)
	}
	for i := range some("boards", 0, 3) {
		s.Boards = append(s.Boards, Board{ID: fmt.Sprintf("b%d", i), Timber: "white ash", Thick: length(32, 64), Wide: length(128, 300), Long: length(1000, 4000), Moisture: 14, Number: 2})
	}
	return s
}

// unplaced is s without the places in the file, and as comparable.
func unplaced(s *Survey) Survey {
	c := comparable(s)
	for i := range c.Parts {
		c.Parts[i].Kind = parts.Kind{Name: c.Parts[i].Kind.Name}
		for k := range c.Parts[i].Stated {
			c.Parts[i].Stated[k].Text = ""
		}
	}
	v := reflect.ValueOf(&c).Elem()
	clearPlaces(v)
	return c
}

func clearPlaces(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[time.Time]() {
			return
		}
		if v.Type() == reflect.TypeFor[Position]() {
			v.SetZero()
			return
		}
		for i := range v.NumField() {
			clearPlaces(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			clearPlaces(v.Index(i))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			clearPlaces(v.Elem())
		}
	}
}

// A survey that was written from a model reads back as that model.
func TestWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		var w writer
		w.survey(s)
		got, err := read("wagon.toml", []byte(w.String()), fakeKinds())
		require.NoError(t, err, w.String())
		require.Equal(t, unplaced(s), unplaced(got))
	})
}

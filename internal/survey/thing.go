package survey

import (
	"strconv"
	"strings"

	"lostwood/internal/vehicle"
)

// A Thing is what a name in a survey stands for: an iron or a part, or one of
// its sides, or one of its row.
type Thing struct {
	Iron *Iron // one of the two
	Part *Part
	Side vehicle.Hand // Alike where both sides of a pair, or a single thing, are meant
	Row  int          // from 1; 0 where the whole row, or a single thing, is meant
}

// An Index finds things by their names.
type Index map[string]Thing

// Index returns the irons and parts of s by their ids. Where an id is taken
// twice the first has it.
func (s *Survey) Index() Index {
	x := make(Index, len(s.Irons)+len(s.Parts))
	for i := range s.Irons {
		x.add(s.Irons[i].ID, Thing{Iron: &s.Irons[i]})
	}
	for i := range s.Parts {
		x.add(s.Parts[i].ID, Thing{Part: &s.Parts[i]})
	}
	return x
}

func (x Index) add(id string, t Thing) {
	if _, ok := x[id]; !ok {
		x[id] = t
	}
}

// Find returns what a name stands for: reach, near-reach, cross-bar-2,
// near-cross-bar-2.
func (x Index) Find(name string) (Thing, bool) {
	if t, ok := x[name]; ok {
		return t, true
	}
	return x.Member(name)
}

// Member is as Find, for the names of one side or one of a row only.
func (x Index) Member(name string) (Thing, bool) {
	if t, ok := x.inRow(name); ok {
		return t, true
	}
	for _, side := range []vehicle.Hand{vehicle.Near, vehicle.Off} {
		rest, ok := strings.CutPrefix(name, side.String()+"-")
		if !ok {
			continue
		}
		t, ok := x[rest]
		if !ok {
			t, ok = x.inRow(rest)
		}
		if ok && t.Sides() == Pair {
			t.Side = side
			return t, true
		}
	}
	return Thing{}, false
}

// inRow finds one of a row: cross-bar-2.
func (x Index) inRow(name string) (Thing, bool) {
	i := strings.LastIndexByte(name, '-')
	if i < 0 {
		return Thing{}, false
	}
	n, err := strconv.Atoi(name[i+1:])
	t, ok := x[name[:i]]
	if err != nil || !ok || t.Number() < 2 || n < 1 || n > t.Number() || strconv.Itoa(n) != name[i+1:] {
		return Thing{}, false
	}
	t.Row = n
	return t, true
}

// ID is the family's own.
func (t Thing) ID() string {
	if t.Iron != nil {
		return t.Iron.ID
	}
	return t.Part.ID
}

// At is where the family stands in the file.
func (t Thing) At() Position {
	if t.Iron != nil {
		return t.Iron.At
	}
	return t.Part.At
}

// Sides says whether the family is a near and off pair.
func (t Thing) Sides() Sides {
	if t.Iron != nil {
		return t.Iron.Sides
	}
	if t.Part.Runs == vehicle.Round {
		return Single // one rim timber stands for all
	}
	return t.Part.Sides
}

// Number is how many stand in the family's row.
func (t Thing) Number() int {
	if t.Iron != nil {
		return t.Iron.Number
	}
	if t.Part.Runs == vehicle.Round {
		return 1
	}
	return t.Part.Number
}

// Runs is the way the family lies.
func (t Thing) Runs() vehicle.Run {
	if t.Iron != nil {
		return t.Iron.Runs
	}
	return t.Part.Runs
}

func (t Thing) unknownKind() bool {
	return t.Iron != nil && t.Iron.Kind == "" || t.Part != nil && t.Part.Kind.Name == ""
}

// bothSides reports whether the name means a near and an off one.
func (t Thing) bothSides() bool { return t.Sides() == Pair && t.Side == vehicle.Alike }

// rows is how many of a row the name means.
func (t Thing) rows() int {
	if t.Row > 0 {
		return 1
	}
	return max(t.Number(), 1)
}

package survey

import (
	"lostwood/internal/vehicle"
)

// extent works out how many a fastening stands for, from the things it goes
// through, and takes its grips.
func (r *reader) extent(v *node, d *fasteningDraft) {
	f := &d.Fastening
	things, ok := r.thingsOf(f)
	if !ok {
		r.eachGrip(d.grip)
		return
	}
	if !r.rowOf(f, things) || !r.sidesOf(v, d, things) || !r.rimOf(f, things) {
		return
	}
	for i := range f.Through {
		if s := &f.Through[i]; s.Thing != "" {
			r.holesOf(f, s, things[i])
			r.grain(f, s, things[i], i == len(f.Through)-1)
		}
	}
	if d.shear != nil {
		r.shears(d.shear, d)
		r.shearsSit(f)
	}
	if d.bolt != nil && d.bolt.shape == listShape {
		f.Bolts = r.boltsOf(d.bolt, f.Number, f.Sides)
	}
	if d.grip == nil {
		return
	}
	if d.Bolt != nil && (d.Bolt.Mark != nil || d.Bolt.Rusted != nil) {
		r.fault(d.grip.at, "a grip here and a mark on bolt "+quote(d.Bolt.ID)+" (line "+numbered(d.Bolt.At.Line)+")", "write the one that was read")
		return
	}
	f.Grips = r.grips(d.grip, f.Number, f.Sides)
	r.compareGrips(f.Grips)
}

// thingsOf finds what each step names; the zero Thing for a depth or gap.
func (r *reader) thingsOf(f *Fastening) ([]Thing, bool) {
	things := make([]Thing, len(f.Through))
	ok := true
	for i := range f.Through {
		s := &f.Through[i]
		if s.Let != nil {
			ok = r.letInto(s) && ok
		}
		if s.Thing == "" {
			continue
		}
		t, known := r.find(s.Thing, s.At)
		ok = ok && known
		things[i] = t
	}
	return things, ok
}

// find looks a name up, and tells where it leads to nothing.
func (r *reader) find(name string, at Position) (Thing, bool) {
	t, ok := r.things.Find(name)
	if !ok {
		what, want := r.unknownThing(name)
		r.faultAt(at, what, want)
	}
	return t, ok
}

func (r *reader) letInto(s *Step) bool {
	t, ok := r.find(s.Into, s.At)
	if ok && t.Part == nil {
		r.faultAt(s.At, "let into "+quote(s.Into)+", which is an iron", "write the part of wood that is cut")
		return false
	}
	return ok
}

// rowOf settles how many stand in a row: all rows in the run must be as long.
func (r *reader) rowOf(f *Fastening, things []Thing) bool {
	from := ""
	for i := range f.Through {
		s := &f.Through[i]
		if s.Thing == "" {
			continue
		}
		for _, n := range []struct {
			count int
			what  string
		}{{things[i].rows(), quote(s.Thing)}, {len(s.Holes), "the holes of " + quote(s.Thing)}} {
			switch {
			case n.count < 2 || n.count == f.Number:
			case f.Number == 1:
				f.Number, from = n.count, n.what
			default:
				r.faultAt(s.At, counted(n.count, "place")+" for "+n.what+" and "+numbered(f.Number)+" for "+from, "make the rows as long as each other, or name the one that is meant: cross-bar-2")
				return false
			}
		}
	}
	return true
}

// sidesOf settles whether a fastening is one of a near and off pair.
func (r *reader) sidesOf(v *node, d *fasteningDraft, things []Thing) bool {
	f := &d.Fastening
	pair, one := "", ""
	for i := range f.Through {
		switch s := &f.Through[i]; {
		case s.Thing == "":
		case things[i].bothSides():
			pair = s.Thing
		case things[i].Side != vehicle.Alike:
			one = s.Thing
		}
	}
	said := v.named["pair"]
	switch {
	case pair != "" && one != "":
		r.faultAt(f.At, quote(one)+", which is one side, and "+quote(pair)+", which is both, in one fastening", "write near- or off- before "+pair+" too")
		return false
	case pair != "" && said != nil && f.Sides == Single:
		r.fault(said.at, "pair = false on a fastening through "+quote(pair)+", which is a pair", "write near-"+pair+" for the near one alone")
		return false
	case one != "" && f.Sides == Pair:
		r.fault(said.at, "pair = true on a fastening through "+quote(one)+", which is one side only", "take near- or off- away, or pair")
		return false
	case pair != "":
		f.Sides = Pair
	}
	return true
}

// rimOf keeps what is in a wheel apart from what is not.
func (r *reader) rimOf(f *Fastening, things []Thing) bool {
	round, other := "", ""
	for i := range f.Through {
		switch s := &f.Through[i]; {
		case s.Thing == "":
		case things[i].Runs() == vehicle.Round:
			round = s.Thing
		default:
			other = s.Thing
		}
	}
	if round == "" || other == "" {
		return true
	}
	r.faultAt(f.At, quote(round)+", which goes round, and "+quote(other)+", which does not, in one fastening", "fasten what goes round only to what goes round")
	return false
}

// holesOf checks an iron's hole numbers; a part has none.
func (r *reader) holesOf(f *Fastening, s *Step, t Thing) {
	if t.Part != nil {
		switch {
		case len(s.Holes) > 0:
			r.faultAt(s.At, "a hole number on "+quote(s.Thing)+", which is a part", "take it away: a part is bored where the fastening falls")
		case s.Worn > 0:
			r.faultAt(s.At, "worn on "+quote(s.Thing)+", which is a part", "write worn of an iron's hole only")
		}
		return
	}
	count := len(t.Iron.Holes)
	for _, h := range s.Holes {
		if h > count {
			r.faultAt(s.At, "hole "+numbered(h)+" of "+quote(s.Thing)+", which has "+counted(count, "hole")+" (line "+numbered(t.Iron.At.Line)+")", holesWanted(t.Iron))
			return
		}
	}
	switch {
	case len(s.Holes) == 0 && count == 1:
		s.Holes = []int{1}
	case len(s.Holes) == 0 && count > 1:
		r.faultAt(s.At, quote(s.Thing)+" with no word of which of its "+numbered(count)+" holes", "write "+s.Thing+"#1, or whichever it is")
		return
	case s.Worn > 0 && count == 0:
		r.faultAt(s.At, "a worn hole of "+quote(s.Thing)+", which has no holes", "write its holes under [iron], or take worn away")
	}
	r.oneHoleEach(f, s, t)
}

func holesWanted(i *Iron) string {
	if len(i.Holes) == 0 {
		return "write its holes under [iron]: holes = [\"1 1/2\", \"15 1/2\"]"
	}
	return "write a number from 1 to " + numbered(len(i.Holes))
}

// oneHoleEach refuses several bolts through one hole.
func (r *reader) oneHoleEach(f *Fastening, s *Step, t Thing) {
	if len(s.Holes) == 0 {
		return
	}
	if t.rows() == 1 && f.Number > 1 && len(s.Holes) == 1 {
		r.faultAt(s.At, "a row of "+numbered(f.Number)+" through one hole of "+quote(s.Thing), "write a hole for each: "+s.Thing+"#1,2,3")
		return
	}
	if f.Sides != Pair || t.Sides() == Pair {
		return
	}
	// A single iron in a pair of fastenings: the off one has the hole as far from its other end.
	for _, h := range s.Holes {
		if t.Runs() != vehicle.Across || 2*h == len(t.Iron.Holes)+1 {
			r.faultAt(s.At, "a near and an off fastening through one hole of "+quote(s.Thing), "write a hole on its near side (the off one has the hole as far from the off end), or near- before each pair")
			return
		}
	}
}

// grain refuses a fastening that lies along a timber or an iron it goes through.
func (r *reader) grain(f *Fastening, s *Step, t Thing, last bool) {
	along := map[vehicle.Run][2]Direction{
		vehicle.Along: {Hindward, Forward}, vehicle.Across: {Inward, Outward}, vehicle.Upright: {Down, Up},
	}
	d, ok := along[t.Runs()]
	if !ok || f.Direction != d[0] && f.Direction != d[1] {
		return
	}
	way := headings()[f.Direction].name
	switch {
	case t.Iron != nil && (len(s.Holes) > 0 || len(t.Iron.Holes) > 0):
		r.faultAt(s.At, quote(s.Thing)+" runs "+t.Runs().String()+" and its bolt goes "+way+", along its own length", "see which way the iron runs, and which way the fastening goes")
	case t.Part != nil && !(f.What == "screw" && last):
		r.faultAt(s.At, quote(s.Thing)+" runs "+t.Runs().String()+" and the "+f.What+" goes "+way+", along its grain", "see which way the part runs, and which way the fastening goes")
	}
}

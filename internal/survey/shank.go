package survey

import (
	"strings"

	"lostwood/internal/quantity"
)

// boltsOf takes the ids of the bolts of a row or pair, set out as grips are.
func (r *reader) boltsOf(v *node, number int, sides Sides) [][]*Bolt {
	rows := []*node{v}
	if number > 1 {
		rows = v.items
	}
	want := "write one id for each" + map[bool]string{true: ", near and off", false: ""}[sides == Pair] + ", \"-\" for one not found, set out as grips are"
	if len(rows) != number {
		r.fault(v.at, counted(len(rows), "bolt")+" for a row of "+numbered(number), want)
		return nil
	}
	var out [][]*Bolt
	for _, row := range rows {
		each := []*node{row}
		if row.shape == listShape {
			each = row.items
		}
		if len(each) != 1+int(sides) {
			r.fault(row.at, counted(len(each), "bolt")+" for "+counted(1+int(sides), "fastening"), want)
			return nil
		}
		var of []*Bolt
		for _, b := range each {
			of = append(of, r.boltNamed(b))
		}
		out = append(out, of)
	}
	return out
}

// boltNamed finds the bolt of an id; nil for "-", and where there is none.
func (r *reader) boltNamed(v *node) *Bolt {
	id, ok := r.text(v)
	if !ok || id == "-" {
		return nil
	}
	b := r.bolts[id]
	if b == nil && !r.broken {
		r.fault(v.at, quote(id)+", which is no bolt under [bolt]", r.boltWanted(id))
	}
	return b
}

// firstBolt is the first bolt that a list of them names, wherever in it.
func (r *reader) firstBolt(v *node) *Bolt {
	for _, n := range v.items {
		if n.shape == listShape {
			if b := r.firstBolt(n); b != nil {
				return b
			}
			continue
		}
		if b := r.bolts[strings.TrimSpace(n.text)]; b != nil {
			return b
		}
	}
	return nil
}

// listOfBolts takes a list of bolts, all of one diameter.
func (r *reader) listOfBolts(d *fasteningDraft) bool {
	b := r.firstBolt(d.bolt)
	if b == nil {
		if !r.broken {
			r.fault(d.bolt.at, "a list of bolts, none of which stands under [bolt]", "write their ids, as bolt = [\"long-one\", \"-\"]")
		}
		return false
	}
	d.Diameter = b.Diameter
	return true
}

// shears takes bruises on a shank: "reach 2 7/16", one or a list.
func (r *reader) shears(v *node, d *fasteningDraft) {
	list := []*node{v}
	if v.shape == listShape {
		list = v.items
	}
	for _, s := range list {
		if s.shape != textShape {
			r.mistaken(s, "a bruise", "write the thing whose far face bore there and how far that is from the head: \"reach 2 7/16\"")
			continue
		}
		thing, rest, ok := strings.Cut(strings.TrimSpace(s.text), " ")
		if !ok || !isID(thing) {
			r.fault(s.at, quote(s.text)+" as a bruise", "write the thing whose far face bore there and how far that is from the head: \"reach 2 7/16\"")
			continue
		}
		rd, err := quantity.ParseReading(rest, r.unit())
		if err != nil {
			r.lengthFault(s, strings.Index(s.text, rest), err)
			continue
		}
		read := Reading{At: r.at(s), Value: rd.Value, Doubt: r.s.Doubts.Shear.Value}
		if rd.Stated == quantity.DoubtStated {
			read.Doubt = rd.Doubt
		}
		if r.sensible(s, rd.Value, positive) {
			d.Shears = append(d.Shears, Shear{thing, read})
		}
	}
}

// shearsSit wants each bruise at a thing that the fastening goes through, and not the last.
func (r *reader) shearsSit(f *Fastening) {
	last := ""
	var through []string
	for _, s := range f.Through {
		if s.Thing != "" {
			through, last = append(through, s.Thing), s.Thing
		}
	}
	for _, s := range f.Shears {
		switch {
		case s.Thing == last:
			r.faultAt(s.At, "a bruise at the far face of "+quote(s.Thing)+", which is the last thing before the nut", "write that as grip")
		case !hasThing(r, through, s.Thing):
			r.faultAt(s.At, "a bruise at "+quote(s.Thing)+", through which the fastening does not go", "write "+listed(through[:max(len(through)-1, 0)], "or"))
		}
	}
}

func hasThing(r *reader, through []string, name string) bool {
	t, ok := r.things.Find(name)
	for _, s := range through {
		if u, found := r.things.Find(s); s == name || ok && found && t.ID() == u.ID() {
			return true
		}
	}
	return false
}

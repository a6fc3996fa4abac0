package survey

import (
	"cmp"
	"slices"

	"lostwood/internal/vehicle"
)

// oneMeaning refuses a name that stands for two things: two of one id, or an id
// that reads as one of a row or a side of another.
func (r *reader) oneMeaning() {
	first := map[string]Position{}
	check := func(id string, at Position) {
		if f, ok := first[id]; ok {
			r.faultAt(at, quote(id)+", which is the id of another thing too, on "+f.words(), "give one of them another id")
			return
		}
		first[id] = at
		if t, ok := r.things.Member(id); ok {
			r.faultAt(at, quote(id)+", which already means one of "+quote(t.ID())+" on "+t.At().words(), "give it another id")
		}
	}
	for i := range r.s.Irons {
		check(r.s.Irons[i].ID, r.s.Irons[i].At)
	}
	for i := range r.s.Parts {
		check(r.s.Parts[i].ID, r.s.Parts[i].At)
	}
	for i := range r.s.Wheels {
		check(r.s.Wheels[i].ID, r.s.Wheels[i].At)
	}
	for _, id := range r.boltIDs {
		check(id, r.bolts[id].At)
	}
	named := map[string]Position{}
	for i := range r.s.Fastenings {
		r.once(named, r.s.Fastenings[i].ID, r.s.Fastenings[i].At, "fastening")
	}
}

// unknownThing says that a name leads to nothing, and where it was meant to lead.
func (r *reader) unknownThing(name string) (what, want string) {
	what = quote(name) + ", which is no iron and no part here"
	if len(r.ids) == 0 {
		for i := range r.s.Irons {
			r.ids = append(r.ids, r.s.Irons[i].ID)
		}
		for i := range r.s.Parts {
			r.ids = append(r.ids, r.s.Parts[i].ID)
		}
	}
	if b := r.bolts[name]; b != nil {
		return quote(name) + ", which is a bolt, where an iron or a part was expected", "write bolt = \"" + name + "\" for it"
	}
	for _, hand := range []vehicle.Hand{vehicle.Near, vehicle.Off} {
		if t, ok := r.things[trimSide(name, hand)]; ok && t.Sides() == Single {
			return what + ": " + quote(t.ID()) + " is no pair", "write " + t.ID() + ", or pair = true on " + t.At().words()
		}
	}
	return what, cmp.Or(r.meant(name, r.ids, "write"), "write the id of one that stands under [iron] or [part]")
}

func trimSide(name string, hand vehicle.Hand) string {
	if side := hand.String() + "-"; len(name) > len(side) && name[:len(side)] == side {
		return name[len(side):]
	}
	return ""
}

// check looks at the whole survey, once all of it could be read.
func (r *reader) check() {
	r.oneMeaning()
	r.fileNames()
	r.unitSlips()
	for i := range r.jointDrafts {
		r.joint(&r.jointDrafts[i])
	}
	r.splintersOf()
	r.loadsOn()
	r.approved()
	r.moveThings()
	r.wheelThings()
	for i := range r.s.Datum {
		r.about(&r.s.Datum[i], r.datumThing)
	}
	for i := range r.s.Evidence {
		r.about(&r.s.Evidence[i], nil)
	}
}

// fileNames refuses two parts whose files would have one name.
func (r *reader) fileNames() {
	first := map[string]*Part{}
	for i := range r.s.Parts {
		p := &r.s.Parts[i]
		slug := vehicle.Slug(p.Name)
		switch f := first[slug]; {
		case slug == "":
			r.faultAt(p.At, "a part called "+quote(p.Name)+", from which no file can be named", "use letters a to z or figures in its name")
		case f != nil && f.ID != p.ID:
			r.faultAt(p.At, quote(p.Name)+" and "+quote(f.Name)+" (line "+numbered(f.At.Line)+"), whose files would have one name", "give one of them another name")
		default:
			first[slug] = p
		}
	}
}

// joint checks what a joint names.
func (r *reader) joint(d *jointDraft) {
	if d.Of == "" || d.With == "" {
		return
	}
	of, okOf := r.find(d.Of, d.ofAt)
	with, okWith := r.find(d.With, d.withAt)
	switch {
	case !okOf || !okWith:
		return
	case of.Part == nil:
		r.faultAt(d.ofAt, "a "+string(d.Kind)+" of "+quote(d.Of)+", which is an iron", "write the part of wood that is cut")
		return
	case d.Kind == TenonJoint && with.Part == nil:
		r.faultAt(d.withAt, "a tenon into "+quote(d.With)+", which is an iron", "write the part that has the mortise")
		return
	}
	ends := map[vehicle.Run][]string{
		vehicle.Across: {"near", "off"}, vehicle.Along: {"fore", "hind"}, vehicle.Upright: {"lower", "upper"},
	}
	want, ok := ends[of.Runs()]
	if d.End == "" || d.End == "both" || !ok || slices.Contains(want, d.End) {
		return
	}
	r.faultAt(d.endAt, "a tenon on the "+d.End+" end of "+quote(d.Of)+", which runs "+of.Runs().String(), "write "+listed(want, "or")+", or both")
}

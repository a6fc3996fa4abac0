package survey

import "lostwood/internal/quantity"

const splinterMeans = "What is left of an old timber, to hold woods against: weighed, or only looked at. Write [[splinter]] on a line before each."

// splinterDamp is the moisture of a piece long kept indoors, in percent;
// common practice, no source.
const splinterDamp = 12

// A Splinter is a surviving piece of a part.
type Splinter struct {
	At       Position
	Part     string           // the id of its family
	Density  quantity.Density // 0 where it was not weighed
	Moisture quantity.Moisture
	Look     string

	named   string // as written, and where
	namedAt Position
}

func splinterKeys() []key[Splinter] {
	return []key[Splinter]{
		{
			name: "part", also: "of from", need: must, example: `"reach"`, means: "the part that it is of",
			take: func(r *reader, v *node, s *Splinter) {
				s.named, _ = r.text(v)
				s.namedAt = r.at(v)
			},
		},
		{
			name: "density", also: "weight weighs mass", example: "690", means: "its weight over its size, in kg/m3, both at the same moisture",
			take: func(r *reader, v *node, s *Splinter) {
				if f, ok := r.number(v, "kg/m3", 50, 1700); ok {
					s.Density = quantity.Density(f)
				}
			},
		},
		{
			name: "moisture", example: "12", means: "its moisture when it was weighed, in percent of dry weight; 12 where not given, as of a piece long kept indoors",
			take: func(r *reader, v *node, s *Splinter) {
				if f, ok := r.number(v, "moisture in percent", 0, 100); ok {
					s.Moisture = quantity.Moisture(f)
				}
			},
		},
		{
			name: "look", also: "looks appearance", example: `"pale, rings of large pores, no flecks on the face"`, means: "how its clean-cut end and face look",
			take: intoText(func(s *Splinter) *string { return &s.Look }),
		},
	}
}

func (r *reader) splinters(n *node) {
	for _, v := range n.items {
		s := Splinter{At: r.at(v), Moisture: splinterDamp}
		if !readGroup(r, v, "a splinter", splinterKeys(), &s) {
			continue
		}
		if v.get("density") == nil && v.get("look") == nil {
			r.missing(v.at, "a splinter with no word of its weight or its look", "write density = 690, or look = \"pale, with large pores\", or both")
		}
		if v.get("moisture") != nil && v.get("density") == nil {
			r.fault(v.named["moisture"].at, "the moisture of a splinter that was not weighed", "write its density too, or take moisture away")
		}
		r.s.Splinters = append(r.s.Splinters, s)
	}
}

// splintersOf finds the parts that splinters are of.
func (r *reader) splintersOf() {
	first := map[string]Position{}
	for i := range r.s.Splinters {
		s := &r.s.Splinters[i]
		if s.named == "" {
			continue
		}
		t, ok := r.find(s.named, s.namedAt)
		if !ok {
			continue
		}
		s.Part = t.ID()
		before, twice := first[s.Part]
		switch {
		case t.Part == nil:
			r.faultAt(s.namedAt, "a splinter of "+quote(s.named)+", which is an iron", "write the part of wood that it is of")
		case twice:
			r.faultAt(s.namedAt, "a second splinter of "+quote(s.Part)+", first on "+before.words(), "keep the one that was weighed best, or write the mean of both")
		default:
			first[s.Part] = s.At
		}
	}
}

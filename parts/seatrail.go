package parts

import (
	"slices"

	"lostwood/parts/form"
)

// A SeatRail runs round the back of a seat on its irons: straight, or bent
// forward at both corners. Bent, its box reaches from the back to the ends of
// its returns, and its back runs along the first side.
type SeatRail struct {
	Long       Length // over all, from side to side
	Wide, Deep Length // of its section: level across the rail, and up
	// Return is from the back to the end of each return, over all, and Bend the
	// radius of the corners to the rail's middle line; 0 for a straight rail.
	Return, Bend Length
	Round        Length // radius of the section's corners; 0 leaves them sharp
	// A round end is left at each end beyond a square shoulder, of diameter
	// Tenon and length TenonLong; 0 for none.
	Tenon, TenonLong Length
	Work             []Feature
}

func seatRailKind() Kind {
	k := Kind{
		Name:  "seat rail",
		Means: "the rail round the back of a seat, straight or with bent corners",
		Dimensions: []Dimension{
			{"long", "over all, from side to side", AlongX, InLength, Required},
			{"wide", "of its section, level", AcrossY, InLength, Required},
			{"deep", "of its section, up", UpZ, InLength, Required},
			{"return", "from the back to the end of each return, over all; a straight rail where left out", NoAxis, InLength, Optional},
			{"bend", "radius of the bent corners, to the rail's middle line", NoAxis, InLength, Optional},
			{"round", "radius of the section's corners", NoAxis, InLength, Optional},
			{"tenon", "diameter of the round ends", NoAxis, InLength, Optional},
			{"tenon-long", "length of the round ends, beyond their shoulders", NoAxis, InLength, Optional},
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		return SeatRail{
			Long: l["long"], Wide: l["wide"], Deep: l["deep"], Return: l["return"], Bend: l["bend"],
			Round: l["round"], Tenon: l["tenon"], TenonLong: l["tenon-long"], Work: m.Work,
		}
	})
}

// Kind is as in Part.
func (s SeatRail) Kind() string { return "seat rail" }

func (s SeatRail) bent() bool { return s.Return != 0 || s.Bend != 0 }

// Validate is as in Part.
func (s SeatRail) Validate() error {
	l := limits{part: s.Kind()}
	l.extents(named{"long", s.Long}, named{"wide", s.Wide}, named{"deep", s.Deep})
	if l.sound() && s.bent() {
		// Some of the back and of the returns must be straight.
		const straight = 5
		most := min((s.Long-s.Wide)/2, s.Return-s.Wide/2) - straight
		l.need("return", s.Return, 1.5*s.Wide+3*straight, longest, "it takes in the bend")
		l.need("bend", s.Bend, s.Wide/2+straight, most, "it is to the middle line, and the rail must be straight beyond it")
	}
	if s.Tenon != 0 || s.TenonLong != 0 {
		l.need("tenon", s.Tenon, 1, thickest, "its two sizes go together")
		l.need("tenon-long", s.TenonLong, 1, longest, "its two sizes go together")
	}
	return l.stick(s.Stick(), s.own())
}

func (s SeatRail) own() map[string]string {
	own := map[string]string{}
	for i := range Arrises() {
		e := numbered("rounded edge", i+1)
		own[e+" radius"], own[e+" size"] = "round", "round"
	}
	for i := range 2 {
		t := numbered("round end", i+1)
		own[t+" diameter"], own[t+" long"] = "tenon", "tenon-long"
	}
	return own
}

// Stick is as in Part.
func (s SeatRail) Stick() Stick {
	var body Body = Square(s.Long, s.Wide, s.Deep)
	if s.bent() {
		body = Bent{Middle: s.middle(), Thick: s.Wide, Deep: s.Deep}
	}
	return Stick{
		Body:     body,
		Features: slices.Concat(s.Work, s.roundEnds(), s.rounded()),
		FaceSide: Under, FaceEdge: FirstSide,
	}
}

// middle is the rail's middle line, from the end of the first return round the
// back to the end of the second.
func (s SeatRail) middle() form.Path {
	a := s.Wide / 2
	b := s.Long - a
	at := func(x, y Length, bulge float64) form.Vertex {
		return form.Vertex{Point: form.Point{X: x, Y: y}, Bulge: bulge}
	}
	return form.Path{
		at(a, s.Return, 0), at(a, a+s.Bend, quarter), at(a+s.Bend, a, 0),
		at(b-s.Bend, a, quarter), at(b, a+s.Bend, 0), at(b, s.Return, 0),
	}
}

func (s SeatRail) rounded() []Feature {
	if s.Round == 0 {
		return nil
	}
	var fs []Feature
	for i, a := range Arrises() {
		fs = append(fs, EasedEdge{ID: numbered("rounded edge", i+1), Edge: a, Radius: s.Round})
	}
	return fs
}

func (s SeatRail) roundEnds() []Feature {
	if s.Tenon == 0 && s.TenonLong == 0 {
		return nil
	}
	var fs []Feature
	for i, end := range []Face{FirstEnd, SecondEnd} {
		fs = append(fs, RoundTenon{
			ID: numbered("round end", i+1), What: "round end", End: end, Diameter: s.Tenon, Long: s.TenonLong,
		})
	}
	return fs
}

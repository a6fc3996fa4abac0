package parts

import "slices"

// A Slat is a narrow board of the floor.
type Slat struct {
	Long, Wide, Thick Length
	Eased             Length // radius of its two upper long edges; 0 leaves them sharp
	Work              []Feature
}

func slatKind() Kind {
	k := Kind{
		Name:  "slat",
		Means: "a narrow board of the floor, with a space on either side",
		Dimensions: []Dimension{
			{"long", "end to end", AlongX, InLength, Required},
			{"wide", "across", AcrossY, InLength, Required},
			{"thick", "through the board", UpZ, InLength, Required},
			{"eased", "radius of the eased upper edges", NoAxis, InLength, Optional},
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		return Slat{Long: l["long"], Wide: l["wide"], Thick: l["thick"], Eased: l["eased"], Work: m.Work}
	})
}

// Kind is as in Part.
func (s Slat) Kind() string { return "slat" }

// Validate is as in Part.
func (s Slat) Validate() error {
	l := limits{part: s.Kind()}
	l.extents(named{"long", s.Long}, named{"wide", s.Wide}, named{"thick", s.Thick})
	return l.stick(s.Stick(), ownEased())
}

// Stick is as in Part.
func (s Slat) Stick() Stick {
	upper := easedEdges(s.Eased, Arris{Upper, FirstSide}, Arris{Upper, SecondSide})
	return Stick{
		Body:     Square(s.Long, s.Wide, s.Thick),
		Features: slices.Concat(s.Work, upper),
		FaceSide: Under, FaceEdge: FirstSide,
	}
}

package parts

import (
	"slices"

	"lostwood/parts/form"
)

// A Reach is the long timber that joins the fore carriage to the hind one. It
// may taper to either end, in width alike on both sides of its middle line,
// and in depth on its underside: the upper face is straight.
type Reach struct {
	Long       Length
	Wide, Deep Length // at the first (fore) end
	// HindWide and HindDeep are at the second end; 0 for no taper.
	HindWide, HindDeep Length
	// RoundEnds is the radius, seen from above, of both ends' corners, and
	// ClipEnds the length cut off along both edges; 0 leaves them square.
	RoundEnds, ClipEnds Length
	Chamfer             Length // of the four long edges; 0 for none
	ChamferStop         Length // from each end to where the chamfers stop; 0 runs them out
	Work                []Feature
}

func reachKind() Kind {
	k := Kind{
		Name:  "reach",
		Means: "the long timber, fore and aft, that joins the fore carriage to the hind one",
		Dimensions: []Dimension{
			{"long", "end to end", AlongX, InLength, Required},
			{"wide", "across, at the fore end", AcrossY, InLength, Required},
			{"deep", "up, at the fore end", UpZ, InLength, Required},
			{"hind-wide", "across, at the hind end; as wide as the fore end where left out", NoAxis, InLength, Optional},
			{"hind-deep", "up, at the hind end; as deep as the fore end where left out", NoAxis, InLength, Optional},
			{"round-ends", "radius of the ends' corners, seen from above", NoAxis, InLength, Optional},
			{"clip-ends", "how much is cut off the ends' corners, along both edges, seen from above", NoAxis, InLength, Optional},
			chamferDimension(), chamferStopDimension(),
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		return Reach{
			Long: l["long"], Wide: l["wide"], Deep: l["deep"], HindWide: l["hind-wide"], HindDeep: l["hind-deep"],
			RoundEnds: l["round-ends"], ClipEnds: l["clip-ends"],
			Chamfer: l["chamfer"], ChamferStop: l["chamfer-stop"], Work: m.Work,
		}
	})
}

// Kind is as in Part.
func (r Reach) Kind() string { return "reach" }

func (r Reach) hind() (wide, deep Length) {
	wide, deep = r.HindWide, r.HindDeep
	if wide == 0 {
		wide = r.Wide
	}
	if deep == 0 {
		deep = r.Deep
	}
	return wide, deep
}

// Validate is as in Part.
func (r Reach) Validate() error {
	l := limits{part: r.Kind()}
	l.extents(named{"long", r.Long}, named{"wide", r.Wide}, named{"deep", r.Deep})
	l.may("hind-wide", r.HindWide, thinnest, thickest, slip)
	l.may("hind-deep", r.HindDeep, thinnest, thickest, slip)
	if l.sound() {
		r.checkEnds(&l)
	}
	return l.stick(r.Stick(), ownChamfers())
}

func (r Reach) checkEnds(l *limits) {
	wide, _ := r.hind()
	most := min(min(wide, r.Wide)/2, r.Long/4)
	l.may("round-ends", r.RoundEnds, 1, most, "two corners share each end")
	l.may("clip-ends", r.ClipEnds, 1, most-.5, "two corners share each end")
	if r.RoundEnds != 0 && r.ClipEnds != 0 {
		l.need("clip-ends", r.ClipEnds, 0, 0, "the ends are rounded already")
	}
	l.chamferStop(r.Long, r.Chamfer, r.ChamferStop, r.shaped())
}

// shaped is how far the shaping of the ends goes along the reach.
func (r Reach) shaped() Length { return max(r.RoundEnds, r.ClipEnds) }

// plan tapers between the shaped ends, and is parallel along them: so each end
// is as wide as it is said to be.
func (r Reach) plan() form.Profile {
	wide, _ := r.hind()
	box := max(r.Wide, wide)
	a, b := (box-r.Wide)/2, (box-wide)/2
	c := r.shaped()
	at := func(x, y Length) form.Point { return form.Point{X: x, Y: y} }
	if c == 0 || wide == r.Wide {
		p := form.Polygon(at(0, a), at(r.Long, b), at(r.Long, box-b), at(0, box-a))
		return cornered(p, r.RoundEnds, r.ClipEnds, 0, 1, 2, 3)
	}
	p := form.Polygon(
		at(0, a), at(c, a), at(r.Long-c, b), at(r.Long, b),
		at(r.Long, box-b), at(r.Long-c, box-b), at(c, box-a), at(0, box-a))
	return cornered(p, r.RoundEnds, r.ClipEnds, 0, 3, 4, 7)
}

// Stick is as in Part.
func (r Reach) Stick() Stick {
	_, deep := r.hind()
	box := max(r.Deep, deep)
	side := form.Polygon(
		form.Point{X: 0, Y: box - r.Deep}, form.Point{X: r.Long, Y: box - deep},
		form.Point{X: r.Long, Y: box}, form.Point{X: 0, Y: box})
	return Stick{
		Body:     Sawn{Plan: r.plan(), Side: side},
		Features: slices.Concat(r.Work, fourChamfers(r.Long, r.Chamfer, r.ChamferStop)),
		FaceSide: Upper, FaceEdge: FirstSide,
	}
}

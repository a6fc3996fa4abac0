package parts

import (
	"slices"

	"lostwood/parts/form"
)

// A Bolster is the cross timber that carries the body over an axle. Its
// underside may rise towards both ends, and stakes may stand through it.
type Bolster struct {
	Long, Wide, Deep Length
	// KingBolt is the diameter of a hole for the king bolt down through its
	// middle; 0 where there is none, or where a fastening bores it.
	KingBolt Length
	// Rise is how much the underside rises to each end, beyond a flat of length
	// Flat in the middle; 0 for a straight underside.
	Rise, Flat Length
	// A mortise for a stake is cut right down through it near each end,
	// StakeLong along the bolster, StakeWide across, its middle StakeIn from
	// the end; 0 for none.
	StakeLong, StakeWide, StakeIn Length
	Chamfer                       Length // of the four long edges; 0 for none
	// ChamferStop is from each end to where the chamfers stop; 0 runs them out.
	// On a rising underside they always run out in the rise.
	ChamferStop Length
	Work        []Feature
}

func bolsterKind() Kind {
	k := Kind{
		Name:  "bolster",
		Means: "the cross timber that carries the body over an axle",
		Dimensions: []Dimension{
			{"long", "end to end", AlongX, InLength, Required},
			{"wide", "fore and aft", AcrossY, InLength, Required},
			{"deep", "up, in the middle", UpZ, InLength, Required},
			{"king-bolt", "diameter of the king-bolt hole, where no fastening bores it", NoAxis, InLength, Optional},
			{"rise", "how much the underside rises to each end", NoAxis, InLength, Optional},
			{"flat", "length of the underside's flat in the middle, where it rises to the ends", NoAxis, InLength, Optional},
			{"stake-long", "stake mortise, along the bolster", NoAxis, InLength, Optional},
			{"stake-wide", "stake mortise, fore and aft", NoAxis, InLength, Optional},
			{"stake-in", "from the end to the middle of the stake mortise", NoAxis, InLength, Optional},
			chamferDimension(), chamferStopDimension(),
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		return Bolster{
			Long: l["long"], Wide: l["wide"], Deep: l["deep"], KingBolt: l["king-bolt"],
			Rise: l["rise"], Flat: l["flat"],
			StakeLong: l["stake-long"], StakeWide: l["stake-wide"], StakeIn: l["stake-in"],
			Chamfer: l["chamfer"], ChamferStop: l["chamfer-stop"], Work: m.Work,
		}
	})
}

// Kind is as in Part.
func (b Bolster) Kind() string { return "bolster" }

// Validate is as in Part.
func (b Bolster) Validate() error {
	l := limits{part: b.Kind()}
	l.extents(named{"long", b.Long}, named{"wide", b.Wide}, named{"deep", b.Deep})
	if l.sound() {
		l.may("rise", b.Rise, .5, b.Deep-thinnest, "wood must be left at the ends")
		if b.Rise != 0 {
			l.need("flat", b.Flat, 1, b.Long-2, "the underside rises beyond it")
		} else {
			l.may("flat", b.Flat, 0, 0, "it belongs to a rise, and there is none")
		}
		b.checkStakes(&l)
		l.chamferStop(b.Long, b.Chamfer, b.ChamferStop, 0)
	}
	return l.stick(b.Stick(), b.own())
}

// checkStakes wants all three measures of the stake mortises, or none.
func (b Bolster) checkStakes(l *limits) {
	if b.StakeLong == 0 && b.StakeWide == 0 && b.StakeIn == 0 {
		return
	}
	const why = "the three stake sizes go together"
	l.need("stake-long", b.StakeLong, 1, b.Long/2-1, why)
	l.need("stake-wide", b.StakeWide, 1, b.Wide-1, why)
	l.need("stake-in", b.StakeIn, 1, b.Long/2-1, why)
}

// own says which dimension is to blame for a fault in the bolster's own work.
func (b Bolster) own() map[string]string {
	own := ownChamfers()
	own["king-bolt hole diameter"] = "king-bolt"
	for _, m := range []string{"stake mortise 1", "stake mortise 2"} {
		own[m+" long"], own[m+" wide"], own[m+" along"] = "stake-long", "stake-wide", "stake-in"
	}
	return own
}

// Stick is as in Part.
func (b Bolster) Stick() Stick {
	var fs []Feature
	middle := form.Point{X: b.Long / 2, Y: b.Wide / 2}
	if b.KingBolt != 0 {
		fs = append(fs, Hole{ID: "king-bolt hole", What: "king-bolt hole", Face: Upper, At: middle, Diameter: b.KingBolt})
	}
	fs = append(fs, b.stakes()...)
	return Stick{
		Body:     Sawn{Plan: Square(b.Long, b.Wide, b.Deep).Plan, Side: b.side()},
		Features: slices.Concat(b.Work, fs, b.chamfers()),
		FaceSide: Upper, FaceEdge: FirstSide,
	}
}

func (b Bolster) side() form.Profile {
	if b.Rise == 0 {
		return Square(b.Long, b.Wide, b.Deep).Side
	}
	taper := (b.Long - b.Flat) / 2
	return form.Polygon(
		form.Point{X: 0, Y: b.Rise}, form.Point{X: taper}, form.Point{X: b.Long - taper},
		form.Point{X: b.Long, Y: b.Rise}, form.Point{X: b.Long, Y: b.Deep}, form.Point{X: 0, Y: b.Deep})
}

func (b Bolster) stakes() []Feature {
	if b.StakeLong == 0 && b.StakeWide == 0 && b.StakeIn == 0 {
		return nil
	}
	var fs []Feature
	for i, x := range []Length{b.StakeIn, b.Long - b.StakeIn} {
		id := numbered("stake mortise", i+1)
		fs = append(fs, Mortise{
			ID: id, What: "stake mortise", Face: Upper, At: form.Point{X: x, Y: b.Wide / 2},
			Long: b.StakeLong, Wide: b.StakeWide,
		})
	}
	return fs
}

func (b Bolster) chamfers() []Feature {
	fs := fourChamfers(b.Long, b.Chamfer, b.ChamferStop)
	for i, f := range fs {
		if c := f.(Chamfer); b.Rise != 0 && c.Edge.Flat == Under {
			c.From, c.To = 0, 0
			fs[i] = c
		}
	}
	return fs
}

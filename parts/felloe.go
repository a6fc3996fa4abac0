package parts

import (
	"math"
	"slices"
)

// A Felloe is one piece of a wheel's wooden rim. Its x runs along its chord, z
// out from the wheel's centre; see Arc.
type Felloe struct {
	Radius Length // of the wooden rim's outside, under the tyre, in its middle
	Wide   Length // across, as wide as the tyre
	Deep   Length // back to belly, in its middle
	// Bevel is how far back and belly are out of square to the sides: in a
	// dished wheel they are smaller at the outer side. 0 for square ones.
	Bevel Angle
	// Felloes and Spokes are those of the whole wheel; 0 spokes stands for two a felloe.
	Felloes, Spokes int
	Tongue          Length // diameter of the holes for the spokes' tongues, or their side; 0 for none
	TongueSection   HoleSection
	// Lean is how far the tongues lean out to the outer side; LeanBack is that of
	// every other one, where the spokes are staggered, or the same.
	Lean, LeanBack Angle
	// A dowel hole is bored in the middle of each joint; 0 for none.
	Dowel, DowelDeep Length
	// TyreBolt is the diameter of a hole for a bolt through tyre and felloe, in
	// the felloe's middle where no spoke stands there, else midway between two
	// spokes, or a spoke and the joint; 0 for none.
	TyreBolt Length
	Eased    Length // radius of the belly's edges; 0 leaves them sharp
	Gap      Length // left open at each joint for the tyre to close
	Work     []Feature
}

func felloeKind() Kind {
	k := Kind{
		Name:  "felloe",
		Means: "one piece of a wheel's wooden rim",
		Dimensions: []Dimension{
			{"wide", "across the rim, as wide as the tyre", AcrossY, InLength, Required},
			{"radius", "of the wooden rim's outside, under the tyre", NoAxis, InLength, Required},
			{"deep", "from back to belly, along a spoke", NoAxis, InLength, Required},
			{"felloes", "how many make up the wheel's rim", NoAxis, InCount, Required},
			{"spokes", "how many the wheel has; two a felloe where left out", NoAxis, InCount, Optional},
			{"tongue", "diameter of the holes for the spokes' tongues", NoAxis, InLength, Optional},
			{"dowel", "diameter of the dowel hole in each joint", NoAxis, InLength, Optional},
			{"dowel-deep", "how deep the dowel hole goes in either felloe", NoAxis, InLength, Optional},
			{"tyre-bolt", "diameter of the hole for the tyre bolt", NoAxis, InLength, Optional},
			{"eased", "radius of the belly's eased edges", NoAxis, InLength, Optional},
			{"gap", "left open at each joint for the tyre to close", NoAxis, InLength, Optional},
			{"bevel", "how far back and belly are out of square to the sides, smaller at the outer one", NoAxis, InDegrees, Optional},
			{"lean", "how far the spokes' tongues lean to the outer side, in a dished wheel", NoAxis, InDegrees, Optional},
			{"lean-back", "how far every second tongue leans, where the spokes are staggered", NoAxis, InDegrees, Optional},
			{"tongue-square", "side of square holes for the spokes' tongues, in place of round ones", NoAxis, InLength, Optional},
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		f := Felloe{
			Radius: l["radius"], Wide: l["wide"], Deep: l["deep"], Bevel: m.Angles["bevel"],
			Felloes: m.Counts["felloes"], Spokes: m.Counts["spokes"],
			Tongue: l["tongue"], Lean: m.Angles["lean"], LeanBack: m.Angles["lean"],
			Dowel: l["dowel"], DowelDeep: l["dowel-deep"],
			TyreBolt: l["tyre-bolt"], Eased: l["eased"], Gap: l["gap"], Work: m.Work,
		}
		if side := l["tongue-square"]; side != 0 {
			f.Tongue, f.TongueSection = side, SquareHole
		}
		if back, ok := m.Angles["lean-back"]; ok {
			f.LeanBack = back
		}
		return f
	})
}

// Kind is as in Part.
func (f Felloe) Kind() string { return "felloe" }

// Validate is as in Part.
func (f Felloe) Validate() error {
	l := limits{part: f.Kind()}
	l.need("wide", f.Wide, thinnest, thickest, slip)
	l.need("radius", f.Radius, 100, longest, slip)
	l.need("deep", f.Deep, thinnest, f.Radius-50, "a hub and its spokes stand inside it")
	l.count("felloes", f.Felloes, 3, 24, "a rim of fewer has no strength, of more no room")
	if f.Spokes != 0 && l.sound() {
		f.checkSpokes(&l)
	}
	l.may("gap", f.Gap, 0, 25, slip)
	if f.Dowel != 0 || f.DowelDeep != 0 {
		l.need("dowel", f.Dowel, 1, thickest, "its two sizes go together")
		l.need("dowel-deep", f.DowelDeep, 1, longest, "its two sizes go together")
	}
	return l.stick(f.Stick(), f.own())
}

func (f Felloe) checkSpokes(l *limits) {
	l.count("spokes", f.Spokes, f.Felloes, 4*f.Felloes, "one to four a felloe")
	if l.sound() && f.Spokes%f.Felloes != 0 {
		whole := Length(f.Spokes / f.Felloes * f.Felloes)
		l.add(&LimitError{
			Dimension: "spokes", Got: Length(f.Spokes), Min: whole, Max: whole,
			Why: "each felloe takes the same number", In: InCount,
		})
	}
}

func (f Felloe) own() map[string]string {
	own := ownEased()
	for i := range f.spokes() {
		t := numbered("tongue hole", i+1)
		own[t+" diameter"], own[t+" angle"], own[t+" lean"] = "tongue", "tongue", "lean"
	}
	for i := range 2 {
		d := numbered("dowel hole", i+1)
		own[d+" diameter"], own[d+" depth"] = "dowel", "dowel-deep"
	}
	own["tyre-bolt hole diameter"], own["tyre-bolt hole angle"] = "tyre-bolt", "tyre-bolt"
	return own
}

// spokes is how many this felloe takes.
func (f Felloe) spokes() int {
	if f.Spokes == 0 || f.Felloes < 1 {
		return 2
	}
	return min(max(f.Spokes/f.Felloes, 0), 4)
}

// spokeAt is the angle from the felloe's middle to one of its spokes.
func (f Felloe) spokeAt(i float64) Angle {
	n := float64(f.spokes())
	return Angle((i + .5 - n/2) * 2 * math.Pi / (n * float64(f.Felloes)))
}

// Stick is as in Part.
func (f Felloe) Stick() Stick {
	return Stick{
		Body:     f.arc(),
		Features: slices.Concat(f.Work, f.bevelled(), f.holes(), easedEdges(f.Eased, Arris{Under, FirstSide}, Arris{Under, SecondSide})),
		FaceSide: SecondSide, FaceEdge: Under,
	}
}

func (f Felloe) arc() Arc {
	a := Arc{Radius: f.Radius, Wide: f.Wide, Depth: f.Deep, Pieces: f.Felloes, Gap: f.Gap, Bevel: f.Bevel}
	if f.Bevel != 0 {
		a.Radius += a.fall() / 2
		a.Depth += a.fall()
	}
	return a
}

func (f Felloe) bevelled() []Feature {
	if f.Bevel == 0 {
		return nil
	}
	return []Feature{Bevelled{ID: "bevel"}}
}

func (f Felloe) holes() []Feature {
	var fs []Feature
	if f.Tongue != 0 {
		for i := range f.spokes() {
			fs = append(fs, RadialHole{
				ID: numbered("tongue hole", i+1), What: "tongue hole", Face: Under,
				Angle: f.spokeAt(float64(i)), Across: f.Wide / 2, Diameter: f.Tongue, Section: f.TongueSection, Lean: f.lean(i),
			})
		}
	}
	if f.Dowel != 0 || f.DowelDeep != 0 {
		for i, end := range []Face{FirstEnd, SecondEnd} {
			fs = append(fs, EndHole{
				ID: numbered("dowel hole", i+1), What: "dowel hole", End: end, Diameter: f.Dowel, Depth: f.DowelDeep,
			})
		}
	}
	if f.TyreBolt != 0 {
		fs = append(fs, RadialHole{
			ID: "tyre-bolt hole", What: "tyre-bolt hole", Face: Upper,
			Angle: f.boltAt(), Across: f.Wide / 2, Diameter: f.TyreBolt,
		})
	}
	return fs
}

// lean is that of the felloe's i-th tongue.
func (f Felloe) lean(i int) Angle {
	if i%2 == 1 {
		return f.LeanBack
	}
	return f.Lean
}

// boltAt is the angle from the felloe's middle to its tyre bolt.
func (f Felloe) boltAt() Angle {
	switch n := f.spokes(); {
	case n%2 == 0:
		return 0
	case n == 1:
		return Angle(math.Pi / float64(2*f.Felloes))
	default:
		return f.spokeAt(float64(n) / 2)
	}
}

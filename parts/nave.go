package parts

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
)

// A Nave is a wheel's hub: turned, mortised for the spokes' feet and bored for
// its box. Its x runs along the axle from its back end to its front end.
type Nave struct {
	Long     Length
	Diameter Length // in the middle of the mortises
	// Back and Front are the diameters at its ends.
	Back, Front Length
	Forward     Length // from midway between the mortise circles to its front end
	SeatLong    Length // what is turned for the spokes' shoulders, along it
	SeatFall    Angle  // how much that falls to the front; 0 is level
	Turned      []Station
	Feet        Feet
	Box         BoxBore
	Work        []Feature
}

// Feet are the spokes' feet that a nave is mortised for.
type Feet struct {
	Spokes      int
	Stagger     Length // from one mortise circle to the other; 0 for one circle
	Lean        Angle  // of the spokes out to the front; LeanBack that of every second one, the back ones
	LeanBack    Angle
	Wide, Thick Length // front to back, and round the nave
	Point       Length // front to back at the inner end; 0 is as wide as at the mouth
	Deep        Length // along the spoke from the nave's surface in the middle of the mouth
}

// A BoxBore is what a nave is bored to for its box: the box's outside.
type BoxBore struct {
	Long         Length
	Large, Small Length // diameters at the back and the front of the box
	In           Length // from the nave's back end to the box's
	// Back and Front are the diameters behind and before the box; 0 is as wide as
	// the box there.
	Back, Front Length
}

func naveKind() Kind {
	k := Kind{
		Name:  "nave",
		Means: "a wheel's hub, turned and mortised",
		Dimensions: []Dimension{
			{"long", "end to end", AlongX, InLength, Required},
			{"diameter", "in the middle of the mortises", NoAxis, InLength, Required},
			{"back", "diameter at its back end", NoAxis, InLength, Required},
			{"front", "diameter at its front end", NoAxis, InLength, Required},
			{"forward", "from midway between the mortise circles to the front end", NoAxis, InLength, Required},
			{"seat-long", "what is turned for the spokes' shoulders, along it", NoAxis, InLength, Required},
			{"seat-fall", "how much that falls to the front", NoAxis, InDegrees, Optional},
			{"spokes", "how many the wheel has", NoAxis, InCount, Required},
			{"stagger", "between the middles of the two mortise circles", NoAxis, InLength, Optional},
			{"lean", "how far the spokes lean out to the front", NoAxis, InDegrees, Optional},
			{"lean-back", "how far the back spokes lean, where they are staggered", NoAxis, InDegrees, Optional},
			{"foot-wide", "a mortise, front to back, square to its spoke", NoAxis, InLength, Required},
			{"foot-thick", "a mortise, round the nave", NoAxis, InLength, Required},
			{"foot-point", "a mortise at its bottom, front to back; as at the mouth where left out", NoAxis, InLength, Optional},
			{"foot-deep", "a mortise, along its spoke", NoAxis, InLength, Required},
			{"box-long", "the box", NoAxis, InLength, Required},
			{"box-large", "outside of the box at its back", NoAxis, InLength, Required},
			{"box-small", "outside of the box at its front", NoAxis, InLength, Required},
			{"box-in", "from the nave's back end to the box's", NoAxis, InLength, Optional},
			{"back-recess", "diameter bored behind the box", NoAxis, InLength, Optional},
			{"front-recess", "diameter bored before the box", NoAxis, InLength, Optional},
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		n := Nave{
			Long: l["long"], Diameter: l["diameter"], Back: l["back"], Front: l["front"],
			Forward: l["forward"], SeatLong: l["seat-long"], SeatFall: m.Angles["seat-fall"],
			Feet: Feet{
				Spokes: m.Counts["spokes"], Stagger: l["stagger"], Lean: m.Angles["lean"], LeanBack: m.Angles["lean"],
				Wide: l["foot-wide"], Thick: l["foot-thick"], Point: l["foot-point"], Deep: l["foot-deep"],
			},
			Box: BoxBore{
				Long: l["box-long"], Large: l["box-large"], Small: l["box-small"], In: l["box-in"],
				Back: l["back-recess"], Front: l["front-recess"],
			},
			Work: m.Work,
		}
		if back, ok := m.Angles["lean-back"]; ok {
			n.Feet.LeanBack = back
		}
		return n
	})
}

// Kind is as in Part.
func (n Nave) Kind() string { return "nave" }

// Validate is as in Part.
func (n Nave) Validate() error {
	l := limits{part: n.Kind()}
	l.need("long", n.Long, shortest, thickest, slip)
	l.need("diameter", n.Diameter, shortest, thickest, slip)
	l.need("back", n.Back, thinnest, n.Diameter, "a nave is stoutest at the spokes")
	l.need("front", n.Front, thinnest, n.Diameter, "a nave is stoutest at the spokes")
	l.need("seat-long", n.SeatLong, 5, n.Long-2, "the nave goes past it both ways")
	l.need("forward", n.Forward, n.SeatLong/2+.5, n.Long-n.SeatLong/2-.5, "the mortises stand within the nave")
	l.degrees("seat-fall", n.SeatFall, 20*quantity.Degree, "no wheel is dished so far")
	l.degrees("lean", n.Feet.Lean, 25*quantity.Degree, "no wheel is dished so far")
	l.degrees("lean-back", n.Feet.LeanBack, 25*quantity.Degree, "no wheel is dished so far")
	l.count("spokes", n.Feet.Spokes, 3, 24, "a nave has no room for more")
	if l.sound() {
		n.checkBore(&l)
		n.checkTurned(&l)
	}
	if l.sound() {
		n.checkFeet(&l)
	}
	return l.stick(n.Stick(), nil)
}

func (n Nave) checkBore(l *limits) {
	b := n.Box
	const round = "wood must stand round it"
	wood := func(d Length) Length { return d - 2*thinnest }
	l.need("box-large", b.Large, 2, wood(n.Diameter), round)
	l.need("box-small", b.Small, 2, min(b.Large, wood(n.Diameter)), "a box is wider at its back")
	l.need("box-long", b.Long, 5, n.Long, "it stands within the nave")
	l.may("box-in", b.In, .5, n.Long-b.Long, "it stands within the nave")
	l.need("back-recess", n.backBore(), b.Large, wood(n.Back), round)
	l.need("front-recess", n.frontBore(), b.Small, wood(n.Front), round)
}

func (n Nave) backBore() Length { return max(n.Box.Back, n.Box.Large) }

func (n Nave) frontBore() Length { return max(n.Box.Front, n.Box.Small) }

func (n Nave) checkTurned(l *limits) {
	for _, s := range n.Turned {
		l.need("turned", s.Along, 0, n.Long, "a band stands on the nave")
		l.need("turned diameter", s.Diameter, thinnest, n.Diameter+n.SeatLong, "a nave is stoutest at the spokes")
	}
}

// stations are the corners of its profile.
func (n Nave) stations() []Station {
	middle := n.Long - n.Forward
	fall := n.SeatLong * Length(math.Tan(float64(n.SeatFall)))
	ss := []Station{
		{0, n.Back}, {middle - n.SeatLong/2, n.Diameter + fall}, {middle + n.SeatLong/2, n.Diameter - fall}, {n.Long, n.Front},
	}
	ss = append(ss, n.Turned...)
	slices.SortStableFunc(ss, func(a, b Station) int { return cmp.Compare(a.Along, b.Along) })
	// What is turned for a band at an end goes before the nave's own diameter there.
	for len(ss) > 2 && ss[1].Along <= 0 {
		ss = ss[1:]
	}
	for k := len(ss); k > 2 && ss[k-2].Along >= n.Long; k = len(ss) {
		ss = ss[:k-1]
	}
	return slices.CompactFunc(ss, func(a, b Station) bool { return a == b })
}

// Stick is as in Part.
func (n Nave) Stick() Stick {
	return Stick{
		Body:     Turned{n.stations()},
		Features: slices.Concat(n.Work, []Feature{n.bore()}, n.mortises()),
		FaceSide: SecondEnd, FaceEdge: FirstEnd,
	}
}

func (n Nave) bore() TurnedBore {
	b := n.Box
	return TurnedBore{ID: "bore", Stations: []Station{
		{0, n.backBore()},
		{b.In, n.backBore()},
		{b.In, b.Large},
		{b.In + b.Long, b.Small},
		{b.In + b.Long, n.frontBore()},
		{n.Long, n.frontBore()},
	}}
}

func (n Nave) mortises() []Feature {
	var fs []Feature
	f := n.Feet
	for i := range min(max(f.Spokes, 0), 24) {
		step, lean := f.Stagger/2, f.Lean
		if i%2 == 1 {
			step, lean = -f.Stagger/2, f.LeanBack
		}
		fs = append(fs, SpokeMortise{
			ID: numbered("mortise", i+1), Along: n.Long - n.Forward + step,
			Around: Angle(math.Pi + 2*math.Pi*float64(i)/float64(f.Spokes)), Lean: lean,
			Wide: f.Wide, Thick: f.Thick, Point: f.Point, Deep: f.Deep,
		})
	}
	return fs
}

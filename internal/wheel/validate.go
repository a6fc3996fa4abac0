package wheel

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// What a figure may be. The limits are wide on purpose: they catch a slip of
// the unit, not an unusual wheel (common practice, no source).
const (
	thin    Length = 1
	stout   Length = 300
	leastHt Length = 250
	mostHt  Length = 2500
)

const (
	slip     = "a slip of the unit?"
	together = "its sizes go together"
)

// Validate reports everything about the wheel that cannot be made, all at once:
// a joined list of *parts.LimitError, whose Dimension is a Figure's Name, and *Fault.
func (s Spec) Validate() error {
	var l limits
	s.checkRim(&l)
	s.checkSpokes(&l)
	s.checkNave(&l)
	s.checkArm(&l)
	return l.all()
}

func (s Spec) checkRim(l *limits) {
	l.need("height", s.Height, leastHt, mostHt, slip)
	l.need("tyre-wide", s.Tyre.Wide, 10, stout, slip)
	l.need("tyre-thick", s.Tyre.Thick, thin, 60, slip)
	l.may("tyre-bolt", s.Tyre.Bolt, 3, s.Tyre.Wide/2, "it must leave iron on both sides")
	l.count("felloes", s.Rim.Felloes, 3, 24, "a rim of fewer has no strength, of more no room")
	l.may("felloe-wide", s.Rim.Wide, 10, stout, slip)
	l.need("felloe-deep", s.Rim.Deep, 10, s.Height/4, "a nave and its spokes stand inside it")
	l.may("gap", s.Rim.Gap, 0, 25, slip)
	if s.Rim.Dowel != 0 || s.Rim.DowelDeep != 0 {
		l.need("dowel", s.Rim.Dowel, 3, min(s.width(), s.Rim.Deep)*2/3, together+", and it must leave wood round it")
		l.need("dowel-deep", s.Rim.DowelDeep, 3, stout, together)
	}
	l.may("eased", s.Rim.Eased, 0, min(s.width(), s.Rim.Deep)/2, "the felloe's sides and belly must keep some wood")
	most := s.Height / 6
	l.need("dish-built", s.Dish.Built, -most, most, "dished further a wheel folds under its load")
	l.need("dish", s.Dish.Tyred, -most, most, "dished further a wheel folds under its load")
}

func (s Spec) checkSpokes(l *limits) {
	k := s.Spokes
	l.count("spokes", k.Number, 6, 24, slip)
	if f := s.Rim.Felloes; f >= 3 && k.Number >= 6 && k.Number != 2*f {
		l.tell("spokes", fmt.Sprintf("%d spokes do not go two to each of %d felloes; it takes %d spokes, or, where that is even, half as many felloes as spokes", k.Number, f, 2*f))
	}
	l.may("stagger", k.Stagger, 0, 100, slip)
	l.need("foot-wide", k.FootWide, 8, stout, slip)
	l.need("foot-thick", k.FootThick, 5, stout, slip)
	l.need("foot-long", k.FootLong, 10, stout, slip)
	l.may("foot-point", k.FootPoint, k.FootWide/2, k.FootWide, "a foot tapers slightly, to its inner end")
	const stands, tapers = "the shoulder stands out from the foot", "a spoke tapers from its square to its tongue"
	l.need("spoke-wide", k.Wide, k.FootWide+1, stout, stands)
	l.need("spoke-thick", k.Thick, k.FootThick+1, stout, stands)
	l.need("tip-wide", k.TipWide, k.Tongue.Thick+1, min(k.Wide-1, s.width()), tapers)
	l.need("tip-thick", k.TipThick, k.Tongue.Thick+1, k.Thick-1, tapers)
	l.need("tongue", k.Tongue.Thick, 5, s.width()*2/3, "the felloe must keep wood on both sides")
	l.may("tongue-short", k.Tongue.Short, 0, s.Rim.Deep/2, "the tongue must hold")
}

func (s Spec) checkNave(l *limits) {
	n, b := s.Nave, s.Box
	l.need("nave-long", n.Long, 40, 900, slip)
	l.need("nave", n.Diameter, 40, s.Height/2, slip)
	l.need("nave-front", n.Front, 20, n.Diameter, "a nave is thickest at the spokes")
	l.need("nave-back", n.Back, 20, n.Diameter, "a nave is thickest at the spokes")
	l.need("nave-forward", n.Forward, n.SeatLong/2, n.Long-n.SeatLong/2, "the mortises stand within the nave")
	l.need("seat-long", n.SeatLong, s.Spokes.FootWide+s.Spokes.Stagger, n.Long, "the mortises' mouths stand on it")
	l.need("box-long", b.Long, 20, n.Long, "it stands within the nave")
	l.need("box-large", b.Large, 10, min(n.Back, n.Diameter), "the nave stands round it")
	l.need("box-small", b.Small, 8, b.Large, "a box is wider at the back")
	l.need("box-wall", b.Wall, thin, 30, slip)
	l.may("box-in", b.In, 0, n.Long-b.Long, "the box stands within the nave")
	l.may("back-recess", b.BackRecess, b.Large, n.Back, "the nave stands round it")
	l.may("front-recess", b.FrontRecess, b.Small, n.Front, "the nave stands round it")
	for i, band := range n.Bands {
		name := func(what string) string { return fmt.Sprintf("band-%d-%s", i+1, what) }
		l.need(name("wide"), band.Wide, 3, n.Long, slip)
		l.need(name("from"), band.From, 0, n.Long-band.Wide, "the band stands on the nave")
		l.need(name("thick"), band.Thick, .5, 30, slip)
		if band.Large != 0 || band.Small != 0 {
			l.need(name("large"), band.Large, 20, n.Diameter, together)
			l.need(name("small"), band.Small, 20, band.Large, together)
		}
	}
}

func (s Spec) checkArm(l *limits) {
	a := s.Arm
	if a.Long != 0 {
		l.need("arm-long", a.Long, 20, 900, slip)
		l.need("arm-collar", a.AtCollar, 8, s.Box.Large, "the arm runs in the box")
		l.need("arm-point", a.AtPoint, 5, a.AtCollar, "an arm tapers to its point")
		l.may("gather", a.Gather, -50, 50, slip)
	}
	l.degrees("cant", a.Cant, -10*quantity.Degree, 10*quantity.Degree, slip)
	l.may("track", s.Track.Wide, 300, 4000, slip)
	if math.IsNaN(float64(s.Track.Wide)) {
		l.need("track", s.Track.Wide, 300, 4000, slip)
	}
}

// width of the felloes.
func (s Spec) width() Length {
	if s.Rim.Wide != 0 {
		return s.Rim.Wide
	}
	return s.Tyre.Wide
}

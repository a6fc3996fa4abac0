package timber

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

const (
	// saturation is the moisture, in percent, at which shrinkage begins where a
	// wood has no figure of its own: Wood Handbook 2021, eq. 4-9.
	saturation = 30
	// seasonedTo is the moisture to which Australian shrinkage is measured.
	seasonedTo = 12
	// serviceTop is the wettest that the movement of seasoned Australian wood
	// is reckoned by its unit shrinkage; common practice, no source: timber
	// under cover outdoors seldom stays wetter.
	serviceTop = 18
	// lengthwise is the shrinkage along the grain, green to ovendry, in percent,
	// of ordinary wood, from memory of the Wood Handbook (0.1 to 0.2; the
	// larger is taken).
	lengthwise = 0.2
)

// A knot is the size of a piece at a moisture, relative to its green size.
type knot struct{ moisture, size float64 }

// A course is how the size goes with the moisture, in straight lines between
// knots of rising moisture and size. It ends at saturation, above which the
// size stays, or at serviceTop where no green size is known.
type course struct {
	knots []knot
	top   float64 // highest moisture it speaks of; infinite where it ends at saturation
}

// at returns the relative size at m.
func (c course) at(m float64) float64 {
	last := c.knots[len(c.knots)-1]
	if m >= last.moisture {
		return last.size
	}
	i := 1
	for m > c.knots[i].moisture {
		i++
	}
	a, b := c.knots[i-1], c.knots[i]
	return a.size + (b.size-a.size)*(m-a.moisture)/(b.moisture-a.moisture)
}

// saturation returns the moisture at which s begins to shrink.
func (s Species) saturation() float64 {
	if f := s.Shrink.Saturation; f.Known() {
		return f.Value
	}
	return saturation
}

// course returns the course of s in one direction that is not Worst.
func (s Species) course(d Direction) (course, Basis, error) {
	c, basis, err := s.published(d)
	if err != nil {
		return course{}, Basis{}, err
	}
	for i, k := range c.knots {
		if !(k.size > 0) || math.IsInf(k.size, 0) || i > 0 && !(k.moisture > c.knots[i-1].moisture) {
			return course{}, Basis{}, &NoFigureError{s.label(), "a " + d.String() + " shrinkage that leaves any wood", "mend the figures given"}
		}
	}
	return c, basis, nil
}

// published returns the course that the figures of s make, sound or not.
func (s Species) published(d Direction) (course, Basis, error) {
	sat := s.saturation()
	var shrink, move Figure
	switch d {
	case Radial:
		shrink, move = s.Shrink.Radial, s.Move.Radial
	case Tangential:
		shrink, move = s.Shrink.Tangential, s.Move.Tangential
	case Lengthwise:
		f := s.Shrink.Lengthwise
		if !f.Known() {
			f = Figure{lengthwise, "Wood Handbook 2010 p. 4-5", FromMemory}
		}
		return ovendryCourse(f.Value, sat), f.Basis(), nil
	default:
		return course{}, Basis{}, badDirection(d)
	}
	switch {
	case !shrink.Known() && move.Known():
		c, basis := moveCourse(move, s.Move.Kind, sat)
		return c, basis, nil
	case !shrink.Known():
		return course{}, Basis{}, &NoFigureError{
			s.label(), d.String() + " shrinkage",
			"give it with the wood, or name a wood that is like it and has one",
		}
	case s.Shrink.To == GreenToOvendry:
		return ovendryCourse(shrink.Value, sat), shrink.Basis(), nil
	case move.Known() && s.Move.Kind == UnitShrinkage:
		return seasonedCourse(shrink.Value, move.Value, sat), weakest(shrink, move), nil
	}
	// One straight line through the green and the 12 % size, as if nothing collapsed.
	return ovendryCourse(shrink.Value*sat/(sat-seasonedTo), sat), shrink.Basis(), nil
}

// ovendryCourse is the linear rule, Wood Handbook 2021 eq. 4-9.
func ovendryCourse(percent, sat float64) course {
	return course{[]knot{{0, 1 - percent/100}, {sat, 1}}, math.Inf(1)}
}

// seasonedCourse goes from green to 12 % by the shrinkage, and in service by
// the unit shrinkage, which is a part of the size at 12 %. They meet on the way
// up at serviceTop, or where service would pass the green size.
func seasonedCourse(percent, unit, sat float64) course {
	dry := 1 - percent/100
	slope := dry * unit / 100
	knots := []knot{{0, dry - slope*seasonedTo}}
	if wet := dry + slope*(serviceTop-seasonedTo); wet < 1 && serviceTop < sat {
		knots = append(knots, knot{serviceTop, wet})
	} else {
		knots = append(knots, knot{seasonedTo, dry})
	}
	return course{append(knots, knot{sat, 1}), math.Inf(1)}
}

// moveCourse is for a wood of which only a movement coefficient is known.
func moveCourse(move Figure, kind Coefficient, sat float64) (course, Basis) {
	if kind == UnitShrinkage {
		slope := move.Value / 100
		return course{[]knot{{0, 1 - slope*seasonedTo}, {serviceTop, 1 + slope*(serviceTop-seasonedTo)}}, serviceTop}, move.Basis()
	}
	// Wood Handbook table 13-5 is of the size at 10 %: turned back into shrinkage.
	c := move.Value / 100
	percent := 100 * c * sat / (1 + c*(sat-10))
	return ovendryCourse(percent, sat), Basis{move.Source, min(move.Standing, Derived)}
}

// Resize returns the size, at moisture to, of wood that measures size at
// moisture from. It is exactly undone by swapping the moistures, changes
// nothing above saturation, and takes the larger movement where the grain is
// not known.
//
// Woods whose shrinkage was measured green to ovendry follow the Wood
// Handbook's linear rule; Australian woods follow their shrinkage to 12 % and
// their unit shrinkage in service. A wood with no shrinkage known gives a
// *[NoFigureError], a moisture or size that cannot be a *[RangeError].
func (s Species) Resize(size quantity.Length, from, to quantity.Moisture, d Direction) (quantity.Length, error) {
	ratio, _, err := s.ratio(from, to, d)
	if err != nil {
		return 0, err
	}
	return scale(size, ratio)
}

// ShrinkBasis says where the figures come from that Resize uses.
func (s Species) ShrinkBasis(d Direction) (Basis, error) {
	_, basis, err := s.ratio(0, 0, d)
	return basis, err
}

// ResizeAcross is Resize for a dimension that lies at an angle to the radial
// direction: the common approximation R cos² + T sin² (no source).
func (s Species) ResizeAcross(size quantity.Length, from, to quantity.Moisture, rings quantity.Angle) (quantity.Length, error) {
	if err := within("angle of the rings, degrees", rings.Degrees(), -360, 360); err != nil {
		return 0, err
	}
	r, _, err := s.course(Radial)
	if err != nil {
		return 0, err
	}
	t, _, err := s.course(Tangential)
	if err != nil {
		return 0, err
	}
	if err := s.checkMoistures(min(r.top, t.top), from, to); err != nil {
		return 0, err
	}
	cos2 := math.Pow(math.Cos(float64(rings)), 2)
	at := func(m quantity.Moisture) float64 { return cos2*r.at(float64(m)) + (1-cos2)*t.at(float64(m)) }
	return scale(size, at(to)/at(from))
}

func scale(size quantity.Length, ratio float64) (quantity.Length, error) {
	if err := within("size, mm", size.Millimetres(), 0, math.MaxFloat64/2); err != nil {
		return 0, err
	}
	return size * quantity.Length(ratio), nil
}

// ratio returns the size at to over the size at from.
func (s Species) ratio(from, to quantity.Moisture, d Direction) (float64, Basis, error) {
	if d == Worst {
		return s.worstRatio(from, to)
	}
	c, basis, err := s.course(d)
	if err != nil {
		return 0, Basis{}, err
	}
	if err := s.checkMoistures(c.top, from, to); err != nil {
		return 0, Basis{}, err
	}
	return c.at(float64(to)) / c.at(float64(from)), basis, nil
}

// worstRatio returns the ratio, radial or tangential, that is farther from one.
// The tangential one must be known: it is the larger in every wood listed.
func (s Species) worstRatio(from, to quantity.Moisture) (float64, Basis, error) {
	t, basis, err := s.ratio(from, to, Tangential)
	if err != nil {
		return 0, Basis{}, err
	}
	r, radial, err := s.ratio(from, to, Radial)
	if err == nil && math.Abs(math.Log(r)) > math.Abs(math.Log(t)) {
		return r, radial, nil
	}
	return t, basis, nil
}

// wettest is more water than any wood holds, percent.
const wettest = 600

func checkMoisture(m quantity.Moisture) error {
	return within("moisture, percent", float64(m), 0, wettest)
}

func (s Species) checkMoistures(top float64, moistures ...quantity.Moisture) error {
	for _, m := range moistures {
		if err := checkMoisture(m); err != nil {
			return err
		}
		if float64(m) > top {
			return &NoFigureError{
				s.label(), fmt.Sprintf("shrinkage from above %g %% moisture", top),
				"give its shrinkage green to 12 %, or work from seasoned wood",
			}
		}
	}
	return nil
}

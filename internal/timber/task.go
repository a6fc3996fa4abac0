package timber

import (
	"errors"
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// A Task is what a piece of wood is wanted for: a part, and the moisture it
// lives at.
type Task struct {
	Net                      quantity.Volume // of the finished part; 0 where no part is meant
	Broad                    quantity.Length // its greater extent across the grain
	Service, Driest, Wettest quantity.Moisture
	BendRadius, BendThick    quantity.Length // of the tightest bend, inside; 0 for a straight part
	Splinter                 Splinter
}

// A Splinter is what a surviving piece weighs, to hold woods against. A zero
// Density stands for no splinter.
type Splinter struct {
	Density quantity.Density
	At      quantity.Moisture // its own, when it was weighed and measured
}

// A Quality is one figure of a wood in a task; where it is not known, Why says so.
type Quality struct {
	Value float64
	Basis Basis
	Why   error
}

// Known reports whether there is a figure.
func (q Quality) Known() bool { return q.Why == nil && q.Basis.Standing != Missing }

// A Candidate is one wood held against a task. Stiffness and strength are in
// MPa and hardness in N, at the service moisture; Density in kg/m3 and Mass, of
// the finished part, in kg, there too; Moves is the travel of the part's broad
// extent between driest and wettest in mm, PerPoint the movement across the
// grain in percent for a point of moisture about the service moisture; both by
// the larger way of the grain. Heavier is by how many percent it is heavier
// than the splinter. Bend is nil for a straight part.
type Candidate struct {
	Wood                                    Species
	Stiffness, Strength, Hardness           Quality
	Density, Mass, Moves, PerPoint, Heavier Quality
	Lasts                                   Text
	Bend                                    *Bend
	Cautions                                []string
}

// dry is the moisture that strengths are printed for.
const dry = 12

// Consider holds a wood against a task. Nothing is left out for being unknown:
// each such quality says why. The error is a moisture no wood has.
func (t Task) Consider(s Species) (Candidate, error) {
	for _, m := range [...]quantity.Moisture{t.Service, t.Driest, t.Wettest} {
		if err := checkMoisture(m); err != nil {
			return Candidate{}, err
		}
	}
	c := Candidate{Wood: s}
	c.Stiffness = t.strength(&c, "stiffness", func(m quantity.Moisture) (float64, Basis, error) {
		v, b, err := s.Stiffness(m)
		return float64(v), b, err
	})
	c.Strength = t.strength(&c, "bending strength", func(m quantity.Moisture) (float64, Basis, error) {
		v, b, err := s.Rupture(m)
		return float64(v), b, err
	})
	c.Hardness = t.strength(&c, "hardness", func(m quantity.Moisture) (float64, Basis, error) {
		v, b, err := s.Hardness(m)
		return float64(v), b, err
	})
	t.weigh(&c)
	t.move(&c)
	if words, basis, err := s.DurabilityWords(); err == nil {
		c.Lasts = Text{words, basis}
	}
	if t.BendRadius > 0 {
		b, err := s.SteamBend(t.BendRadius, t.BendThick, Strapped)
		if err != nil {
			return Candidate{}, err
		}
		c.Bend = &b
		c.Cautions = append(c.Cautions, b.Warnings...)
		if b.Limit == 0 && s.Bending.Words == "" {
			c.caution("no bending limit is known for it: prove it on two trial pieces")
		}
	}
	if s.Note != "" {
		c.caution("%s", s.Note)
	}
	return c, nil
}

func (c *Candidate) caution(format string, values ...any) {
	c.Cautions = append(c.Cautions, fmt.Sprintf(format, values...))
}

// strength is a figure at the service moisture, or at 12 % where it is known only there.
func (t Task) strength(c *Candidate, what string, at func(quantity.Moisture) (float64, Basis, error)) Quality {
	v, basis, err := at(t.Service)
	if err == nil {
		return Quality{Value: v, Basis: basis}
	}
	if v, basis, dryErr := at(dry); dryErr == nil {
		c.caution("%s is that at 12 %% moisture: none is known at %.3g %%", what, float64(t.Service))
		return Quality{Value: v, Basis: basis}
	}
	return Quality{Why: err}
}

func (t Task) weigh(c *Candidate) {
	d, basis, err := c.Wood.Density(t.Service)
	if err != nil {
		c.Density, c.Mass = Quality{Why: err}, Quality{Why: err}
		c.Heavier = Quality{Why: err}
		return
	}
	c.Density = Quality{Value: float64(d), Basis: basis}
	c.Mass = Quality{Value: float64(d.Mass(t.Net)), Basis: basis}
	c.Heavier = t.heavier(c.Wood)
}

// farFromSplinter is by how many percent a wood's average may lie off a single
// piece before the splinter is likely another wood: the density of single
// pieces varies by about 10 % (coefficient of variation, from memory of the
// Wood Handbook), twice which covers nearly all.
const farFromSplinter = 20

func (t Task) heavier(s Species) Quality {
	if t.Splinter.Density <= 0 {
		return Quality{Why: errors.New("no splinter was weighed")}
	}
	d, basis, err := s.Density(t.Splinter.At)
	if err != nil {
		return Quality{Why: err}
	}
	return Quality{Value: 100 * (float64(d/t.Splinter.Density) - 1), Basis: basis}
}

// UnlikeSplinter reports whether the wood's weight speaks against its being that of the splinter.
func (c Candidate) UnlikeSplinter() bool {
	return c.Heavier.Known() && math.Abs(c.Heavier.Value) > farFromSplinter
}

func (t Task) move(c *Candidate) {
	basis, err := c.Wood.ShrinkBasis(Worst)
	if err != nil {
		c.Moves, c.PerPoint = Quality{Why: err}, Quality{Why: err}
		c.caution("how it moves is not known: do not put irons across its grain until a sample has been watched")
		return
	}
	size, err := c.Wood.Travel(t.Broad, t.Service, Rings{}, Broad, t.Driest, t.Service, t.Wettest)
	c.Moves = Quality{Value: size.Millimetres(), Basis: basis, Why: err}
	const hundred = 100 * quantity.Millimetre
	low := max(t.Service-0.5, 0)
	point, err := c.Wood.Travel(hundred, t.Service, Rings{}, Broad, low, low+1)
	c.PerPoint = Quality{Value: float64(point / hundred * 100), Basis: basis, Why: err}
}

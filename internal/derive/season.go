package derive

import (
	"fmt"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// A grip is the thickness on the day its nut was last run down, at that day's
// moisture. Where the survey says how damp the wood was then, its grips are set
// beside sizes at the moisture the vehicle will live at, which all sizes are quoted at.

// A season is the moisture that grips speak for.
type season struct {
	from  quantity.Moisture // that of the sizes
	to    quantity.Moisture // of the day
	moves map[string]motion // by timber
	damp  int               // common error: how damp it was
	rings int               // common error: how the rings lay
}

// A motion is a wood's movement across the grain, in percent of its size per percent
// of moisture: halfway between radial and tangential, and half of what is between.
type motion struct{ middle, half float64 }

// bySeason takes the survey's word of how damp the wood was. The moisture that sizes
// are quoted at is at, the mean of service.
func (n *network) bySeason(woods timber.Catalogue, at quantity.Moisture) {
	w := n.survey.Wood
	if w.Tightened == 0 {
		return
	}
	s := &season{from: at, to: w.Tightened, moves: map[string]motion{}}
	for i := range n.survey.Parts {
		name := n.timberOf(&n.survey.Parts[i])
		species, err := woods.Find(name)
		if err != nil || !species.Move.Radial.Known() || !species.Move.Tangential.Known() {
			continue
		}
		r, t := species.Move.Radial.Value, species.Move.Tangential.Value
		s.moves[name] = motion{(r + t) / 2, (t - r) / 2}
	}
	line := w.TightenedAt.Line
	s.damp = n.common(common{kind: ofSeason, says: fmt.Sprintf("the wood was at %.3g percent when the nuts were last run down", float64(w.Tightened)), known: quantity.TradeRule, line: line}, 1)
	s.rings = n.common(common{kind: ofSeason, says: "the rings of the old timbers lay between flat and square", known: quantity.TradeRule, line: line}, 1)
	n.season = s
	for i, t := range n.notes {
		if t.sort == gripRead && t.span != nil && t.span.stops[0].placed() {
			n.asThatDay(i, t.span)
		}
	}
	for _, w := range n.windows {
		if w.observation != none {
			w.kept = n.problem.Observations[w.observation]
		}
	}
}

// asThatDay makes a grip speak of its timbers as they were that day.
func (n *network) asThatDay(observation int, s *span) {
	o := &n.problem.Observations[observation]
	swells := make([]float64, len(s.stops))
	damp, rings := 0.0, 0.0
	wood := o.Value
	for i := range s.stops {
		if s.stops[i].iron != nil {
			wood -= start(s.stops[i].iron, "thick").Millimetres()
		}
	}
	points := float64(n.season.to-n.season.from) / 100
	timbers := 0
	for i := range s.stops {
		if s.stops[i].part != nil {
			timbers++
		}
	}
	for i := range s.stops {
		p := &s.stops[i]
		if p.part == nil || p.along(s.axis) == 0 {
			continue
		}
		m := n.season.moves[n.timberOf(p.part)]
		swells[i] = m.middle * points
		each := wood / float64(timbers)
		damp += m.middle / 100 * each * float64(n.survey.Wood.TightenedDoubt)
		rings += m.half * points * each / 1.7320508 // anywhere between the two (JCGM 100:2008, 4.3.7)
	}
	model := o.Model
	o.Model = func(x []float64) adjust.Term {
		t := model(x)
		for i, k := range swells {
			if k != 0 {
				t = t.Plus(n.thick(x, s, &s.stops[i]).Scaled(k))
			}
		}
		return t
	}
	o.Sources = append(slices.Clone(o.Sources), adjust.Source{Common: n.season.damp, Slope: damp}, adjust.Source{Common: n.season.rings, Slope: rings})
}

// thick is how thick a stop is where a span passes it.
func (n *network) thick(x []float64, s *span, p *stop) adjust.Term {
	return n.leaves(x, s, p).Minus(n.enters(x, s, p)).Scaled(s.sign)
}

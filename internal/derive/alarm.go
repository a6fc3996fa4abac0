package derive

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"lostwood/internal/adjust"
)

// alarm is the chance that a survey without any blunder has something named as
// contradicting. It is shared out among all that others check: most of it among the
// readings, for a slip of reading is what there is to be found, and they are few; the
// rest among statements and what is taken for granted (weighted shares add up to the
// whole whatever they are: C. E. Bonferroni, 1936; J. P. Shaffer, Annual Review of
// Psychology 46 (1995) 561, from memory).
const alarm = 0.01

// furtherAlarm is the same once something was named: the survey is then no longer one
// without any blunder, and a second slip is likelier. Of surveys with one slip so many
// have a sound reading named besides.
const furtherAlarm = 0.05

// ofReadings is the readings' share of the alarm.
const ofReadings = 0.8

// checkedAt is the redundancy from which a reading counts as checked by others; the
// few below it are judged with what is taken for granted.
const checkedAt = 0.05

// limits are how far, in standard deviations, something good may lie.
type limits struct {
	reading, other   float64
	levels, otherOne float64 // the chance for one of each
}

func (n *network) limits(s *adjust.Solution) limits {
	alarm := alarm
	if n.found {
		alarm = furtherAlarm
	}
	readings, others := 0, 0
	for i, t := range n.notes {
		switch r := s.Redundancy[i]; {
		case t.isReading() && r >= checkedAt:
			readings++
		case r > 1e-9:
			others++
		}
	}
	for _, r := range s.CommonRedundancy {
		if r > 1e-6 {
			others++
		}
	}
	l := limits{levels: ofReadings * alarm / float64(max(readings, 1)), otherOne: (1 - ofReadings) * alarm / float64(max(others, 1))}
	l.reading, l.other = beyond(l.levels), beyond(l.otherOne)
	return l
}

// beyond is what a standard normal variable exceeds in size with the chance.
func beyond(chance float64) float64 { return -distuv.UnitNormal.Quantile(chance / 2) }

func (t note) isReading() bool { return t.sort < stated }

// of is the limit of one observation.
func (l limits) of(t note, redundancy float64) float64 {
	if t.isReading() && redundancy >= checkedAt {
		return l.reading
	}
	return l.other
}

// level is the chance with which one observation alone is named though it is good.
func (l limits) level(t note, redundancy float64) float64 {
	if t.isReading() && redundancy >= checkedAt {
		return l.levels
	}
	return l.otherOne
}

// worst is the observation that agrees least with the rest, by its limit: how far it
// lies, and how many times its limit that is.
func (f *fit) worst() (at int, far, over float64) {
	l := f.network.limits(f.Solution)
	for i, w := range f.Standardised {
		a := math.Abs(w)
		if o := a / l.of(f.network.notes[i], f.Redundancy[i]); o > over {
			at, far, over = i, a, o
		}
	}
	return at, far, over
}

package adjust

import "math"

// Sizes of a step, against what an unknown's own observations would leave it.
const (
	settled = 1e-12 // the last
	noise   = 1e-9  // the last, if the one before was no larger
	stalled = 1e-6  // the last, if for three steps none was smaller
)

const (
	firstDamp = 1e-3 // what a first refusal brings
	leastDamp = 1e-9 // the least that is used
	nothing   = 1e-3 // share of its promise that a mended step must keep
)

// A pace is how a block's steps are held in.
type pace struct {
	damp  float64 // what is added to the normal equations' diagonal, as a share of it
	last  float64 // size of the last step, if damped alike
	least float64 // of the least so far
	idle  int     // steps since then
}

func newPaces(n int) []pace {
	p := make([]pace, n)
	for k := range p {
		p[k] = pace{last: math.Inf(1), least: math.Inf(1)}
	}
	return p
}

// refuse is for a step that made the squares grow: the next is shorter.
func (p *pace) refuse() {
	p.hold()
	p.last, p.least, p.idle = math.Inf(1), math.Inf(1), 0
}

// hold dampens the next step.
func (p *pace) hold() { p.damp = math.Max(firstDamp, 10*p.damp) }

// accept notes a step of the size s that kept a share of its promised gain, and says
// whether it may have been the last. Where models bend so much that small steps grow,
// where squares differ by rounding only, they are held in.
func (p *pace) accept(s, grain, kept float64) bool {
	rate := s / p.last
	grew := s <= stalled && s >= p.least
	if s < 0.9*p.least {
		p.least, p.idle = s, 0
	} else {
		p.idle++
	}
	p.last = s
	rests := p.rests(s, rate, grain)
	was := p.damp
	switch {
	case rests && p.damp == 0:
		return true
	case grew:
		p.hold()
	case s > stalled || rate > 0 && rate < 0.5:
		p.ease(kept)
	}
	if p.damp != was {
		p.last = math.Inf(1)
	}
	return rests
}

func (p *pace) rests(s, rate, grain float64) bool {
	switch {
	case s <= math.Max(settled, grain):
		return true
	case s <= stalled && rate > 0 && rate < 0.5 && s*rate/(1-rate) <= 10*settled: // what steps to come would add
		return true
	case s <= noise:
		return p.idle >= 1
	}
	return s <= stalled && p.idle >= 3
}

// ease lessens the damping after a step that kept a share of its promise: the
// straighter the models, the more (H. B. Nielsen, IMM-REP-1999-05).
func (p *pace) ease(kept float64) {
	if p.damp *= math.Max(0.1, 1-math.Pow(2*kept-1, 3)); p.damp < leastDamp {
		p.damp = 0
	}
}

package adjust

import (
	"math"
	"slices"
)

// mostSteps is more than any published test needs by far.
const mostSteps = 300

// Solve fits p. An error is an *InputError, or a *ConvergenceError where models bend
// too much between start and solution. What nothing determines is no error: see
// Solution.Free.
//
// An unknown in which models bend, an angle above all, wants more than a start: where
// few readings hold it, its start should count as a reading too, with a generous doubt,
// or steps may not settle (an angle seen through its cosine alone has no slope at zero).
func Solve(p Problem) (*Solution, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	x := make([]float64, len(p.Start)+len(p.Common))
	copy(x, p.Start)
	d, err := p.linearise(x)
	if err != nil {
		return nil, err
	}
	w, err := p.walkFrom(x, d)
	if w, err = p.rescue(w, err); err != nil {
		return nil, err
	}
	w.refactor(nil)
	return newSolution(p, w), nil
}

// walkFrom walks until the fit has settled.
func (p Problem) walkFrom(x []float64, d *design) (*walk, error) {
	w := newWalk(p, x, d)
	for !w.settled {
		if w.steps == mostSteps {
			return nil, w.lost()
		}
		w.steps++
		if err := w.step(); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// A walk goes from the starting values to the fit by Gauss-Newton steps. A step that
// makes a block's squares grow is not taken; that block's next one is shortened and
// turned downhill (Marquardt 1963), while other blocks go on as they were.
type walk struct {
	p       Problem
	x       []float64
	d       *design
	blocks  *blocks
	paces   []pace    // by block root
	norm    []float64 // the longest that each column has been, so that a slope that fades frees no unknown
	steps   int
	settled bool

	factored *design // what factor was made from
	damped   bool    // whether with damping
	factor   *factor

	far     int // unknown that moved most in the last step
	farStep float64
}

func newWalk(p Problem, x []float64, d *design) *walk {
	w := &walk{p: p, x: x, d: d, blocks: newBlocks(len(x)), paces: newPaces(len(x)), norm: make([]float64, len(x))}
	w.blocks.tie(d)
	return w
}

// refactor brings the factor up to date, and does nothing where it is.
func (w *walk) refactor(damp []float64) {
	if w.factor != nil && damp == nil && !w.damped && w.factored.sameSlopes(w.d) {
		return
	}
	var shape *pattern
	if w.factor != nil && w.factored.samePattern(w.d) {
		shape = w.factor.pattern
	} else {
		shape = newPattern(w.d)
	}
	w.factor, w.factored, w.damped = newFactor(shape, w.d, damp), w.d, damp != nil
}

// damping is what is added to each unknown's normal equation, scaled, or nil where no
// block is held in.
func (w *walk) damping() []float64 {
	var out []float64
	for j := range w.x {
		if v := w.paces[w.blocks.root(j)].damp; v > 0 {
			if out == nil {
				out = make([]float64, len(w.x))
			}
			out[j] = v * math.Pow(math.Ldexp(w.norm[j], -w.d.exp[j]), 2)
		}
	}
	return out
}

// lengthen brings norm up to date.
func (w *walk) lengthen() {
	square := make([]float64, len(w.x))
	for e, j := range w.d.col {
		square[j] += w.d.val[e] * w.d.val[e]
	}
	for j, q := range square {
		w.norm[j] = math.Max(w.norm[j], math.Ldexp(math.Sqrt(q), w.d.exp[j]))
	}
}

// step tries one step in all blocks.
func (w *walk) step() error {
	w.lengthen()
	damping := w.damping()
	w.refactor(damping)
	pull := w.d.pull(w.d.miss)
	dx := w.factor.solve(pull)
	trial := w.moved(w.x, dx, nil)
	next, err := w.p.linearise(trial)
	if err != nil { // no values there: all steps are too long
		for r := range w.paces {
			w.paces[r].refuse()
		}
		if w.paces[0].damp > 1e18 {
			return err
		}
		return nil
	}
	w.blocks.tie(next)
	promised := w.promise(pull, dx)
	if refused := w.judge(w.measure(dx), next, promised); refused != nil {
		w.settled = false
		if trial, next, err = w.mend(trial, next, promised, refused); err != nil {
			return err
		}
	}
	w.x, w.d = trial, next
	if w.settled && damping != nil {
		w.confirm()
	}
	return nil
}

// moved is where a step leads from x, for unknowns of the blocks named (nil for all).
func (w *walk) moved(x, dx []float64, which []bool) []float64 {
	out := slices.Clone(x)
	for j := range out {
		if which == nil || which[j] {
			out[j] += math.Ldexp(dx[j], -w.d.exp[j])
		}
	}
	return out
}

// mend deals with unknowns whose step made their block's squares grow. Where models
// bend, a long step along a valley leads up its side: a few more steps by the same
// slopes may lead down to its floor again. What still does not gain goes back.
func (w *walk) mend(trial []float64, next *design, promised []float64, refused []bool) ([]float64, *design, error) {
	const tries = 4
	before := w.blocks.squares(w.d)
	for range tries {
		dx := w.factor.solve(w.d.pull(next.miss))
		further := w.moved(trial, dx, refused)
		d, err := w.p.linearise(further)
		if err != nil {
			break
		}
		trial, next = further, d
		w.blocks.tie(d)
		w.blocks.spread(refused)
		if !w.mended(before, w.blocks.squares(d), promised, refused) {
			return trial, next, nil
		}
	}
	for j := range trial {
		if refused[j] {
			trial[j] = w.x[j]
			if w.blocks.root(j) == j {
				w.paces[j].refuse()
			}
		}
	}
	next, err := w.p.linearise(trial)
	return trial, next, err
}

// mended takes the marks off blocks that gained after all, and says whether any are
// left.
func (w *walk) mended(before, after, promised []float64, refused []bool) (left bool) {
	for r := range refused {
		if !refused[r] || w.blocks.root(r) != r {
			continue
		}
		if kept := (before[r] - after[r]) / promised[r]; kept > nothing {
			w.paces[r].ease(kept)
			refused[r] = false
			continue
		}
		left = true
	}
	for j := range refused {
		refused[j] = refused[w.blocks.root(j)]
	}
	return left
}

// confirm checks that blocks held in have come to rest because the squares are least,
// not because any step is small when held in enough.
func (w *walk) confirm() {
	for j, g := range w.d.pull(w.d.miss) {
		r := w.blocks.root(j)
		tilt := math.Abs(math.Ldexp(g.hi, w.d.exp[j])) / w.norm[j]
		if w.paces[r].damp > 0 && tilt > noise && (tilt > stalled || w.paces[r].idle < 3) {
			w.settled = false
		}
	}
}

// measure finds the size of a step in each block, by root: the most that an unknown
// moves against the doubt it would have if all others were known.
func (w *walk) measure(dx []float64) []float64 {
	size := make([]float64, len(dx))
	most := -1.0
	for j := range dx {
		move := math.Ldexp(dx[j], -w.d.exp[j])
		s := math.Abs(move) * w.norm[j]
		if s > most {
			most, w.far, w.farStep = s, j, move
		}
		if math.Abs(move) > 0x1p-52*math.Abs(w.x[j]) { // else no more than rounding
			r := w.blocks.root(j)
			size[r] = math.Max(size[r], s)
		}
	}
	return size
}

// promise is how much of its squares each block would lose if models were straight.
func (w *walk) promise(pull []twofold, dx []float64) []float64 {
	out := make([]float64, len(dx))
	for j, g := range pull {
		out[w.blocks.root(j)] += 2 * g.hi * dx[j]
	}
	for i := range w.d.miss {
		if w.d.first[i] == w.d.first[i+1] {
			continue
		}
		m := 0.0
		for e := w.d.first[i]; e < w.d.first[i+1]; e++ {
			m += w.d.val[e] * dx[w.d.col[e]]
		}
		out[w.blocks.root(w.d.col[w.d.first[i]])] -= m * m
	}
	return out
}

// judge says the unknowns of which blocks' squares grew (nil for none), paces all others, and notes whether
// they may have settled.
func (w *walk) judge(size []float64, next *design, promised []float64) []bool {
	var refused []bool
	w.settled = true
	grain, before, after := w.blocks.grain(w.d), w.blocks.squares(w.d), w.blocks.squares(next)
	for r := range size {
		if w.blocks.root(r) != r {
			continue
		}
		if !(after[r] <= before[r]*(1+1e-12)) && size[r] > stalled {
			if refused == nil {
				refused = make([]bool, len(size))
			}
			refused[r] = true
			continue
		}
		kept := 1.0
		if promised[r] > noise*before[r] { // else the difference is rounding
			kept = (before[r] - after[r]) / promised[r]
		}
		if !w.paces[r].accept(size[r], grain[r], kept) {
			w.settled = false
		}
	}
	if refused != nil {
		w.blocks.spread(refused)
	}
	return refused
}

func (w *walk) lost() error {
	return &ConvergenceError{Iterations: w.steps, Unknown: w.far, Step: w.farStep}
}

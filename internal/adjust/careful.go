package adjust

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Where models bend so much that the sparse walk loses its way, or runs out to where an
// unknown has no effect any more, small problems are walked again with care: dense
// Levenberg-Marquardt steps (K. Levenberg 1944; D. W. Marquardt, SIAM Journal 11 (1963)
// 431; damping as H. B. Nielsen, IMM-REP-1999-05, from memory), none of which takes an
// unknown farther than a share of itself. The sparse walk then starts from where they end.

const (
	mostCareful = 60   // unknowns
	carefulest  = 4000 // steps
	faded       = 1e-6 // of its longest, a column that has no effect any more
)

// gently are how an attempt with care goes: its first damping, and by what share of
// itself an unknown may move in one step.
var gently = [...]struct{ damp, reach float64 }{{1e-3, 1}, {1, 0.1}, {1e-3, 0.02}}

// rescue tries p again with care where a first walk was lost, or w ended where some
// unknown has no effect. The fit with the least squares is kept.
func (p Problem) rescue(w *walk, lost error) (*walk, error) {
	var gone *ConvergenceError
	if len(p.Start)+len(p.Common) > mostCareful || lost != nil && !errors.As(lost, &gone) || lost == nil && !w.faded() && !w.crowded() {
		return w, lost
	}
	for _, g := range gently {
		x := p.careful(g.damp, g.reach)
		d, err := p.linearise(x)
		if err != nil {
			continue
		}
		again, err := p.walkFrom(x, d)
		if err == nil && (lost != nil || square(again.d.miss) < square(w.d.miss)) {
			w, lost = again, nil
		}
	}
	return w, lost
}

// faded reports whether an unknown ended with next to none of the effect it once had.
func (w *walk) faded() bool {
	now := make([]float64, len(w.x))
	for e, j := range w.d.col {
		now[j] += w.d.val[e] * w.d.val[e]
	}
	for j, q := range now {
		if w.norm[j] > 0 && math.Ldexp(math.Sqrt(q), w.d.exp[j]) < faded*w.norm[j] {
			return true
		}
	}
	return false
}

// crowded reports whether, where models bend, an unknown ended with next to no effect
// of its own beside the others: the floor of a valley, along which a walk may stand
// still far from its end.
func (w *walk) crowded() bool {
	const own, straight = 1e-9, 3
	if w.steps <= straight {
		return false
	}
	w.refactor(nil)
	all := make([]float64, len(w.x))
	for e, j := range w.d.col {
		all[j] += w.d.val[e] * w.d.val[e]
	}
	for j, q := range all {
		if k := w.factor.at[j]; q > 0 && (w.factor.held[k] || w.factor.diag[k].hi*w.factor.diag[k].hi < own*q) {
			return true
		}
	}
	return false
}

func square(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return sum
}

// careful walks from the start in small steps and returns where that ends.
func (p Problem) careful(damp, reach float64) []float64 {
	n := len(p.Start) + len(p.Common)
	x := make([]float64, n)
	copy(x, p.Start)
	d, err := p.linearise(x)
	if err != nil {
		return x
	}
	longest := make([]float64, n)
	grow := 2.0
	for range carefulest {
		normal, pull := d.dense(longest)
		dx := damped(normal, pull, damp)
		if dx == nil {
			damp, grow = damp*grow, grow*2
			continue
		}
		share := within(x, dx, longest, reach)
		trial := slices.Clone(x)
		promised, small := 0.0, true
		for j := range trial {
			by := share * dx[j] / longest[j]
			promised += share * dx[j] * (pull[j] + damp*share*dx[j])
			small = small && math.Abs(by) <= 1e-12*(math.Abs(x[j])+1e-12)
			trial[j] += by
		}
		if small {
			return x
		}
		next, err := p.linearise(trial)
		gain := math.Inf(-1)
		if err == nil {
			gain = (square(d.miss) - square(next.miss)) / promised
		}
		if gain > 0 {
			x, d = trial, next
			damp *= math.Max(1./3, 1-math.Pow(2*gain-1, 3))
			grow = 2
			continue
		}
		damp, grow = damp*grow, grow*2
		if damp > 1e30 {
			return x
		}
	}
	return x
}

// dense is the normal equations of d with columns of length one at their longest, which
// it brings up to date, and the gradient downhill.
func (d *design) dense(longest []float64) (*mat.SymDense, []float64) {
	square := make([]float64, d.n)
	at := func(e int) float64 { return math.Ldexp(d.val[e], d.exp[d.col[e]]) }
	for e, j := range d.col {
		square[j] += at(e) * at(e)
	}
	for j, q := range square {
		longest[j] = math.Max(longest[j], math.Sqrt(q))
		if longest[j] == 0 {
			longest[j] = 1
		}
	}
	normal, pull := mat.NewSymDense(d.n, nil), make([]float64, d.n)
	for i, r := range d.miss {
		for a := d.first[i]; a < d.first[i+1]; a++ {
			j := d.col[a]
			pull[j] += at(a) * r / longest[j]
			for b := a; b < d.first[i+1]; b++ {
				k := d.col[b]
				normal.SetSym(j, k, normal.At(j, k)+at(a)*at(b)/(longest[j]*longest[k]))
			}
		}
	}
	return normal, pull
}

// damped solves the normal equations with damping; nil where they cannot be.
func damped(normal *mat.SymDense, pull []float64, damp float64) []float64 {
	n := len(pull)
	held := mat.NewSymDense(n, nil)
	held.CopySym(normal)
	for j := range n {
		held.SetSym(j, j, held.At(j, j)+damp)
	}
	var c mat.Cholesky
	if !c.Factorize(held) {
		return nil
	}
	var dx mat.VecDense
	if err := c.SolveVecTo(&dx, mat.NewVecDense(n, pull)); err != nil {
		var ill mat.Condition
		if !errors.As(err, &ill) {
			return nil
		}
	}
	return dx.RawVector().Data
}

// within is the share of a step that takes no unknown farther than it may go.
func within(x, dx, longest []float64, reach float64) float64 {
	share := 1.0
	for j := range dx {
		if by := math.Abs(dx[j] / longest[j]); by > reach*math.Abs(x[j]) && x[j] != 0 {
			share = math.Min(share, reach*math.Abs(x[j])/by)
		}
	}
	return math.Max(share, 1e-6)
}

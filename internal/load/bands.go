package load

import (
	"errors"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// bands are the stiffnesses between joints, kept by pairs until they are solved.
type bands struct {
	n     int
	terms []map[int]float64 // of row i: columns from i on
}

func newBands(n int) *bands {
	b := &bands{n: n, terms: make([]map[int]float64, n)}
	for i := range b.terms {
		b.terms[i] = map[int]float64{}
	}
	return b
}

func (b *bands) add(i, j int, v float64) { b.terms[min(i, j)][max(i, j)] += v }

// tie puts a spring between what the ends stand for.
func (b *bands) tie(ends [4]end, k float64) {
	for i, e := range ends {
		for _, f := range ends[i:] {
			if v := k * e.share * f.share; v != 0 {
				if e.dof == f.dof && e != f { // both halves of the pair fall on the diagonal
					v *= 2
				}
				b.add(e.dof, f.dof, v)
			}
		}
	}
}

func (b *bands) clone() *bands {
	c := &bands{n: b.n, terms: make([]map[int]float64, b.n)}
	for i, t := range b.terms {
		c.terms[i] = make(map[int]float64, len(t)+2)
		for j, v := range t {
			c.terms[i][j] = v
		}
	}
	return c
}

// solve finds how far each goes down under the loads: joints are put in an
// order that keeps neighbours together, and the band between is factorized.
func (b *bands) solve(loads []float64) ([]float64, error) {
	if b.n == 0 {
		return nil, nil
	}
	place := b.order()
	width := 0
	for i, t := range b.terms {
		for j := range t {
			width = max(width, place[j]-place[i], place[i]-place[j])
		}
	}
	width = min(width, b.n-1)
	k := mat.NewSymBandDense(b.n, width, nil)
	right := mat.NewVecDense(b.n, nil)
	for i, t := range b.terms {
		right.SetVec(place[i], loads[i])
		for j, v := range t {
			k.SetSymBand(min(place[i], place[j]), max(place[i], place[j]), v)
		}
	}
	var chol mat.BandCholesky
	if !chol.Factorize(k) {
		return nil, errors.New("the vehicle as the survey fastens it cannot be worked out as a grid of beams: something in it is not held")
	}
	var x mat.VecDense
	if err := chol.SolveVecTo(&x, right); err != nil && !soft(err) {
		return nil, err
	}
	out := make([]float64, b.n)
	for i := range out {
		out[i] = x.AtVec(place[i])
	}
	return out, nil
}

// order gives each joint its place: Cuthill and McKee, turned about (ACM
// national conference 1969; A. George 1971).
func (b *bands) order() []int {
	next := make([][]int, b.n)
	for i := range b.n {
		for j := i + 1; j < b.n; j++ {
			if _, ok := b.terms[i][j]; ok {
				next[i] = append(next[i], j)
				next[j] = append(next[j], i)
			}
		}
	}
	return ordering(next)
}

func ordering(next [][]int) []int {
	n := len(next)
	few := func(i, j int) int {
		if d := len(next[i]) - len(next[j]); d != 0 {
			return d
		}
		return i - j
	}
	starts := make([]int, n)
	for i := range starts {
		starts[i] = i
	}
	slices.SortFunc(starts, few)
	seen := make([]bool, n)
	var queue []int
	for _, s := range starts {
		if seen[s] {
			continue
		}
		s = furthest(next, s, few)
		seen[s] = true
		queue = append(queue, s)
		for k := len(queue) - 1; k < len(queue); k++ {
			var around []int
			for _, j := range next[queue[k]] {
				if !seen[j] {
					seen[j] = true
					around = append(around, j)
				}
			}
			slices.SortFunc(around, few)
			queue = append(queue, around...)
		}
	}
	place := make([]int, n)
	for k, i := range queue {
		place[i] = n - 1 - k
	}
	return place
}

// furthest goes from one joint to one that lies as far from it as any, twice over.
func furthest(next [][]int, from int, few func(i, j int) int) int {
	for range 2 {
		seen := map[int]bool{from: true}
		layer := []int{from}
		for {
			var on []int
			for _, i := range layer {
				for _, j := range next[i] {
					if !seen[j] {
						seen[j] = true
						on = append(on, j)
					}
				}
			}
			if len(on) == 0 {
				break
			}
			layer = on
		}
		slices.SortFunc(layer, few)
		from = layer[0]
	}
	return from
}

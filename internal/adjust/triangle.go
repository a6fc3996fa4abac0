package adjust

import (
	"math"
	"slices"
)

// solve returns x with N x = b, in scaled unknowns; held ones get zero.
func (f *factor) solve(b []twofold) []float64 {
	y := make([]twofold, len(b))
	for k, v := range f.unknown {
		y[k] = b[v]
	}
	for k := range y {
		f.forward(y, k)
	}
	for k := len(y) - 1; k >= 0; k-- {
		if f.held[k] {
			continue
		}
		s := y[k]
		for e := f.first[k]; e < f.first[k+1]; e++ {
			s = s.less(f.low[e].times(y[f.row[e]]))
		}
		y[k] = s.over(f.diag[k])
	}
	x := make([]float64, len(b))
	for k, v := range f.unknown {
		x[v] = y[k].hi
	}
	return x
}

// forward solves one position of L y = b, where b is y before.
func (f *factor) forward(y []twofold, k int) {
	if f.held[k] {
		y[k] = twofold{}
	}
	if y[k].hi == 0 {
		return
	}
	y[k] = y[k].over(f.diag[k])
	for e := f.first[k]; e < f.first[k+1]; e++ {
		y[f.row[e]] = y[f.row[e]].less(f.low[e].times(y[k]))
	}
}

// A half is L^-1 t for a gradient t: the inner product of two is t' N^-1 u.
type half struct {
	at []int // positions, rising
	v  []float64
}

// half makes that of t, scaled and by unknown.
func (f *factor) half(t []Partial) half {
	y := make([]twofold, len(f.unknown))
	mark := make([]bool, len(f.unknown))
	var h half
	for _, s := range t {
		k := f.at[s.Unknown]
		y[k] = y[k].plusProduct(s.Slope, 1)
		for ; k >= 0 && !mark[k]; k = f.parent[k] {
			mark[k] = true
			h.at = append(h.at, k)
		}
	}
	slices.Sort(h.at)
	h.v = make([]float64, len(h.at))
	for a, k := range h.at {
		f.forward(y, k)
		h.v[a] = y[k].hi
	}
	return h
}

func (h half) dot(o half) float64 {
	s := 0.0
	for i, j := 0, 0; i < len(h.at) && j < len(o.at); {
		switch {
		case h.at[i] < o.at[j]:
			i++
		case h.at[i] > o.at[j]:
			j++
		default:
			s += h.v[i] * o.v[j]
			i++
			j++
		}
	}
	return s
}

// null returns, for each held unknown, how the others follow when it moves by one
// and every observation stays as it is: scaled, by unknown.
func (f *factor) null() [][]Partial {
	n := len(f.unknown)
	if f.rank == n {
		return nil
	}
	least := make([]int, n) // the first position of each subtree
	for k := range n {
		least[k] = k
	}
	for k, p := range f.parent {
		if p >= 0 {
			least[p] = min(least[p], least[k])
		}
	}
	var out [][]Partial
	z := make([]float64, n)
	for k := range n {
		if f.held[k] {
			out = append(out, f.follow(k, least[k], z))
		}
	}
	return out
}

// follow makes the null vector of position k; z is zero and is left so.
func (f *factor) follow(k, least int, z []float64) []Partial {
	// A sum that cancels below this share of its parts is zero but for rounding.
	const rounding, speck = 1e-10, 1e-11
	z[k] = 1
	most := 1.0
	for j := k - 1; j >= least; j-- {
		if f.held[j] {
			continue
		}
		s, size := 0.0, 0.0
		for e := f.first[j]; e < f.first[j+1] && f.row[e] <= k; e++ {
			t := f.low[e].hi * z[f.row[e]]
			s -= t
			size += math.Abs(t)
		}
		if math.Abs(s) > rounding*size {
			z[j] = s / f.diag[j].hi
			most = math.Max(most, math.Abs(z[j]))
		}
	}
	var out []Partial
	for j := least; j <= k; j++ {
		if math.Abs(z[j]) > speck*most {
			out = append(out, Partial{f.unknown[j], z[j]})
		}
		z[j] = 0
	}
	return out
}

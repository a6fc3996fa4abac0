package adjust

import (
	"math"
	"slices"
)

// A design is the network linearised at one point: row by row the weighted slopes,
// and what is left to explain. Common errors stand after the unknowns as unknowns
// of their own, and after the observations with one row each.
//
// Each column is scaled by a power of two, so that units neither overflow nor round.
type design struct {
	n     int       // columns
	first []int     // row i holds entries first[i] to first[i+1]
	col   []int     // rising within a row
	val   []float64 // slope / doubt * 2^-exp[col]
	exp   []int     // scaled unknown = unknown * 2^exp
	miss  []float64 // (observed - model) / doubt; 0 for a row left out
	grain []float64 // the rounding in miss
	left  []bool

	rowsFirst []int // the rows of column j are rowsOf[rowsFirst[j]:rowsFirst[j+1]]
	rowsOf    []int
	entryOf   []int // their entries
}

// linearise evaluates every model at x, which holds unknowns, then common errors.
func (p Problem) linearise(x []float64) (*design, error) {
	n, m := len(p.Start), len(p.Observations)
	d := &design{
		n: len(x), first: make([]int, 1, m+len(p.Common)+1),
		col: make([]int, 0, 4*m), val: make([]float64, 0, 4*m),
		miss: make([]float64, 0, m+len(p.Common)), grain: make([]float64, 0, m+len(p.Common)), left: make([]bool, 0, m+len(p.Common)),
	}
	for i := range p.Observations {
		if err := d.observe(i, &p.Observations[i], x, n); err != nil {
			return nil, err
		}
	}
	for c, doubt := range p.Common {
		d.col = append(d.col, n+c)
		d.val = append(d.val, 1/doubt)
		d.close(-x[n+c]/doubt, math.Abs(x[n+c])/doubt, false)
	}
	d.scale()
	d.transpose()
	return d, nil
}

// observe adds the row of observation i.
func (d *design) observe(i int, o *Observation, x []float64, n int) error {
	t := o.Model(x[:n:n])
	v, last := t.Value, -1
	for _, s := range t.Slopes {
		switch {
		case s.Unknown < 0 || s.Unknown >= n:
			return &InputError{Reading, i, NoSuchUnknown, float64(s.Unknown)}
		case s.Unknown <= last:
			return &InputError{Reading, i, SlopesDisordered, float64(s.Unknown)}
		case !finite(s.Slope):
			return &InputError{Reading, i, NotFinite, s.Slope}
		}
		last = s.Unknown
		if w := s.Slope / o.Doubt; w != 0 && !o.left {
			d.col, d.val = append(d.col, s.Unknown), append(d.val, w)
		}
	}
	from := len(d.col)
	for _, s := range o.Sources {
		v += s.Slope * x[n+s.Common]
		if s.Slope != 0 && !o.left {
			d.share(from, n+s.Common, s.Slope/o.Doubt)
		}
	}
	miss := (o.Value - v) / o.Doubt
	if !finite(miss) {
		return &InputError{Reading, i, NotFinite, v}
	}
	if o.left {
		miss = 0
	}
	d.close(miss, (math.Abs(v)+math.Abs(o.Value))/o.Doubt, o.left)
	return nil
}

// share adds a common error's slope to the open row, in order.
func (d *design) share(from, col int, w float64) {
	k, found := slices.BinarySearch(d.col[from:], col)
	if found {
		d.val[from+k] += w
		return
	}
	d.col = slices.Insert(d.col, from+k, col)
	d.val = slices.Insert(d.val, from+k, w)
}

func (d *design) close(miss, size float64, left bool) {
	d.first = append(d.first, len(d.col))
	d.miss = append(d.miss, miss)
	d.grain = append(d.grain, 0x1p-52*size)
	d.left = append(d.left, left)
}

// scale brings the largest entry of each column to between a half and one.
func (d *design) scale() {
	most := make([]float64, d.n)
	for e, j := range d.col {
		most[j] = math.Max(most[j], math.Abs(d.val[e]))
	}
	d.exp = make([]int, d.n)
	for j, v := range most {
		_, d.exp[j] = math.Frexp(v)
	}
	for e, j := range d.col {
		d.val[e] = math.Ldexp(d.val[e], -d.exp[j])
	}
}

func (d *design) transpose() {
	d.rowsFirst = make([]int, d.n+1)
	for _, j := range d.col {
		d.rowsFirst[j+1]++
	}
	for j := range d.n {
		d.rowsFirst[j+1] += d.rowsFirst[j]
	}
	d.rowsOf, d.entryOf = make([]int, len(d.col)), make([]int, len(d.col))
	next := slices.Clone(d.rowsFirst[:d.n])
	for i := range d.miss {
		for e := d.first[i]; e < d.first[i+1]; e++ {
			j := d.col[e]
			d.rowsOf[next[j]], d.entryOf[next[j]] = i, e
			next[j]++
		}
	}
}

// samePattern says whether two designs have their entries in the same places.
func (d *design) samePattern(o *design) bool {
	return slices.Equal(d.first, o.first) && slices.Equal(d.col, o.col)
}

// sameSlopes says whether two designs have the same factor.
func (d *design) sameSlopes(o *design) bool {
	return d.samePattern(o) && slices.Equal(d.exp, o.exp) && slices.Equal(d.val, o.val)
}

// pull is the gradient of half the squares of miss, downhill, in scaled unknowns.
func (d *design) pull(miss []float64) []twofold {
	g := make([]twofold, d.n)
	for i, r := range miss {
		for e := d.first[i]; e < d.first[i+1]; e++ {
			g[d.col[e]] = g[d.col[e]].plusProduct(d.val[e], r)
		}
	}
	return g
}

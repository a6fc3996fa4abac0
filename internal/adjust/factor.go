package adjust

import "slices"

// dependent is the share of a normal equation's diagonal below which a pivot says
// that the unknown hangs on earlier ones: 1e-10 of its column, squared.
const dependent = 1e-20

// A factor is the Cholesky factor of the normal equations of a design. An unknown
// that depends on those before it is held still: its row and column count for
// nothing in solving, and lead to its null vector.
type factor struct {
	*pattern
	row  []int // of each entry below the diagonal, rising within a column
	low  []twofold
	diag []twofold
	held []bool // by position
	rank int
}

// newFactor factors the normal equations of d, with damp added to the diagonal (by
// unknown, scaled; may be nil).
func newFactor(p *pattern, d *design, damp []float64) *factor {
	n := len(p.unknown)
	f := &factor{
		pattern: p, row: make([]int, p.first[n]), low: make([]twofold, p.first[n]),
		diag: make([]twofold, n), held: make([]bool, n),
	}
	w := &work{x: make([]twofold, n), mark: slices.Repeat([]int{-1}, n), next: slices.Clone(p.first[:n])}
	for k := range n {
		own := w.load(f, d, k)
		if damp != nil {
			own = own.plusProduct(damp[p.unknown[k]], 1)
		}
		pivot := w.eliminate(f, k, own)
		if !(pivot.hi > dependent*own.hi) {
			f.held[k], f.diag[k] = true, twofold{1, 0}
			continue
		}
		f.diag[k] = pivot.sqrt()
		f.rank++
	}
	return f
}

// work is what a factor needs while it is made.
type work struct {
	x     []twofold // the row at hand
	mark  []int
	reach []int // positions where the row has entries, rising
	next  []int // free entry of each column
}

// load puts row k of the normal equations into x, finds where the factor's row has
// entries, and returns the diagonal.
func (w *work) load(f *factor, d *design, k int) twofold {
	w.reach, w.mark[k] = w.reach[:0], k
	v := f.unknown[k]
	for q := d.rowsFirst[v]; q < d.rowsFirst[v+1]; q++ {
		i, mine := d.rowsOf[q], d.val[d.entryOf[q]]
		for e := d.first[i]; e < d.first[i+1]; e++ {
			at := f.at[d.col[e]]
			if at > k {
				continue
			}
			w.x[at] = w.x[at].plusProduct(d.val[e], mine)
			for j := at; w.mark[j] != k; j = f.parent[j] {
				w.mark[j] = k
				w.reach = append(w.reach, j)
			}
		}
	}
	slices.Sort(w.reach)
	own := w.x[k]
	w.x[k] = twofold{}
	return own
}

// eliminate makes row k of the factor and returns the pivot.
func (w *work) eliminate(f *factor, k int, pivot twofold) twofold {
	for _, i := range w.reach {
		a := w.x[i].over(f.diag[i])
		w.x[i] = twofold{}
		if f.held[i] {
			a = twofold{}
		}
		if a.hi != 0 {
			for e := f.first[i]; e < w.next[i]; e++ {
				r := f.row[e]
				w.x[r] = w.x[r].less(f.low[e].times(a))
			}
			pivot = pivot.less(a.times(a))
		}
		e := w.next[i]
		f.row[e], f.low[e] = k, a
		w.next[i]++
	}
	return pivot
}

package adjust

// An inverse holds the entries of the inverse normal equations that lie on the
// factor's pattern: enough for every doubt, and for every redundancy number, since
// the unknowns of one row all neighbour each other. It is twofold, since an entry is
// what is left of much larger ones where readings differ far in weight.
//
// K. Takahashi, J. Fagan, M.-S. Chen, "Formation of a sparse bus impedance matrix and
// its application to short circuit study", PICA 1973; A. M. Erisman, W. F. Tinney,
// Communications of the ACM 18 (1975).
type inverse struct {
	diag []twofold // by position
	low  []twofold // as the factor's entries
}

func (f *factor) invert() *inverse {
	n := len(f.unknown)
	z := &inverse{diag: make([]twofold, n), low: make([]twofold, len(f.low))}
	w := &column{sum: make([]twofold, n), share: make([]twofold, n), mark: make([]int, n)}
	for k := n - 1; k >= 0; k-- {
		if !f.held[k] {
			w.make(f, z, k)
		}
	}
	return z
}

// A column is what one column of an inverse needs while it is made.
type column struct {
	sum, share []twofold // by position
	mark       []int     // k+1 where column k has an entry
}

func (w *column) make(f *factor, z *inverse, k int) {
	from, to := f.first[k], f.first[k+1]
	for e := from; e < to; e++ {
		i := f.row[e]
		if f.held[i] {
			continue
		}
		w.sum[i], w.share[i], w.mark[i] = twofold{}, f.low[e].over(f.diag[k]), k+1
	}
	for e := from; e < to; e++ {
		j := f.row[e]
		if f.held[j] {
			continue
		}
		w.sum[j] = w.sum[j].less(w.share[j].times(z.diag[j]))
		for q := f.first[j]; q < f.first[j+1]; q++ {
			if i := f.row[q]; w.mark[i] == k+1 {
				w.sum[i] = w.sum[i].less(w.share[j].times(z.low[q]))
				w.sum[j] = w.sum[j].less(w.share[i].times(z.low[q]))
			}
		}
	}
	one := twofold{1, 0}.over(f.diag[k])
	own := one.times(one)
	for e := from; e < to; e++ {
		if i := f.row[e]; !f.held[i] {
			z.low[e] = w.sum[i]
			own = own.less(w.share[i].times(w.sum[i]))
		}
	}
	z.diag[k] = own
}

// entry is an entry of the inverse at two positions, and whether it lies on the
// pattern.
func (f *factor) entry(z *inverse, a, b int) (twofold, bool) {
	if a == b {
		return z.diag[a], true
	}
	a, b = min(a, b), max(a, b)
	lo, hi := f.first[a], f.first[a+1]
	for lo < hi {
		m := (lo + hi) / 2
		switch r := f.row[m]; {
		case r == b:
			return z.low[m], true
		case r < b:
			lo = m + 1
		default:
			hi = m
		}
	}
	return twofold{}, false
}

// share is a row's share in its own adjusted value: 1 where nothing else speaks of it.
func (f *factor) share(z *inverse, d *design, i int) float64 {
	sum := twofold{}
	for a := d.first[i]; a < d.first[i+1]; a++ {
		for b := a; b < d.first[i+1]; b++ {
			v, _ := f.entry(z, f.at[d.col[a]], f.at[d.col[b]])
			weight := twofold{}.plusProduct(-d.val[a], d.val[b])
			if b > a {
				weight = twofold{2 * weight.hi, 2 * weight.lo}
			}
			sum = sum.less(v.times(weight))
		}
	}
	return sum.hi
}

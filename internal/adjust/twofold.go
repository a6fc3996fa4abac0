package adjust

import "math"

// A twofold is an unevaluated sum of two floats, some 32 digits: hi is the sum
// rounded, lo what is missing. T. J. Dekker, "A floating-point technique for
// extending the available precision", Numerische Mathematik 18 (1971).
type twofold struct{ hi, lo float64 }

// renorm is h + l with h the larger.
func renorm(h, l float64) twofold {
	s := h + l
	return twofold{s, l - (s - h)}
}

// less returns a - b.
func (a twofold) less(b twofold) twofold {
	s := a.hi - b.hi
	t := s - a.hi
	e := (a.hi - (s - t)) - (b.hi + t)
	return renorm(s, e+(a.lo-b.lo))
}

// plusProduct returns a + x y.
func (a twofold) plusProduct(x, y float64) twofold {
	p := float64(x * y) // rounded, never fused with what follows
	e := math.FMA(x, y, -p)
	s := a.hi + p
	t := s - a.hi
	e += (a.hi - (s - t)) + (p - t)
	return renorm(s, e+a.lo)
}

// times returns a b.
func (a twofold) times(b twofold) twofold {
	p := float64(a.hi * b.hi)
	e := math.FMA(a.hi, b.hi, -p)
	e = math.FMA(a.hi, b.lo, e)
	e = math.FMA(a.lo, b.hi, e)
	return renorm(p, e)
}

// over returns a / b.
func (a twofold) over(b twofold) twofold {
	q := a.hi / b.hi
	r := a.less(b.times(twofold{q, 0}))
	return renorm(q, r.hi/b.hi)
}

// sqrt returns the square root of a, which is above zero.
func (a twofold) sqrt() twofold {
	r := math.Sqrt(a.hi)
	rest := a.less(twofold{}.plusProduct(r, r))
	return renorm(r, rest.hi/(2*r))
}

package makers

import (
	"math"

	"lostwood/internal/quantity"
)

// nearness is the density of a size at x of doubt s, if it was made to one of
// marks q apart, over that if marks meant nothing: the wrapped normal density
// on a circle of circumference one. (K. V. Mardia and P. E. Jupp, Directional
// Statistics, 2000, section 3.5.7, from memory; its Fourier series and its sum
// of normal densities are one function, and each is used where it is quick.)
func nearness(x, q, s quantity.Length) float64 {
	r, t := fromMark(x, q), float64(s/q)
	const quick = 0.3 // below it the normal densities fall off fast, above it the Fourier series
	if t < quick {
		sum := 0.
		for k := -2.; k <= 2; k++ {
			z := (r + k) / t
			sum += math.Exp(-z * z / 2)
		}
		return sum / (t * math.Sqrt(2*math.Pi))
	}
	sum := 1.
	rho := -2 * math.Pi * math.Pi * t * t
	for k := 1.; k <= 4; k++ {
		sum += 2 * math.Exp(rho*k*k) * math.Cos(2*math.Pi*k*r)
	}
	return math.Max(sum, 0)
}

// fromMark is how far x lies from the nearest mark, in steps of q: -1/2 to 1/2.
func fromMark(x, q quantity.Length) float64 {
	steps := float64(x / q)
	return steps - math.RoundToEven(steps)
}

// beyondRule is nearness where x was read to a division of its own: it lies on
// a mark of that division by the reading, and only which one says anything of
// the maker. Its mean over those that a step of q holds is one.
func beyondRule(x, q, s, read quantity.Length) float64 {
	near := nearness(x, q, s)
	common := commonStep(q, read)
	if common == 0 {
		return near
	}
	by := nearness(x, common, s)
	if by < 1e-200 { // read to nothing of the sort: no word either way
		return 1
	}
	return near / by
}

// commonStep is the longest step that divides both, and zero where there is none
// worth the name, or it is far finer than any doubt: then the reading's marks
// fall anywhere between those of q.
func commonStep(q, read quantity.Length) quantity.Length {
	if !(read > 0) || math.IsInf(float64(read), 0) {
		return 0
	}
	const most = 1000 // reading marks to a step of q
	for b := 1; b <= 32; b++ {
		a := float64(q/read) * float64(b)
		if whole := math.Round(a); whole >= 1 && whole <= most && math.Abs(a-whole) < 1e-6*whole {
			return q / quantity.Length(whole)
		}
	}
	return 0
}

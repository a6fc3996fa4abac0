package makers

import (
	"math"

	"lostwood/internal/quantity"
)

// Needs is what the sizes could have shown, and what a finer division would
// have needed: told where no unit is claimed, so that no sign is not taken for
// no unit.
type Needs struct {
	Unit  Unit
	Shows int             // the finest division that a maker who kept to it would likely have shown; zero for none
	Finer int             // the next finer one; zero if there is none
	Doubt quantity.Length // the give or take at which as many sizes would likely show it; zero for none
}

// needs works out what the lot could have shown of u.
func (l *lot) needs(u Unit, near quantity.Length) Needs {
	n := Needs{Unit: u}
	for j, parts := range u.parts {
		said := 0.
		for i, s := range l.sizes {
			said += l.voice[i] * speaks(u.step(parts), width(s, near))
		}
		if !shows(u, j, said) {
			n.Finer = parts
			n.Doubt = l.doubtFor(u, j, near)
			return n
		}
		n.Shows = parts
	}
	return n
}

// shows reports whether sizes all made to the marks of a division would reach
// odds that are enough, if what they say together comes to that on average.
func shows(u Unit, j int, said float64) bool {
	return said+math.Log(u.weight*firstWeight(len(u.parts), j)) >= math.Log(enough)
}

// firstWeight is that of the habit of those marks alone.
func firstWeight(n, finest int) float64 {
	for _, h := range habits(n) {
		if h.finest == finest && h.off == fewOff && h.shares[finest] == 1-fewOff {
			return h.weight
		}
	}
	return 0
}

// speaks is what one size so wide about a mark adds to the log odds on average
// (the divergence of the wrapped normal distribution from the even one).
func speaks(step, wide quantity.Length) float64 {
	if !(wide > 0) {
		return 0
	}
	const points = 64
	reach := math.Min(0.5, 6*float64(wide/step)) // beyond it there is nothing
	sum := 0.
	for k := range points {
		r := reach * (2*(float64(k)+0.5)/points - 1)
		f := nearness(quantity.Length(r)*step, step, wide)
		d := fewOff + (1-fewOff)*f
		sum += d * math.Log(d) * 2 * reach / points
	}
	if reach < 0.5 {
		sum += (1 - 2*reach) * fewOff * math.Log(fewOff)
	}
	return sum
}

// doubtFor is the widest doubt, one for all sizes, that would show a division.
func (l *lot) doubtFor(u Unit, j int, near quantity.Length) quantity.Length {
	step := u.step(u.parts[j])
	at := func(doubt quantity.Length) bool {
		wide := quantity.Length(math.Hypot(float64(doubt), float64(near)))
		return shows(u, j, l.voices()*speaks(step, wide))
	}
	low, high := quantity.Length(0), step
	if !at(low) {
		return 0
	}
	for range 30 {
		if mid := (low + high) / 2; at(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

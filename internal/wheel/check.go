package wheel

import (
	"fmt"
	"math"

	"lostwood/parts"
)

// told is a length in a sentence.
func told(l Length) string { return fmt.Sprintf("%.1f mm (%.3g in)", l.Millimetres(), l.Inches()) }

// checkLean looks at all that the spokes' lean may spoil: the mortises' mouths on
// the seat, their inner ends clear of each other and of the box, the tongue
// holes. Where a lesser dish would do, that is told too.
func (w *Wheel) checkLean(l *limits) {
	found := w.leanFaults()
	if len(found) == 0 {
		return
	}
	l.faults = append(l.faults, found...)
	if most, ok := w.mostDish(); ok && math.Abs(float64(w.Spec.Dish.Built)) > float64(most) {
		l.faults = append(l.faults, &parts.LimitError{
			Part: "wheel", Dimension: "dish-built", Got: w.Spec.Dish.Built, Min: -most, Max: most,
			Why: "this nave and rim take spokes that lean no further",
		})
	}
}

func (w *Wheel) leanFaults() []error {
	var out []error
	for _, c := range w.Cuts() {
		out = append(out, w.footFaults(c)...)
	}
	var l limits
	w.checkFelloe(&l)
	return append(out, l.faults...)
}

func (w *Wheel) footFaults(c Cut) []error {
	var out []error
	row := ""
	if len(w.Rows()) > 1 {
		row = " of the " + c.Row.String()
	}
	fault := func(figure, says string, args ...any) {
		out = append(out, &Fault{figure, fmt.Sprintf(says, args...)})
	}
	back, front := w.Spec.seatEnds()
	const rounding = 1e-6
	if c.MouthBack < back-rounding || c.MouthFront > front+rounding {
		fault("seat-long", "the mortises%s open from %s to %s along the nave, and the seat turned for the spokes goes from %s to %s; make it longer, or the feet narrower",
			row, told(c.MouthBack), told(c.MouthFront), told(back), told(front))
	}
	if c.Space < 0 {
		fault("foot-long", "the mortises%s are %s deep and break into the box by %s; feet of %s would leave the usual 1/4 in before it",
			row, told(c.Deep), told(-c.Space), told(max(0, c.Deep+c.Space-usualSpace)))
	}
	if c.ToNext < leastWood {
		fault("foot-thick", "each mortise%s breaks into its neighbour: %d of them %s thick leave %s of wood between their inner ends, and %s is the least that can be cut; make the feet thinner or shorter, or stagger them further",
			row, w.Spec.Spokes.Number, told(c.Thick), told(c.ToNext), told(leastWood))
	}
	for _, q := range w.innerCorners(w.Row(c.Row)) {
		if at := w.onNave(q.Along); at < 0 || at > w.Spec.Nave.Long {
			fault("dish-built", "the feet%s lean so far that their inner ends come out of the nave's end by %s", row, told(max(-at, at-w.Spec.Nave.Long)))
		}
	}
	return out
}

const (
	// usualSpace is left between the spokes' feet and the box: about 1/4 in (Richardson, Practical
	// Carriage Building, 1891, Wagon wheels 3).
	usualSpace Length = 25.4 / 4
	// leastWood is what a chisel can leave standing between two mortises (common practice, no source).
	leastWood Length = 1
)

// mostDish is the greatest dish that this nave and rim allow with all else as it is;
// ok is false where it does not allow even none.
func (w *Wheel) mostDish() (most Length, ok bool) {
	sound := func(dish Length) bool {
		s := w.Spec
		s.Dish.Built = dish
		return len(lay(s).leanFaults()) == 0
	}
	if !sound(0) {
		return 0, false
	}
	lo, hi := Length(0), w.Spec.Height/6
	if sound(hi) {
		return hi, true
	}
	for hi-lo > .01 {
		if mid := (lo + hi) / 2; sound(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, true
}

// checkBands looks for bands over the mortises or over each other.
func (w *Wheel) checkBands(l *limits) {
	bands := w.Spec.Nave.Bands
	for i, b := range bands {
		for _, c := range w.Cuts() {
			if over := min(b.From+b.Wide, c.MouthFront) - max(b.From, c.MouthBack); over > 0 {
				l.tell(fmt.Sprintf("band-%d-from", i+1), fmt.Sprintf("the %s covers the mortises by %s: it goes from %s to %s along the nave, they from %s to %s",
					b.called(i), told(over), told(b.From), told(b.From+b.Wide), told(c.MouthBack), told(c.MouthFront)))
				break
			}
		}
		for j, o := range bands[:i] {
			if over := min(b.From+b.Wide, o.From+o.Wide) - max(b.From, o.From); over > 1e-6 {
				l.tell(fmt.Sprintf("band-%d-from", i+1), fmt.Sprintf("the %s and the %s stand on each other by %s", o.called(j), b.called(i), told(over)))
			}
		}
	}
}

// leastRound is the least wood round a bore (common practice, no source).
const leastRound Length = 5

// checkBore looks at the wood round the box and the recesses.
func (w *Wheel) checkBore(l *limits) {
	n, b := w.Spec.Nave, w.Spec.Box
	const step = 1e-3
	least, at := Length(math.Inf(1)), Length(0)
	for _, x := range []Length{0, b.In - step, b.In + step, b.In + b.Long - step, b.In + b.Long + step, n.Long} {
		x = min(max(x, 0), n.Long)
		if wood := (w.DiameterAt(x) - w.BoxOutside(x)) / 2; wood < least {
			least, at = wood, x
		}
	}
	if least < leastRound {
		l.tell("nave-front", fmt.Sprintf("the nave is %s through and bored to %s at %s from its back end: that leaves %s of wood all round, and %s is the least",
			told(w.DiameterAt(at)), told(w.BoxOutside(at)), told(at), told(least), told(leastRound)))
	}
}

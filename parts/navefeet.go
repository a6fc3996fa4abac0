package parts

import "math"

// checkFeet looks at the mortises together: clear of the bore, of each other,
// and within what is turned for them.
func (n Nave) checkFeet(l *limits) {
	f := n.Feet
	l.need("foot-wide", f.Wide, 3, n.SeatLong-f.Stagger, "the mortises' mouths stand on what is turned for them")
	l.need("foot-thick", f.Thick, 3, n.Diameter/3, "wood must stand between the mortises")
	l.may("foot-point", f.Point, f.Wide/2, f.Wide, "a foot tapers slightly to its inner end")
	if !l.sound() {
		return
	}
	body := Turned{n.stations()}
	space, least := Length(math.Inf(1)), Length(math.Inf(1))
	for i, w := range n.mortises() {
		if i > 1 {
			break // the rest are like these
		}
		m := w.(SpokeMortise)
		for _, side := range []Length{-1, 1} {
			p := m.frame(body).At(-m.Deep, side*m.point()/2, 0)
			axis := body.axis().Origin
			r := Length(math.Hypot(float64(p.Y-axis.Y), float64(p.Z-axis.Z)))
			space, least = min(space, r-n.boreAt(p.X)/2), min(least, r)
		}
	}
	if !(space >= 0) {
		l.need("foot-deep", f.Deep, 0, f.Deep+space, "it must not break into the bore")
	}
	pitch := 2 * math.Pi / float64(f.Spokes)
	if f.Stagger >= f.Wide+3 {
		pitch *= 2
	}
	if most := 2*least*Length(math.Tan(pitch/2)) - 1; f.Thick > most {
		l.need("foot-thick", f.Thick, 3, most, "a mortise must not break into its neighbour")
	}
}

// boreAt is the greatest bore within a millimetre of a place along the nave.
func (n Nave) boreAt(x Length) Length {
	b := n.Box
	switch {
	case x < b.In+1:
		return n.backBore()
	case x > b.In+b.Long-1:
		return n.frontBore()
	}
	return b.Large + (b.Small-b.Large)*(x-b.In)/b.Long
}

package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// noCircle is how far from a circle's arc the bend of a wreck is taken to be, as a
// share of what straightening adds: common practice, no source.
const noCircle = 0.25

// A bend is how an iron that was straight lies now: an arc over a chord.
type bend struct {
	chord, radius float64
	doubtful      float64 // share of what straightening adds, one standard uncertainty
	common        int
}

// bendOf is the bend of an iron as it was found; nil of a straight one.
func (n *network) bendOf(i *survey.Iron) *bend {
	chord, rise := start(i, "long").Millimetres(), 0.0
	if i.Bent != nil {
		rise = i.Bent.Value.Millimetres()
	}
	if !(rise > 0) || !(chord > 2*rise) {
		return nil
	}
	says := fmt.Sprintf("the bend of %s is an arc of a circle", the(n.families[i.ID][0]))
	return &bend{
		chord: chord, radius: chord*chord/(8*rise) + rise/2,
		// what is added goes with the square of the rise
		doubtful: math.Hypot(noCircle, 2*i.Bent.Doubt.Millimetres()/rise),
		common:   n.common(common{kind: ofBend, says: says, known: quantity.FromIron, line: i.Bent.At.Line}, 1),
	}
}

// straight is how far along the iron, made straight, a place lies that is p along
// the chord from its first end.
func (b *bend) straight(p float64) float64 {
	half := b.chord / 2
	return b.radius * (math.Asin((p-half)/b.radius) + math.Asin(half/b.radius))
}

// straightened works a reading of a bent iron back to what it was, and gives by how
// much that may be wrong together with its other readings. base is where it was read
// from, along the chord.
func (b *bend) straightened(r survey.Reading, base float64) (survey.Reading, quantity.Length) {
	p := base + r.Value.Millimetres()
	was := b.straight(p) - b.straight(base)
	added := was - r.Value.Millimetres()
	r.Value = quantity.Length(was)
	return r, quantity.Length(b.doubtful * added)
}

// stepped is how far a cranked iron stands off, at one of its holes, from where it
// stands at its first end, on the vehicle's axis a.
func (m *member) stepped(hole, a int) float64 {
	if m.iron == nil || hole == none || hole >= len(m.iron.Holes) {
		return 0
	}
	at := m.iron.Holes[hole].Value
	if m.iron.From == survey.FromMiddle {
		at += start(m.iron, "long") / 2
	}
	sum := 0.0
	for _, c := range m.iron.Cranks {
		if at > c.At.Value {
			sum += c.By.Value.Millimetres()
		}
	}
	if a == 1 && m.hand == vehicle.Off {
		return -sum
	}
	return sum
}

// stepDoubt is what the steps of a crank before a hole may be off by.
func (m *member) stepDoubt(hole int) quantity.Length {
	if m.iron == nil || hole == none || hole >= len(m.iron.Holes) {
		return 0
	}
	var sum quantity.Length
	for _, c := range m.iron.Cranks {
		sum = quantity.Length(hypot(sum, c.By.Doubt))
	}
	return sum
}

// readAcross enters where an iron's holes stand across it.
func (n *network) readAcross(m *member) {
	for k, r := range m.iron.Across {
		if k < len(m.asides) {
			n.read(note{sort: sizeRead, subject: m.id, what: fmt.Sprintf("hole %d across", k+1), known: quantity.FromIron, member: m}, r, m.asides[k])
		}
	}
}

// readPoints enters places on the outside of a piece of tyre: each lies as far from
// the middle of its arc as the others (the geometric fit of a circle).
func (n *network) readPoints(m *member) {
	pts := m.iron.Points
	radius, thick := m.size("radius"), m.size("thick")
	if len(pts) < 3 || radius == none || thick == none {
		return
	}
	x0, y0, r := circleOf(pts)
	n.problem.Start[radius] = r - n.problem.Start[thick]
	cx, cy := n.unknown(m, "middle", quantity.Length(x0)), n.unknown(m, "middle", quantity.Length(y0))
	for _, u := range []int{cx, cy} {
		n.unknowns[u].place = true
	}
	for k, p := range pts {
		px, py := p[0].Value.Millimetres(), p[1].Value.Millimetres()
		ux, uy := (px-x0)/r, (py-y0)/r
		doubt := hypot(quantity.Length(ux)*p[0].Doubt, quantity.Length(uy)*p[1].Doubt)
		n.observe(note{sort: pointRead, subject: m.id, what: fmt.Sprint(k + 1), known: quantity.FromIron, member: m, line: p[0].At.Line}, 0, quantity.Length(doubt),
			func(x []float64) adjust.Term {
				dx, dy := adjust.Constant(px).Minus(adjust.At(x, cx)), adjust.Constant(py).Minus(adjust.At(x, cy))
				return dx.Times(dx).Plus(dy.Times(dy)).Sqrt().Minus(adjust.At(x, radius)).Minus(adjust.At(x, thick))
			})
	}
}

// circleOf is the circle through the first, the last and the point farthest from the
// line between them: a start. Straight rows of points have none: see package survey.
func circleOf(pts [][2]survey.Reading) (x, y, r float64) {
	at := func(k int) (float64, float64) { return pts[k][0].Value.Millimetres(), pts[k][1].Value.Millimetres() }
	ax, ay := at(0)
	bx, by := at(len(pts) - 1)
	most, far := 0.0, 1
	for k := range pts {
		px, py := at(k)
		if off := math.Abs((bx-ax)*(py-ay) - (by-ay)*(px-ax)); off > most {
			most, far = off, k
		}
	}
	px, py := at(far)
	d := 2 * (ax*(by-py) + bx*(py-ay) + px*(ay-by))
	a, b, c := ax*ax+ay*ay, bx*bx+by*by, px*px+py*py
	x = (a*(by-py) + b*(py-ay) + c*(ay-by)) / d
	y = (a*(px-bx) + b*(ax-px) + c*(bx-ax)) / d
	return x, y, math.Hypot(ax-x, ay-y)
}

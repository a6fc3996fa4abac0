package wheelwright

import (
	"fmt"
	"math"

	"lostwood/internal/outline"
	"lostwood/internal/wheel"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A sketch gathers a drawing.
type sketch struct{ outline.Drawing }

func (k *sketch) run(p outline.Pen, closed bool, points ...form.Point) {
	k.Paths = append(k.Paths, outline.Path{Layer: outline.Layer{Role: outline.Wood}, Pen: p, Run: form.Polygon(points...), Closed: closed})
}

func (k *sketch) say(at form.Point, high Length, format string, a ...any) {
	k.Texts = append(k.Texts, outline.Text{Layer: outline.Layer{Role: outline.Words}, At: at, Height: high, Words: fmt.Sprintf(format, a...)})
}

func at(x, y Length) form.Point { return form.Point{X: x, Y: y} }

// Sheets are the drawings of a wheel at full size.
func Sheets(s Subject) []Sheet {
	w := s.Wheel
	out := []Sheet{gauge(s), turning(s), strip(s)}
	for _, r := range spokeRows(w) {
		name := "spoke"
		if r.both {
			name = r.row.String()
		}
		out = append(out, template(s, name, w.SpokePart(r.row).Stick(), parts.FirstSide, "front up; foot left",
			"Seen from its side, the front of the wheel upwards. Stick it to a thin board, and cut to the outer lines: the square, the oval, foot and tongue."))
	}
	return append(out, template(s, "felloe", w.FelloePart().Stick(), parts.SecondSide, "outer side",
		"Seen from the outer side, its back downwards. One template serves all the felloes; turn it only end for end. Grain along the chord."))
}

// A spokeRow is a row whose spokes differ from the others, or stand for all.
type spokeRow struct {
	row  wheel.Row
	both bool
}

// spokeRows are the rows that need a template each: one, where a back spoke is a
// face spoke turned about.
func spokeRows(w *wheel.Wheel) []spokeRow {
	rows := w.Rows()
	if len(rows) == 1 {
		return []spokeRow{{rows[0], false}}
	}
	f, b := w.Row(rows[0]), w.Row(rows[1])
	const same = 1e-6
	if math.Abs(float64(f.Long-b.Long)) < same && math.Abs(float64(f.Shoulder+b.Shoulder)) < same && math.Abs(float64(f.TipShoulder+b.TipShoulder)) < same {
		return []spokeRow{{rows[0], false}}
	}
	return []spokeRow{{rows[0], true}, {rows[1], true}}
}

// turning is the nave's turning template: half its section, back end to the left.
func turning(s Subject) Sheet {
	w := s.Wheel
	var k sketch
	ss := w.Stations()
	long := w.Spec.Nave.Long
	var edge []form.Point
	for _, t := range ss {
		edge = append(edge, at(t.Along, t.Diameter/2))
	}
	k.run(outline.Edge, true, append([]form.Point{at(0, 0)}, append(edge, at(long, 0))...)...)
	k.run(outline.Axis, false, at(-6, 0), at(long+6, 0))
	b := w.Spec.Box
	k.run(outline.Below, false, at(0, w.BoxOutside(0)/2), at(b.In, w.BoxOutside(b.In-1e-9)/2), at(b.In, b.Large/2+b.Wall),
		at(b.In+b.Long, b.Small/2+b.Wall), at(b.In+b.Long, w.BoxOutside(long)/2), at(long, w.BoxOutside(long)/2))
	for _, t := range ss {
		k.run(outline.Thin, false, at(t.Along, t.Diameter/2), at(t.Along, t.Diameter/2+6))
		k.say(at(t.Along+1, t.Diameter/2+3), 2, "%s", s.both(t.Diameter))
	}
	for i, n := range w.Spec.Nave.Bands {
		k.run(outline.Axis, false, at(n.From, 0), at(n.From, w.DiameterAt(n.From)/2))
		k.run(outline.Axis, false, at(n.From+n.Wide, 0), at(n.From+n.Wide, w.DiameterAt(n.From+n.Wide)/2))
		k.say(at(n.From+1, min(w.DiameterAt(n.From), w.DiameterAt(n.From+n.Wide))/2-8-Length(i%2)*5), 2, "%s", n.Name)
	}
	for _, c := range w.Cuts() {
		line := w.Row(c.Row)
		k.mortise(w, line)
		foot := line.Foot.Along + long - w.Spec.Nave.Forward
		k.run(outline.Axis, false, at(foot, 0), at(foot, w.DiameterAt(foot)/2+14))
		k.say(at(foot+1, w.DiameterAt(foot)/2+11), 2, "mortise circle, %s", s.both(foot))
	}
	k.say(at(4, 4), 2.5, "back end")
	k.say(at(long-26, 4), 2.5, "front end")
	return Sheet{
		Name: "nave: turning template", Drawing: k.Drawing, Check: [2]form.Point{at(0, 0), at(long, 0)},
		Means: "Half the nave's section, its back end to the left, the middle line below. Diameters stand at their places. Broken lines are the bore and a mortise, not for turning.",
	}
}

// mortise draws a row's mortise in section.
func (k *sketch) mortise(w *wheel.Wheel, line wheel.Line) {
	n := w.NavePart()
	sin, cos := math.Sincos(float64(line.Lean))
	shift := w.Spec.Nave.Long - w.Spec.Nave.Forward
	place := func(out, aside Length) form.Point {
		return at(line.Foot.Along+shift+out*Length(sin)+aside*Length(cos), line.Foot.Out+out*Length(cos)-aside*Length(sin))
	}
	point := n.Feet.Point
	if point == 0 {
		point = n.Feet.Wide
	}
	k.run(outline.Below, false, place(0, -n.Feet.Wide/2), place(-n.Feet.Deep, -point/2), place(-n.Feet.Deep, point/2), place(0, n.Feet.Wide/2))
}

// strip is the mortise setting-out that is wound round the nave's seat.
func strip(s Subject) Sheet {
	w := s.Wheel
	n := w.NavePart()
	var k sketch
	seat := w.Spec.Nave.SeatLong
	r := float64(w.Spec.Nave.Diameter) / 2
	fall := math.Tan(float64(n.SeatFall))
	// laid is a place on the seat, round by an angle and along from its middle,
	// on the flat paper. A coned seat unrolls to a ring's sector.
	laid := func(round float64, along Length) form.Point {
		if fall < 1e-9 {
			return at(Length(r*round), along)
		}
		slant := math.Hypot(1, fall)
		apex := r / fall * slant // along the cone from its middle
		out := apex - float64(along)*slant
		turn := (round - math.Pi) * fall / slant
		sin, cos := math.Sincos(turn)
		return at(Length(math.Pi*r+out*sin), Length(apex-out*cos))
	}
	line := func(p outline.Pen, closed bool, from, to [2]float64) {
		const pieces = 48
		var run []form.Point
		for i := range pieces + 1 {
			t := float64(i) / pieces
			run = append(run, laid(from[0]+(to[0]-from[0])*t, Length(from[1]+(to[1]-from[1])*t)))
		}
		k.run(p, closed, run...)
	}
	turn, half := 2*math.Pi, float64(seat)/2
	line(outline.Edge, false, [2]float64{0, -half}, [2]float64{turn, -half})
	line(outline.Edge, false, [2]float64{0, half}, [2]float64{turn, half})
	line(outline.Edge, false, [2]float64{0, -half}, [2]float64{0, half})
	line(outline.Edge, false, [2]float64{turn, -half}, [2]float64{turn, half})
	k.run(outline.Thin, false, laid(turn, -Length(half)+4), at(laid(turn, 0).X+15, -Length(half)+8), at(laid(turn, 0).X+15, Length(half)-8), laid(turn, Length(half)-4))
	k.say(at(laid(turn, 0).X+2, 0), 2, "paste under")
	for _, row := range w.Rows() {
		along := float64(w.Row(row).Foot.Along)
		line(outline.Axis, false, [2]float64{0, along}, [2]float64{turn, along})
	}
	pitch := float64(w.Pitch())
	for i := range w.Spec.Spokes.Number {
		c := w.Cuts()[min(int(w.RowOf(i)), len(w.Rows())-1)]
		shift := w.Spec.Nave.Long - w.Spec.Nave.Forward
		mid := pitch * (float64(i) + .5)
		aside := math.Asin(float64(c.Thick) / 2 / r)
		back, front := c.MouthBack-shift, c.MouthFront-shift
		k.run(outline.Work, true, laid(mid-aside, back), laid(mid+aside, back), laid(mid+aside, front), laid(mid-aside, front))
		k.run(outline.Axis, false, laid(mid, -Length(half)), laid(mid, Length(half)))
		k.say(laid(mid+.01, front+1.5), 2, "%d", i+1)
	}
	k.say(laid(pitch*.1, Length(half)+2), 2.2, "front edge of the seat, to the linchpin")
	k.say(laid(pitch*.1, -Length(half)-4), 2.2, "back edge of the seat")
	return Sheet{
		Name: "nave: mortises, wound round", Drawing: k.Drawing, Check: [2]form.Point{laid(0, 0), laid(turn, 0)},
		Means: "Cut out, wind round the seat with the front edge to the front, and paste the tongue under: the ends must meet without gap or lap. If they do not, the nave is not turned to its size; turn it, or step the pitch anew. Prick the corners and the middle lines through.",
	}
}

package wheelwright

import (
	"math"

	"lostwood/internal/outline"
	"lostwood/internal/wheel"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A Peg is where the spoke-set gauge touches a spoke: a stick turns about the
// nave's middle, flat on its front end, and a peg through it meets the spoke's
// front where the tongue's shoulder is.
type Peg struct {
	Row wheel.Row
	Out Length // of the peg from the nave's middle
	In  Length // how far its point stands in from the stick's inner face; below 0 the spoke stands beyond it
}

// Pegs are the gauge's, one for each row of spokes.
func Pegs(w *wheel.Wheel) []Peg {
	var out []Peg
	for _, r := range w.Rows() {
		line := w.Row(r)
		sin, cos := math.Sincos(float64(line.Lean))
		h := w.Spec.Spokes.TipWide / 2
		front := line.Tip.Along + h*Length(cos)
		out = append(out, Peg{r, line.Tip.Out - h*Length(sin), w.Spec.Nave.Forward - front})
	}
	return out
}

// gauge is the spoke-set gauge over a section of nave, spoke and felloe: the way
// out to the right, the front upwards.
func gauge(s Subject) Sheet {
	w := s.Wheel
	n := w.Spec.Nave
	var k sketch
	along := func(x Length) Length { return x - n.Long + n.Forward } // from the nave's back end
	var edge []form.Point
	for _, t := range w.Stations() {
		edge = append(edge, at(t.Diameter/2, along(t.Along)))
	}
	k.run(outline.Edge, false, append(append([]form.Point{at(0, along(0))}, edge...), at(0, along(n.Long)))...)
	k.run(outline.Axis, false, at(0, along(0)-5), at(0, along(n.Long)+30))
	reach := Length(0)
	for i, r := range w.Rows() {
		k.spoke(w, r)
		peg := Pegs(w)[i]
		reach = max(reach, peg.Out)
		stick := n.Forward
		k.run(outline.Work, false, at(peg.Out, stick+22), at(peg.Out, stick-peg.In))
		k.run(outline.Thin, false, at(peg.Out-4, stick-peg.In), at(peg.Out+4, stick-peg.In))
		name := "peg"
		if len(w.Rows()) > 1 {
			name = "peg for " + r.String()
		}
		k.say(at(peg.Out-78, stick+26+Length(i)*5), 2.2, "%s: %s out, %s in", name, s.both(peg.Out), s.both(peg.In))
	}
	k.rimSection(w)
	stick := n.Forward
	k.run(outline.Work, true, at(-20, stick), at(reach+30, stick), at(reach+30, stick+20), at(-20, stick+20))
	k.say(at(60, stick+8), 2.5, "the stick, 20 mm thick, turns about the nave's middle")
	k.say(at(6, stick-6), 2.2, "front end of the nave")
	sole := w.Radii(wheel.Built).Sole
	return Sheet{
		Name: "spoke-set gauge", Drawing: k.Drawing, Check: [2]form.Point{at(0, stick), at(sole, stick)},
		Means: "A section through nave, spoke and felloe, the middle of the nave to the left, the front up. Make the stick and set its pegs by this; a bolt through a bung in the bore carries it. Every spoke, as it is driven, just touches its peg.",
	}
}

// spoke draws one from the side, in its place.
func (k *sketch) spoke(w *wheel.Wheel, r wheel.Row) {
	i := 0
	if r == wheel.BackRow {
		i = 1
	}
	line := w.Row(r)
	sin, cos := math.Sincos(float64(line.Lean))
	p := w.SpokePart(w.RowOf(i))
	stick := p.Stick()
	_, _, deep := stick.Body.Box()
	place := func(q form.Point) form.Point {
		x, z := q.X-p.FootLong, q.Y-deep/2
		return at(line.Foot.Out+x*Length(cos)-z*Length(sin), line.Foot.Along+x*Length(sin)+z*Length(cos))
	}
	for _, m := range stick.Marks(parts.FirstSide) {
		var run []form.Point
		for _, v := range m.Path {
			run = append(run, place(v.Point))
		}
		k.run(outline.Edge, m.Closed, run...)
	}
	for _, z := range []Length{0, deep} {
		k.run(outline.Edge, false, place(at(p.FootLong, z)), place(at(p.FootLong+p.Square, z)))
	}
	k.run(outline.Axis, false, place(at(-10, deep/2)), place(at(p.FootLong+p.Long+p.TongueLong+10, deep/2)))
}

// rimSection draws the felloe's section, before the tyre is on.
func (k *sketch) rimSection(w *wheel.Wheel) {
	f := w.FelloePart()
	r := w.Radii(wheel.Built)
	step := f.Wide / 2 * Length(math.Tan(float64(f.Bevel)))
	back, front := w.Dish(wheel.Built)-f.Wide/2, w.Dish(wheel.Built)+f.Wide/2
	k.run(outline.Edge, true, at(r.Belly+step, back), at(r.Sole+step, back), at(r.Sole-step, front), at(r.Belly-step, front))
}

// template is one part seen square on to a face.
func template(s Subject, name string, stick parts.Stick, f parts.Face, seen, means string) Sheet {
	var k sketch
	layer := outline.Layer{Role: outline.Wood}
	o := stick.Body.Outline(f)
	k.Paths = append(k.Paths, outline.Path{Layer: layer, Pen: outline.Edge, Run: o, Closed: true})
	for _, m := range stick.Marks(f) {
		pen := [...]outline.Pen{parts.Seen: outline.Work, parts.Hidden: outline.Below, parts.Middle: outline.Axis}[m.Stroke]
		k.Paths = append(k.Paths, outline.Path{Layer: layer, Pen: pen, Run: m.Path, Closed: m.Closed})
	}
	lo, hi := o.Bounds()
	k.say(at(lo.X+10, (lo.Y+hi.Y)/2+6), 2.6, "%s, %s; issue %s", name, seen, s.Issue)
	return Sheet{Name: name + ": template", Drawing: k.Drawing, Means: means, Check: [2]form.Point{at(lo.X, lo.Y), at(hi.X, lo.Y)}}
}

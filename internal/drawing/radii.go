package drawing

import (
	"math"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/parts"
	"lostwood/parts/form"
)

// radii draws the radii of a felloe's back and belly on its front view: an arrow
// to each from the wheel's side, its figure at the tail.
func (b board) radii(p *partSheet, s Scale) {
	f, ok := p.item.Shape.(parts.Felloe)
	if !ok {
		return
	}
	_, _, deep := p.item.Stick.Body.Box()
	middle, centre := p.front.wide/2, deep-f.Radius // the crown of the back is the box's top
	const tail = 9                                  // below the belly, on paper
	for _, r := range []struct {
		radius Length
		angle  float64 // as a share of the felloe's half
		words  string
	}{
		{f.Radius, 0.24, "R " + marked(p.v, f.Radius, sureOf(p.item, "radius"))},
		{f.Radius - f.Deep, -0.72, "R " + marked(p.v, f.Radius-f.Deep, max(sureOf(p.item, "radius"), sureOf(p.item, "deep")))},
	} {
		var sin, cos float64
		on := func(radius Length) (x, y Length) {
			return s.of(middle + radius*Length(sin)), s.of(centre + radius*Length(cos))
		}
		var x0, y0, x1, y1 Length
		for step := range 60 { // to the nearest place where its figure and its line meet nothing
			turned := r.angle + 0.03*float64((step+1)/2)*float64(1-2*(step%2))
			sin, cos = math.Sincos(turned * math.Pi / float64(f.Felloes))
			x1, y1 = on(r.radius)
			x0, y0 = on(f.Radius - f.Deep - tail*Length(s))
			if b.clearFor(at(x0, y0-small-1.4), at(x0, y0), at(x1, y1), r.words) {
				break
			}
		}
		b.Straight(sheet.Narrow, at(x0, y0), at(x1, y1))
		b.arrow(at(x1, y1), Length(sin), Length(cos))
		b.middled(at(x0, y0-small-1.4), r.words, small, sheet.Plain)
	}
}

// clearFor reports whether words set about a place, and a straight line that leads
// from them, run into nothing that is drawn so far.
func (b board) clearFor(words, from, to form.Point, text string) bool {
	half := b.letters.Width(text, small, sheet.Plain) / 2
	room := outline.Box{Min: at(words.X-half, words.Y-0.8), Max: at(words.X+half, words.Y+small+0.6)}.Grown(0.5)
	for _, l := range b.Lines {
		for _, s := range l.Segments() {
			if s.Crosses(room) {
				return false
			}
		}
	}
	leader := outline.Segment{A: from, B: to}
	for _, w := range b.Words {
		box := w.Box().Grown(0.5)
		apart := box.Max.X < room.Min.X || box.Min.X > room.Max.X || box.Max.Y < room.Min.Y || box.Min.Y > room.Max.Y
		if !apart || leader.Crosses(box) {
			return false
		}
	}
	return true
}

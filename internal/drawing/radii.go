package drawing

import (
	"math"

	"lostwood/internal/sheet"
	"lostwood/parts"
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
		sin, cos := math.Sincos(r.angle * math.Pi / float64(f.Felloes))
		on := func(radius Length) (x, y Length) {
			return s.of(middle + radius*Length(sin)), s.of(centre + radius*Length(cos))
		}
		x1, y1 := on(r.radius)
		x0, y0 := on(f.Radius - f.Deep - tail*Length(s))
		b.Straight(sheet.Narrow, at(x0, y0), at(x1, y1))
		b.arrow(at(x1, y1), Length(sin), Length(cos))
		b.middled(at(x0, y0-small-1.4), r.words, small, sheet.Plain)
	}
}

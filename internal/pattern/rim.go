package pattern

import (
	"bytes"
	"fmt"
	"io"
	"math"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// HasRim reports whether an item is a felloe, so that there is a rim to set out.
func HasRim(item *vehicle.Item) bool {
	_, ok := outline.RimOf(item.Stick)
	return ok
}

// A RimError says that a part is no felloe.
type RimError struct{ Item string }

func (e *RimError) Error() string {
	return e.Item + " is no felloe, so there is no rim to set out"
}

// WriteRim writes the setting-out of the whole rim that a felloe is a piece of, at
// full size, as a PDF: every felloe with its joints and its spokes' lines, laid
// flat and seen from the outer side.
func WriteRim(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, p Paper) error {
	l, err := layRim(v, item, p)
	if err != nil {
		return fmt.Errorf("rim of %s: %w", item.Name, err)
	}
	all, err := l.sheets()
	if err != nil {
		return fmt.Errorf("rim of %s: %w", item.Name, err)
	}
	var whole bytes.Buffer
	if err := writePDF(&whole, v, item, all); err != nil {
		return fmt.Errorf("rim of %s: %w", item.Name, err)
	}
	_, err = whole.WriteTo(w)
	return err
}

// layRim sets a whole rim out, on sheets turned the way that takes fewest.
func layRim(v *vehicle.Vehicle, item *vehicle.Item, p Paper) (*layout, error) {
	if err := shaped(item); err != nil {
		return nil, err
	}
	if err := p.check(); err != nil {
		return nil, err
	}
	rim, ok := outline.RimOf(item.Stick)
	if !ok {
		return nil, &RimError{item.Name}
	}
	letters, err := newLettering()
	if err != nil {
		return nil, err
	}
	var best *layout
	for _, l := range promising(layout{teller: teller{v, item}, lettering: letters, paper: p, rim: &rim}) {
		if err := l.settle(); err != nil {
			return nil, err
		}
		if best == nil || l.printedCount() < best.printedCount() {
			best = l
		}
	}
	return best, nil
}

// rimDrawing is the rim with the lines of its spokes, and the wheel's centre where
// one sheet holds the whole.
func (l *layout) rimDrawing() outline.Drawing {
	var d outline.Drawing
	for _, f := range l.rim.Felloes {
		for _, p := range f.Paths {
			if p.Layer.Work != parts.Rounding {
				d.Paths = append(d.Paths, p)
			}
		}
		d.Circles = append(d.Circles, f.Circles...)
	}
	for _, s := range l.rim.Spokes {
		d.Line(guide(), outline.Thin, s.Inner, s.Outer)
	}
	if page := pageFor(l.paper, l.way, l.rim.Box); min(page.X, page.Y) > 2*l.rim.Back+stripHigh+2*bare+headRoom+footRoom {
		d.Add(outline.Cross(form.Point{}, 12))
	}
	return once(d)
}

// layRimFace takes the rim for the one face to draw.
func (l *layout) layRimFace() {
	l.faces = outline.Unfolding{Laid: []outline.Laid{{Face: parts.SecondSide, Extent: l.rim.Box, Drawing: l.rimDrawing()}}}
}

// rimLabels name the felloes and the spokes.
func (l *layout) rimLabels() [][]label {
	var all [][]label
	n := len(l.rim.Felloes)
	middle := (l.rim.Back + l.rim.Belly) / 2
	for k := range n {
		sin, cos := math.Sincos(-math.Pi/2 + 2*math.Pi*float64(k)/float64(n))
		b := l.block([]line{{fmt.Sprintf("felloe %d", k+1), normal, outline.Bold}}, 0.6)
		at := form.Point{X: middle * Length(cos), Y: middle * Length(sin)}
		b.wish = form.Point{X: at.X - b.size.X/2, Y: at.Y - b.size.Y/2}
		b.within, b.inside = l.everywhere(), outline.Path{Run: l.rim.Felloes[k].Paths[0].Run, Closed: true}.Segments()
		b.need = spare
		all = append(all, []label{b})
	}
	for i, s := range l.rim.Spokes {
		b := l.block([]line{{fmt.Sprintf("spoke %d", i+1), normal, outline.Plain}}, 0.6)
		b.anchor = &outline.Box{Min: s.Inner, Max: s.Inner}
		b.within = l.everywhere()
		b.home = b.within
		all = append(all, []label{b})
	}
	return all
}

// rimOpening sets what the key says of a rim.
func (c *column) rimOpening() {
	c.say("Setting-out of the rim: "+c.item.Name, title, outline.Bold, c.left, c.right)
	c.y -= 1.5
	c.say(c.stock(), large, outline.Plain, c.left, c.right)
	c.say(c.v.Name+" · "+c.issue(), normal, outline.Plain, c.left, c.right)
	c.head("The rim")
	r := c.rim
	n, spokes := len(r.Felloes), len(r.Spokes)
	c.enter(entry{name: "felloes", words: fmt.Sprintf("%d, joint to joint %s straight across the back", n, c.both(chord(r.Back, n))), height: normal})
	if spokes > 0 {
		c.enter(entry{name: "spokes", words: fmt.Sprintf("%d, one from the next by %.2f°; set the gauge to %s straight across the belly, %s across the back, between their middle lines",
			spokes, 360/float64(spokes), c.both(chord(r.Belly, spokes)), c.both(chord(r.Back, spokes))), height: normal})
	}
	c.enter(entry{name: "radius", words: c.both(r.Back) + " to the back under the tyre, " + c.both(r.Belly) + " to the belly", height: normal})
	for _, s := range c.item.Sizes {
		if left(s.Size) {
			words := c.standing(s.Size)
			if doubtful(s.Known) {
				words = "? " + words
			}
			c.enter(entry{s.Name, words, normal, doubtful(s.Known)})
		}
	}
	c.say("Laid flat and seen from the outer side, the joints open by the gap that the tyre closes. Dish is not drawn: it comes when the spokes are set.", normal, outline.Plain, c.left, c.right)
	c.say("The centre is where strings over opposite spoke lines cross; check the radius from there to every joint.", normal, outline.Plain, c.left, c.right)
	c.head("Sheets")
	c.joining()
	c.chart()
}

// chord is the straight distance between neighbours of n on a circle.
func chord(radius Length, n int) Length {
	return 2 * radius * Length(math.Sin(math.Pi/float64(n)))
}

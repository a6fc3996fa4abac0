// Package outline draws timber parts in the plane, exactly and at full size: a
// [Drawing] is data, lines and arcs and circles and words on named layers, that
// the paper, the page and the router's file are all made from.
//
// All coordinates are millimetres, x to the right and y up, as a face is looked
// at square on from outside the wood (see parts.Face). Nothing here knows of
// paper, files or vehicles.
package outline

import (
	"lostwood/parts"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = parts.Length

// A Pen says how a line is drawn. The widths follow ISO 128: wide to narrow 2:1.
type Pen int

// The pens.
const (
	Edge  Pen = iota // wide, full: the edge of the wood
	Work             // wide, full: where work is entered
	Below            // narrow, dashed: where work leaves, or what lies under the surface
	Axis             // narrow, chain line: a centre
	Thin             // narrow, full: leaders, ticks, frames
	Query            // narrow, long dashes: a frame round what is only guessed
	Faint            // narrow, grey: what is there to read by, never to cut to
	Join             // narrow, dotted: where sheets join
	Solid            // no line: a closed run filled
)

// A Path is one run of lines and arcs. The bulge of its last vertex counts only
// where it is closed.
type Path struct {
	Layer  Layer
	Pen    Pen
	Run    []form.Vertex
	Closed bool
}

// A Circle is a whole circle.
type Circle struct {
	Layer    Layer
	Pen      Pen
	Centre   form.Point
	Diameter Length
}

// Halves is the circle as a closed run of two half circles.
func (c Circle) Halves() []form.Vertex {
	r := c.Diameter / 2
	return []form.Vertex{
		{Point: form.Point{X: c.Centre.X - r, Y: c.Centre.Y}, Bulge: 1},
		{Point: form.Point{X: c.Centre.X + r, Y: c.Centre.Y}, Bulge: 1},
	}
}

// A Weight is how black a lettering is.
type Weight int

// The weights.
const (
	Plain Weight = iota
	Bold
)

// A Text is one line of words, upright. At is the left end of its baseline and
// Height that of its capitals. Width is measured by whoever set the words.
type Text struct {
	Layer  Layer
	At     form.Point
	Height Length
	Width  Length
	Weight Weight
	Words  string
}

// A Drawing is a list of what is drawn, in order.
type Drawing struct {
	Paths   []Path
	Circles []Circle
	Texts   []Text
}

// Add appends everything in o.
func (d *Drawing) Add(o Drawing) {
	d.Paths = append(d.Paths, o.Paths...)
	d.Circles = append(d.Circles, o.Circles...)
	d.Texts = append(d.Texts, o.Texts...)
}

// Line appends one straight line.
func (d *Drawing) Line(l Layer, p Pen, a, b form.Point) {
	d.Paths = append(d.Paths, Path{Layer: l, Pen: p, Run: []form.Vertex{{Point: a}, {Point: b}}})
}

// Rect appends the outline of a box, anticlockwise.
func (d *Drawing) Rect(l Layer, p Pen, b Box) {
	d.Paths = append(d.Paths, Path{Layer: l, Pen: p, Closed: true, Run: []form.Vertex{
		{Point: b.Min},
		{Point: form.Point{X: b.Max.X, Y: b.Min.Y}},
		{Point: b.Max},
		{Point: form.Point{X: b.Min.X, Y: b.Max.Y}},
	}})
}

// Shifted is the drawing moved by p.
func (d Drawing) Shifted(p form.Point) Drawing {
	var m Drawing
	for _, t := range d.Paths {
		run := make([]form.Vertex, len(t.Run))
		for i, v := range t.Run {
			run[i] = form.Vertex{Point: plus(v.Point, p), Bulge: v.Bulge}
		}
		t.Run = run
		m.Paths = append(m.Paths, t)
	}
	for _, c := range d.Circles {
		c.Centre = plus(c.Centre, p)
		m.Circles = append(m.Circles, c)
	}
	for _, t := range d.Texts {
		t.At = plus(t.At, p)
		m.Texts = append(m.Texts, t)
	}
	return m
}

// Bounds is the box of everything but words; ok is false where nothing is drawn.
func (d Drawing) Bounds() (b Box, ok bool) {
	for _, p := range d.Paths {
		for _, s := range p.Segments() {
			b, ok = b.joined(s.Bounds(), ok), true
		}
	}
	for _, c := range d.Circles {
		b, ok = b.joined(Around(c.Centre, c.Diameter/2), ok), true
	}
	return b, ok
}

func plus(a, b form.Point) form.Point { return form.Point{X: a.X + b.X, Y: a.Y + b.Y} }

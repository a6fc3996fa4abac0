// Package sheet is a sheet of drawing paper: lines in the pens of technical
// drawing, and words, in millimetres, written as PDF and SVG.
//
// x runs to the right and y up from the paper's lower left corner. The widths
// of lines follow ISO 128-2, wide to narrow 2:1; the heights of letters ISO 3098.
// Both files are made from the same list. Nothing here knows what is drawn.
package sheet

import (
	"lostwood/internal/outline"
	"lostwood/parts"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = parts.Length

// A Pen says how a line is drawn.
type Pen int

// The pens. Line types are those of ISO 128-2, by their numbers there.
const (
	Wide      Pen = iota // 01.2 continuous wide: edges and outlines in sight
	Narrow               // 01.1 continuous narrow: dimensions, leaders
	Dashed               // 02.1 dashed narrow: edges out of sight
	Centre               // 04.1 long-dashed dotted narrow: axes, middle lines
	Plane                // 04.2 long-dashed dotted wide: where a section is taken
	Neighbour            // 05.1 long-dashed double-dotted narrow: what stands beside, or may stand
	Hatch                // 01.1 continuous narrow, lighter: what is cut
	Iron                 // 01.1 continuous narrow, in a second colour: the marking of irons
	Bold                 // 01.2 twice as wide: the frame
	Query                // 03.1 long dashes apart, narrow: round what is only guessed
	Black                // no line: filled
)

// A Line is one run of straight lines and arcs.
type Line struct {
	Pen    Pen
	Run    []form.Vertex
	Closed bool
}

// A Weight is how black letters are.
type Weight int

// The weights.
const (
	Plain Weight = iota
	Heavy
)

// A Way is the way words run.
type Way int

// The ways.
const (
	Across Way = iota // to the right
	Upward            // from below to above, read from the right
)

// A Word is a line of words. At is the start of its baseline.
type Word struct {
	At     form.Point
	Height Length // of its capitals
	Width  Length // how long it runs
	Weight Weight
	Way    Way
	Words  string
}

// A Sheet is a piece of paper and all that is on it.
type Sheet struct {
	Name          string // for its file and its bookmark
	Width, Height Length
	Stroke        Length // of a narrow line
	Lines         []Line
	Words         []Word
}

// Straight draws a straight line.
func (s *Sheet) Straight(p Pen, a, b form.Point) {
	s.Lines = append(s.Lines, Line{Pen: p, Run: []form.Vertex{{Point: a}, {Point: b}}})
}

// Poly draws straight lines through places.
func (s *Sheet) Poly(p Pen, at ...form.Point) {
	run := make([]form.Vertex, len(at))
	for i, a := range at {
		run[i].Point = a
	}
	s.Lines = append(s.Lines, Line{Pen: p, Run: run})
}

// Rect draws the outline of a box.
func (s *Sheet) Rect(p Pen, b outline.Box) {
	s.Lines = append(s.Lines, Line{Pen: p, Run: form.Rectangle(b.Min, b.Max), Closed: true})
}

// Circle draws a circle.
func (s *Sheet) Circle(p Pen, centre form.Point, radius Length) {
	s.Lines = append(s.Lines, Line{Pen: p, Run: form.Circle(centre, radius), Closed: true})
}

// descent is how far letters hang below the line, in heights of capitals.
const descent = 0.32

// Box is the room a line of words takes up.
func (w Word) Box() outline.Box {
	low, high := -descent*w.Height, 1.08*w.Height
	if w.Way == Upward {
		return outline.Box{
			Min: form.Point{X: w.At.X - high, Y: w.At.Y},
			Max: form.Point{X: w.At.X - low, Y: w.At.Y + w.Width},
		}
	}
	return outline.Box{
		Min: form.Point{X: w.At.X, Y: w.At.Y + low},
		Max: form.Point{X: w.At.X + w.Width, Y: w.At.Y + high},
	}
}

// Segments are the line's straight pieces and arcs.
func (l Line) Segments() []outline.Segment {
	return outline.Path{Run: l.Run, Closed: l.Closed}.Segments()
}

// Bounds is the box of a line.
func (l Line) Bounds() outline.Box {
	var b outline.Box
	for i, s := range l.Segments() {
		if i == 0 {
			b = s.Bounds()
		}
		b = b.With(s.Bounds())
	}
	return b
}

// A look is how a pen draws: its width in narrow lines, its dashes in
// millimetres for a narrow line of a quarter of a millimetre, and its colour.
type look struct {
	width  float64
	dashes []float64
	colour [3]int
}

func (p Pen) look() look {
	return [...]look{
		Wide:      {width: 2},
		Narrow:    {width: 1},
		Dashed:    {width: 1, dashes: []float64{2, 1}},
		Centre:    {width: 1, dashes: []float64{6, 0.9, 0.3, 0.9}},
		Plane:     {width: 2, dashes: []float64{6, 0.9, 0.6, 0.9}},
		Neighbour: {width: 1, dashes: []float64{6, 0.9, 0.3, 0.9, 0.3, 0.9}},
		Hatch:     {width: 0.7, colour: [3]int{90, 90, 90}},
		Iron:      {width: 0.8, colour: [3]int{150, 62, 28}},
		Bold:      {width: 2.8},
		Query:     {width: 1, dashes: []float64{3, 1.2}},
		Black:     {},
	}[p]
}

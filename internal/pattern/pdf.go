package pattern

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// Write writes the pattern of an item as a PDF at full size, whole or not at
// all: a key, then the sheets. The same vehicle gives the same bytes.
func Write(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, p Paper) error {
	all, err := sheets(v, item, p)
	if err != nil {
		return fmt.Errorf("pattern of %s: %w", item.Name, err)
	}
	var whole bytes.Buffer
	if err := writePDF(&whole, v, item, all); err != nil {
		return fmt.Errorf("pattern of %s: %w", item.Name, err)
	}
	_, err = whole.WriteTo(w)
	return err
}

func writePDF(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, all []sheet) error {
	l, err := newLettering()
	if err != nil {
		return err
	}
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: all[0].paper()})
	day := v.Date
	if day.IsZero() {
		day = time.Unix(0, 0)
	}
	doc.SetCreationDate(day.UTC())
	doc.SetModificationDate(day.UTC())
	doc.SetCatalogSort(true)
	doc.SetProducer("lostwood", true)
	doc.SetTitle(v.Stem(item), true)
	doc.SetSubject("full-size pattern, "+v.Name+", issue "+v.Issue, true)
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes("go", "", bytes.Clone(fontFile(outline.Plain)))
	doc.AddUTF8FontFromBytes("go", "B", bytes.Clone(fontFile(outline.Bold)))
	for _, s := range all {
		doc.AddPageFormat("P", s.paper())
		doc.Bookmark(s.letter, 0, 0)
		p := press{doc, l, s.size.Y, s.growth}
		for _, n := range s.panes {
			x, y := p.on(form.Point{X: n.window.Min.X, Y: n.window.Max.Y})
			doc.ClipRect(x, y, float64(n.window.Width()*s.growth.X), float64(n.window.Height()*s.growth.Y), false)
			p.drawing(n.seen)
			doc.ClipEnd()
		}
		p.drawing(s.frame)
	}
	return doc.Output(w)
}

// paper is the size of the page, drawn larger or smaller than it is to measure
// where the printer is out.
func (s sheet) paper() fpdf.SizeType {
	return fpdf.SizeType{Wd: float64(s.size.X * s.growth.X), Ht: float64(s.size.Y * s.growth.Y)}
}

// A press prints drawings on the page under it. A PDF here counts y downwards.
type press struct {
	doc    *fpdf.Fpdf
	l      *lettering
	high   Length
	growth form.Point
}

// on is a place of the sheet on the page.
func (p press) on(at form.Point) (x, y float64) {
	return float64(at.X * p.growth.X), float64((p.high - at.Y) * p.growth.Y)
}

func (p press) drawing(d outline.Drawing) {
	for _, t := range d.Paths {
		p.path(t)
	}
	for _, c := range d.Circles {
		p.path(outline.Path{Pen: c.Pen, Closed: true, Run: c.Halves()})
	}
	for _, t := range d.Texts {
		style := ""
		if t.Weight == outline.Bold {
			style = "B"
		}
		p.doc.SetFont("go", style, float64(p.l.em(t.Height, t.Weight)*p.growth.X)*72/25.4)
		x, y := p.on(t.At)
		p.doc.Text(x, y, t.Words)
	}
}

// Line widths after ISO 128, wide to narrow 2:1.
const wideLine, narrowLine = 0.35, 0.18

func (p press) pen(n outline.Pen) {
	s := strokes[n]
	width := narrowLine
	if s.wide {
		width = wideLine
	}
	p.doc.SetLineWidth(width)
	p.doc.SetDashPattern(s.dashes, 0)
	p.doc.SetDrawColor(s.grey, s.grey, s.grey)
	p.doc.SetFillColor(0, 0, 0)
}

// A stroke is how a pen looks.
type stroke struct {
	wide   bool
	dashes []float64 // millimetres: on, off, on ...
	grey   int       // 0 is black
}

var strokes = [...]stroke{
	outline.Edge:  {wide: true},
	outline.Work:  {wide: true},
	outline.Below: {dashes: []float64{2.4, 1.2}},
	outline.Axis:  {dashes: []float64{6, 1, 0.6, 1}},
	outline.Thin:  {},
	outline.Query: {dashes: []float64{4, 1.5}},
	outline.Faint: {grey: 140},
	outline.Join:  {dashes: []float64{0.4, 1.1}},
	outline.Solid: {},
}

func (p press) path(t outline.Path) {
	if len(t.Run) == 0 {
		return
	}
	p.pen(t.Pen)
	p.doc.MoveTo(p.on(t.Run[0].Point))
	for _, s := range t.Segments() {
		p.segment(s)
	}
	style := "D"
	if t.Closed {
		p.doc.ClosePath()
	}
	if t.Pen == outline.Solid {
		style = "F"
	}
	p.doc.DrawPath(style)
}

// segment carries the pen on along one edge: an arc as cubic curves of at most
// an eighth of a turn, which leave it by less than 1/200,000 of its radius.
func (p press) segment(s outline.Segment) {
	a, ok := s.Arc()
	if !ok {
		p.doc.LineTo(p.on(s.B))
		return
	}
	n := max(1, int(math.Ceil(math.Abs(a.Turn)/(math.Pi/4)-1e-9)))
	step := a.Turn / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4) * float64(a.Radius)
	for i := range n {
		from := a.From + step*float64(i)
		c0, c1, end := tangent(a, from, reach), tangent(a, from+step, -reach), turned(a, from+step)
		if i == n-1 {
			end = s.B
		}
		x0, y0 := p.on(c0)
		x1, y1 := p.on(c1)
		x, y := p.on(end)
		p.doc.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
	}
}

func turned(a outline.Arc, angle float64) form.Point {
	return outline.Arc{Centre: a.Centre, Radius: a.Radius, From: angle}.At(0)
}

// tangent is the point reach along the tangent from the arc's point at angle.
func tangent(a outline.Arc, angle, reach float64) form.Point {
	at := turned(a, angle)
	sin, cos := math.Sincos(angle)
	return form.Point{X: at.X - Length(sin*reach), Y: at.Y + Length(cos*reach)}
}

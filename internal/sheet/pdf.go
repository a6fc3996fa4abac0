package sheet

import (
	"bytes"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// A Mark is what a file says of itself.
type Mark struct {
	Title, Subject string
	Day            time.Time // not the clock's: the day of what is drawn
}

// WritePDF writes sheets as the pages of a PDF at their true size, whole or not
// at all. The same sheets give the same bytes. A letter without a shape is a *[LetterError].
func WritePDF(w io.Writer, l *Lettering, m Mark, sheets []Sheet) error {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: float64(sheets[0].Width), Ht: float64(sheets[0].Height)}})
	if m.Day.IsZero() {
		m.Day = time.Unix(0, 0)
	}
	doc.SetCreationDate(m.Day.UTC())
	doc.SetModificationDate(m.Day.UTC())
	doc.SetCatalogSort(true)
	doc.SetProducer("lostwood", true)
	doc.SetTitle(m.Title, true)
	doc.SetSubject(m.Subject, true)
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes("go", "", bytes.Clone(fontFile(Plain)))
	doc.AddUTF8FontFromBytes("go", "B", bytes.Clone(fontFile(Heavy)))
	for _, s := range sheets {
		if err := l.legible(s); err != nil {
			return err
		}
		doc.AddPageFormat("P", fpdf.SizeType{Wd: float64(s.Width), Ht: float64(s.Height)})
		doc.Bookmark(s.Name, 0, 0)
		doc.SetLineCapStyle("round")
		doc.SetLineJoinStyle("round")
		p := press{doc, l, s}
		for _, line := range s.Lines {
			p.line(line)
		}
		for _, word := range s.Words {
			p.word(word)
		}
	}
	var whole bytes.Buffer
	if err := doc.Output(&whole); err != nil {
		return err
	}
	_, err := whole.WriteTo(w)
	return err
}

// A press prints on the page under it. A PDF here counts y downwards.
type press struct {
	doc *fpdf.Fpdf
	l   *Lettering
	s   Sheet
}

func (p press) x(l Length) float64 { return float64(l) }
func (p press) y(l Length) float64 { return float64(p.s.Height - l) }

func (p press) word(w Word) {
	style := ""
	if w.Weight == Heavy {
		style = "B"
	}
	p.doc.SetFont("go", style, float64(p.l.em(w.Height, w.Weight))*72/25.4)
	if w.Way == Upward {
		p.doc.TransformBegin()
		p.doc.TransformRotate(90, p.x(w.At.X), p.y(w.At.Y))
		defer p.doc.TransformEnd()
	}
	p.doc.Text(p.x(w.At.X), p.y(w.At.Y), w.Words)
}

func (p press) line(l Line) {
	if len(l.Run) == 0 {
		return
	}
	k := l.Pen.look()
	p.doc.SetLineWidth(k.width * float64(p.s.Stroke))
	p.doc.SetDashPattern(k.dashes, 0)
	p.doc.SetDrawColor(k.colour[0], k.colour[1], k.colour[2])
	p.doc.SetFillColor(0, 0, 0)
	p.doc.MoveTo(p.x(l.Run[0].X), p.y(l.Run[0].Y))
	for _, s := range l.Segments() {
		p.segment(s)
	}
	style := "D"
	if l.Closed {
		p.doc.ClosePath()
	}
	if l.Pen == Black {
		style = "F"
	}
	p.doc.DrawPath(style)
}

// segment carries the pen on along one edge: an arc as cubic curves of at most
// an eighth of a turn, which leave it by less than 1/200,000 of its radius.
func (p press) segment(s outline.Segment) {
	a, ok := s.Arc()
	if !ok {
		p.doc.LineTo(p.x(s.B.X), p.y(s.B.Y))
		return
	}
	n := max(1, int(math.Ceil(math.Abs(a.Turn)/(math.Pi/4)-1e-9)))
	step := a.Turn / float64(n)
	reach := Length(4.0/3*math.Tan(step/4)) * a.Radius
	at := func(angle float64, along Length) form.Point {
		sin, cos := math.Sincos(angle)
		return form.Point{
			X: a.Centre.X + a.Radius*Length(cos) - along*Length(sin),
			Y: a.Centre.Y + a.Radius*Length(sin) + along*Length(cos),
		}
	}
	for i := range n {
		from := a.From + step*float64(i)
		c0, c1, end := at(from, reach), at(from+step, -reach), at(from+step, 0)
		if i == n-1 {
			end = s.B
		}
		p.doc.CurveBezierCubicTo(p.x(c0.X), p.y(c0.Y), p.x(c1.X), p.y(c1.Y), p.x(end.X), p.y(end.Y))
	}
}

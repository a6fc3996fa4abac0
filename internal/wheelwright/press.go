package wheelwright

import (
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"lostwood/internal/outline"
	"lostwood/internal/pattern"
	"lostwood/parts/form"
)

// A press prints pages. A PDF here counts y downwards; drawings count it upwards.
type press struct {
	doc     *fpdf.Fpdf
	s       Subject
	paper   pattern.Paper
	growth  form.Point // how much larger to draw, for a printer that is out
	y       float64    // how far down the page of words
	counted int
}

const (
	margin = 12.
	foot   = 24. // the strip with the bars
	lap    = 12. // that sheets lie over each other
)

func newPress(s Subject, day time.Time, p pattern.Paper) *press {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: float64(p.Width), Ht: float64(p.Height)}})
	if day.IsZero() {
		day = time.Unix(0, 0)
	}
	doc.SetCreationDate(day.UTC())
	doc.SetModificationDate(day.UTC())
	doc.SetCatalogSort(true)
	doc.SetProducer("lostwood", true)
	doc.SetTitle(s.Name+", "+s.Vehicle+", issue "+s.Issue, true)
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes("go", "", append([]byte{}, goregular.TTF...))
	doc.AddUTF8FontFromBytes("go", "B", append([]byte{}, gobold.TTF...))
	out := &press{doc: doc, s: s, paper: p, growth: form.Point{X: 1, Y: 1}}
	if b := p.Printer; b.Across > 0 && b.Along > 0 {
		out.growth = form.Point{X: 100 / b.Across, Y: 100 / b.Along}
	}
	return out
}

func (p *press) finish(out io.Writer) error { return p.doc.Output(out) }

func (p *press) wide() float64 { return float64(p.paper.Width) }

func (p *press) high() float64 { return float64(p.paper.Height) }

// page begins a page of words.
func (p *press) page() {
	p.doc.AddPage()
	p.counted++
	p.y = margin
	p.doc.SetTextColor(90, 90, 90)
	p.words(margin, p.high()-8, fmt.Sprintf("%s · %s · issue %s · page %d", p.s.Vehicle, p.s.Name, p.s.Issue, p.counted), "", 7.5)
	p.doc.SetTextColor(0, 0, 0)
}

func (p *press) words(x, y float64, s, style string, points float64) {
	p.doc.SetFont("go", style, points)
	p.doc.Text(x, y, s)
}

// room begins another page where less than that is left.
func (p *press) room(high float64) {
	if p.y+high > p.high()-16 {
		p.page()
	}
}

// paragraph sets words between two places across, breaking lines, and gives how far down it came.
func (p *press) paragraph(words, style string, points, from, to, y float64) float64 {
	p.doc.SetFont("go", style, points)
	step := points * .3528 * 1.28
	for _, l := range p.doc.SplitText(words, to-from) {
		y += step
		p.doc.Text(from, y, l)
	}
	return y
}

// lines counts how many lines words break into.
func (p *press) lines(words, style string, points, wide float64) int {
	p.doc.SetFont("go", style, points)
	return len(p.doc.SplitText(words, wide))
}

func (p *press) rule(y float64) {
	p.doc.SetDrawColor(150, 150, 150)
	p.doc.SetLineWidth(.2)
	p.doc.SetDashPattern(nil, 0)
	p.doc.Line(margin, y, p.wide()-margin, y)
}

// A view is a window on a drawing, and where its lower left corner stands on the page.
type view struct {
	low form.Point
	x   float64
	y   float64 // up from the page's foot
}

// on is a place of the drawing on the page.
func (p *press) on(v view, at form.Point) (x, y float64) {
	return v.x + float64((at.X-v.low.X)*p.growth.X), p.high() - v.y - float64((at.Y-v.low.Y)*p.growth.Y)
}

func (p *press) drawing(v view, d outline.Drawing) {
	for _, t := range d.Paths {
		p.path(v, t)
	}
	for _, c := range d.Circles {
		p.path(v, outline.Path{Pen: c.Pen, Closed: true, Run: c.Halves()})
	}
	for _, t := range d.Texts {
		x, y := p.on(v, t.At)
		style := ""
		if t.Weight == outline.Bold {
			style = "B"
		}
		p.words(x, y, t.Words, style, float64(t.Height)/.3528/.72)
	}
}

// pen sets a line's width and dashes: widths after ISO 128, wide to narrow 2:1.
func (p *press) pen(n outline.Pen) {
	width, dashes, grey := .18, []float64(nil), 0
	switch n {
	case outline.Edge, outline.Work:
		width = .35
	case outline.Below:
		dashes = []float64{2.4, 1.2}
	case outline.Axis:
		dashes = []float64{6, 1, .6, 1}
	case outline.Join:
		dashes = []float64{.4, 1.1}
	case outline.Faint:
		grey = 140
	}
	p.doc.SetLineWidth(width)
	p.doc.SetDashPattern(dashes, 0)
	p.doc.SetDrawColor(grey, grey, grey)
}

func (p *press) path(v view, t outline.Path) {
	if len(t.Run) == 0 {
		return
	}
	p.pen(t.Pen)
	p.doc.MoveTo(p.on(v, t.Run[0].Point))
	for _, s := range t.Segments() {
		p.segment(v, s)
	}
	if t.Closed {
		p.doc.ClosePath()
	}
	p.doc.DrawPath("D")
}

// segment carries the pen along one edge: an arc as cubic curves of at most an
// eighth of a turn, which leave it by less than 1/200,000 of its radius.
func (p *press) segment(v view, s outline.Segment) {
	a, ok := s.Arc()
	if !ok {
		p.doc.LineTo(p.on(v, s.B))
		return
	}
	n := max(1, int(math.Ceil(math.Abs(a.Turn)/(math.Pi/4)-1e-9)))
	step := a.Turn / float64(n)
	reach := Length(4. / 3 * math.Tan(step/4) * float64(a.Radius))
	at := func(angle float64, along Length) form.Point {
		sin, cos := math.Sincos(angle)
		return form.Point{
			X: a.Centre.X + a.Radius*Length(cos) - along*Length(sin),
			Y: a.Centre.Y + a.Radius*Length(sin) + along*Length(cos),
		}
	}
	for i := range n {
		from := a.From + step*float64(i)
		end := at(from+step, 0)
		if i == n-1 {
			end = s.B
		}
		x0, y0 := p.on(v, at(from, reach))
		x1, y1 := p.on(v, at(from+step, -reach))
		x, y := p.on(v, end)
		p.doc.CurveBezierCubicTo(x0, y0, x1, y1, x, y)
	}
}

package order

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"lostwood/internal/vehicle"
)

// A4 upright, and the room that is printed on.
const (
	wide, high    = 210.0, 297.0
	left, right   = 16.0, wide - 16.0
	upper, lowest = 15.0, high - 19.0
	room          = right - left
)

// A style is a weight of the Go fonts.
type style string

const (
	plain  style = ""
	bold   style = "B"
	italic style = "I"
)

// Sizes of letters, in points, and the height of a line for each point.
const (
	small, body, large, grand = 7.8, 8.8, 11.0, 21.0
	lead                      = 1.28 / 72 * 25.4
)

// A tint is a colour of the sheet.
type tint struct{ r, g, b int }

// Ink, a moss green for rules and heads, a pale straw for bands.
var (
	ink   = tint{24, 26, 22}
	moss  = tint{62, 84, 52}
	faded = tint{104, 106, 98}
	straw = tint{241, 237, 222}
	hair  = tint{196, 192, 178}
)

// A LetterError is a letter that the fonts have no shape for.
type LetterError struct {
	Letter rune
	In     string
}

func (e *LetterError) Error() string {
	return fmt.Sprintf("%q in “%s” is a letter that cannot be printed; write it with another in the survey", e.Letter, e.In)
}

// A press prints down a page, and goes on on the next.
type press struct {
	doc     *fpdf.Fpdf
	font    *sfnt.Font
	buf     sfnt.Buffer
	v       *vehicle.Vehicle
	what    string // the sheet's name, for its foot
	pages   int    // of the whole; 0 where not known yet
	y       float64
	renewed func() // prints what stands at the head of a page again; may be nil
	fault   error
}

// printed runs what prints a sheet, twice: only then is it known how many
// pages there are.
func printed(w io.Writer, v *vehicle.Vehicle, what string, sheet func(*press)) error {
	pages := 0
	for range 2 {
		p, err := newPress(v, what, pages)
		if err != nil {
			return err
		}
		p.open()
		sheet(p)
		p.foot()
		pages = p.doc.PageNo()
		if p.fault != nil {
			return p.fault
		}
		if p.pages == 0 {
			continue
		}
		var whole bytes.Buffer
		if err := p.doc.Output(&whole); err != nil {
			return err
		}
		_, err = whole.WriteTo(w)
		return err
	}
	return nil
}

func newPress(v *vehicle.Vehicle, what string, pages int) (*press, error) {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		return nil, err
	}
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: wide, Ht: high}})
	day := v.Date
	if day.IsZero() {
		day = time.Unix(0, 0)
	}
	doc.SetCreationDate(day.UTC())
	doc.SetModificationDate(day.UTC())
	doc.SetCatalogSort(true)
	doc.SetProducer("lostwood", true)
	doc.SetTitle(what+", "+v.Name+", issue "+v.Issue, true)
	doc.SetMargins(0, 0, 0)
	doc.SetCellMargin(0)
	doc.SetAutoPageBreak(false, 0)
	for _, f := range []struct {
		style style
		data  []byte
	}{{plain, goregular.TTF}, {bold, gobold.TTF}, {italic, goitalic.TTF}} {
		doc.AddUTF8FontFromBytes("go", string(f.style), bytes.Clone(f.data))
	}
	return &press{doc: doc, font: font, v: v, what: what, pages: pages}, nil
}

// open starts a page.
func (p *press) open() {
	p.doc.AddPage()
	p.y = upper
}

// foot closes a page: whose it is, and which of how many.
func (p *press) foot() {
	y := high - 12.0
	p.rule(y-4.2, hair, 0.2)
	p.set(plain, small, faded)
	day := ""
	if !p.v.Date.IsZero() {
		day = ", " + p.v.Date.Format("2 January 2006")
	}
	page := fmt.Sprintf("page %d of %d", p.doc.PageNo(), max(p.pages, p.doc.PageNo()))
	at := right - p.doc.GetStringWidth(page)
	p.text(at, y, page)
	line := fmt.Sprintf("%s · %s, issue %s%s", p.what, p.v.Name, p.v.Issue, day)
	lines := p.wrap(line, at-left-4, plain, small)
	for i, words := range lines {
		p.text(left, y+float64(i)*small*lead, words)
		if i == 1 {
			break // a name so long stands whole at the head
		}
	}
}

// turn goes on on the next page.
func (p *press) turn() {
	p.foot()
	p.open()
	if p.renewed != nil {
		p.renewed()
	}
}

// need turns the page unless there is that much room left.
func (p *press) need(height float64) {
	if p.y+height > lowest {
		p.turn()
	}
}

func (p *press) set(s style, points float64, t tint) {
	p.doc.SetFont("go", string(s), points)
	p.doc.SetTextColor(t.r, t.g, t.b)
}

// text sets words on a baseline and heeds letters that the fonts lack.
func (p *press) text(x, y float64, words string) {
	for _, r := range words {
		if i, err := p.font.GlyphIndex(&p.buf, r); (err != nil || i == 0) && p.fault == nil {
			p.fault = &LetterError{r, words}
		}
	}
	p.doc.Text(x, y, words)
}

func (p *press) rule(y float64, t tint, thick float64) {
	p.doc.SetDrawColor(t.r, t.g, t.b)
	p.doc.SetLineWidth(thick)
	p.doc.Line(left, y, right, y)
}

func (p *press) fill(x, y, w, h float64, t tint) {
	p.doc.SetFillColor(t.r, t.g, t.b)
	p.doc.Rect(x, y, w, h, "F")
}

// box is an empty square to tick.
func (p *press) box(x, y, side float64) {
	p.doc.SetDrawColor(moss.r, moss.g, moss.b)
	p.doc.SetLineWidth(0.25)
	p.doc.Rect(x, y, side, side, "D")
}

// fast keeps figures and their unit or fraction on one line.
const fast = "\u00a0"

// firm binds a figure to its fraction and its unit.
func firm(words string) string {
	words = strings.NewReplacer("\n", " ", "\t", " ", "\r", " ").Replace(words)
	fields := strings.Split(words, " ")
	var b strings.Builder
	for i, f := range fields {
		if i > 0 {
			gap := " "
			if endsInFigure(fields[i-1]) && (isUnit(f) || isFraction(f)) {
				gap = fast
			}
			b.WriteString(gap)
		}
		b.WriteString(f)
	}
	return b.String()
}

func isUnit(s string) bool {
	switch strings.TrimRight(s, ".,;:)?") {
	case "in", "ft", "mm", "m3", "lb", "kg", "%":
		return true
	}
	return false
}

func endsInFigure(s string) bool { return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

func isFraction(s string) bool {
	return len(s) > 2 && s[0] >= '0' && s[0] <= '9' && strings.Contains(s, "/")
}

// wrap breaks words into lines no wider than that, at spaces, and within a word
// where one alone is wider. There is always a line.
func (p *press) wrap(words string, width float64, s style, points float64) []string {
	p.doc.SetFont("go", string(s), points)
	fits := func(t string) bool { return p.doc.GetStringWidth(t) <= width }
	var lines []string
	line := ""
	for _, word := range strings.Split(firm(words), " ") {
		if longer := line + " " + word; line != "" && fits(longer) {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for !fits(word) {
			head := p.head(word, fits)
			lines = append(lines, head)
			word = word[len(head):]
		}
		line = word
	}
	return append(lines, line)
}

// head is as much of a word as fits, and one letter at least.
func (p *press) head(word string, fits func(string) bool) string {
	cut := 0
	for i, r := range word {
		next := i + len(string(r))
		if cut > 0 && !fits(word[:next]) {
			break
		}
		cut = next
	}
	return word[:cut]
}

// paragraph prints words across the page, or in from its left edge by so much.
func (p *press) paragraph(words string, in float64, s style, points float64, t tint) {
	for _, line := range p.wrap(words, room-in, s, points) {
		p.need(points * lead)
		p.y += points * lead
		p.set(s, points, t)
		p.text(left+in, p.y-points*lead*0.22, line)
	}
}

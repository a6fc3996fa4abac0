package record

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// A4 upright, in millimetres, and the room that is printed on.
const (
	wide, high    = 210.0, 297.0
	left, right   = 24.0, wide - 20.0
	upper, lowest = 20.0, high - 22.0
	lead          = 1.38 / 72 * 25.4
)

// A face is one of the fonts of the paper.
type face struct{ family, style string }

var (
	plain  = face{"go", ""}
	bold   = face{"go", "B"}
	italic = face{"go", "I"}
	mono   = face{"mono", ""}
)

// A chapter is a heading and the page it begins on.
type chapter struct {
	title string
	page  int
}

// A paper is printed down a page, and goes on on the next.
type paper struct {
	doc      *fpdf.Fpdf
	fonts    map[face]*sfnt.Font
	buf      sfnt.Buffer
	foot     string
	y        float64
	pages    int       // of the whole; 0 where not known yet
	contents []chapter // as the pass before found them
	chapters []chapter
	lacking  map[rune]bool // letters the fonts have no shape for
	lacked   int           // how many, as the pass before found
}

func newPaper(title, foot string, day time.Time) (*paper, error) {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: wide, Ht: high}})
	if day.IsZero() {
		day = time.Unix(0, 0)
	}
	doc.SetCreationDate(day.UTC())
	doc.SetModificationDate(day.UTC())
	doc.SetCatalogSort(true)
	doc.SetProducer("lostwood", true)
	doc.SetTitle(title, true)
	doc.SetLang("en")
	doc.SetMargins(0, 0, 0)
	doc.SetCellMargin(0)
	doc.SetAutoPageBreak(false, 0)
	p := &paper{doc: doc, foot: foot, fonts: map[face]*sfnt.Font{}, lacking: map[rune]bool{}}
	for _, f := range []struct {
		face face
		data []byte
	}{{plain, goregular.TTF}, {bold, gobold.TTF}, {italic, goitalic.TTF}, {mono, gomono.TTF}} {
		font, err := sfnt.Parse(f.data)
		if err != nil {
			return nil, err
		}
		p.fonts[f.face] = font
		doc.AddUTF8FontFromBytes(f.face.family, f.face.style, bytes.Clone(f.data))
	}
	return p, nil
}

// printed runs what fills the paper three times: the pages of chapters and the
// letters that are lacking are known only then.
func printed(w io.Writer, title, foot string, day time.Time, fill func(*paper)) error {
	var last *paper
	for range 3 {
		p, err := newPaper(title, foot, day)
		if err != nil {
			return err
		}
		if last != nil {
			p.contents, p.pages, p.lacked = last.chapters, last.doc.PageNo(), len(last.lacking)
		}
		p.turn()
		fill(p)
		last = p
	}
	var whole bytes.Buffer
	if err := last.doc.Output(&whole); err != nil {
		return err
	}
	_, err := whole.WriteTo(w)
	return err
}

// turn begins a page, and prints its foot.
func (p *paper) turn() {
	p.doc.AddPage()
	p.rule(high-16, 200, 0.2)
	p.line(left, high-11.5, clip(p.printable(p.foot, plain), 90), plain, 7.5, 110)
	no := fmt.Sprintf("page %d of %d", p.doc.PageNo(), max(p.pages, p.doc.PageNo()))
	p.doc.SetFont("go", "", 7.5)
	p.line(right-p.doc.GetStringWidth(no), high-11.5, no, plain, 7.5, 110)
	p.y = upper
}

// clip shortens what stands whole on the first page.
func clip(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "..."
	}
	return s
}

func (p *paper) need(height float64) {
	if p.y+height > lowest {
		p.turn()
	}
}

func (p *paper) rule(y float64, grey int, thick float64) {
	p.doc.SetDrawColor(grey, grey, grey)
	p.doc.SetLineWidth(thick)
	p.doc.Line(left, y, right, y)
}

func (p *paper) line(x, y float64, words string, f face, points float64, grey int) {
	p.doc.SetFont(f.family, f.style, points)
	p.doc.SetTextColor(grey, grey, grey)
	p.doc.Text(x, y, words)
}

// printable writes a letter that the font has no shape for by its number.
func (p *paper) printable(words string, f face) string {
	var b strings.Builder
	for _, r := range strings.ReplaceAll(words, "\t", "    ") {
		if r == '\n' || r == '\r' {
			r = ' '
		}
		if i, err := p.fonts[f].GlyphIndex(&p.buf, r); err != nil || i == 0 || r < ' ' {
			p.lacking[r] = true
			fmt.Fprintf(&b, "[U+%04X]", r)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// wrap breaks words at spaces, and within a word wider than the room.
func (p *paper) wrap(words string, room float64, f face, points float64) []string {
	p.doc.SetFont(f.family, f.style, points)
	fits := func(s string) bool { return p.doc.GetStringWidth(s) <= room }
	var lines []string
	line := ""
	for i, word := range strings.Split(p.printable(words, f), " ") {
		if i > 0 && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if i > 0 {
			lines = append(lines, line)
		}
		for !fits(word) {
			cut := 0
			for j, r := range word {
				if cut > 0 && !fits(word[:j+len(string(r))]) {
					break
				}
				cut = j + len(string(r))
			}
			lines, word = append(lines, word[:cut]), word[cut:]
		}
		line = word
	}
	return append(lines, line)
}

func (p *paper) say(words string, in float64, f face, points float64, grey int) {
	for _, l := range p.wrap(words, right-left-in, f, points) {
		p.need(points * lead)
		p.y += points * lead
		p.line(left+in, p.y-points*lead*0.25, l, f, points, grey)
	}
}

func (p *paper) text(words string) { p.say(words, 0, plain, 9, 30); p.y += 1.2 }

func (p *paper) item(words string) { p.say(words, 5, plain, 8.6, 40); p.y += 0.6 }

// named prints a heading within a chapter, with room for a line below.
func (p *paper) named(words string) {
	p.need(14)
	p.y += 2.5
	p.say(words, 0, bold, 10, 20)
	p.y += 0.6
}

// chapter begins one, on a page of its own.
func (p *paper) chapter(title string) {
	p.turn()
	p.chapters = append(p.chapters, chapter{title, p.doc.PageNo()})
	p.doc.Bookmark(title, 0, 0)
	p.say(title, 0, bold, 15, 20)
	p.y += 1.5
	p.rule(p.y, 90, 0.4)
	p.y += 3
}

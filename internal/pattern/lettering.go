package pattern

import (
	"fmt"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// Heights of capitals, in millimetres, after ISO 3098.
const (
	small  Length = 2.5 // as high as normal, in plain letters: nothing smaller is read at the bench
	normal Length = 2.5
	large  Length = 3.5
	title  Length = 7
	hands  Length = 20 // NEAR and OFF
)

// lineStep is from one baseline to the next, in heights of capitals.
const lineStep = 1.7

// descent is how far letters hang below the baseline, in heights of capitals.
const descent = 0.32

// A lettering measures and sets words.
type lettering struct {
	fonts [2]*sfnt.Font // by outline.Weight
	caps  [2]float64    // height of capitals, in ems
	buf   *sfnt.Buffer
}

// fontFile is the font of a weight, as data.
func fontFile(w outline.Weight) []byte {
	if w == outline.Bold {
		return gobold.TTF
	}
	return goregular.TTF
}

func newLettering() (*lettering, error) {
	l := &lettering{buf: &sfnt.Buffer{}}
	for _, w := range []outline.Weight{outline.Plain, outline.Bold} {
		f, err := sfnt.Parse(fontFile(w))
		if err != nil {
			return nil, fmt.Errorf("lettering: %w", err)
		}
		m, err := f.Metrics(l.buf, fixed.I(1000), font.HintingNone)
		if err != nil {
			return nil, fmt.Errorf("lettering: %w", err)
		}
		l.fonts[w], l.caps[w] = f, float64(m.CapHeight)/64/1000
	}
	return l, nil
}

// em is the font size whose capitals are that high.
func (l *lettering) em(height Length, w outline.Weight) Length {
	return height / Length(l.caps[w])
}

// width is how long the words run.
func (l *lettering) width(words string, height Length, w outline.Weight) Length {
	sum := Length(0)
	for _, r := range words {
		sum += l.advance(r, w)
	}
	return l.em(height, w) * sum / perEm
}

// advance is how far a letter carries the next, in thousandths of an em. The
// font's sign for a letter it lacks stands for that letter.
func (l *lettering) advance(r rune, w outline.Weight) Length {
	i, err := l.fonts[w].GlyphIndex(l.buf, r)
	if err != nil {
		return 0
	}
	a, err := l.fonts[w].GlyphAdvance(l.buf, i, fixed.I(perEm), font.HintingNone)
	if err != nil {
		return 0
	}
	return Length(a) / 64
}

// lacks returns the first letter of words that the font has no shape for.
func (l *lettering) lacks(words string) (r rune, ok bool) {
	for _, r := range words {
		if i, err := l.fonts[outline.Plain].GlyphIndex(l.buf, r); err != nil || i == 0 {
			return r, true
		}
	}
	return 0, false
}

// text sets words with the left end of their baseline at a point.
func (l *lettering) text(at form.Point, words string, height Length, w outline.Weight) outline.Text {
	return outline.Text{
		Layer: outline.Layer{Role: outline.Words}, At: at, Height: height,
		Width: l.width(words, height, w), Weight: w, Words: words,
	}
}

// fitted sets words no longer than room, smaller where they must be.
func (l *lettering) fitted(at form.Point, words string, height Length, w outline.Weight, room Length) outline.Text {
	if long := l.width(words, height, w); long > room {
		height *= room / long
	}
	return l.text(at, words, height, w)
}

// firm keeps words that belong together, such as a figure and its unit, on one line.
func firm(words string) string { return strings.ReplaceAll(words, " ", "\u00a0") }

// wrap breaks words into lines no longer than room, at spaces that are not firm; a
// single word longer than that stands alone.
func (l *lettering) wrap(words string, height Length, w outline.Weight, room Length) []string {
	var lines []string
	line := ""
	for _, word := range strings.Split(words, " ") {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && l.width(longer, height, w) > room {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// textBox is the room a line of words takes up on the drawing.
func textBox(t outline.Text) outline.Box {
	hangs := descent * t.Height
	if t.Height == hands {
		hangs = 0 // NEAR and OFF are all capitals
	}
	return outline.Box{
		Min: form.Point{X: t.At.X, Y: t.At.Y - hangs},
		Max: form.Point{X: t.At.X + t.Width, Y: t.At.Y + 1.08*t.Height},
	}
}

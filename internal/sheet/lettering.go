package sheet

import (
	"fmt"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"lostwood/parts/form"
)

// A Lettering measures words, and knows the shapes of letters.
type Lettering struct {
	fonts [2]*sfnt.Font // by Weight
	caps  [2]float64    // height of capitals, in ems
	buf   *sfnt.Buffer
}

func fontFile(w Weight) []byte {
	if w == Heavy {
		return gobold.TTF
	}
	return goregular.TTF
}

// NewLettering reads the fonts.
func NewLettering() (*Lettering, error) {
	l := &Lettering{buf: &sfnt.Buffer{}}
	for _, w := range []Weight{Plain, Heavy} {
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

// perEm is how many units the shapes of letters are drawn to the em.
const perEm = 1000

// em is the font size whose capitals are that high.
func (l *Lettering) em(height Length, w Weight) Length { return height / Length(l.caps[w]) }

// advance is how far a letter carries the next, in thousandths of an em.
func (l *Lettering) advance(r rune, w Weight) Length {
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

// Width is how long words run.
func (l *Lettering) Width(words string, height Length, w Weight) Length {
	sum := Length(0)
	for _, r := range words {
		sum += l.advance(r, w)
	}
	return l.em(height, w) * sum / perEm
}

// Word sets words.
func (l *Lettering) Word(at form.Point, words string, height Length, w Weight, way Way) Word {
	return Word{At: at, Height: height, Width: l.Width(words, height, w), Weight: w, Way: way, Words: words}
}

// Wrap breaks words into lines no longer than room, at spaces; a single word
// longer than that is broken where it must be. There is always a line.
func (l *Lettering) Wrap(words string, height Length, w Weight, room Length) []string {
	var lines []string
	line := ""
	for _, word := range strings.Split(words, " ") {
		if longer := line + " " + word; line != "" && l.Width(longer, height, w) <= room {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for l.Width(word, height, w) > room {
			head := l.head(word, height, w, room)
			lines = append(lines, head)
			word = word[len(head):]
		}
		line = word
	}
	return append(lines, line)
}

// head is as much of a word as there is room for, and one letter at least.
func (l *Lettering) head(word string, height Length, w Weight, room Length) string {
	cut := 0
	for i, r := range word {
		next := i + len(string(r))
		if cut > 0 && l.Width(word[:next], height, w) > room {
			break
		}
		cut = next
	}
	return word[:cut]
}

// A LetterError is a letter that the fonts have no shape for.
type LetterError struct {
	Letter rune
	In     string
}

func (e *LetterError) Error() string {
	return fmt.Sprintf("%q in “%s” is a letter that cannot be drawn; write it with another in the survey", e.Letter, e.In)
}

// legible refuses letters that the fonts lack.
func (l *Lettering) legible(s Sheet) error {
	for _, w := range s.Words {
		for _, r := range w.Words {
			if i, err := l.fonts[w.Weight].GlyphIndex(l.buf, r); err != nil || i == 0 {
				return &LetterError{r, w.Words}
			}
		}
	}
	return nil
}

// shape is a letter's outline in SVG's words, y downwards.
func (l *Lettering) shape(r rune, w Weight) (string, error) {
	n, err := l.fonts[w].GlyphIndex(l.buf, r)
	if err != nil {
		return "", fmt.Errorf("lettering: %w", err)
	}
	segments, err := l.fonts[w].LoadGlyph(l.buf, n, fixed.I(perEm), nil)
	if err != nil {
		return "", fmt.Errorf("lettering: %w", err)
	}
	var b strings.Builder
	for _, s := range segments {
		verb := [...]string{sfnt.SegmentOpMoveTo: "M", sfnt.SegmentOpLineTo: "L", sfnt.SegmentOpQuadTo: "Q", sfnt.SegmentOpCubeTo: "C"}[s.Op]
		count := [...]int{sfnt.SegmentOpMoveTo: 1, sfnt.SegmentOpLineTo: 1, sfnt.SegmentOpQuadTo: 2, sfnt.SegmentOpCubeTo: 3}[s.Op]
		b.WriteString(verb)
		for i, p := range s.Args[:count] {
			if i > 0 {
				b.WriteByte(' ')
			}
			fmt.Fprintf(&b, "%s %s", num(Length(p.X)/64, 2), num(Length(p.Y)/64, 2))
		}
	}
	return b.String(), nil
}

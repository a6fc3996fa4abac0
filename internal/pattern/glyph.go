package pattern

import (
	"fmt"
	"slices"
	"strings"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"lostwood/internal/outline"
)

// perEm is how many units the shapes of letters are drawn to the em.
const perEm = 1000

// A glyph is a letter of a weight.
type glyph struct {
	weight outline.Weight
	letter rune
}

func glyphName(r rune, w outline.Weight) string { return fmt.Sprintf("g%d-%x", w, r) }

// glyphs writes the shape of every letter in a drawing, once.
func (i inker) glyphs(d outline.Drawing) error {
	used := map[glyph]bool{}
	var all []glyph
	for _, t := range d.Texts {
		for _, r := range t.Words {
			if g := (glyph{t.Weight, r}); r != ' ' && !used[g] {
				used[g] = true
				all = append(all, g)
			}
		}
	}
	slices.SortFunc(all, func(a, b glyph) int {
		return (int(a.weight)-int(b.weight))<<24 + int(a.letter) - int(b.letter)
	})
	i.out.WriteString("<defs>\n")
	for _, g := range all {
		shape, err := i.l.shape(g.letter, g.weight)
		if err != nil {
			return err
		}
		fmt.Fprintf(i.out, "<path id=\"%s\" d=\"%s\"/>\n", glyphName(g.letter, g.weight), shape)
	}
	i.out.WriteString("</defs>\n")
	return nil
}

// shape is a letter's outline in SVG's words, y downwards.
func (l *lettering) shape(r rune, w outline.Weight) (string, error) {
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
			fmt.Fprintf(&b, "%s %s", num(Length(p.X)/64), num(Length(p.Y)/64))
		}
	}
	return b.String(), nil
}

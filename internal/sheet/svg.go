package sheet

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// WriteSVG writes one sheet as SVG 1.1 at its true size: width, height and
// viewBox are in millimetres. Letters are drawn in their shapes, so that words
// are as long on any machine; the words themselves are their titles.
func WriteSVG(w io.Writer, l *Lettering, m Mark, s Sheet) error {
	if err := l.legible(s); err != nil {
		return err
	}
	i := inker{&bytes.Buffer{}, l, s}
	fmt.Fprintf(i.out, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">`+"\n",
		i.num(s.Width), i.num(s.Height), i.num(s.Width), i.num(s.Height))
	fmt.Fprintf(i.out, "<title>%s</title>\n<desc>%s. Millimetres.</desc>\n", escaped(m.Title), escaped(m.Subject))
	fmt.Fprintf(i.out, `<rect width="%s" height="%s" fill="#fff" stroke="none"/>`+"\n", i.num(s.Width), i.num(s.Height))
	if err := i.letters(); err != nil {
		return err
	}
	for p := Wide; p <= Black; p++ {
		i.group(p)
	}
	i.out.WriteString("<g fill=\"#000\" stroke=\"none\">\n")
	for _, word := range s.Words {
		i.word(word)
	}
	i.out.WriteString("</g>\n</svg>\n")
	_, err := i.out.WriteTo(w)
	return err
}

// An inker writes a sheet as SVG, whose y counts downwards.
type inker struct {
	out *bytes.Buffer
	l   *Lettering
	s   Sheet
}

func num(l Length, places int) string {
	scale := math.Pow(10, float64(places))
	s := strconv.FormatFloat(math.Round(float64(l)*scale)/scale, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func (i inker) num(l Length) string { return num(l, 4) }
func (i inker) y(l Length) string   { return num(i.s.Height-l, 4) }

func escaped(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder takes every write
	return b.String()
}

// group writes all lines of one pen.
func (i inker) group(p Pen) {
	k := p.look()
	var b strings.Builder
	for _, l := range i.s.Lines {
		if l.Pen == p {
			fmt.Fprintf(&b, "<path d=\"%s\"/>\n", i.trace(l))
		}
	}
	if b.Len() == 0 {
		return
	}
	attributes := fmt.Sprintf(` stroke-width="%.4g"`, k.width*float64(i.s.Stroke))
	if p == Black {
		attributes = ` fill="#000" stroke="none"`
	}
	if k.colour != [3]int{} {
		attributes += fmt.Sprintf(` stroke="#%02x%02x%02x"`, k.colour[0], k.colour[1], k.colour[2])
	}
	if len(k.dashes) > 0 {
		attributes += ` stroke-dasharray="` + strings.Trim(fmt.Sprint(k.dashes), "[]") + `"`
	}
	fmt.Fprintf(i.out, "<g%s>\n%s</g>\n", attributes, b.String())
}

// trace is a line in SVG's words. An arc that turns anticlockwise here is one
// whose sweep flag is 0, since y counts downwards there.
func (i inker) trace(l Line) string {
	var b strings.Builder
	for n, s := range l.Segments() {
		if n == 0 {
			fmt.Fprintf(&b, "M%s %s", i.num(s.A.X), i.y(s.A.Y))
		}
		a, ok := s.Arc()
		if !ok {
			fmt.Fprintf(&b, "L%s %s", i.num(s.B.X), i.y(s.B.Y))
			continue
		}
		large, sweep := 0, 0
		if math.Abs(a.Turn) > math.Pi {
			large = 1
		}
		if a.Turn < 0 {
			sweep = 1
		}
		fmt.Fprintf(&b, "A%s %s 0 %d %d %s %s", i.num(a.Radius), i.num(a.Radius), large, sweep, i.num(s.B.X), i.y(s.B.Y))
	}
	if l.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// A letter is one in its weight.
type letter struct {
	weight Weight
	rune   rune
}

func (l letter) name() string { return fmt.Sprintf("g%d-%x", l.weight, l.rune) }

// letters writes the shape of every letter that is used, once.
func (i inker) letters() error {
	used := map[letter]bool{}
	var all []letter
	for _, w := range i.s.Words {
		for _, r := range w.Words {
			if g := (letter{w.Weight, r}); r != ' ' && !used[g] {
				used[g] = true
				all = append(all, g)
			}
		}
	}
	slices.SortFunc(all, func(a, b letter) int {
		return (int(a.weight)-int(b.weight))<<24 + int(a.rune) - int(b.rune)
	})
	i.out.WriteString("<defs>\n")
	for _, g := range all {
		shape, err := i.l.shape(g.rune, g.weight)
		if err != nil {
			return err
		}
		fmt.Fprintf(i.out, "<path id=\"%s\" d=\"%s\"/>\n", g.name(), shape)
	}
	i.out.WriteString("</defs>\n")
	return nil
}

func (i inker) word(w Word) {
	turn := ""
	if w.Way == Upward {
		turn = " rotate(-90)"
	}
	fmt.Fprintf(i.out, "<g transform=\"translate(%s %s)%s scale(%.6g)\"><title>%s</title>",
		i.num(w.At.X), i.y(w.At.Y), turn, float64(i.l.em(w.Height, w.Weight))/perEm, escaped(w.Words))
	x := Length(0)
	for _, r := range w.Words {
		if r != ' ' {
			fmt.Fprintf(i.out, "<use href=\"#%s\" x=\"%s\"/>", letter{w.Weight, r}.name(), num(x, 2))
		}
		x += i.l.advance(r, w.Weight)
	}
	i.out.WriteString("</g>\n")
}

package pattern

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
)

// WriteSVG writes the whole pattern of an item as one drawing for the screen, at
// full size: its width, height and viewBox are in millimetres (SVG 1.1). The bars
// and the title are on it. Each layer is a group, named as in [WriteDXF].
func WriteSVG(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item) error {
	s, err := whole(v, item)
	if err != nil {
		return fmt.Errorf("drawing of %s: %w", item.Name, err)
	}
	var out bytes.Buffer
	letters, err := newLettering()
	if err != nil {
		return err
	}
	i := inker{&out, letters, s.size.Y}
	i.open(s, v.Stem(item), v.Name+", issue "+v.Issue)
	all := s.panes[0].seen
	all.Add(s.frame)
	if err := i.glyphs(all); err != nil {
		return fmt.Errorf("drawing of %s: %w", item.Name, err)
	}
	for _, name := range layerNames(all) {
		i.group(name, onLayer(all, name))
	}
	out.WriteString("</svg>\n")
	_, err = out.WriteTo(w)
	return err
}

// whole is the pattern on one sheet as large as it needs to be.
func whole(v *vehicle.Vehicle, item *vehicle.Item) (sheet, error) {
	if err := shaped(item); err != nil {
		return sheet{}, err
	}
	letters, err := newLettering()
	if err != nil {
		return sheet{}, err
	}
	l := &layout{teller: teller{v, item}, lettering: letters, paper: Paper{Name: "whole", Feed: unbounded}}
	if err := l.settle(); err != nil {
		return sheet{}, err
	}
	s := l.sheet(0, 0, "") // a screen has no printer to put right
	return s, letters.legible(s)
}

// layerNames are the names of the layers, in the order they first appear.
func layerNames(d outline.Drawing) []string {
	var names []string
	seen := map[string]bool{}
	note := func(l outline.Layer) {
		if n := l.Name(); !seen[n] {
			seen[n] = true
			names = append(names, n)
		}
	}
	for _, p := range d.Paths {
		note(p.Layer)
	}
	for _, c := range d.Circles {
		note(c.Layer)
	}
	for _, t := range d.Texts {
		note(t.Layer)
	}
	return names
}

// onLayer is what of a drawing is on the layer of that name.
func onLayer(d outline.Drawing, name string) outline.Drawing {
	var on outline.Drawing
	for _, p := range d.Paths {
		if p.Layer.Name() == name {
			on.Paths = append(on.Paths, p)
		}
	}
	for _, c := range d.Circles {
		if c.Layer.Name() == name {
			on.Circles = append(on.Circles, c)
		}
	}
	for _, t := range d.Texts {
		if t.Layer.Name() == name {
			on.Texts = append(on.Texts, t)
		}
	}
	return on
}

// An inker writes a drawing as SVG, whose y counts downwards.
type inker struct {
	out  *bytes.Buffer
	l    *lettering
	high Length
}

// num is a length in millimetres to a ten-thousandth.
func num(l Length) string {
	s := strconv.FormatFloat(math.Round(float64(l)*1e4)/1e4, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func (i inker) open(s sheet, name, from string) {
	fmt.Fprintf(i.out, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" fill="none" stroke="#000" stroke-width="0.18">`+"\n",
		num(s.size.X), num(s.size.Y), num(s.size.X), num(s.size.Y))
	fmt.Fprintf(i.out, "<title>%s</title>\n<desc>%s. Millimetres.</desc>\n", escaped(name), escaped(from))
	fmt.Fprintf(i.out, `<rect width="%s" height="%s" fill="#fff" stroke="none"/>`+"\n", num(s.size.X), num(s.size.Y))
}

func escaped(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder takes every write
	return b.String()
}

func (i inker) group(name string, d outline.Drawing) {
	fmt.Fprintf(i.out, "<g id=\"%s\">\n", name)
	for _, p := range d.Paths {
		fmt.Fprintf(i.out, "<path d=\"%s\"%s/>\n", i.trace(p), look(p.Pen))
	}
	for _, c := range d.Circles {
		fmt.Fprintf(i.out, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s/>\n", num(c.Centre.X), num(i.high-c.Centre.Y), num(c.Diameter/2), look(c.Pen))
	}
	for _, t := range d.Texts {
		i.text(t)
	}
	i.out.WriteString("</g>\n")
}

// text writes a line of words in the shapes of its letters, so that it is as wide
// as it was set to be on any machine; the words themselves are its title.
func (i inker) text(t outline.Text) {
	fmt.Fprintf(i.out, "<g transform=\"translate(%s %s) scale(%.6g)\" fill=\"#000\" stroke=\"none\"><title>%s</title>",
		num(t.At.X), num(i.high-t.At.Y), float64(i.l.em(t.Height, t.Weight))/perEm, escaped(t.Words))
	x := Length(0)
	for _, r := range t.Words {
		if r != ' ' {
			fmt.Fprintf(i.out, "<use href=\"#%s\" x=\"%s\"/>", glyphName(r, t.Weight), num(x))
		}
		x += i.l.advance(r, t.Weight)
	}
	i.out.WriteString("</g>\n")
}

// trace is a path in SVG's words. An arc that turns anticlockwise here is one
// whose sweep flag is 0, since y counts downwards there.
func (i inker) trace(p outline.Path) string {
	var b strings.Builder
	for n, s := range p.Segments() {
		if n == 0 {
			fmt.Fprintf(&b, "M%s %s", num(s.A.X), num(i.high-s.A.Y))
		}
		a, ok := s.Arc()
		if !ok {
			fmt.Fprintf(&b, "L%s %s", num(s.B.X), num(i.high-s.B.Y))
			continue
		}
		large, sweep := 0, 0
		if math.Abs(a.Turn) > math.Pi {
			large = 1
		}
		if a.Turn < 0 {
			sweep = 1
		}
		fmt.Fprintf(&b, "A%s %s 0 %d %d %s %s", num(a.Radius), num(a.Radius), large, sweep, num(s.B.X), num(i.high-s.B.Y))
	}
	if p.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// look is how a pen draws, as attributes; the plain narrow line is set once for all.
func look(n outline.Pen) string {
	if n == outline.Solid {
		return ` fill="#000" stroke="none"`
	}
	s := strokes[n]
	var b strings.Builder
	if s.wide {
		fmt.Fprintf(&b, ` stroke-width="%g"`, wideLine)
	}
	if s.grey > 0 {
		fmt.Fprintf(&b, ` stroke="#%02x%02x%02x"`, s.grey, s.grey, s.grey)
	}
	if len(s.dashes) > 0 {
		b.WriteString(` stroke-dasharray="`)
		for i, d := range s.dashes {
			if i > 0 {
				b.WriteByte(' ')
			}
			fmt.Fprintf(&b, "%g", d)
		}
		b.WriteByte('"')
	}
	return b.String()
}

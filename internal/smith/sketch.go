package smith

import (
	"fmt"
	"io"
	"math"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// A card is one page: a sketch of a piece, with its sizes, and what is to be known of it.
// The sketch is not to scale: its figures hold.
type card struct {
	*sheet.Sheet
	list    *List
	letters *sheet.Lettering
	y       Length // where the next words go
}

const (
	left, right Length = 18, 192 // the page's margins, on A4 upright
	middle      Length = (left + right) / 2
	half        Length = 8 // half the width that flat work is drawn with
	figure      Length = 3
	text        Length = 2.5
)

// WritePDF writes a card for each piece, whole or not at all.
func (l *List) WritePDF(w io.Writer) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	var pages []sheet.Sheet
	for _, p := range l.Pieces {
		pages = append(pages, *l.card(letters, p))
	}
	if len(pages) == 0 {
		c := l.blank(letters, "Iron to make or buy")
		c.paragraph("No iron is missing, as far as the survey says.")
		pages = append(pages, *c.Sheet)
	}
	v := l.Vehicle
	return sheet.WritePDF(w, letters, sheet.Mark{Title: v.Name + ", issue " + v.Issue + ": iron", Subject: "survey " + v.Hash, Day: v.Date}, pages)
}

func (l *List) blank(letters *sheet.Lettering, heading string) *card {
	c := &card{&sheet.Sheet{Name: heading, Width: 210, Height: 297, Stroke: 0.35}, l, letters, 278}
	c.say(form.Point{X: left, Y: c.y}, heading, 5, sheet.Heavy)
	c.y -= 7
	v := l.Vehicle
	c.say(form.Point{X: left, Y: c.y}, fmt.Sprintf("%s · issue %s · %s · survey %.8s", v.Name, v.Issue, v.Date.Format("2 January 2006"), v.Hash), text, sheet.Plain)
	c.y -= 6
	return c
}

func (l *List) card(letters *sheet.Lettering, p *Piece) *sheet.Sheet {
	c := l.blank(letters, fmt.Sprintf("%d  %s, %d off", p.Number, p.Name, p.NumberOff))
	c.say(form.Point{X: left, Y: c.y}, "Out of "+p.Stock+cutWords(l, p), 3.5, sheet.Plain)
	c.y -= 10
	switch p.Work {
	case Bolt:
		c.bolt(p)
	case Clip:
		c.clip(p)
	case Round, Tyre:
		c.round(p)
	case Plate:
		c.flat(p)
	}
	for _, line := range strings.Split(strings.TrimSpace(l.words(p)), "\n")[1:] {
		c.paragraph(strings.TrimSpace(line))
	}
	c.y -= 3
	c.paragraph("The sketch is not to scale; its figures hold. Lengths are of cold iron.")
	for _, s := range l.Cautions {
		c.paragraph(s)
	}
	return c.Sheet
}

func cutWords(l *List, p *Piece) string {
	switch {
	case p.Cut == 0:
		return ""
	case p.Work == Bolt:
		return ", " + l.show(p.Cut) + " under the head"
	}
	return ", cut " + l.show(p.Cut)
}

func (c *card) say(at form.Point, words string, high Length, w sheet.Weight) {
	c.Words = append(c.Words, c.letters.Word(at, words, high, w, sheet.Across))
}

// paragraph sets words in the column, broken where they must be.
func (c *card) paragraph(words string) {
	for _, line := range c.letters.Wrap(words, text, sheet.Plain, right-left) {
		c.say(form.Point{X: left, Y: c.y}, line, text, sheet.Plain)
		c.y -= 4.2
	}
	c.y -= 0.8
}

// dimension draws a level dimension below an object, with its figure above the line.
func (c *card) dimension(x0, x1, y, from Length, words string) {
	for _, x := range []Length{x0, x1} {
		c.Straight(sheet.Narrow, form.Point{X: x, Y: from}, form.Point{X: x, Y: y - 1.5})
		c.Straight(sheet.Narrow, form.Point{X: x - 1.2, Y: y - 1.2}, form.Point{X: x + 1.2, Y: y + 1.2})
	}
	c.Straight(sheet.Narrow, form.Point{X: x0, Y: y}, form.Point{X: x1, Y: y})
	c.middled(form.Point{X: (x0 + x1) / 2, Y: y + 1}, words)
}

func (c *card) middled(at form.Point, words string) {
	at.X -= c.letters.Width(words, figure, sheet.Plain) / 2
	c.say(at, words, figure, sheet.Plain)
}

// bolt sketches a bolt lying down: head, shank, thread.
func (c *card) bolt(p *Piece) {
	y, x0, x1 := c.y-16, left+20, right-20
	thread := (x1 - x0) * 0.3
	if p.Cut > 0 && len(p.Sizes) > 2 {
		thread = (x1 - x0) * max(0.1, min(0.9, p.Sizes[2].Value/p.Cut))
	}
	c.Rect(sheet.Wide, outline.Box{Min: form.Point{X: x0, Y: y - 4}, Max: form.Point{X: x1, Y: y + 4}})
	c.Rect(sheet.Wide, outline.Box{Min: form.Point{X: x0 - 7, Y: y - 8}, Max: form.Point{X: x0, Y: y + 8}})
	if strings.Contains(p.Name, "square neck") {
		c.Straight(sheet.Narrow, form.Point{X: x0 + 6, Y: y - 4}, form.Point{X: x0 + 6, Y: y + 4})
		c.Poly(sheet.Narrow, form.Point{X: x0, Y: y - 4}, form.Point{X: x0 + 6, Y: y + 4})
		c.Poly(sheet.Narrow, form.Point{X: x0, Y: y + 4}, form.Point{X: x0 + 6, Y: y - 4})
	}
	if p.Name != "Rivet" {
		c.Straight(sheet.Narrow, form.Point{X: x1 - thread, Y: y + 3}, form.Point{X: x1, Y: y + 3})
		c.Straight(sheet.Narrow, form.Point{X: x1 - thread, Y: y - 3}, form.Point{X: x1, Y: y - 3})
		c.Straight(sheet.Wide, form.Point{X: x1 - thread, Y: y - 4}, form.Point{X: x1 - thread, Y: y + 4})
	}
	for _, d := range p.Sizes {
		switch d.Name {
		case "diameter":
			c.say(form.Point{X: x1 + 3, Y: y - 1}, c.list.show(d.Value), figure, sheet.Plain)
		case "under the head":
			c.dimension(x0, x1, y-24, y-9, c.list.show(d.Value)+" under the head")
		case "thread, at the least":
			c.dimension(x1-thread, x1, y-15, y-5, c.list.show(d.Value))
		}
	}
	if p.Name == "Rivet" && p.Cut > 0 {
		c.dimension(x0, x1, y-16, y-9, c.list.show(p.Cut))
	}
	c.y = y - 34
}

// clip sketches a clip from the side.
func (c *card) clip(p *Piece) {
	y, x0, x1 := c.y-4, middle-22, middle+22
	const deep, bar = Length(38), Length(4)
	c.Poly(sheet.Wide, form.Point{X: x0 - bar, Y: y - deep}, form.Point{X: x0 - bar, Y: y}, form.Point{X: x1 + bar, Y: y}, form.Point{X: x1 + bar, Y: y - deep},
		form.Point{X: x1, Y: y - deep}, form.Point{X: x1, Y: y - bar}, form.Point{X: x0, Y: y - bar}, form.Point{X: x0, Y: y - deep}, form.Point{X: x0 - bar, Y: y - deep})
	for _, d := range p.Sizes {
		switch d.Name {
		case "between its legs":
			c.dimension(x0, x1, y-deep-8, y-deep-1, c.list.show(d.Value))
		case "legs, inside":
			c.Straight(sheet.Narrow, form.Point{X: x1 + bar + 6, Y: y - bar}, form.Point{X: x1 + bar + 6, Y: y - deep})
			for _, h := range []Length{y - bar, y - deep} {
				c.Straight(sheet.Narrow, form.Point{X: x1 + bar + 1, Y: h}, form.Point{X: x1 + bar + 8, Y: h})
			}
			c.say(form.Point{X: x1 + bar + 9, Y: y - deep/2}, c.list.show(d.Value)+", inside", figure, sheet.Plain)
		}
	}
	c.y = y - deep - 18
}

// round sketches a ring with its section.
func (c *card) round(p *Piece) {
	const r = Length(22)
	centre := form.Point{X: middle - 30, Y: c.y - r - 2}
	c.Circle(sheet.Wide, centre, r)
	c.Circle(sheet.Wide, centre, r-3)
	c.Straight(sheet.Narrow, form.Point{X: centre.X - r + 3, Y: centre.Y}, form.Point{X: centre.X + r - 3, Y: centre.Y})
	section := form.Point{X: middle + 25, Y: centre.Y}
	c.Rect(sheet.Wide, outline.Box{Min: form.Point{X: section.X - 3, Y: section.Y - 12}, Max: form.Point{X: section.X + 3, Y: section.Y + 12}})
	for _, d := range p.Sizes {
		words := d.Name + " " + d.Words(c.list.Vehicle.Unit)
		switch d.Name {
		case "radius":
			inside := d
			inside.Value *= 2
			inside.Doubt *= 2
			c.middled(form.Point{X: centre.X, Y: centre.Y + 1}, c.list.show(inside.Value)+" inside")
		case "wide":
			c.say(form.Point{X: section.X + 6, Y: section.Y - 1}, words, figure, sheet.Plain)
		case "thick":
			c.middled(form.Point{X: section.X, Y: section.Y + 15}, words)
		}
	}
	c.y -= 2*r + 12
}

// flat sketches flat work from above, with its holes from the first end, and its
// cranks from the side.
func (c *card) flat(p *Piece) {
	long := sized(p, "long")
	if !(long > 0) {
		return
	}
	x0, x1 := left+12, right-12
	x := func(at Length) Length { return x0 + (x1-x0)*at/long }
	y := c.y - half
	c.Rect(sheet.Wide, outline.Box{Min: form.Point{X: x0, Y: y - half}, Max: form.Point{X: x1, Y: y + half}})
	c.Straight(sheet.Centre, form.Point{X: x0 - 3, Y: y}, form.Point{X: x1 + 3, Y: y})
	var places []Length
	for _, h := range p.Holes {
		at := form.Point{X: x(h.At.Value), Y: y}
		if h.Square {
			c.Rect(sheet.Wide, outline.Box{Min: form.Point{X: at.X - 2, Y: y - 2}, Max: form.Point{X: at.X + 2, Y: y + 2}})
		} else {
			c.Circle(sheet.Wide, at, 2)
		}
		places = append(places, at.X)
	}
	c.running(p, places, y)
	depth := y - half - 8 - c.tall(p)
	c.dimension(x0, x1, depth-6, y-half-1, c.list.show(long)+" end to end")
	c.y = depth - 14
	c.cranks(p, x)
}

func sized(p *Piece, name string) Length {
	for _, d := range p.Sizes {
		if d.Name == name && !math.IsInf(float64(d.Doubt), 1) {
			return d.Value
		}
	}
	return 0
}

// figures are what stands below each hole: its place and its size.
func (c *card) figures(h Hole) string {
	size := "Ø" + c.list.show(h.Diameter)
	switch {
	case h.Diameter == 0:
		size = "size open"
	case h.Square:
		size = "square " + c.list.show(h.Diameter)
	}
	if math.IsInf(float64(h.At.Doubt), 1) {
		return "place open, " + size
	}
	return c.list.show(h.At.Value) + ", " + size
}

// tall is how far down the longest figure below a hole runs.
func (c *card) tall(p *Piece) Length {
	most := Length(0)
	for _, h := range p.Holes {
		most = max(most, c.letters.Width(c.figures(h), figure, sheet.Plain))
	}
	return most
}

// running sets the holes' figures upright below them, spread where they crowd.
func (c *card) running(p *Piece, places []Length, y Length) {
	const apart, drop = Length(4.5), Length(5)
	set := append([]Length(nil), places...)
	for i := 1; i < len(set); i++ {
		set[i] = max(set[i], set[i-1]+apart)
	}
	for i := len(set) - 2; i >= 0; i-- { // none past the far end
		set[len(set)-1] = min(set[len(set)-1], right-4)
		set[i] = min(set[i], set[i+1]-apart)
	}
	for i, h := range p.Holes {
		words := c.figures(h)
		long := c.letters.Width(words, figure, sheet.Plain)
		c.Poly(sheet.Narrow, form.Point{X: places[i], Y: y - 2}, form.Point{X: places[i], Y: y - half}, form.Point{X: set[i], Y: y - half - drop})
		c.Words = append(c.Words, c.letters.Word(form.Point{X: set[i] + figure/2, Y: y - half - drop - 1 - long}, words, figure, sheet.Plain, sheet.Upward))
	}
}

// cranks sketches the iron from its side, where it steps.
func (c *card) cranks(p *Piece, x func(Length) Length) {
	if len(p.Steps) == 0 {
		return
	}
	const step = Length(7)
	y := c.y - step*Length(len(p.Steps)) - 4
	at, run := y, []form.Point{{X: x(0), Y: y}}
	for _, s := range p.Steps {
		run = append(run, form.Point{X: x(s.At), Y: at})
		if s.By > 0 {
			at += step
		} else {
			at -= step
		}
		run = append(run, form.Point{X: x(s.At) + step, Y: at})
		c.say(form.Point{X: x(s.At) + step + 2, Y: at - 5}, c.words(s), figure, sheet.Plain)
	}
	run = append(run, form.Point{X: right - 12, Y: at})
	c.Poly(sheet.Wide, run...)
	c.y = y - step*Length(len(p.Steps)) - 6
}

func (c *card) words(s vehicle.Step) string {
	return "at " + c.list.show(s.At) + " by " + c.list.show(Length(math.Abs(float64(s.By))))
}

package pattern

import (
	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// chart draws the map of the sheets: the faces small, with the sheets over them.
func (c *column) chart() {
	all := c.grid.all()
	const highest = 62
	scale := min((c.right-c.left)/all.Width(), highest/all.Height())
	c.room(all.Height()*scale + 4)
	c.y -= 2 + all.Height()*scale
	m := reduction{scale: scale, from: all.Min, to: form.Point{X: c.left, Y: c.y}}
	small := m.drawing(c.faces)
	for row := range c.grid.rows {
		for col := range c.grid.cols {
			b := m.box(c.grid.core(row, col))
			small.Rect(guide(), outline.Thin, b)
			if !c.needed[row][col] {
				small.Line(guide(), outline.Thin, b.Min, b.Max)
			}
		}
	}
	c.d.Add(small)
	c.chartLetters(small, m)
	c.y -= 2
}

// chartLetters names the sheets on the map, clear of the lines where there is room.
func (c *column) chartLetters(small outline.Drawing, m reduction) {
	busy := crowd{clear: 0.3}
	busy.add(small)
	for row := range c.grid.rows {
		for col := range c.grid.cols {
			if !c.needed[row][col] {
				continue
			}
			c.d.Add(c.chartLetter(&busy, m.box(c.grid.core(row, col)), letter(row, col)))
		}
	}
}

// chartLetter sets one sheet's letter in its cell, as large as has room.
func (c *column) chartLetter(busy *crowd, cell outline.Box, words string) outline.Drawing {
	var l label
	for _, high := range []Length{large, normal, small, 1.8, 1.4, 1} {
		t := c.text(form.Point{}, words, high, outline.Bold)
		l = label{lines: []outline.Text{t}, size: form.Point{X: t.Width, Y: t.Height}, within: cell}
		l.wish = form.Point{X: cell.Min.X + 1.5, Y: cell.Max.Y - t.Height - 1.5}
		if d, ok := busy.place([]label{l}); ok {
			return d
		}
	}
	return l.at(l.wish, nil)
}

// A reduction draws things small.
type reduction struct {
	scale    Length
	from, to form.Point // to is where from comes to stand
}

func (m reduction) at(p form.Point) form.Point {
	return form.Point{X: m.to.X + (p.X-m.from.X)*m.scale, Y: m.to.Y + (p.Y-m.from.Y)*m.scale}
}

func (m reduction) box(b outline.Box) outline.Box {
	return outline.Box{Min: m.at(b.Min), Max: m.at(b.Max)}
}

// drawing is the faces with the work on them, small and grey, without their crosses.
func (m reduction) drawing(u outline.Unfolding) outline.Drawing {
	var d outline.Drawing
	for _, f := range u.Laid {
		for _, p := range f.Drawing.Paths {
			if p.Layer.Role == outline.Centres {
				continue
			}
			q := outline.Path{Layer: guide(), Pen: outline.Faint, Closed: p.Closed}
			for _, v := range p.Run {
				q.Run = append(q.Run, form.Vertex{Point: m.at(v.Point), Bulge: v.Bulge})
			}
			d.Paths = append(d.Paths, q)
		}
		for _, k := range f.Drawing.Circles {
			d.Circles = append(d.Circles, outline.Circle{Layer: guide(), Pen: outline.Faint, Centre: m.at(k.Centre), Diameter: k.Diameter * m.scale})
		}
	}
	return d
}

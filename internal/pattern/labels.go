package pattern

import (
	"fmt"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A line is one line of a block of words.
type line struct {
	words  string
	height Length
	weight outline.Weight
}

// labelWide is where the lines of a label break where there is room.
const labelWide Length = 84

// labelRooms are the lengths of line a label may be set in, best first.
func labelRooms() []Length { return []Length{labelWide, 46, 34} }

// block sets lines one under the other, flush left, with pad all round.
func (l *layout) block(lines []line, pad Length) label {
	var b label
	y := -pad
	for i, n := range lines {
		if i == 0 {
			y -= (1.08 + descent - lineStep) * n.height // nothing stands over the capitals of the first
		}
		y -= lineStep * n.height
		t := l.text(form.Point{X: pad, Y: y + descent*n.height}, n.words, n.height, n.weight)
		b.lines = append(b.lines, t)
		b.size.X = max(b.size.X, t.Width+2*pad)
	}
	b.size.Y = pad - y
	for i := range b.lines {
		b.lines[i].At.Y += b.size.Y
	}
	return b
}

// broken breaks lines that are longer than room.
func (l *layout) broken(lines []line, room Length) []line {
	var out []line
	for _, n := range lines {
		for _, s := range l.wrap(n.words, n.height, n.weight, room) {
			out = append(out, line{s, n.height, n.weight})
		}
	}
	return out
}

// checks are the words at both ends of the whole length.
func (l *layout) checks() []label {
	known := l.lengthKnown()
	long := known.Value
	y := l.wood.Max.Y + 6.5
	start := l.block([]line{{"measure from here", small, outline.Plain}}, 0.6)
	start.wish = form.Point{X: 4, Y: y}
	words := "check: " + l.both(long) + " to here"
	if doubtful(known.Known) {
		words = "? " + words + ", " + strings.ToUpper(known.Known.String())
	}
	tell := []line{{words, normal, outline.Bold}}
	if left(known) {
		tell = []line{{words + giveOrTake(known, l.v.Unit), normal, outline.Bold}, {"leave long until offered up", small, outline.Plain}}
	}
	end := l.block(tell, 0.9)
	end.query = doubtful(known.Known)
	end.wish = form.Point{X: long - end.size.X - 4, Y: y}
	band := l.everywhere()
	band.Min.Y = l.wood.Max.Y + 0.5
	start.within, end.within = band, band
	return []label{end, start}
}

// heading names a face, with its extent across the grain and the mark of a true
// face: in full, on one line for a narrow face, or by its name alone.
func (l *layout) heading(f outline.Laid) []label {
	name := strings.ToUpper(l.item.FaceWords(f.Face))
	var mark outline.Drawing
	switch f.Face {
	case l.item.Stick.FaceSide:
		name += " · face side"
		mark = sideMark()
	case l.item.Stick.FaceEdge:
		name += " · face edge"
		mark = edgeMark()
	}
	full, row := []line{{name, large, outline.Bold}}, name
	query := false
	for _, s := range l.sizesOn(f.Face) {
		words := s.Name + " " + l.standing(s.Size)
		query = query || doubtful(s.Known)
		if doubtful(s.Known) {
			words = "? " + words
		}
		full = append(full, line{words, small, outline.Plain})
		row += " · " + words
	}
	blocks := []label{l.marked(full, mark, 1)}
	if len(full) <= 3 {
		const smaller = 0.55
		blocks = append(blocks, l.marked([]line{{row, normal, outline.Bold}}, scaled(mark, smaller), smaller))
	}
	for i := range blocks {
		b := &blocks[i]
		b.query = query
		b.within, b.inside, b.home = f.Extent, wood(f), f.Extent
		b.wish = form.Point{X: f.Extent.Min.X + 5, Y: f.Extent.Max.Y - b.size.Y - 3}
	}
	return blocks
}

// marked sets lines with the mark of a true face before them.
func (l *layout) marked(lines []line, mark outline.Drawing, scale Length) label {
	b := l.block(lines, 1)
	if len(mark.Paths) == 0 {
		return b
	}
	for i := range b.lines {
		b.lines[i].At.X += markWide * scale
	}
	b.size.X += markWide * scale
	b.size.Y = max(b.size.Y, markHigh*scale+2)
	b.extra = mark.Shifted(form.Point{X: 1, Y: b.size.Y - markHigh*scale - 1})
	return b
}

// scaled is a drawing of lines made larger or smaller.
func scaled(d outline.Drawing, by Length) outline.Drawing {
	m := reduction{scale: by}
	var out outline.Drawing
	for _, p := range d.Paths {
		q := p
		q.Run = nil
		for _, v := range p.Run {
			q.Run = append(q.Run, form.Vertex{Point: m.at(v.Point), Bulge: v.Bulge})
		}
		out.Paths = append(out.Paths, q)
	}
	return out
}

// sizesOn are the sizes that a face's heading tells: its extent across the grain,
// and on the face side those that run along none of the three ways.
func (l *layout) sizesOn(f parts.Face) []vehicle.Dimension {
	var out []vehicle.Dimension
	if across := crossAxis(f); across != parts.NoAxis {
		out = l.sizesOf(across)
	}
	if f == l.item.Stick.FaceSide {
		out = append(out, l.sizesOf(parts.NoAxis)...)
	}
	return out
}

// crossAxis is the way across the grain on a face.
func crossAxis(f parts.Face) parts.Axis {
	switch f {
	case parts.Upper, parts.Under:
		return parts.AcrossY
	case parts.FirstSide, parts.SecondSide:
		return parts.UpZ
	}
	return parts.NoAxis
}

// wood is the outline of a face, in its place.
func wood(f outline.Laid) []outline.Segment { return f.Drawing.Paths[0].Segments() }

// bigHand is NEAR or OFF in tall letters on the face side; nothing for a part
// that is alike both sides. A narrow face has no room for it: every sheet's foot has it too.
func (l *layout) bigHand() (label, bool) {
	words := l.hand()
	for _, f := range l.faces.Laid {
		if f.Face != l.item.Stick.FaceSide || words == "" || f.Extent.Height() < 1.6*hands {
			continue
		}
		t := l.text(form.Point{}, words, hands, outline.Bold)
		b := label{lines: []outline.Text{t}, size: form.Point{X: t.Width, Y: hands}, within: f.Extent, inside: wood(f), need: spare}
		b.wish = form.Point{X: f.Extent.Min.X + 90, Y: (f.Extent.Min.Y + f.Extent.Max.Y - hands) / 2}
		return b, true
	}
	return label{}, false
}

// ends say which end is which on a long face.
func (l *layout) ends(f outline.Laid) []label {
	first := l.block([]line{{l.item.FaceWords(parts.FirstEnd), normal, outline.Bold}}, 0.6)
	first.wish = form.Point{X: f.Extent.Min.X + 5, Y: f.Extent.Min.Y + 3}
	second := l.block([]line{{l.item.FaceWords(parts.SecondEnd), normal, outline.Bold}}, 0.6)
	second.wish = form.Point{X: f.Extent.Max.X - second.size.X - 5, Y: f.Extent.Min.Y + 3}
	for _, b := range []*label{&first, &second} {
		b.within, b.inside, b.home = f.Extent, wood(f), f.Extent
		if f.Face != l.faces.Laid[0].Face {
			b.need = spare // the ends of all long faces stand over one another
		}
	}
	return []label{first, second}
}

// grain is an arrow along the grain on the face side, with more words or fewer.
func (l *layout) grain() []label {
	switch {
	case l.item.Stick.Body.Blank().Making == parts.Steamed:
		return []label{l.grainArrow("grain follows the bend"), l.grainArrow("grain")}
	case l.runOut() > 0:
		chord := "grain along the chord"
		return []label{l.grainArrow(fmt.Sprintf("%s, runs out at %.0f°", chord, l.runOut().Degrees())), l.grainArrow(chord)}
	}
	return []label{l.grainArrow("grain")}
}

func (l *layout) grainArrow(words string) label {
	b := l.block([]line{{words, normal, outline.Plain}}, 1)
	const arm = 16
	for i := range b.lines {
		b.lines[i].At.X += arm + 2
	}
	wide, y := b.size.X+2*(arm+2), b.size.Y/2
	for _, a := range []struct{ tip, tail Length }{{0, arm}, {wide, wide - arm}} {
		tip, tail := form.Point{X: a.tip, Y: y}, form.Point{X: a.tail, Y: y}
		b.extra.Line(guide(), outline.Thin, tail, tip)
		b.extra.Paths = append(b.extra.Paths, arrowhead(tip, a.tail > a.tip))
	}
	b.size.X = wide
	for _, f := range l.faces.Laid {
		if f.Face == l.item.Stick.FaceSide {
			b.within, b.inside = f.Extent, wood(f)
			b.wish = form.Point{X: f.Extent.Min.X + 70, Y: (f.Extent.Min.Y + f.Extent.Max.Y) / 2}
		}
	}
	return b
}

func arrowhead(tip form.Point, toLeft bool) outline.Path {
	back := Length(-4)
	if toLeft {
		back = 4
	}
	return outline.Path{Layer: outline.Layer{Role: outline.Guide}, Pen: outline.Solid, Closed: true, Run: []form.Vertex{
		{Point: tip},
		{Point: form.Point{X: tip.X + back, Y: tip.Y + 1.2}},
		{Point: form.Point{X: tip.X + back, Y: tip.Y - 1.2}},
	}}
}

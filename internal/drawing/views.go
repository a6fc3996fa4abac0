package drawing

import (
	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/sight"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// fine is how far a drawn curve may lie from the true one, in millimetres of the part.
const fine Length = 0.05

// A view is a part seen square on to one of its faces, in the face's frame.
type view struct {
	face  parts.Face
	lines []sight.Line
	frame form.Frame
	wide  Length
	high  Length
}

func viewOf(body *sight.Body, b parts.Body, f parts.Face) view {
	frame := f.Frame(b)
	s := sight.View{Right: frame.U, Up: frame.V}
	origin := s.On(frame.Origin)
	v := view{face: f, frame: frame}
	v.wide, v.high = outline.Extent(b, f)
	for _, l := range sight.Look(s, []*sight.Body{body}).Lines() {
		for i := range l.Path {
			l.Path[i].X -= origin.X
			l.Path[i].Y -= origin.Y
		}
		v.lines = append(v.lines, l)
	}
	return v
}

// placed is a path at a scale, from a place on paper.
func placed(p form.Path, s Scale, from form.Point) []form.Vertex {
	out := make([]form.Vertex, len(p))
	for i, v := range p {
		out[i] = form.Vertex{Point: at(from.X+s.of(v.X), from.Y+s.of(v.Y)), Bulge: v.Bulge}
	}
	return out
}

// inSight says which lines of a view are drawn.
type inSight int

const (
	withHidden inSight = iota
	seenOnly
)

// paint draws a view with its lower left corner at a place.
func (b board) paint(v view, s Scale, from form.Point, which inSight) {
	for _, pass := range []sight.Sight{sight.Behind, sight.Seen} {
		for _, l := range v.lines {
			if l.Sight != pass || (pass == sight.Behind && which == seenOnly) {
				continue
			}
			pen := sheet.Wide
			if pass == sight.Behind {
				pen = sheet.Dashed
			}
			b.Lines = append(b.Lines, sheet.Line{Pen: pen, Run: placed(l.Path, s, from)})
		}
	}
}

// axes draws the middle lines of round work in a view: a cross where it is seen
// as a circle, a line where it is seen from the side.
func (b board) axes(i *vehicle.Item, v view, s Scale, from form.Point) {
	for _, w := range worksOf(i) {
		op := w.ops[0]
		d := diameter(op)
		if d == 0 {
			continue
		}
		if w.radial {
			b.radialAxis(i, w, v, s, from)
			continue
		}
		p := v.frame.On(w.at)
		c := at(from.X+s.of(p.X), from.Y+s.of(p.Y))
		arm := s.of(d/2) + 1.5
		across := op.Face.Frame(i.Stick.Body).W()
		switch {
		case op.Face == v.face || op.Face == v.face.Opposite():
			b.Straight(axisPen(2*arm), at(c.X-arm, c.Y), at(c.X+arm, c.Y))
			b.Straight(axisPen(2*arm), at(c.X, c.Y-arm), at(c.X, c.Y+arm))
		case v.frame.V.X*across.X+v.frame.V.Y*across.Y+v.frame.V.Z*across.Z != 0:
			low, high := from.Y-1.2, from.Y+s.of(v.high)+1.2
			b.Straight(axisPen(high-low), at(c.X, low), at(c.X, high))
		}
	}
}

// radialAxis draws the middle line of a hole towards a wheel's centre, a little
// past the wood.
func (b board) radialAxis(i *vehicle.Item, w work, v view, s Scale, from form.Point) {
	if v.face != parts.FirstSide {
		return
	}
	for _, m := range i.Stick.Marks(v.face) {
		if m.Ref != w.ops[0].Ref || m.Stroke != parts.Middle || len(m.Path) < 2 {
			continue
		}
		p, q := m.Path[0].Point, m.Path[len(m.Path)-1].Point
		const past = 0.08 // of its length
		x, y := (q.X-p.X)*past, (q.Y-p.Y)*past
		b.Straight(sheet.Centre, at(from.X+s.of(p.X-x), from.Y+s.of(p.Y-y)), at(from.X+s.of(q.X+x), from.Y+s.of(q.Y+y)))
	}
}

// axisPen is the chain line where there is room for its dashes.
func axisPen(long Length) sheet.Pen {
	if long < 7 {
		return sheet.Narrow
	}
	return sheet.Centre
}

func diameter(op parts.Operation) Length {
	for _, m := range op.Sizes {
		if m.Name == "diameter" {
			return m.Value
		}
	}
	return 0
}

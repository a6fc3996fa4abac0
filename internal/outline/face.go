package outline

import (
	"lostwood/parts"
	"lostwood/parts/form"
)

// Face draws one face of a stick in the face's own frame: its outline and the
// marks of all work on it, with a cross at every centre. It has no words.
func Face(s parts.Stick, f parts.Face) Drawing {
	var d Drawing
	d.Paths = append(d.Paths, Path{Layer{Role: Wood}, Edge, s.Body.Outline(f), true})
	entered := map[string]bool{}
	for _, op := range s.Operations() {
		if op.Face == f {
			entered[op.Ref] = true
		}
	}
	for _, m := range s.Marks(f) {
		layer, pen := penOf(m)
		if layer.Role == Cut && !entered[m.Ref] {
			layer = Layer{Role: Leaving, Work: m.Work}
		}
		d.Add(mark(m, layer, pen))
	}
	d.Add(crosses(s.Marks(f)))
	return d
}

// crosses are the crosses at all centres: where a hole and its counterbore share
// one, a single cross that stands clear of both.
func crosses(marks []parts.Mark) Drawing {
	var at []form.Point
	arms := map[form.Point]Length{}
	for _, m := range marks {
		if m.Centre == nil {
			continue
		}
		if arms[*m.Centre] == 0 {
			at = append(at, *m.Centre)
		}
		arms[*m.Centre] = max(arms[*m.Centre], crossArm(m))
	}
	var d Drawing
	for _, p := range at {
		d.Add(Cross(p, arms[p]))
	}
	return d
}

// Extent is the size of the face's sheet: its width and height in its own frame.
func Extent(b parts.Body, f parts.Face) (w, h Length) {
	long, wide, deep := b.Box()
	switch f {
	case parts.Upper, parts.Under:
		return long, wide
	case parts.FirstSide, parts.SecondSide:
		return long, deep
	}
	return wide, deep
}

// mark draws one mark of a feature.
func mark(m parts.Mark, layer Layer, pen Pen) Drawing {
	var d Drawing
	switch {
	case m.Diameter > 0 && m.Centre != nil:
		d.Circles = append(d.Circles, Circle{layer, pen, *m.Centre, m.Diameter})
	case len(m.Path) > 1:
		d.Paths = append(d.Paths, Path{layer, pen, m.Path, m.Closed})
	}
	return d
}

func penOf(m parts.Mark) (Layer, Pen) {
	switch m.Stroke {
	case parts.Hidden:
		return Layer{Role: Leaving, Work: m.Work}, Below
	case parts.Middle:
		return Layer{Role: Centres}, Axis
	}
	return Layer{Role: Cut, Work: m.Work, Depth: m.Depth}, Work
}

// crossArm lets the cross stand clear of the hole, so that it is still to be
// seen when the hole is bored.
func crossArm(m parts.Mark) Length {
	const clear, least = 3, 5
	return max(m.Diameter/2+clear, least)
}

// Cross marks a centre with two lines that cross on it.
func Cross(at form.Point, arm Length) Drawing {
	var d Drawing
	l := Layer{Role: Centres}
	d.Line(l, Thin, form.Point{X: at.X - arm, Y: at.Y}, form.Point{X: at.X + arm, Y: at.Y})
	d.Line(l, Thin, form.Point{X: at.X, Y: at.Y - arm}, form.Point{X: at.X, Y: at.Y + arm})
	return d
}

// Entered reports whether any work is done from a face.
func Entered(s parts.Stick, f parts.Face) bool {
	for _, op := range s.Operations() {
		if op.Face == f {
			return true
		}
	}
	return false
}

// Worked reports whether a face carries work to be set out on it: anything
// entered there, or a centre to prick through. Lines that only show what lies
// below are no work.
func Worked(s parts.Stick, f parts.Face) bool {
	for _, m := range s.Marks(f) {
		if m.Stroke == parts.Seen || m.Centre != nil {
			return true
		}
	}
	return false
}

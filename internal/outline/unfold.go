package outline

import (
	"lostwood/parts"
	"lostwood/parts/form"
)

// A Laid face is a face in its place among the others.
type Laid struct {
	Face    parts.Face
	At      form.Point // where the origin of the face's own frame stands
	Extent  Box        // the face's sheet, in its place
	Drawing Drawing    // in its place
	Marks   []parts.Mark
}

// Shifted is the face moved by p.
func (f Laid) Shifted(p form.Point) Laid {
	f.At, f.Extent, f.Drawing = plus(f.At, p), f.Extent.Shifted(p), f.Drawing.Shifted(p)
	return f
}

// An Unfolding is a stick's faces laid out on one plane, as if paper round it
// were opened flat: the long faces one under the other, each meeting the next
// along their common edge, then the ends. x = 0 is the first end of the long faces.
type Unfolding struct {
	Laid  []Laid
	Plain []parts.Face // faces with nothing on them, not drawn
}

// A Place says where the ends stand beside the long faces.
type Place int

// The places.
const (
	EndsBelow  Place = iota // under the first end of the long faces
	EndsBeside              // to the right of the second end of the upper ones
)

// Unfold lays out the faces that carry work, and the two true faces. Where plain
// faces lie between, gap is left; the ends stand below, gap apart.
func Unfold(s parts.Stick, gap Length, ends Place) Unfolding {
	var u Unfolding
	drawn := map[parts.Face]bool{}
	for _, f := range parts.Faces() {
		drawn[f] = f == s.FaceSide || f == s.FaceEdge || Worked(s, f)
		if !drawn[f] {
			u.Plain = append(u.Plain, f)
		}
	}
	y := Length(0)
	before := true // whether the face above is drawn, so that this one joins it
	for i, f := range around(drawn) {
		if !drawn[f] {
			before = false
			continue
		}
		if i > 0 && !before && len(u.Laid) > 0 {
			y -= gap
		}
		_, h := Extent(s.Body, f)
		y -= h
		u.Laid = append(u.Laid, lay(s, f, form.Point{Y: y}))
		before = true
	}
	at := form.Point{Y: y - gap}
	if ends == EndsBeside {
		long, _, _ := s.Body.Box()
		at = form.Point{X: long + gap}
	}
	u.layEnds(s, drawn, at, gap, ends)
	return u
}

// around is the order of the long faces, begun where the most of them run on
// without a plain one between.
func around(drawn map[parts.Face]bool) []parts.Face {
	long := parts.LongFaces()
	for i := range long {
		before := (i + len(long) - 1) % len(long)
		if drawn[long[i]] && !drawn[long[before]] {
			return append(append([]parts.Face{}, long[i:]...), long[:i]...)
		}
	}
	return long
}

// layEnds lays the ends from a point downwards, side by side below the long faces
// and one under the other beside them.
func (u *Unfolding) layEnds(s parts.Stick, drawn map[parts.Face]bool, at form.Point, gap Length, ends Place) {
	for _, f := range []parts.Face{parts.FirstEnd, parts.SecondEnd} {
		if !drawn[f] {
			continue
		}
		w, h := Extent(s.Body, f)
		u.Laid = append(u.Laid, lay(s, f, form.Point{X: at.X, Y: at.Y - h}))
		if ends == EndsBelow {
			at.X += w + gap
		} else {
			at.Y -= h + gap
		}
	}
}

func lay(s parts.Stick, f parts.Face, at form.Point) Laid {
	w, h := Extent(s.Body, f)
	return Laid{
		Face:    f,
		At:      at,
		Extent:  Box{at, form.Point{X: at.X + w, Y: at.Y + h}},
		Drawing: Face(s, f).Shifted(at),
		Marks:   s.Marks(f),
	}
}

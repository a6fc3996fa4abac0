package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/outline"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A cut is a section that the key shows, and where it is so.
type cut struct {
	drawing outline.Drawing
	box     outline.Box
	at      []string
}

// mostCuts are so many different sections as anyone will look at.
const mostCuts = 6

// cuts are the sections a joiner asks for: in the plain middle, at both ends of a
// tapered part, and at square work. Those that are alike are one.
func (l *layout) cuts() []cut {
	var out []cut
	for _, s := range l.cutStations() {
		d := outline.Section(l.item.Stick, s.at)
		box, ok := d.Bounds()
		if !ok {
			continue
		}
		same := slices.IndexFunc(out, func(c cut) bool { return alike(c.drawing, d) })
		switch {
		case same >= 0:
			out[same].at = append(out[same].at, s.words)
		case len(out) < mostCuts:
			out = append(out, cut{d, box, []string{s.words}})
		}
	}
	return out
}

// alike reports whether two sections are the same to a tenth of a millimetre.
func alike(a, b outline.Drawing) bool {
	return slices.EqualFunc(a.Paths, b.Paths, func(p, q outline.Path) bool {
		return slices.EqualFunc(p.Run, q.Run, func(v, w form.Vertex) bool {
			return distance(v.Point, w.Point) < 0.1 && math.Abs(v.Bulge-w.Bulge) < 1e-3
		})
	})
}

func (l *layout) cutStations() []station {
	long, _, _ := l.item.Stick.Body.Box()
	switch l.item.Stick.Body.(type) {
	case parts.Arc:
		return []station{{long / 2, "in the middle"}}
	case parts.Bent:
		x := l.plainMiddle(long)
		return []station{{x, l.size(x)}}
	}
	all := []station{{l.plainMiddle(long), ""}}
	all[0].words = l.size(all[0].at)
	plan, side := l.item.Stick.Body.Outline(parts.Upper), l.item.Stick.Body.Outline(parts.FirstSide)
	if !plan.IsRectangle() || !side.IsRectangle() {
		const in = 0.01 // at the very end there is neither wood nor air
		all = append(all, station{in, l.item.FaceWords(parts.FirstEnd)}, station{long - in, l.item.FaceWords(parts.SecondEnd)})
	}
	for _, op := range l.item.Stick.Operations() {
		end := op.Face == parts.FirstEnd || op.Face == parts.SecondEnd
		if !end && op.Work >= parts.Mortising && op.Work <= parts.Notching && op.Note != "from end to end" && sized(op, "square") == 0 {
			all = append(all, station{op.At.X, op.Ref + ", " + l.size(op.At.X)})
		}
	}
	return all
}

// plainMiddle is the place nearest to the middle where no work is in the way.
func (l *layout) plainMiddle(long Length) Length {
	free := func(x Length) bool {
		for _, op := range l.item.Stick.Operations() {
			half := sized(op, "diameter", "long", "wide", "square")/2 + 1
			if op.Work < parts.Tenoning && op.Note != "from end to end" && x > op.At.X-half && x < op.At.X+half {
				return false
			}
		}
		return true
	}
	for off := Length(0); off < long/2-1; off += 5 {
		for _, x := range []Length{long/2 - off, long/2 + off} {
			if free(x) {
				return x
			}
		}
	}
	return long / 2
}

// sections sets the sections side by side at full size, each over its words.
func (c *column) sections() {
	cuts := c.cuts()
	cuts = slices.DeleteFunc(cuts, func(s cut) bool {
		return s.box.Width() > c.right-c.left || s.box.Height() > c.size.Y-2*bare-stripHigh-60
	})
	if len(cuts) == 0 {
		return
	}
	c.head("Sections, full size")
	c.say(fmt.Sprintf("Looked at from the %s, the %s up, the %s to the left; places from the %s.",
		c.item.FaceWords(parts.SecondEnd), c.item.FaceWords(parts.Upper), c.item.FaceWords(parts.FirstSide), c.item.FaceWords(parts.FirstEnd)),
		normal, outline.Plain, c.left, c.right)
	for len(cuts) > 0 {
		n, wide := 0, Length(0)
		for n < len(cuts) && wide+max(cuts[n].box.Width(), cutWide) <= c.right-c.left {
			wide += max(cuts[n].box.Width(), cutWide) + cutGap
			n++
		}
		n = max(n, 1)
		c.cutRow(cuts[:n])
		cuts = cuts[n:]
	}
}

const cutWide, cutGap Length = 34, 6 // the room for a section's words; between sections

func (c *column) cutRow(row []cut) {
	high, lines := Length(0), 0
	for _, s := range row {
		high = max(high, s.box.Height())
		lines = max(lines, len(c.wrap(strings.Join(s.at, "; "), small, outline.Plain, max(s.box.Width(), cutWide))))
	}
	c.room(high + 4 + Length(lines)*lineStep*small)
	c.y -= high + 3
	top, x := c.y, c.left
	foot := c.y
	for _, s := range row {
		c.d.Add(s.drawing.Shifted(form.Point{X: x - s.box.Min.X, Y: top + high - s.box.Max.Y}))
		wide := max(s.box.Width(), cutWide)
		c.y = top - 1
		c.say(strings.Join(s.at, "; "), small, outline.Plain, x, x+wide)
		foot = min(foot, c.y)
		x += wide + cutGap
	}
	c.y = foot - 1
}

// slopes say how long the sloping faces of a tapered part are along the wood, where
// that is longer than the paper shows by enough to matter.
func (t teller) slopes() []string {
	if _, straight := t.item.Stick.Body.(parts.Sawn); !straight {
		return nil
	}
	const matters = 0.1
	var out []string
	for _, side := range []struct {
		seen        parts.Face
		lower, over parts.Face
	}{{parts.FirstSide, parts.Under, parts.Upper}, {parts.Upper, parts.FirstSide, parts.SecondSide}} {
		for _, s := range (outline.Path{Run: t.item.Stick.Body.Outline(side.seen), Closed: true}).Segments() {
			level, rise := s.B.X-s.A.X, s.B.Y-s.A.Y
			long := distance(s.A, s.B)
			if s.Bulge != 0 || max(rise, -rise) > max(level, -level) || long-max(level, -level) < matters {
				continue
			}
			face := side.lower
			if level < 0 {
				face = side.over
			}
			out = append(out, fmt.Sprintf("%s: it slopes between %s and %s, and is %s long there, where the paper shows %s; set out along the slope by that, or hold the paper level.",
				capital(t.item.FaceWords(face)), t.size(min(s.A.X, s.B.X)), t.size(max(s.A.X, s.B.X)), t.exact(long), t.exact(max(level, -level))))
		}
	}
	return out
}

// exact is a length in millimetres to a tenth, whatever the unit: the difference
// it is told for would be lost in a fraction of an inch.
func (t teller) exact(l Length) string { return firm(fmt.Sprintf("%.1f mm", l.Millimetres())) }

// rings is how the growth rings had best lie (common practice, no source).
func (t teller) rings() string {
	body := t.item.Stick.Body
	_, wide, deep := body.Box()
	thin, thick := min(wide, deep), max(wide, deep)
	switch b := body.Blank(); {
	case b.Making == parts.Steamed:
		return "flat to the bend, bark side outwards; straight grain from end to end"
	case t.runOut() > 0:
		return "the flat of the plank to the sides; no heart in it"
	case thick >= 3*thin:
		return "heart side up or outwards, so that a cupped board sheds the wet"
	}
	return "no heart in it; rings as nearly level or upright as the wood allows"
}

package drawing

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/sight"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A section is a part cut square across at a station.
type section struct {
	letter     string
	station    Length
	loops      []form.Path // seen in the end view's frame
	wide, high Length
	low        form.Point
}

// sectionsOf cuts a part where its work is of a sort not cut before, three times
// at most, and once clear of all work where its edges are worked.
func sectionsOf(i *vehicle.Item, body *sight.Body, works []work, end parts.Face) []section {
	var out []section
	add := func(x Length) {
		s := cutAt(i, body, x, end)
		if len(s.loops) == 0 {
			return
		}
		s.letter = string(rune('A' + len(out)))
		out = append(out, s)
	}
	if x, ok := clearStation(i, works); ok {
		add(x)
	}
	sorts := map[string]bool{}
	for _, w := range works {
		sort := sectionSort(w)
		if sort == "" || sorts[sort] || len(out) == 3 || !apartFrom(out, w.at.X, i) {
			continue
		}
		sorts[sort] = true
		add(w.at.X)
	}
	slices.SortFunc(out, func(a, b section) int { return cmp.Compare(a.station, b.station) })
	for k := range out {
		out[k].letter = string(rune('A' + k))
	}
	return out
}

// apartFrom keeps sections so far from each other that their marks are.
func apartFrom(all []section, x Length, i *vehicle.Item) bool {
	long, _, _ := i.Stick.Body.Box()
	return !slices.ContainsFunc(all, func(s section) bool { return math.Abs(float64(s.station-x)) < float64(long)/12 })
}

// sectionSort names what a section shows better than any view; empty for what
// the views show well enough.
func sectionSort(w work) string {
	for _, op := range w.ops {
		switch op.Work {
		case parts.LettingIn, parts.Mortising, parts.Notching:
			if w.seat != onEnd || op.Work == parts.LettingIn {
				return op.What
			}
		case parts.Boring:
			if w.seat != onEnd && (len(w.ops) > 1 || len(op.Sizes) > 1) {
				return op.What + op.Face.String()
			}
		}
	}
	return ""
}

// clearStation is a place near the middle, clear of all work, in a part whose
// edges are worked or whose body is curved.
func clearStation(i *vehicle.Item, works []work) (Length, bool) {
	long, _, _ := i.Stick.Body.Box()
	worked := slices.ContainsFunc(i.Stick.Operations(), func(op parts.Operation) bool {
		return op.Work == parts.Chamfering || op.Work == parts.Rounding
	})
	if _, sawn := i.Stick.Body.(parts.Sawn); sawn && !worked {
		return 0, false
	}
	best, room := long/2, Length(-1)
	for k := range 41 {
		x := long * (0.3 + 0.4*Length(k)/40)
		free := long
		for _, w := range works {
			if w.seat != onEnd {
				free = min(free, Length(math.Abs(float64(w.at.X-x))))
			}
		}
		free -= Length(math.Abs(float64(x-long/2))) / 20
		if free > room {
			best, room = x, free
		}
	}
	return best, true
}

func cutAt(i *vehicle.Item, body *sight.Body, x Length, end parts.Face) section {
	frame := end.Frame(i.Stick.Body)
	v := sight.View{Right: frame.U, Up: frame.V}
	depth := x
	if end == parts.FirstEnd {
		depth = -x
	}
	s := section{station: x}
	origin := v.On(frame.Origin)
	var box outline.Box
	for n, l := range body.Cut(v, depth) {
		for k := range l {
			l[k].X -= origin.X
			l[k].Y -= origin.Y
		}
		s.loops = append(s.loops, l)
		b := sheet.Line{Run: l}.Bounds()
		if n == 0 {
			box = b
		}
		box = box.With(b)
	}
	s.low, s.wide, s.high = box.Min, box.Width(), box.Height()
	return s
}

// scaleOf is the scale a section is drawn at: larger than the views where it is small.
func (s section) scaleOf(views Scale, where beside) Scale {
	most := Length(59)
	if where == smallUnderneath {
		most = 26
	}
	for _, c := range reductions() {
		if c <= views && c.of(s.wide) <= most && c.of(s.high) <= most {
			return c
		}
	}
	return views
}

// section draws one with the lower left corner of its outline at a place.
func (b board) section(v *vehicle.Vehicle, i *vehicle.Item, s section, c Scale, from form.Point) {
	corner := at(from.X-c.of(s.low.X), from.Y-c.of(s.low.Y))
	var loops [][]form.Vertex
	for _, l := range s.loops {
		loops = append(loops, placed(l, c, corner))
	}
	b.hatch(loops)
	for _, l := range loops {
		b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Wide, Run: l[:len(l)-1], Closed: true})
	}
	wide, high := c.of(s.wide), c.of(s.high)
	b.level(from.X, from.X+wide, from.Y-7, from.Y, from.Y, sectionFigure(v, i, s.wide))
	b.upright(from.Y, from.Y+high, from.X-7, from.X, from.X, sectionFigure(v, i, s.high))
	b.say(at(from.X, from.Y-15), s.title(c), normal, sheet.Heavy)
	b.say(at(from.X, from.Y-19.5), "at "+figure(v, s.station), small, sheet.Plain)
}

func (s section) title(c Scale) string { return s.letter + "–" + s.letter + "  " + c.String() }

// room is what a section takes up at a scale, from its lower left corner: to the
// left, to the right, down and up.
func (s section) room(b board, v *vehicle.Vehicle, i *vehicle.Item, c Scale) (left, right, down, up Length) {
	figures := b.letters.Width(sectionFigure(v, i, s.wide), small, sheet.Plain)
	right = max(c.of(s.wide), b.letters.Width(s.title(c), normal, sheet.Heavy))
	if c.of(s.wide) < figures+2 {
		right = max(right, c.of(s.wide)+arrowLong+2+figures)
	}
	high := c.of(s.high)
	return 12, right, 21, high + b.uprightReach(high, sectionFigure(v, i, s.high))
}

// sectionFigure is the figure of an extent; it is marked where a size of that
// length is a guess.
func sectionFigure(v *vehicle.Vehicle, i *vehicle.Item, l Length) string {
	for _, d := range i.Sizes {
		if math.Abs(float64(d.Value-l)) < 0.05 && d.Axis != parts.AlongX {
			return marked(v, l, d.Known)
		}
	}
	return figure(v, l)
}

// hatch draws lines at 45 degrees within closed runs (ISO 128-3).
func (b board) hatch(loops [][]form.Vertex) {
	const apart = 1.8
	var edges []outline.Segment
	for _, l := range loops {
		for _, s := range (sheet.Line{Run: l, Closed: true}).Segments() {
			p := s.Chords(0.02)
			for k := 1; k < len(p); k++ {
				edges = append(edges, outline.Segment{A: p[k-1], B: p[k]})
			}
		}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, e := range edges {
		lo, hi = math.Min(lo, float64(e.A.Y-e.A.X)), math.Max(hi, float64(e.A.Y-e.A.X))
	}
	for row := math.Ceil(lo/apart) + 0.37; row*apart < hi; row++ {
		var xs []Length
		c := Length(row * apart)
		for _, e := range edges {
			p, q := e.A.Y-e.A.X-c, e.B.Y-e.B.X-c
			if (p > 0) != (q > 0) {
				xs = append(xs, e.A.X+(e.B.X-e.A.X)*p/(p-q))
			}
		}
		slices.Sort(xs)
		for k := 0; k+1 < len(xs); k += 2 {
			if xs[k+1]-xs[k] > 0.1 {
				b.Straight(sheet.Hatch, at(xs[k], xs[k]+c), at(xs[k+1], xs[k+1]+c))
			}
		}
	}
}

package pattern

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/outline"
	"lostwood/parts/form"
)

// A label is some lines of words that go somewhere near a place on the drawing.
type label struct {
	lines  []outline.Text // set with the block's lower left corner at the origin
	extra  outline.Drawing
	size   form.Point
	query  bool              // framed in long dashes: it tells of a guess
	anchor *outline.Box      // what it points at; nil for one that needs no leader
	within outline.Box       // where it may stand
	wish   form.Point        // where its lower left corner would best stand, without an anchor
	inside []outline.Segment // an outline its middle must stand in; nil for anywhere
	off    []outline.Box     // where it may not stand: faces that it is not about
	home   outline.Box       // where it had best stand: on its own face
	need   need
}

// A need says whether a pattern can do without a label.
type need int

const (
	wanted need = iota
	spare       // said elsewhere too: left out where there is no room near by
)

// dearest is what the place of a spare label may cost.
const dearest = 45

// A crowd is what labels keep clear of, and what they had better avoid.
type crowd struct {
	lines []boxed
	boxes []outline.Box
	avoid []outline.Box     // joints
	shun  []outline.Box     // sheets that would not be printed but for words on them
	folds []outline.Segment // the joining lines: no label lies across one
	clear Length            // what is left between words and anything else
	rule  leading
}

// A leading says whether a leader may run through words.
type leading int

const (
	roundWords   leading = iota
	throughWords         // where there is no other way left
)

// A boxed line knows its box: most lines are far from where one looks.
type boxed struct {
	outline.Segment
	box outline.Box
}

func boxedLines(p outline.Path) []boxed {
	var out []boxed
	for _, s := range p.Segments() {
		out = append(out, boxed{s, s.Bounds()})
	}
	return out
}

// crosses reports whether any of the line lies inside a box.
func (s boxed) crosses(b outline.Box) bool {
	return s.box.Grown(1e-9).Meets(b) && s.Crosses(b)
}

const (
	clearance    = 1.2 // between words and anything else on a sheet, in millimetres
	dodge        = 70  // what standing in a place to avoid costs, in millimetres of leader
	waste        = 150 // what standing on a sheet costs that is not needed otherwise
	strike       = 400 // what a leader through words costs
	crossing     = 9   // what a leader over another line costs
	abroad       = 22  // what standing off its own face costs
	narrower     = 7   // what each narrower setting costs
	leaderBend   = 1.5 // the least length of a leader
	candidateDir = 24
)

// add takes a drawing into the crowd.
func (c *crowd) add(d outline.Drawing) {
	for _, p := range d.Paths {
		c.lines = append(c.lines, boxedLines(p)...)
	}
	for _, k := range d.Circles {
		c.lines = append(c.lines, boxedLines(outline.Path{Closed: true, Run: k.Halves()})...)
	}
	for _, t := range d.Texts {
		c.boxes = append(c.boxes, textBox(t))
	}
}

// wordless reports whether a box touches no words.
func (c *crowd) wordless(b outline.Box) bool {
	for _, o := range c.boxes {
		if o.Meets(b) {
			return false
		}
	}
	return true
}

// free reports whether a box touches nothing in the crowd.
func (c *crowd) free(b outline.Box) bool {
	if !c.wordless(b) {
		return false
	}
	for _, s := range c.lines {
		if s.crosses(b) {
			return false
		}
	}
	return true
}

// folded reports whether a joining line runs through a box.
func (c *crowd) folded(b outline.Box) bool {
	for _, s := range c.folds {
		if s.Crosses(b.Grown(0.4)) {
			return true
		}
	}
	return false
}

// place finds the best free place for a label in one of its settings and puts it
// there; ok is false where there is none.
func (c *crowd) place(settings []label) (d outline.Drawing, ok bool) {
	if settings[0].anchor == nil {
		if d, ok := c.placeAmong(settings, label.close); ok {
			return d, true
		}
	}
	return c.placeAmong(settings, label.candidates)
}

func (c *crowd) placeAmong(settings []label, candidates func(label) []form.Point) (d outline.Drawing, ok bool) {
	var best label
	var spot outline.Box
	var line *outline.Segment
	cost := math.Inf(1)
	if settings[0].need == spare && settings[0].anchor != nil {
		cost = dearest
	}
	for i, l := range settings {
		for _, at := range candidates(l) {
			box := outline.Box{Min: at, Max: form.Point{X: at.X + l.size.X, Y: at.Y + l.size.Y}}
			if !l.within.Holds(box) || slices.ContainsFunc(l.off, box.Meets) {
				continue
			}
			price, leader := c.price(l, box, cost-narrower*float64(i))
			price += narrower * float64(i)
			if price >= cost || c.folded(box) || l.inside != nil && !encloses(l.inside, box) || !c.free(box.Grown(c.clear)) {
				continue
			}
			best, spot, cost, line, ok = l, box, price, leader, true
		}
	}
	if !ok {
		return outline.Drawing{}, false
	}
	d = best.at(spot.Min, line)
	c.add(d)
	c.boxes = append(c.boxes, spot)
	return d, true
}

// encloses reports whether a box's middle lies within a closed outline: a line
// from it to the right leaves the outline once more than it enters.
func encloses(about []outline.Segment, b outline.Box) bool {
	c := form.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2}
	in := false
	for _, s := range about {
		const sag = 0.5
		p := s.Chords(sag)
		for i := 1; i < len(p); i++ {
			a, z := p[i-1], p[i]
			if (a.Y > c.Y) != (z.Y > c.Y) && c.X < a.X+(c.Y-a.Y)/(z.Y-a.Y)*(z.X-a.X) {
				in = !in
			}
		}
	}
	return in
}

// at draws the label with its lower left corner at a point.
func (l label) at(p form.Point, leader *outline.Segment) outline.Drawing {
	d := outline.Drawing{Texts: l.lines}
	d.Add(l.extra)
	d = d.Shifted(p)
	guide := outline.Layer{Role: outline.Guide}
	if l.query {
		d.Rect(guide, outline.Query, outline.Box{Min: p, Max: form.Point{X: p.X + l.size.X, Y: p.Y + l.size.Y}})
	}
	if leader != nil {
		d.Line(guide, outline.Thin, leader.A, leader.B)
	}
	return d
}

// price is what a place costs: the length of its leader, or how far it is from
// where it was wished, and more where it had better not stand. Counting stops at
// enough.
func (c *crowd) price(l label, box outline.Box, enough float64) (float64, *outline.Segment) {
	sum := 0.0
	for _, a := range c.avoid {
		if a.Meets(box) {
			sum += dodge
		}
	}
	for _, a := range c.shun {
		if a.Meets(box) {
			sum += waste
		}
	}
	if l.anchor == nil {
		return sum + float64(distance(box.Min, l.wish)), nil
	}
	s := leaderOf(box, *l.anchor)
	sum += float64(distance(s.A, s.B))
	if !l.home.Holds(box) {
		sum += abroad
	}
	if sum >= enough {
		return sum, &s
	}
	for _, o := range c.lines {
		if crosses(s, o) {
			sum += crossing
		}
	}
	for _, b := range c.boxes {
		if s.Crosses(b) {
			if c.rule == roundWords {
				return math.Inf(1), &s
			}
			sum += strike
		}
	}
	return sum, &s
}

// crosses reports whether a leader runs over a line; touching with its end does not count.
func crosses(leader outline.Segment, o boxed) bool {
	if !outline.Spanning(leader.A, leader.B).Grown(0.01).Meets(o.box.Grown(0.01)) {
		return false
	}
	const sag = 0.5
	p := o.Chords(sag)
	for i := 1; i < len(p); i++ {
		if side(leader, p[i-1])*side(leader, p[i]) < 0 {
			chord := outline.Segment{A: p[i-1], B: p[i]}
			if side(chord, leader.A)*side(chord, leader.B) < 0 {
				return true
			}
		}
	}
	return false
}

// side is positive to the left of a line, negative to the right.
func side(s outline.Segment, p form.Point) float64 {
	const touch = 0.3 // so near is on the line
	long := distance(s.A, s.B)
	if long == 0 {
		return 0
	}
	off := ((s.B.X-s.A.X)*(p.Y-s.A.Y) - (s.B.Y-s.A.Y)*(p.X-s.A.X)) / long
	if off > -touch && off < touch {
		return 0
	}
	return float64(off)
}

// leaderOf is the line from a label's nearest side to the edge of what it is about.
func leaderOf(box, about outline.Box) outline.Segment {
	c := form.Point{X: (about.Min.X + about.Max.X) / 2, Y: (about.Min.Y + about.Max.Y) / 2}
	from := form.Point{X: min(max(c.X, box.Min.X), box.Max.X), Y: min(max(c.Y, box.Min.Y), box.Max.Y)}
	reach := min(about.Width(), about.Height()) / 2
	long := distance(from, c)
	if long <= reach {
		return outline.Segment{A: from, B: from}
	}
	share := reach / long
	return outline.Segment{A: from, B: form.Point{X: c.X + (from.X-c.X)*share, Y: c.Y + (from.Y-c.Y)*share}}
}

// candidates are the places a label may try, near ones first.
func (l label) candidates() []form.Point {
	if l.anchor == nil {
		return l.spread()
	}
	a := *l.anchor
	c := form.Point{X: (a.Min.X + a.Max.X) / 2, Y: (a.Min.Y + a.Max.Y) / 2}
	var p []form.Point
	for _, off := range [...]Length{2, 4, 7, 11, 16, 22, 30, 40, 55, 75, 100, 130, 170, 220} {
		for i := range candidateDir {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / candidateDir)
			x, y := Length(cos), Length(sin)
			// The label's middle stands so that its side, not its middle, is off away.
			p = append(p, form.Point{
				X: c.X + x*(a.Width()/2+off+leaderBend) + l.size.X*(x-1)/2,
				Y: c.Y + y*(a.Height()/2+off+leaderBend) + l.size.Y*(y-1)/2,
			})
		}
	}
	return p
}

// close are the places near where a label would best stand.
func (l label) close() []form.Point {
	const reachX, reachY = 90, 45
	l.within.Min.X, l.within.Max.X = max(l.within.Min.X, l.wish.X-reachX), min(l.within.Max.X, l.wish.X+l.size.X+reachX)
	l.within.Min.Y, l.within.Max.Y = max(l.within.Min.Y, l.wish.Y-reachY), min(l.within.Max.Y, l.wish.Y+l.size.Y+reachY)
	return l.spread()
}

// spread are places all over where the label may stand, the nearest to its wish first.
func (l label) spread() []form.Point {
	stepX, stepY := min(6, l.within.Width()/12+0.1), min(2.5, l.within.Height()/12+0.1)
	p := []form.Point{l.wish}
	for y := l.within.Max.Y - l.size.Y; y >= l.within.Min.Y; y -= stepY {
		for x := l.within.Min.X; x+l.size.X <= l.within.Max.X; x += stepX {
			p = append(p, form.Point{X: x, Y: y})
		}
	}
	slices.SortStableFunc(p, func(a, b form.Point) int { return cmp.Compare(distance(a, l.wish), distance(b, l.wish)) })
	return p
}

func distance(a, b form.Point) Length {
	return Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}

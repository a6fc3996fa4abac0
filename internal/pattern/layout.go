package pattern

import (
	"cmp"
	"errors"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A layout is the whole drawing of one item with its words, and the grid of
// sheets over it.
type layout struct {
	teller
	*lettering
	paper   Paper
	way     turn
	place   outline.Place
	only    *parts.Face // where just one face is drawn, for a router
	cutter  Cutter
	forHand []handed     // what the router leaves on that face
	rim     *outline.Rim // where a whole rim is set out, not a part
	faces   outline.Unfolding
	drawing outline.Drawing
	wood    outline.Box // the faces
	grid    grid
	crowd   crowd
	rods    []sheet
	boxed   []boxed // the drawing's lines, as far as boxedTo of its paths
	boxedTo int
	needed  [][]bool // by row and column: whether the sheet shows anything to set out
}

const (
	faceGap   = 16 // between faces that do not meet
	headRoom  = 15 // above the faces, for the check of the length
	footRoom  = 6
	sideRoom  = 4
	moreRoom  = 45 // added below where the words find no place
	mostRooms = 24

	roomsRound = 8 // so often room is added before a leader may run through words
)

// lay draws an item and finds a place for every word, on sheets turned, and with
// the faces arranged, in the way that takes fewest.
func lay(v *vehicle.Vehicle, item *vehicle.Item, p Paper) (*layout, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	letters, err := newLettering()
	if err != nil {
		return nil, err
	}
	var best *layout
	for _, l := range promising(layout{teller: teller{v, item}, lettering: letters, paper: p}) {
		if err := l.settle(); err != nil {
			return nil, err
		}
		if best == nil || l.printedCount() < best.printedCount() {
			best = l
		}
	}
	if best == nil {
		return nil, errors.New("there is no way to lay it on this paper; larger paper may do")
	}
	best.rods = best.rod()
	return best, nil
}

// promising are the ways to lay an item that take fewest sheets before there are
// any words on it, or one sheet more: three at most.
func promising(from layout) []*layout {
	ways := []turn{flat, tall}
	if from.paper.Feed == Roll || from.paper.Width < leastFoot {
		ways = ways[:1]
	}
	places := []outline.Place{outline.EndsBelow, outline.EndsBeside}
	if from.paper.Feed == Roll || from.rim != nil {
		places = places[:1]
	}
	var all []*layout
	for _, way := range ways {
		for _, place := range places {
			l := from
			l.way, l.place = way, place
			if err := l.begin(0); err != nil {
				return []*layout{&l} // settling it tells what is wrong
			}
			all = append(all, &l)
		}
	}
	slices.SortStableFunc(all, func(a, b *layout) int { return cmp.Compare(a.printedCount(), b.printedCount()) })
	least := all[0].printedCount()
	all = slices.DeleteFunc(all, func(l *layout) bool { return l.printedCount() > least+1 })
	return all[:min(3, len(all))]
}

// settle draws the item, with more and more room below until every word has a place.
func (l *layout) settle() error {
	for n := range mostRooms {
		if err := l.begin(Length(n) * moreRoom); err != nil {
			return err
		}
		if n >= roomsRound {
			l.crowd.rule = throughWords
		}
		if l.letter() {
			l.need()
			l.trim()
			if l.rim == nil {
				l.remind()
			}
			return nil
		}
	}
	return errors.New("there is more to say on it than it has room for; larger paper may do")
}

// begin draws the item afresh without its words, with more room below.
func (l *layout) begin(more Length) error {
	l.drawing, l.crowd = outline.Drawing{}, crowd{clear: clearance}
	l.boxed, l.boxedTo = nil, 0
	return l.draw(more)
}

// draw lays out the wood and the grid, with more room below.
func (l *layout) draw(more Length) error {
	l.faces = outline.Unfold(l.item.Stick, faceGap, l.place)
	if l.rim != nil {
		l.layRimFace()
	}
	if l.only != nil {
		l.faces.Laid = slices.DeleteFunc(l.faces.Laid, func(f outline.Laid) bool { return f.Face != *l.only })
		for i, f := range l.faces.Laid {
			var d outline.Drawing
			d, l.forHand = l.routed(outline.Face(l.item.Stick, f.Face), f.Face, l.cutter)
			l.faces.Laid[i].Drawing = d.Shifted(f.At)
		}
	}
	if l.strips() {
		if err := l.pack(); err != nil {
			return err
		}
	}
	for i, f := range l.faces.Laid {
		l.drawing.Add(f.Drawing)
		if l.rim == nil {
			l.drawing.Add(l.unsure(f))
		}
		if i == 0 {
			l.wood = f.Extent
		}
		l.wood = l.wood.With(f.Extent)
	}
	if b, ok := l.drawing.Bounds(); ok {
		l.wood = l.wood.With(b)
	}
	box := outline.Box{
		Min: form.Point{X: l.wood.Min.X - sideRoom, Y: l.wood.Min.Y - footRoom - more},
		Max: form.Point{X: l.wood.Max.X + sideRoom, Y: l.wood.Max.Y + headRoom},
	}
	l.grid = gridOn(pageFor(l.paper, l.way, box), box, l.v.Unit)
	l.crowd.add(l.drawing)
	if l.only == nil && l.rim == nil {
		l.rule()
	}
	if !l.strips() {
		l.slide(box)
	}
	l.need()
	l.crowd.folds = l.grid.folds()
	l.crowd.avoid, l.crowd.shun = l.grid.joints(), l.plain()
	return nil
}

// rule draws the whole length above the faces, with a mark at each end to check it by.
func (l *layout) rule() {
	long, _, _ := l.item.Stick.Body.Box()
	y := l.wood.Max.Y + 5
	guide := outline.Layer{Role: outline.Guide}
	var d outline.Drawing
	d.Line(guide, outline.Faint, form.Point{Y: y}, form.Point{X: long, Y: y})
	for _, x := range []Length{0, long} {
		d.Line(guide, outline.Thin, form.Point{X: x, Y: l.wood.Max.Y + 1}, form.Point{X: x, Y: y + 4})
		d.Paths = append(d.Paths, outline.Path{Layer: guide, Pen: outline.Solid, Closed: true, Run: []form.Vertex{
			{Point: form.Point{X: x, Y: y}}, {Point: form.Point{X: x + 1.6, Y: y + 3.5}}, {Point: form.Point{X: x - 1.6, Y: y + 3.5}},
		}})
	}
	l.drawing.Add(d)
	l.crowd.add(d)
}

// everywhere is all the sheets together.
func (l *layout) everywhere() outline.Box {
	return l.grid.all().Grown(-1)
}

// letter places every label; it reports false where one found no place.
func (l *layout) letter() bool {
	for _, settings := range l.labels() {
		d, ok := l.crowd.place(settings)
		if settings[0].need == spare && !ok {
			continue
		}
		if b := settings[0]; !ok && b.anchor == nil {
			d, ok = l.placeAbroad(b)
		}
		if !ok {
			return false
		}
		l.drawing.Add(d)
	}
	return true
}

// placeAbroad places a label off the wood; where the faces leave no room there, as
// round a bent rail, it may stand within a face's box, and needs no leader at last.
func (l *layout) placeAbroad(b label) (d outline.Drawing, ok bool) {
	led := l.abroad(b)
	near := led
	near.off = nil
	free := near
	free.anchor = nil
	for _, one := range []label{led, near, free} {
		if d, ok = l.crowd.place([]label{one}); ok {
			return d, true
		}
	}
	return d, false
}

// abroad is a label that finds no place where it belongs: it stands off the wood,
// and a leader tells what it is about.
func (l *layout) abroad(b label) label {
	if b.home != (outline.Box{}) {
		at := form.Point{X: b.home.Min.X + min(30, b.home.Width()/3), Y: (b.home.Min.Y + b.home.Max.Y) / 2}
		b.anchor = &outline.Box{Min: at, Max: at}
	}
	for _, f := range l.faces.Laid {
		b.off = append(b.off, f.Extent)
	}
	b.within, b.inside = l.everywhere(), nil
	return b
}

// labels are all words on the drawing, in the order they choose their places;
// each in one or more settings.
func (l *layout) labels() [][]label {
	if l.rim != nil {
		return l.rimLabels()
	}
	var all [][]label
	alone := func(b ...label) {
		for _, one := range b {
			all = append(all, []label{one})
		}
	}
	if l.only == nil {
		alone(l.checks()...)
	}
	for _, f := range l.faces.Laid {
		all = append(all, l.heading(f))
	}
	for _, f := range l.faces.Laid {
		if f.Face != parts.FirstEnd && f.Face != parts.SecondEnd {
			alone(l.ends(f)...)
		}
	}
	for _, f := range l.faces.Laid {
		all = append(all, l.work(f)...)
	}
	if l.only == nil || *l.only == l.item.Stick.FaceSide {
		all = append(all, l.grain())
	}
	if b, ok := l.bigHand(); ok {
		all = append(all, []label{b})
	}
	return all
}

// remind names the face and the ends again on every sheet that shows a face but
// not its heading. A reminder that finds no room is left out: it says nothing new.
func (l *layout) remind() {
	for r := range l.grid.rows {
		for c := range l.grid.cols {
			for _, f := range l.faces.Laid {
				if core := l.grid.core(r, c); l.needed[r][c] && core.Min.X > f.Extent.Min.X && core.Meets(f.Extent) {
					l.reminder(f, core)
				}
			}
		}
	}
}

func (l *layout) reminder(f outline.Laid, core outline.Box) {
	words := l.item.FaceWords(f.Face) + ", " + l.item.FaceWords(parts.FirstEnd) + " to the left"
	b := l.block([]line{{words, small, outline.Plain}}, 0.6)
	core.Min.X += overlap // keeps clear of the diamonds
	core.Max.X -= overlap
	b.within = outline.Box{
		Min: form.Point{X: max(core.Min.X, f.Extent.Min.X), Y: max(core.Min.Y, f.Extent.Min.Y)},
		Max: form.Point{X: min(core.Max.X, f.Extent.Max.X), Y: min(core.Max.Y, f.Extent.Max.Y)},
	}
	b.inside = wood(f)
	b.wish = form.Point{X: b.within.Min.X + 2, Y: b.within.Min.Y + 3}
	if d, ok := l.crowd.place([]label{b}); ok {
		l.drawing.Add(d)
	}
}

// sizesOf are the item's sizes along one axis.
func (l *layout) sizesOf(a parts.Axis) []vehicle.Dimension {
	var d []vehicle.Dimension
	for _, s := range l.item.Sizes {
		if s.Axis == a {
			d = append(d, s)
		}
	}
	return d
}

// lengthKnown is how the whole length is known.
func (l *layout) lengthKnown() quantity.Size {
	long, _, _ := l.item.Stick.Body.Box()
	for _, s := range l.sizesOf(parts.AlongX) {
		s.Size.Value = long
		return s.Size
	}
	return quantity.Size{Value: long}
}

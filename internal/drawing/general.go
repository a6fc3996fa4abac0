package drawing

import (
	"cmp"
	"fmt"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// smallestGeneral is the smallest scale of a general arrangement.
const smallestGeneral Scale = 50

// fineLine is the width of a narrow line of the general arrangement, whose wide
// lines would run together in wider ones.
const fineLine Length = 0.18

// An arrangement is the general arrangement being drawn.
type arrangement struct {
	v       *vehicle.Vehicle
	making  Making
	letters *sheet.Lettering
	things  []*thing
	views   []elevation // plan, near side, fore, hind
	unseen  []*thing    // placed, but nowhere in sight
	unshown []*thing    // in sight, but there was no room for a balloon
}

// General draws the general arrangement of a vehicle: everything that has a
// place, in plan, near side, fore and hind elevation, on one sheet, with its
// tables; these take further sheets where there is no room.
func General(v *vehicle.Vehicle, m Making) ([]sheet.Sheet, error) {
	none := fmt.Errorf("the %s has nothing in a place yet, so that there is no arrangement to draw; say in the survey what the fastenings go through", v.Name)
	if !Arranged(v) {
		return nil, none
	}
	letters, err := sheet.NewLettering()
	if err != nil {
		return nil, err
	}
	things, err := thingsOf(v)
	if err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(things, func(t *thing) bool { return len(t.bodies) > 0 }) {
		return nil, none
	}
	a := &arrangement{v: v, making: m, letters: letters, things: things, views: elevations(things)}
	frame := m.Paper.frame()
	for _, s := range reductions() {
		if s > smallestGeneral {
			break
		}
		box := a.drawn(s, rough).bounds()
		if box.Width() <= frame.Width()-2*air && box.Height() <= frame.Height()-titleHigh-2*air ||
			box.Width() <= frame.Width()-titleWide-3*air && box.Height() <= frame.Height()-2*air {
			return a.finished(s)
		}
	}
	long := a.views[0].box.Width()
	return nil, &SizeError{fmt.Sprintf("the %s (%.0f mm long)", v.Name, long), m.Paper, smallestGeneral, "take larger paper with --paper"}
}

// Arranged says whether a vehicle has anything in a place, that a general
// arrangement could show.
func Arranged(v *vehicle.Vehicle) bool {
	return slices.ContainsFunc(v.Parts, func(p *vehicle.Part) bool { return p.Place != nil && p.Item != nil }) ||
		slices.ContainsFunc(v.Irons, func(i *vehicle.Iron) bool { return i.Place != nil })
}

// Room between the views on paper, in millimetres.
const (
	rowOff   Length = 15 // from a view to its row of balloons
	dimStep  Length = 7  // from one dimension line to the next
	viewsOff Length = 30 // from the side elevation to the ends'
)

// A place is where each view stands: the lower left of its box.
type standing struct{ plan, side, fore, hind form.Point }

// stand sets the views out by their angle, the side elevation's corner at the origin.
func (a *arrangement) stand(s Scale) standing {
	plan, side, fore, hind := &a.views[0], &a.views[1], &a.views[2], &a.views[3]
	left, right := at(-viewsOff, 0), at(s.of(side.box.Width())+viewsOff, 0)
	var p standing
	if a.making.Angle == Third {
		p.fore, p.hind = at(left.X-s.of(fore.box.Width()), 0), right
		p.plan = at(0, s.of(side.box.Height())+2*rowOff+10)
	} else {
		p.hind, p.fore = at(left.X-s.of(hind.box.Width()), 0), right
		p.plan = at(0, -a.underSide()-rowOff-10-s.of(plan.box.Height()))
	}
	// The plan stands over or under the side elevation, its fore end over that one's.
	p.plan.X = s.of(plan.box.Min.X - side.box.Min.X)
	return p
}

// drawn draws all views with their dimensions and balloons.
func (a *arrangement) drawn(s Scale, inked inking) board {
	b := board{&sheet.Sheet{Stroke: fineLine}, a.letters}
	p := a.stand(s)
	plan, side, fore, hind := &a.views[0], &a.views[1], &a.views[2], &a.views[3]
	b.elevation(plan, s, p.plan, inked)
	b.elevation(side, s, p.side, inked)
	b.elevation(fore, s, p.fore, inked)
	b.elevation(hind, s, p.hind, inked)
	b.lengths(a, s, p)
	b.widths(a, s, p)
	b.heights(a, s, p)
	a.point(b, s, p)
	title := func(e *elevation, from form.Point, y Length) {
		b.middled(at(from.X+s.of(e.box.Width())/2, y), e.name, normal, sheet.Heavy)
	}
	planName := p.plan.Y + s.of(plan.box.Height()) + rowOff + 7
	if a.making.Angle == First {
		planName = p.plan.Y - rowOff - 10
	}
	title(plan, p.plan, planName)
	title(side, p.side, 5-a.underSide())
	title(fore, p.fore, -Length(len(widths(a.things)))*dimStep-11)
	title(hind, p.hind, -9)
	return b
}

// underSide is the room under the side elevation, for balloons, dimensions and its name.
func (a *arrangement) underSide() Length {
	return rowOff + 6 + Length(len(lengths(a.things)))*dimStep + 12
}

// lengths draws the dimensions along the vehicle under the side elevation, below
// its balloons.
func (b board) lengths(a *arrangement, s Scale, p standing) {
	for k, e := range lengths(a.things) {
		x0, x1 := a.alongSide(e, s, p)
		b.level(x0, x1, p.side.Y-rowOff-6-Length(k+1)*dimStep, p.side.Y, p.side.Y, e.words(a.v))
	}
}

// widths draws the dimensions across it under the fore elevation.
func (b board) widths(a *arrangement, s Scale, p standing) {
	fore := &a.views[2]
	for k, e := range widths(a.things) {
		x0 := fore.on(at(fore.alongView(1, e.from), 0), s, p.fore).X
		x1 := fore.on(at(fore.alongView(1, e.to), 0), s, p.fore).X
		b.level(x0, x1, p.fore.Y-Length(k+1)*dimStep, p.fore.Y, p.fore.Y, e.words(a.v))
	}
}

// heights draws the heights above the ground beside the right-hand elevation.
func (b board) heights(a *arrangement, s Scale, p standing) {
	e, from := &a.views[3], p.hind
	if a.making.Angle == First {
		e, from = &a.views[2], p.fore
	}
	edge := from.X + s.of(e.box.Width())
	if e.grounds {
		edge += 6
	}
	var all []station
	for _, h := range heights(a.things) {
		y := e.on(at(0, h.to), s, from).Y
		all = append(all, station{y, edge, marked(a.v, h.to, h.known) + "  " + h.what})
	}
	if len(all) > 0 && e.grounds {
		b.rowBeside(e.on(form.Point{}, s, from).Y, edge, edge+toLine, all)
	}
}

// point gives every thing in sight a balloon on the view that shows it best and
// has room.
func (a *arrangement) point(b board, s Scale, p standing) {
	shelves := a.shelves(s, p)
	slots := make([]int, len(shelves))
	for k := range shelves {
		slots[k] = len(shelves[k].slots())
	}
	a.unseen, a.unshown = nil, nil
	type choice struct {
		thing *thing
		on    []balloon // by shelf
		room  []Length
		best  Length
	}
	var all []choice
	for _, t := range a.things {
		c := choice{thing: t}
		for _, h := range shelves {
			e := &a.views[h.view]
			show := e.best(t)
			c.on = append(c.on, balloon{t, e.on(show.At, s, a.from(h.view, p))})
			c.room = append(c.room, show.Room)
			c.best = max(c.best, show.Room)
		}
		switch {
		case c.best > 0:
			all = append(all, c)
		case len(t.bodies) > 0:
			a.unseen = append(a.unseen, t)
		}
	}
	// What shows itself least has the first choice.
	slices.SortStableFunc(all, func(x, y choice) int { return cmp.Compare(x.best, y.best) })
	for _, c := range all {
		best := -1
		worth := Length(0)
		for k := range shelves {
			h := &shelves[k]
			if c.room[k] <= 0 || len(h.row) >= slots[k] {
				continue
			}
			w := min(c.room[k], 60) / (1 + h.far(c.on[k].to)/40) * (1 - 0.6*Length(len(h.row))/Length(slots[k]))
			if w > worth {
				best, worth = k, w
			}
		}
		if best < 0 {
			a.unshown = append(a.unshown, c.thing)
			continue
		}
		shelves[best].row = append(shelves[best].row, c.on[best])
	}
	for _, h := range shelves {
		b.balloons(h)
	}
}

func (a *arrangement) from(view int, p standing) form.Point {
	return [...]form.Point{p.plan, p.side, p.fore, p.hind}[view]
}

// shelves are the rows there are: the plan's away from the side elevation, over
// and under that one, and over those of the ends.
func (a *arrangement) shelves(s Scale, p standing) []shelf {
	top := func(view int) Length { return a.from(view, p).Y + s.of(a.views[view].box.Height()) }
	put := func(view int, y Length) shelf {
		from := a.from(view, p)
		return shelf{view: view, y: y, from: from.X, to: from.X + s.of(a.views[view].box.Width())}
	}
	under := put(1, p.side.Y-rowOff)
	for _, e := range lengths(a.things) {
		x0, x1 := a.alongSide(e, s, p)
		under.bars = append(under.bars, x0, x1)
	}
	slices.Sort(under.bars)
	return []shelf{
		put(0, top(0)+rowOff), put(0, p.plan.Y-rowOff), put(1, top(1)+rowOff), under,
		put(2, top(2)+rowOff), put(3, top(3)+rowOff),
	}
}

// alongSide is where an extent along the vehicle begins and ends on the side elevation.
func (a *arrangement) alongSide(e extent, s Scale, p standing) (x0, x1 Length) {
	side := &a.views[1]
	return side.on(at(side.alongView(0, e.to), 0), s, p.side).X, side.on(at(side.alongView(0, e.from), 0), s, p.side).X
}

// finished puts views, tables and titles on sheets.
func (a *arrangement) finished(s Scale) ([]sheet.Sheet, error) {
	d := a.drawn(s, full)
	box := d.bounds()
	paper := a.making.Paper
	frame := paper.frame()
	var boards []board
	more := func() (board, []outline.Box) {
		b := newBoard(a.letters, paper, fmt.Sprintf("general arrangement sheet %d", len(boards)+1))
		b.Stroke = fineLine
		boards = append(boards, b)
		return b, columns(frame, frame.Max.Y-air)
	}
	b, _ := more()
	b.put(d, at(frame.Min.X+air-box.Min.X, frame.Max.Y-air-box.Max.Y))
	views := outline.Box{Min: at(frame.Min.X, frame.Max.Y-2*air-box.Height()), Max: at(frame.Min.X+2*air+box.Width(), frame.Max.Y)}
	f := newFlow(b, beyond(frame, views), more)
	f.table(a.timbers())
	f.table(a.irons())
	f.table(a.fastenings())
	f.notes("Notes", a.remarks())
	var out []sheet.Sheet
	for k, b := range boards {
		b.title(frame, a.v, a.title(s, k+1, len(boards)))
		out = append(out, *b.Sheet)
	}
	return out, nil
}

package drawing

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/sight"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A Making is how drawings are wanted.
type Making struct {
	Paper Paper
	Angle Angle
	// Sawn tells the size an item is bought at, in words; it may be nil.
	Sawn func(*vehicle.Item) string
}

// A partSheet is a part's views and what is told of it.
type partSheet struct {
	v        *vehicle.Vehicle
	item     *vehicle.Item
	making   Making
	letters  *sheet.Lettering
	works    []work
	plan     view
	front    view
	end      view
	sections []section
}

// Part draws one item: its views with their dimensions, and the tables. It takes
// more sheets where the tables do not fit on the first.
func Part(v *vehicle.Vehicle, item *vehicle.Item, m Making) ([]sheet.Sheet, error) {
	if item.Stick.Body == nil {
		return nil, fmt.Errorf("the %s has no shape to draw", item.Name)
	}
	letters, err := sheet.NewLettering()
	if err != nil {
		return nil, err
	}
	body, err := sight.Of(item.Stick.Volume(), fine)
	if err != nil {
		return nil, fmt.Errorf("the %s cannot be drawn: %w", item.Name, err)
	}
	end := parts.SecondEnd
	if m.Angle == First {
		end = parts.FirstEnd
	}
	works := worksOf(item)
	p := &partSheet{
		v: v, item: item, making: m, letters: letters, works: works,
		plan:     viewOf(body, item.Stick.Body, parts.Upper),
		front:    viewOf(body, item.Stick.Body, parts.FirstSide),
		end:      viewOf(body, item.Stick.Body, end),
		sections: sectionsOf(item, body, works, end),
	}
	return p.sheets()
}

// smallestPart is the smallest scale at which a part's work is still to be read.
const smallestPart Scale = 20

// air is kept between the frame and what is drawn.
const air Length = 6

// sheets finds the largest scale that fits and lays out the sheets.
func (p *partSheet) sheets() ([]sheet.Sheet, error) {
	frame := p.making.Paper.frame()
	for _, s := range reductions() {
		if s > smallestPart {
			break
		}
		for _, where := range []beside{atRight, underneath, smallUnderneath} {
			d, ok := p.drawn(s, where)
			if !ok {
				continue
			}
			box := d.bounds()
			fits := box.Width() <= frame.Width()-2*air && box.Height() <= frame.Height()-titleHigh-2*air
			aside := box.Width() <= frame.Width()-titleWide-3*air && box.Height() <= frame.Height()-2*air
			if fits || aside {
				return p.finished(d, box, s)
			}
		}
	}
	long, wide, deep := p.item.Stick.Body.Box()
	return nil, &SizeError{
		fmt.Sprintf("the %s (%.0f x %.0f x %.0f mm)", p.item.Name, long, wide, deep), p.making.Paper, smallestPart,
		"take larger paper with --paper",
	}
}

// beside says where the sections stand.
type beside int

const (
	atRight beside = iota
	underneath
	smallUnderneath // at a smaller scale
)

// drawn draws views and sections with the front view's corner at the origin.
func (p *partSheet) drawn(s Scale, where beside) (board, bool) {
	b := board{&sheet.Sheet{Stroke: narrow}, p.letters}
	long, high, wide := s.of(p.front.wide), s.of(p.front.high), s.of(p.plan.high)
	front, plan := p.stations(s, onFront), p.stations(s, onPlan)
	frontUp := max(b.rowHigh(front), b.uprightReach(high, p.deep()))
	below := p.underFront(s)
	planAt := at(0, high+frontUp+12)
	if p.making.Angle == First {
		planAt.Y = -below - 6 - max(b.rowHigh(plan), b.uprightReach(wide, p.wide()), 8) - wide
	}
	b.face(p, p.front, s, at(0, 0), front, withHidden)
	b.face(p, p.plan, s, planAt, plan, withHidden)
	b.level(0, long, -p.marksHigh(s)-6, 0, 0, p.long())
	b.caption(p.item, p.front, at(0, -below), long)
	b.caption(p.item, p.plan, at(0, planAt.Y-6), long)
	left := min(-9, firstSlot(plan, 0)-6, firstSlot(front, 0)-6)
	b.upright(0, high, left, 0, 0, p.deep())
	b.upright(planAt.Y, planAt.Y+wide, left, 0, 0, p.wide())
	aside := max(14, b.besideWide(p.acrossOf(s, onFront))+8)
	if figure := b.letters.Width(p.long(), small, sheet.Plain); long < figure+2 { // it stands beside its line, where the end view's name would
		aside = max(aside, 2*arrowLong+figure+b.letters.Width(p.item.FaceWords(p.end.face), small, sheet.Plain)/2)
	}
	endAt := at(long+aside, 0)
	b.paint(p.end, s, endAt, seenOnly)
	b.level(endAt.X, endAt.X+wide, -7, 0, 0, p.wide())
	b.middled(at(endAt.X+wide/2, -14), p.item.FaceWords(p.end.face), small, sheet.Plain)
	b.cutMarks(p, s)
	b.radii(p, s)
	return b, b.sections(p, s, where)
}

// firstSlot is where the words of a row begin, its end among them.
func firstSlot(all []station, zero Length) Length {
	if len(all) == 0 {
		return zero
	}
	return slots(ordered(append([]station{{place: zero, words: "0"}}, all...)))[0]
}

// face draws a view with its axes and its stations.
func (b board) face(p *partSheet, v view, s Scale, from form.Point, row []station, which inSight) {
	b.paint(v, s, from, which)
	b.axes(p.item, v, s, from)
	for k := range row {
		row[k].from += from.Y
	}
	if len(row) > 0 {
		top := from.Y + s.of(v.high)
		b.rowAbove(from.X, top, top+toLine, row)
	}
	kind := onPlan
	if v.face == parts.FirstSide {
		kind = onFront
	}
	if across := p.acrossOf(s, kind); len(across) > 0 {
		edge := from.X + s.of(v.wide)
		for k := range across {
			across[k].place += from.Y
			across[k].from = edge
		}
		b.rowBeside(from.Y, edge, edge+toLine, across)
	}
}

// besideWide is the room that a row takes up beside its view; 0 for none.
func (b board) besideWide(all []station) Length { return b.rowHigh(all) }

// long, wide and deep are the figures over all.
func (p *partSheet) long() string { return p.over(parts.AlongX, p.front.wide) }
func (p *partSheet) wide() string { return p.over(parts.AcrossY, p.plan.high) }
func (p *partSheet) deep() string { return p.over(parts.UpZ, p.front.high) }

// over is the figure of an extent, with the mark of the size it is.
func (p *partSheet) over(axis parts.Axis, l Length) string {
	for _, d := range p.item.Sizes {
		if (d.Axis == axis || d.Axis == parts.NoAxis) && math.Abs(float64(d.Value-l)) < 0.05 {
			return marked(p.v, l, d.Known)
		}
	}
	return figure(p.v, l)
}

// marksHigh is the room under the front view for the marks of sections.
func (p *partSheet) marksHigh(s Scale) Length {
	if len(p.sections) == 0 {
		return 2
	}
	return 10 + Length(slices.Max(p.letterRows(s)))*letterRow
}

// letterRow is from one row of the sections' letters to the next.
const letterRow = normal + 1.2

// letterRows are the rows, from 0 downward, that the sections' letters stand in: a
// letter goes down a row where one before it in its row stands too near.
func (p *partSheet) letterRows(s Scale) []int {
	const apart = Length(5)
	rows := make([]int, len(p.sections))
	for i, c := range p.sections {
		for k := 0; k < i; k++ {
			near := math.Abs(float64(s.of(c.station)-s.of(p.sections[k].station))) < float64(apart)
			if near && rows[k] == rows[i] {
				rows[i]++
				k = -1
			}
		}
	}
	return rows
}

// underFront is the room under the front view down to the caption's foot.
func (p *partSheet) underFront(s Scale) Length { return p.marksHigh(s) + 6 + 5.5 }

// caption names a view and its ends under it.
func (b board) caption(i *vehicle.Item, v view, from form.Point, long Length) {
	first, name, second := i.FaceWords(parts.FirstEnd), i.FaceWords(v.face), i.FaceWords(parts.SecondEnd)
	width := func(s string) Length { return b.letters.Width(s, small, sheet.Plain) }
	nameWide := b.letters.Width(name, small, sheet.Heavy)
	if width(first)+nameWide+width(second)+12 < long {
		b.say(from, first, small, sheet.Plain)
		b.say(at(from.X+long-width(second), from.Y), second, small, sheet.Plain)
	}
	b.middled(at(from.X+long/2, from.Y), name, small, sheet.Heavy)
}

// cutMarks draws on the front view where the sections are, and which way they look.
func (b board) cutMarks(p *partSheet, s Scale) {
	way := Length(-1) // the end view is seen from the second end
	if p.making.Angle == First {
		way = 1
	}
	high := s.of(p.front.high)
	rows := p.letterRows(s)
	for i, c := range p.sections {
		x := s.of(c.station)
		b.Straight(sheet.Plane, at(x, -0.8), at(x, -5.5))
		b.Straight(sheet.Plane, at(x, high+0.8), at(x, high+3.5))
		b.arrow(at(x+way*0.4, -4.6), way, 0)
		b.Straight(sheet.Narrow, at(x-way*4.5, -4.6), at(x, -4.6))
		b.middled(at(x, -6.6-normal-Length(rows[i])*letterRow), c.letter, normal, sheet.Heavy)
	}
}

// sections draws the sections in a row to the right of the views, or under them.
func (b board) sections(p *partSheet, s Scale, where beside) bool {
	if len(p.sections) == 0 {
		return where == atRight
	}
	box := b.bounds()
	x, foot := box.Max.X+8, Length(0)
	if where != atRight {
		x = box.Min.X
		most := Length(0)
		for _, c := range p.sections {
			_, _, _, up := c.room(b, p.v, p.item, c.scaleOf(s, where))
			most = max(most, up)
		}
		foot = box.Min.Y - 8 - most
	}
	for _, c := range p.sections {
		scale := c.scaleOf(s, where)
		left, right, _, _ := c.room(b, p.v, p.item, scale)
		b.section(p.v, p.item, c, scale, at(x+left, foot))
		x += left + right + 12
	}
	return true
}

// bounds is the box of all that is drawn and said.
func (b board) bounds() outline.Box {
	var box outline.Box
	first := true
	put := func(o outline.Box) {
		if first {
			box, first = o, false
		}
		box = box.With(o)
	}
	for _, l := range b.Lines {
		put(l.Bounds())
	}
	for _, w := range b.Words {
		put(w.Box())
	}
	return box
}

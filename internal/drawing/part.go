package drawing

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
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
	below := p.underFront()
	planAt := at(0, high+frontUp+12)
	if p.making.Angle == First {
		planAt.Y = -below - 6 - max(b.rowHigh(plan), b.uprightReach(wide, p.wide()), 8) - wide
	}
	b.face(p, p.front, s, at(0, 0), front, withHidden)
	b.face(p, p.plan, s, planAt, plan, withHidden)
	b.level(0, long, -p.marksHigh()-6, 0, 0, p.long())
	b.caption(p.item, p.front, at(0, -below), long)
	b.caption(p.item, p.plan, at(0, planAt.Y-6), long)
	left := min(-9, firstSlot(plan, 0)-6, firstSlot(front, 0)-6)
	b.upright(0, high, left, 0, 0, p.deep())
	b.upright(planAt.Y, planAt.Y+wide, left, 0, 0, p.wide())
	endAt := at(long+max(14, b.besideWide(p.acrossOf(s, onFront))+8), 0)
	b.paint(p.end, s, endAt, seenOnly)
	b.level(endAt.X, endAt.X+wide, -7, 0, 0, p.wide())
	b.middled(at(endAt.X+wide/2, -14), p.item.FaceWords(p.end.face), small, sheet.Plain)
	b.cutMarks(p, s)
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

// stations are the figures along a view; from is up from the view's foot.
func (p *partSheet) stations(s Scale, on seat) []station {
	var out []station
	for _, w := range p.works {
		if w.seat != on {
			continue
		}
		up := w.at.Z
		if on == onPlan {
			up = w.at.Y
		}
		from := s.of(up) + s.of(diameter(w.ops[0])/2)
		switch {
		case w.radial:
			from = s.of(radialFoot(p.item, w))
		case w.ops[0].Work != parts.Boring:
			from = s.of(map[seat]Length{onPlan: p.plan.high, onFront: p.front.high}[on])
		}
		out = append(out, station{s.of(w.at.X), from, w.brief(p.v, p.item)})
	}
	if on == onFront {
		out = append(out, p.stops(s)...)
	}
	return out
}

// radialFoot is how high the mouth of a hole towards a wheel's centre stands on
// the front view.
func radialFoot(i *vehicle.Item, w work) Length {
	for _, m := range i.Stick.Marks(parts.FirstSide) {
		if m.Ref == w.ops[0].Ref && m.Stroke == parts.Middle && len(m.Path) > 1 {
			if w.ops[0].Face == parts.Upper {
				return m.Path[len(m.Path)-1].Y
			}
			return m.Path[0].Y
		}
	}
	return 0
}

// stops are the stations where chamfers stop and shoulders stand.
func (p *partSheet) stops(s Scale) []station {
	var out []station
	top := s.of(p.front.high)
	put := func(x Length, dimension, words string) {
		words = marked(p.v, x, p.sureOf(dimension)) + "  " + words
		if !slices.ContainsFunc(out, func(o station) bool { return o.words == words }) {
			out = append(out, station{s.of(x), top, words})
		}
	}
	long, _, _ := p.item.Stick.Body.Box()
	for _, f := range p.item.Stick.Features {
		switch f := f.(type) {
		case parts.Chamfer:
			for _, x := range []Length{f.From, f.To} {
				if x > 0 {
					put(x, "chamfer-stop", "chamfer stops")
				}
			}
		case parts.Tenon:
			put(shoulder(f.End, f.Long, long), "tenon-long", "shoulder")
		case parts.RoundTenon:
			if _, straight := p.item.Stick.Body.(parts.Sawn); straight {
				put(shoulder(f.End, f.Long, long), "tenon-long", "shoulder")
			}
		}
	}
	return out
}

// sureOf is how the dimension of that name is known.
func (p *partSheet) sureOf(dimension string) quantity.Known {
	for _, d := range p.item.Sizes {
		if d.Name == dimension {
			return d.Known
		}
	}
	return quantity.Measured
}

func shoulder(end parts.Face, tenon, long Length) Length {
	if end == parts.FirstEnd {
		return tenon
	}
	return long - tenon
}

// acrossOf are the heights at which work stands on a view, from its foot.
func (p *partSheet) acrossOf(s Scale, on seat) []station {
	const alike = 0.3
	type level struct {
		at    Length
		words string
	}
	var all []level
	for _, w := range p.works {
		across, ok := w.acrossFrom()
		if !ok || w.seat != on || w.radial {
			continue
		}
		words := marked(p.v, across, w.across())
		if !slices.ContainsFunc(all, func(l level) bool { return math.Abs(float64(l.at-across)) < alike || l.words == words }) {
			all = append(all, level{across, words})
		}
	}
	var out []station
	for _, l := range all {
		out = append(out, station{place: s.of(l.at), words: l.words})
	}
	return out
}

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
func (p *partSheet) marksHigh() Length {
	if len(p.sections) == 0 {
		return 2
	}
	return 10
}

// underFront is the room under the front view down to the caption's foot.
func (p *partSheet) underFront() Length { return p.marksHigh() + 6 + 5.5 }

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
	for _, c := range p.sections {
		x := s.of(c.station)
		b.Straight(sheet.Plane, at(x, -0.8), at(x, -5.5))
		b.Straight(sheet.Plane, at(x, high+0.8), at(x, high+3.5))
		b.arrow(at(x+way*0.4, -4.6), way, 0)
		b.Straight(sheet.Narrow, at(x-way*4.5, -4.6), at(x, -4.6))
		b.middled(at(x, -6.6-normal), c.letter, normal, sheet.Heavy)
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

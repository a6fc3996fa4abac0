package drawing

import (
	"fmt"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// newBoard is an empty sheet of a paper with its frame: a bold line, and beside
// it fields of 50 mm, lettered and numbered from the upper left (ISO 5457).
func newBoard(l *sheet.Lettering, p Paper, name string) board {
	b := board{&sheet.Sheet{Name: name, Width: p.Width, Height: p.Height, Stroke: narrow}, l}
	f := p.frame()
	const band, field = Length(5), Length(50)
	b.Rect(sheet.Bold, f)
	b.Rect(sheet.Narrow, f.Grown(band))
	cut := func(from, to Length) []Length {
		middle := (from + to) / 2
		fields := int((to-from)/2/field) + 1
		places := []Length{from}
		for i := -fields + 1; i < fields; i++ {
			places = append(places, middle+Length(i)*field)
		}
		return append(places, to)
	}
	across := cut(f.Min.X, f.Max.X)
	for i := range across {
		if i > 0 && i < len(across)-1 {
			b.Straight(sheet.Narrow, at(across[i], f.Min.Y), at(across[i], f.Min.Y-band))
			b.Straight(sheet.Narrow, at(across[i], f.Max.Y), at(across[i], f.Max.Y+band))
		}
		if i > 0 && across[i]-across[i-1] > 6 {
			words := fmt.Sprint(i)
			b.middled(at((across[i]+across[i-1])/2, f.Min.Y-band+1.3), words, small, sheet.Plain)
			b.middled(at((across[i]+across[i-1])/2, f.Max.Y+1.3), words, small, sheet.Plain)
		}
	}
	down := cut(f.Min.Y, f.Max.Y)
	for i := range down {
		if i > 0 && i < len(down)-1 {
			b.Straight(sheet.Narrow, at(f.Min.X, down[i]), at(f.Min.X-band, down[i]))
			b.Straight(sheet.Narrow, at(f.Max.X, down[i]), at(f.Max.X+band, down[i]))
		}
		if i > 0 && down[i]-down[i-1] > 6 {
			words := string(rune('A' + len(down) - 1 - i))
			y := (down[i]+down[i-1])/2 - small/2
			b.middled(at(f.Min.X-band/2, y), words, small, sheet.Plain)
			b.middled(at(f.Max.X+band/2, y), words, small, sheet.Plain)
		}
	}
	return b
}

// A title is what the block in the lower right corner says (fields of ISO 7200).
type title struct {
	number, name, hand string
	kind               string // of drawing
	fields             []field
	scale              Scale
	angle              Angle
	page, of           int
}

// A field is one thing of the title, and what it is.
type field struct{ what, says string }

// The title's block: at most 180 mm wide, so that it fits A4 (ISO 7200).
const (
	titleWide Length = 180
	titleHigh Length = 52
	fieldHigh Length = 8.5
)

// title draws the block in the corner of a frame.
func (b board) title(f outline.Box, v *vehicle.Vehicle, t title) outline.Box {
	box := outline.Box{Min: at(f.Max.X-titleWide, f.Min.Y), Max: at(f.Max.X, f.Min.Y+titleHigh)}
	b.Rect(sheet.Wide, box)
	x, y := box.Min.X, box.Max.Y
	head := Length(18)
	b.Straight(sheet.Wide, at(x, y-head), at(box.Max.X, y-head))
	room := titleWide - 4
	if t.hand != "" {
		wide := b.letters.Width(t.hand, huge, sheet.Heavy)
		b.say(at(box.Max.X-wide-4, y-head+4), t.hand, huge, sheet.Heavy)
		room -= wide + 8
	}
	b.fitted(at(x+2, y-3.6), fmt.Sprintf("%s, issue %s", v.Name, v.Issue)+" · "+t.kind, small, sheet.Plain, room)
	b.fitted(at(x+2, y-head+4.6), t.name, large*1.4, sheet.Heavy, room)
	b.fields(at(x, y-head), t.fields)
	b.foot(box, v, t)
	return box
}

// fields draws two rows of fields down from a corner.
func (b board) fields(p form.Point, fields []field) {
	const columns = 4
	for i, f := range fields {
		x, y := p.X+Length(i%columns)*titleWide/columns, p.Y-Length(i/columns)*fieldHigh
		b.field(outline.Box{Min: at(x, y-fieldHigh), Max: at(x+titleWide/columns, y)}, f)
	}
}

func (b board) field(box outline.Box, f field) {
	b.Rect(sheet.Narrow, box)
	b.say(at(box.Min.X+1.2, box.Max.Y-2.6), f.what, tiny, sheet.Plain)
	b.fitted(at(box.Min.X+1.2, box.Min.Y+1.6), f.says, 3, sheet.Plain, box.Width()-2.4)
}

// foot is the title's last two rows: issue, page, scale and angle.
func (b board) foot(box outline.Box, v *vehicle.Vehicle, t title) {
	top := box.Min.Y + 2*fieldHigh
	x := box.Min.X
	put := func(x0, wide, y Length, f field) {
		b.field(outline.Box{Min: at(x0, y-fieldHigh), Max: at(x0+wide, y)}, f)
	}
	put(x, 30, top, field{"drawing", t.number})
	put(x+30, 15, top, field{"issue", v.Issue})
	put(x+45, 40, top, field{"date of issue", day(v)})
	put(x+85, 35, top, field{"survey", surveyMark(v)})
	put(x, 45, top-fieldHigh, field{"figures in", unitWords(v.Unit)})
	put(x+45, 40, top-fieldHigh, field{"sheet", fmt.Sprintf("%d of %d", t.page, t.of)})
	put(x+85, 35, top-fieldHigh, field{"approved", ""})
	b.Rect(sheet.Narrow, outline.Box{Min: at(x+120, box.Min.Y), Max: at(x+150, top)})
	b.say(at(x+121.2, top-2.6), "scale", tiny, sheet.Plain)
	b.middled(at(x+135, box.Min.Y+5), t.scale.String(), large, sheet.Heavy)
	b.say(at(x+151.2, top-2.6), t.angle.String()+" angle", tiny, sheet.Plain)
	b.symbol(t.angle, at(x+157, box.Min.Y+2.8))
}

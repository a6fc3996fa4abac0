package drawing

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// put draws all of another board, moved.
func (b board) put(o board, by form.Point) {
	for _, l := range o.Lines {
		run := make([]form.Vertex, len(l.Run))
		for i, v := range l.Run {
			run[i] = form.Vertex{Point: at(v.X+by.X, v.Y+by.Y), Bulge: v.Bulge}
		}
		l.Run = run
		b.Lines = append(b.Lines, l)
	}
	for _, w := range o.Words {
		w.At = at(w.At.X+by.X, w.At.Y+by.Y)
		b.Words = append(b.Words, w)
	}
}

// finished puts views, tables and titles on sheets.
func (p *partSheet) finished(d board, box outline.Box, s Scale) ([]sheet.Sheet, error) {
	paper := p.making.Paper
	frame := paper.frame()
	var boards []board
	more := func() (board, []outline.Box) {
		b := newBoard(p.letters, paper, fmt.Sprintf("%s sheet %d", number(p.item), len(boards)+1))
		boards = append(boards, b)
		return b, columns(frame, frame.Max.Y-air)
	}
	b, _ := more()
	b.put(d, at(frame.Min.X+air-box.Min.X, frame.Max.Y-air-box.Max.Y))
	views := outline.Box{Min: at(frame.Min.X, frame.Max.Y-2*air-box.Height()), Max: at(frame.Min.X+2*air+box.Width(), frame.Max.Y)}
	f := newFlow(b, beyond(frame, views), more)
	f.table(p.known())
	f.table(workTable(p.v, p.item, p.works))
	f.notes("Notes", p.remarks())
	var out []sheet.Sheet
	for k, b := range boards {
		b.title(frame, p.v, p.title(s, k+1, len(boards)))
		out = append(out, *b.Sheet)
	}
	return out, nil
}

// leastColumn is the narrowest column that tables are set in.
const leastColumn Length = 165

// columns are the regions for tables on a sheet, above and beside its title, from a height down.
func columns(frame outline.Box, top Length) []outline.Box {
	var out []outline.Box
	x := frame.Min.X + air
	title := frame.Max.X - titleWide
	foot := frame.Min.Y + titleHigh + air
	if room := title - air - x; room >= leastColumn {
		n := Length(math.Floor(float64(room / (leastColumn + air))))
		n = max(n, 1)
		wide := (room - (n-1)*air) / n
		for k := range int(n) {
			left := x + Length(k)*(wide+air)
			out = append(out, outline.Box{Min: at(left, frame.Min.Y+air/2), Max: at(left+wide, top)})
		}
		x = title
	}
	return append(out, outline.Box{Min: at(max(x, title), foot-air/2), Max: at(frame.Max.X-air/2, top)})
}

// beyond are the regions left for tables on the first sheet: under the views, and
// to their right.
func beyond(frame, views outline.Box) []outline.Box {
	var out []outline.Box
	for _, c := range columns(frame, frame.Max.Y-air) {
		if c.Min.X < views.Max.X {
			c.Max.Y = min(c.Max.Y, views.Min.Y)
		}
		const least = 24
		if c.Height() > least {
			out = append(out, c)
		}
	}
	return out
}

// known is the table of how every size is known.
func (p *partSheet) known() table {
	t := table{title: "How we know", columns: []column{
		{"size", 0.17}, {"value", 0.16}, {"give or take", 0.15}, {"how we know", 0.17}, {"what says so", 0.35},
	}}
	for _, d := range p.item.Sizes {
		r := row{cells: []string{
			strings.ReplaceAll(d.Name, "-", " "), figure(p.v, d.Value), giveOrTake(d.Size, p.v.Unit), d.Known.String(), d.By,
		}}
		if guessed(d.Known) {
			r.cells[1] = marked(p.v, d.Value, d.Known)
			r.cells[3] = "[" + strings.ToUpper(d.Known.String()) + "]"
		}
		t.rows = append(t.rows, r)
	}
	return t
}

// remarks are the notes of a part's sheet.
func (p *partSheet) remarks() []string {
	var out []string
	if f, ok := p.item.Shape.(parts.Felloe); ok {
		out = append(out, p.ofFelloe(f)...)
	}
	if b, ok := p.item.Stick.Body.(parts.Bent); ok {
		out = append(out, fmt.Sprintf("Bent from straight stock %s long along its middle line.", figure(p.v, b.Middle.Long())))
	}
	out = append(out, edges(p.v, p.item)...)
	out = append(out, acrossNote(p.item, p.works)...)
	out = append(out, p.item.Notes...)
	if p.item.Hand != vehicle.Alike {
		out = append(out, fmt.Sprintf("For the %s side, near being the left looking forward. The other hand has a sheet of its own.", p.item.Hand))
	}
	guess := false
	for _, d := range p.item.Sizes {
		guess = guess || guessed(d.Known)
	}
	if guess {
		out = append(out, "Figures in brackets are guesses: settle them before cutting.")
	}
	return append(out,
		"Finished sizes in service. Offer up to the irons before boring; do not scale from the paper.",
		"Extract wood dust and wear a mask that fits; keep guards on. Local codes and licensed practice come first.")
}

func (p *partSheet) ofFelloe(f parts.Felloe) []string {
	turn := 360 / float64(f.Felloes)
	words := fmt.Sprintf("%d felloes to the rim, each %.4g° of it. Back to radius %s, belly to radius %s.",
		f.Felloes, turn, figure(p.v, f.Radius), figure(p.v, f.Radius-f.Deep))
	out := []string{words}
	if f.Spokes > 0 && f.Spokes%f.Felloes == 0 {
		each := f.Spokes / f.Felloes
		out = append(out, fmt.Sprintf("%s to each felloe, %.4g° apart, set out from the middle.", counted(each, "spoke"), 360/float64(f.Spokes)))
	}
	return append(out, "Grain along the chord.")
}

// title is what the block says of a part.
func (p *partSheet) title(s Scale, page, of int) title {
	i := p.item
	long, wide, deep := i.Stick.Body.Box()
	box := figure(p.v, long) + " × " + figure(p.v, wide) + " × " + figure(p.v, deep)
	sawn := "not told"
	if p.making.Sawn != nil {
		sawn = p.making.Sawn(i)
	}
	return title{
		number: number(i), name: fmt.Sprintf("%d  %s", i.Number, i.Name), hand: handWord(i.Hand), kind: "part drawing",
		fields: []field{
			{"timber", i.Timber},
			{"number off", strings.TrimSpace(fmt.Sprintf("%d %s", i.NumberOff, handWord(i.Hand)))},
			{"status", i.Status.String()},
			{"kind", i.Kind},
			{"over all, finished", box},
			{"sawn size", sawn},
			{"service moisture", moisture(p.v)},
			{"weakest size", weakest(i)},
		},
		scale: s, angle: p.making.Angle, page: page, of: of,
	}
}

func moisture(v *vehicle.Vehicle) string {
	if v.Moisture.Service == 0 {
		return ""
	}
	return fmt.Sprintf("%.3g %%", float64(v.Moisture.Service))
}

// weakest tells how the least sure of a part's sizes is known.
func weakest(i *vehicle.Item) string {
	worst := quantity.Measured
	name := ""
	for _, d := range i.Sizes {
		if name == "" || d.Known > worst {
			worst, name = d.Known, d.Name
		}
	}
	if name == "" {
		return ""
	}
	return strings.ReplaceAll(name, "-", " ") + ": " + worst.String()
}

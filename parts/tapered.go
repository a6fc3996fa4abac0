package parts

import (
	"errors"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Tapered is the oval that a spoke is shaved to: from its square, which stands
// a little above it all round, evenly to its tip.
type Tapered struct {
	ID                string
	From, To          Length // stations along the part: where the square ends, and the tip's shoulder in the middle
	TipWide, TipThick Length // the oval at To: up and across
	Slant             Angle  // of the shoulder at To; see Foot
}

// Ref is as in Feature.
func (t Tapered) Ref() string { return t.ID }

// oval is the piece that is left standing, from its square end to a station beyond its tip.
func (t Tapered) oval(b Body, to Length) form.Oval {
	_, wide, deep := b.Box()
	o := form.Oval{
		// W runs along x: U is y, V is z.
		Frame: form.Frame{Origin: form.Vec{Y: wide / 2, Z: deep / 2}, U: form.Dir{Y: 1}, V: form.Dir{Z: 1}},
		From:  t.From, To: t.To,
		First: form.Ellipse{U: wide/2 - stands, V: deep/2 - stands},
		Last:  form.Ellipse{U: t.TipThick / 2, V: t.TipWide / 2},
	}
	first, last := o.Section(t.From-overrun), o.Section(to)
	o.From, o.To, o.First, o.Last = t.From-overrun, to, first, last
	return o
}

// margin is how far the shaving goes past the middle of the tip's shoulder.
func (t Tapered) margin(b Body) Length {
	_, _, deep := b.Box()
	out := slantedAt(b, 0, t.Slant, deep)
	return max(out, -out) + 1
}

// past is how far the oval goes on beyond what is shaved: no farther, since a spoke
// that tapers fast would come to nothing there.
const past Length = .5

// Cuts is as in Feature.
func (t Tapered) Cuts(b Body) []form.Volume {
	long, wide, deep := b.Box()
	end := min(t.To+t.margin(b), long-1)
	around := form.Prism{
		Frame: FirstSide.Frame(b), From: -wide - overrun, To: overrun,
		Profile: form.Rectangle(form.Point{X: t.From, Y: -overrun}, form.Point{X: end, Y: deep + overrun}),
	}
	return []form.Volume{form.Difference{From: around, Cut: []form.Volume{t.oval(b, end+past)}}}
}

// Marks is as in Feature: on each long face where the square ends, and the
// oval's outline.
func (t Tapered) Marks(b Body, f Face) []Mark {
	if f.isEnd() || !f.known() {
		return nil
	}
	_, wide, deep := b.Box()
	across, tip := wide, t.TipThick
	if f == FirstSide || f == SecondSide {
		across, tip = deep, t.TipWide
	}
	tops, ends := t.To, t.To
	if f == FirstSide || f == SecondSide {
		tops = slantedAt(b, t.To, t.Slant, deep/2+tip/2)
		ends = slantedAt(b, t.To, t.Slant, deep/2-tip/2)
		if f == SecondSide { // its paper has z downwards
			tops, ends = ends, tops
		}
	}
	mid := across / 2
	half := func(x Length) Length {
		return (across/2 - stands) + (tip/2-across/2+stands)*(x-t.From)/(t.To-t.From)
	}
	outline := form.Polygon(
		form.Point{X: t.From, Y: mid - half(t.From)}, form.Point{X: ends, Y: mid - half(ends)},
		form.Point{X: tops, Y: mid + half(tops)}, form.Point{X: t.From, Y: mid + half(t.From)})
	square := Mark{Ref: t.ID, Work: Rounding, Stroke: Seen, Label: "square ends", Path: form.Path(form.Polygon(
		form.Point{X: t.From}, form.Point{X: t.From, Y: across}))}
	return []Mark{square, closed(t.ID, Rounding, Seen, outline, "oval")}
}

// Operations is as in Feature.
func (t Tapered) Operations(b Body) []Operation {
	_, wide, _ := b.Box()
	return []Operation{{
		Ref: t.ID, Work: Rounding, What: "shave to an oval from the square to the tongue", Face: Upper,
		At: form.Point{X: (t.From + t.To) / 2, Y: wide / 2},
		Sizes: measured(
			Measure{"wide at the tongue", t.TipWide}, Measure{"thick at the tongue", t.TipThick}, Measure{"long", t.To - t.From}),
		Note: "fair the square into it by eye",
	}}
}

// Check is as in Feature.
func (t Tapered) Check(b Body) error {
	if _, square := b.(Sawn); !square {
		return errors.New(t.ID + ": an oval is shaved out of squared wood")
	}
	long, wide, deep := b.Box()
	l := limits{}
	l.need(t.ID+" from", t.From, 0, long-2, "it must lie on the wood")
	l.need(t.ID+" to", t.To, t.From+1, long-1, "it must lie on the wood")
	l.need(t.ID+" wide", t.TipWide, 1, deep-2*stands, "it tapers to the tip")
	l.need(t.ID+" thick", t.TipThick, 1, wide-2*stands, "it tapers to the tip")
	return l.all()
}

// Mirrored is as in Feature: it is alike both ways.
func (t Tapered) Mirrored(Body) Feature { return t }

func (t Tapered) removed(b Body) quantity.Volume {
	_, wide, deep := b.Box()
	o := t.oval(b, t.To)
	first, last := o.Section(t.From), o.Section(t.To)
	o.From, o.To, o.First, o.Last = t.From, t.To, first, last
	return (t.To - t.From).Times(deep).Deep(wide) - o.Content()
}

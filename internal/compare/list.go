package compare

import (
	"fmt"
	"io"
	"math"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Write writes a comparison and the files that are stale by it.
func (c *Comparison) Write(w io.Writer, stale []Stale, f listing.Format) error {
	if f != listing.Table {
		return c.rows(stale).Write(w, f)
	}
	for _, l := range []*listing.List{c.changes(), c.falls(), c.files(stale)} {
		if err := l.Write(w, listing.Table); err != nil {
			return err
		}
	}
	return nil
}

func (c *Comparison) title() string {
	if c.Old.Name != c.New.Name {
		return fmt.Sprintf("%s, issue %s, against %s, issue %s: two vehicles, or one renamed", c.Old.Name, c.Old.Issue, c.New.Name, c.New.Issue)
	}
	if c.Old.Issue == c.New.Issue && c.Old.Hash != c.New.Hash {
		return fmt.Sprintf("%s: two surveys that are both issue %s; give the later one a letter of its own", c.New.Name, c.New.Issue)
	}
	return fmt.Sprintf("%s: issue %s against issue %s", c.New.Name, c.Old.Issue, c.New.Issue)
}

// changes lists what is otherwise.
func (c *Comparison) changes() *listing.List {
	l := &listing.List{Title: c.title(), Columns: []listing.Column{
		{Head: "Part"}, {Head: "What"}, {Head: "Was"}, {Head: "Is"}, {Head: "Moved by", Align: listing.Right}, {Head: "Against its give or take"},
	}}
	for _, ch := range c.Moved {
		was, is := c.words(ch)
		l.Rows = append(l.Rows, cells(ch.Name, ch.What, was, is, c.moved(ch), against(ch)))
	}
	if len(c.Moved) == 0 {
		l.Columns = []listing.Column{{Head: "Nothing that is made is otherwise by as much as a scribed line."}}
	}
	l.Foot = append(l.Foot, "")
	return l
}

// words are what stood and stands there.
func (c *Comparison) words(ch Change) (was, is string) {
	switch ch.Way {
	case Added:
		return "not there", "there"
	case Gone:
		return "there", "not there"
	case Altered:
		return ch.Said, ch.Says
	}
	return sized(ch.Was, c.Old.Unit), sized(ch.Is, c.New.Unit)
}

func sized(s quantity.Size, u quantity.Unit) string {
	if s.Known == quantity.Unknown {
		return "not known"
	}
	return s.Words(u) + ", " + s.Known.String()
}

func (c *Comparison) moved(ch Change) string {
	by := ch.By()
	if ch.Way != Moved || math.IsNaN(float64(by)) {
		return ""
	}
	sign := "+"
	if by < 0 {
		sign, by = "-", -by
	}
	return sign + quantity.Format(by, c.New.Unit)
}

// against says how far a size has moved in words.
func against(ch Change) string {
	if ch.Way == Rested {
		return "the same size, but less sure: " + ch.Is.Known.String()
	}
	if ch.Way != Moved {
		return ""
	}
	switch r := ch.Against(); {
	case math.IsNaN(r):
		return ""
	case r < 0.5:
		return "well within it"
	case r < 2:
		return "about as much"
	default:
		return fmt.Sprintf("%.0f times as much: look why", r)
	}
}

// falls lists what was settled and must be looked at again.
func (c *Comparison) falls() *listing.List {
	l := &listing.List{Columns: []listing.Column{{Head: "Part"}, {Head: "Was"}, {Head: "Now"}, {Head: "Because of"}}}
	for _, f := range c.Falls {
		l.Rows = append(l.Rows, cells(f.Name, f.Had.String(), f.now(), few(f.Why)))
	}
	if len(c.Falls) == 0 {
		l.Columns = []listing.Column{{Head: "Every part that was approved or made still stands as it did."}}
	}
	l.Foot = append(l.Foot, "")
	return l
}

// now says what becomes of a part that was settled.
func (f Fall) now() string {
	if f.Had == vehicle.Approved {
		return "proposed: ask again"
	}
	return "offer up what was made"
}

// files lists what is stale.
func (c *Comparison) files(stale []Stale) *listing.List {
	l := &listing.List{Columns: []listing.Column{{Head: "File of issue " + c.Old.Issue + " to call back"}, {Head: "Who has it"}, {Head: "Why"}}}
	for _, s := range stale {
		l.Rows = append(l.Rows, cells(s.Path, s.Holder, s.Why))
	}
	if len(stale) == 0 {
		l.Columns = []listing.Column{{Head: "No file need be called back."}}
	}
	return l
}

// rows lists all three for programs.
func (c *Comparison) rows(stale []Stale) *listing.List {
	l := &listing.List{}
	for _, k := range []string{"about", "part", "what", "way", "was", "is", "was_mm", "is_mm", "moved_mm", "against_give_or_take", "holder", "why"} {
		l.Columns = append(l.Columns, listing.Column{Key: k})
	}
	for _, ch := range c.Moved {
		was, is := c.words(ch)
		l.Rows = append(l.Rows, cells("change", ch.Part, ch.What, ch.Way.String(), was, is,
			millimetres(ch, ch.Was), millimetres(ch, ch.Is), millimetres(ch, quantity.Size{Value: ch.By()}), listing.Rounded(ch.Against(), 2), nil, nil))
	}
	for _, f := range c.Falls {
		l.Rows = append(l.Rows, cells("approval", f.Part, nil, "falls", f.Had.String(), f.now(), nil, nil, nil, nil, nil, few(f.Why)))
	}
	for _, s := range stale {
		l.Rows = append(l.Rows, cells("file", nil, s.Path, "stale", nil, nil, nil, nil, nil, nil, s.Holder, s.Why))
	}
	return l
}

// String is the word for programs.
func (w Way) String() string {
	return [...]string{"moved", "rests on less", "added", "gone", "altered"}[w]
}

// millimetres is a size of a change that has one.
func millimetres(ch Change, s quantity.Size) any {
	if (ch.Way != Moved && ch.Way != Rested) || s.Known == quantity.Unknown {
		return nil
	}
	return listing.Rounded(s.Value.Millimetres(), 3)
}

func cells(values ...any) []listing.Cell {
	var out []listing.Cell
	for _, v := range values {
		out = append(out, listing.Cell{Value: v})
	}
	return out
}

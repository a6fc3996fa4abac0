package smith

import (
	"fmt"
	"io"
	"math"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
)

// Write writes the list: for people as a table with what each piece wants below
// it, for programs as one row a piece.
func (l *List) Write(w io.Writer, f listing.Format) error {
	if f != listing.Table {
		return l.rows().Write(w, f)
	}
	if len(l.Pieces) == 0 {
		_, err := fmt.Fprintf(w, "%s, issue %s: no iron is missing, as far as the survey says.\n"+
			"An iron that is lost is written like any other, with missing = \"all\", \"near\" or \"off\".\n", l.Vehicle.Name, l.Vehicle.Issue)
		return err
	}
	if err := l.table().Write(w, listing.Table); err != nil {
		return err
	}
	var b strings.Builder
	for _, p := range l.Pieces {
		b.WriteString(l.words(p))
	}
	b.WriteString("\nCautions:\n")
	for _, c := range l.Cautions {
		fmt.Fprintf(&b, "  - %s\n", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (l *List) show(x Length) string { return quantity.Format(x, l.Vehicle.Unit) }

func (l *List) table() *listing.List {
	t := &listing.List{
		Title: fmt.Sprintf("%s, issue %s: iron to make or buy", l.Vehicle.Name, l.Vehicle.Issue),
		Columns: []listing.Column{
			{Head: "No.", Align: listing.Right},
			{Head: "Iron"},
			{Head: "Off", Align: listing.Right},
			{Head: "Out of"},
			{Head: "Cut", Align: listing.Right},
			{Head: "Each weighs", Align: listing.Right},
			{Head: "Settle first"},
		},
	}
	var all quantity.Mass
	for _, p := range l.Pieces {
		cut, first := l.show(p.Cut), ""
		if p.Cut == 0 {
			cut = ""
		}
		if len(p.Open) > 0 {
			first = "see below"
		}
		t.Rows = append(t.Rows, cells(p.Number, p.Name, p.NumberOff, p.Stock, cut, weight(p.Each), first))
		all += p.Mass()
	}
	t.Foot = []string{"", fmt.Sprintf("All together %s, as far as they can be weighed. Cut is the bar before bending; of a bolt to buy, under its head.", weight(all))}
	return t
}

func weight(m quantity.Mass) string {
	if m == 0 {
		return ""
	}
	return fmt.Sprintf("%.2f kg (%.1f lb)", float64(m), m.Pounds())
}

// words tells all about one piece.
func (l *List) words(p *Piece) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n%d. %s, %d off, %s\n", p.Number, p.Name, p.NumberOff, p.Stock)
	line := func(head, s string) {
		if s != "" {
			fmt.Fprintf(&b, "   %s: %s\n", head, s)
		}
	}
	if which := strings.Join(p.Of, "; "); which != p.Name {
		line("Which", which)
	}
	line("Must fit", strings.Join(p.Fits, ", "))
	line("Sizes", l.sizes(p))
	line("Length", l.sum(p))
	for _, r := range p.Rules {
		line("By rule", fmt.Sprintf("%s: %s (%s)", r.Name, l.show(r.Cut), r.Source))
	}
	for k, h := range p.Holes {
		line(fmt.Sprintf("Hole %d", k+1), l.hole(h))
	}
	for _, s := range p.Steps {
		line("Crank", fmt.Sprintf("%s from its first end, by %s", l.show(s.At), l.show(s.By)))
	}
	for _, o := range p.Open {
		line("Settle first", o)
	}
	for _, n := range p.Notes {
		line("Note", n)
	}
	return b.String()
}

func (l *List) sizes(p *Piece) string {
	var out []string
	for _, d := range p.Sizes {
		s := d.Name + " " + d.Words(l.Vehicle.Unit)
		if d.Doubt > 0 && d.Known != quantity.Unknown {
			s += " (" + d.Known.String() + ")"
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

func (l *List) sum(p *Piece) string {
	if p.Cut == 0 {
		return ""
	}
	var out []string
	for _, a := range p.Sum {
		if a.Value != 0 {
			out = append(out, a.What+" "+l.show(a.Value))
		}
	}
	return l.show(p.Cut) + " = " + strings.Join(out, " + ")
}

func (l *List) hole(h Hole) string {
	shape := "diameter " + l.show(h.Diameter)
	switch {
	case h.Diameter == 0:
		shape = "its size is not told"
	case h.Square:
		shape = "square, " + l.show(h.Diameter) + ", for the bolt's neck"
	}
	return fmt.Sprintf("%s from its first end (%s), %s; for %s", h.At.Words(l.Vehicle.Unit), h.At.Known, shape, h.For)
}

// rows lists the pieces for programs.
func (l *List) rows() *listing.List {
	t := &listing.List{}
	for _, k := range []string{"number", "iron", "work", "number_off", "which", "stock", "cut_mm", "holes_mm", "hole_diameters_mm", "each_kg", "fits", "settle_first", "notes"} {
		t.Columns = append(t.Columns, listing.Column{Key: k})
	}
	for _, p := range l.Pieces {
		var at, wide []string
		for _, h := range p.Holes {
			at, wide = append(at, fmt.Sprintf("%.2f", h.At.Value)), append(wide, fmt.Sprintf("%.2f", h.Diameter))
		}
		t.Rows = append(t.Rows, cells(p.Number, p.Name, p.Work.String(), p.NumberOff, strings.Join(p.Of, "; "), p.Stock, orNone(float64(p.Cut), 2),
			strings.Join(at, " "), strings.Join(wide, " "), orNone(float64(p.Each), 3), strings.Join(p.Fits, "; "), strings.Join(p.Open, "; "), strings.Join(p.Notes, "; ")))
	}
	return t
}

func orNone(v float64, decimals int) float64 {
	if v == 0 {
		return math.NaN()
	}
	return listing.Rounded(v, decimals)
}

func cells(values ...any) []listing.Cell {
	var out []listing.Cell
	for _, v := range values {
		out = append(out, listing.Cell{Value: v})
	}
	return out
}

package fit

import (
	"fmt"
	"io"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// RemarksList is a row for each remark, in order.
func RemarksList(v *vehicle.Vehicle, rs []vehicle.Remark) *listing.List {
	l := &listing.List{
		Title: fmt.Sprintf("%s, issue %s: offered up", v.Name, v.Issue),
		Columns: []listing.Column{
			{Key: "gravity", Head: "How grave"},
			{Key: "check", Head: "Check"},
			{Key: "about", Head: "About"},
			{Key: "number", Head: "Of them", Align: listing.Right},
			{Key: "measured", Head: "Found", Align: listing.Right},
			{Key: "limit", Head: "Against", Align: listing.Right},
			{Key: "unit"},
			{Key: "says"},
			{Key: "do"},
			{Key: "basis"},
			{Key: "x_mm"},
			{Key: "y_mm"},
			{Key: "z_mm"},
			{Key: "parts"},
			{Key: "things"},
			{Key: "alike"},
		},
	}
	for _, r := range rs {
		row := []listing.Cell{
			{Value: r.Gravity.String()},
			{Value: r.Check},
			{Value: r.Subject},
			{Value: max(r.Number, 1)},
			figure(r.Measured, v.Unit), figure(r.Limit, v.Unit),
			{Value: unitOf(r)},
			{Value: r.Says},
			{Value: r.Do},
			{Value: r.Basis},
		}
		for i := range 3 {
			c := listing.Cell{}
			if r.Place != nil {
				c.Value = listing.Rounded(r.Place[i].Millimetres(), 1)
			}
			row = append(row, c)
		}
		l.Rows = append(l.Rows, append(row,
			listing.Cell{Value: strings.Join(r.Parts, "; ")}, listing.Cell{Value: strings.Join(r.Things, "; ")}, listing.Cell{Value: strings.Join(r.Alike, "; ")}))
	}
	return l
}

func figure(f vehicle.Figure, u quantity.Unit) listing.Cell {
	if f.Of == vehicle.NoMeasure {
		return listing.Cell{}
	}
	return listing.Cell{Value: listing.Rounded(f.Value, 3), Words: f.Words(u)}
}

func unitOf(r vehicle.Remark) string {
	if r.Measured.Of == vehicle.NoMeasure {
		return r.Limit.Of.Symbol()
	}
	return r.Measured.Of.Symbol()
}

// wide is how many letters a line of the report holds.
const wide = 100

// Shown says how much a report for people shows.
type Shown int

// How much.
const (
	Short Shown = iota // what fails and what to look at
	Full               // what is noted too
)

// Write writes the report for people: what fails, what to look at, worst first.
func Write(w io.Writer, v *vehicle.Vehicle, r *Report, how Shown) error {
	var b strings.Builder
	n := r.Counts
	fmt.Fprintf(&b, "%s, issue %s: offered up\n", v.Name, v.Issue)
	fmt.Fprintf(&b, "%d timbers, %d irons and %d fastenings in their places; %d neighbours looked at; %d moves.\n", n.Timbers, n.Irons, n.Fastenings, n.Pairs, n.Moves)
	if len(n.Unplaced) > 0 {
		fold(&b, "Not looked at, because nothing says where they stand or how large they are: "+listed(n.Unplaced)+".", "  ")
	}
	for _, g := range []vehicle.Gravity{vehicle.CannotGo, vehicle.LookAt, vehicle.Noted} {
		rs := of(r.Remarks, g)
		fmt.Fprintf(&b, "\n%s: %s\n", capital(g.String()), countWord(len(rs)))
		if g == vehicle.Noted && how == Short {
			if len(rs) > 0 {
				b.WriteString("  (lostwood offer --all tells them)\n")
			}
			continue
		}
		for i, m := range rs {
			paragraph(&b, i+1, m, v.Unit)
		}
	}
	fmt.Fprintf(&b, "\nLeave on, or unbored, until offered up: %s (lostwood offer --leave)\n", countWord(len(r.Leave)))
	fmt.Fprintf(&b, "Going together: %d steps (lostwood offer --order); bolts to buy: lostwood offer --bolts; loads: lostwood offer --loads\n", len(r.Steps))
	b.WriteString("\n" + caution)
	_, err := io.WriteString(w, b.String())
	return err
}

const caution = `These are figures to work by, not a judgement that anything is safe. Irons are taken as plain
bars with their holes. Have a competent wheelwright or engineer judge what carries people, loads
or a horse's pull; local rules for vehicles on roads come first.
`

func countWord(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

func of(rs []vehicle.Remark, g vehicle.Gravity) []vehicle.Remark {
	var out []vehicle.Remark
	for _, r := range rs {
		if r.Gravity == g {
			out = append(out, r)
		}
	}
	return out
}

// paragraph writes one remark: what it is, what was found, what to do.
func paragraph(b *strings.Builder, n int, r vehicle.Remark, u quantity.Unit) {
	head := fmt.Sprintf("%2d. %s: %s", n, strings.ToUpper(r.Check), r.Subject)
	if len(r.Alike) > 0 {
		head += fmt.Sprintf(" (the worst of %d; also %s)", r.Number, strings.Join(r.Alike, "; "))
	}
	fold(b, head, "    ")
	fold(b, "    "+r.Says, "    ")
	if r.Do != "" {
		fold(b, "    -> "+r.Do, "       ")
	}
	var tail []string
	if m, l := r.Measured.Words(u), r.Limit.Words(u); m != "" && l != "" {
		tail = append(tail, fmt.Sprintf("found %s against %s", m, l))
	}
	if r.Basis != "" {
		tail = append(tail, "by "+r.Basis)
	}
	if r.Place != nil {
		tail = append(tail, "at "+whereWords(*r.Place, u))
	}
	if len(tail) > 0 {
		fold(b, "    ("+strings.Join(tail, "; ")+")", "     ")
	}
}

// whereWords tells a place as one would point at it.
func whereWords(p vehicle.Spot, u quantity.Unit) string {
	say := func(l quantity.Length, more, less string) string {
		if l < 0 {
			return quantity.Format(-l, u) + " " + less
		}
		return quantity.Format(l, u) + " " + more
	}
	return say(p[0], "before zero", "behind zero") + ", " + say(p[1], "to near", "to off") + ", " + say(p[2], "up", "below zero")
}

// fold breaks a line at blanks.
func fold(b *strings.Builder, s, indent string) {
	line := ""
	for i, w := range strings.Fields(s) {
		if i == 0 {
			lead := s[:len(s)-len(strings.TrimLeft(s, " "))]
			line = lead + w
			continue
		}
		if len([]rune(line))+1+len([]rune(w)) > wide {
			b.WriteString(line + "\n")
			line = indent + w
			continue
		}
		line += " " + w
	}
	b.WriteString(line + "\n")
}

// LeaveList is a row for each piece of wood to leave on, or hole to leave unbored.
func LeaveList(v *vehicle.Vehicle, r *Report) *listing.List {
	l := &listing.List{
		Title: fmt.Sprintf("%s, issue %s: leave until offered up", v.Name, v.Issue),
		Columns: []listing.Column{
			{Key: "no", Head: "No.", Align: listing.Right},
			{Key: "part", Head: "Part"},
			{Key: "hand", Head: "Hand"},
			{Key: "what", Head: "What"},
			{Key: "by_mm", Head: "May be off by", Align: listing.Right},
			{Key: "fit_allows_mm", Head: "Fit allows", Align: listing.Right},
			{Key: "until", Head: "Until held to"},
			{Key: "says"},
		},
		Foot: []string{"", "May be off by: nineteen times in twenty no more than this."},
	}
	for _, e := range r.Leave {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: e.Part.Number},
			{Value: e.Part.Name},
			{Value: e.Part.Hand.String()},
			{Value: e.What},
			length(e.By, v.Unit), length(e.Allows, v.Unit),
			{Value: e.Until},
			{Value: e.Says},
		})
	}
	return l
}

func length(l quantity.Length, u quantity.Unit) listing.Cell {
	if l == 0 {
		return listing.Cell{}
	}
	return listing.Cell{Value: listing.Rounded(l.Millimetres(), 2), Words: quantity.Format(l, u)}
}

// BoltsList is a row for each bolt: what it is to hold, and what to buy.
func BoltsList(v *vehicle.Vehicle, r *Report) *listing.List {
	l := &listing.List{
		Title: fmt.Sprintf("%s, issue %s: bolts", v.Name, v.Issue),
		Columns: []listing.Column{
			{Key: "fastening", Head: "Fastening"},
			{Key: "what", Head: "What"},
			{Key: "diameter_mm", Head: "Diameter", Align: listing.Right},
			{Key: "head", Head: "Head"},
			{Key: "grip_mm", Head: "Grips", Align: listing.Right},
			{Key: "washer_mm", Head: "Washer", Align: listing.Right},
			{Key: "nut_mm", Head: "Nut", Align: listing.Right},
			{Key: "needs_mm", Head: "Needs", Align: listing.Right},
			{Key: "buy_mm", Head: "Buy", Align: listing.Right},
			{Key: "thread_mm", Head: "Thread, at least", Align: listing.Right},
			{Key: "old_mm", Head: "The old one", Align: listing.Right},
		},
		Foot: []string{
			"", "Needs: grip, washer, nut and one thread past it. Buy: the next length that is sold; blank where it has to be made.",
			"Measure the nuts and washers that you will use: old ones are thicker than new ones.",
		},
	}
	for _, b := range r.Bolts {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: b.Fastening},
			{Value: b.What},
			length(b.Diameter, v.Unit),
			{Value: b.Head.String()},
			length(b.Grip, v.Unit), length(b.Washer, v.Unit),
			length(b.Nut, v.Unit), length(b.Need, v.Unit), length(b.Stock, v.Unit), length(b.Thread, v.Unit), length(b.Old, v.Unit),
		})
	}
	return l
}

// StepsList is a row for each step of going together.
func StepsList(v *vehicle.Vehicle, r *Report) *listing.List {
	return &listing.List{
		Title: fmt.Sprintf("%s, issue %s: going together", v.Name, v.Issue),
		Columns: []listing.Column{
			{Key: "step", Head: "Step", Align: listing.Right}, {Key: "bring", Head: "Bring"}, {Key: "fasten", Head: "Fasten"}, {Key: "prime", Head: "Prime first"}, {Key: "heed", Head: "Heed"},
		},
		Rows: stepRows(r.Steps),
	}
}

func stepRows(steps []Step) [][]listing.Cell {
	var out [][]listing.Cell
	for _, s := range steps {
		out = append(out, []listing.Cell{
			{Value: s.Number}, {Value: strings.Join(s.Brings, "; ")}, {Value: strings.Join(s.Fastens, ", ")}, {Value: strings.Join(s.Prime, "; ")}, {Value: s.Heed},
		})
	}
	return out
}

// WriteSteps writes the steps for people.
func WriteSteps(w io.Writer, v *vehicle.Vehicle, r *Report) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, issue %s: an order in which it goes together\n", v.Name, v.Issue)
	b.WriteString("There are others. Each thing comes in by one straight move and every bolt can be entered and turned.\n\n")
	for _, s := range r.Steps {
		head := fmt.Sprintf("%2d. ", s.Number)
		if len(s.Brings) > 0 {
			head += "Bring " + strings.Join(s.Brings, "; ") + "."
		}
		if len(s.Fastens) > 0 {
			head += " Fasten " + listed(s.Fastens) + "."
		}
		if len(s.Brings)+len(s.Fastens) == 0 {
			head += s.Heed
		} else if s.Heed != "" {
			head += " " + s.Heed
		}
		fold(&b, head, "    ")
		for _, p := range s.Prime {
			fold(&b, "      prime first: "+p, "        ")
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

package listing

import (
	"fmt"
	"io"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// WriteWhy writes how sizes come about: for people a table and sentences for
// each, for programs one table of everything that bears on them.
func WriteWhy(w io.Writer, accounts []*vehicle.Account, u quantity.Unit, f Format) error {
	if f != Table {
		return whyRows(accounts).Write(w, f)
	}
	for i, a := range accounts {
		if i > 0 {
			if _, err := io.WriteString(w, "\n"); err != nil {
				return err
			}
		}
		if err := whyTable(a, u).Write(w, Table); err != nil {
			return err
		}
	}
	return nil
}

// whyTable is one account for people.
func whyTable(a *vehicle.Account, u quantity.Unit) *List {
	l := &List{
		Title: fmt.Sprintf("%s: %s; %s.", sentenceCase(a.Asks), a.Size.Words(u), a.Size.Known),
		Columns: []Column{
			{Head: "What bears on it"},
			{Head: "Line", Align: Right},
			{Head: "Was read", Align: Right},
			{Head: "It alone would say", Align: Right},
			{Head: "Weight", Align: Right},
		},
	}
	if a.Size.Known == quantity.Unknown {
		l.Title = sentenceCase(a.Asks) + " is not known."
	}
	if a.Alike != "" {
		l.Title += "\n" + a.Alike
	}
	for _, b := range a.Told {
		l.Rows = append(l.Rows, []Cell{
			{Value: b.Says}, lineCell(b.Line), {Value: lengthWords(b.Read, u)}, {Value: lengthWords(b.Alone, u)}, {Value: shareWords(b.Share)},
		})
	}
	if len(l.Rows) > 0 {
		l.Foot = append(l.Foot, "", "Weight: how much of the give or take hangs on it. It alone would say: what this would be were that one exactly right.")
	}
	for _, s := range [][]string{a.Contradicts, a.GiveOrTake, a.Bounds, a.Unchecked, a.Open} {
		l.Foot = append(l.Foot, bullets(s)...)
	}
	l.Foot = append(l.Foot, bullets(nextWords(a.Next))...)
	if len(a.Next) == 0 {
		l.Foot = append(l.Foot, bullets([]string{"No one reading still to be taken would narrow it by a tenth or more."})...)
	}
	return l
}

func nextWords(rs []vehicle.Reading) []string {
	var out []string
	for _, r := range rs {
		out = append(out, fmt.Sprintf("To know it better: %s Write it %s%s.", lowerFirst(r.Words), r.Write, onLine(r)))
	}
	return out
}

// onLine says on which line of the survey a reading belongs, where it is one.
func onLine(r vehicle.Reading) string {
	if r.Line == 0 || strings.HasPrefix(r.Write, "under ") {
		return ""
	}
	return fmt.Sprintf(" (line %d)", r.Line)
}

func bullets(says []string) []string {
	var out []string
	for _, s := range says {
		out = append(out, "  - "+s)
	}
	return out
}

// whyRows is every account for programs.
func whyRows(accounts []*vehicle.Account) *List {
	l := &List{Columns: keys("subject", "asks", "value_mm", "give_or_take_mm", "known",
		"role", "says", "line", "read_mm", "alone_mm", "share", "adds_mm", "checked", "would_be_mm", "write")}
	for _, a := range accounts {
		l.account(a)
	}
	return l
}

// account adds the rows of one account.
func (l *List) account(a *vehicle.Account) {
	value, doubt := Rounded(a.Size.Value.Millimetres(), 3), roundUp(a.Size.Doubt.Millimetres())
	if a.Size.Known == quantity.Unknown {
		value, doubt = math.NaN(), math.NaN()
	}
	add := func(role string, cells ...Cell) {
		of := []Cell{{Value: a.Subject}, {Value: a.Asks}, {Value: value}, {Value: doubt}, {Value: a.Size.Known.String()}, {Value: role}}
		l.row(append(of, cells...)...)
	}
	for _, b := range a.Bearings {
		add(b.Role.String(), Cell{Value: b.Says}, lineCell(b.Line), mm(b.Read), mm(b.Alone),
			Cell{Value: Rounded(b.Share, 6)}, Cell{Value: Rounded(b.Adds.Millimetres(), 4)}, Cell{Value: Rounded(b.Checks, 4)})
	}
	for _, s := range []struct {
		role string
		says []string
	}{{"alike", one(a.Alike)}, {"contradicts", a.Contradicts}, {"give or take", a.GiveOrTake}, {"bounds", a.Bounds}, {"nothing checks", a.Unchecked}, {"not known", a.Open}} {
		for _, says := range s.says {
			add(s.role, Cell{Value: says})
		}
	}
	for _, r := range a.Next {
		add("measure next", Cell{Value: r.Words}, lineCell(r.Line), Cell{}, Cell{}, Cell{}, Cell{}, Cell{}, mm(r.To), Cell{Value: r.Write})
	}
}

func one(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

func mm(v quantity.Length) Cell { return Cell{Value: Rounded(v.Millimetres(), 3)} }

func lineCell(line int) Cell {
	if line == 0 {
		return Cell{}
	}
	return Cell{Value: line}
}

func lengthWords(v quantity.Length, u quantity.Unit) string {
	if math.IsNaN(v.Millimetres()) {
		return ""
	}
	if u == quantity.Inches {
		return quantity.Fraction(v, 64) + " in" // callipers are read to a 64th
	}
	return quantity.Format(v, u)
}

func shareWords(share float64) string {
	if share < 0.005 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

func sentenceCase(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

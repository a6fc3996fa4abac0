package listing

import (
	"fmt"
	"io"
	"strings"

	"lostwood/internal/vehicle"
)

// WriteQuestions writes what a survey leaves to be asked: for people as sentences
// under headings, for programs as one table.
func WriteQuestions(w io.Writer, v *vehicle.Vehicle, q *vehicle.Questions, f Format) error {
	if f != Table {
		return questionRows(q).Write(w, f)
	}
	_, err := io.WriteString(w, questionWords(v, q))
	return err
}

func questionWords(v *vehicle.Vehicle, q *vehicle.Questions) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, issue %s: questions\n", v.Name, v.Issue)
	section := func(heading, nothing string, fs []vehicle.Finding) {
		if len(fs) == 0 {
			fmt.Fprintf(&b, "\n%s: %s.\n", heading, nothing)
			return
		}
		fmt.Fprintf(&b, "\n%s:\n", heading)
		for _, f := range fs {
			fmt.Fprintf(&b, "  - %s%s\n", f.Says, atLine(f.Line))
		}
	}
	section("What contradicts", "nothing", q.Contradicts)
	if len(q.Ill) > 0 {
		section("What sits worst with the rest, though not plainly wrong: read these again first", "", q.Ill)
	}
	section("What nothing checks, the gravest first", "nothing", q.Unchecked)
	if q.More > 0 {
		fmt.Fprintf(&b, "  - and %d more, on which less hangs.\n", q.More)
	}
	section("What is not known, or only guessed", "nothing", q.Open)
	b.WriteString(readingWords("What to measure next, on the irons and bolts", q.Next, vehicle.OnIrons))
	b.WriteString(readingWords("What to look for elsewhere", q.Next, vehicle.Elsewhere))
	return b.String()
}

// readingWords numbers the readings that are to be had in one place.
func readingWords(heading string, rs []vehicle.Reading, where vehicle.Where) string {
	var b strings.Builder
	n := 0
	for _, r := range rs {
		if r.Where == where {
			n++
			fmt.Fprintf(&b, "  %2d. %s\n      Write it %s%s.\n", n, r.Words, r.Write, onLine(r))
		}
	}
	if n == 0 {
		return fmt.Sprintf("\n%s: nothing that would narrow anything.\n", heading)
	}
	return fmt.Sprintf("\n%s:\n%s", heading, b.String())
}

func questionRows(q *vehicle.Questions) *List {
	l := &List{Columns: keys("question", "rank", "where", "subject", "line", "says",
		"reading", "reading_give_or_take_mm", "settles", "from_mm", "to_mm", "others", "gain_mm", "write")}
	for _, s := range []struct {
		question string
		findings []vehicle.Finding
	}{{"contradicts", q.Contradicts}, {"sits ill", q.Ill}, {"nothing checks", q.Unchecked}, {"not known", q.Open}} {
		for i, f := range s.findings {
			l.row(Cell{Value: s.question}, Cell{Value: i + 1}, Cell{}, Cell{Value: f.Subject}, lineCell(f.Line), Cell{Value: f.Says})
		}
	}
	rank := map[vehicle.Where]int{}
	for _, r := range q.Next {
		rank[r.Where]++
		l.row(Cell{Value: "measure next"}, Cell{Value: rank[r.Where]}, Cell{Value: r.Where.String()}, Cell{}, lineCell(r.Line), Cell{Value: r.Words},
			Cell{Value: r.Says}, mm(r.Doubt), Cell{Value: r.Settles}, mm(r.From), mm(r.To), Cell{Value: r.Others}, mm(r.Gain), Cell{Value: r.Write})
	}
	return l
}

// keys are columns for programs only.
func keys(names ...string) []Column {
	var out []Column
	for _, n := range names {
		out = append(out, Column{Key: n})
	}
	return out
}

// row adds a row, filled up with empty cells.
func (l *List) row(cells ...Cell) {
	for len(cells) < len(l.Columns) {
		cells = append(cells, Cell{})
	}
	l.Rows = append(l.Rows, cells)
}

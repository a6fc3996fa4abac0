package survey

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// mostShown is how many faults a message tells; the rest are counted.
const mostShown = 40

// A Fault is one thing wrong with a survey.
type Fault struct {
	At    Position
	Found string // what stands there
	Want  string // what would do
	// Line is the line of the file, where it could not be made out; else empty.
	Line string
}

// Faults are all that is wrong with one survey, in the order of the file.
type Faults struct {
	File string
	List []Fault
}

// Error tells every fault as file:line:column, what was found, and what would
// do; of very many, the first ones and how many more there are.
func (f *Faults) Error() string {
	var b strings.Builder
	for i, x := range f.List {
		if i == mostShown {
			fmt.Fprintf(&b, "\nand %d more", len(f.List)-i)
			break
		}
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s:%d:%d: %s; %s", f.File, x.At.Line, x.At.Column, x.Found, x.Want)
		if x.Line != "" {
			fmt.Fprintf(&b, "\n    %s", x.Line)
		}
	}
	return b.String()
}

// sorted puts faults in the order of the file and drops any told twice.
func sorted(list []Fault) []Fault {
	slices.SortStableFunc(list, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return slices.Compact(list)
}

// shownLine is a line of the file as a message repeats it.
func shownLine(s string) string {
	const longest = 100
	var b strings.Builder
	n := 0
	for _, c := range s {
		if n == longest {
			b.WriteString("…")
			break
		}
		switch {
		case c == '\t':
			c = ' '
		case !strconv.IsPrint(c):
			c = '·'
		}
		b.WriteRune(c)
		n++
	}
	return b.String()
}

func quote(s string) string { return quantity.Quote(s) }

// listed joins words as people do: a, b and c.
func listed(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

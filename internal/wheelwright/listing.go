package wheelwright

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// WriteList writes every figure of a wheel as text.
func WriteList(out io.Writer, s Subject) error {
	b := bufio.NewWriter(out)
	fmt.Fprintf(b, "%s: %s, issue %s\n", s.Vehicle, s.Name, s.Issue)
	for _, sec := range Figures(s) {
		fmt.Fprintf(b, "\n%s\n", sec.Head)
		wide := 0
		for _, r := range sec.Rows {
			wide = max(wide, len(r.Name))
		}
		for _, r := range sec.Rows {
			fmt.Fprintf(b, "  %-*s  %s\n", wide, r.Name, r.Is)
			if r.Note != "" {
				for _, l := range wrapped(r.Note, 100-wide) {
					fmt.Fprintf(b, "  %-*s    %s\n", wide, "", l)
				}
			}
		}
	}
	for _, part := range []struct {
		head  string
		lines []string
	}{
		{"Heed", Heeds(s)}, {"Order of work", OrderOfWork(s)}, {"Before the fire", BeforeFire(s)}, {"Cautions", Cautions()},
	} {
		if len(part.lines) == 0 {
			continue
		}
		fmt.Fprintf(b, "\n%s\n", part.head)
		for i, l := range part.lines {
			for k, piece := range wrapped(l, 100) {
				mark := "   "
				if k == 0 {
					mark = fmt.Sprintf("%2d.", i+1)
				}
				fmt.Fprintf(b, "  %s %s\n", mark, piece)
			}
		}
	}
	return b.Flush()
}

// wrapped breaks words into lines of so many letters at the most.
func wrapped(words string, most int) []string {
	var out []string
	line := ""
	for _, w := range strings.Fields(words) {
		if line != "" && len([]rune(line))+1+len([]rune(w)) > most {
			out, line = append(out, line), ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return append(out, line)
}

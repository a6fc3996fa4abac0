package listing

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Closing is the short account at the end of a run: what was made, what of it
// is a guess, what contradicts and what is open.
func Closing(v *vehicle.Vehicle) string {
	var b strings.Builder
	pieces := 0
	for _, it := range v.Items {
		pieces += it.NumberOff
	}
	fmt.Fprintf(&b, "%s, issue %s, %s: %d distinct parts, %d pieces of timber.\n",
		v.Name, v.Issue, v.Date.Format("2 January 2006"), len(v.Items), pieces)
	if g := guesses(v); len(g) > 0 {
		fmt.Fprintf(&b, "\nGuessed, and marked so on every sheet:\n")
		for _, s := range g {
			fmt.Fprintf(&b, "  - %s\n", s)
		}
	}
	for _, c := range []vehicle.Concern{vehicle.Unmakeable, vehicle.Contradiction, vehicle.Open, vehicle.Unlike, vehicle.Advice} {
		first := true
		for _, f := range v.Findings {
			if f.Concern != c {
				continue
			}
			if first {
				fmt.Fprintf(&b, "\n%s:\n", heading(c))
				first = false
			}
			fmt.Fprintf(&b, "  - %s%s\n", f.Says, atLine(f.Line))
		}
	}
	return b.String()
}

func atLine(line int) string {
	if line == 0 {
		return ""
	}
	return fmt.Sprintf(" (line %d)", line)
}

func heading(c vehicle.Concern) string {
	return map[vehicle.Concern]string{
		vehicle.Unmakeable:    "Cannot be made",
		vehicle.Contradiction: "Contradicts",
		vehicle.Open:          "Not known",
		vehicle.Unlike:        "Not alike",
		vehicle.Advice:        "Heed",
	}[c]
}

// guesses names the guessed dimensions of every distinct part, a line a part.
func guesses(v *vehicle.Vehicle) []string {
	var out []string
	seen := map[string]bool{}
	for _, it := range v.Items {
		var sizes []string
		for _, d := range it.Sizes {
			if d.Known == quantity.Guess {
				sizes = append(sizes, fmt.Sprintf("%s %s", strings.ReplaceAll(d.Name, "-", " "), quantity.Format(d.Value, v.Unit)))
			}
		}
		s := fmt.Sprintf("%s: %s", it.Name, strings.Join(sizes, ", "))
		if len(sizes) > 0 && !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}

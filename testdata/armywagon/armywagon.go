// Package armywagon has the published sizes of the US Army six-mule wagon, as
// specified from 1858 to 1861, and a survey of its irons.
//
// Two copies were read: a1, the specification of the 1858 model as reprinted by a
// wheel-making firm, down to the hounds and bolster; a2, J. K. Rayfield's
// paraphrase on authentic-campaigner.com, thread 4821, down to the driving bands.
// M marks what was recalled from memory and not seen in either; b is another
// account of a body of that service, gusmarsh.blogspot.com, September 2013.
package armywagon

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"

	"lostwood/internal/quantity"
)

//go:embed irons.toml
var irons string

//go:embed published.csv
var sizes string

// FromMemory is the source of a figure that was not seen.
const FromMemory = "M"

// A Figure is one published size. Items and dimensions are named as in the
// survey; a dimension with a space in its name is none of a survey's.
type Figure struct {
	Item, Dimension string
	Text            string // inches, as printed
	Size            quantity.Length
	Source          string
}

// String is the figure as a survey states it.
func (f Figure) String() string { return fmt.Sprintf("%s.%s = %s", f.Item, f.Dimension, f.Text) }

// OfSurvey reports whether a survey can state the figure.
func (f Figure) OfSurvey() bool { return !strings.Contains(f.Dimension, " ") }

// Published lists the figures in the order of the specification.
func Published() ([]Figure, error) {
	rows, err := csv.NewReader(strings.NewReader(sizes)).ReadAll()
	if err != nil {
		return nil, err
	}
	var out []Figure
	for _, r := range rows[1:] {
		l, err := quantity.ParseLength(r[2], quantity.Inches)
		if err != nil {
			return nil, err
		}
		out = append(out, Figure{r[0], r[1], r[2], l, r[3]})
	}
	return out, nil
}

// Survey is the survey of the irons, with further lines of evidence; see State.
func Survey(evidence ...string) []byte { return []byte(irons + strings.Join(evidence, "")) }

// State makes lines of evidence, all known alike: "like", "guess".
func State(known string, statements ...string) string {
	return fmt.Sprintf("%s = [\n  \"%s\",\n]\n", known, strings.Join(statements, "\",\n  \""))
}

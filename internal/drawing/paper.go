package drawing

import (
	"fmt"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
)

// A Paper is what a drawing is printed on, as it is drawn on: lying, but for the
// smallest, which stand (ISO 5457).
type Paper struct {
	Name          string
	Width, Height Length
}

// Papers are the sheets known by name, smallest first. The A sizes are those of
// ISO 216; the others are the inch sizes A and B of ASME Y14.1.
func Papers() []Paper {
	return []Paper{
		{"A4", 210, 297},
		{"A3", 420, 297},
		{"A2", 594, 420},
		{"A1", 841, 594},
		{"A0", 1189, 841},
		{"Letter", 8.5 * quantity.Inch, 11 * quantity.Inch},
		{"Tabloid", 17 * quantity.Inch, 11 * quantity.Inch},
	}
}

// FindPaper is the paper of that name, whatever its case.
func FindPaper(name string) (Paper, error) {
	var known []string
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, strings.TrimSpace(name)) {
			return p, nil
		}
		known = append(known, p.Name)
	}
	return Paper{}, fmt.Errorf("paper %q is not known for drawings; %s would do", name, strings.Join(known, ", "))
}

// Margins after ISO 5457: a filing margin on the left.
const (
	filing Length = 20
	margin Length = 10
)

// frame is the room that is drawn in.
func (p Paper) frame() outline.Box {
	return outline.Box{Min: at(filing, margin), Max: at(p.Width-margin, p.Height-margin)}
}

// A SizeError says that a thing cannot be drawn on a paper at any scale that
// would still be read.
type SizeError struct {
	What  string // "the sill (2134 mm long)"
	Paper Paper
	Scale Scale // the smallest allowed
	Would string
}

func (e *SizeError) Error() string {
	return fmt.Sprintf("%s does not fit on %s at %v, the smallest scale at which its work can be read; %s", e.What, e.Paper.Name, e.Scale, e.Would)
}

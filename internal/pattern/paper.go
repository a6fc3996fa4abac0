package pattern

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
)

// A Feed says how paper comes.
type Feed int

// The feeds.
const (
	Sheets    Feed = iota // cut sheets, turned either way as suits the pattern
	Roll                  // a roll: as long as it needs to be
	unbounded             // no paper: one sheet as large as it needs to be
)

// A Paper is what a pattern is printed on. Width is the short side of a sheet,
// or the width of a roll; Height is 0 for a roll.
type Paper struct {
	Name          string
	Width, Height Length
	Feed          Feed
	Printer       Printer // what is known of the printer; nothing where it prints true
}

// Papers are the sheets known by name. A sizes: ISO 216. The others are inch
// sizes of ANSI/ASME Y14.1 (A and B).
func Papers() []Paper {
	return []Paper{
		{Name: "A4", Width: 210, Height: 297},
		{Name: "A3", Width: 297, Height: 420},
		{Name: "A2", Width: 420, Height: 594},
		{Name: "A1", Width: 594, Height: 841},
		{Name: "A0", Width: 841, Height: 1189},
		{Name: "Letter", Width: 8.5 * quantity.Inch, Height: 11 * quantity.Inch},
		{Name: "Tabloid", Width: 11 * quantity.Inch, Height: 17 * quantity.Inch},
	}
}

// RollOf is a roll of that width.
func RollOf(width Length) Paper {
	return Paper{Name: fmt.Sprintf("roll %.0f mm", width.Millimetres()), Width: width, Feed: Roll}
}

// FindPaper reads a paper's name as a person writes it: "a4", "Letter",
// "roll 24 in". A roll's width without a unit is in millimetres.
func FindPaper(name string) (Paper, error) {
	word := strings.ToLower(strings.TrimSpace(name))
	if width, isRoll := strings.CutPrefix(word, "roll"); isRoll {
		w, err := quantity.ParseLength(strings.TrimSpace(width), quantity.Millimetres)
		if err != nil {
			return Paper{}, fmt.Errorf("paper %q: a roll needs its width, such as roll 24 in: %w", name, err)
		}
		return RollOf(w), nil
	}
	var known []string
	for _, p := range Papers() {
		if strings.ToLower(p.Name) == word {
			return p, nil
		}
		known = append(known, p.Name)
	}
	return Paper{}, fmt.Errorf("paper %q is not known; write %s or roll and its width", name, strings.Join(known, ", "))
}

// A PaperError says that paper is too small for a pattern, and what would do.
type PaperError struct {
	Paper Paper
	Needs string
}

func (e *PaperError) Error() string {
	size := fmt.Sprintf("%.1f x %.1f mm", e.Paper.Width.Millimetres(), e.Paper.Height.Millimetres())
	if e.Paper.Feed == Roll {
		size = fmt.Sprintf("%.1f mm wide", e.Paper.Width.Millimetres())
	}
	return fmt.Sprintf("paper %s (%s) will not do: %s", e.Paper.Name, size, e.Needs)
}

// What every sheet needs, in millimetres. Office printers leave 4 to 6.5 mm
// bare at the edge (common practice, no source).
const (
	bare      = 8   // no mark nearer the paper's edge
	stripHigh = 27  // the strip along the foot: bars, sheet letter, title
	barWide   = 11  // the strip up the left with the upright bars
	overlap   = 12  // that the next sheet lies over this one
	leastFold = 60  // the least useful step from sheet to sheet
	leastFoot = 205 // the least width that holds the bars and NEAR side by side
)

// longestRoll is the longest page a PDF can say without a scale of its own:
// 14,400 units of 1/72 inch (ISO 32000-1, annex C).
const longestRoll = 200 * quantity.Inch

// check refuses paper that cannot hold the bars and the strip.
func (p Paper) check() error {
	const leastSide = bare + 100 + stripHigh + bare + 5
	wide := 2*bare + barWide + overlap + leastFold
	if err := p.Printer.check(); err != nil {
		return err
	}
	switch {
	case !(p.Width >= max(leastSide, Length(wide))):
		return &PaperError{p, fmt.Sprintf("the 100 mm check bars and the title need at least %d mm each way", max(leastSide, wide))}
	case p.Feed == Sheets && !(p.Height >= leastFoot):
		return &PaperError{p, fmt.Sprintf("the bars and the title along the foot need a longer side of at least %d mm", leastFoot)}
	case p.Width > longestRoll || p.Height > longestRoll:
		return &PaperError{p, fmt.Sprintf("a page can be at most %.0f mm long", longestRoll.Millimetres())}
	}
	return nil
}

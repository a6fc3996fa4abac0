package cutlist

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// readings say what the measured boards of each timber mean for the day the
// wood is worked: what to leave on, or that it must wait.
func (l *List) readings() []string {
	var out, seen []string
	for _, n := range l.Lines {
		name := n.timber()
		boards := l.boardsOf(n)
		if !n.ToMake || len(boards) == 0 || slices.Contains(seen, name) {
			continue
		}
		seen = append(seen, name)
		out = append(out, l.reading(n, boards))
	}
	for _, b := range l.settings.Boards {
		if !slices.ContainsFunc(l.Lines, func(n Line) bool { return l.isOf(b, n) }) {
			out = append(out, fmt.Sprintf("Board %s is of %s, of which no part is.", b.ID, b.Timber))
		}
	}
	return out
}

func (l *List) isOf(b Board, n Line) bool {
	return strings.EqualFold(b.Timber, n.Item.Timber) || strings.EqualFold(b.Timber, n.Wood.Common) || strings.EqualFold(b.Timber, n.Wood.Botanical)
}

func (l *List) boardsOf(n Line) []Board {
	var out []Board
	for _, b := range l.settings.Boards {
		if l.isOf(b, n) {
			out = append(out, b)
		}
	}
	return out
}

// near is how far a board's reading may lie from the moisture it is to be worked at
// and still be taken as there: a meter tells no better. Common practice, no source.
const near quantity.Moisture = 1

func (l *List) reading(n Line, boards []Board) string {
	m, u := l.vehicle.Moisture, l.vehicle.Unit
	span := 100 * quantity.Millimetre
	if imperial(u) {
		span = 12 * quantity.Inch
	}
	var ready, says []string
	for _, b := range boards {
		name := b.ID + " at " + percent(float64(b.Moisture))
		switch {
		case b.Moisture > worked(m)+near:
			says = append(says, name+" is too wet: "+l.waitOrLeave(n, b, span))
		case b.Moisture < m.Service-near:
			says = append(says, name+" is drier than it will live: it will swell, so leave it its room")
		default:
			ready = append(ready, name)
		}
	}
	if len(ready) > 0 {
		says = append([]string{"ready to be worked, " + strings.Join(ready, ", ")}, says...)
	}
	if thin := l.tooThin(n.timber(), boards); thin != "" {
		says = append(says, thin)
	}
	return fmt.Sprintf("%s boards as measured: %s.", capital(n.timber()), strings.Join(says, "; "))
}

// waitOrLeave says what a wet board asks for: so much left on, or a wait.
func (l *List) waitOrLeave(n Line, b Board, span quantity.Length) string {
	u, service := l.vehicle.Unit, l.vehicle.Moisture.Service
	words := "let it dry to " + percent(float64(worked(l.vehicle.Moisture)))
	if wet, err := n.Wood.Resize(span, service, b.Moisture, timber.Worst); err == nil {
		words += fmt.Sprintf(", or leave %s in every %s on across the grain and finish it when dry", named(roundUp(wet-span, finest(u)), u), named(span, u))
	}
	thickness := b.Thick
	if thickness == 0 {
		thickness = n.Stock.Rough
	}
	if least, most, basis, err := n.Wood.DryingDays(thickness); err == nil && b.Moisture > 20 {
		words += fmt.Sprintf(" (in the air, green to 20 %% takes %.0f to %.0f days at this thickness, %v)", least, most, basis.Standing)
	}
	return words + "; weigh it weekly: it is there when it stops losing"
}

// tooThin names the parts of a timber that none of the measured boards is thick
// enough for; empty where there is none, or no thickness was measured.
func (l *List) tooThin(name string, boards []Board) string {
	var thickest quantity.Length
	for _, b := range boards {
		thickest = max(thickest, b.Thick)
	}
	u := l.vehicle.Unit
	var parts []string
	for _, n := range l.Lines {
		if n.timber() == name && n.ToMake && thickest > 0 && !notUnder(thickest, n.Sawn.Thick) {
			parts = append(parts, fmt.Sprintf("No. %d %s needs %s", n.Item.Number, titled(n.Item), named(roundUp(n.Sawn.Thick, finest(u)), u)))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("the thickest measured is %s, too thin for some (%s): buy for those, or build them up", named(thickest, u), strings.Join(parts, ", "))
}

// capital starts a sentence with a name.
func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[size:]
}

package drawing

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// crowded lists every line of words on a sheet that a line runs through, that
// lies on other words, or that leaves the paper.
func crowded(s sheet.Sheet) []string {
	const hair = 0.1
	var out []string
	paper := outline.Box{Max: form.Point{X: s.Width, Y: s.Height}}
	boxes := make([]outline.Box, len(s.Words))
	for i, w := range s.Words {
		boxes[i] = w.Box().Grown(-hair)
		if !paper.Holds(boxes[i]) {
			out = append(out, fmt.Sprintf("%q leaves the paper", w.Words))
		}
		for k := range i {
			if boxes[k].Meets(boxes[i]) {
				out = append(out, fmt.Sprintf("%q lies on %q", w.Words, s.Words[k].Words))
			}
		}
	}
	for _, l := range s.Lines {
		around := l.Bounds().Grown(hair)
		if !paper.Holds(l.Bounds()) {
			out = append(out, fmt.Sprintf("a line leaves the paper at %v", l.Bounds()))
		}
		for i, b := range boxes {
			if !b.Meets(around) {
				continue
			}
			for _, seg := range l.Segments() {
				if seg.Crosses(b) {
					out = append(out, fmt.Sprintf("a line (pen %d) runs through %q", l.Pen, s.Words[i].Words))
					break
				}
			}
		}
	}
	return out
}

// The detector finds what it is to find.
func TestCrowdingIsFound(t *testing.T) {
	letters, err := sheet.NewLettering()
	require.NoError(t, err)
	b := board{&sheet.Sheet{Width: 100, Height: 100, Stroke: narrow}, letters}
	b.say(at(10, 10), "here", small, sheet.Plain)
	require.Empty(t, crowded(*b.Sheet))
	b.Straight(sheet.Narrow, at(0, 11), at(50, 11))
	require.Len(t, crowded(*b.Sheet), 1)
	b.upward(at(12, 9), "there", small, sheet.Plain)
	require.Len(t, crowded(*b.Sheet), 3)
	b.say(at(99, 50), "out", small, sheet.Plain)
	require.Len(t, crowded(*b.Sheet), 4)
}

func TestWordsKeepClearOfLinesOnEverySheetOfTheWagon(t *testing.T) {
	v := theWagon(t)
	for _, c := range []struct {
		paper string
		angle Angle
	}{{"A3", Third}, {"A3", First}, {"A4", Third}, {"Tabloid", First}} {
		for _, it := range v.Items {
			if (c.paper != "A3" || c.angle == First) && it.Number%3 != 1 {
				continue // a third of them tells
			}
			all, err := Part(v, it, on(t, c.paper, c.angle))
			require.NoError(t, err)
			for _, s := range all {
				require.Empty(t, crowded(s), "%s on %s, %v angle", s.Name, c.paper, c.angle)
			}
		}
	}
}

func TestWordsKeepClearOfLinesOnTheGeneralArrangement(t *testing.T) {
	for _, m := range []Making{on(t, "A1", Third), on(t, "A2", First)} {
		all, err := General(theWagon(t), m)
		require.NoError(t, err)
		for _, s := range all {
			require.Empty(t, crowded(s), "%s on %s", s.Name, m.Paper.Name)
		}
	}
}

// Parts of every kind, of random sizes and thick with holes, in either unit.
func TestWordsKeepClearOfLinesOnPartsOfAnySize(t *testing.T) {
	for _, k := range parts.Kinds() {
		for n := range 4 {
			v, it := ofOne(anyPart(k, n+11), []vehicle.Hand{vehicle.Alike, vehicle.Near, vehicle.Off}[n%3], []quantity.Unit{quantity.Inches, quantity.Millimetres}[n%2])
			all, err := Part(v, it, on(t, []string{"A3", "A2"}[n%2], Angle(n/2)))
			require.NoError(t, err)
			for _, s := range all {
				require.Empty(t, crowded(s), "%s %d: %+v", k.Name, n, it.Shape)
			}
		}
	}
}

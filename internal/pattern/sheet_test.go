package pattern

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
)

func TestHandStandsInTallLettersOnEverySheet(t *testing.T) {
	for hand, word := range map[vehicle.Hand]string{vehicle.Near: "NEAR", vehicle.Off: "OFF"} {
		for _, name := range []string{"A4", "Letter", "A3"} {
			i := sill(hand)
			all, err := sheets(wagon(i), i, paperNamed(t, name))
			require.NoError(t, err)
			for _, s := range all {
				tall := Length(0)
				for _, w := range s.frame.Texts {
					if w.Words == word {
						tall = max(tall, w.Height)
					}
				}
				require.Equal(t, Length(20), tall, "%s %s", name, s.letter)
				require.True(t, hasWords(s.frame, s.letter), "%s %s has its letter", name, s.letter)
			}
		}
	}
}

func hasWords(d outline.Drawing, part string) bool {
	for _, w := range d.Texts {
		if strings.Contains(strings.ReplaceAll(w.Words, "\u00a0", " "), part) {
			return true
		}
	}
	return false
}

// A guess is framed in long dashes and says GUESS, on the drawing and on the key.
func TestGuessIsNeverShownAsKnown(t *testing.T) {
	i := bolster()
	all, err := sheets(wagon(i), i, paperNamed(t, "A4"))
	require.NoError(t, err)
	var onKey, onSheets int
	for _, s := range all {
		for _, p := range s.panes {
			framed := 0
			for _, w := range p.seen.Texts {
				if !strings.Contains(w.Words, "GUESS") || strings.HasPrefix(s.letter, "R") {
					continue
				}
				require.True(t, framedByQuery(p.seen, textBox(w)), "%s: %q", s.letter, w.Words)
				framed++
			}
			if strings.HasPrefix(s.letter, "KEY") {
				onKey += framed
			} else {
				onSheets += framed
			}
		}
	}
	require.GreaterOrEqual(t, onKey, 2)
	require.GreaterOrEqual(t, onSheets, 3, "two headings and a hole")
}

func framedByQuery(d outline.Drawing, b outline.Box) bool {
	for _, p := range d.Paths {
		if p.Pen != outline.Query {
			continue
		}
		if box, ok := (outline.Drawing{Paths: []outline.Path{p}}).Bounds(); ok && box.Grown(0.5).Holds(b) {
			return true
		}
	}
	return false
}

// What the paper says on its sheets is what the joiner needs to know.
func TestSheetsSayWhichPartAndIssue(t *testing.T) {
	i := sill(vehicle.Off)
	all, err := sheets(wagon(i), i, paperNamed(t, "A4"))
	require.NoError(t, err)
	for _, s := range all {
		for _, words := range []string{"5  sill", "white oak", "1 off · OFF", "issue B", "1 May 2024", "proposed", "3fa9c2d1", "100 mm", "4 in"} {
			require.True(t, hasWords(s.frame, words), "%s says %q", s.letter, words)
		}
	}
}

func TestKeyTellsTheWorkAndTheCautions(t *testing.T) {
	i := bolster()
	l, err := lay(wagon(i), i, paperNamed(t, "A4"))
	require.NoError(t, err)
	var key outline.Drawing
	for _, s := range l.key() {
		key.Add(s.panes[0].seen)
	}
	for _, words := range []string{
		"king-bolt hole", "counterbore", "square seat", "12 % moisture", "mask", "local codes",
		"Leave full until offered up: long, deep.", "Leave uncut until offered up to the irons: fastening 6.",
		"fastening 7 and 2 others", "Face side: upper face",
	} {
		require.True(t, hasWords(key, words), words)
	}
}

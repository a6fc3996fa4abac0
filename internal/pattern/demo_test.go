package pattern

import (
	"bytes"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/anypart"
)

// runs is how often a long check is made; LOSTWOOD_RUNS=200 for a longer run.
func runs(t *testing.T, usual int) int {
	t.Helper()
	if s := os.Getenv("LOSTWOOD_RUNS"); s != "" {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	return usual
}

func demoWagon(t *testing.T) *vehicle.Vehicle {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return v
}

// Every sheet of the whole demo: no words run into words or lines, nothing is set
// smaller than a person reads at the bench, and a part's file is small and comes
// out the same each time.
func TestDemoSheetsAreLegibleAndSmall(t *testing.T) {
	v := demoWagon(t)
	papers := []string{"A4", "Letter", "A3", "A1", "roll 36 in"}
	began, pages, largest := time.Now(), 0, 0
	for n, i := range v.Items {
		for k, name := range []string{"A4", papers[n%len(papers)]} {
			if k == 1 && name == "A4" {
				continue
			}
			paper := paperNamed(t, name)
			all, err := sheets(v, i, paper)
			require.NoError(t, err, i.Name)
			for _, s := range all {
				clear(t, s, i.Name+", "+name)
				readable(t, s, i.Name+", "+name)
			}
			var a bytes.Buffer
			require.NoError(t, Write(&a, v, i, paper))
			require.Less(t, a.Len(), 200_000, "%s on %s", i.Name, name)
			largest = max(largest, a.Len())
			if k == 0 {
				pages += len(all)
			}
			if n%8 == 0 {
				var b bytes.Buffer
				require.NoError(t, Write(&b, v, i, paper))
				require.True(t, bytes.Equal(a.Bytes(), b.Bytes()), i.Name)
			}
		}
	}
	t.Logf("%d items, %d sheets of A4, largest file %d bytes, %v with the checks", len(v.Items), pages, largest, time.Since(began).Round(time.Millisecond))
}

func TestDemoRimsAreLegible(t *testing.T) {
	v := demoWagon(t)
	rims := 0
	for _, i := range v.Items {
		if !HasRim(i) {
			continue
		}
		rims++
		for _, name := range []string{"A4", "A0", "roll 36 in"} {
			l, err := layRim(v, i, paperNamed(t, name))
			require.NoError(t, err)
			all, err := l.sheets()
			require.NoError(t, err)
			for _, s := range all {
				clear(t, s, "rim of "+i.Name+", "+name)
			}
			var b bytes.Buffer
			require.NoError(t, WriteRim(&b, v, i, paperNamed(t, name)))
			require.Less(t, b.Len(), 200_000)
		}
	}
	require.Equal(t, 2, rims)
}

// readable holds all words to 2.5 mm capitals (ISO 3098), but for the letters on
// the small map, those at the bars, and what has to be fitted into the foot of a sheet, which is never
// below 1.8 mm, the smallest that ISO 3098 has.
func readable(t *testing.T, s sheet, of string) {
	t.Helper()
	for _, p := range s.panes {
		for _, w := range p.seen.Texts {
			if strings.HasPrefix(s.letter, "KEY") && len(w.Words) <= 3 {
				continue
			}
			require.GreaterOrEqual(t, float64(w.Height), 2.5, "%s %s: %q", of, s.letter, w.Words)
		}
	}
	for _, w := range s.frame.Texts {
		require.GreaterOrEqual(t, float64(w.Height), 1.75, "%s %s: %q", of, s.letter, w.Words)
	}
}

// Parts of every kind at random dimensions: every sheet is legible, and nothing
// that is to be set out is lost.
func TestRandomPartsAreLegible(t *testing.T) {
	n := 0
	for _, k := range parts.Kinds() {
		for seed := range runs(t, 2) {
			n++
			i := randomItem(k, n, seed)
			name := []string{"A4", "Letter", "A3", "roll 42 in", "A2"}[n%5]
			v := wagon(i)
			v.Unit = []quantity.Unit{quantity.Inches, quantity.Millimetres}[n%2]
			l, err := lay(v, i, paperNamed(t, name))
			require.NoError(t, err, "%s %d", k.Name, seed)
			all, err := l.sheets()
			require.NoError(t, err)
			of := fmt.Sprintf("%s %d, %s", k.Name, seed, name)
			for _, s := range all {
				clear(t, s, of)
			}
			for _, c := range l.drawing.Circles {
				require.True(t, l.shown(outline.Box{Min: c.Centre, Max: c.Centre}), of)
			}
			for _, w := range l.drawing.Texts {
				require.True(t, l.shown(textBox(w)), "%s: %q", of, w.Words)
			}
		}
	}
}

func randomItem(k parts.Kind, number, seed int) *vehicle.Item {
	p := anypart.Of(k).Example(seed)
	run, hand := vehicle.Along, []vehicle.Hand{vehicle.Alike, vehicle.Near, vehicle.Off}[seed%3]
	if k.Name == "felloe" {
		run, hand = vehicle.Round, vehicle.Alike
	}
	i := item(number, k.Name, run, hand, "white oak", p, quantity.Guess)
	for n := range i.Features {
		if n%3 == 1 {
			i.Features[n].Along = size(i.Features[n].Along.Value, 4, quantity.Guess)
		}
	}
	return i
}

// The sheets are no more than laying the bare faces either way would take.
func TestFewestSheets(t *testing.T) {
	for _, i := range append(samples(), demoWagon(t).Items[:12]...) {
		for _, name := range []string{"A4", "A3", "A1", "Letter"} {
			v, paper := wagon(i), paperNamed(t, name)
			l, err := lay(v, i, paper)
			require.NoError(t, err)
			least := 1 << 30
			for _, way := range []turn{flat, tall} {
				if way == tall && paper.Width < leastFoot {
					continue
				}
				bare := *l
				bare.way, bare.place = way, outline.EndsBelow
				require.NoError(t, bare.begin(0))
				least = min(least, bare.grid.rows*bare.grid.cols)
			}
			if l.printedCount() > least {
				t.Errorf("%s on %s: %d sheets, where %d would hold the faces", i.Name, name, l.printedCount(), least)
			}
		}
	}
}

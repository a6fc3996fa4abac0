package pattern

import (
	"bytes"
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
)

func TestParsePrinter(t *testing.T) {
	for _, s := range []string{"99.4x99.8", " 99.4 × 99.8 mm ", "99.4 by 99.8"} {
		p, err := ParsePrinter(s)
		require.NoError(t, err, s)
		require.InDelta(t, 99.4, float64(p.Across), 1e-9)
		require.InDelta(t, 99.8, float64(p.Along), 1e-9)
	}
	for s, want := range map[string]string{
		"50x50": "100 %", "50x100": "not printed at full size", "100x194": "not printed at full size",
		"99.4": "such as 99.4x99.8", "": "such as", "x": "such as", "1e999x100": "such as",
	} {
		_, err := ParsePrinter(s)
		var bad *PrinterError
		require.ErrorAs(t, err, &bad, s)
		require.ErrorContains(t, err, want, s)
	}
}

func FuzzParsePrinter(f *testing.F) {
	for _, s := range []string{"99.4x99.8", "x", "99", "4 in x 4 in", "99.4x-1", "naNxInf"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if p, err := ParsePrinter(s); err == nil {
			require.Empty(t, p.fault())
		} else {
			require.ErrorContains(t, err, "bar")
		}
	})
}

// What a printer that is out makes of a sheet: it shrinks what is drawn by as much
// as it shrank the bar it was measured by, so the bars come out at 100 mm and 4 in.
// Rendered by poppler's pdftoppm; the page itself keeps the paper's size.
func TestPrinterThatIsOutPrintsTrue(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm", "poppler-utils")
	const across, along = 99.4, 100.7
	for name, dpi := range map[string]int{"A4": 600, "roll 24 in": 300} {
		item, paper := sill(vehicle.Near), paperNamed(t, name)
		paper.Printer = Printer{across, along}
		all, err := sheets(wagon(item), item, paper)
		require.NoError(t, err)
		pdf := saved(t, "out.pdf", pdfOf(t, item, paper))
		for i, s := range all {
			if s.letter != "A1" && s.letter != "KEY1" {
				continue
			}
			if name == "A4" {
				require.True(t, hasWords(s.frame, "99.4 x 100.7 mm"), s.letter)
				require.True(t, hasWords(s.frame, "must now measure 100 mm"), s.letter)
				require.InDelta(t, 210, min(float64(s.size.X*s.growth.X), float64(s.size.Y*s.growth.Y)), 1e-9)
			}
			page := fmt.Sprint(i + 1)
			dir := t.TempDir()
			run(t, pdftoppm, "-r", fmt.Sprint(dpi), "-f", page, "-l", page, "-gray", "-aa", "no", "-aaVector", "no", pdf, filepath.Join(dir, "s"))
			found, err := filepath.Glob(filepath.Join(dir, "*.pgm"))
			require.NoError(t, err)
			require.Len(t, found, 1)
			x, y := along, across // a sheet on its side, and a roll: x runs along the paper
			switch {
			case s.size.Y > s.size.X && name == "A4":
				x, y = across, along
			case s.letter == "KEY1" && name != "A4":
				x, y = 100, 100 // the office printer is another one
			}
			bars := readBars(t, readPGM(t, readFile(t, found[0])), dpi, s)
			dots := func(mm, measured float64) float64 { return mm * 100 / measured * float64(dpi) / 25.4 }
			require.InDelta(t, dots(100, x), bars.foot, 1, "%s %s", name, s.letter)
			require.InDelta(t, dots(101.6, x), bars.footInches, 1, "%s %s", name, s.letter)
			require.InDelta(t, dots(100, y), bars.upright, 1, "%s %s", name, s.letter)
			require.InDelta(t, dots(101.6, y), bars.uprightInches, 1, "%s %s", name, s.letter)
			t.Logf("%s %s: %.0f %.0f %.0f %.0f dots", name, s.letter, bars.foot, bars.footInches, bars.upright, bars.uprightInches)
		}
	}
}

// On every paper there is, and on a roll, all four bars of the key and of the last
// sheet are true to one dot at 300 and at 600 dots an inch.
func TestBarsMeasureTrueOnEveryPaper(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm", "poppler-utils")
	item := felloe()
	var names []string
	for _, p := range Papers() {
		names = append(names, p.Name)
	}
	for _, name := range append(names, "roll 24 in") {
		for _, dpi := range []int{300, 600} {
			paper := paperNamed(t, name)
			if dpi == 600 && paper.Width > 300 {
				continue // a picture of a hundred million dots tells nothing that a smaller sheet does not
			}
			all, err := sheets(wagon(item), item, paper)
			require.NoError(t, err)
			pdf := saved(t, "bars.pdf", pdfOf(t, item, paper))
			for _, i := range []int{0, len(all) - 1} {
				page, dir := fmt.Sprint(i+1), t.TempDir()
				run(t, pdftoppm, "-r", fmt.Sprint(dpi), "-f", page, "-l", page, "-singlefile", "-gray", "-aa", "no", "-aaVector", "no", pdf, filepath.Join(dir, "s"))
				bars := readBars(t, readPGM(t, readFile(t, filepath.Join(dir, "s.pgm"))), dpi, all[i])
				of := fmt.Sprintf("%s, sheet %s at %d dots an inch", name, all[i].letter, dpi)
				dots := func(mm float64) float64 { return mm * float64(dpi) / 25.4 }
				require.InDelta(t, dots(100), bars.foot, 1, of)
				require.InDelta(t, dots(101.6), bars.footInches, 1, of)
				require.InDelta(t, dots(100), bars.upright, 1, of)
				require.InDelta(t, dots(101.6), bars.uprightInches, 1, of)
			}
		}
	}
}

// A measuredBars holds the lengths of a sheet's bars in dots.
type measuredBars struct{ foot, footInches, upright, uprightInches float64 }

// readBars measures the four bars of a sheet in a picture of it.
func readBars(t *testing.T, g grey, dpi int, s sheet) measuredBars {
	t.Helper()
	grown := s.growth
	x := func(mm Length) int { return int(float64(mm*grown.X)*float64(dpi)/25.4 + 0.5) }
	y := func(mm Length) int { return g.high - int(float64(mm*grown.Y)*float64(dpi)/25.4+0.5) }
	top := Length(bare + stripHigh - 3)
	level := func(at Length) float64 {
		wide, _ := g.black(x(4), x(bare+104), y(at+barHigh+0.1), y(at-0.1))
		return float64(wide)
	}
	upright := func(at, to Length) float64 {
		_, high := g.black(x(at-0.2), x(at+slimBar+0.2), y(bare+stripHigh+3+to), y(bare+stripHigh+1))
		return float64(high)
	}
	first := Length(bare + 0.3)
	return measuredBars{level(top - 5), level(top - 11), upright(first, 103), upright(first+6.8, 103)}
}

func TestRollNarrowerThanThePartIsRefused(t *testing.T) {
	var b bytes.Buffer
	i := bolster() // 107.95 mm deep
	var small *PaperError
	require.ErrorAs(t, Write(&b, wagon(i), i, RollOf(150)), &small)
	require.ErrorContains(t, small, "widest face is 108 mm")
	require.Zero(t, b.Len())
	var least int
	_, err := fmt.Sscanf(small.Needs[len(small.Needs)-len("a roll at least 178 mm wide would do"):], "a roll at least %d mm wide would do", &least)
	require.NoError(t, err)
	require.NoError(t, Write(&b, wagon(i), i, RollOf(Length(least))), "what was said to do does")
	b.Reset()
	require.ErrorAs(t, Write(&b, wagon(i), i, RollOf(Length(least-1))), &small, "and nothing less")
}

// On a roll no face is parted, whatever its width.
func TestRollPartsNoFace(t *testing.T) {
	for _, i := range samples() {
		for _, wide := range []Length{190, 250, 400, 914} {
			l, err := lay(wagon(i), i, RollOf(wide))
			var small *PaperError
			if err != nil {
				require.ErrorAs(t, err, &small, i.Name)
				continue
			}
			require.Equal(t, 1, l.grid.cols, i.Name)
			for _, f := range l.faces.Laid {
				whole := 0
				for r := range l.grid.rows {
					if l.needed[r][0] && l.grid.core(r, 0).Holds(f.Extent) {
						whole++
					}
				}
				require.Equal(t, 1, whole, "%s, roll of %v mm: %v", i.Name, wide, f.Face)
			}
		}
	}
}

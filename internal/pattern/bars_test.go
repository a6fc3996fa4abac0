package pattern

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
)

// A grey is a picture as pdftoppm renders it.
type grey struct {
	wide, high int
	dots       []byte
}

func readPGM(t *testing.T, data []byte) grey {
	t.Helper()
	var g grey
	var most int
	r := bytes.NewReader(data)
	_, err := fmt.Fscanf(r, "P5\n%d %d\n%d\n", &g.wide, &g.high, &most)
	require.NoError(t, err)
	require.Equal(t, 255, most)
	g.dots = data[len(data)-g.wide*g.high:]
	return g
}

// black is from the first to the last black dot in a part of the picture, along x
// or, turned, along y; both included.
func (g grey) black(x0, x1, y0, y1 int) (wide, high int) {
	minX, maxX, minY, maxY := x1, x0, y1, y0
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			if g.dots[y*g.wide+x] < 128 {
				minX, maxX = min(minX, x), max(maxX, x)
				minY, maxY = min(minY, y), max(maxY, y)
			}
		}
	}
	return maxX - minX + 1, maxY - minY + 1
}

// A 100 mm bar is 1181.1 dots long at 300 dots an inch, and a 4 in bar 1200: an
// inch is 25.4 mm by definition. Rendered by poppler's pdftoppm.
func TestBarsMeasureTrueOnEverySheet(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm", "poppler-utils")
	const dpi = 300
	dots := func(mm Length) int { return int(float64(mm)*dpi/25.4 + 0.5) }
	for _, tc := range []struct {
		paper string
		item  *vehicle.Item
	}{{"A4", sill(vehicle.Near)}, {"Letter", felloe()}, {"A3", slat()}} {
		pdf := saved(t, "bars.pdf", pdfOf(t, tc.item, paperNamed(t, tc.paper)))
		dir := t.TempDir()
		run(t, pdftoppm, "-r", fmt.Sprint(dpi), "-gray", "-aa", "no", "-aaVector", "no", pdf, filepath.Join(dir, "s"))
		pages, err := filepath.Glob(filepath.Join(dir, "*.pgm"))
		require.NoError(t, err)
		all, err := sheets(wagon(tc.item), tc.item, paperNamed(t, tc.paper))
		require.NoError(t, err)
		require.Len(t, pages, len(all))
		slices.Sort(pages)
		for i, page := range pages {
			g := readPGM(t, readFile(t, page))
			foot := func(up Length) int { return g.high - dots(up) }
			top := Length(bare + stripHigh - 3)
			first, _ := g.black(dots(4), dots(bare+104), foot(top-5+barHigh+0.1), foot(top-5-0.1))
			require.InDelta(t, 1181, first, 1, "%s %s: the 100 mm bar along the foot", tc.paper, all[i].letter)
			second, _ := g.black(dots(4), dots(bare+104), foot(top-11+barHigh+0.1), foot(top-11-0.1))
			require.InDelta(t, 1200, second, 1, "%s %s: the 4 in bar", tc.paper, all[i].letter)
			_, tall := g.black(dots(bare+0.5), dots(bare+1+barHigh+0.3), foot(bare+stripHigh+3+102), foot(bare+stripHigh+1))
			require.InDelta(t, 1181, tall, 1, "%s %s: the upright 100 mm bar", tc.paper, all[i].letter)
		}
	}
}

// No mark stands within 7 mm of the paper's edge, where office printers do not
// print (common practice, no source).
func TestEdgeOfThePaperIsBare(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm", "poppler-utils")
	const dpi = 100
	edge := 7*dpi*10/254 - 1 // in dots, one for rounding
	for _, item := range []*vehicle.Item{bolster(), sill(vehicle.Off)} {
		pdf := saved(t, "edge.pdf", pdfOf(t, item, paperNamed(t, "A4")))
		dir := t.TempDir()
		run(t, pdftoppm, "-r", fmt.Sprint(dpi), "-gray", pdf, filepath.Join(dir, "s"))
		pages, err := filepath.Glob(filepath.Join(dir, "*.pgm"))
		require.NoError(t, err)
		require.NotEmpty(t, pages)
		for _, page := range pages {
			g := readPGM(t, readFile(t, page))
			for y := range g.high {
				for x := range g.wide {
					if inner := x >= edge && y >= edge && x < g.wide-edge && y < g.high-edge; !inner && g.dots[y*g.wide+x] < 200 {
						t.Fatalf("%s: a mark at %d, %d of %d x %d dots", filepath.Base(page), x, y, g.wide, g.high)
					}
				}
			}
		}
	}
}

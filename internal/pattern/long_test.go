package pattern

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// reach2400 is 2.4 m long, with a hole of a diameter of its own every so often.
func reach2400() (*vehicle.Item, map[Length]form.Point) {
	p := parts.Plain{Name: "sill", Long: 2400, Wide: 64, Deep: 51}
	at := map[Length]form.Point{}
	for n := range 9 {
		d := Length(8 + n)
		at[d] = form.Point{X: 21.3 + 291.7*Length(n), Y: 24 + 1.9*Length(n)}
		p.Work = append(p.Work, hole("fastening "+string(rune('1'+n)), parts.Upper, at[d].X, at[d].Y, d))
	}
	return item(7, "sill", vehicle.Along, vehicle.Alike, "white oak", p, 0), at
}

// Over 2.4 m, on one strip of a roll and across A4 sheets joined by their marks,
// the whole length and every hole's centre stand within 0.1 mm of the part, read
// back from the PDF by poppler. A plain sheet that is not printed is bridged by
// the rule, as the key says.
func TestLongPartIsTrueFromEndToEnd(t *testing.T) {
	tool(t, "pdftocairo", "poppler-utils")
	item, at := reach2400()
	for _, name := range []string{"roll 24 in", "A4"} {
		paper := paperNamed(t, name)
		all, err := sheets(wagon(item), item, paper)
		require.NoError(t, err)
		l, err := lay(wagon(item), item, paper)
		require.NoError(t, err)
		pdf := saved(t, "long.pdf", pdfOf(t, item, paper))
		on := map[Length]form.Point{}
		ends := []Length{}
		var slip form.Point
		var last []found
		lastCol := -1
		for i, s := range all {
			if !strings.HasPrefix(s.letter, "A") {
				continue
			}
			page := readPage(t, pdf, i+1)
			col := column1(s.letter)
			switch {
			case last != nil && col == lastCol+1:
				by := join(t, last, page)
				slip.X, slip.Y = slip.X+by.X, slip.Y+by.Y
			case last != nil:
				slip.X += Length(col-lastCol) * l.grid.stepX
			}
			last, lastCol = page, col
			for d := range at {
				if c := circles(page, d); len(c) > 0 {
					top := slices.MinFunc(c, func(a, b form.Point) int { return int(math.Copysign(1, float64(a.Y-b.Y))) })
					on[d] = form.Point{X: top.X + slip.X, Y: top.Y + slip.Y}
				}
			}
			for _, x := range checks(page) {
				ends = append(ends, x+slip.X)
			}
		}
		require.Len(t, on, len(at), name)
		require.Len(t, ends, 2, "%s: a check mark at either end", name)
		require.InDelta(t, 2400, float64(ends[1]-ends[0]), 0.1, name)
		worst := 0.0
		for d, p := range at {
			require.InDelta(t, float64(p.X), float64(on[d].X-ends[0]), 0.1, "%s, hole of %v", name, d)
			require.InDelta(t, float64(p.Y-at[8].Y), float64(on[8].Y-on[d].Y), 0.1, "%s, hole of %v", name, d)
			worst = math.Max(worst, math.Abs(float64(on[d].X-ends[0]-p.X)))
		}
		t.Logf("%s: end to end out by %.4f mm, holes by %.4f", name, ends[1]-ends[0]-2400, worst)
	}
}

// column1 is the number of a sheet's column, from 1.
func column1(letter string) int {
	n := 0
	for _, r := range letter[1:] {
		n = 10*n + int(r-'0')
	}
	return n
}

// checks are the middles of the check marks' triangles on a page, 3.2 by 3.5 mm.
func checks(page []found) []Length {
	var out []Length
	for _, f := range page {
		if f.curves == 0 && f.corners >= 3 && math.Abs(float64(f.wide)-3.2) < 0.02 && math.Abs(float64(f.high)-3.5) < 0.02 {
			out = append(out, f.centre.X)
		}
	}
	return out
}

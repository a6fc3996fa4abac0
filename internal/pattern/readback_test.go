package pattern

import (
	"bytes"
	"cmp"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A found figure is a closed path read back from a page, in millimetres.
type found struct {
	centre     form.Point
	wide, high Length
	corners    int
	curves     int
}

// readPage has poppler's pdftocairo draw a page as SVG and reads its stroked paths.
func readPage(t *testing.T, pdf string, page int) []found {
	t.Helper()
	svg := run(t, tool(t, "pdftocairo", "poppler-utils"), "-svg", "-noshrink", "-nocenter", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page), pdf, "-")
	var out []found
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "path" {
			if a := attributes(e); a["d"] != "" {
				out = append(out, figure(t, a["d"], a["transform"]))
			}
		}
	}
}

func attributes(e xml.StartElement) map[string]string {
	a := map[string]string{}
	for _, x := range e.Attr {
		a[x.Name.Local] = x.Value
	}
	return a
}

// figure reads a path's corners and curve ends, and takes their box.
func figure(t *testing.T, d, transform string) found {
	t.Helper()
	m := [6]float64{1, 0, 0, 1, 0, 0}
	if in, ok := strings.CutPrefix(transform, "matrix("); ok {
		for i, s := range strings.FieldsFunc(strings.TrimSuffix(in, ")"), func(r rune) bool { return r == ',' || r == ' ' }) {
			v, err := strconv.ParseFloat(s, 64)
			require.NoError(t, err)
			m[i] = v
		}
	}
	var f found
	lo, hi := form.Point{X: 1e9, Y: 1e9}, form.Point{X: -1e9, Y: -1e9}
	words := strings.Fields(d)
	take := func(i int) form.Point {
		x, err := strconv.ParseFloat(words[i], 64)
		require.NoError(t, err)
		y, err := strconv.ParseFloat(words[i+1], 64)
		require.NoError(t, err)
		const mm = 25.4 / 72
		return form.Point{X: Length((m[0]*x + m[2]*y + m[4]) * mm), Y: Length((m[1]*x + m[3]*y + m[5]) * mm)}
	}
	for i := 0; i < len(words); {
		at := i + 1
		switch words[i] {
		case "C":
			f.curves++
			at = i + 5
		case "M", "L":
			f.corners++
		default:
			i++
			continue
		}
		p := take(at)
		lo = form.Point{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi = form.Point{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		i = at + 2
	}
	f.centre = form.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
	f.wide, f.high = hi.X-lo.X, hi.Y-lo.Y
	return f
}

// circles are the centres of the circles of that diameter on a page.
func circles(page []found, diameter Length) []form.Point {
	var out []form.Point
	for _, f := range page {
		if f.curves >= 4 && math.Abs(float64(f.wide-diameter)) < 0.02 && math.Abs(float64(f.high-diameter)) < 0.02 {
			out = append(out, f.centre)
		}
	}
	return out
}

// diamonds are the joining marks on a page.
func diamonds(page []found) []form.Point {
	var out []form.Point
	for _, f := range page {
		if f.curves == 0 && f.corners >= 4 && math.Abs(float64(f.wide-2*diamondReach)) < 0.02 && math.Abs(float64(f.high-2*diamondReach)) < 0.02 {
			out = append(out, f.centre)
		}
	}
	return out
}

// holesApart is a plain timber whose holes are all of different sizes.
func holesApart() *vehicle.Item {
	p := parts.Plain{Name: "sill", Long: 620, Wide: 60, Deep: 50, Work: []parts.Feature{
		hole("fastening 1", parts.Upper, 60, 30, 9),
		hole("fastening 2", parts.Upper, 250.3, 21.5, 10),
		hole("fastening 3", parts.Upper, 419.35, 33, 11),
		hole("fastening 4", parts.Upper, 560.7, 24, 12),
	}}
	return item(5, "sill", vehicle.Along, vehicle.Alike, "white oak", p, 0)
}

// The distance of two holes on paper is the part's within 0.1 mm, on one sheet and
// across sheets joined by their diamonds; read back from the PDF by poppler.
func TestHolesStandOnPaperAsInTheWood(t *testing.T) {
	tool(t, "pdftocairo", "poppler-utils")
	item := holesApart()
	pdf := saved(t, "holes.pdf", pdfOf(t, item, paperNamed(t, "A4")))
	all, err := sheets(wagon(item), item, paperNamed(t, "A4"))
	require.NoError(t, err)
	on := map[Length]form.Point{} // the holes by diameter, in the frame of the first sheet
	var slip form.Point
	var last []found
	joins := 0
	for i, s := range all {
		if !strings.HasPrefix(s.letter, "A") {
			continue
		}
		page := readPage(t, pdf, i+1)
		if last != nil {
			by := join(t, last, page)
			slip.X, slip.Y = slip.X+by.X, slip.Y+by.Y
			joins++
		}
		last = page
		for _, d := range []Length{9, 10, 11, 12} {
			if at := circles(page, d); len(at) > 0 {
				top := slices.MinFunc(at, func(a, b form.Point) int { return cmp.Compare(a.Y, b.Y) })
				on[d] = form.Point{X: top.X + slip.X, Y: top.Y + slip.Y}
			}
		}
	}
	require.GreaterOrEqual(t, joins, 2)
	require.Len(t, on, 4)
	for _, pair := range []struct {
		a, b   Length
		dx, dy Length // from the part
	}{{9, 10, 190.3, -8.5}, {9, 11, 359.35, 3}, {10, 12, 310.4, 2.5}, {9, 12, 500.7, -6}} {
		a, b := on[pair.a], on[pair.b]
		require.InDelta(t, float64(pair.dx), float64(b.X-a.X), 0.1, "along, holes of %v and %v", pair.a, pair.b)
		require.InDelta(t, float64(pair.dy), float64(a.Y-b.Y), 0.1, "across, holes of %v and %v", pair.a, pair.b)
		t.Logf("holes of %v and %v: out by %.4f along, %.4f across", pair.a, pair.b, b.X-a.X-pair.dx, a.Y-b.Y-pair.dy)
	}
}

// join lays one sheet on the next by their diamonds, and tells by how much the
// frame of the second is to be moved.
func join(t *testing.T, left, right []found) form.Point {
	t.Helper()
	l, r := diamonds(left), diamonds(right)
	slices.SortFunc(l, func(a, b form.Point) int { return cmp.Compare(b.X, a.X) })
	slices.SortFunc(r, func(a, b form.Point) int { return cmp.Compare(a.X, b.X) })
	require.GreaterOrEqual(t, len(l), 2)
	require.GreaterOrEqual(t, len(r), 2)
	l, r = l[:2], r[:2]
	byHeight := func(a, b form.Point) int { return cmp.Compare(a.Y, b.Y) }
	slices.SortFunc(l, byHeight)
	slices.SortFunc(r, byHeight)
	by := form.Point{X: l[0].X - r[0].X, Y: l[0].Y - r[0].Y}
	require.InDelta(t, float64(by.X), float64(l[1].X-r[1].X), 0.02, "both diamonds say the same")
	require.InDelta(t, float64(by.Y), float64(l[1].Y-r[1].Y), 0.02, "both diamonds say the same")
	return by
}

package pattern

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/solid"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// The area within a part's outline is the same out of the PDF (read by poppler),
// the SVG (rendered to a page by librsvg, that read by poppler), the DXF (read by
// ezdxf) and the solid (its field asked line by line).
func TestOutlineAreaFourWays(t *testing.T) {
	rsvg := tool(t, "rsvg-convert", "librsvg2-bin")
	tapered := item(6, "reach", vehicle.Along, vehicle.Alike, "white ash", parts.Reach{
		Long: 900, Wide: 60, Deep: 50, HindWide: 50, HindDeep: 44, RoundEnds: 12,
		Work: []parts.Feature{hole("fastening 1", parts.Upper, 300, 30, 12)},
	}, 0)
	for _, tc := range []struct {
		item *vehicle.Item
		face parts.Face
	}{{felloe(), parts.SecondSide}, {tapered, parts.Upper}, {bolster(), parts.Upper}} {
		want := solidArea(t, tc.item.Stick.Body, tc.face)
		exact := float64(tc.item.Stick.Body.Outline(tc.face).Area())
		near := func(got float64, way string) {
			require.InEpsilon(t, want, got, 2e-5, "%s, %s", tc.item.Name, way)
			t.Logf("%s: %s %.2f mm2, solid %.2f, out by %.1g", tc.item.Name, way, got, want, got/want-1)
		}
		near(exact, "outline")

		var b bytes.Buffer
		require.NoError(t, WriteSVG(&b, wagon(tc.item), tc.item))
		page := filepath.Join(t.TempDir(), "drawn.pdf")
		run(t, rsvg, "-f", "pdf", "-o", page, saved(t, "part.svg", b.Bytes()))
		near(nearestArea(t, page, 1, exact), "SVG")

		paper := paperNamed(t, "A0")
		all, err := sheets(wagon(tc.item), tc.item, paper)
		require.NoError(t, err)
		sheet := 1 + slices.IndexFunc(all, func(s sheet) bool { return s.letter == "A1" })
		near(nearestArea(t, saved(t, "part.pdf", pdfOf(t, tc.item, paper)), sheet, exact), "PDF")

		for _, p := range readDXF(t, []cutFile{{tc.item, tc.face, 0}}) {
			near(profileOf(p.Lines[0].Points).areaOf(), "DXF")
		}
	}
}

// solidArea is the area of a body's shadow on a face, its field asked along lines
// through the middle of its depth.
func solidArea(t *testing.T, b parts.Body, f parts.Face) float64 {
	t.Helper()
	s, err := solid.New(b.Volume())
	require.NoError(t, err)
	wide, high := outline.Extent(b, f)
	through, _ := outline.Extent(b, parts.FirstEnd)
	if f == parts.Upper || f == parts.Under {
		_, through = outline.Extent(b, parts.FirstEnd)
	}
	in := func(x, y float64) bool {
		p := f.Frame(b).At(Length(x), Length(y), -through/2)
		return s.Evaluate(v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)}) < 0
	}
	const lines, steps = 1000, 16
	sum := 0.0
	for i := range lines {
		// Closer towards both ends, where a rounded outline turns upright.
		share := (1 - math.Cos(math.Pi*(float64(i)+0.5)/lines)) / 2
		weight := math.Pi / lines / 2 * math.Sin(math.Pi*(float64(i)+0.5)/lines)
		x := float64(wide) * share
		long := 0.0
		was, at := false, 0.0
		for k := 1; k <= steps+1; k++ {
			y := float64(high) * float64(k) / steps
			if now := in(x, y); now != was {
				edge := crossing1(func(y float64) bool { return in(x, y) == was }, at, y)
				if was {
					long += edge
				} else {
					long -= edge
				}
				was = now
			}
			at = y
		}
		sum += weight * float64(wide) * long
	}
	return sum
}

// crossing1 halves down to where a thing that holds at a no longer does.
func crossing1(holds func(float64) bool, a, b float64) float64 {
	if !holds(a) {
		return a
	}
	for range 34 {
		if m := (a + b) / 2; holds(m) {
			a = m
		} else {
			b = m
		}
	}
	return a
}

// A shape is a closed run read back.
type shape form.Profile

func (s shape) areaOf() float64 { return math.Abs(float64(form.Profile(s).Area())) }

func profileOf(points [][3]float64) shape {
	var s shape
	for _, p := range points {
		s = append(s, form.Vertex{Point: form.Point{X: Length(p[0]), Y: Length(p[1])}, Bulge: p[2]})
	}
	return s
}

// nearestArea is that of the paths on a page whose area is nearest to one.
func nearestArea(t *testing.T, pdf string, page int, want float64) float64 {
	t.Helper()
	svg := run(t, tool(t, "pdftocairo", "poppler-utils"), "-svg", "-noshrink", "-nocenter", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page), pdf, "-")
	best := math.Inf(1)
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return best
		}
		require.NoError(t, err)
		if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "path" {
			a := attributes(e)
			if got := pathArea(t, a["d"], a["transform"]); math.Abs(got-want) < math.Abs(best-want) {
				best = got
			}
		}
	}
}

// pathArea is the area within a path of lines and cubic curves, in square
// millimetres on a page of 1/72 in.
func pathArea(t *testing.T, d, transform string) float64 {
	t.Helper()
	const mm = 25.4 / 72
	scale := mm * mm
	if in, ok := strings.CutPrefix(transform, "matrix("); ok {
		var m []float64
		for _, s := range strings.FieldsFunc(strings.TrimSuffix(in, ")"), func(r rune) bool { return r == ',' || r == ' ' }) {
			v, err := strconv.ParseFloat(s, 64)
			require.NoError(t, err)
			m = append(m, v)
		}
		scale *= math.Abs(m[0]*m[3] - m[1]*m[2])
	}
	words := strings.Fields(d)
	number := func(i int) float64 {
		v, err := strconv.ParseFloat(words[i], 64)
		require.NoError(t, err)
		return v
	}
	sum, x, y, x0, y0 := 0.0, 0.0, 0.0, 0.0, 0.0
	to := func(u, v float64) {
		sum += (x*v - u*y) / 2
		x, y = u, v
	}
	for i := 0; i < len(words); {
		switch words[i] {
		case "M":
			x, y = number(i+1), number(i+2)
			x0, y0 = x, y
			i += 3
		case "L":
			to(number(i+1), number(i+2))
			i += 3
		case "C":
			ax, ay := x, y
			for k := 1; k <= 64; k++ {
				s := float64(k) / 64
				r := 1 - s
				to(r*r*r*ax+3*r*r*s*number(i+1)+3*r*s*s*number(i+3)+s*s*s*number(i+5),
					r*r*r*ay+3*r*r*s*number(i+2)+3*r*s*s*number(i+4)+s*s*s*number(i+6))
			}
			i += 7
		default:
			to(x0, y0)
			i++
		}
	}
	to(x0, y0)
	return math.Abs(sum) * scale
}

package pattern

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// samples are parts of every sort: straight, narrow, handed, sawn to a curve, bent.
func samples() []*vehicle.Item {
	return []*vehicle.Item{bolster(), felloe(), sill(vehicle.Near), sill(vehicle.Off), slat(), seatRail(), holesApart()}
}

func TestSamplesCanBeMade(t *testing.T) {
	for _, i := range samples() {
		require.NoError(t, i.Shape.Validate(), i.Name)
	}
}

// pdfcpu validates against ISO 32000.
func TestPDFIsValid(t *testing.T) {
	for _, i := range samples() {
		require.NoError(t, api.Validate(bytes.NewReader(pdfOf(t, i, paperNamed(t, "A4"))), nil), i.Name)
	}
	for _, name := range []string{"A1", "roll 24 in", "Letter"} {
		require.NoError(t, api.Validate(bytes.NewReader(pdfOf(t, bolster(), paperNamed(t, name))), nil), name)
	}
}

func TestSameVehicleGivesTheSameBytes(t *testing.T) {
	for _, i := range samples() {
		require.True(t, bytes.Equal(pdfOf(t, i, paperNamed(t, "A4")), pdfOf(t, i, paperNamed(t, "A4"))), i.Name)
		var a, b bytes.Buffer
		require.NoError(t, WriteSVG(&a, wagon(i), i))
		require.NoError(t, WriteSVG(&b, wagon(i), i))
		require.Equal(t, a.String(), b.String())
		for _, f := range WorkedFaces(i) {
			a.Reset()
			b.Reset()
			require.NoError(t, WriteDXF(&a, wagon(i), i, f, 0))
			require.NoError(t, WriteDXF(&b, wagon(i), i, f, 0))
			require.Equal(t, a.String(), b.String())
		}
	}
}

// overlapping are the pairs of lines of words that run into each other.
func overlapping(d outline.Drawing) []string {
	var out []string
	for i, a := range d.Texts {
		for _, b := range d.Texts[i+1:] {
			if textBox(a).Grown(-0.05).Meets(textBox(b).Grown(-0.05)) {
				out = append(out, a.Words+" / "+b.Words)
			}
		}
	}
	return out
}

// struck are the words that a line runs through.
func struck(d outline.Drawing) []string {
	var c crowd
	c.add(outline.Drawing{Paths: d.Paths, Circles: d.Circles})
	var out []string
	for _, t := range d.Texts {
		box := outline.Box{Min: t.At, Max: form.Point{X: t.At.X + t.Width, Y: t.At.Y + t.Height}}
		if !c.free(box) {
			out = append(out, t.Words)
		}
	}
	return out
}

func TestNoWordsRunIntoWordsOrLines(t *testing.T) {
	for _, tc := range []struct {
		paper string
		unit  quantity.Unit
	}{
		{"A4", quantity.Inches},
		{"A4", quantity.Millimetres},
		{"A3", quantity.Inches},
		{"Letter", quantity.Inches},
		{"roll 36 in", quantity.Inches},
		{"roll 18 in", quantity.Inches},
	} {
		for _, i := range samples() {
			v := wagon(i)
			v.Unit = tc.unit
			all, err := sheets(v, i, paperNamed(t, tc.paper))
			require.NoError(t, err)
			for _, s := range all {
				clear(t, s, i.Name+", "+tc.paper)
			}
		}
	}
}

func clear(t *testing.T, s sheet, of string) {
	t.Helper()
	require.Empty(t, overlapping(s.frame), "%s %s", of, s.letter)
	require.Empty(t, struck(s.frame), "%s %s", of, s.letter)
	for _, p := range s.panes {
		require.Empty(t, overlapping(p.seen), "%s %s", of, s.letter)
		require.Empty(t, struck(p.seen), "%s %s", of, s.letter)
	}
}

// Everything a sheet's frame shows stands on the paper, clear of its edge and of
// the windows.
func TestFrameStandsClearOfTheWindows(t *testing.T) {
	for _, i := range samples() {
		all, err := sheets(wagon(i), i, paperNamed(t, "A4"))
		require.NoError(t, err)
		for _, s := range all {
			paper := outline.Box{Max: s.size}.Grown(-7)
			for _, w := range s.frame.Texts {
				require.True(t, paper.Holds(textBox(w)), "%s %s: %q is at the edge", i.Name, s.letter, w.Words)
				if strings.HasPrefix(s.letter, "KEY") {
					continue
				}
				for _, p := range s.panes {
					require.False(t, p.window.Meets(textBox(w)), "%s %s: %q is in the window", i.Name, s.letter, w.Words)
				}
			}
		}
	}
}

// Every mark on every face comes out on some sheet.
func TestNothingIsLostBetweenSheets(t *testing.T) {
	for _, i := range samples() {
		l, err := lay(wagon(i), i, paperNamed(t, "A4"))
		require.NoError(t, err)
		for _, c := range l.drawing.Circles {
			require.True(t, l.shown(outline.Box{Min: c.Centre, Max: c.Centre}), "%s: a hole at %v", i.Name, c.Centre)
		}
		for _, w := range l.drawing.Texts {
			require.True(t, l.shown(textBox(w)), "%s: %q is on no sheet whole", i.Name, w.Words)
		}
	}
}

func (l *layout) shown(b outline.Box) bool {
	for r := range l.grid.rows {
		for c := range l.grid.cols {
			if l.needed[r][c] && l.grid.window(r, c).Holds(b) {
				return true
			}
		}
	}
	return false
}

// The off pattern is the near one mirrored: what stands at y on a face of the one
// stands at its height less y on the mirrored face of the other.
func TestOffIsTheMirrorOfNear(t *testing.T) {
	nearItem, off := sill(vehicle.Near), sill(vehicle.Off)
	twin := map[parts.Face]parts.Face{
		parts.Upper: parts.Upper, parts.Under: parts.Under, parts.FirstSide: parts.SecondSide,
		parts.SecondSide: parts.FirstSide, parts.FirstEnd: parts.FirstEnd, parts.SecondEnd: parts.SecondEnd,
	}
	for a, b := range twin {
		near, other := outline.Face(nearItem.Stick, a), outline.Face(off.Stick, b)
		require.Len(t, other.Circles, len(near.Circles), a.String())
		w, h := outline.Extent(nearItem.Stick.Body, a)
		for i, c := range near.Circles {
			m := other.Circles[i]
			want := form.Point{X: c.Centre.X, Y: h - c.Centre.Y}
			if a == parts.FirstEnd || a == parts.SecondEnd {
				want = form.Point{X: w - c.Centre.X, Y: c.Centre.Y}
			}
			require.InDelta(t, float64(want.X), float64(m.Centre.X), 1e-9)
			require.InDelta(t, float64(want.Y), float64(m.Centre.Y), 1e-9)
			require.Equal(t, c.Diameter, m.Diameter)
			require.Equal(t, c.Pen, m.Pen)
		}
	}
}

func TestPaperTooSmallIsRefused(t *testing.T) {
	var b bytes.Buffer
	i := slat()
	for _, p := range []Paper{
		{Name: "card", Width: 105, Height: 148},
		{Name: "nothing"},
		{Name: "odd", Width: Length(math.NaN()), Height: 297},
		RollOf(80),
		RollOf(Length(math.Inf(1))),
	} {
		var small *PaperError
		require.ErrorAs(t, Write(&b, wagon(i), i, p), &small, p.Name)
		require.Zero(t, b.Len(), "nothing is written")
	}
}

// Sheets half the size of A4 are the smallest that serve.
func TestSmallPaperServes(t *testing.T) {
	half := Paper{Name: "half", Width: 148, Height: 210}
	i := sill(vehicle.Near)
	all, err := sheets(wagon(i), i, half)
	require.NoError(t, err)
	for _, s := range all {
		clear(t, s, "half sheets")
	}
	require.NotEmpty(t, pdfOf(t, i, half))
}

func TestFaceWithoutWorkHasNoFile(t *testing.T) {
	var b bytes.Buffer
	var none *FaceError
	require.ErrorAs(t, WriteDXF(&b, wagon(slat()), slat(), parts.Under, 0), &none)
	require.Zero(t, b.Len())
}

func TestNothingToDrawIsRefused(t *testing.T) {
	var b bytes.Buffer
	bare := &vehicle.Item{Number: 1, Name: "sill"}
	require.ErrorContains(t, Write(&b, wagon(bare), bare, paperNamed(t, "A4")), "no shape")
	require.ErrorContains(t, WriteSVG(&b, wagon(bare), bare), "no shape")
	require.ErrorContains(t, WriteDXF(&b, wagon(bare), bare, parts.Upper, 0), "no shape")
	for _, long := range []Length{0, Length(math.NaN()), Length(math.Inf(1)), 1e9} {
		i := slat()
		i.Stick.Body = parts.Square(long, 60, 20)
		i.Stick.Features = nil
		require.ErrorContains(t, Write(&b, wagon(i), i, paperNamed(t, "A4")), "mm", long)
	}
	require.Zero(t, b.Len())
}

func TestLettersTheFontLacksAreToldNotDropped(t *testing.T) {
	var b bytes.Buffer
	i := slat()
	i.Name = "slat 木"
	require.ErrorContains(t, Write(&b, wagon(i), i, paperNamed(t, "A4")), "cannot be set")
	require.ErrorContains(t, WriteSVG(&b, wagon(i), i), "cannot be set")
	require.Zero(t, b.Len())
}

// Words in inches and eighths, diameters, feet and degrees are all in the lettering.
func TestLetteringHasTheTradesSigns(t *testing.T) {
	l, err := newLettering()
	require.NoError(t, err)
	r, lacking := l.lacks("0123456789/ \u00a0½¼¾⅛⅜⅝⅞Ø°′″·±×")
	require.False(t, lacking, "%q", r)
}

package drawing

import (
	"bufio"
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// plank is a plain timber whose outline at 1:5 is 220 mm long.
func plank() parts.Part {
	return parts.Plain{Name: "sill", Long: 1100, Wide: 60, Deep: 80}
}

// runs are the lengths, in pixels, of the level dark runs of an image that are
// between two lengths.
func runs(img image.Image, least, most int) map[int]int {
	out := map[int]int{}
	box := img.Bounds()
	for y := box.Min.Y; y < box.Max.Y; y++ {
		n := 0
		for x := box.Min.X; x <= box.Max.X; x++ {
			dark := false
			if x < box.Max.X {
				r, g, b, _ := img.At(x, y).RGBA()
				dark = r+g+b < 3*0x8000
			}
			if dark {
				n++
				continue
			}
			if n >= least && n <= most {
				out[n]++
			}
			n = 0
		}
	}
	return out
}

func decoded(t *testing.T, data []byte) image.Image {
	img, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return img
}

// A length of 1100 mm at 1:5 is 220 mm on the paper as pdftoppm renders it, and
// as rsvg-convert does the SVG, within a pixel. The outline's line is 0.5 mm wide
// and its corners round: half of it stands out on either side.
func TestAKnownLengthAtScale(t *testing.T) {
	v, it := ofOne(plank(), vehicle.Near, quantity.Inches)
	all, err := Part(v, it, on(t, "A3", Third))
	require.NoError(t, err)
	require.Contains(t, all[0].Words[len(all[0].Words)-2].Words+all[0].Words[len(all[0].Words)-1].Words+words(all[0]), "1:5")

	const dpi = 300
	for name, render := range map[string]func() image.Image{
		"pdf": func() image.Image {
			tool(t, "pdftoppm", "poppler-utils")
			var b bytes.Buffer
			require.NoError(t, WritePDF(&b, v, "plank", all))
			stem := saved(t, "plank.pdf", b.Bytes())
			run(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-png", "-singlefile", stem, strings.TrimSuffix(stem, ".pdf"))
			data, err := os.ReadFile(strings.TrimSuffix(stem, ".pdf") + ".png")
			require.NoError(t, err)
			return decoded(t, data)
		},
		"svg": func() image.Image {
			tool(t, "rsvg-convert", "librsvg2-bin")
			var b bytes.Buffer
			require.NoError(t, WriteSVG(&b, v, "plank", all[0]))
			return decoded(t, run(t, "rsvg-convert", "--dpi-x", fmt.Sprint(dpi), "--dpi-y", fmt.Sprint(dpi), saved(t, "plank.svg", b.Bytes())))
		},
	} {
		t.Run(name, func(t *testing.T) {
			img := render()
			require.InDelta(t, 420*dpi/25.4, img.Bounds().Dx(), 1)
			require.InDelta(t, 297*dpi/25.4, img.Bounds().Dy(), 1)
			want := 220.5 * dpi / 25.4
			found := runs(img, int(want)-40, int(want)+40)
			most, px := 0, 0
			for n, times := range found {
				if times > most || times == most && n > px {
					most, px = times, n
				}
			}
			t.Logf("%d px, %.2f wanted", px, want)
			require.InDelta(t, want, px, 1.5, "a pixel, and the half that the line's edge may fall by")
		})
	}
}

// words are all that is said on a sheet.
func words(s sheet.Sheet) string {
	var b strings.Builder
	for _, w := range s.Words {
		b.WriteString(w.Words + "\n")
	}
	return b.String()
}

// pdfcpu validates against ISO 32000.
func TestPDFsAreValidAndAlways(t *testing.T) {
	v := theWagon(t)
	for _, it := range v.Items[:3] {
		var a, b bytes.Buffer
		require.NoError(t, WritePart(&a, v, it, on(t, "A3", Third)))
		require.NoError(t, WritePart(&b, v, it, on(t, "A3", Third)))
		require.Equal(t, a.Bytes(), b.Bytes(), "the same bytes each time")
		require.NoError(t, api.Validate(bytes.NewReader(a.Bytes()), nil))
	}
	var g, h bytes.Buffer
	require.NoError(t, WriteGeneral(&g, v, on(t, "A1", Third)))
	require.NoError(t, WriteGeneral(&h, v, on(t, "A1", Third)))
	require.Equal(t, g.Bytes(), h.Bytes())
	require.NoError(t, api.Validate(bytes.NewReader(g.Bytes()), nil))
	t.Logf("the general arrangement is %d kB", g.Len()/1000)
}

// The words can be read back from the PDF by another program.
func TestWordsAreReadBack(t *testing.T) {
	tool(t, "pdftotext", "poppler-utils")
	v, it := ofOne(plank(), vehicle.Off, quantity.Millimetres)
	var b bytes.Buffer
	require.NoError(t, WritePart(&b, v, it, on(t, "A3", First)))
	text := string(run(t, "pdftotext", "-layout", saved(t, "p.pdf", b.Bytes()), "-"))
	for _, want := range []string{"OFF", "1:5", "first angle", "white oak", "[80 guess]", "1100", "approved", "3fa9c2d1b7e8", "1 May 2024", "40 1/2 × 3 × 2 1/2", "millimetres"} {
		require.Contains(t, text, want)
	}
	lines := bufio.NewScanner(strings.NewReader(text))
	guess := false
	for lines.Scan() {
		guess = guess || strings.Contains(lines.Text(), "deep") && strings.Contains(lines.Text(), "[GUESS]")
	}
	require.True(t, guess, "the table says of the guess that it is one")
}

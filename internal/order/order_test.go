package order

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// tool finds a program to check against. Where it is missing the test is left
// out, with a word; where CI is "true" it fails.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is missing; install poppler-utils", name)
	}
	t.Skipf("%s is missing; install poppler-utils to check against it", name)
	return ""
}

// A word is one on a page as poppler finds it, in points from the upper left.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// A leaf is a page as poppler finds it.
type leaf struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []word  `xml:"word"`
}

// read reads a PDF back with poppler.
func read(t *testing.T, pdf []byte) []leaf {
	t.Helper()
	name := filepath.Join(t.TempDir(), "sheet.pdf")
	require.NoError(t, os.WriteFile(name, pdf, 0o600))
	out, err := exec.Command(tool(t, "pdftotext"), "-bbox", name, "-").Output()
	require.NoError(t, err)
	var doc struct {
		Pages []leaf `xml:"body>doc>page"`
	}
	require.NoError(t, xml.Unmarshal(out, &doc))
	require.NotEmpty(t, doc.Pages)
	return doc.Pages
}

// whole checks that every word lies within the page's margins and on none other.
func whole(t *testing.T, pages []leaf) {
	t.Helper()
	const mm, slack = 72 / 25.4, 0.6
	for n, p := range pages {
		assert.InDelta(t, wide*mm, p.Width, 0.1)
		assert.InDelta(t, high*mm, p.Height, 0.1)
		for i, w := range p.Words {
			assert.GreaterOrEqual(t, w.XMin, left*mm-slack, "page %d, %s", n+1, w.Text)
			assert.LessOrEqual(t, w.XMax, right*mm+slack, "page %d, %s", n+1, w.Text)
			assert.GreaterOrEqual(t, w.YMin, 8*mm, "page %d, %s", n+1, w.Text)
			assert.LessOrEqual(t, w.YMax, (high-5)*mm, "page %d, %s", n+1, w.Text)
			for _, o := range p.Words[:i] {
				// Poppler's boxes are as high as the font's own line, a little more than ours.
				across := min(w.XMax, o.XMax) - max(w.XMin, o.XMin)
				down := min(w.YMax, o.YMax) - max(w.YMin, o.YMin)
				assert.False(t, across > slack && down > 0.35*(w.YMax-w.YMin), "page %d: %q over %q", n+1, w.Text, o.Text)
			}
		}
	}
}

// said is everything printed, the lines joined, without the pages' feet.
func said(pages []leaf) string {
	var b strings.Builder
	for _, p := range pages {
		for _, w := range p.Words {
			if w.YMin < (high-17)*72/25.4 {
				b.WriteString(w.Text + " ")
			}
		}
	}
	return b.String()
}

func item(number int, name, wood string, off int, long, across, deep quantity.Length) *vehicle.Item {
	return &vehicle.Item{Number: number, ID: vehicle.Slug(name), Name: name, Timber: wood, NumberOff: off, Stick: parts.Stick{Body: parts.Square(long, across, deep)}}
}

func wagon(items ...*vehicle.Item) *vehicle.Vehicle {
	return &vehicle.Vehicle{
		Name: "Orchard wagon", Issue: "A", Date: time.Date(2026, 10, 30, 0, 0, 0, 0, time.UTC),
		Moisture: vehicle.Moisture{Bought: 20, Worked: 14, Service: 12, Driest: 9, Wettest: 15}, Items: items,
	}
}

func list(t *testing.T, v *vehicle.Vehicle, s cutlist.Settings) *cutlist.List {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s.Allowances = cutlist.Usual()
	l, err := cutlist.MakeWith(v, woods, s)
	require.NoError(t, err)
	return l
}

const in = quantity.Inch

func fewParts() []*vehicle.Item {
	near, off := item(3, "sill", "white oak", 1, 84*in, 2.5*in, 2*in), item(3, "sill", "white oak", 1, 84*in, 2.5*in, 2*in)
	near.Hand, off.Hand = vehicle.Near, vehicle.Off
	return []*vehicle.Item{
		item(1, "fore bolster", "white oak", 1, 37*in, 3.5*in, 3*in),
		item(2, "slat", "yellow-poplar", 5, 83*in, 4*in, 0.875*in), near, off,
	}
}

func both(t *testing.T, l *cutlist.List, heed []string) (joiner, sawmill []byte) {
	t.Helper()
	var a, b bytes.Buffer
	require.NoError(t, WriteCutting(&a, l, heed))
	require.NoError(t, WriteOrder(&b, l))
	return a.Bytes(), b.Bytes()
}

// Everything the list says stands on the sheet, within its margins, and nothing
// lies over anything else.
func TestSheetsHoldTheList(t *testing.T) {
	l := list(t, wagon(fewParts()...), cutlist.Settings{})
	joiner, sawmill := both(t, l, []string{"The seat board moves 3/16 in."})
	jp, sp := read(t, joiner), read(t, sawmill)
	whole(t, jp)
	whole(t, sp)
	j, s := said(jp), said(sp)
	for _, n := range l.Lines {
		assert.Contains(t, j, n.Title())
		for _, f := range []cutlist.Figures{l.WorkedFigures(n), l.FinishedFigures(n)} {
			for _, size := range []string{f.Long, f.Wide, f.Thick} {
				assert.Contains(t, strings.ReplaceAll(j, fast, " "), size)
			}
		}
	}
	for _, r := range l.Rough() {
		assert.Contains(t, strings.ReplaceAll(j, fast, " "), l.Figure(r.Sawn.Long))
		assert.Contains(t, strings.ReplaceAll(s, fast, " "), l.Figure(r.Sawn.Wide))
	}
	for _, want := range []string{"sill NEAR", "sill OFF", "Quercus alba", "Liriodendron tulipifera", "The seat board moves"} {
		assert.Contains(t, strings.ReplaceAll(j, fast, " "), want)
	}
	for _, want := range []string{"Quercus alba", "Moisture wanted", "no heart centre", "FAS", "straight-grained"} {
		assert.Contains(t, strings.ReplaceAll(strings.ReplaceAll(s, fast, " "), "‑", "-"), want)
	}
}

// What the wood is reckoned to cost is no business of who sells it.
func TestOrderDoesNotTellThePrice(t *testing.T) {
	l := list(t, wagon(fewParts()...), cutlist.Settings{Prices: []cutlist.Price{{Amount: 9.99, Currency: "$"}}})
	_, sawmill := both(t, l, nil)
	assert.NotContains(t, said(read(t, sawmill)), "$")
}

// Names and remarks of any length are wrapped, over pages where they must, and
// a table's head stands on each of its pages.
func TestNothingIsCutOff(t *testing.T) {
	endless := strings.Repeat("Schwergewichtsbretterwagen", 8)
	v := wagon()
	v.Name = "The " + strings.Repeat("long name of an orchard wagon ", 6) + endless
	for i := range 70 {
		it := item(i+1, fmt.Sprintf("part %d with a very long name indeed that needs lines", i+1), "white oak", 1, quantity.Length(600+i), 60, 40)
		v.Items = append(v.Items, it)
	}
	v.Items[5].Name = endless
	v.Items[8].Notes = []string{"a note\nof two lines\tand a tab"}
	v.Items[6].Notes = []string{strings.Repeat("a note that goes on and on, ", 400)}
	l := list(t, v, cutlist.Settings{Wanted: cutlist.Wanted{Note: endless}})
	joiner, sawmill := both(t, l, []string{strings.Repeat("heed this well ", 900)})
	for _, pdf := range [][]byte{joiner, sawmill} {
		pages := read(t, pdf)
		whole(t, pages)
		assert.Greater(t, len(pages), 1)
		last := pages[len(pages)-1]
		texts := make([]string, len(last.Words))
		for i, w := range last.Words {
			texts[i] = w.Text
		}
		assert.Regexp(t, regexp.MustCompile(fmt.Sprintf("page %d of %d", len(pages), len(pages))), strings.Join(texts, " "))
	}
	heads := 0
	for _, p := range read(t, joiner) {
		if slices.ContainsFunc(p.Words, func(w word) bool { return w.Text == "makes" }) {
			heads++
		}
	}
	assert.Greater(t, heads, 1, "the head stands on each page of its table")
	letters := strings.Count(strings.ReplaceAll(said(read(t, joiner)), " ", ""), "heedthiswell")
	assert.Equal(t, 900, letters, "no word is lost between pages")
}

// One part made of many: a row higher than a page goes on on the next.
func TestRowHigherThanAPage(t *testing.T) {
	v := wagon()
	for i := range 400 {
		v.Items = append(v.Items, item(i+1, fmt.Sprintf("slat %d", i+1), "yellow-poplar", 1, 900, 90, 20))
	}
	joiner, _ := both(t, list(t, v, cutlist.Settings{}), nil)
	pages := read(t, joiner)
	whole(t, pages)
	const head = "Off Sawn long, in Sawn wide, in It makes "
	text := strings.ReplaceAll(strings.ReplaceAll(said(pages), fast, " "), head, "")
	for i := range 400 {
		require.True(t, strings.Contains(text, fmt.Sprintf("1 of No. %d slat %d", i+1, i+1)), "slat %d is lost", i+1)
	}
}

// Same list, same bytes; nothing to buy is said; a letter without a shape is
// refused by name and nothing is written.
func TestSheetsOfEveryList(t *testing.T) {
	l := list(t, wagon(fewParts()...), cutlist.Settings{})
	a, b := both(t, l, nil)
	c, d := both(t, l, nil)
	assert.Equal(t, a, c)
	assert.Equal(t, b, d)

	_, sawmill := both(t, list(t, wagon(), cutlist.Settings{}), nil)
	assert.Contains(t, said(read(t, sawmill)), "Nothing is to be bought.")

	v := wagon(item(1, "sill 枠", "white oak", 1, 900, 60, 40))
	var out bytes.Buffer
	err := WriteCutting(&out, list(t, v, cutlist.Settings{}), nil)
	var fault *LetterError
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, '枠', fault.Letter)
	assert.Zero(t, out.Len())

	metric := wagon(fewParts()...)
	metric.Unit = quantity.Millimetres
	joiner, sawmill := both(t, list(t, metric, cutlist.Settings{}), nil)
	whole(t, read(t, joiner))
	whole(t, read(t, sawmill))
	assert.Contains(t, said(read(t, sawmill)), "millimetres")
}

package page_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"lostwood/internal/page"
	"lostwood/internal/quantity"
)

// The sizes of window that the page must be good in.
var windows = map[string][2]int64{"wide": {1280, 800}, "tablet": {820, 1180}}

func TestPageLoadsByItselfAndShowsItsPicture(t *testing.T) {
	file := demoFile(t)
	for name, size := range windows {
		t.Run(name, func(t *testing.T) {
			b := browse(t, size[0], size[1])
			b.open(file, "")
			b.settle()
			b.shot(name)
			t.Logf("first picture after %s ms", js[string](b, `document.getElementById('stage').dataset.first`))
			require.Greater(t, js[int](b, drawnPixels), 10000, "the vehicle is in the picture")
			require.True(t, js[bool](b, `document.documentElement.scrollWidth <= innerWidth`), "nothing sticks out sideways")
			require.True(t, js[bool](b, `(c => c.scrollHeight <= c.clientHeight + 1)(document.getElementById('controls'))`), "all controls are in sight")
			require.Empty(t, js[string](b, outOfSight), "no control is out of the window")
			b.quiet(file)
		})
	}
}

// drawnPixels counts the pixels of the picture that something is drawn on.
const drawnPixels = `(() => { const c = document.getElementById('canvas'); const g = c.getContext('webgl2'); const p = new Uint8Array(4 * c.width * c.height);
	g.readPixels(0, 0, c.width, c.height, g.RGBA, g.UNSIGNED_BYTE, p); let n = 0; for (let i = 3; i < p.length; i += 4) n += p[i] > 200; return n; })()`

const outOfSight = `[...document.querySelectorAll('.viewer button, .viewer select, .viewer input, .topside button')].filter(e => e.offsetParent && !e.closest('[hidden]'))
	.filter(e => { const r = e.getBoundingClientRect(); return r.left < 0 || r.right > innerWidth || r.top < 0 || r.bottom > innerHeight; }).map(e => e.id || e.textContent).join()`

func TestPickingAPartTellsItsSizes(t *testing.T) {
	m := demoModel(t)
	file := demoFile(t)
	b := browse(t, 1280, 800)
	b.open(file, "#see:view=known")
	b.settle()
	// A letter stands where its part can be seen: a click there picks it.
	x, y := letterAt(b, "foot-board")
	b.do(chromedp.MouseClickXY(x, y))
	require.Contains(t, b.text("#chosen h2"), "Foot board")
	for _, it := range m.Vehicle.Items {
		if it.ID != "foot-board" {
			continue
		}
		for _, d := range it.Sizes {
			require.Contains(t, b.text("#chosen"), d.Words(m.Vehicle.Unit))
			require.Contains(t, b.text("#chosen"), d.Known.String())
		}
		require.Contains(t, js[string](b, `[...document.querySelectorAll('#chosen a')].map(a => a.getAttribute('href')).join(' ')`), m.Vehicle.Stem(it)+".stl")
	}
	require.Contains(t, b.text("#chosen"), "In the cutting list")
	js[bool](b, `(document.querySelector('#chosen details').open = true)`)
	require.Contains(t, b.text("#chosen"), "of the weight")
	b.choose("pick", "fore-axle")
	require.Contains(t, b.text("#chosen"), "two filed notches", "marks of an iron")
	b.quiet(file)
}

// letterAt is where a part's letter stands.
func letterAt(b *browser, id string) (x, y float64) {
	b.t.Helper()
	at := js[[]float64](b, fmt.Sprintf(`(s => { if (!s) return []; const r = s.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })(document.querySelector('#letters [data-of=%q]'))`, id))
	require.Len(b.t, at, 2, "%s has no letter in sight", id)
	return at[0], at[1]
}

// Every spacing of two holes of an iron, measured by the lists, reads as derived.
func TestMeasuredSpacingsAreTheDerivedOnes(t *testing.T) {
	m := demoModel(t)
	b := browse(t, 1280, 800)
	b.open(demoFile(t), "")
	b.settle()
	js[bool](b, `(document.getElementById('measure').click(), true)`)
	got := js[map[string]string](b, `(() => {
		const set = (id, v) => { const e = document.getElementById(id); e.value = v; e.dispatchEvent(new Event('change')); };
		const place = (id, words) => set(id, [...document.getElementById(id).options].find(o => o.textContent.startsWith(words))?.value ?? '');
		const out = {};
		for (const [thing, a, c] of `+pairs(m)+`) { set('from-thing', thing); place('from-place', a); set('to-thing', thing); place('to-place', c);
			out[thing + ' ' + a + ' ' + c] = document.getElementById('measured').firstChild?.textContent ?? ''; }
		return out; })()`)
	seen := 0
	for _, s := range m.Spacings {
		switch {
		case s.Iron != nil && s.Iron.Place != nil && s.Iron.Kind != "hinge":
			require.Equal(t, s.Along.Words(m.Vehicle.Unit), got[s.Iron.ID+" "+s.A+" "+s.B], "%s %s %s", s.Iron.ID, s.A, s.B)
			seen++
		case s.Item != nil && len(s.Item.Parts) == 1 && s.Across.Doubt > 0:
			d := math.Hypot(float64(s.Along.Value), float64(s.Across.Value))
			want := quantity.Size{
				Value: quantity.Length(d), Known: s.Along.Known,
				Doubt: quantity.Length(math.Hypot(float64(s.Along.Value*s.Along.Doubt)/d, float64(s.Across.Value*s.Across.Doubt)/d)),
			}
			words := got[s.Item.Parts[0].ID+" bolt hole, "+s.A+", bolt hole, "+s.B+","]
			if words == "" {
				continue // a hole that is called otherwise
			}
			require.Equal(t, want.Words(m.Vehicle.Unit), words, "%s %s %s", s.Item.Name, s.A, s.B)
			seen++
		}
	}
	require.Greater(t, seen, 100)
}

// pairs are the spacings to measure, as the page's lists call them.
func pairs(m page.Model) string {
	var out []string
	for _, s := range m.Spacings {
		switch {
		case s.Iron != nil:
			out = append(out, fmt.Sprintf("[%q, %q, %q]", s.Iron.ID, s.A, s.B))
		case len(s.Item.Parts) == 1:
			out = append(out, fmt.Sprintf("[%q, %q, %q]", s.Item.Parts[0].ID, "bolt hole, "+s.A+",", "bolt hole, "+s.B+","))
		}
	}
	return "[" + strings.Join(out, ",") + "]"
}

// Two clicks near the holes of an iron catch their centres.
func TestMeasuringByClicksCatchesHoles(t *testing.T) {
	m := demoModel(t)
	b := browse(t, 1280, 800)
	eye := [6]float64{90, 89.9, 2600, -1644, 0, 800}
	b.open(demoFile(t), fmt.Sprintf("#see:show=iron&eye=%g,%g,%g,%g,%g,%g", eye[0], eye[1], eye[2], eye[3], eye[4], eye[5]))
	b.settle()
	js[bool](b, `(document.getElementById('measure').click(), true)`)
	b.settle()
	plate := ironOf(t, m, "hind-plate")
	for _, k := range []int{1, 2} {
		x, y := screen(b, eye, [3]float64{
			plate.Place.At[0].Value.Millimetres() + wide(plate)/2, plate.Place.At[1].Value.Millimetres() - plate.Holes[k].Value.Millimetres(),
			plate.Place.At[2].Value.Millimetres() + 5.6,
		})
		b.do(chromedp.MouseClickXY(x+5, y-4))
	}
	b.shot("measured")
	for _, s := range m.Spacings {
		if s.Iron == plate && s.A == "hole 2" && s.B == "hole 3" {
			require.Contains(t, b.text("#measured"), s.Along.Words(m.Vehicle.Unit))
			require.Contains(t, b.text("#measured"), "Hind plate, hole 2")
		}
	}
}

// screen is where a place stands in the window, by the rule of perspective: the
// eye looks along its axis from so far, and 24 degrees fill the height.
func screen(b *browser, eye [6]float64, p [3]float64) (x, y float64) {
	b.t.Helper()
	r := js[[]float64](b, `(r => [r.x, r.y, r.width, r.height])(document.getElementById('canvas').getBoundingClientRect())`)
	round, high := eye[0]*math.Pi/180, eye[1]*math.Pi/180
	out := [3]float64{math.Cos(round) * math.Cos(high), math.Sin(round) * math.Cos(high), math.Sin(high)}
	right := [3]float64{-math.Sin(round), math.Cos(round), 0}
	up := [3]float64{out[1]*right[2] - out[2]*right[1], out[2]*right[0] - out[0]*right[2], out[0]*right[1] - out[1]*right[0]}
	d := [3]float64{p[0] - eye[3], p[1] - eye[4], p[2] - eye[5]}
	along := func(a [3]float64) float64 { return d[0]*a[0] + d[1]*a[1] + d[2]*a[2] }
	scale := r[3] / 2 / math.Tan(12*math.Pi/180) / (eye[2] - along(out))
	return r[0] + r[2]/2 + scale*along(right), r[1] + r[3]/2 - scale*along(up)
}

// A still eye, so that what moves in the picture moves in the vehicle.
const stillEye = "&eye=60,22,9500,-600,0,1100"

func TestLiftingApartTurningAndSwinging(t *testing.T) {
	b := browse(t, 1280, 800)
	b.open(demoFile(t), "#see:view=timber"+stillEye)
	b.settle()
	at := func(id string) [2]float64 { x, y := letterAt(b, id); return [2]float64{x, y} }
	moved := func(a, c [2]float64) float64 { return math.Hypot(a[0]-c[0], a[1]-c[1]) }
	bed, rail, board := at("fore-bed"), at("near-side-rail-up"), at("tailboard")

	b.choose("turn-0", "30")
	b.settle()
	b.shot("turned")
	require.Greater(t, moved(bed, at("fore-bed")), 8.0, "the fore carriage turns")
	require.Less(t, moved(rail, at("near-side-rail-up")), 1.0, "the body stays")
	b.choose("turn-0", "0")

	b.choose("turn-1", "80")
	b.settle()
	require.Greater(t, moved(board, at("tailboard")), 8.0, "the tailboard swings")
	require.Less(t, moved(bed, at("fore-bed")), 1.0)
	b.choose("turn-1", "0")

	b.choose("apart", "12")
	b.settle()
	require.Less(t, moved(bed, at("fore-bed")), 1.0, "what goes together first comes off last")
	b.choose("apart", "100")
	b.settle()
	b.shot("apart")
	require.Greater(t, moved(rail, at("near-side-rail-up")), 30.0)
	require.Greater(t, moved(bed, at("fore-bed")), 8.0)
}

func TestCutFacesAreClosed(t *testing.T) {
	m := demoModel(t)
	b := browse(t, 1280, 800)
	b.open(demoFile(t), "")
	b.settle()
	for _, way := range []string{"x", "y", "z"} {
		b.choose("cut-way", way)
		for _, at := range []string{"170", "333", "500", "715"} {
			b.choose("cut-at", at)
			require.Equal(t, "0", js[string](b, `document.getElementById('stage').dataset.openCuts`), "%s %s", way, at)
			require.Contains(t, b.text("#say"), "Cut through")
		}
	}
	b.choose("cut-way", "y")
	b.choose("cut-at", "500")
	b.settle()
	b.shot("cut")
	// Across a sill, between its holes: the face of the cut is its width by its depth.
	b.choose("cut-way", "x")
	b.choose("pick", "near-sill")
	for _, it := range m.Vehicle.Items {
		if it.ID != "sill" || it.Hand.String() != "near" {
			continue
		}
		_, w, d := it.Stick.Body.Box()
		want := w.Inches() * d.Inches()
		var got float64
		for _, at := range []string{"402", "418", "431"} {
			b.choose("cut-at", at)
			var a float64
			_, err := fmt.Sscanf(afterWord(b.text("#say"), "cut face is "), "%f", &a)
			require.NoError(t, err, b.text("#say"))
			got = max(got, a)
		}
		require.InDelta(t, want, got, 0.01*want)
	}
}

func afterWord(s, word string) string {
	_, after, _ := strings.Cut(s, word)
	return after
}

func TestKeyboard(t *testing.T) {
	b := browse(t, 1280, 800)
	b.open(demoFile(t), "#see:view=matter"+stillEye)
	b.settle()
	js[bool](b, `(document.getElementById('canvas').focus(), true)`)
	far := func() string { b.settle(); return js[string](b, `location.hash`) }
	before := far()
	b.do(chromedp.KeyEvent(kb.ArrowRight))
	turned := far()
	require.NotEqual(t, before, turned)
	require.Contains(t, turned, "eye=54,22,9500", "six degrees to a key")
	b.do(chromedp.KeyEvent("+"))
	require.Contains(t, far(), "eye=54,22,8260.9")
	b.do(chromedp.KeyEvent("n"))
	first := b.text("#chosen h2")
	require.NotEmpty(t, first)
	b.do(chromedp.KeyEvent("n"))
	require.NotEqual(t, first, b.text("#chosen h2"))
	b.do(chromedp.KeyEvent("p"))
	require.Equal(t, first, b.text("#chosen h2"))
	b.do(chromedp.KeyEvent(kb.Escape))
	require.Contains(t, b.text("#chosen"), "No part is picked")
	// Everything to press is reached by Tab, in the order in which it is read.
	js[bool](b, `(document.querySelector('.skip').focus(), true)`)
	order := []string{"skip"}
	for range 18 {
		b.do(chromedp.KeyEvent(kb.Tab))
		order = append(order, js[string](b, `(e => e.id || e.className || e.name || e.dataset.look || '')(document.activeElement)`))
	}
	all := strings.Join(order, " ")
	place := -1
	for _, id := range []string{"skip", "theme", "print", "canvas", "view", "pick", "apart", "cut-way", "turn-0", "turn-1", "measure", "link", "back", "record"} {
		at := strings.Index(all, id)
		require.Greater(t, at, place, "%s in %s", id, all)
		place = at
	}
}

func TestAViewCanBeLinkedTo(t *testing.T) {
	file := demoFile(t)
	b := browse(t, 1280, 800)
	b.open(file, "#see:view=known&show=timber&part=near-reach&apart=40&cut=x,600&turn=15,20&eye=10,20,7000,-600,0,700")
	b.settle()
	require.Equal(t, []string{"known", "40", "x", "600", "15", "20", "near-reach"},
		js[[]string](b, `['view','apart','cut-way','cut-at','turn-0','turn-1','pick'].map(i => document.getElementById(i).value)`))
	require.Contains(t, b.text("#chosen"), "Near reach")
	b.do(chromedp.Sleep(1))
	require.Contains(t, js[string](b, `location.hash`), "eye=10,20,7000,-600,0,700")
	// What makes no sense is left aside.
	other := browse(t, 1280, 800)
	other.open(file, "#see:view=__proto__&show=x&part=%22%3E%3Cscript%3E&apart=1e999&cut=q,-5&turn=9999&eye=NaN,0")
	other.settle()
	require.Equal(t, "matter", js[string](other, `document.getElementById('view').value`))
	other.quiet(file)
}

func TestWithoutWebGLTheDrawingsAndTheRecordStand(t *testing.T) {
	file := demoFile(t)
	b := browseWith(t, withoutWebGL, 1280, 800)
	b.open(file, "")
	b.shot("without-webgl")
	b.stands()
	b.quiet(file)
}

func TestWithoutScriptTheDrawingsAndTheRecordStand(t *testing.T) {
	file := demoFile(t)
	b := browse(t, 820, 1180)
	_, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	require.NoError(t, err)
	b.open(file, "")
	_, err = chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{})
	require.NoError(t, err)
	b.shot("without-script")
	b.stands()
}

// stands checks that the page is whole without its picture.
func (b *browser) stands() {
	b.t.Helper()
	require.False(b.t, js[bool](b, `document.documentElement.classList.contains('live')`))
	require.Equal(b.t, 3, js[int](b, `[...document.querySelectorAll('#drawings img')].filter(i => i.naturalWidth > 100 && i.getBoundingClientRect().width > 300).length`))
	require.False(b.t, js[bool](b, `[...document.querySelectorAll('.viewer, .topside')].some(e => e.offsetParent)`), "nothing is shown that would not work")
	for _, words := range []string{"What was found", "What was worked out", "wrong end", "Settled by a guess", "Cutting list", "The survey itself", "SHA-256"} {
		require.Contains(b.t, js[string](b, `document.getElementById('record').textContent`), words)
	}
}

func TestPrinted(t *testing.T) {
	m := demoModel(t)
	b := browse(t, 1280, 800)
	b.open(demoFile(t), "#see:view=known")
	b.settle()
	js[bool](b, `(document.getElementById('theme').click(), true)`) // dark on the screen, white on paper
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4), chromedp.PDFPrintBackground()))
	require.NoError(t, err)
	folder := t.TempDir()
	if shots := os.Getenv("LOSTWOOD_SHOTS"); shots != "" {
		folder = shots
	}
	file := filepath.Join(folder, "printed.pdf")
	require.NoError(t, os.WriteFile(file, pdf, 0o644))
	text, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	if err != nil && os.Getenv("CI") != "true" {
		t.Skip("pdftotext (poppler-utils) is not on this machine")
	}
	require.NoError(t, err)
	for _, words := range []string{"Orchard wagon", "What was found", "Lower circle iron", "67 25/32 in, give or take 3/32", m.Vehicle.Hash[:40], "seat-board.long = 36"} {
		require.Contains(t, string(text), words)
	}
	for _, words := range []string{"Look from", "Tell apart by", "Dark page"} {
		require.NotContains(t, string(text), words, "what can only be pressed is not printed")
	}
}

package wheelwright_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/pattern"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
	"lostwood/internal/wheelwright"
)

// The strip's length is the seat's girth, and its mortises stand one pitch apart
// round it, first to last alike.
func TestStripGoesRoundTheNave(t *testing.T) {
	s := subject(t, nil)
	strip := sheetNamed(t, s, "nave: mortises, wound round")
	dx := float64(strip.Check[1].X - strip.Check[0].X)
	require.InDelta(t, math.Pi*10*25.4, dx, 1e-9)
	var middles []float64
	for _, p := range strip.Paths {
		if p.Pen == outline.Work && p.Closed {
			b, _ := (outline.Drawing{Paths: []outline.Path{p}}).Bounds()
			middles = append(middles, float64(b.Min.X+b.Max.X)/2)
			// A mortise 1 in thick, its sides parallel: round the nave a hair more.
			round := 2 * 127 * math.Asin(12.7/127)
			require.InDelta(t, round, float64(b.Max.X-b.Min.X), 1e-9)
			require.InDelta(t, 50.8/math.Cos(float64(s.Wheel.Lean(wheel.Built))), float64(b.Max.Y-b.Min.Y), 1e-6)
		}
	}
	require.Len(t, middles, 12)
	for i := range middles {
		require.InDelta(t, dx/12*(float64(i)+.5), middles[i], 1e-9)
	}
}

// A seat turned square to staggered spokes unrolls to a ring's sector: along its
// two edges the paper is as long as the seat is round there.
func TestStripOfAConedSeat(t *testing.T) {
	s := subject(t, func(s *wheel.Spec) {
		s.Spokes.Stagger, s.Nave.SeatLong, s.Nave.Seat = .5*in, 2.75*in, wheel.SeatSquare
		s.Nave.Bands = nil
	})
	strip := sheetNamed(t, s, "nave: mortises, wound round")
	back, front := s.Wheel.Stations()[1], s.Wheel.Stations()[2]
	require.Greater(t, back.Diameter, front.Diameter)
	var long []float64
	for _, p := range strip.Paths {
		if p.Pen == outline.Edge && len(p.Run) > 10 {
			sum := 0.
			for i := 1; i < len(p.Run); i++ {
				sum += math.Hypot(float64(p.Run[i].X-p.Run[i-1].X), float64(p.Run[i].Y-p.Run[i-1].Y))
			}
			long = append(long, sum)
		}
	}
	require.InDelta(t, math.Pi*float64(back.Diameter), long[0], .02)
	require.InDelta(t, math.Pi*float64(front.Diameter), long[1], .02)
}

// The gauge's peg stands on the spoke's own front: on the line from the front of
// the foot's shoulder side to that of the tip's, worked out in space.
func TestPegTouchesTheSpoke(t *testing.T) {
	s := subject(t, nil)
	w := s.Wheel
	peg := wheelwright.Pegs(w)[0]
	pose := w.SpokePose(0, wheel.Built)
	k := w.Spec.Spokes
	line := w.Row(wheel.FaceRow)
	tip := pose.At.Plus(pose.X, k.FootLong+line.Between).Plus(pose.Z, k.TipWide/2)
	require.InDelta(t, math.Hypot(float64(tip.X), float64(tip.Z)), float64(peg.Out), 1e-9)
	require.InDelta(t, float64(w.Spec.Nave.Forward-tip.Y), float64(peg.In), 1e-9)
}

func sheetNamed(t *testing.T, s wheelwright.Subject, name string) wheelwright.Sheet {
	t.Helper()
	for _, d := range wheelwright.Sheets(s) {
		if d.Name == name {
			return d
		}
	}
	t.Fatalf("there is no sheet %q", name)
	return wheelwright.Sheet{}
}

// Read back with a program that is not ours: the words are there, and the 100 mm
// bars measure what they say in the page's dots.
func TestSheetsReadBack(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is missing")
		}
		t.Skip("pdftotext is missing")
	}
	a4, err := pattern.FindPaper("A4")
	require.NoError(t, err)
	var pdf bytes.Buffer
	require.NoError(t, wheelwright.Write(&pdf, subject(t, nil), time.Time{}, a4))
	name := filepath.Join(t.TempDir(), "wheel.pdf")
	require.NoError(t, os.WriteFile(name, pdf.Bytes(), 0o600))
	text, err := exec.Command("pdftotext", "-layout", name, "-").Output()
	require.NoError(t, err)
	for _, want := range []string{
		"Wheel sheet: near fore wheel", "46 in (1168.4 mm)", "Before the fire", "Cautions", "spoke-set gauge",
		"nave: turning template", "nave: mortises, wound round", "felloe: template", "three thicknesses", "Holmstrom",
	} {
		require.Contains(t, string(text), want)
	}
	pages := strings.Split(string(text), "\f")
	for i, page := range pages {
		if strings.Contains(page, "nave: mortises, wound round") && strings.Contains(page, "sheet 1 of") {
			measuredBars(t, name, i+1)
			return
		}
	}
	t.Fatal("the strip's first sheet was not found")
}

// measuredBars prints a page at ten dots to the millimetre and measures its bars.
func measuredBars(t *testing.T, name string, page int) {
	t.Helper()
	n := strconv.Itoa(page)
	raw, err := exec.Command("pdftoppm", "-r", "254", "-gray", "-f", n, "-l", n, name).Output()
	require.NoError(t, err)
	var wide, high, white int
	_, err = fmt.Sscanf(string(raw[:40]), "P5\n%d %d\n%d\n", &wide, &high, &white)
	require.NoError(t, err)
	dots := raw[len(raw)-wide*high:]
	dark := func(x, y int) bool { return dots[y*wide+x] < 128 }
	longest := func(n int, at func(i int) bool) int {
		best, run := 0, 0
		for i := range n {
			run++
			if !at(i) {
				run = 0
			}
			best = max(best, run)
		}
		return best
	}
	level, upright := 0, 0
	for y := high - 165; y < high-155; y++ { // the bar stands 16 mm above the foot
		level = max(level, longest(wide, func(x int) bool { return dark(x, y) }))
	}
	for x := 120; x < 140; x++ { // 13 mm from the edge
		upright = max(upright, longest(high, func(y int) bool { return dark(x, y) }))
	}
	require.InDelta(t, 1000, level, 4, "the level bar")
	require.InDelta(t, 1000, upright, 4, "the upright bar")
}

func TestListTellsWhatMatters(t *testing.T) {
	var b strings.Builder
	require.NoError(t, wheelwright.WriteList(&b, subject(t, nil)))
	for _, want := range []string{
		"before the tyre is on", "with the tyre on", "nip by rule", "an inch over the girth", "cant by the drawn rule",
		"The nip of 1/2 in (12.7 mm) asks more", "Zinc-coated", "local rules",
	} {
		require.Contains(t, b.String(), want)
	}
}

func TestRollIsRefused(t *testing.T) {
	err := wheelwright.Write(&bytes.Buffer{}, subject(t, nil), time.Time{}, pattern.RollOf(610))
	require.ErrorContains(t, err, "cut paper of at least 180 by 200 mm")
}

// The whole rim comes from the pattern room, and is the wheel's own.
func TestRimIsSetOut(t *testing.T) {
	s := subject(t, nil)
	v := &vehicle.Vehicle{Name: "Army wagon", Slug: "army-wagon", Issue: "A", Unit: quantity.Inches}
	w := &vehicle.Wheel{ID: "near-fore-wheel", Name: "near fore wheel", Hand: vehicle.Near, Spec: s.Wheel.Spec}
	a1, err := pattern.FindPaper("A1")
	require.NoError(t, err)
	var pdf bytes.Buffer
	require.NoError(t, wheelwright.WriteRim(&pdf, v, w, a1))
	require.Greater(t, pdf.Len(), 5000)
	if to := os.Getenv("LOSTWOOD_SHOW"); to != "" {
		require.NoError(t, os.WriteFile(to+"-rim.pdf", pdf.Bytes(), 0o600))
	}
}

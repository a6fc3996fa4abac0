package smith_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/derive"
	"lostwood/internal/listing"
	"lostwood/internal/smith"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

const inch = 25.4

const trolley = `
[vehicle]
name = "Trolley"
issue = "A"
date = 2026-11-02
unit = "in"
[wood]
timber = "white oak"
bought = 12
service = "8 .. 12"
[datum]
zero = ["block.under = 10"]
[iron]
cap = { kind = "plate", runs = "across", thick = "1/4", wide = "2", long = "24", holes = ["2", "8", "22"] }
strap = { kind = "strap", runs = "across", missing = "all", thick = "1/4 ± 1/64", wide = "2 ± 1/64", long = "24 ± 1/16", holes = ["-", "-"] }
stay = { kind = "stay", runs = "along", pair = true, missing = "off", thick = "1/4", wide = "1", long = "12", holes = ["2"], crank = { at = "6", by = "1" } }
ring = { kind = "band", missing = "all", outside = "8 ± 1/64", wide = "1 1/2 ± 1/64", thick = "1/4 ± 1/64" }
fore-tyre = { kind = "tyre", missing = "all", outside = "45 ± 1/16", wide = "2 ± 1/64", thick = "1/2 ± 1/64" }
[part]
block = { kind = "bolster", runs = "across", wide = "3 measured", deep = "4 measured", long = "24 measured" }
[[fastening]]
bolt = "1/2"
pair = true
down = ["cap#1", "block", "strap#1"]
[[fastening]]
bolt = "3/8"
head = "square-neck"
up = ["block", "cap#2"]
[[fastening]]
clip = "3"
missing = "all"
up = ["block", "cap#2"]
`

func listed(t *testing.T, text string) *smith.List {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read("test.toml", []byte(text))
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return smith.Of(v)
}

func named(t *testing.T, l *smith.List, name string) *smith.Piece {
	t.Helper()
	for _, p := range l.Pieces {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no "+name)
	return nil
}

func TestBoltsAreWorkedOut(t *testing.T) {
	l := listed(t, trolley)
	// Worked by hand: two plates of 1/4 and a block of 4 in make a grip of 4 1/2; the
	// nut bears on the strap, so no washer; a 1/2 in square nut is 7/16 thick (ASME
	// B18.2.2) and has 13 threads to the inch (unified coarse): 4 1/2 + 7/16 + 1/13 = 5.014,
	// sold as 5 1/4. Its thread must reach from the end to the strap: 3/4.
	b := named(t, l, "Bolt, square or hexagon head")
	assert.Equal(t, 2, b.NumberOff)
	assert.InDelta(t, 5.25*inch, float64(b.Cut), 0.01)
	assert.InDelta(t, 0.75*inch, float64(b.Sizes[2].Value), 0.01)
	assert.InDelta(t, float64(b.Cut), sum(b), 1e-9, "the pieces add up to the length")

	// The carriage bolt's nut bears on the cap: 4 1/4 + 21/64 + 1/16 = 4.641, sold as 4 3/4.
	c := named(t, l, "Carriage bolt, square neck")
	assert.Equal(t, 1, c.NumberOff)
	assert.InDelta(t, 4.75*inch, float64(c.Cut), 0.01)
}

// A bolt that was seen is not on the list; nor is an iron that is there.
func TestWhatIsThereIsNotListed(t *testing.T) {
	l := listed(t, strings.Replace(trolley, "head = \"square-neck\"", "head = \"square-neck\"\ngrip = \"4 1/4\"", 1))
	for _, p := range l.Pieces {
		assert.NotContains(t, p.Name, "Carriage bolt")
		assert.NotEqual(t, "Cap", p.Name)
	}
	none := listed(t, strings.NewReplacer(
		`missing = "all", `, "", `missing = "off", `, "", `holes = ["-", "-"]`, `holes = ["2", "22"]`, "missing = \"all\"\n", "",
		"pair = true\ndown = [\"cap#1\"", "pair = true\ngrip = [\"4 1/2\", \"4 1/2\"]\ndown = [\"cap#1\"", "head = \"square-neck\"", "head = \"square-neck\"\ngrip = \"4 1/4\"",
	).Replace(trolley))
	assert.Empty(t, none.Pieces)
	var b bytes.Buffer
	require.NoError(t, none.Write(&b, listing.Table))
	assert.Contains(t, b.String(), "no iron is missing")
	b.Reset()
	require.NoError(t, none.WritePDF(&b))
}

func TestHolesOfAMissingStrapComeFromWhatItsBoltsGoThrough(t *testing.T) {
	p := named(t, listed(t, trolley), "Strap")
	require.Len(t, p.Holes, 2)
	// Its bolts stand where the cap has them, 2 in from either end; the two are as long.
	assert.InDelta(t, 2*inch, float64(p.Holes[0].At.Value), 0.5)
	assert.InDelta(t, 22*inch, float64(p.Holes[1].At.Value), 0.5)
	assert.InDelta(t, 17.0/32*inch, float64(p.Holes[0].Diameter), 1e-6, "the bolt and 1/32 of play (National Design Specification, 12.1.3.2)")
	assert.Contains(t, p.Fits, "block")
	// 24 x 2 x 1/4 in less two holes of 17/32, at 7850 kg/m3.
	volume := (24*2 - 2*math.Pi/4*17*17/32/32) * 0.25 * inch * inch * inch
	assert.InDelta(t, volume*7850e-9, float64(p.Each), 0.002)
}

func TestRoundWork(t *testing.T) {
	l := listed(t, trolley)
	// Ring: 8 in over the iron and 1/4 thick is 7 1/2 inside: pi (7.5 + .25) and 5/8 for
	// the weld (Hasluck, Cassell's Cyclopaedia of Mechanics, Tyring cart wheels).
	r := named(t, l, "Ring")
	assert.InDelta(t, (math.Pi*7.75+0.625)*inch, float64(r.Cut), 0.01)
	// Tyre: the worked figures for a rim of 44 in, a bar 1/2 in thick, a nip of 1/2 in and
	// 5/8 for the weld: 139.93 in reckoned, 139.86 by three thicknesses (Holmstrom's rule).
	y := named(t, l, "Fore tyre")
	assert.InDelta(t, 139.93*inch, float64(y.Cut), 0.005*inch)
	require.Greater(t, len(y.Rules), 1)
	assert.InDelta(t, 139.86*inch, float64(y.Rules[1].Cut), 0.005*inch)
}

func TestCrankedWorkIsLonger(t *testing.T) {
	p := named(t, listed(t, trolley), "Off stay")
	assert.Equal(t, 1, p.NumberOff, "the near one is there")
	// A step of 1 in at 45 degrees: its diagonal, the square root of 2, for 1 in of length.
	assert.InDelta(t, (12+math.Sqrt2-1)*inch, float64(p.Cut), 0.01)
	require.Len(t, p.Steps, 1)
}

// Machinery's Handbook, allowance for a square bend in steel: 0.64 T + 1.57 R (from memory).
func TestBendAllowance(t *testing.T) {
	for _, tt := range []struct{ inside, thick float64 }{{0, 6}, {3, 6}, {10, 5}} {
		assert.InDelta(t, 0.64*tt.thick+1.57*tt.inside, float64(smith.Allowance(smith.Quarter, smith.Length(tt.inside), smith.Length(tt.thick))), 0.001*tt.inside+1e-9)
	}
	// An easy bend keeps the length of its middle line, as a tyre does: a whole turn is pi (d + t).
	assert.InDelta(t, math.Pi*(1000+12), float64(smith.Allowance(2*math.Pi, 500, 12)), 1e-9)
	assert.InDelta(t, math.Pi*(1000+12), float64(smith.Hoop(1000, 12)), 1e-9)
}

// A clip 3 in between its legs round 4 in of block and 1/4 of cap, of 1/2 in round
// bar, by hand: legs 4 1/4 + 7/16 + 1/13; the bends 1/4 in inside.
func TestAClip(t *testing.T) {
	p := named(t, listed(t, trolley), "Clip")
	leg := 4.25 + 7.0/16 + 1.0/13
	bend := 0.64*0.5 + math.Pi/2*0.25
	assert.InDelta(t, ((3-0.5)+2*(leg-0.25)+2*bend)*inch, float64(p.Cut), 0.02)
}

func TestWhatIsNotKnownIsSettledFirst(t *testing.T) {
	l := listed(t, strings.Replace(trolley, `deep = "4 measured", `, "", 1))
	b := named(t, l, "Bolt, square or hexagon head")
	assert.NotEmpty(t, b.Open)
	assert.Zero(t, b.Cut)
}

func TestTheListIsReadByPrograms(t *testing.T) {
	l := listed(t, trolley)
	var b bytes.Buffer
	require.NoError(t, l.Write(&b, listing.CSV))
	rows, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	assert.Len(t, rows, len(l.Pieces)+1)
}

func TestTheSketchesAreSound(t *testing.T) {
	l := listed(t, trolley)
	var b, again bytes.Buffer
	require.NoError(t, l.WritePDF(&b))
	require.NoError(t, l.WritePDF(&again))
	assert.Equal(t, b.Bytes(), again.Bytes())
	require.NoError(t, api.Validate(bytes.NewReader(b.Bytes()), nil))
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not here")
	}
	file := filepath.Join(t.TempDir(), "smith.pdf")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	out, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	require.NoError(t, err)
	for _, s := range []string{"Fore tyre, 1 off", "139 15/16 in", "Ø17/32", "1 in", "black as well as red", "Trolley"} {
		assert.Contains(t, string(out), s)
	}
}

func sum(p *smith.Piece) float64 {
	s := 0.0
	for _, a := range p.Sum {
		s += float64(a.Value)
	}
	return s
}

package derive

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A bench is a small survey to hang evidence of one kind on: a bed and a board on it,
// bolted through a plate.
type bench struct{ head, doubts, iron, bolt, part, fastening, evidence string }

// onBench is the plain one: plate 6 mm, board and bed.
func onBench() bench {
	return bench{
		iron: `plate = { kind = "plate", runs = "across", thick = "6 ± 0.1", wide = "60", long = "900", holes = ["100", "450", "800"] }`,
		part: `board = { kind = "bolster", runs = "across", long = "900", wide = "80" }
bed = { kind = "sand board", runs = "across", long = "900", wide = "80" }`,
	}
}

func (b bench) text() string {
	return fmt.Sprintf(`[vehicle]
name = "Bench"
issue = "A"
date = 2026-10-30
unit = "mm"
[wood]
timber = "white oak"
bought = 15
service = 10
[doubts]
contact = "0.001"
%s
%s
[iron]
%s
[bolt]
%s
[part]
%s
%s
[evidence]
%s
`, b.doubts, b.head, b.iron, b.bolt, b.part, b.fastening, b.evidence)
}

func (b bench) study(t *testing.T) *Study {
	t.Helper()
	s, err := survey.Read("bench.toml", []byte(b.text()))
	require.NoError(t, err, "%s", b.text())
	woods, err := timber.Published()
	require.NoError(t, err)
	st, err := Examine(s, woods)
	require.NoError(t, err)
	return st
}

// tells asks why of a size.
func (st *Study) tells(t *testing.T, name string) *vehicle.Account {
	t.Helper()
	a, err := st.Why(name)
	require.NoError(t, err)
	return a[0]
}

// near holds a size and its give or take to what they should be, in millimetres.
func near(t *testing.T, s quantity.Size, value, doubt float64) {
	t.Helper()
	require.InDelta(t, value, s.Value.Millimetres(), 0.002*math.Abs(value)+1e-3)
	require.InDelta(t, doubt, s.Doubt.Millimetres(), 0.01*doubt+1e-4)
}

// A tape of class II may be 0.3 mm + 0.2 mm for each metre begun off: over 1.9 m
// 0.7 mm (Directive 2014/32/EU, annex X), as a standard uncertainty over the root of
// three (GUM 4.3.7); and what it is off by is off in every reading alike.
func TestTapeOfClass(t *testing.T) {
	b := onBench()
	b.head = "[instrument]\nlong-tape = { kind = \"tape\", class = \"II\", read = \"0.5\" }"
	b.iron = `plate = { kind = "plate", runs = "across", thick = "6", wide = "60", long = "1900 by long-tape", holes = ["1100 by long-tape", "1800 by long-tape"] }`
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\"]\ngrip = \"86\""
	st := b.study(t)
	near(t, st.tells(t, "plate.long").Size, 1900, math.Hypot(0.5, 0.7/math.Sqrt(3)))
	m := st.network.byID["plate"]
	x := st.fit.X
	apart := m.hole(x, 1, 1).Minus(m.hole(x, 0, 1))
	require.InDelta(t, math.Hypot(0.5, 0.5), st.fit.DoubtOf(apart), 1e-6, "both holes are in the same metre: what the tape is off by falls out")
	require.Contains(t, strings.Join(st.tells(t, "plate.long").GiveOrTake, " "), "instrument called long-tape")
}

// A stretched tape: 6 mm off in 3 m is 2 mm off in 1 m; a worn end is off in all.
func TestStretchedTape(t *testing.T) {
	b := onBench()
	b.head = "[instrument]\nold = { kind = \"tape\", read = \"0.5\", off = \"6\", long = \"3000\", zero = \"1\" }"
	b.iron = `plate = { kind = "plate", runs = "across", thick = "6", wide = "60", long = "1000 by old", holes = ["100", "800"] }`
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\"]\ngrip = \"86\""
	near(t, b.study(t).tells(t, "plate.long").Size, 1000, math.Sqrt(0.25+4+1))
}

// On rust callipers are worth less.
func TestCallipersOnRust(t *testing.T) {
	b := onBench()
	b.doubts = "rust = \"0.3\"\ncallipers = \"0.4\""
	b.iron = `plate = { kind = "plate", runs = "across", thick = "6 by callipers on rust", wide = "60", long = "900", holes = ["100", "800"] }`
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\"]\ngrip = \"86\""
	near(t, b.study(t).tells(t, "plate.thick").Size, 6, 0.5)
}

// through are three bolts through plate and board, in its three holes.
func through(bolts ...string) string {
	s := ""
	for k, b := range bolts {
		s += fmt.Sprintf("[[fastening]]\nbolt = %s\ndown = [\"plate#%d\", \"board\"]\n", b, k+1)
	}
	return s
}

// Nuts that were not measured are of one pattern: three bolts are no surer of it than
// one. Half an inch: 7/16 in modern (ASME B18.2.2), 1/2 in old (Sellers), between
// them 15/32 in, give or take 1/16 in over the root of twelve (GUM 4.3.7).
func TestNutsOfOnePattern(t *testing.T) {
	b := onBench()
	for _, id := range []string{"a", "b", "c"} {
		b.bolt += id + " = { diameter = \"1/2 in\", length = \"120 ± 0.1\", proud = \"4 ± 0.1\" }\n"
	}
	b.fastening = through(`"a"`, `"b"`, `"c"`)
	st := b.study(t)
	nut := 15. / 32 * 25.4
	one := math.Sqrt(0.02/3 + 0.01) // three bolts' lengths, the plate
	near(t, st.tells(t, "board.deep").Size, 120-4-nut-6, math.Hypot(one, 25.4/16/math.Sqrt(12)))
	require.Contains(t, strings.Join(st.tells(t, "board.deep").GiveOrTake, " "), "nuts that were not measured are of one pattern")
	b.head = "[smith]\nnut = \"old\""
	near(t, b.study(t).tells(t, "board.deep").Size, 120-4-12.7-6, math.Sqrt(0.02/3+0.01+math.Pow(25.4/64, 2)/3))
}

// One smith left as much thread past every nut: a millimetre of doubt of his habit is
// no less for three bolts.
func TestSmithsHabit(t *testing.T) {
	b := onBench()
	for _, id := range []string{"a", "b", "c"} {
		b.bolt += id + " = { diameter = \"1/2 in\", length = \"120 ± 0.1\", nut = \"12 ± 0.1\" }\n"
	}
	b.fastening = through(`"a"`, `"b"`, `"c"`)
	b.head = "[smith]\nproud = \"5 ± 1\""
	half := 25.4 / 13 / 2 // thread of a 1/2 in bolt: 13 to the inch
	st := b.study(t)
	near(t, st.tells(t, "board.deep").Size, 120-5-12-6, math.Sqrt(1+(half*half+0.02)/3+0.01))
	require.Contains(t, strings.Join(st.tells(t, "board.deep").GiveOrTake, " "), "taking it that the smith left as much thread past every nut")
}

// Washers by the table: wide, for 1/2 in, .086 to .132 in thick (ASME B18.21.1), any
// thickness between as likely: .109 in, give or take .0133 in.
func TestWashersByTable(t *testing.T) {
	b := onBench()
	b.bolt = `a = { diameter = "1/2 in", length = "120 ± 0.1", proud = "4 ± 0.1", nut = "12 ± 0.1", washer = "wide" }`
	b.fastening = through(`"a"`)
	near(t, b.study(t).tells(t, "board.deep").Size, 120-4-12-0.109*25.4-6, math.Sqrt(0.04+math.Pow(0.01328*25.4, 2)))
}

// A nut rusted in its place says head to nut at once; a head drawn into the wood adds
// to it; a bolt that is bent says it less surely, and why.
func TestRustedCrushedBent(t *testing.T) {
	b := onBench()
	b.bolt = `a = { diameter = "12", rusted = "90 ± 0.3" }`
	b.fastening = through(`"a"`)
	near(t, b.study(t).tells(t, "board.deep").Size, 84, math.Hypot(0.3, 0.1))

	b.bolt = `a = { diameter = "12", rusted = "90 ± 0.3", crushed = "2 ± 0.4" }`
	near(t, b.study(t).tells(t, "board.deep").Size, 86, math.Sqrt(0.09+0.16+0.01))

	b.bolt = `a = { diameter = "12", mark = "90 ± 0.3", bent = "6" }`
	st := b.study(t)
	near(t, st.tells(t, "board.deep").Size, 84, math.Sqrt(0.09+math.Pow(8*36/(3*90.), 2)+0.01))
	require.Contains(t, strings.Join(st.tells(t, "board.deep").GiveOrTake, " "), "its bolt is 6.0 mm off the straight")

	b.bolt = `a = { diameter = "12", length = "120 ± 0.3", nut = "12 ± 0.1", proud = "4 ± 0.1", worn = "3" }`
	st = b.study(t)
	near(t, st.tells(t, "board.deep").Size, 98, math.Sqrt(0.09+9+0.02+0.01))
	require.Contains(t, strings.Join(st.tells(t, "board.deep").GiveOrTake, " "), "up to 3.0 mm of its bolt's end is gone")
}

// A bolt whose shank is gone is known by its neck, which is as wide as it was thick.
func TestNeckPrint(t *testing.T) {
	b := onBench()
	b.bolt = `a = { neck = "3/8 in", mark = "90" }`
	b.fastening = through(`"a"`)
	st := b.study(t)
	require.InDelta(t, 9.525, st.Vehicle.Fastenings[0].Diameter.Millimetres(), 1e-6)
}

// A bruise on the shank tells where two timbers met, which the grip alone does not.
func TestBruiseTellsWhereTimbersMet(t *testing.T) {
	b := onBench()
	b.doubts = "shear = \"1\""
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\", \"bed\"]\ngrip = \"146 ± 0.5\"\nshear = \"board 86\"\n"
	st := b.study(t)
	near(t, st.tells(t, "board.deep").Size, 80, math.Sqrt(1+0.01))
	b.fastening = strings.Replace(b.fastening, "shear = \"board 86\"\n", "", 1)
	require.Equal(t, quantity.Unknown, b.study(t).tells(t, "board.deep").Size.Known)
}

// Bolts of a row each say their own; "-" is one not found.
func TestEachItsOwnBolt(t *testing.T) {
	b := onBench()
	b.bolt = "a = { diameter = \"12\", mark = \"90\" }\nc = { diameter = \"12\", mark = \"92\" }"
	b.part = `board = { kind = "bolster", runs = "across", number = 3, long = "900", wide = "80" }`
	b.iron = `plate = { kind = "strap", runs = "along", thick = "6 ± 0.1", wide = "60", long = "900", holes = ["100", "450", "800"] }`
	b.doubts = "row = \"10 m\""
	b.fastening = "[[fastening]]\nbolt = [\"a\", \"-\", \"c\"]\ndown = [\"plate#1,2,3\", \"board\"]\n"
	st := b.study(t)
	require.InDelta(t, 84, st.tells(t, "board-1.deep").Size.Value.Millimetres(), 0.01)
	require.InDelta(t, 86, st.tells(t, "board-3.deep").Size.Value.Millimetres(), 0.01)
}

// A grip speaks of the wood on the day the nut was run down. White oak moves 0.180 %
// radially and 0.365 % tangentially for each percent (Wood Handbook, table 13-5):
// half way, 0.2725 %. At 16 % a board of 80 mm at 10 % was 1.635 % thicker.
func TestGripSpeaksForItsDay(t *testing.T) {
	b := onBench()
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\"]\ngrip = \"87.308 ± 0.1\"\n"
	near(t, b.study(t).tells(t, "board.deep").Size, 81.308, math.Hypot(0.1, 0.1))
	damp := strings.Replace(b.text(), "service = 10", "service = 10\ntightened = \"16 ± 2\"", 1)
	s, err := survey.Read("bench.toml", []byte(damp))
	require.NoError(t, err)
	woods, err := timber.Published()
	require.NoError(t, err)
	st, err := Examine(s, woods)
	require.NoError(t, err)
	points, rings := 0.002725*2*80, 0.000925*6*80/math.Sqrt(3)
	near(t, st.tells(t, "board.deep").Size, 80, math.Sqrt(0.02+points*points+rings*rings))
	require.Contains(t, strings.Join(st.tells(t, "board.deep").GiveOrTake, " "), "16 percent")
}

// A strap bent to an arc of a metre's radius, a metre long: straightened, its holes
// are where they were made. Geometry: p = R (sin t + sin 1/2), rise R (1 - cos 1/2).
func TestBentStrapIsStraightened(t *testing.T) {
	at := func(arc float64) float64 { return 1000 * (math.Sin(arc/1000-0.5) + math.Sin(0.5)) }
	b := onBench()
	b.iron = fmt.Sprintf(`strap = { kind = "strap", runs = "across", thick = "6", wide = "60", long = "%.3f", bent = "%.3f ± 0.1", holes = ["%.3f", "%.3f", "%.3f"] }`,
		at(1000), 1000*(1-math.Cos(0.5)), at(100), at(500), at(950))
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"strap#1\", \"board\"]\ngrip = \"86\"\n"
	st := b.study(t)
	for hole, want := range map[int]float64{1: 100, 2: 500, 3: 950} {
		s := st.tells(t, fmt.Sprintf("strap.hole %d", hole)).Size
		require.InDelta(t, want, s.Value.Millimetres(), 0.01)
		added := want - at(want)
		require.Greater(t, s.Doubt.Millimetres(), 0.25*added, "what straightening adds is not sure")
	}
	require.InDelta(t, 1000, st.tells(t, "strap.long").Size.Value.Millimetres(), 0.01)
	require.Contains(t, strings.Join(st.tells(t, "strap.hole 2").GiveOrTake, " "), "the bend of the strap is an arc of a circle")
}

// A crank that was meant is kept: what it is bolted to beyond it stands as much higher.
func TestCrankIsKept(t *testing.T) {
	b := onBench()
	b.iron = `strap = { kind = "strap", runs = "along", thick = "6", wide = "60", long = "900", holes = ["100", "800"], crank = { at = "450", by = "40 ± 0.5" } }`
	b.fastening = `[[fastening]]
bolt = "12"
down = ["strap#1", "board"]
grip = "86"
[[fastening]]
bolt = "12"
down = ["strap#2", "bed"]
grip = "86"
`
	st := b.study(t)
	top := st.tells(t, "board.top").Size.Value.Millimetres()
	require.InDelta(t, top+40, st.tells(t, "bed.top").Size.Value.Millimetres(), 1e-6)
}

// A piece of tyre by points on its outside: a circle of 500 mm through eleven of them
// within 40 degrees, from edges that lie anyhow. Oracle: plain geometry.
func TestTyreByPoints(t *testing.T) {
	var pts []string
	for k := range 11 {
		a := math.Pi/2 + (float64(k)-5)*4*math.Pi/180
		pts = append(pts, fmt.Sprintf(`["%.3f ± 0.3", "%.3f ± 0.3"]`, 300-500*math.Cos(a), 500*math.Sin(a)-400))
	}
	b := onBench()
	b.iron = `tyre = { kind = "tyre", wide = "40", thick = "10 ± 0.1", points = [` + strings.Join(pts, ", ") + `] }`
	b.part = `felloe = { kind = "felloe", runs = "round", number = 6, felloes = 6, deep = "60 measured" }`
	b.evidence = `iron = ["felloe.radius = tyre.radius ± 0.1"]`
	st := b.study(t)
	s := st.tells(t, "felloe.radius").Size
	require.InDelta(t, 490, s.Value.Millimetres(), 0.01)
	normal := mat.NewSymDense(3, nil)
	for k := range 11 { // the slopes of a distance to the middle, and of the radius
		sin, cos := math.Sincos((float64(k) - 5) * 4 * math.Pi / 180)
		normal.SymRankOne(normal, 1/0.09, mat.NewVecDense(3, []float64{sin, cos, 1}))
	}
	var c mat.Cholesky
	require.True(t, c.Factorize(normal))
	var inverse mat.SymDense
	require.NoError(t, c.InverseTo(&inverse))
	require.InDelta(t, math.Sqrt(inverse.At(2, 2)+0.02), s.Doubt.Millimetres(), 0.01)
}

// Holes off the middle line of their iron: two bolts side by side stand as far apart
// as their holes do.
func TestHolesAcross(t *testing.T) {
	b := onBench()
	b.iron = `plate = { kind = "plate", runs = "across", thick = "6", wide = "120", long = "900", holes = ["100", "800"], across = ["30", "90"] }`
	b.part = `board = { kind = "bolster", runs = "across", long = "900", wide = "160", centred = false }`
	b.fastening = "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#1\", \"board\"]\ngrip = \"86\"\n[[fastening]]\nbolt = \"12\"\ndown = [\"plate#2\", \"board\"]\ngrip = \"86\"\n"
	st := b.study(t)
	first, second := st.Vehicle.Fastenings[0].Head[0].Value, st.Vehicle.Fastenings[1].Head[0].Value
	require.InDelta(t, 60, (second - first).Millimetres(), 0.01, "from its hind edge")
}

// Holes read from the middle of an iron whose length nobody knows hold each other, and
// a hole that is not trusted holds nothing.
func TestHolesFromTheMiddle(t *testing.T) {
	b := onBench()
	b.iron = `plate = { kind = "plate", runs = "across", thick = "6", wide = "60", from = "middle", holes = ["-350", "-", "350"] }`
	b.fastening = through(`"12"`, `"12"`, `"12"`)
	st := b.study(t)
	f := st.Vehicle.Fastenings
	require.InDelta(t, 700, (f[0].Head[1].Value - f[2].Head[1].Value).Millimetres(), 0.01)
	require.Equal(t, quantity.Unknown, st.tells(t, "plate.hole 2").Size.Known)
}

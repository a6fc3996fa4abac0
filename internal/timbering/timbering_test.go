package timbering_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
	"lostwood/internal/vehicle"
)

// wagon is the demo's survey with lines more in [wood], and more below it.
func wagon(t *testing.T, wood, more string) *survey.Survey {
	t.Helper()
	text := strings.Replace(string(demo.Survey()), "bought  =", wood+"bought  =", 1) + more
	s, err := survey.Read("wagon.toml", []byte(text))
	require.NoError(t, err)
	return s
}

func published(t *testing.T) timber.Catalogue {
	t.Helper()
	c, err := timber.Published()
	require.NoError(t, err)
	return c
}

func derived(t *testing.T, s *survey.Survey) (*vehicle.Vehicle, timber.Catalogue) {
	t.Helper()
	woods, err := timbering.Woods(s, published(t))
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return v, woods
}

const said = `[make]
planing = "1/8"
kerf = "1/8"
waste = { straight = 30 }
[yard]
thickness = [["2", "1 3/4"], ["4", "3 3/4"]]
grade = "first quality"
run-out = 15
sap = "refused"
note = "from one tree"
currency = "$"
[[price]]
amount = 8
per = "bdft"
[[price]]
timber = "Quercus alba"
thickness = "2"
amount = 2100
per = "m3"
[part.spare]
kind = "sill"
runs = "along"
rings = "flat"
timber = "jarrah"
[[price]]
timber = "jarrah"
amount = 5
per = "superft"
[[splinter]]
part = "reach"
density = 690
moisture = 9
look = "pale"
`

func TestSettings(t *testing.T) {
	s := wagon(t, "rings = \"quarter\"\n", said)
	s.Boards = []survey.Board{
		{ID: "b1", Timber: "white oak", Thick: 2 * quantity.Inch, Number: 1},
		{ID: "b2", Timber: "white oak", Thick: 2 * quantity.Inch, Moisture: 14, Number: 3},
	}
	for i := range s.Parts {
		if s.Parts[i].ID == "reach" {
			s.Parts[i].Rings = &timber.Rings{}
		}
	}
	v, woods := derived(t, s)
	got, err := timbering.Settings(s, v, woods)
	require.NoError(t, err)

	want := cutlist.Usual()
	want.Planing, want.Kerf, want.StraightWaste = quantity.Inch/8, quantity.Inch/8, 0.30
	require.Equal(t, want, got.Allowances, "what the survey leaves unsaid is the usual")
	require.Equal(t, cutlist.Wanted{Grade: "first quality", RunOut: 15, Sap: cutlist.SapRefused, Note: "from one tree"}, got.Wanted)
	require.Len(t, got.Stock, 2)
	require.Equal(t, "2 in", got.Stock[0].Name)
	require.Equal(t, 2*quantity.Inch, got.Stock[0].Rough)
	require.InDelta(t, 44.45, got.Stock[0].Planed.Millimetres(), 1e-9)
	require.Equal(t, []cutlist.Price{
		{Amount: 8, Per: cutlist.BoardFoot, Currency: "$"},
		{Timber: "Quercus alba", Stock: "2 in", Amount: 2100, Per: cutlist.CubicMetre, Currency: "$"},
	}, got.Prices, "the spare cannot be made yet, and its price waits")
	require.Equal(t, []cutlist.PartRings{{Rings: timber.Rings{Lie: timber.QuarterSawn}}, {Part: "reach"}}, got.Rings)
	require.Equal(t, []cutlist.Board{{ID: "b2", Timber: "white oak", Thick: 2 * quantity.Inch, Moisture: 14, Number: 3}}, got.Boards,
		"a board that was not measured is not said to be too wet")

	_, err = cutlist.MakeWith(v, woods, got)
	require.NoError(t, err)

	piece, look := timbering.Splinter(s, "reach")
	require.Equal(t, timber.Splinter{Density: 690, At: 9}, piece)
	require.Equal(t, "pale", look)
	piece, look = timbering.Splinter(s, "sill")
	require.Zero(t, piece)
	require.Empty(t, look)
}

// Where the survey says nothing the list is as it always was.
func TestNothingSaid(t *testing.T) {
	s := wagon(t, "", "")
	v, woods := derived(t, s)
	got, err := timbering.Settings(s, v, woods)
	require.NoError(t, err)
	require.Equal(t, cutlist.Settings{Allowances: cutlist.Usual()}, got)
	require.Equal(t, published(t).Woods(), woods.Woods())
}

// A wood of the survey's own is found by its names, in the parts and the
// list; one of the list keeps what the survey does not state.
func TestWoods(t *testing.T) {
	s := wagon(t, "", `[[timber]]
name = "hedge pear"
also = ["choke pear"]
source = "tests of 1931"
radial = 4.1
tangential = 8.2
density = 700
[[timber]]
name = "white ash"
source = "tests of 1931"
density = 655
[part.rail]
kind = "side rail"
runs = "along"
timber = "choke pear"
long = "40"
wide = "2"
deep = "2"
`)
	v, woods := derived(t, s)
	own, err := woods.Find("choke pear")
	require.NoError(t, err)
	require.Equal(t, "hedge pear", own.Common)
	settings, err := timbering.Settings(s, v, woods)
	require.NoError(t, err)
	list, err := cutlist.MakeWith(v, woods, settings)
	require.NoError(t, err)
	found := false
	for _, l := range list.Lines {
		found = found || l.Wood.Common == "hedge pear"
	}
	require.True(t, found)

	before, err := published(t).Find("white ash")
	require.NoError(t, err)
	ash, err := woods.Find("white ash")
	require.NoError(t, err)
	require.Equal(t, before.Shrink, ash.Shrink)
	require.Equal(t, timber.Given(655, "tests of 1931"), ash.Weight.Density12)
	require.False(t, ash.Weight.Basic.Known(), "figures of two sources never mix")
}

func TestFaults(t *testing.T) {
	const pear = "[[timber]]\nname = \"hedge pear\"\nsource = \"tests\"\n"
	for _, f := range []struct{ name, text, at, want string }{
		{"planing", "[make]\nplaning = \"2\"\n", "planing = ", `planing off each face: 50.8 mm; write one from 0 to 25 mm`},
		{"jointing", "[make]\njointing = \"2\"\n", "jointing = ", `jointing off each edge: 50.8 mm; write one from 0 to 25 mm`},
		{"trimming", "[make]\ntrimming = \"30\"\n", "trimming = ", `trimming off each end: 762 mm; write one from 0 to 500 mm`},
		{"bend-trimming", "[make]\nbend-trimming = \"40\"\n", "bend-trimming = ", `trimming off each end of a bend: 1016 mm; write one from 0 to 1000 mm`},
		{"kerf", "[make]\nkerf = \"1\"\n", "kerf = ", `the saw's kerf: 25.4 mm; write one from 0 to 10 mm`},
		{"narrow boards", "[make]\nwidest-board = \"3\"\n", "widest-board = ", `widest board: 76.2 mm; write one from 100 to 3000 mm`},
		{
			"a price for what no part is of", "[[price]]\ntimber = \"jarrah\"\namount = 5\nper = \"bdft\"\n", "timber = \"jarrah", `a price for “jarrah”, which no part is of; the parts are of white oak, white ash, yellow-poplar; write one of those, or take the price away`,
		},
		{
			"a price for no thickness", "[[price]]\nthickness = \"9/4\"\namount = 5\nper = \"bdft\"\n", "thickness = \"9/4", `a price for “9/4”, which is no thickness kept; write one of 3/4, 4/4, 5/4, 6/4, 7/4, 8/4, 10/4, 12/4, 16/4`,
		},
		{
			"a price for what the yard has not", "[yard]\nthickness = [[\"2\", \"1 3/4\"]]\n[[price]]\nthickness = \"12/4\"\namount = 5\nper = \"bdft\"\n", "thickness = \"12/4", `a price for “12/4”, which is no thickness kept; write one of 2 in`,
		},
	} {
		t.Run(f.name, func(t *testing.T) {
			s := wagon(t, "", f.text)
			requireFault(t, timbering.Check(s, published(t)), s, f.text, f.at, f.want)
		})
	}
	// Each figure may be, but not the two: 40 % to 12 % moisture goes on to more
	// than all of it, ovendry; and by the Wood Handbook 2021, p. 4-3, wood
	// of 1700 kg/m3 that swells so little has no room for 12 % of water.
	for _, c := range []struct{ lines, want string }{
		{"radial = 30\ntangential = 40\nshrinks-to = 12\nsaturation = 15\n", "shrinkage that leaves any wood not found in any source here; mend the figures given; see whether each is in the unit that the reference tells"},
		{"density = 1700\nsaturation = 15\n", "full of water it holds "},
	} {
		s := wagon(t, "", pear+c.lines)
		_, err := timbering.Woods(s, published(t))
		require.ErrorContains(t, err, "“hedge pear”, whose figures together no wood has: hedge pear: ")
		require.ErrorContains(t, err, c.want)
	}
	t.Run("two of one name", func(t *testing.T) {
		text := pear + "[[timber]]\nname = \"choke pear\"\nalso = [\"hedge pear\"]\nsource = \"tests\"\n"
		s := wagon(t, "", text)
		_, err := timbering.Woods(s, published(t))
		requireFault(t, err, s, text, "name = ", `a timber whose name is another's too: “hedge pear” could be hedge pear, or choke pear; write the one meant, or its botanical name; or give it a name of its own`)
	})
}

// requireFault wants one fault, at the value that follows some text.
func requireFault(t *testing.T, err error, s *survey.Survey, text, after, want string) {
	t.Helper()
	var faults *survey.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults.List, 1)
	require.Equal(t, s.File, faults.File)
	got := faults.List[0]
	require.Equal(t, want, got.Found+"; "+got.Want)
	above := string(demo.Survey()) + text[:strings.Index(text, after)]
	require.Equal(t, strings.Count(above, "\n")+1, got.At.Line)
	name, _, _ := strings.Cut(after, " ")
	require.Equal(t, len(name)+len(" = ")+1, got.At.Column)
}

package survey

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// text of a survey that has what the tests look at; the values expected are
// worked out by hand.
const whole = front + things + `[iron.reach-plate]
kind = "strap"
runs = "along"
pair = true
thick = "3/16"
wide = "2 by rule"
long = "67 3/4 ± 1/8"
holes = ["1 1/2", "15 1/2 by tape"]
off = { holes = ["1 9/16", "15 1/2"], why = "read twice" }
found = { long = "66", why = "bent in the fall" }
photos = ["a.jpg", "b.jpg"]
[iron.hind-tyre]
kind = "tyre"
chord = "24"
rise = "3 7/8"
[part.reach]
kind = "reach"
runs = "along"
pair = true
handed = false
taper = "1/4"
deep = "2 3/4 ± 1/16 like"
wide = "2 by callipers"
long = "80 measured"
cant = "7 1/8 deg"
status = "approved"
as-made = { deep = "2 11/16" }
[bolt]
b7 = { diameter = "1/2", length = "8", nut = "1/2", mark = "6 3/4" }
[[fastening]]
bolt = "1/2"
down = ["cross-bar", "sill-plate#1,3,5", "let 1/8 into sill", "sill"]
grip = [["4 1/2", "4 17/32"], ["4 15/32", "-"], ["4 15/32", "4 1/2 ± 1/8"]]
[[fastening]]
id = "king"
bolt = "b7"
head = "square-neck"
sunk = "1/4"
up = ["bolster", "gap 1/8", "plate#2 worn 1/16"]
[[fastening]]
clip = "2 1/4"
pair = true
down = ["bolster", "plate#1"]
[evidence]
iron = ["reach.hind = 1/2 reach-plate.hind - 1 1/2 + plate#3.x ± 1/16"]
guess = ["cross-bar-2.wide = 2 1/2"]
[datum]
zero = ["bolster.under = 19 3/8"]
`

func readWhole(t *testing.T) *Survey {
	t.Helper()
	s, err := read("wagon.toml", []byte(whole), fakeKinds())
	require.NoError(t, err)
	return s
}

const in = quantity.Inch

// What one reading is worth: its own give or take, else the instrument it
// names, else the one its size is usually read with.
func TestWhatAReadingIsWorth(t *testing.T) {
	s := readWhole(t)
	plate, tyre := s.Irons[3], s.Irons[4]
	near := func(want, got quantity.Length) {
		t.Helper()
		require.InDelta(t, want.Millimetres(), got.Millimetres(), 1e-9)
	}
	near(in/64, plate.Sizes[0].Doubt) // thick, by callipers
	near(in/32, plate.Sizes[1].Doubt) // wide, by rule as it says
	near(in/8, plate.Sizes[2].Doubt)  // its own
	near(in/32, plate.Holes[0].Doubt) // by rule
	near(in/16, plate.Holes[1].Doubt) // by tape as it says
	near(in/32, plate.Found.Sizes[0].Doubt)
	near(in/16, s.Irons[2].Sizes[0].Doubt) // girth, by tape
	near(in/32, tyre.Sizes[0].Doubt)       // chord, by rule
	near(in/32, tyre.Sizes[1].Doubt)       // rise
	grips := s.Fastenings[0].Grips
	near(in/32, grips[0][0].Doubt)
	near(in/8, grips[2][1].Doubt)
	require.Zero(t, grips[1][1], "one not taken")
	near(in/64, s.Fastenings[2].Inside.Doubt)
	near(in/32, s.Fastenings[1].Bolt.Mark.Doubt)
	near(in/64, s.Fastenings[1].Bolt.Nut.Doubt)
}

func TestStatedDimensions(t *testing.T) {
	reach := readWhole(t).Parts[5]
	require.Equal(t, "reach", reach.ID)
	for i, want := range []struct {
		name         string
		value, doubt quantity.Length
		known        quantity.Known
	}{
		{"taper", in / 4, in / 2, quantity.Guess},
		{"deep", 2.75 * in, in / 16, quantity.LikeVehicle},
		{"wide", 2 * in, in / 64, quantity.Measured}, // an instrument is for wood that is there
		{"long", 80 * in, in / 32, quantity.Measured},
	} {
		st := reach.Stated[i]
		require.Equal(t, want.name, st.Terms[0].Feature)
		require.Equal(t, "reach", st.Terms[0].Thing)
		require.InDelta(t, -want.value.Millimetres(), st.Constant.Millimetres(), 1e-9)
		require.InDelta(t, want.doubt.Millimetres(), st.Doubt.Millimetres(), 1e-9)
		require.Equal(t, want.known, st.Known)
		require.True(t, reach.Speaks(want.name))
	}
	require.True(t, reach.Speaks("cant"))
	require.False(t, reach.Speaks("chamfer"))
	require.InDelta(t, 7.125, reach.Angles["cant"].Degrees(), 1e-12)
	require.Equal(t, Same, reach.Handed)
	require.Equal(t, vehicle.Approved, reach.Status)
	require.InDelta(t, 2.6875*25.4, reach.AsMade[0].Value.Millimetres(), 1e-9)
}

func TestFastenings(t *testing.T) {
	f := readWhole(t).Fastenings
	require.Equal(t, []string{"1", "king", "3"}, []string{f[0].ID, f[1].ID, f[2].ID})
	require.Equal(t, Down, f[0].Direction)
	require.Equal(t, Pair, f[0].Sides)
	require.Equal(t, 3, f[0].Number)
	require.Equal(t, []int{1, 3, 5}, f[0].Through[1].Holes)
	require.Equal(t, "sill", f[0].Through[2].Into)
	require.InDelta(t, 25.4/8, f[0].Through[2].Let.Value.Millimetres(), 1e-9)
	require.Equal(t, "bolt", f[0].What)
	require.Equal(t, PlainHead, f[0].Head)

	require.Equal(t, Up, f[1].Direction)
	require.Equal(t, Single, f[1].Sides)
	require.Equal(t, 1, f[1].Number)
	require.Equal(t, "b7", f[1].Bolt.ID)
	require.Equal(t, f[1].Bolt.Diameter, f[1].Diameter)
	require.Equal(t, SquareNeck, f[1].Head)
	require.InDelta(t, 25.4/4, f[1].Sunk.Millimetres(), 1e-9)
	require.InDelta(t, 25.4/8, f[1].Through[1].Gap.Value.Millimetres(), 1e-9)
	require.InDelta(t, 25.4/16, f[1].Through[2].Worn.Millimetres(), 1e-9)

	require.Equal(t, "clip", f[2].What)
	require.Zero(t, f[2].Diameter)
	require.InDelta(t, 2.25*25.4, f[2].Inside.Value.Millimetres(), 1e-9)
}

func TestStatements(t *testing.T) {
	s := readWhole(t)
	st := s.Evidence[0]
	require.Equal(t, quantity.FromIron, st.Known)
	require.InDelta(t, 25.4/16, st.Doubt.Millimetres(), 1e-9)
	require.InDelta(t, 1.5*25.4, st.Constant.Millimetres(), 1e-9)
	for i, want := range []Term{
		{Factor: 1, Thing: "reach", Feature: "hind"},
		{Factor: -0.5, Thing: "reach-plate", Feature: "hind"},
		{Factor: -1, Thing: "plate", Hole: 3, Feature: "x"},
	} {
		st.Terms[i].At = Position{}
		require.Equal(t, want, st.Terms[i])
	}
	require.Equal(t, quantity.Guess, s.Evidence[1].Known)
	require.InDelta(t, 12.7, s.Evidence[1].Doubt.Millimetres(), 1e-9)
	require.InDelta(t, -2.5*25.4, s.Evidence[1].Constant.Millimetres(), 1e-9)
	require.Zero(t, s.Datum[0].Doubt)
	require.InDelta(t, -19.375*25.4, s.Datum[0].Constant.Millimetres(), 1e-9)
}

// Places are those an editor shows, also inside quotes.
func TestPlaces(t *testing.T) {
	text, at := marked(t, front+things+"[evidence]\nguess = [\"bolster.wide = ½ ▲plate.wide\"]\n")
	s, err := read("wagon.toml", []byte(text), fakeKinds())
	require.NoError(t, err)
	require.Equal(t, at, s.Evidence[0].Terms[1].At)
}

func TestDefaults(t *testing.T) {
	s := readWhole(t)
	require.Equal(t, quantity.Moisture(15), s.Wood.Worked, "as bought")
	require.Equal(t, "Sill plate", s.Irons[1].Name)
	require.Equal(t, vehicle.Round, s.Irons[2].Runs, "a tyre goes round")
	require.Equal(t, 1, s.Parts[0].Number)
	require.Equal(t, Central, s.Parts[0].Centred)
	require.Equal(t, Handed, s.Parts[1].Handed, "a pair is handed unless it says otherwise")
	require.Equal(t, vehicle.Proposed, s.Parts[0].Status)
	// From the table in the reference page.
	for _, d := range []struct {
		got  Reading
		want quantity.Length
	}{
		{s.Doubts.Rule, in / 32},
		{s.Doubts.Callipers, in / 64},
		{s.Doubts.Tape, in / 16},
		{s.Doubts.Grip, in / 32},
		{s.Doubts.Contact, in / 32},
		{s.Doubts.Play, in / 32},
		{s.Doubts.Centre, in / 16},
		{s.Doubts.Twin, in / 16},
		{s.Doubts.Row, in / 32},
		{s.Doubts.Known[quantity.Measured], in / 32},
		{s.Doubts.Known[quantity.FromIron], in / 16},
		{s.Doubts.Known[quantity.Paired], in / 16},
		{s.Doubts.Known[quantity.LikeVehicle], in / 4},
		{s.Doubts.Known[quantity.TradeRule], in / 4},
		{s.Doubts.Known[quantity.Guess], in / 2},
	} {
		require.InDelta(t, d.want.Millimetres(), d.got.Value.Millimetres(), 1e-9)
		require.Equal(t, d.got.Value, d.got.Doubt)
	}
}

func TestThings(t *testing.T) {
	s := readWhole(t)
	x := s.Index()
	for _, c := range []struct {
		name, id string
		side     vehicle.Hand
		row      int
		ok       bool
	}{
		{"sill", "sill", vehicle.Alike, 0, true},
		{"near-sill", "sill", vehicle.Near, 0, true},
		{"off-sill-plate", "sill-plate", vehicle.Off, 0, true},
		{"cross-bar-3", "cross-bar", vehicle.Alike, 3, true},
		{"cross-bar-4", "", 0, 0, false},
		{"cross-bar-03", "", 0, 0, false},
		{"near-cross-bar-1", "", 0, 0, false},
		{"near-bolster", "", 0, 0, false},
		{"sill-1", "", 0, 0, false},
		{"near-", "", 0, 0, false},
		{"", "", 0, 0, false},
	} {
		got, ok := x.Find(c.name)
		require.Equal(t, c.ok, ok, c.name)
		if ok {
			require.Equal(t, c.id, got.ID())
			require.Equal(t, c.side, got.Side)
			require.Equal(t, c.row, got.Row)
		}
	}
}

// A survey in millimetres: bare numbers are millimetres, inches name themselves.
func TestMillimetres(t *testing.T) {
	text := `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "mm"
[wood]
bought = 15
service = 12
[iron]
plate = { kind = "plate", runs = "across", thick = 6.5, wide = "76 ± 0.5", long = "3 ft 1 in", holes = [40, "240"] }
[part]
`
	s, err := read("wagon.toml", []byte(text), fakeKinds())
	require.NoError(t, err)
	p := s.Irons[0]
	require.Equal(t, quantity.Millimetres, s.Unit)
	require.InDelta(t, 6.5, p.Sizes[0].Value.Millimetres(), 1e-12)
	require.InDelta(t, 0.5, p.Sizes[1].Doubt.Millimetres(), 1e-12)
	require.InDelta(t, 37*25.4, p.Sizes[2].Value.Millimetres(), 1e-9)
	require.InDelta(t, 40, p.Holes[0].Value.Millimetres(), 1e-12)

	// What is meant in inches is not taken for millimetres.
	_, err = read("wagon.toml", []byte(strings.Replace(text, "6.5", `"1/4"`, 1)), fakeKinds())
	require.EqualError(t, err, "wagon.toml:10:53: a fraction with no unit, where mm is meant by a bare number in “1/4”; write 1/4 in for inches, or decimals of mm")
}

// Three ways to say what moisture the vehicle will live at.
func TestService(t *testing.T) {
	months := "[[2, 80], [5, 75], [2, 80], [5, 75], [2, 80], [5, 75], [2, 80], [5, 75], [2, 80], [5, 75], [2, 80], [-5.5, 75]]"
	for line, want := range map[string]Climate{
		"service = 12":          {Driest: 12, Wettest: 12},
		`service = "9 .. 14"`:   {Driest: 9, Wettest: 14},
		`service = "9.5..14.5"`: {Driest: 9.5, Wettest: 14.5},
		`place = "Denver CO"`:   {Place: "Denver CO"},
		"climate = " + months: {Months: [][2]float64{
			{2, 80}, {5, 75}, {2, 80}, {5, 75}, {2, 80}, {5, 75}, {2, 80}, {5, 75}, {2, 80}, {5, 75}, {2, 80}, {-5.5, 75},
		}},
	} {
		text := "[vehicle]\nname = \"Wagon\"\nissue = \"A\"\ndate = 2026-10-30\nunit = \"in\"\n[wood]\nbought = 15\n" + line + "\n[part]\n"
		s, err := read("wagon.toml", []byte(text), fakeKinds())
		require.NoError(t, err, line)
		require.Equal(t, 8, s.Wood.Service.At.Line)
		s.Wood.Service.At = Position{}
		require.Equal(t, want, s.Wood.Service)
	}
}

package survey

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

const yardText = `[part.spare]
kind = "stake"
runs = "upright"
rings = "30 deg"
[part.other]
kind = "stake"
runs = "upright"
rings = "unknown"
[make]
planing = "1/8"
jointing = "1/4"
trimming = "1 1/2"
bend-trimming = "4"
kerf = "0"
widest-board = "300 mm"
waste = { straight = 30, curve = 45.5, bend = 0 }
[yard]
thickness = [["1", "13/16"], ["50 mm", "44 mm"]]
grade = "first quality"
run-out = 15
sap = "refused"
note = "from one tree"
currency = "$"
[[price]]
amount = 8
per = "bdft"
[[price]]
timber = "white oak"
thickness = "50 mm"
amount = 2100.5
per = "m3"
[[timber]]
name = "field elm"
also = ["hedge elm", "common elm"]
botanical = "Ulmus minor"
radial = 4.9
tangential = 7.8
lengthwise = 0
saturation = 27
moves-radial = 0.17
moves-tangential = 0.27
density = 600
strength-green = 40
strength-dry = 68
stiffness-green = 5.2
stiffness-dry = 7
hardness-green = 2900
hardness-dry = 3600
durability = "slightly durable"
source = "tests of 1931"
[[timber]]
name = "ridge gum"
source = "the mill"
shrinks-to = 12
radial = 3
tangential = 5
moves-radial = 0.2
moves-tangential = 0.3
[[splinter]]
part = "off-sill"
density = 690
moisture = 9
look = "pale"
[[splinter]]
part = "bolster"
density = 700
[[board]]
id = "b1"
timber = "white oak"
thick = "2"
wide = "9"
long = "8 ft"
[[board]]
id = "b2"
timber = "white oak"
thick = "2"
wide = "9"
long = "8 ft"
moisture = 14
`

func readYard(t *testing.T) *Survey {
	t.Helper()
	s, err := read("wagon.toml", []byte(front+"rings = \"quarter\"\n"+things+yardText), fakeKinds())
	require.NoError(t, err)
	return s
}

func TestReadMakingAndYard(t *testing.T) {
	s := readYard(t)
	m := s.Making
	for _, l := range []struct {
		got  *Reading
		want quantity.Length
	}{
		{m.Planing, quantity.Inch / 8},
		{m.Jointing, quantity.Inch / 4},
		{m.Trimming, 38.1},
		{m.BendTrimming, 4 * quantity.Inch},
		{m.Kerf, 0},
		{m.WidestBoard, 300},
	} {
		require.Equal(t, l.want, l.got.Value)
	}
	require.Equal(t, Position{30, 11}, m.Planing.At)
	require.Equal(t, 30.0, *m.Waste.Straight)
	require.Equal(t, 45.5, *m.Waste.Curve)
	require.Zero(t, *m.Waste.Bend)

	require.Equal(t, Yard{
		Thicknesses: []Thickness{{Position{38, 14}, quantity.Inch, quantity.Inch * 13 / 16}, {Position{38, 30}, 50, 44}},
		Grade:       "first quality", RunOut: 15, Sap: SapRefused, Note: "from one tree", Currency: "$",
	}, s.Yard)
	require.Equal(t, []Price{
		{At: Position{44, 3}, Amount: 8, Per: PerBoardFoot},
		{
			At: Position{47, 3}, Timber: "white oak", TimberAt: Position{48, 10},
			Thickness: "50 mm", ThicknessAt: Position{49, 13}, Amount: 2100.5, Per: PerCubicMetre,
		},
	}, s.Prices)
}

func TestReadRingsAndBoards(t *testing.T) {
	s := readYard(t)
	require.Equal(t, timber.QuarterSawn, s.Wood.Rings.Lie)
	said := map[string]*timber.Rings{}
	for _, p := range s.Parts {
		said[p.ID] = p.Rings
	}
	require.Equal(t, timber.Slanting, said["spare"].Lie)
	require.InDelta(t, 30, said["spare"].Angle.Degrees(), 1e-9)
	require.Equal(t, timber.RingsNotKnown, said["other"].Lie, "a part can say that its rings are not known")
	require.Nil(t, said["sill"])

	require.False(t, s.Boards[0].Measured(), "a board whose moisture is not written was not measured")
	require.True(t, s.Boards[1].Measured())
	require.Equal(t, quantity.Moisture(14), s.Boards[1].Moisture)
}

// A survey that says nothing leaves all of it unsaid.
func TestNothingSaidOfYard(t *testing.T) {
	s, err := read("wagon.toml", []byte(front+things), fakeKinds())
	require.NoError(t, err)
	require.Zero(t, s.Making)
	require.Zero(t, s.Yard)
	require.Nil(t, s.Wood.Rings)
	require.Empty(t, s.Prices)
	require.Empty(t, s.Timbers)
	require.Empty(t, s.Splinters)
}

func TestReadRingsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]timber.Rings{
		`"flat"`: {Lie: timber.FlatSawn}, `"Quarter"`: {Lie: timber.QuarterSawn}, `"unknown"`: {},
		`0`: {Lie: timber.FlatSawn}, `90`: {Lie: timber.QuarterSawn}, `"90°"`: {Lie: timber.QuarterSawn},
		`45`: {Lie: timber.Slanting, Angle: 45 * quantity.Degree}, `"45"`: {Lie: timber.Slanting, Angle: 45 * quantity.Degree},
		`"22 1/2 degrees"`: {Lie: timber.Slanting, Angle: 22.5 * quantity.Degree},
	} {
		s, err := read("wagon.toml", []byte(front+"rings = "+text+"\n"+things), fakeKinds())
		require.NoError(t, err, text)
		require.Equal(t, want.Lie, s.Wood.Rings.Lie, text)
		require.InDelta(t, want.Angle.Degrees(), s.Wood.Rings.Angle.Degrees(), 1e-9, text)
	}
}

func TestReadTimbersAndSplinters(t *testing.T) {
	s := readYard(t)
	given := func(v float64) timber.Figure { return timber.Given(v, "tests of 1931") }
	require.Equal(t, timber.Species{
		Common: "field elm", Also: []string{"hedge elm", "common elm"}, Botanical: "Ulmus minor",
		Shrink:     timber.Shrinkage{Radial: given(4.9), Tangential: given(7.8), Lengthwise: given(0), Saturation: given(27)},
		Move:       timber.Movement{Kind: timber.HandbookOwn, Radial: given(0.17), Tangential: given(0.27)},
		Weight:     timber.Weight{Density12: given(600)},
		Green:      timber.Strength{Rupture: given(40), Stiffness: given(5.2), Hardness: given(2900)},
		Dry:        timber.Strength{Rupture: given(68), Stiffness: given(7), Hardness: given(3600)},
		Durability: timber.Text{Words: "slightly durable", Basis: timber.Basis{Source: "tests of 1931", Standing: timber.Own}},
	}, s.Timbers[0].Wood, "the source, written last, stands with every figure")
	require.Equal(t, timber.GreenTo12, s.Timbers[1].Wood.Shrink.To)
	require.Equal(t, timber.UnitShrinkage, s.Timbers[1].Wood.Move.Kind)

	require.Len(t, s.Splinters, 2)
	require.Equal(t, "sill", s.Splinters[0].Part)
	require.Equal(t, quantity.Density(690), s.Splinters[0].Density)
	require.Equal(t, quantity.Moisture(9), s.Splinters[0].Moisture)
	require.Equal(t, "pale", s.Splinters[0].Look)
	require.Equal(t, quantity.Moisture(12), s.Splinters[1].Moisture)
}

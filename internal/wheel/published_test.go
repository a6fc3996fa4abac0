package wheel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/wheel"
)

// US Army six-mule wagon, specification of 1858-61: wheels 3 ft 10 and 4 ft 10,
// tyre 5/8 thick, felloes 2 3/4 deep. Whether the heights are over the tyre is not
// said: the wood's radius is 22 3/8 and 28 3/8 if so, else 23 and 29. Of six and
// seven felloes the chords come to 22 3/8 and 24 5/8, the rises to 3.00 and 2.81,
// the stock to 5 3/4 and 5 9/16 (worked by hand from the published figures).
func TestArmyWagonRims(t *testing.T) {
	for _, c := range []struct {
		height, sole, ofWood     wheel.Length
		felloes                  int
		chord, rise, stock, wide float64
	}{
		{46, 22.375, 23, 6, 22.375, 3.00, 5.75, 1. / 32},
		{58, 28.375, 29, 7, 24.625, 2.81, 5.5625, 1. / 64},
	} {
		s := armyFore()
		s.Height, s.Rim.Gap, s.Rim.Felloes, s.Spokes.Number = c.height*in, 0, c.felloes, 2*c.felloes
		s.Spokes.FootThick, s.Rim.Sole = .875*in, wheel.LevelSole
		w, err := wheel.New(s)
		require.NoError(t, err)
		require.InDelta(t, float64(c.sole), w.Radii(wheel.Tyred).Sole.Inches(), 1e-9)
		f := w.Felloe()
		require.InDelta(t, c.chord, f.Chord.Inches(), 1./32)
		require.InDelta(t, c.rise, f.Rise.Inches(), .005)
		require.InDelta(t, c.stock, f.Stock.Inches(), .005)
		s.Over = wheel.OfWood
		w, err = wheel.New(s)
		require.NoError(t, err)
		require.InDelta(t, float64(c.ofWood), w.Radii(wheel.Tyred).Sole.Inches(), 1e-9)
	}
}

// Felton (A Treatise on Carriages, 1794): the clear way between spokes at the
// felloe not above 16 in. At the rim 4 ft 6 with 10 spokes is 16.96 in from
// middle to middle and 5 ft 4 with 12 is 16.76 (worked by hand), so the rule
// holds only for the clear way inside the felloes. His groups from memory.
func TestSpokesByHeight(t *testing.T) {
	require.InDelta(t, 16.96, math.Pi*54/10, .005)
	require.Equal(t, 8, wheel.SpokeCounts(38*in))
	require.Equal(t, 10, wheel.SpokeCounts(54*in))
	require.Equal(t, 12, wheel.SpokeCounts(64*in))
	require.Equal(t, 14, wheel.SpokeCounts(68*in))
	s := armyFore()
	s.Height, s.Over = 54*in, wheel.OfWood
	s.Spokes.Number, s.Rim.Felloes = 10, 5
	w, err := wheel.New(s)
	require.NoError(t, err)
	p := w.Spacing()
	require.InDelta(t, 16.96, p.AtSole.Inches(), .01)
	require.Less(t, p.Clear, wheel.MostClear)
	s.Height, s.Spokes.Number, s.Rim.Felloes = 64*in, 12, 6
	w, err = wheel.New(s)
	require.NoError(t, err)
	require.InDelta(t, 16.76, w.Spacing().AtSole.Inches(), .01)
	require.Less(t, w.Spacing().Clear, wheel.MostClear)
}

// The lean of the spokes is the dish over the way from nave to belly, and the
// drawn cant the dish over half the height: both shown, and they differ.
func TestCantByBothWays(t *testing.T) {
	s := armyFore()
	s.Dish, s.Rim.Gap = wheel.Dish{Built: .75 * in, Tyred: .75 * in, On: wheel.Middles}, 0
	w, err := wheel.New(s)
	require.NoError(t, err)
	st := w.Stance()
	require.InDelta(t, math.Atan(.75/(22.375-2.75-5)), float64(st.Plumb), 1e-12)
	require.InDelta(t, math.Atan(.75/23), float64(st.Drawn), 1e-12)
	require.Greater(t, st.Plumb, st.Drawn)
	// The rule: the drop at a way from the box's middle is that way times dish over radius.
	require.InDelta(t, 6*.75/23, wheel.DropByDrawing(.75*in, 46*in, 6*in).Inches(), 1e-12)
}

// "A.B.C." in Richardson (1891): hubs butt to butt 14 in over the outside of the
// spokes, track 5 ft 2 over the outside of 2 in felloes: 50 in from shoulder to
// shoulder.
func TestShouldersByHubs(t *testing.T) {
	require.InDelta(t, 50, wheel.ShouldersByHubs(62*in, 14*in, 2*in).Inches(), 1e-12)
}

// Heavy wheels are built with 1/8 dish and come to 1/2 to 3/4 with the tyre on
// (Richardson, 1891, Points for wheelwrights). On a run of 16 in that asks joints
// open by 1/20 to 1/9 in together: about the 1/16 to 1/8 that is common
// practice, no source (worked by hand: pi times the difference of the squares
// over the run).
func TestJointsForTheDish(t *testing.T) {
	for _, tyred := range []float64{.5, .75} {
		got := wheel.JointsFor(16*in, .125*in, wheel.Length(tyred)*in).Inches()
		require.InEpsilon(t, math.Pi*(tyred*tyred-.125*.125)/16, got, .01)
		require.Greater(t, got, 1./32)
		require.Less(t, got, 1./8)
	}
	require.True(t, math.IsNaN(float64(wheel.JointsFor(10, 0, 20))))
}

// A circle's chord and rise give its radius, and its give or take by the
// derivatives of c^2/8s + s/2, found here by stepping.
func TestRadiusOf(t *testing.T) {
	c, s := 22.375*in, 3*in
	r, doubt := wheel.RadiusOf(c, s, .5, .4)
	require.InDelta(t, float64(s), float64(wheel.Rise(r, c)), 1e-9)
	at := func(c, s wheel.Length) float64 { r, _ := wheel.RadiusOf(c, s, 0, 0); return float64(r) }
	dc, ds := (at(c+.01, s)-at(c-.01, s))/.02, (at(c, s+.01)-at(c, s-.01))/.02
	require.InEpsilon(t, math.Hypot(dc*.5, ds*.4), float64(doubt), 1e-5)
}

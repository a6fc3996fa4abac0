package wheel_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/wheel"
	"lostwood/parts/form"
)

// A spoke's middle line in the wheel's frame: a place on it and its way.
func middleLine(w *wheel.Wheel, i int) (at form.Vec, way form.Dir) {
	p := w.SpokePose(i, wheel.Built)
	return p.At, p.X
}

// fromLine is how far a place is from a line.
func fromLine(q, at form.Vec, way form.Dir) float64 {
	d := q.Minus(at)
	along := way.Along(d)
	d = d.Minus(form.Vec{}.Plus(way, along))
	return norm(float64(d.X), float64(d.Y), float64(d.Z))
}

// Every spoke of a random wheel has one length, stands square across its
// pitch, leaves the nave's surface, and its tongue runs down the middle of the
// hole that its felloe has for it.
func TestSpokesMeetTheirFelloes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWheel().Draw(t, "wheel")
		n := w.Spec.Spokes.Number
		long := w.Row(w.RowOf(0)).Between
		for i := range n {
			require.InDelta(t, float64(long), float64(w.Row(w.RowOf(i)).Between), 1e-9, "spoke %d", i)
		}
		for j := range w.Spec.Rim.Felloes {
			pose := w.FelloePose(j, wheel.Built)
			for _, h := range w.TongueHoles(j) {
				at, way := middleLine(w, h.Spoke%n)
				in := pose.Of(h.At)
				require.Less(t, fromLine(in, at, way), .05, "felloe %d, spoke %d, where it enters", j, h.Spoke)
				out := in.Plus(pose.Way(h.Way), 80)
				require.Less(t, fromLine(out, at, way), .05, "felloe %d, spoke %d, where it leaves", j, h.Spoke)
				// It enters at the belly's radius, in the middle of the rim.
				require.InDelta(t, float64(w.Radii(wheel.Built).Belly), math.Hypot(float64(in.X), float64(in.Z)), 1e-9)
				require.InDelta(t, float64(w.Dish(wheel.Built)), float64(in.Y), 1e-9)
			}
		}
	})
}

// A spoke's middle line leaves the nave's turned seat where the row says, and
// the foot's inner end is a foot's length in from its shoulder.
func TestFeetStandOnTheSeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWheel().Draw(t, "wheel")
		s := w.Spec
		for i := range 2 {
			at, way := middleLine(w, i)
			line := w.Row(w.RowOf(i))
			foot := at.Plus(way, s.Spokes.FootLong)
			along := foot.Y + s.Nave.Long - s.Nave.Forward
			require.InDelta(t, float64(w.DiameterAt(along))/2, math.Hypot(float64(foot.X), float64(foot.Z)), 1e-6)
			if s.Spokes.Stagger == 0 {
				require.InDelta(t, 0, float64(foot.Y), 1e-9)
			}
			tip := foot.Plus(way, line.Between)
			require.InDelta(t, float64(w.Radii(wheel.Built).Belly), math.Hypot(float64(tip.X), float64(tip.Z)), 1e-9)
		}
	})
}

// Staggered feet on a level seat differ in length by what Pythagoras says, on
// one turned square to the spokes not at all.
func TestStaggerOnALevelSeat(t *testing.T) {
	s := armyFore()
	s.Spokes.Stagger, s.Nave.SeatLong, s.Dish.On = .5*in, 2.75*in, wheel.Middles
	s.Nave.Bands = nil
	w, err := wheel.New(s)
	require.NoError(t, err)
	run := float64(w.Radii(wheel.Built).Belly - s.Nave.Diameter/2)
	face, back := w.Row(wheel.FaceRow), w.Row(wheel.BackRow)
	require.InDelta(t, math.Hypot(run, .25*25.4), float64(face.Between), 1e-9)
	require.InDelta(t, math.Hypot(run, .75*25.4), float64(back.Between), 1e-9)
	s.Nave.Seat = wheel.SeatSquare
	w, err = wheel.New(s)
	require.NoError(t, err)
	face, back = w.Row(wheel.FaceRow), w.Row(wheel.BackRow)
	require.InDelta(t, float64(face.Between), float64(back.Between), 1e-9)
	require.InDelta(t, float64(face.Shoulder), -float64(back.Shoulder), 1e-9, "one spoke turned about serves both rows")
}

// The felloes close the ring but for the stated gaps: joint planes stand half a
// gap back from the radius between two felloes, and all together leave what is said.
func TestFelloesCloseTheRing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWheel().Draw(t, "wheel")
		f := w.Felloe()
		n := w.Spec.Rim.Felloes
		// Round the back's larger edge: each felloe's arc from its chord, and gaps
		// as chords of the same circle.
		arc := 2 * math.Asin(float64(f.Chord/2/f.Radius))
		gap := 2 * math.Asin(float64(f.Gap/2/f.Radius))
		require.InDelta(t, 2*math.Pi, float64(n)*(arc+gap), 1e-9)
		require.InDelta(t, float64(f.Gap)*float64(n), float64(f.GapsTogether), 1e-9)
		// Closed, the rim has come in by the gaps.
		in := w.Girths(wheel.Built).Middle - w.Girths(wheel.Tyred).Middle
		require.InDelta(t, float64(f.GapsTogether), float64(in), 1e-6)
		// The chord and its rise give the radius back.
		r, _ := wheel.RadiusOf(f.Chord, f.Rise, 0, 0)
		require.InDelta(t, float64(f.Radius), float64(r), 1e-6)
	})
}

// The bottom spoke stands plumb, the wheel on the ground, and the track is the
// one asked, on either side, whatever the gather.
func TestPlumbAndTrack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWheel().Draw(t, "wheel")
		s := w.Spec
		var middle, outside [2]form.Vec
		for side := range 2 {
			p := w.Pose(wheel.Side(side), 100)
			requireFrame(t, p)
			spoke := w.SpokePose(0, wheel.Tyred).Then(p)
			out := math.Acos(min(1, -spoke.X.Z)) // from straight down
			switch {
			case s.Arm.Set == wheel.PlumbSpoke && s.Spokes.Stagger == 0:
				require.Less(t, degrees(out), .02)
			case s.Arm.Set == wheel.PlumbSpoke:
				// Face and back spokes stand out of plumb by as much either way.
				o := w.Stance().OutOfPlumb
				require.InDelta(t, float64(o[0]), -float64(o[1]), 3e-3)
				require.InDelta(t, math.Abs(float64(o[0])), out, 1e-6)
			}
			middle[side] = lowest(t, w, p, 0)
			outside[side] = lowest(t, w, p, float64(s.Tyre.Wide)/2)
			require.InDelta(t, 0, float64(middle[side].Z), 1e-6)
			// The arm points forward by the gather and the wheels stand alike.
			require.GreaterOrEqual(t, p.Y.X, 0.)
		}
		track := middle[0].Y - middle[1].Y
		if s.Track.Over == wheel.TyreOutsides {
			track = outside[0].Y - outside[1].Y
		}
		require.InDelta(t, float64(s.Track.Wide), float64(track), 1e-6)
		pair, ok := w.Pair()
		require.True(t, ok)
		require.InDelta(t, float64(middle[0].Y-middle[1].Y), float64(pair.Track), 1e-6)
		require.InDelta(t, float64(outside[0].Y-outside[1].Y), float64(pair.Outside), 1e-6)
		require.GreaterOrEqual(t, pair.Behind, pair.Front)
	})
}

func requireFrame(t require.TestingT, p wheel.Pose) {
	cross := form.Frame{U: p.X, V: p.Y}.W()
	require.InDelta(t, 1, norm(p.X.X, p.X.Y, p.X.Z), 1e-12)
	require.InDelta(t, 1, norm(p.Y.X, p.Y.Y, p.Y.Z), 1e-12)
	require.InDelta(t, p.Z.X, cross.X, 1e-12)
	require.InDelta(t, p.Z.Y, cross.Y, 1e-12)
	require.InDelta(t, p.Z.Z, cross.Z, 1e-12)
}

// lowest is the lowest place of the tread's circle, a way out from its middle,
// found by trying all round.
func lowest(t require.TestingT, w *wheel.Wheel, p wheel.Pose, out float64) form.Vec {
	radius := float64(w.Radii(wheel.Tyred).Tread) - out*math.Tan(float64(w.Cone()))
	at := func(a float64) form.Vec {
		return p.Of(form.Vec{X: form.Length(radius * math.Sin(a)), Y: w.Dish(wheel.Tyred) + form.Length(out), Z: form.Length(radius * math.Cos(a))})
	}
	lo, hi := math.Pi-1, math.Pi+1
	for hi-lo > 1e-10 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if at(a).Z < at(b).Z {
			hi = b
		} else {
			lo = a
		}
	}
	return at((lo + hi) / 2)
}

// A coned sole lies flat on the ground where the bottom spoke stands plumb and
// the dish has not changed in tyring.
func TestConedSoleLiesFlat(t *testing.T) {
	s := armyFore()
	s.Dish.Built, s.Rim.Gap = s.Dish.Tyred, 0
	w, err := wheel.New(s)
	require.NoError(t, err)
	p := w.Pose(wheel.NearSide, 0)
	front, back := lowest(t, w, p, 30), lowest(t, w, p, -30)
	require.InDelta(t, float64(front.Z), float64(back.Z), 1e-6)
}

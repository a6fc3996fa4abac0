package wheel

import (
	"math"

	"lostwood/parts/form"
)

// A Pose places one frame in another: where its origin stands and which way
// its axes point.
type Pose struct {
	At      form.Vec
	X, Y, Z form.Dir
}

// Of is where a place in the posed frame stands in the other one.
func (p Pose) Of(v form.Vec) form.Vec {
	return p.At.Plus(p.X, v.X).Plus(p.Y, v.Y).Plus(p.Z, v.Z)
}

// Way is a direction of the posed frame in the other one.
func (p Pose) Way(d form.Dir) form.Dir {
	return form.Dir{
		X: p.X.X*d.X + p.Y.X*d.Y + p.Z.X*d.Z,
		Y: p.X.Y*d.X + p.Y.Y*d.Y + p.Z.Y*d.Z,
		Z: p.X.Z*d.X + p.Y.Z*d.Y + p.Z.Z*d.Z,
	}
}

// Then is the pose of what p places in a frame that q places in turn.
func (p Pose) Then(q Pose) Pose {
	return Pose{q.Of(p.At), q.Way(p.X), q.Way(p.Y), q.Way(p.Z)}
}

// Bottom is the angle round the wheel of its lowest place, where its first spoke stands.
const Bottom Angle = math.Pi

// SpokeAt is the angle round the wheel of a spoke, counted from 0 at the bottom.
func (w *Wheel) SpokeAt(i int) Angle { return Bottom + Angle(i)*w.Pitch() }

// FelloeAt is the angle round the wheel of a felloe's middle: felloe j takes
// spokes 2j and 2j + 1.
func (w *Wheel) FelloeAt(j int) Angle { return Bottom + (2*Angle(j)+.5)*w.Pitch() }

// radial is the way out and the way along the rim at an angle round the wheel.
func radial(at Angle) (out, along form.Dir) {
	sin, cos := math.Sincos(float64(at))
	return form.Dir{X: sin, Z: cos}, form.Dir{X: cos, Z: -sin}
}

// leaning turns a radial way out along the axle by an angle.
func leaning(out form.Dir, lean float64) form.Dir {
	sin, cos := math.Sincos(lean)
	return form.Dir{X: out.X * cos, Y: sin, Z: out.Z * cos}
}

// SpokePose is where a spoke stands in the wheel's frame: its origin the middle
// of its foot's inner end, x along its middle line to the felloe, y along the
// rim, z to the front. With the tyre on it has turned about its foot's shoulder.
func (w *Wheel) SpokePose(i int, s State) Pose {
	line := w.Row(w.RowOf(i))
	out, along := radial(w.SpokeAt(i))
	lean := line.Lean
	if s == Tyred {
		lean = w.leanTyred(line.Row)
	}
	x := leaning(out, float64(lean))
	foot := form.Vec{Y: line.Foot.Along}.Plus(out, line.Foot.Out)
	return Pose{
		At: foot.Plus(x, -w.Spec.Spokes.FootLong),
		X:  x, Y: along, Z: leaning(out, float64(lean)+math.Pi/2),
	}
}

// FelloePose is where a felloe stands in the wheel's frame: its origin where
// the wheel's axis meets the middle of the rim, x along its chord, y to the front, z out
// through its middle. With the tyre on it has come in by what the joints close.
func (w *Wheel) FelloePose(j int, s State) Pose {
	out, along := radial(w.FelloeAt(j))
	in := Length(w.sole[s] - w.sole[Built])
	return Pose{
		At: form.Vec{Y: Length(w.stands[s])}.Plus(out, in),
		X:  along, Y: form.Dir{Y: 1}, Z: out,
	}
}

// NavePose is where the nave stands in the wheel's frame: its origin on the
// axis at its back end, x to the front, z up.
func (w *Wheel) NavePose() Pose {
	return Pose{
		At: form.Vec{Y: w.Spec.Nave.Forward - w.Spec.Nave.Long},
		X:  form.Dir{Y: 1}, Y: form.Dir{X: -1}, Z: form.Dir{Z: 1},
	}
}

// A Side is the side of the vehicle that a wheel runs on.
type Side int

// The sides.
const (
	NearSide Side = iota
	OffSide
)

// Pose is where the wheel's frame stands in the vehicle: x forward, y to the
// near side, z up from level ground that the tyre stands on. Fore is how far
// forward its origin is, and the track is as the Spec asks; where it asks none,
// the origin stands over y = 0.
func (w *Wheel) Pose(side Side, fore Length) Pose {
	s := w.Stance()
	pair, _ := w.Pair()
	sin, cos := math.Sincos(float64(s.Cant))
	gsin, gcos := math.Sincos(float64(s.Gather))
	out := 1.
	if side == OffSide {
		out = -1
	}
	return Pose{
		At: form.Vec{X: fore, Y: Length(out) * pair.Hubs / 2, Z: s.HubUp},
		X:  form.Dir{X: out * gcos, Y: -gsin},
		Y:  form.Dir{X: gsin * cos, Y: out * gcos * cos, Z: -sin},
		Z:  form.Dir{X: gsin * sin, Y: out * gcos * sin, Z: cos},
	}
}

// A Disc is the room a wheel takes up in the frame it is posed in: a round of
// this radius, half its width to either side of its centre along the axis.
type Disc struct {
	Centre form.Vec
	Axis   form.Dir // out from the vehicle
	Radius Length
	Wide   Length
}

// Disc is the room of the finished wheel's tyre, for a wheel posed in a vehicle.
func (w *Wheel) Disc(p Pose) Disc {
	step := Length(w.cone()) * w.Spec.Tyre.Wide / 2
	return Disc{
		Centre: p.Of(form.Vec{Y: Length(w.stands[Tyred])}), Axis: p.Y,
		Radius: w.Radii(Tyred).Tread + max(step, -step), Wide: w.Spec.Tyre.Wide,
	}
}

// Tongue is a tongue's hole in a felloe, in the frame of FelloePose: where its
// middle line enters the belly and the way it goes.
type TongueHole struct {
	Spoke int
	At    form.Vec
	Way   form.Dir
	Angle Angle // from the felloe's middle, towards its second end
}

// TongueHoles are the two of a felloe.
func (w *Wheel) TongueHoles(j int) [2]TongueHole {
	var out [2]TongueHole
	for k := range out {
		i := 2*j + k
		at := (Angle(k) - .5) * w.Pitch()
		sin, cos := math.Sincos(float64(at))
		way := form.Dir{X: sin, Z: cos}
		out[k] = TongueHole{
			Spoke: i, Angle: at,
			At:  form.Vec{}.Plus(way, Length(w.belly[Built])),
			Way: leaning(way, float64(w.Row(w.RowOf(i)).Lean)),
		}
	}
	return out
}

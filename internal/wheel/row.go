package wheel

import "math"

// A Row is one of the circles of spokes.
type Row int

// The rows. A wheel that is not staggered has one, whichever is asked for.
const (
	FaceRow Row = iota // stands to the front in the nave
	BackRow
)

// String is the row's name.
func (r Row) String() string { return word(int(r), "face spokes", "back spokes") }

// Rows are the wheel's: both where it is staggered, else the one.
func (w *Wheel) Rows() []Row {
	if w.Spec.Spokes.Stagger == 0 {
		return []Row{FaceRow}
	}
	return []Row{FaceRow, BackRow}
}

// RowOf is the row that a spoke stands in; spokes count from 0, and the even ones are face spokes.
func (w *Wheel) RowOf(spoke int) Row {
	if w.Spec.Spokes.Stagger == 0 || spoke%2 == 0 {
		return FaceRow
	}
	return BackRow
}

// A Line is how the spokes of a row stand before the tyre is on: their middle
// line seen along the rim.
type Line struct {
	Row  Row
	Lean Angle // out from square to the axle
	// Foot and Tip are where the middle line leaves the nave and enters the belly.
	Foot, Tip Spot
	Between   Length // from nave to belly on the middle line
	// Long is from shoulder to shoulder as they are cut: the foot's flat shoulder
	// beds before and behind its mortise, the tongue's with its sides in the round
	// belly, so that its middle stays off that by Settle.
	Long, Settle Length
	// Shoulder and TipShoulder are how far the two shoulders are out of square to
	// the spoke: where positive, the front edge is further from the nave.
	Shoulder, TipShoulder Angle
	FootEnd               Spot   // the middle of the foot's inner end
	TongueLong            Length // from its shoulder
}

// A Spot is a place seen along the rim: how far from the axle arm's middle
// line, and how far out along it from midway between the mortise circles.
type Spot struct{ Out, Along Length }

// Row is how the spokes of a row stand.
func (w *Wheel) Row(r Row) Line {
	k := w.Spec.Spokes
	step := float64(k.Stagger) / 2
	if r == BackRow {
		step = -step
	}
	foot := [2]float64{w.seat - step*w.seatFall, step}
	tip := [2]float64{w.belly[Built], w.stands[Built]}
	sin, cos, between := way(foot, tip)
	settle := round(tip[0], float64(k.TipThick)/2) / cos
	lean := math.Atan2(sin, cos)
	line := Line{
		Row: r, Lean: Angle(lean), Between: Length(between), Long: Length(between - settle),
		Settle: Length(settle),
		Foot:   Spot{Length(foot[0]), Length(foot[1])}, Tip: Spot{Length(tip[0]), Length(tip[1])},
		Shoulder:    Angle(lean - math.Atan(w.seatFall)),
		TipShoulder: Angle(lean - math.Atan(w.cone())),
	}
	inner := float64(k.FootLong)
	line.FootEnd = Spot{Length(foot[0] - inner*cos), Length(foot[1] - inner*sin)}
	line.TongueLong = Length(settle+w.throughRim(cos, sin)) - k.Tongue.Short
	return line
}

// way is the direction from foot to tip and the distance.
func way(foot, tip [2]float64) (sin, cos, long float64) {
	out, along := tip[0]-foot[0], tip[1]-foot[1]
	long = math.Hypot(out, along)
	return along / long, out / long, long
}

// round is how far a circle falls from its tangent, a way to the side.
func round(radius, side float64) float64 {
	return radius - math.Sqrt(max(0, radius*radius-side*side))
}

// throughRim is how long a spoke's middle line is from belly to sole. Both slope by the cone.
func (w *Wheel) throughRim(cos, sin float64) float64 {
	deep := w.sole[Built] - w.belly[Built]
	return deep / (cos + sin*w.cone())
}

// Pitch is the angle from one spoke to the next.
func (w *Wheel) Pitch() Angle { return Angle(2 * math.Pi / float64(w.Spec.Spokes.Number)) }

// Spacing is how far apart the spokes stand at the rim.
type Spacing struct {
	AtSole  Length // middle to middle, round the wood's outside
	AtBelly Length // middle to middle, round the belly
	Clear   Length // between the tips, straight across, at the belly
}

// Spacing is that of the finished wheel.
func (w *Wheel) Spacing() Spacing {
	pitch := float64(w.Pitch())
	r := w.Radii(Tyred)
	return Spacing{
		Length(pitch) * r.Sole, Length(pitch) * r.Belly,
		2*r.Belly*Length(math.Sin(pitch/2)) - w.Spec.Spokes.TipThick,
	}
}

// SpokeCounts are Felton's numbers of spokes by height: up to 3 ft 2, 8; 4 ft
// 6, 10; 5 ft 4, 12; above, 14. (W. Felton, A Treatise on Carriages, 1794-96,
// volume 1, Wheels; the groups from memory.)
func SpokeCounts(height Length) int {
	const foot, inch = 304.8, 25.4
	switch {
	case height <= 3*foot+2*inch:
		return 8
	case height <= 4*foot+6*inch:
		return 10
	case height <= 5*foot+4*inch:
		return 12
	}
	return 14
}

// MostClear is Felton's rule for the clear way between spokes at the felloe:
// not above 16 in (the same).
const MostClear Length = 16 * 25.4

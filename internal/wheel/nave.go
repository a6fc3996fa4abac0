package wheel

import (
	"math"

	"lostwood/parts"
)

// A Station is a place on the nave: along it from its back end, and its diameter there.
type Station = parts.Station

// seatEnds are the back and front of the spokes' seat, along the nave from its back end.
func (s Spec) seatEnds() (back, front Length) {
	middle := s.Nave.Long - s.Nave.Forward
	return middle - s.Nave.SeatLong/2, middle + s.Nave.SeatLong/2
}

// Stations are the corners of the nave's profile from its back end to its
// front end; it runs straight from one to the next.
func (w *Wheel) Stations() []Station { return w.turned().Stations }

func (w *Wheel) turned() parts.Turned { return w.NavePart().Stick().Body.(parts.Turned) }

// DiameterAt is the nave's diameter at a place along it from its back end.
func (w *Wheel) DiameterAt(along Length) Length { return 2 * w.turned().RadiusAt(along) }

// forBands is what the nave is turned to for the bands whose insides are known.
func (n Nave) forBands() []Station {
	var ss []Station
	for _, b := range n.Bands {
		if b.Large == 0 {
			continue
		}
		from, to := b.Large, b.Small
		if b.From+b.Wide/2 < n.Long-n.Forward { // behind the spokes its back edge is the smaller
			from, to = to, from
		}
		ss = append(ss, Station{Along: b.From, Diameter: from}, Station{Along: b.From + b.Wide, Diameter: to})
	}
	return ss
}

// onNave is a place along the axle, counted from the nave's back end.
func (w *Wheel) onNave(along Length) Length { return along + w.Spec.Nave.Long - w.Spec.Nave.Forward }

// BoxOutside is the box's outside diameter at a place along the nave from its
// back end; the bore that takes it is the same. Before and behind the box it is
// what the nave is bored to there.
func (w *Wheel) BoxOutside(along Length) Length {
	b := w.Spec.Box
	large, small := b.Large+2*b.Wall, b.Small+2*b.Wall
	switch {
	case along < b.In:
		return max(b.BackRecess, large)
	case along > b.In+b.Long:
		return max(b.FrontRecess, small)
	}
	return large + (small-large)*(along-b.In)/b.Long
}

// BoxTaper is half the angle that the box's bore closes by.
func (w *Wheel) BoxTaper() Angle {
	b := w.Spec.Box
	return Angle(math.Atan(float64((b.Large - b.Small) / 2 / b.Long)))
}

// A Cut is one of the mortises of a row in the nave, seen along the rim: a slot
// that runs in along the spoke's lean.
type Cut struct {
	Row Row
	// MouthBack and MouthFront are where its back and front leave the nave, along
	// the nave from its back end.
	MouthBack, MouthFront Length
	MouthAlong            Length // from back to front along the nave
	Thick                 Length // round the nave
	Deep                  Length // along the spoke, from the shoulder
	Space                 Length // between the foot's inner end and the box
	ToNext                Length // wood left between it and its neighbour at the foot's inner end
}

// Cuts are the mortises of each row.
func (w *Wheel) Cuts() []Cut {
	var out []Cut
	for _, r := range w.Rows() {
		out = append(out, w.cut(w.Row(r)))
	}
	return out
}

func (w *Wheel) cut(line Line) Cut {
	k := w.Spec.Spokes
	c := Cut{Row: line.Row, Thick: k.FootThick, Deep: k.FootLong}
	c.MouthBack, c.MouthFront = w.mouth(line, -1), w.mouth(line, 1)
	c.MouthAlong = c.MouthFront - c.MouthBack
	c.Space = Length(math.Inf(1))
	for _, corner := range w.innerCorners(line) {
		c.Space = min(c.Space, corner.Out-w.BoxOutside(w.onNave(corner.Along))/2)
	}
	c.ToNext = w.toNext(line)
	return c
}

// mouth is where the foot's front (+1) or back (-1) side leaves the seat.
func (w *Wheel) mouth(line Line, side float64) Length {
	sin, cos := math.Sincos(float64(line.Lean))
	half := side * float64(w.Spec.Spokes.FootWide) / 2
	// The side runs through foot + half*(-sin, cos) along (cos, sin); the seat
	// through foot along (-fall, 1).
	along := half / (cos + sin*w.seatFall)
	return w.onNave(line.Foot.Along + Length(along))
}

// innerCorners are the front and the back corner of the foot's inner end.
func (w *Wheel) innerCorners(line Line) [2]Spot {
	k := w.Spec.Spokes
	wide := k.FootPoint
	if wide == 0 {
		wide = k.FootWide
	}
	sin, cos := math.Sincos(float64(line.Lean))
	var out [2]Spot
	for i, side := range []float64{1, -1} {
		h := Length(side) * wide / 2
		out[i] = Spot{line.FootEnd.Out - h*Length(sin), line.FootEnd.Along + h*Length(cos)}
	}
	return out
}

// toNext is the wood between two neighbouring mortises where they are nearest,
// at the inner end. Where two rows pass each other clear, the neighbour is in
// the same row.
func (w *Wheel) toNext(line Line) Length {
	pitch := float64(w.Pitch())
	if w.rowsPassClear() {
		pitch *= 2
	}
	corners := w.innerCorners(line)
	r := float64(min(corners[0].Out, corners[1].Out))
	h := float64(w.Spec.Spokes.FootThick) / 2
	return Length(2 * (r*math.Sin(pitch/2) - h*math.Cos(pitch/2)))
}

// rowsPassClear says whether face and back mortises have no place along the
// nave in common, with a little wood between.
func (w *Wheel) rowsPassClear() bool {
	if w.Spec.Spokes.Stagger == 0 {
		return false
	}
	const wood = 3
	face, back := w.Row(FaceRow), w.Row(BackRow)
	f, b := w.innerCorners(face), w.innerCorners(back)
	return f[1].Along-b[0].Along >= wood && w.mouth(face, -1)-w.mouth(back, 1) >= wood
}

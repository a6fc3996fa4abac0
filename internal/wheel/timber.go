package wheel

import (
	"math"

	"lostwood/parts"
	"lostwood/parts/form"
)

// SpokePart is a spoke of a row, as it is made. In a wheel that is not
// staggered, or whose seat is turned square to the spokes, one serves all: a back
// spoke is then a face spoke turned about.
func (w *Wheel) SpokePart(r Row) parts.Spoke {
	k, line := w.Spec.Spokes, w.Row(r)
	return parts.Spoke{
		Long: line.Long, Wide: k.Wide, Thick: k.Thick, TipWide: k.TipWide, TipThick: k.TipThick, Square: k.Square,
		FootLong: k.FootLong, FootWide: k.FootWide, FootThick: k.FootThick, FootPoint: k.FootPoint,
		Shoulder: line.Shoulder, TipShoulder: line.TipShoulder,
		Tongue: k.Tongue.Thick, TongueLong: line.TongueLong, TongueSection: w.tongueHole(),
	}
}

func (w *Wheel) tongueHole() parts.HoleSection {
	if w.Spec.Spokes.Tongue.Form == SquareTongue {
		return parts.SquareHole
	}
	return parts.RoundHole
}

// FelloePart is a felloe of the wheel, as it is made.
func (w *Wheel) FelloePart() parts.Felloe {
	m := w.Spec.Rim
	return parts.Felloe{
		Radius: Length(w.sole[Built]), Wide: w.Spec.width(), Deep: m.Deep, Bevel: w.Cone(),
		Felloes: m.Felloes, Tongue: w.Spec.Spokes.Tongue.Thick, TongueSection: w.tongueHole(),
		Lean: w.Row(w.RowOf(0)).Lean, LeanBack: w.Row(w.RowOf(1)).Lean,
		Dowel: m.Dowel, DowelDeep: m.DowelDeep, TyreBolt: w.Spec.Tyre.Bolt, Eased: m.Eased, Gap: m.Gap,
	}
}

// NavePart is the wheel's nave, as it is made.
func (w *Wheel) NavePart() parts.Nave {
	n, k, b := w.Spec.Nave, w.Spec.Spokes, w.Spec.Box
	face, back := w.Row(w.RowOf(0)), w.Row(w.RowOf(1))
	return parts.Nave{
		Long: n.Long, Diameter: n.Diameter, Back: n.Back, Front: n.Front,
		Forward: n.Forward, SeatLong: n.SeatLong, SeatFall: Angle(math.Atan(w.seatFall)), Turned: n.forBands(),
		Feet: parts.Feet{
			Spokes: k.Number, Stagger: k.Stagger, Lean: face.Lean, LeanBack: back.Lean,
			Wide: k.FootWide, Thick: k.FootThick, Point: k.FootPoint, Deep: k.FootLong,
		},
		Box: parts.BoxBore{
			Long: b.Long, Large: b.Large + 2*b.Wall, Small: b.Small + 2*b.Wall, In: b.In, Back: b.BackRecess, Front: b.FrontRecess,
		},
	}
}

// A Member is one timber of the wheel in its place.
type Member struct {
	Name string // "spoke 3"
	Part parts.Part
	// Pose places the part's own frame, whose box starts at the origin.
	Pose Pose
}

// Members are the nave, the spokes and the felloes in their places, in the
// wheel's frame. A pose carried on by Then(w.Pose(...)) is in the vehicle's.
func (w *Wheel) Members(s State) []Member {
	nave := w.NavePart()
	r := w.turned().Stout() / 2
	out := []Member{{"nave", nave, w.NavePose().shifted(form.Vec{Y: -r, Z: -r})}}
	for i := range w.Spec.Spokes.Number {
		p := w.SpokePart(w.RowOf(i))
		mid := form.Vec{Y: -p.Thick / 2, Z: -p.Wide / 2}
		out = append(out, Member{numbered("spoke", i), p, w.SpokePose(i, s).shifted(mid)})
	}
	f := w.FelloePart()
	body := f.Stick().Body.(parts.Arc)
	for j := range w.Spec.Rim.Felloes {
		mid := body.Centre()
		back := form.Vec{X: -mid.X, Y: -f.Wide / 2, Z: -mid.Y}
		out = append(out, Member{numbered("felloe", j), f, w.FelloePose(j, s).shifted(back)})
	}
	return out
}

// shifted is the pose of a frame whose origin lies elsewhere in the posed one.
func (p Pose) shifted(by form.Vec) Pose {
	p.At = p.Of(by)
	return p
}

// Frame is the pose as a frame of package form.
func (p Pose) Frame() form.Frame { return form.Frame{Origin: p.At, U: p.X, V: p.Y} }

// A Hoop is an iron ring of the wheel: its section turned about the axle, in
// the wheel's frame.
type Hoop struct {
	Name   string
	Volume form.Volume
}

// Hoops are the tyre and the nave's bands as they stand on the finished wheel.
func (w *Wheel) Hoops() []Hoop {
	t := w.Spec.Tyre
	step := Length(w.cone()) * t.Wide / 2
	sole, at := w.Radii(Tyred).Sole, w.Dish(Tyred)
	out := []Hoop{hoop("tyre", form.Point{X: sole + step, Y: at - t.Wide/2}, form.Point{X: sole - step, Y: at + t.Wide/2}, t.Thick)}
	for i, b := range w.Spec.Nave.Bands {
		from := form.Point{X: w.DiameterAt(b.From) / 2, Y: b.From - w.onNave(0)}
		to := form.Point{X: w.DiameterAt(b.From+b.Wide) / 2, Y: from.Y + b.Wide}
		out = append(out, hoop(b.called(i), from, to, b.Thick))
	}
	return out
}

// hoop turns a strip, its inside from one place to another, of a thickness.
func hoop(name string, from, to form.Point, thick Length) Hoop {
	section := form.Polygon(from, form.Point{X: from.X + thick, Y: from.Y}, form.Point{X: to.X + thick, Y: to.Y}, to)
	if section.Area() < 0 {
		section = section.Reversed()
	}
	// W runs along y: U is z, V is x.
	return Hoop{name, form.Revolved{
		Frame: form.Frame{U: form.Dir{Z: 1}, V: form.Dir{X: 1}}, Profile: section, Sweep: 2 * math.Pi,
	}}
}

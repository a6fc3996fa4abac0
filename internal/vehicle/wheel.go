package vehicle

import (
	"lostwood/internal/wheel"
	"lostwood/parts/form"
)

// A Wheel is one wheel of the vehicle in its place, with what makes it.
type Wheel struct {
	ID    string // as the survey writes it, with its hand: "near-fore-wheel"
	Name  string // as people say it
	Hand  Hand
	Spec  wheel.Spec
	Sizes []Dimension // figures of the Spec by their names, with give or take and how known
	// Place puts the wheel's frame into the vehicle: where the nave's origin
	// stands, and the wheel's axes; the second runs out along the axle arm. It
	// holds the arm's cant and gather. Nil where nothing places it.
	Place *Place
	Parts []*Part // the timbers it is made of: nave, spokes, felloes; those there are
	Tyre  *Iron   // nil where none survives
	Irons []*Iron // bands, box, linchpin
}

// Made is the wheel worked out. Its error is package wheel's.
func (w *Wheel) Made() (*wheel.Wheel, error) { return wheel.New(w.Spec) }

// Disc is the room that the wheel's tyre takes up in the vehicle's frame; ok is
// false where nothing places the wheel, or its Spec cannot be built.
func (w *Wheel) Disc() (d wheel.Disc, ok bool) {
	made, err := w.Made()
	if err != nil || w.Place == nil {
		return wheel.Disc{}, false
	}
	return made.Disc(w.Place.pose()), true
}

// pose is the place without its doubts.
func (p *Place) pose() wheel.Pose {
	dir := func(a [3]float64) form.Dir { return form.Dir{X: a[0], Y: a[1], Z: a[2]} }
	return wheel.Pose{
		At: form.Vec{X: p.At[0].Value, Y: p.At[1].Value, Z: p.At[2].Value},
		X:  dir(p.Axes[0]), Y: dir(p.Axes[1]), Z: dir(p.Axes[2]),
	}
}

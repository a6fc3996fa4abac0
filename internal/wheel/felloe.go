package wheel

import (
	"fmt"
	"math"
)

// A Felloe is the shape of one piece of the rim, as it is sawn, before the
// tyre is on. Its plank lies square to the axle.
type Felloe struct {
	Radius Length // of its back at the larger edge
	Belly  Length // the radius of its belly at the smaller edge
	Chord  Length // straight across its back, end to end, at the larger edge
	Rise   Length // of the back above that chord
	Stock  Length // the least width of plank: rise and depth
	// EndBevel is how far a joint is out of square to the chord. The joints are
	// square to the plank's faces.
	EndBevel Angle
	Bevel    Angle // of back and belly, out of square to the plank's faces
	// GrainAtEnds and GrainAtTongues are how steep the grain, which lies along the
	// chord, runs out of the rim's curve at the joints and at the spokes.
	GrainAtEnds, GrainAtTongues Angle
	Between                     Length // between its two tongue holes, straight across, at the belly in its middle
	Gap                         Length // left open at each joint
	GapsTogether                Length
}

// Felloe is the shape of the wheel's felloes.
func (w *Wheel) Felloe() Felloe {
	n := float64(w.Spec.Rim.Felloes)
	step := w.cone() * float64(w.Spec.width()) / 2
	back, belly := w.sole[Built]+step, w.belly[Built]-step
	half := math.Pi/n - math.Asin(float64(w.Spec.Rim.Gap)/2/back)
	rise := back * (1 - math.Cos(half))
	return Felloe{
		Radius: Length(back), Belly: Length(belly),
		Chord: Length(2 * back * math.Sin(half)), Rise: Length(rise), Stock: Length(rise + back - belly),
		EndBevel: Angle(math.Pi / n), Bevel: w.Cone(),
		GrainAtEnds: Angle(math.Pi / n), GrainAtTongues: Angle(math.Pi / 2 / n),
		Between: Length(2 * w.belly[Built] * math.Sin(math.Pi/2/n)),
		Gap:     w.Spec.Rim.Gap, GapsTogether: w.Spec.Rim.Gap * Length(n),
	}
}

// checkFelloe looks at the tongue holes in the felloe and at its dowels.
func (w *Wheel) checkFelloe(l *limits) {
	s := w.Spec
	half := float64(s.Spokes.Tongue.Thick) / 2
	if s.Spokes.Tongue.Form == SquareTongue {
		half *= math.Sqrt2
	}
	for _, r := range w.Rows() {
		line := w.Row(r)
		sin, cos := math.Sincos(float64(line.Lean))
		at := math.Abs(w.throughRim(cos, sin)*sin) + half/cos
		if room := float64(s.width())/2 - 3; at > room {
			l.tell("tongue", fmt.Sprintf("a tongue of %s that leans %.2f degrees leaves %s of wood beside it where it comes out of the rim, which is %s wide; at least 3 mm must stand",
				told(s.Spokes.Tongue.Thick), line.Lean.Degrees(), told(Length(room+3-at)), told(s.width())))
		}
	}
	along := w.belly[Built] * math.Sin(math.Pi/2/float64(s.Rim.Felloes))
	if need := half + 5; along < need {
		l.tell("tongue", fmt.Sprintf("the tongue holes are %s from the felloes' joints, and a tongue of %s takes more", told(Length(along)), told(s.Spokes.Tongue.Thick)))
	}
}

// RadiusOf is the radius of a circle by a chord and its rise, and its give or
// take from theirs.
func RadiusOf(chord, rise, chordDoubt, riseDoubt Length) (radius, doubt Length) {
	c, s := float64(chord), float64(rise)
	radius = Length(c*c/(8*s) + s/2)
	doubt = Length(math.Hypot(c*float64(chordDoubt)/(4*s), (.5-c*c/(8*s*s))*float64(riseDoubt)))
	return radius, doubt
}

// Rise is how far a circle of a radius stands above a chord of it.
func Rise(radius, chord Length) Length {
	return radius - Length(math.Sqrt(float64(radius*radius-chord*chord/4)))
}

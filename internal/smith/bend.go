package smith

import "math"

// Quarter is a square bend, in radians.
const Quarter = math.Pi / 2

// neutral is where the line lies, in thicknesses from the inside of a bend, that
// neither stretches nor shortens in it: the middle in an easy bend, nearer the
// inside in a tight one. Machinery's Handbook gives for a square bend in steel
// 0.64 T + 1.57 R (from memory), which is 0.407 of the thickness.
const (
	neutralTight = 0.64 / Quarter
	neutralEasy  = 0.5
	easy         = 5 // inside radius in thicknesses, from which a bend is easy (common practice, no source)
)

// Allowance is the length of bar that a bend takes up: an angle in radians, the
// radius of its inside and the bar's thickness across the bend.
func Allowance(angle float64, inside, thick Length) Length {
	k := neutralTight
	if inside >= easy*thick {
		k = neutralEasy
	}
	return Length(angle * (float64(inside) + k*float64(thick)))
}

// Crank is how much longer a bar must be for a step of a height, set at 45
// degrees: the slope is the height's diagonal, and takes the place of as much
// length as the step is high (both bends are eased, and even out).
func Crank(high Length) Length { return Length((math.Sqrt2 - 1) * math.Abs(float64(high))) }

// Hoop is the length of a flat bar that is bent to a round of an inside diameter:
// that of its middle line, pi (d + t).
func Hoop(inside, thick Length) Length { return Length(math.Pi) * (inside + thick) }

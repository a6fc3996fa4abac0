package parts

import (
	"math"

	"lostwood/parts/form"
)

// endless is the depth of a cut right through.
func endless() Length { return Length(math.Inf(1)) }

// sink is a cut of the profile into the frame's plane from outside: depth is
// how far below the plane its floor lies, and endless goes right through.
func sink(f form.Frame, p form.Profile, depth Length) form.Prism {
	return form.Prism{Frame: f, Profile: p, From: -depth, To: endless()}
}

func disc(at form.Point, diameter Length) form.Profile { return form.Circle(at, diameter/2) }

// block is a rectangle by its middle.
func block(at form.Point, long, wide Length) form.Profile {
	return form.Rectangle(
		form.Point{X: at.X - long/2, Y: at.Y - wide/2},
		form.Point{X: at.X + long/2, Y: at.Y + wide/2})
}

// closed is a mark round a profile.
func closed(ref string, w Work, s Stroke, p form.Profile, label string) Mark {
	return Mark{Ref: ref, Work: w, Stroke: s, Path: p, Closed: true, Label: label}
}

// measured lists sizes, leaving out those that are absent.
func measured(pairs ...Measure) []Measure {
	var out []Measure
	for _, p := range pairs {
		if p.Value != 0 {
			out = append(out, p)
		}
	}
	return out
}

package form

import "math"

// Rounded is a straight-edged corner eased to a radius: the start of the arc
// and its end. A turn to the right is rounded likewise.
func Rounded(before, corner, after Point, radius Length) Profile {
	turned := turnAt(before, corner, after)
	step := radius * Length(math.Tan(math.Abs(turned)/2))
	return Profile{
		{toward(corner, before, step), math.Tan(turned / 4)},
		{Point: toward(corner, after, step)},
	}
}

// Clipped is a straight-edged corner cut off straight, by the same length of both edges.
func Clipped(before, corner, after Point, by Length) Profile {
	return Profile{{Point: toward(corner, before, by)}, {Point: toward(corner, after, by)}}
}

// Joined drops every vertex that the one after it repeats, as where two
// rounded corners meet in the middle of an edge.
func Joined(p Profile) Profile {
	var out Profile
	for i, v := range p {
		n := p[(i+1)%len(p)]
		if math.Hypot(float64(n.X-v.X), float64(n.Y-v.Y)) >= same {
			out = append(out, v)
		}
	}
	return out
}

// turnAt is the angle that the way turns by at a corner, to the left where positive.
func turnAt(before, corner, after Point) float64 {
	ux, uy := float64(corner.X-before.X), float64(corner.Y-before.Y)
	vx, vy := float64(after.X-corner.X), float64(after.Y-corner.Y)
	return math.Atan2(ux*vy-uy*vx, ux*vx+uy*vy)
}

func toward(from, to Point, by Length) Point {
	d := Length(math.Hypot(float64(to.X-from.X), float64(to.Y-from.Y)))
	return Point{from.X + (to.X-from.X)/d*by, from.Y + (to.Y-from.Y)/d*by}
}

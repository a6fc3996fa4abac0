package parts_test

import (
	"math"

	"lostwood/parts/form"
)

// holds asks a volume about a point by the words of the form package's
// comments alone: an independent check of everything that is laid out here.
func holds(v form.Volume, p form.Vec) bool {
	local := func(f form.Frame) (x, y, z float64) {
		d := p.Minus(f.Origin)
		return float64(f.U.Along(d)), float64(f.V.Along(d)), float64(f.W().Along(d))
	}
	switch v := v.(type) {
	case form.Prism:
		x, y, z := local(v.Frame)
		return z >= float64(v.From) && z <= float64(v.To) && inside(v.Profile, x, y)
	case form.Revolved:
		x, y, z := local(v.Frame)
		a := math.Atan2(y, x)
		if a < 0 {
			a += 2 * math.Pi
		}
		return a <= float64(v.Sweep) && inside(v.Profile, math.Hypot(x, y), z)
	case form.Oval:
		x, y, z := local(v.Frame)
		if z < float64(v.From) || z > float64(v.To) {
			return false
		}
		t := (z - float64(v.From)) / float64(v.To-v.From)
		part := func(a, b form.Length) float64 { return float64(a)*(1-t) + float64(b)*t }
		u := (x - part(v.First.Centre.X, v.Last.Centre.X)) / part(v.First.U, v.Last.U)
		w := (y - part(v.First.Centre.Y, v.Last.Centre.Y)) / part(v.First.V, v.Last.V)
		return u*u+w*w <= 1
	case form.Half:
		return v.Normal.Along(p.Minus(v.At)) <= 0
	case form.Intersection:
		for _, m := range v {
			if !holds(m, p) {
				return false
			}
		}
		return true
	case form.Difference:
		if !holds(v.From, p) {
			return false
		}
		for _, c := range v.Cut {
			if holds(c, p) {
				return false
			}
		}
		return true
	}
	return false
}

// inside asks for the polygon through the corners, and changes its mind for
// every arc whose segment holds the point.
func inside(p []form.Vertex, x, y float64) bool {
	// A chord right through the point would leave open which side it is on.
	x, y = x+1.3e-9, y+1.7e-9
	in := false
	for i, v := range p {
		n := p[(i+1)%len(p)]
		ax, ay, bx, by := float64(v.X), float64(v.Y), float64(n.X), float64(n.Y)
		if (ay > y) != (by > y) && x < ax+(bx-ax)*(y-ay)/(by-ay) {
			in = !in
		}
		if v.Bulge != 0 && inSegment(ax, ay, bx, by, v.Bulge, x, y) {
			in = !in
		}
	}
	return in
}

// inSegment: a point inside sees the chord under a larger angle than the rim does.
func inSegment(ax, ay, bx, by, bulge, x, y float64) bool {
	side := (bx-ax)*(y-ay) - (by-ay)*(x-ax)
	if side*bulge >= 0 { // an anticlockwise arc lies to the right of its chord
		return false
	}
	ux, uy, vx, vy := ax-x, ay-y, bx-x, by-y
	seen := math.Atan2(math.Abs(ux*vy-uy*vx), ux*vx+uy*vy)
	return seen > math.Pi-2*math.Atan(math.Abs(bulge))
}

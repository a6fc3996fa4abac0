package outline

import "lostwood/parts/form"

// A Box is an upright rectangle.
type Box struct{ Min, Max form.Point }

// Around is the box of a circle.
func Around(c form.Point, radius Length) Box {
	return Box{form.Point{X: c.X - radius, Y: c.Y - radius}, form.Point{X: c.X + radius, Y: c.Y + radius}}
}

// Spanning is the box of two opposite corners.
func Spanning(a, b form.Point) Box {
	return Box{
		form.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)},
		form.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)},
	}
}

// Width is the extent along x.
func (b Box) Width() Length { return b.Max.X - b.Min.X }

// Height is the extent along y.
func (b Box) Height() Length { return b.Max.Y - b.Min.Y }

// Grown is the box with a margin all round.
func (b Box) Grown(by Length) Box {
	return Box{form.Point{X: b.Min.X - by, Y: b.Min.Y - by}, form.Point{X: b.Max.X + by, Y: b.Max.Y + by}}
}

// Shifted is the box moved by p.
func (b Box) Shifted(p form.Point) Box { return Box{plus(b.Min, p), plus(b.Max, p)} }

// With is the smallest box that holds both.
func (b Box) With(o Box) Box {
	return Box{
		form.Point{X: min(b.Min.X, o.Min.X), Y: min(b.Min.Y, o.Min.Y)},
		form.Point{X: max(b.Max.X, o.Max.X), Y: max(b.Max.Y, o.Max.Y)},
	}
}

// Meets reports whether the two share any area.
func (b Box) Meets(o Box) bool {
	return b.Min.X < o.Max.X && o.Min.X < b.Max.X && b.Min.Y < o.Max.Y && o.Min.Y < b.Max.Y
}

// Holds reports whether o lies within b.
func (b Box) Holds(o Box) bool {
	return b.Min.X <= o.Min.X && o.Max.X <= b.Max.X && b.Min.Y <= o.Min.Y && o.Max.Y <= b.Max.Y
}

func (b Box) joined(o Box, have bool) Box {
	if !have {
		return o
	}
	return b.With(o)
}

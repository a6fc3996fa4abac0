package form

import "math"

// W is the direction square to the frame's plane, on the side from which U
// turns anticlockwise to V.
func (f Frame) W() Dir {
	u, v := f.U, f.V
	return Dir{u.Y*v.Z - u.Z*v.Y, u.Z*v.X - u.X*v.Z, u.X*v.Y - u.Y*v.X}
}

// At is the place in space that lies x along U, y along V and z along W.
func (f Frame) At(x, y, z Length) Vec {
	return f.Origin.Plus(f.U, x).Plus(f.V, y).Plus(f.W(), z)
}

// On is the foot on the frame's plane of a place in space: At's x and y.
func (f Frame) On(p Vec) Point {
	d := p.Minus(f.Origin)
	return Point{f.U.Along(d), f.V.Along(d)}
}

// Plus is the place a distance away from p in direction d.
func (p Vec) Plus(d Dir, by Length) Vec {
	return Vec{p.X + Length(d.X)*by, p.Y + Length(d.Y)*by, p.Z + Length(d.Z)*by}
}

// Minus is the step from q to p.
func (p Vec) Minus(q Vec) Vec { return Vec{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Along is how far the step s goes in direction d.
func (d Dir) Along(s Vec) Length {
	return Length(d.X)*s.X + Length(d.Y)*s.Y + Length(d.Z)*s.Z
}

// Opposite is the direction back along d.
func (d Dir) Opposite() Dir { return Dir{-d.X, -d.Y, -d.Z} }

// Direction is the way from one place to another; zero where they are one.
func Direction(from, to Vec) Dir {
	d := to.Minus(from)
	n := math.Sqrt(float64(d.X)*float64(d.X) + float64(d.Y)*float64(d.Y) + float64(d.Z)*float64(d.Z))
	if n == 0 {
		return Dir{}
	}
	return Dir{float64(d.X) / n, float64(d.Y) / n, float64(d.Z) / n}
}

package parts

import "lostwood/parts/form"

// A Face is one of a part's six, named in the part's own frame.
type Face int

// The faces. The four long ones come in the order in which they unfold round
// the stick on paper: each lies below the one before it.
const (
	Upper      Face = iota // z at its most; the paper's x is x, its y is y
	FirstSide              // y = 0; x is x, y is z
	Under                  // z = 0; x is x, y is wide - y
	SecondSide             // y at its most; x is x, y is deep - z
	FirstEnd               // x = 0; x is wide - y, y is z
	SecondEnd              // x at its most; x is y, y is z
)

// LongFaces are the four that run with the grain, in unfolding order.
func LongFaces() []Face { return []Face{Upper, FirstSide, Under, SecondSide} }

// Faces are all six.
func Faces() []Face { return append(LongFaces(), FirstEnd, SecondEnd) }

// Opposite is the face on the other side of the part.
func (f Face) Opposite() Face {
	return [...]Face{Under, SecondSide, Upper, FirstSide, SecondEnd, FirstEnd}[f]
}

// Frame places the face's paper in the part's frame: its origin where the
// paper's is, U and V along the paper's x and y, W out of the wood.
func (f Face) Frame(b Body) form.Frame {
	long, wide, deep := b.Box()
	x, y, z := form.Dir{X: 1}, form.Dir{Y: 1}, form.Dir{Z: 1}
	switch f {
	case Upper:
		return form.Frame{Origin: form.Vec{Z: deep}, U: x, V: y}
	case FirstSide:
		return form.Frame{U: x, V: z}
	case Under:
		return form.Frame{Origin: form.Vec{Y: wide}, U: x, V: y.Opposite()}
	case SecondSide:
		return form.Frame{Origin: form.Vec{Y: wide, Z: deep}, U: x, V: z.Opposite()}
	case FirstEnd:
		return form.Frame{Origin: form.Vec{Y: wide}, U: y.Opposite(), V: z}
	}
	return form.Frame{Origin: form.Vec{X: long}, U: y, V: z}
}

// extent is how far the part's box reaches along the face's x and y.
func (f Face) extent(b Body) (x, y Length) {
	long, wide, deep := b.Box()
	switch f {
	case Upper, Under:
		return long, wide
	case FirstSide, SecondSide:
		return long, deep
	}
	return wide, deep
}

func (f Face) isEnd() bool { return f == FirstEnd || f == SecondEnd }

func (f Face) known() bool { return f >= Upper && f <= SecondEnd }

// through is the place on the opposite face straight through the part.
func (f Face) through(b Body, at form.Point) form.Point {
	w, h := f.extent(b)
	if f.isEnd() {
		return form.Point{X: w - at.X, Y: at.Y}
	}
	return form.Point{X: at.X, Y: h - at.Y}
}

// mirroredAt is where a place on the face goes in the part of the other hand,
// on f.mirrored().
func (f Face) mirroredAt(b Body, at form.Point) form.Point { return f.through(b, at) }

func (f Face) mirrored() Face {
	if f == FirstSide || f == SecondSide {
		return f.Opposite()
	}
	return f
}

// String names the face in the part's own frame.
func (f Face) String() string {
	if !f.known() {
		return "no face"
	}
	return [...]string{"upper", "first side", "under", "second side", "first end", "second end"}[f]
}

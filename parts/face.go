package parts

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

func (f Face) mirrored() Face {
	if f == FirstSide || f == SecondSide {
		return f.Opposite()
	}
	return f
}

// String names the face in the part's own frame.
func (f Face) String() string {
	return [...]string{"upper", "first side", "under", "second side", "first end", "second end"}[f]
}

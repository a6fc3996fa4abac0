package form

// Moved is the volume set into a frame: its own x along the frame's U, its y
// along V, its z along W, its origin at the frame's.
func Moved(v Volume, to Frame) Volume {
	switch v := v.(type) {
	case Prism:
		return Prism{v.Frame.movedTo(to), v.Profile, v.From, v.To}
	case Revolved:
		return Revolved{v.Frame.movedTo(to), v.Profile, v.Sweep}
	case Oval:
		v.Frame = v.Frame.movedTo(to)
		return v
	case Half:
		return Half{to.At(v.At.X, v.At.Y, v.At.Z), v.Normal.movedTo(to)}
	case Union:
		return Union(movedAll(v, to))
	case Intersection:
		return Intersection(movedAll(v, to))
	case Difference:
		return Difference{Moved(v.From, to), movedAll(v.Cut, to)}
	}
	return v
}

func movedAll(vs []Volume, to Frame) []Volume {
	out := make([]Volume, len(vs))
	for i, v := range vs {
		out[i] = Moved(v, to)
	}
	return out
}

func (d Dir) movedTo(to Frame) Dir {
	w := to.W()
	return Dir{
		d.X*to.U.X + d.Y*to.V.X + d.Z*w.X,
		d.X*to.U.Y + d.Y*to.V.Y + d.Z*w.Y,
		d.X*to.U.Z + d.Y*to.V.Z + d.Z*w.Z,
	}
}

func (f Frame) movedTo(to Frame) Frame {
	o := f.Origin
	return Frame{to.At(o.X, o.Y, o.Z), f.U.movedTo(to), f.V.movedTo(to)}
}

package parts

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// edgePath is the middle line moved to the side an edge is on, and in from
// there by so much; right is 1 for the side on its right.
func (b Bent) edgePath(a Arris, in Length) (p form.Path, right Length) {
	if a.Side == FirstSide {
		return b.Middle.Offset(in - b.Thick/2), 1
	}
	return b.Middle.Offset(b.Thick/2 - in), -1
}

// easedCuts are one cut for each line and arc of the edge. Where a line meets
// an arc, the one that draws away from the wood there is carried on past the
// other, so that no skin is left between the two and no more is cut.
func (b Bent) easedCuts(e EasedEdge) []form.Volume {
	edge, right := b.edgePath(e.Edge, 0)
	out := form.Dir{Z: -float64(e.Edge.inZ())}
	z := Length(0)
	if e.Edge.Flat == Upper {
		z = b.Deep
	}
	var cuts []form.Volume
	last := len(edge) - 2
	for i, v := range edge[:last+1] {
		if v.Bulge != 0 {
			cuts = append(cuts, bendCut(edge[i:i+2], right, out, z, e.Radius))
			continue
		}
		before, after := overrun, overrun
		if i > 0 && !drawsAway(edge[i-1].Bulge, right) {
			before = 0
		}
		if i < last && !drawsAway(edge[i+1].Bulge, right) {
			after = 0
		}
		cuts = append(cuts, lineCut(edge[i:i+2], right, out, z, e.Radius, before, after))
	}
	return cuts
}

// drawsAway says whether a straight edge carried on into a bend leaves the
// wood: on the outside of the bend.
func drawsAway(bulge float64, right Length) bool { return bulge*float64(right) > 0 }

func lineCut(edge form.Path, right Length, up form.Dir, z, radius, before, after Length) form.Volume {
	a := form.Vec{X: edge[0].X, Y: edge[0].Y, Z: z}
	c := form.Vec{X: edge[1].X, Y: edge[1].Y, Z: z}
	along := form.Direction(a, c)
	f := form.Frame{Origin: a, U: form.Dir{X: along.Y * float64(right), Y: -along.X * float64(right)}, V: up}
	from, to := -before, edge[:2].Long()+after
	if f.W().X*along.X+f.W().Y*along.Y < 0 {
		from, to = -to, -from
	}
	return form.Prism{Frame: f, Profile: spandrel(radius, overrun), From: from, To: to}
}

// bendCut turns the spandrel about the bend's middle. On the inside of a bend
// it goes past both its ends.
func bendCut(edge form.Path, right Length, up form.Dir, z, radius Length) form.Volume {
	bend := edge.Bend(0)
	outside := drawsAway(edge[0].Bulge, right)
	p := spandrel(radius, overrun)
	var past form.Angle
	if !outside {
		p = spandrel(radius, min(overrun, bend.Radius/2)).Transposed().Mirrored(0).Transposed()
		past = form.Angle(math.Asin(float64(min(overrun, bend.Radius/2) / bend.Radius)))
	}
	if up.Z < 0 {
		p = p.Mirrored(0)
	}
	sin, cos := math.Sincos(float64(bend.From - past))
	return form.Revolved{
		Frame: form.Frame{
			Origin: form.Vec{X: bend.Centre.X, Y: bend.Centre.Y, Z: z},
			U:      form.Dir{X: cos, Y: sin}, V: form.Dir{X: -sin, Y: cos},
		},
		Profile: p.Translated(bend.Radius, 0),
		Sweep:   bend.Turn + 2*past,
	}
}

// easedLines are the rounding's line seen from above or below, and from the
// sides of the box that look at it, and its arc across the corner of an end
// that is looked at.
func (b Bent) easedLines(e EasedEdge, f Face) []form.Path {
	frame := f.Frame(b)
	switch f {
	case e.Edge.Flat:
		p, _ := b.edgePath(e.Edge, e.Radius)
		return []form.Path{onFlat(p, frame)}
	case Upper, Under:
		return nil
	}
	z, corner := e.Radius, Length(0)
	if e.Edge.Flat == Upper {
		z, corner = b.Deep-z, b.Deep
	}
	edge, right := b.edgePath(e.Edge, 0)
	eased, _ := b.edgePath(e.Edge, e.Radius)
	on := func(v form.Vertex, z Length) form.Point { return frame.On(form.Vec{X: v.X, Y: v.Y, Z: z}) }
	var out []form.Path
	for i, v := range edge[:len(edge)-1] {
		n := edge[i+1]
		along := form.Direction(form.Vec{X: v.X, Y: v.Y}, form.Vec{X: n.X, Y: n.Y})
		side := form.Vec{X: Length(along.Y) * right, Y: -Length(along.X) * right}
		if v.Bulge == 0 && frame.W().Along(side) > .5 {
			out = append(out, form.Path{{Point: on(v, z)}, {Point: on(n, z)}})
		}
	}
	for i, end := range []Face{FirstEnd, SecondEnd} {
		own, _ := b.end(end)
		if frame.W().Along(vec(own.W())) > 1-1e-9 && (!f.isEnd() || f == end) {
			at := i * (len(edge) - 1)
			out = append(out, cornerArc(on(edge[at], z), on(edge[at], corner), on(eased[at], corner)))
		}
	}
	return out
}

// onFlat is a level line seen on the upper or under face.
func onFlat(p form.Path, frame form.Frame) form.Path {
	out := make(form.Path, len(p))
	for i, v := range p {
		out[i] = form.Vertex{Point: frame.On(form.Vec{X: v.X, Y: v.Y}), Bulge: v.Bulge}
		if frame.W().Z < 0 {
			out[i].Bulge = -v.Bulge
		}
	}
	return out
}

func (b Bent) easedRoom(Arris) Length { return min(b.Thick, b.Deep) - .5 }

func (b Bent) easedWood(e EasedEdge) quantity.Volume {
	p, _ := b.edgePath(e.Edge, e.Radius*Length(spandrelCentroid))
	return squareCorner(e.Radius, p.Long())
}

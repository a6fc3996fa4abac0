package parts

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Bent is a rail of one section all along, bent over its flat: its middle line
// lies level, of straight lines and arcs that run smoothly into each other.
//
// The box starts at the origin, so the middle line keeps half the thickness
// away from its sides. The first end is where the line starts. Its outline seen
// from above is exact: the middle line's offsets and the two ends.
type Bent struct {
	Middle form.Path // seen from above: x along, y across
	Thick  Length    // across the middle line, level
	Deep   Length    // up
}

func (b Bent) plan() form.Profile { return b.Middle.Band(b.Thick / 2) }

// Box is as in Body.
func (b Bent) Box() (long, wide, deep Length) {
	_, hi := b.plan().Bounds()
	return hi.X, hi.Y, b.Deep
}

// Volume is as in Body: one prism, so that no two pieces have to meet.
func (b Bent) Volume() form.Volume {
	return form.Prism{Frame: planFrame(), Profile: b.plan(), To: b.Deep}
}

// Outline is as in Body.
func (b Bent) Outline(f Face) form.Profile {
	long, wide, deep := b.Box()
	switch f {
	case Upper:
		return b.plan()
	case Under:
		return b.plan().Mirrored(wide)
	case FirstSide, SecondSide:
		return form.Rectangle(form.Point{}, form.Point{X: long, Y: deep})
	}
	return form.Rectangle(form.Point{}, form.Point{X: wide, Y: deep})
}

// Net is as in Body.
func (b Bent) Net() quantity.Volume {
	return quantity.Volume(float64(b.plan().Area()) * float64(b.Deep))
}

// Mirrored is as in Body.
func (b Bent) Mirrored() Body {
	_, wide, _ := b.Box()
	m := make(form.Path, len(b.Middle))
	for i, v := range b.Middle {
		m[i] = form.Vertex{Point: form.Point{X: v.X, Y: wide - v.Y}, Bulge: -v.Bulge}
	}
	b.Middle = m
	return b
}

// Blank is as in Body: straight stock as long as the middle line, which is
// taken to keep its length in bending (common practice, no source).
func (b Bent) Blank() Blank {
	return Blank{Long: b.Middle.Long(), Wide: b.Thick, Deep: b.Deep, Making: Steamed}
}

// end is the plane of one end of the rail.
func (b Bent) end(f Face) (form.Frame, form.Profile) {
	at, out := b.Middle.End()
	if f == FirstEnd {
		at, out = b.Middle.Start()
		out = out.Opposite()
	}
	u := form.Dir{X: -out.Y, Y: out.X}
	origin := form.Vec{X: at.X, Y: at.Y}.Plus(u, -b.Thick/2)
	return form.Frame{Origin: origin, U: u, V: form.Dir{Z: 1}},
		form.Rectangle(form.Point{}, form.Point{X: b.Thick, Y: b.Deep})
}

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
// sides of the box that look at it.
func (b Bent) easedLines(e EasedEdge, f Face) []form.Path {
	frame := f.Frame(b)
	flat := func(p form.Path) form.Path {
		out := make(form.Path, len(p))
		for i, v := range p {
			out[i] = form.Vertex{Point: frame.On(form.Vec{X: v.X, Y: v.Y}), Bulge: v.Bulge}
			if f == Under {
				out[i].Bulge = -v.Bulge
			}
		}
		return out
	}
	if f == e.Edge.Flat {
		p, _ := b.edgePath(e.Edge, e.Radius)
		return []form.Path{flat(p)}
	}
	if f == e.Edge.Flat.Opposite() || !f.known() {
		return nil
	}
	z := e.Radius
	if e.Edge.Flat == Upper {
		z = b.Deep - z
	}
	edge, right := b.edgePath(e.Edge, 0)
	var out []form.Path
	for i, v := range edge[:len(edge)-1] {
		along := form.Direction(form.Vec{X: v.X, Y: v.Y}, form.Vec{X: edge[i+1].X, Y: edge[i+1].Y})
		side := form.Vec{X: Length(along.Y) * right, Y: -Length(along.X) * right}
		if v.Bulge != 0 || frame.W().Along(side) < .5 {
			continue
		}
		out = append(out, form.Path{
			{Point: frame.On(form.Vec{X: v.X, Y: v.Y, Z: z})},
			{Point: frame.On(form.Vec{X: edge[i+1].X, Y: edge[i+1].Y, Z: z})},
		})
	}
	return out
}

func (b Bent) easedRoom(Arris) Length { return min(b.Thick, b.Deep) - .5 }

func (b Bent) easedLong(e EasedEdge) Length {
	p, _ := b.edgePath(e.Edge, e.Radius*Length(spandrelCentroid))
	return p.Long()
}

package parts

import (
	"fmt"

	"lostwood/parts/form"
)

// The extents a timber part may have. They are wide on purpose: they catch a
// slip of the unit or a misread figure, not an unusual vehicle (common
// practice, no source).
const (
	shortest Length = 40
	longest  Length = 8000
	thinnest Length = 5
	thickest Length = 900
)

const slip = "a slip of the unit?"

// extents looks at the three sizes of a part's box.
func (l *limits) extents(long, wide, deep named) {
	l.need(long.name, long.value, shortest, longest, slip)
	l.need(wide.name, wide.value, thinnest, thickest, slip)
	l.need(deep.name, deep.value, thinnest, thickest, slip)
}

// A named dimension of a part, as the survey writes it.
type named struct {
	name  string
	value Length
}

// cornered shapes the corners of an outline at the given vertices: each is
// rounded to a radius or clipped by a length along both edges; 0 leaves it.
func cornered(p form.Profile, radius, clip Length, corners ...int) form.Profile {
	shaped := map[int]bool{}
	for _, c := range corners {
		shaped[c] = true
	}
	var out form.Profile
	for i, v := range p {
		before, after := p[(i+len(p)-1)%len(p)].Point, p[(i+1)%len(p)].Point
		switch {
		case shaped[i] && radius > 0:
			out = append(out, form.Rounded(before, v.Point, after, radius)...)
		case shaped[i] && clip > 0:
			out = append(out, form.Clipped(before, v.Point, after, clip)...)
		default:
			out = append(out, v)
		}
	}
	return form.Joined(out)
}

// fourChamfers takes off the four long edges, stopped at the same distance
// from both ends where stop is not 0.
func fourChamfers(long, size, stop Length) []Feature {
	if size == 0 {
		return nil
	}
	var out []Feature
	for i, a := range Arrises() {
		c := Chamfer{ID: numbered("chamfer", i+1), Edge: a, Size: size}
		if stop != 0 {
			c.From, c.To = stop, long-stop
		}
		out = append(out, c)
	}
	return out
}

// easedEdges rounds long edges to a radius.
func easedEdges(radius Length, edges ...Arris) []Feature {
	if radius == 0 {
		return nil
	}
	var out []Feature
	for i, a := range edges {
		out = append(out, EasedEdge{ID: numbered("eased edge", i+1), Edge: a, Radius: radius})
	}
	return out
}

func chamferDimension() Dimension {
	return Dimension{"chamfer", "width of the chamfers on the long edges", NoAxis, InLength, Optional}
}

func chamferStopDimension() Dimension {
	return Dimension{"chamfer-stop", "from each end to where the chamfers stop; they run out where left out", NoAxis, InLength, Optional}
}

// ownChamfers says which dimension is to blame for a fault in a part's own chamfers.
func ownChamfers() map[string]string {
	own := map[string]string{}
	for i := range Arrises() {
		c := numbered("chamfer", i+1)
		own[c+" size"] = "chamfer"
		own[c+" from"], own[c+" to"], own[c+" length"] = "chamfer-stop", "chamfer-stop", "chamfer-stop"
	}
	return own
}

// ownEased says which dimension is to blame for a fault in a part's own eased edges.
func ownEased() map[string]string {
	own := map[string]string{}
	for i := range Arrises() {
		e := numbered("eased edge", i+1)
		own[e+" radius"], own[e+" size"] = "eased", "eased"
	}
	return own
}

func numbered(what string, n int) string { return fmt.Sprintf("%s %d", what, n) }

package mesh

import (
	"math"
	"slices"

	"lostwood/parts/form"
)

// A side is a bit of line in one direction; the cell it bounds lies to its left.
type side struct {
	from, to knot
	next     int // the following side of the same cell
	cell     int
}

// A patch is what the solid's skin is made of: one facing of one plane, on one
// true surface.
type patch struct {
	plane   int
	up      bool // faces along the plane's normal
	surface int
}

// bare marks a cell that is not on the skin.
var bare = patch{plane: -1}

// A rim is a bit of a patch's border, the patch to its left seen from outside.
type rim struct {
	from, to knot
	patch    int
}

// cells cuts the drawing into cells: sides 2i and 2i+1 are the two ways along
// bit i, and the count of cells' borders is returned. A cell with an island in
// it has more than one border.
func (d *drawing) cells(bits [][2]knot) ([]side, int) {
	sides := make([]side, 0, 2*len(bits))
	leaving := map[knot][]int{}
	var order []knot
	for _, b := range bits {
		for _, way := range [][2]knot{{b[0], b[1]}, {b[1], b[0]}} {
			if leaving[way[0]] == nil {
				order = append(order, way[0])
			}
			leaving[way[0]] = append(leaving[way[0]], len(sides))
			sides = append(sides, side{from: way[0], to: way[1], cell: -1})
		}
	}
	for _, k := range order {
		out := leaving[k]
		slices.SortFunc(out, func(i, j int) int { return d.bearing(sides[i], sides[j]) })
		for i, s := range out {
			before := out[(i+len(out)-1)%len(out)]
			sides[s^1].next = before // coming in along s, turn as far left as can be
		}
	}
	n := 0
	for i := range sides {
		if sides[i].cell >= 0 {
			continue
		}
		for j := i; sides[j].cell < 0; j = sides[j].next {
			sides[j].cell = n
		}
		n++
	}
	return sides, n
}

// bearing orders two sides leaving one knot anticlockwise from the x axis.
func (d *drawing) bearing(s, t side) int {
	o := d.xy(s.from)
	a, b := d.xy(s.to).sub(o), d.xy(t.to).sub(o)
	if ha, hb := upper(a), upper(b); ha != hb {
		return hb - ha
	}
	return cmpFloat(0, a.cross(b))
}

// upper is 1 for the half turn from the x axis up, and 0 for the other half.
func upper(a xy) int {
	if a.y > 0 || a.y == 0 && a.x > 0 {
		return 1
	}
	return 0
}

// rims finds the borders of the skin's patches on one plane.
func (c *carving) rims(plane int, number func(patch) int, emit func(rim)) {
	if f := &c.facets[c.planes[plane].facets[0]]; !c.busy(plane) && !f.hollow {
		c.whole(f, number, emit)
		return
	}
	d := c.drawing(plane)
	bits := d.bits()
	sides, n := d.cells(bits)
	skin := make([]patch, n)
	for i, s := range d.samples(bits, sides, n) {
		skin[i] = c.facing(plane, d.lift(s))
	}
	for i := 0; i < len(sides); i += 2 {
		left, right := skin[sides[i].cell], skin[sides[i+1].cell]
		if left == right {
			continue
		}
		for k, p := range [2]patch{left, right} {
			if p == bare {
				continue
			}
			s := sides[i+k]
			if !p.up {
				s.from, s.to = s.to, s.from
			}
			emit(rim{s.from, s.to, number(p)})
		}
	}
}

// whole does for a facet that nothing crosses, which is all skin or none.
func (c *carving) whole(f *facet, number func(patch) int, emit func(rim)) {
	middle := point{}
	for _, k := range f.loop {
		middle = middle.Add(c.knots.at[k])
	}
	p := c.facing(f.plane, middle.DivScalar(float64(len(f.loop))))
	if p == bare {
		return
	}
	n := number(p)
	for i, a := range f.loop {
		b := f.loop[(i+1)%len(f.loop)]
		for _, to := range append(c.marksFrom(a, b), b) {
			if p.up == f.up {
				emit(rim{a, to, n})
			} else {
				emit(rim{to, a, n})
			}
			a = to
		}
	}
}

// marksFrom lists the knots that divide the line from a to b, in that order.
func (c *carving) marksFrom(a, b knot) []knot {
	marks := slices.Clone(c.lines[c.lineOf[[2]knot{min(a, b), max(a, b)}]].marks)
	way := c.knots.at[b].Sub(c.knots.at[a])
	slices.SortStableFunc(marks, func(j, k knot) int {
		return cmpFloat(way.Dot(c.knots.at[j]), way.Dot(c.knots.at[k]))
	})
	return marks
}

// A bit is an undivided piece of line, laid flat.
type bit struct {
	from, to knot
	a, b     xy
}

// roomy is as far as a sample need be from the next line, in millimetres.
const roomy = 0.01

// samples finds a place well inside each cell: beside the middle of one of its
// longest sides, half way to whatever comes next.
func (d *drawing) samples(ends [][2]knot, sides []side, n int) []xy {
	bits := make([]bit, len(ends))
	for i, e := range ends {
		bits[i] = bit{e[0], e[1], d.xy(e[0]), d.xy(e[1])}
	}
	byCell := make([][]int, n)
	for i, s := range sides {
		byCell[s.cell] = append(byCell[s.cell], i)
	}
	out := make([]xy, n)
	for cell, list := range byCell {
		slices.SortStableFunc(list, func(i, j int) int { return cmpFloat(d.long(sides[j]), d.long(sides[i])) })
		best := -1.0
		for _, i := range list[:min(len(list), 4)] {
			p := d.beside(bits, sides[i])
			if room := clearance(bits, p); room > best {
				best, out[cell] = room, p
			}
			if best > roomy {
				break
			}
		}
	}
	return out
}

func (d *drawing) long(s side) float64 { return d.xy(s.to).sub(d.xy(s.from)).length() }

// beside is the place to the left of a side's middle, half way to the next bit.
func (d *drawing) beside(bits []bit, s side) xy {
	a, b := d.xy(s.from), d.xy(s.to)
	way := b.sub(a)
	l := way.length()
	left := xy{-way.y / l, way.x / l}
	m := a.plus(way, 0.5)
	reach := l // where nothing comes next, as far as the side is long
	for i := range bits {
		o := &bits[i]
		pc, qc := left.cross(o.a.sub(m)), left.cross(o.b.sub(m))
		if (pc > 0) == (qc > 0) || o.from == min(s.from, s.to) && o.to == max(s.from, s.to) {
			continue
		}
		at := o.a.plus(o.b.sub(o.a), pc/(pc-qc))
		if t := at.sub(m).dot(left); t > 0 {
			reach = min(reach, t)
		}
	}
	return m.plus(left, reach/2)
}

// clearance is how far a place is from the nearest bit.
func clearance(bits []bit, p xy) float64 {
	best := math.Inf(1)
	for i := range bits {
		o := &bits[i]
		way, off := o.b.sub(o.a), p.sub(o.a)
		t := max(0, min(1, off.dot(way)/way.dot(way)))
		gap := off.plus(way, -t)
		best = min(best, gap.dot(gap))
	}
	return math.Sqrt(best)
}

// facing says which way the skin faces at a place on a plane, if it is there.
func (c *carving) facing(plane int, p point) patch {
	q := &c.planes[plane]
	surface := -1
	above, below := make([]bool, len(c.bodies)), make([]bool, len(c.bodies))
	flat := make([]bool, len(c.bodies))
	for _, i := range q.facets {
		f := &c.facets[i]
		if !c.covers(f, p) {
			continue
		}
		if surface < 0 || f.surface < surface {
			surface = f.surface
		}
		flat[f.body], above[f.body], below[f.body] = true, !f.up, f.up
	}
	if surface < 0 {
		return bare
	}
	for i, b := range c.bodies {
		if !flat[i] && within(b, p) {
			above[i] = b.holds(p)
			below[i] = above[i]
		}
	}
	up, down := c.solid.Inside(func(i int) bool { return above[i] }), c.solid.Inside(func(i int) bool { return below[i] })
	if up == down {
		return bare
	}
	return patch{plane: plane, up: down, surface: surface}
}

func within(b *body, p point) bool {
	if _, half := b.leaf.Shape.(form.Half); half {
		return true // it has no box
	}
	return b.box.Min.X <= p.X && p.X <= b.box.Max.X && b.box.Min.Y <= p.Y && p.Y <= b.box.Max.Y && b.box.Min.Z <= p.Z && p.Z <= b.box.Max.Z
}

package outline

import (
	"cmp"
	"math"
	"slices"

	"lostwood/parts"
	"lostwood/parts/form"
)

// Section is the wood that a saw would show at a station, square across the part,
// looked at from the second end: x is the part's y, y its z. Each outline is
// closed, the wood to its left. It is empty off the wood.
func Section(s parts.Stick, x Length) Drawing {
	c := crossOf(s.Volume(), x)
	var d Drawing
	for _, run := range chained(skin(c)) {
		d.Paths = append(d.Paths, Path{Layer{Role: Wood}, Edge, run, true})
	}
	return d
}

// touch is how near two places are taken for one, in millimetres.
const touch = 1e-5

// skin is those pieces of a cross's edges with wood on one side only, turned so
// that it lies to the left.
func skin(c cross) []Segment {
	var out []Segment
	seen := map[[4]int64]bool{}
	for i, s := range c.edges {
		for _, piece := range s.split(c.edges, i) {
			mid, nx, ny := piece.middle()
			const step = 1e-4
			left := c.holds(form.Point{X: mid.X - Length(ny*step), Y: mid.Y + Length(nx*step)})
			right := c.holds(form.Point{X: mid.X + Length(ny*step), Y: mid.Y - Length(nx*step)})
			if left == right {
				continue
			}
			if right {
				piece = Segment{piece.B, piece.A, -piece.Bulge}
			}
			grain := func(l Length) int64 { return int64(math.Round(float64(l) * 1e4)) }
			key := [4]int64{grain(piece.A.X), grain(piece.A.Y), grain(mid.X), grain(mid.Y)}
			if !seen[key] {
				seen[key] = true
				out = append(out, piece)
			}
		}
	}
	return out
}

// middle is a place half way along the segment, and the way it goes there.
func (s Segment) middle() (at form.Point, dx, dy float64) {
	long := math.Hypot(float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y))
	dx, dy = float64(s.B.X-s.A.X)/long, float64(s.B.Y-s.A.Y)/long
	at = form.Point{X: (s.A.X + s.B.X) / 2, Y: (s.A.Y + s.B.Y) / 2}
	if a, ok := s.Arc(); ok {
		at = a.At(0.5) // there an arc runs as its chord does
	}
	return at, dx, dy
}

// split cuts a segment wherever another one meets it.
func (s Segment) split(all []Segment, self int) []Segment {
	at := []float64{0, 1}
	for i, o := range all {
		if i == self {
			continue
		}
		for _, p := range append(s.meets(o), o.A, o.B) {
			if t, ok := s.shareAt(p); ok {
				at = append(at, t)
			}
		}
	}
	slices.Sort(at)
	var out []Segment
	from, start := 0.0, s.A
	for _, t := range at[1:] {
		end := s.B
		if t < 1 {
			end = s.At(t)
		}
		if math.Hypot(float64(end.X-start.X), float64(end.Y-start.Y)) < touch {
			continue
		}
		out = append(out, Segment{start, end, math.Tan((t - from) * math.Atan(s.Bulge))})
		from, start = t, end
	}
	return out
}

// At is the place a share t of the way along the segment.
func (s Segment) At(t float64) form.Point {
	if a, ok := s.Arc(); ok {
		return a.At(t)
	}
	return form.Point{X: s.A.X + Length(t)*(s.B.X-s.A.X), Y: s.A.Y + Length(t)*(s.B.Y-s.A.Y)}
}

// shareAt is how far along the segment a place on it lies.
func (s Segment) shareAt(p form.Point) (t float64, ok bool) {
	if a, bent := s.Arc(); bent {
		turn := math.Mod(math.Atan2(float64(p.Y-a.Centre.Y), float64(p.X-a.Centre.X))-a.From, 2*math.Pi)
		if turn*a.Turn < 0 {
			turn += math.Copysign(2*math.Pi, a.Turn)
		}
		t = turn / a.Turn
	} else {
		dx, dy := float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y)
		t = (float64(p.X-s.A.X)*dx + float64(p.Y-s.A.Y)*dy) / (dx*dx + dy*dy)
	}
	if !(t > 0 && t < 1) {
		return 0, false
	}
	q := s.At(t)
	return t, math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)) < touch
}

// meets are the places where the lines and circles of two segments cross.
func (s Segment) meets(o Segment) []form.Point {
	a, bentA := s.Arc()
	b, bentB := o.Arc()
	switch {
	case bentA && bentB:
		return circlesMeet(a, b)
	case bentA:
		return lineMeets(o, a)
	case bentB:
		return lineMeets(s, b)
	}
	d, e := form.Point{X: s.B.X - s.A.X, Y: s.B.Y - s.A.Y}, form.Point{X: o.B.X - o.A.X, Y: o.B.Y - o.A.Y}
	k := d.X*e.Y - d.Y*e.X
	if k == 0 {
		return nil
	}
	t := ((o.A.X-s.A.X)*e.Y - (o.A.Y-s.A.Y)*e.X) / k
	return []form.Point{{X: s.A.X + t*d.X, Y: s.A.Y + t*d.Y}}
}

func lineMeets(s Segment, a Arc) []form.Point {
	dx, dy := float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y)
	long := math.Hypot(dx, dy)
	dx, dy = dx/long, dy/long
	fx, fy := float64(a.Centre.X-s.A.X), float64(a.Centre.Y-s.A.Y)
	foot, off := fx*dx+fy*dy, fx*dy-fy*dx
	half := float64(a.Radius*a.Radius) - off*off
	if half < 0 {
		return nil
	}
	half = math.Sqrt(half)
	at := func(t float64) form.Point { return form.Point{X: s.A.X + Length(t*dx), Y: s.A.Y + Length(t*dy)} }
	return []form.Point{at(foot - half), at(foot + half)}
}

func circlesMeet(a, b Arc) []form.Point {
	dx, dy := float64(b.Centre.X-a.Centre.X), float64(b.Centre.Y-a.Centre.Y)
	apart, ra, rb := math.Hypot(dx, dy), float64(a.Radius), float64(b.Radius)
	if apart == 0 || apart > ra+rb || apart < math.Abs(ra-rb) {
		return nil
	}
	along := (apart*apart + ra*ra - rb*rb) / (2 * apart)
	off := math.Sqrt(math.Max(0, ra*ra-along*along))
	dx, dy = dx/apart, dy/apart
	at := func(off float64) form.Point {
		return form.Point{X: a.Centre.X + Length(along*dx-off*dy), Y: a.Centre.Y + Length(along*dy+off*dx)}
	}
	return []form.Point{at(off), at(-off)}
}

// chained joins pieces end to end into closed runs, each begun at its lowest left piece.
func chained(pieces []Segment) [][]form.Vertex {
	slices.SortStableFunc(pieces, func(a, b Segment) int {
		return cmp.Or(cmp.Compare(a.A.Y, b.A.Y), cmp.Compare(a.A.X, b.A.X))
	})
	used := make([]bool, len(pieces))
	var out [][]form.Vertex
	for first := range pieces {
		if used[first] {
			continue
		}
		var run []form.Vertex
		for i := first; i >= 0; i = follower(pieces, used, pieces[i].B) {
			used[i] = true
			run = append(run, form.Vertex{Point: pieces[i].A, Bulge: pieces[i].Bulge})
		}
		if len(run) > 1 {
			out = append(out, straightened(run))
		}
	}
	return out
}

// follower is the piece not used yet that begins where another ends; -1 where none does.
func follower(pieces []Segment, used []bool, at form.Point) int {
	const near = 20 * touch
	for i, s := range pieces {
		if !used[i] && math.Hypot(float64(s.A.X-at.X), float64(s.A.Y-at.Y)) < near {
			return i
		}
	}
	return -1
}

// straightened drops corners in the middle of straight edges.
func straightened(run []form.Vertex) []form.Vertex {
	out := slices.Clone(run)
	for i := 0; i < len(out) && len(out) > 3; {
		before, after := out[(i+len(out)-1)%len(out)], out[(i+1)%len(out)]
		ax, ay := float64(out[i].X-before.X), float64(out[i].Y-before.Y)
		bx, by := float64(after.X-out[i].X), float64(after.Y-out[i].Y)
		if before.Bulge == 0 && out[i].Bulge == 0 && math.Abs(ax*by-ay*bx) < 1e-7*math.Hypot(ax, ay)*math.Hypot(bx, by) && ax*bx+ay*by > 0 {
			out = slices.Delete(out, i, i+1)
			continue
		}
		i++
	}
	return out
}

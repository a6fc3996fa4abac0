package mesh

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Defect is a way in which a skin can be wrong.
type Defect int

// The defects Inspect looks for.
const (
	Nothing   Defect = iota // no triangles at all
	Stray                   // a corner that is not a place
	Sliver                  // a triangle with a repeated corner or no area
	Gap                     // an edge with a triangle on one side only
	Crowded                 // an edge with more than two triangles, or two facing opposite ways
	Pinched                 // a vertex where the skin touches itself
	InsideOut               // a piece of skin that faces inwards and is not a hollow in another
)

// defectWords are the words people read, in the order of the constants.
var defectWords = [...]string{
	"there is no skin at all",
	"a corner is not a place",
	"a triangle has no area",
	"the skin is open along an edge",
	"more than two faces meet along an edge",
	"the skin touches itself at a point",
	"the skin is inside out",
}

func (d Defect) String() string {
	if d < Nothing || d > InsideOut {
		return "the skin is faulty"
	}
	return defectWords[d]
}

// A Fault is one defect and where it is.
type Fault struct {
	Defect Defect
	At     form.Vec
}

func (f Fault) Error() string { return fmt.Sprintf("%v at %s", f.Defect, words(f.At)) }

// A Report tells what a skin is and what is wrong with it.
type Report struct {
	Faults []Fault // in the order of the defects, then of the triangles
	Pieces int     // skins that hang together by edges
	Euler  int     // vertices - edges + triangles: 2 a piece, less 2 for each hole through it
	Volume quantity.Volume
}

// Err is nil for a sound skin, and otherwise an error that counts each defect
// and tells where the first of its kind is.
func (r *Report) Err() error {
	if len(r.Faults) == 0 {
		return nil
	}
	return &SkinError{Faults: r.Faults}
}

// A SkinError tells what is wrong with a skin.
type SkinError struct{ Faults []Fault }

func (e *SkinError) Error() string {
	var lines []string
	for i := 0; i < len(e.Faults); {
		n := i
		for n < len(e.Faults) && e.Faults[n].Defect == e.Faults[i].Defect {
			n++
		}
		line := e.Faults[i].Error()
		if n-i > 1 {
			line += fmt.Sprintf(" and %d more places", n-i-1)
		}
		lines = append(lines, line)
		i = n
	}
	return strings.Join(lines, "; ")
}

// Inspect checks a skin as an STL file would hold it, welded by float32 bits:
// each directed edge once and its reverse once, one fan of triangles a vertex,
// no triangle without area, facing outwards.
func Inspect(m *Mesh) Report {
	s := newInspection(m)
	s.edges()
	s.fans()
	s.hulls()
	slices.SortStableFunc(s.faults, func(a, b Fault) int { return cmp.Compare(a.Defect, b.Defect) })
	return Report{Faults: s.faults, Pieces: s.pieces, Euler: s.euler, Volume: s.mesh.Volume()}
}

// An inspection is a welded mesh and what has been found of it.
type inspection struct {
	mesh   *Mesh
	half   []halfEdge
	corner links // corners joined round their vertex; corner 3t+i is triangle t's i-th
	body   links // triangles joined over edges
	faults []Fault
	pieces int
	euler  int
}

// A halfEdge is one triangle's side.
type halfEdge struct {
	lo, hi  int  // its vertices, the lower first
	forward bool // it runs from lo to hi
	corner  int  // the corner it leaves
}

func newInspection(m *Mesh) *inspection {
	w := newWelder()
	s := &inspection{}
	for _, t := range m.Triangles {
		var g [3]grain
		for i, v := range t {
			if v < 0 || v >= len(m.Vertices) || !placed(m.Vertices[v]) {
				s.fault(Stray, form.Vec{})
				g = [3]grain{}
				break
			}
			g[i] = grainOf(m.Vertices[v])
		}
		w.add(g[0], g[1], g[2])
	}
	s.mesh = &w.mesh
	if len(w.mesh.Triangles) == 0 {
		s.fault(Nothing, form.Vec{})
	}
	return s
}

func placed(v form.Vec) bool {
	for _, x := range [3]form.Length{v.X, v.Y, v.Z} {
		if y := float64(float32(x)); math.IsNaN(y) || math.IsInf(y, 0) {
			return false
		}
	}
	return true
}

func (s *inspection) fault(d Defect, at form.Vec) { s.faults = append(s.faults, Fault{d, at}) }

// edges pairs the triangles' sides.
func (s *inspection) edges() {
	ts := s.mesh.Triangles
	s.corner, s.body = newLinks(3*len(ts)), newLinks(len(ts))
	for t, v := range ts {
		if !(length(s.mesh.normal(v)) > 0) {
			s.fault(Sliver, s.mesh.Vertices[v[0]])
		}
		for i := range v {
			a, b := v[i], v[(i+1)%3]
			s.half = append(s.half, halfEdge{min(a, b), max(a, b), a < b, 3*t + i})
		}
	}
	slices.SortFunc(s.half, func(a, b halfEdge) int {
		return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi), cmp.Compare(a.corner, b.corner))
	})
	count := 0
	for i := 0; i < len(s.half); count++ {
		n := i
		for n < len(s.half) && s.half[n].lo == s.half[i].lo && s.half[n].hi == s.half[i].hi {
			n++
		}
		s.edge(s.half[i:n])
		i = n
	}
	s.euler = len(s.mesh.Vertices) - count + len(ts)
}

// edge checks and joins the triangles along one edge.
func (s *inspection) edge(h []halfEdge) {
	a, b := s.mesh.Vertices[h[0].lo], s.mesh.Vertices[h[0].hi]
	middle := form.Vec{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2, Z: (a.Z + b.Z) / 2}
	switch {
	case len(h) == 1:
		s.fault(Gap, middle)
		return
	case len(h) > 2 || h[0].forward == h[1].forward:
		s.fault(Crowded, middle)
		return
	}
	p, q := h[0].corner, h[1].corner
	s.body.join(p/3, q/3)
	s.corner.join(p, following(q))
	s.corner.join(following(p), q)
}

// following is the next corner of the same triangle.
func following(corner int) int { return corner/3*3 + (corner+1)%3 }

// fans checks that the corners at each vertex are one fan.
func (s *inspection) fans() {
	first := make([]int, len(s.mesh.Vertices))
	for i := range first {
		first[i] = -1
	}
	told := make([]bool, len(first))
	for t, vs := range s.mesh.Triangles {
		for i, v := range vs {
			root := s.corner.find(3*t + i)
			if first[v] < 0 {
				first[v] = root
			}
			if first[v] != root && !told[v] {
				told[v] = true
				s.fault(Pinched, s.mesh.Vertices[v])
			}
		}
	}
}

// A hull is one piece of the skin.
type hull struct {
	volume float64
	box    form.Box
}

// hulls counts the pieces and finds those that face inwards without being a
// hollow in another.
func (s *inspection) hulls() {
	of := map[int]int{}
	var all []hull
	for t, v := range s.mesh.Triangles {
		one := Mesh{Vertices: []form.Vec{s.mesh.Vertices[v[0]], s.mesh.Vertices[v[1]], s.mesh.Vertices[v[2]]}}
		root := s.body.find(t)
		i, known := of[root]
		if !known {
			i = len(all)
			of[root] = i
			all = append(all, hull{box: one.Bounds()})
		}
		all[i].volume += dot(one.Vertices[0], cross(one.Vertices[1], one.Vertices[2])) / 6
		all[i].box = extended(all[i].box, one.Bounds())
	}
	s.pieces = len(all)
	big := largest(all)
	for _, inner := range all {
		if inner.volume < 0 && !slices.ContainsFunc(big, func(outer hull) bool {
			return outer.volume > 0 && holds(outer.box, inner.box)
		}) {
			s.fault(InsideOut, inner.box.Min)
		}
	}
}

// largest leaves out all but a few pieces: a file of a million scraps is not
// worth comparing each with each.
func largest(all []hull) []hull {
	const few = 64
	if len(all) <= few {
		return all
	}
	all = slices.Clone(all)
	slices.SortFunc(all, func(a, b hull) int { return cmp.Compare(b.volume, a.volume) })
	return all[:few]
}

func holds(b, c form.Box) bool {
	return b.Min.X <= c.Min.X && b.Min.Y <= c.Min.Y && b.Min.Z <= c.Min.Z &&
		b.Max.X >= c.Max.X && b.Max.Y >= c.Max.Y && b.Max.Z >= c.Max.Z
}

// links joins things into groups (a disjoint-set forest).
type links []int

func newLinks(n int) links {
	l := make(links, n)
	for i := range l {
		l[i] = i
	}
	return l
}

func (l links) find(i int) int {
	for l[i] != i {
		l[i] = l[l[i]]
		i = l[i]
	}
	return i
}

// join keeps the lower root, so that the groups' names do not depend on order.
func (l links) join(i, j int) {
	a, b := l.find(i), l.find(j)
	l[max(a, b)] = min(a, b)
}

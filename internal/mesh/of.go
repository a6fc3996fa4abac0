package mesh

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A ToleranceError tells of a tolerance that no mesh can keep.
type ToleranceError struct{ Got quantity.Length }

func (e *ToleranceError) Error() string {
	return fmt.Sprintf("the mesh's tolerance is %g mm; give from 0.002 to 5 mm", float64(e.Got))
}

// The tolerances between which a mesh is worth making: a file's seven digits
// bound them below, and the size of timber above.
const (
	finest   = 0.002 * quantity.Millimetre
	coarsest = 5 * quantity.Millimetre
)

// slack is how much of the tolerance the facets use: settling on the true
// surfaces may widen one a little.
const slack = 0.97

// styles are what is tried before a solid is given up. The usual one takes
// places nearer than a hundred-thousandth of a millimetre for one. Where the
// solid has steps of about that size, finer ones keep them apart; where curved
// faces touch by bad luck, circles turned a little do not.
func styles(tolerance quantity.Length) []style {
	var all []style
	for _, s := range []style{
		{snap: 1e-5},
		{snap: 1e-9},
		{snap: 1e-7},
		{snap: 1e-5, turn: 0.5},
		{snap: 1e-10, turn: 0.25},
		{snap: 1e-6, turn: 0.37},
		{snap: 1e-8, turn: 0.11},
		{snap: 1e-4, turn: 0.18},
	} {
		s.tolerance = slack * tolerance.Millimetres()
		all = append(all, s)
	}
	return all
}

// Of makes the skin of s. Flat faces are flat and sharp edges sharp; curved
// faces are flat facets with their corners on the true surface, none farther
// from it than the tolerance. The skin is closed as an STL file holds it: two
// triangles an edge, one fan a vertex, no triangle without area. The same solid
// and tolerance give the same skin.
//
// It refuses a solid that touches itself along an edge or at a point, which no
// skin can show and no timber can be cut to ([*MeshError], [*SkinError]).
func Of(s *solid.Solid, tolerance quantity.Length) (*Mesh, error) {
	if !(tolerance >= finest && tolerance <= coarsest) {
		return nil, &ToleranceError{tolerance}
	}
	var first error
	for _, st := range styles(tolerance) {
		m, l, err := skin(s, st)
		if err == nil {
			return improved(s, st, m, l), nil
		}
		if first == nil {
			first = err
		}
	}
	return nil, first
}

// tries is how often finer facets are tried for what a skin lacks.
const tries = 3

// improved tries finer facets for a skin that lacks something, and keeps the
// first that lacks nothing; of the others, one that lacks less and is no great
// deal heavier.
func improved(s *solid.Solid, st style, m *Mesh, l lack) *Mesh {
	tolerance := st.tolerance / slack
	best := l
	for range tries {
		if best.none(tolerance) {
			break
		}
		st.tolerance *= l.finer(tolerance)
		n, now, err := skin(s, st)
		if err != nil {
			continue
		}
		if l = now; now.none(tolerance) || now.less(best) && len(n.Triangles) < 2*len(m.Triangles) {
			m, best = n, now
		}
	}
	return m
}

// skin makes the skin in one style, and tells what it lacks.
func skin(s *solid.Solid, st style) (*Mesh, lack, error) {
	h := newCarving(s, st).skinned(st.tolerance)
	if err := h.paired(); err != nil {
		return nil, lack{}, err
	}
	h.straighten()
	m, l, err := h.mesh()
	if err != nil {
		return nil, lack{}, err
	}
	if len(m.Triangles) == 0 {
		return nil, lack{}, &solid.NothingError{}
	}
	r := Inspect(m)
	return m, l, r.Err()
}

// A Result is a solid's skin, or why it has none.
type Result struct {
	Mesh *Mesh
	Err  error
}

// All makes the skins of many solids at once, as many side by side as there are
// processors, and returns them in order. They do not depend on how many that is.
func All(solids []*solid.Solid, tolerance quantity.Length) []Result {
	out := make([]Result, len(solids))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(solids)) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(out); i = int(next.Add(1)) - 1 {
				out[i].Mesh, out[i].Err = Of(solids[i], tolerance)
			}
		})
	}
	workers.Wait()
	return out
}

func vec(v v3.Vec) form.Vec {
	return form.Vec{X: form.Length(v.X), Y: form.Length(v.Y), Z: form.Length(v.Z)}
}

package parts_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts"
	"lostwood/parts/anypart"
	"lostwood/parts/form"
)

func TestOutlinesAreValidAndInTheBox(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				p := anypart.Of(k).Draw(t, "part")
				require.NoError(t, p.Validate())
				require.Equal(t, k.Name, p.Kind())
				b := p.Stick().Body
				long, wide, deep := b.Box()
				box := form.Bounds(b.Volume())
				slack := 1e-6
				if a, ok := b.(parts.Arc); ok && a.Bevel != 0 {
					slack = 40 // its ring goes past the slanting joints that cut it
				}
				requireVec(t, form.Vec{}, box.Min, slack)
				requireVec(t, form.Vec{X: long, Y: wide, Z: deep}, box.Max, slack)
				for _, f := range parts.Faces() {
					o := b.Outline(f)
					require.NoError(t, o.Valid(), "%v", f)
					lo, hi := o.Bounds()
					w, h := faceExtent(b, f)
					require.InDelta(t, 0, float64(lo.X), 1e-6, "%v", f)
					require.InDelta(t, 0, float64(lo.Y), 1e-6, "%v", f)
					require.InDelta(t, float64(w), float64(hi.X), 1e-6, "%v", f)
					require.InDelta(t, float64(h), float64(hi.Y), 1e-6, "%v", f)
				}
			})
		})
	})
}

func requireVec(t require.TestingT, want, got form.Vec, slack float64) {
	require.InDelta(t, float64(want.X), float64(got.X), slack)
	require.InDelta(t, float64(want.Y), float64(got.Y), slack)
	require.InDelta(t, float64(want.Z), float64(got.Z), slack)
}

func faceExtent(b parts.Body, f parts.Face) (w, h parts.Length) {
	long, wide, deep := b.Box()
	switch f {
	case parts.Upper, parts.Under:
		return long, wide
	case parts.FirstSide, parts.SecondSide:
		return long, deep
	}
	return wide, deep
}

func TestTheOtherHand(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := anypart.Of(k).Draw(t, "part").Stick()
				m := s.Mirrored()
				require.InEpsilon(t, float64(parts.Net(s)), float64(parts.Net(m)), 1e-9)
				_, wide, _ := s.Body.Box()
				holdsMirrored(t, s, m, wide)
				twice := m.Mirrored()
				require.Equal(t, s.FaceSide, twice.FaceSide)
				require.Equal(t, s.FaceEdge, twice.FaceEdge)
				require.Len(t, twice.Features, len(s.Features))
				for _, f := range parts.Faces() {
					sameMarks(t, s.Marks(f), twice.Marks(f))
					sameOutline(t, s.Body.Outline(f), twice.Body.Outline(f))
				}
				for _, f := range m.Features {
					require.NoError(t, f.Check(m.Body))
				}
			})
		})
	})
}

func holdsMirrored(t *rapid.T, s, m parts.Stick, wide parts.Length) {
	v, w := s.Volume(), m.Volume()
	exact := form.Mirrored(v, wide)
	box := form.Bounds(v)
	for range 40 {
		p := within(t, box)
		q := form.Vec{X: p.X, Y: wide - p.Y, Z: p.Z}
		if !steady(v, p) {
			continue // on a surface the last digit decides
		}
		require.Equal(t, holds(v, p), holds(exact, q), "%v", p)
		require.Equal(t, holds(v, p), holds(w, q), "%v", p)
	}
}

// steady says whether a point is not on a surface.
func steady(v form.Volume, p form.Vec) bool {
	in := holds(v, p)
	const step = 1e-6
	for i := range 27 {
		x, y, z := form.Length(i%3-1), form.Length(i/3%3-1), form.Length(i/9-1)
		if holds(v, form.Vec{X: p.X + x*step, Y: p.Y + y*step, Z: p.Z + z*step}) != in {
			return false
		}
	}
	return true
}

func within(t *rapid.T, b form.Box) form.Vec {
	at := func(name string, lo, hi form.Length) form.Length {
		return lo + (hi-lo)*form.Length(rapid.Float64Range(0, 1).Draw(t, name))
	}
	return form.Vec{X: at("x", b.Min.X, b.Max.X), Y: at("y", b.Min.Y, b.Max.Y), Z: at("z", b.Min.Z, b.Max.Z)}
}

func sameMarks(t *rapid.T, a, b []parts.Mark) {
	require.Len(t, b, len(a))
	for i := range a {
		require.Equal(t, a[i].Ref, b[i].Ref)
		require.Equal(t, a[i].Stroke, b[i].Stroke)
		require.Equal(t, a[i].Closed, b[i].Closed)
		require.Len(t, b[i].Path, len(a[i].Path))
		for j := range a[i].Path {
			require.InDelta(t, float64(a[i].Path[j].X), float64(b[i].Path[j].X), 1e-6)
			require.InDelta(t, float64(a[i].Path[j].Y), float64(b[i].Path[j].Y), 1e-6)
			require.InDelta(t, a[i].Path[j].Bulge, b[i].Path[j].Bulge, 1e-9)
		}
	}
}

func sameOutline(t *rapid.T, a, b form.Profile) {
	// Where an end's outline is a curve, chords within a thousandth stand for it.
	require.InEpsilon(t, float64(a.Area()), float64(b.Area()), 1e-6)
	for _, v := range b {
		require.InDelta(t, 0, float64(a.Distance(v.Point)), 1e-3)
	}
}

func TestMarksLieOnTheFace(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := anypart.Of(k).Draw(t, "part").Stick()
				for _, f := range parts.Faces() {
					w, h := faceExtent(s.Body, f)
					for _, m := range s.Marks(f) {
						path := form.Profile(m.Path)
						require.GreaterOrEqual(t, len(path), 2, "%v on %v", m.Ref, f)
						lo, hi := path.Bounds()
						if !m.Closed { // the closing edge is none of its own
							lo, hi = thereAndBack(path).Bounds()
						}
						require.True(t, lo.X >= -1e-6 && lo.Y >= -1e-6 && hi.X <= w+1e-6 && hi.Y <= h+1e-6,
							"%s of %s on %v: %v to %v in %v by %v", m.Label, m.Ref, f, lo, hi, w, h)
						if m.Closed {
							require.NoError(t, path.Valid(), "%s of %s on %v", m.Label, m.Ref, f)
						}
					}
				}
			})
		})
	})
}

// thereAndBack runs an open path back along itself, so that its last point's
// edge to the first is none of its bounds.
func thereAndBack(path form.Profile) form.Profile {
	out := slices.Clone(path)
	for i := len(path) - 1; i > 0; i-- {
		back := form.Vertex{Point: path[i].Point, Bulge: -path[i-1].Bulge}
		if i == len(path)-1 {
			out[i] = back
			continue
		}
		out = append(out, back)
	}
	return out
}

func TestSeenAndHiddenAgree(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := anypart.Of(k).Draw(t, "part").Stick()
				for _, w := range s.Features {
					for _, f := range parts.Faces() {
						for _, m := range w.Marks(s.Body, f) {
							if m.Closed && m.Stroke == parts.Hidden {
								hasCounterpart(t, s.Body, w, f, m)
							}
						}
					}
				}
			})
		})
	})
}

// hasCounterpart: what comes out on a face was entered on the one opposite, in
// line with it.
func hasCounterpart(t *rapid.T, b parts.Body, w parts.Feature, f parts.Face, hidden parts.Mark) {
	for _, m := range w.Marks(b, f.Opposite()) {
		if m.Stroke != parts.Seen || m.Label != hidden.Label || m.Depth != 0 {
			continue
		}
		if _, radial := w.(parts.RadialHole); radial {
			require.Equal(t, hidden.Diameter, m.Diameter)
			return
		}
		a, c := form.Profile(hidden.Path).Centroid(), form.Profile(m.Path).Centroid()
		p, q := f.Frame(b).At(a.X, a.Y, 0), f.Opposite().Frame(b).At(c.X, c.Y, 0)
		step := f.Frame(b).On(p)
		other := f.Frame(b).On(q)
		require.InDelta(t, float64(step.X), float64(other.X), 1e-6)
		require.InDelta(t, float64(step.Y), float64(other.Y), 1e-6)
		require.InEpsilon(t, float64(form.Profile(hidden.Path).Area()), float64(form.Profile(m.Path).Area()), 1e-9)
		return
	}
	t.Fatalf("%s comes out on the %v face and is entered nowhere", hidden.Ref, f)
}

// Net against the part's own cuts, by points strewn one in each cell of a
// grid: what each feature says it takes is what its cuts take.
func TestNetAgainstStrewnPoints(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			gen := anypart.Of(k)
			for seed := range 6 {
				s := gen.Example(seed).Stick()
				box := form.Bounds(s.Body.Volume())
				whole := float64(box.Max.X-box.Min.X) * float64(box.Max.Y-box.Min.Y) * float64(box.Max.Z-box.Min.Z)
				share := strewn(s.Volume(), box)
				require.InDelta(t, share, float64(parts.Net(s))/whole, .002, "example %d: %+v", seed, s.Body)
			}
		})
	})
}

// strewn is the share of a box that a volume fills.
func strewn(v form.Volume, box form.Box) float64 {
	const nx, ny, nz = 120, 20, 20
	r := rand.New(rand.NewPCG(1, 2))
	in := 0
	for i := range nx * ny * nz {
		at := func(cell, of int, lo, hi form.Length) form.Length {
			return lo + (hi-lo)*form.Length((float64(cell)+r.Float64())/float64(of))
		}
		if holds(v, form.Vec{
			X: at(i/(ny*nz), nx, box.Min.X, box.Max.X),
			Y: at(i/nz%ny, ny, box.Min.Y, box.Max.Y),
			Z: at(i%nz, nz, box.Min.Z, box.Max.Z),
		}) {
			in++
		}
	}
	return float64(in) / (nx * ny * nz)
}

package parts_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/solid"
	"lostwood/parts"
	"lostwood/parts/anypart"
	"lostwood/parts/form"
)

// The section of the solid just below a face is the face's outline less what
// its marks enclose: pattern and solid say the same.
func TestSectionAtAFaceIsThePattern(t *testing.T) {
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := anypart.Of(k).Draw(t, "part").Stick()
				v := s.Volume()
				asSolid, err := solid.New(v)
				require.NoError(t, err)
				for _, f := range parts.Faces() {
					lines := linesOn(s, f)
					for range 8 {
						w, h := faceExtent(s.Body, f)
						q := form.Point{
							X: w * form.Length(rapid.Float64Range(-.02, 1.02).Draw(t, "u")),
							Y: h * form.Length(rapid.Float64Range(-.02, 1.02).Draw(t, "v")),
						}
						const below = 1e-5
						p := f.Frame(s.Body).At(q.X, q.Y, -below)
						if nearLine(s.Body.Outline(f), lines, q) || !level(s.Body, f, q) {
							continue
						}
						want := s.Body.Outline(f).Contains(q) && !takenAt(s.Body, lines, f, q)
						require.Equal(t, want, holds(v, p), "%v of the %v face", q, f)
						d := asSolid.Evaluate(v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)})
						require.Equal(t, want, d < 0, "solid at %v of the %v face", q, f)
					}
				}
			})
		})
	})
}

// A line is a mark with the feature that drew it.
type line struct {
	parts.Mark
	by parts.Feature
}

func linesOn(s parts.Stick, f parts.Face) []line {
	var out []line
	for _, w := range s.Features {
		for _, m := range w.Marks(s.Body, f) {
			out = append(out, line{m, w})
		}
	}
	return out
}

// nearLine leaves out what is too near a line for the section, which is taken
// a little below the face, to tell.
func nearLine(outline form.Profile, lines []line, q form.Point) bool {
	const near = .1
	if outline.Distance(q) < near {
		return true
	}
	for _, m := range lines {
		if form.Profile(m.Path).Distance(q) < near {
			return true
		}
	}
	return false
}

// level says whether the bare body's wood lies right at the face of the box.
func level(b parts.Body, f parts.Face, q form.Point) bool {
	if !b.Outline(f).Contains(q) {
		return true
	}
	return holds(b.Volume(), f.Frame(b).At(q.X, q.Y, -1e-7))
}

// takenAt says whether the marks on a face enclose a place.
func takenAt(b parts.Body, lines []line, f parts.Face, q form.Point) bool {
	for _, m := range lines {
		if takes(b, m.by, m.Mark, f, q) {
			return true
		}
	}
	return false
}

func takes(b parts.Body, w parts.Feature, m parts.Mark, f parts.Face, q form.Point) bool {
	end := f == parts.FirstEnd || f == parts.SecondEnd
	if _, bevel := w.(parts.Bevelled); bevel {
		return false // the body itself is sawn so
	}
	if oval, ok := w.(parts.Tapered); ok {
		return !end && q.X > oval.From // all that is left right at a long face is the square
	}
	if _, foot := w.(parts.Foot); foot && !end {
		return m.Label == "shoulder" && beforeSlant(m, q, -1)
	}
	if _, tongue := w.(parts.Tongue); tongue && !end {
		return m.Label == "shoulder" && beforeSlant(m, q, 1)
	}
	switch {
	case m.Work == parts.Tenoning && end && isBent(b):
		lo, _ := form.Profile(m.Path).Bounds()
		return m.Label == "shoulder" && (q.X < lo.X) == (f == parts.FirstEnd)
	case m.Work == parts.Tenoning && end:
		return !inside(m.Path, float64(q.X), float64(q.Y))
	case m.Work == parts.Tenoning && m.Label == "shoulder":
		return beyondShoulder(b, m, f, q) && !onFlushTenon(b, w, f, q)
	case m.Work == parts.Tenoning && m.Diameter > 0: // a return's end, seen from the second side
		return math.Abs(float64(q.X-m.Centre.X)) < float64(b.(parts.Bent).Thick/2) && !inside(m.Path, float64(q.X), float64(q.Y))
	case m.Work == parts.Tenoning:
		return false
	case len(m.Path) == 2 && m.Path[0].Bulge == math.Sqrt2-1 || len(m.Path) == 2 && m.Path[0].Bulge == 1-math.Sqrt2:
		return pastQuarter(m, q)
	case m.Work == parts.Rounding && isBent(b):
		return onEdgeSide(b, w, m, f, q)
	case m.Work == parts.Chamfering || m.Work == parts.Rounding:
		return !end && onEdgeSide(b, w, m, f, q) || end && acrossCorner(b, m, f, q)
	case m.Closed:
		return inside(m.Path, float64(q.X), float64(q.Y))
	}
	return false
}

// beforeSlant: before (-1) or beyond (1) a shoulder's line, which may slant.
func beforeSlant(m parts.Mark, q form.Point, way float64) bool {
	a, c := m.Path[0], m.Path[1]
	x := a.X + (c.X-a.X)*(q.Y-a.Y)/(c.Y-a.Y)
	return float64(q.X-x)*way > 0
}

// beyondShoulder: the wood nearer the end than the shoulder is cut away.
func beyondShoulder(b parts.Body, m parts.Mark, f parts.Face, q form.Point) bool {
	lo, hi := form.Profile(m.Path).Bounds()
	if hi.X-lo.X > hi.Y-lo.Y { // across a return
		return (q.Y > lo.Y) == (f == parts.Upper) && q.X > lo.X && q.X < hi.X
	}
	long, _, _ := b.Box()
	if lo.X < long/2 {
		return q.X < lo.X
	}
	return q.X > hi.X
}

// onFlushTenon: a tenon as wide as the wood stands right at the face.
func onFlushTenon(b parts.Body, w parts.Feature, f parts.Face, q form.Point) bool {
	tenon, ok := w.(parts.Tenon)
	if !ok {
		return false
	}
	_, wide, deep := b.Box()
	flush := tenon.Wide == wide
	if f == parts.Upper || f == parts.Under {
		flush = tenon.Thick == deep
	}
	for _, m := range w.Marks(b, f) {
		if flush && m.Closed && inside(m.Path, float64(q.X), float64(q.Y)) {
			return true
		}
	}
	return false
}

// onEdgeSide: a chamfer's or rounding's line has the wood on its one side and
// its edge on the other.
func onEdgeSide(b parts.Body, w parts.Feature, m parts.Mark, f parts.Face, q form.Point) bool {
	edge := edgeOf(w)
	if bent, ok := b.(parts.Bent); ok && f == edge.Flat {
		return besidePath(bent, edge, m, f, q)
	}
	lo, hi := form.Profile(m.Path).Bounds()
	if q.X < lo.X || q.X > hi.X {
		return false
	}
	toward := f.Frame(b).V.Along(dirVec(faceNormal(b, edge, f)))
	for i := 1; i < len(m.Path); i++ {
		a, c := m.Path[i-1], m.Path[i]
		if q.X < min(a.X, c.X) || q.X > max(a.X, c.X) {
			continue
		}
		line := (form.Profile{{Point: a.Point, Bulge: a.Bulge}, {Point: c.Point}}).Span(q.X)
		y := line.To
		if a.Bulge > 0 == (c.X > a.X) {
			y = line.From
		}
		if a.Bulge == 0 {
			y = a.Y + (c.Y-a.Y)*(q.X-a.X)/(c.X-a.X)
		}
		return (q.Y-y)*toward > 0
	}
	return false
}

// faceNormal is the way from the face's middle to the edge: out of the edge's
// other face.
func faceNormal(b parts.Body, e parts.Arris, f parts.Face) form.Dir {
	if f == e.Flat {
		return e.Side.Frame(b).W()
	}
	return e.Flat.Frame(b).W()
}

func dirVec(d form.Dir) form.Vec {
	return form.Vec{X: form.Length(d.X), Y: form.Length(d.Y), Z: form.Length(d.Z)}
}

func edgeOf(w parts.Feature) parts.Arris {
	switch w := w.(type) {
	case parts.Chamfer:
		return w.Edge
	case parts.EasedEdge:
		return w.Edge
	}
	return parts.Arris{}
}

// besidePath: between a bent rail's edge and the line beside it.
func besidePath(b parts.Bent, e parts.Arris, m parts.Mark, f parts.Face, q form.Point) bool {
	half := b.Thick / 2
	edge := b.Middle.Offset(half)
	if e.Side == parts.FirstSide {
		edge = b.Middle.Offset(-half)
	}
	strip := append(form.Profile{}, edge...)
	_, wide, _ := b.Box()
	if f == parts.Under {
		for i := range strip {
			strip[i].Y, strip[i].Bulge = wide-strip[i].Y, -strip[i].Bulge
		}
	}
	strip[len(strip)-1].Bulge = 0
	for i := len(m.Path) - 1; i >= 0; i-- {
		v := form.Vertex{Point: m.Path[i].Point}
		if i > 0 {
			v.Bulge = -m.Path[i-1].Bulge
		}
		strip = append(strip, v)
	}
	return inside(strip, float64(q.X), float64(q.Y))
}

// acrossCorner: the corner of an end beyond a chamfer's or rounding's line.
func acrossCorner(b parts.Body, m parts.Mark, f parts.Face, q form.Point) bool {
	n := len(m.Path)
	w, h := faceExtent(b, f)
	a, c := m.Path[0].Point, m.Path[n-1].Point
	var best form.Point
	least := math.Inf(1)
	outline := b.Outline(f)
	for _, corner := range append(outline, form.Vertex{Point: form.Point{}}, form.Vertex{Point: form.Point{X: w, Y: h}}) {
		d := math.Hypot(float64(corner.X-a.X), float64(corner.Y-a.Y)) + math.Hypot(float64(corner.X-c.X), float64(corner.Y-c.Y))
		if d < least {
			least, best = d, corner.Point
		}
	}
	piece := append(append(form.Profile{}, m.Path...), form.Vertex{Point: best})
	piece[n-1].Bulge = 0
	return inside(piece, float64(q.X), float64(q.Y))
}

func isBent(b parts.Body) bool { _, ok := b.(parts.Bent); return ok }

// pastQuarter: between a quarter circle and its square corner.
func pastQuarter(m parts.Mark, q form.Point) bool {
	a, c := m.Path[0].Point, m.Path[1].Point
	corner := form.Point{X: a.X, Y: c.Y}
	turn := (corner.X-a.X)*(c.Y-corner.Y) - (corner.Y-a.Y)*(c.X-corner.X)
	if float64(turn)*m.Path[0].Bulge < 0 {
		corner = form.Point{X: c.X, Y: a.Y}
	}
	return inside([]form.Vertex{m.Path[0], {Point: c}, {Point: corner}}, float64(q.X), float64(q.Y))
}

// A reach that hardly tapers, with hardly rounded ends: what is seen of the
// rounding from the end is thinner than a thousandth of a millimetre, and its
// outline once crossed itself there.
func TestEndOfReachThatHardlyTapers(t *testing.T) {
	r := parts.Reach{Long: 2018.5, Wide: 30, Deep: 30.375, HindDeep: 32, RoundEnds: 2.75, Chamfer: 2, ChamferStop: 60}
	require.NoError(t, r.Validate())
	for _, f := range parts.Faces() {
		require.NoError(t, r.Stick().Body.Outline(f).Valid(), f)
	}
}

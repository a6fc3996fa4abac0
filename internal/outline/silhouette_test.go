package outline

import (
	"math"
	"os"
	"strconv"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"

	"lostwood/internal/solid"
	"lostwood/parts"
	"lostwood/parts/anypart"
	"lostwood/parts/form"
)

// The outline of every face is the solid body seen square on, within 0.02 mm, for
// every kind of part at random dimensions: looked through so much inside of the
// outline there is wood somewhere along the line of sight, so much outside none.
func TestOutlineIsTheSolidSeenSquareOn(t *testing.T) {
	const within = 0.02
	for _, k := range parts.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			for seed := range runs(t, 15) {
				s := anypart.Of(k).Example(seed).Stick()
				body, err := solid.New(s.Body.Volume())
				require.NoError(t, err)
				for _, f := range parts.Faces() {
					sight := depthsOf(s.Body, f)
					for _, e := range (Path{Run: s.Body.Outline(f), Closed: true}).Segments() {
						if math.Hypot(float64(e.B.X-e.A.X), float64(e.B.Y-e.A.Y)) < 0.5 {
							continue
						}
						mid, dx, dy := e.middle()
						at := func(off float64) bool {
							p := form.Point{X: mid.X - Length(dy*off), Y: mid.Y + Length(dx*off)}
							return seen(body, s.Body, f, p, sight)
						}
						require.True(t, at(within) || traced(body, s.Body, f, form.Point{X: mid.X - Length(dy*within), Y: mid.Y + Length(dx*within)}), "example %d, %v: wood %v mm inside of %v", seed, f, within, mid)
						require.False(t, at(-within), "example %d, %v: air %v mm outside of %v", seed, f, within, mid)
					}
				}
			}
		})
	}
}

// runs is how many parts of each kind are looked at; LOSTWOOD_RUNS=500 for a longer run.
func runs(t *testing.T, usual int) int {
	t.Helper()
	if s := os.Getenv("LOSTWOOD_RUNS"); s != "" {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	return usual
}

// depthsOf are depths below a face to look for wood at: all along, and wherever a
// corner of the body may be what is seen.
func depthsOf(b parts.Body, f parts.Face) []Length {
	long, wide, deep := b.Box()
	through := [...]Length{deep, wide, deep, wide, long, long}[f]
	pieces := 100
	if f == parts.FirstEnd || f == parts.SecondEnd {
		pieces = 1000 // what is seen of a tapered part's end may come from anywhere along it
	}
	var out []Length
	for i := range pieces + 1 {
		out = append(out, through*Length(i)/Length(pieces))
	}
	for _, side := range []parts.Face{parts.Upper, parts.FirstSide} {
		for _, v := range b.Outline(side) {
			for _, off := range []Length{-1e-6, 1e-6} {
				out = append(out, v.X+off, long-v.X+off, v.Y+off, through-v.Y+off)
			}
		}
	}
	return out
}

func seen(body *solid.Solid, b parts.Body, f parts.Face, p form.Point, depths []Length) bool {
	for _, d := range depths {
		at := f.Frame(b).At(p.X, p.Y, -d)
		if body.Evaluate(v3.Vec{X: float64(at.X), Y: float64(at.Y), Z: float64(at.Z)}) < 0 {
			return true
		}
	}
	return false
}

// traced goes along the line of sight, never farther at a step than the nearest wood
// is off, but for a hair: a leaning corner is a sliver that fixed depths miss.
func traced(body *solid.Solid, b parts.Body, f parts.Face, p form.Point) bool {
	const hair = 0.002
	long, wide, deep := b.Box()
	through := [...]Length{deep, wide, deep, wide, long, long}[f]
	for d := Length(-1); d < through+1; {
		at := f.Frame(b).At(p.X, p.Y, -d)
		off := body.Evaluate(v3.Vec{X: float64(at.X), Y: float64(at.Y), Z: float64(at.Z)})
		if off < 0 {
			return true
		}
		d += Length(max(off, hair))
	}
	return false
}

// The rim of n felloes is the felloe n times round: its joints meet within the gap,
// and its felloes and gaps fill the ring. The ring's area is pi (R^2 - r^2).
func TestRimFillsTheRing(t *testing.T) {
	f := parts.Felloe{Radius: 600, Wide: 45, Deep: 50, Felloes: 7, Tongue: 16}
	r, ok := RimOf(f.Stick())
	require.True(t, ok)
	require.Len(t, r.Felloes, 7)
	require.Len(t, r.Spokes, 14)
	sum := 0.0
	for _, d := range r.Felloes {
		sum += float64(form.Profile(d.Paths[0].Run).Area())
	}
	require.InDelta(t, math.Pi*(600*600-550*550), math.Abs(sum), 1e-3)
	for i, s := range r.Spokes {
		next := r.Spokes[(i+1)%len(r.Spokes)]
		angle := math.Atan2(float64(next.Outer.Y), float64(next.Outer.X)) - math.Atan2(float64(s.Outer.Y), float64(s.Outer.X))
		angle = math.Mod(angle+2*math.Pi, 2*math.Pi)
		step := 2 * math.Pi / 14
		require.True(t, math.Abs(angle-step) < 1e-9 || math.Abs(angle-(2*math.Pi-step)) < 1e-9, "spokes are evenly spaced: %v", angle)
		require.InDelta(t, 600, math.Hypot(float64(s.Outer.X), float64(s.Outer.Y)), 1e-9)
		cross := float64(s.Outer.X*s.Inner.Y - s.Outer.Y*s.Inner.X)
		require.InDelta(t, 0, cross, 1e-6, "it points at the centre")
	}
	_, ok = RimOf(parts.Plain{Name: "sill", Long: 900, Wide: 60, Deep: 80}.Stick())
	require.False(t, ok)
}

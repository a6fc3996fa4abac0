package parts_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts"
	"lostwood/parts/form"
)

// faults are the dimensions that an error names.
func faults(err error) []string {
	var out []string
	var walk func(error)
	walk = func(err error) {
		if j, ok := err.(interface{ Unwrap() []error }); ok {
			for _, e := range j.Unwrap() {
				walk(e)
			}
			return
		}
		if l, ok := errors.AsType[*parts.LimitError](err); ok {
			out = append(out, l.Dimension)
		}
	}
	if err != nil {
		walk(err)
	}
	return out
}

func TestWhatCannotBeMade(t *testing.T) {
	at := func(x, y parts.Length) form.Point { return form.Point{X: x, Y: y} }
	sill := func(work ...parts.Feature) parts.Part {
		return parts.Plain{Name: "sill", Long: 1000, Wide: 60, Deep: 80, Work: work}
	}
	hole := func(change func(*parts.Hole)) parts.Part {
		h := parts.Hole{ID: "fastening 7", What: "bolt hole", Face: parts.Upper, At: at(500, 30), Diameter: 12}
		change(&h)
		return sill(h)
	}
	for _, c := range []struct {
		name string
		part parts.Part
		want []string
	}{
		{"hole wider than the wood", hole(func(h *parts.Hole) { h.Diameter = 61 }), []string{"fastening 7 diameter"}},
		{"hole out of a side", hole(func(h *parts.Hole) { h.At.Y = 57 }), []string{"fastening 7 diameter"}},
		{"hole beside the wood", hole(func(h *parts.Hole) { h.At.Y = 61 }), []string{"fastening 7 across"}},
		{"hole past the end", hole(func(h *parts.Hole) { h.At.X = 1001 }), []string{"fastening 7 along"}},
		{"blind hole too deep", hole(func(h *parts.Hole) { h.Depth = 80 }), []string{"fastening 7 depth"}},
		{
			"counterbore too small and too deep", hole(func(h *parts.Hole) { h.Counterbore = &parts.Counterbore{Diameter: 10, Depth: 90} }),
			[]string{"fastening 7 counterbore", "fastening 7 counterbore depth"},
		},
		{"seat too wide", hole(func(h *parts.Hole) { h.Seat = &parts.SquareSeat{Width: 70, Depth: 6} }), []string{"fastening 7 seat"}},
		{"mortise through the edge", sill(parts.Mortise{ID: "joint 1", Face: parts.FirstSide, At: at(500, 70), Long: 40, Wide: 30}), []string{"joint 1 wide"}},
		{"mortise past the end", sill(parts.Mortise{ID: "joint 1", Face: parts.Upper, At: at(990, 30), Long: 40, Wide: 30}), []string{"joint 1 long"}},
		{"mortise too deep", sill(parts.Mortise{ID: "joint 1", Face: parts.Upper, At: at(500, 30), Long: 40, Wide: 30, Depth: 80}), []string{"joint 1 depth"}},
		{"housing deeper than the wood", sill(parts.Housing{ID: "joint 2", Face: parts.Upper, Station: 500, Width: 40, Depth: 80}), []string{"joint 2 deep"}},
		{"housing past the end", sill(parts.Housing{ID: "joint 2", Face: parts.Upper, Station: 10, Width: 40, Depth: 8}), []string{"joint 2 along"}},
		{"notch right across", sill(parts.Notch{ID: "joint 3", Face: parts.Upper, Edge: parts.FirstSide, At: 500, Long: 40, In: 60}), []string{"joint 3 in"}},
		{"tenon wider than the wood", sill(parts.Tenon{ID: "joint 4", End: parts.SecondEnd, At: at(30, 40), Long: 40, Wide: 61, Thick: 30}), []string{"joint 4 wide"}},
		{"chamfers meeting", parts.Plain{Name: "sill", Long: 1000, Wide: 60, Deep: 80, Chamfer: 31}, []string{"chamfer"}},
		{"chamfer stops meeting", parts.Plain{Name: "sill", Long: 1000, Wide: 60, Deep: 80, Chamfer: 6, ChamferStop: 498}, []string{"chamfer-stop"}},
		{"stop of no chamfer", parts.Plain{Name: "sill", Long: 1000, Wide: 60, Deep: 80, ChamferStop: 50}, []string{"chamfer-stop"}},
		{"groove in a sill", parts.Plain{Name: "sill", Long: 1000, Wide: 60, Deep: 80, GrooveWide: 20}, []string{"groove-wide"}},
		{"groove too deep", parts.Plain{Name: "axle bed", Long: 1000, Wide: 60, Deep: 80, GrooveWide: 20, GrooveDeep: 80}, []string{"groove-deep"}},
		{"all three extents", parts.Slat{Long: -1, Wide: parts.Length(math.NaN()), Thick: parts.Length(math.Inf(1))}, []string{"long", "wide", "thick"}},
		{"eased edges meeting", parts.Slat{Long: 900, Wide: 60, Thick: 20, Eased: 30}, []string{"eased"}},
		{"bolster rises too much", parts.Bolster{Long: 1100, Wide: 95, Deep: 80, Rise: 80, Flat: 700}, []string{"rise"}},
		{"bolster rises beyond nothing", parts.Bolster{Long: 1100, Wide: 95, Deep: 80, Rise: 20}, []string{"flat"}},
		{"half a stake mortise", parts.Bolster{Long: 1100, Wide: 95, Deep: 80, StakeLong: 40}, []string{"stake-wide", "stake-in"}},
		{"stakes off the end", parts.Bolster{Long: 1100, Wide: 95, Deep: 80, StakeLong: 60, StakeWide: 40, StakeIn: 20}, []string{"stake-long"}},
		{"king bolt as wide as the bolster", parts.Bolster{Long: 1100, Wide: 95, Deep: 80, KingBolt: 96}, []string{"king-bolt"}},
		{"chamfer round a rounded end", parts.Reach{Long: 1700, Wide: 50, Deep: 45, RoundEnds: 25, Chamfer: 4}, []string{"chamfer-stop"}},
		{"ends rounded and clipped", parts.Reach{Long: 1700, Wide: 50, Deep: 45, RoundEnds: 20, ClipEnds: 20}, []string{"clip-ends"}},
		{"tongue wider than the tyre", parts.Felloe{Radius: 500, Wide: 40, Deep: 50, Felloes: 6, Tongue: 40}, []string{"tongue"}},
		{"two felloes", parts.Felloe{Radius: 500, Wide: 40, Deep: 50, Felloes: 2}, []string{"felloes"}},
		{"thirteen spokes in six felloes", parts.Felloe{Radius: 500, Wide: 40, Deep: 50, Felloes: 6, Spokes: 13}, []string{"spokes"}},
		{"dowel out of the back", parts.Felloe{Radius: 500, Wide: 40, Deep: 50, Felloes: 6, Dowel: 12, DowelDeep: 200}, []string{"dowel-deep"}},
		{"bend tighter than the rail", parts.SeatRail{Long: 900, Wide: 30, Deep: 26, Return: 300, Bend: 10}, []string{"bend"}},
		{"bend wider than the return", parts.SeatRail{Long: 900, Wide: 30, Deep: 26, Return: 100, Bend: 120}, []string{"bend"}},
		{"round end thicker than the rail", parts.SeatRail{Long: 900, Wide: 30, Deep: 26, Tenon: 27, TenonLong: 40}, []string{"tenon"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := c.part.Validate()
			require.Error(t, err)
			require.Equal(t, c.want, faults(err), "%v", err)
			for _, l := range limitErrors(err) {
				require.Equal(t, c.part.Kind(), l.Part)
				require.False(t, l.Got >= l.Min && l.Got <= l.Max, "%v", l)
			}
		})
	}
}

func limitErrors(err error) []*parts.LimitError {
	var out []*parts.LimitError
	if j, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range j.Unwrap() {
			out = append(out, limitErrors(e)...)
		}
	} else if l, ok := errors.AsType[*parts.LimitError](err); ok {
		out = append(out, l)
	}
	return out
}

// Whatever is asked, nothing panics: not the checks, and not the laying out.
func TestNothingPanics(t *testing.T) {
	odd := rapid.OneOf(
		rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e-300, 1e300, 1}),
		rapid.Float64Range(-50, 2000))
	kindsOf(func(name string, k parts.Kind) {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				length := func(name string) parts.Length { return parts.Length(odd.Draw(t, name)) }
				m := parts.Measures{Lengths: map[string]parts.Length{}, Counts: map[string]int{}, Angles: map[string]parts.Angle{}}
				for _, d := range k.Dimensions {
					if d.Need == parts.Optional && rapid.Bool().Draw(t, "without "+d.Name) {
						continue
					}
					switch d.In {
					case parts.InCount:
						m.Counts[d.Name] = rapid.IntRange(-3, 40).Draw(t, d.Name)
					case parts.InDegrees:
						m.Angles[d.Name] = parts.Angle(length(d.Name))
					default:
						m.Lengths[d.Name] = length(d.Name)
					}
				}
				f := parts.Face(rapid.IntRange(-1, 6).Draw(t, "face"))
				g := parts.Face(rapid.IntRange(-1, 6).Draw(t, "other face"))
				p := form.Point{X: length("x"), Y: length("y")}
				a, b, c := length("a"), length("b"), length("c")
				m.Work = []parts.Feature{
					parts.Hole{ID: "1", Face: f, At: p, Diameter: a, Depth: b, Counterbore: &parts.Counterbore{Diameter: b, Depth: c}, Seat: &parts.SquareSeat{Width: c, Depth: a}},
					parts.Mortise{ID: "2", Face: f, At: p, Long: a, Wide: b, Depth: c},
					parts.Housing{ID: "3", Face: f, Station: a, Width: b, Depth: c},
					parts.Notch{ID: "4", Face: f, Edge: g, At: p.X, Long: a, In: b, Depth: c},
					parts.Tenon{ID: "5", End: f, At: p, Long: a, Wide: b, Thick: c},
					parts.Groove{ID: "6", Face: f, Middle: p.X, Wide: a, Depth: b},
					parts.Chamfer{ID: "7", Edge: parts.Arris{Flat: f, Side: g}, Size: a, From: b, To: c, Stop: p.X},
					parts.EasedEdge{ID: "8", Edge: parts.Arris{Flat: f, Side: g}, Radius: a},
					parts.RadialHole{ID: "9", Face: f, Angle: parts.Angle(a), Across: b, Diameter: c},
					parts.EndHole{ID: "10", End: f, Off: a, Up: b, Diameter: c, Depth: p.X},
					parts.RoundTenon{ID: "11", End: f, Diameter: a, Long: b},
				}
				part, err := k.Build(m)
				require.NoError(t, err)
				if part.Validate() != nil {
					return
				}
				s := part.Stick()
				_ = s.Volume()
				_ = parts.Net(s)
				for _, f := range parts.Faces() {
					_ = s.Marks(f)
				}
				_ = s.Operations()
				_ = s.Mirrored()
			})
		})
	})
}

func TestTheWordsOfALimit(t *testing.T) {
	err := &parts.LimitError{Part: "sill", Dimension: "deep", Got: 10, Min: 25.4, Max: 254, Why: "bolts"}
	require.Equal(t, "sill: deep is 10.0 mm (0.394 in); it can be 25.4 mm (1 in) to 254.0 mm (10 in) (bolts)", err.Error())
	err = &parts.LimitError{Dimension: "felloes", Got: 2, Min: 3, Max: 24, In: parts.InCount}
	require.Equal(t, "felloes is 2; it can be 3 to 24", err.Error())
}

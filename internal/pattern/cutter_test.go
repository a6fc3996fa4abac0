package pattern

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// worked is a timber with square work of every sort on its upper face.
func worked() *vehicle.Item {
	return item(5, "sill", vehicle.Along, vehicle.Near, "white oak", parts.Plain{
		Name: "sill", Long: 900, Wide: 70, Deep: 60, Work: []parts.Feature{
			parts.Mortise{ID: "joint 1", What: "mortise", Face: parts.Upper, At: form.Point{X: 200, Y: 35}, Long: 40, Wide: 14, Depth: 30},
			parts.Housing{ID: "joint 2", What: "housing", Face: parts.Upper, Station: 400, Width: 50, Depth: 12},
			parts.Notch{ID: "joint 3", What: "notch", Face: parts.Upper, Edge: parts.FirstSide, At: 600, Long: 45, In: 20, Depth: 25},
			parts.Mortise{ID: "joint 4", What: "slot", Face: parts.Upper, At: form.Point{X: 720, Y: 35}, Long: 30, Wide: 5},
			hole("fastening 1", parts.Upper, 800, 35, 6),
		},
	}, 0)
}

// A cutter of radius r leaves (1 - pi/4) r2 in each of a mortise's four corners, and
// in the two of a notch that are inside the wood; none where work runs out of the
// side. What it cannot enter is not on its layers. Read back by ezdxf.
func TestCutterLeavesItsRadiusInCorners(t *testing.T) {
	const r = 4.0
	corner := (1 - math.Pi/4) * r * r
	p := readDXF(t, []cutFile{{worked(), parts.Upper, 2 * r}})[0]
	require.Empty(t, p.Faults)
	areas := map[string]float64{}
	for _, l := range p.Lines {
		if l.Closed {
			areas[l.Layer] += profileOf(l.Points).areaOf()
		}
	}
	require.InDelta(t, 40*14-4*corner, areas["MORTISE_DEEP_30MM"], 1e-6)
	require.InDelta(t, 50*70, areas["HOUSE_DEEP_12MM"], 1e-6)
	require.InDelta(t, 45*20-2*corner, areas["NOTCH_DEEP_25MM"], 1e-6)
	require.InDelta(t, 30*5, areas["FOR_HAND_MORTISE"], 1e-6)
	require.NotContains(t, areas, "MORTISE_THROUGH")
	words := ""
	for _, w := range p.Texts {
		words += w.Words + "\n"
	}
	require.Contains(t, strings.ReplaceAll(words, "\u00a0", " "), "for hand: joint 1: square 4 inside corners, left round to 4 mm")
}

func TestHandWorkIsListed(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteHandWork(&b, wagon(worked()), worked(), 8))
	for _, words := range []string{
		"Drawn for a cutter of 8 mm", "Upper face", "joint 1: square 4 inside corners, left round to 4 mm",
		"joint 3: square 2 inside corners", "joint 4: too narrow for a cutter of 8.0 mm: all by hand",
		"fastening 1: Ø 6.0 mm is smaller than the cutter: drill it", "1 off · NEAR",
	} {
		require.Contains(t, b.String(), words)
	}
	require.NotContains(t, b.String(), "joint 2", "a housing from side to side has no inside corners")
	b.Reset()
	require.NoError(t, WriteHandWork(&b, wagon(slat()), slat(), 0))
	require.Contains(t, b.String(), "nothing is left to hand")
}

func TestCutterOutOfAllMeasureIsRefused(t *testing.T) {
	for _, c := range []Cutter{-1, 0.2, 200, Cutter(math.NaN()), Cutter(math.Inf(1))} {
		var bad *CutterError
		var b bytes.Buffer
		require.ErrorAs(t, WriteDXF(&b, wagon(worked()), worked(), parts.Upper, c), &bad)
		require.ErrorAs(t, WriteHandWork(&b, wagon(worked()), worked(), c), &bad)
		require.Zero(t, b.Len())
	}
}

// Every line of the drawing is in the file once, as long as it was made, and none
// twice; whatever is to be cleared out is closed. Read back by ezdxf.
func TestDXFHasEveryLineOnceAndAsLong(t *testing.T) {
	var files []cutFile
	for n, k := range parts.Kinds() {
		i := randomItem(k, n+1, 1)
		for _, f := range WorkedFaces(i) {
			files = append(files, cutFile{i, f, 0})
		}
	}
	require.Greater(t, len(files), 20)
	for n, p := range readDXF(t, files) {
		of := fmt.Sprintf("%s, %v", files[n].item.Name, files[n].face)
		require.Empty(t, p.Faults, of)
		require.Equal(t, 4, p.Unit, of)
		drawn := once(outline.Face(files[n].item.Stick, files[n].face))
		require.Len(t, p.Circles, len(drawn.Circles), of)
		var long, want float64
		edges, lines := map[string]bool{}, 0
		for _, l := range p.Lines {
			if l.Layer == "GUIDE" {
				continue
			}
			lines++
			require.True(t, l.Closed || !strings.Contains(l.Layer, "DEEP") && l.Layer != "OUTLINE", "%s: %s is open", of, l.Layer)
			run := outline.Path{Run: form.Path(profileOf(l.Points)), Closed: l.Closed}
			long += lengthOf(run)
			for _, s := range run.Segments() {
				key := fmt.Sprintf("%s %.3f %.3f %.3f %.3f", l.Layer, s.At(0.5).X, s.At(0.5).Y, math.Abs(float64(s.A.X-s.B.X)), math.Abs(float64(s.A.Y-s.B.Y)))
				require.False(t, edges[key], "%s: %s is drawn twice", of, key)
				edges[key] = true
			}
		}
		require.Equal(t, len(drawn.Paths), lines, of)
		for _, q := range drawn.Paths {
			want += lengthOf(q)
		}
		require.InEpsilon(t, want, long, 1e-6, of)
	}
}

func lengthOf(p outline.Path) float64 {
	sum := 0.0
	for _, s := range p.Segments() {
		if a, bent := s.Arc(); bent {
			sum += float64(a.Radius) * math.Abs(a.Turn)
			continue
		}
		sum += float64(distance(s.A, s.B))
	}
	return sum
}

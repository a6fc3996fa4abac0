package pattern

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/outline"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// reader prints what ezdxf finds in files.
const reader = `
import json, sys, ezdxf
every = []
for name in sys.argv[1:]:
    d = ezdxf.readfile(name)
    a = d.audit()
    out = {"version": d.dxfversion, "unit": d.units, "faults": [str(e.message) for e in a.errors] + [str(e.message) for e in a.fixes],
           "circles": [], "lines": [], "texts": []}
    for e in d.modelspace():
        if e.dxftype() == "CIRCLE":
            out["circles"].append({"layer": e.dxf.layer, "x": e.dxf.center.x, "y": e.dxf.center.y, "d": 2 * e.dxf.radius})
        elif e.dxftype() == "LWPOLYLINE":
            out["lines"].append({"layer": e.dxf.layer, "closed": bool(e.closed), "points": [list(p) for p in e.get_points("xyb")]})
        elif e.dxftype() == "TEXT":
            out["texts"].append({"layer": e.dxf.layer, "words": e.dxf.text})
        else:
            raise SystemExit("unlooked-for " + e.dxftype())
    every.append(out)
print(json.dumps(every))
`

type plan struct {
	Version string
	Unit    int
	Faults  []string
	Circles []struct {
		Layer   string
		X, Y, D float64
	}
	Lines []struct {
		Layer  string
		Closed bool
		Points [][3]float64
	}
	Texts []struct{ Layer, Words string }
}

// A cutFile is one face of one item.
type cutFile struct {
	item   *vehicle.Item
	face   parts.Face
	cutter Cutter
}

func readDXF(t *testing.T, files []cutFile) []plan {
	t.Helper()
	// Debian keeps ezdxf with its own Python.
	python := tool(t, "/usr/bin/python3", "python3-ezdxf")
	args := []string{"-c", reader}
	for _, f := range files {
		var b bytes.Buffer
		require.NoError(t, WriteDXF(&b, wagon(f.item), f.item, f.face, f.cutter))
		args = append(args, saved(t, "face.dxf", b.Bytes()))
	}
	var p []plan
	require.NoError(t, json.Unmarshal(run(t, python, args...), &p))
	require.Len(t, p, len(files))
	return p
}

// Read back by ezdxf, an independent reader: release AC1021, unit 4 (millimetres),
// nothing to mend; every circle and closed outline of the part, where it stands.
func TestDXFReadsBack(t *testing.T) {
	var files []cutFile
	for _, i := range samples() {
		for _, f := range WorkedFaces(i) {
			files = append(files, cutFile{i, f, 0})
		}
	}
	for n, p := range readDXF(t, files) {
		require.Equal(t, "AC1021", p.Version)
		require.Equal(t, 4, p.Unit)
		require.Empty(t, p.Faults)
		same(t, p, files[n])
	}
}

// same holds a file read back against the part itself.
func same(t *testing.T, p plan, f cutFile) {
	t.Helper()
	drawn := outline.Face(f.item.Stick, f.face)
	require.Len(t, p.Circles, len(drawn.Circles))
	for n, c := range drawn.Circles {
		require.Equal(t, c.Layer.Name(), p.Circles[n].Layer)
		require.InDelta(t, float64(c.Centre.X), p.Circles[n].X, 1e-6)
		require.InDelta(t, float64(c.Centre.Y), p.Circles[n].Y, 1e-6)
		require.InDelta(t, float64(c.Diameter), p.Circles[n].D, 1e-6)
	}
	require.Equal(t, "OUTLINE", p.Lines[0].Layer)
	require.True(t, p.Lines[0].Closed)
	out := f.item.Stick.Body.Outline(f.face)
	require.Len(t, p.Lines[0].Points, len(out))
	for n, v := range out {
		require.InDelta(t, float64(v.X), p.Lines[0].Points[n][0], 1e-6)
		require.InDelta(t, float64(v.Y), p.Lines[0].Points[n][1], 1e-6)
		require.InDelta(t, v.Bulge, p.Lines[0].Points[n][2], 1e-9)
	}
	for _, w := range p.Texts {
		require.Equal(t, "TEXT", w.Layer)
	}
}

func TestDXFLayersTellWorkAndDepth(t *testing.T) {
	layers := map[string]bool{}
	files := []cutFile{{bolster(), parts.Upper, 0}, {bolster(), parts.Under, 0}}
	for n, p := range readDXF(t, files) {
		for _, c := range p.Circles {
			layers[files[n].face.String()+" "+c.Layer] = true
		}
		for _, l := range p.Lines {
			layers[files[n].face.String()+" "+l.Layer] = true
		}
	}
	for _, want := range []string{
		"upper BORE_THROUGH", "upper BORE_DEEP_9.525MM", "upper HOUSE_DEEP_12.7MM", "upper MORTISE_THROUGH", "upper NOT_CUT_HERE_BORE",
		"under BORE_THROUGH", "under BORE_DEEP_6.35MM", "under NOT_CUT_HERE_BORE", "under NOT_CUT_HERE_MORTISE",
	} {
		require.True(t, layers[want], "%s in %v", want, layers)
	}
	require.False(t, layers["under MORTISE_THROUGH"], "it is cut from above")
}

// librsvg renders the drawing at the size it says: 1 in is 25.4 mm and 96 px (SVG 1.1).
func TestSVGIsFullSize(t *testing.T) {
	rsvg := tool(t, "rsvg-convert", "librsvg2-bin")
	for _, i := range samples() {
		var b bytes.Buffer
		require.NoError(t, WriteSVG(&b, wagon(i), i))
		head := regexp.MustCompile(`width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"`).FindStringSubmatch(b.String())
		require.NotNil(t, head)
		require.Equal(t, head[1:3], head[3:5], "one unit is one millimetre")
		long, _, _ := i.Stick.Body.Box()
		wide, err := strconv.ParseFloat(head[1], 64)
		require.NoError(t, err)
		require.Greater(t, wide, float64(long))
		png := run(t, rsvg, "--dpi-x", "96", "--dpi-y", "96", saved(t, "part.svg", b.Bytes()))
		// A PNG's width stands in bytes 16 to 20 (ISO/IEC 15948).
		px := int(png[16])<<24 | int(png[17])<<16 | int(png[18])<<8 | int(png[19])
		require.InDelta(t, wide*96/25.4, float64(px), 1, fmt.Sprint(i.Name))
	}
}

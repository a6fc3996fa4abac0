package page

import (
	"bytes"
	"cmp"
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/parts"
	"lostwood/parts/form"
)

// A view is one side that the vehicle is drawn from.
type view struct {
	title     string
	right, up [3]float64 // on paper
	toward    [3]float64 // the reader
	reads     string     // which way is which
}

func views() []view {
	return []view{
		{"From the near side", [3]float64{-1, 0, 0}, [3]float64{0, 0, 1}, [3]float64{0, 1, 0}, "fore end to the left"},
		{"From the front", [3]float64{0, 1, 0}, [3]float64{0, 0, 1}, [3]float64{1, 0, 0}, "near side to the right"},
		{"From above", [3]float64{-1, 0, 0}, [3]float64{0, -1, 0}, [3]float64{0, 0, 1}, "fore end to the left, near side below"},
	}
}

// elevations draws the vehicle from three sides: what stands nearest covers
// what lies behind it.
func (s *stage) elevations() []Drawing {
	var out []Drawing
	for _, v := range views() {
		out = append(out, Drawing{v.title + ", " + v.reads, s.elevation(v)})
	}
	return out
}

// A patch is one thing's outline on paper.
type patch struct {
	rings  [][][2]float64
	near   float64 // how near to the reader
	timber bool
}

func (s *stage) elevation(v view) []byte {
	var all []patch
	for i := range s.scene.Things {
		if t := &s.scene.Things[i]; t.Sort != "fastening" {
			all = append(all, s.patch(t, v))
		}
	}
	slices.SortStableFunc(all, func(a, b patch) int { return cmp.Compare(a.near, b.near) })
	lo, hi := bounds(all)
	const edge = 20
	var b bytes.Buffer
	w, h := hi[0]-lo[0]+2*edge, hi[1]-lo[1]+2*edge
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="%s %s %s %s" width="%s" height="%s"><title>`,
		num(lo[0]-edge), num(-hi[1]-edge), num(w), num(h), num(w), num(h))
	_ = xml.EscapeText(&b, []byte(s.model.Vehicle.Name+": "+v.title)) // a buffer takes all
	b.WriteString(`</title><g stroke="#2b241d" stroke-width="3" stroke-linejoin="round" fill-rule="evenodd">`)
	for _, p := range all {
		fill := "#8d8f91"
		if p.timber {
			fill = "#f0e2c4"
		}
		fmt.Fprintf(&b, `<path fill="%s" d="%s"/>`, fill, pathData(p.rings))
	}
	b.WriteString("</g></svg>\n")
	return b.Bytes()
}

func bounds(all []patch) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, p := range all {
		for _, ring := range p.rings {
			for _, q := range ring {
				for k := range q {
					lo[k], hi[k] = min(lo[k], q[k]), max(hi[k], q[k])
				}
			}
		}
	}
	if lo[0] > hi[0] {
		return [2]float64{}, [2]float64{100, 100}
	}
	return lo, hi
}

func pathData(rings [][][2]float64) string {
	var b strings.Builder
	for _, ring := range rings {
		for i, q := range ring {
			b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0])
			b.WriteString(num(q[0]) + " " + num(-q[1]))
		}
		b.WriteString("Z")
	}
	return b.String()
}

func num(f float64) string { return fmt.Sprintf("%g", math.Round(f*10)/10+0) }

// patch is the exact outline of a timber where a face of it looks at the reader,
// and the box of anything else.
func (s *stage) patch(t *thing, v view) patch {
	p := patch{timber: t.Sort == "timber", near: math.Inf(-1)}
	for _, c := range corners(t) {
		p.near = max(p.near, dot(c, v.toward))
	}
	if t.tyre {
		return t.ring(p, v)
	}
	if body := s.bodyOf(t); body != nil {
		for _, f := range parts.Faces() {
			frame := f.Frame(body)
			if w := frame.W(); dot(t.way(w), v.toward) > .999 {
				p.rings = append(p.rings, t.traced(body.Outline(f), frame, v))
				return p
			}
		}
	}
	p.rings = append(p.rings, hull(t, v))
	return p
}

// ring is a tyre seen from the side, or edge on.
func (t *thing) ring(p patch, v view) patch {
	r := t.Box[0] / 2
	c := t.centre()
	if math.Abs(v.toward[1]) < .5 {
		p.rings = append(p.rings, hull(t, v))
		return p
	}
	for _, radius := range []float64{r, r - 9} {
		var ring [][2]float64
		const sides = 96
		for i := range sides {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
			ring = append(ring, v.paper([3]float64{c[0] + radius*cos, c[1], c[2] + radius*sin}))
		}
		p.rings = append(p.rings, ring)
	}
	return p
}

func (v view) paper(q [3]float64) [2]float64 { return [2]float64{dot(q, v.right), dot(q, v.up)} }

func dot(a, b [3]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

// way and place carry a direction and a place from a thing's frame to the vehicle's.
func (t *thing) way(d form.Dir) (q [3]float64) {
	for row := range q {
		q[row] = t.Matrix[4*row]*d.X + t.Matrix[4*row+1]*d.Y + t.Matrix[4*row+2]*d.Z
	}
	return q
}

func (t *thing) place(p form.Vec) [3]float64 {
	q := t.way(form.Dir{X: p.X.Millimetres(), Y: p.Y.Millimetres(), Z: p.Z.Millimetres()})
	for row := range q {
		q[row] += t.Matrix[4*row+3]
	}
	return q
}

func (s *stage) bodyOf(t *thing) parts.Body {
	for _, it := range s.model.Vehicle.Items {
		if recordID(it) == t.Record && it.Shape != nil {
			return it.Shape.Stick().Body
		}
	}
	return nil
}

// traced lays an outline on paper, its arcs as short lines.
func (t *thing) traced(o form.Profile, frame form.Frame, v view) [][2]float64 {
	var out [][2]float64
	for i, a := range o {
		b := o[(i+1)%len(o)]
		n := 1
		if a.Bulge != 0 {
			n = 2 + int(math.Ceil(4*math.Atan(math.Abs(a.Bulge))/0.1))
		}
		for k := range n {
			x, y := onEdge(a, b.Point, float64(k)/float64(n))
			out = append(out, v.paper(t.place(frame.At(Length(x), Length(y), 0))))
		}
	}
	return out
}

// onEdge is a share of the way from a corner to the next.
func onEdge(a form.Vertex, b form.Point, share float64) (x, y float64) {
	ax, ay := a.X.Millimetres(), a.Y.Millimetres()
	dx, dy := b.X.Millimetres()-ax, b.Y.Millimetres()-ay
	if a.Bulge == 0 {
		return ax + share*dx, ay + share*dy
	}
	// The arc turns by 4 atan(bulge); its centre lies left of the chord by the cotangent of half of that.
	turn := 4 * math.Atan(a.Bulge)
	k := 1 / math.Tan(turn/2) / 2
	cx, cy := ax+dx/2-k*dy, ay+dy/2+k*dx
	sin, cos := math.Sincos(turn * share)
	return cx + cos*(ax-cx) - sin*(ay-cy), cy + sin*(ax-cx) + cos*(ay-cy)
}

// corners are those of a thing's box, in the vehicle.
func corners(t *thing) (out [][3]float64) {
	off := [3]float64{}
	if t.tyre { // its frame is about its middle
		off = [3]float64{t.Box[0] / 2, t.Box[1] / 2, t.Box[2] / 2}
	}
	for i := range 8 {
		p := form.Vec{
			X: Length(float64(i&1)*t.Box[0] - off[0]), Y: Length(float64(i>>1&1)*t.Box[1] - off[1]), Z: Length(float64(i>>2&1)*t.Box[2] - off[2]),
		}
		out = append(out, t.place(p))
	}
	return out
}

// hull is the outline of a thing's box on paper.
func hull(t *thing, v view) [][2]float64 {
	var pts [][2]float64
	for _, c := range corners(t) {
		pts = append(pts, v.paper(c))
	}
	slices.SortFunc(pts, func(a, b [2]float64) int { return slices.Compare(a[:], b[:]) })
	half := func(pts [][2]float64) (out [][2]float64) {
		for _, p := range pts {
			for n := len(out); n > 1; n = len(out) {
				a, b := out[n-2], out[n-1]
				if (b[0]-a[0])*(p[1]-a[1])-(b[1]-a[1])*(p[0]-a[0]) > 0 {
					break
				}
				out = out[:n-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	low := half(pts)
	slices.Reverse(pts)
	return append(low, half(pts)...)
}

// orderWords are the steps in which the vehicle goes together, in words.
func (s *stage) orderWords() [][]string {
	out := make([][]string, s.scene.Steps)
	for _, t := range s.scene.Things {
		name := t.Name
		if t.Sort == "fastening" {
			continue
		}
		if t.axle != "" {
			name = t.wheelWords()
		}
		if contains(out[t.Step], name) {
			continue
		}
		out[t.Step] = append(out[t.Step], name)
	}
	return slices.DeleteFunc(out, func(step []string) bool { return len(step) == 0 })
}

// wheelWords names a wheel by the axle it runs on.
func (t *thing) wheelWords() string {
	side := sideWord(t.centre()[1])
	return "the " + side + " wheel on the " + strings.ReplaceAll(t.axle, "-", " ")
}

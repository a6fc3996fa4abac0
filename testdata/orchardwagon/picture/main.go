// Picture draws the README's picture: every timber of the orchard wagon, meshed
// and in its place, as a PNG.
//
//	go run ./testdata/orchardwagon/picture testdata/orchardwagon/orchard-wagon.png
package main

import (
	"cmp"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"slices"

	"golang.org/x/image/draw"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/mesh"
	"lostwood/internal/solid"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

type vec [3]float64

func (a vec) minus(b vec) vec      { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a vec) dot(b vec) float64    { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vec) scaled(k float64) vec { return vec{a[0] * k, a[1] * k, a[2] * k} }
func (a vec) unit() vec            { return a.scaled(1 / math.Sqrt(a.dot(a))) }
func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// A face is one triangle in the vehicle's frame.
type face struct {
	corners [3]vec
	colour  color.RGBA
}

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "picture wants the name of the PNG to write")
		os.Exit(2)
	}
	if err := draws(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func draws(name string) error {
	s, err := survey.Read(demo.Name, demo.Survey())
	if err != nil {
		return err
	}
	woods, err := timber.Published()
	if err != nil {
		return err
	}
	v, err := derive.Vehicle(s, woods)
	if err != nil {
		return err
	}
	var faces []face
	for _, it := range v.Items {
		body, err := solid.New(it.Stick.Volume())
		if err != nil {
			return err
		}
		m, err := mesh.Of(body, 0.5)
		if err != nil {
			return err
		}
		faces = append(faces, stand(v, it, m)...)
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err := png.Encode(f, render(faces, 1600, 900)); err != nil {
		return err
	}
	return f.Close()
}

// woods are the colours of the three timbers.
var woodColours = map[string]color.RGBA{
	"white ash": {226, 203, 160, 255}, "white oak": {186, 143, 92, 255}, "yellow-poplar": {214, 214, 170, 255},
}

// stand puts an item's mesh wherever the vehicle has one.
func stand(v *vehicle.Vehicle, it *vehicle.Item, m *mesh.Mesh) []face {
	var out []face
	put := func(at func(p vec) vec) {
		for _, t := range m.Triangles {
			var f face
			for k, i := range t {
				q := m.Vertices[i]
				f.corners[k] = at(vec{q.X.Millimetres(), q.Y.Millimetres(), q.Z.Millimetres()})
			}
			f.colour = woodColours[it.Timber]
			out = append(out, f)
		}
	}
	_, wide, _ := it.Stick.Body.Box()
	for _, p := range it.Parts {
		if p.Place == nil {
			rims(it, put)
			break
		}
		put(func(q vec) vec {
			if it.Hand == vehicle.Off { // the place is told in the near one's frame
				q[1] = wide.Millimetres() - q[1]
			}
			var r vec
			for a := range 3 {
				r[a] = p.Place.At[a].Value.Millimetres()
				for j := range 3 {
					r[a] += p.Place.Axes[j][a] * q[j]
				}
			}
			return r
		})
	}
	return out
}

// rims stands the felloes of a wheel's rim on the ground, at an axle.
func rims(it *vehicle.Item, put func(func(vec) vec)) {
	var radius, x float64
	for _, d := range it.Sizes {
		if d.Name == "radius" {
			radius = d.Value.Millimetres()
		}
	}
	if it.Name[0] == 'H' {
		x = -64.75 * 25.4
	}
	long, _, deep := it.Stick.Body.Box()
	number := it.NumberOff / 2
	for _, y := range []float64{23 * 25.4, -24.5 * 25.4} {
		for k := range number {
			turn := 2 * math.Pi * float64(k) / float64(number)
			put(func(q vec) vec {
				along, out := q[0]-long.Millimetres()/2, q[2]-deep.Millimetres()+radius
				c, s := math.Cos(turn), math.Sin(turn)
				return vec{x + along*c + out*s, y + q[1], radius + 9.5 - along*s + out*c}
			})
		}
	}
}

// render draws the faces far to near, lit from above the near side.
func render(faces []face, w, h int) image.Image {
	look := vec{-0.62, -0.62, -0.42}.unit()
	right := look.cross(vec{0, 0, 1}).unit()
	up := right.cross(look)
	light := vec{0.35, 0.5, 0.9}.unit()
	const over = 2
	img := image.NewRGBA(image.Rect(0, 0, w*over, h*over))
	draw.Draw(img, img.Bounds(), image.NewUniform(color.RGBA{252, 251, 248, 255}), image.Point{}, draw.Src)
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, f := range faces {
		for _, c := range f.corners {
			for k, d := range []vec{right, up} {
				lo[k], hi[k] = min(lo[k], c.dot(d)), max(hi[k], c.dot(d))
			}
		}
	}
	scale := 0.94 * min(float64(w*over)/(hi[0]-lo[0]), float64(h*over)/(hi[1]-lo[1]))
	depth := make([]float64, w*over*h*over)
	for i := range depth {
		depth[i] = math.Inf(1)
	}
	flat := func(c vec) (x, y, z float64) {
		return float64(w*over)/2 + (c.dot(right)-(lo[0]+hi[0])/2)*scale, float64(h*over)/2 - (c.dot(up)-(lo[1]+hi[1])/2)*scale, c.dot(look)
	}
	slices.SortStableFunc(faces, func(a, b face) int { return cmp.Compare(a.corners[0].dot(look), b.corners[0].dot(look)) })
	for _, f := range faces {
		n := f.corners[1].minus(f.corners[0]).cross(f.corners[2].minus(f.corners[0]))
		if n.dot(n) == 0 || n.dot(look) >= 0 {
			continue
		}
		shade := 0.55 + 0.45*max(0, n.unit().dot(light))
		col := color.RGBA{uint8(float64(f.colour.R) * shade), uint8(float64(f.colour.G) * shade), uint8(float64(f.colour.B) * shade), 255}
		fill(img, depth, f, flat, col)
	}
	small := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.CatmullRom.Scale(small, small.Bounds(), img, img.Bounds(), draw.Src, nil)
	return small
}

// fill draws one triangle wherever nothing nearer stands.
func fill(img *image.RGBA, depth []float64, f face, flat func(vec) (x, y, z float64), col color.RGBA) {
	var x, y, z [3]float64
	for k, c := range f.corners {
		x[k], y[k], z[k] = flat(c)
	}
	area := (x[1]-x[0])*(y[2]-y[0]) - (x[2]-x[0])*(y[1]-y[0])
	if area == 0 {
		return
	}
	b := img.Bounds()
	for py := max(0, int(slices.Min(y[:]))); py <= min(b.Max.Y-1, int(slices.Max(y[:]))+1); py++ {
		for px := max(0, int(slices.Min(x[:]))); px <= min(b.Max.X-1, int(slices.Max(x[:]))+1); px++ {
			fx, fy := float64(px)+0.5, float64(py)+0.5
			u := ((fx-x[0])*(y[2]-y[0]) - (x[2]-x[0])*(fy-y[0])) / area
			v := ((x[1]-x[0])*(fy-y[0]) - (fx-x[0])*(y[1]-y[0])) / area
			if u < 0 || v < 0 || u+v > 1 {
				continue
			}
			d := z[0] + u*(z[1]-z[0]) + v*(z[2]-z[0])
			if i := py*b.Max.X + px; d < depth[i] {
				depth[i] = d
				img.SetRGBA(px, py, col)
			}
		}
	}
}

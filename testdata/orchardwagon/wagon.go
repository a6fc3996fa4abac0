// Package orchardwagon makes the survey of the orchard wagon that comes with
// the program, and tells the truth it was made from.
//
// true.toml is the wagon as it was drawn. No wagon is built as drawn: here each
// timber and iron gets its own small differences, near from off; then every
// reading is worked out from these true boxes and lines by plain geometry, not
// by the adjustment that is to find them; then measuring errors are added, and
// the reading is rounded as a rule is read. One blunder is planted: the near
// sill plate was read from its wrong end.
package orchardwagon

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"lostwood/internal/derive"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// Drawing is the wagon as it was drawn.
//
//go:embed true.toml
var Drawing []byte

// Truth is the true size of every timber and iron, in millimetres, by its id and dimension.
type Truth map[string]map[string]quantity.Length

// How far things differ from the drawing, standard deviations.
const (
	sizeDiffers  = 0.025 * quantity.Inch // a timber's size, near from off
	placeDiffers = 0.012 * quantity.Inch
	ironDiffers  = 0.015 * quantity.Inch
	lineDiffers  = 0.035 * quantity.Inch // where a bolt was bored
	play         = 0.025 * quantity.Inch // of a bolt in an iron's hole
	likeDiffers  = 0.7                   // a like vehicle's length or width, as a share of the doubt it is given
)

// How well things are read, standard deviations.
var reads = map[string]quantity.Length{
	"thick": quantity.Inch / 64, "wide": quantity.Inch / 64, "inside": quantity.Inch / 64,
	"long": quantity.Inch / 32, "hole": quantity.Inch / 32, "grip": quantity.Inch / 32,
	"chord": quantity.Inch / 32, "rise": quantity.Inch / 32, "girth": quantity.Inch / 16,
}

// A box is one thing as it truly is.
type box struct {
	at    [3]float64
	axes  [3][3]float64
	sizes map[string]float64
	names [3]string // of its extents
}

// A Wagon is the true thing, and the readings it gives.
type Wagon struct {
	survey  *survey.Survey
	drawn   *vehicle.Vehicle
	boxes   map[string]*box
	lines   map[string][3]float64 // where each fastening's line stands
	through map[string]*vehicle.Fastening
	truth   Truth
	rand    *rand.Rand
	// wheels has the wheels' own differences, so that telling more of them changes nothing else.
	wheels *rand.Rand
}

// Build makes a true wagon from the drawing.
func Build(seed uint64) (*Wagon, error) {
	s, err := survey.Read("true.toml", Drawing)
	if err != nil {
		return nil, err
	}
	woods, err := timber.Published()
	if err != nil {
		return nil, err
	}
	v, err := derive.Vehicle(s, woods)
	if err != nil {
		return nil, err
	}
	w := &Wagon{
		survey: s, drawn: v, boxes: map[string]*box{}, lines: map[string][3]float64{},
		through: map[string]*vehicle.Fastening{}, truth: Truth{}, rand: rand.New(rand.NewPCG(seed, 1)), wheels: rand.New(rand.NewPCG(seed, 2)),
	}
	for _, i := range v.Irons {
		w.build(i.ID, i.Sizes, i.Place, ironDiffers)
	}
	for _, p := range v.Parts {
		if ofWheel(v, p) {
			continue
		}
		w.build(p.ID, p.Sizes, p.Place, sizeDiffers)
	}
	w.fitRims()
	for _, f := range v.Fastenings {
		var line [3]float64
		for a := range 3 {
			line[a] = f.Head[a].Value.Millimetres() + w.differ(lineDiffers)
		}
		w.lines[f.ID], w.through[f.ID] = line, f
	}
	w.buildWheels()
	return w, nil
}

func (w *Wagon) differ(by quantity.Length) float64 { return w.rand.NormFloat64() * by.Millimetres() }

// build gives one thing its true sizes and place.
func (w *Wagon) build(id string, sizes []vehicle.Dimension, place *vehicle.Place, by quantity.Length) {
	b := &box{sizes: map[string]float64{}}
	for _, d := range sizes {
		v := d.Value.Millimetres()
		if d.Axis != 0 || place == nil {
			v += w.differ(by)
		}
		if d.Known >= quantity.LikeVehicle && (d.Name == "long" || d.Name == "wide") {
			v += w.differ(d.Doubt * likeDiffers)
		}
		b.sizes[d.Name] = v
		if d.Axis != 0 {
			b.names[d.Axis-1] = d.Name
		}
	}
	if place != nil {
		b.axes = place.Axes
		for a := range 3 {
			b.at[a] = place.At[a].Value.Millimetres() + w.differ(placeDiffers)
		}
	}
	w.boxes[id] = b
	w.truth[id] = map[string]quantity.Length{}
	for name, v := range b.sizes {
		w.truth[id][name] = quantity.Length(v)
	}
}

// fitRims makes the rims as large as the tyres that were shrunk on them.
func (w *Wagon) fitRims() {
	for rim, tyre := range map[string]string{"fore-felloe": "fore-tyre", "hind-felloe": "hind-tyre"} {
		for _, d := range []string{"radius", "wide"} {
			w.boxes[rim].sizes[d] = w.boxes[tyre].sizes[d]
			w.truth[rim][d] = quantity.Length(w.boxes[tyre].sizes[d])
		}
	}
}

// span gives where a box begins and ends on the vehicle's axis a.
func (b *box) span(a int) (lo, hi float64) {
	for j := range 3 {
		if s := b.axes[j][a]; s != 0 {
			e := b.at[a] + s*b.sizes[b.names[j]]
			return min(b.at[a], e), max(b.at[a], e)
		}
	}
	return 0, 0
}

// hole is where a fastening meets an iron, from the iron's first end.
func (w *Wagon) hole(iron string, k int, drawn quantity.Length) float64 {
	b := w.boxes[iron]
	for _, f := range w.drawn.Fastenings {
		for _, s := range f.Through {
			if s.ID != iron || s.Hole != k+1 {
				continue
			}
			for a := range 3 {
				if b.axes[0][a] != 0 {
					return b.axes[0][a]*(w.lines[f.ID][a]-b.at[a]) + w.differ(play)
				}
			}
		}
	}
	return drawn.Millimetres()
}

// grip is the true length of a fastening between head and nut.
func (w *Wagon) grip(id string) float64 {
	f := w.through[id]
	first, last := w.boxes[f.Through[0].ID], w.boxes[f.Through[len(f.Through)-1].ID]
	for a, way := range f.Way {
		if way == 0 {
			continue
		}
		lo0, hi0 := first.span(a)
		lo1, hi1 := last.span(a)
		if way > 0 {
			return hi1 - lo0
		}
		return hi0 - lo1
	}
	sum := 0.0
	for _, s := range f.Through {
		sum += w.boxes[s.ID].sizes["thick"] + w.boxes[s.ID].sizes["deep"]
	}
	return sum
}

// size is a true size of an iron, as it would be read.
func (w *Wagon) size(iron, name string) float64 {
	b := w.boxes[iron]
	outer := b.sizes["radius"] + b.sizes["thick"]
	switch name {
	case "girth":
		return 2 * math.Pi * outer
	case "outside":
		return 2 * outer
	case "rise":
		c := b.sizes["chord"]
		return outer - math.Sqrt(outer*outer-c*c/4)
	}
	return b.sizes[name]
}

// CSV is the truth as a table: id, dimension, millimetres.
func (t Truth) CSV(order []string) string {
	var b strings.Builder
	c := csv.NewWriter(&b)
	rows := [][]string{{"id", "dimension", "true_mm"}}
	for _, id := range order {
		for _, name := range sorted(t[id]) {
			rows = append(rows, []string{id, name, fmt.Sprintf("%.3f", t[id][name].Millimetres())})
		}
	}
	if err := c.WriteAll(rows); err != nil {
		return ""
	}
	return b.String()
}

package load

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A Section is what is left of a timber where it is sawn through square to its
// grain, with every hole and joint in it, as it bends up and down.
type Section struct {
	Area      quantity.Area
	Middle    quantity.Length // up from the under side of the timber's box to the middle of the area
	Across    quantity.Length // the same across it, from its first side
	Inertia   float64         // second moment of area about the level line through the middle, mm4
	Up, Down  quantity.Length // from the middle to the highest and the lowest wood
	shearUnit float64         // greatest shear stress for one newton, 1/mm2
}

// Bending is the greatest stress of a bending moment, in newton millimetres.
func (s Section) bending(moment float64) float64 {
	if s.Inertia <= 0 {
		return math.Inf(1)
	}
	return math.Abs(moment) * float64(max(s.Up, s.Down)) / s.Inertia
}

func (s Section) shear(force float64) float64 { return math.Abs(force) * s.shearUnit }

// rectangle is a plain section.
func rectangle(wide, deep float64) Section {
	return Section{
		Area: quantity.Area(wide * deep), Middle: quantity.Length(deep / 2), Across: quantity.Length(wide / 2),
		Inertia: wide * deep * deep * deep / 12, Up: quantity.Length(deep / 2), Down: quantity.Length(deep / 2),
		shearUnit: 1.5 / (wide * deep),
	}
}

// A cut is one solid that a feature takes away, with the room it is in.
type cut struct {
	form.Volume
	box form.Box
}

// local reports a cut that is short along the grain: a hole, a mortise, a housing.
func (c cut) local() bool {
	const longest = 400 // mm
	return float64(c.box.Max.X-c.box.Min.X) < longest
}

// A sawyer cuts sections out of one item's stick and keeps those he has.
type sawyer struct {
	body  parts.Body
	whole form.Volume
	cuts  []cut
	box   [3]float64
	kept  map[[2]float64]Section

	square   bool // the body is a plain squared stick
	features []parts.Feature
	middle   *[3]float64
}

func newSawyer(s parts.Stick) *sawyer {
	long, wide, deep := s.Body.Box()
	w := &sawyer{body: s.Body, whole: s.Body.Volume(), box: [3]float64{float64(long), float64(wide), float64(deep)}, kept: map[[2]float64]Section{}, features: s.Features}
	if b, ok := s.Body.(parts.Sawn); ok {
		w.square = b.Plan.IsRectangle() && b.Side.IsRectangle()
	}
	for _, f := range s.Features {
		for _, v := range f.Cuts(s.Body) {
			w.cuts = append(w.cuts, cut{v, form.Bounds(v)})
		}
	}
	return w
}

// worst are the places along the grain where local cuts leave least: the
// middle of each, and just inside both its ends.
func (w *sawyer) worst() []float64 {
	const within = .02
	var out []float64
	for _, c := range w.cuts {
		lo, hi := float64(c.box.Min.X), float64(c.box.Max.X)
		if !c.local() {
			continue
		}
		for _, x := range []float64{lo + within*(hi-lo), (lo + hi) / 2, hi - within*(hi-lo)} {
			if x > 0 && x < w.box[0] {
				out = append(out, x)
			}
		}
	}
	return out
}

// at is the section at x along the grain, net of every cut.
func (w *sawyer) at(x float64) Section {
	const edge = 1e-3 // a section at the very end is that just inside
	x = min(max(x, edge), w.box[0]-edge)
	key := [2]float64{1, x}
	if s, ok := w.kept[key]; ok {
		return s
	}
	var active []cut
	for _, c := range w.cuts {
		if x >= float64(c.box.Min.X) && x <= float64(c.box.Max.X) {
			active = append(active, c)
		}
	}
	s := w.saw(x, active)
	w.kept[key] = s
	return s
}

// gross is the section of the body alone.
func (w *sawyer) gross(x float64) Section {
	const edge = 1e-3
	x = min(max(x, edge), w.box[0]-edge)
	key := [2]float64{0, x}
	if s, ok := w.kept[key]; ok {
		return s
	}
	s := rectangle(w.box[1], w.box[2])
	if !w.square {
		s = w.saw(x, nil)
	}
	w.kept[key] = s
	return s
}

// A row is a thin level strip of a section.
type row struct{ z, thick, wide, sideways float64 }

// saw cuts the section in level rows between the heights where anything begins or ends.
func (w *sawyer) saw(x float64, active []cut) Section {
	rows := w.rows(x, active)
	s := reckoned(rows)
	if len(active) == 0 {
		return s
	}
	// Wood that a cut leaves standing as a thin fin does not stiffen the rest: the
	// section without it bears what it bears.
	trimmed := reckoned(trim(rows))
	if trimmed.bending(1) < s.bending(1) {
		trimmed.shearUnit = min(trimmed.shearUnit, s.shearUnit)
		return trimmed
	}
	s.shearUnit = min(trimmed.shearUnit, s.shearUnit)
	return s
}

// trim drops the rows at the top and the foot that are under a quarter as wide
// as the widest.
func trim(rows []row) []row {
	widest := 0.0
	for _, r := range rows {
		widest = max(widest, r.wide)
	}
	thin := func(r row) bool { return r.wide < widest/4 }
	for len(rows) > 0 && thin(rows[0]) {
		rows = rows[1:]
	}
	for len(rows) > 0 && thin(rows[len(rows)-1]) {
		rows = rows[:len(rows)-1]
	}
	return rows
}

func (w *sawyer) rows(x float64, active []cut) []row {
	heights := []float64{0, w.box[2]}
	for _, c := range active {
		heights = append(heights, float64(c.box.Min.Z), float64(c.box.Max.Z))
	}
	for _, s := range w.body.Outline(parts.FirstSide).Chords(form.Length(x)) {
		heights = append(heights, float64(s.From), float64(s.To))
	}
	slices.Sort(heights)
	var rows []row
	for i := 1; i < len(heights); i++ {
		lo, hi := max(heights[i-1], 0), min(heights[i], w.box[2])
		if hi-lo < 1e-6 {
			continue
		}
		const finest = 16
		n := max(1, int(math.Ceil((hi-lo)/w.box[2]*finest)))
		for k := range n {
			a, step := lo+(hi-lo)*float64(k)/float64(n), (hi-lo)/float64(n)
			for _, t := range [2]float64{-1 / math.Sqrt(3), 1 / math.Sqrt(3)} { // Gauss
				rows = append(rows, w.row(x, a+step/2*(1+t), step/2, active))
			}
		}
	}
	return rows
}

func (w *sawyer) row(x, z, thick float64, active []cut) row {
	left := across(w.whole, x, z)
	for _, c := range active {
		if z < float64(c.box.Min.Z) || z > float64(c.box.Max.Z) || len(left) == 0 {
			continue
		}
		left = without(left, across(c.Volume, x, z))
	}
	r := row{z: z, thick: thick}
	for _, s := range left {
		r.wide += s.to - s.from
		r.sideways += (s.to*s.to - s.from*s.from) / 2
	}
	return r
}

// rim is how far the edge of a step lies beyond its outer Gauss row, in thicknesses of the row.
const rim = 1 - 1/1.7320508075688772

// reckoned sums rows, lowest first.
func reckoned(rows []row) Section {
	var area, lift, sideways, inertia float64
	lowest, highest := math.Inf(1), math.Inf(-1)
	for _, r := range rows {
		area += r.wide * r.thick
		lift += r.wide * r.thick * r.z
		sideways += r.sideways * r.thick
		if r.wide > 1e-9 {
			lowest, highest = min(lowest, r.z-rim*r.thick), max(highest, r.z+rim*r.thick)
		}
	}
	if area <= 0 {
		return Section{shearUnit: math.Inf(1)}
	}
	middle := lift / area
	for _, r := range rows { // two Gauss rows a step are exact for a cubic
		inertia += r.wide * r.thick * (r.z - middle) * (r.z - middle)
	}
	s := Section{
		Area: quantity.Area(area), Middle: quantity.Length(middle), Across: quantity.Length(sideways / area), Inertia: inertia,
		Up: quantity.Length(highest - middle), Down: quantity.Length(middle - lowest),
	}
	above := 0.0 // first moment of what lies above, about the middle
	for _, r := range slices.Backward(rows) {
		half := r.wide * r.thick * (r.z - middle) / 2
		if r.wide > 1e-9 {
			s.shearUnit = max(s.shearUnit, (above+half)/(inertia*r.wide))
		}
		above += 2 * half
	}
	return s
}

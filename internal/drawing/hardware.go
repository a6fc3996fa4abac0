package drawing

import (
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// plateVolume is a flat iron in its own frame, with the holes its fastenings
// pass through in the middle of its width; ok is false where a size is missing.
func plateVolume(i *vehicle.Iron, through map[int]Length) (v form.Volume, ok bool) {
	long, wide, thick := ironSize(i, "long"), ironSize(i, "wide"), ironSize(i, "thick")
	if !(long > 0 && wide > 0 && thick > 0) {
		return nil, false
	}
	flat := form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
	bar := form.Prism{Frame: flat, Profile: form.Rectangle(form.Point{}, form.Point{X: long, Y: wide}), To: thick}
	var cut []form.Volume
	for k, h := range i.Holes {
		const play = 1.5
		d := through[k+1] + play
		if d <= play || d >= wide || !(h.Value > d/2 && h.Value < long-d/2) {
			continue
		}
		cut = append(cut, form.Prism{
			Frame: flat, Profile: form.Circle(form.Point{X: h.Value, Y: wide / 2}, d/2),
			From: Length(math.Inf(-1)), To: Length(math.Inf(1)),
		})
	}
	if len(cut) == 0 {
		return bar, true
	}
	return form.Difference{From: bar, Cut: cut}, true
}

func ironSize(i *vehicle.Iron, name string) Length {
	for _, d := range i.Sizes {
		if d.Name == name {
			return d.Value
		}
	}
	return 0
}

// holesThrough are the diameters of what passes each hole of each iron.
func holesThrough(v *vehicle.Vehicle) map[string]map[int]Length {
	out := map[string]map[int]Length{}
	for _, f := range v.Fastenings {
		for _, s := range f.Through {
			if s.Hole == 0 {
				continue
			}
			if out[s.ID] == nil {
				out[s.ID] = map[int]Length{}
			}
			out[s.ID][s.Hole] = f.Diameter
		}
	}
	return out
}

// boltVolumes are a bolt's pieces in a frame whose z runs from head to nut, its
// head bearing at 0: a round head, the shank and a square nut. The head and nut
// are the usual ones of internal/bolt, sizes that the survey does not read. A
// screw shows its head only.
func boltVolumes(f *vehicle.Fastening) []form.Volume {
	d := f.Diameter
	flat := form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
	across, high, source := bolt.Head(d)
	headWide, headHigh := across.Middle(), high.Middle()
	if source == bolt.Unlisted {
		headWide, headHigh = 2*d, d/2
	}
	head := form.Prism{Frame: flat, Profile: form.Circle(form.Point{}, headWide/2), From: -headHigh, To: 0}
	if f.What != "bolt" {
		return []form.Volume{head}
	}
	nut, source := bolt.Nut(d, bolt.SquareNut)
	if source == bolt.Unlisted {
		nut = bolt.NutSize{Across: 1.6 * d, Thickness: 0.875 * d}
	}
	half := nut.Across / 2
	const proud = 3
	return []form.Volume{
		head,
		form.Prism{Frame: flat, Profile: form.Circle(form.Point{}, d/2), To: f.Grip.Value + nut.Thickness + proud},
		form.Prism{
			Frame: flat, Profile: form.Rectangle(form.Point{X: -half, Y: -half}, form.Point{X: half, Y: half}),
			From: f.Grip.Value, To: f.Grip.Value + nut.Thickness,
		},
	}
}

// clipRod is what a clip is bent of, where it is drawn.
const clipRod = quantity.Inch * 3 / 8

// clipVolumes are a clip's: its back on the head's side, x across it, and two legs.
func clipVolumes(inside, grip Length) []form.Volume {
	flat := form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}
	leg := func(x Length) form.Volume {
		return form.Prism{Frame: flat, Profile: form.Circle(form.Point{X: x}, clipRod/2), From: -clipRod, To: grip + 2*clipRod}
	}
	out := (inside + clipRod) / 2
	return []form.Volume{
		leg(-out), leg(out),
		form.Prism{Frame: flat, Profile: form.Rectangle(form.Point{X: -out, Y: -clipRod / 2}, form.Point{X: out, Y: clipRod / 2}), From: -clipRod, To: 0},
	}
}

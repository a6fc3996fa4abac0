package derive

import (
	"cmp"
	"math"

	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
	"lostwood/parts"
)

// A wheelTimber is one distinct timber of a wheel.
type wheelTimber struct {
	id, name, timber string
	off              int // in one wheel
	shape            parts.Part
	sizes            [][2]string // the part's dimension, and the wheel's figure that it is
	member           *member     // the wheel that its pattern is taken from
}

// wheelItems enters the nave and the spokes of a wheel, or of a pair made alike,
// as things to make, and joins the survey's felloes to it.
func (a *assembly) wheelItems(w *survey.Wheel, made []*vehicle.Wheel) {
	for len(made) > 0 {
		alike := 1
		for alike < len(made) && sameWheel(made[0], made[alike]) {
			alike++
		}
		a.wheelSet(w, made[:alike])
		made = made[alike:]
	}
}

// sameWheel reports whether two wheels are made to one pattern.
func sameWheel(a, b *vehicle.Wheel) bool {
	for i := range a.Sizes {
		d := math.Abs(a.Sizes[i].Value.Millimetres() - b.Sizes[i].Value.Millimetres())
		if d > negligible.Millimetres() && d > unlikely*hypot(a.Sizes[i].Doubt, b.Sizes[i].Doubt) {
			return false
		}
	}
	return true
}

func (a *assembly) wheelSet(w *survey.Wheel, set []*vehicle.Wheel) {
	pattern := set[0]
	for _, v := range set { // the one that was read gives the pattern
		if v.Hand == w.Of {
			pattern = v
		}
	}
	made, err := pattern.Made()
	if err != nil {
		return // told already
	}
	for _, t := range a.timbersOf(w, made) {
		name := lower(w.Name)
		if len(set) == 1 && w.Sides == survey.Pair {
			name = pattern.Name
		}
		it := &vehicle.Item{
			Number: a.lastNumber() + 1, ID: w.ID + "-" + t.id, Name: capital(name) + " " + t.name, Kind: t.shape.Kind(),
			Run: vehicle.Round, NumberOff: t.off * len(set), Timber: t.timber, Shape: t.shape, Stick: t.shape.Stick(),
			Sizes: sizesBy(pattern, t.sizes),
		}
		for _, v := range set {
			p := &vehicle.Part{
				ID: v.ID + "-" + t.id, Name: capital(v.Name) + " " + t.name, Kind: it.Kind, Run: vehicle.Round, Hand: v.Hand,
				Timber: t.timber, Sizes: sizesBy(v, t.sizes), Item: it,
			}
			it.Parts = append(it.Parts, p)
			v.Parts = append(v.Parts, p)
			a.vehicle.Parts = append(a.vehicle.Parts, p)
		}
		a.vehicle.Items = append(a.vehicle.Items, it)
		if a.ofWheels == nil {
			a.ofWheels = map[*vehicle.Item]wheelTimber{}
		}
		t.member = a.network.byID[pattern.ID]
		a.ofWheels[it] = t
	}
	a.joinFelloes(w, set, made)
}

func (a *assembly) lastNumber() int {
	last := 0
	for _, it := range a.vehicle.Items {
		last = max(last, it.Number)
	}
	return last
}

func sizesBy(v *vehicle.Wheel, names [][2]string) []vehicle.Dimension {
	var out []vehicle.Dimension
	for _, n := range names {
		for _, d := range v.Sizes {
			if d.Name == n[1] {
				d.Name = n[0]
				out = append(out, d)
			}
		}
	}
	return out
}

// timbersOf are the nave and the spokes: one spoke where all are alike.
func (a *assembly) timbersOf(w *survey.Wheel, made *wheel.Wheel) []wheelTimber {
	wood := a.network.survey.Wood.Timber
	nave := wheelTimber{"nave", "nave", cmp.Or(w.Nave, wood), 1, made.NavePart(), [][2]string{
		{"long", "nave-long"},
		{"diameter", "nave"},
		{"back", "nave-back"},
		{"front", "nave-front"},
		{"forward", "nave-forward"},
		{"seat-long", "seat-long"},
		{"foot-thick", "foot-thick"},
		{"box-long", "box-long"},
		{"box-in", "box-in"},
	}, nil}
	spoke := func(id, name string, r wheel.Row, off int) wheelTimber {
		return wheelTimber{id, name, cmp.Or(w.Spoke, wood), off, made.SpokePart(r), [][2]string{
			{"thick", "spoke-thick"},
			{"wide", "spoke-wide"},
			{"tip-wide", "tip-wide"},
			{"tip-thick", "tip-thick"},
			{"square", "square"},
			{"foot-long", "foot-long"},
			{"foot-wide", "foot-wide"},
			{"foot-thick", "foot-thick"},
			{"tongue", "tongue"},
		}, nil}
	}
	n := made.Spec.Spokes.Number
	face, back := made.SpokePart(made.RowOf(0)), made.SpokePart(made.RowOf(1))
	if math.Abs(float64(face.Long-back.Long)) < .05 {
		return []wheelTimber{nave, spoke("spoke", "spoke", made.RowOf(0), n)}
	}
	return []wheelTimber{nave, spoke("face-spoke", "face spoke", made.RowOf(0), n/2), spoke("back-spoke", "back spoke", made.RowOf(1), n/2)}
}

// joinFelloes joins the felloes that the survey names to their wheel: bevelled to
// its cone, their holes leaning as its spokes do.
func (a *assembly) joinFelloes(w *survey.Wheel, set []*vehicle.Wheel, made *wheel.Wheel) {
	for _, it := range a.vehicle.Items {
		if it.ID != w.Felloe.ID || it.ID == "" {
			continue
		}
		f, ok := it.Shape.(parts.Felloe)
		if !ok {
			continue
		}
		own := made.FelloePart()
		f.Bevel, f.Lean, f.LeanBack = own.Bevel, own.Lean, own.LeanBack
		if f.Validate() == nil {
			it.Shape, it.Stick = f, f.Stick()
		}
		for _, v := range set {
			v.Parts = append(v.Parts, it.Parts...)
		}
	}
}

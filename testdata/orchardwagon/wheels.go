package orchardwagon

import (
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// ofWheel reports whether a timber is a wheel's own: its nave or spokes.
func ofWheel(v *vehicle.Vehicle, p *vehicle.Part) bool {
	return p.Kind != "felloe" && slices.ContainsFunc(v.Wheels, func(w *vehicle.Wheel) bool { return slices.Contains(w.Parts, p) })
}

// buildWheels gives every wheel its true figures, and its timbers theirs. The
// near one has what its irons and felloes have; the off one differs a little.
func (w *Wagon) buildWheels() {
	near := map[string]quantity.Length{}
	for _, v := range w.drawn.Wheels {
		own := map[string]quantity.Length{}
		for _, d := range v.Sizes {
			by := ironDiffers
			if d.Known >= quantity.LikeVehicle {
				by = d.Doubt * likeDiffers
			}
			own[d.Name] = d.Value + w.wheelDiffers(by)
			if v.Hand == vehicle.Off {
				own[d.Name] = near[d.Name] + w.wheelDiffers(sizeDiffers)
			}
		}
		if v.Hand == vehicle.Near {
			w.fitWheel(strings.TrimSuffix(strings.TrimPrefix(v.ID, "near-"), "-wheel"), own)
			near = own
		}
		w.truth[v.ID] = own
		for _, p := range v.Parts {
			if p.Kind == "felloe" {
				continue
			}
			w.truth[p.ID] = map[string]quantity.Length{}
			for _, d := range p.Sizes {
				w.truth[p.ID][d.Name] = own[figureOf(p.Kind, d.Name)]
			}
		}
	}
}

func (w *Wagon) wheelDiffers(by quantity.Length) quantity.Length {
	return quantity.Length(w.wheels.NormFloat64()) * by
}

// fitWheel gives a wheel what its tyre, felloes and axle have.
func (w *Wagon) fitWheel(end string, own map[string]quantity.Length) {
	for figure, from := range map[string][2]string{
		"radius": {"-tyre", "radius"}, "tyre-wide": {"-tyre", "wide"}, "tyre-thick": {"-tyre", "thick"},
		"felloe-deep": {"-felloe", "deep"}, "tongue": {"-felloe", "tongue"}, "gap": {"-felloe", "gap"}, "shoulders": {"-axle", "long"},
	} {
		own[figure] = quantity.Length(w.boxes[end+from[0]].sizes[from[1]])
	}
	own["arm-collar"] = own["box-large"] - quantity.Inch/32
	own["arm-point"] = own["box-small"] - quantity.Inch/32
}

// figureOf is the wheel's figure that a dimension of its nave or spoke is.
func figureOf(kind, dimension string) string {
	if kind == "nave" {
		switch dimension {
		case "diameter":
			return "nave"
		case "long", "back", "front", "forward":
			return "nave-" + dimension
		}
		return dimension
	}
	if dimension == "thick" || dimension == "wide" {
		return "spoke-" + dimension
	}
	return dimension
}

// readWheel reads what was measured of a wheel. What a like vehicle says stays as it was told.
func (w *Wagon) readWheel(t *text, v *survey.Wheel) {
	own := w.truth["near-"+v.ID]
	for _, s := range v.Stated {
		if s.Known >= quantity.LikeVehicle {
			continue
		}
		_, rest, _ := strings.Cut(s.Text, " ±")
		mm := (own[s.Terms[0].Feature] + w.wheelDiffers(s.Doubt)).Millimetres()
		t.put(s.At, fraction(int(math.Round(mm/quantity.Inch.Millimetres()*64)), 64)+" ±"+rest)
	}
}

package wheelwright

import (
	"io"
	"slices"

	"lostwood/internal/pattern"
	"lostwood/internal/vehicle"
)

// Of is a wheel of a vehicle as a subject. Its error is package wheel's.
func Of(v *vehicle.Vehicle, w *vehicle.Wheel) (Subject, error) {
	made, err := w.Made()
	if err != nil {
		return Subject{}, err
	}
	return Subject{Vehicle: v.Name, Issue: v.IssueWord(), Name: w.Name, Wheel: made, Unit: v.Unit}, nil
}

// WriteRim prints the setting-out of the wheel's whole rim at full size.
func WriteRim(out io.Writer, v *vehicle.Vehicle, w *vehicle.Wheel, paper pattern.Paper) error {
	s, err := Of(v, w)
	if err != nil {
		return err
	}
	return pattern.WriteRim(out, v, felloeOf(w, s), paper)
}

// felloeOf is the item of the wheel's felloes: the vehicle's own where it has
// one, in the shape of this wheel.
func felloeOf(w *vehicle.Wheel, s Subject) *vehicle.Item {
	shape := s.Wheel.FelloePart()
	item := vehicle.Item{
		Number: 1, ID: w.ID + "-felloe", Name: "felloe of the " + w.Name, NumberOff: s.Wheel.Spec.Rim.Felloes,
		Timber: "timber as the list has it",
	}
	if i := slices.IndexFunc(w.Parts, func(p *vehicle.Part) bool { return p.Kind == "felloe" && p.Item != nil }); i >= 0 {
		item = *w.Parts[i].Item
	}
	item.Kind, item.Run, item.Shape, item.Stick = shape.Kind(), vehicle.Round, shape, shape.Stick()
	return &item
}

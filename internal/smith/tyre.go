package smith

import (
	"fmt"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
)

// tyre is a tyre to make: its bar's length by every rule that is published, for a
// sound wagon wheel. The wheel sheet has the nip for other wheels.
func tyre(p *Piece, v *vehicle.Vehicle, i *vehicle.Iron) {
	radius, wide, thick := size(i, "radius"), size(i, "wide"), size(i, "thick")
	p.Stock = fmt.Sprintf("flat %s by %s", spoken(wide, v.Unit), spoken(thick, v.Unit))
	for _, d := range i.Sizes {
		if d.Known == quantity.Unknown {
			p.Open = append(p.Open, fmt.Sprintf("how %s it is, nothing tells", d.Name))
		}
	}
	if len(p.Open) > 0 {
		return
	}
	girth := 2 * math.Pi * radius.Value
	nip := wheel.Nips(wheel.Wagon, wheel.Sound)[0]
	for k, b := range wheel.Bars(girth, thick.Value, nip.Most, wheel.Weld) {
		p.Rules = append(p.Rules, Rule{b.Rule, b.Source, b.Cut})
		if k > 0 {
			continue
		}
		p.Cut = b.Cut
		for _, a := range b.Sum {
			p.Sum = append(p.Sum, Addend{a.What, a.Value})
		}
	}
	p.Each = Iron.Mass(quantity.Volume(float64(Hoop(2*radius.Value, thick.Value) * wide.Value * thick.Value)))
	p.Notes = append(p.Notes,
		fmt.Sprintf("the nip, %s, is that of a %s (%s); a poor or much dished wheel takes less: see the wheel sheet", quantity.Format(nip.Most, v.Unit), nip.For, nip.Source),
		"roll the finished wooden wheel with a traveller before the bar is cut: its girth, not this list, decides")
}

package wheelwright

import (
	"fmt"

	"lostwood/internal/wheel"
)

func (s Subject) rim() Section {
	w := s.Wheel
	f, r := w.Felloe(), w.Radii(wheel.Built)
	m := w.Spec.Rim
	rows := []Row{
		{"radius of the sole", s.both(r.Sole), "in the middle, before the tyre is on; " + s.both(w.Radii(wheel.Tyred).Sole) + " when the joints are closed"},
		{"radius of the belly", s.both(r.Belly), "in the middle, before the tyre is on"},
		{"sole", m.Sole.String(), "saw sole and belly " + degrees(f.Bevel) + " out of square to the plank's faces, smaller at the front"},
		{"a felloe's chord", s.both(f.Chord), "straight across its back at the larger edge"},
		{"its rise", s.both(f.Rise), "so the plank must be " + s.both(f.Stock) + " wide at the least"},
		{"its ends", degrees(f.EndBevel) + " from square to the chord", "square to the plank's faces"},
		{"tongue holes", s.both(f.Between) + " apart", "straight across at the belly, in its middle; they lean as the spokes do"},
		{"grain at its ends", degrees(f.GrainAtEnds) + " out of the rim", "with the grain along the chord; choose a plank whose grain sweeps round"},
		{"gap at each joint", s.both(f.Gap), s.both(f.GapsTogether) + " in all; or as much at one joint or a few"},
	}
	if m.Dowel != 0 {
		rows = append(rows, Row{"dowels", s.both(m.Dowel), s.both(m.DowelDeep) + " into either felloe, bored straight into the ends"})
	}
	return Section{"Rim", rows}
}

func (s Subject) tyre() Section {
	w := s.Wheel
	g, c, h := w.Girths(wheel.Built), w.Closing(), w.Heat()
	rows := []Row{
		{"bar", s.both(w.Spec.Tyre.Wide) + " by " + s.both(w.Spec.Tyre.Thick), ""},
		{"girth of the wood", s.both(g.Middle), "in the middle, its joints open: run it with the traveller and trust that before this"},
	}
	if g.Front != g.Back {
		rows = append(rows, Row{"girth at its edges", s.both(g.Front) + " front, " + s.both(g.Back) + " back", "the bar is bent edgeways by the difference"})
	}
	asked := "as asked"
	if w.Spec.Tyre.Nip == 0 {
		asked = "as the first rule below"
	}
	rows = append(rows, Row{"nip", s.both(c.Nip), "the tyre smaller round than the wood; " + asked})
	for _, n := range wheel.Nips(w.Spec.Use, w.Spec.Condition) {
		is := s.both(n.Most)
		if n.Least != n.Most {
			is = s.both(n.Least) + " to " + s.both(n.Most)
		}
		rows = append(rows, Row{"nip by rule", is, n.For + " (" + n.Source + ")"})
	}
	rows = append(
		rows,
		Row{"tyre inside, cold", s.both(g.Middle - c.Nip), "round its middle, after welding"},
		Row{"it stretches before it yields", s.both(c.Stretch), "reckoned for wrought iron or mild steel"},
		Row{"joints have to close", s.both(c.Needed), s.both(c.Joints) + " stand open"},
		Row{"heat", fmt.Sprintf("%.0f degrees C hotter than the shop", h.Rise), "to stand " + s.both(wheel.Clear) + " wide of the rim across, reckoned from the nip; an even heat all round matters more, and a full red chars the wood"},
	)
	return Section{"Tyre", rows}
}

func (s Subject) bars() Section {
	w := s.Wheel
	var rows []Row
	for _, b := range w.Bars() {
		sum := ""
		for i, a := range b.Sum {
			if i > 0 {
				sum += ", "
			}
			sum += a.What + " " + s.both(a.Value)
		}
		rows = append(rows, Row{b.Rule, s.both(b.Cut), sum + ". " + b.Source})
	}
	rows = append(rows, Row{
		"inside before welding", s.both(wheel.InsideBeforeWeld(w.Girths(wheel.Built).Middle, w.Spec.Condition)),
		"another way, for a tyre 1/2 in thick: what the bent bar measures inside (J. G. Holmstrom, his second book)",
	})
	return Section{"Length to cut the tyre's bar", rows}
}

func (s Subject) arm() Section {
	w := s.Wheel
	t := w.Stance()
	rows := []Row{
		{"cant", degrees(t.Cant), w.Spec.Arm.Set.String()},
		{"cant for a plumb spoke", degrees(t.Plumb), "the lean of the bottom spoke with the tyre on"},
		{"cant by the drawn rule", degrees(t.Drawn), "the dish over half the height (T.S.M. in Richardson 1891)"},
		{"underside of the arm", degrees(t.UnderArm), "falls to the point; below 0 it rises. Half the arm's taper is " + degrees(t.Taper)},
		{"gather", degrees(t.Gather), "the arm points forward: " + s.both(w.Spec.Arm.Gather) + " over half the height"},
		{"hub above the ground", s.both(t.HubUp), "the arm's middle line, at the mortises"},
	}
	for i, o := range t.OutOfPlumb {
		name := "bottom spoke"
		if len(t.OutOfPlumb) > 1 {
			name += ", of the " + wheel.Row(i).String()
		}
		rows = append(rows, Row{name, degrees(o) + " out of plumb", "where above 0, its foot stands out beyond its tip"})
	}
	if p, ok := w.Pair(); ok {
		rows = append(
			rows,
			Row{"track on the ground", s.both(p.Track), s.both(p.Outside) + " over the outsides of the tyres"},
			Row{"at the top", s.both(p.Top), "middle to middle of the tyres"},
			Row{"at the hubs' height", s.both(p.Front) + " in front, " + s.both(p.Behind) + " behind", "middle to middle of the tyres"},
			Row{"axle, collar to collar", s.both(p.Shoulders), "between the collars' faces, at the arms' middle lines"},
			Row{"the same by rule", s.both(wheel.ShouldersByHubs(p.Outside, w.OverSpokes(), w.Spec.Tyre.Wide)), "track over all, less the hubs butt to butt over their spokes, and a felloe's width (A.B.C. in Richardson 1891); it knows nothing of dish and cant"},
		)
	}
	return Section{"Axle arm and track", rows}
}

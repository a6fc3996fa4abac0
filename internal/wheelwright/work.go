package wheelwright

import (
	"fmt"

	"lostwood/internal/wheel"
)

// Heeds are what of this wheel is not as it ought to be, in sentences.
func Heeds(s Subject) []string {
	w := s.Wheel
	c := w.Closing()
	var out []string
	say := func(format string, a ...any) { out = append(out, fmt.Sprintf(format, a...)) }
	if c.Short > 0 {
		say("The nip of %s asks more than the joints and the iron give: the tyre stretches %s before it yields and the joints close %s, so %s must come from the shoulders, or the tyre yields and holds no tighter. Open the joints further, or take a smaller nip.",
			s.both(c.Nip), s.both(c.Stretch), s.both(c.Joints), s.both(c.Short))
	}
	if c.Spare > 0 {
		say("The joints stand open %s and the nip is %s: they would stay open by %s. Close them, or take more nip.", s.both(c.Joints), s.both(c.Nip), s.both(c.Spare))
	}
	told := w.Spec.Dish.Tyred
	if d := c.DishByJoints - told; d > 3 || d < -3 {
		say("Closing the joints would bring the dish to %s, and %s is asked. For that the joints would stand open by %s in all, if no spoke shortens or sinks.",
			s.both(c.DishByJoints), s.both(told), s.both(wheel.JointsFor(w.Radii(wheel.Built).Belly-w.Spec.Nave.Diameter/2, w.Dish(wheel.Built), w.Dish(wheel.Tyred))))
	}
	for _, cut := range w.Cuts() {
		if cut.Space < 5 {
			say("The feet stand only %s clear of the box; about 1/4 in is usual.", s.both(cut.Space))
			break
		}
	}
	if p := w.Spacing(); p.Clear > wheel.MostClear {
		say("Between the spokes the felloe is %s clear; not above 16 in is the old rule (Felton 1794).", s.both(p.Clear))
	}
	if rows := w.Rows(); len(rows) > 1 {
		face, back := w.Row(rows[0]), w.Row(rows[1])
		if d := face.Long - back.Long; d > .05 || d < -.05 {
			say("On a level seat face spokes are %s and back spokes %s long: two lengths, not one. A seat turned square to the spokes makes them alike.", s.both(face.Long), s.both(back.Long))
		}
	}
	return out
}

// OrderOfWork is how the wheel is made, step by step.
func OrderOfWork(s Subject) []string {
	w := s.Wheel
	line := w.Row(wheel.FaceRow)
	steps := []string{
		"Nave: seasoned whole, the butt end of the log to the front. Turn it to the template. Drive the bands next to the spokes on hot before mortising, the end bands after.",
		"Wind the paper strip round the seat, its ends meeting, and prick every mortise through. Bore and chop from the marks, trying the lean with the gauge; leave the mortises a shaving tight.",
		"Spokes: cleft, not sawn, heart side to the back. Cut the feet and the shoulders; shave only when the feet fit.",
		fmt.Sprintf("Drive the spokes, each true to the gauge: at %s from the middle of the nave its face must touch the peg. Correct it with the blow, not after.", s.both(w.Radii(wheel.Built).Belly)),
		fmt.Sprintf("Mark all tongue shoulders from the nave with one stick, %s from the foot's shoulder. Cut the tongues.", s.both(line.Long)),
		"Felloes: sawn to the template with the grain along the chord. Bore the tongue holes from the belly at the spokes' lean, and the dowel holes in the ends.",
		"Put the felloes on two spokes at a time, drawing the spokes together. Drive all down together, going round.",
		"Leave every joint open as told below, the inner edge no tighter than the outer.",
		"Bore the nave for the box when the tyre is on and cold: true to the rim, not to the old centre.",
	}
	return steps
}

// BeforeFire is what to look at before anything is heated: a tyre is shrunk on once.
func BeforeFire(s Subject) []string {
	w := s.Wheel
	c := w.Closing()
	return []string{
		fmt.Sprintf("Dish: %s from a straight-edge across the rim to the front of the mortises, the same at four places round.", s.both(w.FaceDish(wheel.Built))),
		fmt.Sprintf("Joints: %s each, %s in all. Every spoke's shoulder down on the nave, every felloe down on its tongues. Joints closed before the shoulders are home leave the spokes loose for good.", s.both(w.Felloe().Gap), s.both(c.Joints)),
		fmt.Sprintf("Tongues %s below the sole, dowels nowhere bottomed.", s.both(w.Spec.Spokes.Tongue.Short)),
		"Run the wheel with the traveller, twice, from the same chalk mark, and note the count. Run the tyre inside the same way.",
		fmt.Sprintf("The tyre must be %s smaller. If the wheel does not run as this sheet says, go by the wheel.", s.both(c.Nip)),
		"The wheel lies face down, screwed down through the nave, the platform level. Sole clean and dry. Tongs, sledges and water within reach, and everyone knows their place.",
	}
}

// Cautions are for the fire and the quenching.
func Cautions() []string {
	return []string{
		"Fire, hot iron and steam burn. Leather apron and boots, gloves, eye shield; long sleeves of wool or cotton, nothing that melts. Two at the tongs for a wagon tyre and one at the water, none alone.",
		"Old paint on a wheel or tyre may hold lead: strip it off before heating, not by burning. Zinc-coated iron gives poisonous fumes: never heat it.",
		"Ring the fire clear of the shop, of straw, oil and dry ground; hose and extinguisher ready; heed local rules and fire bans. Watch the ashes for some hours.",
		"Water on hot iron flashes to steam: stand up-wind, pour from the rim outwards, gently and all round. Stop the flames first, then cool evenly. Iron of unknown kind may harden and crack if quenched hard from red.",
		"Cast boxes and parts near the fire may crack from heat or cold on one side. A wheel under a shrinking tyre cracks loudly; keep faces away from the joints.",
		"Lifting, hot work and road use may need a licensed smith or an inspection where you are. This sheet does not take their place.",
	}
}

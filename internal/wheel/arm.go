package wheel

import "math"

// A Stance is how an axle arm is set and how its wheel stands on it.
type Stance struct {
	Cant     Angle // how far the arm's middle line falls to its point
	Gather   Angle // how far it points forward
	Plumb    Angle // the cant that puts the bottom spoke exactly plumb
	Drawn    Angle // the cant by the drawn rule: the dish over half the wheel's height
	Taper    Angle // half the angle the arm closes by
	UnderArm Angle // how far its underside falls to the point; below 0 it rises
	// OutOfPlumb is what the bottom spoke leans from plumb, of each row: positive
	// where its foot stands further out than its tip.
	OutOfPlumb []Angle
	HubUp      Length // the wheel's origin above the ground
	Lowest     Length // how much further in the bottom of the tyre's middle stands than the top, the half of it
}

// CantByDrawing is the cant by the drawn rule: the arm's middle line runs from
// a point as high as the dish, half a wheel's height behind the middle of the
// box, through the middle of the box (Richardson, Practical Carriage Building,
// 1891, "T.S.M.").
func CantByDrawing(dish, height Length) Angle {
	return Angle(math.Atan2(float64(dish), float64(height)/2))
}

// DropByDrawing is how far the arm's middle line has fallen, or before it
// risen, a way from the middle of the box, by the same rule.
func DropByDrawing(dish, height, from Length) Length { return from * dish / (height / 2) }

// Stance is how the wheel's arm is set.
func (w *Wheel) Stance() Stance {
	a := w.Spec.Arm
	s := Stance{Plumb: w.Lean(Tyred), Drawn: CantByDrawing(w.Spec.Dish.Tyred, w.Spec.Height)}
	switch a.Set {
	case PlumbSpoke:
		s.Cant = s.Plumb
	case Construction:
		s.Cant = s.Drawn
	default:
		s.Cant = a.Cant
	}
	s.Gather = Angle(math.Atan2(float64(a.Gather), float64(w.Spec.Height)/2))
	if a.Long > 0 {
		s.Taper = Angle(math.Atan2(float64(a.AtCollar-a.AtPoint)/2, float64(a.Long)))
	}
	s.UnderArm = s.Cant - s.Taper
	for _, r := range w.Rows() {
		s.OutOfPlumb = append(s.OutOfPlumb, s.Cant-w.leanTyred(r))
	}
	sin, cos := math.Sincos(float64(s.Cant))
	tread := float64(w.Radii(Tyred).Tread)
	s.HubUp = Length(tread*cos + w.stands[Tyred]*sin)
	s.Lowest = Length(tread * sin)
	return s
}

// leanTyred is the lean of a row's spokes with the tyre on.
func (w *Wheel) leanTyred(r Row) Angle {
	foot := w.Row(r).Foot
	return Angle(math.Atan2(w.stands[Tyred]-float64(foot.Along), w.belly[Tyred]-float64(foot.Out)))
}

// collar is where the collar's face stands, along the axle in the wheel's frame:
// at the back end of the box.
func (w *Wheel) collar() float64 {
	n := w.Spec.Nave
	return float64(n.Forward - n.Long + w.Spec.Box.In)
}

// A Pair is an axle with two such wheels.
type Pair struct {
	Track     Length // middle to middle of the tyres on the ground
	Outside   Length // over the outsides of the tyres on the ground
	Top       Length // middle to middle at the top of the wheels
	Front     Length // middle to middle of the tyres at the height of the hubs, at the front
	Behind    Length // the same behind: more than the front by the gather
	Hubs      Length // between the wheels' origins
	Shoulders Length // from collar to collar, at the arms' middle lines
	Points    Length // from point to point of the arms
}

// Pair is the axle for the track asked of the Spec; ok is false where it asks none.
func (w *Wheel) Pair() (p Pair, ok bool) {
	t := w.Spec.Track
	if t.Wide == 0 {
		return Pair{}, false
	}
	s := w.Stance()
	sin, cos := math.Sincos(float64(s.Cant))
	gsin, gcos := math.Sincos(float64(s.Gather))
	tread, dish := float64(w.Radii(Tyred).Tread), w.stands[Tyred]
	edge := float64(w.Spec.Tyre.Wide) / 2 * (cos + math.Tan(float64(w.Cone()))*sin) * gcos
	ground := gcos * (dish*cos - tread*sin)
	half := float64(t.Wide) / 2
	if t.Over == TyreOutsides {
		half -= edge
	}
	hub := half - ground
	collar := hub + w.collar()*cos*gcos
	twice := func(x float64) Length { return Length(2 * x) }
	p = Pair{
		Track: twice(half), Outside: twice(half + edge), Top: twice(hub + gcos*(dish*cos+tread*sin)),
		Front: twice(hub + gcos*dish*cos - tread*gsin), Behind: twice(hub + gcos*dish*cos + tread*gsin),
		Hubs: twice(hub), Shoulders: twice(collar), Points: twice(collar + float64(w.Spec.Arm.Long)*cos*gcos),
	}
	return p, true
}

// ShouldersByHubs is the rule for an axle's length from shoulder to shoulder:
// the track over the outsides of the felloes, less what two hubs put butt to
// butt measure over the outsides of their spokes, and a felloe's width added
// ("A.B.C." in Richardson, Practical Carriage Building, 1891).
func ShouldersByHubs(trackOutside, overSpokes, felloe Length) Length {
	return trackOutside - overSpokes + felloe
}

// OverSpokes is what two such hubs, put butt to butt, measure over the outsides
// of their spokes, where these leave the nave.
func (w *Wheel) OverSpokes() Length {
	k := w.Spec.Spokes
	return 2 * (w.onNave(k.Stagger/2) + k.Wide/2)
}

// BoxMiddle is where the middle of the box stands behind the front of the
// mortises, and where half a tyre's width would put it, so that the load falls
// over the middle of the rim (H. L. Cordrey in Richardson, Practical Carriage
// Building, 1891).
func (w *Wheel) BoxMiddle() (behind, byRule Length) {
	k, b := w.Spec.Spokes, w.Spec.Box
	front := w.onNave(k.Stagger/2 + k.FootWide/2)
	return front - (b.In + b.Long/2), w.Spec.Tyre.Wide / 2
}

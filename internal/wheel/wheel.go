package wheel

import "math"

// A Wheel is a wheel worked out.
type Wheel struct {
	Spec Spec
	// sole and belly are the rim's radii in its middle, and stands how far that
	// middle is out from the mortises' along the axle, by state.
	sole, belly, stands [2]float64
	seat                float64 // the nave's radius between the mortise circles
	seatFall            float64 // how much the seat falls to the front: tangent
}

// A State is when in its making a wheel is looked at.
type State int

// The states.
const (
	Built State = iota // driven together, its joints open, the tyre not yet on
	Tyred              // the tyre on and cold, the joints closed: as it runs
)

// String is the state in words.
func (s State) String() string { return word(int(s), "before the tyre is on", "with the tyre on") }

// New works a wheel out. Its error is as Validate's, with what only the whole
// wheel shows: mortises that break into each other or into the box, a dish
// greater than the nave allows, a tyre that cannot go on.
func New(s Spec) (*Wheel, error) {
	if err := s.Validate(); err != nil {
		return nil, err
	}
	w := lay(s)
	var l limits
	w.checkRun(&l)
	if l.sound() {
		w.checkLean(&l)
		w.checkBands(&l)
		w.checkBore(&l)
		w.checkNip(&l)
	}
	if err := l.all(); err != nil {
		return nil, err
	}
	return w, nil
}

// lay works out the circles, with nothing checked but single figures.
func lay(s Spec) *Wheel {
	w := &Wheel{Spec: s, seat: float64(s.Nave.Diameter) / 2}
	wood := float64(s.Height) / 2
	if s.Over == OverTyre {
		wood -= float64(s.Tyre.Thick)
	}
	open := float64(s.Rim.Gap) * float64(s.Rim.Felloes) / (2 * math.Pi)
	w.sole = [2]float64{wood + open, wood}
	for i, dish := range []Length{s.Dish.Built, s.Dish.Tyred} {
		w.belly[i] = w.sole[i] - float64(s.Rim.Deep)
		w.stands[i] = float64(s.onMiddles(dish))
	}
	if s.Nave.Seat == SeatSquare {
		w.seatFall = math.Tan(float64(w.Lean(Built)))
	}
	return w
}

// onMiddles turns a dish as it is stated into one from middle to middle.
func (s Spec) onMiddles(dish Length) Length {
	if s.Dish.On == Middles {
		return dish
	}
	return dish + s.Spokes.Stagger/2 + (s.Spokes.FootWide-s.width())/2
}

// onFaces turns a dish from middle to middle into one on the faces.
func (s Spec) onFaces(middles Length) Length {
	return middles - s.Spokes.Stagger/2 - (s.Spokes.FootWide-s.width())/2
}

// Dish is how far the middle of the rim is out from midway between the mortise circles.
func (w *Wheel) Dish(s State) Length { return Length(w.stands[s]) }

// FaceDish is how far the rim's face is out from the front of the mortises.
func (w *Wheel) FaceDish(s State) Length { return w.Spec.onFaces(w.Dish(s)) }

// Lean is how far the spokes lean out from square to the axle: midway between
// face and back spokes where the wheel is staggered.
func (w *Wheel) Lean(s State) Angle {
	return Angle(math.Atan2(w.stands[s], w.belly[s]-w.seat))
}

// Radii are a rim's, in its middle.
type Radii struct{ Tread, Sole, Belly Length }

// Radii are the rim's in a state. The tread's is what it is, or will be, over the tyre.
func (w *Wheel) Radii(s State) Radii {
	return Radii{Length(w.sole[s]) + w.Spec.Tyre.Thick, Length(w.sole[s]), Length(w.belly[s])}
}

// Heights are the finished wheel's diameters over the tyre and of the wood.
func (w *Wheel) Heights() (overTyre, ofWood Length) {
	r := w.Radii(Tyred)
	return 2 * r.Tread, 2 * r.Sole
}

// Cone is how much the rim's sole and belly slope: at the front their radius is
// less. It is 0 for a level sole.
func (w *Wheel) Cone() Angle {
	if w.Spec.Rim.Sole == LevelSole {
		return 0
	}
	return w.Lean(Built)
}

// cone is the slope's tangent.
func (w *Wheel) cone() float64 { return math.Tan(float64(w.Cone())) }

// Girths are how long a string round the rim is: in its middle, at its front
// edge and at its back edge. The open joints are counted in.
type Girths struct{ Middle, Front, Back Length }

// Girths are those of the wooden rim in a state.
func (w *Wheel) Girths(s State) Girths {
	step := w.cone() * float64(w.Spec.width()) / 2
	round := func(r float64) Length { return Length(2 * math.Pi * r) }
	return Girths{round(w.sole[s]), round(w.sole[s] - step), round(w.sole[s] + step)}
}

// checkRun looks at the room for the spokes between nave and rim.
func (w *Wheel) checkRun(l *limits) {
	s := w.Spec
	most := Length(w.belly[Tyred]-20) * 2
	l.need("nave", s.Nave.Diameter, 0, most, "the spokes need room between it and the rim")
	if l.sound() {
		room := Length(w.Row(BackRow).Long) - s.Spokes.Square - 10
		l.may("spoke-square", s.Spokes.Square, 0, s.Spokes.Square+min(room, 0), "the spoke has to come to its oval")
	}
}

package derive

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
	"lostwood/parts/form"
)

// wheels enters every wheel with its figures and place, the timbers it is made
// of, and what is to be told of it.
func (a *assembly) wheels() error {
	for i := range a.network.survey.Wheels {
		w := &a.network.survey.Wheels[i]
		var made []*vehicle.Wheel
		for _, m := range a.network.families[w.ID] {
			if v := a.wheel(m); v != nil {
				made = append(made, v)
			}
		}
		a.vehicle.Wheels = append(a.vehicle.Wheels, made...)
		a.wheelItems(w, made)
		a.heightOver(w)
	}
	return a.closures()
}

// wheel is one wheel as it comes out; nil where a figure that it needs is open,
// or it cannot be built, which is told.
func (a *assembly) wheel(m *member) *vehicle.Wheel {
	sizes := a.sizes(m)
	if !a.wheelKnown(m, sizes) {
		return nil
	}
	v := &vehicle.Wheel{ID: m.id, Name: words(m), Hand: m.hand, Spec: a.spec(m), Sizes: sizes}
	made, err := v.Made()
	if err != nil {
		for _, e := range each(err) {
			a.find(vehicle.Unmakeable, m.base, m.wheel.At.Line, fmt.Sprintf("The %s cannot be made as it stands. %s.",
				words(m), strings.TrimSuffix(capital(strings.TrimPrefix(e.Error(), "wheel: ")), ".")))
		}
		return nil
	}
	v.Place = a.onAxle(m, made)
	v.Tyre = a.tyreOf(m)
	return v
}

// wheelKnown reports, and says, whether all that a wheel needs is known.
func (a *assembly) wheelKnown(m *member, sizes []vehicle.Dimension) bool {
	var open []string
	for _, d := range sizes {
		if d.Known == quantity.Unknown && d.Name != "track" && d.Name != "shoulders" {
			open = append(open, dimensionWords(d.Name))
		}
	}
	if len(open) > 0 {
		a.find(vehicle.Unmakeable, m.base, m.wheel.At.Line, fmt.Sprintf(
			"The %s cannot be made. Not known: %s. A tyre, a piece of one, its height or a twin would tell.", words(m), list(open)))
	}
	return len(open) == 0
}

// spec is what the adjustment makes of a wheel.
func (a *assembly) spec(m *member) wheel.Spec {
	of := func(figure string) quantity.Length { return quantity.Length(m.of(a.fit.X, figure).Value) }
	s := wheel.Spec{
		Use: m.wheel.Use, Condition: m.wheel.Condition, Height: 2 * (of("radius") + of("tyre-thick")), Over: wheel.OverTyre,
		Tyre: wheel.Tyre{Wide: of("tyre-wide"), Thick: of("tyre-thick"), Bolt: a.tyreBolt(m)},
		Rim:  wheel.Rim{Felloes: m.wheel.Felloes, Deep: of("felloe-deep"), Gap: max(0, of("gap"))},
		Spokes: wheel.Spokes{
			Number: m.wheel.Spokes, Stagger: of("stagger"), FootWide: of("foot-wide"), FootThick: of("foot-thick"), FootLong: of("foot-long"),
			Square: of("square"), Wide: of("spoke-wide"), Thick: of("spoke-thick"), TipWide: of("tip-wide"), TipThick: of("tip-thick"),
			Tongue: wheel.Tongue{Thick: of("tongue"), Short: max(0, of("tongue-short"))},
		},
		Nave: wheel.Nave{
			Long: of("nave-long"), Diameter: of("nave"), Front: of("nave-front"), Back: of("nave-back"),
			Forward: of("nave-forward"), SeatLong: of("seat-long"),
		},
		Box: wheel.Box{
			Long: of("box-long"), Large: of("box-large"), Small: of("box-small"), Wall: of("box-wall"), In: max(0, of("box-in")),
		},
		Dish: wheel.Dish{Built: of("dish-built"), Tyred: of("dish"), On: wheel.Faces},
		Arm:  wheel.Arm{Long: of("arm-long"), AtCollar: of("arm-collar"), AtPoint: of("arm-point")},
	}
	if s.Spokes.Stagger != 0 {
		s.Nave.Seat = wheel.SeatSquare
	}
	if m.wheel.Part.Speaks("arm-fall") {
		s.Arm.Set = wheel.AsFound
		s.Arm.Cant = quantity.Angle(math.Asin(math.Max(-1, math.Min(1, float64(of("arm-fall")/s.Arm.Long)))))
	}
	if u := m.size("track"); u != none && a.fit.known(adjust.At(a.fit.X, u)) != quantity.Unknown {
		s.Track.Wide = of("track")
	}
	if f := a.felloeOf(m); f != nil {
		s.Rim.Dowel, s.Rim.DowelDeep, s.Rim.Eased = lengthOf(f, "dowel"), lengthOf(f, "dowel-deep"), lengthOf(f, "eased")
	}
	return s
}

func lengthOf(it *vehicle.Item, dimension string) quantity.Length {
	for _, d := range it.Sizes {
		if d.Name == dimension {
			return d.Value
		}
	}
	return 0
}

// felloeOf is the item that the survey's felloes of a wheel come to; nil where it names none.
func (a *assembly) felloeOf(m *member) *vehicle.Item {
	for _, it := range a.vehicle.Items {
		if it.ID == m.wheel.Felloe.ID && it.ID != "" {
			return it
		}
	}
	return nil
}

// tyreBolt is the diameter of a bolt through a wheel's tyre; 0 for none.
func (a *assembly) tyreBolt(m *member) quantity.Length {
	for _, f := range a.network.survey.Fastenings {
		for _, s := range f.Through {
			if s.Thing != "" && s.Thing == m.wheel.Tyre.ID {
				return f.Diameter
			}
		}
	}
	return 0
}

// tyreOf is the tyre that is left of this very wheel, not of its fellow.
func (a *assembly) tyreOf(m *member) *vehicle.Iron {
	t, ok := a.network.index.Find(m.wheel.Tyre.ID)
	if !ok {
		return nil
	}
	for _, i := range a.vehicle.Irons {
		o := a.network.byID[i.ID]
		if o == nil || o.base != t.ID() || i.Missing || t.Side != vehicle.Alike && o.hand != t.Side {
			continue
		}
		if o.hand == m.hand || o.hand == vehicle.Alike && m.hand == m.wheel.Of {
			return i
		}
	}
	return nil
}

// onAxle is a wheel's place on the end of its axle: its arm goes on from the
// middle of the axle's end, falling as the arm does. Nil where no axle is told of,
// or the axle has no place.
func (a *assembly) onAxle(m *member, made *wheel.Wheel) *vehicle.Place {
	axle := a.network.byID[m.wheel.Axle.ID]
	if axle == nil || !axle.placed() {
		return nil
	}
	side, out := wheel.NearSide, 1.
	if m.hand == vehicle.Off {
		side, out = wheel.OffSide, -1
	}
	pose := made.Pose(side, 0)
	x := a.fit.X
	end := axle.high(x, 1)
	if out < 0 {
		end = axle.low(x, 1)
	}
	in := m.of(x, "nave-long").Minus(m.of(x, "nave-forward")).Minus(m.of(x, "box-in"))
	p := &vehicle.Place{}
	for i, t := range []adjust.Term{axle.middle(x, 0), end, axle.middle(x, 2)} {
		p.At[i] = a.fit.size(t.Plus(in.Scaled([]float64{pose.Y.X, pose.Y.Y, pose.Y.Z}[i])))
		p.Axes[i] = array([]form.Dir{pose.X, pose.Y, pose.Z}[i])
		if p.At[i].Known == quantity.Unknown {
			return nil
		}
	}
	return p
}

func array(d form.Dir) [3]float64 { return [3]float64{d.X, d.Y, d.Z} }

// heightOver tells where it was not said what a height was measured over, and
// what the irons say of it.
func (a *assembly) heightOver(w *survey.Wheel) {
	if w.Over != survey.OverNotSaid || !w.Part.Speaks("height") {
		return
	}
	m := a.network.families[w.ID][0]
	if w.Of == vehicle.Off {
		m = a.network.families[w.ID][1]
	}
	var height quantity.Length
	for _, st := range w.Stated {
		if st.Terms[0].Feature == "height" {
			height = -st.Constant
		}
	}
	u := a.vehicle.Unit
	wood := m.of(a.fit.X, "radius").Scaled(2)
	tread := wood.Plus(m.of(a.fit.X, "tyre-thick").Scaled(2))
	apart := quantity.Format(quantity.Length(tread.Value-wood.Value), u)
	says := fmt.Sprintf("It is not said whether the height of the %s, %s, is over the tyre or of the wood; the two are %s apart.",
		lower(w.Name), quantity.Format(height, u), apart)
	offTyre, offWood := math.Abs(tread.Value-height.Millimetres()), math.Abs(wood.Value-height.Millimetres())
	concern := vehicle.Advice // its irons answer it
	switch doubt := 2 * a.fit.DoubtOf(wood); {
	case offTyre+3*doubt < offWood:
		says += " By its irons it is over the tyre."
	case offWood+3*doubt < offTyre:
		says += " By its irons it is of the wood."
	default:
		concern = vehicle.Open
		says += ` Nothing else tells, and the give or take holds both. Write over = "tyre" or over = "wood" once it is known.`
	}
	a.find(concern, w.ID, w.At.Line, says)
}

// closures tells of every closure that readings bear on, whether it closes and by
// how much it does not.
func (a *assembly) closures() error {
	all, err := a.network.misclosures(a.fit.X)
	if err != nil {
		return err
	}
	u := a.vehicle.Unit
	for _, c := range all {
		by := quantity.Format(quantity.Length(math.Abs(float64(c.by))), u)
		within := quantity.Format(c.doubt, u)
		if math.Abs(float64(c.by)) <= misclosed*float64(c.doubt) {
			a.find(vehicle.Advice, c.member.base, c.member.wheel.At.Line, fmt.Sprintf(
				"Of the %s %s close: they are %s apart, and may be off by %s.", lower(nameOf(c.member)), c.figures, by, within))
			continue
		}
		a.find(vehicle.Contradiction, c.member.base, c.member.wheel.At.Line, fmt.Sprintf(
			"Of the %s %s do not close: they are %s apart, where %s would do. One of %s is wrong, or the arm is bent; measure them again before any wood is cut.",
			lower(nameOf(c.member)), c.figures, by, within, list(c.tied())))
	}
	return nil
}

// tied are the figures with their lines that a closure ties together.
func (c closure) tied() []string {
	var out []string
	names := map[closureKind][]string{
		armInBox:   {"arm-collar", "arm-point", "box-large", "box-small"},
		plumbSpoke: {"arm-fall", "arm-long", "dish", "offset", "nave"},
		trackTrue:  {"track", "shoulders", "dish", "offset", "nave-long", "nave-forward", "box-in", "arm-fall"},
	}
	for _, name := range names[c.kind] {
		for _, st := range c.member.wheel.Stated {
			if st.Terms[0].Feature == name {
				out = append(out, fmt.Sprintf("%q (line %d)", st.Text, st.At.Line))
			}
		}
	}
	return out
}

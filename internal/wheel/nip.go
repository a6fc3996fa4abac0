package wheel

import (
	"fmt"
	"math"
)

// A Nip is what one author gives for how much smaller round its inside a tyre
// is to be than the wooden rim.
type Nip struct {
	For         string // "wagon, straight sound wheel"
	Least, Most Length
	Source      string
}

const (
	holmstromFirst  = "J. G. Holmstrom, Modern Blacksmithing (1901), chapter IV"
	holmstromSecond = "J. G. Holmstrom, his second book, Wagon and carriage tires"
	richardsonWagon = "M. T. Richardson (ed.), Practical Carriage Building I (1891), Wagon wheels 4"
	hasluckTyring   = "P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, Tyring cart wheels"
)

const inch Length = 25.4

// Nips are what the trade gives for a wheel of a use and condition; the one
// that is taken where nothing else is asked comes first.
func Nips(u Use, c Condition) []Nip {
	wagon, heavy := u == Wagon, u == HeavyWagon
	switch {
	case u == LightCart:
		return []Nip{{"light cart wheel", 3 * inch / 8, 3 * inch / 8, hasluckTyring}}
	case u == HeavyCart:
		return []Nip{{"large heavy cart wheel", 5 * inch / 4, 5 * inch / 4, hasluckTyring}}
	case u == Carriage && c == MuchDished:
		return []Nip{{"light wheel, much dished", 0, 0, holmstromSecond}}
	case u == Carriage:
		return []Nip{{"light wheel", 0, inch / 8, holmstromSecond}}
	case (wagon || heavy) && c != Sound:
		return []Nip{
			{"wagon, poor or dished wheel", 0, inch / 4, holmstromFirst},
			{"wagon, poor or dished wheel", 0, inch / 4, holmstromSecond},
			{"wagon, whatever its wheel", inch / 4, inch / 4, richardsonWagon},
		}
	case heavy:
		return []Nip{
			{"wagon, heavy and strong straight wheel", inch / 2, 5 * inch / 8, holmstromFirst},
			{"wagon, straight wheel, tyre 1/2 in thick", inch / 2, 3 * inch / 4, holmstromSecond},
			{"wagon, whatever its wheel", inch / 4, inch / 4, richardsonWagon},
		}
	}
	return []Nip{
		{"wagon, straight sound wheel", inch / 2, inch / 2, holmstromFirst},
		{"wagon, straight wheel, tyre 1/2 in thick", inch / 2, 3 * inch / 4, holmstromSecond},
		{"wagon, whatever its wheel", inch / 4, inch / 4, richardsonWagon},
	}
}

// Nip is what the tyre is to be smaller by: as asked, or the most of the first rule.
func (w *Wheel) Nip() Length {
	if w.Spec.Tyre.Nip != 0 {
		return w.Spec.Tyre.Nip
	}
	return Nips(w.Spec.Use, w.Spec.Condition)[0].Most
}

// Iron, in the cold and the heat. From memory: wrought iron and mild steel
// yield near 220 MPa, stretch by their stress over 200 GPa until then, and grow
// by 12 millionths for each degree.
const (
	yieldStrain = 220e6 / 200e9
	growth      = 12e-6
	shopHeat    = 20  // degrees Celsius
	fullRed     = 750 // degrees Celsius: hotter, it scales and chars the wood (common practice, no source)
)

// Stretch is how much a tyre of a girth can be stretched before it yields.
func Stretch(girth Length) Length { return Length(yieldStrain * float64(girth)) }

// A Closing is what becomes of the nip when the tyre has shrunk on.
type Closing struct {
	Nip     Length // the tyre smaller than the rim by so much, round
	Stretch Length // of it the tyre can take up before it yields
	Needed  Length // the rest: the joints and shoulders have to close so much
	Joints  Length // what all open joints together can close
	Short   Length // what the joints cannot give: it comes from the shoulders, or the iron yields; 0 for none
	// Spare is what the joints stay open by, all together, when the tyre is cold; 0 for none.
	Spare Length
	// DishByJoints is the dish, as the Spec measures it, that closing the joints
	// would bring if no spoke shortens or sinks.
	DishByJoints Length
}

// Closing is what becomes of the wheel's nip.
func (w *Wheel) Closing() Closing {
	c := Closing{Nip: w.Nip(), Joints: w.Felloe().GapsTogether}
	c.Stretch = Stretch(w.Girths(Built).Middle - c.Nip)
	c.Needed = max(0, c.Nip-c.Stretch)
	c.Short, c.Spare = max(0, c.Needed-c.Joints), max(0, c.Joints-c.Nip)
	run, dish := w.belly[Built]-w.seat, w.stands[Built]
	in := run - float64(c.Joints)/(2*math.Pi)
	after := math.Sqrt(max(0, run*run+dish*dish-in*in))
	c.DishByJoints = Length(after)
	if w.Spec.Dish.On == Faces {
		c.DishByJoints = w.Spec.onFaces(c.DishByJoints)
	}
	return c
}

// JointsFor is how much all joints together are to stand open before the tyre
// is on, for a dish to come from one to another as the rim is drawn in, if no
// spoke shortens or sinks. Dishes are from middle to middle, and run is the way
// from the nave to the belly before.
func JointsFor(run, built, tyred Length) Length {
	r, b, t := float64(run), float64(built), float64(tyred)
	left := r*r + b*b - t*t
	if !(left >= 0) {
		return Length(math.NaN())
	}
	return Length(2 * math.Pi * (r - math.Sqrt(left)))
}

// A Heat is how hot a tyre has to be to go over its wheel.
type Heat struct {
	Rise float64 // in degrees Celsius
	Heat float64 // in degrees Celsius, from a shop at 20
}

// HeatFor is the heat a tyre wants, by its girth inside, its nip and how much
// wider than the rim, across, it is to be when it goes on.
func HeatFor(girth, nip, clear Length) Heat {
	rise := (float64(nip) + math.Pi*float64(clear)) / (growth * float64(girth))
	return Heat{rise, shopHeat + rise}
}

// Clear is how much wider than the rim, across, a hot tyre is to be so that it
// drops on (common practice, no source).
const Clear = inch / 8

// Heat is what the wheel's tyre wants.
func (w *Wheel) Heat() Heat { return HeatFor(w.Girths(Built).Middle-w.Nip(), w.Nip(), Clear) }

func (w *Wheel) checkNip(l *limits) {
	girth, nip := w.Girths(Built).Middle, w.Spec.Tyre.Nip
	if nip == 0 {
		return
	}
	l.need("nip", nip, 0, girth/2, "a tyre is never larger than its wheel")
	if !l.sound() {
		return
	}
	most := Length(growth*(fullRed-shopHeat)) * girth
	if heat := w.Heat(); nip > most {
		l.tell("nip", fmt.Sprintf("the tyre is %s smaller round than its wheel, whose girth is %s: it would have to be %.0f degrees C hot to go on, and at a full red, %d degrees, iron has grown by %s; cold, it could take up %s before it yields",
			told(nip), told(girth), heat.Heat, fullRed, told(most), told(Stretch(girth-nip))))
	}
}

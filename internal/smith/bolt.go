package smith

import (
	"fmt"
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// unsure is the give or take of a grip beyond which a bolt is not to be bought yet:
// lengths are sold in quarters of an inch.
const unsure = inch / 8

// fastened is the bolt or clip that a fastening wants.
func fastened(v *vehicle.Vehicle, f *vehicle.Fastening) *Piece {
	p := &Piece{NumberOff: 1, Of: []string{f.Title}, Fits: through(v, f)}
	if !(f.Grip.Value > 0) || f.Grip.Known == quantity.Unknown {
		p.Open = append(p.Open, "what it goes through is not known, and so neither is its length")
	}
	switch {
	case f.What == "clip":
		clip(p, v, f)
	case f.What == "screw":
		p.Work, p.Name, p.Stock = Bolt, "Wood screw", "diameter "+quantity.Format(f.Diameter, v.Unit)
		p.Notes = append(p.Notes, "long enough to hold in the last timber it enters, and no longer: choose it when the parts are offered up")
	default:
		boltOf(p, v, f)
	}
	return p
}

// washers is what lies between nut and the last thing: a wide washer on wood, none on iron.
func washers(v *vehicle.Vehicle, f *vehicle.Fastening) (thick Length, words string) {
	last := f.Through[len(f.Through)-1]
	if last.Hole > 0 || isIron(v, last.ID) {
		return 0, "its nut bears on iron: no washer"
	}
	w, source := bolt.Washer(f.Diameter, bolt.Wide)
	if source == bolt.Unlisted {
		return f.Diameter / 4, "a wide washer under its nut, on the wood; no table lists one: a quarter of the bolt is reckoned"
	}
	return w.Limits.Max, fmt.Sprintf("a wide washer under its nut, on the wood: %s across, up to %s thick (ASME B18.21.1)",
		quantity.Format(w.Outside, v.Unit), quantity.Format(w.Limits.Max, v.Unit))
}

func isIron(v *vehicle.Vehicle, id string) bool {
	for _, i := range v.Irons {
		if i.ID == id {
			return true
		}
	}
	return false
}

// boltOf works out a bolt: what it clasps, its washer, its nut and one thread past
// it, rounded up to a length that is sold.
func boltOf(p *Piece, v *vehicle.Vehicle, f *vehicle.Fastening) {
	d := f.Diameter
	p.Work, p.Stock = Bolt, "round "+quantity.Format(d, v.Unit)
	p.Name = "Bolt, square or hexagon head"
	if f.Hardware.Head == vehicle.SquareNeck {
		p.Name = "Carriage bolt, square neck"
	}
	if f.What == "rivet" {
		p.Name = "Rivet"
	}
	p.Sizes = []vehicle.Dimension{{Name: "diameter", Size: quantity.Size{Value: d}}}
	if len(p.Open) > 0 {
		return
	}
	if f.What == "rivet" {
		rivet(p, v, f)
		return
	}
	washer, words := washers(v, f)
	nut, _ := bolt.Nut(d, bolt.SquareNut)
	thick := nut.Thickness
	if thick == 0 {
		thick = d
		p.Notes = append(p.Notes, "no table lists a square nut of this diameter: one as thick as the bolt is reckoned")
	}
	thread, source := bolt.OneThread(d, bolt.American)
	if source == bolt.Unlisted {
		thread = d / 6
	}
	p.Sum = []Addend{{"what it clasps", f.Grip.Value}, {"washer", washer}, {"nut", thick}, {"one thread past it", thread}}
	need := bolt.Need(f.Grip.Value, washer, thick, thread)
	stock, err := bolt.StockLength(need)
	if err != nil {
		p.Open = append(p.Open, "no bolt is sold so long: "+err.Error())
		return
	}
	p.Cut = stock
	p.Sum = append(p.Sum, Addend{"rounded up to a length that is sold", stock - need})
	cut := bolt.ThreadNeeded(stock, f.Grip.Value, washer)
	p.Sizes = append(p.Sizes,
		vehicle.Dimension{Name: "under the head", Size: quantity.Size{Value: stock, Doubt: f.Grip.Doubt, Known: f.Grip.Known}},
		vehicle.Dimension{Name: "thread, at the least", Size: quantity.Size{Value: cut}})
	if f.Grip.Doubt > unsure {
		p.Open = append(p.Open, "what it clasps is known only to "+quantity.Format(f.Grip.Doubt, v.Unit)+": measure it when the parts are offered up, before it is bought")
	}
	p.Notes = append(p.Notes, words)
	if standard, s := bolt.ThreadLength(d, stock); s != bolt.Unlisted && standard < cut {
		p.Notes = append(p.Notes, fmt.Sprintf("bolts are sold with %s of thread: have it cut longer", quantity.Format(standard, v.Unit)))
	}
	if f.Hardware.Sunk > 0 {
		p.Notes = append(p.Notes, "its head lies in a counterbore "+quantity.Format(f.Hardware.Sunk, v.Unit)+" deep: see that it enters")
	}
	p.Each = boltMass(d, stock, f.Hardware.Head, thick, nut.Across)
}

// boltMass is of a shank, a head and a nut: a square head 1 1/2 D + 1/8 in over its
// flats and D thick (Sellers, rough), or the dome of a carriage bolt.
func boltMass(d, long Length, head vehicle.HeadShape, nutThick, nutAcross Length) quantity.Mass {
	area := math.Pi / 4 * float64(d*d)
	volume := area * float64(long)
	if nutAcross > 0 {
		volume += (float64(nutAcross*nutAcross) - area) * float64(nutThick)
	}
	if head == vehicle.SquareNeck {
		across, high, _ := bolt.Head(d)
		r, h := float64(across.Middle())/2, float64(high.Middle())
		volume += math.Pi * h / 6 * (3*r*r + h*h) // a cap of a ball
	} else {
		side := float64(1.5*d + inch/8)
		volume += side * side * float64(d)
	}
	return Iron.Mass(quantity.Volume(volume))
}

// rivet adds to its grip what forms its head: one and a half diameters (common
// practice, no source).
func rivet(p *Piece, v *vehicle.Vehicle, f *vehicle.Fastening) {
	head := 3 * f.Diameter / 2
	p.Sum = []Addend{{"what it clasps", f.Grip.Value}, {"to form the head, 1 1/2 diameters", head}}
	p.Cut = f.Grip.Value + head
	p.Each = Iron.Mass(quantity.Volume(math.Pi / 4 * float64(f.Diameter*f.Diameter*p.Cut)))
	p.Notes = append(p.Notes, "over a washer where its tail bears on wood")
}

// clip works out a clip: a bar bent square round a timber, a thread on either leg.
// Its bar is not told by its fastening; the holes it passes tell it.
func clip(p *Piece, v *vehicle.Vehicle, f *vehicle.Fastening) {
	p.Work, p.Name = Clip, "Clip"
	inside, d := f.Hardware.Inside, f.Diameter
	p.Sizes = []vehicle.Dimension{{Name: "between its legs", Size: quantity.Size{Value: inside}}}
	if d == 0 {
		d = clipBar(inside)
		p.Notes = append(p.Notes, "the thickness of its bar was not read: "+quantity.Format(d, v.Unit)+" is reckoned, a sixth of its width and no less than 3/8 in (common practice, no source); take the others' if any survive")
	}
	p.Stock = "round " + quantity.Format(d, v.Unit)
	if len(p.Open) > 0 || !(inside > 0) {
		return
	}
	nut, _ := bolt.Nut(d, bolt.SquareNut)
	thread, _ := bolt.OneThread(d, bolt.American)
	leg := f.Grip.Value + nut.Thickness + thread
	r := d / 2 // inside radius of the corners, so that the wood needs no more than its chamfer
	p.Sizes = append(p.Sizes, vehicle.Dimension{Name: "legs, inside", Size: quantity.Size{Value: leg, Doubt: f.Grip.Doubt, Known: f.Grip.Known}})
	b := Allowance(Quarter, r, d)
	p.Sum = []Addend{{"across the top, between the bends", inside - 2*r}, {"two legs, below the bends", 2 * (leg - r)}, {"two bends, square, " + quantity.Format(r, v.Unit) + " inside", 2 * b}}
	for _, a := range p.Sum {
		p.Cut += a.Value
	}
	p.Each = Iron.Mass(quantity.Volume(math.Pi / 4 * float64(d*d*p.Cut)))
}

func clipBar(inside Length) Length {
	eighths := math.Max(3, math.Round(float64(inside/6/(inch/8))))
	return Length(eighths) * inch / 8
}

// through says what a fastening goes through, head first.
func through(v *vehicle.Vehicle, f *vehicle.Fastening) []string {
	var out []string
	for _, s := range f.Through {
		out = append(out, called(v, s.ID))
	}
	return out
}

// called is what people say for an id.
func called(v *vehicle.Vehicle, id string) string {
	for _, p := range v.Parts {
		if p.ID == id {
			return lower(p.Name)
		}
	}
	for _, i := range v.Irons {
		if i.ID == id {
			return lower(i.Name)
		}
	}
	return id
}

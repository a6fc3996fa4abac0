package smith

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// weld is what a scarfed weld takes of a bar: about 5/8 in (Hasluck, Tyring cart wheels).
const weld = 5 * inch / 8

// ironwork is an iron that is missing, as a piece to make.
func ironwork(v *vehicle.Vehicle, i *vehicle.Iron) *Piece {
	p := &Piece{NumberOff: 1, Name: i.Name, Of: []string{i.Name}, Sizes: i.Sizes, Steps: i.Steps, Fits: fits(v, i)}
	if i.Note != "" {
		p.Notes = append(p.Notes, i.Note)
	}
	switch i.Kind {
	case "axle", "spring":
		p.Work, p.Stock = Maker, "as the maker has it"
		p.Open = append(p.Open, unknown(i)...)
		p.Notes = append(p.Notes, "send these sizes and what it must fit; settle what it is to carry with someone competent")
	case "band", "ring":
		p.Work = Round
		hoop(p, v, i, weld, "for the weld, 5/8 in (Hasluck)")
	case "tyre":
		p.Work = Tyre
		tyre(p, v, i)
	default:
		p.Work = Plate
		flat(p, v, i)
	}
	return p
}

func size(i *vehicle.Iron, name string) quantity.Size {
	for _, d := range i.Sizes {
		if d.Name == name {
			return d.Size
		}
	}
	return quantity.Size{Known: quantity.Unknown, Doubt: Length(math.Inf(1))}
}

// unknown lists the sizes that nothing tells.
func unknown(i *vehicle.Iron) []string {
	var out []string
	for _, d := range i.Sizes {
		if d.Known == quantity.Unknown {
			out = append(out, fmt.Sprintf("how %s it is, nothing tells", d.Name))
		}
	}
	for k, h := range i.Holes {
		if h.Known == quantity.Unknown {
			out = append(out, fmt.Sprintf("where its hole %d stands, nothing tells: drill it when the parts are offered up", k+1))
		}
	}
	return out
}

// flat is a strap, plate, stay, hinge, rail or socket of flat bar.
func flat(p *Piece, v *vehicle.Vehicle, i *vehicle.Iron) {
	long, wide, thick := size(i, "long"), size(i, "wide"), size(i, "thick")
	p.Stock = fmt.Sprintf("flat %s by %s", spoken(wide, v.Unit), spoken(thick, v.Unit))
	p.Open = unknown(i)
	for k, at := range i.Holes {
		p.Holes = append(p.Holes, holeFor(v, i, k+1, at))
	}
	if long.Known == quantity.Unknown {
		return
	}
	p.Sum = []Addend{{"end to end", long.Value}}
	for k, s := range i.Steps {
		p.Sum = append(p.Sum, Addend{fmt.Sprintf("crank %d, %s, set at 45 degrees", k+1, quantity.Format(Length(math.Abs(float64(s.By))), v.Unit)), Crank(s.By)})
	}
	if i.Kind == "hinge" {
		knuckle := hinged(thick.Value)
		p.Sum = append(p.Sum, Addend{"to roll the knuckle round a pin twice as thick as the bar", knuckle})
		p.Notes = append(p.Notes, "the knuckle's pin is not told by the survey: see that it matches what it turns on")
	}
	for _, a := range p.Sum {
		p.Cut += a.Value
	}
	if wide.Known == quantity.Unknown || thick.Known == quantity.Unknown {
		return
	}
	volume := float64(p.Cut * wide.Value * thick.Value)
	for _, h := range p.Holes {
		volume -= h.area() * float64(thick.Value)
	}
	p.Each = Iron.Mass(quantity.Volume(volume))
}

// hinged is the bar that a knuckle takes: once round a pin twice as thick as it.
func hinged(thick Length) Length { return Hoop(2*thick, thick) }

func (h Hole) area() float64 {
	if h.Square {
		return float64(h.Diameter * h.Diameter)
	}
	return math.Pi / 4 * float64(h.Diameter*h.Diameter)
}

// holeFor is the hole of an iron: as wide as its bolt and the least play.
func holeFor(v *vehicle.Vehicle, i *vehicle.Iron, number int, at quantity.Size) Hole {
	h := Hole{At: at}
	for _, f := range v.Fastenings {
		k := slices.IndexFunc(f.Through, func(s vehicle.Stop) bool { return s.ID == i.ID && s.Hole == number })
		if k < 0 {
			continue
		}
		h.Diameter, h.For = bolt.Hole(f.Diameter), f.Title
		if k == 0 && f.Hardware.Head == vehicle.SquareNeck {
			h.Square = true
		}
		return h
	}
	h.For = "nothing in the survey goes through it"
	return h
}

// hoop is a band or ring: its bar's middle line, and what joins it.
func hoop(p *Piece, v *vehicle.Vehicle, i *vehicle.Iron, join Length, why string) {
	radius, wide, thick := size(i, "radius"), size(i, "wide"), size(i, "thick")
	p.Stock = fmt.Sprintf("flat %s by %s", spoken(wide, v.Unit), spoken(thick, v.Unit))
	p.Open = unknown(i)
	if len(p.Open) > 0 {
		return
	}
	p.Sum = []Addend{{"round its inside", 2 * math.Pi * radius.Value}, {"pi thicknesses, for the bending", math.Pi * thick.Value}, {why, join}}
	for _, a := range p.Sum {
		p.Cut += a.Value
	}
	p.Each = Iron.Mass(quantity.Volume(float64(Hoop(2*radius.Value, thick.Value) * wide.Value * thick.Value)))
	p.Notes = append(p.Notes, "made to go on hot, a little smaller than its place: turn or file the wood to the band as made")
}

// fits says what an iron must fit: what its bolts go through beside it.
func fits(v *vehicle.Vehicle, i *vehicle.Iron) []string {
	var out []string
	for _, f := range v.Fastenings {
		for k, s := range f.Through {
			if s.ID != i.ID {
				continue
			}
			for _, n := range []int{k - 1, k + 1} {
				if n >= 0 && n < len(f.Through) && f.Through[n].ID != i.ID {
					out = merged(out, []string{called(v, f.Through[n].ID)})
				}
			}
		}
	}
	return out
}

func spoken(s quantity.Size, u quantity.Unit) string {
	if s.Known == quantity.Unknown {
		return quantity.NotKnown
	}
	return quantity.Format(s.Value, u)
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// Package smith lists the iron that is missing: bolts to buy or forge with their
// lengths worked out, straps and plates with their holes and the length to cut,
// bent work with its developed length, rings, tyre bars, and what each weighs.
//
// Lengths are of cold iron. Nothing here judges what an iron must carry: that is
// for local codes and those licensed to judge it.
package smith

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Length is a distance in millimetres.
type Length = quantity.Length

const inch Length = 25.4

// Iron is the density that masses are worked out with: wrought iron lies near
// 7700, mild steel near 7850 (both from memory); the heavier is taken.
const Iron quantity.Density = 7850

// A Work is how a piece is come by.
type Work int

// The works, in the order of the list.
const (
	Bolt  Work = iota // bought, or forged with a head
	Clip              // a bar bent round a timber, with a thread on either leg
	Plate             // flat: straps, plates, stays, hinges, rails
	Round             // bands and rings, welded or riveted
	Tyre
	Maker // what a smith sends for: axles, springs
)

// String is the word in lists.
func (w Work) String() string {
	return [...]string{"bolt", "clip", "flat work", "ring", "tyre", "from a maker"}[w]
}

// A Piece is one distinct iron to make or buy.
type Piece struct {
	Number    int // from 1
	Name      string
	Work      Work
	NumberOff int
	Of        []string // what it is, each: "near hinge", "4 near: reach to bolster"
	Stock     string   // "round 1/2 in", "flat 2 by 3/16 in"
	Sizes     []vehicle.Dimension
	Holes     []Hole
	Steps     []vehicle.Step
	// Cut is the length of bar to cut; Sum says how it comes about. Of a bolt to
	// buy it is the length under the head.
	Cut   Length
	Sum   []Addend
	Rules []Rule // of a tyre: what each author's rule gives
	Each  quantity.Mass
	Fits  []string // what it must fit
	Open  []string // what is not known, and must be settled first
	Notes []string
}

// An Addend is one of the pieces a length is summed from.
type Addend struct {
	What  string
	Value Length
}

// A Rule is the length of a bar by one author's rule.
type Rule struct {
	Name, Source string
	Cut          Length
}

// A Hole is one hole of a piece, from its first end on its middle line.
type Hole struct {
	At       quantity.Size
	Diameter Length
	Square   bool // for a bolt's square neck
	For      string
}

// A List is all the iron that a vehicle wants.
type List struct {
	Vehicle  *vehicle.Vehicle
	Pieces   []*Piece
	Cautions []string
}

// Of lists what a vehicle wants of the smith.
func Of(v *vehicle.Vehicle) *List {
	l := &List{Vehicle: v, Cautions: cautions()}
	var all []*Piece
	for _, f := range v.Fastenings {
		if f.Hardware.Missing {
			all = append(all, fastened(v, f))
		}
	}
	for _, i := range v.Irons {
		if i.Missing {
			all = append(all, ironwork(v, i))
		}
	}
	l.Pieces = alike(all)
	for n, p := range l.Pieces {
		p.Number = n + 1
	}
	return l
}

// alike puts pieces that are made the same into one, in the order of their works.
func alike(all []*Piece) []*Piece {
	var out []*Piece
	by := map[string]*Piece{}
	for _, p := range all {
		k := p.key()
		if first := by[k]; first != nil {
			first.NumberOff += p.NumberOff
			first.Of = append(first.Of, p.Of...)
			first.Fits = merged(first.Fits, p.Fits)
			continue
		}
		by[k] = p
		out = append(out, p)
	}
	slices.SortStableFunc(out, func(a, b *Piece) int {
		return cmp.Or(cmp.Compare(a.Work, b.Work), cmp.Compare(a.Stock, b.Stock), cmp.Compare(b.Cut, a.Cut))
	})
	return out
}

// key is the same for pieces that are made the same, to a tenth of a millimetre.
func (p *Piece) key() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d|%s|%s|%.1f", p.Work, p.family(), p.Stock, p.Cut)
	for _, h := range p.Holes {
		fmt.Fprintf(&b, "|%.1f %.1f %v", h.At.Value, h.Diameter, h.Square)
	}
	for _, s := range p.Steps {
		fmt.Fprintf(&b, "|%.1f %.1f", s.At, s.By)
	}
	for _, d := range p.Sizes {
		fmt.Fprintf(&b, "|%s %.1f %d", d.Name, d.Value, d.Known)
	}
	return b.String() + strings.Join(p.Open, "|")
}

// family is a name that two of a pair share, but for handed work.
func (p *Piece) family() string {
	if p.Work == Bolt || p.Work == Clip {
		return ""
	}
	name := strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(p.Name), "near "), "off ")
	if len(p.Steps) > 0 { // a crank is handed: it stands out to its own side
		return strings.ToLower(p.Name)
	}
	return name
}

func merged(a, b []string) []string {
	for _, s := range b {
		if !slices.Contains(a, s) {
			a = append(a, s)
		}
	}
	return a
}

// Mass is what all of a piece weigh together.
func (p *Piece) Mass() quantity.Mass { return p.Each * quantity.Mass(p.NumberOff) }

func cautions() []string {
	return []string{
		"Hot iron burns through black as well as red: wear leather, eye and foot protection, and keep water and an extinguisher by; hot scale flies.",
		"Galvanised, plated or painted iron gives off poisonous fume in the fire, old paint often lead: strip it first, and draw the fume off.",
		"Quenched cast iron and hollow work can burst. Never heat a closed hollow.",
		"Tyres are set by people who know the work, outdoors, with help, clear ground and water ready.",
		"What carries load or brakes, and any weld in it, is to be judged by someone competent, and by the local rules for vehicles on roads.",
		"Measure the first of each against the irons and the wood before making the rest.",
	}
}

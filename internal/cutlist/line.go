package cutlist

import (
	"errors"
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Size is a piece of wood: along the grain, and across it the greater extent
// and the lesser.
type Size struct {
	Long, Wide, Thick quantity.Length
}

// A Line is what one item of the vehicle comes to. Volumes and masses are of
// one piece.
type Line struct {
	Item     *vehicle.Item
	Wood     timber.Species
	Making   parts.Making
	Rings    timber.Rings
	Finished Size // the box of the finished part, in service; of a bend, over its bends
	Blank    Size // the least squared stock that holds it, in service; of a bend, straightened
	Worked   Size // what that stock must measure on the day it is worked, dressed
	Sawn     Size // as bought; the width is that of all its boards together
	Green    Size // what it would be sawn to green; nothing where that is not known
	Boards   int  // side by side in one piece; more than one where it is jointed up
	Stock    Stock
	Bought   quantity.Volume // of the boards bought for one piece, without waste
	Waste    float64         // bought over that, as a part of it
	Mass     Mass            // of the finished part, in service
	Rough    Mass            // of the boards bought for one piece, as bought
	ToMake   bool            // false where it is made already, or left open
}

// A Mass is a mass, or none where the wood's density is not known.
type Mass struct {
	Known bool
	quantity.Mass
}

// line works out one item. Its error is of package timber.
func (l *List) line(it *vehicle.Item, woods timber.Catalogue) (Line, error) {
	wood, err := woods.Find(it.Timber)
	if err != nil {
		return Line{}, err
	}
	blank := it.Stick.Body.Blank()
	out := Line{
		Item: it, Wood: wood, Making: blank.Making, Rings: l.settings.rings(it),
		Finished: sizeOf(it.Stick.Body.Box()),
		Blank:    sizeOf(blank.Long, blank.Wide, blank.Deep),
		Waste:    l.Allowances.waste(blank.Making),
		ToMake:   it.Status < vehicle.Made,
	}
	m := l.vehicle.Moisture
	if err := out.saw(l.Allowances, m); err != nil {
		return Line{}, err
	}
	atBought, err := out.enlarged(thin, out.Worked.Thick, out.Blank.Thick, worked(m), m.Bought)
	if err != nil {
		return Line{}, err
	}
	stock := l.settings.Stock
	if len(stock) == 0 {
		stock = ofTheTrade(l.vehicle.Unit)
	}
	out.Stock = stockFor(atBought, out.Sawn.Thick, stock, l.vehicle.Unit)
	kerf := l.Allowances.Kerf
	out.Bought = (out.Sawn.Long + kerf).Times(out.Sawn.Wide + quantity.Length(out.Boards)*kerf).Deep(out.Stock.Rough)
	out.Mass, err = massOf(wood, parts.Net(it.Stick), m.Service)
	if err != nil {
		return Line{}, err
	}
	out.Rough, err = massOf(wood, out.Bought, m.Bought)
	return out, err
}

// sizeOf sorts the two extents across the grain.
func sizeOf(long, wide, deep quantity.Length) Size {
	return Size{long, max(wide, deep), min(wide, deep)}
}

// A way is one of the three of a piece.
type way int

const (
	along way = iota
	broad
	thin
)

// resize carries a size of the piece from one moisture to another.
func (n *Line) resize(w way, size quantity.Length, from, to quantity.Moisture) (quantity.Length, error) {
	switch w {
	case along:
		return n.Wood.Resize(size, from, to, timber.Lengthwise)
	case broad:
		return n.Wood.ResizeAs(size, from, to, n.Rings, timber.Broad)
	}
	return n.Wood.ResizeAs(size, from, to, n.Rings, timber.Thin)
}

// saw works out the worked and the sawn size and the number of boards: the
// finished size is carried to the moisture of the day it is worked, allowances
// are added, and the whole is carried to the moisture the wood is bought at.
func (n *Line) saw(a Allowances, m vehicle.Moisture) error {
	var faults [3]error
	n.Worked.Long, faults[0] = n.workedTo(along, n.Blank.Long, m)
	n.Worked.Wide, faults[1] = n.workedTo(broad, n.Blank.Wide, m)
	n.Worked.Thick, faults[2] = n.workedTo(thin, n.Blank.Thick, m)
	for _, err := range faults {
		if err != nil {
			return err
		}
	}
	n.Boards = 1
	var err error
	n.Sawn, err = n.sawn(a, worked(m), m.Bought)
	for err == nil && n.Making == parts.Squared && n.Sawn.Wide > a.WidestBoard*quantity.Length(n.Boards) {
		n.Boards++
		n.Sawn, err = n.sawn(a, worked(m), m.Bought)
	}
	if err != nil {
		return err
	}
	// Above every saturation there is. A wood of which only its movement in service is
	// known has no green size.
	const soaked = 40
	if g, err := n.sawn(a, worked(m), max(soaked, m.Bought)); err == nil {
		n.Green = g
	}
	return nil
}

// sawn is the size at a moisture of stock that comes to the worked size.
func (n *Line) sawn(a Allowances, from, to quantity.Moisture) (s Size, err error) {
	trim, joint := 2*a.trimming(n.Making), 2*quantity.Length(n.Boards)*a.Jointing
	var faults [3]error
	s.Long, faults[0] = n.enlarged(along, n.Worked.Long+trim, n.Blank.Long+trim, from, to)
	s.Wide, faults[1] = n.enlarged(broad, n.Worked.Wide+joint, n.Blank.Wide+joint, from, to)
	s.Thick, faults[2] = n.enlarged(thin, n.Worked.Thick+2*a.Planing, n.Blank.Thick+2*a.Planing, from, to)
	for _, err := range faults {
		if err != nil {
			return Size{}, err
		}
	}
	return s, nil
}

// workedTo is a size on the day it is worked. Where the wood is to be worked
// drier than it is kept, and it is not known how the rings lie, nothing is
// taken off for the swelling: it may be the lesser.
func (n *Line) workedTo(w way, size quantity.Length, m vehicle.Moisture) (quantity.Length, error) {
	s, err := n.resize(w, size, m.Service, worked(m))
	if w != along && n.Rings.Lie == timber.RingsNotKnown {
		s = max(s, size)
	}
	return s, err
}

// enlarged carries a size from one moisture to another. Wood bought drier than it
// is worked or kept will swell: nothing is taken off for that, so that no sawn size is
// below the finished one.
func (n *Line) enlarged(w way, size, least quantity.Length, from, to quantity.Moisture) (quantity.Length, error) {
	s, err := n.resize(w, size, from, to)
	return max(s, size, least), err
}

// massOf returns the mass of v at a moisture, measured there, and none where
// the wood's density is not known.
func massOf(wood timber.Species, v quantity.Volume, at quantity.Moisture) (Mass, error) {
	m, _, err := wood.Mass(v, at)
	if _, missing := errors.AsType[*timber.NoFigureError](err); missing {
		return Mass{}, nil
	}
	return Mass{err == nil && m > 0 && !math.IsInf(float64(m), 0), m}, err
}

// pieces is how many boards the line calls for in all.
func (n Line) pieces() int { return n.Item.NumberOff * n.Boards }

// all is the boards bought for the whole line, without waste.
func (n Line) all() quantity.Volume { return n.Bought * quantity.Volume(n.Item.NumberOff) }

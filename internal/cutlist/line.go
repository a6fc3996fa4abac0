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
	Finished Size // the box of the finished part, in service; of a bend, over its bends
	Blank    Size // the least squared stock that holds it, in service; of a bend, straightened
	Sawn     Size // as bought; the width is that of all its boards together
	Boards   int  // side by side in one piece; more than one where it is jointed up
	Stock    Stock
	Bought   quantity.Volume // of the boards bought for one piece, without waste
	Waste    float64         // bought over that, as a part of it
	Mass     Mass            // of the finished part, in service
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
		Item: it, Wood: wood, Making: blank.Making,
		Finished: sizeOf(it.Stick.Body.Box()),
		Blank:    sizeOf(blank.Long, blank.Wide, blank.Deep),
		Waste:    l.Allowances.waste(blank.Making),
		ToMake:   it.Status < vehicle.Made,
	}
	m := l.vehicle.Moisture
	if err := out.saw(l.Allowances, m); err != nil {
		return Line{}, err
	}
	atBought, err := enlarged(wood, out.Blank.Thick, m, timber.Worst)
	if err != nil {
		return Line{}, err
	}
	out.Stock = stockFor(atBought, out.Sawn.Thick, l.vehicle.Unit)
	out.Bought = out.Sawn.Long.Times(out.Sawn.Wide).Deep(out.Stock.Rough)
	out.Mass, err = massOf(wood, parts.Net(it.Stick), m.Service)
	if err != nil {
		return Line{}, err
	}
	// The yard's list weighs it as bought.
	_, err = massOf(wood, out.Bought, m.Bought)
	return out, err
}

// sizeOf sorts the two extents across the grain.
func sizeOf(long, wide, deep quantity.Length) Size {
	return Size{long, max(wide, deep), min(wide, deep)}
}

// saw works out the sawn size and the number of boards. Allowances are
// added to the size in service, and the whole is carried to the moisture the
// wood is bought at.
func (n *Line) saw(a Allowances, m vehicle.Moisture) error {
	long, err := enlarged(n.Wood, n.Blank.Long+2*a.trimming(n.Making), m, timber.Lengthwise)
	if err != nil {
		return err
	}
	thick, err := enlarged(n.Wood, n.Blank.Thick+2*a.Planing, m, timber.Worst)
	if err != nil {
		return err
	}
	wide := func(boards int) (quantity.Length, error) {
		return enlarged(n.Wood, n.Blank.Wide+2*quantity.Length(boards)*a.Jointing, m, timber.Worst)
	}
	n.Boards = 1
	w, err := wide(n.Boards)
	for err == nil && n.Making == parts.Squared && w > a.WidestBoard*quantity.Length(n.Boards) {
		n.Boards++
		w, err = wide(n.Boards)
	}
	n.Sawn = Size{long, w, thick}
	return err
}

// enlarged carries a size from service to the moisture the wood is bought at.
// Wood bought drier than it is kept will swell: nothing is taken off for
// that, so that no sawn size is below the finished one.
func enlarged(wood timber.Species, size quantity.Length, m vehicle.Moisture, d timber.Direction) (quantity.Length, error) {
	s, err := wood.Resize(size, m.Service, m.Bought, d)
	return max(s, size), err
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

package cutlist

import (
	"cmp"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// A Stock is the thickness to buy.
type Stock struct {
	timber.Nominal
	Kept Keeping
}

// Keeping says whether yards have a thickness.
type Keeping int

// Whether a thickness is to be had.
const (
	InStock Keeping = iota
	ToOrder         // thicker than yards stock: sawn to order, or built up
)

// ofTheTrade are the thicknesses that yards keep.
func ofTheTrade(unit quantity.Unit) []timber.Nominal {
	if imperial(unit) {
		return timber.Stock(timber.Quarters)
	}
	return timber.Stock(timber.Metric)
}

// stockFor returns the thinnest stock that dresses to a thickness and is no
// thinner than the sawn size, both as bought. Where the yard has none it is the
// sawn size, up to the next quarter inch or 5 mm, to order.
func stockFor(dressed, sawn quantity.Length, stock []timber.Nominal, unit quantity.Unit) Stock {
	stock = slices.Clone(stock)
	slices.SortStableFunc(stock, func(a, b timber.Nominal) int { return cmp.Compare(a.Rough, b.Rough) })
	for _, n := range stock {
		if notUnder(n.Planed, dressed) && notUnder(n.Rough, sawn) {
			return Stock{n, InStock}
		}
	}
	step := 5 * quantity.Millimetre
	if imperial(unit) {
		step = quantity.Inch / 4
	}
	rough := roundUp(sawn, step)
	return Stock{timber.Nominal{
		Name: named(rough, unit), Rough: rough, Planed: rough - (sawn - dressed), Charged: rough,
		Basis: timber.Basis{Source: "sawn to order", Standing: timber.Derived},
	}, ToOrder}
}

// hair is what float64 may lose of a size.
const hair = 1e-9

func notUnder(have, want quantity.Length) bool { return have >= want*(1-hair) }

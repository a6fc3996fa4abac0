package timber

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
)

// A Nominal is a thickness that sawn boards are sold by.
type Nominal struct {
	Name    string          // 4/4, 25 mm
	Rough   quantity.Length // as sawn
	Planed  quantity.Length // surfaced on two sides
	Charged quantity.Length // thickness that board feet are reckoned with
	Basis   Basis           // of Planed
}

// nominals are the thicknesses in stock: quarters of an inch, dealers' lists
// and Wood Handbook ch. 6; metric ones planed 3 mm a face, common practice, no source.
func nominals() []Nominal {
	const in = quantity.Inch
	quarter := func(n int, planed quantity.Length, standing Standing) Nominal {
		rough := quantity.Length(n) * in / 4
		return Nominal{fmt.Sprintf("%d/4", n), rough, planed, max(rough, in), Basis{"Dealers' lists; Wood Handbook ch. 6", standing}}
	}
	metric := func(mm quantity.Length) Nominal {
		return Nominal{fmt.Sprintf("%g mm", float64(mm)), mm, mm - 6, max(mm, in), Basis{"Common practice, no source: 3 mm planed off each face", FromMemory}}
	}
	return []Nominal{
		quarter(3, in*9/16, FromMemory), quarter(4, in*13/16, Seen), quarter(5, in*17/16, Seen), quarter(6, in*21/16, Seen),
		quarter(7, in*3/2, FromMemory), quarter(8, in*7/4, Seen), quarter(10, in*9/4, FromMemory), quarter(12, in*11/4, FromMemory),
		quarter(16, in*15/4, FromMemory),
		metric(25), metric(38), metric(50), metric(75), metric(100),
	}
}

// A System is one of the two ways thicknesses are named.
type System int

// The ways thicknesses are named.
const (
	Quarters System = iota // 4/4, 5/4: quarters of an inch
	Metric                 // 25 mm, 38 mm
)

// Stock returns the thicknesses boards are sold in, thinnest first.
func Stock(system System) []Nominal {
	var out []Nominal
	for _, n := range nominals() {
		if strings.HasSuffix(n.Name, "mm") == (system == Metric) {
			out = append(out, n)
		}
	}
	return out
}

// FindNominal returns the thickness of that name: 4/4, 8/4, 25 mm. The error
// is an *[UnknownError].
func FindNominal(name string) (Nominal, error) {
	squeeze := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), " ", "") }
	var all []string
	for _, n := range nominals() {
		if squeeze(n.Name) == squeeze(name) {
			return n, nil
		}
		all = append(all, n.Name)
	}
	return Nominal{}, &UnknownError{What: "board thickness", Name: name, Near: all}
}

// StockFor returns the thinnest board whose planed thickness is not under
// finished. With none thick enough the error is a *[RangeError]: glue up, or
// have it sawn.
func StockFor(finished quantity.Length, system System) (Nominal, error) {
	stock := Stock(system)
	thickest := stock[len(stock)-1].Planed
	if err := within("finished thickness, mm", finished.Millimetres(), 0, thickest.Millimetres()); err != nil {
		return Nominal{}, &RangeError{
			What: "finished thickness, mm", Got: finished.Millimetres(), Max: thickest.Millimetres(),
			Want: "glue it up from thinner boards, or have it sawn",
		}
	}
	for _, n := range stock {
		if n.Planed >= finished*(1-1e-12) {
			return n, nil
		}
	}
	return stock[len(stock)-1], nil
}

package timber

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// A Climate is the moisture wood has through the year where it serves.
type Climate struct {
	Mean, Driest, Wettest quantity.Moisture
	Basis                 Basis
}

// wettestService is the moisture that no wood in service reaches by the air
// alone, percent.
const wettestService = 30

// Steady is the climate of one moisture all year.
func Steady(m quantity.Moisture) (Climate, error) { return Between(m, m) }

// Between is the climate of wood that goes from driest to wettest.
func Between(driest, wettest quantity.Moisture) (Climate, error) {
	for _, m := range [...]quantity.Moisture{driest, wettest} {
		if err := within("service moisture, percent", float64(m), 0, wettestService); err != nil {
			return Climate{}, err
		}
	}
	if driest > wettest {
		return Climate{}, &RangeError{
			What: "driest service moisture, percent", Got: float64(driest), Max: float64(wettest),
			Want: "write the drier one first",
		}
	}
	return Climate{(driest + wettest) / 2, driest, wettest, Basis{"as stated", Own}}, nil
}

// A Month is the mean temperature and humidity of the air in one month.
type Month struct {
	Temperature Celsius
	Humidity    Humidity
}

// Monthly is the climate that follows from the air, month by month, by [EMC].
// A month that cannot be worked out is named by its number, from 1.
func Monthly(months []Month) (Climate, error) {
	if len(months) == 0 {
		return Climate{}, &RangeError{What: "months of temperature and humidity", Min: 1, Max: 12}
	}
	values := make([]quantity.Moisture, len(months))
	for i, m := range months {
		v, err := EMC(m.Temperature, m.Humidity)
		if err != nil {
			return Climate{}, fmt.Errorf("month %d: %w", i+1, err)
		}
		values[i] = v
	}
	return through(values, Basis{"Wood Handbook 2021 eq. 4-5, from temperature and humidity by the month", Derived}), nil
}

// through returns the climate of those months.
func through(values []quantity.Moisture, basis Basis) Climate {
	var sum quantity.Moisture
	for _, v := range values {
		sum += v
	}
	return Climate{sum / quantity.Moisture(len(values)), slices.Min(values), slices.Max(values), basis}
}

//go:embed places.csv
var embeddedPlaces string

// A Place is a town with the moisture of wood outdoors under cover, by the month.
type Place struct {
	Name   string
	Months []quantity.Moisture
	Basis  Basis
}

// Places returns the published places, in the table's order.
func Places() ([]Place, error) {
	lines, err := csv.NewReader(strings.NewReader(embeddedPlaces)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("the table of places: %w", err)
	}
	var out []Place
	for n, cells := range lines[1:] {
		p := Place{Name: cells[0], Basis: Basis{cells[1], Seen}}
		if cells[2] != "seen" {
			p.Basis.Standing = FromMemory
		}
		for _, text := range strings.Fields(cells[3]) {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return nil, &TableError{n + 2, "values", quantity.Quote(text) + " is not a number"}
			}
			p.Months = append(p.Months, quantity.Moisture(v))
		}
		if len(p.Months) != 12 {
			return nil, &TableError{n + 2, "values", "not twelve months"}
		}
		out = append(out, p)
	}
	return out, nil
}

// At is the climate outdoors, under cover, of a published place; its basis
// names the years it was taken from. A place that is not listed gives an
// *[UnknownError]: state a range or the air month by month instead.
func At(place string) (Climate, error) {
	places, err := Places()
	if err != nil {
		return Climate{}, err
	}
	key := nameKey(place)
	var part []Place
	var near []string
	for _, p := range places {
		name := nameKey(p.Name)
		switch {
		case name == key:
			return p.climate(), nil
		case holdsWords(name, key):
			part = append(part, p)
			near = append(near, p.Name)
		case 3*lettersApart(name, key) <= len(key):
			near = append(near, p.Name)
		}
	}
	if len(part) == 1 {
		return part[0].climate(), nil
	}
	return Climate{}, &UnknownError{What: "place", Name: place, Near: near}
}

func (p Place) climate() Climate {
	return through(p.Months, Basis{p.Name + ", " + p.Basis.Source, p.Basis.Standing})
}

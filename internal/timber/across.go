package timber

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// Columns: compression across the grain (stress at the proportional limit) and
// shear along the grain, green and at 12 %, MPa: averages of small clear
// pieces. Wood Handbook table 5-3a, from memory.
//
//go:embed across.csv
var embeddedAcross string

const acrossSource = "Wood Handbook table 5-3a"

// Bearing returns the stress across the grain at which wood under a bearing
// begins to be crushed for good (the proportional limit in compression), at a
// moisture. Woods that have no published figure give a *[NoFigureError].
func (s Species) Bearing(at quantity.Moisture) (Megapascals, Basis, error) {
	return s.acrossGrain("strength across the grain", at, 1)
}

// Shear is like Bearing for the strength in shear along the grain.
func (s Species) Shear(at quantity.Moisture) (Megapascals, Basis, error) {
	return s.acrossGrain("strength in shear", at, 3)
}

func (s Species) acrossGrain(what string, at quantity.Moisture, column int) (Megapascals, Basis, error) {
	lines, err := csv.NewReader(strings.NewReader(embeddedAcross)).ReadAll()
	if err != nil {
		return 0, Basis{}, fmt.Errorf("the table of strengths across the grain cannot be read: %w", err)
	}
	for _, l := range lines[1:] {
		if l[0] != s.Botanical {
			continue
		}
		var green, dry Figure
		for i, f := range []*Figure{&green, &dry} {
			v, err := strconv.ParseFloat(l[column+i], 64)
			if err != nil {
				return 0, Basis{}, fmt.Errorf("%s: %q is no strength: %w", s.label(), l[column+i], err)
			}
			*f = Figure{v, acrossSource, FromMemory}
		}
		v, basis, err := s.strength(what, at, green, dry, Figure{}, Figure{})
		return Megapascals(v), basis, err
	}
	return 0, Basis{}, &NoFigureError{s.label(), what, "look for it in the tables of its own country"}
}

// A Lessening is one reason why a beam bears less than small clear pieces do on
// average, and what share it leaves.
type Lessening struct {
	What   string // "variation"
	Leaves float64
	Why    string // in words, with its source
}

// OfBending are the lessenings of a bending strength that is the average of
// small clear pieces: for comparing only. What is left after them is no
// figure to build by; a margin for safety is the business of whoever judges it.
func OfBending() []Lessening {
	return []Lessening{
		variation(.16),
		lasting,
		{"grade", .89, "grain that runs out 1 in 15; knots leave less (Wood Handbook, slope of grain, from memory)"},
	}
}

// OfShear are those of shear along the grain.
func OfShear() []Lessening {
	return []Lessening{
		variation(.14),
		lasting,
		{"grade", .5, "checks and splits at the ends (ASTM D245, from memory)"},
	}
}

// OfBearing are those of compression across the grain: it dents and does not
// break, so that no time and no grade is taken off.
func OfBearing() []Lessening { return []Lessening{variation(.28)} }

var lasting = Lessening{"lasting", .6, "a load that lies on for years (Wood Handbook 2021, figure 5-23)"}

// variation leaves what 19 pieces of 20 reach, the strengths lying evenly about
// their average.
func variation(spread float64) Lessening {
	const oneInTwenty = 1.645
	return Lessening{
		"variation", 1 - oneInTwenty*spread,
		fmt.Sprintf("what 19 pieces in 20 reach where they vary by %.0f %% (Wood Handbook table 5-6, from memory)", 100*spread),
	}
}

// Left is what the lessenings leave together.
func Left(l []Lessening) float64 {
	left := 1.0
	for _, one := range l {
		left *= one.Leaves
	}
	return left
}

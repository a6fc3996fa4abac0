package timbering

import (
	"strconv"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

// yardStock are the thicknesses the survey says its yard keeps; none where it
// says nothing.
func yardStock(s *survey.Survey) ([]timber.Nominal, error) {
	mm := func(l quantity.Length) string { return strconv.FormatFloat(l.Millimetres(), 'f', -1, 64) + " mm" }
	var out []timber.Nominal
	for _, t := range s.Yard.Thicknesses {
		n, err := cutlist.ParseThickness(mm(t.Sawn)+" = "+mm(t.Dressed), s.Unit)
		if err != nil {
			f := faults{survey: s}
			f.add(t.At, err.Error(), "see whether its unit is right")
			return nil, f.err()
		}
		out = append(out, n)
	}
	return out, nil
}

// known are the thicknesses a price can be for: the yard's, or else the trade's.
func known(s *survey.Survey, own []timber.Nominal) []timber.Nominal {
	switch {
	case len(own) > 0:
		return own
	case s.Unit == quantity.Millimetres:
		return timber.Stock(timber.Metric)
	}
	return timber.Stock(timber.Quarters)
}

// findThickness finds a thickness by its name, or by how thick it is sawn: 8/4, 2, 50 mm.
func findThickness(text string, stock []timber.Nominal, unit quantity.Unit) (timber.Nominal, bool) {
	squeeze := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), " ", "") }
	for _, n := range stock {
		if squeeze(n.Name) == squeeze(text) {
			return n, true
		}
	}
	l, err := quantity.ParseLength(text, unit)
	if err != nil {
		return timber.Nominal{}, false
	}
	const hair = quantity.Millimetre / 1000
	for _, n := range stock {
		if d := n.Rough - l; d < hair && d > -hair {
			return n, true
		}
	}
	return timber.Nominal{}, false
}

// price is one of the survey's, once it is checked.
func price(s *survey.Survey, p survey.Price, stock []timber.Nominal) cutlist.Price {
	out := cutlist.Price{Timber: p.Timber, Amount: p.Amount, Per: measure(p.Per), Currency: s.Yard.Currency}
	if n, ok := findThickness(p.Thickness, stock, s.Unit); ok && p.Thickness != "" {
		out.Stock = n.Name
	}
	return out
}

func measure(m survey.Measure) cutlist.Measure {
	switch m {
	case survey.PerSuperFoot:
		return cutlist.SuperFoot
	case survey.PerCubicMetre:
		return cutlist.CubicMetre
	}
	return cutlist.BoardFoot
}

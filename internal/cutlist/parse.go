package cutlist

import (
	"strconv"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// ParsePrice reads what a timber costs: “12.50/bdft”, “white oak = 9.80/bdft”,
// “white oak 8/4 = 10.40/bdft”, “jarrah = 2100/m3”. The measures are bdft,
// superft and m3. A thickness of the name alone, without a timber, is
// “8/4 = 10.40/bdft”.
func ParsePrice(text, currency string) (Price, error) {
	p := Price{Currency: currency}
	amount := text
	if of, rest, two := strings.Cut(text, "="); two {
		amount = rest
		p.Timber, p.Stock = timberAndStock(strings.TrimSpace(of))
	}
	number, per, two := strings.Cut(amount, "/")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	known := true
	switch strings.ToLower(strings.ReplaceAll(per, " ", "")) {
	case "bdft", "boardfoot":
		p.Per = BoardFoot
	case "superft", "superfoot":
		p.Per = SuperFoot
	case "m3", "cubicmetre":
		p.Per = CubicMetre
	default:
		known = false
	}
	if err != nil || !two || !known {
		return Price{}, badSetting("%s is no price; write such as “white oak = 9.80/bdft”, per bdft, superft or m3", quantity.Quote(text))
	}
	p.Amount = v
	return p, p.validate()
}

// timberAndStock parts a timber's name from a thickness behind it.
func timberAndStock(words string) (name, stock string) {
	for _, n := range append(timber.Stock(timber.Quarters), timber.Stock(timber.Metric)...) {
		if rest, found := strings.CutSuffix(words, n.Name); found && (rest == "" || strings.HasSuffix(rest, " ")) {
			return strings.TrimSpace(rest), n.Name
		}
	}
	return words, ""
}

// ParseThickness reads a thickness that a yard keeps, sawn and dressed: “2 = 1 3/4”,
// “50 mm = 44 mm”.
func ParseThickness(text string, unit quantity.Unit) (timber.Nominal, error) {
	sawn, dressed, two := strings.Cut(text, "=")
	rough, errRough := quantity.ParseLength(strings.TrimSpace(sawn), unit)
	planed, errPlaned := quantity.ParseLength(strings.TrimSpace(dressed), unit)
	if !two || errRough != nil || errPlaned != nil || !(planed > 0 && planed <= rough && rough < quantity.Metre) {
		return timber.Nominal{}, badSetting("%s is no thickness of a yard; write it sawn and dressed, such as “2 = 1 3/4” or “50 mm = 44 mm”", quantity.Quote(text))
	}
	return timber.Nominal{
		Name: named(rough, unit), Rough: rough, Planed: planed, Charged: max(rough, quantity.Inch),
		Basis: timber.Basis{Source: "the yard", Standing: timber.Own},
	}, nil
}

// ParsePartRings reads how rings are to lie, in all parts or in one: “flat”,
// “reach = quarter”, “6 = 30”.
func ParsePartRings(text string) (PartRings, error) {
	part, rings, two := strings.Cut(text, "=")
	if !two {
		part, rings = "", text
	}
	if two && strings.TrimSpace(part) == "" {
		return PartRings{}, badSetting("%s names no part before its =; write such as “reach = quarter”", quantity.Quote(text))
	}
	r, err := timber.ParseRings(rings)
	return PartRings{strings.TrimSpace(part), r}, err
}

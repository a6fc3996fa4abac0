package survey

import (
	"cmp"
	"strings"
)

const priceMeans = "What timber costs, for as many timbers and thicknesses as you know. Write [[price]] on a line before each. " +
	"Of several that fit, the one that says most holds."

// A Price is what a timber costs.
type Price struct {
	At          Position
	Timber      string // every timber that has none of its own where empty
	TimberAt    Position
	Thickness   string // as the yard or the trade calls it; every one where empty
	ThicknessAt Position
	Amount      float64
	Per         Measure
}

// A Measure is what a price is for.
type Measure string

// The measures that are priced.
const (
	PerBoardFoot  Measure = "bdft"
	PerSuperFoot  Measure = "superft"
	PerCubicMetre Measure = "m3"
)

func priceKeys() []key[Price] {
	return []key[Price]{
		{
			name: "timber", also: "species wood", example: `"white oak"`, means: "which timber; every one that has no price of its own where not given",
			take: func(r *reader, v *node, p *Price) {
				p.Timber, _ = r.text(v)
				p.TimberAt = r.at(v)
			},
		},
		{
			name: "thickness", also: "thick stock", example: `"8/4"`, means: "which thickness, sawn, as the list of what to buy calls it; every one where not given",
			take: func(r *reader, v *node, p *Price) {
				p.Thickness, _ = r.text(v)
				p.ThicknessAt = r.at(v)
			},
		},
		{
			name: "amount", also: "price cost", need: must, example: "9.80", means: "what it costs",
			take: (*reader).amount,
		},
		{
			name: "per", also: "for unit measure", need: must, example: `"bdft"`, means: "for how much of it: bdft (a board foot), superft (a super foot) or m3 (a cubic metre)",
			take: intoWord([]Measure{PerBoardFoot, PerSuperFoot, PerCubicMetre}, func(p *Price) *Measure { return &p.Per }),
		},
	}
}

func (r *reader) amount(v *node, p *Price) {
	const want = "write a number without quotes and without the currency, such as 9.80"
	const most = 1e9
	if v.shape != wholeShape && v.shape != decimalShape {
		r.mistaken(v, "a price", want)
		return
	}
	f, ok := figure(v)
	if !ok || !(f >= 0 && f < most) {
		r.fault(v.at, quote(v.text)+", which is no price", want)
		return
	}
	p.Amount = f
}

func (r *reader) prices(n *node) {
	type of struct{ timber, thickness string }
	first := map[of]Position{}
	for _, v := range n.items {
		p := Price{At: r.at(v)}
		if !readGroup(r, v, "a price", priceKeys(), &p) {
			continue
		}
		key := of{strings.ToLower(p.Timber), strings.ToLower(p.Thickness)}
		if before, twice := first[key]; twice {
			what := strings.TrimSpace(cmp.Or(p.Timber, "every timber") + " " + p.Thickness)
			r.faultAt(p.At, "a second price for "+what+", first on "+before.words(), "take one of them away")
			continue
		}
		first[key] = p.At
		r.s.Prices = append(r.s.Prices, p)
	}
}

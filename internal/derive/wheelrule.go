package derive

import (
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
)

// A wheelRule is what the trade gives for a figure of a wheel: Inches, and so
// many times each of other figures. It is the weakest evidence there is.
type wheelRule struct {
	figure string
	inches float64
	times  map[string]float64
	within float64 // inches, one standard uncertainty
	source string
}

const (
	common_  = "common practice, no source"
	richard  = "Richardson, Practical Carriage Building (1891)"
	holms    = "Holmstrom, his second book"
	armyWgn  = "between a light hub in " + richard + " and the US Army wagon of 1858"
	armyOnly = "the US Army wagon of 1858"
)

// wheelRules are the rules for a wheel of a use.
func wheelRules(use wheel.Use) []wheelRule {
	return append(dishRules(use), []wheelRule{
		{"tyre-wide", 0, map[string]float64{"radius": .08}, .6, common_},
		{"tyre-thick", 0, map[string]float64{"tyre-wide": .25}, .1, armyOnly},
		{"felloe-deep", .375, map[string]float64{"tyre-wide": 1}, .25, common_},
		{"gap", 1. / 16, nil, 1. / 32, common_},
		{"nave", 1.5, map[string]float64{"tyre-wide": 3.4}, .75, armyWgn},
		{"nave-long", 2, map[string]float64{"tyre-wide": 5}, 1, armyWgn},
		{"nave-front", 0, map[string]float64{"nave": .72}, .5, common_},
		{"nave-back", 0, map[string]float64{"nave": .8}, .5, common_},
		{"nave-forward", 0, map[string]float64{"nave-long": .45}, .5, common_},
		{"seat-long", .375, map[string]float64{"foot-wide": 1, "stagger": 1}, .1, common_},
		{"box-long", 0, map[string]float64{"nave-long": .84}, .5, armyOnly},
		{"box-large", 0, map[string]float64{"tyre-wide": 1}, .25, armyOnly},
		{"box-small", 0, map[string]float64{"box-large": .75}, .15, armyOnly},
		{"box-wall", .25, nil, 1. / 16, common_},
		{"box-in", .5, nil, .2, common_},
		{"arm-long", .5, map[string]float64{"box-long": 1}, .35, common_},
		{"foot-wide", 0, map[string]float64{"tyre-wide": .8}, .1, common_},
		{"foot-thick", 0, map[string]float64{"tyre-wide": .38}, .06, common_},
		{"foot-long", 0, map[string]float64{"nave": .26}, .2, common_},
		{"spoke-wide", .2, map[string]float64{"foot-wide": 1}, .05, common_},
		{"spoke-thick", .4, map[string]float64{"foot-thick": 1}, .06, common_},
		{"square", 2, nil, .4, common_},
		{"tip-wide", 0, map[string]float64{"tyre-wide": .72}, .06, common_},
		{"tip-thick", .2, map[string]float64{"tongue": 1}, .04, common_},
		{"tongue", .125, map[string]float64{"tyre-wide": 1. / 3}, 1. / 16, richard + ", Points for wheelwrights"},
		{"tongue-short", 1. / 16, nil, 1. / 32, richard + ", Wheels 4"},
	}...)
}

// dishRules are the rules for the dish before and after the tyre goes on.
func dishRules(use wheel.Use) []wheelRule {
	built := wheelRule{"dish-built", -.5, map[string]float64{"dish": 1}, .2, richard + ", Points for wheelwrights"}
	switch use {
	case wheel.Carriage:
		built.inches = -.25
		return []wheelRule{{"dish", .5, nil, .15, holms}, built}
	case wheel.HeavyWagon:
		return []wheelRule{{"dish", .625, nil, .1, built.source}, built}
	case wheel.Wagon:
		return []wheelRule{{"dish", .875, nil, .15, holms}, built}
	}
	return []wheelRule{{"dish", 1.25, nil, .5, common_}, built}
}

// wheelRules enters the trade's rule for every figure that no line gives.
func (n *network) wheelRules(m *member) {
	for _, r := range wheelRules(m.wheel.Use) {
		if m.size(r.figure) == none || m.wheel.Part.Speaks(r.figure) {
			continue
		}
		n.observe(note{
			sort: stated, subject: m.id, line: m.wheel.At.Line, known: quantity.TradeRule, member: m,
			what: fmt.Sprintf("%s.%s by the trade's rule (%s)", m.id, r.figure, r.source),
		}, quantity.Length(r.inches)*quantity.Inch, quantity.Length(r.within)*quantity.Inch, func(x []float64) adjust.Term {
			t := m.of(x, r.figure)
			for _, d := range m.sizes { // in one order
				if k := r.times[d.name]; k != 0 {
					t = t.Minus(adjust.At(x, d.unknown).Scaled(k))
				}
			}
			return t
		})
	}
}

package timbering

import (
	"slices"

	"lostwood/internal/cutlist"
	"lostwood/internal/timber"
)

// OverrulePrices returns the prices a survey gives, without those that others
// speak of too, and the others before them.
func OverrulePrices(given, others []cutlist.Price, woods timber.Catalogue) []cutlist.Price {
	out := slices.Clone(others)
	for _, p := range given {
		overruled := slices.ContainsFunc(others, func(o cutlist.Price) bool {
			return (o.Timber == "" || same(woods, o.Timber, p.Timber)) && (o.Stock == "" || o.Stock == p.Stock)
		})
		if !overruled {
			out = append(out, p)
		}
	}
	return out
}

// OverruleRings returns what a survey says of rings with others laid over it:
// for a part, what is said of that part; for all parts, what is said of all.
func OverruleRings(given, others []cutlist.PartRings) []cutlist.PartRings {
	var out []cutlist.PartRings
	for _, r := range others { // of one part the first word holds
		if r.Part != "" {
			out = append(out, r)
		}
	}
	out = append(out, given...)
	for _, r := range others { // of all parts the last
		if r.Part == "" {
			out = append(out, r)
		}
	}
	return out
}

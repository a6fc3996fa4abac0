package survey

import (
	"testing"
)

func TestStatementFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"no equals", front + things + `[evidence]
guess = [▲"sill.wide"]
`,
			`a statement with no =`,
			`write it such as "reach.wide = reach-plate.wide" or "slat.wide = 4 ± 1/4"`,
		},
		{
			"two equals", front + things + `[evidence]
guess = ["sill.wide = 2 ▲= 3"]
`,
			`a second = in a statement`,
			`write two statements`,
		},
		{
			"no point", front + things + `[evidence]
guess = ["▲sill = 2"]
`,
			`“sill” with no point`,
			`write the thing, a point, and what of it is meant: reach.wide, sill-plate#3.x`,
		},
		{
			"no such thing", front + things + `[evidence]
guess = ["▲sil.wide = 2"]
`,
			`“sil”, which is no iron and no part here`,
			`did you mean sill?`,
		},
		{
			"no such size", front + things + `[evidence]
guess = ["▲sill.with = 2"]
`,
			`“sill” has no “with”`,
			`did you mean wide?`,
		},
		{
			"no such size of iron", front + things + `[evidence]
guess = ["sill.wide = ▲plate.deep"]
`,
			`“plate” has no “deep”`,
			`write long, wide, thick, fore, hind, near, off, outer, inner, top, under, mid-x, mid-y or mid-z`,
		},
		{
			"no such hole", front + things + `[evidence]
guess = ["▲plate#7.x = 2"]
`,
			`hole 7 of “plate”, which has 4 holes`,
			`write a number from 1 to 4`,
		},
		{
			"hole and size", front + things + `[evidence]
guess = ["▲plate#1.wide = 2"]
`,
			`“wide” of a hole`,
			`write .x (fore and aft), .y (near to off) or .z (up and down)`,
		},
		{
			"hole of a part", front + things + `[evidence]
guess = ["▲sill#1.x = 2"]
`,
			`a hole of “sill”, which is a part`,
			`write a hole of an iron, or a size or place of the part`,
		},
		{
			"no spaces", front + things + `[evidence]
guess = ["sill.wide = plate.wide▲ -1"]
`,
			`“-1” straight after “plate.wide”`,
			`write + or - between two terms, with a space on both sides`,
		},
		{
			"poor length", front + things + `[evidence]
guess = ["sill.wide = 2 ▲inchs"]
`,
			`“inchs”, which is no unit of length here in “sill.wide = 2 inchs”`,
			`write in, ft, mm, cm or m after the number, or nothing`,
		},
		{
			"escape before the place", front + things + `[evidence]
guess = ["\u0073ill.wide = 2 ▲inchs"]
`,
			`“inchs”, which is no unit of length here in “sill.wide = 2 inchs”`,
			`write in, ft, mm, cm or m after the number, or nothing`,
		},
		{
			"poor factor", front + things + `[evidence]
guess = ["sill.wide = ▲2 in plate.wide"]
`,
			`“2 in” before “plate.wide”`,
			`write how many times, such as 1/2 reach.wide, or + or - between the two with a space on both sides`,
		},
		{
			"names nothing", front + things + `[evidence]
guess = [▲"3 = 3"]
`,
			`a statement that names no iron and no part`,
			`write it such as "reach.wide = reach-plate.wide" or "slat.wide = 4 ± 1/4"`,
		},
		{
			"says nothing", front + things + `[evidence]
guess = [▲"sill.wide = sill.wide"]
`,
			`a statement with the same on both sides, which says nothing`,
			`mend one side, or take it away`,
		},
		{
			"doubt of nothing", front + things + `[evidence]
guess = ["sill.wide = 2 ± ▲0"]
`,
			`a give or take of “0”`,
			`write how far off it may well be, such as ± 1/16`,
		},
		{
			"doubt on the left", front + things + `[evidence]
guess = ["sill.wide ▲± 1 = 2"]
`,
			`a give or take before the =`,
			`write it at the end of the statement`,
		},
		{
			"absurd", front + things + `[evidence]
guess = [▲"sill.long = 6000"]
`,
			`a length of 6000 in, more than any vehicle's`,
			`see whether its unit is right; a bare number is in inches`,
		},
		{
			"size of nothing", front + things + `[evidence]
guess = [▲"sill.wide = 0"]
`,
			`a size of nothing or less`,
			`write how large it is, or take it away`,
		},
		{
			"size less than nothing", front + things + `[evidence]
guess = [▲"sill.wide = -2"]
`,
			`a size of nothing or less`,
			`write how large it is, or take it away`,
		},
		{
			"missing term", front + things + `[evidence]
guess = ["sill.wide = 2 + ▲"]
`,
			`nothing where a length or a thing's size was expected`,
			`write it such as "reach.wide = reach-plate.wide" or "slat.wide = 4 ± 1/4"`,
		},
		{
			"across each other", front + things + `[evidence]
guess = ["sill.fore = ▲bolster.top"]
`,
			`“fore” and “top” in one statement, which lie different ways`,
			`set fore and hind against each other, near and off, or top and under`,
		},
		{
			"near of a pair", front + things + `[evidence]
guess = ["▲sill.near = 20"]
`,
			`“near” of “sill”, which is a pair`,
			`write outer or inner, or near-sill for the near one alone`,
		},
		{
			"middle of a pair", front + things + `[evidence]
guess = ["▲sill.mid-y = 20"]
`,
			`“mid-y” of “sill”, which is a pair`,
			`write near-sill for the near one alone, or outer or inner`,
		},
		{
			"outer of no pair", front + things + `[evidence]
guess = ["▲bolster.outer = 20"]
`,
			`“outer” where there is no pair`,
			`write near or off`,
		},
		{
			"place of a tyre", front + things + `[evidence]
guess = ["▲tyre.top = 20"]
`,
			`“top” of “tyre”, which goes round and has no such place`,
			`write one of its sizes: radius, wide or thick`,
		},
		{
			"rows of different length", front + things + "rail = { kind = \"slat\", runs = \"across\", number = 2 }\n" + `[evidence]
guess = ["cross-bar.fore = ▲rail.fore"]
`,
			`2 places for “rail” and 3 for “cross-bar”`,
			`name the one that is meant: rail-1`,
		},
		{
			"datum of a pair", front + things + `[datum]
zero = ["▲sill.under = 20"]
`,
			`“sill” in the datum, which is more than one`,
			`name one of them, such as near-sill`,
		},
		{
			"doubtful datum", front + things + `[datum]
zero = ["bolster.under = 20 ▲± 1"]
`,
			`a give or take in the datum, which holds exactly`,
			`take it away, or put the statement under [evidence]`,
		},
		{
			"number for a statement", front + things + `[evidence]
guess = [▲3]
`,
			`a number where text was expected`,
			`put it between quotes`,
		},
		{
			"unknown way", front + things + `[evidence]
▲gues = ["sill.wide = 2"]
`,
			`[evidence] has no “gues”`,
			`did you mean guess?`,
		},
		{
			"doubt that cannot be read", front + things + `[evidence]
guess = ["sill.wide = 2 ± 1/▲"]
`,
			`a fraction with nothing under it in “sill.wide = 2 ± 1/”`,
			`write it whole, such as 7/8`,
		},
		{
			"rise alone", front + "[iron]\n" + `tyre = { kind = "tyre", ▲rise = "24" }` + "\n[part]\n",
			`a rise with no chord`,
			`write the chord of the same piece too`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

package survey

import (
	"strings"
	"testing"
)

func TestFasteningFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"through one thing", front + things + `[[fastening]]
bolt = "1/2"
down = ▲["bolster"]
`,
			`a fastening through 1 thing only`,
			`write all it goes through, two things at least, head first`,
		},
		{
			"through nothing", front + things + `[[fastening]]
bolt = "1/2"
down = ▲[]
`,
			`a fastening through nothing`,
			`write all it goes through, head first`,
		},
		{
			"no direction", front + things + `[[▲fastening]]
bolt = "1/2"
`,
			`a fastening that goes through nothing`,
			`write the way from head to nut and what it goes through: down = ["reach", "reach-plate#2"]`,
		},
		{
			"down and up", front + things + `[[fastening]]
bolt = "1/2"
down = ["bolster", "plate#1"]
▲up = ["bolster", "plate#1"]
`,
			`down and up in one fastening`,
			`write the one way from its head to its nut`,
		},
		{
			"no such thing", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"bolstre"]
`,
			`“bolstre”, which is no iron and no part here`,
			`did you mean bolster?`,
		},
		{
			"no such thing, none near", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"seat"]
`,
			`“seat”, which is no iron and no part here`,
			`write plate, sill-plate, tyre, bolster, sill, cross-bar, stake or felloe`,
		},
		{
			"side of a single thing", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"near-bolster"]
`,
			`“near-bolster”, which is no iron and no part here: “bolster” is no pair`,
			`write bolster, or pair = true on line 15`,
		},
		{
			"no such hole", front + things + `[[fastening]]
bolt = "1/2"
down = [▲"plate#5", "bolster"]
`,
			`hole 5 of “plate”, which has 4 holes (line 11)`,
			`write a number from 1 to 4`,
		},
		{
			"hole not said", front + things + `[[fastening]]
bolt = "1/2"
down = [▲"plate", "bolster"]
`,
			`“plate” with no word of which of its 4 holes`,
			`write plate#1, or whichever it is`,
		},
		{
			"hole of a part", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"bolster#2"]
`,
			`a hole number on “bolster”, which is a part`,
			`take it away: a part is bored where the fastening falls`,
		},
		{
			"poor hole", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#▲two", "bolster"]
`,
			`“two” as a hole`,
			`count the holes from 1: reach-plate#2, or for a row sill-plate#1,3,5`,
		},
		{
			"no such bolt", front + things + `[[fastening]]
bolt = ▲"b7"
down = ["plate#1", "bolster"]
`,
			`“b7”, which is no bolt under [bolt]`,
			`write its diameter, such as "1/2", or describe it under [bolt]`,
		},
		{
			"neither bolt nor clip", front + things + `[[▲fastening]]
down = ["plate#1", "bolster"]
`,
			`a fastening with neither bolt nor clip`,
			`write bolt = "1/2", its diameter, or clip = "2 1/4", the width between its legs`,
		},
		{
			"bolt and clip", front + things + `[[fastening]]
bolt = "1/2"
clip = ▲"2"
down = ["plate#1", "bolster"]
`,
			`a bolt and a clip in one fastening`,
			`write two fastenings`,
		},
		{
			"head of a clip", front + things + `[[fastening]]
clip = "2"
▲head = "plain"
down = ["plate#1", "bolster"]
`,
			`head of a clip, which has no head`,
			`take it away`,
		},
		{
			"along its own length", front + things + `[[fastening]]
bolt = "1/2"
inward = [▲"plate#1", "sill"]
`,
			`“plate” runs across and its bolt goes inward, along its own length`,
			`see which way the iron runs, and which way the fastening goes`,
		},
		{
			"along the grain", front + things + `[[fastening]]
bolt = "1/2"
down = ["cross-bar", ▲"near-stake"]
`,
			`“near-stake” runs upright and the bolt goes down, along its grain`,
			`see which way the part runs, and which way the fastening goes`,
		},
		{
			"twice the same", front + things + `[[fastening]]
bolt = "1/2"
down = ["bolster", "plate#1", ▲"bolster"]
`,
			`“bolster” twice in one fastening`,
			`write each thing once, in order from the head to the nut`,
		},
		{
			"let in nowhere", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"let 3/4 into sill", "bolster"]
`,
			`let into “sill”, which is neither the thing before nor the one after`,
			`write plate or bolster, whichever is cut`,
		},
		{
			"let with no part", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"let in 3/4", "bolster"]
`,
			`“let in 3/4”, which does not say into what`,
			`write how deep and which part is cut: "let 3/4 into reach"`,
		},
		{
			"let at an end", front + things + `[[fastening]]
bolt = "1/2"
down = [▲"let 3/4 into bolster", "plate#1", "bolster"]
`,
			`a depth or gap that is not between two things`,
			`write it between the two things it is about, one at most`,
		},
		{
			"gap at the end", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", "bolster", ▲"gap 1/8"]
`,
			`a depth or gap that is not between two things`,
			`write it between the two things it is about`,
		},
		{
			"let into iron", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", ▲"let 3/4 into plate", "bolster"]
`,
			`let into “plate”, which is an iron`,
			`write the part of wood that is cut`,
		},
		{
			"poor gap", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", "gap 1/▲", "bolster"]
`,
			`a fraction with nothing under it in “gap 1/”`,
			`write it whole, such as 7/8`,
		},
		{
			"two things in one", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1 ▲bolster", "sill"]
`,
			`“bolster” after “plate”`,
			`write each thing between quotes of its own, or "worn 1/16" after an iron's hole`,
		},
		{
			"rows of different length", front + things + `[[fastening]]
bolt = "1/2"
down = ["cross-bar", ▲"sill-plate#1,3"]
`,
			`2 places for the holes of “sill-plate” and 3 for “cross-bar”`,
			`make the rows as long as each other, or name the one that is meant: cross-bar-2`,
		},
		{
			"one hole for a row", front + things + `[[fastening]]
bolt = "1/2"
down = ["cross-bar", ▲"sill-plate#1", "sill"]
`,
			`a row of 3 through one hole of “sill-plate”`,
			`write a hole for each: sill-plate#1,2,3`,
		},
		{
			"both through one hole", front + strings.Replace(things, "[part]", "pin-plate = { kind = \"plate\", runs = \"across\", holes = [\"1\", \"5\", \"9\"] }\n[part]", 1) + `[[fastening]]
bolt = "1/2"
down = [▲"pin-plate#2", "sill"]
`,
			`a near and an off fastening through one hole of “pin-plate”`,
			`write a hole on its near side (the off one has the hole as far from the off end), or near- before each pair`,
		},
		{
			"one side and both", front + things + `[[▲fastening]]
bolt = "1/2"
down = ["near-sill", "sill-plate#1"]
`,
			`“near-sill”, which is one side, and “sill-plate”, which is both, in one fastening`,
			`write near- or off- before sill-plate too`,
		},
		{
			"pair of one side", front + things + `[[fastening]]
bolt = "1/2"
▲pair = true
down = ["near-sill", "bolster"]
`,
			`pair = true on a fastening through “near-sill”, which is one side only`,
			`take near- or off- away, or pair`,
		},
		{
			"no pair of a pair", front + things + `[[fastening]]
bolt = "1/2"
▲pair = false
down = ["sill", "bolster"]
`,
			`pair = false on a fastening through “sill”, which is a pair`,
			`write near-sill for the near one alone`,
		},
		{
			"round and straight", front + things + `[[▲fastening]]
bolt = "1/2"
inward = ["tyre", "felloe", "sill"]
`,
			`“felloe”, which goes round, and “sill”, which does not, in one fastening`,
			`fasten what goes round only to what goes round`,
		},
		{
			"one grip for a pair", front + things + `[[fastening]]
bolt = "1/2"
down = ["sill", "bolster"]
grip = ▲"7"
`,
			`1 grip for a near and off pair`,
			`write near and off, "-" for one not taken, such as grip = ["7 1/16", "7"]`,
		},
		{
			"two grips for one", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", "bolster"]
grip = ▲["7", "7"]
`,
			`2 grips for one fastening`,
			`write one, such as grip = "7"`,
		},
		{
			"grips short of the row", front + things + `[[fastening]]
bolt = "1/2"
down = ["cross-bar", "sill-plate#1,3,5", "sill"]
grip = ▲[["7", "7"], ["7", "7"]]
`,
			`2 grips for a row of 3`,
			`write near and off for each of the row, "-" for one not taken, such as grip = [["7 1/16", "7"], ["7 1/16", "7"], ["7 1/16", "7"]]`,
		},
		{
			"grips short of a side", front + things + `[[fastening]]
bolt = "1/2"
down = ["cross-bar", "sill-plate#1,3,5", "sill"]
grip = [["7", "7"], ▲["7"], ["7", "7"]]
`,
			`1 grip for a near and off pair`,
			`write near and off for each of the row, "-" for one not taken, such as grip = [["7 1/16", "7"], ["7 1/16", "7"], ["7 1/16", "7"]]`,
		},
		{
			"grips in two units", front + things + `[[fastening]]
bolt = "1/2"
down = ["sill", "bolster"]
grip = ["7", ▲"178"]
`,
			`grip of one fastening: 178 in here and 7 in on line 23, 25 times apart`,
			`see which of them was read in inches or millimetres, and write the unit with it`,
		},
		{
			"grip and mark", front + strings.Replace(things, "[part]", "[bolt]\nb = { diameter = \"1/2\", mark = \"7\" }\n[part]", 1) + `[[fastening]]
bolt = "b"
down = ["plate#1", "bolster"]
grip = ▲"7"
`,
			`a grip here and a mark on bolt “b” (line 15)`,
			`write the one that was read`,
		},
		{
			"id twice", front + things + `[[fastening]]
id = "king"
bolt = "1/2"
down = ["plate#1", "bolster"]
[[▲fastening]]
id = "king"
bolt = "1/2"
down = ["plate#2", "bolster"]
`,
			`“king”, which is the id of another fastening too, on line 20`,
			`give one of them another id`,
		},
		{
			"no such word", front + things + `[[fastening]]
bolt = "1/2"
what = ▲"nail"
down = ["plate#1", "bolster"]
`,
			`“nail”, which is not known here`,
			`write bolt, rivet, screw or clip`,
		},
		{
			"screw of a clip", front + things + `[[fastening]]
clip = "2"
what = ▲"screw"
down = ["plate#1", "bolster"]
`,
			`a screw with a clip's width`,
			`write bolt = and its diameter, instead of clip`,
		},
		{
			"poor id", front + things + `[[fastening]]
id = ▲"king bolt"
bolt = "1/2"
down = ["plate#1", "bolster"]
`,
			`“king bolt” as the id of a fastening`,
			`write a short one of letters, figures and hyphens`,
		},
		{
			"poor reference", front + things + `[[joint]]
notch = ▲"the sill"
for = "stake"
`,
			`“the sill”, which is no id`,
			`write the id of an iron or a part`,
		},
		{
			"no holes at all", front + things + `[[fastening]]
bolt = "1/2"
down = [▲"bare#1", "bolster"]
[iron.bare]
kind = "plate"
runs = "across"
`,
			`hole 1 of “bare”, which has no holes (line 23)`,
			`write its holes under [iron]: holes = ["1 1/2", "15 1/2"]`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

package survey

import (
	"testing"
)

func TestKeyFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"unknown key", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", ▲thik = "1/4" }` + "\n[part]\n",
			`a plate has no “thik”`,
			`did you mean thick?`,
		},
		{
			"another word", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", ▲thickness = "1/4" }` + "\n[part]\n",
			`a plate has no “thickness”`,
			`write thick`,
		},
		{
			"nothing near", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", ▲colour = "red" }` + "\n[part]\n",
			`a plate has no “colour”`,
			`write kind, runs, pair, number, long, wide, thick, holes, from, across, bent, crank, off, found, name, missing, condition, where, marks, photos or note`,
		},
		{
			"missing, yes or no", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", missing = ▲true }` + "\n[part]\n",
			`true or false where what is missing was expected`,
			`write missing = "all", "near", "off", or the number of one in a row between quotes`,
		},
		{
			"missing of no pair", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = "1/4", wide = "2", missing = ▲"near" }` + "\n[part]\n",
			`the near one of a thing that is no pair as missing`,
			`write missing = "all", or pair = true if there are two`,
		},
		{
			"missing beyond its row", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", number = 2, thick = "1/4", wide = "2", missing = ▲"3" }` + "\n[part]\n",
			`number 3 of 2 as missing`,
			`write a number of those there are`,
		},
		{
			"no such missing", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = "1/4", wide = "2", missing = ▲"the left" }` + "\n[part]\n",
			`“the left” as what is missing`,
			`write "all", "near", "off", or the number of one in a row: "2" or "near 2"`,
		},
		{
			"unknown heading", front + `[part]
[▲evidance]
guess = []
`,
			`a survey has no “evidance”`,
			`did you mean evidence?`,
		},
		{
			"another heading", front + `[part]
[▲timbers]
`,
			`a survey has no “timbers”`,
			`write part`,
		},
		{
			"before any heading", `▲colour = 1
` + front + `[part]
`,
			`“colour” before any heading`,
			`put it under a heading such as [vehicle]`,
		},
		{
			"name before any heading", `▲name = "Wagon"
` + front + `[part]
`,
			`“name” before any heading`,
			`put it under the heading [vehicle]`,
		},
		{
			"size of another kind", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", ▲girth = "40" }` + "\n[part]\n",
			`a plate has no “girth”`,
			`write kind, runs, pair, number, long, wide, thick, holes, from, across, bent, crank, off, found, name, missing, condition, where, marks, photos or note`,
		},
		{
			"dimension of another kind", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", ▲taper = "1/4" }` + "\n",
			`a bolster has no “taper”`,
			`write kind, runs, pair, handed, number, centred, timber, rings, status, kept, decided, as-made, name, note, long, wide or deep`,
		},
		{
			"text for a number", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", number = ▲"3" }` + "\n",
			`text where a whole number was expected`,
			`write a whole number from 1 to 200, without quotes`,
		},
		{
			"number for text", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", note = ▲3 }` + "\n",
			`a number where text was expected`,
			`write it between quotes: "3"`,
		},
		{
			"text for true", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", pair = ▲"yes" }` + "\n",
			`text where true or false was expected`,
			`write true or false, without quotes`,
		},
		{
			"text for a list", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", holes = ▲"1 1/2" }` + "\n[part]\n",
			`text where a list of holes was expected`,
			`write them between [ and ], such as ["1 1/2", "15 1/2"]`,
		},
		{
			"true for a length", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = ▲true }` + "\n[part]\n",
			`true or false where a length was expected`,
			`write a length such as "1 3/4" or "44.5 mm"`,
		},
		{
			"text for a group", front + "[iron]\n" + `plate = ▲"plate"` + "\n[part]\n",
			`text where an iron was expected`,
			`write it between { and }, such as { kind = "strap" }`,
		},
		{
			"key twice", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = "1/4", ▲thick = "1/4" }` + "\n[part]\n",
			`“thick” stands twice, first on line 11`,
			`rename one of them, or take one away`,
		},
		{
			"heading twice", front + `[part]
[▲wood]
worked = 12
`,
			`“wood” stands twice, first on line 6`,
			`put what stands under both together, under one heading`,
		},
		{
			"iron twice", front + "[iron]\n" + `plate = { kind = "plate", runs = "across" }
▲plate = { kind = "plate", runs = "across" }` + "\n[part]\n",
			`“plate” stands twice, first on line 11`,
			`rename one of them, or take one away`,
		},
		{
			"iron and part of one id", front + `[iron]
plate = { kind = "plate", runs = "across" }
[part]
▲plate = { kind = "bolster", runs = "across" }
`,
			`“plate”, which is the id of another thing too, on line 11`,
			`give one of them another id`,
		},
		{
			"iron and bolt of one id", front + `[iron]
plate = { kind = "plate", runs = "across" }
[bolt]
▲plate = { diameter = "1/2", length = "8" }
[part]
`,
			`“plate”, which is the id of another thing too, on line 11`,
			`give one of them another id`,
		},
		{
			"id of a member of a row", front + things + `▲cross-bar-2 = { kind = "cross bar", runs = "across" }
`,
			`“cross-bar-2”, which already means one of “cross-bar” on line 17`,
			`give it another id`,
		},
		{
			"id of a side of a pair", front + things + `▲near-sill = { kind = "cross bar", runs = "across" }
`,
			`“near-sill”, which already means one of “sill” on line 16`,
			`give it another id`,
		},
		{
			"poor id", front + "[part]\n" + `▲cross_bar = { kind = "cross bar", runs = "across" }` + "\n",
			`“cross_bar”, which is no id for a part`,
			`write a short one: a letter first, then letters, figures and hyphens, such as reach-plate`,
		},
		{
			"one bracket for two", front + things + `[▲fastening]
bolt = "1/2"
down = ["bolster", "plate#1"]
`,
			`[fastening] with one bracket on each side`,
			`write [[fastening]], once for each fastening`,
		},
		{
			"two brackets for one", front + `[[▲iron]]
kind = "plate"
[part]
`,
			`[[iron]] with two brackets`,
			`write [iron] once, with one bracket on each side`,
		},
		{
			"number for a word", front + "[iron]\n" + `plate = { kind = ▲3, runs = "across" }` + "\n[part]\n",
			`a number where a word was expected`,
			`write one of "strap", "plate", "clip", "socket", "rail", "hinge", "stay", "tyre", "band", "ring", "axle" or "spring"`,
		},
		{
			"number for the kind of a part", front + "[part]\n" + `bolster = { kind = ▲3, runs = "across" }` + "\n",
			`a number where the kind of a part was expected`,
			`write it between quotes, such as kind = "reach"`,
		},
		{
			"number out of range", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", number = ▲0 }` + "\n",
			`“0”, which is out of range`,
			`write a whole number from 1 to 200, without quotes`,
		},
		{
			"text in a list", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", photos = ["a.jpg", ▲3] }` + "\n[part]\n",
			`a number where text was expected`,
			`put it between quotes`,
		},
		{
			"list wanted", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", photos = ▲3 }` + "\n[part]\n",
			`a number where a list was expected`,
			`write it between [ and ], with a comma between two`,
		},
		{
			"fastening in one line", `fastening = ▲3
` + front + `[part]
`,
			`a number where [[fastening]] was expected`,
			`write [[fastening]] on a line, once for each fastening`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

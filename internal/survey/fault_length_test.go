package survey

import (
	"strings"
	"testing"
)

func TestLengthFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"cannot be read", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = "1▲,5" }` + "\n[part]\n",
			`an unexpected “,” in “1,5”`,
			`write decimals with a point and thousands with no mark: 1.5, 1200`,
		},
		{
			"a space lost", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", wide = "▲13/4" }` + "\n[part]\n",
			`a fraction of one or more, “13/4”`,
			`write 3 1/4, or 1 3/4 if a space was lost`,
		},
		{
			"zero", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = ▲"0" }` + "\n[part]\n",
			`a length of nothing`,
			`write how long it is, or take it away`,
		},
		{
			"less than nothing", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = ▲"-1/4" }` + "\n[part]\n",
			`a length less than nothing, “-1/4”`,
			`write how long it is`,
		},
		{
			"absurd", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", long = ▲"940" }` + "\n[part]\n",
			`a length of 940 in, more than any vehicle's`,
			`see whether its unit is right; a bare number is in inches`,
		},
		{
			"not a number", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", long = ▲nan }` + "\n[part]\n",
			`“nan”, which is no length`,
			`write a length such as "1 3/4" or "44.5 mm"`,
		},
		{
			"no such instrument", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", thick = "1/4 by ▲calipers" }` + "\n[part]\n",
			`“calipers”, which is no instrument here`,
			`did you mean callipers?`,
		},
		{
			"no such way of knowing", front + "[part]\n" + `bolster = { kind = "bolster", runs = "across", deep = "2 3/4 ▲gess" }` + "\n",
			`“gess”, which is no unit and no way of knowing`,
			`did you mean guess?`,
		},
		{
			"poor angle", front + "[part]\n" + `reach = { kind = "reach", runs = "along", cant = ▲"7 ft" }` + "\n",
			`“7 ft” where an angle was expected`,
			`write degrees, such as "7 1/8 deg"`,
		},
		{
			"angle too wide", front + "[part]\n" + `reach = { kind = "reach", runs = "along", cant = ▲"270 deg" }` + "\n",
			`an angle of 270 degrees`,
			`write one from -180 to 180`,
		},
		{
			"poor count", front + "[part]\n" + `felloe = { kind = "felloe", runs = "round", spokes = ▲2.5 }` + "\n",
			`a number with a point where a whole number was expected`,
			`write a whole number from 1 to 200, without quotes`,
		},
		{
			"hole not beyond the last", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", holes = ["1", ▲"1", "5"] }` + "\n[part]\n",
			`hole 2 at 1 in, which is not beyond hole 1 at 1 in`,
			`write the holes in order from one end, each measured from that end`,
		},
		{
			"holes not in order", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", holes = ["1", "5", ▲"3"] }` + "\n[part]\n",
			`hole 3 at 3 in, which is not beyond hole 2 at 5 in`,
			`write the holes in order from one end, each measured from that end`,
		},
		{
			"hole beyond the end", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", long = "12", holes = ["1", ▲"15"] }` + "\n[part]\n",
			`hole 2 at 15 in in an iron 12 in long`,
			`see which of the two is wrong, and whether both are in the same unit`,
		},
		{
			"off hole beyond the end", front + "[iron]\n" + `plate = { kind = "plate", runs = "along", pair = true, long = "12", holes = ["1", "5"], off = { holes = ["1", ▲"15"] } }` + "\n[part]\n",
			`hole 2 at 15 in in an iron 12 in long`,
			`see which of the two is wrong, and whether both are in the same unit`,
		},
		{
			"off holes too few", front + "[iron]\n" + `plate = { kind = "plate", runs = "along", pair = true, long = "12", holes = ["1", "5"], off = { holes = [▲"1"] } }` + "\n[part]\n",
			`1 hole in the off one and 2 holes in the near one`,
			`write as many for both, or write two irons that are no pair`,
		},
		{
			"off of no pair", front + "[iron]\n" + `plate = { kind = "plate", runs = "along", off = ▲{ long = "1" } }` + "\n[part]\n",
			`readings of the off one of an iron that is no pair`,
			`write pair = true, or write the other iron on a line of its own`,
		},
		{
			"chord alone", front + "[iron]\n" + `tyre = { kind = "tyre", ▲chord = "24" }` + "\n[part]\n",
			`a chord with no rise`,
			`write the rise of the same piece too`,
		},
		{
			"millimetres in one hole", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", holes = ["1 1/2", "15 1/2", ▲"41 mm"] }` + "\n[part]\n",
			`hole 3 at 1 5/8 in, which is not beyond hole 2 at 15 1/2 in`,
			`write the holes in order from one end, each measured from that end`,
		},
		{
			"off read in millimetres", front + "[iron]\n" + `plate = { kind = "plate", runs = "along", pair = true, wide = "2", off = { wide = ▲"50.8" } }` + "\n[part]\n",
			`“wide” of the near one and the off one: 50 13/16 in here and 2 in on line 11, 25 times apart`,
			`see which of them was read in inches or millimetres, and write the unit with it`,
		},
		{
			"25 times its like", front + "[iron]\n" + `a = { kind = "strap", runs = "along", thick = "1/8" }
b = { kind = "strap", runs = "along", thick = "3/16" }
c = { kind = "strap", runs = "along", thick = "1/4" }
d = { kind = "strap", runs = "along", thick = ▲4.5 }` + "\n[part]\n",
			`“thick” of a strap is 4 1/2 in, about 25 times the others, which are near 1/4 in`,
			`see whether it was read in inches or millimetres, and write the unit with it`,
		},
		{
			"a 25th of its like", front + "[iron]\n" + `a = { kind = "strap", runs = "along", wide = "1 1/2" }
b = { kind = "strap", runs = "along", wide = "2" }
c = { kind = "strap", runs = "along", wide = "2 1/2" }
d = { kind = "strap", runs = "along", wide = ▲"2 mm" }` + "\n[part]\n",
			`“wide” of a strap is 3/32 in, about a 25th of the others, which are near 2 in`,
			`see whether it was read in inches or millimetres, and write the unit with it`,
		},
		{
			"found holes beyond the end", front + "[iron]\n" + `plate = { kind = "plate", runs = "across", long = "12", found = { long = "11", holes = ["1", ▲"11 1/2"] } }` + "\n[part]\n",
			`hole 2 at 11 1/2 in in an iron 11 in long`,
			`see which of the two is wrong, and whether both are in the same unit`,
		},
		{
			"tyre runs along", front + "[iron]\n" + `tyre = { kind = "tyre", runs = ▲"along", girth = "125" }` + "\n[part]\n",
			`a tyre that runs along`,
			`leave runs out: a tyre goes round`,
		},
		{
			"plate runs round", front + "[iron]\n" + `plate = { kind = "plate", runs = ▲"round" }` + "\n[part]\n",
			`a plate that runs round`,
			`write along, across or upright; only a tyre, band or ring goes round`,
		},
		{
			"no runs", front + "[iron]\n" + `plate = ▲{ kind = "plate" }` + "\n[part]\n",
			`a plate with no “runs”`,
			`write runs = "along", "across" or "upright"`,
		},
		{
			"unknown kind of iron", front + "[iron]\n" + `plate = { kind = ▲"plait", runs = "across" }` + "\n[part]\n",
			`“plait”, which is not known here`,
			`did you mean plate?`,
		},
		{
			"unknown kind of part", front + "[part]\n" + `bolster = { kind = ▲"bolsters", runs = "across", deep = "4", oddity = 4 }` + "\n",
			`“bolsters”, which is no kind of part here`,
			`did you mean bolster?`,
		},
		{
			"handed, no sides", front + "[part]\n" + `stake = { kind = "stake", runs = "upright", number = 2, ▲handed = true }` + "\n",
			`2 handed parts with no near and off`,
			`write pair = true for a near and an off one (and number for how many such pairs), or take handed away`,
		},
		{
			"handed, one", front + "[part]\n" + `stake = { kind = "stake", runs = "upright", ▲handed = false }` + "\n",
			`handed on a part that is no pair`,
			`write pair = true, or take handed away`,
		},
		{
			"no timber", strings.Replace(front, "timber = \"white oak\"\n", "", 1) + "[part]\nstake = ▲{ kind = \"stake\", runs = \"upright\" }\n",
			`a part with no “timber”`,
			`write timber = "white oak" here, or once for all parts under [wood]`,
		},
		{
			"one file name", front + "[part]\n" + `stake = { kind = "stake", runs = "upright", name = "Stake" }
▲stave = { kind = "stake", runs = "upright", name = "stake!" }` + "\n",
			`“stake!” and “Stake” (line 11), whose files would have one name`,
			`give one of them another name`,
		},
		{
			"bolt shorter than its mark", front + `[bolt]
b = { diameter = "1/2", length = "6", mark = ▲"6 3/4" }
[part]
`,
			`mark is 6 3/4 in on a bolt 6 in long`,
			`see which of the two is wrong`,
		},
		{
			"bolt with nothing", front + `[bolt]
b = ▲{ diameter = "1/2" }
[part]
`,
			`a bolt with neither length nor mark`,
			`write length = "8", under the head, or mark or rusted, from head to nut`,
		},
		{
			"board twice", front + `[part]
[[board]]
id = "b1"
timber = "oak"
thick = 2
wide = 9
long = "8 ft"
[[board]]
id = ▲"b1"
timber = "oak"
thick = 2
wide = 9
long = "8 ft"
`,
			`“b1”, which is the id of another board too, on line 12`,
			`give one of them another id`,
		},
		{
			"as made of no such size", front + "[part]\n" + `stake = { kind = "stake", runs = "upright", as-made = { ▲dep = "2" } }` + "\n",
			`a stake as made has no “dep”`,
			`did you mean deep?`,
		},
		{
			"bolt of 25 times its like", front + things + `[[fastening]]
bolt = "1/2"
down = ["plate#1", "bolster"]
[[fastening]]
bolt = "3/8"
down = ["plate#2", "bolster"]
[[fastening]]
bolt = "1/2"
down = ["plate#3", "bolster"]
[[fastening]]
bolt = ▲12.7
down = ["plate#4", "bolster"]
`,
			`diameter of a bolt is 12 11/16 in, about 25 times the others, which are near 1/2 in`,
			`see whether it was read in inches or millimetres, and write the unit with it`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

package survey

import "testing"

// iron1 is a survey with one iron line, and a part.
func iron1(line string) string { return front + "[iron]\n" + line + "\n[part]\n" }

// bolt1 is a survey with one bolt line.
func bolt1(line string) string { return front + "[bolt]\n" + line + "\n[part]\n" }

func TestEvidenceFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"instrument of no kind", front + "[instrument]\nlong = ▲{ class = \"II\" }\n[part]\n",
			`an instrument with no “kind”`, `write kind = "tape"`,
		},
		{
			"class of callipers", front + "[instrument]\nmy-own = { kind = \"callipers\", class = ▲\"I\" }\n[part]\n",
			`a class of callipers`, `write what they may be off by: zero = "1/64"`,
		},
		{
			"stretched by how much in what", front + "[instrument]\nmy-own = { kind = \"tape\", off = ▲\"1/8\" }\n[part]\n",
			`how far off its whole length may be, with no length`, `write long = "10 ft" too`,
		},
		{
			"an instrument called as any", front + "[instrument]\n▲tape = { kind = \"tape\" }\n[part]\n",
			`“tape” as the id of an instrument, which any tape is called`, `give it an id of its own, such as my-tape`,
		},
		{
			"no such class", front + "[instrument]\nmy-own = { kind = \"tape\", class = ▲\"IV\" }\n[part]\n",
			`“IV”, which is not known here`, `did you mean I?`,
		},
		{
			"an instrument that is not there", front + "[instrument]\nlong-tape = { kind = \"tape\" }\n[iron]\nplate = { kind = \"plate\", runs = \"across\", long = \"36 by ▲lng-tape\" }\n[part]\n",
			`“lng-tape”, which is no instrument here`, `did you mean long-tape?`,
		},
		{
			"a nut of no pattern", front + "[smith]\nnut = ▲\"ancient\"\n[part]\n",
			`“ancient”, which is not known here`, `write modern, old, finished, whitworth or reduced`,
		},
		{
			"a bolt's nut of no pattern", bolt1(`b = { diameter = "1/2", length = "8", nut = ▲"modem" }`),
			`“modem”, which is not known here`, `did you mean modern?`,
		},
		{
			"a bolt with no diameter", bolt1(`b = ▲{ mark = "8" }`),
			`a bolt with no “diameter”`, `write diameter = "1/2", of its shank, or neck, of its square neck or the print of it`,
		},
		{
			"a bolt bent too far", bolt1(`b = { diameter = "1/2", length = "8", bent = ▲"5" }`),
			`a bolt 8 in long that is 5 in off the straight`, `see which of the two is wrong`,
		},
		{
			"a bolt worn away", bolt1(`b = { diameter = "1/2", length = "8", worn = ▲"5" }`),
			`a bolt 8 in long from which 5 in may be gone`, `such a bolt tells nothing: leave its length out`,
		},
		{
			"a nut in two places", bolt1(`b = { diameter = "1/2", mark = "7", ▲rusted = "6 1/2" }`),
			`a nut rusted in its place and a mark of it too`, `write rusted alone: it says where the nut was last`,
		},
		{
			"bent, but how long", iron1(`plate = { kind = "plate", runs = "across", bent = ▲"3" }`),
			`an iron that is bent, with no length`, `write long too, straight from end to end as it is now`,
		},
		{
			"bent double", iron1(`plate = { kind = "plate", runs = "across", long = "10", bent = ▲"7" }`),
			`an iron 10 in long that is 7 in off the straight`, `see which of the two is wrong; one bent further than a half circle must be read along its arc`,
		},
		{
			"a crank beyond the end", iron1(`plate = { kind = "plate", runs = "across", long = "10", crank = { at = ▲"17", by = "1" } }`),
			`a crank at 17 in in an iron 10 in long`, `see which of the two is wrong`,
		},
		{
			"a crank of nothing said", iron1(`plate = { kind = "plate", runs = "across", long = "10", crank = ▲{ at = "7" } }`),
			`a crank with no “by”`, `write by = "3/4"`,
		},
		{
			"one place across too few", iron1(`▲plate = { kind = "plate", runs = "across", long = "10", holes = ["1", "9"], across = ["1"] }`),
			`1 place across for 2 holes`, `write one for each hole`,
		},
		{
			"a hole beside its iron", iron1(`plate = { kind = "plate", runs = "across", wide = "2", long = "10", holes = ["1"], across = [▲"3"] }`),
			`a hole 3 in from the edge of an iron 2 in wide`, `see which of the two is wrong`,
		},
		{
			"a hole beyond the middle's half", iron1(`plate = { kind = "plate", runs = "across", long = "10", from = "middle", holes = [▲"-6", "4"] }`),
			`hole 1 at -6 in in an iron 10 in long`, `see which of the two is wrong, and whether both are in the same unit`,
		},
		{
			"a hole before its end", iron1(`plate = { kind = "plate", runs = "across", long = "10", holes = [▲"-6", "4"] }`),
			`a length less than nothing, “-6”`, `write how long it is`,
		},
		{
			"two points on an arc", iron1(`tyre = { kind = "tyre", points = ▲[["0", "0"], ["6", "2"]] }`),
			`2 points on an arc`, `write three pairs or more, each along a straight edge and out from it: [["0", "0"], ["6", "1 1/2"], ["12", "0"]]`,
		},
		{
			"points on a line", iron1(`tyre = { kind = "tyre", points = ▲[["0", "0"], ["6", "3"], ["12", "6"]] }`),
			`points that lie on one line, as nearly as they were read`, `take them farther apart along the piece; of too short a piece the size cannot be told`,
		},
		{
			"a bruise at no thing", front + things + "[[fastening]]\nbolt = \"1/2\"\ndown = [\"plate#1\", \"bolster\"]\nshear = ▲\"sill 3\"\n",
			`a bruise at “sill”, through which the fastening does not go`, `write plate`,
		},
		{
			"a bruise at the nut", front + things + "[[fastening]]\nbolt = \"1/2\"\ndown = [\"plate#1\", \"bolster\"]\nshear = ▲\"bolster 3\"\n",
			`a bruise at the far face of “bolster”, which is the last thing before the nut`, `write that as grip`,
		},
		{
			"a bruise nowhere", front + things + "[[fastening]]\nbolt = \"1/2\"\ndown = [\"plate#1\", \"bolster\"]\nshear = ▲\"plate\"\n",
			`“plate” as a bruise`, `write the thing whose far face bore there and how far that is from the head: "reach 2 7/16"`,
		},
		{
			"a bolt too few", front + things + "[bolt]\na = { diameter = \"1/2\", mark = \"3\" }\n[[fastening]]\nbolt = ▲[\"a\"]\ndown = [\"cross-bar\", \"sill-plate#1,2,3\"]\n",
			`1 bolt for a row of 3`, `write one id for each, near and off, "-" for one not found, set out as grips are`,
		},
		{
			"bolts that are not there", front + things + "[[fastening]]\nbolt = ▲[\"x\", \"y\"]\ndown = [\"sill-plate#1\", \"sill\"]\n",
			`a list of bolts, none of which stands under [bolt]`, `write their ids, as bolt = ["long-one", "-"]`,
		},
		{
			"damp by no number", front + "tightened = \"▲damp\"\n[part]\n",
			`“damp”, which is no number`, `write moisture in percent from 3 to 40, without quotes`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

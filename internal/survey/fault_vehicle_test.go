package survey

import (
	"strings"
	"testing"
)

func TestVehicleFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"no vehicle", `▲[wood]
timber = "white oak"
bought = 15
service = 12
[part]
`,
			`no [vehicle] in the file`,
			`write one; see the reference`,
		},
		{
			"no name", `[▲vehicle]
issue = "A"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`[vehicle] with no “name”`,
			`write name = "Orchard wagon"`,
		},
		{
			"no issue", `[▲vehicle]
name = "Orchard wagon"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`[vehicle] with no “issue”`,
			`write issue = "A"`,
		},
		{
			"no date", `[▲vehicle]
name = "Orchard wagon"
issue = "A"
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`[vehicle] with no “date”`,
			`write date = 2026-10-30`,
		},
		{
			"no unit", `[▲vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`[vehicle] with no “unit”`,
			`write unit = "in"`,
		},
		{
			"poor unit", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = ▲"cm"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`“cm” as the unit of a survey`,
			`write "in" or "mm"; any one length can still be in another: "3 ft 6", "44.5 mm"`,
		},
		{
			"no such unit", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = ▲"cubits"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`“cubits” as the unit of a survey`,
			`write "in" or "mm"; any one length can still be in another: "3 ft 6", "44.5 mm"`,
		},
		{
			"no such day", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = ▲2026-02-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`“2026-02-30”, which is no day of the calendar`,
			`write year, month and day, such as 2026-10-30`,
		},
		{
			"date and time", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = ▲2026-02-03T10:00:00
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`a time of day where a date was expected`,
			`write year, month and day, such as 2026-10-30`,
		},
		{
			"poor issue", `[vehicle]
name = "Orchard wagon"
issue = ▲"first draft"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`“first draft” as an issue`,
			`write a letter or a short number, such as "A" or "3"`,
		},
		{
			"issue a number", `[vehicle]
name = "Orchard wagon"
issue = ▲1
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`a number where text was expected`,
			`write it between quotes: "1"`,
		},
		{
			"empty name", `[vehicle]
name = ▲""
issue = "A"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`empty text`,
			`write something between the quotes, or take the line away`,
		},
		{
			"name that gives no file", `[vehicle]
name = ▲"???"
issue = "A"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`“???”, from which no file can be named`,
			`use letters a to z or figures in it`,
		},
		{
			"control character in text", `[vehicle]
name = "Orchard▲\u0007 wagon"
issue = "A"
date = 2026-10-30
unit = "in"` + "\n[wood]\nbought = 15\nservice = 12\n[part]\n",
			`a control character (0x07) in text`,
			`take it out`,
		},
		{
			"no part section", strings.Replace(front, "[vehicle]", "▲[vehicle]", 1),
			`no [part] in the file`,
			`write one; see the reference`,
		},
		{
			"no wood", `▲[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[part]
`,
			`no [wood] in the file`,
			`write one; see the reference`,
		},
		{
			"no service", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[▲wood]
bought = 15
[part]
`,
			`[wood] with no word of the moisture it will live at`,
			`write service = 12, or place, or climate`,
		},
		{
			"no bought", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[▲wood]
service = 12
[part]
`,
			`[wood] with no “bought”`,
			`write bought = 15`,
		},
		{
			"too wet", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = ▲115
service = 12
[part]
`,
			`“115”, which is out of range`,
			`write moisture in percent from 0 to 100, without quotes`,
		},
		{
			"service too wet", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = ▲30
[part]
`,
			`“30”, which is out of range`,
			`write moisture in percent from 3 to 28, without quotes`,
		},
		{
			"service too dry", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = "▲2 .. 9"
[part]
`,
			`“2”, which is out of range`,
			`write moisture in percent from 3 to 28, without quotes`,
		},
		{
			"service the wrong way", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = ▲"14 .. 9"
[part]
`,
			`“14 .. 9”, with the wettest first`,
			`write the driest first`,
		},
		{
			"service in words", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = ▲"indoors"
[part]
`,
			`“indoors” where moisture was expected`,
			`write one number without quotes, such as 12, or "9 .. 14"`,
		},
		{
			"service, half a word", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = "9 .. ▲dry"
[part]
`,
			`“dry”, which is no number`,
			`write moisture in percent from 3 to 28, without quotes`,
		},
		{
			"service and place", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
service = 12
▲place = "Denver CO"
[part]
`,
			`service and place together`,
			`write one of them`,
		},
		{
			"climate short", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
climate = ▲[[2, 80], [5, 75]]
[part]
`,
			`a climate of 2 months`,
			`write twelve pairs, from January on, such as [[2, 80], [5, 75] and so on]`,
		},
		{
			"climate, no pair", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
climate = [[2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], ▲[2]]
[part]
`,
			`a month that is no pair`,
			`write degrees Celsius and percent humidity, such as [2, 80]`,
		},
		{
			"climate, no such humidity", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = 15
climate = [[2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, 80], [2, ▲180]]
[part]
`,
			`“180”, which is out of range`,
			`write percent humidity from 1 to 100, without quotes`,
		},
		{
			"moisture in quotes", `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
bought = ▲"15"
service = 12
[part]
`,
			`text where a number was expected`,
			`write moisture in percent from 0 to 100, without quotes`,
		},
		{
			"doubt of nothing", front + `[doubts]
rule = ▲"0"
[part]
`,
			`a length of nothing`,
			`write how long it is, or take it away`,
		},
		{
			"unknown doubt", front + `[doubts]
▲calipers = "1/64"
[part]
`,
			`[doubts] has no “calipers”`,
			`did you mean callipers?`,
		},
	} {
		t.Run(f.name, f.run)
	}
}

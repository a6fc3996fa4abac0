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
	} {
		t.Run(f.name, f.run)
	}
}

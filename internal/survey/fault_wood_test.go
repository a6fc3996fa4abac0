package survey

import (
	"testing"
)

func TestWoodFaults(t *testing.T) {
	for _, f := range []faulty{
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

package survey

import (
	_ "embed"
	"fmt"
	"strings"

	"lostwood/parts"
)

//go:embed example.toml
var example string

// Reference returns the page, in Markdown, that explains the file to whoever
// writes one. It is made from what the reader itself goes by.
func Reference() string {
	var b strings.Builder
	b.WriteString(pageHead)
	for _, s := range sections() {
		writeSection(&b, s)
		switch s.name {
		case "part":
			writeKinds(&b, parts.Kinds())
		case "evidence":
			writeFeatures(&b)
		}
	}
	fmt.Fprintf(&b, "\n## A small survey, whole\n\n```toml\n%s```\n", example)
	return b.String()
}

const pageHead = `# The survey file

A survey is a plain text file. Any plain text editor will do; save it as UTF-8.
It says what was found and measured of one vehicle. Whatever is wrong in it is
told all at once, each with its line, and nothing is made until it is mended.

## How it is written

- A heading stands in brackets on a line of its own: ` + "`[vehicle]`" + `. What belongs to it
  stands below it, one ` + "`name = value`" + ` on a line.
- Text and lengths stand between plain quotes: ` + "`\"white ash\"`, `\"1 3/4\"`" + `. Whole numbers,
  dates and true or false stand without.
- A list stands between ` + "`[ ]`" + ` with commas: ` + "`[\"1 1/2\", \"15 1/2\"]`" + `. What belongs to one
  iron or part stands between ` + "`{ }`" + ` with commas, or below a heading of its own:
  ` + "`[iron.reach-plate]`" + `.
- What follows ` + "`#`" + ` on a line is a remark.
- A length is written as people write it: ` + "`\"1 3/4\"`, `\"3 ft 6 1/2\"`, `\"12.5\"`, `\"44.5 mm\"`" + `. A
  bare number is in the survey's unit. After it can stand how far off it may be,
  ` + "`\"1 3/4 ± 1/16\"`" + `, or what it was read with, ` + "`\"1 3/4 by tape\"`" + ` (rule, callipers or tape,
  or one of your own under [instrument]), or both; and ` + "`\"3/16 by callipers on rust\"`" + ` where it was rusty.
- Every iron, part and bolt has a short id of your own, and no two the same: letters,
  figures and hyphens, a letter first.
- Near is the left side looking forward, off the right; fore and hind. What is one of a
  near and off pair is written once, with ` + "`pair = true`" + `; what stands in a row is written
  once, with ` + "`number = 3`" + `. Where one of them is meant it is ` + "`near-reach`, `off-reach`,\n  `cross-bar-2` or `near-slat-2`" + `.
`

// writeSection explains one heading and its lines.
func writeSection(b *strings.Builder, s section) {
	title := "[" + s.name + "]"
	if s.form == headingEach {
		title = "[[" + s.name + "]]"
	}
	if s.need == must {
		title += " (must be there)"
	}
	fmt.Fprintf(b, "\n## %s\n\n%s\n\n", title, s.means)
	for _, e := range s.lines() {
		need := ""
		if e.need == must {
			need = " (must be there)"
		}
		fmt.Fprintf(b, "- **%s**%s: %s\n  `%s = %s`\n", e.name, need, e.means, e.name, e.example)
	}
}

// writeKinds lists the kinds of part and what each can be asked.
func writeKinds(b *strings.Builder, kinds []parts.Kind) {
	b.WriteString("\n### Kinds of part\n\nThe dimensions of each can stand in a part's line, and in statements. " +
		"Those in brackets belong to work that is left out where they are not given; the others are wanted, from irons, statements or the line itself.\n\n")
	for _, k := range kinds {
		fmt.Fprintf(b, "- **%s**: %s.\n", k.Name, strings.TrimSuffix(k.Means, "."))
		for _, d := range k.Dimensions {
			name := d.Name
			if d.Need == parts.Optional {
				name = "(" + name + ")"
			}
			fmt.Fprintf(b, "  - %s: %s%s\n", name, d.Means, measuredIn(d.In))
		}
	}
}

func measuredIn(m parts.Measured) string {
	switch m {
	case parts.InCount:
		return ` (a whole number without quotes: 12)`
	case parts.InDegrees:
		return ` (an angle: "7 1/8 deg")`
	}
	return ""
}

// writeFeatures lists what a statement can speak of.
func writeFeatures(b *strings.Builder) {
	b.WriteString("\n### What a statement can speak of\n\n" +
		"- Of a part: any dimension of its kind that is a length.\n" +
		"- Of an iron: " + listed(straightSizes(), "and") + "; of a socket also mouth; of a tyre, band or ring " +
		listed(roundSizes(), "and") + ", where radius is that of its inside, which is the wood's.\n" +
		"- Of both, their places: " + listed(places(), "and") + ". Fore, hind and mid-x lie fore and aft; near, off, outer, inner and mid-y across; " +
		"top, under and mid-z up and down. Outer and inner are for a pair. What goes round has no place.\n" +
		"- Of a hole, its middle: `plate#3.x` (fore and aft), `plate#3.y` (across), `plate#3.z` (up and down).\n" +
		"- Places count forward, to the near side and upward. What stands in one statement must lie the same way.\n")
}

package survey

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Each line that cannot be made out is told in plain words, with the line itself.
func TestBrokenLines(t *testing.T) {
	iron := func(s string) string { return "[iron]\n" + s }
	for _, f := range []faulty{
		{
			"no equals", iron("plate ▲{ kind = \"plate\" }\n"),
			`“{” where = was expected after the name`,
			`write one name = value a line, and put text and lengths between quotes, such as thick = "1 1/4"`,
		},
		{
			"no equals, two words", iron("hind ▲plate = 3\n"),
			`“plate” where = was expected after the name`,
			`write one name = value a line, and put text and lengths between quotes, such as thick = "1 1/4"`,
		},
		{
			"name begins badly", iron("▲(plate) = 3\n"),
			`“(” where a name was expected`,
			`begin with a name of letters, figures and hyphens, or with # for a remark`,
		},
		{
			"curly quotes", iron("plate = ▲“iron”\n"),
			`a curly mark, “,`,
			`write plain quotes, ", as a typewriter has them`,
		},
		{
			"nothing after =", iron("plate =▲\n"),
			`nothing after =`,
			`write the value after it, or take the line away`,
		},
		{
			"nothing after =, end", iron("plate =▲"),
			`nothing after =`,
			`write the value after it, or take the line away`,
		},
		{
			"remark after =", iron("plate = ▲# nothing\n"),
			`nothing after =`,
			`write the value after it, or take the line away`,
		},
		{
			"no quotes", iron("plate = ▲strap\n"),
			`“strap” where a value was expected`,
			`put text and lengths between quotes, such as "1 3/4" or "44.5 mm"`,
		},
		{
			"no quotes, t", iron("plate = ▲tyre\n"),
			`“tyre” where a value was expected`,
			`put text and lengths between quotes, such as "1 3/4" or "44.5 mm"`,
		},
		{
			"fraction, no quotes", iron("plate = 3▲/4\n"),
			`“/” straight after a value`,
			`put lengths and other text between quotes, and one name = value on a line`,
		},
		{
			"mixed, no quotes", iron("plate = 1 ▲3/4\n"),
			`“3” straight after a value`,
			`put lengths and other text between quotes, and one name = value on a line`,
		},
		{
			"unit, no quotes", iron("plate = 44▲mm\n"),
			`“mm” straight after a value`,
			`put lengths and other text between quotes, and one name = value on a line`,
		},
		{
			"inch mark in quotes", iron("plate = { thick = \"7/8\"▲\" }\n"),
			`a second quote after the value`,
			`write the length without the mark for inches, such as "7/8" or "7/8 in"`,
		},
		{
			"inch mark after quotes", iron("plate = \"7/8\"▲\"\n"),
			`a second quote after the value`,
			`write the length without the mark for inches, such as "7/8" or "7/8 in"`,
		},
		{
			"quote not closed", iron("plate = ▲\"7/8\n"),
			`a quote that is not closed`,
			`close it with the same mark on the same line`,
		},
		{
			"quote not closed in group", iron("plate = { kind = \"plate\", thick = ▲\"7/8 }\n"),
			`a quote that is not closed`,
			`close it with the same mark on the same line`,
		},
		{
			"single quote not closed", iron("plate = ▲'7/8\n"),
			`a quote that is not closed`,
			`close it with the same mark on the same line`,
		},
		{
			"three quotes not closed", iron("note = ▲\"\"\"never\nends\n"),
			`a quote that is not closed`,
			`close it with the same mark on the same line`,
		},
		{
			"list not closed", "[evidence]\nlike = ▲[\"1\", \"2\"\nguess = []\n",
			`“[” that is not closed`,
			`write ] after its last value`,
		},
		{
			"list not closed at end", iron("holes = ▲[\"1\", \"2\"\n"),
			`“[” that is not closed`,
			`write ] after its last value`,
		},
		{
			"group not closed", "[iron]\nplate = ▲{ kind = \"plate\"\nstrap = { kind = \"strap\" }\n",
			`“{” that is not closed`,
			`write } after its last value`,
		},
		{
			"group not closed at end", iron("plate = ▲{ kind = \"plate\", "),
			`“{” that is not closed`,
			`write } after its last value`,
		},
		{
			"no comma in list", iron("holes = [\"1\" ▲\"2\"]\n"),
			`“"” where a comma or ] was expected`,
			`write a comma between two values, and ] after the last`,
		},
		{
			"no comma in group", iron("plate = { kind = \"plate\" ▲runs = \"along\" }\n"),
			`“runs” where a comma or } was expected`,
			`write a comma between two values, and } after the last`,
		},
		{
			"two commas", iron("holes = [\"1\", ▲, \"2\"]\n"),
			`a comma with nothing before it`,
			`write one comma between two values`,
		},
		{
			"two commas in group", iron("plate = { kind = \"plate\", ▲, runs = \"along\" }\n"),
			`a comma with nothing before it`,
			`write one comma between two values`,
		},
		{
			"heading not closed", "[iron▲\n",
			`a heading whose bracket is not closed`,
			`write it as [iron] or [[fastening]]`,
		},
		{
			"heading half closed", "[[fastening▲]\n",
			`a heading whose bracket is not closed`,
			`write it as [iron] or [[fastening]]`,
		},
		{
			"empty heading", "[▲]\n",
			`“]” where a name was expected`,
			`begin with a name of letters, figures and hyphens, or with # for a remark`,
		},
		{
			"backslash", iron("photo = \"C:▲\\photos\"\n"),
			`a \ in text, with “p” after it`,
			`write / for \ in names of files, and nothing else with a \`,
		},
		{
			"number with nought first", iron("n = ▲012\n"),
			`a number that cannot be read`,
			`write a plain number such as 12 or 0.5, or put it between quotes`,
		},
		{
			"number with point last", iron("n = 12.▲\n"),
			`a number that cannot be read`,
			`write a plain number such as 12 or 0.5, or put it between quotes`,
		},
		{
			"number with point first", iron("n = ▲.5\n"),
			`“.” where a value was expected`,
			`put text and lengths between quotes, such as "1 3/4" or "44.5 mm"`,
		},
		{
			"minus alone", iron("n = -▲\n"),
			`a number that cannot be read`,
			`write a plain number such as 12 or 0.5, or put it between quotes`,
		},
		{
			"semicolon", iron("n = 12▲;\n"),
			`“;” straight after a value`,
			`put lengths and other text between quotes, and one name = value on a line`,
		},
		{
			"space from a word processor", iron("▲\u00a0n = 12\n"),
			`a space that does not break (from a word processor) where a name was expected`,
			`begin with a name of letters, figures and hyphens, or with # for a remark`,
		},
		{
			"wrong bracket", iron("holes = [\"1\", \"2\"▲}\n"),
			`“}” where a comma or ] was expected`,
			`write a comma between two values, and ] after the last`,
		},
		{
			"two on a line", iron("n = 12 ▲m = 13\n"),
			`“m” straight after a value`,
			`put lengths and other text between quotes, and one name = value on a line`,
		},
		{
			"nested", iron("n = ▲" + strings.Repeat("[", 20000) + "\n"),
			`brackets within brackets without end`,
			`write one list, or a list of lists at most`,
		},
		{
			"name with a point last", iron("n.▲\n"),
			`a line that ends in the middle of a name`,
			`write one name = value a line, and put text and lengths between quotes, such as thick = "1 1/4"`,
		},
	} {
		t.Run(f.name, func(t *testing.T) {
			text, at := marked(t, f.text)
			_, err := read("wagon.toml", []byte(text), fakeKinds())
			var faults *Faults
			require.ErrorAs(t, err, &faults)
			lines := strings.Split(text, "\n")
			require.Equal(t, []Fault{{At: at, Found: f.found, Want: f.want, Line: shownLine(lines[at.Line-1])}}, faults.List)
		})
	}
}

package survey

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/parts"
)

// What TOML v1.0.0 (toml.io/en/v1.0.0) lays down of names that stand twice, by
// its sections Keys, Table, Inline Table and Array of Tables. The examples are ours.
func TestTOMLOnNamesTwice(t *testing.T) {
	for _, c := range []struct {
		name, text string
		twice      int
	}{
		{"a name once", "a = 1\nb = 2\n", 0},
		{"a name twice", "a = 1\na = 2\n", 1},
		{"quoted and bare are one name", "a = 1\n\"a\" = 2\n", 1},
		{"dotted names make a table", "a.b = 1\na.c = 2\n", 0},
		{"a dotted name into a value", "a = 1\na.b = 2\n", 1},
		{"a table twice", "[a]\nb = 1\n[a]\nc = 2\n", 1},
		{"a table after its own sub-table", "[a.b]\nc = 1\n[a]\nd = 2\n", 0},
		{"a table over a value", "[a]\nb = 1\n[a.b]\nc = 2\n", 1},
		{"an inline table is whole", "a = { b = 1 }\na.c = 2\n", 1},
		{"an inline table takes no sub-table", "[x]\na = { b = 1 }\n[x.a.c]\nd = 2\n", 1},
		{"a name twice in an inline table", "a = { b = 1, b = 2 }\n", 1},
		{"an array of tables", "[[a]]\nb = 1\n[[a]]\nb = 2\n", 0},
		{"a sub-table of the last of an array", "[[a]]\n[a.b]\nc = 1\n[[a]]\n[a.b]\nc = 2\n", 0},
		{"a static array takes no more", "a = []\n[[a]]\n", 1},
		{"an array is no table", "[[a]]\n[a]\n", 1},
		{"a table is no array", "[a]\n[[a]]\n", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, slips, faults := plant(newSource([]byte(c.text)))
			require.Empty(t, slips)
			require.Len(t, faults, c.twice)
			for _, f := range faults {
				require.Contains(t, f.found, "stands twice")
			}
		})
	}
}

// Slips between words, as V. Levenshtein (1966) counts them, with neighbours
// changed over as one slip (optimal string alignment). The pairs are the usual
// worked examples (from memory).
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3},
		{"saturday", "sunday", 3},
		{"ca", "abc", 3},
		{"thick", "thick", 0},
		{"tihck", "thick", 1},
		{"", "", 0},
	} {
		require.Equal(t, c.want, slips(c.a, c.b), c.a)
		require.Equal(t, c.want, slips(c.b, c.a), c.b)
	}
}

// The Gregorian calendar: leap days stand in years that four divides, but not
// in those that a hundred divides and four hundred does not (ISO 8601).
func TestCalendar(t *testing.T) {
	for day, ok := range map[string]bool{
		"2024-02-29": true, "2026-02-29": false, "2000-02-29": true, "2100-02-29": false, "2026-13-01": false, "2026-04-31": false,
	} {
		text := "[vehicle]\nname = \"Wagon\"\nissue = \"A\"\ndate = " + day + "\nunit = \"in\"\n[wood]\nbought = 15\nservice = 12\n[part]\n"
		_, err := read("wagon.toml", []byte(text), fakeKinds())
		require.Equal(t, ok, err == nil, "%s: %v", day, err)
	}
}

// Every real kind can be written: no dimension has the name of a line that all parts have.
func TestDimensionsAreLinesOfTheirOwn(t *testing.T) {
	for _, k := range parts.Kinds() {
		for _, d := range k.Dimensions {
			require.Nil(t, find(partKeys(), d.Name), "%s %s", k.Name, d.Name)
			require.NotContains(t, places(), d.Name, k.Name)
		}
	}
}

// Every table of lines names each line once, and no other word of one is a line of the same thing.
func TestLinesAreNamedOnce(t *testing.T) {
	for _, s := range sections() {
		seen := map[string]bool{}
		for _, e := range s.lines() {
			require.False(t, seen[e.name], "%s %s", s.name, e.name)
			seen[e.name] = true
		}
	}
}

package survey

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/parts"
)

// fakeKinds are kinds of part for tests alone, so that the tests do not hang on
// what package parts has.
func fakeKinds() []parts.Kind {
	box := []parts.Dimension{
		{Name: "long", Axis: parts.AlongX}, {Name: "wide", Axis: parts.AcrossY}, {Name: "deep", Axis: parts.UpZ},
	}
	with := func(more ...parts.Dimension) []parts.Dimension { return append(box[:3:3], more...) }
	taper := parts.Dimension{Name: "taper", Need: parts.Optional}
	return []parts.Kind{
		{Name: "bolster", Dimensions: box},
		{Name: "cross bar", Dimensions: box},
		{Name: "reach", Dimensions: with(taper, parts.Dimension{Name: "cant", In: parts.InDegrees, Need: parts.Optional})},
		{Name: "slat", Dimensions: box},
		{Name: "stake", Dimensions: box},
		{Name: "felloe", Dimensions: append(box[:2:2], parts.Dimension{Name: "radius"}, parts.Dimension{Name: "spokes", In: parts.InCount})},
	}
}

// front is the beginning of every survey in the tests.
const front = `[vehicle]
name = "Orchard wagon"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
timber = "white oak"
bought = 15
service = 12
`

// things are irons and parts for the tests to speak of.
const things = `[iron]
plate = { kind = "plate", runs = "across", thick = "1/4", wide = "3", long = "37", holes = ["1 1/2", "9 1/2", "27 1/2", "35 1/2"] }
sill-plate = { kind = "strap", runs = "along", pair = true, thick = "1/8", wide = "2", long = "84", holes = ["2", "9", "46", "74", "82"] }
tyre = { kind = "tyre", girth = "125 5/8", wide = "1 1/2", thick = "3/8" }
[part]
bolster = { kind = "bolster", runs = "across" }
sill = { kind = "reach", runs = "along", pair = true }
cross-bar = { kind = "cross bar", runs = "across", number = 3 }
stake = { kind = "stake", runs = "upright", pair = true }
felloe = { kind = "felloe", runs = "round" }
`

// marked takes the mark ▲ out of a survey and tells where it stood, in lines
// and characters.
func marked(t *testing.T, text string) (string, Position) {
	t.Helper()
	before, after, ok := strings.Cut(text, "▲")
	require.True(t, ok, "no mark in the test's survey")
	lines := strings.Split(before, "\n")
	return before + after, Position{Line: len(lines), Column: len([]rune(lines[len(lines)-1])) + 1}
}

// comparable is a survey without what differs between two files that say the
// same: its name and hash, and functions, which Go does not compare.
func comparable(s *Survey) Survey {
	c := *s
	c.File, c.Hash = "", ""
	c.Parts = append([]Part(nil), s.Parts...)
	for i := range c.Parts {
		c.Parts[i].Kind.Build = nil
	}
	return c
}

package parts_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/parts"
)

func TestKinds(t *testing.T) {
	var names []string
	for _, k := range parts.Kinds() {
		names = append(names, k.Name)
		found, err := parts.Find(k.Name)
		require.NoError(t, err)
		require.Equal(t, k.Dimensions, found.Dimensions)
		seen := map[string]bool{}
		for _, d := range k.Dimensions {
			require.False(t, seen[d.Name], "%s has %s twice", k.Name, d.Name)
			seen[d.Name] = true
			require.NotEmpty(t, d.Means)
		}
		require.NotEmpty(t, k.Means)
	}
	require.True(t, slices.IsSorted(names))
	require.Equal(t, []string{
		"axle bed", "bolster", "cross bar", "felloe", "nave", "reach", "riser", "sand board", "seat board",
		"seat rail", "side rail", "sill", "slat", "spoke", "tailboard",
	}, names)
}

func TestFindSuggests(t *testing.T) {
	_, err := parts.Find("felly")
	require.EqualError(t, err, `there is no kind of part called "felly"; did you mean "felloe"?`)
	_, err = parts.Find("crossbar")
	require.EqualError(t, err, `there is no kind of part called "crossbar"; did you mean "cross bar"?`)
}

func TestBuildTellsAllAtOnce(t *testing.T) {
	k, err := parts.Find("felloe")
	require.NoError(t, err)
	_, err = k.Build(parts.Measures{
		Lengths: map[string]parts.Length{"radius": 500, "felloes": 6, "dowl": 12},
	})
	require.EqualError(t, err, "felloe: wide is missing: across the rim, as wide as the tyre\n"+
		"felloe: deep is missing: from back to belly, along a spoke\n"+
		"felloe: felloes has to be a number of pieces\n"+
		`felloe: it has no dimension "dowl"; did you mean "dowel"?`)
}

func TestBuildKeepsTheWork(t *testing.T) {
	for _, k := range parts.Kinds() {
		m := parts.Measures{Lengths: map[string]parts.Length{}, Counts: map[string]int{}}
		for _, d := range k.Dimensions {
			if d.Need == parts.Required {
				m.Lengths[d.Name] = 60
			}
		}
		own := 0
		switch k.Name {
		case "felloe":
			delete(m.Lengths, "felloes")
			m.Lengths["radius"], m.Counts["felloes"] = 500, 6
		case "nave":
			m.Lengths["long"], m.Lengths["diameter"], m.Counts["spokes"], own = 400, 260, 12, 13
			delete(m.Lengths, "spokes")
			m.Lengths["back"], m.Lengths["front"], m.Lengths["forward"], m.Lengths["box-long"] = 200, 200, 200, 300
			m.Lengths["foot-thick"] = 24
		case "spoke":
			m.Lengths["between"], m.Lengths["tongue"], own = 400, 30, 3
			for _, n := range []string{"tip-wide", "tip-thick", "foot-wide", "foot-thick"} {
				m.Lengths[n] = 40
			}
		default:
			m.Lengths["long"] = 900
		}
		m.Work = []parts.Feature{parts.EndHole{ID: "joint 9", What: "dowel hole", End: parts.FirstEnd, Diameter: 10, Depth: 20}}
		p, err := k.Build(m)
		require.NoError(t, err)
		require.NoError(t, p.Validate(), k.Name)
		fs := p.Stick().Features
		require.Len(t, fs, len(m.Work)+own, k.Name)
		require.Equal(t, m.Work, fs[:len(m.Work)], k.Name)
	}
}

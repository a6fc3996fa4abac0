package derive

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"flag"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
	"lostwood/internal/demo"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

var update = flag.Bool("update", false, "rewrite golden files")

// studied is the study of a survey.
func studied(t *testing.T, data []byte) *Study {
	t.Helper()
	s, err := survey.Read("demo", data)
	require.NoError(t, err)
	woods, err := timber.Published()
	require.NoError(t, err)
	st, err := Examine(s, woods)
	require.NoError(t, err)
	return st
}

// without takes lines that hold some words out of the demo's survey.
func without(t *testing.T, words ...string) []byte {
	t.Helper()
	var out []string
	for _, l := range strings.Split(string(demo.Survey()), "\n") {
		keep := true
		for _, w := range words {
			keep = keep && !strings.Contains(l, w)
		}
		if keep {
			out = append(out, l)
		}
	}
	return []byte(strings.Join(out, "\n"))
}

// looser is the demo with sizes that nothing tells: one a width, one a length that
// a place of its other end would tell, one a whole family's.
func looser(t *testing.T) []byte {
	return without(t, `"sand-board.wide`, `"seat-board.long`, `"slat-in.hind`, `"cross-bar.long`)
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := "testdata/" + name + ".golden"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, got, 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), string(got))
}

func TestWhyGolden(t *testing.T) {
	st := studied(t, demo.Survey())
	var b bytes.Buffer
	for _, name := range []string{"near-reach.deep", "sill.fastening 12.2", "slat-in.long"} {
		as, err := st.Why(name)
		require.NoError(t, err)
		require.NoError(t, listing.WriteWhy(&b, as, st.Vehicle.Unit, listing.Table))
		b.WriteString("\n")
	}
	golden(t, "why", b.Bytes())
}

// The shares of all that bears on a size are the whole of it.
func TestWhySharesAreWhole(t *testing.T) {
	for name, data := range map[string][]byte{"demo": demo.Survey(), "looser": looser(t)} {
		t.Run(name, func(t *testing.T) {
			st := studied(t, data)
			checked := 0
			for i, g := range st.matter {
				if doubt := st.fit.DoubtOf(g.term); i%3 != 0 || math.IsInf(doubt, 1) {
					continue
				}
				all := st.bearings(g.term, g.member)
				var singly []vehicle.Bearing
				for _, b := range all {
					singly = append(singly, b.Bearing)
				}
				for _, bs := range [][]vehicle.Bearing{singly, told(all)} {
					share, square := 0.0, 0.0
					for _, b := range bs {
						share += b.Share
						square += b.Adds.Millimetres() * b.Adds.Millimetres()
					}
					require.InDelta(t, 1, share, 1e-9, g.subject)
					require.InDelta(t, st.fit.DoubtOf(g.term), math.Sqrt(square), 1e-9, g.subject)
				}
				checked++
			}
			require.Greater(t, checked, 100)
		})
	}
}

// What one observation alone would say is what the size comes to when it is solved
// again with that one as good as exact.
func TestWhyAloneIsResolved(t *testing.T) {
	st := studied(t, demo.Survey())
	checked := 0
	for _, name := range []string{"near-reach.deep", "hind-bolster.deep", "cross-bar-2.wide", "slat-in.long", "hind-felloe.radius", "cross-bar.long"} {
		ts, err := st.find(name)
		require.NoError(t, err)
		for i, b := range st.bearings(ts[0].term, ts[0].member) {
			if b.observation == none || i > 6 || math.IsNaN(b.Alone.Millimetres()) {
				continue
			}
			o := st.network.problem.Observations[b.observation]
			spread := st.fit.DoubtOf(o.Model(st.fit.X))
			p := st.network.problem
			p.Start = st.fit.X
			p.Observations = append(append([]adjust.Observation(nil), p.Observations...), adjust.Observation{Value: o.Value, Doubt: spread * 1e-4, Model: o.Model})
			sol, err := adjust.Solve(p)
			require.NoError(t, err)
			want := 0.0
			for _, q := range ts[0].term.Slopes {
				want += q.Slope * sol.X[q.Unknown]
			}
			// A chord and a rise bend: what they say is as good as their slopes.
			tolerance := 1e-5
			if strings.Contains(name, "felloe") {
				tolerance = 0.02
			}
			require.InDelta(t, want, b.Alone.Millimetres(), tolerance, "%s: %s", name, b.Says)
			checked++
		}
	}
	require.Greater(t, checked, 20)
}

// A name that is none gets the nearest that is.
func TestWhyUnknownNames(t *testing.T) {
	st := studied(t, demo.Survey())
	for name, hint := range map[string]string{
		"near-rech.deep":       "did you mean near-reach?",
		"cross-bra-2.wide":     "did you mean cross-bar-2?",
		"reach.depe":           "did you mean deep?",
		"reach.fastening 55":   "did you mean fastening 5?",
		"reach":                "say which of its sizes, such as near-reach.long",
		"reach.":               "It has long, wide, deep",
		"":                     "its parts are fore-bed",
		"wheelbarrow-axle.x":   "its parts are fore-bed",
		"sand-board.moonlight": "has no",
	} {
		_, err := st.Why(name)
		var named *NameError
		require.ErrorAs(t, err, &named, name)
		assert.Contains(t, err.Error(), hint, name)
	}
}

// Everything that can be asked has an answer, in words that people use.
func TestWhyAnswersEverything(t *testing.T) {
	st := studied(t, demo.Survey())
	asked := 0
	for i, m := range st.network.members {
		for k, f := range st.features(m) {
			if (i+k)%13 != 0 {
				continue
			}
			as, err := st.Why(m.id + "." + f)
			require.NoError(t, err, "%s.%s", m.id, f)
			var b bytes.Buffer
			require.NoError(t, listing.WriteWhy(&b, as, st.Vehicle.Unit, listing.Table))
			for _, wrong := range []string{"NaN", "Inf", "%!", "variance", "residual", "sigma", "redundan", "  is is "} {
				require.NotContains(t, b.String(), wrong, "%s.%s", m.id, f)
			}
			asked++
		}
	}
	require.Greater(t, asked, 60)
}

// Of what is not known it is said why, and what would settle it.
func TestWhyNotKnown(t *testing.T) {
	st := studied(t, looser(t))
	as, err := st.Why("sand-board.wide")
	require.NoError(t, err)
	require.Equal(t, quantity.Unknown, as[0].Size.Known)
	require.NotEmpty(t, as[0].Open)
	require.Contains(t, as[0].Open[0], "how wide the sand board is")
	require.NotEmpty(t, as[0].Next)
	require.Contains(t, as[0].Next[0].Words, "nothing tells now")
}

// An iron that was taken to be read from its wrong end is told of with what hangs on it.
func TestWhyTellsOfContradictions(t *testing.T) {
	st := studied(t, demo.Survey())
	as, err := st.Why("near-sill.fastening 12.2")
	require.NoError(t, err)
	require.Len(t, as, 2)
	require.NotEmpty(t, as[0].Contradicts)
	require.Contains(t, as[0].Contradicts[0], "wrong end")
	as, err = st.Why("seat-rail.long")
	require.NoError(t, err)
	require.Empty(t, as[0].Contradicts)
	as, err = st.Why("sill.wide") // its plate's holes have no part in it
	require.NoError(t, err)
	require.Empty(t, as[0].Contradicts)
}

// No name that can be typed stops the program.
func FuzzWhyName(f *testing.F) {
	for _, s := range []string{"reach.deep", "near-reach.fastening 5", "cross-bar-2.", ".", "a.b.c", "sill.top", "REACH.Deep", "\x00.\xff", "near-near-reach.long"} {
		f.Add(s)
	}
	s, err := survey.Read("demo", demo.Survey())
	require.NoError(f, err)
	woods, err := timber.Published()
	require.NoError(f, err)
	st, err := Examine(s, woods)
	require.NoError(f, err)
	f.Fuzz(func(t *testing.T, name string) {
		ts, err := st.find(name)
		if err == nil {
			require.NotEmpty(t, ts)
			return
		}
		var named *NameError
		require.ErrorAs(t, err, &named)
	})
}

// Lists for programs are read back whole, with their units in the keys.
func TestWhyForPrograms(t *testing.T) {
	st := studied(t, demo.Survey())
	as, err := st.Why("hind-bolster.deep")
	require.NoError(t, err)
	var c, j bytes.Buffer
	require.NoError(t, listing.WriteWhy(&c, as, st.Vehicle.Unit, listing.CSV))
	require.NoError(t, listing.WriteWhy(&j, as, st.Vehicle.Unit, listing.JSON))
	rows, err := csv.NewReader(&c).ReadAll()
	require.NoError(t, err)
	require.Contains(t, rows[0], "alone_mm")
	require.Greater(t, len(rows), len(as[0].Bearings))
	var objects []map[string]any
	require.NoError(t, json.Unmarshal(j.Bytes(), &objects))
	require.Len(t, objects, len(rows)-1)
}

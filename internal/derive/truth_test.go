package derive_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func derived(t *testing.T, name string, data []byte) *vehicle.Vehicle {
	t.Helper()
	s, err := survey.Read(name, data)
	require.NoError(t, err)
	woods, err := timber.Published()
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return v
}

func clean(t *testing.T) []byte {
	t.Helper()
	data, err := os.ReadFile("../../testdata/orchardwagon/clean.toml")
	require.NoError(t, err)
	return data
}

// truth is the wagon the survey was made from: millimetres by id and dimension.
func truth(t *testing.T) map[[2]string]float64 {
	t.Helper()
	f, err := os.Open("../../testdata/orchardwagon/truth.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	out := map[[2]string]float64{}
	for _, r := range rows[1:] {
		v, err := strconv.ParseFloat(r[2], 64)
		require.NoError(t, err)
		out[[2]string{r[0], r[1]}] = v
	}
	return out
}

// Derived sizes agree with the sizes the survey was made from, within what they
// are said to be uncertain by, with the planted blunder and without it; each on
// its own and as made alike with the others of its family.
func TestSizesAgreeWithTruth(t *testing.T) {
	for name, data := range map[string][]byte{"demo": demo.Survey(), "clean": clean(t)} {
		t.Run(name, func(t *testing.T) {
			v, want := derived(t, name, data), truth(t)
			beyond, all := 0, 0
			judge := func(id string, d vehicle.Dimension) {
				true_, ok := want[[2]string{id, d.Name}]
				require.True(t, ok, "%s %s", id, d.Name)
				off := math.Abs(d.Value.Millimetres()-true_) / d.Doubt.Millimetres()
				require.Less(t, off, 3.5, "%s %s: %.2f mm, give or take %.2f; true %.2f", id, d.Name, d.Value, d.Doubt, true_)
				all++
				if off > 1.96 {
					beyond++
				}
			}
			require.Len(t, v.Wheels, 4)
			for _, w := range v.Wheels {
				for _, d := range w.Sizes {
					if d.Name != "track" { // as the rest comes to: nothing was read of it
						judge(w.ID, d)
					}
				}
			}
			for _, p := range v.Parts {
				for _, d := range p.Sizes {
					judge(p.ID, d)
				}
				require.NotNil(t, p.Item, p.ID)
				for _, d := range p.Item.Sizes {
					judge(p.ID, d)
				}
			}
			require.Greater(t, all, 250)
			require.LessOrEqual(t, beyond, all/20, "more than one in twenty beyond its 95 %% bounds")
		})
	}
}

// The strap that was read from its wrong end is named for what it is, and alone;
// without it nothing is named.
func TestBlunderIsNamed(t *testing.T) {
	var found []vehicle.Finding
	for _, f := range derived(t, "demo", demo.Survey()).Findings {
		if f.Concern == vehicle.Contradiction {
			found = append(found, f)
		}
	}
	require.Len(t, found, 1)
	require.Equal(t, "near-sill-plate", found[0].Subject)
	require.Contains(t, found[0].Says, "wrong end")
	require.NotZero(t, found[0].Line)

	for _, f := range derived(t, "clean", clean(t)).Findings {
		require.Equal(t, vehicle.Advice, f.Concern, f.Says)
	}
}

// The demo is a whole vehicle: thirty distinct parts or more, all of them makeable.
func TestDemoIsWhole(t *testing.T) {
	v := derived(t, "demo", demo.Survey())
	require.GreaterOrEqual(t, len(v.Items), 30)
	for _, it := range v.Items {
		require.NoError(t, it.Shape.Validate(), it.Name)
		require.Positive(t, it.NumberOff)
		for _, d := range it.Sizes {
			require.Positive(t, d.Value.Millimetres(), "%s %s", it.Name, d.Name)
			require.Less(t, d.Known, quantity.Unknown)
			require.NotEmpty(t, d.By)
		}
	}
}

// A handed pair is one shape and its mirror image.
func TestHandedPairMirrors(t *testing.T) {
	v := derived(t, "demo", demo.Survey())
	pairs := 0
	for i, it := range v.Items {
		if it.Hand != vehicle.Off {
			continue
		}
		near := v.Items[i-1]
		require.Equal(t, vehicle.Near, near.Hand)
		require.Equal(t, near.Number, it.Number)
		require.Equal(t, near.Stick.Mirrored(), it.Stick)
		pairs++
	}
	require.GreaterOrEqual(t, pairs, 8)
}

// Same in, same out.
func TestDeterministic(t *testing.T) {
	a, b := derived(t, "demo", demo.Survey()), derived(t, "demo", demo.Survey())
	require.Equal(t, a.Findings, b.Findings)
	for i := range a.Items {
		require.Equal(t, a.Items[i].Sizes, b.Items[i].Sizes)
		require.Equal(t, a.Items[i].Stick, b.Items[i].Stick)
	}
}

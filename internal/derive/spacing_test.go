package derive_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func demoStudy(t *testing.T) *derive.Study {
	t.Helper()
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(t, err)
	woods, err := timber.Published()
	require.NoError(t, err)
	st, err := derive.Examine(s, woods)
	require.NoError(t, err)
	return st
}

// A spacing is the difference of the two places on the pattern, and never
// less sure than were the two places told apart from each other.
func TestSpacingsAreDifferencesOfPlaces(t *testing.T) {
	st := demoStudy(t)
	places := func(it *vehicle.Item, ref string) vehicle.Feature {
		for _, f := range it.Features {
			if f.Ref == ref {
				return f
			}
		}
		t.Fatalf("%s has no %s", it.Name, ref)
		return vehicle.Feature{}
	}
	surer, seen := 0, 0
	for _, s := range st.Spacings() {
		if s.Item == nil {
			continue
		}
		a, b := places(s.Item, s.A), places(s.Item, s.B)
		require.InDelta(t, float64(b.Along.Value-a.Along.Value), float64(s.Along.Value), 1e-9, "%s %s %s", s.Item.Name, s.A, s.B)
		require.InDelta(t, float64(b.Across.Value-a.Across.Value), float64(s.Across.Value), 1e-9)
		seen++
		if s.Along.Doubt < quantityHypot(a, b) {
			surer++
		}
	}
	require.Greater(t, seen, 100)
	require.Greater(t, surer, seen*8/10, "what both places share drops out of most spacings")
}

func quantityHypot(a, b vehicle.Feature) (l quantity.Length) {
	return quantity.Length(math.Hypot(float64(a.Along.Doubt), float64(b.Along.Doubt)))
}

func TestAccountsAreThoseOfWhy(t *testing.T) {
	st := demoStudy(t)
	all := st.Accounts()
	sizes := 0
	for _, it := range st.Vehicle.Items {
		sizes += len(it.Sizes)
	}
	require.Len(t, all, sizes)
	why, err := st.Why(all[3].Subject)
	require.NoError(t, err)
	why[0].Next = nil
	require.Equal(t, why[0].GiveOrTake, all[3].GiveOrTake)
	require.Equal(t, why[0].Size, all[3].Size)
}

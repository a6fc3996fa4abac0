package derive_test

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

func surveys(t testing.TB) map[string][]byte {
	t.Helper()
	out := map[string][]byte{"demo": demo.Survey()}
	for _, name := range []string{
		"../../testdata/orchardwagon/australian.toml", "../../testdata/armywagon/irons.toml",
		"../../testdata/handcart/cart.toml", "../survey/example.toml",
	} {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		out[name] = data
	}
	return out
}

// tries derives whatever reads without fault. It must never panic; what it says
// must be whole sentences.
func tries(t testing.TB, woods timber.Catalogue, data []byte) bool {
	s, err := survey.Read("wagon.toml", data)
	if err != nil {
		return false
	}
	v, err := derive.Vehicle(s, woods)
	if err != nil {
		require.NotEmpty(t, err.Error())
		return false
	}
	for _, f := range v.Findings {
		require.True(t, strings.HasSuffix(f.Says, "."), f.Says)
		require.NotContains(t, f.Says, "  ")
		require.NotContains(t, f.Says, "%!")
	}
	for _, it := range v.Items {
		require.NoError(t, it.Shape.Validate())
	}
	return true
}

// Surveys with lines missing, doubled or changed about derive or are refused; none panics.
func TestMaimedSurveys(t *testing.T) {
	woods, err := timber.Published()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(1841, 4))
	derived, times := 0, 20
	if testing.Short() {
		times = 3
	}
	for _, data := range surveys(t) {
		lines := strings.Split(string(data), "\n")
		for range times {
			m := append([]string(nil), lines...)
			for range 1 + r.IntN(4) {
				i := r.IntN(len(m))
				switch r.IntN(3) {
				case 0:
					m = append(m[:i:i], m[i+1:]...)
				case 1:
					m[i] = strings.Replace(m[i], "1", "2", 1)
				case 2:
					m[i] = strings.Replace(m[i], "pair = true, ", "", 1)
				}
			}
			if tries(t, woods, []byte(strings.Join(m, "\n"))) {
				derived++
			}
		}
	}
	require.Greater(t, derived, times)
}

func FuzzVehicle(f *testing.F) {
	for _, data := range surveys(f) {
		f.Add(string(data))
	}
	woods, err := timber.Published()
	require.NoError(f, err)
	f.Fuzz(func(t *testing.T, data string) {
		if len(data) < 30000 {
			tries(t, woods, []byte(data))
		}
	})
}

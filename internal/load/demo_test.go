package load_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/listing"
	"lostwood/internal/load"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
	"lostwood/internal/vehicle"
)

func reported(t *testing.T, name string, data []byte) *load.Report {
	t.Helper()
	published, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read(name, data)
	require.NoError(t, err)
	woods, err := timbering.Woods(s, published)
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	r, err := load.Of(v, woods)
	require.NoError(t, err)
	return r
}

// The wagon that comes with the program: its wheels carry all it weighs, and
// its axles what statics gives them, by hand from where it balances.
func TestOrchardWagon(t *testing.T) {
	r := reported(t, demo.Name, demo.Survey())
	require.Len(t, r.Axles, 2)
	fore, hind := r.Axles[0], r.Axles[1]
	for _, c := range []struct {
		whole      load.Balance
		fore, hind load.Stand
	}{{r.Empty, fore.Empty, hind.Empty}, {r.Laden, fore.Laden, hind.Laden}} {
		assert.InEpsilon(t, float64(c.whole.Mass), float64(c.fore.All+c.hind.All), 1e-4)
		share := float64((c.whole.At[0].Value - hind.At) / (fore.At - hind.At))
		assert.InEpsilon(t, share*float64(c.whole.Mass), float64(c.fore.All), 0.005)
		assert.InEpsilon(t, float64(c.fore.Near), float64(c.fore.Off), 0.05)
	}
	assert.InDelta(t, 1860, (r.Laden.Mass - r.Empty.Mass).Pounds(), 1e-6)
	require.Len(t, r.Beams, 29)
	for _, b := range r.Beams {
		assert.Positive(t, float64(b.Bending.Left), b.Part.Name)
		assert.Less(t, float64(b.Bending.Stress), float64(b.Bending.Clear), b.Part.Name)
	}
}

// The three surveys that are kept each give remarks that a person can read, and
// lists that can be written.
func TestKeptSurveys(t *testing.T) {
	for _, name := range []string{"orchardwagon/australian.toml", "handcart/cart.toml", "armywagon/irons.toml"} {
		data, err := os.ReadFile("../../testdata/" + name)
		require.NoError(t, err)
		r := reported(t, name, data)
		require.NotEmpty(t, r.Remarks)
		for _, m := range r.Remarks {
			assert.NotEmpty(t, m.Check)
			assert.NotEqual(t, vehicle.CannotGo, m.Gravity)
			assert.NotContains(t, m.Says, "NaN", name)
			assert.NotContains(t, m.Says, "%!", name)
		}
		for _, l := range r.Lists() {
			for _, how := range []listing.Format{listing.Table, listing.CSV, listing.JSON} {
				var b bytes.Buffer
				require.NoError(t, l.Write(&b, how))
				assert.NotContains(t, b.String(), "NaN", name)
			}
		}
	}
}

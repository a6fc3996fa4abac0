package derive_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A pair that a load lies on is a near and an off one, a row all of it, one of a
// row that one.
func TestLoadsLieOnMembers(t *testing.T) {
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(t, err)
	s.Track = 1200
	s.Loads[1].On = []survey.Named{{ID: "cross-bar-2"}, {ID: "near-sill"}}
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	require.Len(t, v.Loads, 2)
	require.Equal(t, []string{
		"slat-centre", "near-slat-in", "off-slat-in", "near-slat-mid", "off-slat-mid", "near-slat-out", "off-slat-out",
	}, v.Loads[0].On)
	require.Equal(t, []string{"near-sill", "cross-bar-2"}, v.Loads[1].On)
	require.Equal(t, vehicle.InPlaces, v.Loads[1].Lies)
	require.InDelta(t, 1500*.45359237, float64(v.Loads[0].Total()), 1e-9)
	require.InDelta(t, 360*.45359237, float64(v.Loads[1].Total()), 1e-9)
	require.InDelta(t, 1200, float64(v.Track), 0)
}

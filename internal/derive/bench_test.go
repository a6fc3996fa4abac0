package derive_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

// The whole derivation of the demo: blunders, sizes, places, doubts and how each is known.
func BenchmarkVehicle(b *testing.B) {
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(b, err)
	woods, err := timber.Published()
	require.NoError(b, err)
	for b.Loop() {
		_, err := derive.Vehicle(s, woods)
		require.NoError(b, err)
	}
}

package derive

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
	"lostwood/internal/demo"
	"lostwood/internal/survey"
)

// The demo's adjustment alone, with every uncertainty.
func BenchmarkDemoAdjustment(b *testing.B) {
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(b, err)
	n := newNetwork(s)
	b.ReportMetric(float64(len(n.unknowns)), "unknowns")
	for b.Loop() {
		_, err := adjust.Solve(n.problem)
		require.NoError(b, err)
	}
}

package survey

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
)

// The tolerances of tapes as tables print them: 5 m 0.6, 1.3, 2.6 mm and 10 m 1.1, 2.3,
// 4.6 mm in classes I, II, III (UK S.I. 2016/1153, schedule 1I, after Directive 2004/22/EC).
func TestTapeTolerances(t *testing.T) {
	for class, want := range map[int][2]float64{1: {0.6, 1.1}, 2: {1.3, 2.3}, 3: {2.6, 4.6}} {
		i := Instrument{Class: class}
		require.InDelta(t, want[0], i.Tolerance(5*quantity.Metre).Millimetres(), 1e-9)
		require.InDelta(t, want[1], i.Tolerance(10*quantity.Metre).Millimetres(), 1e-9)
		require.InDelta(t, want[0], i.Tolerance(4.2*quantity.Metre).Millimetres(), 1e-9, "the metre begun counts whole")
	}
	require.Zero(t, (&Instrument{}).Tolerance(quantity.Metre))
}

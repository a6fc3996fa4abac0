package probe_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/probe"
	"lostwood/parts/form"
)

// Half way along, an oval of half spans 20 and 12 that tapers to 15 and 10 has
// 17.5 and 11: a line through its middle is in it for twice that.
func TestOvalsAreProbed(t *testing.T) {
	b := probe.New(form.Oval{
		Frame: form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, To: 100,
		First: form.Ellipse{U: 20, V: 12}, Last: form.Ellipse{U: 15, V: 10},
	})
	require.True(t, b.Contains(form.Vec{X: 17.4, Z: 50}))
	require.False(t, b.Contains(form.Vec{X: 17.6, Z: 50}))
	require.False(t, b.Contains(form.Vec{Z: 101}))
	in := b.Along(form.Vec{Y: -40, Z: 50}, form.Dir{Y: 1})
	require.Len(t, in, 1)
	require.InDelta(t, 29, float64(in[0].From), 1e-6)
	require.InDelta(t, 51, float64(in[0].To), 1e-6)
}

package mesh_test

import (
	"bytes"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/parts/form"
)

const fine = 0.05 * quantity.Millimetre

func made(t testing.TB, v form.Volume, tolerance quantity.Length) *mesh.Mesh {
	t.Helper()
	s, err := solid.New(v)
	require.NoError(t, err)
	m, err := mesh.Of(s, tolerance)
	require.NoError(t, err)
	return m
}

func TestVolumesAgainstFormulas(t *testing.T) {
	assert.InDelta(t, 7849996.2222, bolsterVolume(), 1e-4)
	assert.InDelta(t, 1031158.455, felloeVolume(), 1e-3)
	assert.InDelta(t, 696214.695, spokeVolume(), 1e-3)
	assert.InDelta(t, 5374341.042, reachVolume(), 1e-3)
	for name, c := range map[string]struct {
		v     form.Volume
		exact float64
		euler int // 2 less 2 for each way through
	}{
		"bolster": {bolster(), bolsterVolume(), 2 - 2*5},
		"felloe":  {felloe(), felloeVolume(), 2 - 2*2},
		"reach":   {reach(), reachVolume(), 2 - 2*6},
		"spoke":   {spoke(), spokeVolume(), 2},
		"turned":  {turnedSpoke(), turnedSpokeVolume(), 2},
	} {
		t.Run(name, func(t *testing.T) {
			m := made(t, c.v, fine)
			r := mesh.Inspect(m)
			require.NoError(t, r.Err())
			assert.Equal(t, 1, r.Pieces)
			assert.Equal(t, c.euler, r.Euler)
			assert.InDelta(t, c.exact, float64(m.Volume()), 0.1*float64(m.Area()))
		})
	}
}

func TestSameBytes(t *testing.T) {
	write := func() []byte {
		var b bytes.Buffer
		require.NoError(t, mesh.WriteSTL(&b, made(t, spoke(), fine), mesh.Header{Name: "spoke", Unit: "mm", Issue: "A"}))
		return b.Bytes()
	}
	assert.True(t, bytes.Equal(write(), write()))
}

func TestToleranceMustBePositive(t *testing.T) {
	s, err := solid.New(reach())
	require.NoError(t, err)
	for _, bad := range []quantity.Length{0, -1, quantity.Length(math.NaN())} {
		_, err = mesh.Of(s, bad)
		assert.Error(t, err)
	}
}

func compiled(t testing.TB, v form.Volume) *solid.Solid {
	t.Helper()
	s, err := solid.New(v)
	require.NoError(t, err)
	return s
}

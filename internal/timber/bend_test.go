package timber_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// What steamed wood bears (from memory of USDA Agriculture Handbook 125): 25 to
// 30 % shorter with a strap, which by geometry is a radius of 3 to 2.3 times
// the thickness; 1.7 to 2.5 % longer without, 30 to 20 times.
func TestBendStrain(t *testing.T) {
	assert.InDelta(t, 0.25, timber.BendStrain(75, 25, timber.Strapped), 1e-12)
	assert.InDelta(t, 0.303, timber.BendStrain(2.3*25, 25, timber.Strapped), 0.0005)
	assert.InDelta(t, 0.0164, timber.BendStrain(30*25, 25, timber.Unsupported), 0.0001)
	assert.InDelta(t, 0.0244, timber.BendStrain(20*25, 25, timber.Unsupported), 0.0001)
}

// Limits of 25 mm stock from memory of Stevens and Turner, which are not a
// check of the figures: only of how they are used.
func TestSteamBend(t *testing.T) {
	s := find(t, "white oak") // 13 mm strapped, 330 mm free
	b, err := s.SteamBend(400, 25, timber.Unsupported)
	require.NoError(t, err)
	assert.Equal(t, quantity.Length(330), b.Limit)
	assert.InDelta(t, 16, b.Ratio, 1e-12)
	assert.Empty(t, b.Warnings)
	assert.Equal(t, timber.FromMemory, b.Basis.Standing)
	assert.InDelta(t, 360, float64(b.Form[0]), 1e-9)
	assert.InDelta(t, 380, float64(b.Form[1]), 1e-9)
	assert.InDelta(t, 1, b.Steaming, 1e-12)

	b, err = s.SteamBend(400, 50, timber.Unsupported) // the limit grows with the thickness
	require.NoError(t, err)
	assert.Equal(t, quantity.Length(660), b.Limit)
	require.Len(t, b.Warnings, 1)
	assert.Contains(t, b.Warnings[0], "660 mm")
	b, err = s.SteamBend(400, 50, timber.Strapped)
	require.NoError(t, err)
	assert.Empty(t, b.Warnings)
}

func TestSteamBendOfWoodWithoutALimit(t *testing.T) {
	s := find(t, "American elm")
	for _, c := range []struct {
		radius  quantity.Length
		support timber.Support
		want    string
	}{
		{25 * 31, timber.Unsupported, ""},
		{25 * 25, timber.Unsupported, "at risk under about 30"},
		{25 * 15, timber.Unsupported, "breaks under about 20"},
		{25 * 4, timber.Strapped, ""},
		{25 * 2.5, timber.Strapped, "at risk under about 3"},
		{25 * 2, timber.Strapped, "breaks under about 2.3"},
	} {
		b, err := s.SteamBend(c.radius, 25, c.support)
		require.NoError(t, err)
		assert.Zero(t, b.Limit)
		if c.want == "" {
			assert.Empty(t, b.Warnings)
		} else {
			assert.Contains(t, strings.Join(b.Warnings, "\n"), c.want)
		}
	}
	b, err := find(t, "tallowwood").SteamBend(1000, 25, timber.Strapped)
	require.NoError(t, err)
	assert.Contains(t, strings.Join(b.Warnings, "\n"), "poor for steam-bending")
	b, err = find(t, "jarrah").SteamBend(2000, 25, timber.Unsupported)
	require.NoError(t, err)
	assert.Contains(t, strings.Join(b.Warnings, "\n"), "no limit is known for jarrah without a strap")
}

func TestSteamBendRefuses(t *testing.T) {
	for _, c := range [][2]quantity.Length{{0, 25}, {100, 0}, {-1, 25}} {
		_, err := find(t, "white ash").SteamBend(c[0], c[1], timber.Strapped)
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
	assert.NotEmpty(t, timber.BendCautions())
}

// FPL Technical Note 233 and FPL-GTR-117, from memory: white ash in the inch
// 60 to 200 days; the power of the thickness 1.5 to 2.
func TestDryingDays(t *testing.T) {
	s := find(t, "white ash")
	least, most, basis, err := s.DryingDays(quantity.Inch)
	require.NoError(t, err)
	assert.InDelta(t, 60, least, 1e-9)
	assert.InDelta(t, 200, most, 1e-9)
	assert.Equal(t, timber.FromMemory, basis.Standing)
	least, most, _, err = s.DryingDays(2 * quantity.Inch)
	require.NoError(t, err)
	assert.InDelta(t, 60*2.828427, least, 1e-4)
	assert.InDelta(t, 800, most, 1e-9)
	least, most, _, err = s.DryingDays(quantity.Inch / 2)
	require.NoError(t, err)
	assert.InDelta(t, 15, least, 1e-9)
	assert.InDelta(t, 200*0.3535534, most, 1e-4)
	var none *timber.NoFigureError
	_, _, _, err = find(t, "blackbutt").DryingDays(25)
	require.ErrorAs(t, err, &none)
	var fault *timber.RangeError
	_, _, _, err = s.DryingDays(0)
	require.ErrorAs(t, err, &fault)
}

package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// P. H. Mitchell, NC State, 2016, from a public file; Phoenix in January, March,
// June and October is also printed in Wood Handbook 2021 table 13-1: 8.9, 7.4, 4.4, 6.9.
func TestPhoenix(t *testing.T) {
	places, err := timber.Places()
	require.NoError(t, err)
	var phoenix timber.Place
	for _, p := range places {
		assert.Len(t, p.Months, 12, p.Name)
		if p.Name == "Phoenix AZ" {
			phoenix = p
		}
	}
	require.Len(t, phoenix.Months, 12)
	for month, want := range map[int]quantity.Moisture{1: 8.9, 3: 7.4, 6: 4.4, 10: 6.9} {
		assert.Equal(t, want, phoenix.Months[month-1])
	}
	// The 1998 basis (FPL-RN-0268), from memory: up to 0.5 apart.
	for i, want := range []float64{9.4, 8.4, 7.9, 6.1, 5.1, 4.6, 6.2, 6.9, 6.9, 7.0, 8.2, 9.5} {
		assert.InDelta(t, want, float64(phoenix.Months[i]), 0.5+1e-9)
	}
	c, err := timber.At("phoenix az")
	require.NoError(t, err)
	assert.Equal(t, quantity.Moisture(4.4), c.Driest)
	assert.Equal(t, quantity.Moisture(9.0), c.Wettest)
	assert.InDelta(t, 83.1/12, float64(c.Mean), 1e-9) // sum of the printed row
	assert.Contains(t, c.Basis.String(), "1981-2010", "the years are named")
}

func TestPlaceByPartOfItsName(t *testing.T) {
	c, err := timber.At("Juneau")
	require.NoError(t, err)
	assert.Equal(t, quantity.Moisture(18.5), c.Wettest)
	for name, near := range map[string][]string{
		"New":     {"New Orleans LA", "New York NY"},
		"Seatle":  nil,
		"Chicgao": nil,
		"":        nil,
		"Nowhere": nil,
	} {
		_, err := timber.At(name)
		var fault *timber.UnknownError
		require.ErrorAs(t, err, &fault, name)
		assert.Equal(t, near, fault.Near, name)
	}
	_, err = timber.At("Seatle WA")
	assert.ErrorContains(t, err, "Seattle WA")
}

func TestStatedClimates(t *testing.T) {
	c, err := timber.Steady(12)
	require.NoError(t, err)
	assert.Equal(t, timber.Climate{Mean: 12, Driest: 12, Wettest: 12, Basis: timber.Basis{Source: "as stated", Standing: timber.Own}}, c)
	c, err = timber.Between(8, 14)
	require.NoError(t, err)
	assert.Equal(t, quantity.Moisture(11), c.Mean)
	for _, bad := range [][2]quantity.Moisture{{14, 8}, {-1, 8}, {8, 31}} {
		_, err := timber.Between(bad[0], bad[1])
		var fault *timber.RangeError
		require.ErrorAs(t, err, &fault)
	}
}

// The months are Wood Handbook table 4-2 at 21.1 degrees: 40 % 7.7, 65 % 12.0, 50 % 9.2.
func TestMonthlyClimate(t *testing.T) {
	c, err := timber.Monthly([]timber.Month{{21.1, 0.40}, {21.1, 0.65}, {21.1, 0.50}})
	require.NoError(t, err)
	assert.InDelta(t, 7.7, float64(c.Driest), 0.06)
	assert.InDelta(t, 12.0, float64(c.Wettest), 0.06)
	assert.InDelta(t, (7.7+12.0+9.2)/3, float64(c.Mean), 0.06)

	_, err = timber.Monthly([]timber.Month{{21.1, 0.40}, {-20, 0.65}})
	var fault *timber.RangeError
	require.ErrorAs(t, err, &fault)
	assert.ErrorContains(t, err, "month 2")
	_, err = timber.Monthly(nil)
	require.ErrorAs(t, err, &fault)
}
